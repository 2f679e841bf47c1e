"""What the finish of the outer surface does to colour at 45/0, where gloss is left out.

Three states, two of them changes from the first:

- *polished* is what materials and the fitted constants describe: a smooth surface.
- *as sintered* is rough: some of the first reflection, which a smooth surface throws away as gloss,
  is turned towards the eye. Radiance of a surface of facets with Beckmann's distribution of slopes
  [CookTorrance1982]; it adds white to every colour. What roughness does to light from within is
  left out.
- *glazed* is as smooth as polished, under a film of glass that is a little yellow and that light
  passes on its way in and out.

That agrees in direction with [Kim2013]: polishing and glazing lower L*, glazing raises b*, and the
two differ little. Its lower index alone would let a perfect film raise L* by 3, which nobody
measured; so that is left out. Assumed, not measured: the slope of the facets, the film's tint.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.finishing import Finish
from stainmap.optics.interface import CERAMIC_INDEX, fresnel_reflectance
from stainmap.optics.spectrum import decaying_absorption

ROUGH_SLOPE: Final = 0.2
"""Beckmann's m of a surface as sintered, root 2 times the standard deviation of slope; assumed."""

# Absorbance of one way through the film: at 400 nm, and the wavelengths it falls within. Assumed.
_TINT, _TINT_DECAY_NM = 0.03, 60.0


def surface_radiance(finish: Finish) -> float:
    """Return the radiance factor at 45/0 that the outer surface itself adds, in all bands."""
    return rough_radiance_factor(ROUGH_SLOPE) if finish is Finish.AS_SINTERED else 0.0


def film_transmittance(finish: Finish, wavelengths_nm: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return what is left of light after its way into the ceramic and out of it, (B,), 0 to 1."""
    if finish is not Finish.GLAZED:
        return np.ones(len(wavelengths_nm))
    one_way = decaying_absorption(wavelengths_nm, _TINT, _TINT_DECAY_NM, 0.0)
    return np.exp(-2.0 * one_way)


def rough_radiance_factor(slope: float, index: float = CERAMIC_INDEX) -> float:
    """Return the 45/0 radiance factor of a rough surface's first reflection.

    ``F D G / (4 cos i cos o)`` times pi, of facets tilted by 22.5 degrees, with Beckmann's
    ``D = exp(-tan^2 / m^2) / (pi m^2 cos^4)`` [CookTorrance1982]; at 45/0 no facet hides another
    (G = 1).

    Parameters
    ----------
    slope
        Beckmann's m, above 0.
    index
        Refractive index of the ceramic.
    """
    tilt = np.pi / 8.0
    spread = np.exp(-((np.tan(tilt) / slope) ** 2)) / (slope**2 * np.cos(tilt) ** 4)
    reflected = fresnel_reflectance(1.0, index, np.cos(tilt))
    return float(reflected * spread / (4.0 * np.sqrt(0.5)))
