"""Sheets read back by others: text by one library, pictures by a second, codes by a third."""

from __future__ import annotations

from io import BytesIO

import numpy as np
import pypdfium2
import zxingcpp
from numpy.typing import NDArray
from pypdf import PdfReader


def texts(pdf: bytes) -> list[str]:
    """Return the text of every page, by pypdf."""
    return [page.extract_text() for page in PdfReader(BytesIO(pdf)).pages]


def other_texts(pdf: bytes) -> list[str]:
    """Return the text of every page, by PDFium."""
    document = pypdfium2.PdfDocument(pdf)
    found = []
    for page in document:
        layer = page.get_textpage()
        found.append(layer.get_text_bounded())
        layer.close()
        page.close()
    document.close()
    return found


def grey_pages(pdf: bytes, dots_per_inch: float) -> list[NDArray[np.float64]]:
    """Return the pages as a black-and-white printer has them, 0 to 1, by PDFium."""
    document = pypdfium2.PdfDocument(pdf)
    pages = [
        np.asarray(page.render(scale=dots_per_inch / 72.0).to_pil().convert("L"), np.float64) / 255
        for page in document
    ]
    document.close()
    return pages


def codes(page: NDArray[np.float64]) -> list[str]:
    """Return what the QR codes of a page say, by zxing."""
    image = np.ascontiguousarray((page * 255).astype(np.uint8))
    return [one.text for one in zxingcpp.read_barcodes(image) if one.valid]
