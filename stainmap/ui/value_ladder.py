"""The value ladder: one L* scale; a level line from wanted to predicted is a value that is met."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor
from typing import TYPE_CHECKING

from PySide6.QtCore import QLineF, QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QLinearGradient, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from stainmap.model.colour import Colour
from stainmap.model.zone import Accent
from stainmap.optics.colorimetry import lab_to_srgb
from stainmap.ui.marks import Align, paint_text
from stainmap.ui.outcome_panel import screen_colour
from stainmap.ui.theme import tones
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.planning.outcome import AreaOutcome

_TOP, _BOTTOM = 24.0, 10.0
_PX_PER_STEP, _LEAST_PX_PER_STEP = 22.0, 20.0
_LABEL_PX = 16.0
_WEDGE_X, _WEDGE_WIDTH = 24.0, 12.0
_MAIN, _SMALL, _BAR = 28.0, 16.0, 6.0
_FEWEST_STEPS, _MOST_STEPS = 5, 11
_WANTED_X, _PREDICTED_X = 110.0, 178.0
Beside = tuple[str, float]
"""Number of a neighbouring tooth, and its L*."""


@dataclass(frozen=True, slots=True)
class _Rung:
    name: str
    predicted: Colour
    wanted: Colour | None
    is_accent: bool


class ValueLadder(QWidget):
    """Neighbours at the left, wanted values, predicted ones joined to them; names pushed apart."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("value ladder", "Value ladder"))
        self._rungs: list[_Rung] = []
        self._beside: tuple[Beside, ...] = ()
        self._low, self._high = 70, 76

    def set_outcomes(self, outcomes: Sequence[AreaOutcome], beside: Sequence[Beside] = ()) -> None:
        """Show the values of these areas, and of the teeth beside them."""
        self._beside = tuple(sorted(beside, key=lambda one: -one[1]))
        self._rungs = [
            _Rung(one.label, one.predicted, one.wanted, isinstance(one.area, Accent))
            for one in outcomes
        ]
        self._rungs.sort(key=lambda rung: -rung.predicted.lightness)
        values = [rung.predicted.lightness for rung in self._rungs]
        values += [rung.wanted.lightness for rung in self._rungs if rung.wanted is not None]
        values += [lightness for _, lightness in self._beside]
        if values:
            self._low, self._high = floor(min(values) - 0.3), ceil(max(values) + 0.3)
            spare = _FEWEST_STEPS - (self._high - self._low)
            if spare > 0:
                self._low, self._high = self._low - spare // 2, self._high + (spare + 1) // 2
        said = []
        for rung in self._rungs:
            text = f"{rung.name} L* {rung.predicted.lightness:.1f}"
            if rung.wanted is not None:
                text = translate("value ladder", "{area}, wanted {lightness:.1f}").format(
                    area=text, lightness=rung.wanted.lightness
                )
            said.append(text)
        said += [
            translate("value ladder", "beside it {tooth} L* {lightness:.1f}").format(
                tooth=tooth, lightness=lightness
            )
            for tooth, lightness in self._beside
        ]
        self.setAccessibleDescription("; ".join(said))
        self.setFixedHeight(self.sizeHint().height())
        self.update()

    def sizeHint(self) -> QSize:
        """Return room for 20 px per L* or more, and for every name."""
        steps = self._high - self._low
        each = _PX_PER_STEP if steps <= _MOST_STEPS else _LEAST_PX_PER_STEP
        need = max(steps * each, len(self._rungs) * _LABEL_PX + 8.0)
        return QSize(312, round(_TOP + need + _BOTTOM))

    def _y(self, lightness: float) -> float:
        share = (self._high - lightness) / (self._high - self._low)
        return _TOP + share * (self.height() - _TOP - _BOTTOM)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw scale, joins and names."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        wanted_x, predicted_x = _WANTED_X, _PREDICTED_X
        self._paint_scale(painter, wanted_x, predicted_x)
        for rung in self._rungs:
            self._paint_rung(painter, rung, wanted_x, predicted_x)
        self._paint_beside(painter)
        self._paint_names(painter, predicted_x)
        painter.end()

    def _paint_scale(self, painter: QPainter, wanted_x: float, predicted_x: float) -> None:
        t = tones(self)
        top, bottom = self._y(self._high), self._y(self._low)
        wedge = QLinearGradient(0.0, top, 0.0, bottom)
        for k in range(5):
            share = k / 4.0
            grey = self._high + (self._low - self._high) * share
            red, green, blue = (float(v) for v in lab_to_srgb((grey, 0.0, 0.0)))
            wedge.setColorAt(share, QColor.fromRgbF(red, green, blue))
        painter.fillRect(QRectF(_WEDGE_X, top, _WEDGE_WIDTH, bottom - top), wedge)
        for value in range(self._low, self._high + 1):
            y = self._y(value)
            at = (_WEDGE_X - 6, y + 4)
            paint_text(painter, at, str(value), t.soft, px=11, align=Align.AlignRight)
            painter.setPen(QPen(QColor(t.hair), 1))
            painter.drawLine(QLineF(_WEDGE_X + _WEDGE_WIDTH + 2, y, predicted_x + 30, y))
        middle = Align.AlignHCenter
        if self._beside:
            at = (_WEDGE_X + _WEDGE_WIDTH + 2, 12)
            paint_text(painter, at, translate("value ladder", "beside"), t.soft, px=11)
        paint_text(painter, (_WEDGE_X - 6, 12), "L*", t.soft, px=11, align=Align.AlignRight)
        if any(rung.wanted is not None for rung in self._rungs):
            paint_text(
                painter,
                (wanted_x, 12),
                translate("value ladder", "wanted"),
                t.soft,
                px=11,
                align=middle,
            )
        paint_text(
            painter,
            (predicted_x, 12),
            translate("value ladder", "predicted"),
            t.soft,
            px=11,
            align=middle,
        )

    def _paint_rung(
        self, painter: QPainter, rung: _Rung, wanted_x: float, predicted_x: float
    ) -> None:
        t = tones(self)
        y = self._y(rung.predicted.lightness)
        if rung.wanted is not None:
            y_wanted = self._y(rung.wanted.lightness)
            painter.setPen(QPen(QColor(t.soft), 1.2))
            half = _MAIN / 2.0
            painter.drawLine(QLineF(wanted_x + half, y_wanted, predicted_x - half, y))
            painter.setPen(QPen(QColor(t.ink), 1.3))
            painter.setBrush(QColor(t.panel))
            painter.drawRect(QRectF(wanted_x - half, y_wanted - _BAR / 2.0, _MAIN, _BAR))
        width = _SMALL if rung.is_accent else _MAIN
        painter.setPen(QPen(QColor(t.ink), 1.1))
        painter.setBrush(QColor(screen_colour(rung.predicted)))
        left = predicted_x + _MAIN / 2.0 - width
        painter.drawRect(QRectF(left, y - _BAR / 2.0, width, _BAR))

    def _paint_beside(self, painter: QPainter) -> None:
        """Draw a pointer at the value of each neighbour, its number beside it."""
        t = tones(self)
        x = _WEDGE_X + _WEDGE_WIDTH + 2.0
        places = [self._y(lightness) for _, lightness in self._beside]
        spread = pushed_apart(places, _LABEL_PX, _TOP, self.height() - _BOTTOM)
        for (tooth, _), y, label_y in zip(self._beside, places, spread, strict=True):
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(QColor(t.ink))
            painter.drawPolygon([QPointF(x, y), QPointF(x + 7, y - 4), QPointF(x + 7, y + 4)])
            painter.setPen(QPen(QColor(t.faint), 1))
            painter.drawLine(QLineF(x + 7, y, x + 11, label_y))
            paint_text(painter, (x + 13, label_y + 4), tooth, t.ink, px=12, weight=500)

    def _paint_names(self, painter: QPainter, predicted_x: float) -> None:
        t = tones(self)
        places = [self._y(rung.predicted.lightness) for rung in self._rungs]
        spread = pushed_apart(places, _LABEL_PX, _TOP, self.height() - _BOTTOM)
        x = predicted_x + _MAIN / 2.0 + 2.0
        for rung, y, label_y in zip(self._rungs, places, spread, strict=True):
            painter.setPen(QPen(QColor(t.faint), 1))
            points = [(x, y), (x + 6, y), (x + 12, label_y), (x + 15, label_y)]
            painter.drawPolyline([QPointF(*point) for point in points])
            colour, weight = (t.soft, 400) if rung.is_accent else (t.ink, 500)
            at = (x + 19, label_y + 4)
            room = self.width() - x - 19
            paint_text(painter, at, rung.name, colour, px=12, weight=weight, width=room)


def pushed_apart(places: Sequence[float], gap: float, low: float, high: float) -> list[float]:
    """Return rising places at least `gap` apart within low..high, each as near its own as can be.

    Places that touch form a run that is centred on its members' own places.
    """
    runs: list[tuple[float, int]] = []  # centre, members
    for place in places:
        centre, count = place, 1
        while (
            runs and centre - gap * (count - 1) / 2.0 < runs[-1][0] + gap * (runs[-1][1] + 1) / 2.0
        ):
            before, members = runs.pop()
            centre = (centre * count + before * members) / (count + members)
            count += members
        runs.append((centre, count))
    spread = [
        centre + gap * (k - (count - 1) / 2.0) for centre, count in runs for k in range(count)
    ]
    for k in range(len(spread)):
        spread[k] = max(spread[k], low + gap * k)
    for k in range(len(spread)):
        spread[-1 - k] = min(spread[-1 - k], high - gap * k)
    return spread
