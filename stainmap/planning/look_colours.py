"""Screen colours of the looks that stand for a figure: value, offset from wanted, wall.

Each scale is a row of stops: a figure and the CIELAB colour it is drawn in, linear in between. A
steep stretch is seen on the crown as a line: so the published thresholds and a block's least wall
are marked where they lie; it is not a step, which would show the triangles of the mesh. Every
scale runs one way in L*, or away from its middle in L* with orange on one side and blue on the
other, so that nobody needs to tell red from green. None of them holds colours that ceramic may
have; Value alone is grey, but stretched.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import cos, radians, sin
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.colour import Colour
from stainmap.model.zone import Accent, Area
from stainmap.optics.colorimetry import lab_to_srgb
from stainmap.predict.uncertainty import ACCEPTABLE_DE00, PERCEPTIBLE_DE00

LOOK_DEPTHS_MM: Final = (0.1, 0.2, 0.3)
"""Usual depths of occlusal adjustment, shown beside one another."""

Bytes = NDArray[np.uint8]
Floats = NDArray[np.float32]

VALUE_RANGE: Final = (55.0, 85.0)
"""L* from which on all is drawn as dark, and as light, as the scale goes."""

MOST_DE00: Final = 6.0
"""Offset from which on all is drawn alike."""

ABOVE_MINIMUM_MM: Final = 2.0
"""How far above the block's minimum the scale of walls goes on."""

NEUTRAL: Final = (150, 150, 150)
"""Encoded grey of places of which a look has nothing to say."""

_SHARE = 0.5
# Half the width of the ramp about a threshold, and its width below the least wall.
_RAMP_DE00, _RAMP_MM = 0.1, 0.02


@dataclass(frozen=True, slots=True)
class Stop:
    """A figure, and the L*, C*, h (degrees) it is drawn in."""

    figure: float
    lightness: float
    chroma: float
    hue_degrees: float


@dataclass(frozen=True, slots=True)
class Scale:
    """Colours of a figure, from the first stop to the last; beyond them they stay as they are."""

    stops: tuple[Stop, ...]

    @property
    def low(self) -> float:
        """The least figure with a colour of its own."""
        return self.stops[0].figure

    @property
    def high(self) -> float:
        """The largest figure with a colour of its own."""
        return self.stops[-1].figure

    def srgb(self, figures: NDArray[np.floating]) -> Bytes:
        """Return the encoded colours (n, 3) of figures (n,); neutral where they are not finite."""
        figures = np.asarray(figures, dtype=np.float64)
        known = np.isfinite(figures)
        at = np.clip(np.where(known, figures, self.low), self.low, self.high)
        ends = np.array([stop.figure for stop in self.stops])
        colours = np.array(
            [
                (
                    stop.lightness,
                    stop.chroma * cos(radians(stop.hue_degrees)),
                    stop.chroma * sin(radians(stop.hue_degrees)),
                )
                for stop in self.stops
            ]
        )
        right = np.clip(np.searchsorted(ends, at, side="right"), 1, len(ends) - 1)
        left = right - 1
        width = np.maximum(ends[right] - ends[left], 1e-9)
        share = np.clip((at - ends[left]) / width, 0.0, 1.0)[:, None]
        lab = colours[left] + (colours[right] - colours[left]) * share
        encoded = np.asarray(np.rint(np.clip(lab_to_srgb(lab), 0.0, 1.0) * 255.0), dtype=np.uint8)
        encoded[~known] = NEUTRAL
        return encoded


VALUE_SCALE: Final = Scale(
    (Stop(VALUE_RANGE[0], 6.0, 0.0, 0.0), Stop(VALUE_RANGE[1], 98.0, 0.0, 0.0))
)
"""L* in greys, stretched to three times its contrast so that a step of two is seen as one."""

OFFSET_SCALE: Final = Scale(
    (
        Stop(0.0, 96.0, 1.0, 330.0),
        Stop(PERCEPTIBLE_DE00 - _RAMP_DE00, 90.0, 8.0, 330.0),
        Stop(PERCEPTIBLE_DE00 + _RAMP_DE00, 79.0, 20.0, 330.0),
        Stop(ACCEPTABLE_DE00 - _RAMP_DE00, 70.0, 31.0, 328.0),
        Stop(ACCEPTABLE_DE00 + _RAMP_DE00, 54.0, 46.0, 326.0),
        Stop(MOST_DE00, 20.0, 36.0, 310.0),
    )
)
"""dE00 from pale to dark purple, with a steep ramp about either threshold."""


def wall_scale(minimum_mm: float) -> Scale:
    """Return the scale of walls about a block's minimum, mm: orange below it, blue from it on."""
    return Scale(
        (
            Stop(0.0, 34.0, 54.0, 46.0),
            Stop(minimum_mm - _RAMP_MM, 76.0, 48.0, 66.0),
            Stop(minimum_mm, 93.0, 3.0, 250.0),
            Stop(minimum_mm + ABOVE_MINIMUM_MM, 34.0, 32.0, 265.0),
        )
    )


def wanted_lab(
    wanted: Iterable[tuple[Area, Colour]],
    shares: Floats,
    accents: Iterable[tuple[Accent, Floats]],
) -> Floats:
    """Return what is wanted at every vertex, (V, 3) L*a*b*; not a number where nothing is.

    Parameters
    ----------
    wanted
        Wanted colours, measured as the prediction is.
    shares
        (7, V) softened shares of zones, by number: a border feathers as coats do.
    accents
        Soft masks (V,) of accents. An accent with a colour of its own lies over its zone as far
        as its mask covers it; one without leaves the zone's.
    """
    colours = {area: np.array(colour.lab, dtype=np.float64) for area, colour in wanted}
    count = shares.shape[1]
    total, known = np.zeros((count, 3)), np.zeros(count)
    for area, lab in colours.items():
        if not isinstance(area, Accent):
            total += shares[int(area)][:, None] * lab
            known += shares[int(area)]
    for accent, mask in accents:
        own = colours.get(accent)
        if own is not None:
            total = total * (1.0 - mask)[:, None] + mask[:, None] * own
            known = known * (1.0 - mask) + mask
    # Where less than half of a place has a wanted colour, that does not speak for it.
    result = np.full((count, 3), np.nan, dtype=np.float32)
    enough = known > _SHARE
    result[enough] = total[enough] / known[enough][:, None]
    return result


def offset_de00(lab: Floats, wanted: Floats) -> Floats:
    """Return CIEDE2000 between predicted and wanted (n, 3); not a number where nothing is."""
    from stainmap.optics.difference import delta_e_00  # noqa: PLC0415

    result = np.full(len(lab), np.nan, dtype=np.float32)
    known = np.isfinite(wanted[:, 0])
    result[known] = delta_e_00(lab[known], wanted[known])
    return result
