"""Tables of shades in TOML: those that come with the program, and a laboratory's own on top.

Version 1. A file starts with ``format = "stainmap shades"`` and ``version = 1``. Then come any
number of ``[[tab]]`` (name, lab, doubt, and if wanted family and note) and ``[[offset]]``
(tooth_class, and [dL*, dC*] for cervical, interproximal, cusp, fissure). Tabs are read under
illuminant C by an integrating sphere, as those of the shipped table; a file with another
illuminant is refused rather than read wrongly.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache, partial
from pathlib import Path
from typing import Any, Final, TypeVar

import msgspec

from stainmap.errors import CatalogueError, StainmapError
from stainmap.files.atomic import write_bytes
from stainmap.files.table_file import read_table
from stainmap.files.toml_text import toml_text
from stainmap.model.colour import IN_PLACE, TAB_TABLE_SPHERE, Colour, Measurement
from stainmap.model.shade_table import ClassOffsets, HueFamily, OffsetClass, ShadeTable, Tab
from stainmap.model.target import Offset
from stainmap.model.zone import Zone
from stainmap.paths import resource
from stainmap.words import translate

FORMAT: Final = "stainmap shades"
VERSION: Final = 1
_MOST_BYTES: Final = 1 << 20
_TAB_WAY: Final = Measurement(
    geometry=TAB_TABLE_SPHERE, illuminant="C", observer_degrees=2, backing=IN_PLACE
)
_OFFSET_ZONES: Final = {
    "cervical": Zone.CERVICAL,
    "interproximal": Zone.INTERPROXIMAL,
    "cusp": Zone.CUSP,
    "fissure": Zone.FISSURE,
}
_LARGEST_OFFSET: Final = 20.0

_Triple = tuple[float, float, float]
_Pair = tuple[float, float]
_Made = TypeVar("_Made", Tab, ClassOffsets)


class _TabDoc(msgspec.Struct, forbid_unknown_fields=True, omit_defaults=True):
    name: str
    lab: _Triple
    doubt: _Triple = (0.7, 0.3, 0.5)
    family: str = ""
    note: str = ""
    provenance: str = ""


class _OffsetDoc(msgspec.Struct, forbid_unknown_fields=True):
    tooth_class: str
    cervical: _Pair
    interproximal: _Pair
    cusp: _Pair
    fissure: _Pair


class _ShadesDoc(msgspec.Struct, forbid_unknown_fields=True, omit_defaults=True):
    format: str = ""
    version: int = 0
    illuminant: str = "C"
    observer_degrees: int = 2
    provenance: str = ""
    tab: list[_TabDoc] = []
    offset: list[_OffsetDoc] = []


@cache
def starter_shades() -> ShadeTable:
    """Return the tabs and offsets that come with the program.

    Raises
    ------
    CatalogueError
        If a shipped file has been damaged.
    """
    table = ShadeTable()
    for path in sorted(resource("shades").glob("*.toml")):
        table = with_shades(table, path)
    return table


def with_shades(base: ShadeTable, path: Path) -> ShadeTable:
    """Return `base` with the entries of a file, which take the place of those of the same name.

    Raises
    ------
    CatalogueError
        One sentence naming the file and the entry.
    """
    document = _document(path)
    tabs = {tab.name: tab for tab in base.tabs}
    for index, entry in enumerate(document.tab, start=1):
        tab = _whole(partial(_tab_of, entry, document.provenance), path, "tab", index)
        tabs[tab.name] = tab
    offsets = {one.tooth_class: one for one in base.usual_offsets}
    for index, steps in enumerate(document.offset, start=1):
        usual = _whole(partial(_offsets_of, steps), path, "offset", index)
        offsets[usual.tooth_class] = usual
    return ShadeTable(tabs=tuple(tabs.values()), usual_offsets=tuple(offsets.values()))


def write_shades(path: Path, table: ShadeTable, base: ShadeTable) -> None:
    """Write what of a table differs from `base` as a file of its own, atomically.

    Raises
    ------
    StainmapError
        If it cannot be written.
    """
    tabs = [_tab_doc(tab) for tab in table.tabs if tab not in base.tabs]
    offsets = [_offset_doc(one) for one in table.usual_offsets if one not in base.usual_offsets]
    document: dict[str, Any] = {"format": FORMAT, "version": VERSION, "illuminant": "C"}
    if tabs:
        document["tab"] = tabs
    if offsets:
        document["offset"] = offsets
    text = toml_text(
        document,
        comment="Shades of this computer: tabs and usual offsets that replace the shipped ones.\n"
        "Tabs: CIE L*a*b* under illuminant C, 2 degrees, integrating sphere.",
    )
    write_bytes(path, text.encode("utf-8"))


def _document(path: Path) -> _ShadesDoc:
    where = path.name
    data = read_table(
        path,
        "shades",
        most_bytes=_MOST_BYTES,
        advice=translate(
            "shades file",
            "Correct it with a text editor, or take it away: the shipped table holds then.",
        ),
    )
    if data.get("format") != FORMAT:
        raise CatalogueError(
            translate("shades file", "This is not a table of shades."),
            where=where,
            advice=translate(
                "shades file", 'One starts with the line: format = "{format_}".'
            ).format(format_=FORMAT),
        )
    if data.get("version") != VERSION:
        raise CatalogueError(
            translate("shades file", "The table of shades has version {get}.").format(
                get=data.get("version")
            ),
            where=where,
            advice=translate(
                "shades file",
                "This program reads version {version}; a newer program may have written it.",
            ).format(version=VERSION),
        )
    try:
        document = msgspec.convert(data, _ShadesDoc)
    except msgspec.ValidationError as error:
        raise CatalogueError(
            translate("shades file", "An entry does not fit: {error}.").format(error=error),
            where=where,
        ) from error
    if (document.illuminant, document.observer_degrees) != ("C", 2):
        raise CatalogueError(
            translate(
                "shades file",
                "Its tabs were measured under {illuminant}, {observer_degrees} degrees.",
            ).format(illuminant=document.illuminant, observer_degrees=document.observer_degrees),
            where=where,
            advice=translate(
                "shades file",
                "A tab table holds values under illuminant C and 2 degrees; enter other "
                "readings as measured L*a*b*.",
            ),
        )
    return document


def _whole(make: Callable[[], _Made], path: Path, kind: str, index: int) -> _Made:
    try:
        return make()
    except (StainmapError, ValueError) as error:
        message = error.message if isinstance(error, StainmapError) else str(error)
        advice = error.advice if isinstance(error, StainmapError) else None
        raise CatalogueError(
            message[:1].upper() + message[1:], where=f"{path.name}, {kind} {index}", advice=advice
        ) from error


def _tab_of(entry: _TabDoc, provenance: str) -> Tab:
    lightness, a, b = entry.lab
    return Tab(
        name=entry.name.strip(),
        colour=Colour(lightness=lightness, a=a, b=b, measurement=_TAB_WAY),
        doubt=entry.doubt,
        family=HueFamily(entry.family) if entry.family else None,
        note=entry.note,
        provenance=entry.provenance or provenance,
    )


def _tab_doc(tab: Tab) -> dict[str, Any]:
    entry = {
        "name": tab.name,
        "lab": list(tab.colour.lab),
        "doubt": list(tab.doubt),
        "family": "" if tab.family is None else tab.family.value,
        "note": tab.note,
        "provenance": tab.provenance,
    }
    return {key: value for key, value in entry.items() if value != ""}


def _offsets_of(entry: _OffsetDoc) -> ClassOffsets:
    offsets = []
    for name, zone in _OFFSET_ZONES.items():
        lightness, chroma = getattr(entry, name)
        if not (abs(lightness) <= _LARGEST_OFFSET and abs(chroma) <= _LARGEST_OFFSET):
            raise CatalogueError(
                translate("shades file", "The offset of '{name}' is out of range.").format(
                    name=name
                ),
                advice=translate(
                    "shades file", "Give -{largest_offset:g} to {largest_offset:g}."
                ).format(largest_offset=_LARGEST_OFFSET),
            )
        offsets.append(Offset(area=zone, lightness=lightness, chroma=chroma))
    return ClassOffsets(tooth_class=OffsetClass(entry.tooth_class), offsets=tuple(offsets))


def _offset_doc(usual: ClassOffsets) -> dict[str, Any]:
    entry: dict[str, Any] = {"tooth_class": usual.tooth_class.value}
    for name, zone in _OFFSET_ZONES.items():
        offset = next((one for one in usual.offsets if one.area is zone), None)
        entry[name] = [0.0, 0.0] if offset is None else [offset.lightness, offset.chroma]
    return entry
