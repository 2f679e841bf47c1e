"""Principal curvatures against closed forms, and against libigl's fitted quadrics."""

from __future__ import annotations

from pathlib import Path

import igl
import numpy as np
import pytest

from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.principal import principal_curvatures
from stainmap.surface.refining import refine
from tests.surface import shapes


def test_sphere() -> None:
    mesh = shapes.sphere(radius=5.0)
    found = principal_curvatures(SurfaceOperator(mesh), 0.2)
    # Smoothing over s shrinks a sphere by about s^2 times its curvature: 1 % here.
    for values in (found.least, found.greatest):
        assert np.percentile(np.abs(5.0 * values - 1.0), 99) < 0.05


def test_cylinder() -> None:
    mesh, parameters = shapes.tube(2.0, 8.0, 120, 80)
    found = principal_curvatures(SurfaceOperator(mesh), 0.2)
    inside = np.abs(parameters[:, 1] - 4.0) < 2.0
    assert np.abs(found.least[inside]).max() < 0.01
    assert np.allclose(found.greatest[inside], 0.5, atol=0.02)
    angle = parameters[inside, 0]
    around = np.zeros((mesh.vertex_count, 3))
    around[inside] = np.c_[-np.sin(angle), np.cos(angle), np.zeros(len(angle))]
    upward = np.tile([0.0, 0.0, 1.0], (mesh.vertex_count, 1))
    assert np.allclose(found.along(around)[inside], 0.5, atol=0.02)
    assert np.abs(found.along(upward)[inside]).max() < 0.01
    slanted = (around + upward) / np.sqrt(2.0)  # Euler: half of both
    assert np.allclose(found.along(slanted)[inside], 0.25, atol=0.02)


def test_torus_is_a_saddle_inside() -> None:
    major, minor = 6.0, 2.0
    mesh = shapes.torus(major, minor)
    found = principal_curvatures(SurfaceOperator(mesh), 0.1)
    ring = np.hypot(mesh.vertices[:, 0], mesh.vertices[:, 1])
    cosine = (ring - major) / minor
    other = cosine / (major + minor * cosine)
    assert np.allclose(found.greatest, 1.0 / minor, atol=0.02)
    assert np.allclose(found.least, other, atol=0.02)
    assert found.least.min() == pytest.approx(-1.0 / (major - minor), abs=0.01)
    assert np.allclose(found.mean, 0.5 * (1.0 / minor + other), atol=0.02)
    assert np.allclose(found.gaussian, other / minor, atol=0.02)


def test_real_surface_against_quadrics_fitted_by_libigl(shared_meshes: Path) -> None:
    """On the smoothed surface, away from its sharp edges.

    Another method with a scale of its own: what both call bent is compared, not each value.
    """
    operator = SurfaceOperator(refine(load_mesh(shared_meshes / "solid_46.stl").mesh, 0.3).mesh)
    found = principal_curvatures(operator, 0.35)
    # The shape operator is smoothed once more, so the reference gets a surface smoothed twice.
    smooth = operator.smooth(operator.smooth(operator.mesh.vertices, 0.35), 0.35)
    mesh = TriMesh(smooth, operator.mesh.faces)
    _, _, one, other, _ = igl.principal_curvature(
        mesh.vertices, mesh.faces.astype(np.int64), radius=4
    )
    greatest, least = np.maximum(one, other).ravel(), np.minimum(one, other).ravel()
    sign = np.sign(np.corrcoef(greatest + least, found.mean)[0, 1])
    if sign < 0:
        greatest, least = -least, -greatest
    blunt = np.maximum(np.abs(greatest), np.abs(least)) < 2.0
    assert blunt.mean() > 0.9
    assert np.corrcoef(found.greatest[blunt], greatest[blunt])[0, 1] > 0.9
    assert np.corrcoef(found.least[blunt], least[blunt])[0, 1] > 0.9
    assert np.median(np.abs(found.greatest - greatest)[blunt]) < 0.05
    assert np.median(np.abs(found.least - least)[blunt]) < 0.05
