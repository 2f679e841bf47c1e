"""Everything that is measured of a planned answer; what it is worth is said by `scoring_points`."""

from __future__ import annotations

import itertools
from dataclasses import dataclass

import numpy as np

from stainmap.model.case import Case
from stainmap.model.zone import Accent, Area, Zone
from stainmap.planning.coat_limits import Excess
from stainmap.practice.exercise import Kind
from stainmap.practice.exercise_task import Task
from stainmap.practice.judged_looks import AreaLook, judged_looks
from stainmap.practice.scoring_plan import (
    Bare,
    OutOfTurn,
    bare_places,
    coats_of,
    left_out,
    limit_faults,
    mixing_faults,
    out_of_turn,
)
from stainmap.practice.scoring_reach import AreaReach, area_reaches

PAINTED_CONNECTOR = 0.4
"""Coats more than at the start from which a place of a connector is painted; assumed."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Measures:
    """What an answer reached and what it did wrong.

    An answer is worse than another if none of these is better and one at least is worse: how far
    any area is off, how much of it is bare or unpainted, how many coats it has beyond the true
    answer, how much greener its cusps are; jars, coats beyond usual limits, mixing faults, areas
    out of turn, coats left out that were given. The score never rises then: it is made of these
    alone, and of none of them does more give more.

    Parameters
    ----------
    reaches
        How near every area comes, by itself.
    bare
        What was left bare.
    connectors
        The painted share of every connector; empty where none are asked for.
    cusp_a, wanted_cusp_a
        a* of the cusps, and what is wanted; zeros where the crown has none.
    coats, enough_coats
        Coats of every area, and those of the true answer.
    jars, enough_jars
        Jars on the tray, and those of the true answer.
    limits
        Usual limits that are exceeded.
    mixing
        Jars that are mixed wrongly, those beyond the true answer's.
    turn
        What is painted out of turn.
    left_out
        Painted cells of the plan that was given, which are missing now.
    """

    reaches: tuple[AreaReach, ...]
    bare: Bare
    connectors: tuple[float, ...]
    cusp_a: float
    wanted_cusp_a: float
    coats: dict[Area, int]
    enough_coats: dict[Area, int]
    jars: int
    enough_jars: int
    limits: tuple[Excess, ...]
    mixing: tuple[str, ...]
    turn: OutOfTurn
    left_out: int

    def more_coats(self, area: Area) -> int:
        """Return how many coats an area has beyond the true answer."""
        return max(self.coats.get(area, 0) - self.enough_coats.get(area, 0), 0)


def plan_measures(task: Task, case: Case) -> Measures:
    """Return what is measured of an answer.

    Parameters
    ----------
    case
        As `Task.judged` returns it.
    """
    looks, true = judged_looks(task, case), judged_looks(task, task.true)
    start = judged_looks(task, task.start)
    mixing = mixing_faults(case)
    allowed = len(mixing_faults(task.true))
    cusps = (looks[Zone.CUSP].lab[1], true[Zone.CUSP].lab[1]) if Zone.CUSP in looks else (0.0, 0.0)
    return Measures(
        reaches=area_reaches(task, looks, start, true),
        bare=bare_places(task, looks, true),
        connectors=_connectors(task, looks, start),
        cusp_a=cusps[0],
        wanted_cusp_a=cusps[1],
        coats={area: coats_of(task, area, look) for area, look in looks.items()},
        enough_coats={area: coats_of(task, area, look) for area, look in true.items()},
        jars=len(case.plan.jars),
        enough_jars=len(task.true.plan.jars),
        limits=limit_faults(case),
        mixing=mixing[allowed:],
        turn=out_of_turn(task, case, looks, true),
        left_out=left_out(task.start, case),
    )


def _connectors(
    task: Task, looks: dict[Area, AreaLook], start: dict[Area, AreaLook]
) -> tuple[float, ...]:
    """Return the painted share of every connector, each of them by itself."""
    mask, case = task.true.accent(Accent.CONNECTOR), task.true
    if task.kind is not Kind.BRIDGE_APART or mask is None or Accent.CONNECTOR not in looks:
        return ()
    more = looks[Accent.CONNECTOR].own - start[Accent.CONNECTOR].own
    sizes = case.surface.mesh.vertex_areas * (mask > 0.5)
    along = case.surface.mesh.vertices @ np.array(case.reading.mesial)
    middles = [
        float(along[case.reading.unit_index == unit].mean()) for unit in range(len(case.units))
    ]
    borders = [0.5 * (one + other) for one, other in itertools.pairwise(middles)]
    nearest = np.abs(along[:, None] - np.array(borders)).argmin(axis=1)
    shares = []
    for number in range(len(borders)):
        own = np.where(nearest == number, sizes, 0.0)
        painted = float(own @ (more >= PAINTED_CONNECTOR))
        shares.append(painted / max(float(own.sum()), 1e-9))
    return tuple(shares)
