"""Turning facets and shells the right way round, against closed forms, libigl and trimesh."""

from __future__ import annotations

from pathlib import Path

import igl
import numpy as np
import pytest
import trimesh

from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh, edge_table, face_cross
from stainmap.surface.winding import Winding, repair_winding, turned_where, winding_number
from tests.surface import shapes


def repaired(vertices: np.ndarray, faces: np.ndarray) -> Winding:
    faces = np.asarray(faces, dtype=np.int32)
    return repair_winding(vertices, faces, face_cross(vertices, faces))


def same_facets(one: np.ndarray, other: np.ndarray) -> bool:
    """Return whether facets are the same, whichever corner comes first."""

    def rolled(faces: np.ndarray) -> np.ndarray:
        turn = (faces.argmin(axis=1)[:, None] + np.arange(3)) % 3
        return np.take_along_axis(faces, turn, axis=1)

    return np.array_equal(rolled(one), rolled(other))


def scrambled(mesh: TriMesh, share: float, seed: int = 0) -> tuple[np.ndarray, int]:
    wrong = np.random.default_rng(seed).random(mesh.face_count) < share
    return turned_where(mesh.faces, wrong), int(wrong.sum())


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
def test_a_third_of_the_facets_of_real_meshes_comes_back(shared_meshes: Path, name: str) -> None:
    mesh = load_mesh(shared_meshes / name).mesh
    faces, wrong = scrambled(mesh, 0.3)
    found = repaired(mesh.vertices, faces)
    assert same_facets(found.faces, mesh.faces)
    assert (found.turned, found.shells_turned, found.shells) == (wrong, 0, 1)


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
def test_inside_out_real_meshes_come_back(shared_meshes: Path, name: str) -> None:
    mesh = load_mesh(shared_meshes / name).mesh
    assert mesh.volume > 0
    found = repaired(mesh.vertices, mesh.faces[:, ::-1])
    assert same_facets(found.faces, mesh.faces)
    assert (found.turned, found.shells_turned) == (0, 1)


def test_good_mesh_is_left_alone() -> None:
    mesh = shapes.torus()
    found = repaired(mesh.vertices, mesh.faces)
    assert np.array_equal(found.faces, mesh.faces)
    assert (found.turned, found.shells_turned, found.shells) == (0, 0, 1)
    assert not found.one_sided


def test_cavity_stays_a_cavity() -> None:
    """A shell inside another rightly faces the other way."""
    mesh, _ = shapes.two_spheres()
    found = repaired(mesh.vertices, mesh.faces)
    assert np.array_equal(found.faces, mesh.faces)
    assert found.shells == 2
    faces, wrong = scrambled(mesh, 0.3)
    again = repaired(mesh.vertices, faces)
    assert same_facets(again.faces, mesh.faces)
    assert again.turned == wrong


def test_inside_out_body_with_a_cavity_is_turned_as_a_whole() -> None:
    mesh, _ = shapes.two_spheres()
    found = repaired(mesh.vertices, mesh.faces[:, ::-1])
    assert same_facets(found.faces, mesh.faces)
    assert found.shells_turned == 2


def test_of_two_bodies_side_by_side_only_the_wrong_one_is_turned() -> None:
    box = shapes.box()
    vertices = np.concatenate([box.vertices, box.vertices + 10.0])
    faces = np.concatenate([box.faces, box.faces[:, ::-1] + 8])
    found = repaired(vertices, faces)
    assert (found.turned, found.shells_turned, found.shells) == (0, 1, 2)
    assert TriMesh(vertices, found.faces).volume == pytest.approx(48.0)


@pytest.mark.parametrize("count", [3, 4, 5, 40])
def test_every_body_is_counted_however_many(count: int) -> None:
    box = shapes.box()
    vertices = np.concatenate([box.vertices + 10.0 * k for k in range(count)])
    faces = np.concatenate([box.faces + 8 * k for k in range(count)])
    order = np.random.default_rng(0).permutation(len(faces))
    found = repaired(vertices, faces[order])
    assert (found.shells, found.turned, found.shells_turned) == (count, 0, 0)
    assert repaired(vertices, faces[order][:, ::-1]).shells_turned == count


@pytest.mark.parametrize("inside_out", [False, True])
def test_open_cup_faces_outward(inside_out: bool) -> None:
    """The outside of a crown without an inside: told from its bulge."""
    sphere = shapes.sphere(radius=5.0)
    faces = sphere.faces[(sphere.vertices[sphere.faces][:, :, 2] > -0.5).all(axis=1)]
    found = repaired(sphere.vertices, faces[:, ::-1] if inside_out else faces)
    assert same_facets(found.faces, faces)
    assert found.shells_turned == int(inside_out)


def test_open_cup_within_a_cup_is_the_inner_surface() -> None:
    """Outer and inner surface of a crown that are not joined at the margin."""
    sphere, _ = shapes.two_spheres()
    keep = (sphere.vertices[sphere.faces][:, :, 2] > -0.5).all(axis=1)
    faces = sphere.faces[keep]
    found = repaired(sphere.vertices, faces)
    assert np.array_equal(found.faces, faces)
    turned = repaired(sphere.vertices, faces[:, ::-1])
    assert same_facets(turned.faces, faces)


def test_flat_sheet_is_left_alone() -> None:
    plane = shapes.plane(4.0, 10)
    for faces in (plane.faces, plane.faces[:, ::-1]):
        found = repaired(plane.vertices, faces)
        assert np.array_equal(found.faces, faces)
    faces, wrong = scrambled(plane, 0.2)
    assert repaired(plane.vertices, faces).turned == wrong


def test_moebius_strip_is_one_sided() -> None:
    strip = shapes.moebius()
    found = repaired(strip.vertices, strip.faces)
    assert found.one_sided
    assert np.array_equal(found.faces, strip.faces)


def test_bodies_that_share_an_edge_are_two_shells() -> None:
    """An edge with four facets joins nothing."""
    vertices = np.array(
        [[0, 0, 0], [0, 0, 1], [1, 0, 0.5], [0.5, 1, 0.5], [-1, 0, 0.5], [-0.5, -1, 0.5]], float
    )
    hull = trimesh.convex.convex_hull
    one, other = hull(vertices[[0, 1, 2, 3]]), hull(vertices[[0, 1, 4, 5]])
    where = np.array([0, 1, 2, 3]), np.array([0, 1, 4, 5])
    faces = []
    for body, index in zip((one, other), where, strict=True):
        match = [
            int(index[np.argmin(np.abs(vertices[index] - p).sum(axis=1))]) for p in body.vertices
        ]
        faces.append(np.array(match)[body.faces])
    both = np.concatenate([faces[0], faces[1][:, ::-1]])
    found = repaired(vertices, both)
    assert (edge_table(both.astype(np.int32), 6).face_count == 4).sum() == 1
    assert (found.shells, found.shells_turned) == (2, 1)
    assert same_facets(found.faces, np.concatenate(faces))


@pytest.mark.parametrize("make", [lambda: shapes.sphere(subdivisions=3), shapes.box])
def test_repair_is_that_of_trimesh(make: object) -> None:
    mesh = make()
    faces, _ = scrambled(mesh, 0.3, seed=5)
    other = trimesh.Trimesh(mesh.vertices, faces, process=False)
    trimesh.repair.fix_normals(other)
    assert same_facets(repaired(mesh.vertices, faces).faces, np.asarray(other.faces))


def test_winding_number_is_that_of_libigl() -> None:
    mesh, _ = shapes.two_spheres(5.0, 4.2, (0.3, 0.0, 0.0))
    opened = mesh.faces[mesh.face_centres[:, 2] < 3.0]
    points = np.random.default_rng(0).uniform(-6.0, 6.0, (12, 3))
    reference = igl.winding_number(mesh.vertices, opened.astype(np.int64), points)
    triangles = mesh.vertices[opened]
    assert [winding_number(triangles, point) for point in points] == pytest.approx(reference)


def test_winding_number_is_one_inside_and_nothing_outside() -> None:
    mesh = shapes.torus(5.0, 2.0)
    triangles = mesh.vertices[mesh.faces]
    assert winding_number(triangles, np.array([5.3, 0.4, 0.2])) == pytest.approx(1.0)
    assert winding_number(triangles, np.zeros(3)) == pytest.approx(0.0, abs=1e-9)
    assert winding_number(triangles[:, ::-1], np.array([0.0, 5.0, 0.0])) == pytest.approx(-1.0)
