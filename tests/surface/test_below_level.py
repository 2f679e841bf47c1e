"""Areas and borders below a level, against closed forms on planes and spheres."""

from __future__ import annotations

import numpy as np
import pytest

from stainmap.surface.below_level import area_below, faces_touching, faces_within, level_length
from stainmap.surface.mesh import TriMesh
from tests.builders import OUTER_RADIUS_MM, dome


def sheet(count: int = 13, side_mm: float = 6.0) -> TriMesh:
    """Return a flat square sheet of right triangles."""
    x = np.linspace(0.0, side_mm, count)
    points = np.array([(a, b, 0.0) for a in x for b in x])
    at = np.arange(count * count).reshape(count, count)
    a, b, c, d = (k.ravel() for k in (at[:-1, :-1], at[1:, :-1], at[1:, 1:], at[:-1, 1:]))
    return TriMesh(points, np.concatenate([np.stack([a, b, c], 1), np.stack([a, c, d], 1)]))


@pytest.mark.parametrize("level", [-1.0, 0.0, 0.37, 2.5, 5.99, 6.0, 9.0])
@pytest.mark.parametrize("slope", [0.0, 0.3])
def test_a_linear_field_on_a_sheet_is_cut_exactly(level: float, slope: float) -> None:
    mesh = sheet()
    x, y, _ = mesh.vertices.T
    field = x + slope * y
    # The part left of x = level - slope y, within the square: integral over y.
    fine = np.linspace(0.0, 6.0, 600_001)
    expected = np.trapezoid(np.clip(level - slope * fine, 0.0, 6.0), fine)
    assert area_below(mesh, field, level) == pytest.approx(expected, abs=1e-6)


def test_the_border_of_a_linear_field_is_a_straight_line() -> None:
    mesh = sheet()
    field = mesh.vertices[:, 0] + 0.3 * mesh.vertices[:, 1]
    assert level_length(mesh, field, 2.71) == pytest.approx(6.0 * np.hypot(1.0, 0.3), rel=1e-9)
    assert level_length(mesh, field, -0.1) == 0.0


def test_the_cap_of_a_sphere_has_the_area_that_archimedes_gives() -> None:
    mesh, outer = dome(60, 160)
    height = mesh.vertices[:, 2]
    faces = faces_within(mesh, outer)
    cap = area_below(mesh, -height, -3.3, faces)
    # Facets of 0.13 mm on a radius of 5 mm lie inside of it: 1 - cos is 1e-4 of area.
    assert cap == pytest.approx(2 * np.pi * OUTER_RADIUS_MM * (OUTER_RADIUS_MM - 3.3), rel=2e-3)
    ring = 2 * np.pi * np.sqrt(OUTER_RADIUS_MM**2 - 3.3**2)
    assert level_length(mesh, height, 3.3, faces) == pytest.approx(ring, rel=2e-3)


def test_facets_of_a_mask() -> None:
    mesh = sheet(4)
    corner = np.zeros(16, bool)
    corner[0] = True
    assert len(faces_touching(mesh, corner)) == 2
    assert len(faces_within(mesh, corner)) == 0
    assert len(faces_within(mesh, ~corner)) == mesh.face_count - 2
    among = np.arange(1, mesh.face_count)
    assert set(faces_touching(mesh, corner, among)) == set(faces_touching(mesh, corner)) - {0}
