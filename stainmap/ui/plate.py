"""Cards that speak: progress with a way to stop it, messages with what can be done about them."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from stainmap.ui.opening_questions import DETAILS
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font, tones
from stainmap.words import translate

WIDTH_PX = 380


def link_button(text: str) -> QPushButton:
    """Return a button that reads as a link."""
    button = QPushButton(text)
    button.setProperty("link", True)
    button.setFont(font(13, 500))
    button.setCursor(Qt.CursorShape.PointingHandCursor)
    button.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
    return button


class Plate(QWidget):
    """A panel-coloured plate that lies on the crown's surround."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        # What is done to a card is not done to the crown behind it.
        self.setAttribute(Qt.WidgetAttribute.WA_NoMousePropagation)
        self.setFixedWidth(WIDTH_PX)
        self.body = QVBoxLayout(self)
        self.body.setContentsMargins(14, 12, 14, 12)
        self.body.setSpacing(6)

    def fit(self) -> None:
        """Take the height that what is shown needs now, not what was shown before."""
        self.body.invalidate()
        self.adjustSize()
        if self.body.hasHeightForWidth():
            # Wrapped lines are as high as they are at this width, not at their narrowest.
            self.resize(self.width(), self.body.heightForWidth(self.width()))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the plate."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(tones(self).panel))
        painter.drawRoundedRect(QRectF(self.rect()), 4, 4)
        painter.end()


class ProgressCard(Plate):
    """What is being done, how far it is, and a way to stop it.

    Signals
    -------
    cancelled
        Somebody asked to stop.
    """

    cancelled = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("plate", "Progress"))
        head = QHBoxLayout()
        self._title = QLabel()
        self._title.setFont(font(15, 600))
        self.cancel = link_button(translate("plate", "cancel"))
        self.cancel.clicked.connect(self.cancelled)
        head.addWidget(self._title, 1)
        head.addWidget(self.cancel)
        self._bar = QProgressBar()
        self._bar.setRange(0, 1000)
        self._bar.setTextVisible(False)
        self._bar.setFixedHeight(6)
        self._bar.setAccessibleName(translate("plate", "Share done"))
        self._phrase = SoftLabel()
        self.body.addLayout(head)
        self.body.addWidget(self._bar)
        self.body.addWidget(self._phrase)

    def set_progress(
        self, title: str, share: float, phrase: str, seconds_left: float = 0.0
    ) -> None:
        """Show a title, a share from 0 to 1 and what is being done; seconds left if above 1."""
        self._title.setText(title)
        self._bar.setValue(round(1000 * min(max(share, 0.0), 1.0)))
        self._phrase.setText(_with_time_left(phrase, seconds_left))
        self.setAccessibleDescription(
            translate("plate", "{title}: {phrase}, {share:.0f} percent").format(
                title=title, phrase=phrase, share=100 * share
            )
        )


def _with_time_left(phrase: str, seconds: float) -> str:
    if seconds < 1.5:
        return phrase
    if seconds < 90.0:
        text = translate("plate", "{phrase}, about {count:.0f} s left")
        return text.format(phrase=phrase, count=seconds)
    text = translate("plate", "{phrase}, about {count:.0f} min left")
    return text.format(phrase=phrase, count=seconds / 60)


class MessageCard(Plate):
    """A sentence, what it is about, and buttons.

    Signals
    -------
    chosen
        Words of the button that was pressed, as they stand in `opening_questions`.
    """

    chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._title, self._text = QLabel(), SoftLabel()
        self._title.setFont(font(15, 600))
        self._details = SoftLabel()
        for label in (self._title, self._text, self._details):
            label.setWordWrap(True)
            label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            self.body.addWidget(label)
        self._details.hide()
        self._row = QHBoxLayout()
        self._row.setSpacing(20)
        self.body.addLayout(self._row)
        self.buttons: list[QPushButton] = []

    def set_message(
        self, title: str, text: str = "", buttons: Sequence[str] = (), details: str = ""
    ) -> None:
        """Show a message; `details` hide behind a button of that name."""
        self._title.setText(title)
        self._text.setText(text)
        self._text.setVisible(bool(text))
        self._details.setText(details)
        self._details.hide()
        self.setAccessibleName(title)
        self.setAccessibleDescription(text)
        while self._row.count():
            item = self._row.takeAt(0)
            widget = item.widget() if item is not None else None
            if widget is not None:
                widget.deleteLater()
        self.buttons = []
        for name in [*buttons, *([DETAILS] if details else [])]:
            button = link_button(translate("opening questions", name))
            button.clicked.connect(lambda _on, name=name: self._press(name))
            self._row.addWidget(button)
            self.buttons.append(button)
        self._row.addStretch(1)
        self.fit()

    def _press(self, name: str) -> None:
        if name == DETAILS and self._details.text():
            self._details.setVisible(self._details.isHidden())
            self.fit()
            return
        self.chosen.emit(name)
