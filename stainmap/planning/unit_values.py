"""The value of each unit of a bridge beside that of its neighbours: one block has to suit all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from stainmap.model.case import Case
from stainmap.model.tooth import Unit
from stainmap.model.zone import Accent, Zone
from stainmap.planning.outcome import AreaOutcome, Outcome
from stainmap.planning.row import row_order


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitValue:
    """Mean value of one unit.

    Parameters
    ----------
    lightness
        Area-weighted mean L* of the body; of all zones of the outside where there is none.
    plus_minus
        One standard deviation of it.
    from_before
        L* less that of the unit before it in the row; None for the first.
    wall_mm
        Mean wall of the same place; the whole thickness where the ceramic is solid.
    """

    unit: Unit
    lightness: float
    plus_minus: float
    from_before: float | None
    wall_mm: float


def unit_values(case: Case, outcomes: Sequence[Outcome]) -> tuple[UnitValue, ...]:
    """Return the value of every unit, in the order of the row.

    Parameters
    ----------
    outcomes
        One for each unit of the case, over that unit alone. Units without any zone are left out.
    """
    means = {
        index: found
        for index, outcome in enumerate(outcomes)
        if (found := _mean(outcome)) is not None
    }
    order = [index for index in row_order(case.units) if index in means]
    before = {after: one for one, after in pairwise(order)}
    return tuple(
        UnitValue(
            unit=case.units[index],
            lightness=means[index][0],
            plus_minus=means[index][1],
            wall_mm=means[index][2],
            from_before=means[index][0] - means[before[index]][0] if index in before else None,
        )
        for index in order
    )


def _mean(outcome: Outcome) -> tuple[float, float, float] | None:
    body = outcome.area(Zone.BODY)
    areas: list[AreaOutcome] = [body] if body is not None else []
    if not areas:
        areas = [
            one
            for one in outcome.areas
            if not isinstance(one.area, Accent) and one.area is not Zone.INNER
        ]
    total = sum(one.area_mm2 for one in areas)
    if total <= 0.0:
        return None
    means = [
        (one.area_mm2 / total, one.predicted.lightness, one.plus_minus[0], one.wall_mm)
        for one in areas
    ]
    return (
        sum(share * lightness for share, lightness, _, _ in means),
        sum(share * plus_minus for share, _, plus_minus, _ in means),
        sum(share * wall for share, _, _, wall in means),
    )
