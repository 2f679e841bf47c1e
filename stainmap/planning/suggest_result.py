"""What is suggested: plans side by side with what they give, cost and survive."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from stainmap.errors import PlanError
from stainmap.model.colour import Colour
from stainmap.model.plan import StainPlan
from stainmap.model.zone import Area
from stainmap.planning.bench_days import Survival
from stainmap.words import translate

MOST_JARS: Final = 6
FEW_JARS: Final = 3

WITHIN_REACH_DE00: Final = 1.0
"""An area that no coats bring this near, CIEDE2000, is out of reach."""


class PlanKind(StrEnum):
    """What a suggested plan is distinguished by."""

    SUGGESTED = "suggested"
    FEW_JARS = "three jars"
    CLOSEST = "closest"
    OTHER_TRAY = "other liquids"
    NOTHING_INSIDE = "nothing inside"


@dataclass(frozen=True, slots=True, kw_only=True)
class SuggestedArea:
    """What a plan puts on an area, and what that is predicted to give."""

    area: Area
    label: str
    coats: tuple[tuple[str, int], ...]
    predicted: Colour
    wanted: Colour
    de00: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SuggestedPlan:
    """One of several plans.

    Parameters
    ----------
    areas
        Those that something is wanted of.
    inside
        Coats by liquid on the inner surface.
    score
        In the search's own measure, dE00; less is better.
    survival
        Of 1,000 simulated bench days that took no part in the choice.
    coats
        Rounds of painting, all steps together.
    minutes
        Of mixing and painting.
    on_whole_crown
        True if the colours are those of the whole crown's prediction; False in a first answer,
        where they are carried over from the suggested plan's.
    connectors
        What is said of the connectors of a bridge; empty where there are none.
    """

    kind: PlanKind
    plan: StainPlan
    areas: tuple[SuggestedArea, ...]
    inside: tuple[tuple[str, int], ...]
    score: float
    survival: Survival
    coats: int
    minutes: float
    connectors: str = ""
    on_whole_crown: bool = True

    @property
    def liquids(self) -> tuple[str, ...]:
        """Liquids on the tray, in painting order."""
        return tuple(jar.liquid for jar in self.plan.jars)

    @property
    def largest_de00(self) -> float:
        """The difference of the area that is furthest off."""
        return max(one.de00 for one in self.areas)

    def area(self, area: Area) -> SuggestedArea | None:
        """Return one area, or None."""
        return next((one for one in self.areas if one.area == area), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class JarWorth:
    """What a jar of the suggested plan is there for: the area that would suffer most without.

    `without` is what that area would be off then, `there` what it is with the jar, dE00.
    """

    liquid: str
    label: str
    there: float
    without: float


@dataclass(frozen=True, slots=True, kw_only=True)
class OutOfReach:
    """An area that no coats on this block bring within 1.0 dE00.

    `bare` is the block's own colour there, `nearest_de00` what the best coats for this area alone
    leave.
    """

    area: Area
    label: str
    wanted: Colour
    bare: Colour
    nearest_de00: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Suggestions:
    """Plans side by side, the suggested one first.

    Parameters
    ----------
    before
        dE00 of the plan that is in the case, by area.
    calibrated
        Whether block and liquids are.
    """

    plans: tuple[SuggestedPlan, ...]
    worth: tuple[JarWorth, ...]
    out_of_reach: tuple[OutOfReach, ...]
    before: tuple[tuple[Area, float], ...]
    block: str
    calibrated: bool

    def plan(self, kind: PlanKind) -> SuggestedPlan | None:
        """Return the plan of a kind, or None if it is the same as another."""
        return next((one for one in self.plans if one.kind is kind), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """What may be used: names of liquids at hand (all if None), and the most jars."""

    liquids: tuple[str, ...] | None = None
    most_jars: int = MOST_JARS

    def __post_init__(self) -> None:
        """Refuse a tray without a jar."""
        if self.most_jars < 1:
            raise PlanError(
                translate("suggest result", "A tray without a jar stains nothing."),
                advice=translate("suggest result", "Allow at least one."),
            )
