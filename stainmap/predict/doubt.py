"""How far the predicted L* may be off because of what the calculation leaves out, per vertex.

This is doubt about the calculation on this shape, not about materials: those have their own
spread, which is larger until a laboratory has calibrated (see `uncertainty`).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.predict.curvature_correction import corrected_reflectance

Floats = NDArray[np.float32]

# Parts of the standard deviation of L*. The first two cover 95.5 % of 67,000 Monte Carlo bins of
# flat strips at two deviations; that for the mesh is not calibrated.
_FLOOR = 0.1
_OF_SPREADING = 0.10
_OF_COARSENESS = 0.3
# What is left in doubt of the shift by curvature: all of it, or two fifths if it is corrected for.
# By Monte Carlo in the shape of the sample crown one deviation then covers 72 to 77 % of 80 places
# in nine combinations, two deviations 88 to 91 %: a normal core, and tails at a few sharp fissures.
_CURVED_LEFT_OUT, _CURVED_CORRECTED = 1.0, 0.4
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
    curving_length_mm: float,
    hemispherical_share: float,
    *,
    corrected: bool = False,
) -> Floats:
    """Return the standard deviation of L*, (n,).

    Parameters
    ----------
    luminance
        (n,) Y of the prediction without the correction for curvature, 1 for the perfect diffuser.
    unspread_luminance
        (n,) Y without sideways light.
    coarse_luminance
        (n,) Y with sideways light from the coarse mesh level alone.
    curvature_per_mm
        (n,) sum of the principal curvatures, convex positive.
    curving_length_mm
        Length by which curvature counts, where the eye is most sensitive.
    hemispherical_share
        Hemispherical reflectance over 45/0 radiance factor.
    corrected
        Whether what is shown is corrected for curvature.
    """
    seen = lightness(luminance)
    spreading = seen - lightness(unspread_luminance)
    coarseness = seen - lightness(coarse_luminance)
    reflectance = np.maximum(luminance * np.float32(hemispherical_share), np.float32(1e-6))
    moved = corrected_reflectance(reflectance[:, None], curvature_per_mm, [curving_length_mm])[:, 0]
    curved = lightness((luminance * (moved / reflectance)).astype(np.float32)) - seen
    curved *= np.float32(_CURVED_CORRECTED if corrected else _CURVED_LEFT_OUT)
    square = (
        _FLOOR**2
        + (_OF_SPREADING * spreading) ** 2
        + (_OF_COARSENESS * coarseness) ** 2
        + curved**2
    )
    return np.asarray(np.sqrt(square), dtype=np.float32)
