"""Says in the outcome what no coats can reach, worked out aside whenever something may be."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from stainmap.app.job import JobRunner, Progress
from stainmap.app.session import Session
from stainmap.ui.outcome_panel import OutcomePanel
from stainmap.ui.per_prediction import PerPrediction
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.planning.out_of_reach import OutOfReach


class ReachDesk(PerPrediction["tuple[OutOfReach, ...]"]):
    """Holds what is wanted against the bare block, where the plan falls short of it."""

    def __init__(
        self, session: Session, panel: OutcomePanel, runner: JobRunner, parent: QObject
    ) -> None:
        super().__init__(session, runner, parent)
        self._panel = panel

    def title(self) -> str:
        """Return what the work is called."""
        return translate("reach desk", "What can be reached")

    def wants(self, prediction: Prediction) -> bool:
        """Return True where an area falls short of what is wanted."""
        from stainmap.planning.out_of_reach import wants_looking  # noqa: PLC0415

        return wants_looking(prediction.outcome)

    def work(self, prediction: Prediction, progress: Progress) -> tuple[OutOfReach, ...]:
        """Look at the bare block."""
        from stainmap.planning.out_of_reach import out_of_reach  # noqa: PLC0415

        # A plan that was changed meanwhile is not looked at.
        progress(0.0, translate("reach desk", "the bare block"))
        return out_of_reach(
            prediction.case,
            prediction.ground,
            prediction.layout,
            seen=prediction.seen,
            here=prediction.outcome,
            like=prediction.engine,
        )

    def show(self, found: tuple[OutOfReach, ...] | None) -> None:
        """Say what is out of reach."""
        self._panel.set_out_of_reach(found or ())
