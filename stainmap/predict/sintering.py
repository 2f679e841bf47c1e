"""What a sintering programme does: how long it takes, and what it makes of translucency.

Slow cycles come out more translucent (common practice; published translucency parameters of slow
and of microwave cycles agree in direction). The program takes that as a factor on scattering by
class of total time, assumed, until a blank coupon sintered in that programme replaces it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.errors import CatalogueError
from stainmap.model.colour import Colour
from stainmap.model.material import (
    LARGEST_SCATTERING_FACTOR,
    LEAST_SCATTERING_FACTOR,
    BlockLayer,
    Catalogue,
    SinteringProgramme,
)
from stainmap.optics.colorimetry import reflectance_to_lab
from stainmap.optics.difference import delta_e_00
from stainmap.optics.interface import fitted_interface
from stainmap.optics.spectrum import BANDS_NM
from stainmap.predict.blocks import (
    absorption_per_mm,
    bare_reflectance,
    layer_absorption,
    scattering_per_mm,
    stump_reflectance,
)
from stainmap.words import translate

# (at most so many minutes, name of the class, factor); anything longer is slow. Assumed.
_CLASSES: Final = ((45.0, "very fast", 1.5), (120.0, "fast", 1.35), (419.999, "standard", 1.1))
_SLOW: Final = ("slow", 1.0)

ACTIVATION_ENERGY_J_PER_MOL: Final = 485e3
"""Densification of nano-sized 3Y zirconia [Mazaheri2009]."""

_GAS_CONSTANT: Final = 8.314462618  # J/(mol K), exact by definition of the units
_ZERO_C: Final = 273.15


def time_class(minutes: float) -> str:
    """Return "slow" (7 h and more), "standard", "fast" (to 2 h) or "very fast" (to 45 min)."""
    return _class(minutes)[0]


def class_factor(minutes: float) -> float:
    """Return the factor on scattering assumed for a programme of this total time."""
    return _class(minutes)[1]


def _class(minutes: float) -> tuple[str, float]:
    for longest, name, factor in _CLASSES:
        if minutes <= longest:
            return name, factor
    return _SLOW


@dataclass(frozen=True, slots=True, kw_only=True)
class CouponFactor:
    """What a blank coupon says: the factor on scattering, and the mean dE00 that remains."""

    scattering_factor: float
    remaining_de00: float


def factor_from_coupon(
    layer: BlockLayer,
    materials: Catalogue,
    readings: Sequence[Colour],
    thickness_mm: float,
    *,
    coupled: bool = False,
) -> CouponFactor:
    """Return the factor on scattering that an unstained coupon's colours tell, best in dE00.

    One reading over black tells most, one over white and one over black more.

    Parameters
    ----------
    layer
        The layer of the block that the coupon was cut from.
    materials
        Catalogue with what the coupon was read over, each reading's backing among its stumps.
    readings
        45/0 readings without gloss, one or more.
    thickness_mm
        Sintered.
    coupled
        True if gel or cement joined coupon and backing, False if it lay there dry.

    Raises
    ------
    CatalogueError
        If there is no reading, a backing is unknown, or the factor lies outside 0.7 to 1.8.
    """
    if not readings or thickness_mm <= 0.0:
        raise CatalogueError(
            translate("sintering", "A coupon needs a thickness and at least one reading."),
            advice=translate("sintering", "Give them."),
        )
    interface = fitted_interface(len(BANDS_NM))
    absorption = absorption_per_mm(layer_absorption(layer, materials), BANDS_NM)
    scattering = scattering_per_mm(layer.scattering, BANDS_NM)
    backings = [
        interface.backing(
            stump_reflectance(materials.stump(one.measurement.backing), BANDS_NM), coupled=coupled
        )
        for one in readings
    ]

    def differences(factor: float) -> NDArray[np.float64]:
        off = []
        for one, backing in zip(readings, backings, strict=True):
            reflectance = bare_reflectance(
                absorption, factor * scattering, thickness_mm, backing, interface
            )
            how = one.measurement
            lab = reflectance_to_lab(reflectance, how.illuminant, how.observer_degrees)
            off.append(float(delta_e_00(lab, np.array(one.lab))))
        return np.array(off)

    from scipy.optimize import minimize_scalar  # noqa: PLC0415 - takes a third of a second

    found = minimize_scalar(
        lambda factor: float((differences(factor) ** 2).sum()),
        bounds=(0.4, 3.0),
        method="bounded",
        options={"xatol": 1e-4},
    )
    factor = float(found.x)
    if not LEAST_SCATTERING_FACTOR <= factor <= LARGEST_SCATTERING_FACTOR:
        raise CatalogueError(
            translate(
                "sintering",
                "By this coupon the programme multiplies scattering by {factor:.2f}, which no "
                "cycle does (0.7 to 1.8).",
            ).format(factor=factor),
            advice=translate("sintering", "Check the coupon's block, thickness and backing."),
        )
    return CouponFactor(scattering_factor=factor, remaining_de00=float(differences(factor).mean()))


def duration_text(minutes: float) -> str:
    """Return a duration as the bench reads it, for instance "8 h 50 min" or "40 min"."""
    hours, rest = divmod(round(minutes), 60)
    if hours == 0:
        return f"{rest} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def temperature_c(programme: SinteringProgramme, minutes: ArrayLike) -> NDArray[np.float64]:
    """Return the temperature at times since the start; before and after, the ends hold.

    Parameters
    ----------
    programme
        Ramps and holds.
    minutes
        Times since the start.

    Returns
    -------
    Temperatures in degrees Celsius, shape of `minutes`.
    """
    times, temperatures = programme_corners(programme)
    when = np.asarray(minutes, dtype=np.float64)
    return np.asarray(np.interp(when, times, temperatures), dtype=np.float64)


def programme_corners(
    programme: SinteringProgramme,
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Return times in minutes and temperatures in degrees Celsius of the programme's corners."""
    times = np.cumsum([0.0, *(segment.minutes for segment in programme.segments)])
    temperatures = [programme.start_c, *(segment.target_c for segment in programme.segments)]
    return times, np.array(temperatures, dtype=np.float64)


def ln_work(
    programme: SinteringProgramme, activation_energy_j_per_mol: float = ACTIVATION_ENERGY_J_PER_MOL
) -> float:
    """Return the logarithm of the work of sintering, the integral of T^-1 exp(-Q / RT) dt.

    T in kelvin, t in seconds [Su1996]. Shown as information only: with a single activation
    energy a short hot cycle outranks a long one, so it must not drive translucency.
    """
    logarithms = [
        _ln_segment(minutes, start, end, activation_energy_j_per_mol)
        for minutes, start, end in _pieces(programme)
    ]
    return float(np.logaddexp.reduce(logarithms))


def _pieces(programme: SinteringProgramme) -> Iterator[tuple[float, float, float]]:
    start = programme.start_c
    for segment in programme.segments:
        yield segment.minutes, start, segment.target_c
        start = segment.target_c


def _ln_segment(minutes: float, start_c: float, end_c: float, energy: float) -> float:
    """Return the logarithm of the integral over one ramp or hold, by Gauss-Legendre quadrature."""
    nodes, weights = np.polynomial.legendre.leggauss(200)
    share = 0.5 * (nodes + 1.0)
    kelvin = start_c + (end_c - start_c) * share + _ZERO_C
    exponents = -energy / (_GAS_CONSTANT * kelvin) - np.log(kelvin)
    terms = exponents + np.log(0.5 * weights * minutes * 60.0)
    return float(np.logaddexp.reduce(terms))
