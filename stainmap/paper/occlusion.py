"""How much of the sky each vertex sees, by looking at the surface from many directions."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from stainmap.paper.raster import nearest_depths
from stainmap.surface.mesh import TriMesh

FloatArray = NDArray[np.float64]

DIRECTIONS = 96
MAP_SIDE = 320
# A vertex is looked at from this many map steps above the surface, so that the facets around it,
# seen at a slant, do not hide it.
_LIFT_STEPS = 0.8


def ambient_occlusion(
    mesh: TriMesh,
    *,
    directions: int = DIRECTIONS,
    map_side: int = MAP_SIDE,
    progress: Callable[[float, str], None] | None = None,
) -> NDArray[np.float32]:
    """Return (V,) the cosine-weighted share of the hemisphere above each vertex that is open.

    1 on a sphere or plane, 0 in a closed hollow; in a bowl cut from a sphere it is everywhere the
    missing share of the sphere's area. The surface is looked at by parallel rays from directions
    spread evenly (a Fibonacci lattice), so every vertex is judged by about half of them; the
    result is good to about 0.04 at `directions` = 96.
    """
    return _open_share(mesh, mesh.vertices, mesh.vertex_normals, directions, map_side, progress)


def open_beside(
    points: FloatArray,
    normals: FloatArray,
    others: TriMesh,
    *,
    directions: int = DIRECTIONS,
    map_side: int = MAP_SIDE,
    progress: Callable[[float, str], None] | None = None,
) -> NDArray[np.float32]:
    """Return (N,) the share of the hemisphere above each point that other bodies leave open.

    As `ambient_occlusion`, but it is not the points' own surface (N, 3; normals of unit length)
    that hides.
    """
    return _open_share(others, points, normals, directions, map_side, progress)


def _open_share(
    mesh: TriMesh,
    points: FloatArray,
    normals: FloatArray,
    directions: int,
    map_side: int,
    progress: Callable[[float, str], None] | None,
) -> NDArray[np.float32]:
    """Return (N,) how much of the hemisphere above points is not hidden by a mesh."""
    radius = max(0.5 * float(np.linalg.norm(mesh.extent)), 1e-9)
    step_mm = 2.0 * radius / map_side
    lifted = points + normals * (_LIFT_STEPS * step_mm)
    seen = np.zeros(len(points))
    total = np.zeros(len(points))
    for number, towards in enumerate(_sphere_lattice(directions)):
        if progress is not None:
            progress(number / directions, "looking into the grooves")
        cosine = np.maximum(normals @ towards, 0.0)
        total += cosine
        axes = _axes(towards)
        facing = np.flatnonzero(cosine > 0.0)
        seen[facing] += cosine[facing] * _visible(mesh, lifted[facing], axes, map_side, step_mm)
    share = seen / np.maximum(total, 1e-12)
    return np.asarray(np.clip(share, 0.0, 1.0), dtype=np.float32)


def _visible(
    mesh: TriMesh, lifted: FloatArray, axes: FloatArray, map_side: int, step_mm: float
) -> FloatArray:
    """Return how far points (N, 3), a little above the surface, are seen along an axis: 0 to 1."""
    half = 0.5 * map_side

    def to_map(at: FloatArray) -> FloatArray:
        local = (at - mesh.centre) @ axes.T
        local[:, :2] /= step_mm
        local[:, 0] += half
        local[:, 1] = half - local[:, 1]
        return local

    depth = nearest_depths(
        to_map(mesh.vertices),
        mesh.faces,
        map_side,
        map_side,
        both_sides=not mesh.is_watertight,  # the back of an open sheet hides too
    )
    at = to_map(lifted)
    # The four samples around the point, weighted by how close they are: a soft edge.
    x, y = at[:, 0] - 0.5, at[:, 1] - 0.5
    column, row = np.floor(x).astype(np.intp), np.floor(y).astype(np.intp)
    share_x, share_y = x - column, y - row
    open_share = np.zeros(len(lifted))
    beside = (np.abs(x - half) >= half) | (np.abs(y - half) >= half)
    for dy, weight_y in ((0, 1.0 - share_y), (1, share_y)):
        for dx, weight_x in ((0, 1.0 - share_x), (1, share_x)):
            r = np.clip(row + dy, 0, map_side - 1)
            c = np.clip(column + dx, 0, map_side - 1)
            open_share += weight_y * weight_x * (depth[r, c] <= at[:, 2])
    open_share[beside] = 1.0
    return open_share


def _sphere_lattice(count: int) -> FloatArray:
    """Return (count, 3) unit vectors spread evenly over the sphere."""
    number = np.arange(count) + 0.5
    z = 1.0 - 2.0 * number / count
    turn = number * np.pi * (3.0 - np.sqrt(5.0))
    across = np.sqrt(1.0 - z**2)
    return np.stack([across * np.cos(turn), across * np.sin(turn), z], axis=1)


def _axes(towards: FloatArray) -> FloatArray:
    """Return (3, 3) rows right, up and `towards`."""
    least = np.eye(3)[np.abs(towards).argmin()]
    right = np.cross(least, towards)
    right /= np.linalg.norm(right)
    return np.stack([right, np.cross(towards, right), towards])
