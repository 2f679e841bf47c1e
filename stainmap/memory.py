"""Giving freed memory back to the system.

The C library keeps what was freed for the next request. After the large arrays of reading a crown
that is some hundred megabytes, in pieces that nothing later fits into.
"""

from __future__ import annotations

import ctypes
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import lru_cache

# glibc's numbers, from its malloc.h.
_TRIM_THRESHOLD, _MMAP_THRESHOLD, _ARENA_MAX = -1, -3, -8
_LARGE_BYTES = 1 << 20
_HEAPS = 2
# The largest first limit that glibc takes, and how much it may then keep unused.
_ALL_IN_THE_HEAP, _KEPT_BYTES = 32 << 20, 512 << 20


def settle() -> None:
    """Set the C library's store up, before anything large is asked for.

    Arrays from 1 MB on get pages of their own, which go back at once, and threads share two heaps.
    Left to itself the library raises the first limit to 32 MB and gives every thread a heap. With
    a quarter of a million vertices that is a hundred megabytes less, for pages to be cleared more
    often: a tenth of the time of reading a crown.
    """
    _set({_MMAP_THRESHOLD: _LARGE_BYTES, _ARENA_MAX: _HEAPS})


def keep() -> None:
    """Set the store up the other way round, for a process that does one thing and ends.

    What was freed is kept and used again. To fetch and clear pages anew for every array takes a
    fifth of the time of a prediction and its sheets.
    """
    _set({_MMAP_THRESHOLD: _ALL_IN_THE_HEAP, _TRIM_THRESHOLD: _KEPT_BYTES, _ARENA_MAX: _HEAPS})


def _set(options: dict[int, int]) -> None:
    """Set options of the C library's store; leave it alone where it is not glibc's."""
    try:
        option = ctypes.CDLL(None).mallopt
    except (AttributeError, OSError, TypeError):
        return
    option.argtypes, option.restype = [ctypes.c_int, ctypes.c_int], ctypes.c_int
    for number, value in options.items():
        option(number, value)


@lru_cache(maxsize=1)
def _trim() -> Callable[[int], int] | None:
    """Return the C library's own routine; None where it has none (it is glibc's)."""
    try:
        routine = ctypes.CDLL(None).malloc_trim
    except (AttributeError, OSError, TypeError):
        return None
    routine.argtypes, routine.restype = [ctypes.c_size_t], ctypes.c_int
    return lambda pad: int(routine(pad))


def give_back_freed() -> bool:
    """Give freed memory back; return whether there was some. Takes milliseconds."""
    trim = _trim()
    return trim is not None and trim(0) == 1


@contextmanager
def giving_back(every_s: float = 0.2) -> Iterator[None]:
    """Give freed memory back every so often while the body runs, from a thread of its own.

    A body that ends sooner is left alone: clearing pages anew costs small work a fifth of its time.
    """
    ended = threading.Event()

    def work() -> None:
        while not ended.wait(every_s):
            give_back_freed()

    thread = threading.Thread(target=work, name="stainmap-memory", daemon=True)
    thread.start()
    began = time.monotonic()
    try:
        yield
    finally:
        ended.set()
        thread.join()
        if time.monotonic() - began >= every_s:
            give_back_freed()
