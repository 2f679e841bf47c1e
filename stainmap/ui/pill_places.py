"""Where the numbers of areas stand: at the middle of the widest part that can be seen."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.ui.zone_shares import ACCENTS, ZONE_COUNT

# Logical pixels. A number needs this much room around its middle, zones more than accents.
_ZONE_RADIUS, _ACCENT_RADIUS = 7.0, 4.0
_SECOND_RADIUS = 14.0
_KEEP_APART = 22.0
_MOST_PER_AREA = 3
_ENOUGH_ROWS = 250


@dataclass(frozen=True, slots=True)
class PillPlace:
    """Number of an area, screen place in logical pixels, and depth-buffer value 0 to 1."""

    number: int
    x: float
    y: float
    depth: float


def pill_places(areas: NDArray[np.uint8], pixel_size: float) -> list[PillPlace]:
    """Return places for numbers in a picture of areas.

    Parameters
    ----------
    areas
        (h, w, 4) uint8: zone 1 to 6 or 0, one bit per accent, depth high byte, depth low byte.
    pixel_size
        Logical pixels per pixel of `areas`.
    """
    # Numbers are larger than the pixels of any screen; the interface thread is not to wait.
    step = max(areas.shape[0] // _ENOUGH_ROWS, 1)
    areas = areas[::step, ::step]
    free = np.ones(areas.shape[:2], bool)
    places: list[PillPlace] = []
    for number in range(1, ZONE_COUNT + 1):
        _place(areas, areas[..., 0] == number, number, step * pixel_size, free, places)
    for number in ACCENTS:
        bit = 1 << (number - ACCENTS.start)
        _place(areas, (areas[..., 1] & bit) > 0, number, step * pixel_size, free, places)
    # They stand on the pixels that were looked at, not in the middle of those passed over.
    aside = 0.5 * (step - 1) * pixel_size
    return [replace(place, x=place.x - aside, y=place.y - aside) for place in places]


def _place(
    areas: NDArray[np.uint8],
    mask: NDArray[np.bool_],
    number: int,
    pixel_size: float,
    free: NDArray[np.bool_],
    places: list[PillPlace],
) -> None:
    """Add the places of one area and mark the room they take as no longer free."""
    from scipy import ndimage  # noqa: PLC0415 - slow to import

    if not mask.any():
        return
    # Only where it is seen: most areas are a small part of the picture.
    box = ndimage.find_objects(mask.astype(np.uint8))[0]
    top, left = box[0].start, box[1].start
    pieces, _ = ndimage.label(mask[box])
    padded = np.pad(mask[box], 1)
    room = ndimage.distance_transform_edt(padded)[1:-1, 1:-1] * pixel_size
    needed = _ZONE_RADIUS if number <= ZONE_COUNT else _ACCENT_RADIUS
    for _ in range(_MOST_PER_AREA):
        best = np.where(free[box], room, 0.0)
        row, column = (int(k) for k in np.unravel_index(np.argmax(best), best.shape))
        if best[row, column] < needed:
            return
        high, low = (int(v) for v in areas[top + row, left + column, 2:])
        depth = (256 * high + low) / 65535.0
        x, y = (left + column + 0.5) * pixel_size, (top + row + 0.5) * pixel_size
        places.append(PillPlace(number, x, y, depth))
        room[pieces == pieces[row, column]] = 0.0
        _occupy(free, top + row, left + column, _KEEP_APART / pixel_size)
        if number <= ZONE_COUNT:
            needed = _SECOND_RADIUS


def _occupy(free: NDArray[np.bool_], row: int, column: int, radius: float) -> None:
    reach = int(np.ceil(radius))
    top, left = max(row - reach, 0), max(column - reach, 0)
    window = free[top : row + reach + 1, left : column + reach + 1]
    rows, columns = np.ogrid[top : top + window.shape[0], left : left + window.shape[1]]
    window &= (rows - row) ** 2 + (columns - column) ** 2 > radius**2
