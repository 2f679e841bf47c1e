"""How translucent and how white a plate is, in the figures dentistry uses.

Each compares or weighs L*a*b* that were measured or predicted in the same geometry, under the same
light, for the same observer; the caller answers for that.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.optics.difference import delta_e_00, delta_e_76

PERCEPTIBLE_WHITENESS = 0.72
"""Difference of WI_D that half of the observers see; from memory."""

ACCEPTABLE_WHITENESS = 2.60
"""Difference of WI_D that half of the observers accept; from a later paper that used it."""


def translucency_parameter(over_white: ArrayLike, over_black: ArrayLike) -> NDArray[np.float64]:
    """Return TP_ab, the CIE 1976 difference of one plate over white and over black [Johnston1995].

    Parameters
    ----------
    over_white, over_black
        (..., 3) L*a*b* of the plate on either tile.

    Returns
    -------
    Not negative; 0 for an opaque plate.
    """
    return delta_e_76(over_white, over_black)


def translucency_parameter_00(over_white: ArrayLike, over_black: ArrayLike) -> NDArray[np.float64]:
    """Return TP_00, the same by CIEDE2000 [Sharma2005]; parameters as `translucency_parameter`."""
    return delta_e_00(over_white, over_black)


def contrast_ratio(Y_over_black: ArrayLike, Y_over_white: ArrayLike) -> NDArray[np.float64]:
    """Return CR, luminous reflectance over black divided by that over white.

    Parameters
    ----------
    Y_over_black, Y_over_white
        Luminous reflectance Y of the plate on either tile, 0 to 1.

    Returns
    -------
    1 for an opaque plate, less for a translucent one.

    Raises
    ------
    ValueError
        If a value lies outside 0 to 1, or nothing comes back over white.
    """
    black, white = (np.asarray(value, dtype=np.float64) for value in (Y_over_black, Y_over_white))
    for name, value in (("black", black), ("white", white)):
        if not ((value >= 0.0) & (value <= 1.0)).all():
            raise ValueError(f"Y over {name} is {value}; it must lie between 0 and 1")
    if (white == 0.0).any():
        raise ValueError("Y over white is 0; a plate that reflects nothing has no contrast ratio")
    return np.asarray(black / white, dtype=np.float64)


def whiteness_index(lab: ArrayLike) -> NDArray[np.float64]:
    """Return WI_D = 0.511 L* - 2.324 a* - 1.100 b* of (..., 3) L*a*b* [Perez2016].

    For tooth colours under D65 and the 2 degree observer; higher is whiter.
    """
    weights = np.array([0.511, -2.324, -1.100])
    return np.asarray(np.asarray(lab, dtype=np.float64) @ weights, dtype=np.float64)
