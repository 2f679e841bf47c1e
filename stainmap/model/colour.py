"""A measured or predicted colour that knows how it was measured."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from math import atan2, degrees, hypot
from typing import Final

from stainmap.errors import PlanError
from stainmap.words import translate

WITHOUT_GLOSS: Final = "45/0"
"""Lit at 45 degrees, seen from above; the gloss goes elsewhere. That of every prediction."""

SPHERE_WITHOUT_GLOSS: Final = "d/8 SCE"
"""Lit by a sphere, seen at 8 degrees, through a gloss trap (specular component excluded)."""

SPHERE_WITH_GLOSS: Final = "d/8 SCI"
"""Lit by a sphere, seen at 8 degrees, gloss and all (specular component included)."""

TAB_TABLE_SPHERE: Final = "d/8, tab table"
"""Of the table of classical tabs: an integrating sphere, whether with the gloss is not known."""

PHOTOGRAPHED: Final = "photograph"
"""As a camera saw it, in whatever light there was, the gloss avoided by eye."""

IN_PLACE: Final = "in place"
"""Backing of a colour that is wanted as seen in the mouth, whatever lies behind it there."""


class Conversion(StrEnum):
    """What may make unlike colours alike, by the name that travels with the result."""

    FIRST_SURFACE = "first-surface reflection, polished, n 2.15"
    ADAPTED_WHITE = "linear Bradford adaptation"
    TAB_TABLE = "tab table, illuminant C to D65, geometry unchanged, \N{PLUS-MINUS SIGN}1.5"
    PHOTOGRAPH = "photograph taken for 45/0, D65"


@dataclass(frozen=True, slots=True, kw_only=True)
class Measurement:
    """How an L*a*b* was, or is predicted to be, measured.

    Parameters
    ----------
    geometry
        Of light and eye. Conversions know those named in this module.
    illuminant
        CIE name of the light.
    observer_degrees
        Field of the CIE standard observer.
    backing
        What lies behind, or `IN_PLACE`.
    """

    geometry: str = WITHOUT_GLOSS
    illuminant: str = "D65"
    observer_degrees: int = 2
    backing: str = "natural dentine, medium"

    def __str__(self) -> str:
        """Return it as "45/0, D65, 2 degrees, over natural dentine"."""
        behind = self.backing if self.backing == IN_PLACE else f"over {self.backing}"
        return f"{self.geometry}, {self.illuminant}, {self.observer_degrees} degrees, {behind}"

    def unlike(self, other: Measurement) -> tuple[str, ...]:
        """Return in what two measurements differ: geometry, illuminant, observer, backing.

        A colour wanted in place is like one over any backing.
        """
        apart = [
            name
            for name, one, two in (
                ("geometry", self.geometry, other.geometry),
                ("illuminant", self.illuminant, other.illuminant),
                ("observer", self.observer_degrees, other.observer_degrees),
                ("backing", self.backing, other.backing),
            )
            if one != two
        ]
        if "backing" in apart and IN_PLACE in (self.backing, other.backing):
            apart.remove("backing")
        return tuple(apart)


@dataclass(frozen=True, slots=True, kw_only=True)
class Colour:
    """CIE 1976 L*a*b* (L* 0 to 100) together with how it was measured."""

    lightness: float
    a: float
    b: float
    measurement: Measurement = Measurement()

    def __post_init__(self) -> None:
        """Refuse values outside the solid of surface colours."""
        if not 0.0 <= self.lightness <= 100.0 or not (abs(self.a) <= 128 and abs(self.b) <= 128):
            raise PlanError(
                translate("colour", "L*a*b* {lightness} {a} {b} is not a surface colour.").format(
                    lightness=self.lightness, a=self.a, b=self.b
                ),
                advice=translate("colour", "L* runs from 0 to 100, a* and b* from -128 to 128."),
            )

    @property
    def lab(self) -> tuple[float, float, float]:
        """L*, a*, b*."""
        return (self.lightness, self.a, self.b)

    @property
    def chroma(self) -> float:
        """CIE chroma C*."""
        return hypot(self.a, self.b)

    @property
    def hue_degrees(self) -> float:
        """CIE hue angle h in degrees, 0 to 360."""
        return degrees(atan2(self.b, self.a)) % 360.0

    def shifted(self, lightness_step: float, chroma_step: float) -> Colour:
        """Return the colour moved by dL* and dC* at its own hue; L* and C* stop at their ends."""
        chroma = max(self.chroma + chroma_step, 0.0)
        scale = chroma / self.chroma if self.chroma > 0.0 else 0.0
        return Colour(
            lightness=min(max(self.lightness + lightness_step, 0.0), 100.0),
            a=self.a * scale,
            b=self.b * scale,
            measurement=self.measurement,
        )
