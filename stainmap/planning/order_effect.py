"""What another order of the steps would change: what comes first finds more room in the pores."""

from __future__ import annotations

from dataclasses import dataclass, replace

from stainmap.model.case import Case
from stainmap.model.zone import Accent, Area, Zone
from stainmap.optics.difference import delta_e_00
from stainmap.planning.coats import CoatLayout
from stainmap.planning.other_plan import outcome_of_plan
from stainmap.planning.outcome import Outcome
from stainmap.predict.appearance import AppearanceEngine
from stainmap.predict.grinding import GroundCrown
from stainmap.predict.seen import Seen

_INSIDE = (Zone.INNER, Accent.INNER_NECK_BAND)


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaChange:
    """How far an area's predicted colour is from what it was, CIEDE2000."""

    area: Area
    label: str
    de00: float


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderEffect:
    """A step painted at another place in the order, both from 0.

    `areas` are those that can be seen, the one that changes most first.
    """

    step: int
    to: int
    areas: tuple[AreaChange, ...]

    @property
    def largest(self) -> AreaChange | None:
        """The area that changes most; None on a crown without areas."""
        return self.areas[0] if self.areas else None


def order_effect(
    case: Case,
    step: int,
    to: int,
    ground: GroundCrown,
    layout: CoatLayout,
    *,
    seen: Seen,
    here: Outcome,
    like: AppearanceEngine | None = None,
) -> OrderEffect:
    """Return what painting a step earlier or later would change.

    Full coats at the end of spans, before and after.

    Parameters
    ----------
    step, to
        The step and its new place, from 0.
    ground, layout
        The crown as it is seen, and the layout of its surface.
    seen
        How it is looked at.
    here
        The outcome in the order as it is, seen in the same way.
    like
        An engine for the same crown, whose ground work is shared.
    """
    moved = replace(case, plan=case.plan.moved_step(step, to))
    there = outcome_of_plan(moved, ground, layout, seen=seen, like=like)
    return OrderEffect(step=step, to=to, areas=changes(here, there))


def changes(before: Outcome, after: Outcome) -> tuple[AreaChange, ...]:
    """Return how far the areas of two outcomes of one crown are apart, the largest first.

    What lies inside the crown is not seen, and left out.
    """
    found = [
        AreaChange(
            area=one.area,
            label=one.label,
            de00=float(delta_e_00(one.predicted.lab, other.predicted.lab)),
        )
        for one in before.areas
        if one.area not in _INSIDE and (other := after.area(one.area)) is not None
    ]
    return tuple(sorted(found, key=lambda one: -one.de00))
