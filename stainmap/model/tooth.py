"""Teeth by their ISO 3950 number, and the units of a restoration."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from stainmap.errors import PlanError
from stainmap.words import marked, translate

_NAMES = (
    marked("teeth", "central incisor"),
    marked("teeth", "lateral incisor"),
    marked("teeth", "canine"),
    marked("teeth", "first premolar"),
    marked("teeth", "second premolar"),
    marked("teeth", "first molar"),
    marked("teeth", "second molar"),
    marked("teeth", "third molar"),
)
_QUADRANTS = {
    1: marked("teeth", "upper right"),
    2: marked("teeth", "upper left"),
    3: marked("teeth", "lower left"),
    4: marked("teeth", "lower right"),
}


class ToothClass(StrEnum):
    """Class of a tooth by its form."""

    INCISOR = "incisor"
    CANINE = "canine"
    PREMOLAR = "premolar"
    MOLAR = "molar"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tooth:
    """A permanent tooth named by its two-digit ISO 3950:2016 number (quadrant, position)."""

    number: int

    def __post_init__(self) -> None:
        """Refuse numbers that name no permanent tooth."""
        if self.number // 10 not in _QUADRANTS or not 1 <= self.number % 10 <= 8:
            raise PlanError(
                translate("tooth", "{number} is not a tooth number.").format(number=self.number),
                advice=translate(
                    "tooth",
                    "Give two digits by ISO 3950: quadrant 1 to 4, position 1 to 8, as in 46.",
                ),
            )

    @property
    def quadrant(self) -> int:
        """1 upper right, 2 upper left, 3 lower left, 4 lower right, as seen by the patient."""
        return self.number // 10

    @property
    def position(self) -> int:
        """1 (central incisor) to 8 (third molar), counted from the midline."""
        return self.number % 10

    @property
    def tooth_class(self) -> ToothClass:
        """Incisor, canine, premolar or molar."""
        if self.position <= 2:
            return ToothClass.INCISOR
        if self.position == 3:
            return ToothClass.CANINE
        return ToothClass.PREMOLAR if self.position <= 5 else ToothClass.MOLAR

    @property
    def is_front(self) -> bool:
        """True for incisors and canines."""
        return self.position <= 3

    @property
    def is_upper(self) -> bool:
        """True in the upper jaw."""
        return self.quadrant <= 2

    @property
    def name(self) -> str:
        """Name in words, for instance "lower right first molar"."""
        return translate("teeth", "{quadrant} {tooth}").format(
            quadrant=translate("teeth", _QUADRANTS[self.quadrant]),
            tooth=translate("teeth", _NAMES[self.position - 1]),
        )

    @property
    def buccal_word(self) -> str:
        """Word for the outward side: "labial" on front teeth, "buccal" behind them."""
        return "labial" if self.is_front else "buccal"

    @property
    def lingual_word(self) -> str:
        """Word for the inward side: "palatal" in the upper jaw, "lingual" in the lower."""
        return "palatal" if self.is_upper else "lingual"

    @property
    def occlusal_word(self) -> str:
        """Word for the biting side: "incisal" on front teeth, "occlusal" behind them."""
        return "incisal" if self.is_front else "occlusal"


class Role(StrEnum):
    """What a unit is within the restoration."""

    CROWN = "crown"
    RETAINER = "retainer"
    PONTIC = "pontic"


@dataclass(frozen=True, slots=True, kw_only=True)
class Unit:
    """One unit of the restoration."""

    tooth: Tooth
    role: Role = Role.CROWN
