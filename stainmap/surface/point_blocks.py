"""Which points lie near a place, found quickly: points in an order in which neighbours are near.

Blocks of that order are small boxes; most of them are dropped at once, and only the points of the
rest are measured.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.surface.mesh import FloatArray, IndexArray

# Points that are looked for together.
BLOCK = 64
_BITS = 10
# How the bits of a number of ten are spread to every third place: shift, and what is kept then.
_SPREADING = ((16, 0x030000FF), (8, 0x0300F00F), (4, 0x030C30C3), (2, 0x09249249))


def space_filling_order(points: FloatArray) -> IndexArray:
    """Return the order (V,) of points (V, 3) along a Morton curve, so that neighbours are near."""
    if not len(points):
        return np.empty(0, dtype=np.int32)
    columns = [np.ascontiguousarray(column) for column in points.T]
    span = max(float(np.ptp(column)) for column in columns) or 1.0
    key = np.zeros(len(points), dtype=np.int32)
    for axis, column in enumerate(columns):
        cell = ((column - column.min()) * ((2**_BITS - 1) / span)).astype(np.int32)
        for shift, kept in _SPREADING:
            cell |= cell << shift
            cell &= kept
        key |= cell << axis
    return np.argsort(key, kind="stable").astype(np.int32)


class PointBlocks:
    """Points (V, 3) in boxes of `BLOCK` neighbours each.

    Attributes
    ----------
    order
        (V,) the points along a Morton curve.
    """

    def __init__(self, points: FloatArray) -> None:
        self.order = space_filling_order(points)
        self._points = points
        first = np.arange(0, len(points), BLOCK)
        ordered = np.stack([column[self.order] for column in points.T])
        self._low, self._high = (
            reduce.reduceat(ordered, first, axis=1) if len(first) else np.empty((3, 0))
            for reduce in (np.minimum, np.maximum)
        )

    def within(self, centre: FloatArray, radius_mm: float) -> IndexArray:
        """Return the points at most so far from a place (3,), ascending."""
        at = np.asarray(centre, dtype=np.float64)[:, None]
        beside = np.maximum(np.maximum(self._low - at, at - self._high), 0.0)
        blocks = np.flatnonzero((beside * beside).sum(axis=0) <= radius_mm**2)
        some = self.order[members(blocks, len(self.order))]
        offset = self._points[some] - at[:, 0]
        found: IndexArray = some[np.einsum("ij,ij->i", offset, offset) <= radius_mm**2]
        found.sort()
        return found


def members(blocks: NDArray[np.intp], count: int) -> NDArray[np.intp]:
    """Return the places in the order, of `count`, that some blocks (ascending) hold."""
    places = np.add.outer(blocks * BLOCK, np.arange(BLOCK)).ravel()
    return places[: int(np.searchsorted(places, count))]
