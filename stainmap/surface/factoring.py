"""Sparse factorisations whose memory is really given back.

SuperLU's memory is booked by scipy per thread: a factorisation that is dropped in another thread
than the one that made it is never freed. A job makes factors and the window drops them, so both
are done here, in one thread that lives as long as the program.
"""

from __future__ import annotations

import weakref
from collections.abc import Callable
from concurrent.futures import Future
from queue import SimpleQueue
from threading import Lock, Thread
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import linalg

FloatArray = NDArray[np.float64]
Task = Callable[[], None]


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
        tasks = _Keeper.tasks()
        made: Future[list[Any]] = Future()

        def make() -> None:
            try:
                made.set_result(_factored(matrix, ordered))
            except BaseException as error:  # noqa: BLE001 - raised again where it was asked for
                made.set_exception(error)

        tasks.put(make)
        self._held = made.result()
        self.entries = int(self._held[0].nnz)
        # This may run in the middle of anything, whenever rubbish is collected: of all queues only
        # this kind may be put into while it is being put into.
        weakref.finalize(self, tasks.put, self._held.clear).atexit = False

    def solve(self, right: FloatArray) -> FloatArray:
        """Return the solution for (n,) or (n, k) right-hand sides."""
        return np.asarray(self._held[0].solve(right))


class _Keeper:
    """The thread that makes and drops factorisations; begun with the first one."""

    _lock = Lock()
    _tasks: SimpleQueue[Task] | None = None

    @classmethod
    def tasks(cls) -> SimpleQueue[Task]:
        """Return the queue of what the thread is to do."""
        with cls._lock:
            if cls._tasks is None:
                cls._tasks = SimpleQueue()
                Thread(
                    target=_work, args=(cls._tasks,), name="stainmap-factors", daemon=True
                ).start()
            return cls._tasks


def _work(tasks: SimpleQueue[Task]) -> None:
    while True:
        # Nothing of a task is kept while waiting for the next.
        tasks.get()()


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
