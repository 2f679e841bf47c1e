"""Relief of a surface at several scales: smoothed normals, curvature, depth of valleys."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stainmap.planning.progress import Steps
from stainmap.surface.curvature import curvature_at_scales
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import FloatArray, IndexArray, frozen
from stainmap.words import translate

# One smoothing length for everything that is read and for the borders of zones, so that one
# factorisation serves all; wider scales come from smoothing again. Smoothing k times with s
# spreads as far (second moment 4 k s^2) as smoothing once with s sqrt(k).
SMOOTHING_MM = 0.2


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Relief:
    """What is left of a surface after smoothing it, and what the smoothing took away.

    Parameters
    ----------
    length_mm
        Scale s of the smoothing.
    normals
        (V, 3) unit normals of the smoothed surface.
    valley_depth_mm
        (V,) D = n . (X_s - X): how far smoothing lifts the surface; positive in valleys, negative
        on ridges.
    """

    length_mm: float
    normals: FloatArray
    valley_depth_mm: FloatArray

    @property
    def curvature_per_mm(self) -> FloatArray:
        """(V,) mean curvature H = -D / (2 s^2), positive where convex.

        The smoothed positions solve (M + s^2 L) X_s = M X, so the mean curvature normal
        L X_s / (2 M) is (X - X_s) / (2 s^2) and needs no further solve.
        """
        return np.asarray(-self.valley_depth_mm / (2.0 * self.length_mm**2))

    def at(self, vertices: IndexArray) -> Relief:
        """Return the relief of some of the vertices."""
        return Relief(
            length_mm=self.length_mm,
            normals=frozen(self.normals[vertices]),
            valley_depth_mm=frozen(self.valley_depth_mm[vertices]),
        )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Reliefs:
    """The relief at the three scales the reading works with.

    Parameters
    ----------
    fine
        0.2 mm: the crease at the margin.
    middle
        0.35 mm: fissures and crests; a fissure keeps its depth under scanner noise.
    wide
        0.7 mm: fossae and cusps.
    """

    fine: Relief
    middle: Relief
    wide: Relief

    def at(self, vertices: IndexArray) -> Reliefs:
        """Return the reliefs of some of the vertices."""
        return Reliefs(
            fine=self.fine.at(vertices),
            middle=self.middle.at(vertices),
            wide=self.wide.at(vertices),
        )


_REPEATS = (1, 3, 12)


def find_reliefs(operator: SurfaceOperator, steps: Steps) -> Reliefs:
    """Return the reliefs of the operator's surface."""
    phrase = translate("relief", "reading the relief")
    steps.during(0.0, phrase, lambda: operator.prepare(SMOOTHING_MM))
    found = curvature_at_scales(
        operator,
        SMOOTHING_MM,
        _REPEATS,
        progress=lambda share: steps.say(0.4 + 0.6 * share, phrase),
    )
    fine, middle, wide = (
        Relief(length_mm=one.scale_mm, normals=one.normals, valley_depth_mm=one.depth_mm)
        for one in found
    )
    return Reliefs(fine=fine, middle=middle, wide=wide)
