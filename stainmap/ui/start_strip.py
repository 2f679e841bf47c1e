"""The thin strip of the first start: what is seen, and the way to something of one's own."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QToolButton, QWidget

from stainmap.ui.icons import icon
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font, tones
from stainmap.words import marked, translate

HEIGHT_PX = 56
_HINT_FROM_PX, _TITLE_FROM_PX = 980, 760
_TITLE, _SHORT_TITLE = (
    marked("start strip", "This is a sample, already planned."),
    marked("start strip", "A sample"),
)
_GUIDED, _GO_ON = (
    marked("start strip", "Guided first plan"),
    marked("start strip", "Go on with the first plan"),
)


class StartStrip(QWidget):
    """Says that this is a sample, and offers to open a mesh.

    Signals
    -------
    open_asked, practice_asked, guided_asked, dismissed
        The buttons.
    """

    open_asked = Signal()
    practice_asked = Signal()
    guided_asked = Signal()
    dismissed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedHeight(HEIGHT_PX)
        self.setAccessibleName(translate("start strip", "First start"))
        row = QHBoxLayout(self)
        row.setContentsMargins(22, 0, 12, 0)
        row.setSpacing(20)
        self._title = title = QLabel(translate("start strip", _TITLE))
        title.setFont(font(15, 600))
        # In a narrow column the buttons come first.
        title.setMinimumWidth(1)
        hint = SoftLabel(
            translate(
                "start strip", "Turn it with the right button, point at it to read a colour."
            ),
            13,
        )
        hint.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.open = QPushButton(translate("start strip", "Open a mesh"))
        self.open.setProperty("main", True)
        self.open.clicked.connect(self.open_asked)
        self.practice = QPushButton(translate("start strip", "New practice"))
        self.practice.clicked.connect(self.practice_asked)
        self.guided = QPushButton(translate("start strip", _GUIDED))
        self.guided.setToolTip(
            translate("start strip", "Six steps on this window, each done by yourself")
        )
        self.guided.clicked.connect(self.guided_asked)
        self.close_button = QToolButton()
        self.close_button.setIcon(icon("close"))
        self.close_button.setIconSize(QSize(20, 20))
        self.close_button.setAccessibleName(translate("start strip", "Close this strip"))
        self.close_button.setToolTip(translate("start strip", "Close this strip"))
        self.close_button.clicked.connect(self.dismissed)
        row.addWidget(title)
        row.addWidget(hint, 1)
        row.addStretch(0)
        self._hint = hint
        row.addWidget(self.practice)
        row.addWidget(self.guided)
        row.addWidget(self.open)
        row.addWidget(self.close_button)

    def set_unfinished(self, unfinished: bool) -> None:
        """Say whether there is a guided first plan to go on with."""
        self.guided.setText(translate("start strip", _GO_ON if unfinished else _GUIDED))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave the hint out where there is no room for it."""
        super().resizeEvent(event)
        width = event.size().width()
        # In the narrowest column the words go before the buttons do.
        layout = self.layout()
        if layout is not None:
            layout.setSpacing(20 if width >= _TITLE_FROM_PX else 10)
        self._hint.setVisible(width >= _HINT_FROM_PX)
        title = _TITLE if width >= _TITLE_FROM_PX else _SHORT_TITLE
        self._title.setText(translate("start strip", title))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill the strip, with the accent at its left edge."""
        painter = QPainter(self)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.panel))
        painter.fillRect(QRectF(0, 0, 4, self.height()), QColor(t.accent))
        painter.fillRect(0, self.height() - 1, self.width(), 1, QColor(t.line))
        painter.end()
