"""Nested-dissection order for the factorisation of surface matrices."""

from __future__ import annotations

import numpy as np
from scipy import sparse

from stainmap.surface.mesh import FloatArray, IndexArray

_LEAF = 64


def nested_dissection(
    points: FloatArray, matrix: sparse.csr_array[np.float64], *, leaf: int = _LEAF
) -> IndexArray:
    """Order the unknowns of a surface matrix so that its factor stays sparse.

    The points are halved at the median of their longest axis; vertices of the first half that
    touch the second form a separator, numbered after both halves; each half is treated alike
    ([George1973], with the cut chosen by geometry).

    Parameters
    ----------
    points
        (V, 3) positions of the unknowns.
    matrix
        (V, V) with symmetric pattern.
    leaf
        Groups of at most this many unknowns are not cut any further.

    Returns
    -------
    order
        (V,) int32; ``matrix[order][:, order]`` is the matrix to factor.
    """
    start, neighbour = matrix.indptr, matrix.indices
    degree = np.diff(start)
    far_side = np.zeros(len(points), dtype=np.bool_)
    # Each entry is a group still to be cut, or a finished part of the order. Read from the end
    # the stack gives the order backwards, so separators are met before their halves.
    pending: list[tuple[np.ndarray[tuple[int], np.dtype[np.intp]], bool]]
    pending = [(np.arange(len(points)), False)]
    backwards: list[np.ndarray[tuple[int], np.dtype[np.intp]]] = []
    while pending:
        group, finished = pending.pop()
        if finished or len(group) <= leaf:
            backwards.append(group[::-1])
            continue
        centred = points[group] - points[group].mean(axis=0)
        along = centred @ np.linalg.eigh(centred.T @ centred)[1][:, 2]
        near = along < np.median(along)
        first, second = group[near], group[~near]
        if not len(first):
            backwards.append(group[::-1])
            continue
        far_side[second] = True
        count = degree[first]
        owner = np.repeat(np.arange(len(first)), count)
        offset = np.arange(len(owner)) - np.repeat(np.cumsum(count) - count, count)
        touching = np.zeros(len(first), dtype=np.bool_)
        touching[owner[far_side[neighbour[np.repeat(start[first], count) + offset]]]] = True
        far_side[second] = False
        pending.append((first[~touching], False))
        pending.append((second, False))
        pending.append((first[touching], True))
    if not backwards:
        return np.empty(0, dtype=np.int32)
    return np.concatenate(backwards)[::-1].astype(np.int32)
