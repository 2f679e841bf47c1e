"""The bar at the top: sign, menus, name of the case, and the commands used all the time."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QEvent, QRectF, QSize, Qt
from PySide6.QtGui import QAction, QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QMenuBar,
    QSizePolicy,
    QToolButton,
    QWidget,
)

from stainmap.ui.icons import icon, paint_icon
from stainmap.ui.section import SoftLabel
from stainmap.ui.status_line import ElidedLabel
from stainmap.ui.theme import font, tones
from stainmap.words import translate

HEIGHT_PX = 46
_TITLE_PX = 64
_WORDS, _ICON = (
    Qt.ToolButtonStyle.ToolButtonTextBesideIcon,
    Qt.ToolButtonStyle.ToolButtonIconOnly,
)


class TopBar(QWidget):
    """One bar instead of a menu line and a tool line above each other."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedHeight(HEIGHT_PX)
        row = QHBoxLayout(self)
        row.setContentsMargins(44, 0, 12, 0)
        row.setSpacing(6)
        self._name = QLabel("stainmap")
        self._name.setFont(font(15, 600))
        self.menus = QMenuBar()
        self.menus.setNativeMenuBar(False)
        more = self.menus.findChild(QToolButton, "qt_menubar_ext_button")
        if more is not None:
            # Qt's own sign for menus that have no room is hardly seen.
            more.setIcon(icon("chevron"))
            more.setAccessibleName(translate("top bar", "More menus"))
        self.menus.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Fixed)
        self.title = ElidedLabel()
        self.title.setFont(font(13, 500))
        self.title.setMinimumWidth(_TITLE_PX)
        self.state = SoftLabel("", 13)
        row.addWidget(self._name)
        row.addSpacing(8)
        row.addWidget(self.menus)
        row.addSpacing(12)
        self._names = QHBoxLayout()
        self._names.setSpacing(8)
        row.addLayout(self._names, 1)
        self._names.addWidget(self.title, 0)
        self._names.addWidget(self.state, 0)
        self._names.addStretch(1)
        self.title.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Preferred)
        self._row = row
        # Buttons with words, and by how much those make them longer.
        self._in_words: list[QToolButton] = []
        self._longer = 0

    def add_commands(self, actions: Sequence[QAction], *, words: bool) -> None:
        """Add a group of commands at the right, with words or with icons only."""
        if words:
            self._row.addSpacing(8)
        for action in actions:
            button = QToolButton()
            button.setDefaultAction(action)
            button.setIconSize(QSize(20, 20))
            button.setAccessibleName(action.text().replace("&", "").rstrip("."))
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            if words:
                bare = button.sizeHint().width()
                button.setToolButtonStyle(_WORDS)
                self._longer += button.sizeHint().width() - bare
                self._in_words.append(button)
            self._row.addWidget(button)

    def set_case(self, title: str, state: str) -> None:
        """Show the name of the case, and revision and unsaved mark."""
        self.title.setText(title)
        self.title.setToolTip(title)
        self.state.setText(state)
        self._fit()

    def event(self, event: QEvent) -> bool:
        """Give the menus the room of other things where there is not enough for all."""
        done = super().event(event)
        if event.type() in (QEvent.Type.Resize, QEvent.Type.LayoutRequest, QEvent.Type.Show):
            self._fit()
        return done

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill the bar, and draw sign and lower line."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.bar))
        painter.fillRect(0, self.height() - 1, self.width(), 1, QColor(t.line))
        paint_icon(painter, "rosette", QRectF(14, 13, 20, 20), t.ink)
        painter.end()

    def _fit(self) -> None:
        # In the words of some languages the last menus would not be seen in a small window. What
        # gives way to them: the program's name, the end of a long name of the case, and the words
        # of the buttons at the right.
        if not self._in_words:
            return
        name, longer = self._name.sizeHint().width() + self._row.spacing(), self._longer
        menus, shown = self.menus.sizeHint().width(), self.menus.minimumWidth()
        others = self._row.minimumSize().width()
        others -= shown or self.menus.minimumSizeHint().width()
        others -= 0 if self._name.isHidden() else name
        others -= longer if self._in_words[0].toolButtonStyle() is _WORDS else 0
        room = self.width() - others - menus
        self.menus.setMinimumWidth(max(1, menus + min(0, room)))
        with_words = room >= longer
        for button in self._in_words:
            button.setToolButtonStyle(_WORDS if with_words else _ICON)
        cut = max(0, self.title.sizeHint().width() - _TITLE_PX)
        self._name.setVisible(room >= longer + name + cut)
