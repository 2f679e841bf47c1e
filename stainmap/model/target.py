"""What is wanted: the body's colour, and the other areas' offsets from it."""

from __future__ import annotations

from dataclasses import dataclass

from stainmap.model.colour import Colour, Conversion
from stainmap.model.zone import Area, Zone


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
class Target:
    """Wanted colour of the body and offsets of other areas.

    Parameters
    ----------
    body
        As it was measured, or is wanted.
    name
        May be a shade designation.
    conversions
        What may be done to `body` to hold it against a prediction that is measured otherwise.
    """

    body: Colour
    name: str = ""
    offsets: tuple[Offset, ...] = DEFAULT_OFFSETS
    conversions: tuple[Conversion, ...] = ()

    def wanted(self, area: Area) -> Colour | None:
        """Return the wanted colour of `area`, or None where nothing is wanted of it."""
        if area is Zone.BODY:
            return self.body
        for offset in self.offsets:
            if offset.area == area:
                return self.body.shifted(offset.lightness, offset.chroma)
        return None
