"""Colours under every light, against colour-science and against predicting anew."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import colour
import numpy as np
import pytest

from stainmap.optics.colorimetry import LIGHTS, reflectance_to_lab, white_point, xyz_weights
from stainmap.optics.difference import delta_e_00
from stainmap.optics.spectrum import BANDS_NM
from stainmap.predict.lights import (
    OBSERVERS,
    SHOWN_LIGHTS,
    UnderLights,
    spectrum_from_nodes,
    under_lights,
)
from stainmap.predict.reference import load_of_coats, reflectance_of_load
from stainmap.predict.scene import OpticalScene, screen_quadrature
from tests.predict.scenes import DENTINE, materials, scene_of

CMFS = {2: "CIE 1931 2 Degree Standard Observer", 10: "CIE 1964 10 Degree Standard Observer"}
STEPS = ("barley", "umber", "slate", "heather")
PAIRS = [(light, observer) for light in LIGHTS for observer in OBSERVERS]


def radiance(scene: OpticalScene, coats: np.ndarray, wall_mm: np.ndarray) -> np.ndarray:
    """Return the 45/0 radiance factor of plates, (V, B)."""
    R = reflectance_of_load(scene, load_of_coats(scene, coats), wall_mm)
    return np.asarray(R * scene.radiance_factor / scene.hemispherical_factor)


def stained_walls(scene: OpticalScene, count: int = 60) -> np.ndarray:
    rng = np.random.default_rng(8)
    coats = rng.integers(0, 4, (len(STEPS), count)) * (rng.random((len(STEPS), count)) < 0.5)
    return radiance(scene, coats.astype(float), rng.uniform(0.5, 2.0, count))


# ---- weights


@pytest.mark.filterwarnings("ignore::colour.utilities.ColourRuntimeWarning")  # of ranges
@pytest.mark.parametrize(("light", "observer"), PAIRS)
def test_weights_against_the_library_band_by_band(light: str, observer: int) -> None:
    """Integration at 1 nm of a spline, by the library's own interpolation and sum of ASTM E308.

    Per band, so that nothing hides in a mean: a spectrum that is 0.5 with a bump of 0.1 at one
    band, which no smooth ceramic is. The library's Sprague spline swings a little differently.
    """
    cmfs, lamp = colour.MSDS_CMFS[CMFS[observer]], colour.SDS_ILLUMINANTS[light]
    weights = xyz_weights(light, observer)
    for band in range(2, 29, 3):
        reflectance = 0.5 + 0.1 * np.exp(-(((BANDS_NM - BANDS_NM[band]) / 30.0) ** 2))
        spectrum = colour.SpectralDistribution(dict(zip(BANDS_NM, reflectance, strict=True)))
        expected = colour.sd_to_XYZ(spectrum, cmfs, lamp, method="Integration") / 100.0
        np.testing.assert_allclose(reflectance @ weights, expected, atol=3e-4)


@pytest.mark.parametrize(("light", "observer"), PAIRS)
def test_white_points_against_the_library(light: str, observer: int) -> None:
    """Chromaticities tabulated with the lights [CIE2018], given to four digits.

    Those of the lamps are sums over 5 nm, ours are integrated at 1 nm; hence 3e-4.
    """
    x, y = colour.CCS_ILLUMINANTS[CMFS[observer]][light]
    white = white_point(light, observer)
    np.testing.assert_allclose(white[:2] / white.sum(), (x, y), atol=3e-4)


# ---- colours


@pytest.mark.filterwarnings("ignore::colour.utilities.ColourRuntimeWarning")  # of ranges
def test_a_stained_wall_under_every_light_against_the_library() -> None:
    scene = scene_of(STEPS)
    wall = radiance(scene, np.array([[3.0], [2.0], [0.0], [0.0]]), np.array([0.9]))[0]
    found = under_lights(wall, DENTINE.stump)
    assert len(found.colours) == len(SHOWN_LIGHTS) * len(OBSERVERS)
    spectrum = colour.SpectralDistribution(dict(zip(BANDS_NM, wall, strict=True)))
    for light in SHOWN_LIGHTS:
        for observer in OBSERVERS:
            cmfs, lamp = colour.MSDS_CMFS[CMFS[observer]], colour.SDS_ILLUMINANTS[light]
            xyz = colour.sd_to_XYZ(spectrum, cmfs, lamp) / 100.0
            expected = colour.XYZ_to_Lab(xyz, colour.XYZ_to_xy(white_point(light, observer)))
            ours = found.colour(light, observer)
            assert ours.lab == pytest.approx(tuple(expected), abs=0.06)
            assert ours.measurement.backing == DENTINE.stump
    with pytest.raises(KeyError):
        found.colour("D93")


def test_the_largest_change_against_the_library() -> None:
    """Corresponding colours under D65 by the library's own adaptation, its own CIEDE2000."""
    wall = stained_walls(scene_of(STEPS))[3]
    found = under_lights(wall, DENTINE.stump)
    for observer, change in zip(OBSERVERS, found.largest_change, strict=True):
        eye = white_point("D65", observer)
        adapted = {}
        for light in SHOWN_LIGHTS:
            white = white_point(light, observer)
            xyz = colour.adaptation.chromatic_adaptation_VonKries(
                wall @ xyz_weights(light, observer), white, eye, transform="Bradford"
            )
            adapted[light] = colour.XYZ_to_Lab(xyz, colour.XYZ_to_xy(eye))
        differences = {
            pair: float(colour.delta_E(adapted[pair[0]], adapted[pair[1]], method="CIE 2000"))
            for pair in combinations(SHOWN_LIGHTS, 2)
        }
        largest = max(differences, key=lambda pair: differences[pair])
        assert (change.light, change.other_light) == largest
        assert change.de00 == pytest.approx(differences[largest], abs=2e-3)
        assert change.observer_degrees == observer


def test_grey_keeps_its_colour_under_every_light() -> None:
    found = under_lights(np.full(31, 0.4), "a plate")
    assert max(change.de00 for change in found.largest_change) < 1e-6
    for light in SHOWN_LIGHTS:
        red, green, blue = found.on_screen(light)
        assert max(red, green, blue) - min(red, green, blue) < 1e-4


def test_warm_light_makes_warm_ceramic_lighter_and_redder() -> None:
    """As a spectrum that rises towards red must; CIELAB, each in its own light.

    The size is that of a published mean over 16 shade tabs, 2.2 dEab from D65 to A (an abstract
    on the influence of illuminants on shade guides); these are other materials, hence a factor
    of two and a half.
    """
    walls = stained_walls(scene_of(STEPS))
    day, lamp = reflectance_to_lab(walls, "D65"), reflectance_to_lab(walls, "A")
    assert ((lamp - day)[:, 0] > 0.0).all()
    assert ((lamp - day)[:, 1] > 0.0).all()
    assert 0.9 < np.sqrt(((lamp - day) ** 2).sum(1)).mean() < 5.5


# ---- from the bands of the screen


@pytest.mark.parametrize("block", ["white 3Y", "medium 3Y", "deep 5Y"])
def test_twelve_bands_tell_the_colour_under_every_light(block: str) -> None:
    """On walls that were not fitted, against all 31 bands; 0.1 dE00 is the bar of the screen."""
    full = scene_of(STEPS, block)
    nodes = screen_quadrature(materials(), block, "slow", "D65", 2).indices
    matrix = spectrum_from_nodes(full, full.wavelengths_nm[nodes])
    truth = stained_walls(full)
    again = truth[:, nodes] @ matrix
    for light in SHOWN_LIGHTS:
        for observer in OBSERVERS:
            off = delta_e_00(
                reflectance_to_lab(again, light, observer),
                reflectance_to_lab(truth, light, observer),
            )
            assert off.max() < 0.1, (light, observer)
    changes = [
        [change.de00 for change in under_lights(wall, "").largest_change]
        for walls in (again, truth)
        for wall in walls[:10]
    ]
    assert np.abs(np.array(changes[:10]) - changes[10:]).max() < 0.1


def test_all_bands_need_no_regression() -> None:
    full = scene_of(STEPS)
    np.testing.assert_array_equal(spectrum_from_nodes(full, full.wavelengths_nm), np.eye(31))


def test_colours_are_values() -> None:
    found = under_lights(np.full(31, 0.4), "a plate")
    assert isinstance(found, UnderLights)
    assert replace(found) == found
