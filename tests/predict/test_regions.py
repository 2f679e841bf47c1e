"""What lies behind the wall, region by region, and what it does to colour."""

from __future__ import annotations

import json
from dataclasses import replace

import numpy as np
import pytest

from stainmap.app.prediction import predict_case
from stainmap.errors import PlanError
from stainmap.model.case import Backing, Case, Region, ScrewChannel
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.optics.difference import delta_e_00
from stainmap.planning.plan_hash import _plain, plan_hash
from stainmap.predict.regions import CHANNEL_REACH_MM, mouth_of, region_of_vertices
from stainmap.predict.scene import scene_from_case
from tests.builders import dome_case
from tests.predict.scenes import DENTINE, materials, plan_of, plate_lab

PLUG = Backing(region=Region.SCREW_CHANNEL, stump="plug of a screw channel", cement="clear")
MOUTH = Backing(region=Region.INCISAL_EDGE, stump="dark mouth", cement="none, air gap")
SOLID = Backing(region=Region.PONTIC, stump="solid ceramic (pontic)", cement="clear")
CHANNEL = ScrewChannel(unit=0, point_mm=(0.0, 0.0, 5.0), axis=(0.0, 0.0, 1.0), radius_mm=1.2)


def planned(**changes: object) -> Case:
    """Return the dome, 5 mm outside and 4 mm inside, of starter materials."""
    choices = {"backings": (DENTINE, MOUTH, SOLID, PLUG), **changes}
    return replace(dome_case(), materials=materials(), plan=plan_of(["barley"]), **choices)


def behind(stump: str, cement: str = "clear", cement_mm: float = 0.05, **choices: object):
    backing = Backing(
        region=Region.STUMP, stump=stump, cement=cement, cement_thickness_mm=cement_mm
    )
    return plate_lab(backings=[backing], **choices)


def test_a_channel_that_was_set_has_the_plug_behind_its_mouth() -> None:
    case = planned(screw_channels=(CHANNEL,))
    x, y, z = case.surface.mesh.vertices.T
    expected = case.reading.outer & (x**2 + y**2 <= 1.2**2) & (z > 0.0)
    assert 20 < expected.sum() < 300
    np.testing.assert_array_equal(mouth_of(case, CHANNEL), expected)
    np.testing.assert_array_equal(region_of_vertices(case) == 3, expected)
    assert not (region_of_vertices(planned()) == 3).any()


def test_the_way_the_axis_runs_and_its_length_do_not_matter() -> None:
    case = planned()
    back = replace(CHANNEL, axis=(0.0, 0.0, -7.0))
    np.testing.assert_array_equal(mouth_of(case, back), mouth_of(case, CHANNEL))


def test_a_channel_ends_before_the_opposite_side() -> None:
    across = replace(CHANNEL, point_mm=(5.0, 0.0, 0.5), axis=(1.0, 0.0, 0.0))
    mouth = mouth_of(planned(), across)
    x = planned().surface.mesh.vertices[:, 0]
    assert mouth.any()
    assert (x[mouth] > 5.0 - CHANNEL_REACH_MM).all()


def test_a_channel_lies_over_an_edge_and_only_in_its_own_unit() -> None:
    front = planned(units=(Unit(tooth=Tooth(number=11)),), screw_channels=(CHANNEL,))
    regions = region_of_vertices(front)
    assert (regions[mouth_of(front, CHANNEL)] == 3).all()
    assert (regions == 1).any()
    left = dome_case().surface.mesh.vertices[:, 0] > 0.0
    two = planned(
        units=(Unit(tooth=Tooth(number=45)), Unit(tooth=Tooth(number=46))),
        reading=replace(dome_case().reading, unit_index=left.astype(np.uint8)),
        screw_channels=(CHANNEL,),
    )
    mouth = mouth_of(two, CHANNEL)
    assert mouth.any()
    assert not (mouth & left).any()


def test_without_a_plug_the_stump_lies_behind_the_channel() -> None:
    case = planned(backings=(DENTINE,), screw_channels=(CHANNEL,))
    assert not region_of_vertices(case).any()


def test_the_plug_is_seen_through_the_wall() -> None:
    """A bright plug under a wall of 1 mm over a titanium base: the scene itself, per vertex."""
    base = Backing(region=Region.STUMP, stump="titanium base", cement="clear")
    scene = scene_from_case(planned(backings=(base, PLUG), screw_channels=(CHANNEL,)))
    mouth = mouth_of(planned(), CHANNEL)
    luminance = scene.backing_reflectance @ scene.xyz_weights[:, 1]
    assert scene.region_index is not None
    assert luminance[scene.region_index[mouth]].min() > luminance[0] + 0.2


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"axis": (0.0, 0.0, 0.0)}, "points nowhere"),
        ({"axis": (0.0, float("nan"), 1.0)}, "no place"),
        ({"point_mm": (0.0, float("inf"), 1.0)}, "no place"),
        ({"unit": -1}, "no place"),
        ({"radius_mm": 0.2}, "0.2"),
        ({"radius_mm": 4.0}, "4.0"),
    ],
)
def test_channels_that_are_none_are_refused(changes: dict[str, object], says: str) -> None:
    with pytest.raises(PlanError, match=says):
        replace(CHANNEL, **changes)


def test_a_channel_of_a_unit_that_is_not_there_is_refused() -> None:
    with pytest.raises(PlanError, match="unit that is not there"):
        planned(screw_channels=(replace(CHANNEL, unit=1),))


def test_pontics_are_solid_whatever_their_wall_is_taken_for() -> None:
    """Their backing is the ceramic itself: the colour does not depend on where it begins."""
    labs = [behind("solid ceramic (pontic)", wall_mm=wall, cement_mm=0.0) for wall in (1, 2, 4)]
    assert max(delta_e_00(lab, labs[-1]) for lab in labs) < 0.6
    case = planned(units=(Unit(tooth=Tooth(number=36), role=Role.PONTIC),))
    assert (region_of_vertices(case) == 2).all()


def test_dark_things_behind_a_thin_wall_darken_it_in_their_order() -> None:
    """Common practice, no published source: metal and titanium show through, dentine does not."""
    names = ("natural dentine, medium", "metal", "titanium base", "dark mouth")
    values = [behind(name, wall_mm=0.7)[0] for name in names]
    assert (np.diff(values) < -0.3).all()
    thick = [behind(name, wall_mm=2.5)[0] for name in names]
    assert max(thick) - min(thick) < 0.3 * (max(values) - min(values))


def test_more_opaque_cement_hides_more_of_what_is_behind() -> None:
    """Titanium against dentine through a wall of 0.7 mm, cement from 0 to 0.3 mm."""

    def seen(cement: str, cement_mm: float) -> float:
        one, other = (
            behind(stump, cement, cement_mm, wall_mm=0.7)
            for stump in ("titanium base", "natural dentine, medium")
        )
        return float(delta_e_00(one, other))

    clear = [seen("clear", mm) for mm in (0.0, 0.1, 0.3)]
    opaque = [seen("opaque", mm) for mm in (0.0, 0.05, 0.1, 0.3)]
    assert clear[0] == pytest.approx(opaque[0])
    assert clear[0] - clear[-1] < 0.3
    assert (np.diff(opaque) < 0.0).all()
    assert opaque[-1] < 0.25 * opaque[0]


def two_units(**changes: object) -> Case:
    """Return the dome cut into a retainer on either side."""
    left = dome_case().surface.mesh.vertices[:, 0] > 0.0
    return planned(
        units=(
            Unit(tooth=Tooth(number=45), role=Role.RETAINER),
            Unit(tooth=Tooth(number=46), role=Role.RETAINER),
        ),
        reading=replace(dome_case().reading, unit_index=left.astype(np.uint8)),
        **changes,
    )


def test_a_unit_has_the_stump_of_its_own_and_the_others_keep_theirs() -> None:
    metal = Backing(region=Region.STUMP, stump="metal", cement="clear", of_unit=1)
    plain = two_units(backings=(DENTINE,))
    case = two_units(backings=(DENTINE, metal))
    assert case.backing(Region.STUMP, 1) is metal
    assert case.backing(Region.STUMP, 0) is case.backing(Region.STUMP) is DENTINE
    # A region without an entry has its own unit's stump.
    assert case.backing(Region.PONTIC, 1) is metal
    own = case.reading.unit_index == 1
    np.testing.assert_array_equal(region_of_vertices(case) == 1, own)
    before, after = predict_case(plain).appearance.lab, predict_case(case).appearance.lab
    change = delta_e_00(before, after)
    # Nothing beyond the reach of light at the border of the units; there the wall is 1 mm.
    away = np.abs(case.surface.mesh.vertices[:, 0])
    assert float(change[own & case.reading.outer & (away > 2.0)].min()) > 0.5
    assert float(change[~own & (away > 3.0)].max()) < 0.05
    # And it is what the whole crown is over that stump.
    whole = predict_case(two_units(backings=(replace(DENTINE, stump="metal"),))).appearance.lab
    assert float(delta_e_00(whole, after)[own & (away > 3.0)].max()) < 0.05


def test_a_stump_of_a_unit_that_is_not_there_is_refused() -> None:
    far = Backing(region=Region.STUMP, stump="metal", cement="clear", of_unit=2)
    with pytest.raises(PlanError, match="unit that is not there"):
        two_units(backings=(DENTINE, far))


def test_one_stump_for_all_keeps_the_hash_that_is_on_sheets_already() -> None:
    case = two_units(backings=(DENTINE,))
    assert "of_unit" not in json.dumps(_plain(case.backings))
    own = (DENTINE, replace(DENTINE, of_unit=0))
    assert plan_hash(replace(case, backings=own)) != plan_hash(case)
