"""Picking against rays through a ball, trimesh and libigl."""

from __future__ import annotations

from pathlib import Path

import igl
import numpy as np
import pytest
import trimesh

from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.picking import Picker
from stainmap.surface.refining import refine
from tests.surface import shapes


def rays(mesh: TriMesh, count: int, away: float) -> tuple[np.ndarray, np.ndarray]:
    rng = np.random.default_rng(0)
    outward = rng.normal(size=(count, 3))
    outward *= away / np.linalg.norm(outward, axis=1)[:, None]
    origins = mesh.centre + outward
    targets = mesh.centre + rng.normal(size=(count, 3)) * 0.3 * mesh.extent
    return origins, targets - origins


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
@pytest.mark.parametrize("refined", [False, True])
def test_real_meshes_against_trimesh(shared_meshes: Path, name: str, refined: bool) -> None:
    mesh = load_mesh(shared_meshes / name).mesh
    if refined:
        mesh = refine(mesh, 0.25).mesh
    picker = Picker(mesh)
    origins, directions = rays(mesh, 60, 80.0)
    reference = trimesh.Trimesh(mesh.vertices, mesh.faces, process=False)
    engine = trimesh.ray.ray_triangle.RayMeshIntersector(reference)
    points, ray, face = engine.intersects_location(origins, directions, multiple_hits=True)
    met = 0
    for k, (origin, direction) in enumerate(zip(origins, directions, strict=True)):
        hit = picker.pick(origin, direction)
        mine = ray == k
        if hit is None:
            assert not mine.any()
            continue
        met += 1
        distance = np.linalg.norm(points[mine] - origin, axis=1)
        assert hit.distance_mm == pytest.approx(distance.min(), abs=1e-7)
        assert np.allclose(hit.position, points[mine][distance.argmin()], atol=1e-7)
        assert np.allclose(hit.barycentric @ mesh.vertices[mesh.faces[hit.face]], hit.position)
        assert hit.vertex == mesh.faces[hit.face][hit.barycentric.argmax()]
    assert 20 < met <= 60
    assert len(face)


def test_rays_meet_a_ball_where_they_should() -> None:
    """The nearer root of |o + t d| = r; facets lie up to r (1 - cos(edge / 2r)) inside."""
    mesh = shapes.sphere(radius=5.0, subdivisions=5)
    picker = Picker(mesh)
    rng = np.random.default_rng(3)
    sag = 5.0 * (1.0 - np.cos(mesh.edge_lengths.max() / np.sqrt(3.0) / 5.0))
    for _ in range(60):
        outward, target = rng.normal(size=3), rng.uniform(-2.0, 2.0, 3)
        origin = 20.0 * outward / np.linalg.norm(outward)
        along = (target - origin) / np.linalg.norm(target - origin)
        nearest = -(origin @ along)
        half = np.sqrt(25.0 - (origin @ origin - nearest**2))
        hit = picker.pick(origin, along)
        assert hit is not None
        slant = half / 5.0  # cosine between ray and normal
        assert -1e-9 < hit.distance_mm - (nearest - half) < 1.01 * sag / slant


@pytest.mark.parametrize("name", ["solid_14.stl", "hollow_46.stl"])
def test_real_meshes_against_libigl(shared_meshes: Path, name: str) -> None:
    mesh = load_mesh(shared_meshes / name).mesh
    picker, faces = Picker(mesh), mesh.faces.astype(np.int64)
    met = 0
    for origin, direction in zip(*rays(mesh, 30, 60.0), strict=True):
        unit = direction / np.linalg.norm(direction)
        hits = igl.ray_mesh_intersect(origin, unit, mesh.vertices, faces)
        hit = picker.pick(origin, unit)
        assert (hit is None) == (len(hits) == 0)
        if hit is not None:
            met += 1
            face, distance, u, v = min(hits, key=lambda one: one[1])
            assert hit.face == face
            assert hit.distance_mm == pytest.approx(distance, rel=1e-5)
            assert hit.barycentric[1:] == pytest.approx([u, v], abs=1e-4)
    assert met > 10


def test_every_vertex_and_edge_of_a_sphere_is_met() -> None:
    """No ray slips through between two faces."""
    mesh = shapes.sphere(radius=4.0, subdivisions=3)
    picker = Picker(mesh)
    middles = mesh.vertices[mesh.edges].mean(axis=1)
    for point in np.concatenate([mesh.vertices, middles])[::7]:
        hit = picker.pick(3.0 * point, -point)
        assert hit is not None
        assert np.allclose(hit.position, point, atol=1e-9)


def test_what_lies_behind_is_not_met() -> None:
    picker = Picker(shapes.sphere(radius=4.0))
    assert picker.pick((0, 0, 10), (0, 0, 1)) is None
    inside = picker.pick((0, 0, 0), (0, 0, 2.5))
    assert inside is not None
    assert inside.distance_mm == pytest.approx(4.0, rel=1e-2)


def test_first_wall_is_met_first() -> None:
    mesh, outer = shapes.two_spheres()
    hit = Picker(mesh).pick((0.1, 0.2, 50.0), (0.0, 0.0, -1.0))
    assert hit is not None
    assert outer[hit.vertex]
    assert hit.position[2] > 4.9


def test_passing_by_meets_nothing() -> None:
    picker = Picker(shapes.box())
    assert picker.pick((0, 50, 10), (0, 0, -1)) is None
    assert picker.pick((1e9, 0, 10), (0, 0, -1)) is None
    assert picker.pick((1.0 + 1e-6, 0, 10), (0, 0, -1)) is None
    assert picker.pick((1.0 - 1e-6, 0, 10), (0, 0, -1)) is not None


def test_far_from_the_origin() -> None:
    """A mesh a metre away, seen from a kilometre: single precision must not lose it."""
    box = shapes.box()
    picker = Picker(TriMesh(box.vertices + 1000.0, box.faces))
    hit = picker.pick((1000.3, 1000.2, 1e6), (0, 0, -1))
    assert hit is not None
    assert np.allclose(hit.position, (1000.3, 1000.2, 1002.0))


def test_empty_mesh_and_wrong_rays() -> None:
    assert (
        Picker(TriMesh(np.empty((0, 3)), np.empty((0, 3), int))).pick((0, 0, 1), (0, 0, -1)) is None
    )
    picker = Picker(shapes.box())
    for origin, direction in (((0, 0, 0), (0, 0, 0)), ((0, 0, np.nan), (0, 0, 1))):
        with pytest.raises(ValueError, match="ray"):
            picker.pick(origin, direction)
