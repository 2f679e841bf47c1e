"""Lines on a surface where a value crosses a level, as chains of points."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.surface.mesh import IndexArray, TriMesh

FloatArray = NDArray[np.float64]

_NO_LENGTH = 1e-12


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SurfaceLines:
    """Several lines on a mesh, end to end in one array of points.

    Every point lies on an edge of the mesh, a `share` of the way from its first to its second end,
    so that any value of the vertices can be read along the lines.

    Parameters
    ----------
    edges
        (N, 2) int32. Vertices of the edge each point lies on.
    share
        (N,) 0 to 1.
    starts
        (L + 1,) int. Line k holds the points from ``starts[k]`` up to ``starts[k + 1]``. A closed
        line ends with the point it began with.
    """

    edges: IndexArray
    share: FloatArray
    starts: NDArray[np.intp]

    def take(self, per_vertex: ArrayLike) -> FloatArray:
        """Return the values of vertices, (V,) or (V, k), at the points, (N,) or (N, k)."""
        values = np.asarray(per_vertex, dtype=np.float64)
        share = self.share if values.ndim == 1 else self.share[:, None]
        return np.asarray(
            (1.0 - share) * values[self.edges[:, 0]] + share * values[self.edges[:, 1]]
        )

    @property
    def line_of_point(self) -> NDArray[np.intp]:
        """(N,) number of the line each point belongs to."""
        return np.repeat(np.arange(len(self.starts) - 1), np.diff(self.starts))


def isolines(mesh: TriMesh, values: ArrayLike, level: float = 0.0) -> SurfaceLines:
    """Return the lines on the mesh where `values` (V,), linear on every face, are `level`."""
    above = np.asarray(values, dtype=np.float64) - level
    positive = above >= 0.0
    edges = mesh.edges
    crossed = positive[edges[:, 0]] != positive[edges[:, 1]]
    corners = positive[mesh.faces]
    around = mesh.face_edges[corners.any(axis=1) & ~corners.all(axis=1)]
    # Of a face with both signs exactly two edges are crossed.
    flat, starts = _chained(around[crossed[around]].reshape(-1, 2))
    ends = edges[flat].reshape(-1, 2)
    low, high = above[ends[:, 0]], above[ends[:, 1]]
    return SurfaceLines(edges=ends, share=low / (low - high), starts=starts)


def stacked_isolines(mesh: TriMesh, values: ArrayLike) -> tuple[SurfaceLines, NDArray[np.intp]]:
    """Return the lines where `values` (V,), linear on every face, are a whole number; all at once.

    Returns
    -------
    The lines, and the whole number of each of their points, (N,).
    """
    value = np.asarray(values, dtype=np.float64)
    # A vertex on a level lies above it, as in `isolines`.
    floor = np.floor(value).astype(np.intp)
    around = floor[mesh.faces]
    lowest, highest = around.min(axis=1), around.max(axis=1)
    face = np.repeat(np.arange(len(around)), highest - lowest)
    first = np.cumsum(highest - lowest) - (highest - lowest)
    level = lowest[face] + 1 + np.arange(len(face)) - first[face]
    # Of a face that a level passes exactly two edges are crossed.
    edge = mesh.face_edges[face]
    ends = floor[mesh.edges[edge]]
    crossed = (ends[:, :, 0] >= level[:, None]) != (ends[:, :, 1] >= level[:, None])
    count = len(mesh.edges)
    least = int(floor.min(initial=0))
    key = edge.astype(np.int64) + (level - least)[:, None] * count
    flat, starts = _chained(key[crossed].reshape(-1, 2))
    above, on_edge = np.divmod(flat, count)
    order = above + least
    corners = mesh.edges[on_edge].reshape(-1, 2)
    low, high = value[corners[:, 0]] - order, value[corners[:, 1]] - order
    return SurfaceLines(edges=corners, share=low / (low - high), starts=starts), order


def grid_contours(image: ArrayLike, level: float) -> list[FloatArray]:
    """Return the contours of an (H, W) image at a level, each (k, 2) x and y.

    The value of a pixel is taken to stand at its centre, so pixel (0, 0) stands at 0.5, 0.5.
    """
    above = np.asarray(image, dtype=np.float64) - level
    width = above.shape[1]
    sign = above >= 0.0
    corners = np.stack([sign[:-1, :-1], sign[:-1, 1:], sign[1:, :-1], sign[1:, 1:]])
    row, column = np.nonzero(corners.any(axis=0) & ~corners.all(axis=0))
    first = row * width + column
    upper = np.stack([first, first + 1, first + width], axis=1)
    lower = np.stack([first + 1, first + width + 1, first + width], axis=1)
    pixels, faces = np.unique(np.concatenate([upper, lower]), return_inverse=True)
    y, x = np.divmod(pixels, width)
    grid = TriMesh(np.stack([x + 0.5, y + 0.5, 0.0 * x], axis=1), faces.reshape(-1, 3))
    lines = isolines(grid, above.ravel()[pixels])
    points = lines.take(grid.vertices[:, :2])
    return np.split(points, lines.starts[1:-1]) if len(points) else []


def split_lines(
    points: FloatArray, line_of_point: NDArray[np.intp], margin: FloatArray
) -> list[FloatArray]:
    """Return the parts of lines where `margin` (N,) is above zero, cut between points.

    Parameters
    ----------
    points
        (N, k) points of all lines, end to end.
    line_of_point
        (N,) which line a point belongs to.
    margin
        (N,) taken to be linear between neighbouring points of a line.
    """
    if len(points) < 2:
        return []
    keep = margin > 0.0
    same = line_of_point[1:] == line_of_point[:-1]
    cut = np.flatnonzero(same & (keep[1:] != keep[:-1]))
    share = margin[cut] / (margin[cut] - margin[cut + 1])
    crossing = points[cut] + share[:, None] * (points[cut + 1] - points[cut])
    # Points kept and crossings, in order along the lines; a part ends where the next piece is not
    # kept or the line ends.
    place = np.concatenate([np.flatnonzero(keep), cut + 0.5])
    order = np.argsort(place, kind="stable")
    merged = np.concatenate([points[keep], crossing])[order]
    place = place[order]
    lower = np.floor(place[:-1]).astype(np.intp)
    joined = (place[1:] - place[:-1] <= 1.0) & same[np.minimum(lower, len(same) - 1)]
    joined &= ~((place[:-1] % 1.0 > 0.0) & ~keep[np.minimum(lower + 1, len(keep) - 1)])
    parts = np.split(merged, np.flatnonzero(~joined) + 1)
    return [part for part in parts if len(part) > 1]


def simplified(points: FloatArray, tolerance: float) -> FloatArray:
    """Return the line (k, 2) without points that lie within `tolerance` of the rest."""
    return simplified_lines([points], tolerance)[0]


def simplified_lines(lines: list[FloatArray], tolerance: float) -> list[FloatArray]:
    """Return lines, each (k, 2), without points that lie within `tolerance` of the rest.

    Ramer and Douglas and Peucker's way: of each stretch the farthest point stays [Douglas1973].
    All stretches of all lines are cut at once, as often as the most crooked one needs.
    """
    if not lines:
        return []
    points = np.concatenate(lines)
    size = np.array([len(line) for line in lines])
    last = np.cumsum(size) - 1
    keep = np.zeros(len(points), dtype=np.bool_)
    keep[last] = True
    keep[last - size + 1] = True
    begin, end = last - size + 1, last
    while True:
        long = end - begin >= 2
        begin, end = begin[long], end[long]
        if not len(begin):
            break
        inner = end - begin - 1
        first = np.cumsum(inner) - inner
        stretch = np.repeat(np.arange(len(inner)), inner)
        place = np.arange(len(stretch)) + (begin + 1 - first)[stretch]
        chord = points[end] - points[begin]
        length = np.hypot(chord[:, 0], chord[:, 1])
        along = chord / np.maximum(length, _NO_LENGTH)[:, None]
        offset = points[place] - points[begin][stretch]
        beside = offset[:, 0] * along[stretch, 1] - offset[:, 1] * along[stretch, 0]
        closed = (length <= _NO_LENGTH)[stretch]
        away = np.where(closed, np.hypot(offset[:, 0], offset[:, 1]), np.abs(beside))
        most = np.maximum.reduceat(away, first)
        # The first of the farthest points of every stretch.
        farthest = np.flatnonzero(away == most[stretch])
        _, at = np.unique(stretch[farthest], return_index=True)
        middle = place[farthest[at]]
        far = most > tolerance
        keep[middle[far]] = True
        begin, end = (
            np.concatenate([begin[far], middle[far]]),
            np.concatenate([middle[far], end[far]]),
        )
    return [line[kept] for line, kept in zip(lines, np.split(keep, last[:-1] + 1), strict=True)]


def _chained(pairs: NDArray[np.integer]) -> tuple[NDArray[np.int64], NDArray[np.intp]]:
    """Join pairs of numbers that share a number into chains; closed ones repeat their first.

    Numbers that more than two pairs share (edges of more than two faces) start and end chains.

    Returns
    -------
    The chains end to end, and where each begins and the last one ends.
    """
    numbers, local = np.unique(pairs, return_inverse=True)
    local = local.reshape(-1, 2)
    count = np.bincount(local.ravel(), minlength=len(numbers))
    # The pairs at every number, one after the other.
    slots = np.argsort(local.ravel(), kind="stable") // 2
    offset = np.concatenate([[0], np.cumsum(count)])
    # Less one end of a pair is its other end; less one pair of two at a number is the other.
    both = local.sum(axis=1).tolist()
    around = np.bincount(local.ravel(), np.repeat(np.arange(len(local)), 2), len(numbers))
    beside = around.astype(np.int64).tolist()
    order, first, shared = slots.tolist(), offset.tolist(), count.tolist()
    used = bytearray(len(both))
    ends = np.flatnonzero(count != 2).tolist()
    chained: list[int] = []
    starts = [0]
    add = chained.append
    for begin in (*ends, *range(len(numbers))):
        for slot in range(first[begin], first[begin + 1]):
            pair, at = order[slot], begin
            if used[pair]:
                continue
            add(at)
            while not used[pair]:
                used[pair] = 1
                at = both[pair] - at
                add(at)
                if shared[at] != 2:
                    break
                pair = beside[at] - pair
            starts.append(len(chained))
    flat = np.asarray(numbers[np.array(chained, dtype=np.intp)], dtype=np.int64)
    return flat, np.array(starts, dtype=np.intp)
