"""What is done on the full surface: islands, the way back from the copy, the relief's scales."""

from __future__ import annotations

import numpy as np
import pytest

from stainmap.model.zone import Zone
from stainmap.planning.body import find_body, unit_parts
from stainmap.planning.drawing import embrasure_mm, without_islands
from stainmap.planning.progress import Steps
from stainmap.planning.relief import find_reliefs
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh
from tests.planning.bodies import beads, units
from tests.surface import shapes


def test_islands_go_to_what_is_around_them() -> None:
    mesh = shapes.plane(10.0, 100)
    x, y, _ = mesh.vertices.T
    zones = np.where(x < 0, Zone.BODY, Zone.CUSP).astype(np.uint8)
    small = np.hypot(x + 2.5, y) < 0.3
    large = np.hypot(x - 2.5, y) < 1.0
    zones[small | large] = Zone.FISSURE
    zones[y > 4.0] = Zone.INNER
    lone = np.hypot(x - 2.0, y - 4.5) < 0.2
    zones[lone] = Zone.CERVICAL
    cleaned = without_islands(mesh, zones, np.full(mesh.vertex_count, 0.5))
    assert (cleaned[small] == Zone.BODY).all()
    assert (cleaned[large] == Zone.FISSURE).all()
    # The inner surface takes nothing.
    assert (cleaned[lone] == Zone.CERVICAL).all()
    unchanged = ~small
    assert np.array_equal(cleaned[unchanged], zones[unchanged])


def test_distance_from_where_units_part() -> None:
    mesh = shapes.plane(12.0, 120)
    x = mesh.vertices[:, 0]
    unit = (x > 0.05).astype(np.uint8)
    distance = embrasure_mm(mesh, unit)
    assert np.abs(distance - np.minimum(np.abs(x - 0.05), 5.0)).max() < 0.06
    assert embrasure_mm(mesh, np.zeros_like(unit)).min() == 5.0


def test_units_are_cut_apart() -> None:
    mesh = beads(2)
    unit = (mesh.vertices[:, 0] > 8.0).astype(np.uint8)
    parts = unit_parts(mesh, unit, units(14, 15))
    assert [part.unit.tooth.number for part in parts] == [14, 15]
    for part in parts:
        assert np.array_equal(part.mesh.vertices, mesh.vertices[part.vertices])
        assert (unit[part.vertices] == part.index).all()
    assert sum(part.mesh.area for part in parts) < mesh.area


@pytest.mark.parametrize("radius", [3.0, 6.0])
def test_relief_of_a_sphere(radius: float) -> None:
    """Smoothing k times over s moves a sphere inward by about 2 k s^2 H."""
    mesh = shapes.sphere(radius=radius, subdivisions=5)
    reliefs = find_reliefs(SurfaceOperator(mesh), Steps(None))
    for relief, length in ((reliefs.fine, 0.2), (reliefs.middle, 0.3464), (reliefs.wide, 0.6928)):
        assert relief.length_mm == pytest.approx(length, abs=1e-4)
        assert np.allclose(relief.valley_depth_mm, -2.0 * length**2 / radius, rtol=0.12)
        assert np.allclose(relief.curvature_per_mm, 1.0 / radius, rtol=0.12)
        assert np.allclose(relief.normals, mesh.vertices / radius, atol=0.02)


def test_body_of_a_fine_mesh_has_a_coarser_copy() -> None:
    mesh = shapes.sphere(radius=5.0, subdivisions=6)
    crumb = TriMesh(shapes.box().vertices * 0.1 + 20.0, shapes.box().faces)
    both = TriMesh(
        np.concatenate([crumb.vertices, mesh.vertices]),
        np.concatenate([crumb.faces, mesh.faces + crumb.vertex_count]),
    )
    body = find_body(SurfaceOperator(both))
    assert body.count == 1
    assert body.piece.vertex_count == mesh.vertex_count
    assert body.copy.vertex_count < mesh.vertex_count / 2
    values = body.in_whole(np.arange(mesh.vertex_count, dtype=float), -1.0)
    assert (values[: crumb.vertex_count] == -1.0).all()
    assert np.array_equal(values[crumb.vertex_count :], np.arange(mesh.vertex_count))
    assert body.open_margin() is None
