"""Random changes of an answer, and what has become worse of it.

An answer is worse than before if nothing that is measured of it is better and something is worse.
A change that makes one thing worse and another better is mixed: it is counted, and nothing is
claimed of it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from enum import Enum
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case, Region
from stainmap.model.plan import MAX_STEPS, BrushedCoats, CoatSpan, Jar, Step, Streaks
from stainmap.model.zone import Area, Zone
from stainmap.practice.exercise import Kind
from stainmap.practice.exercise_crown import zones_asked
from stainmap.practice.exercise_task import Task
from stainmap.practice.scoring_areas import accent_overlaps, zone_overlaps
from stainmap.practice.scoring_map import map_followed
from stainmap.practice.scoring_measures import Measures, plan_measures
from stainmap.practice.scoring_plan import mixing_faults
from tests.practice.practice_tasks import bare_of, misplaced

T = TypeVar("T")
SAME = 1e-9


class Change(Enum):
    """How one answer stands to the one before."""

    WORSE = "worse"
    BETTER = "better"
    MIXED = "mixed"
    NONE = "none"


def change(before: Mapping[str, float], after: Mapping[str, float]) -> Change:
    """Return how measures changed, all of which are the larger the worse."""
    names = {*before, *after}
    steps = [after.get(name, 0.0) - before.get(name, 0.0) for name in names]
    worse, better = any(step > SAME for step in steps), any(step < -SAME for step in steps)
    if worse and better:
        return Change.MIXED
    return Change.WORSE if worse else Change.BETTER if better else Change.NONE


def measured(task: Task, answer: Case) -> dict[str, float]:
    """Return all that is measured of an answer to any exercise, each the larger the worse."""
    case = task.judged(answer)
    if task.kind is Kind.FIND_AREAS:
        zones = tuple(area for area in task.areas if isinstance(area, Zone))
        accents = tuple(area for area in task.areas if not isinstance(area, Zone))
        found = (
            *zone_overlaps(task.true, case, zones),
            *accent_overlaps(task.true, case, accents),
        )
        return {f"not found, {one.area.label}": 1.0 - one.overlap for one in found}
    if task.kind is Kind.CHOOSE_BLOCK:
        fit = next(one for one in task.blocks if one.block == case.plan.block)
        nothing_done = case.plan.block == task.start.plan.block
        return {"off": fit.de00, "coats": float(fit.coats), "nothing done": float(nothing_done)}
    if task.kind is Kind.PAPER_MAP:
        followed = map_followed(task, case)
        return {
            "coats": 1.0 - followed.coats,
            "order": 1.0 - followed.order,
            "mixing": float(len(mixing_faults(case))),
        }
    return of_measures(plan_measures(task, case))


def of_measures(measures: Measures) -> dict[str, float]:
    """Return the measures of a planned answer by name."""
    found: dict[str, float] = {
        "bare": measures.bare.bare_mm2,
        "green": max(measures.wanted_cusp_a - measures.cusp_a, 0.0),
        "jars": float(max(measures.jars - measures.enough_jars, 0)),
        "limits": float(len(measures.limits)),
        "mixing": float(len(measures.mixing)),
        "out of turn": float(measures.turn.count),
        "left out": float(measures.left_out),
    }
    for one in measures.reaches:
        name = one.area.label
        found[f"off, {name}"] = one.alone
        found[f"beside the body, {name}"] = one.bands
        found[f"unpainted, {name}"] = 0.0 if one.painted is None else 1.0 - one.painted
        found[f"more coats, {name}"] = float(measures.more_coats(one.area))
    for number, share in enumerate(measures.connectors):
        found[f"connector {number}"] = 1.0 - share
    return found


# --- changes -----------------------------------------------------------------------------------


def random_change(task: Task, case: Case, chance: np.random.Generator) -> tuple[str, Case]:
    """Return what was done to an answer, and the answer after it."""
    if task.kind is Kind.FIND_AREAS:
        zones = [area for area in task.areas if isinstance(area, Zone)]
        zone = zones[int(chance.integers(len(zones)))]
        wrong = misplaced(task.true, zone, float(chance.uniform(0.05, 0.5)), chance)
        moved = wrong.zones != task.true.zones
        return "zones", replace(case, zones=np.where(moved, wrong.zones, case.zones))
    if task.kind is Kind.CHOOSE_BLOCK:
        block = task.blocks[int(chance.integers(len(task.blocks)))].block
        return "block", replace(case, plan=replace(case.plan, block=block))
    doings = [_other_coats] * 4 + [_bare, _moved, _jar, _dye, _brushed, _soft, _zone, _ring]
    doings += [_streaks, _inside, _new_step]
    if task.may_choose_block:
        doings += [_block, _cement]
    doing = doings[int(chance.integers(len(doings)))]
    return doing.__name__.strip("_"), doing(task, case, chance)


def _one_of(there: Sequence[T], chance: np.random.Generator) -> T:
    return there[int(chance.integers(len(there)))]


def _step(case: Case, chance: np.random.Generator) -> int | None:
    steps = len(case.plan.steps)
    return int(chance.integers(steps)) if steps else None


def _other_coats(task: Task, case: Case, chance: np.random.Generator) -> Case:
    index, area = _step(case, chance), _one_of(task.areas, chance)
    more = int(chance.choice([-2, -1, 1, 2, 3]))
    return case if index is None else with_other(case, index, area, more)


def _inside(_task: Task, case: Case, chance: np.random.Generator) -> Case:
    index = _step(case, chance)
    return case if index is None else with_other(case, index, Zone.INNER, 1)


def _bare(task: Task, case: Case, chance: np.random.Generator) -> Case:
    return bare_of(case, _one_of(task.areas, chance))


def _moved(_task: Task, case: Case, chance: np.random.Generator) -> Case:
    index = _step(case, chance)
    if index is None:
        return case
    to = int(chance.integers(len(case.plan.steps)))
    return replace(case, plan=case.plan.moved_step(index, to))


def _new_step(task: Task, case: Case, chance: np.random.Generator) -> Case:
    plan = case.plan
    if not plan.jars or len(plan.steps) >= MAX_STEPS:
        return case
    coats = CoatSpan.exactly(int(chance.integers(1, 4)))
    step = Step(jar=_one_of(plan.jars, chance).number)
    steps = list(plan.steps)
    at = int(chance.integers(len(steps) + 1))
    steps.insert(at, step.with_coats(_one_of(task.areas, chance), coats))
    return replace(case, plan=replace(plan, steps=tuple(steps)))


def _jar(_task: Task, case: Case, chance: np.random.Generator) -> Case:
    jars = case.plan.jars
    number = max((jar.number for jar in jars), default=0) + 1
    made = Jar(number=number, liquid=_one_of(case.materials.liquids, chance).name)
    return replace(case, plan=replace(case.plan, jars=(*jars, made)))


def _dye(_task: Task, case: Case, chance: np.random.Generator) -> Case:
    jars = list(case.plan.jars)
    if not jars:
        return case
    at = int(chance.integers(len(jars)))
    jars[at] = replace(jars[at], dye_drops=(0, int(chance.choice([0, 4, 25])), 0))
    return replace(case, plan=replace(case.plan, jars=tuple(jars)))


def _block(_task: Task, case: Case, chance: np.random.Generator) -> Case:
    block = _one_of(case.materials.blocks, chance).name
    return replace(case, plan=replace(case.plan, block=block))


def _cement(_task: Task, case: Case, chance: np.random.Generator) -> Case:
    cement = _one_of(case.materials.cements, chance).name
    backings = tuple(
        replace(one, cement=cement) if one.region is Region.STUMP else one for one in case.backings
    )
    return replace(case, backings=backings)


def _soft(_task: Task, case: Case, chance: np.random.Generator) -> Case:
    index = _step(case, chance)
    if index is None:
        return case
    softness_mm = float(chance.choice([0.2, 0.6, 1.5]))
    changed = replace(case.plan.steps[index], edge_softness_mm=softness_mm)
    return replace(case, plan=case.plan.with_step(index, changed))


def _streaks(_task: Task, case: Case, chance: np.random.Generator) -> Case:
    index = _step(case, chance)
    if index is None:
        return case
    streaks = Streaks(area=Zone.CERVICAL, count=4, length_mm=3.0, coats=1, direction=-1)
    changed = replace(case.plan.steps[index], streaks=(streaks,))
    return replace(case, plan=case.plan.with_step(index, changed))


def _brushed(_task: Task, case: Case, chance: np.random.Generator) -> Case:
    index = _step(case, chance)
    if index is None:
        return case
    step = case.plan.steps[index]
    coats = np.zeros(len(case.zones), np.float32)
    if step.brushed is not None:
        coats[step.brushed.vertices] += step.brushed.coats
    coats[_near(case, chance)] += np.float32(chance.integers(1, 4))
    changed = replace(step, brushed=BrushedCoats.from_dense(coats))
    return replace(case, plan=case.plan.with_step(index, changed))


def _zone(_task: Task, case: Case, chance: np.random.Generator) -> Case:
    number = int(_one_of(zones_asked(case), chance))
    zones = np.where(_near(case, chance), np.uint8(number), case.zones)
    return replace(case, zones=zones.astype(np.uint8))


def _ring(_task: Task, case: Case, chance: np.random.Generator) -> Case:
    zones = np.where(_near(case, chance), np.uint8(0), case.zones)
    return replace(case, zones=zones.astype(np.uint8))


def _near(case: Case, chance: np.random.Generator) -> NDArray[np.bool_]:
    """Return the vertices (V,) around a place by chance, outside."""
    vertices, outer = case.surface.mesh.vertices, case.reading.outer
    centre = vertices[_one_of(np.flatnonzero(outer).tolist(), chance)]
    return outer & (np.linalg.norm(vertices - centre, axis=1) < float(chance.uniform(0.6, 2.0)))


def with_other(case: Case, index: int, area: Area, more: int) -> Case:
    """Return the case with more or fewer coats of one step on an area."""
    step = case.plan.steps[index]
    entry = step.entry(area)
    count = int(np.clip((0 if entry is None else entry.coats.high) + more, 0, 9))
    changed = step.with_coats(area, CoatSpan.exactly(count))
    return replace(case, plan=case.plan.with_step(index, changed))
