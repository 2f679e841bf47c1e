"""The version of a lab book's schema, and bringing it up to date by Alembic's migrations.

No alembic.ini: where the migrations lie is known, in a wheel and in a checkout alike.
"""

from __future__ import annotations

from pathlib import Path
from typing import Final

from alembic import command
from alembic.config import Config
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, inspect, text

from stainmap.errors import LabbookError
from stainmap.labbook.tables import VERSION_TABLE

MIGRATIONS: Final = Path(__file__).resolve().parent / "migrations"


def newest_version() -> str:
    """Return the version this program works with, as "0002"."""
    return known_versions()[-1]


def known_versions() -> tuple[str, ...]:
    """Return all versions there have been, oldest first."""
    steps = list(ScriptDirectory.from_config(_config()).walk_revisions())
    return tuple(step.revision for step in reversed(steps))


def version_of(connection: Connection) -> str | None:
    """Return the version a database has, None if it holds no table at all.

    Raises
    ------
    LabbookError
        If it holds tables but is no lab book.
    """
    tables = inspect(connection).get_table_names()
    if not tables:
        return None
    if VERSION_TABLE in tables:
        rows = connection.execute(text(f"SELECT version_num FROM {VERSION_TABLE}")).all()  # noqa: S608 - our own constant
        if len(rows) == 1:
            return str(rows[0][0])
    raise LabbookError(
        "This database is no lab book.", advice="Move it to another folder, then start again."
    )


def upgrade(connection: Connection, to: str = "head") -> None:
    """Bring the tables to a version, the newest if none is named.

    The connection is in a transaction that belongs to the caller, with foreign keys off: tables
    that are built anew would take with them what refers to them. Kept only if afterwards all
    references hold.

    Raises
    ------
    LabbookError
        If a reference leads nowhere afterwards.
    """
    config = _config()
    config.attributes["connection"] = connection
    command.upgrade(config, to)
    if (
        connection.dialect.name == "sqlite"
        and connection.execute(text("PRAGMA foreign_key_check")).first()
    ):
        raise LabbookError(
            "The lab book cannot be brought to the new version: entries in it refer to others that"
            " are missing.",
            advice="Go on with the version of the program it was written by, and report this.",
        )


def _config() -> Config:
    config = Config()
    # A percent sign means something to Alembic's settings.
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    config.set_main_option("path_separator", "os")
    return config
