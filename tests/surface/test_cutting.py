"""Cuts: against closed forms, and against trimesh's slice_plane."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import trimesh

from stainmap.errors import MeshFileError
from stainmap.surface.cutting import cut_along_loop, cut_by_field, cut_by_plane
from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh, boundary_loops, connected_pieces
from stainmap.surface.refining import refine
from tests.surface import shapes


def _their_area(mesh: TriMesh, normal: np.ndarray, offset: float) -> float:
    """Return the area that trimesh keeps, by the function its `slice_plane` rests on.

    `slice_plane` itself wants a further library, for the cap, which it is not asked for here.
    """
    vertices, faces, *_ = trimesh.intersections.slice_faces_plane(
        mesh.vertices, mesh.faces, plane_normal=normal, plane_origin=offset * normal
    )
    return float(trimesh.triangles.area(vertices[faces]).sum())


@pytest.mark.parametrize("at", [-1.0, 0.3, 0.95])
def test_box_has_the_closed_form_area_and_volume(at: float) -> None:
    """A box 2 x 3 x 4 cut across its height."""
    cut = cut_by_plane(shapes.box(), (0.0, 0.0, 5.0), at, close=True)
    height = 2.0 - at
    assert cut.mesh.volume == pytest.approx(6.0 * height, rel=1e-12)
    assert cut.mesh.area == pytest.approx(12.0 + 10.0 * height, rel=1e-12)
    assert cut.mesh.is_watertight
    assert cut.mesh.face_areas[cut.cap].sum() == pytest.approx(6.0, rel=1e-12)
    assert cut.mesh.face_normals[cut.cap] == pytest.approx(
        np.tile([0.0, 0.0, -1.0], (int(cut.cap.sum()), 1))
    )


def test_plane_through_corners_and_along_a_face() -> None:
    """Vertices on the plane make no slivers; a face in the plane is the cap itself."""
    box = shapes.box()
    through = cut_by_plane(box, (0.0, 3.0, -2.0 * 3.0 / 4.0), 0.0, close=True)
    assert through.mesh.volume == pytest.approx(12.0)
    assert through.mesh.is_watertight
    assert through.mesh.face_areas.min() > 1e-3
    whole = cut_by_plane(box, (0.0, 0.0, 1.0), -2.0, close=True)
    assert whole.mesh.volume == pytest.approx(24.0)
    assert whole.mesh.is_watertight


def test_sphere_segment() -> None:
    """A spherical cap of height h: volume pi h^2 (3 r - h) / 3, base pi h (2 r - h)."""
    radius, height = 5.0, 3.0
    ball = shapes.sphere(radius, subdivisions=5)
    normal = np.array([1.0, 2.0, 3.0])
    cut = cut_by_plane(ball, normal, radius - height, close=True)
    assert cut.mesh.volume == pytest.approx(np.pi * height**2 * (3 * radius - height) / 3, rel=2e-3)
    base = cut.mesh.face_areas[cut.cap].sum()
    assert base == pytest.approx(np.pi * height * (2 * radius - height), rel=2e-3)
    side = cut.mesh.face_areas[~cut.cap].sum()
    assert side == pytest.approx(2 * np.pi * radius * height, rel=2e-3)
    # Both halves together are the whole, exactly.
    other = cut_by_plane(ball, -normal, height - radius, close=True)
    assert cut.mesh.volume + other.mesh.volume == pytest.approx(ball.volume, rel=1e-12)


def test_cap_of_a_hollow_ball_has_a_hole() -> None:
    hollow, _ = shapes.two_spheres(5.0, 4.0)
    cut = cut_by_plane(hollow, (0.0, 0.0, 1.0), 0.7, close=True)
    ring = np.pi * (25.0 - 16.0)
    assert cut.mesh.face_areas[cut.cap].sum() == pytest.approx(ring, rel=3e-3)
    assert cut.mesh.is_watertight
    assert connected_pieces(cut.mesh)[0] == 1


@pytest.mark.parametrize("seed", range(6))
def test_against_trimesh(seed: int) -> None:
    """A torus cut in any direction, open against trimesh, closed against its own other half."""
    rng = np.random.default_rng(seed)
    torus = shapes.torus()
    normal = rng.normal(size=3)
    normal /= np.linalg.norm(normal)
    offset = rng.uniform(-1.5, 1.5)
    ours = cut_by_plane(torus, normal, offset, close=False)
    assert ours.mesh.area == pytest.approx(_their_area(torus, normal, offset), rel=1e-9)
    assert not ours.cap.any()
    assert len(boundary_loops(ours.mesh)) >= 1
    closed = cut_by_plane(torus, normal, offset, close=True).mesh
    both = closed.volume + cut_by_plane(torus, -normal, -offset, close=True).mesh.volume
    assert closed.is_watertight
    assert both == pytest.approx(torus.volume, rel=1e-9)


@pytest.mark.parametrize("name", ["hollow_46", "solid_14", "bridge_14_15_16"])
def test_real_crowns_against_trimesh(shared_meshes: Path, name: str) -> None:
    mesh = load_mesh(shared_meshes / f"{name}.stl").mesh
    normal = np.array([0.2, 1.0, 0.1]) / np.linalg.norm([0.2, 1.0, 0.1])
    offset = float(np.median(mesh.vertices @ normal))
    cut = cut_by_plane(mesh, normal, offset, close=True)
    theirs = _their_area(mesh, normal, offset)
    assert cut.mesh.face_areas[~cut.cap].sum() == pytest.approx(theirs, rel=1e-9)
    assert cut.mesh.is_watertight
    rest = cut_by_plane(mesh, -normal, -offset, close=True)
    assert cut.mesh.volume + rest.mesh.volume == pytest.approx(mesh.volume, rel=1e-9)
    assert (cut.mesh.vertices @ normal).min() == pytest.approx(offset, abs=1e-5)


def test_where_vertices_come_from() -> None:
    ball = shapes.sphere()
    cut = cut_by_plane(ball, (0.0, 1.0, 0.0), 1.0, close=True)
    first, second = cut.ends.T
    from_mesh = first >= 0
    share = cut.share[from_mesh, None]
    place = (1 - share) * ball.vertices[first[from_mesh]] + share * ball.vertices[second[from_mesh]]
    assert np.abs(place - cut.mesh.vertices[from_mesh]).max() < 1e-12
    kept = cut.original >= 0
    assert kept.sum() == (ball.vertices[:, 1] >= 1.0).sum()
    height = cut.carried(ball.vertices[:, 1], np.nan)
    assert np.nanmin(height) == pytest.approx(1.0, abs=1e-6)
    assert np.isnan(height).sum() == (~from_mesh).sum()


def test_piece_near_a_place() -> None:
    """Three balls in a row, cut at half height: only the one that was pointed at is left."""
    ball = shapes.sphere(2.0, 3)
    row = TriMesh(
        np.concatenate([ball.vertices + np.array([5.0 * k, 0.0, 0.0]) for k in range(3)]),
        np.concatenate([ball.faces + k * ball.vertex_count for k in range(3)]),
    )
    cut = cut_by_plane(row, (0.0, 0.0, 1.0), 0.1, close=True, near=(5.0, 0.0, 2.0))
    assert connected_pieces(cut.mesh)[0] == 1
    assert cut.mesh.centre[0] == pytest.approx(5.0, abs=0.05)
    assert connected_pieces(cut_by_plane(row, (0, 0, 1), 0.1, close=True).mesh)[0] == 3


def test_field_that_is_not_flat() -> None:
    """Where a ball meets another ball, at distance d: the cut is a circle, the cap lies in it."""
    ball = shapes.sphere(5.0, 5)
    away = np.linalg.norm(ball.vertices - [0.0, 0.0, 5.0], axis=1)
    cut = cut_by_field(ball, 4.0 - away, close=True)
    # Of radius sqrt(r^2 - (r - h)^2) with h = 4^2 / (2 * 5).
    h = 1.6
    base = cut.mesh.face_areas[cut.cap].sum()
    assert base == pytest.approx(np.pi * h * (10.0 - h), rel=5e-3)
    assert cut.mesh.is_watertight


def test_saddle_shaped_cut_is_closed() -> None:
    ball = shapes.sphere(5.0, 5)
    x, y, z = ball.vertices.T
    cut = cut_by_field(ball, z - 0.05 * (x**2 - y**2), close=True)
    assert cut.mesh.is_watertight
    # By symmetry (turning by 90 degrees and upside down) it is half of the ball.
    assert cut.mesh.volume == pytest.approx(0.5 * ball.volume, rel=5e-3)


def test_loop_of_edges() -> None:
    torus = shapes.torus()
    z = torus.vertices[:, 2]
    half = cut_by_plane(torus, (0.0, 1.0, 0.0), 0.0, close=True).mesh
    assert half.volume == pytest.approx(0.5 * torus.volume, rel=1e-6)
    ball = shapes.sphere(5.0, 4)
    upper = ball.vertices[ball.faces][:, :, 2].min(axis=1) >= 1.0
    ring = boundary_loops(TriMesh(ball.vertices, ball.faces[upper]))[0]
    top = int(ball.face_centres[:, 2].argmax())
    cut = cut_along_loop(ball, ring, top, close=True)
    assert cut.mesh.is_watertight
    assert (~cut.cap).sum() == upper.sum()
    assert cut_along_loop(ball, ring, top, close=False).mesh.face_count == upper.sum()
    with pytest.raises(ValueError, match="along edges"):
        cut_along_loop(ball, ring[::3], top, close=False)
    # A loop around the tube of a torus does not part it.
    tube = np.flatnonzero(np.abs(np.arctan2(torus.vertices[:, 1], torus.vertices[:, 0])) < 1e-6)
    turn = np.arctan2(z[tube], np.hypot(*torus.vertices[tube, :2].T) - 5.0)
    with pytest.raises(MeshFileError, match="does not part"):
        cut_along_loop(torus, tube[np.argsort(turn)], 0, close=False)


def test_open_border_stays_open() -> None:
    ball = shapes.sphere(5.0, 4)
    bowl = cut_by_plane(ball, (0.0, 0.0, 1.0), -1.0, close=False).mesh
    cut = cut_by_plane(bowl, (1.0, 0.0, 0.0), 0.0, close=True)
    assert not cut.mesh.is_watertight
    assert not cut.cap.any()


def test_what_cannot_be_cut() -> None:
    with pytest.raises(MeshFileError, match="Nothing lies"):
        cut_by_plane(shapes.box(), (0, 0, 1), 3.0, close=True)
    with pytest.raises(ValueError, match="direction"):
        cut_by_plane(shapes.box(), (0, 0, 0), 3.0, close=True)
    with pytest.raises(ValueError, match="one finite value"):
        cut_by_field(shapes.box(), np.zeros(3), close=True)


@pytest.mark.parametrize("spread", [0.35, 0.6])
def test_ears_are_clipped_where_delaunay_cannot(spread: float) -> None:
    """A star-shaped prism with few, long edges: arms that Delaunay's triangles would cut across."""
    turn = np.arange(14) * np.pi / 7
    radius = np.where(np.arange(14) % 2, spread, 5.0)
    ring = np.c_[radius * np.cos(turn), radius * np.sin(turn)]
    x, y = ring.T
    area = 0.5 * float(np.sum(x * np.roll(y, -1) - y * np.roll(x, -1)))
    star = trimesh.creation.extrude_triangulation(
        np.vstack([ring, [[0.0, 0.0]]]),
        [[k, (k + 1) % 14, 14] for k in range(14)],
        height=3.0,
    )
    cut = cut_by_plane(shapes.of(star), (0.0, 0.0, 1.0), 1.0, close=True)
    assert cut.mesh.is_watertight
    assert cut.mesh.volume == pytest.approx(2.0 * area, rel=1e-9)


def test_ears_with_a_hole(monkeypatch: pytest.MonkeyPatch) -> None:
    """The second way of closing a cut, on its own, where there is a hole to go around."""
    monkeypatch.setattr("stainmap.surface.capping._delaunay", lambda *_: None)
    tube = shapes.of(trimesh.creation.annulus(r_min=2.0, r_max=3.0, height=4.0, sections=48))
    cut = cut_by_plane(tube, (0.2, 0.1, 1.0), 0.0, close=True)
    assert cut.mesh.is_watertight
    assert cut.mesh.volume == pytest.approx(0.5 * tube.volume, rel=1e-9)


def test_cap_is_even_where_the_outline_is_straight_for_long() -> None:
    """Refined flat facets put many points of the outline on one line; no fans of slivers follow."""
    fine = refine(shapes.sphere(5.0, 2), 0.2).mesh
    cut = cut_by_plane(fine, (0.02, 0.03, 1.0), 0.4, close=True)
    assert cut.mesh.is_watertight
    flat = cut.mesh.face_areas[cut.cap].sum()
    again = refine(cut.mesh, 0.2).mesh
    # An even cap needs hardly more than its area in triangles of that edge length.
    extra = again.face_count - (~cut.cap).sum()
    assert extra < 4.0 * flat / (0.25 * np.sqrt(3.0) * 0.2**2)
