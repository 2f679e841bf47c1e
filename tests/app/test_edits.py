"""Edits return new cases and leave the old one alone."""

from __future__ import annotations

from dataclasses import fields, replace

import numpy as np
import pytest

from stainmap.app import edits
from stainmap.errors import CatalogueError, PlanError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case, Region
from stainmap.model.finishing import Finish
from stainmap.model.material import BlankCoupon
from stainmap.model.plan import CoatSpan, Jar, StainPlan
from stainmap.model.zone import Zone
from stainmap.units import LengthUnit, SizeState
from tests.builders import dome_case


@pytest.fixture(scope="module")
def case() -> Case:
    materials = starter_catalogue()
    case = dome_case(6, 12)
    plan = StainPlan(block="medium 3Y")
    return replace(
        case,
        materials=materials,
        plan=plan,
        backings=(replace(case.backings[0], stump=materials.stumps[0].name, cement="clear"),),
        target=None,
    )


def test_a_new_liquid_brings_its_jar_and_an_old_one_does_not(case: Case) -> None:
    one = edits.with_added_liquid(case, 0, "barley")
    two = edits.with_added_liquid(one, 1, "slate")
    three = edits.with_added_liquid(two, 1, "barley")
    assert [jar.liquid for jar in three.plan.jars] == ["barley", "slate"]
    assert [three.plan.liquid_of(step) for step in three.plan.steps] == [
        "barley",
        "barley",
        "slate",
    ]
    # 25 drops of liquid take 2 to 3 drops of dye: common practice, no published source.
    assert all(2 <= sum(jar.dye_drops) <= 3 for jar in three.plan.jars)
    assert case.plan.jars == ()


def test_a_jar_leaves_with_its_last_step(case: Case) -> None:
    two = edits.with_added_liquid(edits.with_added_liquid(case, 0, "barley"), 1, "slate")
    assert [jar.liquid for jar in edits.without_step(two, 0).plan.jars] == ["slate"]
    assert edits.with_added_liquid(edits.without_step(two, 0), 1, "ash").plan.jars[-1].number == 1


def test_cells_steps_and_jars_change_as_told(case: Case) -> None:
    two = edits.with_added_liquid(edits.with_added_liquid(case, 0, "barley"), 1, "slate")
    painted = edits.with_coats(two, 1, Zone.CUSP, CoatSpan(low=2, high=3))
    assert painted.plan.steps[1].entry(Zone.CUSP) is not None
    assert edits.with_coats(painted, 1, Zone.CUSP, CoatSpan(low=2, high=3)) is painted
    assert edits.with_moved_step(painted, 1, 0).plan.steps[0].jar == 2
    assert edits.with_step_jar(painted, 1, 1).plan.steps[1].jar == 1
    jar = Jar(number=2, liquid="slate", liquid_drops=20, dye_drops=(0, 2, 0), lot="L1")
    assert edits.with_jar(painted, jar).plan.jar(2) == jar


def test_a_milled_mesh_follows_the_enlargement_of_its_block(case: Case) -> None:
    milled = edits.with_size(case, SizeState.MILLED, LengthUnit.MILLIMETRE)
    factor = 1.0 / case.source.enlargement_factor
    np.testing.assert_allclose(
        milled.surface.mesh.vertices, case.surface.mesh.vertices * factor, rtol=1e-12
    )
    np.testing.assert_allclose(
        milled.reading.depth_below_crest_mm,
        case.reading.depth_below_crest_mm * factor,
        rtol=1e-6,
    )
    block = replace(case.materials.block("medium 4Y"), enlargement_factor=1.3)
    others = tuple(b for b in case.materials.blocks if b.name != block.name)
    known = replace(milled, materials=replace(case.materials, blocks=(*others, block)))
    moved = edits.with_block(known, "medium 4Y")
    np.testing.assert_allclose(
        moved.surface.mesh.extent, case.surface.mesh.extent / 1.3, rtol=1e-12
    )
    back = edits.with_size(moved, SizeState.SINTERED, LengthUnit.MILLIMETRE)
    np.testing.assert_allclose(back.surface.mesh.extent, case.surface.mesh.extent, rtol=1e-12)


def test_a_sintered_mesh_keeps_its_surface_when_the_block_changes(case: Case) -> None:
    assert edits.with_block(case, "white 5Y").surface is case.surface


def test_what_does_not_exist_is_refused(case: Case) -> None:
    with pytest.raises(CatalogueError, match="no block"):
        edits.with_block(case, "pink")
    with pytest.raises(CatalogueError, match="no liquid"):
        edits.with_added_liquid(case, 0, "mud")
    with pytest.raises(PlanError):
        edits.without_step(case, 0)
    with pytest.raises(PlanError):
        edits.with_assumed_wall(case, 9.0)


def test_backings_are_set_per_region(case: Case) -> None:
    dark = edits.with_backing(case, Region.INCISAL_EDGE, stump="dark mouth", cement="clear")
    assert dark.backing(Region.INCISAL_EDGE).stump == "dark mouth"
    assert dark.backing(Region.STUMP).stump == case.backings[0].stump
    again = edits.with_backing(dark, Region.STUMP, stump="metal", cement="opaque")
    assert [b.region for b in again.backings] == [Region.STUMP, Region.INCISAL_EDGE]


def test_an_edit_leaves_everything_else_as_it_was(case: Case) -> None:
    changed = edits.with_programme(case, "fast")
    for field in fields(case):
        if field.name != "programme":
            assert getattr(changed, field.name) is getattr(case, field.name)


def test_cement_and_backings_of_a_region(case: Case) -> None:
    thick = edits.with_cement_thickness(case, Region.STUMP, 0.2)
    assert thick.backing(Region.STUMP).cement_thickness_mm == 0.2
    with pytest.raises(PlanError, match="out of range"):
        edits.with_cement_thickness(case, Region.STUMP, 3.0)
    with pytest.raises(PlanError, match="screw channel"):
        edits.with_cement_thickness(case, Region.SCREW_CHANNEL, 0.2)
    pontic = edits.with_backing(case, Region.PONTIC, stump="metal", cement="opaque")
    assert edits.without_backing(pontic, Region.PONTIC).backings == case.backings
    with pytest.raises(PlanError, match="Something must lie behind"):
        edits.without_backing(case, Region.STUMP)


def test_a_screw_channel_belongs_to_the_unit_it_was_set_in(case: Case) -> None:
    one = edits.with_screw_channel(case, (0.0, 0.0, 5.0), 0)
    assert one.screw_channels[0].axis == case.reading.occlusal_axis
    moved = edits.with_screw_channel(one, (0.5, 0.0, 5.0), 0, axis=(0.1, 0.0, 1.0), radius_mm=1.5)
    assert [channel.point_mm for channel in moved.screw_channels] == [(0.5, 0.0, 5.0)]
    assert moved.backings == one.backings
    with pytest.raises(PlanError, match="radius"):
        edits.with_screw_channel(case, (0.0, 0.0, 5.0), 0, radius_mm=9.0)


def test_a_screw_channel_moves_with_the_size_of_the_mesh(case: Case) -> None:
    set_up = edits.with_screw_channel(case, (0.0, 0.0, 5.0), 0)
    milled = edits.with_size(set_up, SizeState.MILLED, LengthUnit.MILLIMETRE)
    factor = milled.surface.mesh.vertices[0, 2] / case.surface.mesh.vertices[0, 2]
    assert factor < 0.9
    assert milled.screw_channels[0].point_mm[2] == pytest.approx(5.0 * factor)


def test_who_paints_and_how_the_crown_is_left(case: Case) -> None:
    painted = edits.with_painter(case, " bench 2 ", 1.3)
    assert (painted.process.painter, painted.process.uptake.hand_factor) == ("bench 2", 1.3)
    assert edits.with_painter(painted, "bench 2", 1.3) is painted
    with pytest.raises(PlanError, match="hand factor of 2"):
        edits.with_painter(case, "bench 2", 2.0)
    with pytest.raises(PlanError, match="too long"):
        edits.with_painter(case, "x" * 50, 1.0)
    ground = edits.with_ground(edits.with_finish(case, Finish.GLAZED), Zone.CUSP, 0.2)
    assert ground.after_sintering.finish is Finish.GLAZED
    assert edits.with_ground(ground, Zone.CUSP, 0.0).after_sintering.ground == ()
    with pytest.raises(PlanError, match="out of range"):
        edits.with_ground(case, None, 2.0)


def test_a_coupon_is_kept_with_its_programme(case: Case) -> None:
    coupon = BlankCoupon(scattering_factor=1.2, read_by="bench 2", read_on="2026-05-04")
    read = edits.with_coupon(case, "fast", coupon)
    assert read.materials.programme("fast").effective_scattering_factor == 1.2
    assert read.materials.programme("slow") == case.materials.programme("slow")
    assert edits.with_coupon(read, "fast", None).materials == case.materials
    with pytest.raises(CatalogueError, match="no programme called 'x'"):
        edits.with_coupon(case, "x", coupon)
