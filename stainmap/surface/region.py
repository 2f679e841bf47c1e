"""Regions of a surface made larger, smaller and smoother, by lengths along the surface."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy.sparse import csgraph

from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.geodesic import Graph, distance_graph, surface_distance
from stainmap.surface.mesh import BoolArray, FloatArray, IndexArray, TriMesh, frozen

# Levels at which a soft mask is moved; between them it is interpolated.
_LEVELS = 8
_LEAST = 1e-3
# How far from its border a region's distance is told, in smoothing lengths.
_TOLD_IN_LENGTHS = 6.0


def grown(
    mesh: TriMesh,
    region: BoolArray,
    by_mm: float,
    *,
    within: BoolArray | None = None,
    graph: Graph | None = None,
) -> BoolArray:
    """Return a region (V,) made larger by a length along the surface; ways keep to `within`.

    Raises
    ------
    ValueError
        If the length is negative.
    """
    if not by_mm >= 0.0:
        raise ValueError(f"a region grows by a length, not by {by_mm} mm")
    start = region if within is None else region & within
    if not start.any() or by_mm == 0.0:
        return np.array(region)
    away = surface_distance(mesh, start, graph=graph, within=within, limit_mm=by_mm)
    return np.asarray(region | (away <= by_mm))


def shrunk(
    mesh: TriMesh,
    region: BoolArray,
    by_mm: float,
    *,
    within: BoolArray | None = None,
    graph: Graph | None = None,
) -> BoolArray:
    """Return a region made smaller: what surrounds it grows. At the edge of `within` it stays."""
    around = ~region if within is None else within & ~region
    return np.asarray(region & ~grown(mesh, around, by_mm, within=within, graph=graph))


def dilated(
    mesh: TriMesh,
    share: NDArray[np.float32],
    by_mm: float,
    *,
    within: BoolArray | None = None,
    graph: Graph | None = None,
) -> NDArray[np.float32]:
    """Return a soft mask (V,), 0 to 1, of which every level has grown by a length.

    A ramp at its edge is moved and keeps its width.
    """
    network = distance_graph(mesh) if graph is None else graph
    result = np.array(share, dtype=np.float32)
    # The last level that has reached a place, and the distance it came over.
    reached_at = np.full(len(share), -1)
    reached_mm = np.zeros(len(share))
    levels = np.concatenate([[_LEAST], np.arange(1, _LEVELS + 1) / _LEVELS])
    for number, level in enumerate(levels):
        core = share >= level
        if within is not None:
            core &= within
        if not core.any():
            break
        away = surface_distance(mesh, core, graph=network, within=within, limit_mm=2.0 * by_mm)
        reached = away <= by_mm
        between = ~reached & (reached_at == number - 1) & (reached_at >= 0) & np.isfinite(away)
        part = (by_mm - reached_mm[between]) / (away[between] - reached_mm[between])
        value = levels[number - 1] + part * (level - levels[number - 1])
        result[between] = np.maximum(result[between], value)
        result[reached] = np.maximum(result[reached], np.float32(level))
        reached_at[reached], reached_mm[reached] = number, away[reached]
    return np.asarray(np.clip(result, 0.0, 1.0), dtype=np.float32)


def eroded(
    mesh: TriMesh,
    share: NDArray[np.float32],
    by_mm: float,
    *,
    within: BoolArray | None = None,
    graph: Graph | None = None,
) -> NDArray[np.float32]:
    """Return a soft mask of which every level has become smaller by a length."""
    rest = dilated(mesh, np.float32(1.0) - share, by_mm, within=within, graph=graph)
    return np.asarray(np.minimum(share, np.float32(1.0) - rest))


def nearest_labels(
    mesh: TriMesh,
    labels: NDArray[np.uint8],
    open_places: BoolArray,
    *,
    within: BoolArray | None = None,
    graph: Graph | None = None,
) -> NDArray[np.uint8]:
    """Return labels (V,) in which open places take that of the nearest other one along the surface.

    Places that no way leads to keep theirs.
    """
    network = distance_graph(mesh) if graph is None else graph
    inside = np.ones(mesh.vertex_count, bool) if within is None else within
    chosen = np.flatnonzero(inside)
    known = np.flatnonzero(~open_places[chosen])
    result = labels.copy()
    if not len(known):
        return result
    _, _, source = csgraph.dijkstra(
        network[chosen][:, chosen],
        directed=False,
        indices=known,
        min_only=True,
        return_predecessors=True,
    )
    source = np.asarray(source)
    taken = open_places[chosen] & (source >= 0)
    result[chosen[taken]] = labels[chosen[source[taken]]]
    return result


def border_distance(
    mesh: TriMesh,
    region: BoolArray,
    limit_mm: float,
    *,
    within: BoolArray | None = None,
    graph: Graph | None = None,
) -> FloatArray:
    """Return the distance (V,) from the region's border, mm: positive inside, negative outside.

    The border runs through the middles of the edges that cross it. Farther than the limit, and
    where there is no border, the limit is given.
    """
    network = distance_graph(mesh) if graph is None else graph
    around = ~region if within is None else within & ~region
    half_edge = 0.5 * float(np.median(mesh.edge_lengths)) if len(mesh.edges) else 0.0
    result = np.where(region, limit_mm, -limit_mm).astype(np.float64)
    for source, side, sign in ((around, region, 1.0), (region, around, -1.0)):
        if not source.any():
            continue
        reach = limit_mm + half_edge
        away = surface_distance(mesh, source, graph=network, within=within, limit_mm=reach)
        distance = np.maximum(np.where(np.isfinite(away), away, reach) - half_edge, 0.0)
        result[side] = sign * distance[side]
    return frozen(result)


def smooth_region(
    operator: SurfaceOperator,
    region: BoolArray,
    length_mm: float,
    *,
    within: BoolArray | None = None,
    graph: Graph | None = None,
) -> BoolArray:
    """Return a region (V,) with a smoother border and the same area.

    Its distance from the border is smoothed over a length and cut where the area comes out as
    before, so that narrow bands stay; smoothing the mask itself would swallow them.

    Parameters
    ----------
    operator
        Of the surface; restricted to `within`, if that is given.
    region
        What is smoothed.
    length_mm
        Wiggles of the border shorter than this go.
    within
        (V,) bool. The region is a part of it and stays in it.
    graph
        `distance_graph` of the mesh, if it is at hand.
    """
    mesh = operator.mesh
    inside = np.ones(mesh.vertex_count, bool) if within is None else within
    if not region.any() or not (inside & ~region).any():
        return np.array(region)
    limit = _TOLD_IN_LENGTHS * length_mm
    distance = border_distance(mesh, region, limit, within=within, graph=graph)
    smooth = operator.smooth(np.where(inside, distance, 0.0), length_mm)
    order = np.flatnonzero(inside)
    order = order[np.argsort(-smooth[order], kind="stable")]
    area = mesh.vertex_areas
    wanted = float(area[region].sum())
    taken = int(np.searchsorted(np.cumsum(area[order]), wanted)) + 1
    result = np.zeros(mesh.vertex_count, bool)
    result[order[:taken]] = True
    return result


def border_edges(region: BoolArray, edges: IndexArray) -> IndexArray:
    """Return the edges (k, 2) of which one end lies in the region."""
    return np.asarray(edges[region[edges[:, 0]] != region[edges[:, 1]]])
