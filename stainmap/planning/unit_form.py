"""The form of one unit in its own directions: what zones and accents are laid out from."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stainmap.planning.landmarks import Landmarks
from stainmap.surface.mesh import BoolArray, FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class UnitForm:
    """Landmarks, directions and bends of one unit. Arrays are V long.

    Parameters
    ----------
    landmarks
        The unit.
    mesial, buccal
        (3,) unit vectors across the axis.
    normals
        (V, 3) unit normals of the surface smoothed to the scale of crests.
    valley_per_mm
        (V,) curvature across the sharpest valley at each vertex, positive where there is one, 1/mm.
    level_bend_per_mm
        (V,) normal curvature along the level line at each vertex, positive where convex, 1/mm: high
        on ridges that run down a slope, low on those that run level.
    top_mm
        (V,) height of the tips and ridges near each vertex along the normal of the crest plane; NaN
        where there is no crest.
    embrasure_mm
        (V,) distance from where it parts from its neighbours; large where it has none.
    rim
        (V,) its rim.
    hollow
        Whether it has a cavity.
    """

    landmarks: Landmarks
    mesial: FloatArray
    buccal: FloatArray
    normals: FloatArray
    valley_per_mm: FloatArray
    level_bend_per_mm: FloatArray
    top_mm: FloatArray
    embrasure_mm: FloatArray
    rim: BoolArray
    hollow: bool

    def proximal_angle_deg(self) -> FloatArray:
        """Return (V,) the angle to the mesiodistal line around the middle, 0 to 90 degrees.

        The outline is stretched to a square first, so that 45 degrees point at its corners.
        """
        mesh, outer = self.landmarks.part.mesh, self.landmarks.outer
        scaled = []
        for direction in (self.mesial, self.buccal):
            along = mesh.vertices @ direction
            low, high = np.percentile(along[outer], [1.0, 99.0])
            scaled.append(np.abs(along - 0.5 * (low + high)) / max(0.5 * float(high - low), 1e-9))
        return np.asarray(np.degrees(np.arctan2(scaled[1], scaled[0])))


def ramp(excess: FloatArray, half_width: float) -> FloatArray:
    """Return 0 to 1: one half where nothing exceeds a bound, all or nothing half a width off."""
    return np.asarray(np.clip(0.5 + excess / (2.0 * half_width), 0.0, 1.0))


def finite_mm(distance_mm: FloatArray) -> FloatArray:
    """Return distances with a metre where no way leads."""
    return np.asarray(np.where(np.isfinite(distance_mm), distance_mm, 1e3))
