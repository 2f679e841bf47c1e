"""The typeface of the sheets and pictures, found among the program's own files."""

from __future__ import annotations

from enum import StrEnum
from functools import cache, lru_cache
from pathlib import Path

from PIL import ImageFont

from stainmap.errors import StainmapError
from stainmap.paths import resource

FAMILY = "Stainmap Sans"


class FontWeight(StrEnum):
    """Weights of the typeface; the value is the name in a PDF and the end of the file's name."""

    LIGHT = "Light"
    REGULAR = "Regular"
    MEDIUM = "Medium"
    SEMIBOLD = "SemiBold"

    @property
    def pdf_name(self) -> str:
        """Name under which reportlab knows the weight."""
        return f"StainmapSans-{self}"


def font_path(weight: FontWeight) -> Path:
    """Return the TrueType file of a weight."""
    return resource("fonts", f"StainmapSans-{weight}.ttf")


def register_fonts() -> None:
    """Make all weights known to reportlab; does nothing the second time.

    Raises
    ------
    StainmapError
        If a file is missing or is no typeface.
    """
    # Pictures in the window take their letters from here too, and it must not wait for a PDF.
    from reportlab.pdfbase import pdfmetrics  # noqa: PLC0415
    from reportlab.pdfbase.ttfonts import TTFError, TTFont  # noqa: PLC0415

    known = set(pdfmetrics.getRegisteredFontNames())
    for weight in FontWeight:
        if weight.pdf_name in known:
            continue
        path = font_path(weight)
        try:
            pdfmetrics.registerFont(TTFont(weight.pdf_name, str(path)))
        except (TTFError, OSError) as error:
            raise _broken(path) from error


def text_width_pt(text: str, weight: FontWeight, size_pt: float) -> float:
    """Return the width of a line of text in points."""
    return _width_at_one(text, weight) * size_pt


# The same words stand on all sheets, and are tried at several sizes.
@lru_cache(maxsize=8192)
def _width_at_one(text: str, weight: FontWeight) -> float:
    from reportlab.pdfbase import pdfmetrics  # noqa: PLC0415

    register_fonts()
    return float(pdfmetrics.stringWidth(text, weight.pdf_name, 1.0))


@cache
def image_font(weight: FontWeight, size_px: int) -> ImageFont.FreeTypeFont:
    """Return the typeface for drawing into pictures; raise StainmapError if it is missing."""
    path = font_path(weight)
    try:
        return ImageFont.truetype(str(path), size_px)
    except OSError as error:
        raise _broken(path) from error


def _broken(path: Path) -> StainmapError:
    return StainmapError(
        "The program's typeface is missing or damaged.",
        where=str(path),
        advice="Install stainmap again.",
    )
