"""The card of the guided first plan at the edge of the view, and the ring about a real control."""

from __future__ import annotations

from PySide6.QtCore import QRect, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QVBoxLayout, QWidget

from stainmap.ui.plate import link_button
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font, tones
from stainmap.words import translate

_RING_PX = 5


class GuidedCard(QWidget):
    """Says what the step that is on asks for; lies over the crown view, not on it.

    Signals
    -------
    kept
        The crown that is open is to be worked with.
    back_asked, skipped, closed
        The buttons.
    """

    kept = Signal()
    back_asked = Signal()
    skipped = Signal()
    closed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("guided card", "Guided first plan"))
        self._count, self._title, self._sentence = SoftLabel("", 12), QLabel(), SoftLabel("", 13)
        self._title.setFont(font(15, 600))
        self._sentence.setWordWrap(True)
        self._sentence.setAlignment(Qt.AlignmentFlag.AlignTop)
        # As wide as there is room, and as high as that makes it; the view must not jump, so two
        # lines at least.
        policy = self._sentence.sizePolicy()
        policy.setHorizontalPolicy(QSizePolicy.Policy.Ignored)
        self._sentence.setSizePolicy(policy)
        self._sentence.setMinimumHeight(2 * self._sentence.fontMetrics().lineSpacing())
        self.keep = link_button(translate("guided card", "keep this crown"))
        self.keep.setAccessibleName(translate("guided card", "Work with the crown that is open"))
        self.back = link_button(translate("guided card", "back"))
        self.back.setAccessibleName(translate("guided card", "One step back"))
        self.skip = link_button(translate("guided card", "skip"))
        self.skip.setAccessibleName(translate("guided card", "Skip this step"))
        self.close_button = link_button(translate("guided card", "end"))
        self.close_button.setAccessibleName(translate("guided card", "End the guided first plan"))
        self.keep.clicked.connect(self.kept)
        self.back.clicked.connect(self.back_asked)
        self.skip.clicked.connect(self.skipped)
        self.close_button.clicked.connect(self.closed)
        head = QHBoxLayout()
        head.setSpacing(10)
        head.addWidget(self._title)
        head.addWidget(self._count)
        head.addStretch(1)
        for button in (self.keep, self.back, self.skip, self.close_button):
            head.addWidget(button)
            head.addSpacing(6)
        column = QVBoxLayout(self)
        column.setContentsMargins(22, 9, 12, 10)
        column.setSpacing(3)
        column.addLayout(head)
        column.addWidget(self._sentence)

    def say(self, title: str, sentence: str, at: int, count: int) -> None:
        """Show a step, from 0; `count` itself is the end."""
        over = at >= count
        self._title.setText(title)
        self._sentence.setText(sentence)
        self._count.setText(
            ""
            if over
            else translate("guided card", "step {at} of {count}").format(at=at + 1, count=count)
        )
        self.keep.setVisible(at == 0)
        self.back.setVisible(0 < at < count)
        self.skip.setVisible(not over)
        self.close_button.setText(
            translate("guided card", "close") if over else translate("guided card", "end")
        )
        self.setAccessibleDescription(f"{self._count.text()} {title}. {sentence}".strip())

    @property
    def said(self) -> str:
        """What stands on the card."""
        return f"{self._count.text()} {self._title.text()} {self._sentence.text()}".strip()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill the card, with the accent at its left edge."""
        painter = QPainter(self)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.panel))
        painter.fillRect(QRectF(0, 0, 4, self.height()), QColor(t.accent))
        painter.fillRect(0, self.height() - 1, self.width(), 1, QColor(t.line))
        painter.end()


class GuidedRing(QWidget):
    """A ring about the control that is meant; clicks go through it."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_NoSystemBackground)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setAccessibleName(translate("guided card", "Ring about what is meant"))
        self.hide()

    def lie_about(self, place: QRect) -> None:
        """Lie about a place of the window; an empty one hides the ring."""
        if place.isEmpty():
            self.hide()
            return
        around = place.adjusted(-_RING_PX, -_RING_PX, _RING_PX, _RING_PX)
        window = self.parentWidget()
        if window is not None:
            around = around.intersected(window.rect())
        if around != self.geometry():
            self.setGeometry(around)
        if self.isHidden():
            self.show()
        self.raise_()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the ring: the accent inside a light line, so that it stands on any ground."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        rect = QRectF(self.rect()).adjusted(2.5, 2.5, -2.5, -2.5)
        for colour, width in ((t.field, 5.0), (t.accent, 3.0)):
            painter.setPen(QPen(QColor(colour), width))
            painter.drawRoundedRect(rect, 6, 6)
        painter.end()
