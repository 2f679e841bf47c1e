"""The body's own frame against boxes, balls, turned bodies, and trimesh."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh
from scipy.spatial.transform import Rotation

from stainmap.surface.frame import principal_extents, principal_frame
from stainmap.surface.mesh import TriMesh
from tests.surface import shapes


def wedge() -> TriMesh:
    """Return a body without any symmetry."""
    ball = trimesh.creation.icosphere(subdivisions=4, radius=1.0).vertices
    x, y, z = ball.T
    bent = np.c_[6 * x + 0.9 * x**2, 4 * y + 0.5 * y**2 + 0.3 * x * z, 3 * z + 0.4 * x * y]
    return TriMesh(bent, trimesh.creation.icosphere(subdivisions=4).faces)


def test_box_has_its_sides_as_extents() -> None:
    turn = Rotation.random(random_state=1).as_matrix()
    box = shapes.box()
    turned = TriMesh(box.vertices @ turn.T + 5.0, box.faces)
    assert principal_extents(turned) == pytest.approx([4.0, 3.0, 2.0])
    assert principal_frame(turned).centre == pytest.approx([5.0, 5.0, 5.0])


def test_ball_spreads_alike_in_every_direction() -> None:
    """The variance of a coordinate over a sphere is r^2 / 3."""
    frame = principal_frame(shapes.sphere(radius=3.0, subdivisions=5))
    assert frame.spreads == pytest.approx(np.full(3, np.sqrt(3.0)), rel=2e-3)


def test_centre_and_axes_are_those_of_points_that_trimesh_scatters() -> None:
    body = wedge()
    frame = principal_frame(body)
    other = trimesh.Trimesh(body.vertices, body.faces)
    assert frame.centre == pytest.approx(other.centroid)
    points = np.asarray(trimesh.sample.sample_surface(other, 200_000, seed=1)[0])
    variance, axes = np.linalg.eigh(np.cov(points.T))
    assert frame.spreads == pytest.approx(np.sqrt(variance[::-1]), rel=0.01)
    assert np.abs(np.einsum("ij,ij->j", frame.axes, axes[:, ::-1])).min() > 0.999


@pytest.mark.parametrize("seed", range(5))
def test_frame_turns_with_the_body(seed: int) -> None:
    body = wedge()
    frame = principal_frame(body)
    assert np.allclose(frame.axes.T @ frame.axes, np.eye(3))
    assert np.linalg.det(frame.axes) == pytest.approx(1.0)
    assert (np.diff(frame.spreads) < 0).all()
    turn = Rotation.random(random_state=seed).as_matrix()
    turned = principal_frame(TriMesh(body.vertices @ turn.T + [3.0, -8.0, 1.0], body.faces))
    assert np.allclose(turned.axes, turn @ frame.axes, atol=1e-9)


def test_empty_mesh_has_no_extent() -> None:
    assert np.array_equal(principal_extents(TriMesh(np.zeros((0, 3)), np.zeros((0, 3)))), [0, 0, 0])
