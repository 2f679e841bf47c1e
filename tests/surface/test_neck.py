"""Necks against bodies whose smallest section is known, and sections against trimesh."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import trimesh
from scipy.spatial.transform import Rotation

from stainmap.surface.frame import principal_frame
from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.neck import Neck, find_necks, parts_between, smallest_section
from stainmap.surface.section import plane_section
from tests.surface import shapes

ACROSS_X = np.eye(3)


def hyperboloid(waist: float, slope: float, length: float) -> TriMesh:
    """Return a closed hyperboloid of one sheet about x: r^2 = waist^2 + (slope x)^2."""
    mesh, _ = shapes.tube(1.0, 1.0, 200, 120)
    angle = np.arctan2(mesh.vertices[:, 1], mesh.vertices[:, 0])
    x = (mesh.vertices[:, 2] - 0.5) * length
    radius = np.sqrt(waist**2 + (slope * x) ** 2)
    # Turned like the tube, which has its outside outside.
    ring = np.c_[x, radius * np.cos(angle), radius * np.sin(angle)]
    closed = trimesh.Trimesh(ring, mesh.faces, process=False)
    closed.fill_holes()
    closed.fix_normals()
    return shapes.of(closed)


def section_of_trimesh(mesh: TriMesh, normal: np.ndarray, offset_mm: float) -> list[float]:
    """Return areas of the outlines as trimesh cuts and chains them, largest first."""
    path = trimesh.Trimesh(mesh.vertices, mesh.faces, process=False).section(
        plane_normal=normal, plane_origin=offset_mm * normal
    )
    if path is None:
        return []
    areas = []
    for loop in path.discrete:
        closed = np.asarray(loop)[:-1]
        around = np.cross(closed, np.roll(closed, -1, axis=0)).sum(axis=0)
        areas.append(abs(0.5 * float(around @ normal)))
    return sorted(areas, reverse=True)


@pytest.mark.parametrize(("shift", "tilt_deg"), [(0.0, 0.0), (0.8, 0.0), (-0.5, 12.0), (0.3, 20.0)])
def test_waist_of_a_hyperboloid(shift: float, tilt_deg: float) -> None:
    """Its smallest section is the circle at the waist, wherever the search begins."""
    waist = 1.6
    mesh = hyperboloid(waist, 0.9, 8.0)
    axes = Rotation.from_euler("z", tilt_deg, degrees=True).as_matrix()
    found = smallest_section(mesh, axes, shift)
    circle = np.pi * waist**2 * np.sin(2 * np.pi / 200) * 200 / (2 * np.pi)
    assert found.section_mm2 == pytest.approx(circle, rel=0.01)
    assert abs(found.normal[0]) > np.cos(np.radians(3.0))
    assert np.abs(found.centre).max() < 0.1
    assert found.share == 1.0


def test_tube_of_a_torus_is_cut_across() -> None:
    """A plane askew to the ring finds its way to the meridian: pi r^2."""
    mesh = shapes.torus(6.0, 1.5)
    axes = Rotation.from_euler("z", 15.0, degrees=True).as_matrix()[:, [1, 0, 2]]
    # The slice lies near (6, 0, 0), turned 15 degrees from the meridian.
    found = smallest_section(mesh, axes, float(axes[:, 0] @ (6.0, 0.0, 0.0)))
    assert found.section_mm2 == pytest.approx(np.pi * 1.5**2, rel=0.01)
    # All planes through the ring's axis cut it alike.
    assert abs(found.offset_mm) < 0.15
    assert abs(found.normal[2]) < 0.05


def test_necks_between_three_balls_divide_them() -> None:
    """Balls of 3 mm, 5 mm apart, meet in circles of radius sqrt(3^2 - 2.5^2)."""
    x = np.linspace(-8.0, 8.0, 641)
    profile = np.sqrt(np.maximum(9.0 - np.min([(x - c) ** 2 for c in (-5, 0, 5)], axis=0), 1e-4))
    mesh = shapes.of(trimesh.creation.revolve(np.c_[profile, x], sections=128))
    turn = Rotation.random(random_state=3).as_matrix()
    turned = TriMesh(mesh.vertices @ turn.T + [3.0, -7.0, 20.0], mesh.faces)
    heard: list[float] = []
    necks = find_necks(turned, principal_frame(turned).axes, progress=heard.append)
    share = np.sin(2 * np.pi / 128) * 128 / (2 * np.pi)
    circle = np.pi * (9.0 - 2.5**2) * share
    assert [neck.section_mm2 for neck in necks] == pytest.approx([circle, circle], rel=0.01)
    # The slice lies up to half a step of 0.35 mm beside the neck.
    for neck in necks:
        assert 1 - (2.5 / 3.0) ** 2 < neck.share + 1e-3 < 1 - (2.325 / 3.0) ** 2
    assert heard == sorted(heard)
    assert heard[0] == 0.0
    area = np.bincount(parts_between(turned, necks), turned.vertex_areas)
    # Spherical zones: 2 pi r h; the outer balls keep 5.5 mm of their height, the inner one 5.
    zone = 2 * np.pi * 3.0 * np.array([5.5, 5.0, 5.5])
    assert area == pytest.approx(zone, rel=0.02)


def test_body_without_a_neck() -> None:
    ball = shapes.sphere(radius=4.0)
    assert find_necks(ball, ACROSS_X) == ()
    assert not parts_between(ball, ()).any()
    with pytest.raises(ValueError, match="does not meet"):
        smallest_section(ball, ACROSS_X, 9.0)


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
def test_sections_of_real_bodies_against_trimesh(shared_meshes: Path, name: str) -> None:
    mesh = load_mesh(shared_meshes / name).mesh
    rng = np.random.default_rng(4)
    for _ in range(6):
        normal = rng.normal(size=3)
        normal /= np.linalg.norm(normal)
        offset = float(mesh.centre @ normal) + rng.uniform(-1.5, 1.5)
        ours = [abs(one.area_mm2) for one in plane_section(mesh, normal, offset)]
        assert sorted(ours, reverse=True) == pytest.approx(
            section_of_trimesh(mesh, normal, offset), rel=1e-6, abs=1e-9
        )


def test_a_neck_cannot_be_changed() -> None:
    found = smallest_section(shapes.torus(6.0, 1.5), ACROSS_X[:, [1, 0, 2]], 0.0)
    assert isinstance(found, Neck)
    with pytest.raises(ValueError, match="read-only"):
        found.normal[0] = 0.0
