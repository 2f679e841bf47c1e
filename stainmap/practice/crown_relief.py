"""The carved biting surface of a back tooth: height over a plan grid, grooves and pits."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from stainmap.practice.crown_form import BackTooth, Cusp, PlanPoint
from stainmap.practice.crown_outline import CrownWall, smooth_step
from stainmap.practice.crown_ridges import bent_curve, distance_to_curve, ridge_field

FloatArray = NDArray[np.float64]

EXTENT_MM = 7.5
_FINAL_SMOOTHING_MM = 0.06
# A groove is a sharp crease at the bottom of a rounded valley; shares of depth and of width.
_CREASE_SHARE, _CREASE_WIDTH = 0.75, 0.8
_VALLEY_SHARE, _VALLEY_WIDTH = 0.55, 2.4
# Long and short waves that make the grooves wander: amplitude and range of wavelengths, count.
_WANDERING = ((0.13, 3.5, 6.0, 5), (0.05, 1.3, 2.2, 8))


class PlanGrid:
    """A square grid of places seen from above, and smooth look-up between them."""

    def __init__(self, step_mm: float) -> None:
        self.step_mm = step_mm
        line = np.arange(-EXTENT_MM, EXTENT_MM + step_mm / 2, step_mm)
        self.x, self.y = np.meshgrid(line, line, indexing="ij")

    def smoothed(self, values: FloatArray, width_mm: float) -> FloatArray:
        """Return the values after a Gaussian of this standard deviation."""
        return np.asarray(ndimage.gaussian_filter(values, width_mm / self.step_mm))

    def at(self, coefficients: FloatArray, x: FloatArray, y: FloatArray) -> FloatArray:
        """Return a cubic spline (from `ndimage.spline_filter`) at places."""
        where = [(x + EXTENT_MM) / self.step_mm, (y + EXTENT_MM) / self.step_mm]
        return np.asarray(
            ndimage.map_coordinates(coefficients, where, order=3, prefilter=False, mode="nearest")
        )

    def linear_at(self, values: FloatArray, x: FloatArray, y: FloatArray) -> FloatArray:
        """Return values at places, interpolated linearly."""
        where = [(x + EXTENT_MM) / self.step_mm, (y + EXTENT_MM) / self.step_mm]
        return np.asarray(ndimage.map_coordinates(values, where, order=1, mode="nearest"))


class OcclusalRelief:
    """Height of the biting surface, and where its grooves and pits are.

    Parameters
    ----------
    form
        The tooth.
    wall
        Its wall; grooves fade out towards the outline.
    warp_strength
        1 for the usual wandering of the grooves.
    generator
        Source of chance for the wandering and the secondary grooves.
    step_mm
        Grid step; 0.05 for the finest relief.
    """

    def __init__(
        self,
        form: BackTooth,
        wall: CrownWall,
        *,
        warp_strength: float,
        generator: np.random.Generator,
        step_mm: float,
    ) -> None:
        self.grid = PlanGrid(step_mm)
        x, y = self.grid.x, self.grid.y
        self._warped_x = x + _waves(x, y, warp_strength, generator)
        self._warped_y = y + _waves(x, y, warp_strength, generator)
        self.field = ridge_field(form, self._warped_x, self._warped_y)
        rho = np.hypot(x, y) / wall.outline_radius(np.arctan2(y, x))
        self._reach = 1.0 - smooth_step(rho, *form.carving.fade)
        self._strength = self._groove_strength(form, rho)
        gap = self.field.gap_to_second
        steepness = np.clip(np.hypot(*np.gradient(gap, step_mm)), 0.5, 3.0)
        distance = gap / self.grid.smoothed(steepness, 0.1)
        self._distance = self.grid.smoothed(distance, 0.05)
        carving = form.carving
        height = self.field.height - carving.fissure_depth * self._reach * self._strength * (
            _CREASE_SHARE * np.exp(-distance / (_CREASE_WIDTH * carving.fissure_width))
            + _VALLEY_SHARE * np.exp(-((distance / (_VALLEY_WIDTH * carving.fissure_width)) ** 2))
        )
        self.pits: tuple[PlanPoint, ...] = tuple(self._settle(pit.place) for pit in form.pits)
        for (px, py), pit in zip(self.pits, form.pits, strict=True):
            square = (x - px) ** 2 + (y - py) ** 2
            height = height - pit.depth * np.exp(-square / pit.half_width**2)
        height = height - self._secondary(form, generator)
        self.height_grid = self.grid.smoothed(height, _FINAL_SMOOTHING_MM)
        self._spline = ndimage.spline_filter(self.height_grid, order=3)

    def height(self, x: FloatArray, y: FloatArray) -> FloatArray:
        """Return the height of the relief at places, mm."""
        return self.grid.at(self._spline, x, y)

    def groove_distance(self, x: FloatArray, y: FloatArray) -> FloatArray:
        """Return about how far the nearest main groove is, mm."""
        return self.grid.linear_at(self._distance, x, y)

    def groove_strength(self, x: FloatArray, y: FloatArray) -> FloatArray:
        """Return the share of its full depth that a groove has here, 0 to 1."""
        return self.grid.linear_at(self._reach * self._strength, x, y)

    def drawn_place(self, x: FloatArray, y: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Return where in the tooth's table of numbers a place belongs, before the wandering."""
        return self.grid.linear_at(self._warped_x, x, y), self.grid.linear_at(self._warped_y, x, y)

    def owned_by(self, name: str, x: FloatArray, y: FloatArray) -> FloatArray:
        """Return 1 where this cusp or ridge is the highest, 0 elsewhere, linear in between."""
        mine = (self.field.owner == self.field.names.index(name)).astype(np.float64)
        return self.grid.linear_at(mine, x, y)

    def _groove_strength(self, form: BackTooth, rho: FloatArray) -> FloatArray:
        """Return the factor on groove depth by which two cusps or ridges meet, (N, N)."""
        field, carving = self.field, form.carving
        first_ridge = len(form.cusps)
        strength = np.ones(field.owner.shape)
        at_ridge = (field.owner >= first_ridge) != (field.second >= first_ridge)
        strength[at_ridge] = (carving.at_marginal_ridges * (1.0 - smooth_step(rho, 0.5, 0.82)))[
            at_ridge
        ]
        for one, other, share in carving.between:
            i, j = field.names.index(one), field.names.index(other)
            meet = ((field.owner == i) & (field.second == j)) | (
                (field.owner == j) & (field.second == i)
            )
            strength[meet] = share
        return self.grid.smoothed(strength, 0.15)

    def _settle(self, place: PlanPoint) -> PlanPoint:
        """Return the nearest place where three cusps are about equally high."""
        away = np.hypot(self.grid.x - place[0], self.grid.y - place[1])
        cost = self.field.gap_to_third + 0.25 * away + np.where(away > 1.0, 9.0, 0.0)
        at = np.unravel_index(int(cost.argmin()), cost.shape)
        return float(self.grid.x[at]), float(self.grid.y[at])

    def _secondary(self, form: BackTooth, generator: np.random.Generator) -> FloatArray:
        """Return the depth (mm, negative for ridges) of the lesser relief of each cusp."""
        carving = form.carving
        depth = np.zeros(self.grid.x.shape)
        for cusp in form.cusps:
            mine = self.field.owner == self.field.names.index(cusp.name)
            mask = self.grid.smoothed(mine.astype(np.float64), 0.12)
            depth += mask * self._triangular_ridge(cusp, -carving.ridge_height)
            for curve, share, width in _lesser_grooves(cusp, generator):
                depth += mask * self._groove(
                    curve, share * carving.secondary_depth, width * carving.secondary_width
                )
        for curve, cut, width in carving.crossing:
            depth += self._groove(curve, cut, width)
        return depth

    def _triangular_ridge(self, cusp: Cusp, depth: float) -> FloatArray:
        tip, (_, end) = np.array(cusp.tip[:2]), cusp.triangular
        inner = np.array(end[:2])
        start = tip + 0.15 * (inner - tip)
        away, along = self._to_curve((_plan(start), _plan((tip + inner) / 2), _plan(inner)))
        return np.asarray(depth * np.exp(-((away / 0.55) ** 2)) * np.sin(np.pi * along) ** 0.7)

    def _groove(
        self, curve: tuple[PlanPoint, PlanPoint, PlanPoint], depth: float, half_width: float
    ) -> FloatArray:
        away, along = self._to_curve(curve)
        return np.asarray(depth * np.exp(-((away / half_width) ** 1.4)) * (1.0 - along) ** 0.6)

    def _to_curve(
        self, curve: tuple[PlanPoint, PlanPoint, PlanPoint]
    ) -> tuple[FloatArray, FloatArray]:
        """Return the distance to a bent curve and the share of its length at the foot."""
        first, middle, last = ((px, py, 0.0) for px, py in curve)
        points = bent_curve(first, middle, last, pieces=12)
        return distance_to_curve(self._warped_x, self._warped_y, points)


def _plan(point: FloatArray) -> PlanPoint:
    return float(point[0]), float(point[1])


def _waves(
    x: FloatArray, y: FloatArray, strength: float, generator: np.random.Generator
) -> FloatArray:
    """Return a smooth random displacement (mm) over places."""
    shift = np.zeros(x.shape)
    for amplitude, shortest, longest, count in _WANDERING:
        direction = generator.uniform(0.0, 2 * np.pi, count)
        number = 2 * np.pi / generator.uniform(shortest, longest, count)
        phase = generator.uniform(0.0, 2 * np.pi, count)
        for a, k, p in zip(direction, number, phase, strict=True):
            shift += (
                strength
                * amplitude
                * np.sqrt(2.0 / count)
                * np.sin(k * (np.cos(a) * x + np.sin(a) * y) + p)
            )
    return shift


def _lesser_grooves(
    cusp: Cusp, generator: np.random.Generator
) -> list[tuple[tuple[PlanPoint, PlanPoint, PlanPoint], float, float]]:
    """Return curves beside the triangular ridge, with factors on depth and width.

    Each begins on the main groove and runs up the slope; every other one or so has a fainter
    companion.
    """
    tip = np.array(cusp.tip[:2])
    inner = np.array(cusp.triangular[1][:2])
    grooves = []
    for end in (cusp.mesial, cusp.distal):
        if end is None:
            continue
        side = np.array(end[:2]) - tip
        share = generator.uniform(0.38, 0.56)
        start = inner + share * side + 0.08 * (inner - tip)
        last = (
            tip
            + generator.uniform(0.42, 0.60) * side
            + generator.uniform(0.30, 0.42) * (inner - tip)
        )
        middle = (start + last) / 2 + generator.uniform(-0.05, 0.12) * side
        depth = generator.uniform(0.75, 1.2)
        grooves.append(((_plan(start), _plan(middle), _plan(last)), depth, 1.0))
        if generator.random() < 0.6 and float(np.hypot(*side)) > 1.7:
            start = inner + (share + 0.42) * side + 0.12 * (tip - inner)
            last = tip + 0.82 * side + 0.28 * (inner - tip)
            middle = (start + last) / 2 + 0.08 * side
            grooves.append(((_plan(start), _plan(middle), _plan(last)), 0.55, 0.85))
    return grooves
