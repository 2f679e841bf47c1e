"""Colours of figures, held to what they must tell and to closed forms."""

from __future__ import annotations

import colour
import numpy as np
import pytest

from stainmap.model.colour import IN_PLACE, Colour, Measurement
from stainmap.model.zone import Accent, Zone
from stainmap.planning.look_colours import (
    NEUTRAL,
    OFFSET_SCALE,
    VALUE_SCALE,
    offset_de00,
    wall_scale,
    wanted_lab,
)
from stainmap.predict.uncertainty import ACCEPTABLE_DE00, PERCEPTIBLE_DE00


def lightness_of(srgb: np.ndarray) -> np.ndarray:
    """Return L* by the colour-science library, not by our own conversion."""
    xyz = colour.sRGB_to_XYZ(srgb / 255.0)
    return np.asarray(colour.XYZ_to_Lab(xyz)[..., 0])


def wanted(lightness: float, b: float = 18.0) -> Colour:
    return Colour(lightness=lightness, a=1.0, b=b, measurement=Measurement(backing=IN_PLACE))


def test_value_is_grey_and_even_in_lightness() -> None:
    srgb = VALUE_SCALE.srgb(np.linspace(55.0, 85.0, 31))
    assert (np.ptp(srgb.astype(int), axis=1) <= 1).all()
    steps = np.diff(lightness_of(srgb))
    assert steps.mean() == pytest.approx(92.0 / 30.0, abs=0.02)
    assert np.ptp(steps) < 1.0
    assert np.array_equal(VALUE_SCALE.srgb(np.array([40.0, 99.0])), srgb[[0, -1]])


def test_offset_gets_darker_all_the_way_and_fastest_at_the_thresholds() -> None:
    figures = np.linspace(0.0, 6.0, 601)
    slope = -np.gradient(lightness_of(OFFSET_SCALE.srgb(figures)), figures)
    smooth = np.convolve(slope, np.ones(15) / 15.0, mode="same")[10:-10]
    assert (smooth > 0).all()
    steepest = smooth[np.abs(figures[10:-10] - PERCEPTIBLE_DE00) < 0.05].min()
    assert steepest > 2.0 * smooth[figures[10:-10] < PERCEPTIBLE_DE00 - 0.2].max()
    at_second = smooth[np.abs(figures[10:-10] - ACCEPTABLE_DE00) < 0.05].min()
    assert at_second > 2.0 * smooth[figures[10:-10] > ACCEPTABLE_DE00 + 0.2].max()


@pytest.mark.parametrize("minimum", [0.4, 0.5, 0.8])
def test_walls_part_at_the_minimum_for_colour_blind_eyes_too(minimum: float) -> None:
    """Orange below, blue from the minimum on: the blue-yellow axis is what most keep."""
    scale = wall_scale(minimum)
    below = scale.srgb(np.linspace(0.1, minimum - 0.02, 20)).astype(int)
    above = scale.srgb(np.linspace(minimum, minimum + 2.0, 20)).astype(int)
    assert (below[:, 0] > below[:, 2] + 40).all()
    assert (above[:, 2] >= above[:, 0]).all()
    matrix = colour.blindness.matrix_cvd_Machado2009("Deuteranomaly", 1.0)
    linear = colour.cctf_decoding(np.array([below[-1], above[0]]) / 255.0)
    seen = colour.XYZ_to_Lab(
        colour.RGB_to_XYZ(np.clip(linear @ matrix.T, 0, 1), "sRGB", apply_cctf_decoding=False)
    )
    assert colour.delta_E(seen[0], seen[1]) > 15.0


def test_what_has_no_figure_is_neutral() -> None:
    assert tuple(OFFSET_SCALE.srgb(np.array([np.nan]))[0]) == NEUTRAL


def test_wanted_feathers_as_shares_do_and_accents_lie_on_top() -> None:
    shares = np.zeros((7, 5), np.float32)
    shares[Zone.BODY] = [1.0, 0.75, 0.25, 0.0, 0.0]
    shares[Zone.CUSP] = [0.0, 0.25, 0.75, 0.0, 0.4]
    shares[Zone.INNER, 3:] = [1.0, 0.6]
    band = np.array([0.0, 0.0, 0.0, 0.0, 1.0], np.float32)
    colours = [(Zone.BODY, wanted(74.0)), (Zone.CUSP, wanted(70.0))]
    masks = [(Accent.MARGIN_BAND, band)]
    lab = wanted_lab(colours, shares, masks)
    assert lab[:3, 0] == pytest.approx([74.0, 73.0, 71.0])
    # Nothing is wanted inside, nor where that has most of the share; an accent alone is no wish.
    assert np.isnan(lab[3:]).all()
    with_own = wanted_lab([*colours, (Accent.MARGIN_BAND, wanted(60.0))], shares, masks)
    assert with_own[4, 0] == pytest.approx(60.0)
    assert np.array_equal(with_own[:3], lab[:3])


def test_offset_is_ciede2000() -> None:
    rng = np.random.default_rng(5)
    lab = (rng.random((40, 3)) * (30, 8, 20) + (60, -2, 8)).astype(np.float32)
    other = lab[::-1].copy()
    other[3] = np.nan
    found = offset_de00(lab, other)
    assert np.isnan(found[3])
    known = np.arange(40) != 3
    reference = colour.delta_E(lab[known], other[known], method="CIE 2000")
    assert found[known] == pytest.approx(reference, abs=1e-3)
