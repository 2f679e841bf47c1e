"""Exercises of every kind on one crown, made once for all tests."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
from scipy.spatial import cKDTree

from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Area, Zone
from stainmap.practice.exercise import Kind, exercise
from stainmap.practice.exercise_task import Task, make_task
from stainmap.practice.packs import PackedExercise

SEED = 3
ON_CROWNS = tuple(kind for kind in Kind if kind is not Kind.VALUE_BY_EYE)
ON_ONE_CROWN = tuple(kind for kind in ON_CROWNS if kind is not Kind.BRIDGE_APART)
PLANNED = tuple(kind for kind in ON_ONE_CROWN if kind.is_planned)
FROM_BARE = (Kind.REACH_SHADE, Kind.FEW_JARS)


def packed(kind: Kind, level: int = 2) -> PackedExercise:
    """Return an exercise on the one crown: what is dear is made once."""
    return PackedExercise(
        name="test", kind=kind.value, seed=SEED, teeth=(36,), settings={"level": level}
    )


@cache
def task_of(kind: Kind, level: int = 2) -> Task:
    return make_task(packed(kind, level))


@cache
def bridge_task() -> Task:
    """Return the exercise on a bridge; it takes five seconds to make."""
    return make_task(exercise(Kind.BRIDGE_APART, SEED, 2))


def with_more(case: Case, area: Area, coats: int) -> Case:
    """Return the case with more (or fewer) coats on an area, in the first step that paints it."""
    for index, step in enumerate(case.plan.steps):
        entry = step.entry(area)
        if entry is not None:
            count = int(np.clip(entry.coats.high + coats, 0, 9))
            changed = step.with_coats(area, CoatSpan.exactly(count))
            return replace(case, plan=case.plan.with_step(index, changed))
    return case


def bare_of(case: Case, area: Area) -> Case:
    """Return the case without any coats on an area."""
    plan = case.plan
    for index, step in enumerate(plan.steps):
        plan = plan.with_step(index, step.with_coats(area, None))
    return replace(case, plan=plan)


def misplaced(case: Case, zone: Zone, share: float, chance: np.random.Generator) -> Case:
    """Return the case with part of a zone called something that is nowhere near it.

    The part lies around a place by chance. What it is called instead is a zone of which nothing is
    within a millimetre, so that no border moves nearer to the truth.
    """
    vertices = case.surface.mesh.vertices
    own = np.flatnonzero(case.zones == int(zone))
    if not len(own):
        return case
    centre = vertices[own[int(chance.integers(len(own)))]]
    away = np.linalg.norm(vertices[own] - centre, axis=1)
    part = own[np.argsort(away)[: max(1, round(share * len(own)))]]
    others = [
        other
        for other in (Zone.CERVICAL, Zone.CUSP, Zone.FISSURE, Zone.BODY)
        if other is not zone and _is_far(case, part, other)
    ]
    if not others:
        return case
    zones = case.zones.copy()
    zones[part] = int(others[0])
    return replace(case, zones=zones)


def _is_far(case: Case, part: np.ndarray, other: Zone) -> bool:
    vertices = case.surface.mesh.vertices
    there = vertices[case.zones == int(other)]
    if not len(there):
        return True
    apart, _ = cKDTree(there).query(vertices[part])
    return bool(apart.min() > 1.0)
