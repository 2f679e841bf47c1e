"""How far the predicted L* may be off because of what the calculation leaves out, per vertex.

This is doubt about the calculation on this shape, not about materials: those have their own
spread, which is larger until a laboratory has calibrated (see `uncertainty`).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float32]

# Parts of the standard deviation of L*. The first two cover 95.5 % of 67,000 Monte Carlo bins of
# flat strips at two deviations; those for curvature and mesh are not calibrated.
_FLOOR = 0.1
_OF_SPREADING = 0.10
_OF_COARSENESS = 0.3
# Reflectance of curved ceramic over flat, fitted to Monte Carlo on cylinders, spheres and grooves
# of 2 mm radius and more. Real cusps are no such shells, so it is not applied.
_CURVED_STRENGTH, _CURVED_POWER, _CURVED_BEND = 0.92, 0.53, 0.6
_CURVED_LARGEST = 0.6
_SHARPEST_PER_MM = 1.0
_LINEAR_BELOW = (6.0 / 29.0) ** 3


def lightness(luminance: Floats) -> Floats:
    """Return CIE 1976 L* (n,) of luminances relative to white (n,) [CIE2018]."""
    root = np.cbrt(np.maximum(luminance, _LINEAR_BELOW))
    curved = 116 * root - 16
    straight = luminance * np.float32(8.0 / _LINEAR_BELOW)
    return np.where(luminance > _LINEAR_BELOW, curved, straight).astype(np.float32)


def lightness_doubt(
    luminance: Floats,
    unspread_luminance: Floats,
    coarse_luminance: Floats,
    curvature_per_mm: Floats,
    spread_mm: float,
    hemispherical_share: float,
) -> Floats:
    """Return the standard deviation of L*, (n,).

    Parameters
    ----------
    luminance
        (n,) Y of the prediction, 1 for the perfect diffuser.
    unspread_luminance
        (n,) Y without sideways light.
    coarse_luminance
        (n,) Y with sideways light from the coarse mesh level alone.
    curvature_per_mm
        (n,) sum of the principal curvatures, convex positive.
    spread_mm
        Length over which light spreads sideways, where the eye is most sensitive.
    hemispherical_share
        Hemispherical reflectance over 45/0 radiance factor.
    """
    seen = lightness(luminance)
    spreading = seen - lightness(unspread_luminance)
    coarseness = seen - lightness(coarse_luminance)
    bend = np.clip(curvature_per_mm, -_SHARPEST_PER_MM, _SHARPEST_PER_MM)
    reflectance = np.maximum(luminance * np.float32(hemispherical_share), np.float32(1e-6))
    x = np.float32(_CURVED_STRENGTH * spread_mm) * bend * reflectance ** np.float32(_CURVED_POWER)
    x = np.minimum(x, np.float32(_CURVED_LARGEST))
    curved = lightness(luminance * np.exp(x / (1 - np.float32(_CURVED_BEND) * x))) - seen
    square = (
        _FLOOR**2
        + (_OF_SPREADING * spreading) ** 2
        + (_OF_COARSENESS * coarseness) ** 2
        + curved**2
    )
    return np.asarray(np.sqrt(square), dtype=np.float32)
