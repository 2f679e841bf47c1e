"""Welding: which points of a file are one vertex."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import csgraph

from stainmap.surface.mesh import FloatArray, IndexArray

# Nearer than this share of the diagonal, points are one: 1e-4 mm on 15 mm, in whatever unit.
NEAR_SHARE = 7e-6
# But never farther than this share of a typical edge, should the file hold a stray far point.
NEAR_EDGE_SHARE = 0.01

# With more near pairs than this, crowds of so many points are joined without looking at every pair
# of them, first the largest.
_MOST_PAIRS = 50_000_000
_CROWDS = (64, 8, 1)

_MULTIPLIERS = tuple(np.uint32(odd) for odd in (0x9E3779B1, 0x85EBCA77, 0xC2B2AE3D))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Welded:
    """Distinct points and where each point of the file went.

    Parameters
    ----------
    points
        (W, 3) float64, in order of first appearance, with the coordinates of that appearance.
    index
        (N,) int32. The distinct point of each point of the file.
    joined
        How many points lay almost, but not exactly, on another one.
    """

    points: FloatArray
    index: IndexArray
    joined: int


def weld(points: NDArray[Any], tolerance: float) -> Welded:
    """Make one vertex of all points that are equal, or nearer than a tolerance.

    Parameters
    ----------
    points
        (N, 3) float32 or float64, finite.
    tolerance
        In the unit of the points; 0 for equal points only. Nearness is passed on: a chain of near
        points becomes one.
    """
    first, index = exact_groups(points)
    distinct = points[first].astype(np.float64)
    pairs = near_pairs(distinct, tolerance) if tolerance > 0 else np.empty((0, 2), dtype=np.intp)
    if not len(pairs):
        return Welded(points=distinct, index=index, joined=0)
    count = len(distinct)
    graph = sparse.coo_array((np.ones(len(pairs), np.int8), tuple(pairs.T)), shape=(count, count))
    _, label = csgraph.connected_components(graph, directed=False)
    _, representative, merged = np.unique(label, return_index=True, return_inverse=True)
    order = np.argsort(representative, kind="stable")
    rank = np.empty(len(order), dtype=np.int32)
    rank[order] = np.arange(len(order), dtype=np.int32)
    return Welded(
        points=distinct[representative[order]],
        index=rank[merged][index],
        joined=count - len(order),
    )


def exact_groups(points: NDArray[Any]) -> tuple[IndexArray, IndexArray]:
    """Find equal points with a hash table.

    Parameters
    ----------
    points
        (N, 3) float32 or float64. -0 equals 0.

    Returns
    -------
    first, group
        The first of each group of equal points, ascending, and the group (N,) of every point.
    """
    count = len(points)
    if count == 0:
        return np.empty(0, dtype=np.int32), np.empty(0, dtype=np.int32)
    word = np.uint32 if points.dtype == np.float32 else np.uint64
    # Adding zero turns -0 into 0; after that equal numbers have equal bits.
    columns = [(points[:, k] + points.dtype.type(0)).view(word) for k in range(3)]
    bits = max(1, (count - 1).bit_length())
    table = np.empty(1 << bits, dtype=np.int32)
    everything = np.arange(count, dtype=np.int32)

    slot = _slots(columns, bits, 0)
    # Of several writes to one slot the last one stays, so backwards the first point stays.
    table[slot[::-1]] = everything[::-1]
    first_equal = table[slot]
    same = columns[0] == columns[0][first_equal]
    same &= columns[1] == columns[1][first_equal]
    same &= columns[2] == columns[2][first_equal]
    left = np.flatnonzero(~same)
    turn = 0
    while len(left):  # points whose slot was taken by another point
        turn += 1
        mine = [column[left] for column in columns]
        slot = _slots(mine, bits, turn)
        table[slot[::-1]] = left[::-1]
        found = table[slot]
        same = mine[0] == columns[0][found]
        same &= mine[1] == columns[1][found]
        same &= mine[2] == columns[2][found]
        first_equal[left[same]] = found[same]
        left = left[~same]
    is_first = first_equal == everything
    number = np.cumsum(is_first, dtype=np.int32) - 1
    return np.flatnonzero(is_first).astype(np.int32), number[first_equal]


def _slots(columns: list[NDArray[Any]], bits: int, turn: int) -> NDArray[np.uint32]:
    """Scramble the bits of points into the number of a table slot, otherwise at every turn."""
    scrambled = np.full(len(columns[0]), (turn * 0x632BE5AB) & 0xFFFFFFFF, dtype=np.uint32)
    for column, multiplier in zip(columns, _MULTIPLIERS, strict=True):
        if column.dtype == np.uint64:
            column = (column ^ (column >> np.uint64(32))).astype(np.uint32)  # noqa: PLW2901
        scrambled ^= column
        scrambled *= multiplier
        scrambled ^= scrambled >> np.uint32(15)
    scrambled *= _MULTIPLIERS[0]
    scrambled >>= np.uint32(max(0, 32 - bits))
    return scrambled


def near_pairs(points: FloatArray, tolerance: float) -> NDArray[np.intp]:
    """Return the pairs (P, 2) of points not farther apart than a tolerance.

    Of crowds, where that would be tens of millions, only as many pairs as hold them together.

    A grid finds the few points that share a cell with another one (points just above a cell's
    border count for both cells); only those are looked at pair by pair.
    """
    from scipy.spatial import cKDTree  # noqa: PLC0415 - slow to import

    nothing = np.empty((0, 2), dtype=np.intp)
    if len(points) < 2:
        return nothing
    low = np.array([points[:, k].min() for k in range(3)])
    high = np.array([points[:, k].max() for k in range(3)])
    diagonal = float(np.linalg.norm(high - low))
    # Smaller than the spacing of points, larger than the tolerance, and 21 bits for each axis.
    cell = max(2.0 * tolerance, 0.1 * diagonal / np.sqrt(len(points)), diagonal / 2**20)
    place = (points - low) / cell
    corner = np.floor(place)
    above = place - corner
    key = np.zeros(len(points), dtype=np.int64)
    for k in range(3):
        key = (key << 21) + corner[:, k].astype(np.int64) + 1
    owner = np.arange(len(points), dtype=np.intp)
    for k in range(3):
        at_border = np.flatnonzero(above[owner, k] * cell <= 1.001 * tolerance)
        key = np.concatenate([key, key[at_border] - (1 << (21 * (2 - k)))])
        owner = np.concatenate([owner, owner[at_border]])
    ordered = np.sort(key)
    shared = ordered[1:][ordered[1:] == ordered[:-1]]
    if not len(shared):
        return nothing
    spot = np.minimum(np.searchsorted(shared, key), len(shared) - 1)
    candidates = np.unique(owner[shared[spot] == key])
    links = [nothing]
    tree = cKDTree(points[candidates])
    for crowd in _CROWDS:
        if tree.count_neighbors(tree, tolerance) <= _MOST_PAIRS:
            break
        more, candidates = _thinned(points, candidates, tolerance, crowd)
        links.append(more)
        tree = cKDTree(points[candidates])
    pairs = tree.query_pairs(tolerance, output_type="ndarray")
    return np.concatenate([*links, np.asarray(candidates[pairs], dtype=np.intp)])


def _thinned(
    points: FloatArray, candidates: NDArray[np.intp], tolerance: float, crowd: int
) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return pairs (P, 2) that join crowds to one of theirs, and the candidates left to look at.

    All points of a cell half as wide as the tolerance are near each other. A chain through them
    joins them as well as all their pairs, which would fill any memory. Whether two crowds side by
    side are near is judged by one point of each from here on.
    """
    cells = np.floor((points[candidates] - points[candidates].min(axis=0)) * (2.0 / tolerance))
    _, cell, size = np.unique(cells, axis=0, return_inverse=True, return_counts=True)
    cell = cell.reshape(-1)
    first = np.empty(len(size), dtype=np.intp)
    first[cell[::-1]] = candidates[::-1]
    leader = first[cell]
    follows = (size[cell] > crowd) & (leader != candidates)
    links = np.stack([leader[follows], candidates[follows]], axis=1)
    return links, candidates[~follows]


def near_tolerance(points: NDArray[Any], triangles: NDArray[np.integer[Any]]) -> float:
    """Return the distance below which points of a file are taken for one, in its unit."""
    # Column by column, many times faster than along axis 0.
    extent = [float(points[:, k].max()) - float(points[:, k].min()) for k in range(3)]
    diagonal = float(np.linalg.norm(extent))
    sample = triangles[:: max(1, len(triangles) // 20_000)]
    span = points[sample[:, 1]].astype(np.float64) - points[sample[:, 0]].astype(np.float64)
    length = np.linalg.norm(span, axis=1)
    length = length[length > 0]
    typical = float(np.median(length)) if len(length) else 0.0
    return min(NEAR_SHARE * diagonal, NEAR_EDGE_SHARE * typical)
