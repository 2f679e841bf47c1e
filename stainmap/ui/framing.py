"""Where on the view a crown has room beside a card."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray
from PySide6.QtCore import QRect, QSize

from stainmap.ui.camera import Camera

_GAP_PX = 8


def fitted_beside(
    camera: Camera, vertices: NDArray[np.float64], size: QSize, card: QRect
) -> tuple[Camera, bool]:
    """Return the camera that shows all vertices clear of a card, and whether it had to evade."""
    width, height = max(size.width(), 1), max(size.height(), 1)
    whole = camera.fitted(vertices, width, height)
    if not is_covered(whole, vertices, size, card):
        return whole, False
    extent = np.ptp(camera.axes[:2] @ vertices.T, axis=1)
    return camera.fitted(vertices, width, height, free_part(card, width, height, extent)), True


def is_covered(camera: Camera, vertices: NDArray[np.float64], size: QSize, card: QRect) -> bool:
    """Return True if any vertex is seen under a card or close to it."""
    if card.isEmpty():
        return False
    places = camera.project(vertices, max(size.width(), 1), max(size.height(), 1))
    left, right = card.left() - _GAP_PX, card.right() + _GAP_PX
    top, bottom = card.top() - _GAP_PX, card.bottom() + _GAP_PX
    x, y = places[:, 0], places[:, 1]
    return bool(((x > left) & (x < right) & (y > top) & (y < bottom)).any())


def free_part(
    card: QRect, width: int, height: int, extent: ArrayLike
) -> tuple[float, float, float, float]:
    """Return the part of a view beside a card in which something of this extent is largest.

    Parameters
    ----------
    card
        Place of the card.
    width, height
        Size of the view.
    extent
        (2,) width and height of what is to be shown, in any unit.

    Returns
    -------
    free
        Left, top, right and bottom in pixels.
    """
    wide, high = (float(v) for v in np.maximum(np.asarray(extent, dtype=np.float64), 1e-9))
    left, right = card.left() - _GAP_PX, card.right() + 1 + _GAP_PX
    top, bottom = card.top() - _GAP_PX, card.bottom() + 1 + _GAP_PX
    parts = (
        (0.0, 0.0, float(left), float(height)),
        (float(right), 0.0, float(width), float(height)),
        (0.0, float(bottom), float(width), float(height)),
        (0.0, 0.0, float(width), float(top)),
    )

    def scale(part: tuple[float, float, float, float]) -> float:
        return min((part[2] - part[0]) / wide, (part[3] - part[1]) / high)

    best = max(parts, key=scale)
    across = _nearest(best[0], best[2], wide * scale(best), width / 2.0)
    down = _nearest(best[1], best[3], high * scale(best), height / 2.0)
    return across[0], down[0], across[1], down[1]


def _nearest(start: float, end: float, length: float, middle: float) -> tuple[float, float]:
    """Return the stretch of a length between start and end that lies nearest to a middle."""
    low = min(max(middle - length / 2.0, start), max(end - length, start))
    return low, low + length
