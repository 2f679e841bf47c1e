"""What another order of the steps changes, held to the prediction of the plan in that order."""

from __future__ import annotations

from dataclasses import replace

import pytest

from stainmap.app import edits
from stainmap.app.prediction import Prediction, predict_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan, StainPlan
from stainmap.model.zone import Zone
from stainmap.optics.difference import delta_e_00
from stainmap.planning.order_effect import OrderEffect, order_effect
from tests.builders import dome_case


@pytest.fixture(scope="module")
def case() -> Case:
    materials = starter_catalogue()
    dome = dome_case(12, 28)
    backing = replace(
        dome.backings[0], stump=materials.stumps[0].name, cement=materials.cements[0].name
    )
    case = replace(
        dome,
        materials=materials,
        plan=StainPlan(block="medium 3Y"),
        backings=(backing,),
        programme="slow",
    )
    for at, liquid in enumerate(("barley", "slate", "slate", "umber")):
        case = edits.with_added_liquid(case, at, liquid)
    cells = [(step, Zone.CUSP, CoatSpan.exactly(3)) for step in range(4)]
    return edits.with_cells(case, [*cells, (0, Zone.BODY, CoatSpan.exactly(2))])


@pytest.fixture(scope="module")
def here(case: Case) -> Prediction:
    return predict_case(case)


def effect(here: Prediction, step: int, to: int) -> OrderEffect:
    return order_effect(
        here.case,
        step,
        to,
        here.ground,
        here.layout,
        seen=here.seen,
        here=here.outcome,
        like=here.engine,
    )


def test_it_is_what_the_plan_in_that_order_is_predicted_to_give(here: Prediction) -> None:
    found = effect(here, 3, 0)
    there = predict_case(edits.with_moved_step(here.case, 3, 0)).outcome
    for one in found.areas:
        before, after = here.outcome.area(one.area), there.area(one.area)
        assert before is not None
        assert after is not None
        assert one.de00 == pytest.approx(
            float(delta_e_00(before.predicted.lab, after.predicted.lab)), abs=1e-4
        )
    largest = found.largest
    assert largest is not None
    assert largest.area is Zone.CUSP, "nothing but the cusp is painted by several steps"
    assert largest.de00 > 0.3
    assert [one.de00 for one in found.areas] == sorted((o.de00 for o in found.areas), reverse=True)


def test_steps_from_one_jar_may_change_places(here: Prediction) -> None:
    largest = effect(here, 1, 2).largest
    assert largest is not None
    assert largest.de00 < 1e-4


def test_the_prediction_at_hand_is_left_as_it_was(here: Prediction) -> None:
    before = here.engine.whole(here.ground.coats(here.engine.scene, here.coats)).lab.copy()
    effect(here, 0, 3)
    after = here.engine.whole(here.ground.coats(here.engine.scene, here.coats)).lab
    assert (before == after).all()


def test_what_lies_inside_is_left_out(here: Prediction) -> None:
    assert here.outcome.area(Zone.INNER) is not None
    assert Zone.INNER not in {one.area for one in effect(here, 0, 3).areas}
