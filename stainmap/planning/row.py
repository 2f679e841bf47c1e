"""The order of a bridge's units in the row, and the direction of the row at each."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from stainmap.model.tooth import Tooth, Unit
from stainmap.planning.directions import SideGuess, across, patients_left
from stainmap.surface.mesh import FloatArray

# Mesiodistal times buccolingual widths of crowns, mm2, positions 1 to 8: common textbook
# dimensions, from memory. Only their ranking within one bridge matters.
_UPPER_MM2 = (59.5, 39.0, 60.0, 63.0, 61.0, 110.0, 99.0, 85.0)
_LOWER_MM2 = (30.0, 35.8, 52.5, 52.5, 56.0, 115.5, 105.0, 95.0)


def row_place(tooth: Tooth) -> int:
    """Return the place in the row from the patient's right (-8) to left (8), without a 0."""
    right = tooth.quadrant in (1, 4)
    return -tooth.position if right else tooth.position


def row_order(units: Sequence[Unit]) -> list[int]:
    """Return the indices of the units from the patient's right to left."""
    return sorted(range(len(units)), key=lambda index: row_place(units[index].tooth))


def vote_by_size(areas_mm2: Sequence[float], units: Sequence[Unit]) -> float:
    """Return how well the sizes of the parts fit the teeth from the patient's right to left.

    Parameters
    ----------
    areas_mm2
        Outer area of each part, in order along the span.
    units
        The units of the case.

    Returns
    -------
    vote
        About -1 to 1: positive if the span runs to the patient's left, negative if to the right.
    """
    teeth = [units[index].tooth for index in row_order(units)]
    textbook = [
        (_UPPER_MM2 if tooth.is_upper else _LOWER_MM2)[tooth.position - 1] for tooth in teeth
    ]
    found, expected = _centred_log(np.asarray(areas_mm2)), _centred_log(np.asarray(textbook))
    # Areas that differ by a few per cent only say nothing, whatever the teeth.
    scale = max(float(np.linalg.norm(found) * np.linalg.norm(expected)), 0.05)
    return 0.5 * float(found @ (expected - expected[::-1])) / scale


def vote_by_sides(
    sides: Sequence[SideGuess | None],
    directions: Sequence[FloatArray | None],
    axis: FloatArray,
    *,
    upper: bool,
) -> float:
    """Return whether buccal, as guessed on each part, fits a span to the patient's left.

    Parameters
    ----------
    sides
        Where buccal seems to be on each part, in order along the span.
    directions
        Direction of the span at each part.
    axis
        (3,) occlusal axis.
    upper
        Whether it is the upper jaw.

    Returns
    -------
    vote
        -1 to 1, as in `vote_by_size`.
    """
    vote = 0.0
    for side, ahead in zip(sides, directions, strict=True):
        if side is None or ahead is None:
            continue
        left = across(patients_left(side.direction, axis, upper=upper), axis)
        if left is not None:
            vote += side.confidence * float(left @ ahead)
    return vote / max(len(sides), 1)


def _centred_log(values: NDArray[np.float64]) -> FloatArray:
    logarithm = np.log(np.maximum(values, 1e-9))
    return np.asarray(logarithm - logarithm.mean())


def row_directions(centres: FloatArray, axis: FloatArray) -> list[FloatArray | None]:
    """Return the direction of the row at each of its units (N, 3), across the axis.

    From the unit before to the one after, or from and to itself at the ends.
    """
    last = len(centres) - 1
    return [
        across(centres[min(k + 1, last)] - centres[max(k - 1, 0)], axis) for k in range(last + 1)
    ]


def mesial_along(left: FloatArray, tooth: Tooth) -> FloatArray:
    """Return mesial where the row runs to the patient's left along a unit vector."""
    return np.asarray(left if tooth.quadrant in (1, 4) else -left)
