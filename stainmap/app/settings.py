"""What a person sets for this computer: units, paper, looks of the window, usual amounts, keys."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from types import MappingProxyType
from typing import Final

from stainmap.errors import PlanError, StainmapError
from stainmap.model.case import Case
from stainmap.model.material import Catalogue
from stainmap.model.process import JarAmounts
from stainmap.paper.page_size import PageSize
from stainmap.units import TemperatureUnit
from stainmap.words import translate

SIZES_PERCENT: Final = (100, 110, 125, 150, 175, 200)
"""Sizes of the window's text and everything else in it that can be chosen."""
_LONGEST_NAME: Final = 200
_SAME_DROPS: Final = 1e-3


class Scheme(StrEnum):
    """Which of the two palettes the window wears."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


class Typeface(StrEnum):
    """Which face the window is written in."""

    OWN = "own"
    SYSTEM = "system"


class Motion(StrEnum):
    """Whether the window moves anything by itself: the crown turning to a place, folds, menus."""

    SYSTEM = "system"
    FULL = "full"
    REDUCED = "reduced"


class Language(StrEnum):
    """Which language the window speaks; never the desktop's without being asked."""

    ENGLISH = "en"
    GERMAN = "de"


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """The settings of this computer.

    Parameters
    ----------
    degrees
        How temperatures are written, on screen and on paper.
    page
        Paper that sheets are made for unless another is asked for.
    scheme, typeface, motion
        How the window looks and moves.
    size_percent
        Size of text and everything else in the window; one of `SIZES_PERCENT`.
    drop_volume_ml
        Volume of one drop of the laboratory's pipettes, which new cases begin with; 0.01 to
        0.2 mL, by USP <1101> 0.05.
    programme
        Name of the sintering programme that new cases begin with; empty for the first there is.
    language
        Language of the window. Paper, exported files, manual and evidence stay English.
    keys
        Keys that were changed: name of a command, and its key in portable text (empty for none).

    Raises
    ------
    StainmapError
        If a value is out of range; the sentence says which.
    """

    degrees: TemperatureUnit = TemperatureUnit.BOTH
    page: PageSize = PageSize.A4
    scheme: Scheme = Scheme.SYSTEM
    typeface: Typeface = Typeface.OWN
    motion: Motion = Motion.SYSTEM
    size_percent: int = 100
    drop_volume_ml: float = 0.05
    programme: str = ""
    language: Language = Language.ENGLISH
    keys: Mapping[str, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        """Refuse what cannot be set; keep the keys from being changed in place."""
        if self.size_percent not in SIZES_PERCENT:
            sizes = ", ".join(str(size) for size in SIZES_PERCENT)
            raise StainmapError(
                translate(
                    "settings", "A size of {size_percent} % is none of those there are."
                ).format(size_percent=self.size_percent),
                advice=translate("settings", "Choose {sizes}.").format(sizes=sizes),
            )
        if not 0.01 <= self.drop_volume_ml <= 0.2:
            raise StainmapError(
                translate("settings", "A drop of {drop_volume_ml:g} mL is out of range.").format(
                    drop_volume_ml=self.drop_volume_ml
                ),
                advice=translate("settings", "Give 0.01 to 0.2 mL; 0.05 is usual."),
            )
        if len(self.programme) > _LONGEST_NAME:
            raise StainmapError(translate("settings", "The name of the programme is too long."))
        object.__setattr__(self, "keys", MappingProxyType(dict(self.keys)))

    @property
    def amounts(self) -> JarAmounts | None:
        """What a new case takes for granted about its jars; None if it is what is assumed."""
        usual = JarAmounts()
        amounts = replace(usual, drops_per_ml=self.drops_per_ml)
        return None if amounts == usual else amounts

    @property
    def drops_per_ml(self) -> float:
        """Drops in one millilitre."""
        return round(1.0 / self.drop_volume_ml, 4)

    def programme_of(self, materials: Catalogue) -> str:
        """Return the programme that a new case begins with: the one set, if there is such a one."""
        names = [one.name for one in materials.programmes]
        return self.programme if self.programme in names else names[0]


def counted_drop_volume_ml(drops: int, filled_ml: float) -> float:
    """Return the volume of one drop from counting how many fill a measure.

    Raises
    ------
    PlanError
        If no pipette gives such drops.
    """
    if drops < 1 or not filled_ml > 0.0:
        raise PlanError(
            translate("settings", "Nothing was counted."),
            advice=translate("settings", "Count the drops that fill 1 mL or more."),
        )
    volume = filled_ml / drops
    if not 0.01 <= volume <= 0.2:
        raise PlanError(
            translate(
                "settings",
                "{drops} drops in {filled_ml:g} mL make {volume:.3g} mL each, which is out of "
                "range.",
            ).format(drops=drops, filled_ml=filled_ml, volume=volume),
            advice=translate("settings", "Count again; drops have 0.01 to 0.2 mL."),
        )
    return volume


def follows_drop_volume(case: Case, settings: Settings) -> bool:
    """Return True if a case has the volume of a drop that is set, not one of its own."""
    own = case.process.jar_amounts.drops_per_ml
    return abs(own - settings.drops_per_ml) < _SAME_DROPS


def with_drop_volume(case: Case, settings: Settings) -> Case:
    """Return the case with the volume of a drop that is set."""
    amounts = replace(case.process.jar_amounts, drops_per_ml=settings.drops_per_ml)
    own = None if amounts == JarAmounts() else amounts
    return replace(case, process=replace(case.process, amounts=own))
