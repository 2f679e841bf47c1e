"""Unsaved work kept against a crash: one case file per running program, written as you go."""

from __future__ import annotations

import contextlib
import os
import threading
import uuid
from dataclasses import dataclass
from pathlib import Path

import filelock

from stainmap.errors import StainmapError
from stainmap.files.atomic import make_folder
from stainmap.files.case_file import SUFFIX, write_case
from stainmap.model.case import Case

# An edit is on disk this long after it at the latest; several edits within it are written once.
_DELAY_S = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Recovered:
    """A case left behind by a program that did not end in order."""

    path: Path
    modified_s: float

    def discard(self) -> None:
        """Delete it."""
        with contextlib.suppress(OSError):
            self.path.unlink()
        with contextlib.suppress(OSError):
            self.path.with_suffix(".lock").unlink()


class Journal:
    """Keeps the newest state of the open case in `folder`.

    The file carries a lock that dies with the process, by which `abandoned` tells the work of a
    crashed program from that of one still running.
    """

    def __init__(self, folder: Path, *, delay_s: float = _DELAY_S) -> None:
        make_folder(folder)
        self._path = folder / f"{os.getpid()}-{uuid.uuid4().hex[:8]}{SUFFIX}"
        self._lock = filelock.FileLock(self._path.with_suffix(".lock"), timeout=0)
        self._lock.acquire()
        self._delay_s = delay_s
        self._state = threading.Condition()
        self._waiting: Case | None = None
        self._writing = False
        self._closed = False
        self.problem: StainmapError | None = None
        self._thread = threading.Thread(target=self._run, name="stainmap-journal", daemon=True)
        self._thread.start()

    @property
    def path(self) -> Path:
        """Where the newest state is kept."""
        return self._path

    def note(self, case: Case) -> None:
        """Keep this state; returns at once."""
        with self._state:
            self._waiting = case
            self._state.notify_all()

    def clear(self) -> None:
        """Forget what is kept, because it has been saved."""
        with self._state:
            self._waiting = None
            while self._writing:
                self._state.wait()
            with contextlib.suppress(OSError):
                self._path.unlink(missing_ok=True)

    def flush(self) -> None:
        """Write at once what is still waiting."""
        with self._state:
            case, self._waiting = self._waiting, None
            while self._writing:
                self._state.wait()
        if case is not None:
            self._write(case)

    def close(self, *, keep: bool) -> None:
        """End in order; `keep` leaves the unsaved state for the next start."""
        if keep:
            self.flush()
        else:
            self.clear()
        with self._state:
            self._closed = True
            self._state.notify_all()
        self._thread.join(timeout=5.0)
        self._lock.release()
        if not self._path.exists():
            with contextlib.suppress(OSError):
                Path(self._lock.lock_file).unlink(missing_ok=True)

    def _run(self) -> None:
        while True:
            with self._state:
                while self._waiting is None and not self._closed:
                    self._state.wait()
                if self._closed:
                    return
                # Wait for the hand to rest: further edits replace the waiting one meanwhile.
                self._state.wait_for(lambda: self._closed, timeout=self._delay_s)
                case, self._waiting = self._waiting, None
                self._writing = case is not None
            if case is not None:
                self._write(case)
                with self._state:
                    self._writing = False
                    self._state.notify_all()

    def _write(self, case: Case) -> None:
        try:
            write_case(case, self._path)
            self.problem = None
        except StainmapError as error:
            self.problem = error


def abandoned(folder: Path) -> tuple[Recovered, ...]:
    """Return what crashed programs left behind, newest first."""
    found = []
    for path in folder.glob(f"*{SUFFIX}") if folder.is_dir() else ():
        lock = filelock.FileLock(path.with_suffix(".lock"), timeout=0)
        try:
            lock.acquire()
        except (filelock.Timeout, OSError):
            continue
        lock.release()
        with contextlib.suppress(OSError):
            found.append(Recovered(path=path, modified_s=path.stat().st_mtime))
    return tuple(sorted(found, key=lambda one: -one.modified_s))
