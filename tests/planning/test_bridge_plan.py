"""Bridges: value of every unit, accents over connectors."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stainmap.app.prediction import predict_case
from stainmap.app.suggesting import suggest_coats
from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.colour import IN_PLACE, Colour, Measurement
from stainmap.model.plan import BrushedCoats, CoatSpan, Step
from stainmap.model.target import Target
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.planning.bridge_accents import (
    has_connector_accent,
    has_connectors,
    with_connector_accent,
    with_usual_accent,
)
from stainmap.planning.coat_limits import excesses
from stainmap.planning.suggest_result import PlanKind
from stainmap.planning.suggest_words import reasons
from stainmap.planning.unit_values import unit_values
from tests.builders import dome_case
from tests.predict.scenes import DENTINE, materials


@pytest.fixture(scope="module")
def bridge() -> Case:
    """Return the dome cut into two units, a band between them as connector."""
    case = dome_case(16, 48)
    x = case.surface.mesh.vertices[:, 0]
    jars = tuple(
        replace(jar, liquid=name)
        for jar, name in zip(case.plan.jars, ("barley", "slate"), strict=True)
    )
    case = replace(
        case,
        units=(
            Unit(tooth=Tooth(number=14), role=Role.RETAINER),
            Unit(tooth=Tooth(number=15), role=Role.PONTIC),
        ),
        reading=replace(case.reading, unit_index=(x > 0.01).astype(np.uint8)),
        materials=materials(),
        plan=replace(case.plan, block="medium 3Y", jars=jars),
        backings=(DENTINE,),
    )
    return case.with_accent(
        Accent.CONNECTOR,
        np.where((abs(x) < 1.0) & case.reading.outer, 1.0, 0.0).astype(np.float32),
    )


def test_each_unit_has_the_mean_value_of_its_own_body(bridge: Case) -> None:
    # Coats brushed on one half of the body alone make that unit darker.
    half = (bridge.reading.unit_index == 1) & (bridge.zones == int(Zone.BODY))
    brushed = BrushedCoats.from_dense(np.where(half, 3.0, 0.0).astype(np.float32))
    case = replace(
        bridge,
        plan=replace(bridge.plan, steps=(*bridge.plan.steps, Step(jar=2, brushed=brushed))),
    )
    prediction = predict_case(case)
    first, second = unit_values(case, prediction.unit_outcomes())
    # Along the row as one looks at the arch: from the patient's right to the left.
    assert [one.unit.tooth.number for one in (first, second)] == [15, 14]
    assert first.from_before is None
    assert second.from_before == pytest.approx(second.lightness - first.lightness)
    by_number = {one.unit.tooth.number: one.lightness for one in (first, second)}
    assert by_number[15] < by_number[14] - 1.0
    lightness = prediction.appearance.lab[:, 0]
    sizes = case.surface.mesh.vertex_areas
    shares = prediction.layout.shares(case.zones, 0.6)[int(Zone.BODY)]
    mine = (case.reading.unit_index == 0) & (case.zones == int(Zone.BODY)) & (shares > 0.5)
    plain = float(np.average(lightness[mine], weights=sizes[mine]))
    assert by_number[14] == pytest.approx(plain, abs=0.5)


def test_one_coat_of_the_dark_accent_goes_over_the_connectors_last(bridge: Case) -> None:
    assert has_connectors(bridge)
    assert not has_connector_accent(bridge)
    after = with_connector_accent(bridge)
    assert has_connector_accent(after)
    assert after.plan.steps[:-1] == bridge.plan.steps
    last = after.plan.steps[-1]
    assert after.plan.liquid_of(last) == "umber"
    assert [(e.area, str(e.coats)) for e in last.areas] == [(Accent.CONNECTOR, "1")]
    assert 2 <= sum(after.plan.jar(last.jar).dye_drops) <= 3
    assert with_connector_accent(after) is after


def test_it_lies_on_the_facing_surfaces_of_both_units(bridge: Case) -> None:
    before, after = predict_case(bridge), predict_case(with_connector_accent(bridge))
    darker = before.appearance.lab[:, 0] - after.appearance.lab[:, 0] > 1.0
    for unit in (0, 1):
        mine = darker & (bridge.reading.unit_index == unit)
        assert mine.any()
        assert (abs(bridge.surface.mesh.vertices[mine, 0]) < 2.5).all()


def test_a_step_of_the_liquid_takes_it_along(bridge: Case) -> None:
    jars = (replace(bridge.plan.jars[0], liquid="umber"), bridge.plan.jars[1])
    case = replace(bridge, plan=replace(bridge.plan, jars=jars))
    after = with_connector_accent(case)
    assert len(after.plan.steps) == len(case.plan.steps)
    assert after.plan.steps[1].entry(Accent.CONNECTOR) is not None
    assert after.plan.steps[1].areas[:-1] == case.plan.steps[1].areas


def test_it_keeps_within_the_limits_and_slate_on_top_does_not() -> None:
    over = {"barley": 2, "umber": 1}
    assert not excesses(Accent.CONNECTOR, over, materials())
    assert excesses(Accent.CONNECTOR, {**over, "slate": 1}, materials())
    # What lies on necks may lie there too, for which every plan has been tried.
    assert not excesses(Zone.CERVICAL, over, materials())


def test_where_there_is_no_connector_or_no_dark_liquid_it_says_so(bridge: Case) -> None:
    with pytest.raises(PlanError, match="no connector"):
        with_connector_accent(dome_case(6, 12))
    pale = tuple(one for one in bridge.materials.liquids if one.name != "umber")
    with pytest.raises(PlanError, match="warm dark accent"):
        with_connector_accent(replace(bridge, materials=replace(bridge.materials, liquids=pale)))


def test_a_bridge_without_the_accent_is_advised_of_it_and_one_with_it_is_not(bridge: Case) -> None:
    said = [one for one in predict_case(bridge).advice if one.rule == "connectors without accent"]
    assert len(said) == 1
    assert said[0].place is not None
    assert "common practice" in said[0].detail.casefold()
    after = predict_case(with_connector_accent(bridge)).advice
    assert not any(one.rule == "connectors without accent" for one in after)


def test_an_unusual_order_is_advised_of(bridge: Case) -> None:
    assert not any(one.rule == "order of painting" for one in predict_case(bridge).advice)
    cusp = Step(jar=2).with_coats(Zone.CUSP, CoatSpan.exactly(1))
    late = replace(bridge, plan=replace(bridge.plan, steps=(cusp, *bridge.plan.steps)))
    said = [one for one in predict_case(late).advice if one.rule == "order of painting"]
    assert [one.sentence.split(";")[0] for one in said] == [
        "Step 2 paints 'inner surface' after step 1 painted 'cusp'",
        "Step 3 paints 'cervical' after step 1 painted 'cusp'",
    ]


def test_the_usual_accent_comes_where_it_has_room_and_says_why_where_not(bridge: Case) -> None:
    names = [one.name for one in bridge.materials.liquids]
    plan, said = with_usual_accent(bridge, bridge.plan, liquids=names, most_jars=3)
    assert plan == with_connector_accent(bridge).plan
    assert said.startswith("Over connectors and in embrasures: umber")
    # Painted already: left alone, and said.
    assert with_usual_accent(bridge, plan, liquids=names, most_jars=3) == (plan, said)
    kept, said = with_usual_accent(bridge, bridge.plan, liquids=names, most_jars=2)
    assert kept is bridge.plan
    assert said == "Connectors and embrasures stay plain: umber would need a further jar."
    kept, said = with_usual_accent(bridge, bridge.plan, liquids=("barley",), most_jars=6)
    assert kept is bridge.plan
    assert "no warm dark accent is at hand" in said
    slate = bridge.plan.with_step(0, Step(jar=2).with_coats(Zone.BODY, CoatSpan.exactly(1)))
    kept, said = with_usual_accent(bridge, slate, liquids=names, most_jars=6)
    assert kept is slate
    assert "what lies below takes the usual limit" in said
    single = dome_case(6, 12)
    assert with_usual_accent(single, single.plan, liquids=names, most_jars=6) == (single.plan, "")


def test_suggested_plans_of_a_bridge_paint_its_connectors(bridge: Case) -> None:
    """Every plan says what becomes of the connectors; what it says is what it paints."""
    wanted = Colour(lightness=73.0, a=2.0, b=19.0, measurement=Measurement(backing=IN_PLACE))
    band = bridge.accent(Accent.CONNECTOR)
    assert band is not None
    # Not over cusps: what lowers value there leaves no room for the accent.
    low = np.where(bridge.zones == int(Zone.BODY), band, 0.0).astype(np.float32)
    case = replace(bridge.with_accent(Accent.CONNECTOR, low), target=Target(body=wanted))
    prediction = predict_case(case)
    found = suggest_coats(prediction)
    for plan in found.plans:
        there = replace(case, plan=plan.plan)
        painted = has_connector_accent(there)
        assert plan.connectors.startswith("Over connectors" if painted else "Connectors and")
        assert plan.connectors in reasons(plan, found)
        assert len(plan.plan.jars) <= (3 if plan.kind is PlanKind.FEW_JARS else 6)
    assert has_connector_accent(replace(case, plan=found.plans[0].plan))
    # The plan of three jars is there by itself where the accent makes the suggested one larger.
    few = found.plan(PlanKind.FEW_JARS)
    assert few is not None or len(found.plans[0].plan.jars) <= 3
