"""What is wanted: the body's colour, and the other areas' offsets from it or their own colours."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from stainmap.model.colour import Colour, Conversion
from stainmap.model.zone import Area, Zone

Triple = tuple[float, float, float]
CERTAIN: Final[Triple] = (0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Offset:
    """Wanted difference from the body: dL*, and dC* at the body's hue."""

    area: Area
    lightness: float
    chroma: float


# Common practice, no published source; the user can change every one of them.
DEFAULT_OFFSETS = (
    Offset(area=Zone.CERVICAL, lightness=-2.0, chroma=4.0),
    Offset(area=Zone.INTERPROXIMAL, lightness=-2.0, chroma=2.0),
    Offset(area=Zone.CUSP, lightness=-3.0, chroma=-2.0),
    Offset(area=Zone.FISSURE, lightness=-4.0, chroma=5.0),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaShade:
    """A colour that one area is held to by itself, instead of to an offset from the body.

    Parameters
    ----------
    colour
        As it was measured, or is wanted.
    conversions
        What may be done to `colour` to hold it against a prediction that is measured otherwise.
    doubt
        Standard deviation of L*, a*, b* of the reading, or None where nobody said.
    """

    area: Area
    colour: Colour
    conversions: tuple[Conversion, ...] = ()
    doubt: Triple | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """Wanted colour of the body; offsets of other areas, or colours of their own.

    Parameters
    ----------
    body
        As it was measured, or is wanted.
    name
        May be a shade designation.
    offsets
        Of areas that have no shade of their own.
    conversions
        What may be done to `body` to hold it against a prediction that is measured otherwise.
    held
        Areas with a shade of their own: those of the other thirds. They go before offsets.
    body_doubt
        Standard deviation of L*, a*, b* of the reading of `body`, or None where nobody said.
    """

    body: Colour
    name: str = ""
    offsets: tuple[Offset, ...] = DEFAULT_OFFSETS
    conversions: tuple[Conversion, ...] = ()
    held: tuple[AreaShade, ...] = ()
    body_doubt: Triple | None = None

    def wanted(self, area: Area) -> Colour | None:
        """Return the wanted colour of `area`, or None where nothing is wanted of it.

        In the way it was measured: a shade of the area's own may have been read otherwise than
        the body's. `planning.targets.wanted_in` brings both to one way.
        """
        if area is Zone.BODY:
            return self.body
        own = self.own_shade(area)
        if own is not None:
            return own.colour
        for offset in self.offsets:
            if offset.area == area:
                return self.body.shifted(offset.lightness, offset.chroma)
        return None

    def own_shade(self, area: Area) -> AreaShade | None:
        """Return the shade an area is held to by itself, or None; the body's is its own."""
        if area is Zone.BODY:
            return AreaShade(
                area=area,
                colour=self.body,
                conversions=self.conversions,
                doubt=self.body_doubt,
            )
        return next((one for one in self.held if one.area == area), None)
