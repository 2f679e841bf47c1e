"""From reflectance to XYZ, L*a*b* and screen colours.

XYZ have Y = 1 for the perfect diffuser, L* runs from 0 to 100, encoded sRGB from 0 to 1. Weights
for the usual light and observer are shipped; every other pair asks colour-science, whose import
takes the better part of a second and happens only then.
"""

from __future__ import annotations

import csv
import warnings
from functools import cache
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.optics.spectrum import BANDS_NM
from stainmap.paths import resource

LIGHTS: Final = ("D65", "D50", "A", "C", "LED-B3", "FL2", "FL11")
"""Lights by their CIE names; LED-B3 is a white LED, FL2 and FL11 are fluorescent lamps."""

_OBSERVERS: Final = {
    2: "CIE 1931 2 Degree Standard Observer",
    10: "CIE 1964 10 Degree Standard Observer",
}
_SHIPPED: Final = ("D65", 2)
_SHIPPED_FILE: Final = "d65_2_degrees.csv"

# Linear sRGB from XYZ, to the digits of the standard [IEC1999].
_XYZ_TO_SRGB: Final = (
    (3.2406, -1.5372, -0.4986),
    (-0.9689, 1.8758, 0.0415),
    (0.0557, -0.2040, 1.0570),
)
# Sharpened responses of the linear Bradford adaptation [LamRigg1985].
_BRADFORD: Final = (
    (0.8951, 0.2664, -0.1614),
    (-0.7502, 1.7135, 0.0367),
    (0.0389, -0.0685, 1.0296),
)
_LAB_LIMIT: Final = 6.0 / 29.0


@cache
def xyz_weights(light: str = "D65", observer: int = 2) -> NDArray[np.float64]:
    """Return what each band adds to XYZ: ``XYZ = reflectance @ weights`` [CIE2018].

    The weights belong to samples at the 31 bands: a cubic spline through them, flat below 400
    and above 700 nm, integrated at 1 nm against light and observer over 360 to 780 nm, the range
    of ASTM E308.

    Parameters
    ----------
    light
        One of `LIGHTS`.
    observer
        2 or 10 degrees.

    Returns
    -------
    (31, 3) read-only; the column sums are the white point, Y exactly 1.

    Raises
    ------
    ValueError
        If light or observer are unknown.
    """
    if light not in LIGHTS or observer not in _OBSERVERS:
        raise ValueError(
            f"no light '{light}' for {observer} degrees; lights are {', '.join(LIGHTS)}, "
            "observers 2 and 10"
        )
    if (light, observer) == _SHIPPED:
        weights = _read_weights(resource("colorimetry", _SHIPPED_FILE))
    else:
        weights = compute_xyz_weights(light, observer)
    weights.flags.writeable = False
    return weights


def compute_xyz_weights(light: str, observer: int) -> NDArray[np.float64]:
    """Return the weights of `xyz_weights`, computed from the CIE data in colour-science."""
    with warnings.catch_warnings():
        # On import the library warns that its plots lack matplotlib; nothing here plots with it.
        warnings.simplefilter("ignore")
        import colour  # noqa: PLC0415  (takes most of a second; for unusual lights only)

    fine = np.arange(360.0, 781.0)
    shape = colour.SpectralShape(360, 780, 1)
    matching = colour.MSDS_CMFS[_OBSERVERS[observer]].copy().align(shape).values
    power = colour.SDS_ILLUMINANTS[light].copy().interpolate(shape).align(shape).values
    product = np.asarray(matching, dtype=np.float64) * np.asarray(power, dtype=np.float64)[:, None]
    product /= product[:, 1].sum()
    from scipy.interpolate import CubicSpline  # noqa: PLC0415 - takes a third of a second

    spline = CubicSpline(BANDS_NM, np.eye(len(BANDS_NM)), axis=0)
    spread = spline(np.clip(fine, BANDS_NM[0], BANDS_NM[-1]))
    return np.asarray(spread.T @ product, dtype=np.float64)


def write_shipped_weights(folder: Path) -> Path:
    """Write the weights for D65 and 2 degrees as CSV into `folder`; return the file.

    This made ``resources/colorimetry/d65_2_degrees.csv``; run it again after a change of bands:
    ``python -c "from stainmap.optics.colorimetry import *; write_shipped_weights(Path('.'))"``.
    """
    light, observer = _SHIPPED
    weights = compute_xyz_weights(light, observer)
    lines = [
        "# Weights from 31 reflectances to X, Y, Z for CIE standard illuminant D65 and the CIE",
        "# 1931 2 degree observer (perfect diffuser: Y = 1). Derived from the CIE tables in",
        "# colour-science by stainmap.optics.colorimetry.write_shipped_weights; see its docstring.",
        "wavelength_nm,x,y,z",
    ]
    lines += [
        f"{wavelength:.0f},{x:.12e},{y:.12e},{z:.12e}"
        for wavelength, (x, y, z) in zip(BANDS_NM, weights, strict=True)
    ]
    path = folder / _SHIPPED_FILE
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return path


def _read_weights(path: Path) -> NDArray[np.float64]:
    with path.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(line for line in file if not line.startswith("#")))
    wavelengths = np.array([float(row["wavelength_nm"]) for row in rows])
    if not np.array_equal(wavelengths, BANDS_NM):
        raise ValueError(f"{path.name} does not hold the 31 bands")
    return np.array([[float(row[axis]) for axis in "xyz"] for row in rows])


def white_point(light: str = "D65", observer: int = 2) -> NDArray[np.float64]:
    """Return XYZ of the perfect diffuser, (3,), Y = 1."""
    return np.asarray(xyz_weights(light, observer).sum(0), dtype=np.float64)


def reflectance_to_xyz(
    reflectance: ArrayLike, light: str = "D65", observer: int = 2
) -> NDArray[np.float64]:
    """Return XYZ of (..., 31) reflectances, (..., 3)."""
    return np.asarray(reflectance, dtype=np.float64) @ xyz_weights(light, observer)


def xyz_to_lab(xyz: ArrayLike, white: ArrayLike) -> NDArray[np.float64]:
    """Return CIE 1976 L*a*b* of XYZ relative to `white`, (..., 3) [CIE2018]."""
    ratio = np.asarray(xyz, dtype=np.float64) / np.asarray(white, dtype=np.float64)
    linear = ratio / (3.0 * _LAB_LIMIT**2) + 4.0 / 29.0
    f = np.where(ratio > _LAB_LIMIT**3, np.cbrt(np.maximum(ratio, 0.0)), linear)
    x, y, z = np.moveaxis(f, -1, 0)
    return np.stack([116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)], axis=-1)


def lab_to_xyz(lab: ArrayLike, white: ArrayLike) -> NDArray[np.float64]:
    """Return XYZ of CIE 1976 L*a*b* relative to `white`, (..., 3) [CIE2018]."""
    L, a, b = np.moveaxis(np.asarray(lab, dtype=np.float64), -1, 0)
    y = (L + 16.0) / 116.0
    f = np.stack([y + a / 500.0, y, y - b / 200.0], axis=-1)
    ratio = np.where(f > _LAB_LIMIT, f**3, 3.0 * _LAB_LIMIT**2 * (f - 4.0 / 29.0))
    return ratio * np.asarray(white, dtype=np.float64)


def reflectance_to_lab(
    reflectance: ArrayLike, light: str = "D65", observer: int = 2
) -> NDArray[np.float64]:
    """Return L*a*b* of (..., 31) reflectances under a light, (..., 3)."""
    return xyz_to_lab(
        reflectance_to_xyz(reflectance, light, observer), white_point(light, observer)
    )


def adaptation_matrix(white: ArrayLike, other_white: ArrayLike) -> NDArray[np.float64]:
    """Return the (3, 3) matrix that adapts XYZ to another white: ``xyz_there = matrix @ xyz``.

    The linear Bradford transform [LamRigg1985]: what an eye used to the other light must be
    shown to see the same colour. It takes one white into the other.

    Parameters
    ----------
    white, other_white
        (3,) XYZ of the perfect diffuser before and after.
    """
    bradford = np.array(_BRADFORD)
    before, after = (np.asarray(one, dtype=np.float64) for one in (white, other_white))
    gain = (bradford @ after) / (bradford @ before)
    return np.asarray(np.linalg.solve(bradford, gain[:, None] * bradford))


def adapt_lab(lab: ArrayLike, white: ArrayLike, other_white: ArrayLike) -> NDArray[np.float64]:
    """Return L*a*b* under another white that look the same to an eye adapted to it, (..., 3)."""
    xyz = lab_to_xyz(lab, white) @ adaptation_matrix(white, other_white).T
    return xyz_to_lab(xyz, other_white)


def srgb_matrix(white: ArrayLike) -> NDArray[np.float64]:
    """Return the (3, 3) matrix from XYZ under a light to linear sRGB: ``rgb = matrix @ xyz``.

    Adapts from `white` (XYZ of the perfect diffuser under the light) to the white of the screen
    by the linear Bradford transform [LamRigg1985], so the perfect diffuser becomes 1, 1, 1.
    """
    to_srgb = np.array(_XYZ_TO_SRGB)
    screen_white = np.linalg.solve(to_srgb, np.ones(3))
    return np.asarray(to_srgb @ adaptation_matrix(white, screen_white))


def xyz_to_linear_srgb(xyz: ArrayLike, white: ArrayLike | None = None) -> NDArray[np.float64]:
    """Return linear sRGB, unclipped, of XYZ under a light of `white` (D65 if None), (..., 3)."""
    matrix = srgb_matrix(white_point() if white is None else white)
    return np.asarray(xyz, dtype=np.float64) @ matrix.T


def encode_srgb(linear: ArrayLike) -> NDArray[np.float64]:
    """Return encoded sRGB, 0 to 1, of linear sRGB, clipped to the screen's gamut [IEC1999]."""
    value = np.clip(np.asarray(linear, dtype=np.float64), 0.0, 1.0)
    return np.where(value <= 0.0031308, 12.92 * value, 1.055 * value ** (1.0 / 2.4) - 0.055)


def decode_srgb(encoded: ArrayLike) -> NDArray[np.float64]:
    """Return linear sRGB of encoded sRGB, both 0 to 1 [IEC1999]."""
    value = np.asarray(encoded, dtype=np.float64)
    return np.where(value <= 0.04045, value / 12.92, ((value + 0.055) / 1.055) ** 2.4)


def lab_to_linear_srgb(lab: ArrayLike, white: ArrayLike | None = None) -> NDArray[np.float64]:
    """Return linear sRGB, unclipped, of L*a*b* relative to `white` (D65 if None), (..., 3)."""
    white = white_point() if white is None else white
    return xyz_to_linear_srgb(lab_to_xyz(lab, white), white)


def lab_to_srgb(lab: ArrayLike, white: ArrayLike | None = None) -> NDArray[np.float64]:
    """Return encoded sRGB, 0 to 1, of L*a*b* relative to `white` (D65 if None), (..., 3)."""
    return encode_srgb(lab_to_linear_srgb(lab, white))
