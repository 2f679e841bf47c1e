"""Grinding after sintering: paler ceramic comes to light, and the wall gets thinner."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stainmap.errors import PlanError
from stainmap.model.finishing import AfterSintering, Grinding
from stainmap.model.process import StainProcess, UptakeRule
from stainmap.model.zone import Accent, Zone
from stainmap.optics.difference import delta_e_00
from stainmap.optics.interface import reflectance_outside
from stainmap.optics.stack import stack_reflectance
from stainmap.predict.appearance import AppearanceEngine
from stainmap.predict.grinding import (
    FALL_IN_DEPTHS,
    ground_crown,
    ground_depth_mm,
    remaining_share,
)
from stainmap.predict.reference import (
    lab_of_reflectance,
    load_of_coats,
    reflectance_of_load,
)
from stainmap.predict.scene import scene_from_case
from stainmap.predict.shape import crown_shape
from tests.builders import dome_case
from tests.predict.crowns import painted_dome
from tests.predict.scenes import materials, scene_of

LIQUIDS = [liquid.name for liquid in materials().liquids]
DEPTH_MM = 0.4
FALL_MM = FALL_IN_DEPTHS * DEPTH_MM


def graded_lab(scene, peak: float, wall_mm: float, ground_mm: float) -> np.ndarray:
    """Return a plate with stain falling off exponentially, its top taken off: 80 thin layers."""
    K, S = scene.block_absorption_per_mm, scene.block_scattering_per_mm
    deep = min(ground_mm + 5.0 * FALL_MM, wall_mm)
    edges = np.append(np.linspace(ground_mm, deep, 81), [wall_mm] if deep < wall_mm else [])
    thick = np.diff(edges)
    within = peak * FALL_MM * -np.diff(np.exp(-edges / FALL_MM)) / thick
    layers = [
        (K + load * scene.liquid_absorption_per_mm, S, np.array([[t]]))
        for load, t in zip(within, thick, strict=True)
    ]
    outside = reflectance_outside(
        stack_reflectance(layers, scene.backing_reflectance[:1]),
        factor=scene.hemispherical_factor,
        front_internal=scene.front_internal,
    )
    return lab_of_reflectance(scene, outside)[0]


def test_a_graded_layer_looks_like_the_step_layer_before_and_after_grinding() -> None:
    """Against the same profile cut into many layers, holding as much stain as the step layer."""
    off = []
    for liquid in LIQUIDS:
        scene = scene_of([liquid])
        for coats in (1.0, 3.0, 5.0):
            load = load_of_coats(scene, [[coats]])[0, 0]
            for wall in (0.8, 1.2, 2.0):
                for ground in (0.0, 0.1, 0.2, 0.3):
                    graded = graded_lab(scene, load * DEPTH_MM / FALL_MM, wall, ground)
                    left = [[load * np.exp(-ground / FALL_MM)]]
                    step = reflectance_of_load(scene, left, [wall - ground])
                    off.append(delta_e_00(graded, lab_of_reflectance(scene, step)[0]))
    assert np.median(off) < 0.25
    assert max(off) < 1.0


def test_grinding_pales_more_the_deeper_it_goes_and_little_at_first() -> None:
    """Published: colour of stained zirconia is graded in depth, 0.5 mm change it significantly."""
    scene = scene_of(["barley"])
    load = load_of_coats(scene, [[3.0]])[0, 0]
    ground = np.array([0.0, 0.05, 0.1, 0.2, 0.3, 0.5])
    share = np.exp(-ground / FALL_MM)
    labs = lab_of_reflectance(scene, reflectance_of_load(scene, (load * share)[None], 2.0 - ground))
    chroma = np.hypot(labs[:, 1], labs[:, 2])
    assert (np.diff(chroma) < 0.0).all()
    assert delta_e_00(labs[0], labs[-1]) > 2.0
    assert delta_e_00(labs[0], labs[1]) < 0.8


def ground_case(*ground: Grinding):
    return replace(dome_case(), after_sintering=AfterSintering(ground=ground))


def test_depth_per_vertex_by_area_the_deepest_winning() -> None:
    case = ground_case(
        Grinding(depth_mm=0.1),
        Grinding(depth_mm=0.3, area=Zone.CUSP),
        Grinding(depth_mm=0.2, area=Accent.MARGIN_BAND),
    )
    depth = ground_depth_mm(case)
    assert depth is not None
    outer, margin = case.reading.outer, case.accent(Accent.MARGIN_BAND) > 0.5
    np.testing.assert_allclose(depth[case.zones == Zone.CUSP], 0.3)
    np.testing.assert_allclose(depth[outer & margin], 0.2)
    np.testing.assert_allclose(depth[outer & ~margin & (case.zones != Zone.CUSP)], 0.1)
    assert not depth[~outer].any()


def test_nothing_ground_changes_nothing() -> None:
    assert ground_depth_mm(dome_case()) is None
    assert ground_depth_mm(ground_case(Grinding(depth_mm=0.2, area=Accent.LINE_ANGLE))) is None
    case = painted_dome(["barley"], rings=8)
    shape = crown_shape(case)
    crown = ground_crown(shape, case.process, None)
    coats = np.ones((1, len(case.zones)), np.float32)
    assert crown.shape is shape
    assert crown.coats(scene_from_case(case), coats) is coats


def test_walls_get_thinner_on_both_sides_and_never_vanish() -> None:
    case = painted_dome(["barley"], rings=8, wall_mm=0.4)
    shape = crown_shape(case)
    depth = np.where(case.reading.outer, 0.2, 0.0).astype(np.float32)
    ground = ground_crown(shape, case.process, depth).shape
    np.testing.assert_allclose(
        ground.wall_mm[case.reading.outer], shape.wall_mm[case.reading.outer] - 0.2, atol=1e-6
    )
    seen = case.reading.outer[shape.partner] & (shape.partner >= 0) & ~case.reading.outer
    np.testing.assert_allclose(ground.wall_mm[seen], shape.wall_mm[seen] - 0.2, atol=1e-6)
    through = ground_crown(shape, case.process, np.float32(5.0) * depth).shape
    assert through.wall_mm.min() > 0.0


@settings(deadline=None, max_examples=30)
@given(
    coats=st.lists(st.floats(0.0, 6.0), min_size=3, max_size=3),
    depth=st.floats(0.0, 0.5),
    wall=st.floats(0.3, 2.0),
    eta=st.floats(0.0, 1.0),
)
def test_the_coats_handed_on_leave_that_share_of_the_load(
    coats: list[float], depth: float, wall: float, eta: float
) -> None:
    process = StainProcess(uptake=UptakeRule(competition=eta, hand_factor=1.2))
    scene = scene_of(["barley", "slate", "barley"], process=process)
    share = remaining_share(np.array([depth]), np.array([wall]), process)
    crown = ground_crown_of(share)
    column = np.array(coats)[:, None]
    left = load_of_coats(scene, crown.coats(scene, column))
    np.testing.assert_allclose(left, share * load_of_coats(scene, column), atol=1e-5)


def ground_crown_of(share: np.ndarray):
    from stainmap.predict.grinding import GroundCrown

    return GroundCrown(shape=None, remaining=share)


def test_a_ground_crown_is_paler_where_it_was_ground_in_the_engine_too() -> None:
    """Half of a dome ground by 0.2 mm: that half alone loses chroma, as a plate does."""
    case = painted_dome(["umber"], rings=24, wall_mm=1.2)
    shape, scene = crown_shape(case), scene_from_case(case)
    x = case.surface.mesh.vertices[:, 0]
    depth = np.where(case.reading.outer & (x > 0.0), 0.2, 0.0).astype(np.float32)
    coats = np.where(case.reading.outer, 3.0, 0.0)[None].astype(np.float32)
    before = AppearanceEngine(shape, scene).whole(coats).lab
    crown = ground_crown(shape, scene.process, depth)
    after = AppearanceEngine(crown.shape, scene).whole(crown.coats(scene, coats)).lab
    z = case.surface.mesh.vertices[:, 2]
    there = case.reading.outer & (x > 3.0) & (z > 1.5)
    elsewhere = case.reading.outer & (x < -3.0) & (z > 1.5)
    assert np.abs(after - before)[elsewhere].max() < 0.1
    load = load_of_coats(scene, [[3.0]])
    plates = lab_of_reflectance(
        scene_of(["umber"]),
        reflectance_of_load(
            scene_of(["umber"]), np.hstack([load, load * np.exp(-0.2 / FALL_MM)]), [1.2, 1.0]
        ),
    )
    np.testing.assert_allclose(
        (after - before)[there].mean(axis=0), plates[1] - plates[0], atol=0.5
    )
    some = np.flatnonzero(there)[:5]
    np.testing.assert_allclose(
        crown.coats(scene, coats[:, some], some), crown.coats(scene, coats)[:, some]
    )


@pytest.mark.parametrize("depth", [0.0, -0.1, 0.6, float("nan")])
def test_depths_that_are_no_adjustment_are_refused(depth: float) -> None:
    with pytest.raises(PlanError, match="out of range"):
        Grinding(depth_mm=depth)


def test_one_depth_per_area() -> None:
    with pytest.raises(PlanError, match="ground twice"):
        AfterSintering(ground=(Grinding(depth_mm=0.1), Grinding(depth_mm=0.2)))
    one = AfterSintering().with_ground(Zone.CUSP, 0.1).with_ground(None, 0.2)
    assert [entry.area for entry in one.ground] == [None, Zone.CUSP]
    assert one.with_ground(Zone.CUSP, 0.3).ground[1].depth_mm == 0.3
    assert one.with_ground(None, 0.0).with_ground(Zone.CUSP, 0.0) == AfterSintering()
