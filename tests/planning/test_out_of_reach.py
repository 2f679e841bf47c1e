"""What cannot be painted, held to the bare block as the whole prediction gives it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from stainmap.app import edits
from stainmap.app.prediction import Prediction, predict_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.colour import Colour, Measurement
from stainmap.model.plan import CoatSpan, StainPlan
from stainmap.model.target import Target
from stainmap.model.zone import Zone
from stainmap.planning.out_of_reach import OutOfReach, out_of_reach, wants_looking
from tests.builders import dome_case


@pytest.fixture(scope="module")
def case() -> Case:
    materials = starter_catalogue()
    dome = dome_case(12, 28)
    backing = replace(
        dome.backings[0], stump=materials.stumps[0].name, cement=materials.cements[0].name
    )
    bare = replace(
        dome,
        materials=materials,
        plan=StainPlan(block="medium 3Y"),
        backings=(backing,),
        programme="slow",
        target=None,
    )
    painted = edits.with_added_liquid(bare, 0, "slate")
    return edits.with_coats(painted, 0, Zone.BODY, CoatSpan.exactly(3))


@pytest.fixture(scope="module")
def bare_body(case: Case) -> Colour:
    body = predict_case(replace(case, plan=replace(case.plan, steps=()))).outcome.area(Zone.BODY)
    assert body is not None
    return body.predicted


def wanting(case: Case, bare: Colour, lightness: float, chroma: float = 1.0) -> Prediction:
    """Return the prediction where the body is wanted this much lighter, and as chromatic."""
    colour = replace(
        bare, lightness=bare.lightness + lightness, a=bare.a * chroma, b=bare.b * chroma
    )
    how = Measurement(backing=case.backings[0].stump)
    target = Target(name="wanted", body=replace(colour, measurement=how), offsets=())
    return predict_case(replace(case, target=target))


def found(prediction: Prediction) -> tuple[OutOfReach, ...]:
    return out_of_reach(
        prediction.case,
        prediction.ground,
        prediction.layout,
        seen=prediction.seen,
        here=prediction.outcome,
        like=prediction.engine,
    )


def test_lighter_than_the_bare_block_is_out_of_reach(case: Case, bare_body: Colour) -> None:
    prediction = wanting(case, bare_body, 3.0)
    assert wants_looking(prediction.outcome)
    (body,) = [one for one in found(prediction) if one.area is Zone.BODY]
    assert body.axis == "L*"
    assert body.bare == pytest.approx(bare_body.lightness, abs=0.05)
    assert body.wanted == pytest.approx(bare_body.lightness + 3.0, abs=0.05)


def test_lighter_than_the_plan_but_not_than_the_block_is_within_reach(
    case: Case, bare_body: Colour
) -> None:
    prediction = wanting(case, bare_body, 0.0)
    assert wants_looking(prediction.outcome), "three coats of slate took it down"
    assert [one for one in found(prediction) if one.area is Zone.BODY] == []


def test_duller_than_the_bare_block_is_out_of_reach_too(case: Case, bare_body: Colour) -> None:
    prediction = wanting(case, bare_body, -6.0, chroma=0.6)
    (body,) = [one for one in found(prediction) if one.area is Zone.BODY]
    assert body.axis == "C*"
    assert body.bare == pytest.approx(bare_body.chroma, abs=0.1)


def test_without_anything_wanted_the_bare_block_need_not_be_predicted(case: Case) -> None:
    assert not wants_looking(predict_case(case).outcome)
