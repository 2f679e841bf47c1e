"""Plane sections against the areas of circles, ellipses and rings."""

from __future__ import annotations

import numpy as np
import pytest
import trimesh

from stainmap.surface.mesh import TriMesh
from stainmap.surface.section import crossing_points, hull_area, plane_section
from tests.surface import shapes

UP = np.array([0.0, 0.0, 1.0])


def polygon_share(count: int) -> float:
    """Return the area of a regular polygon over that of its circumcircle."""
    return float(np.sin(2 * np.pi / count) * count / (2 * np.pi))


@pytest.mark.parametrize("tilt_deg", [0.0, 20.0, 40.0])
def test_cylinder_is_cut_in_an_ellipse(tilt_deg: float) -> None:
    mesh = shapes.of(trimesh.creation.cylinder(1.6, 12.0, sections=96))
    tilt = np.radians(tilt_deg)
    normal = np.array([np.sin(tilt), 0.0, np.cos(tilt)])
    (outline,) = plane_section(mesh, normal, 0.3)
    truth = np.pi * 1.6**2 / np.cos(tilt) * polygon_share(96)
    assert outline.area_mm2 == pytest.approx(truth, rel=1e-6)
    assert hull_area(outline.points, normal) == pytest.approx(truth, rel=1e-6)
    assert outline.centre @ normal == pytest.approx(0.3)


def test_ring_has_a_hole() -> None:
    mesh = shapes.of(trimesh.creation.annulus(r_min=2.0, r_max=3.0, height=4.0, sections=64))
    outer, hole = plane_section(mesh, UP, 0.1)
    share = polygon_share(64)
    assert outer.area_mm2 == pytest.approx(9 * np.pi * share, rel=1e-6)
    assert hole.area_mm2 == pytest.approx(-4 * np.pi * share, rel=1e-6)


def test_two_bodies_give_two_outlines() -> None:
    one = shapes.sphere(radius=2.0, subdivisions=4)
    both = TriMesh(
        np.concatenate([one.vertices, 0.5 * one.vertices + [6.0, 0.0, 0.0]]),
        np.concatenate([one.faces, one.faces + one.vertex_count]),
    )
    large, small = plane_section(both, UP, 0.01)
    assert large.area_mm2 == pytest.approx(4 * np.pi, rel=0.01)
    assert small.area_mm2 == pytest.approx(np.pi, rel=0.01)
    assert small.centre[0] == pytest.approx(6.0, abs=0.02)


def test_crossing_points_are_those_of_the_outlines() -> None:
    mesh = shapes.torus(5.0, 2.0)
    outlines = plane_section(mesh, UP, 0.3)
    joined = np.concatenate([one.points for one in outlines])
    found = crossing_points(mesh, UP, 0.3)
    assert np.array_equal(np.sort(found, axis=0), np.sort(joined, axis=0))
    # On the torus: (ring - R)^2 + z^2 = r^2, chords a little inside.
    ring = np.hypot(found[:, 0], found[:, 1])
    assert np.hypot(ring - 5.0, 0.3) == pytest.approx(np.full(len(ring), 2.0), abs=5e-3)
    assert crossing_points(mesh, UP, 3.0).shape == (0, 3)


def test_no_section_where_there_is_nothing() -> None:
    assert plane_section(shapes.sphere(radius=2.0), UP, 2.5) == ()


def test_hull_of_a_crescent_and_of_a_line() -> None:
    square = np.array([[0, 0, 0], [2, 0, 0], [2, 2, 0], [0, 2, 0], [1, 1, 0]], dtype=float)
    assert hull_area(square, UP) == pytest.approx(4.0)
    assert hull_area(np.outer(np.arange(5.0), [1.0, 0.0, 0.0]), UP) == 0.0
    assert hull_area(square[:2], UP) == 0.0
