"""Made bridges as bodies and the truth about them; judged by other libraries."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import igl
import numpy as np
import pytest
import trimesh
from igl.copyleft.cgal import remesh_self_intersections

from stainmap.errors import PlanError
from stainmap.model.tooth import Role
from stainmap.model.zone import Accent, Zone
from stainmap.practice.crown_bridge import MadeBridge, make_bridge
from stainmap.practice.crown_maker import main
from stainmap.surface.mesh import connected_pieces

Maker = Callable[..., MadeBridge]

# The second is one whose walls run so close that the units have to stand further apart.
INDIVIDUALS = [(0, 0.0), (27, 1.0)]
if os.environ.get("STAINMAP_MORE"):
    INDIVIDUALS += [(seed, variation) for seed in range(5, 15) for variation in (0.0, 1.0)]
# What the connectors were made for, and how much an individual may differ (assumed).
SECTIONS_MM2, SECTION_SPREAD_MM2 = (8.9, 9.6), 1.5


def as_trimesh(bridge: MadeBridge) -> trimesh.Trimesh:
    return trimesh.Trimesh(bridge.mesh.vertices, bridge.mesh.faces, process=False)


def section_by_winding(bridge: MadeBridge, x: float, centre: np.ndarray) -> float:
    """Return the area of a section across x, from libigl's winding number on a fine grid."""
    step = 0.04
    line = np.arange(-3.0, 3.0, step) + step / 2
    y, z = np.meshgrid(centre[1] + line, centre[2] + line)
    points = np.stack([np.full(y.size, x), y.ravel(), z.ravel()], axis=1)
    inside = igl.fast_winding_number(
        np.array(bridge.mesh.vertices), bridge.mesh.faces.astype(np.int64), points
    )
    within = trimesh.graph.connected_components(
        _grid_edges((inside > 0.5).reshape(y.shape)), min_len=1
    )
    middle = y.size // 2 + len(line) // 2
    return float(max(len(piece) for piece in within if middle in piece) * step * step)


def _grid_edges(inside: np.ndarray) -> np.ndarray:
    number = np.arange(inside.size).reshape(inside.shape)
    across = inside[:, 1:] & inside[:, :-1]
    down = inside[1:] & inside[:-1]
    return np.concatenate(
        [
            np.stack([number[:, 1:][across], number[:, :-1][across]], axis=1),
            np.stack([number[1:][down], number[:-1][down]], axis=1),
        ]
    )


@pytest.mark.parametrize(("seed", "variation"), INDIVIDUALS)
def test_one_closed_body_of_even_triangles(bridge_of: Maker, seed: int, variation: float) -> None:
    """STAINMAP_MORE=1 looks at twenty more individuals, about 4 s of processor time each."""
    body = as_trimesh(bridge_of(seed, variation))
    assert body.is_watertight
    assert body.is_winding_consistent
    assert body.volume > 400.0
    assert body.euler_number == 2
    assert body.body_count == 1
    assert np.degrees(body.face_angles).min() > 10.0
    assert body.area_faces.min() > 1e-4


@pytest.mark.parametrize(("seed", "variation"), INDIVIDUALS)
def test_surface_does_not_cross_itself(bridge_of: Maker, seed: int, variation: float) -> None:
    """By CGAL's exact arithmetic, through libigl."""
    mesh = bridge_of(seed, variation).mesh
    crossing = remesh_self_intersections(
        np.array(mesh.vertices), mesh.faces.astype(np.int64), detect_only=True
    )[2]
    assert len(crossing) == 0


@pytest.mark.parametrize(("seed", "variation"), INDIVIDUALS)
def test_connectors_have_the_stated_sections(
    bridge_of: Maker, seed: int, variation: float, record_property: Callable[[str, object], None]
) -> None:
    bridge = bridge_of(seed, variation)
    record_property("connector sections mm2", bridge.connector_sections_mm2)
    np.testing.assert_allclose(bridge.connector_sections_mm2, SECTIONS_MM2, atol=SECTION_SPREAD_MM2)
    for section, centre in zip(bridge.connector_sections_mm2, bridge.connectors, strict=True):
        theirs = min(
            section_by_winding(bridge, centre[0] + shift, centre) for shift in (-0.1, 0.0, 0.1)
        )
        assert section == pytest.approx(theirs, rel=0.05)


@pytest.mark.parametrize(("seed", "variation"), INDIVIDUALS)
def test_retainers_can_be_seated_together_and_keep_their_walls(
    bridge_of: Maker, seed: int, variation: float
) -> None:
    """No undercut along the one axis that both cavities share; walls by libigl's distances."""
    bridge = bridge_of(seed, variation)
    body = as_trimesh(bridge)
    cavity = ~bridge.outer
    outside = bridge.mesh.faces[bridge.outer[bridge.mesh.faces].all(axis=1)].astype(np.int64)
    for index, roof_mm in zip((0, 2), bridge.minimum_occlusal_walls_mm, strict=True):
        mine = np.flatnonzero(cavity & (bridge.unit_index == index))
        points = bridge.mesh.vertices[mine]
        low = points[:, 2] < points[:, 2].min() + 1.5
        tilt = body.vertex_normals[mine, 2]
        assert (tilt[~low] > np.sin(np.radians(2.0))).mean() < 0.001
        wall = np.sqrt(
            igl.point_mesh_squared_distance(points, np.array(bridge.mesh.vertices), outside)[0]
        )
        roof = (tilt < -0.8) & ~low
        assert wall[roof].min() > 0.8
        assert wall[roof].min() == pytest.approx(roof_mm, abs=0.05)
        assert wall[~low].min() > 0.48


def test_units_stand_in_a_row(bridge_of: Maker) -> None:
    bridge = bridge_of()
    assert [unit.tooth.number for unit in bridge.units] == [14, 15, 16]
    assert [unit.role for unit in bridge.units] == [Role.RETAINER, Role.PONTIC, Role.RETAINER]
    x = bridge.mesh.vertices @ np.array(bridge.mesial)
    spans = [(x[bridge.unit_index == k].min(), x[bridge.unit_index == k].max()) for k in range(3)]
    middles = bridge.connectors @ np.array(bridge.mesial)
    np.testing.assert_allclose([spans[0][0], spans[1][0]], middles, atol=0.2)
    np.testing.assert_allclose([spans[1][1], spans[2][1]], middles, atol=0.2)
    for k in range(3):
        assert connected_pieces(bridge.mesh, np.asarray(bridge.unit_index == k))[0] == 1
    # Mesiodistal sizes of 14, 15 and 16 from memory of textbooks, as in test_crown_shape.
    np.testing.assert_allclose([b - a for a, b in spans], (7.0, 7.0, 10.0), atol=0.45)
    assert {name.split()[0] for name in bridge.tip_names} == {"14", "15", "16"}
    assert len(bridge.tips) == len(bridge.tip_names) == 8


def test_only_retainers_are_hollow(bridge_of: Maker) -> None:
    bridge = bridge_of()
    assert set(np.unique(bridge.unit_index[~bridge.outer])) == {0, 2}
    np.testing.assert_array_equal(bridge.zones == Zone.INNER, ~bridge.outer)
    assert connected_pieces(bridge.mesh, ~bridge.outer)[0] == 2


def test_every_unit_has_every_zone(bridge_of: Maker) -> None:
    bridge = bridge_of()
    for k in range(3):
        zones = set(np.unique(bridge.zones[bridge.unit_index == k]).tolist())
        assert zones == {int(zone) for zone in Zone} - ({int(Zone.INNER)} if k == 1 else set())


def test_accents_of_a_bridge(bridge_of: Maker) -> None:
    bridge = bridge_of()
    accents = dict(bridge.accents)
    assert set(accents) == set(Accent) - {Accent.INNER_NECK_BAND}
    for accent, mask in accents.items():
        assert mask.dtype == np.float32
        assert mask.min() == 0.0, accent
        assert 0.9 < mask.max() <= 1.0, accent
        assert (mask[~bridge.outer] == 0.0).all(), accent
    pontic = bridge.unit_index == 1
    tissue = accents[Accent.PONTIC_TISSUE] > 0.5
    assert not tissue[~pontic].any()
    assert connected_pieces(bridge.mesh, np.asarray(tissue))[0] == 1
    # It looks down and is as large as an oval of the neck and the bulge below it, within a third.
    assert (bridge.mesh.vertex_normals[tissue, 2] < 0.5).all()
    assert 30.0 < bridge.mesh.vertex_areas[tissue].sum() < 60.0
    assert not (accents[Accent.MARGIN_BAND] > 0.0)[pontic].any()
    assert (accents[Accent.MARGIN_BAND] > 0.5)[~pontic].any()


def test_connectors_are_marked_and_interproximal(bridge_of: Maker) -> None:
    """Two rings around the span: without them the units fall apart."""
    bridge = bridge_of()
    marked = np.asarray(dict(bridge.accents)[Accent.CONNECTOR] > 0.5)
    assert connected_pieces(bridge.mesh, marked)[0] == 2
    assert connected_pieces(bridge.mesh, ~marked)[0] == 3
    narrow = np.abs(bridge.mesh.vertices[:, :1] - bridge.connectors[:, 0]).min(axis=1) < 0.2
    narrow &= np.hypot(*(bridge.mesh.vertices[:, 1:] - bridge.connectors[0, 1:]).T) < 2.2
    assert marked[narrow].all()
    assert (bridge.zones[narrow] == Zone.INTERPROXIMAL).all()
    away = np.abs(bridge.mesh.vertices[:, :1] - bridge.connectors[:, 0]).min(axis=1) > 1.5
    assert not marked[away].any()


def test_made_again_for_the_other_side_it_is_the_exact_mirror_image() -> None:
    """Two runs that agree in every number: the same seed gives the same bridge."""
    one, other = (
        make_bridge(teeth, seed=3, variation=0.5, resolution=0.25)
        for teeth in ((14, 15, 16), (24, 25, 26))
    )
    flip = np.array([-1.0, 1.0, 1.0])
    np.testing.assert_array_equal(other.mesh.vertices, one.mesh.vertices * flip)
    np.testing.assert_array_equal(other.mesh.faces, one.mesh.faces[:, ::-1])
    np.testing.assert_array_equal(other.zones, one.zones)
    np.testing.assert_array_equal(other.unit_index, one.unit_index)
    np.testing.assert_array_equal(other.tips, one.tips * flip)
    for (accent, mask), (same, mirrored) in zip(one.accents, other.accents, strict=True):
        assert accent is same
        np.testing.assert_array_equal(mask, mirrored)
    assert other.mesial == (-1.0, 0.0, 0.0)
    assert as_trimesh(other).volume == pytest.approx(as_trimesh(one).volume)
    assert other.connector_sections_mm2 == pytest.approx(one.connector_sections_mm2)


def test_refusals_name_the_bridge(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(PlanError, match="34-35-36 cannot be made"):
        make_bridge((34, 35, 36))
    with pytest.raises(ValueError, match="seed must be 0 or more"):
        make_bridge(seed=-1)
    for teeth, words in (("14-16", "14-16 cannot be made"), ("molar", "not a tooth number")):
        with pytest.raises(SystemExit):
            main([str(tmp_path / "x.stl"), "--tooth", teeth])
        assert words in capsys.readouterr().err
    assert not list(tmp_path.iterdir())
