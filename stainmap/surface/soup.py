"""What a mesh file holds before anything is repaired: points and triangles, as written."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from numpy.typing import NDArray

from stainmap.errors import MeshFileError
from stainmap.units import LengthUnit

# A scanner's finest body of 15 mm has a million triangles; opening refuses what needs more than two
# million points. Files beyond this are refused while they are read, before memory runs out.
MAX_TRIANGLES = 4_000_000
MAX_POINTS = 3 * MAX_TRIANGLES


def too_many(count: int, name: str) -> MeshFileError:
    """Return the error about a file that holds far more than a workpiece needs."""
    return MeshFileError(
        f"It holds {count:,} points or triangles or more; at most {MAX_TRIANGLES:,} triangles are"
        " read.",
        where=name,
        advice="Export one body at a time, with fewer triangles.",
    )


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
