"""Shades to choose from: classical tabs with their colours, usual offsets per class of tooth."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from math import isfinite

from stainmap.errors import CatalogueError
from stainmap.model.colour import Colour
from stainmap.model.intake import Triple
from stainmap.model.target import DEFAULT_OFFSETS, Offset
from stainmap.model.tooth import Tooth, ToothClass
from stainmap.words import translate


class HueFamily(StrEnum):
    """Family of a classical tab: what its letter stands for."""

    REDDISH_BROWN = "reddish-brown"
    REDDISH_YELLOW = "reddish-yellow"
    GREY = "grey"
    REDDISH_GREY = "reddish-grey"


class OffsetClass(StrEnum):
    """Teeth that share usual offsets from the body."""

    FRONT = "front"
    PREMOLAR = "premolar"
    MOLAR = "molar"

    @classmethod
    def of(cls, tooth: Tooth) -> OffsetClass:
        """Return the class of a tooth; canines are front teeth."""
        if tooth.is_front:
            return cls.FRONT
        return cls.PREMOLAR if tooth.tooth_class is ToothClass.PREMOLAR else cls.MOLAR


@dataclass(frozen=True, slots=True, kw_only=True)
class Tab:
    """One classical tab.

    Parameters
    ----------
    colour
        As it stands in the table.
    doubt
        Standard deviation of L*, a*, b* of the entry.
    family
        None for a tab of a laboratory's own.
    note
        What is to be known of this entry, or empty.
    provenance
        Where the entry comes from.
    """

    name: str
    colour: Colour
    doubt: Triple
    family: HueFamily | None = None
    note: str = ""
    provenance: str = ""

    def __post_init__(self) -> None:
        """Refuse a tab without a name and doubts that are none."""
        if not self.name.strip():
            raise CatalogueError(
                translate("shade table", "A tab has no name."),
                advice=translate("shade table", "Give it one, such as A2."),
            )
        if not all(isfinite(one) and 0.0 <= one <= 30.0 for one in self.doubt):
            raise CatalogueError(
                translate("shade table", "The doubt of a tab is out of range."),
                advice=translate("shade table", "Give 0 to 30."),
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassOffsets:
    """Usual offsets from the body of one class of teeth."""

    tooth_class: OffsetClass
    offsets: tuple[Offset, ...]


def _usual() -> tuple[ClassOffsets, ...]:
    return tuple(ClassOffsets(tooth_class=one, offsets=DEFAULT_OFFSETS) for one in OffsetClass)


@dataclass(frozen=True, slots=True, kw_only=True)
class ShadeTable:
    """All tabs, in their order, and the usual offsets of all classes."""

    tabs: tuple[Tab, ...] = ()
    usual_offsets: tuple[ClassOffsets, ...] = field(default_factory=_usual)

    def tab(self, name: str) -> Tab:
        """Return the tab with this name, whatever its case.

        Raises
        ------
        CatalogueError
            If there is none.
        """
        for tab in self.tabs:
            if tab.name.casefold() == name.strip().casefold():
                return tab
        raise CatalogueError(
            translate("shade table", "There is no tab '{name}'.").format(name=name),
            advice=translate("shade table", "Choose of {name}.").format(
                name=", ".join(t.name for t in self.tabs)
            ),
        )

    def offsets(self, tooth_class: OffsetClass) -> tuple[Offset, ...]:
        """Return the usual offsets of a class of teeth."""
        for one in self.usual_offsets:
            if one.tooth_class is tooth_class:
                return one.offsets
        return DEFAULT_OFFSETS
