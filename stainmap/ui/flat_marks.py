"""Words at the sides of a flat view, and the outline of the brush on it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRect, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from stainmap.surface.mesh import FloatArray
from stainmap.ui.flat_picture import FlatPicture, FlatSheet
from stainmap.ui.marks import Align, paint_text, text_width
from stainmap.ui.theme import SURROUND_TEXT

_WHITE_HALO = QColor(255, 255, 255, 170)
_FOUND_PX = 9.0
WORDS_FROM_PX = 300
"""Views from this width have whole words at their sides, in logical pixels."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SideMark:
    """A word for what lies on a side of the view, at an angle counter-clockwise from the right."""

    word: str
    angle: float
    letter: str


def paint_marks(
    painter: QPainter,
    room: QRect,
    picture: FlatPicture,
    sheet: FlatSheet,
    marks: tuple[tuple[SideMark, ...], ...],
) -> None:
    """Write the words around each disc of a sheet, or around a side: letters where it is narrow."""
    ratio = painter.device().devicePixelRatio()
    long = room.width() >= WORDS_FROM_PX
    for place, around in enumerate(marks):
        for mark in around:
            text = mark.word if long else mark.letter
            direction = np.array([np.cos(mark.angle), np.sin(mark.angle)])
            if sheet.discs:
                x, y, radius = sheet.discs[place]
                middle = np.array([x, y]) + direction * radius
                at = picture.pixels_of(middle[None])[0] / ratio
                if not long and len(marks) > 1 and abs(direction[1]) > 0.7:
                    continue
                painter.setPen(QPen(QColor(SURROUND_TEXT), 1.4))
                tip = at + 5.0 * direction * [1.0, -1.0]
                painter.drawLine(QPointF(*at), QPointF(*tip))
                at = tip
            else:
                half = 0.5 * (sheet.high - sheet.low)
                middle = 0.5 * (sheet.high + sheet.low) + direction * half
                at = picture.pixels_of(middle[None])[0] / ratio
            _paint_word(painter, room, at, direction, text)


def paint_ring(painter: QPainter, pieces: FloatArray) -> None:
    """Draw the outline of the brush from its pieces, (k, 2, 2) or alike, in logical pixels."""
    lines = [QLineF(*(float(v) for v in piece)) for piece in pieces.reshape(-1, 4)]
    for colour, width in ((_WHITE_HALO, 3.2), (QColor(SURROUND_TEXT), 1.2)):
        pen = QPen(colour, width)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        painter.drawLines(lines)


def paint_found(painter: QPainter, pieces: FloatArray, middle: FloatArray | None) -> None:
    """Draw the outline of what advice is about, as on the crown, and a ring around its middle.

    In logical pixels: (n, 2, 2), and (2,) or None where the middle is not seen.
    """
    lines = [QLineF(*(float(v) for v in piece)) for piece in pieces.reshape(-1, 4)]
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for colour, width in ((_WHITE_HALO, 4.0), (QColor(SURROUND_TEXT), 2.0)):
        pen = QPen(colour, width)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        painter.setPen(pen)
        painter.drawLines(lines)
        if middle is not None:
            painter.drawEllipse(QPointF(*(float(v) for v in middle)), _FOUND_PX, _FOUND_PX)


def _paint_word(
    painter: QPainter, room: QRect, at: FloatArray, direction: FloatArray, text: str
) -> None:
    align = Align.AlignHCenter
    if abs(direction[0]) > 0.5:
        align = Align.AlignLeft if direction[0] > 0 else Align.AlignRight
    x = float(at[0] + 4.0 * direction[0])
    y = float(at[1] + 4.0 - 8.0 * direction[1])
    width = text_width(text, 12, 500)
    if align == Align.AlignLeft:
        x = min(x, room.width() - width - 1.0)
    elif align == Align.AlignRight:
        x = max(x, width + 1.0)
    paint_text(painter, (x, y), text, SURROUND_TEXT, px=12, weight=500, align=align)
