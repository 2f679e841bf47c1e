"""How the open case is kept: in its file when it is saved, in the journal after every step."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from stainmap.app.case_place import CasePlace, Written
from stainmap.app.job import Job, JobRunner, Post
from stainmap.errors import StainmapError
from stainmap.files.journal import Journal
from stainmap.model.case import Case
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.files.recovery import Recovered


class Keeping:
    """Knows which state of the open case lies where, and keeps the newest against a crash.

    Parameters
    ----------
    journal
        Where unsaved work is kept; None keeps none.
    jobs
        Writes files in the background.
    post
        Carries a notice into the client's thread.
    case
        Tells which case is open now.
    on_journal_problem
        Called, in the client's thread, when the journal cannot write, and when it can again.
    """

    def __init__(
        self,
        journal: Journal | None,
        jobs: JobRunner,
        post: Post,
        *,
        case: Callable[[], Case | None],
        on_journal_problem: Callable[[], None],
    ) -> None:
        self.place = CasePlace()
        self._journal, self._jobs, self._case = journal, jobs, case
        self._opened = 0
        self.saving: Job[Written] | None = None
        if journal is not None:
            journal.on_problem = lambda _problem: post(on_journal_problem)

    @property
    def journal_problem(self) -> StainmapError | None:
        """Why unsaved work cannot be kept against a crash, or None while it is."""
        return None if self._journal is None else self._journal.problem

    @property
    def keeps_unsaved(self) -> bool:
        """True if unsaved work would be there again after a crash."""
        return self._journal is not None and self._journal.problem is None

    def keep_now(self) -> None:
        """Wait until what was noted is on the disk, some seconds at most."""
        if self._journal is not None:
            self._journal.flush()

    def occupy(
        self,
        case: Case,
        path: Path | None,
        *,
        saved: bool,
        digest: str = "",
        recovered: Recovered | None = None,
    ) -> None:
        """Keep another case from now on; what was recovered is let go once it is kept here."""
        self._opened += 1
        self.place.occupy(path, case if saved else None, digest)
        self.note(case, recovered)

    def note(self, case: Case, recovered: Recovered | None = None) -> None:
        """Keep this state against a crash, unless it is the one on disk; returns at once."""
        if self._journal is None:
            return
        if self.place.holds(case):
            self._journal.forget()
        else:
            self._journal.note(
                case,
                file=self.place.path,
                file_digest=self.place.digest,
                then=None if recovered is None else recovered.discard,
            )

    def save(self, case: Case, path: Path | None, prediction: Prediction | None) -> None:
        """Write the case at once; raises as `CasePlace.write`."""
        self._settle(self.place.write(case, path, prediction), self._opened)

    def save_in_background(
        self,
        case: Case,
        path: Path | None,
        prediction: Prediction | None,
        on_ended: Callable[[StainmapError | None], None],
    ) -> Job[Written]:
        """Write the case while work goes on; `on_ended` is told what went wrong, or None."""
        opened = self._opened

        def done(written: Written) -> None:
            self.saving = None
            self._settle(written, opened)
            on_ended(None)

        def failed(error: StainmapError) -> None:
            self.saving = None
            on_ended(error)

        job = self._jobs.start(
            translate("keeping", "Saving"),
            lambda _progress: self.place.write(case, path, prediction),
            on_done=done,
            on_failed=failed,
        )
        self.saving = None if job.is_finished else job
        return job

    def _settle(self, written: Written, opened: int) -> None:
        if opened != self._opened:
            # Another case has been opened meanwhile; this one is safe in its file.
            written.lock.release()
            return
        self.place.settle(written)
        current = self._case()
        if current is not None:
            self.note(current)

    def close(self, *, keep_unsaved: bool) -> None:
        """Let go of the lock; leave unsaved work in the journal, or drop it."""
        current = self._case()
        unsaved = current is not None and not self.place.holds(current)
        self.place.leave()
        self._jobs.close()
        if self._journal is not None:
            self._journal.close(keep=keep_unsaved and unsaved)
