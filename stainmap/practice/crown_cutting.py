"""Cutting a triangulated surface open along a level line, with well-shaped triangles left."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
IndexArray = NDArray[np.int32]

# A vertex this close to the line, as a share of an edge that crosses it, is moved onto it.
_SNAP = 0.35


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cut:
    """What is left of a surface, and the line along which it was cut.

    Parameters
    ----------
    vertices
        (V, 3) mm. Those that were there before keep their order.
    faces
        (F, 3).
    origin
        (V, 2) int32. The two former vertices on whose edge a vertex lies; (i, i) for a former one.
    loop
        (L,) int32. The line, in the order of the azimuths that were asked for.
    points
        (L, 3) its places.
    """

    vertices: FloatArray
    faces: IndexArray
    origin: IndexArray
    loop: IndexArray
    points: FloatArray


def cut_open(
    vertices: FloatArray,
    faces: IndexArray,
    level: FloatArray,
    azimuth: Callable[[FloatArray], FloatArray],
) -> Cut:
    """Remove the part of a surface where a level is negative.

    Parameters
    ----------
    vertices, faces
        (V, 3) and (F, 3).
    level
        (V,) the level; taken as linear along edges.
    azimuth
        (N, 3) points to (N,) directions, by which the line is put in order.

    Raises
    ------
    ValueError
        If the line is not one loop with ascending azimuths.
    """
    vertices, level = _snapped(vertices, faces, level)
    above, below = level > 0.0, level < 0.0
    some_above, some_below = above[faces].any(axis=1), below[faces].any(axis=1)
    kept = [faces[some_above & ~some_below]]
    crossing = faces[some_above & some_below]
    # Turn every triangle so that its first corner is the one alone on its side, or on the line.
    sign = np.sign(level[crossing])
    alone = np.where((sign == 0).any(axis=1), (sign == 0).argmax(axis=1), _odd_one(sign))
    crossing = np.take_along_axis(crossing, (alone[:, None] + np.arange(3)) % 3, axis=1)
    new: dict[tuple[int, int], int] = {}
    origin = [(k, k) for k in range(len(vertices))]

    def between(one: int, other: int) -> int:
        key = (min(one, other), max(one, other))
        if key not in new:
            new[key] = len(origin)
            origin.append(key)
        return new[key]

    pieces: list[tuple[int, int, int]] = []
    for a, b, c in crossing.tolist():
        if level[a] == 0.0:
            middle = between(b, c)
            pieces.append((a, b, middle) if level[b] > 0.0 else (a, middle, c))
        elif level[a] > 0.0:
            pieces.append((a, between(a, b), between(a, c)))
        else:
            first, last = between(a, b), between(a, c)
            pieces += [(first, b, c), (first, c, last)]
    kept.append(np.array(pieces, dtype=np.int32).reshape(-1, 3))
    pairs = np.array(origin, dtype=np.int32)
    i, j = pairs.T
    part = np.where(i == j, 0.0, level[i] / np.where(i == j, 1.0, level[i] - level[j]))
    points = vertices[i] + part[:, None] * (vertices[j] - vertices[i])
    on_line = np.concatenate([level == 0.0, np.ones(len(pairs) - len(level), dtype=np.bool_)])
    return _packed(points, np.concatenate(kept), pairs, on_line, azimuth)


def _odd_one(sign: FloatArray) -> NDArray[np.intp]:
    """Return which of three signs (N, 3) differs from the two others."""
    return np.asarray((sign != np.sign(sign.sum(axis=1))[:, None]).argmax(axis=1))


def _snapped(
    vertices: FloatArray, faces: IndexArray, level: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Return vertices and level after moving vertices close to the line along an edge onto it."""
    i = faces.ravel()
    j = np.roll(faces, -1, axis=1).ravel()
    i, j = np.concatenate([i, j]), np.concatenate([j, i])
    crossing = level[i] * level[j] < 0.0
    i, j = i[crossing], j[crossing]
    part = level[i] / (level[i] - level[j])
    near = part < _SNAP
    i, j, part = i[near], j[near], part[near]
    order = np.lexsort((j, part, i))
    first = np.append(True, np.diff(i[order]) > 0) if len(order) else order
    order = order[first]
    moved, level = vertices.copy(), level.copy()
    i, j = i[order], j[order]
    moved[i] += part[order, None] * (vertices[j] - vertices[i])
    level[i] = 0.0
    return moved, level


def _packed(
    points: FloatArray,
    faces: IndexArray,
    origin: IndexArray,
    on_line: NDArray[np.bool_],
    azimuth: Callable[[FloatArray], FloatArray],
) -> Cut:
    """Drop unused vertices and put the line in order."""
    used = np.zeros(len(points), dtype=np.bool_)
    used[faces] = True
    number = np.cumsum(used) - 1
    points, origin, on_line = points[used], origin[used], on_line[used]
    faces = number[faces].astype(np.int32)
    start, end = faces.ravel(), np.roll(faces, -1, axis=1).ravel()
    line = on_line[start] & on_line[end]
    forward = set(zip(start[line].tolist(), end[line].tolist(), strict=True))
    following = {a: b for a, b in forward if (b, a) not in forward}
    loop = np.array(sorted(following), dtype=np.int32)
    loop = loop[np.argsort(azimuth(points[loop]), kind="stable")]
    after = dict(zip(loop.tolist(), np.roll(loop, -1).tolist(), strict=True))
    if after != following and {b: a for a, b in after.items()} != following:
        raise ValueError("the cut is not one loop around its middle")
    return Cut(vertices=points, faces=faces, origin=origin, loop=loop, points=points[loop])
