"""Openness against the view factors of a sphere's inside and against rays."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh
from scipy.spatial.transform import Rotation

from stainmap.surface.mesh import TriMesh
from stainmap.surface.openness import Visibility, directions_around, surface_samples
from tests.surface import shapes

UP = np.array([0.0, 0.0, 1.0])
SIDE = np.array([1.0, 0.0, 0.0])


def bowl(polar_deg: float, radius: float = 5.0) -> tuple[TriMesh, np.ndarray]:
    """Return the inside of a sphere, open above, and the polar angle of its vertices from below."""
    parameters, faces = shapes.sheet(120, 60, wide=2 * np.pi, high=1.0, closed=True)
    turn, share = parameters.T
    polar = np.radians(polar_deg) * (0.02 + 0.98 * share)
    points = np.c_[
        radius * np.sin(polar) * np.cos(turn),
        radius * np.sin(polar) * np.sin(turn),
        -radius * np.cos(polar),
    ]
    mesh = TriMesh(points, faces)
    if (mesh.vertex_normals * points).sum() > 0:
        mesh = TriMesh(points, faces[:, ::-1])
    return mesh, polar


def test_directions_stand_for_equal_solid_angles() -> None:
    whole = directions_around(UP, SIDE, 192)
    assert np.allclose(np.linalg.norm(whole, axis=1), 1.0)
    assert np.abs(whole.mean(axis=0)).max() < 0.01
    assert np.allclose(whole.T @ whole / 192, np.eye(3) / 3, atol=0.01)
    half = directions_around(UP, SIDE, 100, lowest_cosine=0.0)
    assert half[:, 2].min() > 0
    assert half[:, 2].mean() == pytest.approx(0.5, abs=1e-9)


def test_reference_along_the_axis_is_refused() -> None:
    with pytest.raises(ValueError, match="along the axis"):
        directions_around(UP, UP, 10)


def test_samples_lie_on_the_faces_and_close_together() -> None:
    mesh = shapes.box()
    points = surface_samples(mesh, 0.25)
    closest, distance, _ = trimesh.proximity.closest_point(
        trimesh.Trimesh(mesh.vertices, mesh.faces), points
    )
    assert distance.max() < 1e-9
    assert len(closest) == len(points)
    rng = np.random.default_rng(1)
    weights = rng.dirichlet(np.ones(3), (len(mesh.faces), 40))
    anywhere = np.einsum("fpk,fkx->fpx", weights, mesh.vertices[mesh.faces]).reshape(-1, 3)
    gap = np.linalg.norm(anywhere[:, None] - points[None], axis=2).min(axis=1)
    assert gap.max() < 0.25


@pytest.mark.parametrize("polar_deg", [60.0, 90.0, 130.0])
def test_inside_of_a_sphere(polar_deg: float) -> None:
    """Seen from anywhere inside a sphere, a part of it has its share of the area as view factor.

    So the open cap is seen by 1/2 in a hemisphere: Siegel and Howell, Thermal Radiation Heat
    Transfer, configuration factors (from memory).
    """
    mesh, polar = bowl(polar_deg)
    inside = (polar > 0.15) & (polar < np.radians(polar_deg) - 0.12)
    points, normals = mesh.vertices[inside], mesh.vertex_normals[inside]
    directions = directions_around(UP, SIDE, 192)
    sky = Visibility(mesh, cell_mm=0.12).outlook(points, normals, directions).openness()
    truth = 0.5 * (1.0 + np.cos(np.radians(polar_deg)))
    # A point lifted by 0.17 mm looks a little farther over the rim: up to 0.014 here. About 96
    # directions lie before each point, so that one of them is worth a hundredth.
    assert -0.001 < sky.share.mean() - truth < 0.016
    assert np.percentile(np.abs(sky.share - truth), 95) < 0.04
    finer = Visibility(mesh, cell_mm=0.04).outlook(points, normals, directions).openness()
    assert np.abs(finer.share.mean() - truth) < 0.007


def test_a_ball_hides_nothing_of_itself() -> None:
    mesh = shapes.sphere(radius=5.0)
    directions = directions_around(UP, SIDE, 96)
    sky = Visibility(mesh).outlook(mesh.vertices, mesh.vertex_normals, directions).openness()
    assert sky.share.min() > 0.97
    assert sky.share.mean() > 0.995
    # Half the directions lie in front, at a mean cosine of one half.
    assert sky.possible.mean() == pytest.approx(0.25, abs=0.002)
    # Cosine times direction over the half space before a point adds up to a third of a normal
    # over all directions: the integral of cos^2 is 2 pi / 3 of 4 pi.
    along = np.einsum("vi,vi->v", sky.bent, mesh.vertex_normals)
    assert along.mean() == pytest.approx(1.0 / 6.0, abs=0.003)


def test_against_rays() -> None:
    """A ball over a bowl, point by point and direction by direction."""
    under, polar = bowl(90.0)
    ball = trimesh.creation.icosphere(subdivisions=3, radius=2.0)
    vertices = np.concatenate([under.vertices, ball.vertices + np.array([0.8, 0.0, -1.0])])
    faces = np.concatenate([under.faces, ball.faces + under.vertex_count])
    mesh = TriMesh(vertices, faces)
    rng = np.random.default_rng(3)
    chosen = rng.choice(np.flatnonzero(polar > 0.2), 60, replace=False)
    points, normals = mesh.vertices[chosen], mesh.vertex_normals[chosen]
    directions = directions_around(UP, SIDE, 24)
    free = Visibility(mesh, cell_mm=0.12).outlook(points, normals, directions).free
    rays = trimesh.ray.ray_triangle.RayMeshIntersector(trimesh.Trimesh(vertices, faces))
    wrong = 0.0
    for direction, seen in zip(directions, free, strict=True):
        cosine = normals @ direction
        front = cosine > 0.02
        starts = points[front] + 1e-3 * normals[front]
        hidden = rays.intersects_any(starts, np.repeat(direction[None], front.sum(), axis=0))
        assert not seen[~front].any()
        wrong += cosine[front][seen[front] == hidden].sum()
    total = np.maximum(normals @ directions.T, 0.0).sum()
    # The ball's silhouette is off by up to the lift and a cell, a quarter of a millimetre of 4 mm.
    assert wrong < 0.03 * total


def test_turns_with_the_body() -> None:
    mesh, _ = bowl(110.0)
    mesh = TriMesh(mesh.vertices * [1.0, 0.8, 0.9] + 0.1 * mesh.vertices**2 / 5.0, mesh.faces)
    turn = Rotation.random(random_state=4).as_matrix()
    turned = TriMesh(mesh.vertices @ turn.T + [7.0, -3.0, 11.0], mesh.faces)
    directions = directions_around(UP, SIDE, 24)
    one = Visibility(mesh).outlook(mesh.vertices, mesh.vertex_normals, directions)
    other = Visibility(turned).outlook(turned.vertices, turned.vertex_normals, directions @ turn.T)
    # Points on the border between two cells may fall to either side.
    assert (one.free != other.free).mean() < 1e-3


def test_only_directions_around_an_axis_count() -> None:
    mesh = shapes.sphere(radius=5.0, subdivisions=3)
    directions = directions_around(UP, SIDE, 96)
    outlook = Visibility(mesh).outlook(mesh.vertices, mesh.vertex_normals, directions)
    sky = outlook.openness(UP, lowest_cosine=0.0)
    low = np.flatnonzero(mesh.vertices[:, 2] < -4.99)
    assert sky.possible[low].max() < 0.01
    some = np.arange(0, mesh.vertex_count, 7, dtype=np.int32)
    assert np.array_equal(outlook.openness(UP, points=some).seen, outlook.openness(UP).seen[some])


def test_progress_is_heard_and_may_stop() -> None:
    mesh = shapes.sphere(radius=5.0, subdivisions=2)
    directions = directions_around(UP, SIDE, 24)
    heard: list[float] = []
    Visibility(mesh).outlook(
        mesh.vertices,
        mesh.vertex_normals,
        directions,
        progress=lambda share, _phrase: heard.append(share),
    )
    assert heard == [0.0, 8 / 24, 16 / 24]

    def stop(_share: float, _phrase: str) -> None:
        raise InterruptedError

    with pytest.raises(InterruptedError):
        Visibility(mesh).outlook(mesh.vertices, mesh.vertex_normals, directions, progress=stop)
