"""The one long task that a person waits for, and what went wrong with the last."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from stainmap.app.job import Job, JobRunner, Progress
from stainmap.errors import CancelledError, StainmapError


class Foreground:
    """Runs such tasks one after another and tells how they go.

    Parameters
    ----------
    jobs
        Does the work.
    notify
        Told "job" whenever a task begins, goes on or ends, with what else that changes.
    """

    def __init__(self, jobs: JobRunner, notify: Callable[[frozenset[str]], None]) -> None:
        self._jobs, self._notify = jobs, notify
        self.job: Job[Any] | None = None
        self.problem: StainmapError | None = None

    def start(
        self, title: str, work: Callable[[Progress], Any], done: Callable[[Any], None]
    ) -> Job[Any]:
        """Begin a task; `done` takes its result and says `ended`."""

        def failed(error: StainmapError) -> None:
            stopped = isinstance(error, CancelledError)
            if stopped and self.job is not None and not self.job.is_cancelled:
                return  # an older job has ended; the one under way goes on
            self.job = None
            self.problem = None if stopped else error
            self._notify(frozenset({"job", "problem"}))

        self.problem = None
        job = self._jobs.start(
            title,
            work,
            on_done=done,
            on_failed=failed,
            on_progress=lambda _job: self._notify(frozenset({"job"})),
        )
        if not job.is_finished:
            self.job = job
            self._notify(frozenset({"job"}))
        return job

    def ended(self, what: str) -> None:
        """Say that a task has ended, and what changed by it."""
        self.job = None
        self._notify(frozenset({"job", what}))

    def close(self) -> None:
        """Drop what is queued and let the running task end."""
        self._jobs.close()
