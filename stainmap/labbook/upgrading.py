"""Bringing a lab book's tables up to date by Alembic's migrations.

Loaded only where there is something to bring up to date: the library takes a third of a second.
No alembic.ini: where the migrations lie is known, in a wheel and in a checkout alike.
"""

from __future__ import annotations

from pathlib import Path
from typing import Final

from alembic import command
from alembic.config import Config
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, text

from stainmap.errors import LabbookError
from stainmap.words import translate

MIGRATIONS: Final = Path(__file__).resolve().parent / "migrations"


def known_versions() -> tuple[str, ...]:
    """Return all versions there have been, oldest first."""
    steps = list(ScriptDirectory.from_config(_config()).walk_revisions())
    return tuple(step.revision for step in reversed(steps))


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
            translate(
                "upgrading",
                "The lab book cannot be brought to the new version: entries in it refer to"
                " others that"
                " are missing.",
            ),
            advice=translate(
                "upgrading",
                "Go on with the version of the program it was written by, and report this.",
            ),
        )


def _config() -> Config:
    config = Config()
    # A percent sign means something to Alembic's settings.
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    config.set_main_option("path_separator", "os")
    return config
