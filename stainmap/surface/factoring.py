"""Sparse factorisations whose memory is really given back.

SuperLU's memory is booked by scipy per thread: a factorisation that is dropped in another thread
than the one that made it is never freed. A job makes factors and the window drops them, so both
are done here, in one thread that lives as long as the program.
"""

from __future__ import annotations

import atexit
import weakref
from collections.abc import Callable
from concurrent.futures import Future
from functools import partial
from queue import SimpleQueue
from threading import Lock, Thread
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import linalg

FloatArray = NDArray[np.float64]
Task = Callable[[], None]
Held = list[Any]


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
        keeper = _Keeper.only()
        self._held = keeper.make(matrix, ordered)
        self.entries = int(self._held[0].nnz)
        weakref.finalize(self, keeper.drop, self._held).atexit = False

    def solve(self, right: FloatArray) -> FloatArray:
        """Return the solution for (n,) or (n, k) right-hand sides."""
        return np.asarray(self._held[0].solve(right))


class _Keeper:
    """The thread that makes and drops factorisations; begun with the first one."""

    _lock = Lock()
    _one: _Keeper | None = None

    def __init__(self) -> None:
        # Of all queues only this kind may be put into while it is being put into: rubbish is
        # collected in the middle of anything.
        self._tasks: SimpleQueue[Task | None] = SimpleQueue()
        self._living: dict[int, Held] = {}
        self._thread = Thread(target=self._work, name="stainmap-factors", daemon=True)
        self._thread.start()
        # What is left at the end must be dropped here as well, or the interpreter trips over it.
        atexit.register(self._end)

    @classmethod
    def only(cls) -> _Keeper:
        """Return the one there is."""
        with cls._lock:
            if cls._one is None:
                cls._one = _Keeper()
            return cls._one

    def make(self, matrix: sparse.csc_array[np.float64], ordered: bool) -> Held:
        """Return a factorisation in a list; raise what went wrong."""
        made: Future[Held] = Future()

        def task() -> None:
            try:
                held = _factored(matrix, ordered)
            except BaseException as error:  # noqa: BLE001 - raised again where it was asked for
                made.set_exception(error)
            else:
                self._living[id(held)] = held
                made.set_result(held)

        self._tasks.put(task)
        return made.result()

    def drop(self, held: Held) -> None:
        """Have a factorisation dropped; may be called from anywhere at any time."""
        self._tasks.put(partial(self._clear, held))

    def _clear(self, held: Held) -> None:
        self._living.pop(id(held), None)
        held.clear()

    def _work(self) -> None:
        # Nothing of a task is kept while waiting for the next.
        while self._did(self._tasks.get()):
            pass
        for held in self._living.values():
            held.clear()

    @staticmethod
    def _did(task: Task | None) -> bool:
        if task is None:
            return False
        task()
        return True

    def _end(self) -> None:
        self._tasks.put(None)
        self._thread.join(timeout=5.0)


def _factored(matrix: sparse.csc_array[np.float64], ordered: bool) -> Held:
    # A list, so that nothing but it refers to the factorisation and emptying it is the end.
    return [
        linalg.splu(
            matrix,
            permc_spec="NATURAL" if ordered else "MMD_AT_PLUS_A",
            diag_pivot_thresh=0.0,
            options={"SymmetricMode": True},
        )
    ]
