"""Ridges and cusps of a biting surface as heights above a plan grid."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from stainmap.practice.crown_form import BackTooth, Cusp, Point, Ridge

FloatArray = NDArray[np.float64]

_PIECES = 16
_WITHIN_CUSP_MM = 0.16
_BETWEEN_CUSPS_MM = 0.05
# Cusps flow into the marginal ridges, without a groove on the crest.
_INTO_RIDGES_MM = 0.14


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class RidgeField:
    """Cusps and marginal ridges over a grid of (N, N) places.

    Parameters
    ----------
    names
        The cusps, then "mesial ridge" and "distal ridge".
    height
        (N, N) mm. Where two cusps are equally high a groove arises by itself.
    owner, second
        (N, N) index into `names` of the highest and the second highest.
    gap_to_second, gap_to_third
        (N, N) mm. By how much the highest exceeds the next two.
    """

    names: tuple[str, ...]
    height: FloatArray
    owner: NDArray[np.intp]
    second: NDArray[np.intp]
    gap_to_second: FloatArray
    gap_to_third: FloatArray


def bent_curve(first: Point, middle: Point, last: Point, pieces: int = _PIECES) -> FloatArray:
    """Return (pieces + 1, 3) points of the quadratic Bezier curve of three points."""
    t = np.linspace(0.0, 1.0, pieces + 1)[:, None]
    a, b, c = (np.asarray(p, dtype=np.float64) for p in (first, middle, last))
    return np.asarray((1 - t) ** 2 * a + 2 * t * (1 - t) * b + t * t * c)


def distance_to_curve(
    x: FloatArray, y: FloatArray, curve: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Return how far places are from a chain of points seen from above, and where along it.

    The second array is the share of the chain's pieces, 0 to 1, at the nearest point.
    """
    nearest = np.full(x.shape, np.inf)
    along = np.zeros(x.shape)
    for number, (a, b) in enumerate(pairwise(curve[:, :2])):
        span = b - a
        part = ((x - a[0]) * span[0] + (y - a[1]) * span[1]) / float(span @ span)
        part = np.clip(part, 0.0, 1.0)
        away = np.hypot(x - a[0] - part * span[0], y - a[1] - part * span[1])
        along = np.where(away < nearest, (number + part) / (len(curve) - 1), along)
        nearest = np.minimum(nearest, away)
    return nearest, along


def soft_maximum(fields: list[FloatArray], blend_mm: float) -> FloatArray:
    """Return the largest of the fields, blended as a log-sum-exp of the given width."""
    stack = np.stack(fields)
    top = stack.max(axis=0)
    return np.asarray(top + blend_mm * np.log(np.exp((stack - top) / blend_mm).sum(axis=0)))


def ridge_height(x: FloatArray, y: FloatArray, ridge: Ridge) -> FloatArray:
    """Return the height of a ridge whose flanks fall on either side to all distances."""
    curve = bent_curve(*ridge.points)
    height = np.full(x.shape, -np.inf)
    for a, b in pairwise(curve):
        span = b[:2] - a[:2]
        along = ((x - a[0]) * span[0] + (y - a[1]) * span[1]) / float(span @ span)
        along = np.clip(along, 0.0, 1.0)
        square = (x - a[0] - along * span[0]) ** 2 + (y - a[1] - along * span[1]) ** 2
        fall = np.sqrt(square + ridge.rounding**2) - ridge.rounding
        height = np.maximum(height, a[2] + along * (b[2] - a[2]) - ridge.slope * fall)
    return height


def ridges_of(cusp: Cusp) -> tuple[Ridge, ...]:
    """Return the ridges that make a cusp: triangular, mesial, distal, outer, further ones."""
    tip = cusp.tip

    def towards(end: Point, lift: float, slope: float, rounding: float) -> Ridge:
        middle = ((tip[0] + end[0]) / 2, (tip[1] + end[1]) / 2, (tip[2] + end[2]) / 2 + lift)
        return Ridge(points=(tip, middle, end), slope=slope, rounding=rounding)

    ridges = [
        Ridge(points=(tip, *cusp.triangular), slope=cusp.slope, rounding=cusp.rounding),
        towards(cusp.outer, 0.35, 0.85 * cusp.slope, 1.0),
    ]
    ridges += [
        towards(end, 0.10, 0.95 * cusp.slope, cusp.rounding + 0.15)
        for end in (cusp.mesial, cusp.distal)
        if end is not None
    ]
    return (*ridges, *cusp.further)


def ridge_field(form: BackTooth, x: FloatArray, y: FloatArray) -> RidgeField:
    """Return the cusps and marginal ridges of a tooth over (N, N) places."""
    groups = [
        soft_maximum([ridge_height(x, y, ridge) for ridge in ridges_of(cusp)], _WITHIN_CUSP_MM)
        for cusp in form.cusps
    ]
    cusps = soft_maximum(groups, _BETWEEN_CUSPS_MM)
    groups += [ridge_height(x, y, ridge) for ridge in form.marginal_ridges]
    stack = np.stack(groups)
    order = np.argsort(-stack, axis=0, kind="stable")
    ranked = np.take_along_axis(stack, order[:3], axis=0)
    return RidgeField(
        names=(*(cusp.name for cusp in form.cusps), "mesial ridge", "distal ridge"),
        height=soft_maximum([cusps, *groups[-2:]], _INTO_RIDGES_MM),
        owner=order[0],
        second=order[1],
        gap_to_second=ranked[0] - ranked[1],
        gap_to_third=ranked[0] - ranked[2],
    )
