"""Individuals of a tooth: its numbers moved by chance."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from stainmap.practice.crown_form import (
    AroundTooth,
    BackTooth,
    Carving,
    Cusp,
    FrontTooth,
    PlanPoint,
    Point,
    Ridge,
)

FloatArray = NDArray[np.float64]

# Scatter of a cusp tip (mm, each way) and spread of factors at full variation; assumed, chosen
# so that every individual still passes for the tooth.
_TIP_SCATTER_MM = 0.10
_WIDTHS = (0.95, 1.05)
_HEIGHTS = (0.93, 1.05)
_CARVING = (0.6, 1.35)
_WALL_GROOVES = (0.5, 1.4)
_WARPS = (0.6, 1.4)
_CERVICAL = (0.85, 1.15)
_OCCLUSAL = (0.9, 1.1)


class _Factors:
    """Random factors that shrink to one as the variation goes to nothing."""

    def __init__(self, variation: float, generator: np.random.Generator) -> None:
        self.variation = variation
        self._generator = generator

    def factor(self, spread: tuple[float, float]) -> float:
        """Return a factor between the two ends, drawn evenly."""
        return 1.0 + self.variation * (float(self._generator.uniform(*spread)) - 1.0)

    def shift(self, deviation: float, count: int) -> FloatArray:
        """Return normal shifts of this standard deviation."""
        return self.variation * deviation * self._generator.normal(size=count)

    def each_side(self, sides: AroundTooth, spread: tuple[float, float]) -> AroundTooth:
        """Return the four numbers, each with its own factor."""
        return AroundTooth(
            mesial=sides.mesial * self.factor(spread),
            buccal=sides.buccal * self.factor(spread),
            distal=sides.distal * self.factor(spread),
            lingual=sides.lingual * self.factor(spread),
        )


def vary_back_tooth(
    form: BackTooth, variation: float, generator: np.random.Generator
) -> tuple[BackTooth, float]:
    """Return an individual of a back tooth and the strength of its grooves' wandering.

    Cusp tips always move a little; everything else moves with `variation` (0 to 1).
    """
    chance = _Factors(variation, generator)
    scale = np.array([chance.factor(_WIDTHS), chance.factor(_WIDTHS), chance.factor(_HEIGHTS)])
    cusps = tuple(
        _vary_cusp(cusp, form.tip_scatter, scale, chance, generator) for cusp in form.cusps
    )
    mesial, distal = form.marginal_ridges
    depth = chance.factor(_CARVING)
    individual = replace(
        form,
        cusps=cusps,
        marginal_ridges=(_scaled_ridge(mesial, scale), _scaled_ridge(distal, scale)),
        outline=tuple(_plan(p, scale) for p in form.outline),
        cervical_draw=chance.each_side(form.cervical_draw, _CERVICAL),
        occlusal_draw=chance.each_side(form.occlusal_draw, _OCCLUSAL),
        top=form.top * float(scale[2]),
        turn_height=form.turn_height * float(scale[2]),
        wall_grooves=tuple(
            replace(
                groove,
                direction_deg=groove.direction_deg + float(chance.shift(2.0, 1)[0]),
                depth=groove.depth * chance.factor(_WALL_GROOVES),
            )
            for groove in form.wall_grooves
        ),
        pits=tuple(replace(pit, place=_plan(pit.place, scale)) for pit in form.pits),
        carving=_vary_carving(form.carving, depth, scale),
        stump_top=form.stump_top * float(scale[2]),
    )
    return individual, chance.factor(_WARPS)


def vary_front_tooth(
    form: FrontTooth, variation: float, generator: np.random.Generator
) -> FrontTooth:
    """Return an individual of a front tooth."""
    chance = _Factors(variation, generator)
    width, depth, height = (
        chance.factor(_WIDTHS),
        chance.factor(_WIDTHS),
        chance.factor(_HEIGHTS),
    )

    def profile(points: tuple[PlanPoint, ...], across: float) -> tuple[PlanPoint, ...]:
        return tuple((z * height, distance * across) for z, distance in points)

    return replace(
        form,
        labial=profile(form.labial, depth),
        palatal=profile(form.palatal, depth),
        mesial=profile(form.mesial, width),
        distal=profile(form.distal, width),
        edge=form.edge * height,
        turn_height=form.turn_height * height,
        lobe_depth=form.lobe_depth * chance.factor(_WALL_GROOVES),
        ridge_height=form.ridge_height * chance.factor((0.8, 1.2)),
        mamelon_height=form.mamelon_height * chance.factor((0.0, 1.6)),
        core=(form.core[0] * width, form.core[1]),
    )


def _vary_cusp(
    cusp: Cusp,
    tip_scatter: float,
    scale: FloatArray,
    chance: _Factors,
    generator: np.random.Generator,
) -> Cusp:
    """Return the cusp with its tip moved, and the ends of its ridges half as far."""
    shift = chance.shift(_TIP_SCATTER_MM, 3)
    tip = np.array(cusp.tip) + tip_scatter * generator.normal(size=3) + shift

    def end(point: Point) -> Point:
        return _point((np.array(point) + 0.5 * shift) * scale)

    moved = _point(tip * scale)
    middle, last = cusp.triangular
    return replace(
        cusp,
        tip=moved,
        triangular=(end(middle), end(last)),
        mesial=None if cusp.mesial is None else end(cusp.mesial),
        distal=None if cusp.distal is None else end(cusp.distal),
        outer=end(cusp.outer),
        further=tuple(
            replace(ridge, points=(moved, end(ridge.points[1]), end(ridge.points[2])))
            for ridge in cusp.further
        ),
    )


def _vary_carving(carving: Carving, depth: float, scale: FloatArray) -> Carving:
    return replace(
        carving,
        fissure_depth=carving.fissure_depth * depth,
        secondary_depth=carving.secondary_depth * depth,
        crossing=tuple(
            ((_plan(a, scale), _plan(b, scale), _plan(c, scale)), cut * depth, width)
            for (a, b, c), cut, width in carving.crossing
        ),
    )


def _scaled_ridge(ridge: Ridge, scale: FloatArray) -> Ridge:
    first, middle, last = (_point(np.array(p) * scale) for p in ridge.points)
    return replace(ridge, points=(first, middle, last))


def _point(values: FloatArray) -> Point:
    return float(values[0]), float(values[1]), float(values[2])


def _plan(point: PlanPoint, scale: FloatArray) -> PlanPoint:
    return point[0] * float(scale[0]), point[1] * float(scale[1])
