"""The newest prediction of the open case, and the work on the next one."""

from __future__ import annotations

import threading
from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.app.job import JobRunner, Progress
from stainmap.errors import StainmapError
from stainmap.model.case import Case
from stainmap.predict.seen import Seen
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.surface.diffusion import SurfaceOperator

# A crown is soon drawn, or not at all: by then the prediction of it begins.
_DRAWN_WITHIN_S = 0.6
# Case fields that change what is seen or how it is judged; notes and the like cause no work.
PREDICTED_FROM = frozenset(
    {
        "surface",
        "reading",
        "units",
        "zones",
        "accents",
        "plan",
        "materials",
        "backings",
        "programme",
        "target",
        "process",
        "after_sintering",
        "screw_channels",
        # What a new revision is printed from must count as predicted.
        "printed",
        "bench",
        "intake",
        # Nothing is predicted from it, but the newest prediction is to be that of the open case.
        "hidden_advice",
    }
)


class Predicting:
    """Predicts whatever case is open, one at a time, until the newest is the open one's.

    Parameters
    ----------
    jobs
        Does the work.
    case
        Tells which case is open now.
    on_ready
        Called with every new prediction.
    on_problem
        Called where the open case cannot be predicted.
    """

    def __init__(
        self,
        jobs: JobRunner,
        *,
        case: Callable[[], Case | None],
        on_ready: Callable[[Prediction], None],
        on_problem: Callable[[StainmapError], None],
    ) -> None:
        self._jobs = jobs
        self._case = case
        self._on_ready = on_ready
        self._on_problem = on_problem
        self._operator: SurfaceOperator | None = None
        self._under_way = False
        self.seen = Seen()
        self.newest: Prediction | None = None
        self.first_look: NDArray[np.uint8] | None = None
        self._is_drawn = threading.Event()

    @property
    def is_up_to_date(self) -> bool:
        """True if the newest prediction is that of the open case as it is looked at."""
        newest = self.newest
        return newest is not None and newest.case is self._case() and newest.seen == self.seen

    @property
    def shown_srgb(self) -> NDArray[np.uint8] | None:
        """Colours (V, 3) to show: predicted, or last seen as long as nothing is predicted."""
        return self.first_look if self.newest is None else self.newest.appearance.srgb

    def forget(
        self, operator: SurfaceOperator | None = None, first_look: NDArray[np.uint8] | None = None
    ) -> None:
        """Drop what was predicted: another surface is open, whose operator may be at hand."""
        self.newest = None
        self._operator = operator
        self.first_look = first_look
        self._is_drawn.clear()

    def first_look_is_drawn(self) -> None:
        """Go on: libraries that are imported beside the drawing would hold it up.

        Only one thread of Python runs at a time.
        """
        self._is_drawn.set()

    def carry_over(self, before: Case | None) -> None:
        """Count what was predicted for `before` as the open case's.

        For cases that differ in nothing that is predicted from, such as a note.
        """
        newest, current = self.newest, self._case()
        if newest is not None and current is not None and newest.case is before:
            self.newest = replace(newest, case=current)

    def go_on(self) -> None:
        """Start predicting the open case, unless that is under way or needless."""
        case, previous, operator, seen = self._case(), self.newest, self._operator, self.seen
        if self._under_way or case is None or self.is_up_to_date:
            return
        self._under_way = True
        shown_as_last_seen = (
            previous is None and self.first_look is not None and self._jobs.threaded
        )

        def work(progress: Progress) -> Prediction:
            if shown_as_last_seen:
                self._is_drawn.wait(_DRAWN_WITHIN_S)
            from stainmap.app.prediction import predict_case  # noqa: PLC0415

            return predict_case(
                case, previous=previous, operator=operator, seen=seen, progress=progress
            )

        def done(prediction: Prediction) -> None:
            self._under_way = False
            current = self._case()
            # Even a late one is nearer to the truth than what is shown, and saves measuring.
            if current is not None and prediction.case.surface is current.surface:
                self.newest = prediction
                self._on_ready(prediction)
            self.go_on()

        def failed(error: StainmapError) -> None:
            self._under_way = False
            if self._case() is case:
                self._on_problem(error)
            else:
                self.go_on()

        self._jobs.start(
            translate("predicting", "Predicting"), work, on_done=done, on_failed=failed
        )

    def close(self) -> None:
        """Let the work under way go."""
        self._is_drawn.set()
        self._jobs.close()
