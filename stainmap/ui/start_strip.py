"""The thin strip of the first start: what is seen, and the way to something of one's own."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QToolButton, QWidget

from stainmap.ui.icons import icon
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font, tones

HEIGHT_PX = 56
_HINT_FROM_PX = 760


class StartStrip(QWidget):
    """Says that this is a sample, and offers to open a mesh.

    Signals
    -------
    open_asked, practice_asked, dismissed
        The buttons.
    """

    open_asked = Signal()
    practice_asked = Signal()
    dismissed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedHeight(HEIGHT_PX)
        self.setAccessibleName("First start")
        row = QHBoxLayout(self)
        row.setContentsMargins(22, 0, 12, 0)
        row.setSpacing(20)
        title = QLabel("This is a sample, already planned.")
        title.setFont(font(15, 600))
        hint = SoftLabel("Turn it with the right button, point at it to read a colour.", 13)
        hint.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self.open = QPushButton("Open a mesh")
        self.open.setProperty("main", True)
        self.open.clicked.connect(self.open_asked)
        self.practice = QPushButton("New practice")
        self.practice.clicked.connect(self.practice_asked)
        self.close_button = QToolButton()
        self.close_button.setIcon(icon("close"))
        self.close_button.setIconSize(QSize(20, 20))
        self.close_button.setAccessibleName("Close this strip")
        self.close_button.setToolTip("Close this strip")
        self.close_button.clicked.connect(self.dismissed)
        row.addWidget(title)
        row.addWidget(hint, 1)
        row.addStretch(0)
        self._hint = hint
        row.addWidget(self.practice)
        row.addWidget(self.open)
        row.addWidget(self.close_button)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave the hint out where there is no room for it."""
        super().resizeEvent(event)
        self._hint.setVisible(event.size().width() >= _HINT_FROM_PX)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill the strip, with the accent at its left edge."""
        painter = QPainter(self)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.panel))
        painter.fillRect(QRectF(0, 0, 4, self.height()), QColor(t.accent))
        painter.fillRect(0, self.height() - 1, self.width(), 1, QColor(t.line))
        painter.end()
