"""Progress of long planning work: steps with names, heard of often enough to be stopped."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import TypeVar

Progress = Callable[[float, str], None]
Result = TypeVar("Result")

_TICK_S = 0.1


class Steps:
    """Reports where in a range of shares (0 to 1) a piece of work stands.

    Parameters
    ----------
    progress
        Hears a share and a phrase; what it raises stops the work. None to say nothing.
    begin, end
        The range this piece of work fills.
    """

    def __init__(self, progress: Progress | None, begin: float = 0.0, end: float = 1.0) -> None:
        self._progress = progress
        self._begin = begin
        self._end = end

    def say(self, share: float, phrase: str) -> None:
        """Report a share, 0 to 1, of this piece of work."""
        if self._progress is not None:
            self._progress(self._begin + share * (self._end - self._begin), phrase)

    def part(self, begin: float, end: float) -> Steps:
        """Return the steps of one part of this piece of work."""
        span = self._end - self._begin
        return Steps(self._progress, self._begin + begin * span, self._begin + end * span)

    def during(self, share: float, phrase: str, work: Callable[[], Result]) -> Result:
        """Return what `work` returns, reporting ten times a second while it runs.

        For work of a second in compiled code, which knows of no progress. If the report raises,
        the work is left to run out in its thread and its result is dropped.
        """
        if self._progress is None:
            return work()
        self.say(share, phrase)
        executor = ThreadPoolExecutor(max_workers=1)
        try:
            future = executor.submit(work)
            while True:
                try:
                    return future.result(timeout=_TICK_S)
                except TimeoutError:
                    if future.done():
                        raise
                    self.say(share, phrase)
        finally:
            executor.shutdown(wait=False)
