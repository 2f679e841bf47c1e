"""Closing borders with a cap: triangles between closed outlines, holes left open."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import Delaunay, QhullError, cKDTree

from stainmap.errors import MeshFileError
from stainmap.surface.mesh import FloatArray, IndexArray, TriMesh

# Points inside a cap keep this share of their spacing away from its border, so that no border
# edge has one within the circle around it and each is an edge of the triangulation.
_CLEAR = 0.6
_MOST_INSIDE = 20_000
_AREA_SLACK = 1e-6
# A triangle below this share of the cap has no area but what rounding gives it.
_SLIVER = 1e-10
_PEELED = 20


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cap:
    """Triangles that close one or more borders.

    Parameters
    ----------
    border
        (B,) int32. Vertices of the mesh, all borders one after the other.
    extra
        (E, 3) points inside the cap.
    faces
        (T, 3) int32. Indices into border and extra, in this order; wound so that the mesh and its
        cap fit together.
    """

    border: IndexArray
    extra: FloatArray
    faces: IndexArray


def cap_of(mesh: TriMesh, loops: Sequence[IndexArray]) -> Cap:
    """Return a cap between border loops that lie near one plane; a loop within another is a hole.

    The triangulation is Delaunay's, with points inside so that triangles are even; where that
    misses a border edge, ears are clipped instead.

    Parameters
    ----------
    mesh
        The open mesh.
    loops
        Its borders, each (K,) vertices along the winding of its faces.

    Raises
    ------
    MeshFileError
        If the borders cross each other.
    """
    border = np.concatenate(loops)
    points = mesh.vertices[border]
    middle = points.mean(axis=0)
    # The cap's outline runs against the border, so minus its vector area points out of the cap.
    vector = np.zeros(3)
    for loop in loops:
        ring = mesh.vertices[loop] - middle
        vector -= 0.5 * np.cross(ring, np.roll(ring, -1, axis=0)).sum(axis=0)
    area = float(np.linalg.norm(vector))
    if area == 0.0:
        raise _not_closed()
    normal = vector / area
    helper = np.zeros(3)
    helper[int(np.argmin(np.abs(normal)))] = 1.0
    right = np.cross(helper, normal)
    right /= np.linalg.norm(right)
    up = np.cross(normal, right)
    flat = (points - middle) @ np.stack([right, up], axis=1)
    rings, start = [], 0
    for loop in loops:
        rings.append(np.arange(start, start + len(loop))[::-1])
        start += len(loop)
    extra_flat = _inside_points(flat, rings)
    faces = _delaunay(flat, extra_flat, rings, area)
    if faces is None:
        extra_flat = np.zeros((0, 2))
        faces = _clipped(flat, rings, area)
    if faces is None:
        raise _not_closed()
    level = (points - middle) @ normal
    extra = middle + extra_flat @ np.stack([right, up])
    if len(extra_flat) and float(np.ptp(level)) > 0.0:
        extra = extra + _level_at(flat, level, extra_flat)[:, None] * normal
    return Cap(border=border.astype(np.int32), extra=extra, faces=faces.astype(np.int32))


def _not_closed() -> MeshFileError:
    return MeshFileError(
        "The cut cannot be closed: its outlines cross each other.",
        advice="Leave it open, or move the cut a little.",
    )


def _level_at(flat: FloatArray, level: FloatArray, inside: FloatArray) -> FloatArray:
    """Return how far points inside lie off the plane: the borders' by inverse squared distance."""
    lift = np.empty(len(inside))
    for chunk in np.array_split(np.arange(len(inside)), max(1, len(inside) // 512)):
        squared = ((inside[chunk, None] - flat[None]) ** 2).sum(axis=2)
        weight = 1.0 / np.maximum(squared, 1e-12)
        lift[chunk] = (weight @ level) / weight.sum(axis=1)
    return lift


def _segments(rings: Sequence[NDArray[np.int64]]) -> NDArray[np.int64]:
    return np.concatenate([np.c_[ring, np.roll(ring, -1)] for ring in rings])


def _within(
    places: FloatArray, flat: FloatArray, rings: Sequence[NDArray[np.int64]]
) -> NDArray[np.bool_]:
    """Return which places lie within an odd number of outlines."""
    inside = np.zeros(len(places), dtype=np.bool_)
    x, y = places.T
    for i, j in _segments(rings):
        (ax, ay), (bx, by) = flat[i], flat[j]
        if ay == by:
            continue
        crossed = (ay > y) != (by > y)
        inside ^= crossed & (x < ax + (y - ay) / (by - ay) * (bx - ax))
    return inside


def _inside_points(flat: FloatArray, rings: Sequence[NDArray[np.int64]]) -> FloatArray:
    """Return a triangular lattice (E, 2) within the outlines, clear of them."""
    i, j = _segments(rings).T
    length = np.linalg.norm(flat[j] - flat[i], axis=1)
    low, high = flat.min(axis=0), flat.max(axis=0)
    least = float(np.sqrt(np.prod(high - low) / _MOST_INSIDE))
    spacing = max(float(length.max()), least)
    if spacing <= 0.0:
        return np.zeros((0, 2))
    rows = np.arange(low[1], high[1], spacing * np.sqrt(0.75))
    columns = np.arange(low[0], high[0], spacing)
    x = columns[None] + np.where(np.arange(len(rows)) % 2, 0.5 * spacing, 0.0)[:, None]
    lattice = np.stack([x, np.broadcast_to(rows[:, None], x.shape)], axis=2).reshape(-1, 2)
    if not len(lattice):
        return np.zeros((0, 2))
    away, _ = cKDTree(np.concatenate([flat, 0.5 * (flat[i] + flat[j])])).query(lattice)
    lattice = lattice[away > (_CLEAR + 0.25) * spacing]
    return lattice[_within(lattice, flat, rings)]


def _delaunay(
    flat: FloatArray,
    extra: FloatArray,
    rings: Sequence[NDArray[np.int64]],
    area: float,
) -> NDArray[np.int64] | None:
    """Return the triangles within the outlines, or None if one of their edges is none of them."""
    points = np.concatenate([flat, extra])
    try:
        triangles = Delaunay(points).simplices.astype(np.int64)
    except QhullError:
        return None
    triangles = triangles[_within(points[triangles].mean(axis=1), flat, rings)]
    if not len(triangles):
        return None
    turned = _twice_area(points, triangles) < 0.0
    triangles[turned] = triangles[turned][:, ::-1]
    wanted = np.sort(_segments(rings) @ [len(points), 1])
    for _ in range(_PEELED):
        directed = np.stack([triangles[:, [k, (k + 1) % 3]] for k in range(3)], axis=1)
        key = directed @ [len(points), 1]
        once = ~np.isin(key, directed[:, :, ::-1] @ [len(points), 1])
        if np.array_equal(np.sort(key[once]), wanted):
            return triangles if _fills(points, triangles, area) else None
        # Of points in a straight line outside there may be slivers without area: peel them off.
        stray = (once & ~np.isin(key, wanted)).any(axis=1)
        stray &= _twice_area(points, triangles) < _SLIVER * area
        if not stray.any():
            return None
        triangles = triangles[~stray]
    return None


def _twice_area(points: FloatArray, triangles: NDArray[np.int64]) -> FloatArray:
    a, b, c = (points[triangles[:, k]] for k in range(3))
    u, v = b - a, c - a
    return np.asarray(u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0])


def _fills(points: FloatArray, triangles: NDArray[np.int64], area: float) -> bool:
    doubled = _twice_area(points, triangles)
    return bool(
        (doubled > -_AREA_SLACK * area).all()
        and abs(0.5 * float(doubled.sum()) - area) < _AREA_SLACK * area
    )


def _clipped(
    flat: FloatArray, rings: Sequence[NDArray[np.int64]], area: float
) -> NDArray[np.int64] | None:
    """Return triangles by clipping ears, holes joined to their outline by a bridge; or None."""
    outer: list[NDArray[np.int64]] = []
    holes: list[NDArray[np.int64]] = []
    for number, ring in enumerate(rings):
        others = [one for k, one in enumerate(rings) if k != number]
        depth = sum(int(_within(flat[ring[:1]], flat, [one])[0]) for one in others)
        (holes if depth % 2 else outer).append(ring)
    triangles: list[tuple[int, int, int]] = []
    for ring in outer:
        own = [hole for hole in holes if _within(flat[hole[:1]], flat, [ring])[0]]
        chain = ring.tolist()
        for hole in sorted(own, key=lambda one: -float(flat[one, 0].max())):
            chain = _bridged(flat, chain, hole.tolist())
        triangles += _ears(flat, chain)
    found = np.array(triangles, dtype=np.int64).reshape(-1, 3)
    return found if len(found) and _fills(flat, found, area) else None


def _bridged(flat: FloatArray, chain: list[int], hole: list[int]) -> list[int]:
    """Return the chain with a hole joined in where both are nearest to each other."""
    away = ((flat[chain][:, None] - flat[hole][None]) ** 2).sum(axis=2)
    k, turn = divmod(int(away.argmin()), len(hole))
    return [*chain[: k + 1], *hole[turn:], *hole[: turn + 1], *chain[k:]]


def _ears(flat: FloatArray, chain: list[int]) -> list[tuple[int, int, int]]:
    """Clip ears off a simple polygon until nothing is left, the fattest of the first few first."""
    triangles = []
    chain = list(chain)
    while len(chain) > 2:
        ear = next((k for k in range(len(chain)) if _is_ear(flat, chain, k)), None)
        if ear is None:
            break
        a, b, c = chain[ear - 1], chain[ear], chain[(ear + 1) % len(chain)]
        if len({a, b, c}) == 3:
            triangles.append((a, b, c))
        del chain[ear]
    return triangles


def _is_ear(flat: FloatArray, chain: list[int], k: int) -> bool:
    a, b, c = chain[k - 1], chain[k], chain[(k + 1) % len(chain)]
    p, q, r = flat[a], flat[b], flat[c]
    if a == c:
        return True
    if (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]) <= 0.0:
        return False
    others = np.array([v for v in chain if v not in (a, b, c)], dtype=np.int64)
    if not len(others):
        return True
    x = flat[others]
    sides = [
        (t[0] - s[0]) * (x[:, 1] - s[1]) - (t[1] - s[1]) * (x[:, 0] - s[0])
        for s, t in ((p, q), (q, r), (r, p))
    ]
    return not bool((np.stack(sides) >= 0.0).all(axis=0).any())
