"""Scenes, the plain prediction, and the twelve bands of the screen."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stainmap.errors import CatalogueError, PlanError
from stainmap.model.case import Backing, Region
from stainmap.model.plan import Jar, StainPlan, Step
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.optics.colorimetry import lab_to_linear_srgb, lab_to_xyz, white_point
from stainmap.optics.difference import delta_e_00
from stainmap.predict.blocks import layer_share
from stainmap.predict.quadrature import NODE_COUNT, Materials, sample_reflectances
from stainmap.predict.reference import (
    lab_of_reflectance,
    load_of_coats,
    reference_lab,
    reflectance_of_load,
)
from stainmap.predict.scene import (
    OpticalScene,
    StainProcess,
    build_scene,
    scene_from_case,
    screen_quadrature,
)
from stainmap.predict.uptake import UptakeRule
from tests.builders import dome_case
from tests.predict.scenes import DENTINE, materials, plan_of, plate_lab, scene_of

LIQUIDS = [liquid.name for liquid in materials().liquids]
plans = st.lists(st.tuples(st.sampled_from(LIQUIDS), st.integers(1, 4)), min_size=1, max_size=4)
walls = st.floats(0.3, 3.0)


def luminance(lab: np.ndarray) -> float:
    return float(lab_to_xyz(lab, white_point())[..., 1])


# ------------------------------------------------------------------------------------------------
# What must hold for every plan


@settings(max_examples=60, deadline=None)
@given(plan=plans, extra=st.tuples(st.sampled_from(LIQUIDS), st.integers(1, 3)), wall_mm=walls)
def test_more_coats_are_never_lighter(
    plan: list[tuple[str, int]], extra: tuple[str, int], wall_mm: float
) -> None:
    """Another step after all others, outside or inside, at no change of scattering."""
    before = luminance(plate_lab(plan, wall_mm=wall_mm))
    assert luminance(plate_lab([*plan, extra], wall_mm=wall_mm)) <= before
    inside = luminance(plate_lab(plan, wall_mm=wall_mm, inside=[extra]))
    assert inside <= before


@settings(max_examples=40, deadline=None)
@given(liquid=st.sampled_from(LIQUIDS), wall_mm=walls)
def test_value_falls_with_every_coat(liquid: str, wall_mm: float) -> None:
    values = [luminance(plate_lab([(liquid, n)], wall_mm=wall_mm)) for n in range(8)]
    assert (np.diff(values) < 0.0).all()


@settings(max_examples=30, deadline=None)
@given(plan=plans, wall_mm=walls)
def test_no_coats_leave_the_block_as_it_is(plan: list[tuple[str, int]], wall_mm: float) -> None:
    unpainted = [(liquid, 0.0) for liquid, _ in plan]
    np.testing.assert_array_equal(plate_lab(unpainted, wall_mm=wall_mm), plate_lab(wall_mm=wall_mm))


def test_a_liquid_that_scatters_can_raise_value() -> None:
    """Computed and shown, and the reason why the rule above names scattering."""
    catalogue = materials()
    milky = replace(catalogue.liquid("heather"), amplitudes_per_mm=(), scatter_change=0.3)
    liquids = tuple(milky if one.name == "heather" else one for one in catalogue.liquids)
    scene = build_scene(
        replace(catalogue, liquids=liquids),
        plan_of(["heather"]),
        programme="slow",
        backings=[DENTINE],
    )
    painted, bare = reference_lab(scene, [[3.0, 0.0]], [1.2, 1.2])
    assert painted[0] > bare[0] + 0.2


def test_a_swapped_order_shows() -> None:
    """With competition the first liquid gets the pores; without it the order is nothing."""
    there, back = [("umber", 2), ("amber", 2)], [("amber", 2), ("umber", 2)]
    assert delta_e_00(plate_lab(there), plate_lab(back)) > 0.5
    alone = StainProcess(uptake=UptakeRule(competition=0.0))
    assert delta_e_00(plate_lab(there, process=alone), plate_lab(back, process=alone)) < 1e-9


# ------------------------------------------------------------------------------------------------
# The plain calculation


def test_vertices_are_predicted_by_themselves() -> None:
    rng = np.random.default_rng(8)
    scene = scene_of(["barley", "slate", "umber"])
    coats, partner = rng.uniform(0.0, 4.0, (2, 3, 6))
    wall = rng.uniform(0.4, 2.5, 6)
    inside = np.array([False, True, False, False, True, False])
    whole = reference_lab(scene, coats, wall, partner, inside=inside)
    for vertex in range(6):
        one = [vertex]
        alone = reference_lab(scene, coats[:, one], wall[one], partner[:, one], inside=inside[one])
        np.testing.assert_allclose(whole[vertex], alone[0], atol=1e-10)


def test_steps_of_one_calculation_agree() -> None:
    """Load, reflectance and colour taken one by one give the prediction in one go."""
    scene = scene_of(["barley", "slate"])
    coats, wall = np.array([[2.0, 1.0], [0.0, 3.0]]), np.array([0.8, 1.6])
    reflectance = reflectance_of_load(scene, load_of_coats(scene, coats), wall)
    assert reflectance.shape == (2, 31)
    np.testing.assert_array_equal(
        lab_of_reflectance(scene, reflectance), reference_lab(scene, coats, wall)
    )


def test_thin_walls_shrink_the_stained_layers() -> None:
    """Below 0.7 mm the layers meet; the block in between is gone, the walls stay walls."""
    scene = scene_of(["barley"])
    load = np.full((1, 1), 0.6)
    split = reflectance_of_load(scene, load, [0.35], load)
    deep = StainProcess(outer_depth_mm=0.35, inner_depth_mm=1e-12)
    whole = reflectance_of_load(scene_of(["barley"], process=deep), load, [0.35], load)
    np.testing.assert_allclose(split, whole, atol=1e-9)
    assert np.isfinite(reflectance_of_load(scene, load, [0.0], load)).all()


def test_inside_coats_show_through_thin_walls_only() -> None:
    thin = plate_lab(wall_mm=0.6) - plate_lab(wall_mm=0.6, inside=[("umber", 3)])
    thick = plate_lab(wall_mm=2.5) - plate_lab(wall_mm=2.5, inside=[("umber", 3)])
    assert thin[0] > 1.0
    assert abs(thick[0]) < 0.2


def test_the_inner_surface_has_open_air_behind() -> None:
    """Seen from inside, the outer layer lies behind, without stump: half the light goes on."""
    scene = scene_of(["umber"])
    inside = np.array([False, True])
    coats = np.zeros((1, 2))
    outer, inner = reference_lab(scene, coats, [0.8, 0.8], inside=inside)
    assert outer[0] != pytest.approx(inner[0], abs=0.1)
    painted = reference_lab(scene, coats, [0.8, 0.8], [[0.0, 3.0]], inside=inside)
    assert painted[1][0] < inner[0] - 1.0
    np.testing.assert_array_equal(painted[0], outer)


def test_textbook_surfaces_are_another_model() -> None:
    fitted, book = plate_lab(), plate_lab(surfaces="textbook")
    assert 0.5 < delta_e_00(fitted, book) < 6.0


@pytest.mark.parametrize("light", ["A", "FL11", "LED-B3"])
def test_lights_change_the_colour_but_not_white(light: str) -> None:
    scene = scene_of(["barley"], light=light)
    np.testing.assert_allclose(scene.srgb_matrix @ scene.white_xyz, np.ones(3), atol=1e-9)
    np.testing.assert_allclose(scene.lab(np.ones(31)), [100.0, 0.0, 0.0], atol=1e-9)
    lab = reference_lab(scene, [[2.0]], [1.2])[0]
    assert delta_e_00(lab, plate_lab([("barley", 2)])) > 0.3
    # A warm block stays warm on a screen adapted to the light.
    red, green, blue = lab_to_linear_srgb(lab, scene.white_xyz)
    assert red > green > blue


# ------------------------------------------------------------------------------------------------
# Building


def test_materials_are_found_by_name() -> None:
    scene = build_scene(
        materials(),
        StainPlan(
            block="light 3Y",
            jars=(
                Jar(number=1, liquid="slate", dye_drops=(0, 2, 1)),
                Jar(number=2, liquid="barley"),
                Jar(number=3, liquid="slate"),
            ),
            steps=(Step(jar=2), Step(jar=3), Step(jar=1)),
        ),
        programme="fast",
        backings=[DENTINE],
    )
    assert scene.liquids == ("slate", "barley")
    assert scene.step_liquid.tolist() == [1, 0, 0]
    np.testing.assert_allclose(scene.step_dilution, [1.0, 1.0, 25.0 / 28.0])
    slow = scene_of([], "light 3Y")
    np.testing.assert_allclose(scene.block_scattering_per_mm, 1.35 * slow.block_scattering_per_mm)
    np.testing.assert_allclose(
        scene.reduced_scattering_per_mm, scene.block_scattering_per_mm / 0.5097
    )
    with pytest.raises(CatalogueError, match="no liquid called 'rye'"):
        scene_of(["rye"])
    with pytest.raises(ValueError, match="read-only"):
        scene.step_dilution[0] = 0.5


def test_cement_between_crown_and_stump() -> None:
    """Opaque cement hides a discoloured stump; clear cement does not."""
    dark = {
        cement: plate_lab(
            wall_mm=0.6,
            backings=[
                Backing(
                    region=Region.STUMP,
                    stump="discoloured",
                    cement=cement,
                    cement_thickness_mm=0.1,
                )
            ],
        )[0]
        for cement in ("clear", "tooth-coloured", "opaque")
    }
    assert dark["clear"] < dark["tooth-coloured"] < dark["opaque"]
    assert dark["opaque"] - dark["clear"] > 2.0


def test_layers_of_a_block_blend_along_its_height() -> None:
    block = materials().block("graded medium to light 3Y/4Y")
    shares = layer_share(block, [-1.0, 0.0, 4.0, 8.0, 11.5, 15.0, 30.0])
    np.testing.assert_allclose(
        shares.T,
        [[1, 0, 0], [1, 0, 0], [0.5, 0.5, 0], [0, 1, 0], [0, 0.5, 0.5], [0, 0, 1], [0, 0, 1]],
        atol=1e-6,
    )
    scene = replace(scene_of([], block.name), layer_share=layer_share(block, [2.0, 11.5, 20.0]))
    labs = reference_lab(scene, np.zeros((0, 3)), [1.2, 1.2, 1.2])
    np.testing.assert_allclose(labs[0], plate_lab(), atol=1e-3)
    np.testing.assert_allclose(labs[2], plate_lab(block="light 4Y"), atol=1e-3)
    assert labs[0][0] < labs[1][0] < labs[2][0]
    some = scene.at_vertices(np.array([2, 0]))
    np.testing.assert_allclose(
        reference_lab(some, np.zeros((0, 2)), [1.2, 1.2]), labs[[2, 0]], atol=1e-10
    )


def test_case_gives_regions_and_heights_per_vertex() -> None:
    case = dome_case()
    mouth = Backing(region=Region.INCISAL_EDGE, stump="dark mouth", cement="none, air gap")
    solid = Backing(region=Region.PONTIC, stump="solid ceramic (pontic)", cement="clear")
    plan = replace(plan_of(["barley"], "graded medium to light 3Y/4Y"), nesting_height_mm=6.0)
    case = replace(
        case,
        materials=materials(),
        plan=plan,
        backings=(DENTINE, mouth, solid),
        units=(Unit(tooth=Tooth(number=11)),),
    )
    scene = scene_from_case(case)
    outer, depth = case.reading.outer, case.reading.depth_below_crest_mm
    assert scene.region_index is not None
    assert scene.layer_share is not None
    np.testing.assert_array_equal(scene.region_index == 1, outer & (depth < 1.5))
    assert not (scene.region_index == 2).any()
    # Foot at the nesting height, in the lower half of the blend; crest 6.25 mm (milled) above.
    z = case.surface.mesh.vertices[:, 2]
    np.testing.assert_allclose(scene.layer_share[0][z == z.min()], 1.0 - 6.0 / 8.0, atol=1e-6)
    top = 6.0 + case.source.enlargement_factor * (z.max() - z.min())
    np.testing.assert_allclose(scene.layer_share[2][z == z.max()], (top - 8.0) / 7.0, atol=1e-6)
    molar = replace(case, units=(Unit(tooth=Tooth(number=36)),))
    assert not scene_from_case(molar).region_index.any()
    pontic = replace(case, units=(Unit(tooth=Tooth(number=36), role=Role.PONTIC),))
    assert (scene_from_case(pontic).region_index == 2).all()


def test_regions_without_an_entry_have_the_stump_behind() -> None:
    case = replace(dome_case(), units=(Unit(tooth=Tooth(number=36), role=Role.PONTIC),))
    assert not scene_from_case(case).region_index.any()
    nothing = replace(case, backings=())
    with pytest.raises(PlanError, match="what lies behind"):
        scene_from_case(nothing)


# ------------------------------------------------------------------------------------------------
# The twelve bands of the screen


def states(
    block: str, light: str, programme: str, random_state: int
) -> tuple[OpticalScene, np.ndarray]:
    catalogue = materials()
    backings = [
        Backing(region=Region.STUMP, stump=stump.name, cement=cement.name)
        for stump in catalogue.stumps
        for cement in catalogue.cements
    ]
    scene = build_scene(
        catalogue,
        plan_of(LIQUIDS, block),
        programme=programme,
        backings=backings,
        light=light,
    )
    parts = Materials(
        block_absorption_per_mm=scene.block_absorption_per_mm,
        block_scattering_per_mm=scene.block_scattering_per_mm,
        liquid_absorption_per_mm=scene.liquid_absorption_per_mm,
        scatter_change=scene.scatter_change,
        backing_reflectance=scene.backing_reflectance,
        factor=scene.radiance_factor,
        front_internal=scene.front_internal,
    )
    return scene, sample_reflectances(parts, 5000, random_state=random_state)


@pytest.mark.parametrize(
    ("block", "light", "programme"),
    [
        ("white 3Y", "D65", "slow"),
        ("medium 3Y", "D65", "slow"),
        ("medium 3Y", "D65", "very fast"),
        ("deep 4Y", "D65", "standard"),
        ("medium 5Y", "A", "slow"),
        ("graded medium to light 3Y/4Y", "LED-B3", "slow"),
        ("medium 3Y", "FL11", "slow"),
    ],
)
def test_twelve_bands_give_the_colour_of_all(block: str, light: str, programme: str) -> None:
    """At most 0.1 dE00 on 5000 states that were not used to choose bands and weights."""
    quadrature = screen_quadrature(materials(), block, programme, light, 2)
    assert len(quadrature.indices) == NODE_COUNT == 12
    scene, reflectances = states(block, light, programme, random_state=77)
    screen = scene.on_bands(quadrature.indices, quadrature.xyz_weights)
    exact = scene.lab(reflectances)
    assert delta_e_00(screen.lab(reflectances[:, quadrature.indices]), exact).max() < 0.1
    np.testing.assert_allclose(quadrature.xyz_weights.sum(0), scene.white_xyz, atol=1e-6)


def test_random_states_cover_what_crowns_look_like() -> None:
    """Guards the test above: states spread over value and chroma, other numbers give others."""
    scene, reflectances = states("medium 3Y", "D65", "slow", random_state=77)
    lab = scene.lab(reflectances)
    assert lab[:, 0].min() < 65.0
    assert lab[:, 0].max() > 77.0
    assert lab[:, 2].min() < 10.0
    assert lab[:, 2].max() > 25.0
    assert not np.array_equal(reflectances, states("medium 3Y", "D65", "slow", 78)[1])


def test_screen_scene_of_a_case_agrees_with_the_full_one() -> None:
    case = replace(
        dome_case(), materials=materials(), plan=plan_of(["barley", "umber"]), backings=(DENTINE,)
    )
    full, screen = scene_from_case(case), scene_from_case(case, bands="screen")
    assert (len(full.wavelengths_nm), len(screen.wavelengths_nm)) == (31, 12)
    rng = np.random.default_rng(9)
    count = len(case.surface.mesh.vertices)
    coats, wall = rng.uniform(0.0, 4.0, (2, count)), rng.uniform(0.4, 2.0, count)
    off = delta_e_00(reference_lab(screen, coats, wall), reference_lab(full, coats, wall))
    assert off.max() < 0.1
    np.testing.assert_array_equal(screen.white_xyz, full.white_xyz)
    np.testing.assert_array_equal(
        screen.wavelengths_nm,
        full.wavelengths_nm[np.isin(full.wavelengths_nm, screen.wavelengths_nm)],
    )
