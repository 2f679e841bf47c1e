"""A measured or predicted colour that knows how it was measured."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, degrees, hypot

from stainmap.errors import PlanError


@dataclass(frozen=True, slots=True, kw_only=True)
class Measurement:
    """How an L*a*b* was, or is predicted to be, measured."""

    geometry: str = "45/0"
    illuminant: str = "D65"
    observer_degrees: int = 2
    backing: str = "natural dentine, medium"


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
                f"L*a*b* {self.lightness} {self.a} {self.b} is not a surface colour.",
                advice="L* runs from 0 to 100, a* and b* from -128 to 128.",
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
