"""Layers on layers: the adding formulas against the closed form, and their symmetries."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.optics.slab import km_layer_over, km_reflectance_transmittance
from stainmap.optics.stack import LayerOptics, stack_reflectance

layer = st.tuples(st.floats(0.0, 3.0), st.floats(0.1, 20.0), st.floats(0.01, 2.0))


@given(one=layer, share=st.floats(0.05, 0.95), Rg=st.floats(0.0, 1.0))
def test_splitting_a_layer_changes_nothing(
    one: tuple[float, float, float], share: float, Rg: float
) -> None:
    K, S, X = one
    whole = LayerOptics.homogeneous(K, S, X)
    upper = LayerOptics.homogeneous(K, S, share * X)
    lower = LayerOptics.homogeneous(K, S, (1.0 - share) * X)
    both = upper.over(lower)
    assert both.reflectance == pytest.approx(whole.reflectance, abs=1e-10)
    assert both.reverse_reflectance == pytest.approx(whole.reflectance, abs=1e-10)
    assert both.transmittance == pytest.approx(whole.transmittance, abs=1e-10)
    parts = [(K, S, share * X), (K, S, (1.0 - share) * X)]
    assert stack_reflectance(parts, Rg) == pytest.approx(km_layer_over(K, S, X, Rg), abs=1e-10)


@given(one=layer, other=layer)
def test_transmittance_is_symmetric_and_reflectance_turns_over(
    one: tuple[float, float, float], other: tuple[float, float, float]
) -> None:
    a, b = LayerOptics.homogeneous(*one), LayerOptics.homogeneous(*other)
    there, back = a.over(b), b.over(a)
    assert there.transmittance == pytest.approx(back.transmittance, abs=1e-12)
    assert there.reflectance == pytest.approx(back.reverse_reflectance, abs=1e-12)
    assert there.reflectance + there.transmittance <= 1.0 + 1e-12


def test_reflectance_depends_on_the_side() -> None:
    stained, clean = LayerOptics.homogeneous(1.0, 5.0, 0.4), LayerOptics.homogeneous(0.0, 5.0, 0.4)
    both = stained.over(clean)
    assert both.reverse_reflectance - both.reflectance > 0.1


@given(layers=st.lists(layer, min_size=1, max_size=5), Rg=st.floats(0.0, 1.0))
def test_adding_agrees_with_layer_on_backing(
    layers: list[tuple[float, float, float]], Rg: float
) -> None:
    whole = LayerOptics.homogeneous(*layers[0])
    for below in layers[1:]:
        whole = whole.over(LayerOptics.homogeneous(*below))
    assert whole.over_backing(Rg) == pytest.approx(stack_reflectance(layers, Rg), abs=1e-9)


def test_arrays_broadcast_over_vertices_and_bands() -> None:
    K, X = np.linspace(0.0, 0.5, 4), np.linspace(0.2, 1.0, 3)[:, None]
    whole = stack_reflectance([(K, 5.0, X), (0.0, 5.0, 1.0)], 0.4)
    assert whole.shape == (3, 4)
    single = stack_reflectance([(K[2], 5.0, X[1, 0]), (0.0, 5.0, 1.0)], 0.4)
    assert whole[1, 2] == single


def test_kubelkas_two_layer_formula() -> None:
    """T12 = T1 T2 / (1 - R1 R2) and R12 = R1 + T1^2 R2 / (1 - R1 R2) [Kubelka1954], in numbers."""
    R1, T1 = km_reflectance_transmittance(0.1, 1.0, 1.0)
    R2, T2 = km_reflectance_transmittance(0.2, 4.0, 1.0)
    both = LayerOptics.homogeneous(0.1, 1.0, 1.0).over(LayerOptics.homogeneous(0.2, 4.0, 1.0))
    between = 1.0 - 0.46103362 * 0.70238041
    assert both.transmittance == pytest.approx(0.44528421 * 0.13542296 / between, abs=1e-8)
    assert both.reflectance == pytest.approx(R1 + T1 * T1 * R2 / between, abs=1e-8)
    assert pytest.approx(0.13542296, abs=1e-8) == T2


def test_many_layers_are_one() -> None:
    """A hundred slices of a thick layer, on any backing, to rounding."""
    K, S, X = np.array([0.0, 1e-12, 0.02, 3.0]), 12.0, 2.0
    for Rg in (0.0, 0.4, 1.0):
        slices = stack_reflectance([(K, S, X / 100.0)] * 100, Rg)
        np.testing.assert_allclose(slices, km_layer_over(K, S, X, Rg), atol=1e-11)
    whole = LayerOptics.homogeneous(K, S, X / 100.0)
    for _ in range(99):
        whole = LayerOptics.homogeneous(K, S, X / 100.0).over(whole)
    R, T = km_reflectance_transmittance(K, S, X)
    np.testing.assert_allclose(whole.reflectance, R, atol=1e-11)
    np.testing.assert_allclose(whole.transmittance, T, atol=1e-11)


def test_no_layers_are_the_backing() -> None:
    assert float(stack_reflectance([], 0.37)) == 0.37


@pytest.mark.parametrize("K", [0.0, 1e-300, 1e-9, 50.0])
@pytest.mark.parametrize("X", [1e-9, 2.0, 1e3, 1e17])
@pytest.mark.parametrize("Rg", [0.0, 0.5, 1.0])
def test_extreme_layers_neither_overflow_nor_vanish(K: float, X: float, Rg: float) -> None:
    """K to 0, and b S X far beyond 700, in every position of a stack; both ways agree."""
    ordinary = (0.1, 8.0, 0.5)
    extreme = (K, 12.0, X)
    with np.errstate(over="raise", divide="raise", invalid="raise"):
        for layers in ([extreme, ordinary], [ordinary, extreme], [extreme, extreme]):
            one, other = (LayerOptics.homogeneous(*layer) for layer in layers)
            both = one.over(other)
            R = float(stack_reflectance(layers, Rg))
            assert 0.0 <= R <= 1.0 + 1e-12
            assert 0.0 <= float(both.reflectance + both.transmittance) <= 1.0 + 1e-9
            assert float(both.over_backing(Rg)) == pytest.approx(R, abs=1e-9)
