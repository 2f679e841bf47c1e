"""The brush reaches what a brush reaches: closed forms, and potpourri3d's distances."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import potpourri3d
import pytest

from stainmap.surface.brush import brush_vertices, falloff
from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import refine
from tests.builders import dome
from tests.surface import shapes


def test_flat_surface_gets_a_disc() -> None:
    mesh = shapes.plane(6.0, 60)
    seed = int(np.argmin(np.linalg.norm(mesh.vertices, axis=1)))
    vertices, weight = brush_vertices(mesh, mesh.vertices[seed], seed, 1.05, 0.0)
    distance = np.linalg.norm(mesh.vertices - mesh.vertices[seed], axis=1)
    assert np.array_equal(vertices, np.flatnonzero(distance <= 1.05))
    assert (weight == 1.0).all()
    assert vertices.dtype == np.int32
    assert weight.dtype == np.float32


def test_strength_falls_smoothly() -> None:
    mesh = shapes.plane(6.0, 60)
    seed = int(np.argmin(np.linalg.norm(mesh.vertices, axis=1)))
    vertices, weight = brush_vertices(mesh, mesh.vertices[seed], seed, 2.0, 0.5)
    share = np.linalg.norm(mesh.vertices[vertices] - mesh.vertices[seed], axis=1) / 2.0
    assert (weight[share <= 0.5] == 1.0).all()
    assert weight.min() > 0
    order = np.argsort(share)
    assert (np.diff(weight[order]) <= 1e-6).all()
    assert falloff(np.array([0.75]), 0.5)[0] == pytest.approx(0.5)
    assert list(falloff(np.array([0.0, 1.0, 1.5]), 1.0)) == [1.0, 0.0, 0.0]


def test_strength_counts_from_the_pointer_not_from_the_vertex() -> None:
    mesh = shapes.plane(6.0, 30)
    seed = int(np.argmin(np.linalg.norm(mesh.vertices, axis=1)))
    pointer = mesh.vertices[seed] + (0.09, 0.0, 0.0)
    vertices, weight = brush_vertices(mesh, pointer, seed, 1.0, 1.0)
    expected = falloff(np.linalg.norm(mesh.vertices[vertices] - pointer, axis=1), 1.0)
    assert np.allclose(weight, expected)


def test_brush_does_not_reach_through_a_wall() -> None:
    """At the top of a dome 1 mm thick; at its rim it may go around."""
    mesh, outer = dome(rings=60, around=160)
    top = 0
    vertices, _ = brush_vertices(mesh, mesh.vertices[top], top, 2.0, 0.5)
    ball = np.linalg.norm(mesh.vertices - mesh.vertices[top], axis=1) <= 2.0
    assert (ball & ~outer).any()
    assert outer[vertices].all()
    assert len(vertices) == (ball & outer).sum()
    rim = int(np.flatnonzero(outer & (np.abs(mesh.vertices[:, 2]) < 1e-9))[0])
    around_rim, _ = brush_vertices(mesh, mesh.vertices[rim], rim, 2.0, 0.5)
    assert (~outer[around_rim]).any()


def test_brush_does_not_jump_a_gap() -> None:
    one, other = shapes.plane(4.0, 40), shapes.plane(4.0, 40)
    mesh = TriMesh(
        np.r_[one.vertices, other.vertices + np.array([0, 0, 0.2])],
        np.r_[one.faces, other.faces + one.vertex_count],
    )
    vertices, _ = brush_vertices(mesh, mesh.vertices[800], 800, 0.6, 0.5)
    assert vertices.max() < one.vertex_count


def test_brush_reaches_the_bottom_of_a_groove() -> None:
    """A V of 60 degrees, 0.4 mm deep: from its edge the bottom is painted."""
    parameters, faces = shapes.sheet(80, 40, wide=4.0, high=2.0)
    x = parameters[:, 0] - 2.0
    depth = np.maximum(0.0, 0.4 - np.abs(x) * np.tan(np.radians(60.0)))
    mesh = TriMesh(np.c_[x, parameters[:, 1], -depth], faces)
    seed = int(np.argmin(np.linalg.norm(mesh.vertices - (0.3, 1.0, 0.0), axis=1)))
    vertices, _ = brush_vertices(mesh, mesh.vertices[seed], seed, 0.7, 0.5)
    bottom = np.flatnonzero((np.abs(x) < 1e-9) & (np.abs(parameters[:, 1] - 1.0) < 0.2))
    assert set(bottom) <= set(vertices)


def test_footprint_on_a_ball_is_a_cap() -> None:
    """A ball of radius b around a point of a sphere cuts off a cap of area pi b^2, whatever r."""
    mesh = shapes.sphere(radius=5.0, subdivisions=6)
    areas = []
    for seed in (0, 1234, 30_000):
        vertices, weight = brush_vertices(mesh, mesh.vertices[seed], seed, 1.5, 0.0)
        assert (weight == 1.0).all()
        areas.append(mesh.vertex_areas[vertices].sum())
    assert areas == pytest.approx(np.full(3, np.pi * 1.5**2), rel=0.02)


def test_tiny_brush_still_touches_its_vertex() -> None:
    mesh = shapes.plane(6.0, 6)
    for softness in (0.0, 1.0):
        vertices, weight = brush_vertices(mesh, mesh.vertices[8] + (0.3, 0.2, 0), 8, 0.01, softness)
        assert list(vertices) == [8]
        assert weight[0] >= 0.5


@pytest.mark.parametrize("name", ["solid_46.stl", "hollow_46.stl", "bridge_14_15_16.stl"])
def test_real_crowns_against_distances_of_the_heat_method(shared_meshes: Path, name: str) -> None:
    """Little is missed or reached wrongly, judged by what lies within 1.25 r along the surface."""
    mesh = refine(load_mesh(shared_meshes / name).mesh, 0.2).mesh
    solver = potpourri3d.MeshHeatMethodDistanceSolver(mesh.vertices, mesh.faces.astype(np.int64))
    missed, leaked = [], []
    for seed in np.random.default_rng(0).integers(mesh.vertex_count, size=12):
        found, _ = brush_vertices(mesh, mesh.vertices[seed], int(seed), 0.8, 0.0)
        way = solver.compute_distance(int(seed))
        ball = np.linalg.norm(mesh.vertices - mesh.vertices[seed], axis=1) <= 0.8
        truth = set(np.flatnonzero(ball & (way <= 1.25 * 0.8)))
        missed.append(len(truth - set(found)) / len(truth))
        leaked.append(len(set(found) - truth) / len(truth))
    assert np.median(missed) < 0.04
    assert max(missed) < 0.12
    assert np.median(leaked) < 0.02
    assert max(leaked) < 0.08


def test_wrong_input_is_refused() -> None:
    mesh = shapes.box()
    for radius, softness, seed, what in (
        (0.0, 0.5, 0, "radius"),
        (np.nan, 0.5, 0, "radius"),
        (1.0, 1.5, 0, "softness"),
        (1.0, 0.5, 8, "vertex"),
        (1.0, 0.5, -1, "vertex"),
    ):
        with pytest.raises(ValueError, match=what):
            brush_vertices(mesh, (0, 0, 0), seed, radius, softness)
