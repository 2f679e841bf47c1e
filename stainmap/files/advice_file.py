"""Limits of advice in TOML: those that come with the program, and somebody's own on top.

Version 1. A file starts with ``format = "stainmap advice"`` and ``version = 1``. Then come any
number of ``[[limit]]``: name, value, unit, mark (published, from memory, common practice, assumed)
and source. A file of one's own names only limits that there are, and holds those that differ.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Final

import msgspec

from stainmap.errors import CatalogueError
from stainmap.files.table_file import read_table
from stainmap.model.advice_limits import AdviceLimit, AdviceLimits, Mark
from stainmap.paths import resource
from stainmap.words import translate

FORMAT: Final = "stainmap advice"
VERSION: Final = 1
_MOST_BYTES: Final = 1 << 18


class _LimitDoc(msgspec.Struct, forbid_unknown_fields=True):
    name: str
    value: float
    unit: str
    mark: Mark
    source: str


class _AdviceDoc(msgspec.Struct, forbid_unknown_fields=True):
    format: str = ""
    version: int = 0
    limit: list[_LimitDoc] = []


@cache
def starter_limits() -> AdviceLimits:
    """Return the limits that come with the program.

    Raises
    ------
    CatalogueError
        If the shipped file has been damaged.
    """
    path = resource("advice") / "limits.toml"
    return AdviceLimits(limits=tuple(_read(path)))


def with_limits(base: AdviceLimits, path: Path) -> AdviceLimits:
    """Return `base` with the limits of a file in place of those of the same name.

    Raises
    ------
    CatalogueError
        One sentence naming the file and the entry.
    """
    result = base
    for limit in _read(path):
        if limit.name not in base:
            raise CatalogueError(
                translate("advice file", "There is no limit called '{name}'.").format(
                    name=limit.name
                ),
                where=path.name,
                advice=translate("advice file", "Known: {name}.").format(
                    name=", ".join(one.name for one in base.limits)
                ),
            )
        unit = base[limit.name].unit
        if limit.unit != unit:
            raise CatalogueError(
                translate("advice file", "The limit '{name}' is given in {value}.").format(
                    name=limit.name, value=limit.unit or translate("advice file", "no unit")
                ),
                where=path.name,
                advice=translate("advice file", "Give it in {unit}.").format(unit=unit),
            )
        result = result.changed(limit)
    return result


def _read(path: Path) -> list[AdviceLimit]:
    where = path.name
    data = read_table(
        path,
        "limits",
        most_bytes=_MOST_BYTES,
        advice=translate(
            "advice file",
            "Correct it with a text editor, or take it away: the shipped limits hold then.",
        ),
    )
    if data.get("format") != FORMAT or data.get("version") != VERSION:
        raise CatalogueError(
            translate("advice file", "This is not a table of limits that this program reads."),
            where=where,
            advice=translate(
                "advice file", 'One starts with: format = "{format_}", version = {version}.'
            ).format(format_=FORMAT, version=VERSION),
        )
    try:
        document = msgspec.convert(data, _AdviceDoc)
        names = [entry.name for entry in document.limit]
        twice = next((name for name in names if names.count(name) > 1), None)
        if twice is not None:
            raise CatalogueError(
                translate("advice file", "The limit '{twice}' stands there twice.").format(
                    twice=twice
                ),
                where=where,
            )
        return [
            AdviceLimit(
                name=entry.name,
                value=entry.value,
                unit=entry.unit,
                mark=entry.mark,
                source=entry.source,
            )
            for entry in document.limit
        ]
    except msgspec.ValidationError as error:
        raise CatalogueError(
            translate("advice file", "An entry does not fit: {error}.").format(error=error),
            where=where,
        ) from error
    except CatalogueError as error:
        if error.where is not None:
            raise
        raise CatalogueError(error.message, where=where, advice=error.advice) from error
