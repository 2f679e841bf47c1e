"""A material as a form: numbers with their range, and a small table of what it is made up of.

The table's rows are layers of a block, ions of a liquid, bands of an ion, pieces of a programme.
What is typed becomes a new material or one sentence: the value, its place, what is expected.
"""

from __future__ import annotations

from copy import deepcopy
from math import isfinite
from typing import Any

from stainmap.app.materials import Material, MaterialKind, entries, entry, kind_of, only
from stainmap.app.materials_fields import NO, NODES, NUMBERS, YES, NodeTable, Quantity
from stainmap.errors import CatalogueError
from stainmap.files.catalogue_tables import catalogue_from_dict, catalogue_to_dict
from stainmap.model.material import (
    Block,
    Catalogue,
    Provenance,
)
from stainmap.words import translate, value_word


def choices_of(quantity: Quantity, catalogue: Catalogue) -> tuple[str, ...]:
    """Return what can be chosen for a field; nothing where numbers or text are typed."""
    if quantity.choices == ("stumps",):
        return tuple(one.name for one in catalogue.stumps)
    if quantity.choices == ("ions",):
        return tuple(one.name for one in catalogue.ions)
    return quantity.choices


def number_text(material: Material, quantity: Quantity) -> str:
    """Return what a field of a material holds, as it is typed."""
    return _text(_get(_table(material), quantity.path))


def node_texts(material: Material) -> list[list[str]]:
    """Return the rows of a material's table, as they are typed."""
    nodes = NODES.get(kind_of(material))
    if nodes is None:
        return []
    rows = _rows(_table(material), nodes)
    return [[_text(_get(row, column.path)) for column in nodes.columns] for row in rows]


def with_number(material: Material, quantity: Quantity, text: str) -> Material:
    """Return the material with another number; raise CatalogueError if it cannot be."""
    table = _table(material)
    where = _named(material)
    _set(table, quantity.path, _parsed(quantity, text, where))
    return _material(material, table)


def with_node(
    material: Material, row: int, column: int, text: str, catalogue: Catalogue
) -> Material:
    """Return the material with another number in its table.

    Absorption of a block's layer is one thing: emptying a part of it has all of it solved from
    the colour again, filling one in takes the others from what was solved.

    Raises
    ------
    CatalogueError
        One sentence: the value, its place, what is expected.
    """
    from stainmap.predict.blocks import solve_layer  # noqa: PLC0415

    nodes = NODES[kind_of(material)]
    quantity = nodes.columns[column]
    table = _table(material)
    rows = _rows(table, nodes)
    where = f"{_named(material)}, {translate('materials form', nodes.words[0])} {row + 1}"
    choices = choices_of(quantity, catalogue)
    value = _parsed(quantity, text, where, choices)
    own = rows[row]
    if isinstance(material, Block) and quantity.path.startswith("absorption."):
        if value is None:
            own.pop("absorption", None)
        elif "absorption" not in own:
            layer = material.layers[row]
            stump = catalogue.stump(layer.nominal.measurement.backing)
            solved = solve_layer(layer, stump).absorption
            own["absorption"] = {
                "c0_per_mm": solved.c0_per_mm,
                "decay_nm": solved.decay_nm,
                "c1_per_mm": solved.c1_per_mm,
            }
    if value is not None:
        _set(own, quantity.path, value)
    _put_rows(table, nodes, rows, where)
    return _material(material, table)


def with_added_node(material: Material, after: int, catalogue: Catalogue) -> Material:
    """Return the material with one more row in its table, like the one before it."""
    kind = kind_of(material)
    nodes = NODES[kind]
    table = _table(material)
    rows = _rows(table, nodes)
    if len(rows) >= nodes.most:
        raise CatalogueError(
            translate("materials form", "It has {count} {words}, and no more can be had.").format(
                count=len(rows), words=translate("materials form", nodes.words[1])
            ),
            where=_named(material),
        )
    if kind is MaterialKind.LIQUID:
        known = {row["0"] for row in rows}
        free = [ion.name for ion in catalogue.ions if ion.name not in known]
        if not free:
            raise CatalogueError(
                translate("materials form", "It holds every ion there is."), where=_named(material)
            )
        rows.append({"0": free[0], "1": 0.0})
    else:
        at = min(max(after, 0), len(rows) - 1)
        fresh = deepcopy(rows[at])
        if kind is MaterialKind.BLOCK:
            above = rows[at + 1]["bottom_mm"] if at + 1 < len(rows) else fresh["bottom_mm"] + 8.0
            fresh["bottom_mm"] = round(0.5 * (fresh["bottom_mm"] + above), 2)
            if at + 1 == len(rows):
                fresh["bottom_mm"] = above
        rows.insert(at + 1, fresh)
    _put_rows(table, nodes, rows, _named(material))
    return _material(material, table)


def without_node(material: Material, row: int) -> Material:
    """Return the material with a row less in its table."""
    nodes = NODES[kind_of(material)]
    table = _table(material)
    rows = _rows(table, nodes)
    if len(rows) <= nodes.least:
        raise CatalogueError(
            translate("materials form", "It needs at least {least} {words}.").format(
                least=nodes.least, words=translate("materials form", nodes.words[0])
            ),
            where=_named(material),
        )
    del rows[row]
    if isinstance(material, Block):
        rows[0]["bottom_mm"] = 0.0
    _put_rows(table, nodes, rows, _named(material))
    return _material(material, table)


def with_origin(material: Material, origin: Provenance) -> Material:
    """Return the material with another origin of its numbers."""
    table = _table(material)
    table["provenance"] = origin.value
    return _material(material, table)


def check_numbers(material: Material) -> None:
    """Raise CatalogueError for the first number that is out of its range."""
    kind, table = kind_of(material), _table(material)
    for quantity in NUMBERS[kind]:
        _check(quantity, _get(table, quantity.path), _named(material))
    nodes = NODES.get(kind)
    if nodes is None:
        return
    for at, row in enumerate(_rows(table, nodes), start=1):
        for quantity in nodes.columns:
            where = f"{_named(material)}, {translate('materials form', nodes.words[0])} {at}"
            _check(quantity, _get(row, quantity.path), where)


def new_entry(kind: MaterialKind, name: str, catalogue: Catalogue) -> Material:
    """Return an entry to begin with: the first of its kind under another name, marked invented.

    Raises
    ------
    CatalogueError
        If there is none to begin with, or the kind takes no new entries.
    """
    if kind is MaterialKind.DYE:
        raise CatalogueError(
            translate("materials form", "Jars hold drops of three dyes, so there is no fourth."),
            advice=translate(
                "materials form", "Copy one of the three to give it your own numbers."
            ),
        )
    first = next(iter(entries(catalogue, kind)), None)
    if first is None:
        raise CatalogueError(
            translate("materials form", "There is no {kind} to begin with.").format(kind=kind),
            advice=translate("materials form", "Import one."),
        )
    table = _table(first)
    table["name"] = name
    if "provenance" in table:
        table["provenance"] = Provenance.INVENTED.value
    for field in ("lot", "purpose"):
        if field in table:
            table[field] = ""
    table.pop("coupon", None)
    return _material(first, table)


def renamed_copy(material: Material, name: str) -> Material:
    """Return an entry with the same numbers under another name."""
    table = _table(material)
    table["name"] = name
    return _material(material, table)


def _table(material: Material) -> dict[str, Any]:
    kind = kind_of(material)
    tables = catalogue_to_dict(only(material))
    table: dict[str, Any] = deepcopy(tables[kind.value][0])
    return table


def _material(old: Material, table: dict[str, Any]) -> Material:
    kind = kind_of(old)
    read = catalogue_from_dict({kind.value: [table]}, "")
    found = entry(read, kind, table["name"])
    return old if found is None else found


def _rows(table: dict[str, Any], nodes: NodeTable) -> list[dict[str, Any]]:
    rows = table.get(nodes.path, [])
    if isinstance(rows, dict):
        return [{"0": name, "1": value} for name, value in rows.items()]
    return [dict(row) for row in rows]


def _put_rows(
    table: dict[str, Any], nodes: NodeTable, rows: list[dict[str, Any]], where: str
) -> None:
    if not isinstance(table.get(nodes.path), dict):
        table[nodes.path] = rows
        return
    names = [row["0"] for row in rows]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise CatalogueError(
            translate("materials form", "The ion '{twice}' is there twice.").format(twice=twice),
            where=where,
            advice=translate("materials form", "Choose another."),
        )
    table[nodes.path] = {row["0"]: row["1"] for row in rows}


def _row_word(nodes: NodeTable) -> str:
    return translate("materials form", nodes.words[0])


def _named(material: Material) -> str:
    return f"{value_word(kind_of(material))} '{material.name}'"


def _text(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, bool):
        return YES if value else NO
    return f"{value:.6g}" if isinstance(value, float) else str(value)


def _parsed(quantity: Quantity, text: str, where: str, choices: tuple[str, ...] = ()) -> Any:
    text = text.strip()
    if quantity.choices:
        known = choices or quantity.choices
        if text not in known:
            raise CatalogueError(
                translate("materials form", "{words} is '{text}'.").format(
                    words=translate("materials form", quantity.words), text=text
                ),
                where=where,
                advice=translate("materials form", "Expected is one of: {known}.").format(
                    known=", ".join(known)
                ),
            )
        return text == YES if known == (YES, NO) else text
    if quantity.is_text:
        return text
    if not text and quantity.optional:
        return None
    try:
        value = float(text.replace(",", "."))
    except ValueError as error:
        raise CatalogueError(
            translate("materials form", "{words} is '{text}', which is no number.").format(
                words=translate("materials form", quantity.words), text=text
            ),
            where=where,
            advice=translate("materials form", "Expected is {expected}.").format(
                expected=quantity.expected
            ),
        ) from error
    _check(quantity, value, where)
    return int(value) if quantity.is_whole else value


def _check(quantity: Quantity, value: Any, where: str) -> None:
    if quantity.choices or quantity.is_text or (value is None and quantity.optional):
        return
    wrong = not isfinite(value) or not quantity.low <= value <= quantity.high
    if wrong or (quantity.is_whole and value != int(value)):
        raise CatalogueError(
            translate("materials form", "{words} is {value:g}.").format(
                words=translate("materials form", quantity.words), value=value
            ),
            where=where,
            advice=translate("materials form", "Expected is {expected}.").format(
                expected=quantity.expected
            ),
        )


def _get(table: Any, path: str) -> Any:
    for part in path.split("."):
        if isinstance(table, list):
            table = table[int(part)]
        else:
            table = table.get(part)
        if table is None:
            return None
    return table


def _set(table: Any, path: str, value: Any) -> None:
    *way, last = path.split(".")
    for part in way:
        table = table[int(part)] if isinstance(table, list) else table[part]
    if isinstance(table, list):
        table[int(last)] = value
    elif value is None:
        table.pop(last, None)
    else:
        table[last] = value
