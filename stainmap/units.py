"""Length units of mesh files and the two sizes of a crown."""

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


_MILLIMETRES = {
    LengthUnit.MICROMETRE: 0.001,
    LengthUnit.MILLIMETRE: 1.0,
    LengthUnit.CENTIMETRE: 10.0,
    LengthUnit.METRE: 1000.0,
    LengthUnit.INCH: 25.4,
}
