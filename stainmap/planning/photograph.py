"""A shade from a photograph with a grey patch in it.

The patch, whose reflectance is known, tells light and exposure: its colour is taken as that of the
light (white balance, linear Bradford), its brightness as that of its reflectance. What is left is
uncertain, and every part of that is said: noise and unevenness of both spots, the patch's
reflectance, other light on the tooth than on the patch, the camera's tone curve, the balance. How
a camera's colours differ from the eye's is added by the conversion that makes the shade comparable
with a prediction (`Conversion.PHOTOGRAPH`).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PhotographError
from stainmap.model.colour import IN_PLACE, PHOTOGRAPHED, Colour, Conversion, Measurement
from stainmap.model.intake import Shade, ShadeSource
from stainmap.optics.colorimetry import (
    adaptation_matrix,
    decode_srgb,
    srgb_matrix,
    white_point,
    xyz_to_lab,
)
from stainmap.words import translate

Floats = NDArray[np.float64]

GREY_CARD: Final = 0.18
"""Reflectance of an ordinary grey card; common practice."""

# Encoded values at which a sensor is taken to be full, and the share of such points allowed.
_FULL: Final = 250
_FULL_SHARE: Final = 0.02
# A patch below this, linear, is lost in noise; encoded about 38 of 255.
_DARK: Final = 0.02
_LEAST_POINTS: Final = 40
# Lights that a camera may have been left unbalanced for: colour temperature, and distance from the
# black body in CIE 1960 u, v, within which a patch may be neutral; beyond it is coloured itself.
_LIGHT_K: Final = (2300.0, 15000.0)
_LIGHT_DUV: Final = 0.025
# Quarters of a patch may differ by this in ln(R/G) and ln(B/G), and by that in ln(G).
_UNEVEN_COLOUR: Final = 0.12
_UNEVEN_LIGHT: Final = 0.35

# Standard deviations, all assumed. Relative reflectance of a card that is not new; light on the
# tooth beside that on the patch; exponent by which a camera's tone curve differs from sRGB's
# between patch and tooth; balance of each channel.
_CARD_SD: Final = 0.05
_LIGHT_SD: Final = 0.05
_TONE_SD: Final = 0.05
_BALANCE_SD: Final = 0.01

_LUMINANCE: Final = (0.2126, 0.7152, 0.0722)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Photograph:
    """A picture: (H, W, 3) uint8, sRGB, read-only."""

    name: str
    pixels: NDArray[np.uint8]


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A round spot in a picture: centre from its upper left corner, and radius, in pixels."""

    x: float
    y: float
    radius: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class GreyPatch:
    """The grey patch of a picture, found usable.

    Parameters
    ----------
    reflectance
        Of the patch, 0 to 1.
    linear
        (3,) mean linear sRGB of the patch as photographed.
    spread
        (3,) relative standard deviation of that mean.
    light_k
        Correlated colour temperature of the light the picture was left in, kelvin.
    """

    reflectance: float
    linear: Floats
    spread: Floats
    light_k: float


def read_patch(
    photograph: Photograph, spot: Spot | None, reflectance: float = GREY_CARD
) -> GreyPatch:
    """Return the grey patch at a spot.

    Parameters
    ----------
    reflectance
        Of the patch, 0.05 to 0.95.

    Raises
    ------
    PhotographError
        If none was picked, or it is over-exposed, too dark, uneven or not neutral.
    """
    where = photograph.name
    if spot is None:
        raise PhotographError(
            translate("photograph", "No grey patch was picked."),
            where=where,
            advice=translate(
                "photograph",
                "Click the grey patch first; without one, light and exposure are not known.",
            ),
        )
    if not 0.05 <= reflectance <= 0.95:
        raise PhotographError(
            translate("photograph", "A grey patch of {reflectance:.0f} % is out of range.").format(
                reflectance=100 * reflectance
            ),
            where=where,
            advice=translate(
                "photograph", "Give its reflectance, 5 to 95 %; an ordinary grey card has 18 %."
            ),
        )
    points = _points(photograph, spot, translate("photograph", "grey patch"))
    _refuse_full(points, where, translate("photograph", "grey patch"))
    quarters = _quarter_means(photograph, spot)
    linear = _mean_linear(points)
    if linear.min() < _DARK * 0.25 or linear @ np.array(_LUMINANCE) < _DARK:
        raise PhotographError(
            translate("photograph", "The grey patch is too dark."),
            where=where,
            advice=translate("photograph", "Take the picture with more light."),
        )
    light_k = _refuse_coloured(linear, where)
    _refuse_uneven(quarters, where)
    return GreyPatch(
        reflectance=reflectance,
        linear=linear,
        spread=_spread(quarters),
        light_k=light_k,
    )


def photographed_shade(photograph: Photograph, patch: GreyPatch, spot: Spot) -> Shade:
    """Return the shade at a spot of the tooth, with its doubt.

    Raises
    ------
    PhotographError
        If the spot is over-exposed or glossy, too small, or brighter than white beside the patch.
    """
    where = photograph.name
    points = _points(photograph, spot, translate("photograph", "spot on the tooth"))
    _refuse_full(points, where, translate("photograph", "spot on the tooth"))
    linear = _mean_linear(points)
    if linear.min() < 1e-4:
        raise PhotographError(
            translate("photograph", "The spot on the tooth is too dark."),
            where=where,
            advice=translate("photograph", "Choose a lighter spot."),
        )
    balanced = _balanced(linear, patch)
    if balanced[1] > 1.0:
        raise PhotographError(
            translate("photograph", "The spot comes out brighter than a perfect white."),
            where=where,
            advice=translate(
                "photograph",
                "The patch lies in shadow, the spot is glossy, or the patch's reflectance is "
                "not what was given.",
            ),
        )
    lab = xyz_to_lab(balanced, white_point())
    doubt = _doubt(linear, _spread(_quarter_means(photograph, spot)), patch, lab)
    lightness, a, b = (float(value) for value in lab)
    return Shade(
        source=ShadeSource.PHOTOGRAPH,
        colour=Colour(
            lightness=lightness,
            a=a,
            b=b,
            measurement=Measurement(
                geometry=PHOTOGRAPHED, illuminant="D65", observer_degrees=2, backing=IN_PLACE
            ),
        ),
        doubt=(float(doubt[0]), float(doubt[1]), float(doubt[2])),
        conversions=(Conversion.PHOTOGRAPH,),
        note=(
            translate(
                "photograph",
                "{where}: grey patch of {reflectance:.0f} %, light of about {light_k:.0f} K "
                "balanced",
            ).format(
                where=where, reflectance=100 * patch.reflectance, light_k=round(patch.light_k, -2)
            )
        ),
    )


# ---- spots


def _points(photograph: Photograph, spot: Spot, what: str) -> Floats:
    """Return the encoded values (N, 3), 0 to 255, within a spot."""
    inside, box = _inside(photograph, spot)
    if np.count_nonzero(inside) < _LEAST_POINTS:
        raise PhotographError(
            translate(
                "photograph", "The {what} has too few points, or lies outside the picture."
            ).format(what=what),
            where=photograph.name,
            advice=translate(
                "photograph", "Make the spot larger, or take the picture from nearer."
            ),
        )
    return np.asarray(box[inside], dtype=np.float64)


def _inside(photograph: Photograph, spot: Spot) -> tuple[NDArray[np.bool_], NDArray[np.uint8]]:
    height, width = photograph.pixels.shape[:2]
    left, right = (
        int(np.clip(spot.x + s * spot.radius + 0.5 * (s + 1), 0, width)) for s in (-1, 1)
    )
    top, bottom = (
        int(np.clip(spot.y + s * spot.radius + 0.5 * (s + 1), 0, height)) for s in (-1, 1)
    )
    y, x = np.mgrid[top:bottom, left:right] + 0.5
    inside = (x - spot.x) ** 2 + (y - spot.y) ** 2 <= spot.radius**2
    return inside, photograph.pixels[top:bottom, left:right]


def _quarter_means(photograph: Photograph, spot: Spot) -> Floats:
    """Return the mean linear values (4, 3) of the quarters of a spot."""
    inside, box = _inside(photograph, spot)
    rows, columns = np.nonzero(inside)
    values = decode_srgb(box[rows, columns] / 255.0)
    low, left = rows >= np.median(rows), columns >= np.median(columns)
    parts = [values[(low == a) & (left == b)] for a in (False, True) for b in (False, True)]
    return np.stack([_trimmed(part) for part in parts if len(part)])


def _mean_linear(points: Floats) -> Floats:
    return _trimmed(decode_srgb(points / 255.0))


def _trimmed(linear: Floats) -> Floats:
    """Return the mean (3,) without the darkest and brightest tenth: dust, cracks, gloss."""
    order = np.argsort(linear @ np.array(_LUMINANCE), kind="stable")
    cut = len(order) // 10
    return np.asarray(linear[order[cut : len(order) - cut]].mean(0))


def _spread(quarters: Floats) -> Floats:
    """Return the relative standard deviation (3,) of the mean of a spot, from its quarters."""
    logs = np.log(np.maximum(quarters, 1e-6))
    return np.asarray(logs.std(0, ddof=1) / np.sqrt(len(logs)))


# ---- what is refused


def _refuse_full(points: Floats, where: str, what: str) -> None:
    if (points.max(1) >= _FULL).mean() > _FULL_SHARE:
        raise PhotographError(
            translate("photograph", "The {what} is over-exposed or glossy.").format(what=what),
            where=where,
            advice=translate(
                "photograph", "Choose a spot without gloss, or take the picture with less light."
            ),
        )


def _refuse_coloured(linear: Floats, where: str) -> float:
    """Return the colour temperature of the light, or refuse a patch that no light makes so."""
    xyz = np.asarray(np.linalg.solve(srgb_matrix(white_point()), linear), dtype=np.float64)
    u, v = _uv(xyz)
    light_k, distance = _nearest_black_body(u, v)
    if not _LIGHT_K[0] <= light_k <= _LIGHT_K[1] or distance > _LIGHT_DUV:
        raise PhotographError(
            translate("photograph", "The patch is not a neutral grey."),
            where=where,
            advice=translate(
                "photograph",
                "Click a patch that has no colour of its own; a white balance that was set in "
                "the camera helps.",
            ),
        )
    return light_k


def _refuse_uneven(quarters: Floats, where: str) -> None:
    logs = np.log(np.maximum(quarters, 1e-6))
    ratios = logs[:, (0, 2)] - logs[:, 1:2]
    if np.ptp(ratios, axis=0).max() > _UNEVEN_COLOUR or np.ptp(logs[:, 1]) > _UNEVEN_LIGHT:
        raise PhotographError(
            translate(
                "photograph", "The spot covers more than the grey patch, or a shadow falls on it."
            ),
            where=where,
            advice=translate(
                "photograph", "Click the middle of the patch, or make the spot smaller."
            ),
        )


def _uv(xyz: Floats) -> tuple[float, float]:
    """Return CIE 1960 u, v."""
    x, y, z = xyz
    scale = x + 15.0 * y + 3.0 * z
    return float(4.0 * x / scale), float(6.0 * y / scale)


def _nearest_black_body(u: float, v: float) -> tuple[float, float]:
    """Return the temperature whose black body is nearest in CIE 1960 u, v, and the distance.

    Chromaticities by the cubic fits of [Kang2002], 1,667 to 25,000 K.
    """
    t = 1e6 / np.linspace(1e6 / 25000.0, 1e6 / 1667.0, 600)
    warm = t < 4000.0
    k = 1e3 / t
    x = np.where(
        warm,
        -0.2661239 * k**3 - 0.2343589 * k**2 + 0.8776956 * k + 0.179910,
        -3.0258469 * k**3 + 2.1070379 * k**2 + 0.2226347 * k + 0.240390,
    )
    y = np.select(
        [t < 2222.0, warm],
        [
            -1.1063814 * x**3 - 1.34811020 * x**2 + 2.18555832 * x - 0.20219683,
            -0.9549476 * x**3 - 1.37418593 * x**2 + 2.09137015 * x - 0.16748867,
        ],
        3.0817580 * x**3 - 5.87338670 * x**2 + 3.75112997 * x - 0.37001483,
    )
    scale = -2.0 * x + 12.0 * y + 3.0
    distance = np.hypot(4.0 * x / scale - u, 6.0 * y / scale - v)
    nearest = int(np.argmin(distance))
    return float(t[nearest]), float(distance[nearest])


# ---- colour


def _balanced(linear: Floats, patch: GreyPatch) -> Floats:
    """Return XYZ under D65, perfect diffuser Y = 1, balanced by linear Bradford."""
    to_xyz = np.linalg.inv(srgb_matrix(white_point()))
    light = to_xyz @ patch.linear / patch.reflectance
    return np.asarray(adaptation_matrix(light, white_point()) @ (to_xyz @ linear))


def _balanced_by_channels(linear: Floats, patch: GreyPatch) -> Floats:
    """Return the same, balanced by a gain per channel of the picture, as cameras do."""
    to_xyz = np.linalg.inv(srgb_matrix(white_point()))
    return np.asarray(to_xyz @ (linear / patch.linear * patch.reflectance))


def _doubt(linear: Floats, spread: Floats, patch: GreyPatch, lab: Floats) -> Floats:
    """Return the standard deviation (3,) of L*, a*, b*.

    Parts of ln(linear) per channel, carried through by differences; half of what two ways of
    balancing differ by comes on top.
    """
    ratio = np.log(linear / patch.linear)
    together = (_CARD_SD**2 + _LIGHT_SD**2) * np.ones((3, 3))
    together += _TONE_SD**2 * np.outer(ratio, ratio)
    together += np.diag(spread**2 + patch.spread**2 + _BALANCE_SD**2)
    step = 1e-4
    jacobian = np.stack(
        [
            (xyz_to_lab(_balanced(linear * np.exp(step * one), patch), white_point()) - lab) / step
            for one in np.eye(3)
        ],
        axis=1,
    )
    variance = np.diag(jacobian @ together @ jacobian.T)
    other = xyz_to_lab(_balanced_by_channels(linear, patch), white_point())
    return np.asarray(np.sqrt(variance + 0.25 * (other - lab) ** 2))
