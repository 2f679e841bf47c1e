"""The engine against adding and doubling, on random walls that nothing was fitted to.

`tests/optics/test_adding_doubling.py` holds the reference itself against another library and
against Monte Carlo.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np
import pytest

from stainmap.files.catalogue import starter_catalogue
from stainmap.optics.adding_doubling import (
    LambertianBacking,
    TransportLayer,
    layered_transport,
)
from stainmap.optics.colorimetry import reflectance_to_lab
from stainmap.optics.difference import delta_e_00
from stainmap.optics.interface import (
    CEMENT_INDEX,
    CERAMIC_INDEX,
    Interface,
    fitted_interface,
    reflectance_outside,
    textbook_interface,
)
from stainmap.optics.spectrum import (
    BANDS_NM,
    decaying_absorption,
    power_law_scattering,
    sigmoid_reflectance,
)
from stainmap.optics.stack import stack_reflectance
from stainmap.predict.scene import liquid_absorption_per_mm

STATES = 500
LEAST_SCATTERING, MOST_SCATTERING = 4.0, 27.0


@dataclass(frozen=True)
class Wall:
    """Stained, core and inner stained layer (mu_a, mu_s' per band, mm) on a stump."""

    layers: list[tuple[np.ndarray, np.ndarray, float]]
    stump: np.ndarray
    coupled: bool

    @property
    def thickness_mm(self) -> float:
        return sum(mm for *_, mm in self.layers)


@cache
def walls() -> list[Wall]:
    """Draw walls of 0.3 to 2.0 mm whose mu_s' stays within 4 to 27 /mm in every band."""
    rng = np.random.default_rng(20)
    catalogue = starter_catalogue()
    liquids = np.stack([liquid_absorption_per_mm(one, catalogue) for one in catalogue.liquids])
    return [_draw(rng, liquids) for _ in range(STATES)]


def _draw(rng: np.random.Generator, liquids: np.ndarray) -> Wall:
    wall = rng.uniform(0.3, 2.0)
    exponent = rng.uniform(1.0, 1.4)
    range_at_550 = (
        LEAST_SCATTERING * (700.0 / 550.0) ** exponent,
        MOST_SCATTERING * (400.0 / 550.0) ** exponent,
    )
    musp = power_law_scattering(BANDS_NM, np.exp(rng.uniform(*np.log(range_at_550))), exponent)
    mua = decaying_absorption(
        BANDS_NM, rng.uniform(0.05, 0.6), rng.uniform(50.0, 75.0), 10.0 ** rng.uniform(-2.7, -1.7)
    )
    shrink = min(1.0, wall / 0.7)
    outer, inner = 0.4 * shrink, 0.3 * shrink
    stained = mua + _load(rng, len(liquids)) @ liquids
    lined = mua + (_load(rng, len(liquids)) @ liquids if rng.random() < 0.3 else 0.0)
    stump = sigmoid_reflectance(
        BANDS_NM,
        rng.uniform(0.03, 0.35),
        rng.uniform(0.0, 0.45),
        rng.uniform(480.0, 560.0),
        rng.uniform(30.0, 60.0),
    )
    core = max(wall - outer - inner, 0.0)
    layers = [(stained, musp, outer), (mua, musp, core), (lined, musp, inner)]
    return Wall(layers=layers, stump=stump, coupled=bool(rng.random() < 0.8))


def _load(rng: np.random.Generator, liquids: int) -> np.ndarray:
    load = np.zeros(liquids)
    count = int(rng.integers(0, 4))
    if count:
        chosen = rng.choice(liquids, count, replace=False)
        load[chosen] = rng.dirichlet(np.ones(count)) * rng.uniform(0.0, 0.9)
    return load


def two_flux_lab(interface: Interface) -> np.ndarray:
    internal = np.stack(
        [
            stack_reflectance(
                [
                    (interface.absorption_factor * mua, interface.scattering_factor * musp, mm)
                    for mua, musp, mm in wall.layers
                ],
                interface.backing(wall.stump, coupled=wall.coupled),
            )
            for wall in walls()
        ]
    )
    outside = reflectance_outside(
        internal, factor=interface.radiance_factor, front_internal=interface.front_internal
    )
    return reflectance_to_lab(outside)


@cache
def transport_labs() -> tuple[np.ndarray, np.ndarray]:
    """Return L*a*b* by transport: of diffuse light as the engine turns it into 45/0, and of 45/0.

    The first is what the two-flux constants were fitted to.
    """
    fitted = fitted_interface(len(BANDS_NM))
    diffuse, directed = [], []
    for wall in walls():
        found = layered_transport(
            [
                TransportLayer(
                    absorption_per_mm=mua,
                    reduced_scattering_per_mm=musp,
                    thickness_mm=mm,
                    refractive_index=CERAMIC_INDEX,
                )
                for mua, musp, mm in wall.layers
            ],
            LambertianBacking(
                reflectance=wall.stump, refractive_index=CEMENT_INDEX if wall.coupled else 1.0
            ),
        )
        diffuse.append(found.reflectance)
        directed.append(found.radiance_factor_45_0)
    turned = np.array(diffuse) * fitted.radiance_factor / fitted.hemispherical_factor
    return reflectance_to_lab(turned), reflectance_to_lab(np.array(directed))


def median_and_tail(differences: np.ndarray) -> tuple[float, float]:
    return float(np.median(differences)), float(np.percentile(differences, 95))


def test_states_cover_what_is_claimed() -> None:
    scattering = np.array([wall.layers[0][1] for wall in walls()])
    thickness = np.array([wall.thickness_mm for wall in walls()])
    assert scattering.min() >= LEAST_SCATTERING - 1e-9
    assert scattering.max() <= MOST_SCATTERING + 1e-9
    assert scattering.min() < 4.3
    assert scattering.max() > 25.0
    assert thickness.min() < 0.35
    assert thickness.max() > 1.95


def test_fitted_engine(record_property) -> None:
    """Asked for: median 0.25 and 95th percentile 0.8; found: 0.19 and 0.44, at most 1.5."""
    median, tail = median_and_tail(
        delta_e_00(two_flux_lab(fitted_interface(len(BANDS_NM))), transport_labs()[0])
    )
    record_property("de00_median", median)
    record_property("de00_p95", tail)
    assert median <= 0.25
    assert tail <= 0.8


def test_fitted_engine_in_the_geometry_of_measurement(record_property) -> None:
    """Transport that follows the 45 degree beam itself instead of diffuse light: 0.30 and 0.67.

    The light within is not quite even in direction, so that 45/0 is up to 1.4 % lower than a
    constant factor makes it, least in light ceramic. It is known, small, and not fitted away: a
    block's colour is measured at 45/0, which takes up the most of it.
    """
    median, tail = median_and_tail(
        delta_e_00(two_flux_lab(fitted_interface(len(BANDS_NM))), transport_labs()[1])
    )
    record_property("de00_median", median)
    record_property("de00_p95", tail)
    assert median <= 0.35
    assert tail <= 0.8


@pytest.mark.parametrize("least", [LEAST_SCATTERING, 8.6, 12.0])
def test_fitted_engine_where_scattering_is_extrapolated(least: float) -> None:
    """The same bounds among the walls that scatter more at 550 nm than what was fitted to."""
    at_550 = np.array([wall.layers[0][1][15] for wall in walls()])
    chosen = at_550 >= least
    assert chosen.sum() > 80
    off = delta_e_00(two_flux_lab(fitted_interface(len(BANDS_NM))), transport_labs()[0])[chosen]
    median, tail = median_and_tail(off)
    assert median <= 0.25
    assert tail <= 0.8


def test_textbook_surfaces_are_three_times_further_off() -> None:
    fitted = delta_e_00(two_flux_lab(fitted_interface(len(BANDS_NM))), transport_labs()[0])
    book = delta_e_00(two_flux_lab(textbook_interface(BANDS_NM)), transport_labs()[0])
    assert np.median(book) > 3.0 * np.median(fitted)
