"""Measured spectra: what is read, how it is resampled, and every refusal with its sentence."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.errors import StainmapError
from stainmap.optics.colorimetry import reflectance_to_lab
from stainmap.optics.difference import delta_e_00
from stainmap.optics.measured_spectrum import (
    MeasuredSpectrum,
    SpectrumError,
    SpectrumKind,
    read_spectrum,
    spectrum_from_text,
)
from stainmap.optics.spectrum import BANDS_NM, sigmoid_reflectance

GRID = np.arange(380.0, 731.0, 10.0)


def tooth(wavelengths: np.ndarray) -> np.ndarray:
    return sigmoid_reflectance(wavelengths, 0.2, 0.38, 520.0, 52.0)


def measured(grid: object = GRID, values: object = None, **more: object) -> MeasuredSpectrum:
    grid = np.asarray(grid, dtype=float)
    values = tooth(grid) if values is None else values
    return MeasuredSpectrum(wavelengths_nm=grid, values=values, name="plate 3", **more)


def test_samples_on_bands_are_kept() -> None:
    np.testing.assert_allclose(measured().on_bands(), tooth(BANDS_NM), atol=1e-15)


@pytest.mark.parametrize("step", [1.0, 3.0, 5.0, 7.0, 15.0, 20.0])
def test_resampling_any_grid_gives_the_same_colour(step: float) -> None:
    """A smooth spectrum known in closed form, to well below what anybody sees."""
    values = measured(np.arange(380.0, 741.0, step)).on_bands()
    difference = delta_e_00(reflectance_to_lab(values), reflectance_to_lab(tooth(BANDS_NM)))
    assert difference < 0.05


@given(values=st.lists(st.floats(0.0, 1.0), min_size=len(GRID), max_size=len(GRID)))
def test_resampling_never_leaves_the_range(values: list[float]) -> None:
    bands = measured(GRID + 3.0 - 10.0, values).on_bands()
    assert bands.min() >= min(values) - 1e-12
    assert bands.max() <= max(values) + 1e-12


def test_values_cannot_be_changed_afterwards() -> None:
    own = tooth(GRID)
    spectrum = measured(values=own)
    own[:] = 0.0
    assert spectrum.values[0] > 0.1
    with pytest.raises(ValueError, match="read-only"):
        spectrum.values[0] = 0.5


def with_value(place: int, value: float) -> np.ndarray:
    values = tooth(GRID)
    values[place] = value
    return values


REFUSED = {
    "gap": (np.delete(GRID, [10, 11]), None, "gap between 470 and 500 nm", "at most 20 nm"),
    "negative": (GRID, with_value(5, -0.02), "reflectance at 430 nm is -0.02", "0 to 1"),
    "above one": (GRID, with_value(7, 1.04), "reflectance at 450 nm is 1.04", "0 to 1"),
    "not a number": (GRID, with_value(3, np.nan), "reflectance at 410 nm is nan", "0 to 1"),
    "percent": (GRID, 100.0 * tooth(GRID), "looks like percent", "0 to 1"),
    "micrometres": (GRID / 1000.0, None, "0.38 to 0.73, which looks like micrometres", "in nm"),
    "unsorted": (GRID[::-1], None, "is 720 nm and follows 730 nm", "rising"),
    "twice": (np.insert(GRID, 4, GRID[4]), None, "is 420 nm and follows 420 nm", "each once"),
    "starts late": (GRID[3:], None, "runs from 410 to 730 nm", "400 to 700 nm or more"),
    "ends early": (GRID[:-4], None, "runs from 380 to 690 nm", "400 to 700 nm or more"),
    "one sample": ([550.0], None, "runs from 550 to 550 nm", "400 to 700 nm or more"),
    "bad wavelength": (np.where(GRID == 500, np.inf, GRID), tooth(GRID), "13 is inf", "in nm"),
    "lengths": (GRID, tooth(GRID)[:-1], "36 wavelengths and 35 values", "one value per"),
    "nothing": ([], [], "shape (0,)", "equal length"),
}


@pytest.mark.parametrize("kind", REFUSED)
def test_refusals_name_value_place_and_what_is_expected(kind: str) -> None:
    grid, values, said, expected = REFUSED[kind]
    with pytest.raises(SpectrumError) as caught:
        measured(grid, values)
    error = caught.value
    assert isinstance(error, StainmapError)
    assert said in error.message
    assert error.message.endswith(".")
    assert expected in (error.advice or "")
    assert error.where == "plate 3"


def test_coefficients_have_no_upper_limit_of_one() -> None:
    spectrum = measured(values=20.0 * tooth(GRID), kind=SpectrumKind.SCATTERING_PER_MM)
    assert spectrum.on_bands().max() > 1.0
    with pytest.raises(SpectrumError, match=r"absorption in 1/mm at 380 nm is 1e\+06"):
        measured(values=np.full(len(GRID), 1e6), kind=SpectrumKind.ABSORPTION_PER_MM)


@pytest.mark.parametrize(
    ("part", "heading", "comma"),
    [
        (",", "wavelength_nm,reflectance", False),
        (";", "nm;R", True),
        ("\t", "", True),
        ("  ", "# plate 3, invented\n", False),
    ],
)
def test_reading_two_columns(part: str, heading: str, comma: bool, tmp_path: Path) -> None:
    lines = [f"{w:.1f}{part}{v:.6f}" for w, v in zip(GRID, tooth(GRID), strict=True)]
    text = "\n".join([heading, *((x.replace(".", ",") if comma else x) for x in lines), ""])
    path = tmp_path / "plate.csv"
    path.write_text(text, encoding="utf-8-sig")
    spectrum = read_spectrum(path)
    np.testing.assert_allclose(spectrum.on_bands(), tooth(BANDS_NM), atol=1e-6)
    assert spectrum.name == "plate.csv"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "no numbers"),
        ("nm,R\n", "no numbers"),
        ("nm,R\n400,0.2\n410,n/a\n", "Line 3 is '410,n/a'"),
        ("400,0.2\n410\n", "Line 2 is '410'"),
        ("400,0.2,0.3\n", "Line 1 is '400,0.2,0.3'"),
        ("nm,R\nmore,words\n", "Line 2 is 'more,words'"),
        ("400,0.2\n" * 10_002, "more than 10000 samples"),
        ("x" * 100 + "1\n" * 2, "no numbers"),
    ],
)
def test_bad_texts_are_refused(text: str, said: str) -> None:
    if text.startswith("x"):
        text = "7 " + text
        said = "Line 1 is '7 xxx"
    with pytest.raises(SpectrumError) as caught:
        spectrum_from_text(text, name="bad.csv")
    assert said in caught.value.message
    assert caught.value.where == "bad.csv"
    assert caught.value.advice


def test_files_that_cannot_be_read(tmp_path: Path) -> None:
    with pytest.raises(SpectrumError, match="cannot be read"):
        read_spectrum(tmp_path / "missing.csv")
    (tmp_path / "binary.csv").write_bytes(b"\xff\xfe\x00\x81" * 40)
    with pytest.raises(SpectrumError, match="not a text file"):
        read_spectrum(tmp_path / "binary.csv")
