"""Suggest coats, at work: searched in the background, shown side by side, taken as one step."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.session import Session
from stainmap.errors import CancelledError, StainmapError
from stainmap.ui.asking import ask, while_there
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.app.suggesting import BlocksSideBySide
    from stainmap.planning.reach import BlockReach
    from stainmap.planning.suggest_result import Stock, SuggestedPlan, Suggestions
    from stainmap.ui.suggest_dialog import SuggestDialog

_NOT_READY = marked("suggest desk", "The prediction is not ready yet.")


class SuggestDesk(QObject):
    """Opens the dialog, runs its searches, and makes what was taken the plan.

    Signals
    -------
    said
        A sentence for the status line.
    beside_asked
        `Suggestions`, and the `SuggestedPlan` among them that is to be seen beside the open plan.
    """

    said = Signal(str)
    beside_asked = Signal(object, object)
    # Carries a first answer out of the thread that found it.
    _found = Signal(object, object)

    def __init__(self, session: Session, runner: JobRunner, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._runner, self._window = session, runner, window
        self._job: Job[Any] | None = None
        self._found.connect(lambda dialog, found: while_there(dialog, dialog.set_plans)(found))

    def open(self) -> None:
        """Search, and show what was found."""
        from stainmap.ui.suggest_dialog import SuggestDialog  # noqa: PLC0415 - slow to import

        prediction = self._session.prediction
        if prediction is None or not self._session.is_up_to_date:
            self.said.emit(translate("suggest desk", _NOT_READY))
            return
        case = prediction.case
        names = [one.name for one in case.materials.liquids]
        dialog = SuggestDialog(names, case.plan.block, self._window)
        dialog.asked.connect(lambda stock: self._search(dialog, prediction, stock))
        dialog.stopped.connect(self._stop)
        dialog.taken.connect(lambda chosen: self._take(dialog, chosen))
        dialog.beside_asked.connect(lambda found, plan: self._show_beside(dialog, found, plan))
        dialog.start()
        ask(dialog)

    def _stop(self) -> None:
        if self._job is not None:
            self._job.cancel()

    def _search(self, dialog: SuggestDialog, prediction: Prediction, stock: Stock) -> None:
        """Look for coats on the case's block, then at all blocks."""
        from stainmap.app.suggesting import compare_blocks, suggest_coats  # noqa: PLC0415 - slow to import

        def work(progress: Progress) -> Suggestions:
            return suggest_coats(
                prediction,
                stock=stock,
                progress=progress,
                on_first=lambda found: self._found.emit(dialog, found),
            )

        def done(found: Suggestions) -> None:
            dialog.set_plans(found)
            self._start(dialog, translate("suggest desk", "Comparing blocks"), blocks, compared)

        def blocks(progress: Progress) -> BlocksSideBySide:
            return compare_blocks(prediction, stock=stock, progress=progress)

        def compared(found: BlocksSideBySide) -> None:
            dialog.set_blocks(found)
            dialog.end_work()

        self._start(dialog, translate("suggest desk", "Suggesting coats"), work, done)

    def _start(self, dialog: SuggestDialog, title: str, work: Any, done: Any) -> None:
        dialog.show_progress(0.0, title)

        def failed(error: StainmapError) -> None:
            stopped = isinstance(error, CancelledError)
            dialog.end_work(translate("suggest desk", "Stopped.") if stopped else str(error))

        self._job = self._runner.start(
            title,
            work,
            on_done=while_there(dialog, done),
            on_failed=while_there(dialog, failed),
            on_progress=while_there(
                dialog, lambda job: dialog.show_progress(job.share, job.phrase)
            ),
        )

    def _show_beside(self, dialog: SuggestDialog, found: Suggestions, plan: SuggestedPlan) -> None:
        """Leave the dialog for two crowns side by side; what was found goes along."""
        self._stop()
        dialog.accept()
        self.beside_asked.emit(found, plan)

    def _take(self, dialog: SuggestDialog, chosen: SuggestedPlan | BlockReach) -> None:
        """Make a plan the open case's, as one undo step."""
        from stainmap.app.suggesting import with_suggested  # noqa: PLC0415 - slow to import
        from stainmap.planning.reach import BlockReach  # noqa: PLC0415 - slow to import
        from stainmap.planning.suggest_words import title_of  # noqa: PLC0415 - slow to import

        if isinstance(chosen, BlockReach):
            label = translate("suggest desk", "take {block} with its coats").format(
                block=chosen.block
            )
        else:
            label = translate("suggest desk", "take suggested coats ({title})").format(
                title=title_of(chosen.kind, inside=True)
            )
        self._stop()
        dialog.accept()
        try:
            self._session.edit(label, lambda case: with_suggested(case, chosen.plan))
        except StainmapError as error:
            self.said.emit(str(error))
