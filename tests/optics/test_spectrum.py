"""Bands, and absorption lines on them."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.optics.colorimetry import compute_xyz_weights, reflectance_to_lab, xyz_to_lab
from stainmap.optics.difference import delta_e_00
from stainmap.optics.slab import km_layer_over
from stainmap.optics.spectrum import (
    BANDS_NM,
    decaying_absorption,
    gaussian_band,
    power_law_scattering,
    sigmoid_reflectance,
)


def test_bands() -> None:
    assert len(BANDS_NM) == 31
    assert (BANDS_NM[0], BANDS_NM[-1]) == (400.0, 700.0)
    with pytest.raises(ValueError, match="read-only"):
        BANDS_NM[0] = 0.0


@given(centre=st.floats(480.0, 620.0), width=st.floats(1.0, 18.0))
def test_lines_keep_their_area_wherever_they_fall(centre: float, width: float) -> None:
    """Sum of samples times 10 nm against the integral, sqrt(2 pi) width: within 1.5 %."""
    area = 10.0 * gaussian_band(BANDS_NM, centre, width).sum()
    assert area == pytest.approx(np.sqrt(2.0 * np.pi) * width, rel=0.015)


def test_wide_bands_are_sampled_as_they_stand() -> None:
    expected = np.exp(-0.5 * ((BANDS_NM - 522.0) / 6.0) ** 2)
    np.testing.assert_array_equal(gaussian_band(BANDS_NM, 522.0, 6.0), expected)


def test_a_band_without_width_is_refused() -> None:
    with pytest.raises(ValueError, match="width"):
        gaussian_band(BANDS_NM, 522.0, 0.0)


@pytest.mark.parametrize("width_nm", [3.0, 5.0, 6.0, 9.0])
@pytest.mark.parametrize("offset_nm", [0.0, 2.5, 5.0, 7.5])
def test_colour_of_narrow_lines_against_1_nm(width_nm: float, offset_nm: float) -> None:
    """A stained layer with one strong line, on 31 bands and at 1 nm, 400 to 700 nm.

    The line is as strong as erbium at full load. One of 3 nm is saturated at its centre, which a
    wider one of the same area is not; it is still told to a fifth of a just visible difference.
    """
    fine = np.arange(400.0, 701.0)
    hats = np.clip(1.0 - np.abs(np.arange(360.0, 781.0)[:, None] - fine) / 1.0, 0.0, 1.0)
    hats[:40, 0] = 1.0
    hats[-80:, -1] = 1.0
    weights = _fine_weights(hats)

    def reflectance(wavelengths: np.ndarray, line: np.ndarray) -> np.ndarray:
        K = 2.75 * (decaying_absorption(wavelengths, 0.36, 63.0, 0.003) + 0.1 * line)
        return 0.225 * (R := km_layer_over(K, 6.0, 0.8, 0.7)) / (1.0 - 0.75 * R)

    centre = 580.0 + offset_nm
    exact_line = np.exp(-0.5 * ((fine - centre) / width_nm) ** 2)
    exact = xyz_to_lab(reflectance(fine, exact_line) @ weights, weights.sum(0))
    coarse = reflectance_to_lab(reflectance(BANDS_NM, gaussian_band(BANDS_NM, centre, width_nm)))
    bare = reflectance_to_lab(reflectance(BANDS_NM, np.zeros(31)))
    assert delta_e_00(coarse, exact) < (0.05 if width_nm >= 5.0 else 0.2)
    assert delta_e_00(coarse, bare) > 0.2


def _fine_weights(hats: np.ndarray) -> np.ndarray:
    import colour

    shape = colour.SpectralShape(360, 780, 1)
    cmfs = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(shape).values
    power = colour.SDS_ILLUMINANTS["D65"].copy().align(shape).values
    product = cmfs * power[:, None]
    return hats.T @ (product / product[:, 1].sum())


def test_closed_forms() -> None:
    assert decaying_absorption(400.0, 0.3, 60.0, 0.01) == pytest.approx(0.31)
    assert decaying_absorption(460.0, 0.3, 60.0, 0.01) == pytest.approx(0.3 / np.e + 0.01)
    assert power_law_scattering(550.0, 12.0, 1.3) == pytest.approx(12.0)
    assert power_law_scattering(400.0, 12.0, 1.3) == pytest.approx(18.15, abs=0.01)
    assert sigmoid_reflectance(520.0, 0.2, 0.4, 520.0, 50.0) == pytest.approx(0.4)


def test_weights_of_the_fine_grid_agree_with_the_shipped_ones() -> None:
    """Guards the 1 nm comparison above: a smooth spectrum gives the same colour on both grids."""
    fine = np.arange(400.0, 701.0)
    hats = np.clip(1.0 - np.abs(np.arange(360.0, 781.0)[:, None] - fine), 0.0, 1.0)
    hats[:40, 0] = 1.0
    hats[-80:, -1] = 1.0
    weights = _fine_weights(hats)
    smooth = sigmoid_reflectance(fine, 0.2, 0.4, 520.0, 50.0)
    exact = xyz_to_lab(smooth @ weights, weights.sum(0))
    assert delta_e_00(reflectance_to_lab(smooth[::10]), exact) < 0.002
    np.testing.assert_allclose(weights.sum(0), compute_xyz_weights("D65", 2).sum(0), atol=1e-12)
