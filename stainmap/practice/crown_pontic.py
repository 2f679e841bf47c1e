"""The tissue side of a pontic: a smooth egg-shaped base under a tooth's outer surface."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import cKDTree

from stainmap.practice.crown_meshing import IndexArray, Shell, mean_of_neighbours, zipped
from stainmap.practice.crown_outline import smooth_step

FloatArray = NDArray[np.float64]

_BULGE_MM = 1.6
_FULLNESS = 0.65
# The belt to either side of the border that is rounded, and how often.
_BELT_MM = 0.9
_ROUNDS_PER_MM2 = 0.35


def close_below(outside: Shell, edge_mm: float) -> tuple[FloatArray, IndexArray]:
    """Return vertices and faces of an outer surface closed below its border.

    The vertices of the outer surface come first. The base hangs from the border as an egg: upright
    at the border, lowest in the middle, so that it continues the walls without an edge.

    Parameters
    ----------
    outside
        The outer surface, its border first.
    edge_mm
        Wanted length of edges.
    """
    count = outside.border_count
    ring = outside.vertices[:count]
    azimuth = outside.border_azimuth
    centre = ring.mean(axis=0)
    radius = float(np.hypot(*(ring - centre)[:, :2].T).mean())
    profile = np.sin(np.linspace(0.0, np.pi / 2, 200))[::-1]
    drops = _drop(profile)
    arc = np.concatenate([[0.0], np.cumsum(np.hypot(radius * np.diff(profile), np.diff(drops)))])
    rows = max(4, round(float(arc[-1]) / (0.88 * edge_mm)))
    vertices, faces = [outside.vertices], [outside.faces]
    start = len(outside.vertices)
    before: tuple[int, FloatArray] = (0, azimuth)
    for row in range(1, rows + 1):
        rho = float(np.interp(row / rows * arc[-1], arc, profile)) if row < rows else 0.0
        number = max(6, round(count * rho)) if row < rows else 1
        at = (np.arange(number) + 0.5 * (row % 2)) / number * 2 * np.pi
        rim = np.stack(
            [np.interp(at, azimuth, ring[:, k], period=2 * np.pi) for k in range(3)], axis=1
        )
        points = centre + (rim - centre) * rho
        level = centre[2] * (1.0 - rho * rho) + rim[:, 2] * rho * rho
        points[:, 2] = level - _drop(np.array(rho))
        here = (start, at)
        faces.append(zipped(*before, *here)[:, ::-1].astype(np.int32))
        vertices.append(points)
        start += number
        before = here
    points, triangles = np.concatenate(vertices), np.concatenate(faces)
    return _rounded(points, triangles, ring, edge_mm), triangles


def _drop(rho: FloatArray) -> FloatArray:
    """Return how far the base hangs below its border, at shares of the border's radius."""
    return np.asarray(_BULGE_MM * (1.0 - rho * rho) ** _FULLNESS)


def _rounded(
    vertices: FloatArray, faces: IndexArray, ring: FloatArray, edge_mm: float
) -> FloatArray:
    """Return the vertices with the belt along the border evened out."""
    distance = np.asarray(cKDTree(ring).query(vertices)[0], dtype=np.float64)
    weight = (0.5 * (1.0 - smooth_step(distance, 0.0, _BELT_MM)))[:, None]
    neighbours = mean_of_neighbours(faces, len(vertices))
    for _ in range(max(2, round(_ROUNDS_PER_MM2 / edge_mm**2))):
        vertices = vertices + weight * (neighbours @ vertices - vertices)
    return vertices
