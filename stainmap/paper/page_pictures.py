"""Finished pages as pictures: for a screen, a printer, or files that any viewer opens."""

from __future__ import annotations

import io
from collections.abc import Iterator
from threading import Lock
from typing import Final

import pypdfium2
from PIL import Image

from stainmap.planning.progress import Progress

PICTURE_DPI: Final = 200.0
# The library that draws the pages is not made for several threads at once.
_ONE_AT_A_TIME = Lock()


def page_pictures(
    pdf: bytes, dots_per_inch: float = PICTURE_DPI, *, progress: Progress | None = None
) -> Iterator[Image.Image]:
    """Yield the pages of a PDF as RGB pictures, one after the other.

    Parameters
    ----------
    pdf
        As the sheets of this room return it.
    dots_per_inch
        Fineness; 96 for a screen, 300 for a printer.
    progress
        Hears how far it is, and stops it by raising.
    """
    with _ONE_AT_A_TIME:
        document = pypdfium2.PdfDocument(pdf)
        count = len(document)
    try:
        for number in range(count):
            if progress is not None:
                progress(number / count, f"page {number + 1}")
            with _ONE_AT_A_TIME:
                page = document[number]
                bitmap = page.render(scale=dots_per_inch / 72.0)
                picture = bitmap.to_pil().convert("RGB")
                bitmap.close()
                page.close()
            yield picture
    finally:
        with _ONE_AT_A_TIME:
            document.close()


def page_pngs(pdf: bytes, dots_per_inch: float = PICTURE_DPI) -> tuple[bytes, ...]:
    """Return the pages of a PDF as PNG files, the same for the same PDF."""
    files = []
    for picture in page_pictures(pdf, dots_per_inch):
        stream = io.BytesIO()
        picture.save(stream, "PNG", dpi=(dots_per_inch, dots_per_inch))
        files.append(stream.getvalue())
    return tuple(files)
