"""Ways that follow a groove or a ridge, and the band a brush paints along a line."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy import sparse
from scipy.sparse import csgraph

from stainmap.surface.brush import GATE, falloff
from stainmap.surface.crease_field import CreaseField
from stainmap.surface.geodesic import Graph, distance_graph, surface_distance
from stainmap.surface.mesh import BoolArray, FloatArray, IndexArray, TriMesh, frozen

# Where the surface bends this sharply, a way costs half of what it costs on a plane (assumed).
HALF_COST_PER_MM = 0.4
_SMOOTHING_ROUNDS = 6
_PIECES_PER_RADIUS = 8


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Tree:
    """Cheapest ways from one vertex: cost (V,) and the vertex before each, (V,)."""

    cost: FloatArray
    before: IndexArray


class CreasePaths:
    """Cheapest ways from one vertex to all others along grooves, and along ridges.

    The cost of a way is its length, divided by 1 + (bend / 0.4 per mm)^2 where the surface bends
    the way that is followed; shortest in a graph [Dijkstra1959].

    Parameters
    ----------
    mesh
        The surface.
    creases
        Where it bends.
    start
        Vertex that all ways begin at.
    within
        (V,) bool. Ways keep to these vertices; the start must be one of them.
    graph
        `distance_graph` of the mesh, if it is at hand.
    """

    def __init__(
        self,
        mesh: TriMesh,
        creases: CreaseField,
        start: int,
        *,
        within: BoolArray | None = None,
        graph: Graph | None = None,
    ) -> None:
        if not 0 <= start < mesh.vertex_count:
            raise ValueError(f"there is no vertex {start}")
        network = distance_graph(mesh) if graph is None else graph
        self._start = start
        self._trees = [
            _tree(network, bend, start, within) for bend in (creases.groove, creases.ridge)
        ]

    @property
    def start(self) -> int:
        """Vertex that all ways begin at."""
        return self._start

    def to(self, end: int) -> IndexArray:
        """Return the vertices (k,) from the start to `end`, both included; none if no way leads.

        Of the way along grooves and the one along ridges it is the cheaper one.
        """
        tree = min(self._trees, key=lambda one: float(one.cost[end]))
        if not np.isfinite(tree.cost[end]):
            return frozen(np.empty(0, np.int32))
        way = [end]
        while way[-1] != self._start:
            way.append(int(tree.before[way[-1]]))
        return frozen(np.array(way[::-1], np.int32))


def _tree(network: Graph, bend: FloatArray, start: int, within: BoolArray | None) -> _Tree:
    pairs = network.tocoo()
    one, other = pairs.row, pairs.col
    ease = 1.0 + (0.5 * (bend[one] + bend[other]) / HALF_COST_PER_MM) ** 2
    cost = pairs.data / ease
    if within is not None:
        kept = within[one] & within[other]
        one, other, cost = one[kept], other[kept], cost[kept]
    priced = sparse.coo_array((cost, (one, other)), shape=network.shape).tocsr()
    total, before = csgraph.dijkstra(
        priced, directed=False, indices=np.array([start]), return_predecessors=True
    )
    return _Tree(cost=np.asarray(total)[0], before=np.asarray(before, dtype=np.int32)[0])


def smooth_line(points: ArrayLike, rounds: int = _SMOOTHING_ROUNDS) -> FloatArray:
    """Return a line (k, 3) without the corners of a way over vertices; its ends stay."""
    line = np.array(points, dtype=np.float64)
    for _ in range(rounds):
        line[1:-1] = 0.5 * line[1:-1] + 0.25 * (line[:-2] + line[2:])
    return line


def line_band(
    mesh: TriMesh,
    way: IndexArray,
    radius_mm: float,
    softness: float,
    *,
    within: BoolArray | None = None,
    graph: Graph | None = None,
) -> tuple[IndexArray, NDArray[np.float32]]:
    """Return the vertices a round brush touches on its way along vertices, and how strongly.

    Parameters
    ----------
    mesh
        The surface.
    way
        (k,) vertices, at least one. The brush follows their smoothed line.
    radius_mm, softness
        As for `brush_vertices`; the brush does not reach through a wall.
    within
        (V,) bool. Only these vertices are touched.
    graph
        `distance_graph` of the mesh, if it is at hand.

    Returns
    -------
    vertices, weight
        (n,) int32 ascending, and (n,) float32 above 0 up to 1.
    """
    from scipy.spatial import KDTree  # noqa: PLC0415 - slow to import

    if not len(way):
        raise ValueError("a line has at least one vertex")
    if not (np.isfinite(radius_mm) and radius_mm > 0):
        raise ValueError(f"radius_mm must be a positive number, not {radius_mm}")
    if not 0.0 <= softness <= 1.0:
        raise ValueError(f"softness must lie between 0 and 1, not {softness}")
    line = _fine(smooth_line(mesh.vertices[way]), radius_mm / _PIECES_PER_RADIUS)
    along = surface_distance(mesh, way, graph=graph, within=within, limit_mm=GATE * radius_mm)
    near = np.flatnonzero(np.isfinite(along))
    away, _ = KDTree(line).query(mesh.vertices[near])
    # A vertex the smoothed line passes at a distance still lies under the brush.
    on_way = np.isin(near, way)
    share = np.where(on_way, np.minimum(away, 0.5 * radius_mm), away) / radius_mm
    weight = np.where(share <= 1.0, falloff(share, softness), np.float32(0.0))
    touched = weight > 0.0
    return frozen(near[touched].astype(np.int32)), weight[touched].astype(np.float32)


def _fine(line: FloatArray, step_mm: float) -> FloatArray:
    """Return the line with points at most a step apart."""
    length = np.linalg.norm(np.diff(line, axis=0), axis=1)
    run = np.concatenate([[0.0], np.cumsum(length)])
    count = max(int(np.ceil(run[-1] / step_mm)) + 1, 2)
    at = np.linspace(0.0, run[-1], count)
    return np.stack([np.interp(at, run, line[:, axis]) for axis in range(3)], axis=1)
