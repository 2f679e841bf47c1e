"""Refining keeps the surface exactly, and the way back to the file; against libigl and trimesh."""

from __future__ import annotations

from pathlib import Path

import igl
import numpy as np
import pytest
import trimesh
from scipy.spatial import cKDTree

from stainmap.errors import MeshFileError
from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import prolongation, refine
from tests.surface import shapes


def check(mesh: TriMesh, max_edge_mm: float) -> None:
    refined = refine(mesh, max_edge_mm)
    fine, base = refined.mesh, refined.base_vertex_count
    assert fine.edge_lengths.max() <= max_edge_mm
    # The same surface: area, volume, normals, and conforming, so as watertight as before.
    assert fine.area == pytest.approx(mesh.area, rel=1e-13)
    assert fine.volume == pytest.approx(mesh.volume, rel=1e-12)
    assert fine.is_watertight == mesh.is_watertight
    area = np.bincount(refined.face_parent, fine.face_areas, minlength=mesh.face_count)
    assert np.allclose(area, mesh.face_areas, rtol=1e-9, atol=1e-13)
    bend = np.einsum("ij,ij->i", fine.face_normals, mesh.face_normals[refined.face_parent])
    assert bend[fine.face_areas > 1e-9].min() > 1.0 - 1e-6
    # The original vertices come first; the others are midpoints of earlier ones.
    assert base == mesh.vertex_count
    assert np.array_equal(fine.vertices[:base], mesh.vertices)
    same = np.arange(base)
    assert np.array_equal(refined.parents[:base], np.stack([same, same], axis=1))
    assert (refined.parents[base:].max(axis=1) < np.arange(base, fine.vertex_count)).all()
    halves = fine.vertices[refined.parents].mean(axis=1)
    assert np.abs(halves - fine.vertices).max() == 0.0
    # Prolongation reproduces linear functions, and averages.
    matrix = prolongation(refined.parents, base)
    assert matrix.shape == (fine.vertex_count, base)
    assert np.abs(matrix @ mesh.vertices - fine.vertices).max() < 1e-12
    assert np.allclose(np.asarray(matrix.sum(axis=1)).ravel(), 1.0)
    assert matrix.data.min() > 0


@pytest.mark.parametrize("max_edge_mm", [5.0, 1.7, 0.9, 0.31])
def test_closed_forms(max_edge_mm: float) -> None:
    check(shapes.box(), max_edge_mm)
    check(shapes.tube(2.0, 3.0, 9, 2)[0], max_edge_mm)


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
def test_real_meshes(shared_meshes: Path, name: str) -> None:
    check(load_mesh(shared_meshes / name).mesh, 0.2)


def test_refined_points_lie_on_the_surface_for_libigl(shared_meshes: Path) -> None:
    mesh = load_mesh(shared_meshes / "solid_11.stl").mesh
    fine = refine(mesh, 0.4).mesh
    squared, _, _ = igl.point_mesh_squared_distance(
        fine.vertices, mesh.vertices, mesh.faces.astype(np.int64)
    )
    assert np.sqrt(squared.max()) < 1e-9


@pytest.mark.parametrize("name", ["solid_46.stl", "solid_11.stl", "hollow_46.stl"])
def test_points_are_those_of_trimesh_and_edges_more_even(shared_meshes: Path, name: str) -> None:
    mesh = load_mesh(shared_meshes / name).mesh
    fine = refine(mesh, 0.25).mesh
    points, faces = trimesh.remesh.subdivide_to_size(mesh.vertices, mesh.faces, 0.25)
    assert len(points) == fine.vertex_count
    assert cKDTree(points).query(fine.vertices)[0].max() == 0.0
    other = trimesh.Trimesh(points, faces, process=False)
    assert other.area == pytest.approx(fine.area)
    assert np.sort(other.edges_unique_length) == pytest.approx(np.sort(fine.edge_lengths))
    before, after = (np.percentile(one.edge_lengths, [10, 90]) for one in (mesh, fine))
    spread = after[1] / after[0]
    assert spread < 2.5
    assert spread < before[1] / before[0]


def test_default_gives_a_molar_some_55_thousand_vertices(shared_meshes: Path) -> None:
    refined = refine(load_mesh(shared_meshes / "solid_46.stl").mesh)
    assert 50_000 < refined.mesh.vertex_count < 60_000
    assert np.median(refined.mesh.edge_lengths) == pytest.approx(0.6 * 0.14, rel=0.1)


def test_one_two_and_three_long_edges() -> None:
    """Each pattern alone, on a single triangle."""
    for vertices, faces in (
        ([[0, 0, 0], [1.9, 0, 0], [0.95, 0.3, 0]], 2),  # one edge
        ([[0, 0, 0], [0.5, 0, 0], [0.25, 1.5, 0]], 3),  # two edges
        ([[0, 0, 0], [1.5, 0, 0], [0.75, 1.3, 0]], 4),  # all
    ):
        mesh = TriMesh(vertices, [[0, 1, 2]])
        refined = refine(mesh, 1.0)
        assert refined.mesh.face_count == faces
        assert (refined.mesh.face_normals[:, 2] > 0).all()
        assert refined.mesh.area == pytest.approx(mesh.area)


def test_fine_mesh_stays_as_it_is() -> None:
    box = shapes.box()
    refined = refine(box, 10.0)
    assert refined.mesh is box
    assert prolongation(refined.parents, 8).nnz == 8


def test_wrong_unit_is_noticed_before_memory_is_full() -> None:
    with pytest.raises(MeshFileError, match="more than 2,000,000 points") as caught:
        refine(shapes.box().scaled(1000.0))
    assert "unit" in str(caught.value)
    with pytest.raises(MeshFileError, match="more than 200 points"):
        refine(shapes.plane(1.0, 1), 0.1, max_vertices=200)  # noticed on the way only


@pytest.mark.parametrize("length", [0.0, -1.0, np.nan])
def test_length_must_be_positive(length: float) -> None:
    with pytest.raises(ValueError, match="positive"):
        refine(shapes.box(), length)


def test_prolongation_refuses_a_vertex_before_its_parents() -> None:
    with pytest.raises(ValueError, match="before its parents"):
        prolongation(np.array([[0, 0], [1, 2], [0, 0]], np.int32), 1)
