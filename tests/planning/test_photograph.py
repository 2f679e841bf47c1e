"""Shades from synthetic pictures of known colours in known light, made with colour-science.

Nothing of the program makes the pictures: reflectances are logistic curves of tooth-like colour,
integrated by colour-science against CIE illuminants and observer or against the measured
sensitivities of a real camera, encoded as sRGB by colour-science.
"""

from __future__ import annotations

import warnings
from functools import cache

import colour
import numpy as np
import pytest
from numpy.typing import NDArray

from stainmap.errors import PhotographError
from stainmap.model.colour import Conversion
from stainmap.model.intake import Shade, ShadeSource
from stainmap.planning.photograph import (
    Photograph,
    Spot,
    _nearest_black_body,
    photographed_shade,
    read_patch,
)
from stainmap.planning.targets import shade_in

Floats = NDArray[np.float64]
SHAPE = colour.SpectralShape(380, 780, 5)
WAVELENGTHS = SHAPE.wavelengths
PATCH = Spot(x=50, y=50, radius=20)
TOOTH = Spot(x=150, y=50, radius=20)
SIDE = 101


@cache
def matching() -> Floats:
    name = "CIE 1931 2 Degree Standard Observer"
    return np.asarray(colour.MSDS_CMFS[name].copy().align(SHAPE).values)


@cache
def power(light: str) -> Floats:
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        return np.asarray(colour.SDS_ILLUMINANTS[light].copy().align(SHAPE).values)


def teeth(count: int = 14) -> Floats:
    """Return reflectances (count, B) of tooth-like colour."""
    random = np.random.default_rng(5)
    floor, rise = random.uniform(0.15, 0.35, count), random.uniform(0.2, 0.4, count)
    centre, width = random.uniform(480, 540, count), random.uniform(40, 65, count)
    return np.stack(
        [
            f + r / (1 + np.exp(-(WAVELENGTHS - c) / w))
            for f, r, c, w in zip(floor, rise, centre, width, strict=True)
        ]
    )


def true_lab(reflectance: Floats) -> Floats:
    weights = matching() * power("D65")[:, None]
    xyz = reflectance @ weights / weights[:, 1].sum()
    white = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"]
    return np.asarray(colour.XYZ_to_Lab(xyz, white))


def to_linear_srgb(xyz: Floats) -> Floats:
    return np.asarray(colour.XYZ_to_sRGB(xyz, apply_cctf_encoding=False))


def picture(
    patch: Floats, tooth: Floats, *, noise: float = 0.004, exposure: float = 1.0
) -> Photograph:
    """Return a picture of linear sRGB values, patch on the left and tooth on the right."""
    linear = np.full((SIDE, 2 * SIDE, 3), 0.05)
    y, x = np.mgrid[:SIDE, : 2 * SIDE] + 0.5
    for values, spot in ((patch, PATCH), (tooth, TOOTH)):
        linear[np.hypot(x - spot.x, y - spot.y) < 30] = values
    linear = linear * exposure + np.random.default_rng(1).normal(0, noise, linear.shape)
    encoded = colour.cctf_encoding(np.clip(linear, 0, 1), function="sRGB")
    return Photograph(name="synthetic.png", pixels=np.round(encoded * 255).astype(np.uint8))


def seen_by_observer(reflectance: Floats, light: str) -> tuple[Floats, Floats]:
    """Return linear sRGB (N, 3) of reflectances and (3,) of a grey of 18 %, nothing balanced."""
    weights = matching() * power(light)[:, None] / (matching()[:, 1] * power(light)).sum()
    return to_linear_srgb(reflectance @ weights), to_linear_srgb(0.18 * weights.sum(0))


@cache
def camera() -> Floats:
    """Return (B, 3) sensitivities of a camera that a national laboratory measured."""
    measured = next(iter(colour.MSDS_CAMERA_SENSITIVITIES.values()))
    return np.asarray(
        measured.copy()
        .align(SHAPE, extrapolator_kwargs={"method": "Constant", "left": 0, "right": 0})
        .values
    )


def seen_by_camera(reflectance: Floats, light: str) -> tuple[Floats, Floats]:
    """Return the same for a real camera, its matrix fitted under D65 to colours of all hues."""
    random = np.random.default_rng(9)
    centre, width = random.uniform(400, 700, 300), random.uniform(30, 120, 300)
    all_hues = 0.1 + 0.6 * np.exp(-(((WAVELENGTHS - centre[:, None]) / width[:, None]) ** 2))
    wanted, grey = seen_by_observer(all_hues, "D65")
    raw = camera() * power("D65")[:, None]
    gains = raw.sum(0)
    # Least squares through white: whatever the matrix, a grey stays grey.
    both = np.vstack([all_hues @ raw / gains, 100 * 0.18 * np.ones((1, 3))])
    matrix = np.linalg.lstsq(both, np.vstack([wanted, 100 * grey[None]]), rcond=None)[0]
    here = camera() * power(light)[:, None] / power(light).sum() * power("D65").sum()
    return reflectance @ here / gains @ matrix, 0.18 * here.sum(0) / gains @ matrix


def shades(patch: Floats, teeth_: Floats, *, exposure: float = 1.0) -> list[Shade]:
    found = []
    for tooth in teeth_:
        photograph = picture(patch, tooth, exposure=exposure)
        found.append(photographed_shade(photograph, read_patch(photograph, PATCH), TOOTH))
    return found


def lab_of(found: list[Shade]) -> Floats:
    return np.array([one.colour.lab for one in found])


# ---- what is found


@pytest.mark.parametrize("exposure", [0.6, 1.0, 1.2])
@pytest.mark.parametrize("gains", [(1.0, 1.0, 1.0), (1.25, 1.0, 0.7), (0.85, 1.0, 1.3)])
def test_balance_and_exposure_are_taken_out(
    exposure: float, gains: tuple[float, float, float]
) -> None:
    """Gains of the picture's channels, as of a camera that was balanced for other light."""
    reflectance = teeth(6)
    linear, grey = seen_by_observer(reflectance, "D65")
    found = shades(grey * gains, linear * gains, exposure=exposure)
    missed = lab_of(found) - true_lab(reflectance)
    stated = np.array([one.doubt for one in found])
    assert np.abs(missed[:, 0]).max() < 0.5
    assert np.abs(missed).max() < (0.5 if gains == (1.0, 1.0, 1.0) else 2.6)
    assert (np.abs(missed) < 2.0 * stated).all()


@pytest.mark.parametrize("light", ["D50", "A", "FL2", "FL11", "LED-B3"])
@pytest.mark.parametrize("seen", [seen_by_observer, seen_by_camera])
def test_the_stated_doubt_covers_light_and_camera(seen: object, light: str) -> None:
    """Root mean square error over fourteen teeth against the doubt with that of the conversion."""
    reflectance = teeth()
    linear, grey = seen(reflectance, light)  # type: ignore[operator]
    found = shades(grey, linear, exposure=0.85 / linear.max())
    missed = lab_of(found) - true_lab(reflectance)
    stated = np.array([shade_in(one).sd for one in found])
    rms, sd = np.sqrt((missed**2).mean(0)), stated.mean(0)
    assert (rms < 1.2 * sd).all(), (rms, sd)


def test_an_unbalanced_picture_would_have_been_far_off() -> None:
    """What the patch is for: without it, tungsten light alone moves b* by tens."""
    reflectance = teeth(6)
    linear, grey = seen_by_observer(reflectance, "A")
    raw = np.asarray(colour.XYZ_to_Lab(colour.sRGB_to_XYZ(linear, apply_cctf_decoding=False)))
    assert np.abs(raw - true_lab(reflectance))[:, 2].min() > 15.0
    assert np.abs(lab_of(shades(grey, linear, exposure=0.5)) - true_lab(reflectance)).max() < 4.0


def test_the_shade_says_how_it_was_got() -> None:
    linear, grey = seen_by_observer(teeth(1), "D50")
    shade = shades(grey, linear)[0]
    assert shade.source is ShadeSource.PHOTOGRAPH
    assert shade.colour.measurement.geometry == "photograph"
    assert shade.conversions == (Conversion.PHOTOGRAPH,)
    assert "grey patch of 18 %" in shade.note
    assert "5000 K" in shade.note
    assert min(shade.doubt) > 0.2
    seen = shade_in(shade)
    assert seen.colour.lab == shade.colour.lab
    assert seen.sd == pytest.approx(np.hypot(shade.doubt, (1.5, 2.5, 2.5)))


def test_another_reflectance_of_the_patch_scales_lightness() -> None:
    """A patch of half the reflectance makes everything half as bright: Y, hence L*, by CIE."""
    linear, grey = seen_by_observer(teeth(1), "D65")
    photograph = picture(grey, linear[0])
    full = photographed_shade(photograph, read_patch(photograph, PATCH, 0.18), TOOTH)
    half = photographed_shade(photograph, read_patch(photograph, PATCH, 0.09), TOOTH)
    y = (colour.colorimetry.luminance_CIE1976(one.colour.lightness, 1.0) for one in (full, half))
    assert next(y) / next(y) == pytest.approx(2.0, rel=1e-6)


def test_noise_and_distance_from_the_patch_make_it_more_doubtful() -> None:
    linear, grey = seen_by_observer(teeth(1), "D65")
    calm = picture(grey, linear[0], noise=0.001)
    noisy = picture(grey, linear[0], noise=0.05)
    near = picture(3.0 * grey, linear[0], noise=0.001)
    by_18, by_noise = (
        photographed_shade(one, read_patch(one, PATCH), TOOTH) for one in (calm, noisy)
    )
    by_54 = photographed_shade(near, read_patch(near, PATCH, 0.54), TOOTH)
    assert by_noise.doubt[1] > 1.2 * by_18.doubt[1]
    assert by_54.doubt[0] < by_18.doubt[0]
    assert by_54.colour.lab == pytest.approx(by_18.colour.lab, abs=0.3)


@pytest.mark.parametrize("kelvin", [2000, 2856, 3500, 5000, 6500, 10000, 20000])
def test_the_black_body_is_that_of_the_colour_library(kelvin: float) -> None:
    uv = colour.temperature.CCT_to_uv_Ohno2013(np.array([kelvin, 0.0]))
    found, distance = _nearest_black_body(*(float(value) for value in uv))
    assert found == pytest.approx(kelvin, rel=0.03)
    assert distance < 2e-3
    away = colour.temperature.CCT_to_uv_Ohno2013(np.array([kelvin, 0.02]))
    assert _nearest_black_body(*away)[1] == pytest.approx(0.02, abs=2e-3)


# ---- what is refused


GREY = np.full(3, 0.18)
IVORY = np.array([0.6, 0.5, 0.36])


@pytest.mark.parametrize(
    ("patch", "says"),
    [
        (np.array([0.35, 0.12, 0.12]), "not a neutral grey"),
        (np.array([0.1, 0.25, 0.1]), "not a neutral grey"),
        (np.array([0.12, 0.12, 0.4]), "not a neutral grey"),
        (np.array([0.55, 0.18, 0.5]), "not a neutral grey"),
        (np.array([1.4, 1.2, 1.1]), "grey patch is over-exposed"),
        (np.array([1.4, 0.5, 0.4]), "grey patch is over-exposed"),
        (np.full(3, 0.004), "too dark"),
    ],
)
def test_a_patch_that_tells_nothing_is_refused(patch: Floats, says: str) -> None:
    with pytest.raises(PhotographError, match=says) as caught:
        read_patch(picture(patch, IVORY, noise=0.001), PATCH)
    assert "synthetic.png" in str(caught.value)
    assert str(caught.value).count(".") >= 2


def test_a_picture_without_a_patch_is_refused() -> None:
    with pytest.raises(PhotographError, match=r"No grey patch was picked\. Click the grey patch"):
        read_patch(picture(GREY, IVORY), None)


@pytest.mark.parametrize(
    ("spot", "says"),
    [
        (Spot(x=78, y=50, radius=15), "covers more than the grey patch"),
        (Spot(x=50, y=50, radius=2), "too few points"),
        (Spot(x=-90, y=50, radius=20), "too few points"),
        (Spot(x=1e9, y=1e9, radius=20), "too few points"),
    ],
)
def test_a_spot_off_the_patch_is_refused(spot: Spot, says: str) -> None:
    # Beside the patch lies something of another colour.
    photograph = picture(GREY, IVORY)
    pixels = photograph.pixels.copy()
    pixels[:, 80:100] = (150, 90, 80)
    with pytest.raises(PhotographError, match=says):
        read_patch(Photograph(name="x.png", pixels=pixels), spot)


def test_a_shadow_across_the_patch_is_refused() -> None:
    pixels = picture(GREY, IVORY).pixels.copy()
    pixels[:50, :101] = (pixels[:50, :101] * 0.7).astype(np.uint8)
    with pytest.raises(PhotographError, match="shadow"):
        read_patch(Photograph(name="x.png", pixels=pixels), PATCH)


@pytest.mark.parametrize("reflectance", [0.0, 1.0, -0.2, float("nan")])
def test_an_impossible_reflectance_is_refused(reflectance: float) -> None:
    with pytest.raises(PhotographError, match="out of range"):
        read_patch(picture(GREY, IVORY), PATCH, reflectance)


@pytest.mark.parametrize(
    ("tooth", "reflectance", "says"),
    [
        (np.array([1.3, 1.2, 1.0]), 0.18, "spot on the tooth is over-exposed or glossy"),
        (np.full(3, 0.0), 0.18, "too dark"),
        (IVORY, 0.5, "brighter than a perfect white"),
    ],
)
def test_a_spot_on_the_tooth_that_tells_nothing_is_refused(
    tooth: Floats, reflectance: float, says: str
) -> None:
    photograph = picture(GREY, tooth, noise=0.0)
    patch = read_patch(photograph, PATCH, reflectance)
    with pytest.raises(PhotographError, match=says):
        photographed_shade(photograph, patch, TOOTH)
