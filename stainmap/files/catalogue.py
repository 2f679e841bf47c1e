"""Materials in TOML catalogue files: the starter set, and a laboratory's own beside it.

Version 1. A catalogue file starts with ``format = "stainmap materials"`` and ``version = 1``; then
come any number of tables ``[[block]]``, ``[[ion]]``, ``[[liquid]]``, ``[[dye]]``,
``[[programme]]``, ``[[stump]]`` and ``[[cement]]``; see `catalogue_tables`.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Final

from stainmap.errors import CatalogueError
from stainmap.files.atomic import write_bytes
from stainmap.files.catalogue_lines import CatalogueLines
from stainmap.files.catalogue_tables import (
    CatalogueFile,
    Kind,
    TableReader,
    catalogue_to_dict,
    did_you_mean,
    whole_or_refused,
)
from stainmap.files.toml_text import toml_text
from stainmap.model.material import Catalogue
from stainmap.paths import resource
from stainmap.words import translate

FORMAT: Final = "stainmap materials"
VERSION: Final = 1
_MOST_BYTES: Final = 4 << 20


def read_catalogue(path: Path) -> Catalogue:
    """Return the materials in a TOML file.

    What its entries refer to (ions, stumps) may lie in another catalogue; `merged` checks that.

    Raises
    ------
    CatalogueError
        One sentence naming the file, and the line, entry and field where there is one.
    """
    return whole_or_refused(_read(path)[0])


def with_file(base: Catalogue, path: Path) -> CatalogueFile:
    """Return `base` with the materials of a laboratory's own file, as far as that is safe.

    An entry with a duplicate name, an unknown key, a wrong type or a value out of range is left
    out and said, and so are liquids and blocks that then lack what they refer to and blocks whose
    colour no ceramic can have. Of two entries of one name the first holds. Everything else is
    taken; a material takes the place of one of the same name.

    Raises
    ------
    CatalogueError
        If the file cannot be read as a materials file at all, or no entry of it can be used.
    """
    read, places = _read(path)
    result = _merged_where_safe(base, read.catalogue, path.name, places)
    problems = (*read.problems, *result.problems)
    if problems and result.catalogue == base:
        raise problems[0]
    return CatalogueFile(catalogue=result.catalogue, problems=problems)


def entries_of(base: Catalogue, path: Path) -> CatalogueFile:
    """Return the entries of a laboratory's own file that can be used beside `base`, without it.

    What is left out is said as by `with_file`; a file of which nothing can be used is empty here.

    Raises
    ------
    CatalogueError
        If the file cannot be read as a materials file at all.
    """
    read, places = _read(path)
    own = read.catalogue
    result = _merged_where_safe(base, own, path.name, places)
    usable = replace(
        own,
        liquids=tuple(one for one in own.liquids if one in result.catalogue.liquids),
        blocks=tuple(one for one in own.blocks if one in result.catalogue.blocks),
    )
    return CatalogueFile(
        catalogue=usable, problems=(*read.problems, *result.problems), places=dict(places)
    )


def write_catalogue(path: Path, catalogue: Catalogue, *, comment: str = "") -> None:
    """Write materials as a TOML file, atomically; `comment` comes first, line by line.

    Raises
    ------
    StainmapError
        If the file cannot be written.
    """
    document = {"format": FORMAT, "version": VERSION, **catalogue_to_dict(catalogue)}
    write_bytes(path, toml_text(document, comment=comment).encode("utf-8"))


@cache
def starter_catalogue() -> Catalogue:
    """Return the materials that come with the program, every one of them invented.

    Raises
    ------
    CatalogueError
        If a shipped file has been damaged.
    """
    catalogue = Catalogue()
    for path in sorted(resource("materials").glob("*.toml")):
        catalogue = joined(catalogue, read_catalogue(path))
    check_references(catalogue, where="starter materials")
    return catalogue


def merged(base: Catalogue, added: Catalogue, *, where: str) -> Catalogue:
    """Return both catalogues as one; an added material takes the place of one of the same name.

    Raises
    ------
    CatalogueError
        If the result refers to an ion or stump that is in neither, or if the nominal colour of
        an added block cannot be reached.
    """
    return whole_or_refused(_merged_where_safe(base, added, where, {}))


def _merged_where_safe(
    base: Catalogue, added: Catalogue, where: str, places: Mapping[tuple[str, str], str]
) -> CatalogueFile:
    """Return both catalogues as one, without what lacks something or is impossible."""
    from stainmap.predict.blocks import check_block  # noqa: PLC0415

    everything = joined(base, added)
    problems: list[CatalogueError] = []

    def tried(kind: str, name: str, trial: Catalogue) -> bool:
        place = places.get((kind, name), f"{where}, {kind} '{name}'")
        try:
            check_references(trial, where=where)
            for block in trial.blocks:
                check_block(block, everything)
        except CatalogueError as error:
            problems.append(CatalogueError(error.message, where=place, advice=error.advice))
            return False
        return True

    known = replace(everything, blocks=(), liquids=())
    usable = replace(
        added,
        liquids=tuple(
            one
            for one in added.liquids
            if tried("liquid", one.name, replace(known, liquids=(one,)))
        ),
        blocks=tuple(
            one for one in added.blocks if tried("block", one.name, replace(known, blocks=(one,)))
        ),
    )
    return CatalogueFile(catalogue=joined(base, usable), problems=tuple(problems))


def check_references(catalogue: Catalogue, *, where: str) -> None:
    """Raise CatalogueError if a liquid names an unknown ion, or a block an unknown backing."""
    ions = {ion.name for ion in catalogue.ions}
    for liquid in catalogue.liquids:
        for name, _ in liquid.amplitudes_per_mm:
            if name not in ions:
                raise CatalogueError(
                    translate(
                        "catalogue", "It holds the ion '{name}', which no catalogue describes."
                    ).format(name=name),
                    where=f"{where}, liquid '{liquid.name}'",
                    advice=did_you_mean(name, ions),
                )
    stumps = {stump.name for stump in catalogue.stumps}
    for block in catalogue.blocks:
        for layer in block.layers:
            backing = layer.nominal.measurement.backing
            if layer.absorption is None and backing not in stumps:
                raise CatalogueError(
                    translate(
                        "catalogue",
                        "Its colour was measured over '{backing}', which no catalogue describes.",
                    ).format(backing=backing),
                    where=f"{where}, block '{block.name}'",
                    advice=did_you_mean(backing, stumps),
                )


def _read(path: Path) -> tuple[CatalogueFile, Mapping[tuple[str, str], str]]:
    """Return what is whole in a file, and where (kind, name) stands, in words."""
    text = _text_of(path)
    where = path.name
    try:
        document = tomllib.loads(text)
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise _not_toml(error, where) from error
    if document.pop("format", None) != FORMAT:
        raise CatalogueError(
            translate("catalogue", "This is not a materials file."),
            where=where,
            advice=translate("catalogue", 'One starts with the line: format = "{format_}".').format(
                format_=FORMAT
            ),
        )
    version = document.pop("version", None)
    if version != VERSION:
        raise CatalogueError(
            translate("catalogue", "The materials file has version {version}.").format(
                version=version
            ),
            where=where,
            advice=translate(
                "catalogue",
                "This program reads version {version}; a newer program may have written it.",
            ).format(version=VERSION),
        )
    reading = TableReader(where, CatalogueLines(text))
    return reading.catalogue(document), reading.places


def _text_of(path: Path) -> str:
    try:
        with path.open("rb") as file:
            content = file.read(_MOST_BYTES + 1)
    except OSError as error:
        raise CatalogueError(
            translate("catalogue", "The materials file cannot be read ({value}).").format(
                value=error.strerror or error
            ),
            where=path.name,
        ) from error
    if len(content) > _MOST_BYTES:
        raise CatalogueError(
            translate("catalogue", "The file is too large for a materials file."), where=path.name
        )
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError as error:
        raise _not_toml(error, path.name) from error


def _not_toml(error: Exception, where: str) -> CatalogueError:
    return CatalogueError(
        translate("catalogue", "The file is not valid TOML: {error}.").format(error=error),
        where=where,
        advice=translate(
            "catalogue", "Correct it with a text editor, or export the materials again."
        ),
    )


def joined(base: Catalogue, added: Catalogue) -> Catalogue:
    """Return both catalogues as one, unchecked; an added entry takes the place of its namesake."""

    def join(old: tuple[Kind, ...], new: tuple[Kind, ...]) -> tuple[Kind, ...]:
        by_name = {material.name: material for material in old}
        by_name.update({material.name: material for material in new})
        return tuple(by_name.values())

    return Catalogue(
        blocks=join(base.blocks, added.blocks),
        ions=join(base.ions, added.ions),
        liquids=join(base.liquids, added.liquids),
        dyes=join(base.dyes, added.dyes),
        programmes=join(base.programmes, added.programmes),
        stumps=join(base.stumps, added.stumps),
        cements=join(base.cements, added.cements),
    )
