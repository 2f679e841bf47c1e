"""Cuts a surface into patches along its creases, so that a click can fill one of them."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import csgraph

from stainmap.surface.geodesic import Graph, surface_distance
from stainmap.surface.mesh import BoolArray, FloatArray, IndexArray, TriMesh, frozen

# A crease may be interrupted for twice this long without letting the flood through.
CLEARANCE_MM = 0.2
# Smaller islands between two creases belong to a neighbour.
LEAST_AREA_MM2 = 0.25
# A way across a wall costs its length times this power of the bend in thresholds: steep enough
# that nearly all of the price is paid on the crest. On the plane it costs a little too.
_STEEPNESS = 4
_LEAST_PRICE = 0.05


def crease_patches(
    mesh: TriMesh,
    bend: FloatArray,
    threshold_per_mm: float,
    *,
    within: BoolArray | None = None,
    clearance_mm: float = CLEARANCE_MM,
    least_area_mm2: float = LEAST_AREA_MM2,
    graph: Graph | None = None,
) -> IndexArray:
    """Return the number of the patch each vertex lies in, (V,) int32; -1 outside `within`.

    Vertices that bend more sharply than the threshold are walls. What can be flooded at a
    distance from all walls is the core of a patch; so a short gap in a crease does not leak. From
    the cores the walls are flooded by the cheapest ways [Dijkstra1959], which cost the more the
    sharper the bend they cross; so patches meet on the crest of the crease.

    Parameters
    ----------
    mesh
        The surface.
    bend
        (V,) 1/mm, as `CreaseField.bend`.
    threshold_per_mm
        A crease bends more sharply than a circle of this curvature.
    within
        (V,) bool. Patches keep to these vertices.
    clearance_mm
        Distance of the cores from walls.
    least_area_mm2
        Smaller cores start no patch of their own.
    graph
        `distance_graph` of the mesh, if it is at hand.
    """
    inside = np.ones(mesh.vertex_count, bool) if within is None else np.asarray(within)
    label = np.full(mesh.vertex_count, -1, np.int32)
    chosen = np.flatnonzero(inside)
    if not len(chosen):
        return frozen(label)
    core = _cores(mesh, bend > threshold_per_mm, inside, clearance_mm, least_area_mm2, graph)
    label[chosen] = _flooded(
        mesh.adjacency[chosen][:, chosen], bend[chosen] / threshold_per_mm, core[chosen]
    )
    return frozen(label)


def patch_at(label: IndexArray, vertex: int) -> IndexArray:
    """Return the vertices (ascending) of the patch that a vertex lies in; none outside of all."""
    own = label[vertex]
    found = np.flatnonzero(label == own) if own >= 0 else np.empty(0)
    return found.astype(np.int32)


def _cores(
    mesh: TriMesh,
    wall: BoolArray,
    inside: BoolArray,
    clearance_mm: float,
    least_area_mm2: float,
    graph: Graph | None,
) -> IndexArray:
    """Return the number of the core each vertex belongs to, -1 for none."""
    free = inside & ~wall
    walls = inside & wall
    if walls.any():
        away = surface_distance(mesh, walls, graph=graph, within=inside, limit_mm=clearance_mm)
        free &= ~np.isfinite(away)
    core = np.full(mesh.vertex_count, -1, np.int32)
    place = np.flatnonzero(free)
    if not len(place):
        return core
    count, piece = csgraph.connected_components(mesh.adjacency[place][:, place], directed=False)
    area = np.bincount(piece, mesh.vertex_areas[place], minlength=count)
    kept = area >= least_area_mm2
    core[place] = np.where(kept[piece], piece, -1)
    return core


def _flooded(
    network: sparse.csr_array[np.float64],
    relative: NDArray[np.float64],
    core: IndexArray,
) -> IndexArray:
    """Return the patch of each of n vertices that `network` (n, n), in mm, joins.

    `relative` is the bend in thresholds. Pieces without a core are patches of their own.
    """
    pairs = network.tocoo()
    one, other = pairs.row, pairs.col
    crossed = 0.5 * (relative[one] + relative[other])
    price = pairs.data * (_LEAST_PRICE + crossed**_STEEPNESS)
    priced = sparse.coo_array((price, (one, other)), shape=network.shape).tocsr()
    _, patch = csgraph.connected_components(network, directed=False)
    patch = np.asarray(patch, dtype=np.int32)
    started = np.flatnonzero(core >= 0)
    if len(started):
        _, _, source = csgraph.dijkstra(
            priced, directed=False, indices=started, min_only=True, return_predecessors=True
        )
        source = np.asarray(source)
        reached = source >= 0
        patch[~reached] += core.max() + 1
        patch[reached] = core[source[reached]]
    return patch
