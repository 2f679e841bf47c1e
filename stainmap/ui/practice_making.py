"""What lies over the crown while an exercise is being made: that there is none yet."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from stainmap.ui.crown_view import CrownView
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font, tones
from stainmap.words import translate


class MakingCover(QWidget):
    """A sheet over the whole crown view, so that no crown of before is taken for the new one."""

    def __init__(self, view: CrownView) -> None:
        super().__init__(view)
        self.setObjectName("making cover")
        column = QVBoxLayout(self)
        column.setContentsMargins(32, 32, 32, 32)
        column.setSpacing(10)
        column.addStretch(1)
        self.head, self.phrase = QLabel(), SoftLabel("", 14)
        self.head.setFont(font(24, 300))
        for label in (self.head, self.phrase):
            label.setAlignment(Qt.AlignmentFlag.AlignCenter)
            label.setWordWrap(True)
            column.addWidget(label)
        column.addStretch(1)
        # A press here reaches no crown.
        self.setAttribute(Qt.WidgetAttribute.WA_NoMousePropagation)
        self.hide()
        view.installEventFilter(self)

    def show_making(self) -> None:
        """Say that a crown is being made; how far it is stands above."""
        self._say(translate("practice making", "A new crown is being made"), "")

    def show_none(self) -> None:
        """Say that there is no exercise."""
        self._say(
            translate("practice making", "No exercise is open"),
            translate("practice making", "Above, try it again or choose the next one."),
        )

    def _say(self, head: str, phrase: str) -> None:
        self.head.setText(head)
        self.phrase.setText(phrase)
        self.phrase.setVisible(bool(phrase))
        view = self.parentWidget()
        if view is not None:
            self.setGeometry(view.rect())
        self.show()
        self.raise_()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stay as large as the view."""
        if watched is self.parent() and event.type() == QEvent.Type.Resize:
            view = self.parentWidget()
            if view is not None:
                self.setGeometry(view.rect())
        return super().eventFilter(watched, event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill it."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(tones(self).panel))
        painter.end()
