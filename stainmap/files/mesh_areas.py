"""The areas of a crown as numbers per vertex and per triangle, for meshes that carry them."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.zone import Accent, Area, Zone, area_label

# A soft mask counts where at least half of its coats go.
_COVERED = 0.5


def vertex_accents(case: Case) -> NDArray[np.uint8]:
    """Return the number of the accent that covers each vertex most, (V,) uint8; 0 for none."""
    number = np.zeros(len(case.zones), dtype=np.uint8)
    most = np.full(len(case.zones), _COVERED, dtype=np.float32)
    for mask in case.accents:
        more = mask.share >= most
        number[more] = int(mask.accent)
        most[more] = np.nextafter(mask.share[more], np.float32(2.0))
    return number


def triangle_areas(of_vertices: NDArray[np.uint8], faces: NDArray[np.int32]) -> NDArray[np.uint8]:
    """Return the number that at least two corners of each triangle have, (F,) uint8.

    Where all three differ, that of the first corner.
    """
    first, second, third = of_vertices[faces].T
    return np.asarray(np.where(second == third, second, first), dtype=np.uint8)


def area_names(case: Case) -> dict[int, str]:
    """Return the names of all areas by number, zones first, as they are called on this tooth."""
    front = case.units[0].tooth.is_front
    areas: list[Area] = [*Zone, *Accent]
    return {int(area): area_label(area, front=front) for area in areas}
