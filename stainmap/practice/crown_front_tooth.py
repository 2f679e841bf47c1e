"""The solid of an upper incisor or canine: outer surface, cavity, and the rays to mesh them."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray
from scipy.interpolate import CubicSpline

from stainmap.practice.crown_form import FrontTooth, PlanPoint
from stainmap.practice.crown_meshing import RayFan
from stainmap.practice.crown_outline import around, smooth_max, smooth_step
from stainmap.practice.crown_preparation import margin_radius, prepared_depth
from stainmap.practice.crown_waviness import Waviness

FloatArray = NDArray[np.float64]

_WAVINESS_MM = 0.014
_RIDGE_INSET_MM = 0.95
_RIDGE_WIDTH_MM = 0.72


def _profile(points: tuple[PlanPoint, ...]) -> CubicSpline[np.float64]:
    heights, distances = np.asarray(points, dtype=np.float64).T
    return CubicSpline(heights, distances)


def _bell(offset: FloatArray, width: float) -> FloatArray:
    return np.asarray(np.exp(-((offset / width) ** 2)))


class FrontToothSolid:
    """Outer surface and cavity of an incisor or canine as fields that are negative inside.

    The crown is what its labial and palatal faces, its two sides and the incisal edge enclose,
    rounded where they meet.
    """

    def __init__(self, form: FrontTooth, *, generator: np.random.Generator) -> None:
        self.form = form
        self._labial = _profile(form.labial)
        self._palatal = _profile(form.palatal)
        self._mesial = _profile(form.mesial)
        self._distal = _profile(form.distal)
        self._ridge_heights = form.ridge_height + generator.normal(0.0, 0.06, 2)
        self._waviness = Waviness(_WAVINESS_MM, generator)
        self._margin_radius = margin_radius(self.outer, self.outer_fan)

    @property
    def outer_fan(self) -> RayFan:
        """Rays that meet the outer surface."""
        return self._fan(self.form.turn_height, self.form.core[0])

    @property
    def inner_fan(self) -> RayFan:
        """Rays that meet the cavity; at the margin they are those of the outer surface."""
        return self._fan(self.form.turn_height - 2.4, self.form.core[0] - 0.8)

    def _fan(self, turn_height: float, half_length: float) -> RayFan:
        middle = float(self._labial(turn_height) + self._palatal(turn_height)) / 2

        def axis_y(height: FloatArray) -> FloatArray:
            return middle * smooth_step(height, 2.8, turn_height)

        return RayFan(
            margin_height=lambda azimuth: around(self.form.margin_height, azimuth),
            turn_height=turn_height,
            axis_y=axis_y,
            core=(half_length, self.form.core[1]),
            grows=True,
        )

    def margin_height(self, points: FloatArray) -> FloatArray:
        """Return the height of the margin in the direction of each point."""
        return around(self.form.margin_height, np.arctan2(points[:, 1], points[:, 0]))

    def edge_height(self, x: FloatArray) -> FloatArray:
        """Return the height of the incisal edge: falling to the distal, with three lobes.

        That of a canine falls from its tip to either side.
        """
        cusp = self.form.cusp
        if cusp is not None:
            away = x - cusp.x
            slope = np.where(away > 0.0, cusp.mesial_slope, cusp.distal_slope)
            fall = np.sqrt(away * away + cusp.rounding**2) - cusp.rounding
            return np.asarray(self.form.edge - slope * fall)
        distal_fall = 0.035 * np.maximum(-x - 0.5, 0.0) ** 2
        lobes = np.cos(2 * np.pi * (x - 0.1) / 2.75) * np.exp(-((x / 3.0) ** 4))
        return np.asarray(self.form.edge - distal_fall + self.form.mamelon_height * lobes)

    def palatal_ridges(self, points: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Return the two marginal ridges (mesial, distal) as 0 to 1 over (N, 3) points.

        They run inside the sides and close towards the cingulum.
        """
        x, _, z = points.T
        closing = 0.42 + 0.58 * smooth_step(z, 2.5, 6.0)
        strength = smooth_step(z, 1.4, 5.0)
        return (
            strength * _bell(x - (self._mesial(z) - _RIDGE_INSET_MM) * closing, _RIDGE_WIDTH_MM),
            strength * _bell(x - (self._distal(z) + _RIDGE_INSET_MM) * closing, _RIDGE_WIDTH_MM),
        )

    def outer(self, points: FloatArray) -> FloatArray:
        """Return the field of the outer surface at (N, 3) points."""
        x, y, z = points.T
        share = np.clip(z / self.form.edge, -0.1, 1.05)
        labial = 0.95 * (y - self._labial_face(x, z, share))
        palatal = 0.85 * (self._palatal_face(points, share) - y)
        corner = 2.6 - 1.7 * smooth_step(share, 0.15, 0.9)
        faces = smooth_max(labial, palatal, np.minimum(corner, 0.85))
        edge = z - self.edge_height(x)
        mesial = smooth_max(x - self._mesial(z), edge, 1.3)
        distal = smooth_max(self._distal(z) - x, edge, 2.6)
        sides = smooth_max(mesial, distal, 0.3)
        return smooth_max(faces, sides, corner) + self._waviness(points)

    def inner(self, points: FloatArray) -> FloatArray:
        """Return the field of the cavity at (N, 3) points."""
        x, y, z = points.T
        preparation = self.form.preparation
        azimuth = np.arctan2(y, x)
        rise = np.maximum(z - around(self.form.margin_height, azimuth), 0.0)
        prepared = np.hypot(x, y) - (
            self._margin_radius(azimuth) - prepared_depth(preparation, rise)
        )
        thick = smooth_step(rise, 0.0, 1.2)
        keep = preparation.rim + (preparation.axial_wall - preparation.rim) * thick
        beside = smooth_max(prepared, self.outer(points) + keep, 0.25)
        top = z - (self.edge_height(x) - preparation.occlusal_wall)
        return smooth_max(beside, top, 1.0)

    def _labial_face(self, x: FloatArray, z: FloatArray, share: FloatArray) -> FloatArray:
        """Return y of the labial face: curved from side to side, with two shallow valleys."""
        near_neck, near_edge = self.form.labial_bend
        bend = near_neck - (near_neck - near_edge) * smooth_step(share, 0.0, 0.8)
        spread = 1.3 + 0.03 * z
        valleys = _bell(x - spread, 0.7) + 0.9 * _bell(x + spread, 0.7)
        return np.asarray(
            self._labial(z)
            - bend * x**2
            - 0.0011 * x**4
            - self.form.lobe_depth * smooth_step(z, 2.5, 7.5) * valleys
            + self._cusp_ridge(x, z, labial=True)
        )

    def _cusp_ridge(self, x: FloatArray, z: FloatArray, *, labial: bool) -> FloatArray:
        """Return how far the ridge below a canine's tip stands out of one of its faces, mm."""
        cusp = self.form.cusp
        if cusp is None:
            return np.zeros(x.shape)
        height, low = (cusp.labial_ridge, 1.0) if labial else (cusp.palatal_ridge, 2.6)
        along = smooth_step(z, low, low + 3.0) * (1.0 - 0.6 * smooth_step(z, 8.0, 10.0))
        return np.asarray(height * along * _bell(x - cusp.x, 1.0 if labial else 0.75))

    def _palatal_face(self, points: FloatArray, share: FloatArray) -> FloatArray:
        """Return y of the palatal face: cingulum, fossa, marginal ridges."""
        x, _, z = points.T
        mesial, distal = self.palatal_ridges(points)
        edge = self.form.edge
        edge_fade = 1.0 - 0.55 * smooth_step(z, edge - 1.9, edge - 0.1)
        height = edge_fade * (self._ridge_heights[0] * mesial + self._ridge_heights[1] * distal)
        pegs = smooth_step(z, 3.0, 4.2) * (1.0 - smooth_step(z, 5.0, 6.5))
        valleys = _bell(x - 0.55, 0.3) + _bell(x + 0.55, 0.3)
        return np.asarray(
            self._palatal(z)
            + 0.10 * (1.0 - smooth_step(share, 0.25, 0.6)) * x**2
            - height
            - self._cusp_ridge(x, z, labial=False)
            + 0.10 * pegs * valleys
        )
