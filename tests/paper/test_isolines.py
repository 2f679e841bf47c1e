"""Lines on surfaces against closed forms."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh
from hypothesis import given
from hypothesis import strategies as st

from stainmap.paper.isolines import (
    grid_contours,
    isolines,
    simplified,
    split_lines,
    stacked_isolines,
)
from stainmap.surface.mesh import TriMesh


@pytest.fixture(scope="module")
def ball() -> TriMesh:
    mesh = trimesh.creation.icosphere(subdivisions=5)
    return TriMesh(5.0 * mesh.vertices, mesh.faces)


def length(points: np.ndarray) -> float:
    return float(np.linalg.norm(np.diff(points, axis=0), axis=1).sum())


def test_a_level_on_a_sphere_is_one_closed_circle(ball: TriMesh) -> None:
    line = isolines(ball, ball.vertices[:, 2], 1.3)
    points = line.take(ball.vertices)
    assert len(line.starts) == 2
    np.testing.assert_array_equal(points[0], points[-1])
    np.testing.assert_allclose(points[:, 2], 1.3, atol=1e-12)
    assert length(points) == pytest.approx(2 * np.pi * np.sqrt(25 - 1.3**2), rel=2e-3)


def test_a_level_that_is_not_reached_gives_no_line(ball: TriMesh) -> None:
    assert len(isolines(ball, ball.vertices[:, 2], 6.0).share) == 0


def test_every_crossed_face_carries_exactly_one_piece(ball: TriMesh) -> None:
    values = np.sin(3 * ball.vertices[:, 0]) + ball.vertices[:, 1]
    line = isolines(ball, values, 0.2)
    above = (values >= 0.2)[ball.faces]
    crossed = int((above.any(axis=1) & ~above.all(axis=1)).sum())
    assert len(line.share) - (len(line.starts) - 1) == crossed


def test_splitting_keeps_the_half_of_a_circle_that_lies_on_one_side(ball: TriMesh) -> None:
    line = isolines(ball, ball.vertices[:, 2], 1.3)
    points = line.take(ball.vertices)
    parts = split_lines(points, line.line_of_point, points[:, 0])
    radius = np.sqrt(25 - 1.3**2)
    assert sum(map(length, parts)) == pytest.approx(np.pi * radius, rel=2e-3)
    for part in parts:
        assert part[:, 0].min() > -1e-9
    ends = np.concatenate([part[[0, -1]] for part in parts])
    assert np.abs(ends[:, 0]).min() < 1e-9


@given(
    st.lists(st.floats(-5, 5).filter(lambda x: abs(x) > 1e-3), min_size=2, max_size=30),
    st.integers(1, 4),
)
def test_parts_of_lines_never_cross_from_one_line_to_another(
    margin: list[float], lines: int
) -> None:
    count = len(margin)
    number = np.sort(np.arange(count) % lines)
    points = np.stack([np.arange(count) * 1.0, number * 100.0], axis=1)
    parts = split_lines(points, number, np.array(margin))
    total = 0.0
    for part in parts:
        assert np.ptp(part[:, 1]) == 0.0
        assert (np.diff(part[:, 0]) > 0).all()
        total += length(part)
    expected = 0.0
    for one in range(count - 1):
        if number[one] == number[one + 1]:
            a, b = margin[one], margin[one + 1]
            expected += 1.0 if min(a, b) > 0 else max(a, b, 0) / (abs(a) + abs(b))
    assert total == pytest.approx(expected)


def test_contour_of_a_disc_is_its_circle() -> None:
    y, x = np.mgrid[:120, :140] + 0.5
    image = 20.0 - np.hypot(x - 63.2, y - 58.7)
    (circle,) = grid_contours(image, 0.0)
    radius = np.hypot(circle[:, 0] - 63.2, circle[:, 1] - 58.7)
    np.testing.assert_allclose(radius, 20.0, atol=0.02)


def test_an_image_without_the_level_has_no_contour() -> None:
    assert grid_contours(np.zeros((5, 5)), 0.5) == []


def test_a_simplified_line_stays_within_the_tolerance() -> None:
    angle = np.linspace(0, 2 * np.pi, 400)
    line = np.stack([50 * np.cos(angle), 30 * np.sin(angle)], axis=1)
    short = simplified(line, 0.2)
    assert len(short) < 60
    np.testing.assert_array_equal(short[[0, -1]], line[[0, -1]])
    start, step = short[:-1], np.diff(short, axis=0)
    for point in line[::7]:
        along = np.sum((point - start) * step, axis=1) / np.sum(step**2, axis=1)
        nearest = start + np.clip(along, 0, 1)[:, None] * step
        assert np.linalg.norm(point - nearest, axis=1).min() <= 0.2 + 1e-9


def test_stacked_levels_are_the_levels_one_by_one(ball: TriMesh) -> None:
    values = 1.7 * ball.vertices[:, 2] + np.sin(ball.vertices[:, 0])
    lines, order = stacked_isolines(ball, values)
    np.testing.assert_allclose(lines.take(values), order, atol=1e-9)
    for level in range(int(np.ceil(values.min())), int(np.floor(values.max())) + 1):
        alone = isolines(ball, values, float(level))
        here = lines.take(ball.vertices)[order == level]
        there = alone.take(ball.vertices)
        assert len(here) == len(there)
        np.testing.assert_allclose(np.sort(here, axis=0), np.sort(there, axis=0), atol=1e-12)
    for line in np.split(order, lines.starts[1:-1]):
        assert np.ptp(line) == 0
