"""A score and what it is made of: points for what was reached, points off for faults."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from enum import IntEnum
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.practice.exercise import Skill
from stainmap.words import translate

FLOOR: Final = 10.0
"""No score is lower: what was handed in has been tried."""
FULL: Final = 100.0
_ROUNDING = 1e-6
_WELL = 0.95


@dataclass(frozen=True, slots=True, kw_only=True)
class ScorePart:
    """One thing that was looked at.

    Parameters
    ----------
    name
        A few words, as on the score page.
    most
        Points there are for it; 0 for faults, which only cost.
    points
        Points it got, `most` at best; below zero for faults.
    worst
        Points it can cost at worst, `most` for what is reached.
    sentence
        What was found, and why it counts so.
    """

    skill: Skill
    name: str
    most: float
    points: float
    worst: float
    sentence: str

    @property
    def lost(self) -> float:
        """Points that are missing."""
        return self.most - self.points

    @property
    def share(self) -> float:
        """How much of it is right, 0 to 1."""
        return 1.0 if self.worst <= 0.0 else 1.0 - self.lost / self.worst


class Mark(IntEnum):
    """What is drawn over the crown at a vertex."""

    NOTHING = 0
    MISSED = 1
    EXTRA = 2
    OTHER = 3


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Overlay:
    """What is to be seen on the crown.

    Parameters
    ----------
    marks
        (V,) uint8, numbers of `Mark`.
    words
        What each mark that occurs means.
    """

    marks: NDArray[np.uint8]
    words: tuple[tuple[Mark, str], ...]

    def __post_init__(self) -> None:
        """Make the array read-only."""
        self.marks.flags.writeable = False


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Score:
    """What an answer is worth, and why.

    Parameters
    ----------
    value
        10 (the floor) to 100.
    best, worst
        The best and the worst thing, one sentence each.
    overlay
        What was missed and what is too much, or None where there is nothing to draw.
    details
        Figures to be kept with the attempt.
    lesson
        How it comes about and what helps; empty where the parts say it all.
    rule
        How it was judged, where the parts do not say it; one or two sentences.
    """

    value: float
    parts: tuple[ScorePart, ...]
    best: str
    worst: str
    overlay: Overlay | None = None
    details: dict[str, float | str] = field(default_factory=dict)
    lesson: str = ""
    rule: str = ""

    @property
    def skills(self) -> dict[str, float]:
        """0 to 100 for every skill that was asked for."""
        found: dict[str, float] = {}
        for skill in dict.fromkeys(part.skill for part in self.parts):
            own = [part for part in self.parts if part.skill is skill]
            worst = sum(part.worst for part in own)
            if worst > 0.0:
                share = 1.0 - sum(part.lost for part in own) / worst
                found[skill.value] = FULL * min(max(share, 0.0), 1.0)
        return found


def total(
    parts: Sequence[ScorePart],
    overlay: Overlay | None = None,
    *,
    empty: bool = False,
    details: dict[str, float | str] | None = None,
    lesson: str = "",
    rule: str = "",
) -> Score:
    """Return the score of some parts: their points together, not below the floor.

    Parameters
    ----------
    empty
        Nothing was done: the floor, whatever the parts say.
    details, lesson, rule
        As of `Score`.
    """
    points = sum(part.points for part in parts)
    value = FLOOR if empty else min(max(points, FLOOR), FULL)
    worst = max(parts, key=lambda part: part.lost)
    flawless = worst.lost < _ROUNDING
    return Score(
        value=round(value, 1),
        parts=tuple(parts),
        best=_best([part for part in parts if flawless or part is not worst], empty=empty),
        worst=translate("score", "Nothing is missing.") if flawless else worst.sentence,
        overlay=overlay,
        details=details or {},
        lesson=lesson,
        rule=rule,
    )


def _best(parts: Sequence[ScorePart], *, empty: bool) -> str:
    """Return the best of what was found, none of which is the worst: what was reached, mostly.

    Faults that were not made come after it: whoever reached little kept to the usual order at
    least.
    """
    gained = [part for part in parts if part.points > _ROUNDING]
    well = [part for part in gained if part.share > _WELL]
    well = well or [part for part in parts if part.most <= 0.0 and part.lost < _ROUNDING]
    well = well or gained
    if empty or not well:
        return translate("score", "A beginning is made: look at the true answer, then try again.")
    return max(well, key=lambda part: part.points).sentence


def reached(skill: Skill, name: str, most: float, share: float, sentence: str) -> ScorePart:
    """Return a part for something that is reached to a share of 0 to 1."""
    kept = min(max(share, 0.0), 1.0)
    return ScorePart(
        skill=skill, name=name, most=most, points=most * kept, worst=most, sentence=sentence
    )


def fault(skill: Skill, name: str, cost: float, cap: float, sentence: str) -> ScorePart:
    """Return a part for faults that cost points, never more than the cap."""
    return ScorePart(
        skill=skill,
        name=name,
        most=0.0,
        points=-min(max(cost, 0.0), cap),
        worst=cap,
        sentence=sentence,
    )
