"""What is wanted and cannot be painted: stain only lowers value and adds chroma."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

from stainmap.model.case import Case
from stainmap.model.zone import Area
from stainmap.planning.coats import CoatLayout
from stainmap.planning.other_plan import outcome_of_plan
from stainmap.planning.outcome import Outcome
from stainmap.planning.reach import too_dark
from stainmap.predict.appearance import AppearanceEngine
from stainmap.predict.grinding import GroundCrown
from stainmap.predict.seen import Seen
from stainmap.words import marked

WHY: Final = marked("out of reach", "not reachable: stain only lowers value and adds chroma")


@dataclass(frozen=True, slots=True, kw_only=True)
class OutOfReach:
    """An area that is wanted lighter, or duller, than the bare block is there.

    Parameters
    ----------
    axis
        "L*" or "C*": of which `wanted` and `bare` are the values.
    """

    area: Area
    label: str
    axis: str
    wanted: float
    bare: float


def wants_looking(outcome: Outcome) -> bool:
    """Return True if an area is wanted lighter, or duller, than its plan gives.

    Where none is, nothing can be out of reach in this sense, and the bare block need not be
    predicted.
    """
    return any(
        one.wanted is not None and not one.refused and too_dark(one.wanted, one.predicted)
        for one in outcome.areas
    )


def out_of_reach(
    case: Case,
    ground: GroundCrown,
    layout: CoatLayout,
    *,
    seen: Seen,
    here: Outcome,
    like: AppearanceEngine | None = None,
) -> tuple[OutOfReach, ...]:
    """Return the areas that no coats bring to what is wanted, in the order of the outcome.

    Held to the bare block on this crown, light and backing, by more than 1 in L* or 2 in C*.
    Parameters are those of `order_effect`.
    """
    bare = outcome_of_plan(
        replace(case, plan=replace(case.plan, steps=())), ground, layout, seen=seen, like=like
    )
    found = []
    for one in here.areas:
        other = bare.area(one.area)
        if other is None or one.wanted is None or one.refused:
            continue
        axis = too_dark(one.wanted, other.predicted)
        if not axis:
            continue
        values = (
            (one.wanted.lightness, other.predicted.lightness)
            if axis == "L*"
            else (one.wanted.chroma, other.predicted.chroma)
        )
        found.append(
            OutOfReach(area=one.area, label=one.label, axis=axis, wanted=values[0], bare=values[1])
        )
    return tuple(found)
