"""Everything the instructor's sheet prints, as plain values."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from stainmap.errors import LabbookError
from stainmap.paper.page_size import PageSize

BUILT_IN = "built in"
"""Printed for an attempt that belongs to no pack."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CurveLine:
    """A skill over its tries: scores and levels 0 to 100, as many of each, oldest first.

    `gain` is how much the level has risen, None where there were too few tries to say.
    """

    skill: str
    scores: tuple[float, ...]
    levels: tuple[float, ...]
    first_on: date | None = None
    last_on: date | None = None
    gain: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ThresholdLine:
    """A just-noticeable difference in L*, one sd, and the day it was measured.

    `below_screen`: it is smaller than that, which is the finest step the screen showed.
    """

    on: date
    threshold_dl: float
    sd_dl: float
    below_screen: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RepeatLine:
    """An exercise to be repeated, the day, and which repeat it is."""

    exercise: str
    seed: int
    due_on: date
    number: int
    of: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AttemptLine:
    """One try: day, exercise, crown, minutes, score, and the short hash of its pack."""

    on: date
    exercise: str
    seed: int
    minutes: float
    score: float
    pack: str = BUILT_IN


@dataclass(frozen=True, slots=True, kw_only=True)
class TraineePart:
    """What is printed about one trainee. `weakest` is the skill to practise next, or empty."""

    code: str
    curves: tuple[CurveLine, ...]
    attempts: tuple[AttemptLine, ...]
    thresholds: tuple[ThresholdLine, ...] = ()
    repeats: tuple[RepeatLine, ...] = ()
    weakest: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PracticeSheet:
    """The sheet of one or more trainees.

    Parameters
    ----------
    day
        Date of the sheet.
    trainees
        In the order of printing.
    pack_title, pack_hash
        The pack whose results are shown, its SHA-256; empty for all results there are.
    page
        Paper format.
    """

    day: date
    trainees: tuple[TraineePart, ...]
    pack_title: str = ""
    pack_hash: str = ""
    page: PageSize = PageSize.A4

    def __post_init__(self) -> None:
        """Refuse a sheet about nobody."""
        if not self.trainees:
            raise LabbookError(
                "There is no trainee to print.", advice="Let somebody practise, or choose others."
            )
