"""A sheet of paper measured in millimetres from its upper left corner."""

from __future__ import annotations

import io
from collections.abc import Iterable, Sequence
from contextlib import contextmanager
from functools import lru_cache
from itertools import chain
from typing import Any, Literal, NamedTuple

from PIL import Image
from reportlab import rl_config
from reportlab.graphics.barcode import qr
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas

from stainmap.paper.page_size import PageSize
from stainmap.paper.typeface import FontWeight, register_fonts, text_width_pt

MM = 72.0 / 25.4
MARGIN_MM = 15.0
SMALLEST_PT = 7.2

Grey = float
Align = Literal["left", "right", "centre"]

INK: Grey = 0.08
SOFT: Grey = 0.32
LIGHT: Grey = 0.42
HAIR: Grey = 0.72
WHITE: Grey = 1.0

REGULAR, MEDIUM, LIGHT_FACE, BOLD = (
    FontWeight.REGULAR,
    FontWeight.MEDIUM,
    FontWeight.LIGHT,
    FontWeight.SEMIBOLD,
)


# How a path ends, by whether it is stroked and filled.
_END = {(True, True): "B", (True, False): "S", (False, True): "f", (False, False): "n"}
# Where the handles of a quarter of a circle stand, in radii from its corner.
_HANDLE = 0.4477


class Rect(NamedTuple):
    """A rectangle in mm: upper left corner and size."""

    x: float
    y: float
    width: float
    height: float

    def inset(self, by: float) -> Rect:
        """Return the rectangle made smaller on all sides."""
        return Rect(self.x + by, self.y + by, self.width - 2 * by, self.height - 2 * by)

    @property
    def middle(self) -> tuple[float, float]:
        """The point in its middle."""
        return self.x + self.width / 2, self.y + self.height / 2


class Page:
    """Draws on the current page of a PDF. Lengths in mm, lines and type in points, tones grey.

    Parameters
    ----------
    size
        Paper format.
    title
        Title of the document, for the reader's window.
    """

    def __init__(self, size: PageSize, title: str) -> None:
        register_fonts()
        self._stream = io.BytesIO()
        # Streams as bytes, not as text a quarter longer: it takes most of the time of writing, and
        # the library knows no other place to say so.
        rl_config.useA85 = 0
        self.width, self.height = size.size_mm
        # invariant: no time of making in the file, so the same sheet gives the same bytes.
        self._canvas: Any = Canvas(
            self._stream,
            pagesize=(self.width * MM, self.height * MM),
            invariant=1,
            # Without one of ours every page names a font that is not embedded.
            initialFontName=REGULAR.pdf_name,
        )
        self._canvas.setTitle(title)
        self._canvas.setAuthor("")
        self._canvas.setCreator("stainmap")

    @property
    def left(self) -> float:
        """Left edge of what is printed."""
        return MARGIN_MM

    @property
    def right(self) -> float:
        """Right edge of what is printed."""
        return self.width - MARGIN_MM

    @property
    def inside(self) -> float:
        """Width of what is printed."""
        return self.right - self.left

    def next(self) -> None:
        """End the page."""
        self._canvas.showPage()

    def finished(self) -> bytes:
        """End the document and return it."""
        self._canvas.save()
        return self._stream.getvalue()

    # --- text

    def text(
        self,
        x: float,
        y: float,
        text: str,
        size: float = 9.0,
        *,
        face: FontWeight = REGULAR,
        grey: Grey = INK,
        align: Align = "left",
    ) -> float:
        """Write a line with its baseline at y; return its width."""
        canvas = self._canvas
        self._ink(grey)
        canvas.setFont(face.pdf_name, size)
        draw = {
            "left": canvas.drawString,
            "right": canvas.drawRightString,
            "centre": canvas.drawCentredString,
        }[align]
        draw(x * MM, (self.height - y) * MM, text)
        return self.text_width(text, size, face)

    def text_width(self, text: str, size: float, face: FontWeight = REGULAR) -> float:
        """Return the width of a line."""
        return text_width_pt(text, face, size) / MM

    def fitted(
        self,
        x: float,
        y: float,
        text: str,
        size: float,
        width: float,
        *,
        face: FontWeight = REGULAR,
        grey: Grey = INK,
        align: Align = "left",
    ) -> None:
        """Write a line, smaller or cut off with an ellipsis where it is longer than `width`."""
        while size > SMALLEST_PT and self.text_width(text, size, face) > width:
            size = max(size - 0.3, SMALLEST_PT)
        if self.text_width(text, size, face) > width:
            while text and self.text_width(text + "…", size, face) > width:
                text = text[:-1]
            text += "…"
        self.text(x, y, text, size, face=face, grey=grey, align=align)

    def short(self, text: str, width: float, face: FontWeight = REGULAR) -> str:
        """Return a name of two parts, or its first where even the smallest type has no room."""
        if self.text_width(text, SMALLEST_PT, face) <= width:
            return text
        return text.split(" and ", maxsplit=1)[0]

    def wrapped(
        self, text: str, size: float, width: float, face: FontWeight = REGULAR
    ) -> list[str]:
        """Return the lines of a text broken at spaces."""
        lines = [""]
        for word in text.split():
            longer = f"{lines[-1]} {word}".strip()
            if lines[-1] and self.text_width(longer, size, face) > width:
                lines.append(word)
            else:
                lines[-1] = longer
        return lines

    # --- lines and boxes

    def line(
        self,
        x1: float,
        y1: float,
        x2: float,
        y2: float,
        *,
        weight: float = 0.4,
        grey: Grey = INK,
    ) -> None:
        """Draw a straight line."""
        self._pen(weight, grey)
        start, end = self.height - y1, self.height - y2
        self._write(f"n {x1 * MM:.2f} {start * MM:.2f} m {x2 * MM:.2f} {end * MM:.2f} l S")

    def path(
        self,
        points: Iterable[Sequence[float]],
        *,
        weight: float,
        grey: Grey = INK,
        dash: tuple[float, ...] = (),
        round_ends: bool = False,
        fill: Grey | None = None,
    ) -> None:
        """Draw a line through points (x, y); with `fill` a filled outline without a line."""
        places = [(x * MM, (self.height - y) * MM) for x, y in points]
        if not places:
            return
        form = "%.2f %.2f m" + " %.2f %.2f l" * (len(places) - 1)
        drawn = form % tuple(chain.from_iterable(places))
        if fill is not None:
            self._ink(fill)
            self._write(f"n {drawn} h f*")
            return
        self._pen(weight, grey, dash)
        self._write(f"{int(round_ends)} J 1 j n {drawn} S 0 J")

    def box(
        self,
        rect: Rect,
        *,
        weight: float = 0.5,
        grey: Grey = INK,
        fill: Grey | None = None,
        radius: float = 0.0,
        dash: tuple[float, ...] = (),
    ) -> None:
        """Draw a rectangle, round at its corners by `radius`; `weight` 0 draws no line."""
        self._pen(weight, grey, dash)
        if fill is not None:
            self._ink(fill)
        x, y, width, height = self._place(rect)
        outline = f"{x:.2f} {y:.2f} {width:.2f} {height:.2f} re"
        if radius:
            outline = _rounded(x, y, width, height, radius * MM)
        self._write(f"n {outline} {_END[weight > 0.0, fill is not None]}")

    def swatch(self, rect: Rect, srgb: Sequence[float]) -> None:
        """Fill a rectangle with a colour, sRGB 0 to 1, without a line around it."""
        canvas = self._canvas
        canvas.setFillColorRGB(*(float(value) for value in srgb))
        canvas.rect(*self._place(rect), stroke=0, fill=1)

    def disc(self, x: float, y: float, radius: float, fill: Grey = WHITE) -> None:
        """Fill a circle."""
        self._ink(fill)
        self._canvas.circle(x * MM, (self.height - y) * MM, radius * MM, 0, 1)

    def hatch(
        self,
        rect: Rect,
        angles: Iterable[float],
        *,
        spacing: float = 1.1,
        weight: float = 0.45,
        grey: Grey = 0.15,
        radius: float = 0.0,
    ) -> None:
        """Fill a rectangle with parallel lines at angles in degrees, `spacing` mm apart."""
        canvas = self._canvas
        with self._kept():
            clip = canvas.beginPath()
            if radius:
                clip.roundRect(*self._place(rect), radius * MM)
            else:
                clip.rect(*self._place(rect))
            canvas.clipPath(clip, stroke=0)
            self._pen(weight, grey)
            reach = 0.75 * (rect.width + rect.height)
            steps = int(reach / spacing)
            for angle in angles:
                with self._kept():
                    canvas.translate(
                        (rect.x + rect.width / 2) * MM,
                        (self.height - rect.y - rect.height / 2) * MM,
                    )
                    canvas.rotate(angle)
                    for step in range(-steps, steps + 1):
                        offset = (step + 0.5) * spacing * MM
                        canvas.line(-reach * MM, offset, reach * MM, offset)

    def picture(self, image: Image.Image, x: float, y: float, width: float) -> None:
        """Place a picture with its upper left corner at x, y."""
        height = width * image.height / image.width
        self._canvas.drawImage(
            ImageReader(image),
            x * MM,
            (self.height - y - height) * MM,
            width * MM,
            height * MM,
        )

    def qr_code(self, text: str, x: float, y: float, size: float) -> None:
        """Draw a QR code with its upper left corner at x, y."""
        count, dark = _dark_runs(text)
        step = size * MM / count
        left, top = x * MM, (self.height - y) * MM
        runs = [
            f"{left + begin * step:.3f} {top - (row + 1) * step:.3f}"
            f" {length * step:.3f} {step:.3f} re"
            for row, begin, length in dark
        ]
        # One filled path: a shape for every square takes longer than the rest of the head.
        self._ink(0.0)
        self._write(f"n {' '.join(runs)} f")

    def bookmark(self, title: str, key: str) -> None:
        """Name the page in the reader's table of contents."""
        self._canvas.bookmarkPage(key)
        self._canvas.addOutlineEntry(title, key, 0)

    def _place(self, rect: Rect) -> tuple[float, float, float, float]:
        """Return lower left corner and size in points from the paper's lower left corner."""
        return (
            rect.x * MM,
            (self.height - rect.y - rect.height) * MM,
            rect.width * MM,
            rect.height * MM,
        )

    def _pen(self, weight: float, grey: Grey, dash: tuple[float, ...] = ()) -> None:
        pattern = " ".join(f"{length:.2f}" for length in dash)
        self._write(f"{weight:.2f} w {grey:.3f} G [{pattern}] 0 d")

    def _ink(self, grey: Grey) -> None:
        self._write(f"{grey:.3f} g")

    def _write(self, operators: str) -> None:
        # Written out: the library formats every figure by itself, which takes longer than all else.
        self._canvas.addLiteral(operators)

    @contextmanager
    def _kept(self) -> Any:
        self._canvas.saveState()
        try:
            yield
        finally:
            self._canvas.restoreState()


# Every page of a plan has the same code, and to find its mask takes longer than to draw it.
@lru_cache(maxsize=16)
def _dark_runs(text: str) -> tuple[int, tuple[tuple[int, int, int], ...]]:
    """Return the modules of a QR code along a side, and its dark runs: row, begin, length."""
    code = qr.QrCodeWidget(text, barLevel="M", barBorder=0).qr
    code.make()
    count = code.getModuleCount()
    runs = []
    for row in range(count):
        dark = [bool(code.isDark(row, column)) for column in range(count)] + [False]
        begin = 0
        for column in range(1, count + 1):
            if dark[column] != dark[begin]:
                if dark[begin]:
                    runs.append((row, begin, column - begin))
                begin = column
    return count, tuple(runs)


def _rounded(x: float, y: float, width: float, height: float, radius: float) -> str:
    """Return the operators of a rectangle with round corners, in points."""
    t, right, top = _HANDLE * radius, x + width, y + height
    corners = (
        (right - radius, y, right - t, y, right, y + t, right, y + radius),
        (right, top - radius, right, top - t, right - t, top, right - radius, top),
        (x + radius, top, x + t, top, x, top - t, x, top - radius),
        (x, y + radius, x, y + t, x + t, y, x + radius, y),
    )
    form = "%.2f %.2f l %.2f %.2f %.2f %.2f %.2f %.2f c"
    return f"{x + radius:.2f} {y:.2f} m {' '.join(form % corner for corner in corners)} h"
