"""A laboratory's own materials file on the command line."""

from __future__ import annotations

from pathlib import Path

import click

from stainmap.files.catalogue import with_file
from stainmap.model.material import Catalogue


def with_own_materials(
    base: Catalogue, path: Path | None, *, as_json: bool
) -> tuple[Catalogue, list[str]]:
    """Return the materials with those of a file, and a sentence for each entry left out.

    The sentences are printed unless an object is; without a file nothing changes.

    Raises
    ------
    CatalogueError
        If nothing of the file can be used.
    """
    if path is None:
        return base, []
    read = with_file(base, path)
    notes = [str(problem) for problem in read.problems]
    if not as_json:
        for note in notes:
            click.echo(f"left out: {note}")
    return read.catalogue, notes
