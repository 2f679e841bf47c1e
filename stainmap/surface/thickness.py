"""Wall thickness: the distance from one side of a wall to the other."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.surface.mesh import BoolArray, FloatArray, IndexArray, TriMesh, frozen

_PAIRS_AT_ONCE = 100_000
_LEAF = 100


def nearest_vertex_distance(
    points: FloatArray, targets: FloatArray
) -> tuple[FloatArray, IndexArray]:
    """Return the distance (N,) of each point from the nearest target point, and its index.

    Parameters
    ----------
    points, targets
        (N, 3) and (M, 3), mm; at least one target.

    Raises
    ------
    ValueError
        If there are no targets.
    """
    from scipy.spatial import cKDTree  # noqa: PLC0415 - slow to import

    if not len(targets):
        raise ValueError("there is nothing to measure the distance to")
    # Large leaves: across a wall many points are hardly farther than the nearest, in many leaves.
    tree = cKDTree(targets, leafsize=_LEAF)
    distance, index = tree.query(points, workers=-1)
    return np.asarray(distance, dtype=np.float64), np.asarray(index, dtype=np.int32)


def wall_thickness(
    mesh: TriMesh, outer: BoolArray, inner: BoolArray
) -> tuple[FloatArray, IndexArray]:
    """Return how thick the wall is at each vertex of both its sides.

    The thickness at a vertex is its distance from the other side: from the nearest vertex there,
    then from the nearest point on the triangles around that vertex. It does not overshoot where
    the wall turns, as rays along the normal do, and noise of the surface hardly moves it.

    Parameters
    ----------
    mesh
        The surface.
    outer, inner
        (V,) bool, the two sides. Vertices of neither (a rim) get no thickness.

    Returns
    -------
    thickness_mm, partner
        (V,) float64, NaN off the two sides; (V,) int32, the nearest vertex of the other side, -1
        off the two sides.

    Raises
    ------
    ValueError
        If a side is empty or the sides share a vertex.
    """
    if not outer.any() or not inner.any():
        raise ValueError("a wall needs two sides")
    if (outer & inner).any():
        raise ValueError("a vertex cannot lie on both sides of the wall")
    thickness = np.full(mesh.vertex_count, np.nan)
    partner = np.full(mesh.vertex_count, -1, dtype=np.int32)
    for here, there in ((outer, inner), (inner, outer)):
        ours, theirs = np.flatnonzero(here), np.flatnonzero(there)
        distance, index = nearest_vertex_distance(mesh.vertices[ours], mesh.vertices[theirs])
        nearest = theirs[index]
        thickness[ours] = np.minimum(distance, _triangle_distance(mesh, ours, nearest, there))
        partner[ours] = nearest
    return frozen(thickness), frozen(partner)


def _triangle_distance(
    mesh: TriMesh, points: NDArray[np.intp], nearest: NDArray[np.intp], side: BoolArray
) -> FloatArray:
    """Return the distance of vertices from the triangles of a side around their nearest vertices.

    Infinite where there is no such triangle.
    """
    incidence = mesh.vertex_faces
    start, count = incidence.indptr[nearest], np.diff(incidence.indptr)[nearest]
    result = np.full(len(points), np.inf)
    whole: BoolArray = np.asarray(side[mesh.faces].all(axis=1))
    ends = np.cumsum(count)
    begin = 0
    while begin < len(points):
        done = int(ends[begin - 1]) if begin else 0
        end = max(begin + 1, int(np.searchsorted(ends, done + _PAIRS_AT_ONCE)))
        some = slice(begin, end)
        owner = np.repeat(np.arange(begin, min(end, len(points))), count[some])
        step = np.arange(len(owner)) - np.repeat(ends[some] - count[some] - done, count[some])
        face = incidence.indices[np.repeat(start[some], count[some]) + step]
        usable = whole[face]
        owner, face = owner[usable], face[usable]
        distance = point_triangle_distance(
            mesh.vertices[points[owner]], mesh.vertices[mesh.faces[face]]
        )
        np.minimum.at(result, owner, distance)
        begin = end
    return result


def point_triangle_distance(points: FloatArray, triangles: FloatArray) -> FloatArray:
    """Return the distance (N,) of each point (N, 3) from its own triangle (N, 3, 3)."""
    a, b, c = (triangles[:, k] for k in range(3))
    squared = np.minimum(
        _segment_distance_squared(points, a, b),
        np.minimum(
            _segment_distance_squared(points, b, c), _segment_distance_squared(points, c, a)
        ),
    )
    ab, ac, ap = b - a, c - a, points - a
    normal = np.cross(ab, ac)
    size = _dot(normal, normal)
    safe = np.where(size > 0, size, 1.0)
    v = _dot(np.cross(ap, ac), normal) / safe
    w = _dot(np.cross(ab, ap), normal) / safe
    over = (size > 0) & (v >= 0) & (w >= 0) & (v + w <= 1)
    return np.asarray(np.sqrt(np.where(over, _dot(ap, normal) ** 2 / safe, squared)))


def _segment_distance_squared(points: FloatArray, a: FloatArray, b: FloatArray) -> FloatArray:
    along, offset = b - a, points - a
    length = _dot(along, along)
    share = np.clip(_dot(offset, along) / np.where(length > 0, length, 1.0), 0.0, 1.0)
    rest = offset - share[:, None] * along
    return _dot(rest, rest)


def _dot(a: FloatArray, b: FloatArray) -> FloatArray:
    return np.asarray(np.einsum("ij,ij->i", a, b))
