"""How closely a coat map was followed: coats place by place, and order cell by cell."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.zone import Area
from stainmap.planning.coats import CoatLayout
from stainmap.planning.streaks import streak_shares
from stainmap.practice.exercise_task import Task

Cell = tuple[str, Area]


@dataclass(frozen=True, slots=True, kw_only=True)
class MapFollowed:
    """How closely a coat map was followed.

    Parameters
    ----------
    coats
        Overlap of the coats of every liquid at every place, 0 to 1. Borders count as sharp: what
        is feathered from one area into the next neither helps nor harms there.
    order
        Share of pairs of cells that are painted in the order of the map, 0 to 1.
    wrong
        The liquid that is furthest from the map; empty if none is.
    """

    coats: float
    order: float
    wrong: str


def map_followed(task: Task, case: Case) -> MapFollowed:
    """Return how closely an answer follows the map.

    The overlap is the sum of the smaller over the sum of the larger number of coats, and falls
    with every coat that is missing or too many, wherever that is.
    """
    sizes = task.true.surface.mesh.vertex_areas
    layout = task.looker.layout
    true, own = _by_liquid(layout, task.true), _by_liquid(layout, case)
    common = total = 0.0
    worst, wrong = 0.0, ""
    for liquid in dict.fromkeys([*true, *own]):
        nothing = np.zeros(len(sizes))
        one, other = true.get(liquid, nothing), own.get(liquid, nothing)
        shared = float(sizes @ np.minimum(one, other))
        all_ = float(sizes @ np.maximum(one, other))
        common, total = common + shared, total + all_
        if all_ - shared > worst:
            worst, wrong = all_ - shared, liquid
    return MapFollowed(
        coats=common / total if total > 0.0 else 0.0,
        order=_order_kept(painted_cells(task.true), painted_cells(case)),
        wrong=wrong,
    )


def _by_liquid(layout: CoatLayout, case: Case) -> dict[str, NDArray[np.float64]]:
    """Return the coats (V,) of every liquid, borders sharp."""
    everywhere = np.arange(len(case.zones), dtype=np.int32)
    found: dict[str, NDArray[np.float64]] = {}
    sharp = layout.unsoftened(case, case.zones, everywhere).astype(np.float64)
    for index, step in enumerate(case.plan.steps):
        coats = sharp[index]
        for streaks in step.streaks:
            coats += streaks.coats * streak_shares(
                case.surface.mesh, case.zones, case.reading, streaks
            )
        if step.brushed is not None:
            coats[step.brushed.vertices] += step.brushed.coats
        liquid = case.plan.liquid_of(step)
        found[liquid] = found.get(liquid, np.zeros(len(coats))) + np.maximum(coats, 0.0)
    return found


def painted_cells(case: Case) -> list[tuple[int, int, Cell]]:
    """Return (first step, last step, (liquid, area)) of every cell that is painted."""
    found: dict[Cell, tuple[int, int]] = {}
    for index, step in enumerate(case.plan.steps):
        for entry in step.areas:
            if entry.coats.high > 0:
                cell = (case.plan.liquid_of(step), entry.area)
                found[cell] = (found.get(cell, (index, index))[0], index)
    return [(first, last, cell) for cell, (first, last) in found.items()]


def _order_kept(
    true: Sequence[tuple[int, int, Cell]], own: Sequence[tuple[int, int, Cell]]
) -> float:
    """Return the share of pairs of cells in different steps whose order is that of the map.

    The last coat of one has to come before the first of the other: a cell that is painted once
    more, too early, sets nothing right.
    """
    place = {cell: (first, last) for first, last, cell in own}
    kept = pairs = 0
    for (one, _, cell), (other, _, later) in combinations(true, 2):
        if one == other:
            continue
        pairs += 1
        before, after = (cell, later) if one < other else (later, cell)
        if before in place and after in place and place[before][1] < place[after][0]:
            kept += 1
    return 1.0 if pairs == 0 else kept / pairs
