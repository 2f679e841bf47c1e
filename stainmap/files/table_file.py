"""Reads the small TOML tables that somebody may change by hand: limits, shades."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

from stainmap.errors import CatalogueError
from stainmap.words import translate


def read_table(path: Path, kind: str, *, most_bytes: int, advice: str) -> dict[str, Any]:
    """Return what a TOML file holds, unchecked.

    Parameters
    ----------
    path
        The file.
    kind
        What it is a table of, in a word.
    most_bytes
        Larger files are refused before they are understood.
    advice
        What to do about a file that is no TOML.

    Raises
    ------
    CatalogueError
        If it cannot be read, is too large, or is no TOML.
    """
    where = path.name
    try:
        with path.open("rb") as file:
            content = file.read(most_bytes + 1)
        if len(content) > most_bytes:
            raise CatalogueError(
                translate("table file", "The file is too large for a table of {kind}.").format(
                    kind=kind
                ),
                where=where,
            )
        return tomllib.loads(content.decode("utf-8"))
    except OSError as error:
        raise CatalogueError(
            translate("table file", "The table of {kind} cannot be read ({value}).").format(
                kind=kind, value=error.strerror or error
            ),
            where=where,
        ) from error
    except (UnicodeDecodeError, tomllib.TOMLDecodeError, RecursionError) as error:
        raise CatalogueError(
            translate("table file", "The file is not valid TOML: {error}.").format(error=error),
            where=where,
            advice=advice,
        ) from error
