"""Laying surfaces flat: closed forms, and libigl as a second opinion."""

from __future__ import annotations

from collections.abc import Callable

import igl
import numpy as np
import pytest
from scipy.spatial import Delaunay

from stainmap.surface.flattening import (
    FlatMethod,
    area_ratios,
    area_spread,
    disc_faces,
    flat_areas,
    flat_piece,
    flatten_disc,
    flipped_faces,
    stretches,
)
from stainmap.surface.mesh import TriMesh, boundary_loops, submesh

RIGHT, UP = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0)


def disc_points(rings: int = 40) -> np.ndarray:
    """Return points of the unit disc on rings, evenly spread, the outermost on the circle."""
    points = [np.zeros((1, 2))]
    for k in range(1, rings + 1):
        count = 6 * k
        angle = 2.0 * np.pi * (np.arange(count) + 0.5 * (k % 2)) / count
        points.append(k / rings * np.stack([np.cos(angle), np.sin(angle)], axis=1))
    return np.concatenate(points)


def raised(points: np.ndarray, radius: np.ndarray, height: np.ndarray) -> TriMesh:
    """Return the surface of revolution whose circles have these radii and heights."""
    flat = Delaunay(points).simplices
    a, b, c = points[flat[:, 0]], points[flat[:, 1]], points[flat[:, 2]]
    turned = (b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0] < 0
    flat[turned] = flat[turned][:, ::-1]
    flat = flat[np.abs(flat_areas(points, flat)) > 1e-9]
    unit = points / np.maximum(np.linalg.norm(points, axis=1), 1e-12)[:, None]
    return TriMesh(np.c_[unit * radius[:, None], height], flat)


@pytest.fixture(scope="module")
def plane() -> np.ndarray:
    return disc_points()


@pytest.fixture(scope="module")
def hemisphere(plane: np.ndarray) -> TriMesh:
    polar = 0.5 * np.pi * np.linalg.norm(plane, axis=1)
    return raised(plane, np.sin(polar), np.cos(polar))


def test_plane_disc_stays_as_it_is(plane: np.ndarray) -> None:
    own = np.linalg.norm(plane, axis=1)
    mesh = raised(plane, own, np.zeros(len(plane)))
    flat = flatten_disc(mesh, right=RIGHT, up=UP)
    assert np.abs(flat.points - plane).max() < 0.01
    assert flat.flipped == 0
    assert area_spread(mesh, flat.points) < 1.05
    assert np.percentile(stretches(mesh, flat.points), 95) < 1.06


def test_hemisphere_becomes_the_azimuthal_equal_area_map(
    plane: np.ndarray, hemisphere: TriMesh
) -> None:
    """The radius is sqrt(2) sin(polar / 2) within the unit circle [Snyder1987]."""
    flat = flatten_disc(hemisphere, right=RIGHT, up=UP)
    polar = 0.5 * np.pi * np.linalg.norm(plane, axis=1)
    expected = np.sqrt(2.0) * np.sin(0.5 * polar)
    assert np.abs(np.linalg.norm(flat.points, axis=1) - expected).max() < 0.01
    # Angles are kept: the map only moves points along their own radius.
    away = polar > 0.2
    turn = (flat.points @ [1, 1j]) * np.conj(plane @ [1, 1j])
    assert np.abs(np.angle(turn[away])).max() < 0.02
    assert area_spread(hemisphere, flat.points) < 1.06
    # The equal-area map stretches circles against radii by 1 / cos^2(polar / 2): 2 at the rim.
    middle = np.arccos(np.clip(hemisphere.face_centres[:, 2], 0.0, 1.0))
    found = stretches(hemisphere, flat.points)
    assert np.median(np.abs(found - 1.0 / np.cos(0.5 * middle) ** 2)) < 0.03


def test_cone_is_laid_out_along_its_slant(plane: np.ndarray) -> None:
    """Area within slant s is (s / S)^2 of all: the radius is the slant, however steep the cone."""
    own = np.linalg.norm(plane, axis=1)
    mesh = raised(plane, own, -1.5 * own)
    flat = flatten_disc(mesh, right=RIGHT, up=UP)
    assert np.abs(np.linalg.norm(flat.points, axis=1) - own).max() < 0.01
    assert area_spread(mesh, flat.points) < 1.05
    outside = own > 0.2
    assert np.percentile(stretches(mesh, flat.points)[outside[mesh.faces].all(axis=1)], 95) < 1.9


def test_nothing_folds_on_rough_ground(plane: np.ndarray) -> None:
    """Bumps as steep as a fissure, and slivers: libigl finds no flipped triangle."""
    generator = np.random.default_rng(3)
    jittered = (
        plane
        + generator.normal(0.0, 0.008, plane.shape)
        * (np.linalg.norm(plane, axis=1) < 0.97)[:, None]
    )
    height = 0.25 * np.sin(9.0 * plane[:, 0]) * np.cos(7.0 * plane[:, 1])
    mesh = raised(jittered, np.linalg.norm(jittered, axis=1), height)
    flat = flatten_disc(mesh, right=RIGHT, up=UP)
    assert flat.flipped == 0
    assert len(igl.flipped_triangles(flat.points, mesh.faces)) == 0


def test_areas_are_truer_than_those_of_libigl(
    hemisphere: TriMesh, record_property: Callable[[str, object], None]
) -> None:
    """A harmonic map onto the same circle."""
    flat = flatten_disc(hemisphere, right=RIGHT, up=UP)
    rim = np.ascontiguousarray(flat.rim, dtype=np.int64)
    faces = np.ascontiguousarray(hemisphere.faces, dtype=np.int64)
    points = np.ascontiguousarray(hemisphere.vertices)
    harmonic = np.asarray(igl.harmonic(points, faces, rim, flat.points[rim], 1))
    # The harmonic map of a hemisphere is the stereographic one: areas differ by 4 at most.
    polar = np.arccos(np.clip(hemisphere.vertices[:, 2], -1.0, 1.0))
    assert np.abs(np.linalg.norm(harmonic, axis=1) - np.tan(0.5 * polar)).max() < 0.01
    ours, theirs = (area_spread(hemisphere, p) for p in (flat.points, harmonic))
    record_property("area_spread_ours", ours)
    record_property("area_spread_harmonic", theirs)
    assert theirs == pytest.approx(4.0 * 0.925, rel=0.1)
    assert ours < 0.4 * theirs


def test_a_hole_is_kept_open(hemisphere: TriMesh) -> None:
    keep = np.linalg.norm(hemisphere.face_centres - [0.7, 0.0, 0.7], axis=1) > 0.25
    part, _ = flat_piece(hemisphere, keep)
    assert len(boundary_loops(part)) == 2
    flat = flatten_disc(part, right=RIGHT, up=UP)
    assert flat.flipped == 0
    assert np.linalg.norm(flat.points[flat.rim], axis=1) == pytest.approx(1.0)
    inner = boundary_loops(part)[1]
    assert np.linalg.norm(flat.points[inner], axis=1).max() < 0.9


@pytest.mark.parametrize("right", [(0.0, 1.0, 0.0), (-1.0, 0.0, 0.0), (0.6, 0.8, 0.0)])
def test_directions_lie_where_they_are_asked_for(
    hemisphere: TriMesh, right: tuple[float, float, float]
) -> None:
    up = np.cross([0.0, 0.0, 1.0], right)
    flat = flatten_disc(hemisphere, right=right, up=up)
    along = hemisphere.vertices[flat.rim] @ np.stack([right, up], axis=1)
    assert np.abs(flat.points[flat.rim] - along).max() < 0.02


def test_nothing_is_mirrored(hemisphere: TriMesh) -> None:
    turned = TriMesh(hemisphere.vertices * [1.0, 1.0, -1.0], hemisphere.faces[:, ::-1])
    for mesh, up in ((hemisphere, UP), (turned, (0.0, -1.0, 0.0))):
        flat = flatten_disc(mesh, right=RIGHT, up=up)
        assert (flat_areas(flat.points, mesh.faces) > 0.0).all()


def test_the_map_of_last_resort_folds_nothing_either(hemisphere: TriMesh) -> None:
    """With weights like these the radius cannot be spaced without folds: 40 slivers on a needle."""
    points = hemisphere.vertices.copy()
    needle = np.linalg.norm(points[:, :2], axis=1) < 0.12
    points[needle, 2] += 8.0 * (0.12 - np.linalg.norm(points[needle, :2], axis=1)) / 0.12
    mesh = TriMesh(points, hemisphere.faces)
    flat = flatten_disc(mesh, right=RIGHT, up=UP)
    assert flat.flipped == 0
    assert flat.method in FlatMethod
    assert area_ratios(mesh, flat.points).min() > 0.0


def test_only_the_largest_clean_piece_is_taken(hemisphere: TriMesh) -> None:
    """Two halves that touch in one vertex: the larger one is left, with one border."""
    x, y = hemisphere.face_centres[:, 0], hemisphere.face_centres[:, 1]
    keep = (x > 0.3) | ((x < -0.3) & (np.abs(y) < 0.3))
    chosen = disc_faces(hemisphere, keep)
    assert hemisphere.face_areas[chosen].sum() == pytest.approx(
        hemisphere.face_areas[x > 0.3].sum(), rel=0.02
    )
    part, _ = submesh(hemisphere, chosen)
    assert len(boundary_loops(part)) == 1


def test_what_is_no_disc_is_refused(hemisphere: TriMesh) -> None:
    closed = TriMesh(
        np.concatenate([hemisphere.vertices, [[0.0, 0.0, -1.0]]]),
        np.concatenate(
            [
                hemisphere.faces,
                [
                    [b, a, hemisphere.vertex_count]
                    for loop in boundary_loops(hemisphere)
                    for a, b in zip(loop, np.roll(loop, -1), strict=True)
                ],
            ]
        ),
    )
    with pytest.raises(ValueError, match="closed"):
        flatten_disc(closed, right=RIGHT, up=UP)
    two = TriMesh(
        np.concatenate([hemisphere.vertices, hemisphere.vertices + 3.0]),
        np.concatenate([hemisphere.faces, hemisphere.faces + hemisphere.vertex_count]),
    )
    with pytest.raises(ValueError, match="pieces"):
        flatten_disc(two, right=RIGHT, up=UP)
    with pytest.raises(ValueError, match="no surface"):
        flat_piece(hemisphere, np.zeros(hemisphere.face_count, dtype=bool))


def test_flips_are_counted() -> None:
    faces = np.array([[0, 1, 2], [0, 2, 3]], dtype=np.int32)
    square = np.array([[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]])
    assert flipped_faces(square, faces) == 0
    folded = square.copy()
    folded[3] = (0.9, 0.2)
    assert flipped_faces(folded, faces) == 1
    assert len(igl.flipped_triangles(folded, faces.astype(np.int64))) == 1
