"""Who has a case open: a lock beside its file that dies with the program, and a note of whose."""

from __future__ import annotations

import contextlib
import json
import os
import socket
import time
from dataclasses import dataclass
from pathlib import Path

import filelock


@dataclass(slots=True, eq=False)
class CaseLock:
    """Says that a case is open here. The lock dies with the process that holds it."""

    _lock: filelock.BaseFileLock
    _note: Path

    @classmethod
    def take(cls, path: Path) -> CaseLock | None:
        """Take the lock of a case; return None if somebody else has it.

        Where the folder cannot be written, or locks do not work, nobody can save there either;
        a lock that guards nothing is returned.
        """
        beside = path.parent / f".{path.name}.lock"
        lock = filelock.FileLock(beside, timeout=0)
        note = path.parent / f".{path.name}.who"
        try:
            lock.acquire()
        except filelock.Timeout:
            return None
        except (OSError, NotImplementedError):
            return cls(lock, note)
        with contextlib.suppress(OSError):
            note.write_text(
                json.dumps(
                    {"host": socket.gethostname(), "process": os.getpid(), "since": time.time()}
                ),
                encoding="utf-8",
            )
        return cls(lock, note)

    def release(self) -> None:
        """Let others open the case for writing."""
        if self._lock.is_locked:
            with contextlib.suppress(OSError):
                self._note.unlink(missing_ok=True)
            path = Path(self._lock.lock_file)
            self._lock.release()
            with contextlib.suppress(OSError):
                path.unlink(missing_ok=True)


def holder_of(path: Path) -> str:
    """Return who has a case open, as "computer, process 123", or an empty string."""
    try:
        note = json.loads((path.parent / f".{path.name}.who").read_text(encoding="utf-8"))
        return f"{note['host']}, process {note['process']}"
    except (OSError, ValueError, KeyError, TypeError):
        return ""
