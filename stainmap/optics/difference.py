"""Differences between two colours."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray


def delta_e_76(lab: ArrayLike, other: ArrayLike) -> NDArray[np.float64]:
    """Return the CIE 1976 difference of two L*a*b*, (..., 3) each [CIE2018]."""
    difference = np.asarray(lab, dtype=np.float64) - np.asarray(other, dtype=np.float64)
    return np.asarray(np.sqrt((difference**2).sum(-1)), dtype=np.float64)


def delta_e_00(lab: ArrayLike, other: ArrayLike) -> NDArray[np.float64]:
    """Return the CIEDE2000 difference of two L*a*b*, (..., 3) each, kL = kC = kH = 1 [Sharma2005].

    Where two hues lie exactly opposite, the mean hue is a tie that rounding decides, and so the
    difference may take either of two values (pair 14 of the published test data).

    Returns
    -------
    Differences, not negative, in the broadcast shape without the last axis.
    """
    L1, a1, b1 = np.moveaxis(np.asarray(lab, dtype=np.float64), -1, 0)
    L2, a2, b2 = np.moveaxis(np.asarray(other, dtype=np.float64), -1, 0)
    G = 0.5 * (1.0 - _chroma_weight(0.5 * (np.hypot(a1, b1) + np.hypot(a2, b2))))
    a1, a2 = (1.0 + G) * a1, (1.0 + G) * a2
    C1, C2 = np.hypot(a1, b1), np.hypot(a2, b2)
    h1, h2 = np.degrees(np.arctan2(b1, a1)) % 360.0, np.degrees(np.arctan2(b2, a2)) % 360.0
    grey = C1 * C2 == 0.0

    turn = h2 - h1
    turn = np.where(turn > 180.0, turn - 360.0, np.where(turn < -180.0, turn + 360.0, turn))
    turn = np.where(grey, 0.0, turn)
    dL, dC = L2 - L1, C2 - C1
    dH = 2.0 * np.sqrt(C1 * C2) * np.sin(np.radians(0.5 * turn))

    total = h1 + h2
    other_side = np.where(total < 360.0, total + 360.0, total - 360.0)
    wide = np.abs(h1 - h2) > 180.0
    h = np.where(grey, total, 0.5 * np.where(wide, other_side, total))
    L, C = 0.5 * (L1 + L2), 0.5 * (C1 + C2)

    T = (
        1.0
        - 0.17 * _cosine(h - 30.0)
        + 0.24 * _cosine(2.0 * h)
        + 0.32 * _cosine(3.0 * h + 6.0)
        - 0.20 * _cosine(4.0 * h - 63.0)
    )
    offset = (L - 50.0) ** 2
    lightness = dL / (1.0 + 0.015 * offset / np.sqrt(20.0 + offset))
    chroma = dC / (1.0 + 0.045 * C)
    hue = dH / (1.0 + 0.015 * C * T)
    rotation = 30.0 * np.exp(-(((h - 275.0) / 25.0) ** 2))
    RT = -np.sin(np.radians(2.0 * rotation)) * 2.0 * _chroma_weight(C)
    square = lightness**2 + chroma**2 + hue**2 + RT * chroma * hue
    return np.asarray(np.sqrt(np.maximum(square, 0.0)), dtype=np.float64)


def _chroma_weight(C: NDArray[np.float64]) -> NDArray[np.float64]:
    seventh = C**7
    return np.asarray(np.sqrt(seventh / (seventh + 25.0**7)), dtype=np.float64)


def _cosine(angle: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.asarray(np.cos(np.radians(angle)), dtype=np.float64)
