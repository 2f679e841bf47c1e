"""Translucency, contrast and whiteness: closed forms, a colour library, their limits."""

from __future__ import annotations

import numpy as np
import pytest

from stainmap.optics.colorimetry import reflectance_to_lab, reflectance_to_xyz
from stainmap.optics.slab import km_layer_over
from stainmap.optics.translucency import (
    ACCEPTABLE_WHITENESS,
    PERCEPTIBLE_WHITENESS,
    contrast_ratio,
    translucency_parameter,
    translucency_parameter_00,
    whiteness_index,
)


def plates(X: np.ndarray, K: float = 0.05) -> tuple[np.ndarray, np.ndarray]:
    """Return reflectances of plates on white and on black, (X, 31)."""
    shape = np.ones(31)
    return (
        km_layer_over(K * shape, 4.0, X[:, None], 0.9),
        km_layer_over(K * shape, 4.0, X[:, None], 0.0),
    )


def test_against_closed_forms_and_a_library() -> None:
    import colour

    rng = np.random.default_rng(2)
    white = rng.uniform([60.0, -3.0, 0.0], [90.0, 6.0, 30.0], (50, 3))
    black = white - rng.uniform([0.0, -1.0, 0.0], [20.0, 3.0, 8.0], (50, 3))
    np.testing.assert_allclose(
        translucency_parameter(white, black), np.linalg.norm(white - black, axis=1), atol=1e-12
    )
    np.testing.assert_allclose(
        translucency_parameter_00(white, black),
        colour.delta_E(white, black, method="CIE 2000"),
        atol=1e-9,
    )


def test_opaque_plates_have_none() -> None:
    white, black = plates(np.array([80.0]), K=1.0)
    assert translucency_parameter(reflectance_to_lab(white), reflectance_to_lab(black))[
        0
    ] == pytest.approx(0.0, abs=1e-6)
    ratio = contrast_ratio(reflectance_to_xyz(black)[:, 1], reflectance_to_xyz(white)[:, 1])
    assert ratio[0] == pytest.approx(1.0, abs=1e-9)


def test_no_plate_has_all_of_it() -> None:
    """Without thickness the plate is its tile: CR is the ratio of the tiles, here 0."""
    white, black = plates(np.array([0.0]))
    Y_black, Y_white = (reflectance_to_xyz(plate)[:, 1] for plate in (black, white))
    assert contrast_ratio(Y_black, Y_white)[0] == pytest.approx(0.0, abs=1e-12)
    assert Y_white[0] == pytest.approx(0.9, abs=1e-9)


def test_thicker_is_less_translucent() -> None:
    white, black = plates(np.linspace(0.3, 3.0, 10))
    labs = reflectance_to_lab(white), reflectance_to_lab(black)
    assert (np.diff(translucency_parameter(*labs)) < 0.0).all()
    assert (np.diff(translucency_parameter_00(*labs)) < 0.0).all()
    ratio = contrast_ratio(reflectance_to_xyz(black)[:, 1], reflectance_to_xyz(white)[:, 1])
    assert (np.diff(ratio) > 0.0).all()


def test_contrast_of_a_clear_scatterer() -> None:
    """K = 0 over black and over a perfect white, in closed form: SX/(1 + SX) and 1."""
    S, X = 5.0, 0.8
    ratio = contrast_ratio(km_layer_over(0.0, S, X, 0.0), km_layer_over(0.0, S, X, 1.0))
    assert float(ratio) == pytest.approx(S * X / (1.0 + S * X), abs=1e-12)


def test_whiteness() -> None:
    """0.511 L* - 2.324 a* - 1.100 b*; whiter with L*, less so with a* and b*."""
    assert float(whiteness_index([80.0, 1.0, 15.0])) == pytest.approx(40.88 - 2.324 - 16.5)
    assert float(whiteness_index([100.0, 0.0, 0.0])) == pytest.approx(51.1)
    assert whiteness_index(np.zeros((4, 5, 3))).shape == (4, 5)
    assert PERCEPTIBLE_WHITENESS < ACCEPTABLE_WHITENESS


@pytest.mark.parametrize(
    ("black", "white", "said"),
    [(-0.1, 0.5, "Y over black"), (0.3, 30.0, "Y over white"), (0.0, 0.0, "reflects nothing")],
)
def test_impossible_reflectances_are_refused(black: float, white: float, said: str) -> None:
    with pytest.raises(ValueError, match=said):
        contrast_ratio(black, white)
