"""How times are taken: of the processor, in turn with something else, the least disturbed counts.

Cores and memory are shared with whatever else the machine does. A time of its own says little
then; two tasks timed one right after the other are slowed alike.
"""

from __future__ import annotations

from collections.abc import Callable
from time import process_time, thread_time

import numpy as np

Task = Callable[[], object]

# Processor time of one `yardstick`, ms, on the undisturbed machine (two cores of a shared server)
# on which the asked milliseconds were found to hold. Another machine may be faster.
YARDSTICK_MS = 3.0


def seconds(task: Task, repeats: int = 1, *, clock: Callable[[], float] = process_time) -> float:
    """Return the shortest time of a few, s: by default the processor's, of all threads."""
    times = []
    for _ in range(repeats):
        start = clock()
        task()
        times.append(clock() - start)
    return min(times)


def in_turn(rounds: int, *tasks: Task, clock: Callable[[], float] = thread_time) -> list[float]:
    """Return the shortest time of each task, s, by default of this thread; each round has all."""
    taken = [[seconds(task, clock=clock) for task in tasks] for _ in range(rounds)]
    return np.min(taken, axis=0).tolist()


def ratio(task: Task, other: Task, enough: float, *, repeats: int = 1, rounds: int = 12) -> float:
    """Return the least ratio of the times of two tasks; no more is timed once it is `enough`."""
    least = np.inf
    for _ in range(rounds):
        least = min(least, seconds(task, repeats) / seconds(other, repeats))
        if least <= enough:
            break
    return float(least)


def milliseconds(task: Task, enough: float, *, repeats: int = 10, rounds: int = 12) -> float:
    """Return the least processor time of a task, ms, as the undisturbed machine would take it.

    Each round is divided by how much longer than `YARDSTICK_MS` the yardstick takes next to it; a
    machine that is quicker than that gets no handicap. No more is timed once it is `enough`.
    """
    least = np.inf
    for _ in range(rounds):
        before = seconds(yardstick, 3)
        taken = 1000.0 * seconds(task, repeats)
        slowness = 1000.0 * 0.5 * (before + seconds(yardstick, 3)) / YARDSTICK_MS
        least = min(least, taken / max(1.0, slowness))
        if least <= enough:
            break
    return float(least)


_VALUES = np.random.default_rng(0).random((3000, 36), dtype=np.float32)
_SCATTERED = np.random.default_rng(1).integers(0, _VALUES.size, 200_000)


def yardstick() -> None:
    """Do a fixed piece of work of the engine's kind: exponentials, gathers, sums."""
    flat = _VALUES.ravel()
    for _ in range(4):
        np.exp(-_VALUES, dtype=np.float32)
        np.add.reduce(flat[_SCATTERED])
        np.divide(_VALUES, 1.0 + _VALUES, dtype=np.float32)
