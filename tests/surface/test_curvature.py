"""Curvature against the closed forms of sphere, torus and cylinder, and against libigl."""

from __future__ import annotations

from pathlib import Path

import igl
import numpy as np
import pytest

from stainmap.surface.curvature import (
    angle_defects,
    curvature_at_scale,
    curvature_at_scales,
    gaussian_curvature,
)
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import refine
from tests.surface import shapes


def test_sphere_has_mean_curvature_one_over_r() -> None:
    """Within 0.04 % but for the twelve vertices of the icosphere with five faces."""
    mesh = shapes.sphere(radius=5.0, subdivisions=5)
    mean = curvature_at_scale(SurfaceOperator(mesh), 0.0).mean
    error = np.abs(5.0 * mean - 1.0)
    assert np.percentile(error, 95) < 4e-4
    degree = np.diff(mesh.adjacency.indptr)
    assert set(np.flatnonzero(error > 0.02)) <= set(np.flatnonzero(degree == 5))
    assert (degree == 5).sum() == 12


@pytest.mark.parametrize("scale_mm", [0.2, 0.35])
def test_smoothed_sphere_is_a_little_smaller(scale_mm: float) -> None:
    """Coordinates shrink by 1 / (1 + 2 s^2 / r^2); H follows, and the depth is about -2 s^2 H."""
    mesh = shapes.sphere(radius=5.0, subdivisions=5)
    found = curvature_at_scale(SurfaceOperator(mesh), scale_mm)
    shrink = 1.0 / (1.0 + 2.0 * scale_mm**2 / 25.0)
    assert np.percentile(np.abs(5.0 * found.mean / shrink - 1.0), 95) < 1e-3
    assert np.allclose(found.depth_mm, 5.0 * (shrink - 1.0), rtol=0.03)
    assert np.allclose(np.linalg.norm(found.positions, axis=1), 5.0 * shrink, rtol=3e-4)
    assert np.allclose(found.normals, mesh.vertex_normals, atol=3e-3)


def test_curvature_is_positive_where_convex_and_depth_positive_in_valleys() -> None:
    outward = shapes.sphere(radius=4.0)
    inward = TriMesh(outward.vertices, outward.faces[:, ::-1])
    hollow = curvature_at_scale(SurfaceOperator(inward), 0.3)
    assert hollow.mean.max() < 0 < hollow.depth_mm.min()


def test_torus_curvatures() -> None:
    """H = (R + 2 r cos t) / (2 r (R + r cos t)), K = cos t / (r (R + r cos t))."""
    mesh = shapes.torus(5.0, 2.0)
    ring = np.linalg.norm(mesh.vertices[:, :2], axis=1)
    cosine = (ring - 5.0) / 2.0
    mean = (5.0 + 4.0 * cosine) / (4.0 * ring)
    gaussian = cosine / (2.0 * ring)
    found = curvature_at_scale(SurfaceOperator(mesh), 0.0).mean
    assert np.abs(found - mean).max() < 2e-3
    assert np.abs(gaussian_curvature(mesh) - gaussian).max() < 2e-3


def test_cylinder_bends_one_way_only() -> None:
    mesh, parameters = shapes.tube(2.0, 6.0, 120, 60)
    inside = (parameters[:, 1] > 1.0) & (parameters[:, 1] < 5.0)
    mean = curvature_at_scale(SurfaceOperator(mesh), 0.2).mean
    assert np.abs(mean[inside] * (1.0 + 0.2**2 / 4.0) - 0.25).max() < 5e-3
    assert np.abs(angle_defects(mesh)[~mesh.boundary_vertices]).max() < 1e-3


@pytest.mark.parametrize(
    ("make", "characteristic"), [(shapes.sphere, 2), (shapes.box, 2), (shapes.torus, 0)]
)
def test_angle_defects_add_up_to_gauss_and_bonnet(make: object, characteristic: int) -> None:
    total = angle_defects(make()).sum()
    assert total == pytest.approx(2.0 * np.pi * characteristic, abs=1e-9)


def test_angle_defects_of_an_open_surface() -> None:
    """A flat square: the border turns once, all of it at the corners."""
    defects = angle_defects(shapes.plane(2.0, 4))
    assert defects.sum() == pytest.approx(2.0 * np.pi)
    assert np.sort(defects)[-4:] == pytest.approx([np.pi / 2] * 4)


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
def test_real_meshes_add_up_too(shared_meshes: Path, name: str) -> None:
    """All are closed bodies in one piece without a hole through them."""
    mesh = load_mesh(shared_meshes / name).mesh
    euler = mesh.vertex_count - len(mesh.edges) + mesh.face_count
    assert angle_defects(mesh).sum() == pytest.approx(2.0 * np.pi * euler, abs=1e-7)


def test_scale_makes_curvature_robust_against_noise(shared_meshes: Path) -> None:
    """At s = 0.35 mm, 0.02 mm of noise hardly changes it; at 0.1 mm it drowns it."""
    mesh = refine(load_mesh(shared_meshes / "solid_46.stl").mesh, 0.2).mesh
    noise = np.random.default_rng(0).normal(0.0, 0.02, mesh.vertices.shape)
    noisy = TriMesh(mesh.vertices + noise, mesh.faces)
    kept = {}
    for scale in (0.1, 0.35):
        one = curvature_at_scale(SurfaceOperator(mesh), scale).depth_mm
        other = curvature_at_scale(SurfaceOperator(noisy), scale)
        clean = np.einsum("ij,ij->i", other.positions - mesh.vertices, other.normals)
        kept[scale] = np.corrcoef(one, clean)[0, 1]
    assert kept[0.35] > 0.9
    assert kept[0.35] > kept[0.1]


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
def test_angle_defects_are_those_of_libigl(shared_meshes: Path, name: str) -> None:
    mesh = load_mesh(shared_meshes / name).mesh
    reference = igl.gaussian_curvature(mesh.vertices, mesh.faces.astype(np.int64))
    assert np.abs(angle_defects(mesh) - np.asarray(reference).ravel()).max() < 1e-5


@pytest.mark.parametrize("make", [shapes.sphere, shapes.torus])
def test_mean_curvature_is_that_of_libigls_laplacian(make: object) -> None:
    """Half the length of M^-1 L X, with its cotangents and its areas."""
    mesh = make()
    faces = mesh.faces.astype(np.int64)
    bent = -igl.cotmatrix(mesh.vertices, faces) @ mesh.vertices
    area = igl.massmatrix(mesh.vertices, faces, igl.MASSMATRIX_TYPE_BARYCENTRIC).diagonal()
    normals = np.asarray(
        igl.per_vertex_normals(mesh.vertices, faces, igl.PER_VERTEX_NORMALS_WEIGHTING_TYPE_AREA)
    )
    reference = 0.5 * np.einsum("ij,ij->i", bent, normals) / area
    assert np.allclose(curvature_at_scale(SurfaceOperator(mesh), 0.0).mean, reference, atol=1e-9)


def test_several_scales_from_one_factor_on_a_sphere() -> None:
    """Coordinates shrink n times by 1 / (1 + 2 s^2 / r^2), whichever way the scale was made."""
    mesh = shapes.sphere(radius=5.0, subdivisions=4)
    operator = SurfaceOperator(mesh)
    heard: list[float] = []
    found = curvature_at_scales(operator, 0.2, (1, 3, 12), progress=heard.append)
    assert [one.scale_mm for one in found] == pytest.approx([0.2, 0.2 * 3**0.5, 0.2 * 12**0.5])
    assert heard == pytest.approx(np.arange(1, 13) / 12)
    for one, repeat in zip(found, (1, 3, 12), strict=True):
        shrink = (1.0 + 2.0 * 0.2**2 / 25.0) ** -repeat
        assert np.allclose(np.linalg.norm(one.positions, axis=1), 5.0 * shrink, rtol=7e-4)
        assert np.percentile(np.abs(5.0 * one.mean / shrink - 1.0), 95) < 5e-3
        once = curvature_at_scale(operator, one.scale_mm)
        assert np.allclose(one.depth_mm, once.depth_mm, rtol=0.03)
    for wrong in ((), (0, 1), (2, 2)):
        with pytest.raises(ValueError, match="ascend"):
            curvature_at_scales(operator, 0.2, wrong)
    with pytest.raises(ValueError, match="positive"):
        curvature_at_scales(operator, 0.0, (1,))


def test_repeated_smoothing_shows_the_same_relief_as_smoothing_once(shared_meshes: Path) -> None:
    operator = SurfaceOperator(refine(load_mesh(shared_meshes / "solid_46.stl").mesh, 0.3).mesh)
    for one in curvature_at_scales(operator, 0.2, (1, 3, 12)):
        once = curvature_at_scale(operator, one.scale_mm)
        assert np.corrcoef(one.depth_mm, once.depth_mm)[0, 1] > 0.98


def test_unused_vertex_has_no_curvature() -> None:
    box = shapes.box()
    mesh = TriMesh(np.r_[box.vertices, [[9, 9, 9]]], box.faces)
    assert angle_defects(mesh)[-1] == 0.0
    assert gaussian_curvature(mesh)[-1] == 0.0
    assert curvature_at_scale(SurfaceOperator(mesh), 0.5).mean[-1] == 0.0
