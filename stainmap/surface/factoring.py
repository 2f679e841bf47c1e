"""Sparse factorisations whose memory is really given back.

SuperLU's memory is booked by scipy per thread: a factorisation that is dropped in another thread
than the one that made it is never freed. A job makes factors and the window drops them, so both
are done here, in one thread that lives as long as the program.
"""

from __future__ import annotations

import weakref
from concurrent.futures import ThreadPoolExecutor
from functools import lru_cache
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import linalg

FloatArray = NDArray[np.float64]


class Factor:
    """The factorisation of one symmetric positive definite matrix; solves from any thread.

    Parameters
    ----------
    matrix
        (n, n), in columns.
    ordered
        True if the unknowns stand in a good order already; otherwise one of minimum degree is
        found.

    Raises
    ------
    RuntimeError
        If the matrix is singular.
    """

    def __init__(self, matrix: sparse.csc_array[np.float64], *, ordered: bool = False) -> None:
        self._held: list[Any] = _keeper().submit(_factored, matrix, ordered).result()
        self.entries = int(self._held[0].nnz)
        weakref.finalize(self, _drop, self._held).atexit = False

    def solve(self, right: FloatArray) -> FloatArray:
        """Return the solution for (n,) or (n, k) right-hand sides."""
        return np.asarray(self._held[0].solve(right))


@lru_cache(maxsize=1)
def _keeper() -> ThreadPoolExecutor:
    return ThreadPoolExecutor(max_workers=1, thread_name_prefix="stainmap-factors")


def _factored(matrix: sparse.csc_array[np.float64], ordered: bool) -> list[Any]:
    # A list, so that nothing but it refers to the factorisation and emptying it is the end.
    return [
        linalg.splu(
            matrix,
            permc_spec="NATURAL" if ordered else "MMD_AT_PLUS_A",
            diag_pivot_thresh=0.0,
            options={"SymmetricMode": True},
        )
    ]


def _drop(held: list[Any]) -> None:
    _keeper().submit(held.clear)
