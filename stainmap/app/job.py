"""Work that takes longer than a frame: in a thread, with progress and cancel."""

from __future__ import annotations

import threading
import time
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from typing import Any, Generic, TypeVar

from stainmap.errors import CancelledError, StainmapError
from stainmap.memory import giving_back
from stainmap.words import translate

Progress = Callable[[float, str], None]
Post = Callable[[Callable[[], None]], None]
T = TypeVar("T")

# Progress closer together than this is not passed on; a screen shows no more than 30 a second.
_SHORTEST_REPORT_S = 0.03


def call_now(function: Callable[[], None]) -> None:
    """Run a notice at once, in the thread that sends it: what the command line needs."""
    function()


class Job(Generic[T]):
    """One piece of work on its way.

    The work gets a progress callback that it calls with a share (0 to 1) and a phrase; after
    `cancel` that callback raises CancelledError inside the work. `on_progress`, `on_done` and
    `on_failed` run through `post`, so that a window hears of them in its own thread.
    """

    def __init__(
        self,
        title: str,
        work: Callable[[Progress], T],
        *,
        post: Post,
        on_done: Callable[[T], None],
        on_failed: Callable[[StainmapError], None],
        on_progress: Callable[[Job[T]], None] | None = None,
    ) -> None:
        self.title = title
        self.share = 0.0
        self.phrase = ""
        self.started_s = time.monotonic()
        self._work = work
        self._post = post
        self._on_done = on_done
        self._on_failed = on_failed
        self._on_progress = on_progress
        self._cancelled = threading.Event()
        self._finished = threading.Event()
        self._reported_s = 0.0

    @property
    def is_finished(self) -> bool:
        """True once the work has ended, in whatever way."""
        return self._finished.is_set()

    @property
    def is_cancelled(self) -> bool:
        """True once somebody asked for the work to stop."""
        return self._cancelled.is_set()

    def cancel(self) -> None:
        """Ask the work to stop at its next report of progress."""
        self._cancelled.set()

    def wait(self, timeout_s: float | None = None) -> bool:
        """Block until the work has ended; return False if the time ran out first."""
        return self._finished.wait(timeout_s)

    def drop(self) -> None:
        """Count as ended without having begun; sends no notice."""
        self._cancelled.set()
        self._finished.set()

    def run(self) -> None:
        """Do the work in the calling thread and send the notices."""
        try:
            with giving_back():
                result = self._work(self._report)
            if self.is_cancelled:
                raise CancelledError(
                    translate("job", "{title} was stopped.").format(title=self.title)
                )
        except StainmapError as error:
            self._end(self._on_failed, error)
        except MemoryError:
            self._end(
                self._on_failed,
                StainmapError(
                    translate("job", "{title} needs more memory than there is.").format(
                        title=self.title
                    ),
                    advice=translate("job", "Close other programs or use a coarser mesh."),
                ),
            )
        except Exception as error:  # noqa: BLE001 - the job edge: whatever went wrong must reach the user
            text = translate("job", "{title} failed: {name}: {error}").format(
                title=self.title, name=type(error).__name__, error=error
            )
            failure = StainmapError(
                text, advice=translate("job", "The open case is unchanged. Please report this.")
            )
            failure.__cause__ = error
            self._end(self._on_failed, failure)
        else:
            self._end(self._on_done, result)

    def _end(self, notice: Callable[[Any], None], value: object) -> None:
        def deliver() -> None:
            try:
                notice(value)
            finally:
                self._finished.set()

        self._post(deliver)

    def _report(self, share: float, phrase: str) -> None:
        if self.is_cancelled:
            raise CancelledError(translate("job", "{title} was stopped.").format(title=self.title))
        self.share, self.phrase = share, phrase
        now = time.monotonic()
        if self._on_progress is not None and now - self._reported_s >= _SHORTEST_REPORT_S:
            self._reported_s = now
            report = self._on_progress
            self._post(lambda: report(self))


class JobRunner:
    """Runs jobs one after another in a thread of its own, or at once where `threaded` is False."""

    def __init__(self, *, post: Post = call_now, threaded: bool = True) -> None:
        self._post = post
        self._closed = False
        self._pool = (
            ThreadPoolExecutor(max_workers=1, thread_name_prefix="stainmap") if threaded else None
        )

    def start(
        self,
        title: str,
        work: Callable[[Progress], T],
        *,
        on_done: Callable[[T], None],
        on_failed: Callable[[StainmapError], None],
        on_progress: Callable[[Job[T]], None] | None = None,
    ) -> Job[T]:
        """Queue `work` and return the job; after `close` it is dropped."""
        job = Job(
            title,
            work,
            post=self._post,
            on_done=on_done,
            on_failed=on_failed,
            on_progress=on_progress,
        )
        if self._closed:
            # A notice that was still on its way when everything was closed; nobody waits any more.
            job.drop()
        elif self._pool is None:
            job.run()
        else:
            future: Future[None] = self._pool.submit(job.run)
            del future
        return job

    @property
    def post(self) -> Post:
        """What carries notices into the client's own thread."""
        return self._post

    @property
    def threaded(self) -> bool:
        """False where all work is done in the calling thread."""
        return self._pool is not None

    def another(self) -> JobRunner:
        """Return a runner with a thread of its own, so that short work need not wait for long."""
        return JobRunner(post=self._post, threaded=self._pool is not None)

    def close(self) -> None:
        """Drop what is queued and let the running job end."""
        self._closed = True
        if self._pool is not None:
            self._pool.shutdown(wait=False, cancel_futures=True)
