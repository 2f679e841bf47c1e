"""A plot of a material: lines over an axis, told apart by their dashes, or a row of colours."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, floor, log10

import numpy as np
from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from stainmap.app.materials_curves import Curve, Plot
from stainmap.optics.colorimetry import encode_srgb
from stainmap.ui.marks import Align, paint_text, text_width
from stainmap.ui.theme import tones
from stainmap.ui.value_ladder import pushed_apart
from stainmap.words import translate

_LEFT, _TOP, _BOTTOM, _NAMES = 54.0, 24.0, 38.0, 96.0
_TICKS, _LINE_PX = 6, 14.0
_DASHES: tuple[tuple[float, ...], ...] = ((), (6, 3), (2, 2), (8, 3, 2, 3), (1, 3), (10, 4), (4, 1))


class MaterialPlot(QWidget):
    """Draws a `Plot` as large as there is room; the first curve is the strongest."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("materials plot", "Plot"))
        self.setMinimumSize(320, 130)
        self._plot: Plot | None = None

    def set_plot(self, plot: Plot | None) -> None:
        """Show a plot, or nothing."""
        self._plot = plot
        self.setAccessibleName(
            translate("materials plot", "Plot")
            if plot is None
            else translate("materials plot", "Plot: {title}").format(title=plot.title)
        )
        self.setAccessibleDescription("" if plot is None else described(plot))
        self.update()

    def sizeHint(self) -> QSize:
        """Return a comfortable size."""
        return QSize(560, 240)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw axes and curves, or the row of colours."""
        if self._plot is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._plot.swatches:
            self._paint_swatches(painter, self._plot)
        elif self._plot.curves:
            self._paint_curves(painter, self._plot)
        painter.end()

    def _paint_swatches(self, painter: QPainter, plot: Plot) -> None:
        t = tones(self)
        width = (self.width() - 32.0) / len(plot.swatches)
        height = min(width, self.height() - 70.0)
        for at, (words, linear) in enumerate(plot.swatches):
            red, green, blue = (float(v) for v in encode_srgb(np.clip(linear, 0.0, 1.0)))
            box = QRectF(16.0 + at * width, 16.0, width - 8.0, height)
            painter.setPen(QPen(QColor(t.line), 1))
            painter.setBrush(QColor.fromRgbF(red, green, blue))
            painter.drawRect(box)
            place = (box.center().x(), box.bottom() + 16.0)
            paint_text(painter, place, words, t.ink, px=12, align=Align.AlignHCenter)
        paint_text(painter, (16.0, height + 52.0), plot.across, t.soft, px=11)

    def _paint_curves(self, painter: QPainter, plot: Plot) -> None:
        t = tones(self)
        area = QRectF(_LEFT, _TOP, self.width() - _LEFT - _NAMES, self.height() - _TOP - _BOTTOM)
        left = min(float(curve.across.min()) for curve in plot.curves)
        right = max(float(curve.across.max()) for curve in plot.curves)
        across = ticks(left, right)
        up = ticks(0.0, max(float(curve.up.max()) for curve in plot.curves))
        right = max(right, left + 1e-9)
        high = up[-1]

        def at(x: float, y: float) -> QPointF:
            return QPointF(
                area.left() + area.width() * (x - left) / (right - left),
                area.bottom() - area.height() * y / high,
            )

        for value in up:
            place = at(left, value)
            painter.setPen(QPen(QColor(t.hair), 1))
            painter.drawLine(QLineF(place, at(right, value)))
            words = (area.left() - 6.0, place.y() + 4.0)
            paint_text(painter, words, f"{value:g}", t.soft, px=11, align=Align.AlignRight)
        for value in across:
            if left <= value <= right:
                place = at(value, 0.0)
                painter.setPen(QPen(QColor(t.hair), 1))
                painter.drawLine(QLineF(place, QPointF(place.x(), place.y() + 4.0)))
                words = (place.x(), place.y() + 17.0)
                paint_text(painter, words, f"{value:g}", t.soft, px=11, align=Align.AlignHCenter)
        below = (area.center().x(), area.bottom() + 32.0)
        paint_text(painter, below, plot.across, t.soft, px=11, align=Align.AlignHCenter)
        paint_text(painter, (area.left(), 14.0), plot.up, t.soft, px=11)
        for number, curve in reversed(list(enumerate(plot.curves))):
            pen = QPen(QColor(t.ink if number == 0 else t.soft), 2.0 if number == 0 else 1.2)
            dashes = _DASHES[number % len(_DASHES)]
            if dashes:
                pen.setDashPattern(list(dashes))
            painter.setPen(pen)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            points = zip(curve.across.tolist(), curve.up.tolist(), strict=True)
            painter.drawPolyline([at(x, y) for x, y in points])
        if len(plot.curves) > 1:
            ends = [at(right, float(curve.up[-1])).y() for curve in plot.curves]
            self._paint_names(painter, plot.curves, ends, area)

    def _paint_names(
        self, painter: QPainter, curves: Sequence[Curve], ends: Sequence[float], area: QRectF
    ) -> None:
        """Name every curve where it ends, with a piece of its dashes."""
        t = tones(self)
        order = sorted(range(len(curves)), key=lambda k: ends[k])
        spread = pushed_apart([ends[k] for k in order], _LINE_PX, area.top(), area.bottom())
        for k, y in zip(order, spread, strict=True):
            pen = QPen(QColor(t.ink if k == 0 else t.soft), 2.0 if k == 0 else 1.2)
            dashes = _DASHES[k % len(_DASHES)]
            if dashes:
                pen.setDashPattern(list(dashes))
            painter.setPen(pen)
            painter.drawLine(QLineF(area.right() + 6.0, y, area.right() + 28.0, y))
            weight = 600 if k == 0 else 400
            place = (area.right() + 33.0, y + 4.0)
            room = max(self.width() - place[0] - 2.0, text_width("m", 11))
            paint_text(painter, place, curves[k].name, t.ink, px=11, weight=weight, width=room)


def ticks(low: float, high: float) -> list[float]:
    """Return round numbers from below `low` to above `high`, about six of them."""
    span = max(high - low, 1e-6)
    step = 10.0 ** floor(log10(span / _TICKS))
    step *= next((k for k in (1.0, 2.0, 5.0, 10.0) if span / (k * step) <= _TICKS), 10.0)
    first, last = floor(low / step + 1e-9), ceil(high / step - 1e-9)
    return [round(k * step, 10) for k in range(first, max(last, first + 1) + 1)]


def described(plot: Plot) -> str:
    """Return what a plot shows in a sentence or two, for those who cannot see it."""
    if plot.swatches:
        words = ", ".join(name for name, _ in plot.swatches)
        return translate("materials plot", "{title}: colours for {words}.").format(
            title=plot.title, words=words
        )
    said = []
    for curve in plot.curves:
        top = int(np.argmax(curve.up))
        said.append(
            translate(
                "materials plot",
                "{name}: from {first:.3g} at {begin:.3g} to {last:.3g} at {end:.3g}, highest"
                " {most:.3g} at {place:.3g}.",
            ).format(
                name=curve.name,
                first=curve.up[0],
                begin=curve.across[0],
                last=curve.up[-1],
                end=curve.across[-1],
                most=curve.up[top],
                place=curve.across[top],
            )
        )
    return translate("materials plot", "{title}, {up} over {across}. {said}").format(
        title=plot.title, up=plot.up, across=plot.across, said=" ".join(said)
    )
