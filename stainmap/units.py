"""Units: lengths of mesh files, the two sizes of a crown, how temperatures are written."""

from __future__ import annotations

from enum import StrEnum


class LengthUnit(StrEnum):
    """Unit in which a mesh file gives its coordinates."""

    MICROMETRE = "um"
    MILLIMETRE = "mm"
    CENTIMETRE = "cm"
    METRE = "m"
    INCH = "in"

    @property
    def millimetres(self) -> float:
        """Length of one unit in millimetres."""
        return _MILLIMETRES[self]


class SizeState(StrEnum):
    """Whether lengths are those of the milled (presintered) or of the sintered crown."""

    MILLED = "milled"
    SINTERED = "sintered"
    UNKNOWN = "unknown"


class TemperatureUnit(StrEnum):
    """How temperatures are written; they are kept and computed in degrees Celsius."""

    CELSIUS = "C"
    FAHRENHEIT = "F"
    BOTH = "both"

    def text(self, celsius: float) -> str:
        """Return a temperature in whole degrees, as "93 °C", "200 °F" or "93 °C (200 °F)"."""
        return self._written(f"{celsius:.0f}", f"{fahrenheit(celsius):.0f}", "")

    def text_of_difference(self, kelvin: float, per: str = "", *, decimals: int = 0) -> str:
        """Return a difference of temperatures without its sign, as "10 °C/min" with `per` "min"."""
        size = abs(kelvin)
        end = f"/{per}" if per else ""
        return self._written(f"{size:.{decimals}f}", f"{size * 1.8:.{decimals}f}", end)

    def of(self, celsius: float) -> float:
        """Return the number on an axis: degrees Fahrenheit where only they are shown."""
        return fahrenheit(celsius) if self is TemperatureUnit.FAHRENHEIT else celsius

    @property
    def axis_sign(self) -> str:
        """What the numbers of `of` are followed by."""
        return "°F" if self is TemperatureUnit.FAHRENHEIT else "°C"

    def _written(self, in_celsius: str, in_fahrenheit: str, end: str) -> str:
        if self is TemperatureUnit.CELSIUS:
            return f"{in_celsius} °C{end}"
        if self is TemperatureUnit.FAHRENHEIT:
            return f"{in_fahrenheit} °F{end}"
        return f"{in_celsius} °C{end} ({in_fahrenheit} °F{end})"


def fahrenheit(celsius: float) -> float:
    """Return degrees Fahrenheit; exact by definition."""
    return 1.8 * celsius + 32.0


_MILLIMETRES = {
    LengthUnit.MICROMETRE: 0.001,
    LengthUnit.MILLIMETRE: 1.0,
    LengthUnit.CENTIMETRE: 10.0,
    LengthUnit.METRE: 1000.0,
    LengthUnit.INCH: 25.4,
}
