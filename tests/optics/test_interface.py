"""Surfaces: Fresnel integrals, the Saunderson correction, refractive index."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.optics.interface import (
    backing_reflectance,
    diffuse_fresnel,
    fitted_interface,
    fresnel_reflectance,
    reflectance_outside,
    saunderson,
    saunderson_inverse,
    textbook_interface,
    zirconia_index,
)
from stainmap.optics.spectrum import BANDS_NM


@pytest.mark.parametrize(
    ("n", "k1", "k2"), [(1.5, 0.0918, 0.5963), (2.15, 0.1797, 0.8225), (2.2, 0.1860, 0.8318)]
)
def test_diffuse_fresnel(n: float, k1: float, k2: float) -> None:
    """Values from an independent quadrature, to their four digits."""
    assert diffuse_fresnel(1.0, n) == pytest.approx(k1, abs=6e-5)
    assert diffuse_fresnel(n, 1.0) == pytest.approx(k2, abs=6e-5)


@pytest.mark.parametrize("n", [1.33, 1.5, 2.15, 2.4])
def test_diffuse_fresnel_closed_form(n: float) -> None:
    """The integral in closed form [Duntley1942] (from memory; it fits the quadrature)."""
    s = n * n
    closed = (
        0.5
        + (n - 1.0) * (3.0 * n + 1.0) / (6.0 * (n + 1.0) ** 2)
        + s * (s - 1.0) ** 2 / (s + 1.0) ** 3 * np.log((n - 1.0) / (n + 1.0))
        - 2.0 * n**3 * (s + 2.0 * n - 1.0) / ((s + 1.0) * (s * s - 1.0))
        + 8.0 * s * s * (s * s + 1.0) / ((s + 1.0) * (s * s - 1.0) ** 2) * np.log(n)
    )
    assert diffuse_fresnel(1.0, n) == pytest.approx(closed, abs=1e-7)


@given(n=st.floats(1.01, 3.0))
def test_identity_between_both_sides(n: float) -> None:
    """1 - k2 = (1 - k1) / n^2: what can get in can get out."""
    assert 1.0 - diffuse_fresnel(n, 1.0) == pytest.approx(
        (1.0 - diffuse_fresnel(1.0, n)) / n**2, abs=1e-6
    )


def test_fresnel_at_named_angles() -> None:
    assert fresnel_reflectance(1.0, 2.2, 1.0) == pytest.approx(0.1406, abs=6e-5)
    assert fresnel_reflectance(1.0, 1.5, 0.0) == pytest.approx(1.0)
    assert fresnel_reflectance(2.15, 1.0, 0.5) == 1.0
    # At Brewster's angle one polarisation vanishes; the other reflects ((n^2-1)/(n^2+1))^2.
    n = 1.5
    assert fresnel_reflectance(1.0, n, 1.0 / np.hypot(1.0, n)) == pytest.approx(
        0.5 * ((n * n - 1.0) / (n * n + 1.0)) ** 2
    )


def test_saunderson_numbers() -> None:
    R = np.array([0.2, 0.5, 0.8, 1.0])
    expected = [0.127273, 0.314286, 0.630769, 1.0]
    np.testing.assert_allclose(saunderson(R, external=0.04, internal=0.6), expected, atol=6e-7)
    assert saunderson(0.0, external=0.04, internal=0.6) == pytest.approx(0.04)


@given(R=st.floats(0.0, 1.0), k1=st.floats(0.0, 0.3), k2=st.floats(0.0, 0.9))
def test_saunderson_round_trip(R: float, k1: float, k2: float) -> None:
    measured = saunderson(R, external=k1, internal=k2)
    assert saunderson_inverse(measured, external=k1, internal=k2) == pytest.approx(R, abs=1e-9)
    assert saunderson(1.0, external=k1, internal=k2) == pytest.approx(1.0)


def test_outside_is_saunderson_without_gloss() -> None:
    """With Lambertian factors, what leaves plus what never entered is Saunderson's formula."""
    book = textbook_interface(BANDS_NM)
    R = np.linspace(0.1, 0.95, len(BANDS_NM))
    outside = reflectance_outside(
        R, factor=book.hemispherical_factor, front_internal=book.front_internal
    )
    whole = saunderson(R, external=book.outside_air, internal=book.front_internal)
    np.testing.assert_allclose(outside + book.outside_air, whole, atol=1e-12)


def test_backing_limits() -> None:
    assert backing_reflectance(0.0, inside=0.35, outside=0.08) == pytest.approx(0.35)
    assert backing_reflectance(1.0, inside=0.35, outside=0.08) == pytest.approx(1.0)
    # Two sums to infinity: light goes to and fro between stump and back surface.
    Rs, rb, ro = 0.6, 0.35, 0.08
    series = rb + (1.0 - rb) * Rs * (1.0 - ro) * sum((Rs * ro) ** k for k in range(60))
    assert backing_reflectance(Rs, inside=rb, outside=ro) == pytest.approx(series)


@pytest.mark.parametrize(
    ("wavelength_nm", "n"),
    [(400, 2.2229), (450, 2.1966), (500, 2.1788), (550, 2.1661), (589.3, 2.1585), (700, 2.1437)],
)
def test_zirconia_index(wavelength_nm: float, n: float) -> None:
    """Values of the published formula [WoodNassau1982], worked out elsewhere."""
    assert zirconia_index(wavelength_nm) == pytest.approx(n, abs=6e-5)


def test_abbe_number() -> None:
    """33.5, from the lines d 587.56, F 486.13, C 656.27 nm."""
    d, f, c = (float(zirconia_index(line)) for line in (587.56, 486.13, 656.27))
    assert (d - 1.0) / (f - c) == pytest.approx(33.5, abs=0.1)


def test_fitted_constants() -> None:
    """The factor of the design, 0.2259 at 45/0, and the same constants in every band."""
    fitted = fitted_interface(31)
    assert fitted.radiance_factor.shape == (31,)
    assert fitted.radiance_factor[0] == pytest.approx(0.2259, abs=5e-5)
    assert fitted.outside_coupled[0] == pytest.approx(0.079, abs=5e-4)
    assert fitted.outside_air[0] == pytest.approx(0.180, abs=5e-4)
    assert len(set(fitted.front_internal)) == 1
    with pytest.raises(ValueError, match="read-only"):
        fitted.front_internal[0] = 0.5
