"""Slips: which way they go, what they leave alone, and fragile plans told from robust ones."""

from __future__ import annotations

from dataclasses import replace

import pytest

from stainmap.errors import PlanError
from stainmap.model.plan import CoatSpan, Jar, StainPlan, Step
from stainmap.model.zone import Accent, Zone
from stainmap.practice.exercise import Kind
from stainmap.practice.slips import (
    BRUSH_TOO_FAR_MM,
    OwnSlips,
    Slip,
    SlipKind,
    days_of,
    possible_slips,
    slip_effect,
    slip_words,
    spread_of_slips,
    with_slip,
)
from stainmap.surface.region import border_distance
from tests.practice.practice_tasks import task_of

OUTSIDE = (Zone.BODY, Zone.CERVICAL, Zone.CUSP, Zone.FISSURE, Zone.INTERPROXIMAL)


def cusp_step() -> int:
    steps = task_of(Kind.REACH_SHADE).true.plan.steps
    return next(k for k, step in enumerate(steps) if step.entry(Zone.CUSP) is not None)


@pytest.mark.parametrize(("kind", "way"), [(SlipKind.COAT_MORE, -1), (SlipKind.COAT_LESS, 1)])
def test_a_miscounted_coat_changes_its_area_most(kind: SlipKind, way: int) -> None:
    task = task_of(Kind.REACH_SHADE)
    slip = Slip(kind=kind, step=cusp_step(), area=Zone.CUSP)
    effect = slip_effect(task.looker, task.true_look, slip)
    first = effect.areas[0]
    # Ridges lie on the cusps and inherit their coats.
    assert first.area in (Zone.CUSP, Accent.MARGINAL_RIDGE, Accent.TRIANGULAR_RIDGE)
    assert way * first.value > 0.3
    body = next(one for one in effect.areas if one.area is Zone.BODY)
    assert body.de00 < 0.2 * first.de00


def test_a_brush_too_far_reaches_as_far_as_it_says_and_no_further() -> None:
    task = task_of(Kind.REACH_SHADE)
    case = task.true
    slip = Slip(kind=SlipKind.BRUSH_TOO_FAR, step=cusp_step(), area=Zone.CUSP)
    done = with_slip(case, slip)
    assert done.zones is case.zones
    brushed = done.plan.steps[cusp_step()].brushed
    assert brushed is not None
    cusp = case.zones == int(Zone.CUSP)
    away = -border_distance(case.surface.mesh, cusp, 2.0, within=case.reading.outer)[
        brushed.vertices
    ]
    assert away.min() >= 0.0
    # Half an edge of 0.3 mm about the half millimetre.
    assert away.max() < BRUSH_TOO_FAR_MM + 0.2
    assert away.max() > BRUSH_TOO_FAR_MM - 0.2
    effect = slip_effect(task.looker, task.true_look, slip)
    assert effect.largest_de00 > effect.areas[0].de00


def test_jars_and_furnace_slip_the_way_they_must() -> None:
    task = task_of(Kind.REACH_SHADE)
    case, step = task.true, 0
    jar = case.plan.jar(case.plan.steps[step].jar)
    thin = with_slip(case, Slip(kind=SlipKind.JAR_TOO_THIN, step=step)).plan.jar(jar.number)
    assert sum(thin.dye_drops) == 2 * sum(jar.dye_drops)
    assert thin.dilution < jar.dilution
    strong = with_slip(case, Slip(kind=SlipKind.JAR_WITHOUT_DYE, step=step)).plan.jar(jar.number)
    assert strong.dilution == 1.0
    fast = slip_effect(task.looker, task.true_look, Slip(kind=SlipKind.FIRED_FAST))
    # Fast cycles scatter more: lighter everywhere [materials of the starter set].
    assert min(one.value for one in fast.areas if one.area in OUTSIDE) > 1.0


def test_every_slip_has_words_and_can_happen() -> None:
    case = task_of(Kind.REACH_SHADE).true
    slips = possible_slips(case)
    assert {slip.kind for slip in slips} == set(SlipKind)
    words = [slip_words(case, slip) for slip in slips]
    assert len(set(words)) == len(words)
    for slip in slips:
        assert with_slip(case, slip) is not case
    assert possible_slips(task_of(Kind.REACH_SHADE).start) == ()
    with pytest.raises(PlanError, match="no step 31"):
        with_slip(case, Slip(kind=SlipKind.COAT_MORE, step=30))
    with pytest.raises(PlanError, match="has no coats on"):
        with_slip(case, Slip(kind=SlipKind.COAT_MORE, step=0, area=Zone.INNER))


def test_own_slips_come_as_often_as_they_are_said_to() -> None:
    days = days_of(OwnSlips(miscounts_in_ten=3.0, wrong_jars_in_ten=5.0, hand_share=0.2), 20_000)
    # Standard errors of shares: 0.0033; of a standard deviation: 0.001.
    assert (days.coat_step != 0).mean() == pytest.approx(0.3, abs=0.013)
    assert (days.extra_dye > 0).mean() == pytest.approx(0.5, abs=0.015)
    assert days.hand.std() == pytest.approx(0.2, abs=0.006)
    assert not days.wall_mm.any()
    assert not days.stump_step.any()
    for wrong in ({"miscounts_in_ten": 11.0}, {"hand_share": 0.6}, {"wrong_jars_in_ten": -1.0}):
        with pytest.raises(PlanError):
            OwnSlips(**wrong)


def test_a_hand_that_never_slips_keeps_every_plan() -> None:
    task = task_of(Kind.REACH_SHADE)
    steady = OwnSlips(miscounts_in_ten=0.0, wrong_jars_in_ten=0.0, hand_share=0.0)
    spread = spread_of_slips(task.looker, task.true_look, steady, OUTSIDE, count=50)
    assert spread.survival.share == 1.0
    assert spread.bad_de00.max() < 1e-3


def test_one_strong_coat_is_more_fragile_than_several_weak_ones() -> None:
    task = task_of(Kind.REACH_SHADE)

    def planned(liquid: str, coats: int):  # type: ignore[no-untyped-def]
        step = Step(jar=1).with_coats(Zone.BODY, CoatSpan.exactly(coats))
        jar = Jar(number=1, liquid=liquid, dye_drops=(2, 0, 0))
        plan = StainPlan(block=task.true.plan.block, jars=(jar,), steps=(step,))
        return task.looker.look(replace(task.true, plan=plan))

    own = OwnSlips(miscounts_in_ten=10.0, wrong_jars_in_ten=0.0, hand_share=0.0)
    # A coat of umber more or fewer is three times one of flax: the starter set's own effects.
    strong = spread_of_slips(task.looker, planned("umber", 1), own, [Zone.BODY], count=100)
    weak = spread_of_slips(task.looker, planned("flax", 3), own, [Zone.BODY], count=100)
    assert strong.survival.share < weak.survival.share
    assert strong.bad_de00[0] > 2.0 * weak.bad_de00[0]
    wet = OwnSlips(miscounts_in_ten=0.0, wrong_jars_in_ten=0.0, hand_share=0.2)
    few = spread_of_slips(task.looker, planned("flax", 3), wet, [Zone.BODY], count=100)
    assert few.bad_de00[0] > few.usual_de00[0] > 0.0
