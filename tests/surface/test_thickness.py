"""Wall thickness against spheres inside spheres, libigl, and the domes of the other tests."""

from __future__ import annotations

from pathlib import Path

import igl
import numpy as np
import pytest

from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import refine
from stainmap.surface.thickness import (
    nearest_vertex_distance,
    point_triangle_distance,
    wall_thickness,
)
from tests.builders import dome
from tests.surface import shapes


@pytest.mark.parametrize("offset", [(0.0, 0.0, 0.0), (0.5, 0.0, 0.0), (0.3, 0.2, -0.1)])
def test_spheres_inside_spheres(offset: tuple[float, float, float]) -> None:
    """Distance from the cavity is |x - c| - r seen from outside, R - |x| seen from inside."""
    mesh, outer = shapes.two_spheres(5.0, 4.2, offset)
    truth = np.where(
        outer,
        np.linalg.norm(mesh.vertices - offset, axis=1) - 4.2,
        5.0 - np.linalg.norm(mesh.vertices, axis=1),
    )
    thickness, partner = wall_thickness(mesh, outer, ~outer)
    assert np.abs(thickness - truth).max() < 0.002
    assert np.array_equal(outer[partner], ~outer)
    vertices_only, _ = nearest_vertex_distance(mesh.vertices[outer], mesh.vertices[~outer])
    assert np.abs(vertices_only - truth[outer]).max() < 0.02
    apart = np.linalg.norm(mesh.vertices - mesh.vertices[partner], axis=1)
    assert np.allclose(apart[outer], vertices_only)
    assert (thickness <= apart + 1e-12).all()


def test_dome_is_a_millimetre_thick_up_to_its_rim() -> None:
    mesh, outer = dome(rings=48, around=128)
    thickness, _ = wall_thickness(mesh, outer, ~outer)
    assert np.abs(thickness - 1.0).max() < 0.005


@pytest.mark.parametrize("at_once", [1, 7, 1000])
def test_work_in_portions_changes_nothing(at_once: int, monkeypatch: pytest.MonkeyPatch) -> None:
    mesh, outer = dome(rings=8, around=20)
    whole = wall_thickness(mesh, outer, ~outer)
    monkeypatch.setattr("stainmap.surface.thickness._PAIRS_AT_ONCE", at_once)
    portions = wall_thickness(mesh, outer, ~outer)
    assert np.array_equal(portions[0], whole[0])
    assert np.array_equal(portions[1], whole[1])


def test_neither_side_gets_no_thickness() -> None:
    mesh, outer = shapes.two_spheres()
    rim = mesh.vertices[:, 2] > 4.0
    thickness, partner = wall_thickness(mesh, outer & ~rim, ~outer & ~rim)
    assert np.isnan(thickness[rim]).all()
    assert (partner[rim] == -1).all()
    assert np.isfinite(thickness[~rim]).all()
    assert not rim[partner[~rim]].any()


def test_real_wall_against_libigl(shared_meshes: Path) -> None:
    """The nearest triangle of all, not only of those around the nearest vertex."""
    mesh = refine(load_mesh(shared_meshes / "hollow_46.stl").mesh, 0.3).mesh
    # The cavity is the part of the surface that faces the middle axis, roughly.
    axis = mesh.vertices - mesh.centre
    axis[:, 1] = 0.0
    facing = np.einsum("ij,ij->i", mesh.vertex_normals, axis) < 0
    faces = mesh.faces[facing[mesh.faces].all(axis=1)].astype(np.int64)
    inner = np.zeros(mesh.vertex_count, bool)
    inner[faces] = True
    thickness, _ = wall_thickness(mesh, ~inner, inner)
    squared, _, _ = igl.point_mesh_squared_distance(mesh.vertices[~inner], mesh.vertices, faces)
    excess = thickness[~inner] - np.sqrt(squared)
    assert excess.min() > -1e-9
    assert np.percentile(excess, 99) < 0.005


def test_noise_hardly_moves_it() -> None:
    mesh, outer = shapes.two_spheres()
    noise = np.random.default_rng(0).normal(0.0, 0.01, mesh.vertices.shape)
    noisy = TriMesh(mesh.vertices + noise, mesh.faces)
    change = np.abs(wall_thickness(noisy, outer, ~outer)[0] - 0.8)
    assert np.percentile(change, 50) < 0.015
    assert np.percentile(change, 95) < 0.04


def test_point_and_triangle_against_libigl() -> None:
    rng = np.random.default_rng(5)
    triangles = rng.normal(size=(400, 3, 3))
    triangles[0, 2] = triangles[0, 0]  # without area
    triangles[1] = triangles[1, 0]
    points = 2.0 * rng.normal(size=(400, 3))
    found = point_triangle_distance(points, triangles)
    for k in range(2, 400):
        squared, _, _ = igl.point_mesh_squared_distance(
            points[k : k + 1], triangles[k], np.array([[0, 1, 2]], np.int64)
        )
        assert found[k] == pytest.approx(np.sqrt(np.ravel(squared)[0]), abs=1e-12)
    assert found[1] == pytest.approx(np.linalg.norm(points[1] - triangles[1, 0]))
    assert np.isfinite(found).all()


def test_wrong_sides_are_refused() -> None:
    mesh, outer = shapes.two_spheres()
    with pytest.raises(ValueError, match="two sides"):
        wall_thickness(mesh, outer, np.zeros_like(outer))
    with pytest.raises(ValueError, match="both sides"):
        wall_thickness(mesh, outer, np.ones_like(outer))
    with pytest.raises(ValueError, match="nothing"):
        nearest_vertex_distance(mesh.vertices, np.empty((0, 3)))
