"""The z-buffer against closed forms, and against another library's rays."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh

from stainmap.paper.raster import Camera, rasterise
from stainmap.surface.mesh import TriMesh

FRONT = {"eye": (0.0, 0.0, 1.0), "up": (0.0, 1.0, 0.0), "centre": (0.0, 0.0, 0.0)}


@pytest.fixture(scope="module")
def ball() -> TriMesh:
    mesh = trimesh.creation.icosphere(subdivisions=5)
    return TriMesh(mesh.vertices, mesh.faces)


def grid(count: int, corners: np.ndarray, rng: np.random.Generator) -> TriMesh:
    """Return a flat quadrilateral cut into irregular triangles."""
    u, v = np.meshgrid(np.linspace(0, 1, count), np.linspace(0, 1, count))
    inner = np.s_[1:-1, 1:-1]
    u[inner] += rng.uniform(-0.3, 0.3, u[inner].shape) / count
    v[inner] += rng.uniform(-0.3, 0.3, v[inner].shape) / count
    a, b, c, d = corners
    points = (
        (1 - u)[..., None] * (1 - v)[..., None] * a
        + u[..., None] * (1 - v)[..., None] * b
        + u[..., None] * v[..., None] * c
        + (1 - u)[..., None] * v[..., None] * d
    ).reshape(-1, 3)
    first = (np.arange(count - 1)[:, None] * count + np.arange(count - 1)).ravel()
    faces = np.concatenate(
        [
            np.stack([first, first + 1, first + count + 1], axis=1),
            np.stack([first, first + count + 1, first + count], axis=1),
        ]
    )
    return TriMesh(points, faces)


def test_outline_of_a_sphere_has_the_area_of_its_great_circle(ball: TriMesh) -> None:
    frame = rasterise(ball.vertices, ball.faces, Camera(**FRONT, height_mm=2.4), 400, 400)
    area = frame.coverage.sum() * frame.pixel_mm**2
    # The faceted sphere itself lies a little inside the round one.
    assert area == pytest.approx(np.pi, rel=1e-3)


def test_outline_of_a_sphere_in_perspective_is_that_of_its_tangent_cone(ball: TriMesh) -> None:
    distance = 4.0
    camera = Camera(**FRONT, height_mm=2.6, distance_mm=distance)
    frame = rasterise(ball.vertices, ball.faces, camera, 400, 400)
    radius = 1.0 / np.sqrt(1.0 - 1.0 / distance**2)
    area = frame.coverage.sum() * frame.pixel_mm**2
    assert area == pytest.approx(np.pi * radius**2, rel=1e-3)


def test_nearness_on_a_sphere_is_its_height(ball: TriMesh) -> None:
    frame = rasterise(ball.vertices, ball.faces, Camera(**FRONT, height_mm=2.4), 300, 300)
    position = frame.take(ball.vertices)
    height = np.sqrt(np.maximum(1.0 - position[:, 0] ** 2 - position[:, 1] ** 2, 0.0))
    inside = np.hypot(position[:, 0], position[:, 1]) < 0.95
    assert np.abs(position[inside, 2] - height[inside]).max() < 2e-3
    near = frame.nearness.ravel()[frame.hits]
    assert np.abs(near - position[:, 2]).max() < 1e-5


def test_samples_show_the_points_that_lie_under_them(ball: TriMesh) -> None:
    frame = rasterise(ball.vertices, ball.faces, Camera(**FRONT, height_mm=2.4), 120, 80)
    position = frame.take(ball.vertices)
    row, column = np.divmod(frame.hits, 240)
    step = 2.4 / 160
    assert np.abs(position[:, 0] - ((column + 0.5) * step - 1.8)).max() < 1e-5
    assert np.abs(position[:, 1] - (1.2 - (row + 0.5) * step)).max() < 1e-5


def test_neighbouring_triangles_leave_no_gap_and_share_no_sample() -> None:
    rng = np.random.default_rng(3)
    corners = np.array([[-1.01, -0.87, 0], [0.93, -1.02, 0], [1.04, 0.9, 0], [-0.98, 1.07, 0]])
    camera = Camera(**FRONT, height_mm=2.5)
    whole = grid(40, corners, rng)
    plain = TriMesh(corners, [[0, 1, 2], [0, 2, 3]])
    cut = rasterise(whole.vertices, whole.faces, camera, 90, 90).face >= 0
    uncut = rasterise(plain.vertices, plain.faces, camera, 90, 90).face >= 0
    np.testing.assert_array_equal(cut, uncut)
    # Each face alone covers samples that no other covers: the counts add up.
    alone = sum(
        len(rasterise(plain.vertices, plain.faces[[k]], camera, 90, 90).hits) for k in range(2)
    )
    assert alone == uncut.sum()


def test_perspective_reads_the_point_where_the_ray_meets_a_tilted_plane() -> None:
    corners = np.array([[-1.0, -1.0, -1.5], [1.0, -1.0, 0.2], [1.0, 1.0, 1.4], [-1.0, 1.0, -0.3]])
    mesh = TriMesh(corners, [[0, 1, 2], [0, 2, 3]])
    camera = Camera(**FRONT, height_mm=2.0, distance_mm=5.0)
    frame = rasterise(mesh.vertices, mesh.faces, camera, 50, 50, samples=1)
    position = frame.take(mesh.vertices).astype(np.float64)
    row, column = np.divmod(frame.hits, 50)
    through = np.stack([(column + 0.5) / 25 - 1.0, 1.0 - (row + 0.5) / 25, 0.0 * row], axis=1)
    origin = np.array([0.0, 0.0, 5.0])
    for face in range(2):
        on_face = frame.face.ravel()[frame.hits] == face
        a, b, c = corners[mesh.faces[face]]
        normal = np.cross(b - a, c - a)
        ray = through[on_face] - origin
        met = origin + ray * (((a - origin) @ normal) / (ray @ normal))[:, None]
        assert np.abs(position[on_face] - met).max() < 2e-5


def test_the_nearest_face_is_the_first_a_ray_meets() -> None:
    torus = trimesh.creation.torus(1.0, 0.4, major_sections=60, minor_sections=30)
    turn = trimesh.transformations.rotation_matrix(1.1, [1.0, 0.3, 0.2])
    torus.apply_transform(turn)
    frame = rasterise(
        torus.vertices, torus.faces, Camera(**FRONT, height_mm=3.2), 120, 120, samples=1
    )
    rng = np.random.default_rng(8)
    chosen = rng.choice(frame.face.size, 300, replace=False)
    row, column = np.divmod(chosen, 120)
    step = 3.2 / 120
    origin = np.stack(
        [(column + 0.5) * step - 1.6, 1.6 - (row + 0.5) * step, np.full(300, 9.0)], axis=1
    )
    direction = np.tile([0.0, 0.0, -1.0], (300, 1))
    points, ray, _ = torus.ray.intersects_location(origin, direction, multiple_hits=False)
    height = np.full(300, -np.inf)
    height[ray] = points[:, 2]
    shown = frame.nearness.ravel()[chosen]
    both = np.isfinite(height) & np.isfinite(shown)
    # A ray may slip past the outline by rounding; nowhere else may the two disagree.
    assert (np.isfinite(height) == np.isfinite(shown)).mean() > 0.99
    assert both.sum() > 100
    assert np.abs(height[both] - shown[both]).max() < 1e-4


def test_both_sides_are_drawn_only_when_asked_for() -> None:
    mesh = TriMesh([[-1, -1, 0], [1, -1, 0], [0, 1, 0]], [[0, 2, 1]])
    camera = Camera(**FRONT, height_mm=3.0)
    assert len(rasterise(mesh.vertices, mesh.faces, camera, 30, 30).hits) == 0
    back = rasterise(mesh.vertices, mesh.faces, camera, 30, 30, both_sides=True)
    assert len(back.hits) > 100
    assert not back.front.any()


def test_average_mixes_the_samples_of_a_pixel() -> None:
    # A half plane whose edge cuts through the middle of the pixels of one column.
    mesh = TriMesh([[0.05, -9, 0], [9, -9, 0], [9, 9, 0], [0.05, 9, 0]], [[0, 1, 2], [0, 2, 3]])
    frame = rasterise(mesh.vertices, mesh.faces, Camera(**FRONT, height_mm=1.0), 10, 10)
    picture = frame.average(np.ones((len(frame.hits), 1), np.float32), 0.0)[:, :, 0]
    np.testing.assert_allclose(picture[:, 4], 0.0)
    np.testing.assert_allclose(picture[:, 5], 0.5)
    np.testing.assert_allclose(picture[:, 6], 1.0)


def test_an_empty_picture_shows_nothing(ball: TriMesh) -> None:
    camera = Camera(eye=(0, 0, 1), up=(0, 1, 0), centre=(50, 0, 0), height_mm=2.0)
    frame = rasterise(ball.vertices, ball.faces, camera, 20, 20)
    assert len(frame.hits) == 0
    assert (frame.average(np.zeros((0, 3), np.float32), 0.25) == 0.25).all()


@pytest.mark.parametrize(
    "change",
    [{"up": (0.0, 0.0, 2.0)}, {"height_mm": 0.0}, {"distance_mm": -1.0}],
)
def test_a_camera_without_direction_or_size_is_refused(change: dict[str, object]) -> None:
    with pytest.raises(ValueError, match="must be"):
        Camera(**{**FRONT, "height_mm": 1.0, **change})  # type: ignore[arg-type]


def test_points_behind_the_camera_are_refused() -> None:
    camera = Camera(**FRONT, height_mm=1.0, distance_mm=2.0)
    with pytest.raises(ValueError, match="behind"):
        camera.project([[0.0, 0.0, 3.0]], 10, 10)
