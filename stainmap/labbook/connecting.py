"""Connections to the file of the lab book, and sentences for what goes wrong with it.

The rollback journal is kept, not the write-ahead log: the book is written a few times an hour, in
milliseconds, so readers hardly ever wait; it stays one file that anybody can copy while nothing is
open; and the log needs memory shared between processes, which folders on a network do not have.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Final

from sqlalchemy import Connection, Engine, create_engine, event
from sqlalchemy.exc import DBAPIError
from sqlalchemy.pool import NullPool

from stainmap.errors import LabbookError
from stainmap.words import marked, translate

WAIT_S: Final = 10.0
"""How long somebody else's writing is waited for; one transaction takes some milliseconds."""

_WRITES = "stainmap_writes"
_LOCKED = (sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED)
_DAMAGED = (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB)
_SENTENCES: Final = {
    sqlite3.SQLITE_READONLY: (
        marked("connecting", "It may not be written."),
        marked("connecting", "Look at the rights of file and folder."),
    ),
    sqlite3.SQLITE_PERM: (
        marked("connecting", "It may not be opened."),
        marked("connecting", "Look at the rights of file and folder."),
    ),
    sqlite3.SQLITE_CANTOPEN: (
        marked("connecting", "It cannot be opened."),
        marked("connecting", "Look whether file and folder are there."),
    ),
    sqlite3.SQLITE_FULL: (
        marked("connecting", "The disk is full."),
        marked("connecting", "Free some space and do it again."),
    ),
    sqlite3.SQLITE_IOERR: (
        marked("connecting", "The disk does not read or write it."),
        marked("connecting", "Look after the disk."),
    ),
}


class DamagedError(LabbookError):
    """The file is no database any more."""


def sqlite_engine(path: Path, *, wait_s: float = WAIT_S, foreign_keys: bool = True) -> Engine:
    """Return an engine for a file that is there; nothing is opened yet.

    Parameters
    ----------
    path
        The file. It is never made here, so that one deleted meanwhile is not taken for empty.
    wait_s
        How long a lock is waited for.
    foreign_keys
        False while tables are built anew.
    """
    address = f"{path.resolve().as_uri()}?mode=rw"
    # Every use opens the file and closes it again: threads share nothing, and between two uses
    # the file can be moved or copied.
    engine = create_engine(
        "sqlite://",
        creator=lambda: sqlite3.connect(address, uri=True, timeout=wait_s),
        poolclass=NullPool,
    )

    def prepare(connection: sqlite3.Connection, _record: Any) -> None:
        # Python's own way to begin transactions leaves out changes of tables.
        connection.isolation_level = None
        connection.execute(f"PRAGMA foreign_keys = {'ON' if foreign_keys else 'OFF'}")
        connection.execute("PRAGMA synchronous = FULL")

    def begin(connection: Connection) -> None:
        # A writer takes its turn at the beginning: from a reader's lock it might have to give up
        # half-way, and waiting would not help.
        writes = connection.get_execution_options().get(_WRITES, False)
        connection.exec_driver_sql("BEGIN IMMEDIATE" if writes else "BEGIN")

    event.listen(engine, "connect", prepare)
    event.listen(engine, "begin", begin)
    return engine


@contextmanager
def reading(engine: Engine, where: str) -> Iterator[Connection]:
    """Give a connection whose reads all see the same state."""
    with said(where), engine.begin() as connection:
        yield connection


@contextmanager
def writing(engine: Engine, where: str) -> Iterator[Connection]:
    """Give a connection in a transaction that is kept as a whole or not at all."""
    with said(where), engine.execution_options(**{_WRITES: True}).begin() as connection:
        yield connection


@contextmanager
def said(where: str) -> Iterator[None]:
    """Turn what the database says into a sentence.

    Raises
    ------
    DamagedError
        If the file is damaged.
    LabbookError
        If it is locked for long, may not be written, or cannot be opened.
    """
    try:
        yield
    except DBAPIError as error:
        raise _sentence(error.orig, where) from error
    except sqlite3.Error as error:
        raise _sentence(error, where) from error


def _sentence(error: BaseException | None, where: str) -> LabbookError:
    code = getattr(error, "sqlite_errorcode", 0) & 0xFF
    if code in _DAMAGED:
        return DamagedError(
            translate("connecting", "The lab book is damaged."),
            where=where,
            advice=translate(
                "connecting", "Start the program again: it keeps the damaged file aside."
            ),
        )
    if code in _LOCKED:
        return LabbookError(
            translate(
                "connecting", "Another program has been writing into the lab book all the time."
            ),
            where=where,
            advice=translate("connecting", "Close it, then do this again."),
        )
    if code in _SENTENCES:
        message, advice = (translate("connecting", text) for text in _SENTENCES[code])
    else:
        message = translate("connecting", "The lab book cannot be used ({error}).")
        message = message.format(error=error)
        advice = translate("connecting", "Start the program again.")
    return LabbookError(message, where=where, advice=advice)
