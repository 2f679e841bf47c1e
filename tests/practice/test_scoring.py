"""Scores: flawless is 100, empty is the floor, worse is never better; simulated trainees in order.

The trainees are simulated by us: this tests the arithmetic of the score, not whether anybody learns
anything by it. No trial with people has been made.
"""

from __future__ import annotations

import os
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from scipy.stats import spearmanr

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.plan import Jar
from stainmap.model.zone import Area, Zone
from stainmap.optics.difference import delta_e_00
from stainmap.practice.exercise import FAULTS, Kind
from stainmap.practice.exercise_task import Task
from stainmap.practice.score import FLOOR, FULL, Mark, Score
from stainmap.practice.scoring import FaultAnswer, score_fault, score_plan
from tests.practice.practice_tasks import (
    FROM_BARE,
    PLANNED,
    bare_of,
    misplaced,
    task_of,
    with_more,
)

ZONES = (Zone.CERVICAL, Zone.INTERPROXIMAL, Zone.CUSP, Zone.FISSURE)
MORE = bool(os.environ.get("STAINMAP_MORE"))
FEW = settings(
    max_examples=60 if MORE else 8,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow],
    derandomize=True,
)


@pytest.mark.parametrize("kind", PLANNED)
def test_flawless_is_full_and_empty_is_the_floor(kind: Kind) -> None:
    task = task_of(kind)
    full, empty = score_plan(task, task.true), score_plan(task, task.start)
    assert full.value == FULL
    assert full.worst == "Nothing is missing."
    assert empty.value == FLOOR
    assert empty.worst != "Nothing is missing."
    assert all(value == 100.0 for value in full.skills.values())
    for score in (full, empty):
        assert all(part.sentence.rstrip().endswith(".") for part in score.parts)
        assert sum(part.most for part in score.parts) == pytest.approx(100.0)


@pytest.mark.parametrize("kind", FAULTS)
def test_faults_are_scored_by_cause_and_sign(kind: Kind) -> None:
    task = task_of(kind)
    other = next(one for one in FAULTS if one is not kind)
    assert score_fault(task, FaultAnswer(cause=kind, sign=kind)).value == FULL
    assert score_fault(task, FaultAnswer(cause=kind, sign=other)).value == 70.0
    assert score_fault(task, FaultAnswer(cause=other, sign=kind)).value == 30.0
    assert score_fault(task, FaultAnswer(cause=other, sign=other)).value == FLOOR
    assert score_fault(task, FaultAnswer()).value == FLOOR
    assert score_fault(task, FaultAnswer(cause=kind)).overlay is not None


# --- worse is never better -------------------------------------------------------------------


def swapped_order(case: Case) -> Case:
    """Return the case with what belongs on the cusps painted first."""
    for index, step in enumerate(case.plan.steps):
        if step.entry(Zone.CUSP) is not None:
            return replace(case, plan=case.plan.moved_step(index, 0))
    return case


def idle_jar(case: Case) -> Case:
    number = max(jar.number for jar in case.plan.jars) + 1
    if number > 9:
        return case
    jar = Jar(number=number, liquid="stone", dye_drops=case.plan.jars[0].dye_drops)
    return replace(case, plan=replace(case.plan, jars=(*case.plan.jars, jar)))


def without_dye(case: Case) -> Case:
    """Return the case with no dye in the jar that has any: nobody sees where it was painted."""
    jars = list(case.plan.jars)
    for index, jar in enumerate(jars):
        if sum(jar.dye_drops):
            jars[index] = replace(jar, dye_drops=(0, 0, 0))
            break
    return replace(case, plan=replace(case.plan, jars=tuple(jars)))


def harmed(case: Case, harm: tuple[str, Area], way: int) -> Case:
    what, area = harm
    if what == "coats":
        return with_more(case, area, way)
    if what == "order":
        return swapped_order(case)
    if what == "jar":
        return idle_jar(case)
    return bare_of(case, area) if way < 0 else with_more(case, area, 2)


GIVEN = (Kind.LOWER_CUSPS, Kind.DARK_STUMP, Kind.PAPER_MAP)
HARMS = st.lists(
    st.tuples(
        st.sampled_from(["coats", "order", "jar", "area"]),
        st.sampled_from([*ZONES, Zone.BODY]),
    ),
    min_size=2,
    max_size=5,
)


@FEW
@given(harms=HARMS, way=st.sampled_from([-1, 1]), kind=st.sampled_from(FROM_BARE))
def test_a_plan_that_gets_worse_never_scores_more(
    harms: list[tuple[str, Area]], way: int, kind: Kind
) -> None:
    # All areas go the same way: lighter and darker at once could meet in the middle, where light
    # that spreads sideways from one makes good what was done to the other.
    check_harms(task_of(kind), [lambda case, h=harm: harmed(case, h, way) for harm in harms])


@pytest.mark.parametrize("seed", range(12 if MORE else 2))
def test_what_is_shown_as_near_enough_loses_hardly_anything(seed: int) -> None:
    """Areas are judged by themselves, shown among their neighbours: where all are near, alike."""
    task = task_of(Kind.REACH_SHADE)
    chance = np.random.default_rng(seed)
    areas = [area for area in task.areas if chance.random() < 0.6]
    way = int(chance.choice([-1, 1]))
    case = task.true
    for area in areas:
        case = with_more(case, area, way)
    wanted, shown = task.true_look.areas, task.looker.look(case).areas
    apart = [float(delta_e_00(np.array(shown[one]), np.array(wanted[one]))) for one in task.areas]
    assert 0.5 < max(apart) < 1.1
    assert max(abs(shown[one][0] - wanted[one][0]) for one in task.areas) < 1.25
    reached = [part for part in score_plan(task, case).parts if part.most > 0.0]
    assert sum(part.points for part in reached) >= 99.0


def test_leaving_out_what_stands_in_the_wrong_place_wins_nothing() -> None:
    task = task_of(Kind.LOWER_CUSPS)
    areas = (Zone.CERVICAL, Zone.INTERPROXIMAL, Zone.FISSURE)
    check_harms(task, [swapped_order, *(lambda case, a=area: bare_of(case, a) for area in areas)])
    assert lost_of(task, bare_of(task.true, Zone.CERVICAL)) >= 8.0


@pytest.mark.parametrize("kind", GIVEN)
@pytest.mark.parametrize("area", [*ZONES, Zone.BODY] if MORE else [Zone.CERVICAL, Zone.CUSP])
def test_an_area_that_gets_worse_and_worse_never_scores_more(kind: Kind, area: Area) -> None:
    # One area alone: in these plans liquids meet whose chroma goes opposite ways, and light that
    # spreads from one area makes good by some tenths of a point what was done to its neighbour.
    for way in (-1, 1):
        check_harms(task_of(kind), [lambda case, w=way: with_more(case, area, w)] * 3)


@pytest.mark.parametrize("way", [-1, 1])
@pytest.mark.parametrize("body_first", [False, True])
def test_a_worse_body_does_not_bring_steps_back(way: int, body_first: bool) -> None:
    """All areas are off alike in the end: every step from the body is as wanted, no colour is."""
    task = task_of(Kind.REACH_SHADE)
    zones = [Zone.CERVICAL, Zone.INTERPROXIMAL, Zone.CUSP]
    order = [Zone.BODY, *zones] if body_first else [*zones, Zone.BODY]
    check_harms(task, [lambda case, z=zone: with_more(case, z, way) for zone in order * 2])
    worst = task.true
    for zone in order * 2:
        worst = with_more(worst, zone, way)
    assert score_plan(task, worst).value < 75.0


def check_harms(task: Task, steps: list) -> None:  # type: ignore[type-arg]
    case, before = task.true, FULL
    for step in steps:
        case = step(case)
        now = score_plan(task, case).value
        assert now <= before + 1e-9
        before = now


@FEW
@given(
    seed=st.integers(0, 10_000),
    parts=st.lists(
        st.tuples(st.sampled_from([*ZONES, Zone.BODY]), st.floats(0.05, 0.5)),
        min_size=2,
        max_size=4,
    ),
)
def test_areas_that_get_worse_never_score_more(seed: int, parts: list[tuple[Zone, float]]) -> None:
    task, chance = task_of(Kind.FIND_AREAS), np.random.default_rng(seed)
    steps = [lambda c, z=zone, s=share: hurt(task, c, z, s, chance) for zone, share in parts]
    check_harms(task, steps)


def hurt(task: Task, case: Case, zone: Zone, share: float, chance: np.random.Generator) -> Case:
    """Return the answer with a part of a zone called wrong, told by the truth what is far."""
    wrong = misplaced(task.true, zone, share, chance)
    # What is wrong already stays as it is: called wrong in another way it is no worse.
    changed = (wrong.zones != task.true.zones) & (case.zones == task.true.zones)
    return replace(case, zones=np.where(changed, wrong.zones, case.zones).astype(np.uint8))


def test_every_kind_of_harm_is_noticed() -> None:
    task = task_of(Kind.REACH_SHADE)

    def lost(case: Case) -> float:
        return FULL - score_plan(task, case).value

    assert lost(swapped_order(task.true)) >= 4.0
    assert lost(idle_jar(task.true)) >= 4.0
    assert lost(without_dye(task.true)) >= 3.0
    assert lost(bare_of(task.true, Zone.CUSP)) > 10.0
    assert lost(bare_of(task.true, Zone.BODY)) > 30.0
    assert lost(with_more(task.true, Zone.FISSURE, 4)) > 5.0
    few = task_of(Kind.FEW_JARS)
    # 35 % of the 25 points for few jars.
    assert lost_of(few, idle_jar(few.true)) == pytest.approx(0.35 * 25.0, abs=0.1)


def lost_of(task: Task, case: Case) -> float:
    return FULL - score_plan(task, case).value


# --- what is said and drawn ------------------------------------------------------------------


def sentence(score: Score, name: str) -> str:
    return next(part.sentence for part in score.parts if part.name == name)


def test_best_and_worst_are_two_things() -> None:
    task = task_of(Kind.REACH_SHADE)
    score = score_plan(task, with_more(task.true, Zone.BODY, 2))
    assert score.best != score.worst
    off = [part for part in score.parts if part.sentence == score.best]
    assert off
    assert all(part.lost < 0.06 * max(part.most, 1.0) for part in off)
    poor = score_plan(
        task_of(Kind.DARK_STUMP), with_more(task_of(Kind.DARK_STUMP).start, Zone.BODY, 2)
    )
    assert poor.best != poor.worst


def test_a_hue_that_is_off_is_marked_as_hue() -> None:
    marks = {}
    for kind in (Kind.FAULT_GREEN_CUSP, Kind.FAULT_WHITE_RING, Kind.FAULT_OVERSTAINED_FISSURE):
        overlay = score_fault(task_of(kind), FaultAnswer()).overlay
        assert overlay is not None
        marks[kind] = np.bincount(overlay.marks, minlength=4)
    assert marks[Kind.FAULT_GREEN_CUSP][Mark.OTHER] > 2 * marks[Kind.FAULT_GREEN_CUSP][Mark.EXTRA]
    assert marks[Kind.FAULT_WHITE_RING][Mark.MISSED] > 50
    assert marks[Kind.FAULT_WHITE_RING][Mark.OTHER] == 0
    assert marks[Kind.FAULT_OVERSTAINED_FISSURE][Mark.EXTRA] > 50


def test_what_is_given_is_no_part_of_the_answer() -> None:
    """Another block would reach the shade with less; it is milled already."""
    task = task_of(Kind.REACH_SHADE)
    other = replace(task.true, plan=replace(task.true.plan, block="deep 3Y"))
    assert task.judged(other).plan.block == task.start.plan.block
    assert score_plan(task, other).value == FULL
    chosen = task_of(Kind.CHOOSE_BLOCK)
    assert chosen.may_choose_block
    assert not chosen.may_choose_cement
    assert task_of(Kind.DARK_STUMP).may_choose_cement


def test_a_bare_ring_is_named_with_its_width() -> None:
    task = task_of(Kind.REACH_SHADE)
    ring = task_of(Kind.FAULT_WHITE_RING).start.zones == 0
    zones = np.where(ring, 0, task.true.zones).astype(np.uint8)
    steps = tuple(replace(step, edge_softness_mm=0.2) for step in task.true.plan.steps)
    plan = replace(task.true.plan, steps=steps)
    score = score_plan(task, replace(task.true, zones=zones, plan=plan))
    said = sentence(score, "nothing bare")
    assert "among them a ring up to" in said
    width = float(said.split("up to ")[1].split(" mm")[0])
    # Made 1.1 mm wide between vertices 0.3 mm apart; feathered edges count as painted.
    assert 0.4 < width < 1.4
    assert score.value < FULL


def test_an_overlay_marks_what_was_missed_and_what_is_too_much() -> None:
    task = task_of(Kind.FIND_AREAS)
    empty = score_plan(task, task.start).overlay
    assert empty is not None
    cusp = task.true.zones == int(Zone.CUSP)
    assert (empty.marks[cusp] == int(Mark.MISSED)).mean() > 0.7
    assert not (empty.marks == int(Mark.EXTRA)).any()
    everywhere = np.where(task.true.reading.outer, int(Zone.CUSP), int(Zone.INNER))
    cusps = replace(task.start, zones=everywhere.astype(np.uint8))
    full = score_plan(task, cusps).overlay
    assert full is not None
    body = task.true.zones == int(Zone.BODY)
    assert (full.marks[body] == int(Mark.EXTRA)).mean() > 0.5
    assert {mark for mark, _ in full.words} == {Mark.EXTRA, Mark.OTHER}


def test_greening_the_cusps_is_told_from_lowering_them() -> None:
    task = task_of(Kind.LOWER_CUSPS)
    cool = replace(task.start, plan=task.start.plan)
    number = next(jar.number for jar in cool.plan.jars if jar.liquid == "slate")
    from stainmap.app.edits import with_added_step, with_coats
    from stainmap.model.plan import CoatSpan

    green = with_added_step(cool, 1, number)
    green = with_coats(green, 1, Zone.CUSP, CoatSpan.exactly(3))
    score = score_plan(task, green)
    assert FLOOR < score.value < 85.0
    assert "turn green" in sentence(score, "not green")


def test_facts_of_an_exercise_cannot_be_changed() -> None:
    task = task_of(Kind.DARK_STUMP)
    backings = tuple(replace(one, stump="natural dentine, light") for one in task.start.backings)
    cheat = replace(task.start, backings=backings, programme="fast")
    assert score_plan(task, cheat).value == FLOOR
    other = task_of(Kind.FIND_AREAS, 1)
    surface = replace(other.start.surface)
    with pytest.raises(PlanError, match="was changed"):
        score_plan(other, replace(other.start, surface=surface))


# --- simulated trainees ----------------------------------------------------------------------

PLAN_KINDS = (Kind.REACH_SHADE, Kind.FEW_JARS, Kind.PAPER_MAP)


def tried(task: Task, clumsiness: float, chance: np.random.Generator) -> Case:
    """Return the answer of a simulated trainee: the true one, with slips as often as clumsy."""
    case = task.true
    if task.kind is Kind.FIND_AREAS:
        for zone in (*ZONES, Zone.BODY):
            case = hurt(task, case, zone, 0.6 * clumsiness * chance.random(), chance)
        return case
    for area in (*ZONES, Zone.BODY):
        if chance.random() < clumsiness:
            case = with_more(case, area, int(chance.choice([-2, -1, 1, 2])))
        if chance.random() < 0.3 * clumsiness:
            case = bare_of(case, area)
    if chance.random() < clumsiness:
        case = swapped_order(case)
    if chance.random() < clumsiness:
        case = idle_jar(case)
    return case


def test_simulated_trainees_are_ranked_by_their_skill() -> None:
    clumsiness = np.linspace(0.05, 0.95, 14 if MORE else 8)
    means = []
    for trainee, clumsy in enumerate(clumsiness):
        chance = np.random.default_rng(100 + trainee)
        scores = [
            score_plan(task_of(kind), tried(task_of(kind), clumsy, chance)).value
            for kind in (*PLAN_KINDS, Kind.FIND_AREAS)
            for _ in range(4 if MORE else 2)
        ]
        means.append(np.mean(scores))
    rank = spearmanr(-clumsiness, means).statistic
    assert rank >= 0.9
