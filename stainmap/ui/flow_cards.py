"""The cards that lie on the crown view while something is opened, and the room they leave it."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject
from PySide6.QtWidgets import QWidget

from stainmap.ui.crown_view import CrownView
from stainmap.ui.open_card import OpenCard
from stainmap.ui.plate import MessageCard, Plate, ProgressCard

_EDGE_PX = 12
_NARROW_PX = 700


class FlowCards(QObject):
    """Progress, messages and questions in their places; the crown keeps clear of them."""

    def __init__(self, view: CrownView, parent: QObject) -> None:
        super().__init__(parent)
        self._view = view
        # What is asked on the crown, and whether an unread mesh stands in the view.
        self._asking = ""
        self._aside = False
        self.progress, self.message = ProgressCard(view), MessageCard(view)
        self.questions = OpenCard(view)
        self.progress.hide()
        self.message.hide()
        self.questions.resized.connect(self._place_questions)
        view.installEventFilter(self)

    def _say(self, title: str, text: str, buttons: tuple[str, ...], details: str = "") -> None:
        self.message.set_message(title, text, buttons, details)
        self.message.show()
        self._place(self.message)

    def _show_questions(self) -> None:
        self.questions.show()
        self._place_questions()
        self.questions.take_focus()

    def _hide_questions(self) -> None:
        if not self.questions.isHidden():
            self.questions.hide()
            self._keep_clear()
            self._view.setFocus()

    def _place_questions(self) -> None:
        if self.questions.isHidden():
            return
        self.questions.move(_EDGE_PX, _EDGE_PX)
        self.questions.raise_()
        self._view.keep_clear_of(self.questions)

    def _place(self, card: Plate) -> None:
        card.fit()
        x = (self._view.width() - card.width()) // 2
        # In a narrow view the card would lie on the scale.
        foot = 20 if self._view.width() >= _NARROW_PX else 48
        card.move(max(x, 8), max(self._view.height() - card.height() - foot, 8))
        card.raise_()
        self._keep_clear()

    def _keep_clear(self) -> None:
        """Fit the crown beside what is to be read, answered or waited for while looking at it."""
        card: QWidget | None = None
        if not self.questions.isHidden():
            card = self.questions
        elif not self.message.isHidden():
            card = self.message
        elif self._aside and not self.progress.isHidden():
            card = self.progress
        own = (self.questions, self.message, self.progress)
        evaded = self._view.evaded
        if card is None and evaded is not None and evaded not in own:
            # Somebody else's card lies there.
            return
        if card is not evaded:
            self._view.keep_clear_of(card)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep the cards in their place when the view changes its size."""
        if watched is self._view and event.type() == QEvent.Type.Resize:
            self._place(self.progress)
            self._place(self.message)
        return super().eventFilter(watched, event)
