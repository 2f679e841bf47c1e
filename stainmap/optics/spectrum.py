"""Wavelength bands, and absorption bands sampled on them."""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

BAND_STEP_NM: Final = 10.0
NARROWEST_SAMPLED_NM: Final = 5.0


def _read_only(values: NDArray[np.float64]) -> NDArray[np.float64]:
    values.flags.writeable = False
    return values


BANDS_NM: Final[NDArray[np.float64]] = _read_only(np.arange(400.0, 701.0, BAND_STEP_NM))
"""The 31 bands of every full spectrum, 400 to 700 nm; below and above, spectra continue flat."""


def gaussian_band(
    wavelengths_nm: ArrayLike, centre_nm: float, width_nm: float
) -> NDArray[np.float64]:
    """Return a Gaussian absorption band of height 1 sampled on a 10 nm grid.

    A band at least 5 nm wide (standard deviation) is sampled as it stands: on a grid of two
    standard deviations the sum of the samples is within 1.4 % of the integral wherever the
    centre falls (Poisson summation), and the weights of `colorimetry` take samples, not means.
    A narrower line (some f-f lines of Er and Nd) would be hit or missed by the grid; it is
    replaced by one of 5 nm with the same area. Averaging every band over its 10 nm, the other
    usual choice, is ten times further from a 1 nm calculation, because it blurs twice.

    Parameters
    ----------
    wavelengths_nm
        (B,) wavelengths.
    centre_nm, width_nm
        Centre and standard deviation of the band.

    Returns
    -------
    (B,) values from 0 to 1.
    """
    if not width_nm > 0.0:
        raise ValueError(f"a band of width {width_nm} nm has no area")
    sampled = max(width_nm, NARROWEST_SAMPLED_NM)
    offset = (np.asarray(wavelengths_nm, dtype=np.float64) - centre_nm) / sampled
    return np.asarray(width_nm / sampled * np.exp(-0.5 * offset**2), dtype=np.float64)


def sigmoid_reflectance(
    wavelengths_nm: ArrayLike, floor: float, rise: float, centre_nm: float, width_nm: float
) -> NDArray[np.float64]:
    """Return the reflectance ``floor + rise / (1 + exp(-(wavelength - centre) / width))``.

    Parameters
    ----------
    wavelengths_nm
        (B,) wavelengths.
    floor, rise
        Reflectance at short wavelengths, and by how much it rises.
    centre_nm, width_nm
        Where it has risen by half, and how quickly.

    Returns
    -------
    (B,) reflectances, 0 to 1 for sensible parameters.
    """
    offset = (np.asarray(wavelengths_nm, dtype=np.float64) - centre_nm) / width_nm
    return np.asarray(floor + rise / (1.0 + np.exp(-offset)), dtype=np.float64)


def decaying_absorption(
    wavelengths_nm: ArrayLike, c0_per_mm: float, decay_nm: float, c1_per_mm: float
) -> NDArray[np.float64]:
    """Return the absorption ``c0 exp(-(wavelength - 400) / decay) + c1`` in 1/mm, (B,)."""
    offset = np.asarray(wavelengths_nm, dtype=np.float64) - 400.0
    return np.asarray(c0_per_mm * np.exp(-offset / decay_nm) + c1_per_mm, dtype=np.float64)


def power_law_scattering(
    wavelengths_nm: ArrayLike, at_550_per_mm: float, exponent: float
) -> NDArray[np.float64]:
    """Return the reduced scattering ``mu_s'(550) (wavelength / 550)^-exponent`` in 1/mm, (B,)."""
    ratio = np.asarray(wavelengths_nm, dtype=np.float64) / 550.0
    return np.asarray(at_550_per_mm * ratio**-exponent, dtype=np.float64)
