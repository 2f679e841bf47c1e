"""Opening the lab book: made if missing, brought up to date, kept aside if it is damaged."""

from __future__ import annotations

import contextlib
import sqlite3
from datetime import UTC, datetime
from pathlib import Path

import filelock
from sqlalchemy import Connection, inspect, text

from stainmap.errors import LabbookError
from stainmap.labbook.connecting import (
    WAIT_S,
    DamagedError,
    reading,
    said,
    sqlite_engine,
    writing,
)
from stainmap.labbook.store import Labbook
from stainmap.labbook.tables import VERSION, VERSION_TABLE
from stainmap.words import translate

# What SQLite may have left beside the file; a damaged book keeps them.
_COMPANIONS = ("", "-journal", "-wal", "-shm")


def open_labbook(path: Path, *, wait_s: float = WAIT_S) -> Labbook:
    """Return the lab book in a file, which is made if it is not there.

    Before tables of an older version are changed, the file is copied beside itself; the change is
    one transaction. A damaged file is renamed, never deleted, and a new book begun: what happened
    stands in `Labbook.remark` then, for the client to show.

    Parameters
    ----------
    path
        The file; the clients take `paths.labbook_file`.
    wait_s
        How long another program that is opening or writing the book is waited for.

    Raises
    ------
    LabbookError
        If it was written by a newer version, is no lab book, is locked for long, or file or folder
        cannot be written.
    """
    _make_folder(path.parent)
    try:
        with filelock.FileLock(path.with_name(f"{path.name}.lock"), timeout=wait_s):
            remark = _made_ready(path, wait_s)
    except filelock.Timeout as error:
        raise LabbookError(
            translate("opening", "Another program is opening the lab book and does not end."),
            where=str(path),
            advice=translate("opening", "Close it, then do this again."),
        ) from error
    except OSError as error:
        raise _not_writable(path, error) from error
    return Labbook(sqlite_engine(path, wait_s=wait_s), where=str(path), remark=remark)


def _made_ready(path: Path, wait_s: float) -> str:
    """Make, check and upgrade the file, which nobody else is opening; return what to tell."""
    remark = ""
    try:
        version = _version_on_disk(path, wait_s)
    except DamagedError:
        aside = _kept_aside(path)
        remark = translate(
            "lab book",
            "The lab book was damaged; it is kept as {name} beside a new one that is empty.",
        ).format(name=aside.name)
        version = _version_on_disk(path, wait_s)
    if version != VERSION:
        _upgrade(path, version, wait_s)
    return remark


def _upgrade(path: Path, version: str | None, wait_s: float) -> None:
    """Bring a file to the newest version, or refuse one that is newer still."""
    from stainmap.labbook.upgrading import known_versions, upgrade  # noqa: PLC0415 - slow

    if version is not None and version not in known_versions():
        raise LabbookError(
            translate(
                "opening",
                "A newer version of the program wrote this lab book (version {version}; this "
                "one reads up to {version_2}).",
            ).format(version=version, version_2=VERSION),
            where=str(path),
            advice=translate(
                "opening", "Use that version, or name another folder for this one's data."
            ),
        )
    if version is not None:
        _back_up(path, version)
    engine = sqlite_engine(path, wait_s=wait_s, foreign_keys=False)
    with writing(engine, str(path)) as connection:
        upgrade(connection)


def _version_on_disk(path: Path, wait_s: float) -> str | None:
    """Return the version of the file, None if it is new; raise DamagedError if it is damaged."""
    path.touch(exist_ok=True)
    try:
        with reading(sqlite_engine(path, wait_s=wait_s), str(path)) as connection:
            _check_whole(connection.execute(text("PRAGMA quick_check")).scalars().all())
            return _version_of(connection)
    except DamagedError:
        raise
    except LabbookError as error:
        raise LabbookError(error.message, where=str(path), advice=error.advice) from error


def _version_of(connection: Connection) -> str | None:
    """Return the version a database has, None if it holds no table; refuse somebody else's."""
    tables = inspect(connection).get_table_names()
    if not tables:
        return None
    if VERSION_TABLE in tables:
        rows = connection.execute(text(f"SELECT version_num FROM {VERSION_TABLE}")).all()  # noqa: S608 - our own constant
        if len(rows) == 1:
            return str(rows[0][0])
    raise LabbookError(
        translate("opening", "This database is no lab book."),
        advice=translate("opening", "Move it to another folder, then start again."),
    )


def _check_whole(found: object) -> None:
    if found != ["ok"]:
        raise DamagedError(translate("opening", "The lab book is damaged."))


def _kept_aside(path: Path) -> Path:
    """Rename a damaged file and what belongs to it; return the new place."""
    aside = _free_name(path, "damaged")
    for ending in _COMPANIONS:
        one = path.with_name(path.name + ending)
        if one.exists():
            one.rename(aside.with_name(aside.name + ending))
    return aside


def _back_up(path: Path, version: str) -> None:
    """Copy the file before its tables are changed; a copy is whole or not there."""
    copy = _free_name(path, f"version-{version}")
    beside = copy.with_name(f"{copy.name}.part")
    with said(str(path)):
        source, target = sqlite3.connect(path), sqlite3.connect(beside)
        try:
            source.backup(target)
        except BaseException:
            target.close()
            with contextlib.suppress(OSError):
                beside.unlink(missing_ok=True)
            raise
        finally:
            source.close()
            target.close()
    beside.replace(copy)


def _free_name(path: Path, what: str) -> Path:
    """Return a name beside the file that says what it is and when, and is not taken."""
    now = datetime.now(UTC)
    stem = f"{path.stem}.{what}.{now:%Y%m%d-%H%M%S}"
    names = [stem, *(f"{stem}-{number}" for number in range(2, 1000))]
    return next(
        place
        for place in (path.with_name(name + path.suffix) for name in names)
        if not place.exists()
    )


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise _not_writable(folder, error) from error


def _not_writable(path: Path, error: OSError) -> LabbookError:
    return LabbookError(
        translate("opening", "The lab book cannot be kept here ({value}).").format(
            value=error.strerror or error
        ),
        where=str(path),
        advice=translate(
            "opening", "Look at the rights of the folder and whether its disk is full."
        ),
    )
