"""Kinds of material, and the entries of a catalogue by their kind."""

from __future__ import annotations

from dataclasses import replace
from enum import StrEnum
from typing import Any, Final

from stainmap.files.catalogue_tables import Material as Material  # noqa: PLC0414 - told to all
from stainmap.model.material import (
    Block,
    Catalogue,
    Cement,
    Dye,
    Ion,
    Liquid,
    Provenance,
    SinteringProgramme,
    Stump,
)
from stainmap.words import marked, translate, value_word


class MaterialKind(StrEnum):
    """What a catalogue lists, by the names that its files use."""

    BLOCK = "block"
    LIQUID = "liquid"
    ION = "ion"
    DYE = "dye"
    PROGRAMME = "programme"
    STUMP = "stump"
    CEMENT = "cement"

    @property
    def heading(self) -> str:
        """The head of a list of them."""
        return translate("materials", _TITLES[self])

    @property
    def model(self) -> type[Material]:
        """The type of its entries."""
        return _MODELS[self]


_TITLES: Final = {
    MaterialKind.BLOCK: marked("materials", "Blocks"),
    MaterialKind.LIQUID: marked("materials", "Liquids"),
    MaterialKind.ION: marked("materials", "Ions"),
    MaterialKind.DYE: marked("materials", "Dyes"),
    MaterialKind.PROGRAMME: marked("materials", "Programmes"),
    MaterialKind.STUMP: marked("materials", "Stumps"),
    MaterialKind.CEMENT: marked("materials", "Cements"),
}
_MODELS: Final[dict[MaterialKind, type[Material]]] = {
    MaterialKind.BLOCK: Block,
    MaterialKind.LIQUID: Liquid,
    MaterialKind.ION: Ion,
    MaterialKind.DYE: Dye,
    MaterialKind.PROGRAMME: SinteringProgramme,
    MaterialKind.STUMP: Stump,
    MaterialKind.CEMENT: Cement,
}


def kind_of(material: Material) -> MaterialKind:
    """Return the kind of an entry."""
    return next(kind for kind, model in _MODELS.items() if isinstance(material, model))


def entries(catalogue: Catalogue, kind: MaterialKind) -> tuple[Material, ...]:
    """Return all entries of a kind, in the catalogue's order."""
    found: tuple[Material, ...] = getattr(catalogue, f"{kind}s")
    return found


def entry(catalogue: Catalogue, kind: MaterialKind, name: str) -> Material | None:
    """Return an entry by its name, or None."""
    return next((one for one in entries(catalogue, kind) if one.name == name), None)


def with_entry(catalogue: Catalogue, material: Material) -> Catalogue:
    """Return the catalogue with an entry in the place of its namesake, else as the last one."""
    kind = kind_of(material)
    old = entries(catalogue, kind)
    if entry(catalogue, kind, material.name) is None:
        return with_entries(catalogue, kind, (*old, material))
    return with_entries(
        catalogue, kind, tuple(material if one.name == material.name else one for one in old)
    )


def without_entry(catalogue: Catalogue, kind: MaterialKind, name: str) -> Catalogue:
    """Return the catalogue without an entry."""
    kept = tuple(one for one in entries(catalogue, kind) if one.name != name)
    return with_entries(catalogue, kind, kept)


def renamed(material: Material, name: str) -> Material:
    """Return an entry under another name."""
    return replace(material, name=name)


def origin_of(material: Material) -> Provenance | None:
    """Return where the numbers of an entry come from; an ion does not say."""
    return None if isinstance(material, Ion) else material.provenance


def origin_word(material: Material) -> str:
    """Return "invented", "measured" or "calibrated"; an ion does not say."""
    origin = origin_of(material)
    return "" if origin is None else value_word(short_origin(origin))


def short_origin(origin: Provenance) -> str:
    """Return an origin in a word."""
    return str(origin).partition(",")[0]


def name_and_origin(material: Material) -> str:
    """Return name and origin, as they stand wherever one is chosen."""
    word = origin_word(material)
    return f"{material.name} ({word})" if word else material.name


def only(material: Material) -> Catalogue:
    """Return a catalogue of one entry."""
    return with_entries(Catalogue(), kind_of(material), (material,))


def with_entries(
    catalogue: Catalogue, kind: MaterialKind, materials: tuple[Material, ...]
) -> Catalogue:
    """Return the catalogue with other entries of a kind."""
    fields: dict[str, Any] = {f"{kind}s": materials}
    return replace(catalogue, **fields)
