"""What a case decides reaches the prediction, afresh and by way of an earlier one."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from stainmap.app import edits
from stainmap.app.prediction import predict_case
from stainmap.model.case import Case, Region
from stainmap.model.finishing import Finish
from stainmap.model.material import BlankCoupon
from stainmap.model.zone import Accent, Zone
from stainmap.predict.regions import mouth_of
from tests.builders import dome_case
from tests.predict.scenes import DENTINE, materials


@pytest.fixture(scope="module")
def case() -> Case:
    base = dome_case(16, 48)
    jars = tuple(
        replace(jar, liquid=name)
        for jar, name in zip(base.plan.jars, ("barley", "umber"), strict=True)
    )
    return replace(
        base,
        materials=materials(),
        plan=replace(base.plan, block="medium 3Y", jars=jars),
        backings=(replace(DENTINE, stump="titanium base"),),
    )


COUPON = BlankCoupon(scattering_factor=1.4, read_by="bench 2", read_on="2026-05-04")
EDITS: dict[str, Callable[[Case], Case]] = {
    "a heavier hand": lambda c: edits.with_painter(c, "bench 2", 1.5),
    "another uptake": lambda c: edits.with_process(c, replace(c.process, outer_depth_mm=0.6)),
    "as sintered": lambda c: edits.with_finish(c, Finish.AS_SINTERED),
    "glazed": lambda c: edits.with_finish(c, Finish.GLAZED),
    "ground everywhere": lambda c: edits.with_ground(c, None, 0.2),
    "one zone ground": lambda c: edits.with_ground(c, Zone.CERVICAL, 0.3),
    "an accent ground": lambda c: edits.with_ground(c, Accent.MARGIN_BAND, 0.3),
    "a coupon": lambda c: edits.with_coupon(c, "slow", COUPON),
    "a screw channel": lambda c: edits.with_screw_channel(c, (0.0, 0.0, 5.0), 0),
    "thicker opaque cement": lambda c: edits.with_cement_thickness(
        edits.with_backing(c, Region.STUMP, stump="titanium base", cement="opaque"),
        Region.STUMP,
        0.2,
    ),
}


@pytest.mark.parametrize("name", EDITS)
def test_an_edit_shows_and_an_earlier_prediction_does_not_hide_it(case: Case, name: str) -> None:
    before = predict_case(case)
    changed = EDITS[name](case)
    fresh = predict_case(changed)
    assert np.abs(fresh.appearance.lab - before.appearance.lab).max() > 0.3
    by_way = predict_case(changed, previous=before)
    np.testing.assert_allclose(by_way.appearance.lab, fresh.appearance.lab, atol=0.02)
    back = predict_case(case, previous=by_way)
    np.testing.assert_allclose(back.appearance.lab, before.appearance.lab, atol=0.02)


def test_a_zone_painted_larger_is_ground_where_it_is_now(case: Case) -> None:
    ground = edits.with_ground(case, Zone.CUSP, 0.3)
    first = predict_case(ground)
    zones = np.where(case.zones == Zone.BODY, int(Zone.CUSP), case.zones).astype(np.uint8)
    larger = replace(ground, zones=zones)
    by_way = predict_case(larger, previous=first)
    grown = (zones == Zone.CUSP) & (case.zones != Zone.CUSP)
    np.testing.assert_allclose(
        by_way.ground.shape.wall_mm[grown], by_way.shape.wall_mm[grown] - 0.3, atol=1e-6
    )
    np.testing.assert_allclose(first.ground.shape.wall_mm[grown], first.shape.wall_mm[grown])


def test_a_brush_on_a_ground_crown_shows_what_the_whole_prediction_will(case: Case) -> None:
    """A dab of coats, given to the engine as painting does, against the finished prediction."""
    prediction = predict_case(edits.with_ground(case, None, 0.2))
    x, y, z = case.surface.mesh.vertices.T
    painted = np.flatnonzero(case.reading.outer & (np.hypot(x - 4.0, y) < 1.0) & (z > 0.0))
    vertices = painted.astype(np.int32)
    coats = prediction.coats[:, vertices].copy()
    coats[1] += 2.0
    engine = prediction.engine
    engine.begin_stroke()
    engine.dab(vertices, prediction.seen_coats(coats, vertices))
    live = engine.end_stroke().lab
    all_coats = prediction.coats.copy()
    all_coats[:, vertices] = coats
    engine.whole(prediction.ground.coats(engine.scene, all_coats))
    np.testing.assert_allclose(live, engine.end_stroke().lab, atol=0.1)
    assert np.abs(live - prediction.appearance.lab)[vertices].max() > 1.0


def test_a_plug_brightens_the_mouth_of_the_channel_over_titanium(case: Case) -> None:
    with_plug = edits.with_screw_channel(case, (0.0, 0.0, 5.0), 0)
    assert with_plug.backing(Region.SCREW_CHANNEL).stump == edits.SCREW_PLUG
    mouth = mouth_of(with_plug, with_plug.screw_channels[0])
    change = predict_case(with_plug).appearance.lab - predict_case(case).appearance.lab
    assert change[mouth, 0].mean() > 1.0
    z = case.surface.mesh.vertices[:, 2]
    assert np.abs(change[case.reading.outer & (z < 2.0)]).max() < 0.2
    gone = edits.without_screw_channel(with_plug, 0)
    assert gone.screw_channels == ()
