"""The status line: a caution or the last message, what is pointed at, figures of the case."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QWidget

from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font, tones
from stainmap.words import translate

HEIGHT_PX = 26
_MESSAGE_MS = 8000


class ElidedLabel(QLabel):
    """One line that ends in dots where there is no room for it; its tool tip holds all of it."""

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw as much as there is room for."""
        painter = QPainter(self)
        painter.setPen(self.palette().color(self.foregroundRole()))
        mode = Qt.TextElideMode.ElideRight
        text = self.fontMetrics().elidedText(self.text(), mode, self.width())
        painter.drawText(self.rect(), int(Qt.AlignmentFlag.AlignVCenter), text)
        painter.end()


class StatusLine(QWidget):
    """One line at the foot of the window."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedHeight(HEIGHT_PX)
        self.setAccessibleName(translate("status line", "Status"))
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 0, 16, 0)
        row.setSpacing(24)
        self.message = ElidedLabel()
        self.message.setFont(font(12))
        self.message.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.pointed = ElidedLabel()
        self.pointed.setFont(font(12))
        self.pointed.setAccessibleName(translate("status line", "Under the pointer"))
        self.pointed.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.figures, self.plan = SoftLabel(), SoftLabel()
        row.addWidget(self.message, 3)
        row.addWidget(self.pointed, 2)
        row.addWidget(self.figures)
        row.addWidget(self.plan)
        self._standing = ""
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._fall_back)

    def set_standing(self, text: str) -> None:
        """Set what stands here while there is no message."""
        self._standing = text
        if not self._timer.isActive():
            self._fall_back()

    def say(self, text: str) -> None:
        """Show a message for some seconds."""
        self.message.setText(text)
        self.message.setToolTip(text)
        self._timer.start(_MESSAGE_MS)

    def set_pointed(self, text: str) -> None:
        """Name what is under the pointer; an empty text if nothing is."""
        self.pointed.setText(text)
        self.pointed.setToolTip(text)

    def set_case(self, figures: str, plan: str) -> None:
        """Show figures of the case and the hash of its plan."""
        self.figures.setText(figures)
        self.plan.setText(plan)

    def _fall_back(self) -> None:
        self.message.setText(self._standing)
        self.message.setToolTip(self._standing)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill the line and draw its upper edge."""
        painter = QPainter(self)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.bar))
        painter.fillRect(0, 0, self.width(), 1, QColor(t.line))
        painter.end()
