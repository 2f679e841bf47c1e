"""Creases: where a surface bends sharply, inward along grooves and outward along ridges."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import FloatArray, frozen
from stainmap.surface.principal import principal_curvatures


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CreaseField:
    """How sharply a surface bends, at a scale.

    Parameters
    ----------
    scale_mm
        Length of the smoothing; what is narrower is not seen.
    groove, ridge
        (V,) 1/mm, at least 0: the sharpest bend inward and outward. 1/r on a cylinder of radius r.
    """

    scale_mm: float
    groove: FloatArray
    ridge: FloatArray

    @property
    def bend(self) -> FloatArray:
        """(V,) 1/mm, the sharper of the two."""
        return np.maximum(self.groove, self.ridge)


def crease_field(operator: SurfaceOperator, scale_mm: float) -> CreaseField:
    """Return where the surface bends, from its principal curvatures at a scale (mm)."""
    bends = principal_curvatures(operator, scale_mm)
    return CreaseField(
        scale_mm=scale_mm,
        groove=frozen(np.maximum(-bends.least, 0.0)),
        ridge=frozen(np.maximum(bends.greatest, 0.0)),
    )
