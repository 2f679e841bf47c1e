"""Before and after: while a key is held the crown shows what it was before the last step."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLabel, QWidget

from stainmap.app.change import Change
from stainmap.app.job import JobRunner, Progress
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.plate import WIDTH_PX, Plate
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction

KEY = Qt.Key.Key_H
# Predictions that are kept: what was before the last step, before that, and the bare block.
_KEPT = 3
_EDGE_PX, _NARROW_PX, _FOOT_PX, _NARROW_FOOT_PX = 8, 700, 20, 48
_NOT_YET = marked("compare before", "Nothing has been predicted yet.")
_WORKING = marked("compare before", "Being worked out; what you see is as it is now.")
_END_KEY = marked("compare before", "Let the key go to see it as it is now.")
_END_MENU = marked("compare before", "Esc, or the entry of the menu View once more, ends it.")
_OTHER_SURFACE = marked(
    "compare before",
    "The step changed the surface itself: what was before it cannot be shown here.",
)


class BeforeMark(Plate):
    """A plate on the crown that says that something else than the open plan is shown."""

    def __init__(self, view: QWidget) -> None:
        super().__init__(view)
        self.setAccessibleName(translate("compare before", "What is shown instead"))
        self._title, self._text = QLabel(), SoftLabel()
        self._title.setFont(font(13, 600))
        self._labels = (self._title, self._text)
        for label in self._labels:
            label.setWordWrap(True)
            self.body.addWidget(label)
        self.body.setContentsMargins(12, 7, 12, 8)
        self.body.setSpacing(2)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.hide()

    @property
    def said(self) -> str:
        """What stands on it; empty while it is hidden."""
        return "" if self.isHidden() else f"{self._title.text()} {self._text.text()}"

    def say(self, title: str, text: str) -> None:
        """Show words at the foot of the view."""
        self._title.setText(title)
        self._text.setText(text)
        self.setAccessibleDescription(f"{title}. {text}")
        self.show()
        self.place()

    def place(self) -> None:
        """Stand at the foot of the view, in the middle."""
        view = self.parentWidget()
        if view is None:
            return
        # No wider than its words: the crown is what is to be seen.
        wide = max(label.fontMetrics().horizontalAdvance(label.text()) for label in self._labels)
        self.setFixedWidth(min(wide + 28, WIDTH_PX))
        self.fit()
        foot = _FOOT_PX if view.width() >= _NARROW_PX else _NARROW_FOOT_PX
        x = (view.width() - self.width()) // 2
        self.move(max(x, _EDGE_PX), max(view.height() - self.height() - foot, _EDGE_PX))
        self.raise_()


class BeforeDesk(QObject):
    """Shows the crown before the last step, or the bare block, for as long as that is wanted.

    Signals
    -------
    changed
        Something else is shown now, or nothing else any more.
    """

    changed = Signal()

    def __init__(
        self, session: Session, desk: CrownDesk, runner: JobRunner, parent: QObject | None = None
    ) -> None:
        super().__init__(parent)
        self._session, self._desk, self._runner = session, desk, runner
        self.mark = BeforeMark(desk.view)
        # Predictions by the state of the case that they are of.
        self._known: list[tuple[Case, Prediction]] = []
        self._bare: tuple[Case, Case] | None = None
        # What is wanted to be seen, if anything, and how that ends.
        self._wanted: Case | None = None
        self._is_bare = self._held = False
        self._title = ""
        self._worked_on: Case | None = None
        desk.view.installEventFilter(self)

    @property
    def shows_before(self) -> bool:
        """True while what was before the last step is shown, or is about to be."""
        return self._wanted is not None and not self._is_bare

    @property
    def shows_bare(self) -> bool:
        """True while the bare block is shown, or is about to be."""
        return self._wanted is not None and self._is_bare

    def refresh(self, change: Change) -> None:
        """Keep what is predicted; another step ends what is shown."""
        if change.touches("opened"):
            self._known.clear()
            self._bare = None
        if change.touches("opened", "history", "seen"):
            self.end()
        prediction = self._session.prediction
        if change.touches("appearance") and prediction is not None:
            self._keep(prediction.case, prediction)
            if self._wanted is not None:
                self._show()

    def _keep(self, state: Case, prediction: Prediction) -> None:
        case = self._session.case
        kept = [
            (one, known)
            for one, known in self._known
            # What was measured of another surface is large.
            if one is not state and case is not None and known.case.surface is case.surface
        ]
        self._known = [*kept, (state, prediction)][-_KEPT:]

    # --- asked for -----------------------------------------------------------------------

    def show_before(self, on: bool, *, held: bool = False) -> None:
        """Show what was before the last step, or end it."""
        self._ask(on, held=held, bare=False)

    def show_bare(self, on: bool, *, held: bool = False) -> None:
        """Show the bare block, or end it."""
        self._ask(on, held=held, bare=True)

    def _ask(self, on: bool, *, held: bool, bare: bool) -> None:
        if not on:
            self.end()
            return
        history, session = self._session.history, self._session
        self.end()
        busy = session.is_painting or self._desk.view.is_bare or self._desk.is_replaced
        if history is None or busy:
            self.changed.emit()
            return
        label = history.undo_label
        self._held, self._is_bare = held, bare or label is None
        if self._is_bare:
            self._wanted = self._without_stain(history.case)
            self._title = translate("compare before", "The bare block, without any stain")
            if not bare:
                self._title = translate(
                    "compare before", "The bare block: there is no step before this one"
                )
        else:
            self._wanted = history.entries[history.position - 1].case
            self._title = translate("compare before", "Before the last step: {label}").format(
                label=label
            )
        self._show()
        self.changed.emit()

    def _without_stain(self, case: Case) -> Case:
        from stainmap.app.compare import without_stain  # noqa: PLC0415 - slow to import

        if self._bare is None or self._bare[0] is not case:
            self._bare = (case, without_stain(case))
        return self._bare[1]

    def end(self) -> None:
        """Show the open case as it is."""
        if self._wanted is None:
            return
        self._wanted = None
        self.mark.hide()
        self._desk.put_in_place(None)
        self.changed.emit()

    # --- shown ---------------------------------------------------------------------------

    def _show(self) -> None:
        wanted, open_case = self._wanted, self._session.case
        if wanted is None or open_case is None:
            return
        if wanted.surface is not open_case.surface:
            self.mark.say(self._title, translate("compare before", _OTHER_SURFACE))
            return
        seen = self._session.seen
        found = next((p for one, p in self._known if one is wanted and p.seen == seen), None)
        if found is not None:
            self.mark.say(
                self._title,
                translate("compare before", _END_KEY)
                if self._held
                else translate("compare before", _END_MENU),
            )
            self._desk.put_in_place(found)
            return
        here = self._session.prediction
        if here is None or here.case.surface is not wanted.surface:
            self.mark.say(self._title, translate("compare before", _NOT_YET))
            return
        self.mark.say(self._title, translate("compare before", _WORKING))
        if self._worked_on is None:
            self._work_out(here, wanted)

    def _work_out(self, here: Prediction, wanted: Case) -> None:
        """Predict what was before, to the end: whoever looks again has it at once."""
        from stainmap.app.compare import predict_beside  # noqa: PLC0415 - slow to import

        self._worked_on = wanted

        def work(progress: Progress) -> Prediction:
            return predict_beside(here, wanted, progress)

        def done(found: Prediction) -> None:
            self._worked_on = None
            self._keep(wanted, found)
            self._show()

        def failed(error: StainmapError) -> None:
            self._worked_on = None
            if self._wanted is wanted:
                self.mark.say(self._title, str(error))

        self._runner.start(
            translate("compare before", "Before"), work, on_done=done, on_failed=failed
        )

    # --- the key -------------------------------------------------------------------------

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow the key on the crown, and let go with it, or when the crown loses the keyboard."""
        kind = event.type()
        if isinstance(event, QKeyEvent) and kind in (QEvent.Type.KeyPress, QEvent.Type.KeyRelease):
            return self._follow_key(event, pressed=kind == QEvent.Type.KeyPress)
        if kind in (QEvent.Type.FocusOut, QEvent.Type.WindowDeactivate, QEvent.Type.Hide):
            if self._held:
                self.end()
        elif kind == QEvent.Type.Resize and self._wanted is not None:
            self.mark.place()
        return super().eventFilter(watched, event)

    def _follow_key(self, event: QKeyEvent, *, pressed: bool) -> bool:
        """Return True if the key means something here."""
        if pressed and event.key() == Qt.Key.Key_Escape and self._wanted is not None:
            self.end()
            return True
        others = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
        if event.key() != KEY or (pressed and event.modifiers() & others):
            return False
        if event.isAutoRepeat():
            return True
        if pressed:
            bare = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self._ask(True, held=True, bare=bare)
        elif self._held:
            self.end()
        return True
