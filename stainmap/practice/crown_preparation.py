"""The prepared margin that a crown sits on: rim, rounded chamfer and taper."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from stainmap.practice.crown_form import Preparation
from stainmap.practice.crown_meshing import Field, RayFan, meet_surface
from stainmap.practice.crown_outline import closed_spline

FloatArray = NDArray[np.float64]


def prepared_depth(preparation: Preparation, rise: FloatArray) -> FloatArray:
    """Return how far inside the margin's outline the cavity's wall lies, mm.

    `rise` is the height above the margin. A quarter round leads from the rim into the wall,
    which then draws in by the taper.
    """
    chamfer = preparation.chamfer
    left = np.clip(1.0 - rise / chamfer, 0.0, 1.0)
    cut = chamfer * np.sqrt(np.maximum(1.0 - left * left, 0.0))
    draw = np.tan(np.radians(preparation.taper_deg)) * np.maximum(rise - chamfer, 0.0)
    return np.asarray(preparation.rim + cut + draw)


def margin_radius(outer: Field, fan: RayFan) -> Callable[[FloatArray], FloatArray]:
    """Return the outer surface's radius at its margin as a function of the azimuth."""
    azimuth = np.linspace(0.0, 2 * np.pi, 360, endpoint=False)
    origins, directions = fan.rays(np.zeros(len(azimuth)), azimuth)
    ring = meet_surface(outer, origins, directions, fan.reach_mm)
    spline = closed_spline(azimuth, np.hypot(ring[:, 0], ring[:, 1] - fan.axis_y(ring[:, 2])))
    return lambda at: np.asarray(spline(np.mod(at, 2 * np.pi)))
