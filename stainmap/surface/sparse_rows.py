"""Rows and square pieces of sparse matrices, for work under a brush.

Slicing a matrix checks and converts a great deal that is known to be in order here; for some
hundred or thousand rows that takes three times as long as taking them.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy import sparse

Indices = NDArray[np.int32] | NDArray[np.intp]


def entries_of(starts: NDArray[Any], rows: Indices) -> tuple[NDArray[np.intp], NDArray[np.intp]]:
    """Return where the entries of some rows lie, one row after another, and where each row begins.

    Parameters
    ----------
    starts
        (V + 1,) where each row of the whole matrix begins, its ``indptr``.
    rows
        (k,) rows.

    Returns
    -------
    entries, begins
        (n,) places of entries, and (k + 1,) the first of each row among them.
    """
    begin = starts[rows]
    begins = np.zeros(len(rows) + 1, dtype=np.intp)
    np.cumsum(starts[rows + 1] - begin, out=begins[1:])
    entries = np.arange(begins[-1])
    entries += np.repeat(begin - begins[:-1], np.diff(begins))
    return entries, begins


def square(matrix: sparse.csr_array[Any], chosen: Indices) -> sparse.csr_array[Any]:
    """Return the rows and columns (k, k) of some vertices, ascending, of a matrix (V, V)."""
    entries, begins = entries_of(matrix.indptr, chosen)
    columns = matrix.indices[entries]
    place = np.minimum(np.searchsorted(chosen, columns), len(chosen) - 1)
    kept = chosen[place] == columns
    kept_before = np.zeros(len(kept) + 1, dtype=np.intp)
    np.cumsum(kept, out=kept_before[1:])
    parts = (matrix.data[entries[kept]], place[kept], kept_before[begins])
    return sparse.csr_array(parts, shape=(len(chosen), len(chosen)))
