"""The reference solver against another library, Monte Carlo, published values and conservation."""

from __future__ import annotations

import csv
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stainmap.optics.adding_doubling import (
    LambertianBacking,
    TransportLayer,
    TransportResult,
    layered_transport,
)
from stainmap.optics.interface import diffuse_fresnel, fresnel_reflectance, zirconia_index
from stainmap.optics.spectrum import BANDS_NM
from tests.optics.adding_doubling import Slabs

DATA = Path(__file__).resolve().parent.parent / "data"
OPEN = LambertianBacking(reflectance=0.0, refractive_index=1.0)


def layer(mua: object, mus: object, mm: float, index: object = 2.15) -> TransportLayer:
    return TransportLayer(
        absorption_per_mm=mua,
        reduced_scattering_per_mm=mus,
        thickness_mm=mm,
        refractive_index=index,
    )


def rows(name: str) -> list[dict[str, str]]:
    with (DATA / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def in_air(mua: float, mus: float, mm: float, index: float, **choices: int) -> TransportResult:
    return layered_transport([layer(mua, mus, mm, index)], OPEN, **choices)


def test_against_another_adding_doubling_library() -> None:
    """108 slabs in air by iadpython (tests/data/README.md), two kinds of light."""
    table = rows("iadpython_slabs.csv")
    assert len(table) == 108
    for row in table:
        n, mua, mus, mm = (
            float(row[key]) for key in ("n", "mua_per_mm", "musp_per_mm", "thickness_mm")
        )
        got = in_air(mua, mus, mm, n)
        shares = {
            "normal_R": got.normal_reflectance,
            "normal_T": got.normal_transmittance,
            "diffuse_R": got.first_surface + got.reflectance,
            "diffuse_T": got.transmittance,
        }
        for key, share in shares.items():
            assert share[0] == pytest.approx(float(row[key]), abs=TOLERANCE), (key, row)


TOLERANCE = 0.003


def test_figures_that_were_published_with_that_library() -> None:
    """Index 2.2, mu_a 0.1, mu_s' 5 /mm, 1 mm: R 0.4255 and T 0.1343 for Lambertian light."""
    got = in_air(0.1, 5.0, 1.0, 2.2)
    assert got.first_surface[0] + got.reflectance[0] == pytest.approx(0.4255, abs=0.001)
    assert got.transmittance[0] == pytest.approx(0.1343, abs=0.001)


@pytest.mark.parametrize("albedo", [0.5, 0.9, 0.99])
def test_half_space_without_surfaces(albedo: float) -> None:
    """Isotropic half-space in closed form by the H function [VanDeHulst1980].

    Lambertian light: 1 - 2 sqrt(1 - a) alpha_1, alpha_1 the first moment of H; a beam along the
    normal: 1 - sqrt(1 - a) H(1). H is iterated here on a grid of its own. (The well-known slab of
    the same book has g = 0.75; a solver of isotropic scattering cannot be held against it, but
    the library of the table above gives its two figures.)
    """
    x, w = np.polynomial.legendre.leggauss(200)
    mu, w = 0.5 * (x + 1.0), 0.5 * w
    root = np.sqrt(1.0 - albedo)
    H = np.ones_like(mu)
    for _ in range(2000):
        H = 1.0 / (root + 0.5 * albedo * (H * w * mu / (mu[:, None] + mu)).sum(1))
    H_normal = 1.0 / (root + 0.5 * albedo * (H * w * mu / (1.0 + mu)).sum())
    got = in_air(1.0 - albedo, albedo, 400.0, 1.0)
    assert got.reflectance[0] == pytest.approx(1.0 - 2.0 * root * (H * mu * w).sum(), abs=1e-4)
    assert got.normal_reflectance[0] == pytest.approx(1.0 - root * H_normal, abs=1e-4)


def test_giovanelli_half_space() -> None:
    """Index 1.5, albedo 0.9, beam along the normal: 0.2600 [Giovanelli1955] (from memory)."""
    got = in_air(0.1, 0.9, 400.0, 1.5)
    assert got.normal_reflectance[0] == pytest.approx(0.2600, abs=0.0005)


def test_against_monte_carlo() -> None:
    """54 slabs of index 2.15 on a scattering stump of index 1.52 (tests/data/README.md).

    Reflectance within 0.0005; the radiance along the normal within 0.5 %, most of which is that
    the table averages over 10 degrees. Asymmetric scattering of equal mu_s' is within 0.006.
    """
    for row in rows("slab_reference.csv"):
        numbers = {key: float(row[key]) for key in row if key != "stump"}
        got = layered_transport(
            [
                layer(numbers["mua0_per_mm"], numbers["musp_per_mm"], numbers["thickness_mm"]),
                layer(numbers["mua_substrate_per_mm"], 2.5, 4.0, 1.52),
            ],
            LambertianBacking(reflectance=0.0, refractive_index=1.52),
        )
        isotropic = numbers["g"] == 0.0
        assert got.reflectance[0] == pytest.approx(
            numbers["R_mc"], abs=0.0005 if isotropic else 0.006
        )
        if isotropic:
            assert got.radiance_factor_diffuse_0[0] == pytest.approx(
                numbers["radiance_factor_normal_mc"], rel=0.005
            )


def test_against_a_second_calculation() -> None:
    """Layers on a Lambertian stump in cement, by the plainer code beside this test."""
    plain = Slabs(12)
    for mua, mus, stump in ((0.003, 4.0, 0.2), (0.05, 12.0, 0.5), (0.4, 27.0, 0.0)):
        parts = [(mua + 0.1, mus, 0.3), (mua, mus, 0.6)]
        expected = plain.diffuse_reflectance(parts, stump)
        backing = LambertianBacking(reflectance=stump, refractive_index=1.52)
        got = layered_transport([layer(*part) for part in parts], backing)
        assert got.reflectance[0] == pytest.approx(expected, abs=2e-4)


@settings(max_examples=25, deadline=None)
@given(
    mus=st.floats(0.5, 30.0),
    mm=st.floats(0.05, 3.0),
    index=st.floats(1.0, 2.4),
    behind=st.floats(1.0, 2.4),
    reflectance=st.floats(0.0, 1.0),
)
def test_without_absorption_nothing_is_lost(
    mus: float, mm: float, index: float, behind: float, reflectance: float
) -> None:
    backing = LambertianBacking(reflectance=reflectance, refractive_index=behind)
    layers = [layer(0.0, mus, mm, index), layer(0.0, 2.0, 0.2, 1.5)]
    got = layered_transport(layers, backing)
    everything = got.first_surface + got.reflectance + got.transmittance
    assert everything[0] == pytest.approx(1.0, abs=1e-5)
    beam = got.normal_reflectance + got.normal_transmittance
    assert beam[0] == pytest.approx(1.0, abs=1e-5)


@settings(max_examples=20, deadline=None)
@given(mua=st.floats(0.0, 1.0), mus=st.floats(1.0, 27.0), share=st.floats(0.1, 0.9))
def test_splitting_a_layer_changes_nothing(mua: float, mus: float, share: float) -> None:
    backing = LambertianBacking(reflectance=0.4, refractive_index=1.52)
    whole = layered_transport([layer(mua, mus, 1.0)], backing)
    parts = layered_transport([layer(mua, mus, share), layer(mua, mus, 1.0 - share)], backing)
    for name in TransportResult.__dataclass_fields__:
        assert getattr(parts, name)[0] == pytest.approx(getattr(whole, name)[0], abs=2e-5), name


def test_more_streams_change_nothing_that_matters() -> None:
    mua, mus = np.array([0.003, 0.03, 0.2, 0.8]), np.array([4.0, 8.6, 12.0, 27.0])
    layers = [layer(mua + 0.1, mus, 0.3), layer(mua, mus, 0.5)]
    backing = LambertianBacking(reflectance=[0.1, 0.5, 0.9, 0.0], refractive_index=1.52)
    usual = layered_transport(layers, backing)
    fine = layered_transport(layers, backing, streams_per_interval=14)
    for name in TransportResult.__dataclass_fields__:
        np.testing.assert_allclose(getattr(usual, name), getattr(fine, name), atol=1e-4)


def test_reciprocity() -> None:
    """Lambertian light seen along the normal is the beam along the normal seen everywhere."""
    got = layered_transport([layer(0.1, 8.0, 0.7)], OPEN)
    gloss = float(fresnel_reflectance(1.0, 2.15, 1.0))
    assert got.normal_reflectance[0] - gloss == pytest.approx(
        got.radiance_factor_diffuse_0[0], abs=1e-6
    )


def test_bare_backing_is_the_saunderson_formula() -> None:
    """A Lambertian reflector under a clear plate of its own index, in closed form [Saunderson1942].

    Gloss apart, (1 - k1)(1 - k2) R / (1 - k2 R); index and reflectance per band.
    """
    n, R = np.array([1.3, 1.5, 1.8]), np.array([0.2, 0.5, 0.9])
    got = layered_transport([], LambertianBacking(reflectance=R, refractive_index=n))
    k1, k2 = diffuse_fresnel(1.0, n), diffuse_fresnel(n, 1.0)
    np.testing.assert_allclose(got.first_surface, k1, atol=2e-4)
    np.testing.assert_allclose(
        got.reflectance, (1.0 - k1) * (1.0 - k2) * R / (1.0 - k2 * R), atol=5e-4
    )


def test_a_clear_plate_only_absorbs() -> None:
    """Beam along the normal through glass in air: the sum over all round trips (closed form)."""
    F, through = float(fresnel_reflectance(1.0, 1.5, 1.0)), np.exp(-0.3)
    got = in_air(0.3, 0.0, 1.0, 1.5)
    expected = (1.0 - F) ** 2 * through / (1.0 - F**2 * through**2)
    assert got.normal_transmittance[0] == pytest.approx(expected, abs=1e-9)


def test_bands_at_once_are_bands_one_by_one() -> None:
    """With dispersion, five layers, and a stump; the streams are fitted to each band's indices."""
    index = zirconia_index(BANDS_NM[::10])
    mua, stump = np.array([0.3, 0.1, 0.03, 0.01]), np.array([0.2, 0.3, 0.5, 0.6])
    layers = [
        layer(mua * factor, 12.0, mm, n)
        for factor, mm, n in ((3.0, 0.3, index), (1.0, 0.5, index), (0.0, 0.05, 1.52),
                              (1.0, 0.1, 1.33), (2.0, 0.1, index))
    ]  # fmt: skip
    backing = LambertianBacking(reflectance=stump, refractive_index=1.52)
    together = layered_transport(layers, backing)
    for band in range(4):
        alone = layered_transport(
            [
                layer(
                    np.broadcast_to(one.absorption_per_mm, 4)[band],
                    one.reduced_scattering_per_mm,
                    one.thickness_mm,
                    np.broadcast_to(one.refractive_index, 4)[band],
                )
                for one in layers
            ],
            LambertianBacking(reflectance=stump[band], refractive_index=1.52),
        )
        for name in TransportResult.__dataclass_fields__:
            assert getattr(alone, name)[0] == pytest.approx(
                getattr(together, name)[band], abs=1e-6
            ), name


def test_a_thick_layer_hides_what_lies_behind() -> None:
    deep = [
        layered_transport(
            [layer(0.5, 20.0, 500.0)], LambertianBacking(reflectance=R, refractive_index=1.52)
        ).reflectance[0]
        for R in (0.0, 1.0)
    ]
    assert deep[0] == pytest.approx(deep[1], abs=1e-12)
    assert 0.0 < deep[0] < 1.0


@pytest.mark.parametrize(
    "wrong",
    [
        {"absorption_per_mm": -0.1},
        {"reduced_scattering_per_mm": np.nan},
        {"thickness_mm": np.inf},
        {"refractive_index": 0.9},
    ],
)
def test_impossible_layers_are_refused(wrong: dict[str, float]) -> None:
    usual = {
        "absorption_per_mm": 0.1,
        "reduced_scattering_per_mm": 5.0,
        "thickness_mm": 1.0,
        "refractive_index": 2.15,
    }
    with pytest.raises(ValueError, match=next(iter(wrong)).replace("_", "[_ ]")):
        TransportLayer(**{**usual, **wrong})


def test_other_impossible_input_is_refused() -> None:
    with pytest.raises(ValueError, match="between 0 and 1"):
        LambertianBacking(reflectance=1.2, refractive_index=1.0)
    with pytest.raises(ValueError, match="streams per interval"):
        layered_transport([], OPEN, streams_per_interval=1)
    with pytest.raises(ValueError, match="bands"):
        layered_transport([layer([0.1, 0.2], [1.0, 2.0, 3.0], 1.0)], OPEN)
