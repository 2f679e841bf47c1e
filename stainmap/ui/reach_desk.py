"""Says in the outcome what no coats can reach, worked out aside whenever something may be."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from stainmap.app.change import Change
from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.session import Session
from stainmap.ui.outcome_panel import OutcomePanel
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.planning.out_of_reach import OutOfReach


class ReachDesk(QObject):
    """Holds what is wanted against the bare block, where the plan falls short of it."""

    def __init__(
        self, session: Session, panel: OutcomePanel, runner: JobRunner, parent: QObject
    ) -> None:
        super().__init__(parent)
        self._session, self._panel, self._runner = session, panel, runner
        self._job: Job[tuple[OutOfReach, ...]] | None = None

    def refresh(self, change: Change) -> None:
        """Look again after every prediction."""
        if change.touches("opened"):
            self._panel.set_out_of_reach(())
        if not change.touches("opened", "outcome"):
            return
        if self._job is not None:
            self._job.cancel()
            self._job = None
        prediction = self._session.prediction
        if prediction is None or not _wants_looking(prediction):
            self._panel.set_out_of_reach(())
            return
        job = self._runner.start(
            translate("reach desk", "What can be reached"),
            lambda progress: _found(prediction, progress),
            on_done=lambda found: self._show(prediction, found),
            on_failed=lambda _error: None,
        )
        self._job = None if job.is_finished else job

    def _show(self, prediction: Prediction, found: tuple[OutOfReach, ...]) -> None:
        # What was worked out for a plan that has been changed since is not shown.
        if self._session.prediction is prediction:
            self._panel.set_out_of_reach(found)


def _found(prediction: Prediction, progress: Progress) -> tuple[OutOfReach, ...]:
    from stainmap.planning.out_of_reach import out_of_reach  # noqa: PLC0415

    progress(
        0.0, translate("reach desk", "the bare block")
    )  # a plan that was changed meanwhile is not looked at
    return out_of_reach(
        prediction.case,
        prediction.ground,
        prediction.layout,
        seen=prediction.seen,
        here=prediction.outcome,
        like=prediction.engine,
    )


def _wants_looking(prediction: Prediction) -> bool:
    from stainmap.planning.out_of_reach import wants_looking  # noqa: PLC0415

    return wants_looking(prediction.outcome)
