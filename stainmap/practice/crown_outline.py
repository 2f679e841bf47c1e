"""Outline and walls of a back tooth: how far the outer surface lies from its middle."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy.interpolate import CubicSpline

from stainmap.practice.crown_form import AroundTooth, BackTooth, PlanPoint

FloatArray = NDArray[np.float64]

_TURN = 2.0 * np.pi


def smooth_max(a: FloatArray, b: FloatArray, blend_mm: float | FloatArray) -> FloatArray:
    """Return the larger of two fields, rounded where they differ by less than `blend_mm`."""
    near = np.maximum(blend_mm - np.abs(a - b), 0.0)
    return np.asarray(np.maximum(a, b) + near * near / (4.0 * blend_mm))


def smooth_min(a: FloatArray, b: FloatArray, blend_mm: float) -> FloatArray:
    """Return the smaller of two fields, rounded where they differ by less than `blend_mm`."""
    return -smooth_max(-a, -b, blend_mm)


def smooth_step(value: FloatArray, start: float, end: float) -> FloatArray:
    """Return 0 up to `start`, 1 from `end`, and a cubic with level ends in between."""
    share = np.clip((value - start) / (end - start), 0.0, 1.0)
    return np.asarray(share * share * (3.0 - 2.0 * share))


def weights_around(azimuth: FloatArray) -> FloatArray:
    """Return the weights (4, ...) of mesial, distal, buccal and lingual, by cos2 and sin2."""
    c, s = np.cos(azimuth), np.sin(azimuth)
    return np.stack([np.maximum(side, 0.0) * np.maximum(side, 0.0) for side in (c, -c, s, -s)])


def around(sides: AroundTooth, azimuth: FloatArray) -> FloatArray:
    """Return the number of the side at an azimuth (radians from mesial), blended in between."""
    return blended(sides, weights_around(azimuth))


def blended(sides: AroundTooth, weights: FloatArray) -> FloatArray:
    """Return the number of the side in directions whose weights are known."""
    mesial, distal, buccal, lingual = weights
    return np.asarray(
        sides.mesial * mesial
        + sides.distal * distal
        + sides.buccal * buccal
        + sides.lingual * lingual
    )


def closed_spline(azimuth: FloatArray, radius: FloatArray) -> CubicSpline[np.float64]:
    """Return a smooth radius over the azimuth, the same again after a full turn."""
    turned = np.mod(azimuth, _TURN)
    order = np.argsort(turned)
    knots = np.append(turned[order], turned[order[0]] + _TURN)
    values = np.append(radius[order], radius[order[0]])
    return CubicSpline(knots, values, bc_type="periodic")


def outline_spline(points: tuple[PlanPoint, ...]) -> CubicSpline[np.float64]:
    """Return the radius of a closed outline, given by points seen from above."""
    x, y = np.asarray(points, dtype=np.float64).T
    return closed_spline(np.arctan2(y, x), np.hypot(x, y))


class CrownWall:
    """The wall of a back tooth in cylinder coordinates around its (leaning) middle."""

    def __init__(self, form: BackTooth) -> None:
        self._form = form
        self._outline = outline_spline(form.outline)

    def axis_y(self, height: FloatArray) -> FloatArray:
        """Return the y of the wall's middle at a height."""
        return np.asarray(self._form.axis_lean * height / self._form.top)

    def margin_height(self, azimuth: FloatArray) -> FloatArray:
        """Return the height of the margin at an azimuth."""
        return around(self._form.margin_height, azimuth)

    def outline_radius(self, azimuth: FloatArray) -> FloatArray:
        """Return the widest radius at an azimuth."""
        return np.asarray(self._outline(azimuth))

    def radius(self, azimuth: FloatArray, height: FloatArray) -> FloatArray:
        """Return the wall's radius at an azimuth and a height."""
        form = self._form
        weights = weights_around(azimuth)
        margin = blended(form.margin_height, weights)
        share = (height - margin) / (form.top - margin)
        contour = blended(form.contour_share, weights)
        below = np.clip((contour - share) / contour, 0.0, 1.6)
        above = np.clip((share - contour) / (1.0 - contour), 0.0, 1.5)
        radius = (
            self.outline_radius(azimuth)
            - blended(form.cervical_draw, weights) * below**1.8
            - blended(form.occlusal_draw, weights) * above**2.3
        )
        for groove in form.wall_grooves:
            direction = np.radians(groove.direction_deg)
            turn = np.mod(azimuth - direction + np.pi, _TURN) - np.pi
            arc = turn * float(self._outline(direction))
            fade = smooth_step(share, groove.share_from, groove.share_to)
            radius -= groove.depth * np.exp(-((arc / groove.half_width) ** 2)) * fade
        return np.asarray(radius)
