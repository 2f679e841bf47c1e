"""The absorption and scattering of a block, solved from the sintered colour it is sold by."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.errors import CatalogueError
from stainmap.model.colour import Colour
from stainmap.model.material import Absorption, Block, BlockLayer, Catalogue, ScatteringClass, Stump
from stainmap.optics.colorimetry import LIGHTS, reflectance_to_lab
from stainmap.optics.difference import delta_e_00
from stainmap.optics.interface import Interface, fitted_interface, reflectance_outside
from stainmap.optics.slab import km_layer_over
from stainmap.optics.spectrum import (
    BANDS_NM,
    decaying_absorption,
    power_law_scattering,
    sigmoid_reflectance,
)
from stainmap.words import translate

FloatArray = NDArray[np.float64]

GEOMETRY: Final = "45/0"
"""The measuring geometry of every prediction, without gloss."""

LARGEST_REMAINING_DE00: Final = 2.0

# Reduced scattering at 550 nm (1/mm) and exponent. Assumed; order and size follow published
# translucency parameters, which fall from 5Y over 4Y to 3Y.
_SCATTERING: Final = {
    ScatteringClass.Y3: (12.0, 1.3),
    ScatteringClass.Y4: (9.5, 1.2),
    ScatteringClass.Y5: (7.5, 1.1),
}
# Bounds of c0 (1/mm), decay (nm) and c1 (1/mm).
_LOWEST: Final = (1e-3, 25.0, 7.5e-5)
_HIGHEST: Final = (2.7, 160.0, 0.14)
_USUAL_DECAY_NM: Final = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SolvedBlock:
    """What a layer's nominal colour tells: its absorption, and what it could not reach."""

    absorption: Absorption
    reached: Colour
    remaining_de00: float


def scattering_per_mm(kind: ScatteringClass, wavelengths_nm: ArrayLike) -> NDArray[np.float64]:
    """Return the reduced scattering mu_s' of a class of zirconia, slow cycle, (B,) 1/mm."""
    at_550, exponent = _SCATTERING[kind]
    return power_law_scattering(wavelengths_nm, at_550, exponent)


def absorption_per_mm(absorption: Absorption, wavelengths_nm: ArrayLike) -> NDArray[np.float64]:
    """Return a block's absorption mu_a, (B,) 1/mm."""
    return decaying_absorption(
        wavelengths_nm, absorption.c0_per_mm, absorption.decay_nm, absorption.c1_per_mm
    )


def stump_reflectance(stump: Stump, wavelengths_nm: ArrayLike) -> NDArray[np.float64]:
    """Return the reflectance of a stump, (B,)."""
    return sigmoid_reflectance(
        wavelengths_nm, stump.floor, stump.rise, stump.centre_nm, stump.width_nm
    )


def layer_absorption(layer: BlockLayer, materials: Catalogue) -> Absorption:
    """Return the absorption of a block layer: its own if it has one, else solved from its colour.

    Raises
    ------
    CatalogueError
        If the nominal colour cannot be reached, or its backing is not in the catalogue.
    """
    if layer.absorption is not None:
        return layer.absorption
    return solve_layer(layer, materials.stump(layer.nominal.measurement.backing)).absorption


def check_block(block: Block, materials: Catalogue) -> tuple[SolvedBlock, ...]:
    """Return the solution of every layer of a block; raise CatalogueError as `solve_layer`."""
    solved = []
    for layer in block.layers:
        try:
            solved.append(solve_layer(layer, materials.stump(layer.nominal.measurement.backing)))
        except CatalogueError as error:
            raise CatalogueError(
                error.message, where=f"block '{block.name}'", advice=error.advice
            ) from error
    return tuple(solved)


def layer_share(block: Block, height_mm: ArrayLike) -> NDArray[np.float32]:
    """Return the blend of a block's layers at (V,) milled heights above the blank's bottom.

    A layer shows its own colour at its bottom and turns linearly into the next one; above the
    bottom of the last layer nothing changes.

    Returns
    -------
    (H, V) shares, 0 to 1, of sum 1.
    """
    bottoms = [layer.bottom_mm for layer in block.layers]
    height = np.asarray(height_mm, dtype=np.float64)
    shares = [np.interp(height, bottoms, own) for own in np.eye(len(bottoms))]
    return np.stack(shares).astype(np.float32)


def solve_layer(layer: BlockLayer, stump: Stump) -> SolvedBlock:
    """Return the absorption that gives a layer its nominal colour over `stump`, cemented.

    What remains of `nearest_to_nominal` is reported.

    Raises
    ------
    CatalogueError
        If more than 2.0 dE00 remains, with the nearest colour that can be had; or if the colour
        was measured in a way that is not predicted.
    """
    solved = nearest_to_nominal(layer, stump)
    if solved.remaining_de00 > LARGEST_REMAINING_DE00:
        raise CatalogueError(
            translate(
                "blocks",
                "No {scattering} zirconia of {nominal_thickness_mm} mm over '{name}' has the "
                "colour {text}: the nearest it can have is {text_2}, dE00 {remaining_de00:.1f} "
                "away.",
            ).format(
                scattering=layer.scattering,
                nominal_thickness_mm=layer.nominal_thickness_mm,
                name=stump.name,
                text=_text(layer.nominal.lab),
                text_2=_text(solved.reached.lab),
                remaining_de00=solved.remaining_de00,
            ),
            advice=translate(
                "blocks",
                "Check the reading, its thickness and backing, or give one of a thicker plate.",
            ),
        )
    return solved


@lru_cache(maxsize=256)
def nearest_to_nominal(layer: BlockLayer, stump: Stump) -> SolvedBlock:
    """Return the absorption that brings a layer nearest to its nominal colour, however near.

    Least squares in L*a*b* for ``c0 exp(-(wavelength - 400) / decay) + c1``; a weak pull of the
    decay towards 60 nm decides where the colour alone does not.

    Raises
    ------
    CatalogueError
        If the colour was measured in a way that is not predicted.
    """
    _check_measurement(layer.nominal)
    interface = fitted_interface(len(BANDS_NM))
    scattering = scattering_per_mm(layer.scattering, BANDS_NM)
    backing = interface.backing(stump_reflectance(stump, BANDS_NM), coupled=True)
    wanted = np.array(layer.nominal.lab)
    light = layer.nominal.measurement.illuminant
    observer = layer.nominal.measurement.observer_degrees

    def lab(log_parameters: NDArray[np.float64]) -> NDArray[np.float64]:
        absorption = decaying_absorption(BANDS_NM, *np.exp(log_parameters))
        reflectance = bare_reflectance(
            absorption, scattering, layer.nominal_thickness_mm, backing, interface
        )
        return reflectance_to_lab(reflectance, light, observer)

    def misfit(log_parameters: NDArray[np.float64]) -> NDArray[np.float64]:
        pull = 0.02 * (log_parameters[1] - np.log(_USUAL_DECAY_NM))
        return np.append(lab(log_parameters) - wanted, pull)

    start = np.log([0.2, _USUAL_DECAY_NM, 0.004])
    bounds = (np.log(_LOWEST), np.log(_HIGHEST))
    from scipy.optimize import least_squares  # noqa: PLC0415 - takes a third of a second

    found = least_squares(misfit, start, bounds=bounds).x
    reached = lab(found)
    remaining = float(delta_e_00(reached, wanted))
    if remaining > LARGEST_REMAINING_DE00:
        # Least squares in L*a*b* is not the nearest to the eye.
        found = _nearest(lab, wanted, bounds)
        reached = lab(found)
        remaining = float(delta_e_00(reached, wanted))
    c0, decay, c1 = (float(value) for value in np.exp(found))
    lightness, a, b = (float(value) for value in reached)
    return SolvedBlock(
        absorption=Absorption(c0_per_mm=c0, decay_nm=decay, c1_per_mm=c1),
        reached=Colour(lightness=lightness, a=a, b=b, measurement=layer.nominal.measurement),
        remaining_de00=remaining,
    )


def _nearest(
    lab: Callable[[FloatArray], FloatArray],
    wanted: FloatArray,
    bounds: tuple[FloatArray, FloatArray],
) -> FloatArray:
    """Return the parameters whose colour is nearest to `wanted` in dE00.

    From the best points of a grid: the bounds make corners where one search alone gets stuck.
    """
    from scipy.optimize import Bounds, minimize  # noqa: PLC0415 - takes a third of a second

    def away(parameters: FloatArray) -> float:
        return float(delta_e_00(lab(parameters), wanted))

    grid = np.stack(np.meshgrid(*np.linspace(*bounds, 7).T), axis=-1).reshape(-1, 3)
    found = [
        minimize(
            away,
            start,
            method="Nelder-Mead",
            bounds=Bounds(*bounds),
            options={"xatol": 1e-3, "fatol": 1e-3},
        )
        for start in sorted(grid, key=away)[:6]
    ]
    return np.asarray(min(found, key=lambda one: float(one.fun)).x, dtype=np.float64)


def _text(lab: tuple[float, float, float]) -> str:
    return " / ".join(f"{value:.1f}" for value in lab)


def bare_reflectance(
    absorption: NDArray[np.float64],
    scattering: NDArray[np.float64],
    thickness_mm: float,
    backing: NDArray[np.float64],
    interface: Interface,
) -> NDArray[np.float64]:
    """Return the 45/0 radiance factor of an unstained plate, (B,), from mu_a and mu_s' (B,)."""
    inside = km_layer_over(
        interface.absorption_factor * absorption,
        interface.scattering_factor * scattering,
        thickness_mm,
        backing,
    )
    return reflectance_outside(
        inside, factor=interface.radiance_factor, front_internal=interface.front_internal
    )


def _check_measurement(nominal: Colour) -> None:
    measurement = nominal.measurement
    if measurement.geometry != GEOMETRY:
        raise CatalogueError(
            translate("blocks", "The nominal colour was measured in {geometry} geometry.").format(
                geometry=measurement.geometry
            ),
            advice=translate(
                "blocks",
                "Give a reading in {geometry} geometry without gloss; others do not compare.",
            ).format(geometry=GEOMETRY),
        )
    if measurement.illuminant not in LIGHTS or measurement.observer_degrees not in (2, 10):
        raise CatalogueError(
            translate(
                "blocks", "The nominal colour is for {illuminant} and {observer_degrees} degrees."
            ).format(
                illuminant=measurement.illuminant, observer_degrees=measurement.observer_degrees
            ),
            advice=translate("blocks", "Give one of {lights}, and 2 or 10 degrees.").format(
                lights=", ".join(LIGHTS)
            ),
        )
