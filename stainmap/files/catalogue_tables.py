"""Materials as plain tables: what TOML files and case files hold of them.

Of every kind a list of tables with the fields of `stainmap.model.material`. Only
``amplitudes_per_mm`` of a liquid is written as a table, ion = amount.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from typing import Any, Final, TypeVar

import msgspec

from stainmap.errors import CatalogueError, StainmapError
from stainmap.files.catalogue_lines import CatalogueLines
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
from stainmap.words import either, marked, translate

_KINDS: Final = ("block", "ion", "liquid", "dye", "programme", "stump", "cement")

Material = Block | Ion | Liquid | Dye | SinteringProgramme | Stump | Cement

Kind = TypeVar("Kind", Block, Ion, Liquid, Dye, SinteringProgramme, Stump, Cement)


_WORDS: Final = {
    "float": marked("catalogue tables", "a number"),
    "int": marked("catalogue tables", "a whole number"),
    "str": marked("catalogue tables", "text"),
    "bool": marked("catalogue tables", "true or false"),
    "array": marked("catalogue tables", "a list"),
    "object": marked("catalogue tables", "a table"),
    "null": marked("catalogue tables", "nothing"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class CatalogueFile:
    """What could be used of a materials file, and what could not and why.

    Parameters
    ----------
    catalogue
        Every entry that is whole.
    problems
        One sentence each, with the line of the file.
    places
        Where in the file an entry stands, in words, by kind and name.
    """

    catalogue: Catalogue
    problems: tuple[CatalogueError, ...] = ()
    places: Mapping[tuple[str, str], str] = field(default_factory=dict)


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
    return whole_or_refused(TableReader(where).catalogue(data))


def whole_or_refused(read: CatalogueFile) -> Catalogue:
    """Return the catalogue; raise the first of its problems if there are any."""
    if read.problems:
        raise read.problems[0]
    return read.catalogue


@dataclass(slots=True, eq=False)
class TableReader:
    """Reads the tables of one file, keeping what is wrong with them for later."""

    where: str
    lines: CatalogueLines | None = None
    problems: list[CatalogueError] = field(default_factory=list)
    places: dict[tuple[str, str], str] = field(default_factory=dict)

    def catalogue(self, data: Mapping[str, Any]) -> CatalogueFile:
        """Return what can be used of the tables, kind -> list of tables."""
        for kind in data:
            if kind not in _KINDS:
                self.problems.append(
                    CatalogueError(
                        translate(
                            "catalogue tables", "There is no kind of material called '{kind}'."
                        ).format(kind=kind),
                        where=self._place(kind, 1),
                        advice=did_you_mean(kind, set(_KINDS)),
                    )
                )
        whole = Catalogue(
            blocks=self._entries(data, "block", Block),
            ions=self._entries(data, "ion", Ion),
            liquids=self._entries(data, "liquid", Liquid),
            dyes=self._entries(data, "dye", Dye),
            programmes=self._entries(data, "programme", SinteringProgramme),
            stumps=self._entries(data, "stump", Stump),
            cements=self._entries(data, "cement", Cement),
        )
        return CatalogueFile(catalogue=whole, problems=tuple(self.problems))

    def _entries(self, data: Mapping[str, Any], kind: str, model: type[Kind]) -> tuple[Kind, ...]:
        tables = data.get(kind, [])
        if not isinstance(tables, list):
            self.problems.append(
                CatalogueError(
                    translate("catalogue tables", "'{kind}' is not a list of tables.").format(
                        kind=kind
                    ),
                    where=self._place(kind, 1),
                    advice=translate("catalogue tables", "Write [[{kind}]].").format(kind=kind),
                )
            )
            return ()
        values: dict[str, Kind] = {}
        for number, table in enumerate(tables, start=1):
            name = table.get("name") if isinstance(table, dict) else None
            entry = f"{kind} '{name}'" if isinstance(name, str) else f"{kind} {number}"
            try:
                value = _value(table, model)
            except _FieldError as error:
                place = self._place(kind, number, entry, error.path)
                self.problems.append(
                    CatalogueError(error.message, where=place, advice=error.advice)
                )
                continue
            place = self._place(kind, number, entry)
            if value.name in values:
                self.problems.append(
                    CatalogueError(
                        translate(
                            "catalogue tables", "The name is there twice; the first of them holds."
                        ),
                        where=place,
                        advice=translate("catalogue tables", "Give every entry its own name."),
                    )
                )
                continue
            values[value.name] = value
            self.places[kind, value.name] = place
        return tuple(values.values())

    def _place(self, kind: str, number: int, entry: str = "", path: str = "") -> str:
        """Return file, line and entry, as far as they are known."""
        line = None if self.lines is None else self.lines.field(kind, number, path)
        parts = (self.where, "" if line is None else f"line {line}", entry)
        return ", ".join(part for part in parts if part)


class _FieldError(Exception):
    """What is wrong with an entry; `path` leads to the field, as ``layers[1].nominal.b``."""

    def __init__(self, message: str, path: str = "", advice: str | None = None) -> None:
        super().__init__(message)
        self.message, self.path, self.advice = message, path, advice


def _value(table: Any, model: type[Kind]) -> Kind:
    for path, number in _numbers(table):
        if not math.isfinite(number):
            raise _FieldError(
                translate("catalogue tables", "Field '{last}' is not a finite number.").format(
                    last=_last(path)
                ),
                path,
            )
    plain = _pairs_from_amplitudes(table)
    try:
        value = msgspec.convert(plain, model)
    except msgspec.ValidationError as error:
        raise _readable(str(error)) from error
    except StainmapError as error:
        raise _FieldError(error.message, advice=error.advice) from error
    if not value.name.strip():
        raise _FieldError(translate("catalogue tables", "Field 'name' is empty."), "name")
    unknown = next(_unknown_fields(plain, msgspec.to_builtins(value)), None)
    if unknown is not None:
        path, fields = unknown
        name = _last(path)
        raise _FieldError(
            translate("catalogue tables", "There is no field '{name}'.").format(name=name),
            path,
            did_you_mean(name, fields),
        )
    return value


def _last(path: str) -> str:
    return path.rpartition(".")[2]


def _pairs_from_amplitudes(table: Any) -> Any:
    amplitudes = table.get("amplitudes_per_mm") if isinstance(table, dict) else None
    if not isinstance(amplitudes, dict):
        return table
    return {**table, "amplitudes_per_mm": [list(pair) for pair in amplitudes.items()]}


def _table_of(material: Material) -> dict[str, Any]:
    table: dict[str, Any] = msgspec.to_builtins(material)
    if isinstance(material, Liquid):
        table["amplitudes_per_mm"] = dict(material.amplitudes_per_mm)
    return {name: _tidy(value) for name, value in table.items() if value is not None}


def _tidy(value: Any) -> Any:
    """Return lists for tuples, and tables without their empty fields."""
    if isinstance(value, dict):
        return {key: _tidy(own) for key, own in value.items() if own is not None}
    if isinstance(value, (list, tuple)):
        return [_tidy(own) for own in value]
    return value


def _numbers(value: Any, path: str = "") -> Iterator[tuple[str, float]]:
    if isinstance(value, dict):
        for key, own in value.items():
            yield from _numbers(own, f"{path}.{key}" if path else str(key))
    elif isinstance(value, list):
        for index, own in enumerate(value):
            yield from _numbers(own, f"{path}[{index}]")
    elif isinstance(value, float):
        yield path, value


def _unknown_fields(given: Any, known: Any, path: str = "") -> Iterator[tuple[str, set[str]]]:
    if isinstance(given, dict) and isinstance(known, dict):
        for key, own in given.items():
            place = f"{path}.{key}" if path else str(key)
            if key in known:
                yield from _unknown_fields(own, known[key], place)
            else:
                yield place, set(known)
    elif isinstance(given, list) and isinstance(known, (list, tuple)):
        for index, (own, other) in enumerate(zip(given, known, strict=False)):
            yield from _unknown_fields(own, other, f"{path}[{index}]")


def _readable(problem: str) -> _FieldError:
    """Return msgspec's finding as a technician would say it."""
    what, _, path = problem.partition(" - at ")
    where = path.strip("`").removeprefix("$").lstrip(".")
    wrong = re.fullmatch(r"Expected `(.+)`, got `(.+)`", what)
    missing = re.fullmatch(r"Object missing required field `(.+)`", what)
    choice = re.fullmatch(r"Invalid enum value (.+)", what)
    if missing:
        message = (
            translate("catalogue tables", "Field '{name}' is missing in '{where}'.")
            if where
            else translate("catalogue tables", "Field '{name}' is missing.")
        ).format(name=missing[1], where=where)
    elif wrong:
        expected = either([_said(part) for part in wrong[1].split(" | ")])
        got = _said(wrong[2])
        message = translate(
            "catalogue tables", "Field '{where}' is {got} where {expected} belongs."
        ).format(where=where, got=got, expected=expected)
    elif choice:
        message = translate("catalogue tables", "Field '{where}' cannot be {value}.").format(
            where=where, value=choice[1]
        )
    else:
        message = f"Field '{where}': {what}."
    return _FieldError(message, where, translate("catalogue tables", "Correct the entry."))


def did_you_mean(name: str, known: set[str]) -> str:
    """Return the known name that is closest, as a question, or all that are known."""
    close = get_close_matches(name, known, n=1)
    if close:
        return translate("catalogue tables", "Did you mean '{name}'?").format(name=close[0])
    if not known:
        return translate("catalogue tables", "None is known.")
    return translate("catalogue tables", "Known: {names}.").format(names=", ".join(sorted(known)))


def _said(kind: str) -> str:
    """Return what a kind of value is called."""
    word = _WORDS.get(kind)
    return kind if word is None else translate("catalogue tables", word)
