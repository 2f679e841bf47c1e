"""Places that stand for the areas of a crown, so that thousands of plans can be tried at once.

Every area that something is wanted of is cut into a few strata of like wall, backing and fade. A
candidate is worked out at these places alone, one-dimensionally. What light and liquid carry over
from the neighbours is a matrix, the same for all candidates: the share of each stratum in what
comes out of each area, by screened diffusion over the length of both spreads. Differences from a
prediction of the whole crown are carried through it, so a candidate that is that prediction's plan
has its colours exactly, and those near it nearly.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.plan import CUSP_FADE
from stainmap.model.zone import Accent, Area, Zone
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import area_weights
from stainmap.predict.grinding import GroundCrown
from stainmap.predict.iterations import System
from stainmap.predict.levels import Floats
from stainmap.predict.regions import region_of_vertices
from stainmap.predict.sideways import spread_mm

Array = NDArray[np.float64]

# Strata of the wall within one region, and of the fade within each of these where coats fade.
_WALLS, _FADES = 3, 2
_FADE_MATTERS = 0.05
# The class that a block belongs to shifts the length of light by a fifth; one length serves all.
_SCATTERING_PER_MM = 11.0
_STEPS = 12
_SOFTNESS_MM = 0.6
# A wall that is off by 1 mm is as unlike as this much of a fade.
_WALL_COUNTS = 0.5


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Places:
    """N places that stand for A areas.

    Parameters
    ----------
    areas
        Those that something is wanted of.
    start
        (A + 1,) where the places of each area begin.
    weight
        (N,) share of each place in its area's mean; sums to 1 per area.
    wall_mm
        (N,) sintered.
    height_mm
        (N,) above the lowest point of the restoration, milled.
    fade
        (N,) share of a coat that fades with height.
    inner
        (N,) share of the inner surface's coats that lies opposite.
    left
        (N,) share of the load that grinding leaves.
    region
        (N,) position in the case's backings.
    vertex
        (N,) the vertex nearest to the middle of each stratum.
    mixing
        (A, N) share of each place in the light out of each area; rows sum to 1.
    """

    areas: tuple[Area, ...]
    start: NDArray[np.intp]
    weight: Array
    wall_mm: Array
    height_mm: Array
    fade: Array
    inner: Array
    left: Array
    region: NDArray[np.uint8]
    vertex: NDArray[np.intp]
    mixing: Array

    def of(self, area: int) -> slice:
        """Return the places of one area, by its position."""
        return slice(int(self.start[area]), int(self.start[area + 1]))

    def mixed(self, values: Array) -> Array:
        """Return what comes out of the areas, (..., A, 3), of values (..., N, 3) at the places."""
        return np.asarray(self.mixing @ values)


def representative_places(
    case: Case, ground: GroundCrown, layout: CoatLayout, areas: Sequence[Area]
) -> Places:
    """Return the places that stand for some areas of a crown.

    Parameters
    ----------
    ground
        The crown as it is seen.
    layout
        Of the case's surface.
    areas
        Areas on the crown; others are left out.
    """
    weights = area_weights(case, layout)
    chosen = tuple(area for area in areas if area in weights)
    shape = ground.shape
    along = case.surface.mesh.vertices @ np.array(case.reading.occlusal_axis)
    inner_share = np.where(
        shape.partner >= 0, case.zones[shape.partner] == int(Zone.INNER), False
    ).astype(np.float64)
    columns = {
        "wall_mm": shape.wall_mm.astype(np.float64),
        "height_mm": (along - along.min()) * case.source.enlargement_factor,
        "fade": _fade(case),
        "inner": inner_share,
        "left": np.ones(len(along)) if ground.remaining is None else ground.remaining,
    }
    region = region_of_vertices(case)
    rows: list[tuple[float, int, int, dict[str, float]]] = []
    start = [0]
    for area in chosen:
        strata = _strata(weights[area], columns, region, fades=area is Zone.CUSP)
        rows += strata
        start.append(len(rows))
    numbers = {name: np.array([row[3][name] for row in rows]) for name in columns}
    weight = np.array([row[0] for row in rows])
    parts = [slice(start[k], start[k + 1]) for k in range(len(chosen))]
    near = [_nearest_place(columns, {n: v[part] for n, v in numbers.items()}) for part in parts]
    return Places(
        areas=chosen,
        start=np.array(start),
        weight=weight,
        region=np.array([row[1] for row in rows], dtype=np.uint8),
        vertex=np.array([row[2] for row in rows], dtype=np.intp),
        mixing=_mixing(case, ground, layout, [weights[area] for area in chosen], chosen, near),
        **numbers,
    )


def _fade(case: Case) -> Array:
    """Return what a coat on the cusps keeps of itself with height, (V,)."""
    depth = np.nan_to_num(case.reading.depth_below_crest_mm.astype(np.float64), nan=np.inf)
    span = CUSP_FADE.zero_at_mm - CUSP_FADE.full_down_to_mm
    return np.asarray(np.clip((CUSP_FADE.zero_at_mm - depth) / span, 0.0, 1.0))


def _strata(
    weight: Array, columns: dict[str, Array], region: NDArray[np.uint8], *, fades: bool
) -> list[tuple[float, int, int, dict[str, float]]]:
    """Return share, region, vertex and mean values of the strata of one area."""
    found: list[tuple[float, int, int, dict[str, float]]] = []
    total = weight.sum()
    for number in np.unique(region[weight > 0]):
        here = np.flatnonzero((weight > 0) & (region == number))
        share = float(weight[here].sum() / total)
        walls = max(1, round(_WALLS * share))
        for part in _cut(here, columns["wall_mm"][here], weight[here], walls):
            spread = float(np.ptp(columns["fade"][part]))
            parts = [part]
            if fades and spread > _FADE_MATTERS:
                parts = _cut(part, columns["fade"][part], weight[part], _FADES)
            for one in parts:
                own = weight[one]
                means = {
                    name: float(np.average(values[one], weights=own))
                    for name, values in columns.items()
                }
                wall = columns["wall_mm"][one]
                vertex = int(one[np.argmin(np.abs(wall - means["wall_mm"]))])
                found.append((float(own.sum() / total), int(number), vertex, means))
    return found


def _cut(
    vertices: NDArray[np.intp], values: Array, weight: Array, parts: int
) -> list[NDArray[np.intp]]:
    """Return the vertices in parts of equal weight by rising value."""
    order = np.argsort(values, kind="stable")
    share = np.cumsum(weight[order]) / weight.sum()
    ends = np.searchsorted(share, np.arange(1, parts) / parts)
    return [vertices[one] for one in np.split(order, ends) if len(one)]


def _nearest_place(
    columns: dict[str, Array], means: dict[str, Array]
) -> tuple[NDArray[np.intp], int]:
    """Return which of an area's places each vertex (V,) is most like, and how many there are."""
    apart = np.abs(columns["fade"][:, None] - means["fade"])
    apart += _WALL_COUNTS * np.abs(columns["wall_mm"][:, None] - means["wall_mm"])
    return apart.argmin(axis=1), len(means["fade"])


def _mixing(
    case: Case,
    ground: GroundCrown,
    layout: CoatLayout,
    weights: Sequence[Array],
    areas: Sequence[Area],
    near: Sequence[tuple[NDArray[np.intp], int]],
) -> Array:
    """Return (A, N) how much of each place comes out of each area."""
    if not areas:
        return np.zeros((0, 0))
    soft = layout.shares(case.zones, _SOFTNESS_MM)
    accents = {mask.accent: mask.share for mask in case.accents}
    own: list[slice] = []
    columns: list[Array] = []
    for area, (place, count) in zip(areas, near, strict=True):
        share = accents[area] if isinstance(area, Accent) else soft[int(area)]
        own.append(slice(len(columns), len(columns) + count))
        columns += [np.where(place == k, share, 0.0) for k in range(count)]
    shares = np.stack(columns, axis=1)
    levels = ground.shape.levels
    fine = levels.hierarchy.fine
    light = float(spread_mm(_SCATTERING_PER_MM))
    length = hypot(light, case.process.wicking_mm)
    loss: Floats = fine.mass * np.float32(1.0 / length**2)
    system = System(fine, loss)
    begun: Floats = np.ascontiguousarray(shares[levels.order], dtype=np.float32)
    spread = begun.copy()
    residual: Floats = loss * begun
    system.subtract_image(residual, spread)
    system.conjugate_gradients(residual, spread, _STEPS, np.float32(5e-3) * loss)
    seen = spread[levels.rank].astype(np.float64)
    mixing = np.stack([weight @ seen / weight.sum() for weight in weights])
    # What comes from outside these areas moves with the area itself.
    for row, here in zip(mixing, own, strict=True):
        row[here] *= 1.0 + (1.0 - row.sum()) / row[here].sum()
    return np.asarray(mixing)
