"""Made crowns as bodies: closed, of a tooth's size, with walls; judged by other libraries."""

from __future__ import annotations

from collections.abc import Callable

import igl
import numpy as np
import pytest
import trimesh
from igl.copyleft.cgal import remesh_self_intersections

from stainmap.model.tooth import Tooth
from stainmap.practice.crown_maker import MAKEABLE_TEETH, MadeCrown, make_crown

Maker = Callable[..., MadeCrown]

# Average natural crowns: mesiodistal, bucco- or labiolingual, length; the same two at the cervix.
# Upper first molar read in [Nelson2010], the rest of its table from memory.
AVERAGE_MM = {
    36: ((11.0, 10.5, 7.5), (9.0, 9.0)),
    16: ((10.0, 11.0, 7.5), (8.0, 10.0)),
    14: ((7.0, 9.0, 8.5), (5.0, 8.0)),
    15: ((7.0, 9.0, 8.5), (5.0, 8.0)),
    13: ((7.5, 8.0, 10.0), (5.5, 7.0)),
    11: ((8.5, 7.0, 10.5), (7.0, 6.0)),
}
TEETH = tuple(AVERAGE_MM)
INDIVIDUALS = [(number, 0, 0.0) for number in TEETH] + [
    (number, seed, 1.0) for number in TEETH for seed in (1, 2)
]


def as_trimesh(crown: MadeCrown) -> trimesh.Trimesh:
    return trimesh.Trimesh(crown.mesh.vertices, crown.mesh.faces, process=False)


def cavity_walls(crown: MadeCrown) -> tuple[np.ndarray, np.ndarray]:
    """Return wall and height above the margin at the cavity's vertices; the wall by libigl."""
    mesh = crown.mesh
    faces = mesh.faces[crown.outer[mesh.faces].all(axis=1)].astype(np.int64)
    points = mesh.vertices[~crown.outer]
    squared = igl.point_mesh_squared_distance(points, np.array(mesh.vertices), faces)[0]
    rim = points[border_of_cavity(crown)]
    azimuth = np.arctan2(rim[:, 1], rim[:, 0])
    order = np.argsort(azimuth)
    margin = np.interp(
        np.arctan2(points[:, 1], points[:, 0]), azimuth[order], rim[order, 2], period=2 * np.pi
    )
    return np.sqrt(squared), points[:, 2] - margin


def border_of_cavity(crown: MadeCrown) -> np.ndarray:
    """Return the cavity's vertices that share a face with the outer surface."""
    rim_faces = crown.outer[crown.mesh.faces].any(axis=1) & ~crown.outer[crown.mesh.faces].all(
        axis=1
    )
    vertices = np.unique(crown.mesh.faces[rim_faces])
    vertices = vertices[~crown.outer[vertices]]
    return np.searchsorted(np.flatnonzero(~crown.outer), vertices)


@pytest.mark.parametrize(("number", "seed", "variation"), INDIVIDUALS)
def test_closed_like_a_ball_and_well_shaped(
    crown_of: Maker, number: int, seed: int, variation: float
) -> None:
    body = as_trimesh(crown_of(number, seed, variation))
    assert body.is_watertight
    assert body.is_winding_consistent
    assert body.volume > 50.0
    assert body.euler_number == 2
    assert body.body_count == 1
    angles = np.degrees(body.face_angles)
    assert angles.min() > 10.0
    assert body.area_faces.min() > 1e-4


@pytest.mark.parametrize(("number", "seed", "variation"), INDIVIDUALS)
def test_surface_does_not_cross_itself(
    crown_of: Maker, number: int, seed: int, variation: float
) -> None:
    """No two faces cross, by CGAL's exact arithmetic through libigl; material is under all faces.

    Just under a face libigl's winding number is 1 and just over it 0; a fold or a second shell
    inside leaves places that are enclosed twice, or not at all.
    """
    mesh = crown_of(number, seed, variation).mesh
    vertices, faces = np.array(mesh.vertices), mesh.faces.astype(np.int64)
    crossing = remesh_self_intersections(vertices, faces, detect_only=True)[2]
    assert len(crossing) == 0
    chosen = np.random.default_rng(0).choice(mesh.face_count, 500, replace=False)
    centre, normal = mesh.face_centres[chosen], mesh.face_normals[chosen]
    under = igl.winding_number(vertices, faces, centre - 0.02 * normal)
    over = igl.winding_number(vertices, faces, centre + 0.02 * normal)
    np.testing.assert_allclose(under, 1.0, atol=1e-6)
    np.testing.assert_allclose(over, 0.0, atol=1e-6)


@pytest.mark.parametrize("number", TEETH)
def test_average_tooth_has_the_textbook_size(crown_of: Maker, number: int) -> None:
    """Within 0.35 mm, a third of the standard deviation or so among natural teeth (assumed)."""
    crown = crown_of(number)
    average, cervix = AVERAGE_MM[number]
    np.testing.assert_allclose(crown.mesh.extent, average, atol=0.35)
    border = crown.mesh.vertices[~crown.outer][border_of_cavity(crown)]
    # The rim is 0.15 to 0.18 mm wide, so the margin lies that much further out all round.
    across = np.ptp(border, axis=0)[:2] + 0.33
    np.testing.assert_allclose(across, cervix, atol=0.55)


@pytest.mark.parametrize(("number", "seed", "variation"), INDIVIDUALS)
def test_walls_hold_the_minimum(crown_of: Maker, number: int, seed: int, variation: float) -> None:
    """0.8 mm over the stump and 0.48 mm around it, from half a millimetre above the margin."""
    crown = crown_of(number, seed, variation)
    wall, rise = cavity_walls(crown)
    roof = (as_trimesh(crown).vertex_normals[~crown.outer, 2] < -0.8) & (rise > 2.0)
    around = ~roof & (rise > 0.5)
    assert wall[roof].min() > 0.8
    assert wall[around].min() > 0.48
    assert np.median(wall[roof]) < 1.5
    assert np.median(wall[around]) < 2.0
    assert crown.minimum_occlusal_wall_mm == pytest.approx(wall[roof].min(), abs=0.02)
    assert crown.minimum_axial_wall_mm == pytest.approx(wall[around].min(), abs=0.06)


@pytest.mark.parametrize("number", TEETH)
def test_cavity_can_be_seated(crown_of: Maker, number: int) -> None:
    """Hardly any of the cavity above the margin looks away from its opening (undercut)."""
    crown = crown_of(number)
    _, rise = cavity_walls(crown)
    tilt = as_trimesh(crown).vertex_normals[~crown.outer, 2]
    undercut = (tilt[rise > 0.2] > np.sin(np.radians(2.0))).mean()
    assert undercut < (0.04 if number in (11, 13) else 0.001)


def test_same_arguments_give_the_same_crown() -> None:
    one, other = (
        make_crown(Tooth(number=36), seed=5, variation=0.7, resolution=0.25) for _ in range(2)
    )
    np.testing.assert_array_equal(one.mesh.vertices, other.mesh.vertices)
    np.testing.assert_array_equal(one.mesh.faces, other.mesh.faces)
    np.testing.assert_array_equal(one.zones, other.zones)


def test_another_seed_gives_another_crown(crown_of: Maker) -> None:
    extents = {tuple(crown_of(36, seed, 1.0).mesh.extent.round(3)) for seed in (0, 1, 2)}
    assert len(extents) == 3
    volumes = {round(crown_of(36, seed, 0.0).mesh.volume, 2) for seed in (0, 1, 2)}
    assert len(volumes) == 3


@pytest.mark.parametrize(("number", "other"), [(36, 46), (16, 26), (14, 24), (13, 23), (11, 21)])
def test_the_other_side_is_the_mirror_image(crown_of: Maker, number: int, other: int) -> None:
    crown, mirrored = crown_of(number), crown_of(other)
    flip = np.array([-1.0, 1.0, 1.0])
    np.testing.assert_array_equal(mirrored.mesh.vertices, crown.mesh.vertices * flip)
    np.testing.assert_array_equal(mirrored.mesh.faces, crown.mesh.faces[:, ::-1])
    np.testing.assert_array_equal(mirrored.zones, crown.zones)
    np.testing.assert_array_equal(mirrored.tips, crown.tips * flip)
    assert as_trimesh(mirrored).volume == pytest.approx(as_trimesh(crown).volume)
    assert as_trimesh(mirrored).volume > 0


@pytest.mark.parametrize("number", MAKEABLE_TEETH)
def test_buccal_is_where_axis_and_mesial_put_it(crown_of: Maker, number: int) -> None:
    """Buccal = axis x mesial in quadrants 1 and 3, mesial x axis in 2 and 4; +y in every crown.

    The shape agrees: the highest point is the buccal cusp of an upper premolar, a lingual
    cusp of a first molar, and labial of the middle on a front tooth (common dental anatomy).
    """
    crown = crown_of(number)
    axis, mesial = np.array(crown.occlusal_axis), np.array(crown.mesial)
    turn = np.cross(axis, mesial) if number // 10 in (1, 3) else np.cross(mesial, axis)
    np.testing.assert_array_equal(turn, (0.0, 1.0, 0.0))
    highest = crown.mesh.vertices[crown.mesh.vertices[:, 2].argmax()]
    expected_side = {1: 1, 3: 1, 4: 1, 5: 1, 6: -1}[number % 10]
    assert np.sign(highest[1]) == expected_side


def test_full_resolution_has_the_promised_faces() -> None:
    steps: list[float] = []
    crown = make_crown(
        Tooth(number=36), seed=1, progress=lambda share, _phrase: steps.append(share)
    )
    assert 60_000 < crown.mesh.face_count < 80_000
    assert as_trimesh(crown).is_watertight
    assert crown.minimum_occlusal_wall_mm > 0.8
    assert steps == sorted(steps)
    assert steps[0] == 0.0
    assert steps[-1] == 1.0
