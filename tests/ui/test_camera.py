"""The camera against closed forms and against OpenGL's own matrix."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from stainmap.ui.camera import DISTANCE_MM, Camera, depth_from_buffer, rotation

WIDTH, HEIGHT = 820.0, 604.0


@pytest.fixture
def camera() -> Camera:
    return Camera.looking_from((0.3, 0.62, 0.66), (0, 0, 1), (1.0, -2.0, 0.5), 12.7)


@pytest.fixture
def points() -> np.ndarray:
    return np.random.default_rng(3).normal(size=(40, 3)) * 5.0


def test_axes_are_a_right_handed_frame(camera: Camera) -> None:
    assert camera.axes @ camera.axes.T == pytest.approx(np.eye(3), abs=1e-12)
    assert np.linalg.det(camera.axes) == pytest.approx(1.0)
    # Upright: the up vector has no part to the right.
    assert camera.axes[0] @ (0, 0, 1) == pytest.approx(0.0, abs=1e-12)


def test_a_point_in_the_target_plane_is_shown_at_true_scale(camera: Camera) -> None:
    pixels_per_mm = HEIGHT / camera.height_mm
    place = camera.target + 2.0 * camera.axes[0] + 1.0 * camera.axes[1]
    x, y, depth = camera.project(place, WIDTH, HEIGHT)[0]
    assert x == pytest.approx(WIDTH / 2 + 2.0 * pixels_per_mm)
    assert y == pytest.approx(HEIGHT / 2 - 1.0 * pixels_per_mm)
    assert depth == pytest.approx(0.0, abs=1e-12)


def test_nearer_things_are_larger_by_similar_triangles(camera: Camera) -> None:
    near = camera.target + camera.axes[0] + 30.0 * camera.axes[2]
    x = camera.project(near, WIDTH, HEIGHT)[0, 0] - WIDTH / 2
    expected = HEIGHT / camera.height_mm * DISTANCE_MM / (DISTANCE_MM - 30.0)
    assert x == pytest.approx(expected)


def test_project_agrees_with_the_matrix_given_to_opengl(camera: Camera, points: np.ndarray) -> None:
    clip = np.c_[points, np.ones(len(points))] @ camera.matrix(WIDTH, HEIGHT).T
    device = clip[:, :3] / clip[:, 3:]
    screen = camera.project(points, WIDTH, HEIGHT)
    assert (device[:, 0] + 1) * WIDTH / 2 == pytest.approx(screen[:, 0])
    assert (1 - device[:, 1]) * HEIGHT / 2 == pytest.approx(screen[:, 1])
    depth = [depth_from_buffer(float(z) / 2 + 0.5) for z in device[:, 2]]
    assert depth == pytest.approx(screen[:, 2])


def test_a_ray_goes_through_what_is_seen_at_its_pixel(camera: Camera, points: np.ndarray) -> None:
    for point, (x, y, depth) in zip(points, camera.project(points, WIDTH, HEIGHT), strict=True):
        origin, direction = camera.ray(x, y, WIDTH, HEIGHT)
        assert np.linalg.norm(np.cross(point - origin, direction)) == pytest.approx(0, abs=1e-9)
        assert camera.point_at(x, y, WIDTH, HEIGHT, depth) == pytest.approx(point)


def test_zooming_keeps_the_point_under_the_pointer(camera: Camera) -> None:
    under = camera.point_at(600, 100, WIDTH, HEIGHT)
    closer = camera.zoomed(1.5, 600, 100, WIDTH, HEIGHT)
    assert closer.height_mm == pytest.approx(camera.height_mm / 1.5)
    assert closer.project(under, WIDTH, HEIGHT)[0, :2] == pytest.approx((600, 100))


def test_zooming_stops_at_both_ends(camera: Camera) -> None:
    assert camera.zoomed(1e9, 0, 0, WIDTH, HEIGHT).height_mm == pytest.approx(0.8)
    assert camera.zoomed(1e-9, 0, 0, WIDTH, HEIGHT).height_mm == pytest.approx(120.0)


def test_shifting_pulls_the_picture_along(camera: Camera) -> None:
    before = camera.project(camera.target, WIDTH, HEIGHT)[0, :2]
    after = camera.shifted(37, -12, HEIGHT).project(camera.target, WIDTH, HEIGHT)[0, :2]
    assert after - before == pytest.approx((37, -12))


@pytest.mark.parametrize("upside_down", [False, True])
def test_the_surface_follows_a_turning_pointer(upside_down: bool) -> None:
    up = (0, 0, -1) if upside_down else (0, 0, 1)
    camera = Camera.looking_from((0, 1, 0.4), up, (0, 0, 0), 12.0)
    front = camera.target + 4.0 * camera.axes[2]
    before = camera.project(front, WIDTH, HEIGHT)[0]
    sideways = camera.turned(10, 0, (0, 0, 1)).project(front, WIDTH, HEIGHT)[0]
    down = camera.turned(0, 10, (0, 0, 1)).project(front, WIDTH, HEIGHT)[0]
    assert sideways[0] > before[0] + 5
    assert down[1] > before[1] + 5


def test_turning_sideways_is_a_rotation_about_the_occlusal_axis() -> None:
    camera = Camera.looking_from((0.3, 0.62, 0.66), (0, 0, 1), (0, 0, 0), 12.0)
    axis = np.array([0.0, 0.0, 1.0])
    turned = camera.turned(80, 0, axis)
    # 80 px at half a degree each; the camera goes the other way than the surface.
    expected = camera.axes @ Rotation.from_rotvec(np.radians(-40.0) * axis).as_matrix().T
    assert turned.axes == pytest.approx(expected)


def test_rotation_agrees_with_scipy() -> None:
    axis = np.array([0.36, 0.48, 0.8])
    expected = Rotation.from_rotvec(1.1 * axis).as_matrix()
    assert rotation(axis, 1.1) == pytest.approx(expected)


@pytest.mark.parametrize("toward", [(0, -1, 0), (1, 0, 0), (0.2, 1, 0.1), (-0.3, -1, -0.2)])
def test_half_way_between_two_cameras_lies_half_the_angle(toward: tuple[float, ...]) -> None:
    start = Camera.looking_from((0, 1, 0), (0, 0, 1), (0, 0, 0), 8.0)
    end = Camera.looking_from(toward, (0, 0, 1), (2, 0, 0), 32.0)
    middle = start.between(end, 0.5)

    def angle(one: Camera, other: Camera) -> float:
        return float(Rotation.from_matrix(other.axes.T @ one.axes).magnitude())

    assert angle(start, middle) == pytest.approx(angle(start, end) / 2)
    assert start.between(end, 1.0).axes == pytest.approx(end.axes)
    assert middle.height_mm == pytest.approx(16.0)
    assert middle.target == pytest.approx((1, 0, 0))


def test_fitting_shows_every_vertex_and_wastes_little(points: np.ndarray) -> None:
    camera = Camera.looking_from((1, 1, 1), (0, 0, 1), (0, 0, 0), 1.0)
    fitted = camera.fitted(points, WIDTH, HEIGHT)
    screen = fitted.project(points, WIDTH, HEIGHT)
    assert screen[:, 0].min() >= 0
    assert screen[:, 0].max() <= WIDTH
    assert screen[:, 1].min() >= 0
    assert screen[:, 1].max() <= HEIGHT
    used = max(np.ptp(screen[:, 0]) / WIDTH, np.ptp(screen[:, 1]) / HEIGHT)
    assert used > 0.75
