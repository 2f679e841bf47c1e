"""Long work on several things at once, each in a process of its own; one after another if need be.

Threads would share one interpreter, which most of the drawing of sheets waits for. Processes are
started afresh ("spawn"): a copy of a running window ("fork") would share its locks and its display.
Where the work can be told of beforehand (`make_ready`), a fresh process imports what it takes while
this one still reads, and the others are copies of that one.
"""

from __future__ import annotations

import multiprocessing
import multiprocessing.forkserver
import os
import pickle
import sys
import tempfile
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from multiprocessing.synchronize import Event
from pathlib import Path
from typing import Any, Final, Literal, TypeVar

from stainmap import memory
from stainmap.errors import CancelledError, StainmapError
from stainmap.planning.progress import Progress, Steps
from stainmap.words import translate

_way: Literal["spawn", "forkserver"] = "spawn"

Item = TypeVar("Item")
Result = TypeVar("Result")
Work = Callable[[Item, Progress], Result]

# A prediction takes some 300 MB; more processes than this would need more memory than is there.
_MOST: Final = 4
_LOOK_EVERY_S: Final = 0.1


def processes_for(count: int) -> int:
    """Return how many processes are worth having for so many pieces of work."""
    usable = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    return max(1, min(count, usable or 1, _MOST))


def make_ready(*modules: str) -> None:
    """Begin to import modules in a fresh process, of which the next `each_of` starts copies.

    For programs that end with their work: the process stays until then. Only where the system is
    known to bear it (Linux); elsewhere nothing is done, and `each_of` starts all afresh.
    """
    if sys.platform != "linux":
        return
    try:
        multiprocessing.set_forkserver_preload(list(modules))
        multiprocessing.forkserver.ensure_running()
    except OSError:
        return
    global _way  # noqa: PLW0603 - as the process it speaks of, there is one
    _way = "forkserver"


def each_of(
    work: Work[Item, Result],
    items: Sequence[Item],
    *,
    processes: int = 1,
    progress: Progress | None = None,
) -> list[Result | StainmapError]:
    """Return what `work` makes of every item, or the sentence why it cannot, in their order.

    Parameters
    ----------
    work
        A function of a module, called with an item and with whom to tell how far it is. Items and
        results must be plain values where there is more than one process.
    processes
        How many may work at once. Where they cannot be started, or one of them dies, what is left
        is done here, one after another.

    Raises
    ------
    CancelledError
        If `progress` raises it; what is under way stops at its next step.
    """
    steps = Steps(progress)
    made: dict[int, Result | StainmapError] = {}
    if processes > 1 and len(items) > 1:
        _in_processes(work, items, processes, steps, made)
    for number, item in enumerate(items):
        if number not in made:
            part = steps.part(number / len(items), (number + 1) / len(items))
            made[number] = _tried(work, item, part.say)
    return [made[number] for number in range(len(items))]


def _tried(work: Work[Item, Result], item: Item, say: Progress) -> Result | StainmapError:
    try:
        return work(item, say)
    except CancelledError:
        raise
    except StainmapError as error:
        return error


def _in_processes(
    work: Work[Item, Result],
    items: Sequence[Item],
    processes: int,
    steps: Steps,
    made: dict[int, Result | StainmapError],
) -> None:
    """Put into `made` what processes have finished; what is missing there is still to be done."""
    context = multiprocessing.get_context(_way)
    try:
        stop = context.Event()
        shares: Any = context.RawArray("d", len(items))
        pool = ProcessPoolExecutor(
            processes, mp_context=context, initializer=_begin, initargs=(stop, shares)
        )
        folder = tempfile.TemporaryDirectory(ignore_cleanup_errors=True)
    except (OSError, ImportError):  # no semaphores, no memory to share, no room on the disk
        return
    with folder as name:
        try:
            # Each is handed over as soon as it is written: the first processes start meanwhile.
            waiting = {
                pool.submit(_one, work, number, path): number
                for number, path in _written(items, Path(name))
            }
            _collect(waiting, shares, steps, made)
        except BaseException:
            stop.set()
            raise
        finally:
            pool.shutdown(wait=False, cancel_futures=True)


def _written(items: Sequence[Item], folder: Path) -> Iterator[tuple[int, Path]]:
    """Yield number and file that each item travels in; what cannot be written stays here.

    Through the pipe of the pool they would not all fit: when a process dies, Python waits for ever
    for the rest to be taken out of it.
    """
    for number, item in enumerate(items):
        path = folder / str(number)
        try:
            path.write_bytes(pickle.dumps(item, protocol=pickle.HIGHEST_PROTOCOL))
        except (OSError, pickle.PicklingError, TypeError, AttributeError):
            continue
        yield number, path


def _collect(
    waiting: dict[Future[Any], int],
    shares: Sequence[float],
    steps: Steps,
    made: dict[int, Any],
) -> None:
    count = len(shares)
    left = set(waiting)
    while left:
        done, left = wait(left, timeout=_LOOK_EVERY_S, return_when=FIRST_COMPLETED)
        for one in done:
            # A process that died, or a value that cannot travel: done again here, where whatever
            # is wrong is said in the usual way.
            if one.exception() is None:
                made[waiting[one]] = one.result()
        steps.say(
            min(sum(shares) / count, 1.0),
            translate("side processes", "{count} of {count_2} are ready").format(
                count=len(made), count_2=count
            ),
        )


_stop: Event | None = None
_shares: Any = None


def _begin(stop: Event, shares: Any) -> None:
    """Keep, in a new process, whom it hears and tells."""
    global _stop, _shares  # the only way into a process of a pool
    _stop, _shares = stop, shares
    memory.keep()


def _one(work: Work[Any, Result], number: int, path: Path) -> Result | StainmapError:
    """Do one piece of work in a process of the pool."""
    # Written a moment ago by the program that started this process, in a folder that is its own.
    item = pickle.loads(path.read_bytes())  # noqa: S301

    def say(share: float, _phrase: str) -> None:
        if _stop is not None and _stop.is_set():
            raise CancelledError(translate("side processes", "Stopped."))
        _shares[number] = share

    return _tried(work, item, say)
