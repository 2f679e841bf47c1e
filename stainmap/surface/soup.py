"""What a mesh file holds before anything is repaired: points and triangles, as written."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from numpy.typing import NDArray

from stainmap.units import LengthUnit


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Soup:
    """Points and triangles of a file in its own order and unit.

    Parameters
    ----------
    points
        (N, 3) float32 or float64. For STL the corners of the facets, three each.
    triangles
        (T, 3) integer indices into the points.
    declared_unit
        The unit, if the file says one.
    warnings
        Sentences about what was odd but could be read.
    """

    points: NDArray[Any]
    triangles: NDArray[Any]
    declared_unit: LengthUnit | None = None
    warnings: tuple[str, ...] = ()
