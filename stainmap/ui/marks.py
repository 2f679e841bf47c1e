"""The small drawn marks that window, bench and paper share: tally, jar, swatches, number pills."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPainterPath, QPen

from stainmap.ui.theme import Tones, font
from stainmap.ui.zone_look import paint_hatch

Align = Qt.AlignmentFlag
_LEFT = Align.AlignLeft
# Hatches of jars in the order of their numbers: none, slanted, level, upright, crossed.
_JAR_HATCHES: tuple[tuple[float, ...], ...] = ((), (45.0,), (0.0,), (90.0,), (45.0, -45.0))


@dataclass(frozen=True, slots=True, kw_only=True)
class JarLook:
    """A jar as it stands on the bench: number, liquid, and the colour of its dye on the ceramic."""

    number: int
    liquid: str
    dye: str
    """Colour as ``#rrggbb``."""
    recipe: str = ""
    """Its look in a word, and the drops in it."""
    warnings: tuple[str, ...] = ()
    """What should be looked at before it is mixed."""

    @property
    def hatch(self) -> tuple[float, ...]:
        """Angles of the hatch in degrees; jars beyond the fifth begin again."""
        return _JAR_HATCHES[(self.number - 1) % len(_JAR_HATCHES)]


def text_width(text: str, px: int, weight: int = 400) -> float:
    """Return the width of a text in pixels."""
    return QFontMetricsF(font(px, weight)).horizontalAdvance(text)


def wrapped(text: str, width: float, px: int, weight: int = 400) -> list[str]:
    """Return a text in lines of at most some width, broken between its words."""
    lines: list[str] = []
    for word in text.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, px, weight) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def paint_text(
    painter: QPainter,
    at: tuple[float, float],
    text: str,
    colour: str,
    *,
    px: int = 13,
    weight: int = 400,
    align: Qt.AlignmentFlag = _LEFT,
    width: float | None = None,
) -> float:
    """Draw one line with its baseline at `at` and return its width; too long text is elided."""
    face = font(px, weight)
    metrics = QFontMetricsF(face)
    if width is not None and metrics.horizontalAdvance(text) > width:
        text = metrics.elidedText(text, Qt.TextElideMode.ElideRight, width)
    advance = metrics.horizontalAdvance(text)
    x, y = at
    if align == Align.AlignRight:
        x -= advance
    elif align == Align.AlignHCenter:
        x -= advance / 2.0
    painter.setFont(face)
    painter.setPen(QColor(colour))
    painter.drawText(QPointF(x, y), text)
    return advance


def paint_tally(painter: QPainter, centre_x: float, y: float, coats: int, colour: str) -> None:
    """Draw one short brush stroke per coat, in the middle under a number."""
    width, height, gap = 6.0, 2.2, 2.0
    if coats > 4:
        width, gap = max(24.0 / coats, 2.0), 1.0
    left = centre_x - (coats * width + (coats - 1) * gap) / 2.0
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(colour))
    for k in range(coats):
        painter.drawRoundedRect(QRectF(left + k * (width + gap), y, width, height), 1, 1)


def paint_jar(
    painter: QPainter, rect: QRectF, jar: JarLook, tones: Tones, *, numbered: bool = True
) -> None:
    """Draw a jar from the side: lid, square body, its dye and hatch, its number on a plain disc."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    x, y, w, h = rect.x(), rect.y(), rect.width(), rect.height()
    body_rect = QRectF(x, y + h * 0.22, w, h * 0.78)
    body = QPainterPath()
    body.addRoundedRect(body_rect, w * 0.16, w * 0.16)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor("#8a8a8a"))
    painter.drawRoundedRect(QRectF(x + w * 0.2, y, w * 0.6, h * 0.17), 1.5, 1.5)
    painter.fillPath(body, QColor(jar.dye))
    painter.save()
    painter.setClipPath(body)
    painter.setPen(QPen(QColor(0, 0, 0, 80), 1.0))
    for angle in jar.hatch:
        paint_hatch(painter, body_rect, angle, 4.2)
    painter.restore()
    painter.setPen(QPen(QColor(tones.ink), 1.2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(body)
    if numbered:
        px = max(int(h * 0.42), 8)
        centre = QPointF(x + w / 2.0, y + h * 0.62)
        if jar.hatch:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(jar.dye))
            painter.drawEllipse(centre, px * 0.62, px * 0.62)
        _paint_centred(painter, centre, str(jar.number), px, "#101010")
    if jar.warnings:
        paint_caution(painter, QRectF(x + w - 5.0, y - 1.0, 11.0, 11.0), tones)
    painter.restore()


def paint_caution(painter: QPainter, rect: QRectF, tones: Tones) -> None:
    """Draw a small filled square with an exclamation mark: look at this before you go on."""
    painter.setPen(QPen(QColor(tones.panel), 1.0))
    painter.setBrush(QColor(tones.caution))
    painter.drawRoundedRect(rect, 2.5, 2.5)
    _paint_centred(painter, rect.center(), "!", max(int(rect.height() * 0.8), 8), tones.panel)


def paint_pill(painter: QPainter, centre: QPointF, text: str, *, large: bool = True) -> None:
    """Draw a number on a white pill, as it stands on areas of the crown."""
    px, height = (12, 21.0) if large else (11, 18.0)
    width = max(height, text_width(text, px, 650) + 10.0)
    rect = QRectF(centre.x() - width / 2.0, centre.y() - height / 2.0, width, height)
    painter.setPen(QPen(QColor("#101010"), 1.1))
    painter.setBrush(QColor("#f4f4f4"))
    painter.drawRoundedRect(rect, height / 2.0, height / 2.0)
    _paint_centred(painter, centre, text, px, "#101010")


def paint_touching_swatches(painter: QPainter, rect: QRectF, left: str, right: str) -> None:
    """Draw two colours side by side with nothing between: an edge then means a difference."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)
    half = rect.width() / 2.0
    painter.fillRect(QRectF(rect.x(), rect.y(), half, rect.height()), QColor(left))
    painter.fillRect(QRectF(rect.x() + half, rect.y(), half, rect.height()), QColor(right))
    painter.restore()


def signed(value: float, decimals: int = 1) -> str:
    """Return a difference with its sign; a true minus, and no sign on nothing."""
    text = f"{abs(value):.{decimals}f}"
    if float(text) == 0.0:
        return text
    return ("+" if value > 0 else "\N{MINUS SIGN}") + text


def _paint_centred(painter: QPainter, centre: QPointF, text: str, px: int, colour: str) -> None:
    cap = QFontMetricsF(font(px, 650)).capHeight()
    at = (centre.x(), centre.y() + cap / 2.0)
    paint_text(painter, at, text, colour, px=px, weight=650, align=Align.AlignHCenter)
