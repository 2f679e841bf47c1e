"""Unsaved work kept against a crash: every state of the open case, written in a thread of its own.

Nothing here makes the window wait. What is kept is on the system's side a moment after the edit,
where a killed program cannot take it along, and on the disk itself soon after. The last two states
are kept, so that one that was cut short still leaves the one before.
"""

from __future__ import annotations

import contextlib
import os
import shutil
import threading
import uuid
import weakref
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import filelock
from numpy.typing import NDArray

from stainmap.errors import StainmapError
from stainmap.files.atomic import make_folder, settle, write_bytes
from stainmap.files.case_content import (
    DOCUMENT,
    MESH,
    array_entry,
    arrays_of,
    document_bytes,
    npy_bytes,
)
from stainmap.files.case_lock import let_go
from stainmap.files.journal_state import (
    ENTRIES,
    State,
    digest_of,
    encoded,
    entry_path,
    highest_revision,
    read_state,
    state_path,
    state_paths,
)
from stainmap.model.case import Case
from stainmap.words import translate

# What could not be written is tried again this often, s: the disk may have room by then.
_RETRY_S = 20.0
_KEPT_STATES = 2
_CLOSE_S = 10.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Note:
    case: Case
    file: Path | None
    file_digest: str


class Journal:
    """Keeps the newest state of the open case beneath `folder`.

    Its lock dies with the process, by which `recovery.abandoned` tells the work of a program that
    was killed from that of one still running.

    Parameters
    ----------
    folder
        Where journals of all running programs lie.
    on_problem
        Called from the journal's thread with the error when nothing can be kept, and with None
        when it can again.

    Raises
    ------
    StainmapError
        If the folder cannot be made.
    """

    def __init__(
        self, folder: Path, *, on_problem: Callable[[StainmapError | None], None] | None = None
    ) -> None:
        make_folder(folder)
        name = f"{os.getpid()}-{uuid.uuid4().hex[:8]}"
        # The lock first: a folder without one belongs to nobody.
        self._lock = filelock.FileLock(folder / f"{name}.lock", timeout=0)
        with contextlib.suppress(OSError, NotImplementedError):
            self._lock.acquire()
        self.folder = folder / name
        make_folder(self.folder / ENTRIES)
        self.on_problem = on_problem
        self.problem: StainmapError | None = None
        self._revision = highest_revision(folder)
        self._known: dict[int, tuple[weakref.ref[NDArray[Any]], str, int]] = {}
        self._state = threading.Condition()
        self._wanted: _Note | None = None
        self._forget = False
        self._busy = False
        self._closed = False
        self._ended = False
        self._then: list[Callable[[], None]] = []
        self._thread = threading.Thread(target=self._run, name="stainmap-journal", daemon=True)
        self._thread.start()

    def note(
        self,
        case: Case,
        *,
        file: Path | None = None,
        file_digest: str = "",
        then: Callable[[], None] | None = None,
    ) -> None:
        """Keep this state; returns at once.

        Parameters
        ----------
        file, file_digest
            Where the case was last saved, and the checksum of what was written there.
        then
            Called in the journal's thread once this state, or a later one, is on the disk.
        """
        with self._state:
            self._wanted = _Note(case=case, file=file, file_digest=file_digest)
            self._forget = False
            if then is not None:
                self._then.append(then)
            self._state.notify_all()

    def forget(self) -> None:
        """Drop what is kept, because it lies in the case's own file; returns at once."""
        with self._state:
            self._wanted, self._forget = None, True
            self._state.notify_all()

    def flush(self, timeout_s: float = _CLOSE_S) -> bool:
        """Wait until everything noted is on the disk; return False if that took too long."""
        with self._state:
            idle = self._state.wait_for(
                lambda: not (self._busy or self._wanted or self._forget) or self._stuck, timeout_s
            )
            return idle and not self._stuck

    def close(self, *, keep: bool) -> None:
        """End in order; `keep` leaves the unsaved state for the next start."""
        if self._ended:
            return
        self._ended = True
        if not keep:
            self.forget()
        self.flush()
        with self._state:
            self._closed = True
            self._state.notify_all()
        self._thread.join(timeout=_CLOSE_S)
        if not state_paths(self.folder):
            shutil.rmtree(self.folder, ignore_errors=True)
        if self.folder.exists():
            self._lock.release()
        else:
            let_go(self._lock)

    @property
    def _stuck(self) -> bool:
        return self.problem is not None and not self._busy

    # --- in the thread of its own --------------------------------------------------------

    def _run(self) -> None:
        while True:
            with self._state:
                wait_s = _RETRY_S if self.problem is not None else None
                fresh = self._state.wait_for(self._has_work, wait_s)
                if self._closed:
                    return
                if not fresh and self._wanted is None:
                    continue
                note, forget = self._wanted, self._forget
                # Those of a note that comes meanwhile wait for that one.
                then, self._then = self._then, []
                self._forget, self._busy = False, True
            problem = None
            if forget:
                self._drop()
            else:
                problem = self._kept(note)
            with self._state:
                if problem is None and self._wanted is note:
                    self._wanted = None
                if problem is not None:
                    then, self._then = [], then + self._then
            for call in then:
                call()
            with self._state:
                told = problem is not None or self.problem is not None
                self.problem, self._tried, self._busy = problem, note, False
                self._state.notify_all()
            if told and self.on_problem is not None:
                self.on_problem(problem)

    _tried: _Note | None = None

    def _has_work(self) -> bool:
        """Return True if there is something to do that has not just failed."""
        new = self._wanted is not None and (self.problem is None or self._wanted is not self._tried)
        return self._closed or self._forget or new

    def _kept(self, note: _Note | None) -> StainmapError | None:
        if note is None:
            return None
        try:
            self._write(note)
        except StainmapError as error:
            return error
        except Exception as error:  # noqa: BLE001 - the edge of a thread: it must go on keeping
            problem = StainmapError(
                translate("journal", "Unsaved work cannot be kept ({error}).").format(error=error)
            )
            problem.__cause__ = error
            return problem
        return None

    def _drop(self) -> None:
        for path in state_paths(self.folder):
            with contextlib.suppress(OSError):
                path.unlink()
        self._drop_entries({})

    def _write(self, note: _Note) -> None:
        case = note.case
        make_folder(self.folder / ENTRIES)
        fresh: list[Path] = []
        entries = {
            DOCUMENT: self._put_bytes(document_bytes(case), fresh),
            MESH: self._put_bytes(case.source.content, fresh, digest=case.source.sha256),
        }
        for name, array in arrays_of(case).items():
            entries[array_entry(name)] = self._put_array(array, fresh)
        state = State(
            revision=self._revision + 1,
            code=case.code,
            name=case.source.name if note.file is None else note.file.name,
            file="" if note.file is None else str(note.file),
            file_digest=note.file_digest,
            entries=entries,
        )
        path = state_path(self.folder, state.revision)
        write_bytes(path, encoded(state), settled=False)
        self._revision = state.revision
        # From here on it outlives this program. Now the same for the machine; only then is what
        # came before let go.
        for one in (*fresh, path):
            settle(one)
        self._drop_older()

    def _put_array(self, array: NDArray[Any], fresh: list[Path]) -> tuple[str, int]:
        known = self._known.get(id(array))
        if known is not None and known[0]() is array:
            _, digest, size = known
            if entry_path(self.folder, digest).exists():
                return digest, size
        content = npy_bytes(array)
        digest, size = self._put_bytes(content, fresh)
        self._known[id(array)] = (weakref.ref(array), digest, size)
        return digest, size

    def _put_bytes(self, content: bytes, fresh: list[Path], *, digest: str = "") -> tuple[str, int]:
        digest = digest or digest_of(content)
        path = entry_path(self.folder, digest)
        if not path.exists():
            write_bytes(path, content, settled=False)
            fresh.append(path)
        return digest, len(content)

    def _drop_older(self) -> None:
        paths = state_paths(self.folder)
        kept: dict[str, tuple[str, int]] = {}
        for path in paths[:_KEPT_STATES]:
            state = read_state(path)
            if state is not None:
                kept.update({digest: ("", 0) for digest, _ in state.entries.values()})
        for path in paths[_KEPT_STATES:]:
            with contextlib.suppress(OSError):
                path.unlink()
        self._drop_entries(kept)

    def _drop_entries(self, kept: dict[str, tuple[str, int]]) -> None:
        with contextlib.suppress(OSError):
            for path in (self.folder / ENTRIES).iterdir():
                if path.name not in kept:
                    path.unlink()
        self._known = {key: one for key, one in self._known.items() if one[1] in kept}
