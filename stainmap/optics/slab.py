"""Kubelka-Munk reflectance and transmittance of one layer [Kubelka1948].

Reflectances here are internal: of diffuse light within the material, without its surface.
`K` and `S` are absorption and scattering in 1/mm, `X` the thickness in mm; all broadcast.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray


def _tanh_over(m: NDArray[np.float64], X: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return tanh(m X) / m, and its limit X where m X goes to zero."""
    x = m * X
    small = x < 1e-4
    safe_m = np.where(small, 1.0, m)
    # The next term of the series is below 1e-17 for x < 1e-4.
    return np.where(small, X * (1.0 - x * x / 3.0), np.tanh(x) / safe_m)


def _arrays(*values: ArrayLike) -> tuple[NDArray[np.float64], ...]:
    return tuple(np.asarray(value, dtype=np.float64) for value in values)


def km_layer_over(K: ArrayLike, S: ArrayLike, X: ArrayLike, Rg: ArrayLike) -> NDArray[np.float64]:
    """Return the reflectance of a layer on a backing of reflectance `Rg`.

    The hyperbolic solution of [Kubelka1948], divided by cosh so that nothing overflows and the
    limit K = 0 is reached without a special case.

    Parameters
    ----------
    K, S
        Absorption and scattering, 1/mm, not negative.
    X
        Thickness, mm, not negative and finite.
    Rg
        Reflectance of the backing in optical contact, 0 to 1.

    Returns
    -------
    Reflectance 0 to 1, broadcast shape of the arguments.
    """
    K, S, X, Rg = _arrays(K, S, X, Rg)
    q = _tanh_over(np.sqrt(K * (K + 2.0 * S)), X)
    return (q * (S - (K + S) * Rg) + Rg) / (q * (K + S - S * Rg) + 1.0)


def km_reflectance_transmittance(
    K: ArrayLike, S: ArrayLike, X: ArrayLike
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Return reflectance over black and transmittance of a layer [Kubelka1948].

    Parameters as for `km_layer_over`; both results are 0 to 1 and together at most 1.
    """
    K, S, X = _arrays(K, S, X)
    m = np.sqrt(K * (K + 2.0 * S))
    q = _tanh_over(m, X)
    decay = np.exp(-m * X)
    sech = 2.0 * decay / (1.0 + decay * decay)
    denominator = (K + S) * q + 1.0
    return S * q / denominator, sech / denominator


def km_infinite_reflectance(K: ArrayLike, S: ArrayLike) -> NDArray[np.float64]:
    """Return the reflectance of an infinitely thick layer, S > 0 [KubelkaMunk1931]."""
    K, S = _arrays(K, S)
    ratio = K / S
    # 1 / (a + b) is a - b without the cancellation at large K / S.
    return 1.0 / (1.0 + ratio + np.sqrt(ratio * (ratio + 2.0)))


def km_ratio(infinite_reflectance: ArrayLike) -> NDArray[np.float64]:
    """Return K / S = (1 - R)^2 / 2 R of an infinitely thick layer [KubelkaMunk1931]."""
    (R,) = _arrays(infinite_reflectance)
    return (1.0 - R) ** 2 / (2.0 * R)
