"""What must hold for every layer, stack, surface and colour, whatever the numbers.

The single layer has its own tests in `test_slab`; here are stacks of any number of layers, surfaces
on them, and colours. All properties follow from the equations of [Kubelka1948] and [Kubelka1954].
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from stainmap.optics.colorimetry import LIGHTS, reflectance_to_lab, xyz_to_lab
from stainmap.optics.difference import delta_e_00, delta_e_76
from stainmap.optics.interface import (
    backing_reflectance,
    diffuse_fresnel,
    fitted_interface,
    reflectance_outside,
    saunderson,
    textbook_interface,
)
from stainmap.optics.slab import (
    km_infinite_reflectance,
    km_layer_over,
    km_reflectance_transmittance,
)
from stainmap.optics.spectrum import BANDS_NM
from stainmap.optics.stack import LayerOptics, stack_reflectance

always = settings(max_examples=50, deadline=None, derandomize=True, database=None)

Layer = tuple[float, float, float]
absorption = st.one_of(st.just(0.0), st.floats(1e-9, 10.0))
scattering = st.floats(0.05, 40.0)
thickness = st.floats(0.0, 4.0)
layer = st.tuples(absorption, scattering, thickness)
layers = st.lists(layer, min_size=1, max_size=7)
backing = st.floats(0.0, 1.0)


def whole(stack: Sequence[Layer]) -> LayerOptics:
    """Return layers, outermost first, as one."""
    together = LayerOptics.homogeneous(*stack[0])
    for below in stack[1:]:
        together = together.over(LayerOptics.homogeneous(*below))
    return together


# ------------------------------------------------------------------------------------------------
# Limits of thickness


@always
@given(stack=layers, K=st.floats(0.01, 10.0), S=scattering, one=backing, other=backing)
def test_nothing_shows_through_a_thick_lowest_layer(
    stack: list[Layer], K: float, S: float, one: float, other: float
) -> None:
    """On a layer without end the backing is that layer's own reflectance a - b."""
    ratio = 1.0 + K / S
    own = ratio - np.sqrt(ratio**2 - 1.0)
    endless = [*stack, (K, S, 500.0 / np.sqrt(K * (K + 2.0 * S)))]
    expected = stack_reflectance(stack, own)
    for Rg in (one, other):
        assert stack_reflectance(endless, Rg) == pytest.approx(expected, abs=1e-9)


@always
@given(stack=layers, K=absorption, S=scattering, at=st.integers(0, 7), Rg=backing)
def test_a_layer_without_thickness_is_not_there(
    stack: list[Layer], K: float, S: float, at: int, Rg: float
) -> None:
    """R goes to Rg and T to 1 as X goes to 0: exactly at 0, and continuously."""
    for X, tolerance in ((0.0, 1e-14), (1e-10, 1e-7)):
        more = [*stack[:at], (K, S, X), *stack[at:]]
        assert stack_reflectance(more, Rg) == pytest.approx(
            stack_reflectance(stack, Rg), abs=tolerance
        )
        assert whole(more).transmittance == pytest.approx(whole(stack).transmittance, abs=tolerance)


# ------------------------------------------------------------------------------------------------
# Energy


@always
@given(parts=st.lists(st.tuples(scattering, thickness), min_size=1, max_size=7), Rg=backing)
def test_without_absorption_layers_add_up(parts: list[tuple[float, float]], Rg: float) -> None:
    """R = SX / (1 + SX) and T = 1 / (1 + SX) with SX summed, R + T = 1; over Rg nothing is lost."""
    stack = [(0.0, S, X) for S, X in parts]
    optical = sum(S * X for S, X in parts)
    both = whole(stack)
    assert both.reflectance == pytest.approx(optical / (1.0 + optical), abs=1e-12)
    assert both.transmittance == pytest.approx(1.0 / (1.0 + optical), abs=1e-12)
    over = stack_reflectance(stack, Rg)
    assert over == pytest.approx(1.0 - (1.0 - Rg) / (1.0 + optical * (1.0 - Rg)), abs=1e-12)
    assert stack_reflectance(stack, 1.0) == pytest.approx(1.0, abs=1e-12)


@always
@given(stack=layers, Rg=backing)
def test_no_stack_gives_more_than_it_gets(stack: list[Layer], Rg: float) -> None:
    both = whole(stack)
    for share in (both.reflectance, both.reverse_reflectance, both.transmittance):
        assert 0.0 <= share <= 1.0
    for side in (both.reflectance, both.reverse_reflectance):
        assert side + both.transmittance <= 1.0 + 1e-14
        # What goes through meets every absorbing layer at least once; so much must be missing.
        crossing = both.transmittance * -np.expm1(-sum(K * X for K, _, X in stack))
        assert side + both.transmittance <= 1.0 - crossing + 1e-14
    assert 0.0 <= stack_reflectance(stack, Rg) <= 1.0


# ------------------------------------------------------------------------------------------------
# Splitting, turning over, scaling


@always
@given(
    stack=layers,
    at=st.integers(0, 6),
    cuts=st.lists(st.floats(0.01, 1.0), min_size=2, max_size=12),
    Rg=backing,
)
def test_splitting_any_layer_into_many_changes_nothing(
    stack: list[Layer], at: int, cuts: list[float], Rg: float
) -> None:
    at %= len(stack)
    K, S, X = stack[at]
    pieces = [(K, S, X * cut / sum(cuts)) for cut in cuts]
    split = [*stack[:at], *pieces, *stack[at + 1 :]]
    assert stack_reflectance(split, Rg) == pytest.approx(stack_reflectance(stack, Rg), abs=1e-10)
    one, other = whole(stack), whole(split)
    assert other.reflectance == pytest.approx(one.reflectance, abs=1e-10)
    assert other.reverse_reflectance == pytest.approx(one.reverse_reflectance, abs=1e-10)
    assert other.transmittance == pytest.approx(one.transmittance, abs=1e-10)


@always
@given(stack=layers)
def test_turned_over_a_stack_transmits_the_same(stack: list[Layer]) -> None:
    there, back = whole(stack), whole(stack[::-1])
    assert there.transmittance == pytest.approx(back.transmittance, rel=1e-9, abs=1e-300)
    assert there.reflectance == pytest.approx(back.reverse_reflectance, abs=1e-11)
    mirrored = whole([*stack, *stack[::-1]])
    assert mirrored.reflectance == pytest.approx(mirrored.reverse_reflectance, abs=1e-11)


@always
@given(
    K=st.floats(0.05, 5.0),
    S=st.floats(1.0, 20.0),
    X=st.floats(0.1, 2.0),
    clean=st.floats(1.0, 20.0),
)
def test_reflectance_is_less_on_the_stained_side(
    K: float, S: float, X: float, clean: float
) -> None:
    """Light that meets the stain first loses more: R is not the same from both sides."""
    both = whole([(K, S, X), (0.0, clean, X)])
    assert both.reflectance < both.reverse_reflectance


@always
@given(stack=layers, Rg=backing, c=st.floats(1e-3, 1e3))
def test_only_ratios_matter_in_stacks(stack: list[Layer], Rg: float, c: float) -> None:
    scaled = [(c * K, c * S, X / c) for K, S, X in stack]
    assert stack_reflectance(scaled, Rg) == pytest.approx(stack_reflectance(stack, Rg), rel=1e-9)
    assert whole(scaled).transmittance == pytest.approx(
        whole(stack).transmittance, rel=1e-9, abs=1e-300
    )


# ------------------------------------------------------------------------------------------------
# Vanishing absorption, thick layers


@always
@given(parts=st.lists(st.tuples(scattering, thickness), min_size=1, max_size=5), Rg=backing)
def test_vanishing_absorption_is_continuous_in_stacks(
    parts: list[tuple[float, float]], Rg: float
) -> None:
    without = stack_reflectance([(0.0, S, X) for S, X in parts], Rg)
    optical = sum(S * X for S, X in parts)
    deep = sum(X for _, X in parts)
    for K in (5e-324, 1e-200, 1e-30, 1e-15, 1e-12, 1e-9, 1e-7):
        almost = stack_reflectance([(K, S, X) for S, X in parts], Rg)
        assert almost == pytest.approx(without, abs=1e-13 + 4.0 * K * deep * (1.0 + optical))
        assert almost <= without + 1e-14


@always
@given(K=st.floats(1e-3, 1e4), S=st.floats(1e-3, 1e4), above=st.floats(710.0, 1e7), Rg=backing)
def test_layers_too_thick_for_a_hyperbolic_sine(
    K: float, S: float, above: float, Rg: float
) -> None:
    """Past b S X = 710 cosh overflows; nothing comes through, R is that of an endless layer."""
    X = above / np.sqrt(K * (K + 2.0 * S))
    with np.errstate(all="raise", under="ignore"):
        R, T = km_reflectance_transmittance(K, S, X)
        over = km_layer_over(K, S, X, Rg)
        doubled = whole([(K, S, X), (K, S, X)])
    infinite = km_infinite_reflectance(K, S)
    for value in (R, over, doubled.reflectance, doubled.reverse_reflectance):
        assert value == pytest.approx(infinite, rel=1e-9)
    assert 0.0 <= T < 1e-300
    assert 0.0 <= doubled.transmittance < 1e-300


@always
@given(
    ratio=st.floats(1e-6, 10.0),
    parts=st.lists(st.tuples(scattering, thickness), min_size=1, max_size=6),
)
def test_own_reflectance_behind_shows_at_every_depth(
    ratio: float, parts: list[tuple[float, float]]
) -> None:
    """Layers of the same K / S over their R infinite look as one without end, however thick."""
    own = km_infinite_reflectance(ratio, 1.0)
    stack = [(ratio * S, S, X) for S, X in parts]
    assert stack_reflectance(stack, own) == pytest.approx(own, rel=1e-9)


# ------------------------------------------------------------------------------------------------
# Monotony


@always
@given(stack=layers, at=st.integers(0, 6), more=st.floats(1e-3, 5.0), Rg=st.floats(0.0, 0.98))
def test_reflectance_rises_with_the_backing_and_falls_with_absorption_anywhere(
    stack: list[Layer], at: int, more: float, Rg: float
) -> None:
    at %= len(stack)
    K, S, X = stack[at]
    here = stack_reflectance(stack, Rg)
    darker = [*stack[:at], (K + more, S, X), *stack[at + 1 :]]
    reaching = float(whole(stack).transmittance)
    lit = stack_reflectance(stack, Rg + 0.02)
    dimmed = stack_reflectance(darker, Rg)
    assert lit >= here - 1e-15
    assert dimmed <= here + 1e-15
    if reaching > 1e-4:
        assert lit > here
        if X > 1e-4 and here > 1e-3:
            assert dimmed < here


@always
@given(
    K=absorption,
    S=scattering,
    X=st.floats(0.02, 4.0),
    white=st.floats(0.5, 1.0),
    black=st.floats(0.0, 0.3),
    more=st.floats(0.01, 2.0),
)
def test_translucency_falls_with_thickness_and_absorption(
    K: float, S: float, X: float, white: float, black: float, more: float
) -> None:
    """Gap between backings and contrast ratio, bare and with the program's surfaces on."""
    surface = fitted_interface(1)

    def pair(K: float, X: float, *, outside: bool) -> tuple[float, float]:
        low, high = (float(km_layer_over(K, S, X, Rg)) for Rg in (black, white))
        if outside:
            low, high = (
                float(
                    reflectance_outside(
                        R, factor=surface.radiance_factor, front_internal=surface.front_internal
                    )[0]
                )
                for R in (low, high)
            )
        return low, high

    for outside in (False, True):
        low, high = pair(K, X, outside=outside)
        assert high > low or high - low < 1e-12
        for thicker_or_darker in (
            pair(K, X + more, outside=outside),
            pair(K + more, X, outside=outside),
        ):
            less_low, less_high = thicker_or_darker
            assert less_high - less_low <= high - low + 1e-15
            assert less_low / less_high >= low / high - 1e-12
            if high - low > 1e-6:
                assert less_high - less_low < high - low
                assert less_low / less_high > low / high
    # No gap and a ratio of 1 at the end: 30 lengths of decay in.
    K += 0.01
    dark, light = pair(K, 30.0 / np.sqrt(K * (K + 2.0 * S)), outside=True)
    assert dark == pytest.approx(light, rel=1e-9)


# ------------------------------------------------------------------------------------------------
# Surfaces


@always
@given(k1=st.floats(0.0, 0.5), k2=st.floats(0.0, 0.95), R=st.floats(0.0, 0.99))
def test_saunderson_ends_and_rise(k1: float, k2: float, R: float) -> None:
    """R = 0 gives k1, R = 1 gives 1, and in between it rises."""
    assert saunderson(0.0, external=k1, internal=k2) == k1
    assert saunderson(1.0, external=k1, internal=k2) == pytest.approx(1.0)
    here, more = (saunderson(r, external=k1, internal=k2) for r in (R, R + 0.01))
    assert k1 <= here < more <= 1.0 + 1e-12


@always
@given(n1=st.floats(1.0, 2.6), n2=st.floats(1.0, 2.6))
def test_what_gets_through_a_surface_gets_back(n1: float, n2: float) -> None:
    """n1^2 (1 - k12) = n2^2 (1 - k21) between any two media, cement and ceramic for one."""
    assume(abs(n1 - n2) > 1e-3)
    there, back = diffuse_fresnel(n1, n2), diffuse_fresnel(n2, n1)
    assert n1**2 * (1.0 - there) == pytest.approx(n2**2 * (1.0 - back), rel=2e-5)
    assert 0.0 < there < 1.0


def test_surfaces_of_both_models_keep_the_identity() -> None:
    """1 - k2 = (1 - k1) / n^2 where k1 and k2 are computed; the fitted k2 is lower on purpose."""
    book = textbook_interface(BANDS_NM)
    index_squared = (1.0 - book.outside_air) / (1.0 - book.front_internal)
    assert (index_squared > 2.14**2).all()
    assert (index_squared < 2.23**2).all()
    np.testing.assert_allclose(book.back_air, book.front_internal)
    for surface in (book, fitted_interface(31)):
        # All that entered leaves again if nothing is absorbed: no more, no less.
        left = reflectance_outside(
            1.0, factor=surface.hemispherical_factor, front_internal=surface.front_internal
        )
        np.testing.assert_allclose(left, 1.0 - surface.outside_air, rtol=1e-12)


@always
@given(R=st.floats(0.0, 0.99), Rs=st.floats(0.0, 0.99), coupled=st.booleans())
def test_surfaces_pass_on_what_is_lighter(R: float, Rs: float, coupled: bool) -> None:
    for surface in (fitted_interface(1), textbook_interface(np.array([550.0]))):
        for factor in (surface.hemispherical_factor, surface.radiance_factor):
            here, more = (
                reflectance_outside(r, factor=factor, front_internal=surface.front_internal)
                for r in (R, R + 0.01)
            )
            assert 0.0 <= here < more
        behind, lighter = (surface.backing([r], coupled=coupled) for r in (Rs, Rs + 0.01))
        assert 0.0 < behind < lighter <= 1.0 + 1e-12
        assert surface.backing([1.0], coupled=coupled) == pytest.approx(1.0)


@always
@given(inside=st.floats(0.0, 0.9), outside=st.floats(0.0, 0.5), Rs=backing)
def test_a_backing_loses_only_what_it_absorbs(inside: float, outside: float, Rs: float) -> None:
    """Light into the cement is (1 - r_b), what the stump absorbs of it is lost, nothing else."""
    behind = backing_reflectance(Rs, inside=inside, outside=outside)
    absorbed = (1.0 - inside) * (1.0 - Rs) / (1.0 - outside * Rs)
    assert behind + absorbed == pytest.approx(1.0, abs=1e-12)


# ------------------------------------------------------------------------------------------------
# Colours

lab = st.tuples(st.floats(0.0, 100.0), st.floats(-60.0, 60.0), st.floats(-60.0, 60.0))


@always
@given(one=lab, other=lab, third=lab)
def test_distances_are_distances(
    one: tuple[float, ...], other: tuple[float, ...], third: tuple[float, ...]
) -> None:
    for difference in (delta_e_76, delta_e_00):
        assert difference(one, one) == 0.0
        assert difference(one, other) >= 0.0
    assert delta_e_76(one, other) == delta_e_76(other, one)
    assert delta_e_76(one, third) <= delta_e_76(one, other) + delta_e_76(other, third) + 1e-9


@pytest.mark.parametrize("observer", [2, 10])
@pytest.mark.parametrize("light", LIGHTS)
def test_the_perfect_diffuser_is_white_and_only_it(light: str, observer: int) -> None:
    """R = 1 gives L* 100, a* = b* = 0; R = 0 gives nothing; a grey is grey at Y = R."""
    np.testing.assert_allclose(
        reflectance_to_lab(np.ones(31), light, observer), [100.0, 0.0, 0.0], atol=1e-9
    )
    np.testing.assert_allclose(
        reflectance_to_lab(np.zeros(31), light, observer), [0.0, 0.0, 0.0], atol=1e-9
    )
    greys = np.linspace(0.0, 1.0, 21)
    found = reflectance_to_lab(np.repeat(greys[:, None], 31, axis=1), light, observer)
    np.testing.assert_allclose(found[:, 1:], 0.0, atol=1e-9)
    np.testing.assert_allclose(
        found[:, 0], xyz_to_lab(np.c_[greys, greys, greys], np.ones(3))[:, 0]
    )
    assert (np.diff(found[:, 0]) > 0.0).all()


@always
@given(
    spectrum=st.lists(st.floats(0.02, 0.9), min_size=31, max_size=31),
    band=st.integers(0, 30),
    light=st.sampled_from(["D65", "A"]),
)
def test_less_light_in_any_band_is_never_lighter(
    spectrum: list[float], band: int, light: str
) -> None:
    """Y falls with every band the eye sees, so value falls with absorption wherever it lies."""
    darker = list(spectrum)
    darker[band] *= 0.9
    before, after = (reflectance_to_lab(one, light)[0] for one in (spectrum, darker))
    assert after <= before + 1e-9
    if 450.0 <= BANDS_NM[band] <= 650.0:
        assert after < before
