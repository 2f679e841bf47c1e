"""Distances along the surface against unrolled surfaces, potpourri3d, and libigl's exact ones."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import igl
import numpy as np
import potpourri3d
import pytest
import trimesh

from stainmap.surface.geodesic import distance_graph, shortest_path, surface_distance
from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import refine
from tests.surface import shapes


def jittered(mesh: TriMesh, parameters: np.ndarray) -> np.ndarray:
    """Move parameters off the grid, so that no direction is favoured; borders and seam stay."""
    rng = np.random.default_rng(0)
    moved = parameters.copy()
    inside = ~mesh.boundary_vertices
    for k in range(2):
        step = np.diff(np.unique(parameters[:, k]))[0]
        moved[inside, k] += rng.uniform(-0.3, 0.3, inside.sum()) * step
    return moved


def test_cylinder_unrolls() -> None:
    mesh, parameters = shapes.tube(2.0, 6.0, 120, 60)
    parameters = jittered(mesh, parameters)
    angle, height = parameters.T
    mesh = TriMesh(np.c_[2.0 * np.cos(angle), 2.0 * np.sin(angle), height], mesh.faces)
    source = int(np.argmin(np.abs(height - 3.0) + np.abs(angle)))
    turn = np.abs(angle - angle[source])
    turn = np.minimum(turn, 2.0 * np.pi - turn)
    truth = np.hypot(2.0 * turn, height - height[source])
    far = truth > 0.5
    ratio = surface_distance(mesh, [source])[far] / truth[far]
    assert ratio.min() > 0.998  # chords are a little shorter than arcs
    assert np.median(ratio) < 1.03
    assert ratio.max() < 1.1
    along_edges = surface_distance(mesh, [source], graph=mesh.adjacency)[far] / truth[far]
    assert np.median(along_edges) - 1.0 > 1.5 * (np.median(ratio) - 1.0)


def test_cone_unrolls() -> None:
    half_angle = np.radians(40.0)
    mesh, parameters = shapes.cone(half_angle, 3.0, 8.0, 200, 50)
    parameters = jittered(mesh, parameters)
    angle, slant = parameters.T
    ring = slant * np.sin(half_angle)
    vertices = np.c_[ring * np.cos(angle), ring * np.sin(angle), slant * np.cos(half_angle)]
    mesh = TriMesh(vertices, mesh.faces)
    source = int(np.argmin(np.abs(slant - 5.0) + np.abs(angle)))
    turn = np.abs(angle - angle[source])
    turn = np.minimum(turn, 2.0 * np.pi - turn) * np.sin(half_angle)
    truth = np.sqrt(slant**2 + slant[source] ** 2 - 2 * slant * slant[source] * np.cos(turn))
    # The straight line on the unrolled cone must keep clear of the cut-off tip.
    clear = slant * slant[source] * np.sin(turn) > 3.1 * np.maximum(truth, 1e-9)
    clear |= np.abs(slant - slant[source]) > 0.98 * truth
    clear &= truth > 0.5
    ratio = surface_distance(mesh, [source])[clear] / truth[clear]
    assert clear.sum() > 3000
    assert ratio.min() > 0.998
    assert np.median(ratio) < 1.03
    assert ratio.max() < 1.1


@pytest.mark.parametrize("name", ["solid_14.stl", "hollow_46.stl"])
def test_real_meshes_against_the_heat_method(shared_meshes: Path, name: str) -> None:
    mesh = refine(load_mesh(shared_meshes / name).mesh, 0.25).mesh
    solver = potpourri3d.MeshHeatMethodDistanceSolver(mesh.vertices, mesh.faces.astype(np.int64))
    truth = solver.compute_distance(100)
    ours = surface_distance(mesh, [100])
    far = truth > 1.0
    error = ours[far] / truth[far] - 1.0
    assert abs(np.median(error)) < 0.04
    assert np.percentile(np.abs(error), 95) < 0.08
    assert np.corrcoef(ours, truth)[0, 1] > 0.999


@pytest.mark.parametrize("name", ["solid_11.stl", "solid_14.stl"])
def test_real_meshes_against_exact_distances(
    shared_meshes: Path, name: str, record_property: Callable[[str, object], None]
) -> None:
    """Never shorter than the exact distance on the facets, and some per cent longer."""
    mesh = refine(load_mesh(shared_meshes / name).mesh, 0.5).mesh
    ends = np.arange(0, mesh.vertex_count, 9)
    none = np.empty(0, np.int64)
    truth = igl.exact_geodesic(
        mesh.vertices, mesh.faces.astype(np.int64), np.array([100]), none, ends, none
    )
    ratio = surface_distance(mesh, [100])[ends] / np.maximum(np.asarray(truth).ravel(), 1e-9)
    ratio = ratio[np.asarray(truth).ravel() > 1.0]
    record_property("median excess", float(np.median(ratio)) - 1.0)
    record_property("p95 excess", float(np.percentile(ratio, 95)) - 1.0)
    assert ratio.min() > 1.0 - 1e-9
    assert np.median(ratio) < 1.03
    assert np.percentile(ratio, 95) < 1.06


def test_nearest_of_several_sources_counts() -> None:
    mesh = shapes.sphere()
    each = np.stack([surface_distance(mesh, [one]) for one in (3, 70, 500)])
    mask = np.zeros(mesh.vertex_count, bool)
    mask[[3, 70, 500]] = True
    assert np.allclose(surface_distance(mesh, mask), each.min(axis=0))


def test_ways_keep_within_a_mask() -> None:
    mesh = shapes.sphere(radius=5.0)
    upper = mesh.vertices[:, 2] >= 0
    top = int(mesh.vertices[:, 2].argmax())
    bottom = int(mesh.vertices[:, 2].argmin())
    distance = surface_distance(mesh, [top, bottom], within=upper)
    assert np.array_equal(np.isfinite(distance), upper)
    assert np.isinf(surface_distance(mesh, [bottom], within=upper)).all()


def test_limit() -> None:
    mesh = shapes.sphere(radius=5.0)
    near = surface_distance(mesh, [0], limit_mm=2.0)
    everywhere = surface_distance(mesh, [0])
    assert np.array_equal(np.isfinite(near), everywhere <= 2.0)


def test_other_pieces_are_not_reached() -> None:
    mesh, outer = shapes.two_spheres()
    distance = surface_distance(mesh, [int(np.flatnonzero(outer)[0])])
    assert np.array_equal(np.isfinite(distance), outer)


def test_line_across_two_faces_is_straight() -> None:
    """A square of two triangles folded by a right angle: the diagonal unfolds."""
    flat = TriMesh([[0, 0, 0], [1, 0, 0], [1, 1, 0], [0, 1, 0]], [[0, 1, 2], [0, 2, 3]])
    assert surface_distance(flat, [1])[3] == pytest.approx(np.sqrt(2.0))
    folded = TriMesh([[0, 0, 0], [0, 1, 0], [1, 0.5, 0], [0, 0.5, 1]], [[0, 2, 1], [0, 1, 3]])
    assert surface_distance(folded, [2])[3] == pytest.approx(2.0)


def test_line_that_leaves_the_two_faces_is_not_taken() -> None:
    """Where the straight line misses the shared edge, the way leads along edges."""
    kite = TriMesh([[0, 0, 0], [1, 0, 0], [2.5, 0.4, 0], [2.5, -0.4, 0]], [[0, 1, 2], [0, 3, 1]])
    way = 2.0 * np.hypot(1.5, 0.4)
    assert surface_distance(kite, [2])[3] == pytest.approx(way)


def test_graph_is_symmetric_and_holds_the_edges() -> None:
    mesh = shapes.torus()
    graph = distance_graph(mesh)
    assert abs(graph - graph.T).max() == 0
    i, j = mesh.edges.T
    assert (graph[i, j] <= mesh.edge_lengths + 1e-12).all()
    assert graph.nnz > 1.5 * mesh.adjacency.nnz


def test_shortest_path_runs_along_edges() -> None:
    mesh = shapes.sphere(radius=5.0)
    way = shortest_path(mesh, 12, 900)
    assert (way[0], way[-1]) == (12, 900)
    steps = np.asarray(mesh.adjacency[way[:-1], way[1:]]).ravel()
    assert (steps > 0).all()
    direct = surface_distance(mesh, [12], graph=mesh.adjacency)[900]
    assert steps.sum() == pytest.approx(direct)
    assert list(shortest_path(mesh, 7, 7)) == [7]


def test_shortest_path_keeps_within_a_mask() -> None:
    mesh, parameters = shapes.tube(2.0, 6.0, 60, 30)
    angle, height = parameters.T
    start = int(np.argmin(np.abs(height - 3) + np.abs(angle - 0.3)))
    end = int(np.argmin(np.abs(height - 3) + np.abs(angle - 2 * np.pi + 0.3)))
    allowed = (angle > 0.2) & (angle < 2 * np.pi - 0.2)
    around = shortest_path(mesh, start, end, within=allowed)
    assert allowed[around].all()
    assert len(around) > 3 * len(shortest_path(mesh, start, end))
    ends_only = np.zeros(mesh.vertex_count, bool)
    assert len(shortest_path(mesh, start, end, within=ends_only)) == 0


@pytest.mark.parametrize(
    ("sources", "what"),
    [([], "at least one"), ([99], "not a vertex"), ([-1], "not a vertex"), ([True], "mask")],
)
def test_wrong_sources_are_refused(sources: list[int], what: str) -> None:
    with pytest.raises(ValueError, match=what):
        surface_distance(shapes.box(), sources)


def test_what_is_near_is_as_far_as_among_everything() -> None:
    mesh = shapes.of(trimesh.creation.icosphere(subdivisions=4, radius=5.0))
    sources = np.flatnonzero(mesh.vertices[:, 2] > 4.5)
    everything = surface_distance(mesh, sources)
    near = surface_distance(mesh, sources, limit_mm=1.5)
    assert np.array_equal(np.isfinite(near), everything <= 1.5)
    np.testing.assert_allclose(near[np.isfinite(near)], everything[everything <= 1.5], rtol=1e-12)
