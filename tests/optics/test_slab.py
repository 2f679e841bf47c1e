"""Kubelka-Munk layers against worked numbers, closed forms and invariants."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.optics.slab import (
    km_infinite_reflectance,
    km_layer_over,
    km_ratio,
    km_reflectance_transmittance,
)

# S, K (1/mm), X (mm), R0, T, R infinite: the closed form of [Kubelka1948], worked out elsewhere
# and confirmed by the adding formula.
WORKED = [
    (1.0, 0.1, 1.0, 0.46103362, 0.44528421, 0.64174243),
    (4.0, 0.2, 1.0, 0.70238041, 0.13542296, 0.72984379),
    (10.0, 0.05, 1.0, 0.87998954, 0.07485061, 0.90487508),
    (3.75, 0.1, 0.5, 0.62760553, 0.32435373, 0.79419206),
    (2.0, 0.0, 1.5, 0.75, 0.25, 1.0),
]

# Diffuse reflectance and transmittance of slabs without surfaces (index 1, isotropic): mu_a and
# mu_s' in 1/mm, d in mm, then R, T by iadpython 0.5.3 (quad_pts 16, URU and UTU), and how far
# Kubelka-Munk with K = 2 mu_a, S = 3/4 mu_s' [Gate1974] is from them.
ADDING_DOUBLING = [
    (0.0, 2.0, 0.5, 0.4466, 0.5534, -0.018, +0.018),
    (0.0, 5.0, 1.0, 0.7923, 0.2077, -0.003, +0.003),
    (0.02, 5.0, 1.0, 0.7698, 0.1921, -0.003, +0.003),
    (0.1, 5.0, 0.5, 0.6109, 0.2976, -0.006, +0.005),
    (0.1, 20.0, 1.0, 0.8485, 0.0239, -0.0007, +0.0001),
    (0.5, 5.0, 1.0, 0.4942, 0.0456, -0.006, -0.004),
    (1.0, 5.0, 0.5, 0.3740, 0.1106, -0.007, -0.013),
    (1.0, 2.0, 0.5, 0.2226, 0.2265, -0.007, -0.031),
]

absorption = st.floats(0.0, 5.0)
scattering = st.floats(0.05, 30.0)
thickness = st.floats(0.01, 5.0)
backing = st.floats(0.0, 1.0)


@pytest.mark.parametrize(("S", "K", "X", "R0", "T", "infinite"), WORKED)
def test_worked_numbers(S: float, K: float, X: float, R0: float, T: float, infinite: float) -> None:
    reflectance, transmittance = km_reflectance_transmittance(K, S, X)
    assert reflectance == pytest.approx(R0, abs=6e-9)
    assert transmittance == pytest.approx(T, abs=6e-9)
    assert km_infinite_reflectance(K, S) == pytest.approx(infinite, abs=6e-9)


def test_worked_numbers_over_a_backing() -> None:
    assert km_layer_over(0.1, 1.0, 1.0, 1.0) == pytest.approx(0.82891934, abs=6e-9)
    assert km_layer_over(0.2, 4.0, 1.0, 0.8) == pytest.approx(0.73586968, abs=6e-9)


@pytest.mark.parametrize(("mua", "musp", "d", "R", "T", "off_R", "off_T"), ADDING_DOUBLING)
def test_against_transport_without_surfaces(
    mua: float, musp: float, d: float, R: float, T: float, off_R: float, off_T: float
) -> None:
    reflectance, transmittance = km_reflectance_transmittance(2.0 * mua, 0.75 * musp, d)
    # The known differences are rounded to 0.001 (0.0001 in one row), R and T to 0.0001.
    assert reflectance - R == pytest.approx(off_R, abs=6e-4)
    assert transmittance - T == pytest.approx(off_T, abs=6e-4)
    if musp * d >= 2.5 and mua / musp <= 0.1:
        assert abs(reflectance - R) < 0.008


@pytest.mark.parametrize(
    ("mua", "km", "adding_doubling"),
    [(0.02, 0.8642, 0.8648), (0.1, 0.7224, 0.7246), (0.5, 0.4892, 0.4955)],
)
def test_infinite_layers_against_transport(mua: float, km: float, adding_doubling: float) -> None:
    infinite = km_infinite_reflectance(2.0 * mua, 0.75 * 5.0)
    assert infinite == pytest.approx(km, abs=6e-5)
    assert infinite == pytest.approx(adding_doubling, abs=0.007)


@given(K=absorption, S=scattering, X=thickness)
def test_energy_is_conserved(K: float, S: float, X: float) -> None:
    R, T = km_reflectance_transmittance(K, S, X)
    assert 0.0 <= R <= 1.0
    assert 0.0 <= T <= 1.0
    assert R + T <= 1.0 + 1e-12
    # Absorption that floating point can tell from none takes some of the light away.
    if K > 1e-9:
        assert R + T < 1.0


@given(S=scattering, X=thickness)
def test_without_absorption(S: float, X: float) -> None:
    R, T = km_reflectance_transmittance(0.0, S, X)
    assert pytest.approx(S * X / (1.0 + S * X), rel=1e-12) == R
    assert pytest.approx(1.0 / (1.0 + S * X), rel=1e-12) == T


@given(S=scattering, X=thickness, Rg=backing)
def test_vanishing_absorption_is_continuous(S: float, X: float, Rg: float) -> None:
    without = km_layer_over(0.0, S, X, Rg)
    for K in (1e-18, 1e-15, 1e-12, 1e-10):
        # The change with K is of the order of K times the mean path, at most a few (S X)^2 X.
        assert km_layer_over(K, S, X, Rg) == pytest.approx(
            without, abs=1e-15 + 4.0 * K * X * (1 + S * X)
        )


@given(K=st.floats(0.01, 5.0), S=scattering, Rg=backing)
def test_thick_layers_reach_their_own_reflectance(K: float, S: float, Rg: float) -> None:
    assert km_layer_over(K, S, 1e4, Rg) == pytest.approx(km_infinite_reflectance(K, S), rel=1e-12)


@given(K=absorption, S=scattering, Rg=backing)
def test_no_layer_shows_its_backing(K: float, S: float, Rg: float) -> None:
    assert km_layer_over(K, S, 0.0, Rg) == pytest.approx(Rg, abs=1e-15)
    assert km_layer_over(K, S, 1e-9, Rg) == pytest.approx(Rg, abs=1e-7)
    R, T = km_reflectance_transmittance(K, S, 0.0)
    assert (R, T) == (0.0, 1.0)


@given(K=absorption, S=scattering, X=thickness)
def test_own_reflectance_behind_changes_nothing(K: float, S: float, X: float) -> None:
    infinite = km_infinite_reflectance(K, S)
    assert km_layer_over(K, S, X, infinite) == pytest.approx(infinite, rel=1e-9)


@given(K=absorption, S=scattering, X=thickness, Rg=backing, c=st.floats(0.1, 10.0))
def test_only_ratios_matter(K: float, S: float, X: float, Rg: float, c: float) -> None:
    assert km_layer_over(c * K, c * S, X / c, Rg) == pytest.approx(
        km_layer_over(K, S, X, Rg), rel=1e-9
    )


@given(K=absorption, S=scattering, X=thickness, Rg=st.floats(0.0, 0.99), step=st.floats(0.001, 1.0))
def test_monotone_in_backing_and_absorption(
    K: float, S: float, X: float, Rg: float, step: float
) -> None:
    R = km_layer_over(K, S, X, Rg)
    assert km_layer_over(K, S, X, Rg + 0.01) >= R - 1e-14
    assert km_layer_over(K + step, S, X, Rg) <= R + 1e-14


def test_no_overflow() -> None:
    K, S = np.array([1e3, 1e-300, 0.0, 1e6]), np.array([1e3, 1e3, 1e3, 1.0])
    for X in (0.7, 700.0, 1e6):
        R, T = km_reflectance_transmittance(K, S, X)
        assert np.isfinite(R).all()
        assert np.isfinite(T).all()
        assert np.isfinite(km_layer_over(K, S, X, 0.5)).all()


@given(K=absorption, S=scattering)
def test_ratio_inverts_infinite_reflectance(K: float, S: float) -> None:
    assert km_ratio(km_infinite_reflectance(K, S)) == pytest.approx(K / S, rel=1e-6, abs=1e-12)


def test_translucency_falls_with_thickness_and_absorption() -> None:
    """The gap between white and black backing closes; contrast ratio goes to 1."""
    X = np.linspace(0.1, 8.0, 60)
    for K in (0.02, 0.2):
        gap = km_layer_over(K, 5.0, X, 0.9) - km_layer_over(K, 5.0, X, 0.0)
        assert (gap > 0.0).all()
        assert (np.diff(gap) < 0.0).all()
    ratio = km_layer_over(0.2, 5.0, X, 0.0) / km_layer_over(0.2, 5.0, X, 0.9)
    assert (np.diff(ratio) > 0.0).all()
    assert ratio[-1] > 0.999
    low = km_layer_over(0.2, 5.0, X, 0.9) - km_layer_over(0.2, 5.0, X, 0.0)
    high = km_layer_over(0.02, 5.0, X, 0.9) - km_layer_over(0.02, 5.0, X, 0.0)
    assert (low < high).all()
