"""The predicted colour under other lights, and how much it changes between them.

From the mean spectrum of an area, after light has spread sideways. Fluorescence is not modelled:
natural teeth fluoresce under light with violet and ultraviolet in it, zirconia hardly does, so
beside teeth a crown may look darker under such light than this says.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING, Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.colour import Colour, Conversion, Measurement
from stainmap.optics.colorimetry import (
    adapt_lab,
    lab_to_srgb,
    reflectance_to_lab,
    white_point,
)
from stainmap.optics.spectrum import BANDS_NM
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.predict.scene import OpticalScene

SHOWN_LIGHTS: Final = ("D65", "D50", "A", "LED-B3", "FL2", "FL11")
"""Daylight, horizon daylight, filament lamp, white LED, two fluorescent lamps."""

_LIGHT_NAMES: Final = {
    "D65": marked("lights", "daylight"),
    "D50": marked("lights", "warm daylight"),
    "A": marked("lights", "filament lamp"),
    "C": marked("lights", "daylight, older standard"),
    "LED-B3": marked("lights", "white LED"),
    "FL2": marked("lights", "fluorescent lamp, cool white"),
    "FL11": marked("lights", "fluorescent lamp, three bands"),
}

OBSERVERS: Final = (2, 10)

FLUORESCENCE: Final = marked("lights", "Fluorescence is not modelled.")
"""Said wherever colours under lights are shown."""

ADAPTATION: Final = Conversion.ADAPTED_WHITE
"""Colours under two lights are compared after this adaptation, both to D65."""

_COMPARED_IN: Final = "D65"
# Keeps the regression regular where states are too much alike; far below what one state weighs.
_RIDGE: Final = 1e-4
# Holds white to about 1e-6 without being a constraint of its own.
_DIFFUSER_IMPORTANCE: Final = 1e3


def light_name(light: str) -> str:
    """Return what a light of `colorimetry.LIGHTS` is, such as "filament lamp" for A."""
    return translate("lights", _LIGHT_NAMES[light])


@dataclass(frozen=True, slots=True, kw_only=True)
class LightChange:
    """CIEDE2000 between two lights for one observer, both adapted to D65 (`ADAPTATION`)."""

    de00: float
    light: str
    other_light: str
    observer_degrees: int

    def __str__(self) -> str:
        """Return it as "dE00 1.2, D65 to A"."""
        return translate("lights", "dE00 {de00:.1f}, {light} to {other}").format(
            de00=self.de00, light=self.light, other=self.other_light
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class UnderLights:
    """A surface under every light of `SHOWN_LIGHTS`, for both observers.

    Parameters
    ----------
    colours
        By observer, then in the order of `SHOWN_LIGHTS`; each relative to its own light's white.
    largest_change
        For either observer, the one of 2 degrees first.
    """

    colours: tuple[Colour, ...]
    largest_change: tuple[LightChange, ...]

    def colour(self, light: str, observer_degrees: int = 2) -> Colour:
        """Return the colour under one of the lights."""
        for one in self.colours:
            how = one.measurement
            if (how.illuminant, how.observer_degrees) == (light, observer_degrees):
                return one
        raise KeyError((light, observer_degrees))

    def on_screen(self, light: str, observer_degrees: int = 2) -> tuple[float, float, float]:
        """Return encoded sRGB, 0 to 1, as an eye adapted to the light sees it."""
        white = white_point(light, observer_degrees)
        red, green, blue = lab_to_srgb(self.colour(light, observer_degrees).lab, white).tolist()
        return red, green, blue


def under_lights(radiance_factor: NDArray[np.float64], backing: str) -> UnderLights:
    """Return what a surface of (31,) radiance factors at 45/0 looks like under every light."""
    colours, changes = [], []
    for observer in OBSERVERS:
        here = []
        for light in SHOWN_LIGHTS:
            lightness, a, b = reflectance_to_lab(radiance_factor, light, observer).tolist()
            measurement = Measurement(illuminant=light, observer_degrees=observer, backing=backing)
            here.append(
                Colour(lightness=min(max(lightness, 0.0), 100.0), a=a, b=b, measurement=measurement)
            )
        colours += here
        changes.append(_largest_change(here, observer))
    return UnderLights(colours=tuple(colours), largest_change=tuple(changes))


def _largest_change(colours: list[Colour], observer: int) -> LightChange:
    from stainmap.optics.difference import delta_e_00  # noqa: PLC0415

    eye = white_point(_COMPARED_IN, observer)
    adapted = {
        one.measurement.illuminant: adapt_lab(
            one.lab, white_point(one.measurement.illuminant, observer), eye
        )
        for one in colours
    }
    found = [
        LightChange(
            de00=float(delta_e_00(adapted[one], adapted[other])),
            light=one,
            other_light=other,
            observer_degrees=observer,
        )
        for one, other in combinations(adapted, 2)
    ]
    return max(found, key=lambda change: change.de00)


def spectrum_from_nodes(full: OpticalScene, nodes_nm: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the matrix (B, 31) that gives all bands from some of them: ``R31 = R @ matrix``.

    Least squares over random walls of the scene's materials, so that what is on screen with 12
    bands can be shown under every light without predicting again. With all 31 bands it is the
    identity.

    Parameters
    ----------
    full
        The scene on all bands.
    nodes_nm
        (B,) bands that are at hand, some of the 31.
    """
    from stainmap.predict.quadrature import Materials, sample_reflectances  # noqa: PLC0415

    if len(nodes_nm) == len(BANDS_NM):
        return np.eye(len(BANDS_NM))
    states = sample_reflectances(
        Materials(
            block_absorption_per_mm=full.block_absorption_per_mm,
            block_scattering_per_mm=full.block_scattering_per_mm,
            liquid_absorption_per_mm=full.liquid_absorption_per_mm,
            scatter_change=full.scatter_change,
            backing_reflectance=full.backing_reflectance,
            factor=full.radiance_factor,
            front_internal=full.front_internal,
        )
    )
    wanted = np.vstack([states, np.full((1, len(BANDS_NM)), _DIFFUSER_IMPORTANCE)])
    known = wanted[:, np.searchsorted(BANDS_NM, nodes_nm)]
    ridge = _RIDGE * np.eye(len(nodes_nm))
    known = np.vstack([known, ridge])
    wanted = np.vstack([wanted, np.zeros((len(nodes_nm), len(BANDS_NM)))])
    return np.asarray(np.linalg.lstsq(known, wanted, rcond=None)[0], dtype=np.float64)
