"""XYZ, L*a*b* and sRGB against colour-science and named values."""

from __future__ import annotations

import subprocess
import sys

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.optics.colorimetry import (
    LIGHTS,
    compute_xyz_weights,
    decode_srgb,
    encode_srgb,
    lab_to_linear_srgb,
    lab_to_srgb,
    lab_to_xyz,
    reflectance_to_lab,
    reflectance_to_xyz,
    srgb_matrix,
    white_point,
    write_shipped_weights,
    xyz_to_lab,
    xyz_to_linear_srgb,
    xyz_weights,
)
from stainmap.optics.difference import delta_e_00
from stainmap.optics.spectrum import BANDS_NM
from stainmap.paths import resource

OBSERVERS = {2: "CIE 1931 2 Degree Standard Observer", 10: "CIE 1964 10 Degree Standard Observer"}
# Published white points of the perfect diffuser, by the method of ASTM E308.
WHITES = [
    ("D65", 2, (0.95047, 1.0, 1.08883)),
    ("D50", 2, (0.96424, 1.0, 0.82513)),
    ("A", 2, (1.09849, 1.0, 0.35591)),
    ("D65", 10, (0.94811, 1.0, 1.07305)),
]


def tooth_like_reflectances(count: int = 6) -> np.ndarray:
    rng = np.random.default_rng(3)
    floor, rise = rng.uniform(0.1, 0.4, (count, 1)), rng.uniform(0.1, 0.5, (count, 1))
    centre, width = rng.uniform(450.0, 560.0, (count, 1)), rng.uniform(20.0, 70.0, (count, 1))
    return floor + rise / (1.0 + np.exp(-(BANDS_NM - centre) / width))


@pytest.mark.parametrize(("light", "observer", "white"), WHITES)
def test_white_points(light: str, observer: int, white: tuple[float, float, float]) -> None:
    np.testing.assert_allclose(white_point(light, observer), white, atol=1.5e-5)
    assert white_point(light, observer)[1] == pytest.approx(1.0, abs=1e-12)


@pytest.mark.filterwarnings("ignore::colour.utilities.ColourRuntimeWarning")  # of ranges
@pytest.mark.parametrize("light", LIGHTS)
@pytest.mark.parametrize("observer", [2, 10])
def test_tristimulus_values_against_colour_science(light: str, observer: int) -> None:
    """Smooth spectra; the library interpolates by other means, hence 0.005 dE00 and not 0."""
    import colour

    matching = colour.MSDS_CMFS[OBSERVERS[observer]]
    for reflectance in tooth_like_reflectances():
        spectrum = colour.SpectralDistribution(dict(zip(BANDS_NM, reflectance, strict=True)))
        expected = colour.sd_to_XYZ(spectrum, matching, colour.SDS_ILLUMINANTS[light]) / 100.0
        ours = reflectance_to_xyz(reflectance, light, observer)
        white = white_point(light, observer)
        np.testing.assert_allclose(ours, expected, atol=2e-4)
        assert delta_e_00(xyz_to_lab(ours, white), xyz_to_lab(expected, white)) < 0.005


def test_shipped_weights_are_the_computed_ones(tmp_path) -> None:
    np.testing.assert_allclose(xyz_weights(), compute_xyz_weights("D65", 2), atol=1e-12)
    written = write_shipped_weights(tmp_path).read_text(encoding="utf-8")
    shipped = resource("colorimetry", "d65_2_degrees.csv").read_text(encoding="utf-8")
    ours = np.array([line.split(",") for line in written.splitlines()[4:]], dtype=float)
    theirs = np.array([line.split(",") for line in shipped.splitlines()[4:]], dtype=float)
    np.testing.assert_allclose(ours, theirs, rtol=1e-9)


def test_usual_light_does_not_load_colour_science() -> None:
    """Its import takes most of a second; D65 and 2 degrees must do without."""
    script = (
        "import sys, numpy;"
        "from stainmap.optics.colorimetry import reflectance_to_lab;"
        "reflectance_to_lab(numpy.full(31, 0.5));"
        "sys.exit('colour' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", script], check=False).returncode == 0


def test_unknown_light_is_refused() -> None:
    with pytest.raises(ValueError, match="lights are D65"):
        xyz_weights("D93")
    with pytest.raises(ValueError, match="observers 2 and 10"):
        xyz_weights("D65", 4)


@given(share=st.floats(0.001, 1.0), light=st.sampled_from(LIGHTS))
def test_grey_is_grey_under_every_light(share: float, light: str) -> None:
    lightness, a, b = reflectance_to_lab(np.full(31, share), light)
    assert a == pytest.approx(0.0, abs=1e-9)
    assert b == pytest.approx(0.0, abs=1e-9)
    assert lightness <= 100.0 + 1e-9


def test_named_values() -> None:
    np.testing.assert_allclose(reflectance_to_lab(np.ones(31)), [100.0, 0.0, 0.0], atol=1e-9)
    assert reflectance_to_lab(np.full(31, 0.5))[0] == pytest.approx(76.0693, abs=5e-5)


def test_lab_against_colour_science() -> None:
    import colour

    rng = np.random.default_rng(4)
    xyz = rng.uniform(0.0, 1.0, (500, 3)) ** 3
    white = white_point()
    chromaticity = colour.XYZ_to_xy(white)
    ours = xyz_to_lab(xyz, white)
    np.testing.assert_allclose(ours, colour.XYZ_to_Lab(xyz, chromaticity), atol=1e-9)
    np.testing.assert_allclose(
        lab_to_xyz(ours, white), colour.Lab_to_XYZ(ours, chromaticity), atol=1e-9
    )


@given(
    lab=st.tuples(st.floats(0.0, 100.0), st.floats(-100.0, 100.0), st.floats(-100.0, 100.0)),
    light=st.sampled_from(["D65", "A"]),
)
def test_lab_round_trip(lab: tuple[float, float, float], light: str) -> None:
    white = white_point(light)
    xyz = lab_to_xyz(lab, white)
    if (xyz >= 0.0).all():
        np.testing.assert_allclose(xyz_to_lab(xyz, white), lab, atol=1e-9)


def test_srgb_against_colour_science() -> None:
    """The library takes its own rounding of the matrix and another white; half a screen step."""
    import colour

    rng = np.random.default_rng(6)
    lab = rng.uniform([20.0, -10.0, -10.0], [95.0, 20.0, 35.0], (400, 3))
    expected = np.clip(colour.XYZ_to_sRGB(colour.Lab_to_XYZ(lab)), 0.0, 1.0)
    np.testing.assert_allclose(lab_to_srgb(lab), expected, atol=0.5 / 255.0)


def test_adaptation_against_colour_science() -> None:
    import colour

    white = white_point("A")
    xyz = reflectance_to_xyz(tooth_like_reflectances(), "A")
    screen = np.linalg.inv(srgb_matrix(white_point())) @ np.ones(3)
    adapted = colour.adaptation.chromatic_adaptation_VonKries(
        xyz, white, screen, transform="Bradford"
    )
    expected = xyz_to_linear_srgb(adapted, screen)
    np.testing.assert_allclose(xyz_to_linear_srgb(xyz, white), expected, atol=2e-4)


@pytest.mark.parametrize("light", LIGHTS)
def test_perfect_diffuser_is_screen_white(light: str) -> None:
    white = white_point(light)
    np.testing.assert_allclose(xyz_to_linear_srgb(white, white), np.ones(3), atol=1e-12)
    np.testing.assert_allclose(lab_to_linear_srgb([100.0, 0.0, 0.0], white), 1.0, atol=1e-9)


@given(value=st.floats(0.0, 1.0))
def test_encoding_round_trip(value: float) -> None:
    """The standard's two limits do not meet exactly; the gap is far below a screen step."""
    assert decode_srgb(encode_srgb(value)) == pytest.approx(value, abs=2e-7)


def test_encoding_clips_to_the_screen() -> None:
    np.testing.assert_allclose(encode_srgb([-0.2, 0.0, 1.0, 1.4]), [0, 0, 1, 1], atol=1e-15)
    assert encode_srgb(0.18) == pytest.approx(0.4614, abs=1e-4)
