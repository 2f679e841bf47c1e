"""How long the interface thread is blocked, measured from outside, and where it was then."""

from __future__ import annotations

import sys
import threading
import time
import traceback
from collections import Counter
from dataclasses import dataclass, field

from PySide6.QtCore import QObject, Qt, Signal

_STEP_S = 0.005
_SAMPLE_S = 0.01


@dataclass(slots=True)
class Block:
    """One answer that came late.

    Parameters
    ----------
    during
        What the test said it was doing.
    wall_ms, own_ms
        How late it was, and how much of that the interface thread itself was computing. The rest it
        waited: for the processor, which others may have, or for a lock.
    places
        Where the interface thread was, innermost of our functions first, and how often it was seen
        there.
    """

    during: str
    wall_ms: float
    own_ms: float
    places: Counter[str] = field(default_factory=Counter)


class Watchdog(QObject):
    """Asks the interface thread for an answer all the time, from a thread of its own.

    Parameters
    ----------
    limit_ms
        Answers later than this are noted with where the interface thread was.
    """

    _asked = Signal()

    def __init__(self, limit_ms: float) -> None:
        super().__init__()
        self._limit_s = limit_ms / 1000.0
        self._main = threading.get_ident()
        self._clock = time.pthread_getcpuclockid(self._main)
        self._answered, self._stopped = threading.Event(), threading.Event()
        self.blocks: list[Block] = []
        self.during = ""
        self.answers = 0
        self._answerer = _Answerer(self._answered)
        self._asked.connect(self._answerer.answer, Qt.ConnectionType.QueuedConnection)
        self._thread = threading.Thread(target=self._watch, name="watchdog", daemon=True)
        self._thread.start()

    def stop(self) -> None:
        """End watching."""
        self._stopped.set()
        self._thread.join(5.0)

    def longest_own_ms(self) -> float:
        """Return the longest time that the interface thread computed before it answered."""
        return max((block.own_ms for block in self.blocks), default=0.0)

    def report(self, most: int = 12) -> str:
        """Return the worst blocks, where each was, and what was being done."""
        worst = sorted(self.blocks, key=lambda block: -block.own_ms)[:most]
        lines = []
        for block in worst:
            where = "; ".join(f"{place} x{count}" for place, count in block.places.most_common(3))
            lines.append(f"{block.own_ms:6.0f} of {block.wall_ms:6.0f} ms  {block.during}: {where}")
        return "\n".join(lines)

    def _watch(self) -> None:
        while not self._stopped.is_set():
            self._answered.clear()
            during, began, own = self.during, time.monotonic(), time.clock_gettime(self._clock)
            self._asked.emit()
            places: Counter[str] = Counter()
            while not self._answered.wait(_SAMPLE_S):
                if self._stopped.is_set():
                    return
                if time.monotonic() - began > 0.5 * self._limit_s:
                    places[self._place()] += 1
            self.answers += 1
            wall_s = time.monotonic() - began
            if wall_s > self._limit_s:
                own_s = time.clock_gettime(self._clock) - own
                self.blocks.append(Block(during, 1e3 * wall_s, 1e3 * own_s, places))
            time.sleep(_STEP_S)

    def _place(self) -> str:
        """Return where the interface thread is: the three innermost functions of the program."""
        frame = sys._current_frames().get(self._main)
        if frame is None:
            return "nowhere"
        ours = [
            f"{one.filename.rpartition('/')[2]}:{one.lineno} {one.name}"
            for one in traceback.extract_stack(frame)
            if "/stainmap/" in one.filename
        ]
        return " < ".join(reversed(ours[-4:])) or "Qt"


class _Answerer(QObject):
    """Lives in the interface thread and answers when it is its turn."""

    def __init__(self, answered: threading.Event) -> None:
        super().__init__()
        self._answered = answered

    def answer(self) -> None:
        self._answered.set()
