"""The cheapest closed line that parts a surface in two: a minimum cut along its creases."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import csgraph

from stainmap.surface.mesh import BoolArray, FloatArray, TriMesh

# The flow is counted in whole numbers of 31 bits; all edges together stay below this many units.
_UNITS = 2**30


def crease_costs(mesh: TriMesh, curvature_per_mm: FloatArray, preference_mm: float) -> FloatArray:
    """Return what it costs a line to cross each edge: its length there, cheaper along creases.

    A line that parts the two ends of an edge runs along the dual edge; its length is taken as
    the area beside the edge over the edge's length. Where the surface is convex that length
    counts exp(-k H) times, so that the cheapest line follows the crease.

    Parameters
    ----------
    mesh
        The surface.
    curvature_per_mm
        (V,) mean curvature, positive where convex, 1/mm.
    preference_mm
        k, mm: how much the line prefers creases. At 0 it is simply the shortest line.

    Returns
    -------
    cost
        (E,) mm.
    """
    beside = np.bincount(
        mesh.face_edges.ravel(), np.repeat(mesh.face_areas, 3), minlength=len(mesh.edges)
    )
    crossing = beside / np.maximum(mesh.edge_lengths, 1e-6)
    convex = np.maximum(curvature_per_mm, 0.0)[mesh.edges].mean(axis=1)
    return np.asarray(crossing * np.exp(-preference_mm * convex))


def minimum_cut(mesh: TriMesh, source: BoolArray, sink: BoolArray, cost: FloatArray) -> BoolArray:
    """Return the side of the source when the surface is cut in two at the least cost.

    The cut of a graph with two terminals by maximum flow [Boykov2004]: of all ways to part every
    source vertex from every sink vertex, the one whose parted edges cost least. Vertices that
    touch neither terminal go with the sink.

    Parameters
    ----------
    mesh
        The surface.
    source, sink
        (V,) vertices that must end on either side; they may not share one.
    cost
        (E,) cost of parting the ends of each edge, not negative.

    Returns
    -------
    side
        (V,) True on the source's side.

    Raises
    ------
    ValueError
        If source or sink is empty, or a vertex is in both.
    """
    if not source.any() or not sink.any():
        raise ValueError("a cut needs vertices on both sides")
    if bool((source & sink).any()):
        raise ValueError("a vertex cannot be on both sides")
    # Both terminals shrink to one node each; what is between them keeps its numbers.
    free = np.flatnonzero(~source & ~sink)
    count = len(free) + 2
    at_source, at_sink = count - 2, count - 1
    node = np.empty(mesh.vertex_count, dtype=np.int32)
    node[free] = np.arange(len(free), dtype=np.int32)
    node[source], node[sink] = at_source, at_sink
    side = source.copy()
    i, j = node[mesh.edges].T
    crossing = i != j
    if not crossing.any():
        return side
    graph = _capacities(i[crossing], j[crossing], cost[crossing], count)
    flow = csgraph.maximum_flow(graph, at_source, at_sink).flow
    spare = sparse.csr_array(graph - flow)
    spare.data = (spare.data > 0).astype(np.int32)
    spare.eliminate_zeros()
    reached = csgraph.breadth_first_order(spare, at_source, return_predecessors=False)
    side[free[reached[reached < len(free)]]] = True
    return side


def _capacities(
    i: NDArray[np.int32], j: NDArray[np.int32], cost: FloatArray, count: int
) -> sparse.csr_array[np.int32]:
    """Return the graph with whole-number capacities in both directions."""
    total = max(float(cost.sum()), 1e-12)
    units = np.maximum(np.rint(cost / total * _UNITS), 1).astype(np.int32)
    both = (np.concatenate([units, units]), (np.concatenate([i, j]), np.concatenate([j, i])))
    return sparse.coo_array(both, shape=(count, count)).tocsr()
