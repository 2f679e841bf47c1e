"""What is worked out aside after every prediction, one job at a time, for that prediction only."""

from __future__ import annotations

from typing import TYPE_CHECKING, Generic, TypeVar

from PySide6.QtCore import QObject

from stainmap.app.change import Change
from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.session import Session
from stainmap.errors import CancelledError, StainmapError

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction

T = TypeVar("T")


class PerPrediction(QObject, Generic[T]):
    """Starts its work anew with every prediction and drops what is late; heirs say what it is."""

    def __init__(self, session: Session, runner: JobRunner, parent: QObject) -> None:
        super().__init__(parent)
        self._session, self._runner = session, runner
        self._job: Job[T] | None = None

    def title(self) -> str:
        """Return what the work is called."""
        raise NotImplementedError

    def wants(self, prediction: Prediction) -> bool:
        """Return False where there is nothing to be worked out."""
        raise NotImplementedError

    def work(self, prediction: Prediction, progress: Progress) -> T:
        """Work it out, in another thread; a first word of progress ends what is not wanted."""
        raise NotImplementedError

    def show(self, found: T | None) -> None:
        """Show what was found; None while nothing is known of the open plan."""
        raise NotImplementedError

    def refresh(self, change: Change) -> None:
        """Begin again after every prediction."""
        if change.touches("opened"):
            self.show(None)
        if not change.touches("opened", "outcome"):
            return
        if self._job is not None:
            self._job.cancel()
            self._job = None
        prediction = self._session.prediction
        if prediction is None or not self.wants(prediction):
            self.show(None)
            return
        job = self._runner.start(
            self.title(),
            lambda progress: self.work(prediction, progress),
            on_done=lambda found: self._take(prediction, found),
            on_failed=self._failed,
        )
        self._job = None if job.is_finished else job

    def _take(self, prediction: Prediction, found: T) -> None:
        # What was worked out for a plan that has been changed since is not shown.
        if self._session.prediction is prediction:
            self.show(found)

    def _failed(self, error: StainmapError) -> None:
        # Nothing is shown rather than what holds for another plan.
        if not isinstance(error, CancelledError):
            self.show(None)
