"""What was asked before planning: the shade by thirds, stump, neighbours, the dentist's wish."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from math import isfinite
from typing import Final

from stainmap.errors import PlanError
from stainmap.model.colour import Colour, Conversion
from stainmap.model.tooth import Tooth
from stainmap.words import translate

Triple = tuple[float, float, float]

MOST_NEIGHBOURS: Final = 2
MOST_WISH_CHARACTERS: Final = 2000
_LARGEST_DOUBT: Final = 30.0


class Third(StrEnum):
    """A third of the tooth's height, at which a shade is read."""

    CERVICAL = "cervical"
    MIDDLE = "middle"
    INCISAL = "incisal"


class ShadeSource(StrEnum):
    """How a shade was got."""

    TAB = "classical tab"
    MEASURED = "measured"
    PHOTOGRAPH = "photograph"


@dataclass(frozen=True, slots=True, kw_only=True)
class Shade:
    """A colour that somebody read off a tooth, as it was read, with its doubt.

    Parameters
    ----------
    source
        How it was got.
    colour
        As it was read, in the way it was measured; not converted yet.
    doubt
        Standard deviation of L*, a*, b* of the reading itself; conversions add to it.
    name
        Designation of the tab; for the others what the user calls it, or empty.
    conversions
        What may be done to `colour` to hold it against a prediction.
    note
        Where `doubt` comes from, and anything else to know, in a sentence or two.
    """

    source: ShadeSource
    colour: Colour
    doubt: Triple = (0.0, 0.0, 0.0)
    name: str = ""
    conversions: tuple[Conversion, ...] = ()
    note: str = ""

    def __post_init__(self) -> None:
        """Refuse a doubt that is no standard deviation, and a tab without its designation."""
        if not all(isfinite(one) and 0.0 <= one <= _LARGEST_DOUBT for one in self.doubt):
            raise PlanError(
                translate("intake", "The doubt of a shade is out of range."),
                advice=translate(
                    "intake", "Give 0 to {largest_doubt:g} for each of L*, a* and b*."
                ).format(largest_doubt=_LARGEST_DOUBT),
            )
        if self.source is ShadeSource.TAB and not self.name:
            raise PlanError(
                translate("intake", "A tab has no designation."),
                advice=translate("intake", "Choose one, such as A2."),
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class ThirdShade:
    """The shade of one third."""

    third: Third
    shade: Shade


@dataclass(frozen=True, slots=True, kw_only=True)
class Neighbour:
    """A tooth beside the restoration, and the shade of its middle third."""

    tooth: Tooth
    shade: Shade


@dataclass(frozen=True, slots=True, kw_only=True)
class Intake:
    """The answers of one page. Stump and cement themselves are the case's `backings`.

    Parameters
    ----------
    shades
        Of one, two or all thirds; in any order, kept from cervical to incisal.
    stump_known
        True once somebody has said what lies behind the crown; without, it is only assumed.
    implant_base
        True where the crown stands on a base on an implant instead of a prepared tooth.
    neighbours
        Up to two.
    wish
        What the dentist wants, in their words.
    """

    shades: tuple[ThirdShade, ...] = ()
    stump_known: bool = False
    implant_base: bool = False
    neighbours: tuple[Neighbour, ...] = ()
    wish: str = ""

    def __post_init__(self) -> None:
        """Refuse a third or a neighbour given twice; put thirds in order."""
        order = list(Third)
        thirds = [one.third for one in self.shades]
        if len(set(thirds)) != len(thirds):
            raise PlanError(
                translate("intake", "A third has two shades."),
                advice=translate("intake", "Keep one of them."),
            )
        ordered = tuple(sorted(self.shades, key=lambda one: order.index(one.third)))
        object.__setattr__(self, "shades", ordered)
        teeth = [one.tooth.number for one in self.neighbours]
        if len(teeth) > MOST_NEIGHBOURS:
            raise PlanError(
                translate("intake", "{count} neighbours were given.").format(count=len(teeth)),
                advice=translate("intake", "Give up to two."),
            )
        if len(set(teeth)) != len(teeth):
            raise PlanError(
                translate("intake", "Neighbour {teeth} was given twice.").format(teeth=teeth[0]),
                advice=translate("intake", "Change its number."),
            )
        if len(self.wish) > MOST_WISH_CHARACTERS:
            raise PlanError(
                translate("intake", "The wish is {count} characters long.").format(
                    count=len(self.wish)
                ),
                advice=translate(
                    "intake",
                    "Say it in up to {most_wish_characters}; longer notes fit into the case.",
                ).format(most_wish_characters=MOST_WISH_CHARACTERS),
            )

    def shade(self, third: Third) -> Shade | None:
        """Return the shade of a third, or None if none was given."""
        return next((one.shade for one in self.shades if one.third is third), None)

    def with_shade(self, third: Third, shade: Shade | None) -> Intake:
        """Return the intake with another shade of a third; None takes it away."""
        kept = tuple(one for one in self.shades if one.third is not third)
        added = () if shade is None else (ThirdShade(third=third, shade=shade),)
        return replace(self, shades=kept + added)
