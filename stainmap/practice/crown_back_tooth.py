"""The solid of a premolar or molar crown: outer surface, cavity, and the rays to mesh them."""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage

from stainmap.practice.crown_form import BackTooth
from stainmap.practice.crown_meshing import RayFan
from stainmap.practice.crown_outline import CrownWall, smooth_max, smooth_min, smooth_step
from stainmap.practice.crown_preparation import margin_radius, prepared_depth
from stainmap.practice.crown_relief import OcclusalRelief
from stainmap.practice.crown_waviness import Waviness

FloatArray = NDArray[np.float64]

_WAVINESS_MM = 0.014
# The stump has no edge or dent finer than this, so that a milling burr could follow it.
_BURR_RADIUS_MM = 1.5
_CAVITY_STEP = 4


class BackToothSolid:
    """Outer surface and cavity of a back tooth as fields that are negative inside.

    Parameters
    ----------
    form
        The tooth.
    warp_strength
        1 for the usual wandering of the grooves.
    generator
        Source of chance for everything that makes this tooth an individual.
    relief_step_mm
        Grid step of the biting surface.
    """

    def __init__(
        self,
        form: BackTooth,
        *,
        warp_strength: float,
        generator: np.random.Generator,
        relief_step_mm: float,
    ) -> None:
        self.form = form
        self.wall = CrownWall(form)
        self.relief = OcclusalRelief(
            form,
            self.wall,
            warp_strength=warp_strength,
            generator=generator,
            step_mm=relief_step_mm,
        )
        self._waviness = Waviness(_WAVINESS_MM, generator)
        self._cavity_top = self._raised_cavity()
        self._margin_radius = margin_radius(self.outer, self.outer_fan)

    @property
    def outer_fan(self) -> RayFan:
        """Rays that meet the outer surface."""
        form = self.form
        return RayFan(
            margin_height=self.wall.margin_height,
            turn_height=form.turn_height,
            axis_y=self.wall.axis_y,
            core=(form.core_radius, form.core_radius),
        )

    @property
    def inner_fan(self) -> RayFan:
        """Rays that meet the cavity; at the margin they are those of the outer surface."""
        form = self.form
        return RayFan(
            margin_height=self.wall.margin_height,
            turn_height=form.turn_height - 1.6,
            axis_y=self.wall.axis_y,
            core=(0.6 * form.core_radius, 0.6 * form.core_radius),
        )

    def margin_height(self, points: FloatArray) -> FloatArray:
        """Return the height of the margin in the direction of each point."""
        return self.wall.margin_height(self._cylinder(points)[1])

    def outer(self, points: FloatArray) -> FloatArray:
        """Return the field of the outer surface at (N, 3) points."""
        radius, azimuth = self._cylinder(points)
        beside = radius - self.wall.radius(azimuth, points[:, 2])
        above = 0.85 * (points[:, 2] - self.relief.height(points[:, 0], points[:, 1]))
        return smooth_max(beside, above, self.form.shoulder) + self._waviness(points)

    def inner(self, points: FloatArray) -> FloatArray:
        """Return the field of the cavity at (N, 3) points."""
        radius, azimuth = self._cylinder(points)
        x, y, z = points.T
        beside = radius - self._cavity_radius(azimuth, z)
        above = 0.9 * (z - self._cavity_grid_height(x, y))
        return smooth_max(beside, above, 1.1)

    def _cylinder(self, points: FloatArray) -> tuple[FloatArray, FloatArray]:
        x, y = points[:, 0], points[:, 1] - self.wall.axis_y(points[:, 2])
        return np.hypot(x, y), np.arctan2(y, x)

    def _cavity_radius(self, azimuth: FloatArray, z: FloatArray) -> FloatArray:
        """Return the cavity's radius: rim, rounded chamfer, taper, and the wall left standing."""
        preparation = self.form.preparation
        rise = np.maximum(z - self.wall.margin_height(azimuth), 0.0)
        prepared = self._margin_radius(azimuth) - prepared_depth(preparation, rise)
        thick = smooth_step(rise, 0.0, 1.6)
        keep = preparation.rim + (preparation.axial_wall - preparation.rim) * thick
        return smooth_min(prepared, self.wall.radius(azimuth, z) - keep, 0.1)

    def _cavity_grid_height(self, x: FloatArray, y: FloatArray) -> FloatArray:
        grid = self.relief.grid
        coarse = grid.step_mm * _CAVITY_STEP
        offset = grid.x[0, 0]
        where = [(x - offset) / coarse, (y - offset) / coarse]
        return np.asarray(
            ndimage.map_coordinates(
                self._cavity_top, where, order=3, prefilter=False, mode="nearest"
            )
        )

    def _raised_cavity(self) -> FloatArray:
        """Return spline coefficients of the cavity's roof.

        The relief, lowered by the wall with a ball (so the wall holds along the normal too),
        opened by the burr, and smoothed.
        """
        grid = self.relief.grid
        step = grid.step_mm * _CAVITY_STEP
        relief = grid.smoothed(self.relief.height_grid, 0.1)[::_CAVITY_STEP, ::_CAVITY_STEP]
        footprint, cap = _ball(self.form.preparation.occlusal_wall, step)
        roof = ndimage.grey_erosion(relief, footprint=footprint, structure=cap, mode="nearest")
        footprint, cap = _ball(_BURR_RADIUS_MM, step)
        roof = ndimage.grey_opening(roof, footprint=footprint, structure=cap, mode="nearest")
        wide = ndimage.gaussian_filter(roof, 0.9 / step)
        roof = ndimage.gaussian_filter(np.minimum(roof, wide + 0.15), 0.45 / step) - 0.06
        return np.asarray(ndimage.spline_filter(np.minimum(roof, self.form.stump_top), order=3))


def _ball(radius_mm: float, step_mm: float) -> tuple[NDArray[np.bool_], Any]:
    """Return footprint and heights of the upper half of a ball on a grid.

    The heights are an array of floats; scipy's own type hints for morphology know whole ones only.
    """
    reach = int(radius_mm / step_mm)
    line = np.arange(-reach, reach + 1) * step_mm
    square = radius_mm**2 - line[:, None] ** 2 - line[None, :] ** 2
    return square >= 0.0, np.sqrt(np.maximum(square, 0.0))
