"""Where teeth stand in the dental arch: a textbook arch, to show a crown among its neighbours.

Half of it runs in the plane of the bite from the midline (x = 0, the foremost place) to the back
of the second molar. Its curve is the beta function that Braun and colleagues fitted to dental
arches [Braun1998]. How deep it is for its width is assumed, and so long that the seven teeth of
textbook width stand in it without gap: nobody's arch.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.tooth import Tooth
from stainmap.surface.mesh import FloatArray

# Mesiodistal and buccolingual widths and heights of natural crowns, mm, positions 1 to 8: common
# textbook dimensions, from memory.
_UPPER: Final = (
    (8.5, 7.0, 10.5),
    (6.5, 6.0, 9.0),
    (7.5, 8.0, 10.0),
    (7.0, 9.0, 8.5),
    (7.0, 9.0, 8.5),
    (10.0, 11.0, 7.5),
    (9.0, 11.0, 7.0),
    (8.5, 10.0, 6.5),
)
_LOWER: Final = (
    (5.0, 6.0, 9.0),
    (5.5, 6.5, 9.5),
    (7.0, 7.5, 11.0),
    (7.0, 7.5, 8.5),
    (7.0, 8.0, 8.0),
    (11.0, 10.5, 7.5),
    (10.5, 10.0, 7.0),
    (10.0, 9.5, 7.0),
)
# An upper lateral incisor ends above its neighbours' edges: common practice, from memory.
_SHORTER_MM: Final = 0.7

_EXPONENT: Final = 0.8
# Assumed: with it the canines and first molars of the textbook arch are about as far apart as
# means of adults are, 31 and 53 mm above, 25 and 49 mm below.
_DEPTH_PER_WIDTH: Final = 0.70
_IN_THE_CURVE: Final = 7
_STEPS: Final = 4000


@dataclass(frozen=True, slots=True, kw_only=True)
class CrownSize:
    """Mesiodistal and buccolingual width and height of a crown, mm."""

    mesiodistal: float
    buccolingual: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ArchStand:
    """Where a tooth stands, in the plane of the bite: x to the patient's left, y to the front.

    Parameters
    ----------
    place
        (2,) mm. The middle of the tooth on the curve; the midline's foremost place is (0, 0).
    mesial, facial
        (2,) unit vectors along the curve and out of the arch.
    """

    place: FloatArray
    mesial: FloatArray
    facial: FloatArray


def textbook_size(tooth: Tooth) -> CrownSize:
    """Return the size that textbooks give for the natural crown of a tooth (from memory)."""
    mesiodistal, buccolingual, height = (_UPPER if tooth.is_upper else _LOWER)[tooth.position - 1]
    return CrownSize(mesiodistal=mesiodistal, buccolingual=buccolingual, height=height)


def edge_below_row_mm(tooth: Tooth) -> float:
    """Return how far the edge of a tooth stays short of the others' edges and tips, mm."""
    return _SHORTER_MM if tooth.is_upper and tooth.position == 2 else 0.0


def arch_stand(tooth: Tooth) -> ArchStand:
    """Return where a tooth stands in the textbook arch of its jaw."""
    widths = _widths(tooth.is_upper)
    along = float(sum(widths[: tooth.position - 1]) + 0.5 * widths[tooth.position - 1])
    x, y, length = _half_arch(tooth.is_upper)
    place = np.array([np.interp(along, length, x), np.interp(along, length, y)])
    half = 0.4 * widths[tooth.position - 1]
    ends = [
        np.array([np.interp(at, length, x), np.interp(at, length, y)])
        for at in (along - half, along + half)
    ]
    mesial = ends[0] - ends[1]
    over = along - float(length[-1])
    if over > 0.0:
        # A third molar stands behind the curve, straight on.
        place, mesial = np.array([x[-1], y[-1] - over]), np.array([0.0, 1.0])
    mesial /= np.linalg.norm(mesial)
    facial = np.array([mesial[1], -mesial[0]])
    right = np.array([-1.0, 1.0]) if tooth.quadrant in (1, 4) else np.ones(2)
    return ArchStand(place=place * right, mesial=mesial * right, facial=facial * right)


def arch_depth_mm(tooth: Tooth) -> float:
    """Return how far behind the foremost place the second molars of the jaw end, mm."""
    return float(-_half_arch(tooth.is_upper)[1][-1])


def _widths(upper: bool) -> tuple[float, ...]:
    return tuple(one[0] for one in (_UPPER if upper else _LOWER))


@cache
def _half_arch(
    upper: bool,
) -> tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64]]:
    """Return x, y and the length from the midline along the left half of an arch, mm.

    With X and Y over the width, Y = D / 0.25^0.8 ((1/2 + X)(1/2 - X))^0.8 [Braun1998].
    """
    across = 0.5 * np.sin(np.linspace(0.0, 0.5 * np.pi, _STEPS))
    ahead = _DEPTH_PER_WIDTH / 0.25**_EXPONENT * (0.25 - across**2) ** _EXPONENT
    pieces = np.hypot(np.diff(across), np.diff(ahead))
    length = np.concatenate([[0.0], np.cumsum(pieces)])
    scale = sum(_widths(upper)[:_IN_THE_CURVE]) / length[-1]
    return across * scale, (ahead - ahead[0]) * scale, length * scale
