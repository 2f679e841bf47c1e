"""What is wrong with a surface, against faults put in on purpose, libigl and trimesh."""

from __future__ import annotations

from pathlib import Path

import igl
import numpy as np
import pytest
import trimesh

from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.report import SurfaceReport, surface_report
from stainmap.surface.winding import turned_where
from tests.surface import shapes


def of(mesh: TriMesh) -> SurfaceReport:
    return surface_report(mesh.vertices, mesh.faces)


@pytest.mark.parametrize(
    ("make", "euler", "area", "volume"),
    [
        (shapes.box, 2, 52.0, 24.0),
        (lambda: shapes.sphere(5.0, 5), 2, 100.0 * np.pi, 500.0 / 3.0 * np.pi),
        (lambda: shapes.torus(5.0, 2.0), 0, 40.0 * np.pi**2, 40.0 * np.pi**2),
    ],
)
def test_sound_bodies(make: object, euler: int, area: float, volume: float) -> None:
    mesh = make()
    report = of(mesh)
    (shell,) = report.shells
    assert report.is_sound
    assert report.is_closed
    assert report.holes == ()
    assert (shell.euler, len(shell.faces)) == (euler, mesh.face_count)
    assert shell.area_mm2 == pytest.approx(area, rel=3e-3)
    assert shell.volume_mm3 == pytest.approx(volume, rel=3e-3)


def test_cavity_is_a_shell_of_negative_volume() -> None:
    mesh, _ = shapes.two_spheres(5.0, 4.2)
    outside, cavity = of(mesh).shells
    assert outside.volume_mm3 == pytest.approx(4 / 3 * np.pi * 5.0**3, rel=2e-3)
    assert cavity.volume_mm3 == pytest.approx(-4 / 3 * np.pi * 4.2**3, rel=2e-3)
    assert outside.area_mm2 == pytest.approx(4 * np.pi * 25.0, rel=2e-3)


def test_open_cylinder_has_two_holes_of_its_circumference() -> None:
    mesh, _ = shapes.tube(2.0, 5.0, 60, 20)
    report = of(mesh)
    ring = 2.0 * 60 * 2.0 * np.sin(np.pi / 60)
    assert [hole.length_mm for hole in report.holes] == pytest.approx([ring, ring])
    assert [len(hole.vertices) for hole in report.holes] == [60, 60]
    (shell,) = report.shells
    assert shell.euler == 0
    assert not shell.is_closed
    assert np.isnan(shell.volume_mm3)
    assert report.is_manifold
    assert not report.is_closed
    assert not report.is_sound


def test_hole_cut_into_a_plane() -> None:
    """Without the middle of a square: the outer border first, then a ring of eight edges."""
    mesh = shapes.plane(6.0, 6)
    middle = (np.abs(mesh.face_centres[:, :2]) < 1.0).all(axis=1)
    report = surface_report(mesh.vertices, mesh.faces[~middle])
    assert [hole.length_mm for hole in report.holes] == pytest.approx([24.0, 8.0])
    assert report.shells[0].euler == 0
    assert report.shells[0].area_mm2 == pytest.approx(32.0)
    assert report.unused_vertices.tolist() == [
        int(np.argmin(np.linalg.norm(mesh.vertices, axis=1)))
    ]


def test_faults_put_in_on_purpose_are_found_where_they_are() -> None:
    box = shapes.box()
    a, b = box.vertices[box.edges[0]]
    vertices = np.concatenate([box.vertices, [0.5 * (a + b), [9.0, 9.0, 9.0]]])
    i, j = box.edges[0]
    faces = np.concatenate(
        [
            box.faces,
            [[0, 0, 1], [3, 5, 3]],  # collapsed
            box.faces[[2]],  # a double
            box.faces[[4]][:, [0, 2, 1]],  # a double wound the other way
            [[i, j, 8]],  # three points on one line
        ]
    )
    report = surface_report(vertices, faces)
    assert report.collapsed_faces.tolist() == [12, 13]
    assert report.duplicate_faces.tolist() == [14, 15]
    assert report.flat_faces.tolist() == [16]
    assert report.crowded_edges.tolist() == [sorted([i, j])]
    assert set(report.pinched_vertices.tolist()) == {i, j}
    assert report.unused_vertices.tolist() == [9]
    assert (report.vertex_count, report.face_count) == (10, 17)
    assert not report.is_manifold
    assert not report.is_sound


def test_bodies_that_touch_in_a_point_are_pinched_there() -> None:
    box = shapes.box()
    corner = int(np.argmax(box.vertices.sum(axis=1)))
    other = box.faces + 8
    moved = 2.0 * box.vertices[corner] + box.vertices
    twin = int(np.argmin(np.linalg.norm(moved - box.vertices[corner], axis=1)))
    other[other == twin + 8] = corner
    report = surface_report(np.r_[box.vertices, moved], np.r_[box.faces, other])
    assert report.pinched_vertices.tolist() == [corner]
    assert report.is_closed
    assert not report.is_manifold
    assert len(report.shells) == 2
    assert [shell.volume_mm3 for shell in report.shells] == pytest.approx([24.0, 24.0])


def test_a_turned_facet_disagrees_along_its_three_edges() -> None:
    mesh = shapes.sphere(subdivisions=2)
    wrong = np.arange(mesh.face_count) == 7
    report = surface_report(mesh.vertices, turned_where(mesh.faces, wrong))
    assert sorted(map(tuple, report.disagreeing_edges.tolist())) == sorted(
        map(tuple, mesh.edges[mesh.face_edges[7]].tolist())
    )
    assert np.isnan(report.shells[0].volume_mm3)
    strip = shapes.moebius()
    assert len(of(strip).disagreeing_edges) >= 1


def damaged(mesh: TriMesh, seed: int) -> np.ndarray:
    """Return faces after the loss of some, doubles of others and turns; points run together."""
    rng = np.random.default_rng(seed)
    faces = mesh.faces[rng.random(mesh.face_count) > 0.05].copy()
    faces = turned_where(faces, rng.random(len(faces)) < 0.1)
    for _ in range(6):
        one, other = rng.integers(mesh.vertex_count, size=2)
        faces[faces == one] = other
    return np.concatenate([faces, faces[rng.integers(len(faces), size=9)]]).astype(np.int32)


@pytest.mark.parametrize("seed", range(6))
def test_damaged_surfaces_against_libigl_and_trimesh(seed: int) -> None:
    mesh = shapes.sphere(subdivisions=3) if seed % 2 else shapes.torus()
    faces = damaged(mesh, seed)
    report = surface_report(mesh.vertices, faces)
    reference = trimesh.Trimesh(mesh.vertices, faces, process=False, validate=False)
    whole = np.array([len(set(face)) == 3 for face in faces.tolist()])
    assert report.collapsed_faces.tolist() == np.flatnonzero(~whole).tolist()
    reference.update_faces(whole)
    unique = reference.unique_faces()
    assert len(report.duplicate_faces) == int((~unique).sum())
    reference.update_faces(unique)
    left = np.ascontiguousarray(reference.faces, dtype=np.int64)
    # Fans: igl looks at vertices; those at crowded edges we count as pinched in any case.
    manifold = np.asarray(igl.is_vertex_manifold(left)).ravel()
    used = np.unique(left)
    at_crowded = np.unique(report.crowded_edges)
    bad = {int(v) for v in used if not manifold[v]} | set(at_crowded.tolist())
    assert set(report.pinched_vertices.tolist()) == bad
    assert (len(report.crowded_edges) == 0) == bool(igl.is_edge_manifold(left)[0])
    lone = np.bincount(reference.edges_unique_inverse, minlength=len(reference.edges_unique)) == 1
    border = reference.edges_unique_length[lone].sum()
    assert sum(hole.length_mm for hole in report.holes) == pytest.approx(border)
    edges = sum(len(hole.vertices) - (not hole.is_closed) for hole in report.holes)
    assert edges == lone.sum()
    parts = trimesh.graph.connected_components(
        reference.face_adjacency, nodes=np.arange(len(left)), min_len=1
    )
    assert len(report.shells) == len(parts)
    assert sum(shell.area_mm2 for shell in report.shells) == pytest.approx(reference.area)
    joined = np.concatenate([shell.faces for shell in report.shells])
    assert np.array_equal(np.sort(joined), np.flatnonzero(whole)[unique])


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
def test_real_meshes_against_libigl_and_trimesh(shared_meshes: Path, name: str) -> None:
    mesh = load_mesh(shared_meshes / name).mesh
    report = of(mesh)
    reference = trimesh.Trimesh(mesh.vertices, mesh.faces, process=False)
    assert report.is_closed == reference.is_watertight
    assert len(report.shells) == reference.body_count
    assert sum(shell.volume_mm3 for shell in report.shells) == pytest.approx(reference.volume)
    assert sum(shell.euler for shell in report.shells) == igl.euler_characteristic(
        mesh.faces.astype(np.int64)
    )
    assert len(report.disagreeing_edges) == 0
    assert reference.is_winding_consistent


@pytest.mark.parametrize("name", ["solid_11.stl", "hollow_46.stl"])
def test_real_borders_against_libigl(shared_meshes: Path, name: str) -> None:
    """What a plane cuts off leaves borders: the same chains as libigl's, vertex by vertex."""
    mesh = load_mesh(shared_meshes / name).mesh
    below = mesh.face_centres @ (0.3, 0.5, 0.8) < float(mesh.centre @ (0.3, 0.5, 0.8))
    report = surface_report(mesh.vertices, mesh.faces[below])
    reference = igl.boundary_loop_all(mesh.faces[below].astype(np.int64))
    ours = sorted(sorted(hole.vertices.tolist()) for hole in report.holes)
    assert ours == sorted(sorted(map(int, loop)) for loop in reference)
    assert all(hole.is_closed for hole in report.holes)


def test_three_leaves_on_one_edge_have_an_open_border() -> None:
    """Three triangles that share an edge: three ways from one of its ends to the other."""
    vertices = [[0, 0, 0], [0, 0, 1], [1, 0, 0.5], [-1, 1, 0.5], [-1, -1, 0.5]]
    report = surface_report(vertices, [[0, 1, 2], [0, 1, 3], [0, 1, 4]])
    assert sum(not hole.is_closed for hole in report.holes) == 1
    sides = 2 * np.hypot(1, 0.5) + 4 * np.sqrt(2.25)
    assert sum(hole.length_mm for hole in report.holes) == pytest.approx(sides)
    assert len(report.shells) == 3


def test_empty_and_wrong_input() -> None:
    nothing = surface_report(np.empty((0, 3)), np.empty((0, 3), int))
    assert nothing.shells == nothing.holes == ()
    assert not nothing.is_closed
    only_collapsed = surface_report(np.eye(3), [[0, 0, 1]])
    assert only_collapsed.collapsed_faces.tolist() == [0]
    assert only_collapsed.unused_vertices.tolist() == [2]
    for vertices, faces, what in (
        (np.eye(3), [[0, 1]], "shape"),
        (np.eye(3), [[0, 1, 3]], "does not exist"),
        (np.eye(3), [[7, 7, 1]], "does not exist"),
        (np.full((3, 3), np.nan), [[0, 1, 2]], "finite"),
    ):
        with pytest.raises(ValueError, match=what):
            surface_report(vertices, faces)
