"""Materials in TOML catalogue files, and as plain dicts within case files.

Version 1. A catalogue file starts with ``format = "stainmap materials"`` and ``version = 1``; then
come any number of tables ``[[block]]``, ``[[ion]]``, ``[[liquid]]``, ``[[dye]]``,
``[[programme]]``, ``[[stump]]`` and ``[[cement]]`` with the fields of `stainmap.model.material`.
Only ``amplitudes_per_mm`` of a liquid is written as a table, ion = amount.
"""

from __future__ import annotations

import math
import re
import tomllib
from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from functools import cache
from pathlib import Path
from typing import Any, Final, TypeVar

import msgspec

from stainmap.errors import CatalogueError, StainmapError
from stainmap.files.atomic import write_bytes
from stainmap.files.toml_text import toml_text
from stainmap.model.material import (
    Block,
    Catalogue,
    Cement,
    Dye,
    Ion,
    Liquid,
    SinteringProgramme,
    Stump,
)
from stainmap.paths import resource
from stainmap.predict.blocks import check_block

FORMAT: Final = "stainmap materials"
VERSION: Final = 1
_MOST_BYTES: Final = 4 << 20

Material = Block | Ion | Liquid | Dye | SinteringProgramme | Stump | Cement
_Kind = TypeVar("_Kind", Block, Ion, Liquid, Dye, SinteringProgramme, Stump, Cement)

_WORDS: Final = {
    "float": "a number",
    "int": "a whole number",
    "str": "text",
    "bool": "true or false",
    "array": "a list",
    "object": "a table",
    "null": "nothing",
}


def read_catalogue(path: Path) -> Catalogue:
    """Return the materials in a TOML file.

    What its entries refer to (ions, stumps) may lie in another catalogue; `merged` checks that.

    Raises
    ------
    CatalogueError
        One sentence naming the file, and the entry and field where there is one.
    """
    document = _load(path)
    where = path.name
    if document.pop("format", None) != FORMAT:
        raise CatalogueError(
            "This is not a materials file.",
            where=where,
            advice=f'One starts with the line: format = "{FORMAT}".',
        )
    version = document.pop("version", None)
    if version != VERSION:
        raise CatalogueError(
            f"The materials file has version {version}.",
            where=where,
            advice=f"This program reads version {VERSION}; a newer program may have written it.",
        )
    return catalogue_from_dict(document, where)


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
        catalogue = _joined(catalogue, read_catalogue(path))
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
    result = _joined(base, added)
    check_references(result, where=where)
    for block in added.blocks:
        try:
            check_block(block, result)
        except CatalogueError as error:
            raise CatalogueError(
                error.message, where=f"{where}, block '{block.name}'", advice=error.advice
            ) from error
    return result


def check_references(catalogue: Catalogue, *, where: str) -> None:
    """Raise CatalogueError if a liquid names an unknown ion, or a block an unknown backing."""
    ions = {ion.name for ion in catalogue.ions}
    for liquid in catalogue.liquids:
        for name, _ in liquid.amplitudes_per_mm:
            if name not in ions:
                raise CatalogueError(
                    f"It holds the ion '{name}', which no catalogue describes.",
                    where=f"{where}, liquid '{liquid.name}'",
                    advice=_known(name, ions),
                )
    stumps = {stump.name for stump in catalogue.stumps}
    for block in catalogue.blocks:
        for layer in block.layers:
            backing = layer.nominal.measurement.backing
            if layer.absorption is None and backing not in stumps:
                raise CatalogueError(
                    f"Its colour was measured over '{backing}', which no catalogue describes.",
                    where=f"{where}, block '{block.name}'",
                    advice=_known(backing, stumps),
                )


def catalogue_to_dict(catalogue: Catalogue) -> dict[str, Any]:
    """Return a catalogue as plain dicts, lists, strings and numbers."""
    kinds: dict[str, tuple[Material, ...]] = {
        "block": catalogue.blocks,
        "ion": catalogue.ions,
        "liquid": catalogue.liquids,
        "dye": catalogue.dyes,
        "programme": catalogue.programmes,
        "stump": catalogue.stumps,
        "cement": catalogue.cements,
    }
    return {
        kind: [_table_of(material) for material in materials]
        for kind, materials in kinds.items()
        if materials
    }


def catalogue_from_dict(data: Mapping[str, Any], where: str) -> Catalogue:
    """Return the catalogue that `catalogue_to_dict` made dicts of.

    Parameters
    ----------
    data
        Kind of material -> list of tables.
    where
        Name of the file, for the sentence of an error.

    Raises
    ------
    CatalogueError
        One sentence naming the file, the entry and the field.
    """
    kinds = ("block", "ion", "liquid", "dye", "programme", "stump", "cement")
    for kind in data:
        if kind not in kinds:
            raise CatalogueError(
                f"There is no kind of material called '{kind}'.",
                where=where,
                advice=_known(kind, set(kinds)),
            )
    return Catalogue(
        blocks=_entries(data, "block", Block, where),
        ions=_entries(data, "ion", Ion, where),
        liquids=_entries(data, "liquid", Liquid, where),
        dyes=_entries(data, "dye", Dye, where),
        programmes=_entries(data, "programme", SinteringProgramme, where),
        stumps=_entries(data, "stump", Stump, where),
        cements=_entries(data, "cement", Cement, where),
    )


def _load(path: Path) -> dict[str, Any]:
    try:
        with path.open("rb") as file:
            content = file.read(_MOST_BYTES + 1)
    except OSError as error:
        raise CatalogueError(
            f"The materials file cannot be read ({error.strerror or error}).", where=path.name
        ) from error
    if len(content) > _MOST_BYTES:
        raise CatalogueError("The file is too large for a materials file.", where=path.name)
    try:
        return tomllib.loads(content.decode("utf-8"))
    except (UnicodeDecodeError, tomllib.TOMLDecodeError, RecursionError) as error:
        raise CatalogueError(
            f"The file is not valid TOML: {error}.",
            where=path.name,
            advice="Correct it with a text editor, or export the materials again.",
        ) from error


def _entries(
    data: Mapping[str, Any], kind: str, model: type[_Kind], where: str
) -> tuple[_Kind, ...]:
    tables = data.get(kind, [])
    if not isinstance(tables, list):
        raise CatalogueError(
            f"'{kind}' is not a list of tables.", where=where, advice=f"Write [[{kind}]]."
        )
    values: dict[str, _Kind] = {}
    for number, table in enumerate(tables, start=1):
        name = table.get("name") if isinstance(table, dict) else None
        place = (
            f"{where}, {kind} '{name}'" if isinstance(name, str) else f"{where}, {kind} {number}"
        )
        value = _value(table, model, place)
        if value.name in values:
            raise CatalogueError(
                "The name is there twice.", where=place, advice="Give every entry its own name."
            )
        values[value.name] = value
    return tuple(values.values())


def _value(table: Any, model: type[_Kind], where: str) -> _Kind:
    for field, number in _numbers(table):
        if not math.isfinite(number):
            raise CatalogueError(f"Field '{field}' is not a finite number.", where=where)
    plain = _pairs_from_amplitudes(table)
    try:
        value = msgspec.convert(plain, model)
    except msgspec.ValidationError as error:
        raise _readable(str(error), where) from error
    except StainmapError as error:
        raise CatalogueError(error.message, where=where, advice=error.advice) from error
    if not value.name.strip():
        raise CatalogueError("Field 'name' is empty.", where=where)
    unknown = next(_unknown_fields(plain, msgspec.to_builtins(value)), None)
    if unknown is not None:
        field, fields = unknown
        raise CatalogueError(
            f"There is no field '{field}'.", where=where, advice=_known(field, fields)
        )
    return value


def _pairs_from_amplitudes(table: Any) -> Any:
    amplitudes = table.get("amplitudes_per_mm") if isinstance(table, dict) else None
    if not isinstance(amplitudes, dict):
        return table
    return {**table, "amplitudes_per_mm": [list(pair) for pair in amplitudes.items()]}


def _table_of(material: Material) -> dict[str, Any]:
    table: dict[str, Any] = msgspec.to_builtins(material)
    if isinstance(material, Liquid):
        table["amplitudes_per_mm"] = dict(material.amplitudes_per_mm)
    return {field: _tidy(value) for field, value in table.items()}


def _tidy(value: Any) -> Any:
    """Return lists for tuples, and tables without their empty fields."""
    if isinstance(value, dict):
        return {key: _tidy(own) for key, own in value.items() if own is not None}
    if isinstance(value, (list, tuple)):
        return [_tidy(own) for own in value]
    return value


def _numbers(value: Any, field: str = "") -> Iterator[tuple[str, float]]:
    if isinstance(value, dict):
        for key, own in value.items():
            yield from _numbers(own, str(key))
    elif isinstance(value, list):
        for own in value:
            yield from _numbers(own, field)
    elif isinstance(value, float):
        yield field, value


def _unknown_fields(given: Any, known: Any) -> Iterator[tuple[str, set[str]]]:
    if isinstance(given, dict) and isinstance(known, dict):
        for key, own in given.items():
            if key in known:
                yield from _unknown_fields(own, known[key])
            else:
                yield key, set(known)
    elif isinstance(given, list) and isinstance(known, (list, tuple)):
        for own, other in zip(given, known, strict=False):
            yield from _unknown_fields(own, other)


def _readable(problem: str, where: str) -> CatalogueError:
    """Return msgspec's finding as a technician would say it."""
    what, _, path = problem.partition(" - at ")
    field = path.strip("`").removeprefix("$").lstrip(".")
    wrong = re.fullmatch(r"Expected `(.+)`, got `(.+)`", what)
    missing = re.fullmatch(r"Object missing required field `(.+)`", what)
    choice = re.fullmatch(r"Invalid enum value (.+)", what)
    if missing:
        inside = f" in '{field}'" if field else ""
        message = f"Field '{missing[1]}' is missing{inside}."
    elif wrong:
        expected = " or ".join(_WORDS.get(part, part) for part in wrong[1].split(" | "))
        got = _WORDS.get(wrong[2], wrong[2])
        message = f"Field '{field}' is {got} where {expected} belongs."
    elif choice:
        message = f"Field '{field}' cannot be {choice[1]}."
    else:
        message = f"Field '{field}': {what}."
    return CatalogueError(message, where=where, advice="Correct the entry.")


def _joined(base: Catalogue, added: Catalogue) -> Catalogue:
    def join(old: tuple[_Kind, ...], new: tuple[_Kind, ...]) -> tuple[_Kind, ...]:
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


def _known(name: str, known: set[str]) -> str:
    close = get_close_matches(name, known, n=1)
    if close:
        return f"Did you mean '{close[0]}'?"
    return f"Known: {', '.join(sorted(known))}." if known else "None is known."
