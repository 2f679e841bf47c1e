"""One state in a journal of unsaved work: whose it is, its revision, and what it consists of.

A state is a small file that names its entries by checksum; the entries lie in files of those names,
so that what two states share lies there once. The first line of a state is the checksum of the
rest. Dates of files play no part: copying, clocks and time zones change them.
"""

from __future__ import annotations

import hashlib
from pathlib import Path

import msgspec

FORMAT = "stainmap journal"
VERSION = 1
ENTRIES = "entries"
_PREFIX = "state-"
_MOST_BYTES = 1 << 20


class State(msgspec.Struct, frozen=True, kw_only=True):
    """What one state of a case consists of.

    Attributes
    ----------
    revision
        Rises with every state, also from one journal to the one that carries its work on.
    code, name
        Of the case, and what its file or mesh is called.
    file, file_digest
        Where the case was last saved, as a path, and what lay there then; empty if nowhere.
    entries
        Name of each entry of the case -> SHA-256 and bytes.
    """

    format: str = FORMAT
    version: int = VERSION
    revision: int
    code: str
    name: str
    file: str = ""
    file_digest: str = ""
    entries: dict[str, tuple[str, int]]


def state_path(folder: Path, revision: int) -> Path:
    """Return where a state of a journal lies."""
    return folder / f"{_PREFIX}{revision:012d}"


def entry_path(folder: Path, digest: str) -> Path:
    """Return where an entry of a journal lies."""
    return folder / ENTRIES / digest


def state_paths(folder: Path) -> list[Path]:
    """Return the files of all states in a journal, newest revision first."""
    found = [path for path in folder.glob(f"{_PREFIX}*") if _revision_in(path) >= 0]
    return sorted(found, key=_revision_in, reverse=True)


def highest_revision(folder: Path) -> int:
    """Return the highest revision in any journal beneath a folder; 0 without any."""
    found = folder.glob(f"*/{_PREFIX}*") if folder.is_dir() else ()
    return max((_revision_in(path) for path in found), default=0)


def encoded(state: State) -> bytes:
    """Return the content of a state's file."""
    body = msgspec.json.encode(state)
    return digest_of(body).encode() + b"\n" + body


def read_state(path: Path) -> State | None:
    """Return the state in a file, or None if it is damaged, cut short or of another version."""
    try:
        if path.stat().st_size > _MOST_BYTES:
            return None
        given, _, body = path.read_bytes().partition(b"\n")
        if digest_of(body).encode() != given:
            return None
        state = msgspec.json.decode(body, type=State)
    except (OSError, msgspec.DecodeError):
        return None
    known = state.format == FORMAT and state.version == VERSION
    named = all(_is_digest(digest) for digest, _ in state.entries.values())
    return state if known and named else None


def digest_of(content: bytes) -> str:
    """Return the SHA-256 of some bytes, 64 hexadecimal digits."""
    return hashlib.sha256(content).hexdigest()


def _is_digest(text: str) -> bool:
    """Return True if a name can lead nowhere but into the folder of entries."""
    return len(text) == 64 and set(text) <= set("0123456789abcdef")


def _revision_in(path: Path) -> int:
    number = path.name.removeprefix(_PREFIX)
    return int(number) if number.isdecimal() and number.isascii() else -1
