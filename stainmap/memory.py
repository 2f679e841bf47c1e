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
_MMAP_THRESHOLD, _ARENA_MAX = -3, -8
_LARGE_BYTES = 1 << 20
_HEAPS = 2


def settle() -> None:
    """Set the C library's store up, before anything large is asked for.

    Arrays from 1 MB on get pages of their own, which go back at once, and threads share two heaps.
    Left to itself the library raises the first limit to 32 MB and gives every thread a heap. With
    a quarter of a million vertices that is a hundred megabytes less, for pages to be cleared more
    often: a tenth of the time of reading a crown.
    """
    try:
        option = ctypes.CDLL(None).mallopt
    except (AttributeError, OSError, TypeError):
        return
    option.argtypes, option.restype = [ctypes.c_int, ctypes.c_int], ctypes.c_int
    option(_MMAP_THRESHOLD, _LARGE_BYTES)
    option(_ARENA_MAX, _HEAPS)


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
