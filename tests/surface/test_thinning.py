"""The coarser copy: what it keeps of area, topology and fields, and that it turns with the mesh."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import trimesh
from scipy.spatial.transform import Rotation

from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import refine
from stainmap.surface.thinning import thin
from tests.surface import shapes


@pytest.fixture(scope="module")
def ball() -> TriMesh:
    """Return a sphere of radius 5 with 40,962 vertices, edges of 0.09 mm."""
    return shapes.sphere(radius=5.0, subdivisions=6)


def test_copy_of_a_sphere(ball: TriMesh) -> None:
    thinned = thin(ball, 0.3)
    copy = thinned.mesh
    # The sphere has 314 mm2; a grid of 0.3 mm cuts it into about 1.5 pieces a cell's face.
    assert 3_000 < copy.vertex_count < 7_000
    assert copy.area == pytest.approx(ball.area, rel=0.01)
    assert copy.is_watertight
    assert copy.volume == pytest.approx(ball.volume, rel=0.01)
    euler = copy.vertex_count - len(copy.edges) + copy.face_count
    assert euler == 2
    radius = np.linalg.norm(copy.vertices, axis=1)
    assert 4.98 < radius.min() <= radius.max() <= 5.0 + 1e-9
    assert np.bincount(copy.faces.ravel(), minlength=copy.vertex_count).min() > 0


def test_values_come_back_smoothly(ball: TriMesh) -> None:
    thinned = thin(ball, 0.3)
    rows = np.asarray(thinned.transfer.sum(axis=1)).ravel()
    assert np.allclose(rows, 1.0)
    assert thinned.transfer.data.min() >= 0.0
    # A wave 6 mm long, on the sphere and brought back from the copy.
    wave = np.sin(2 * np.pi * ball.vertices[:, 2] / 6.0)
    on_copy = np.sin(2 * np.pi * thinned.mesh.vertices[:, 2] / 6.0)
    error = thinned.back(on_copy) - wave
    assert np.sqrt((error**2).mean()) < 0.04
    assert np.abs(error).max() < 0.13
    both = thinned.back(np.stack([on_copy, 2.0 * on_copy], axis=1))
    assert np.allclose(both[:, 1], 2.0 * both[:, 0])


def test_sampling_and_majority(ball: TriMesh) -> None:
    thinned = thin(ball, 0.3)
    every = np.arange(thinned.mesh.vertex_count)
    assert np.array_equal(thinned.cluster[thinned.representative], every)
    north = ball.vertices[:, 2] > 0.0
    away = np.abs(thinned.mesh.vertices[:, 2]) > 0.3
    truth = thinned.mesh.vertices[:, 2] > 0.0
    assert np.array_equal(thinned.majority(north)[away], truth[away])
    assert np.array_equal(thinned.sampled(north)[away], truth[away])
    one = np.zeros(ball.vertex_count, dtype=bool)
    one[17] = True
    assert np.flatnonzero(thinned.touched(one)).tolist() == [thinned.cluster[17]]


def test_thin_walls_stay_apart() -> None:
    """A shell of 0.15 mm, thinner than the cells, keeps its two sides and both their areas."""
    shell, outer = shapes.two_spheres(5.0, 4.85)
    shell = refine(shell, 0.14).mesh
    outer = np.linalg.norm(shell.vertices, axis=1) > 4.92
    thinned = thin(shell, 0.3)
    of_copy = np.zeros(thinned.mesh.vertex_count, dtype=bool)
    of_copy[thinned.cluster[outer]] = True
    assert not of_copy[thinned.cluster[~outer]].any()
    assert thinned.mesh.area == pytest.approx(shell.area, rel=0.01)


@pytest.mark.parametrize("seed", [0, 1])
def test_turns_with_the_mesh(seed: int, shared_meshes: Path) -> None:
    mesh = refine(load_mesh(shared_meshes / "solid_11.stl").mesh, 0.18).mesh
    turn = Rotation.random(random_state=seed).as_matrix()
    turned = TriMesh(mesh.vertices @ turn.T + [4.0, -9.0, 2.0], mesh.faces)
    one, other = thin(mesh, 0.25), thin(turned, 0.25)
    assert np.array_equal(one.cluster, other.cluster)
    assert np.array_equal(one.representative, other.representative)
    assert np.array_equal(one.mesh.faces, other.mesh.faces)
    assert np.allclose(other.mesh.vertices, one.mesh.vertices @ turn.T + [4.0, -9.0, 2.0])


@pytest.mark.parametrize("name", ["hollow_46", "bridge_14_15_16"])
def test_copies_of_real_crowns_are_nearly_manifold(shared_meshes: Path, name: str) -> None:
    mesh = refine(load_mesh(shared_meshes / f"{name}.stl").mesh, 0.2).mesh
    copy = thin(mesh, 0.25).mesh
    assert copy.area == pytest.approx(mesh.area, rel=0.01)
    assert (copy.edge_face_count == 2).mean() > 0.999
    assert len(trimesh.graph.connected_components(copy.edges, engine="scipy")) == 1


def test_coarse_meshes_are_left_as_they_are() -> None:
    mesh = shapes.sphere(subdivisions=4)
    thinned = thin(mesh, 0.3)
    assert thinned.mesh is mesh
    values = np.arange(mesh.vertex_count, dtype=float)
    assert np.array_equal(thinned.back(values), values)
    assert np.array_equal(thinned.sampled(values), values)


def test_open_sheets_stay_open() -> None:
    sheet = shapes.plane(20.0, 180)
    thinned = thin(sheet, 0.3)
    assert thinned.mesh.vertex_count < 10_000
    assert thinned.mesh.area == pytest.approx(400.0, rel=0.05)
    border = thinned.touched(sheet.boundary_vertices)
    side = np.abs(thinned.mesh.vertices[:, :2]).max(axis=1)
    assert side[border].min() > 9.6
    assert side[~border].max() < 10.0
