"""Who has a case open: a lock beside its file that dies with the program, and a note of whose."""

from __future__ import annotations

import contextlib
import getpass
import json
import os
import socket
import time
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

import filelock

from stainmap.words import translate


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
        note = _note_of(path)
        if not path.parent.is_dir():
            # Locks would make the folder, on the wrong disk where a drive has gone.
            return cls(lock, note)
        try:
            lock.acquire()
        except filelock.Timeout:
            return None
        except (OSError, NotImplementedError):
            return cls(lock, note)
        with contextlib.suppress(OSError):
            note.write_text(
                json.dumps(
                    {
                        "user": _user(),
                        "host": socket.gethostname(),
                        "process": os.getpid(),
                        "since": time.time(),
                    }
                ),
                encoding="utf-8",
            )
        return cls(lock, note)

    def release(self) -> None:
        """Let others open the case for writing."""
        if self._lock.is_locked:
            with contextlib.suppress(OSError):
                self._note.unlink(missing_ok=True)
            let_go(self._lock)


def let_go(lock: filelock.BaseFileLock) -> None:
    """Release a lock and take its file away, so that no two can ever hold it at once.

    Taken away while it is held, whoever waits for the old file notices; taken away afterwards it
    might be somebody else's already. Where open files cannot be removed, nobody can hold it then.
    """
    path = Path(lock.lock_file)
    if os.name == "posix":
        with contextlib.suppress(OSError):
            path.unlink(missing_ok=True)
    lock.release()
    if os.name != "posix":
        with contextlib.suppress(OSError):
            path.unlink(missing_ok=True)


def holder_of(path: Path) -> str:
    """Return who has a case open, as "anna on bench-2, process 123, since 9:15 on 2026-05-04".

    An empty string where that is not known. The note is only words: the lock decides.
    """
    try:
        note = json.loads(_note_of(path).read_text(encoding="utf-8"))
        since = datetime.fromtimestamp(float(note["since"])).astimezone()
        text = (
            translate("case lock", "{user} on {host}, process {process}, since {clock} on {day}")
            if note.get("user")
            else translate("case lock", "{host}, process {process}, since {clock} on {day}")
        )
        return text.format(
            user=note.get("user"),
            host=note["host"],
            process=int(note["process"]),
            clock=f"{since:%H:%M}",
            day=f"{since:%Y-%m-%d}",
        )
    except (OSError, ValueError, KeyError, TypeError, AttributeError, OverflowError):
        return ""


def _note_of(path: Path) -> Path:
    return path.parent / f".{path.name}.who"


def _user() -> str:
    try:
        return getpass.getuser()
    except (OSError, KeyError, ImportError):
        return ""
