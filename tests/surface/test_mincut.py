"""Minimum cuts against closed forms on a cylinder and against networkx."""

from __future__ import annotations

import networkx as nx
import numpy as np
import pytest

from stainmap.surface.mincut import crease_costs, minimum_cut
from tests.surface import shapes

RADIUS_MM = 2.0
LENGTH_MM = 6.0


def ends(parameters: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    height = parameters[:, 1]
    return height < 0.6, height > LENGTH_MM - 0.6


def test_shortest_cut_of_a_cylinder_is_its_circumference() -> None:
    mesh, parameters = shapes.tube(RADIUS_MM, LENGTH_MM, 60, 29)
    source, sink = ends(parameters)
    cost = crease_costs(mesh, np.zeros(mesh.vertex_count), 1.0)
    side = minimum_cut(mesh, source, sink, cost)
    assert side[source].all()
    assert not side[sink].any()
    crossed = side[mesh.edges[:, 0]] != side[mesh.edges[:, 1]]
    # Upright edges of this grid have a whole cell beside them, so their dual length is exact;
    # the diagonals add a share that does not depend on where the cut runs.
    upright = np.ptp(mesh.vertices[mesh.edges][:, :, :2], axis=1).max(axis=1) < 1e-9
    assert cost[crossed & upright].sum() == pytest.approx(2 * np.pi * RADIUS_MM, rel=0.01)
    height = parameters[mesh.edges[crossed], 1]
    assert np.ptp(height.mean(axis=1)) < 1e-9, "the cut runs level"


@pytest.mark.parametrize("ring", [8, 15, 21])
def test_cut_follows_a_crease(ring: int) -> None:
    mesh, parameters = shapes.tube(RADIUS_MM, LENGTH_MM, 60, 29)
    source, sink = ends(parameters)
    rings = np.round(parameters[:, 1] / LENGTH_MM * 29).astype(int)
    curvature = np.where((rings == ring) | (rings == ring + 1), 2.0, 0.0)
    side = minimum_cut(mesh, source, sink, crease_costs(mesh, curvature, 1.2))
    assert np.array_equal(side, rings <= ring)


def test_concave_places_are_no_cheaper() -> None:
    mesh, _ = shapes.tube(RADIUS_MM, LENGTH_MM, 20, 10)
    flat = crease_costs(mesh, np.zeros(mesh.vertex_count), 1.2)
    hollow = crease_costs(mesh, np.full(mesh.vertex_count, -3.0), 1.2)
    convex = crease_costs(mesh, np.full(mesh.vertex_count, 0.5), 1.2)
    assert np.array_equal(flat, hollow)
    assert np.allclose(convex, flat * np.exp(-0.6))


@pytest.mark.parametrize("seed", range(4))
def test_cost_is_that_of_networkx(seed: int) -> None:
    mesh = shapes.sphere(subdivisions=3)
    rng = np.random.default_rng(seed)
    cost = rng.uniform(0.05, 1.0, len(mesh.edges))
    source = mesh.vertices[:, 2] > 4.0
    sink = mesh.vertices[:, 2] < -4.0
    side = minimum_cut(mesh, source, sink, cost)
    crossed = side[mesh.edges[:, 0]] != side[mesh.edges[:, 1]]

    graph = nx.Graph()
    for (i, j), weight in zip(mesh.edges.tolist(), cost, strict=True):
        graph.add_edge(i, j, capacity=float(weight))
    for vertex in np.flatnonzero(source).tolist():
        graph.add_edge("source", vertex, capacity=float("inf"))
    for vertex in np.flatnonzero(sink).tolist():
        graph.add_edge(vertex, "sink", capacity=float("inf"))
    truth = nx.minimum_cut_value(graph, "source", "sink")
    assert cost[crossed].sum() == pytest.approx(truth, rel=1e-4)


def test_terminals_that_touch_part_there() -> None:
    mesh = shapes.sphere(subdivisions=2)
    up = mesh.vertices[:, 2] > 0
    assert np.array_equal(minimum_cut(mesh, up, ~up, np.ones(len(mesh.edges))), up)


def test_refuses_terminals_that_cannot_be() -> None:
    mesh = shapes.sphere(subdivisions=1)
    nothing = np.zeros(mesh.vertex_count, dtype=bool)
    one = nothing.copy()
    one[0] = True
    cost = np.ones(len(mesh.edges))
    with pytest.raises(ValueError, match="both sides"):
        minimum_cut(mesh, nothing, one, cost)
    with pytest.raises(ValueError, match="cannot be on both"):
        minimum_cut(mesh, one, one, cost)
