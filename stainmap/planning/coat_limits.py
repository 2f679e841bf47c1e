"""How many coats an area takes at most: common practice, no published source.

Beyond these counts a plan is not wrong, but it leaves what the starter materials are held to: the
colours of natural teeth. Whoever proposes coats keeps within them; whoever paints may go beyond.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from stainmap.model.material import Catalogue, Liquid
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.words import either, listed, marked, sentence_case, translate


class Use(StrEnum):
    """What a liquid is for: the words its purpose begins with."""

    BASE = "base"
    LOWERS_VALUE = "lowers value"
    DARK_ACCENT = "warm dark accent"
    BRIGHT_ACCENT = "warm bright accent"


_WORDS = {
    Use.BASE: marked("coat limits", "base"),
    Use.LOWERS_VALUE: marked("coat limits", "what lowers value"),
    Use.DARK_ACCENT: marked("coat limits", "dark accent"),
    Use.BRIGHT_ACCENT: marked("coat limits", "bright accent"),
}


def use_of(liquid: Liquid) -> Use | None:
    """Return what a liquid is for, or None where its purpose begins with no known words."""
    purpose = liquid.purpose.casefold()
    return next((use for use in Use if purpose.startswith(use)), None)


@dataclass(frozen=True, slots=True)
class CoatLimit:
    """At most so many coats, together, of the liquids for any of these uses."""

    uses: frozenset[Use]
    most: int

    @property
    def label(self) -> str:
        """The limit in words."""
        names = [translate("coat limits", _WORDS[use]) for use in Use if use in self.uses]
        if self.most == 0:
            return translate("coat limits", "no coats of {uses}").format(uses=either(names))
        if len(names) > 1:
            text = (
                translate("coat limits", "at most {most} coat of {uses} together")
                if self.most == 1
                else translate("coat limits", "at most {most} coats of {uses} together")
            )
        else:
            text = (
                translate("coat limits", "at most {most} coat of {uses}")
                if self.most == 1
                else translate("coat limits", "at most {most} coats of {uses}")
            )
        return text.format(most=self.most, uses=listed(names))


def _limits(*pairs: tuple[Iterable[Use], int]) -> tuple[CoatLimit, ...]:
    return tuple(CoatLimit(frozenset(uses), most) for uses, most in pairs)


_BASE, _VALUE, _DARK, _BRIGHT = Use.BASE, Use.LOWERS_VALUE, Use.DARK_ACCENT, Use.BRIGHT_ACCENT
_NECK = _limits(
    ([_BASE, _BRIGHT], 3), ([_BRIGHT], 2), ([_DARK], 1), ([_DARK, _BRIGHT], 2), ([_VALUE], 0)
)
_BODY = _limits(([_BASE], 2), ([_VALUE, _DARK, _BRIGHT], 0))
_BETWEEN = _limits(([_BASE], 2), ([_VALUE], 1), ([_DARK, _BRIGHT], 0))
# Over connectors a dark accent sets the units apart; where it lies nothing else lowers value.
_JOINT = _limits(([_BASE], 2), ([_VALUE], 1), ([_DARK], 1), ([_VALUE, _DARK], 1), ([_BRIGHT], 0))
_CUSP = _limits(([_BASE], 2), ([_VALUE], 4), ([_DARK, _BRIGHT], 0))
_FISSURE = _limits(
    ([_BASE, _BRIGHT], 2),
    ([_BRIGHT], 1),
    ([_DARK], 3),
    ([_DARK, _BRIGHT], 3),
    ([_BASE, _DARK, _BRIGHT], 4),
    ([_VALUE], 0),
)

LIMITS: Final[Mapping[Area, tuple[CoatLimit, ...]]] = {
    Zone.CERVICAL: _NECK,
    Zone.BODY: _BODY,
    Zone.INTERPROXIMAL: _BETWEEN,
    Zone.CUSP: _CUSP,
    Zone.FISSURE: _FISSURE,
    Zone.INNER: _BODY,
    Accent.MARGIN_BAND: _NECK,
    Accent.MARGINAL_RIDGE: _CUSP,
    Accent.TRIANGULAR_RIDGE: _CUSP,
    Accent.LINE_ANGLE: _CUSP,
    Accent.CONNECTOR: _JOINT,
    Accent.INNER_NECK_BAND: _BODY,
    Accent.PONTIC_TISSUE: _BODY,
}
"""Most coats by area, what an accent inherits from below counted in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Excess:
    """An area with more coats than usual."""

    area: Area
    limit: CoatLimit
    coats: float

    def __str__(self) -> str:
        """Return one sentence for the user."""
        return translate("coat limits", "{area}: {coats:g} coats, {limit}.").format(
            area=sentence_case(area_label(self.area)), coats=self.coats, limit=self.limit.label
        )


def excesses(area: Area, coats: Mapping[str, float], materials: Catalogue) -> tuple[Excess, ...]:
    """Return the limits that coats on an area go beyond; none if the area keeps them all.

    Parameters
    ----------
    coats
        Coats by name of the liquid, all that lie there, also what an accent inherits.
    materials
        Tells what each liquid is for. Liquids for no known use are not counted.

    Raises
    ------
    CatalogueError
        If a liquid is not in the materials.
    """
    by_use = dict.fromkeys(Use, 0.0)
    for name, count in coats.items():
        use = use_of(materials.liquid(name))
        if use is not None:
            by_use[use] += count
    return tuple(
        Excess(area=area, limit=limit, coats=total)
        for limit in LIMITS[area]
        if (total := sum(by_use[use] for use in limit.uses)) > limit.most
    )
