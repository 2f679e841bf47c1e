"""Pictures of the window that are kept, and how far a new one is from them.

Kept pictures are half as wide as the screen showed them, unless they are small, and have few
colours. Two pictures are held
against each other after a little blur, so that the edge of a letter that lies half a pixel off does
not count; what counts is the share of the picture that looks otherwise.
"""

from __future__ import annotations

from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageFilter
from PySide6.QtGui import QImage

FOLDER = Path(__file__).resolve().parents[1] / "data" / "states"
COLOURS = 256
# sRGB steps of 255: what rounding to few colours and another rasteriser do lies below.
_STEP = 26
# Of a picture of 400 x 400: the dot of one coat, but not one line of words less or more.
SAME = 0.002
_SMALL_PX = 400


def as_pil(image: QImage) -> Image.Image:
    """Return a picture of Qt's as one of Pillow's."""
    rgb = image.convertToFormat(QImage.Format.Format_RGB888)
    pixels = np.frombuffer(rgb.constBits(), np.uint8).reshape(rgb.height(), rgb.bytesPerLine())
    flat = pixels[:, : 3 * rgb.width()].reshape(rgb.height(), rgb.width(), 3)
    return Image.fromarray(flat.copy())


def few_colours(picture: Image.Image, count: int) -> Image.Image:
    """Return a picture with a palette of its own, without a pattern of dots.

    Small patches of strong colour keep theirs, and greys stay neutral.
    """
    most = Image.Quantize.MAXCOVERAGE
    return picture.quantize(count, method=most, kmeans=2, dither=Image.Dither.NONE)


def halved(picture: Image.Image) -> Image.Image:
    """Return a picture at half its size; a small one as it is."""
    return picture if picture.width < _SMALL_PX else picture.reduce(2)


def write_golden(image: QImage, path: Path) -> None:
    """Keep a picture."""
    path.parent.mkdir(parents=True, exist_ok=True)
    few_colours(halved(as_pil(image)), COLOURS).save(path, optimize=True)


def unlike(one: Image.Image, other: Image.Image) -> float:
    """Return the share of two pictures, 0 to 1, that looks otherwise; 1 if their sizes differ."""
    if one.size != other.size:
        return 1.0
    far = np.abs(_soft(one) - _soft(other)).max(axis=2)
    return float((far > _STEP).mean())


def unlike_golden(image: QImage, path: Path) -> float:
    """Return the share of a picture that looks otherwise than the kept one."""
    with Image.open(path) as kept:
        return unlike(few_colours(halved(as_pil(image)), COLOURS).convert("RGB"), kept)


def _soft(picture: Image.Image) -> NDArray[np.float64]:
    blurred = picture.convert("RGB").filter(ImageFilter.BoxBlur(1))
    return np.asarray(blurred, np.float64)
