"""The run: the day as a line from mixing to cooling, and when the unit is ready."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
)
from PySide6.QtWidgets import QSizePolicy, QToolTip, QWidget

from stainmap.planning.schedule import RunPart, RunStage
from stainmap.ui.marks import Align, JarLook, paint_jar, paint_text, text_width
from stainmap.ui.theme import tones
from stainmap.units import TemperatureUnit
from stainmap.words import marked, translate, value_word

_WIDTHS = {
    RunStage.MIX: 92.0,
    RunStage.COATS: 262.0,
    RunStage.DRY: 118.0,
    RunStage.SINTER: 560.0,
    RunStage.COOL: 130.0,
}
_LEFT, _RIGHT = 150.0, 190.0
_BAR_Y, _BAR_PX = 34.0, 30.0
HEIGHT_PX = 94
_NONE = marked("run strip", "Open a crown to see how long it takes.")


@dataclass(frozen=True, slots=True, kw_only=True)
class RunDetail:
    """What stands inside the stages: jars, coats of each step, temperatures in degrees Celsius.

    `degrees` is how they are written; `curve` holds minutes and temperatures of the sintering
    programme, from its start.
    """

    jars: tuple[JarLook, ...] = ()
    steps: tuple[tuple[JarLook, int], ...] = ()
    dry_c: float = 0.0
    degrees: TemperatureUnit = TemperatureUnit.BOTH
    curve: tuple[tuple[float, float], ...] = ()
    programme: str = ""


class RunStrip(QWidget):
    """Stages side by side with durations and clock times; lengths are not to scale.

    A click on a stage asks for its page; so does Return, with the arrows choosing the stage.

    Signals
    -------
    stage_asked
        `RunStage` whose page is to open.
    """

    stage_asked = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedHeight(HEIGHT_PX)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(translate("run strip", "Run"))
        self._parts: tuple[RunPart, ...] = ()
        self._words = translate("run strip", _NONE)
        self._detail = RunDetail()
        self._bars: list[tuple[RunStage, QRectF]] = []
        self._under: RunStage | None = None
        self._chosen = 0
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)

    def set_run(self, parts: Sequence[RunPart], detail: RunDetail, words: str = "") -> None:
        """Show these stages; where there are none, these words."""
        self._parts, self._detail = tuple(parts), detail
        self._words = words or translate("run strip", _NONE)
        if not self._parts:
            self._bars, self._under = [], None
        said = [
            translate("run strip", "{stage} {minutes} from {start:%H:%M}").format(
                stage=value_word(p.stage), minutes=duration(p.minutes), start=p.start
            )
            for p in self._parts
        ]
        if not self._parts:
            said.append(self._words)
        else:
            said.append(
                translate("run strip", "ready {day} {end:%H:%M}").format(
                    day=_day(self._parts), end=self._parts[-1].end
                )
            )
        self.setAccessibleDescription("; ".join(said))
        self.update()

    def sizeHint(self) -> QSize:
        """Return the usual size."""
        return QSize(1100, HEIGHT_PX)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw title, stages and the time of completion."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.panel))
        painter.fillRect(QRectF(0, 0, self.width(), 1), QColor(t.line))
        narrow = self.width() < 1150
        left = 74.0 if narrow else _LEFT
        right = 156.0 if narrow else _RIGHT
        paint_text(painter, (16, 30), translate("run strip", "Run"), t.ink, px=15, weight=600)
        if not narrow:
            paint_text(
                painter, (16, 50), translate("run strip", "lengths not to scale"), t.soft, px=11
            )
        if not self._parts:
            paint_text(painter, (left, 54), self._words, t.soft, width=self.width() - left - 16)
            painter.end()
            return
        self._lay_bars(left, right)
        for part, (_, bar) in zip(self._parts, self._bars, strict=True):
            self._paint_part(painter, part, bar)
        self._mark_chosen(painter)
        self._paint_ready(painter)
        painter.end()

    def _lay_bars(self, left: float, right: float) -> None:
        scale = (self.width() - left - right) / sum(_WIDTHS[part.stage] for part in self._parts)
        x, self._bars = left, []
        for part in self._parts:
            width = _WIDTHS[part.stage] * scale
            self._bars.append((part.stage, QRectF(x, _BAR_Y, width - 2, _BAR_PX)))
            x += width

    def _mark_chosen(self, painter: QPainter) -> None:
        """Frame the stage under the pointer, or the one the keys have chosen."""
        t = tones(self)
        for index, (stage, bar) in enumerate(self._bars):
            by_keys = self.hasFocus() and index == self._chosen
            if stage is self._under or by_keys:
                painter.setPen(QPen(QColor(t.accent if by_keys else t.soft), 1.5))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRoundedRect(bar.adjusted(0.5, 0.5, -0.5, -0.5), 3, 3)

    # --- the pointer and the keys --------------------------------------------------------

    def stage_at(self, x: float) -> RunStage | None:
        """Return the stage over or under which a place along the strip lies."""
        return next((s for s, bar in self._bars if bar.left() <= x <= bar.right() + 2), None)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show which stage a click would open."""
        self._point_at(self.stage_at(event.position().x()))

    def leaveEvent(self, _event: QEvent) -> None:
        """Forget what lay under the pointer."""
        self._point_at(None)

    def _point_at(self, stage: RunStage | None) -> None:
        if stage is self._under:
            return
        self._under = stage
        if stage is None:
            self.unsetCursor()
        else:
            self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Open the page of the stage that was clicked."""
        stage = self.stage_at(event.position().x())
        if event.button() == Qt.MouseButton.LeftButton and stage is not None:
            self.stage_asked.emit(stage)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Choose a stage with the arrows, open it with Return or the space bar."""
        keys = Qt.Key
        if self._parts and event.key() in {keys.Key_Left, keys.Key_Right}:
            step = 1 if event.key() == keys.Key_Right else -1
            self._chosen = min(max(self._chosen + step, 0), len(self._parts) - 1)
            self.update()
        elif self._parts and event.key() in {keys.Key_Return, keys.Key_Enter, keys.Key_Space}:
            self.stage_asked.emit(self._parts[min(self._chosen, len(self._parts) - 1)].stage)
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Show which stage the keys would open."""
        self.update()
        super().focusInEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Take the mark away."""
        self.update()
        super().focusOutEvent(event)

    def event(self, event: QEvent) -> bool:
        """Say what a stage is where there is no room to write it."""
        if isinstance(event, QHelpEvent):
            stage = self.stage_at(event.pos().x())
            part = next((part for part in self._parts if part.stage is stage), None)
            if part is not None:
                words = translate("run strip", "{stage}, {minutes}: open its page").format(
                    stage=value_word(part.stage), minutes=duration(part.minutes)
                )
                QToolTip.showText(event.globalPos(), words, self)
                return True
        return super().event(event)

    def _paint_part(self, painter: QPainter, part: RunPart, bar: QRectF) -> None:
        t = tones(self)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(t.field))
        painter.drawRoundedRect(bar, 3, 3)
        name, length = value_word(part.stage), duration(part.minutes)
        at = (bar.x() + 2, bar.y() - 9)
        room = bar.width() - 2
        used = paint_text(painter, at, name, t.ink, weight=600, width=room)
        if used + 8 + text_width(length, 12) <= room:
            paint_text(painter, (at[0] + used + 8, at[1]), length, t.soft, px=12)
        clock = f"{part.start:%H:%M}"
        paint_text(painter, (at[0], bar.bottom() + 16), clock, t.soft, px=12)
        painter.save()
        painter.setClipRect(bar)
        if part.stage is RunStage.MIX:
            self._paint_jars(painter, bar)
        elif part.stage is RunStage.COATS:
            self._paint_coats(painter, bar)
        elif part.stage is RunStage.DRY:
            in_furnace = bool(part.programme)
            words = (
                translate("run strip", "in the furnace")
                if in_furnace
                else self._temperature(self._detail.dry_c, room)
            )
            middle = (bar.center().x(), bar.y() + 20)
            paint_text(painter, middle, words, t.ink, px=12, align=Align.AlignHCenter, width=room)
        else:
            self._paint_curve(painter, bar, part)
        painter.restore()

    def _temperature(self, celsius: float, room: float) -> str:
        """Return a temperature in the chosen degrees; in Celsius where both are too long."""
        words = self._detail.degrees.text(celsius)
        if self._detail.degrees is TemperatureUnit.BOTH and text_width(words, 12) > room:
            return TemperatureUnit.CELSIUS.text(celsius)
        return words

    def _paint_jars(self, painter: QPainter, bar: QRectF) -> None:
        jars = self._detail.jars
        if not jars:
            return
        pitch = min((bar.width() - 12) / len(jars), 18.0)
        for k, jar in enumerate(jars):
            rect = QRectF(bar.x() + 7 + k * pitch, bar.y() + 6, min(13.0, pitch - 2), 18)
            paint_jar(painter, rect, jar, tones(self), numbered=False)

    def _paint_coats(self, painter: QPainter, bar: QRectF) -> None:
        steps = [step for step in self._detail.steps if step[1] > 0]
        total = sum(count for _, count in steps)
        if not total:
            return
        gap = 6.0
        pitch = min((bar.width() - 16 - gap * (len(steps) - 1)) / total, 18.0)
        x = bar.x() + 8
        outline = QColor(0, 0, 0, 120)
        for jar, count in steps:
            for _ in range(count):
                painter.setPen(QPen(outline, 0.8))
                painter.setBrush(QColor(jar.dye))
                painter.drawRoundedRect(QRectF(x, bar.y() + 9, max(pitch - 2, 2), 12), 1.5, 1.5)
                x += pitch
            x += gap

    def _paint_curve(self, painter: QPainter, bar: QRectF, part: RunPart) -> None:
        """Draw the piece of the furnace's curve that belongs to a stage."""
        curve = self._detail.curve
        if len(curve) < 2:
            return
        t = tones(self)
        peak = max(temperature for _, temperature in curve)
        begin = 0.0 if part.stage is RunStage.SINTER else curve[-1][0] - part.minutes
        end = begin + max(part.minutes, 1e-6)
        path = QPainterPath()
        for k, (minute, temperature) in enumerate(_within(curve, begin, end)):
            x = bar.x() + 8 + (minute - begin) / (end - begin) * (bar.width() - 16)
            y = bar.bottom() - 5 - temperature / peak * (bar.height() - 10)
            if k == 0:
                path.moveTo(QPointF(x, y))
            else:
                path.lineTo(QPointF(x, y))
        painter.setPen(QPen(QColor(t.ink), 1.5))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPath(path)
        if part.stage is RunStage.SINTER:
            words = f"{self._detail.programme}, {self._detail.degrees.text(peak)}"
            at = (bar.right() - bar.width() * 0.22, bar.bottom() - 6)
            paint_text(painter, at, words, t.ink, px=11, align=Align.AlignHCenter)

    def _paint_ready(self, painter: QPainter) -> None:
        t = tones(self)
        right, start = self.width() - 16.0, self._parts[0].start
        end = Align.AlignRight
        ready = f"{self._parts[-1].end:%H:%M}"
        paint_text(painter, (right, 34), ready, t.ink, px=24, weight=300, align=end)
        words = translate("run strip", "ready {day},").format(day=_day(self._parts))
        paint_text(painter, (right, 54), words, t.soft, px=12, align=end)
        words = translate("run strip", "if started now, {start:%H:%M}").format(start=start)
        paint_text(painter, (right, 70), words, t.soft, px=12, align=end)


def duration(minutes: float) -> str:
    """Return "26 min" or "6 h 55"."""
    whole = round(minutes)
    return f"{whole} min" if whole < 100 else f"{whole // 60} h {whole % 60:02d}"


def _day(parts: Sequence[RunPart]) -> str:
    start, end = parts[0].start, parts[-1].end
    days = (end.date() - start.date()).days
    words = {0: translate("run strip", "today"), 1: translate("run strip", "tomorrow")}
    return words.get(days, translate("run strip", "in {days} days").format(days=days))


def _within(
    curve: Sequence[tuple[float, float]], begin: float, end: float
) -> list[tuple[float, float]]:
    """Return the piece of a broken line between two minutes, with its ends."""
    inside = [point for point in curve if begin < point[0] < end]
    return [(begin, _at(curve, begin)), *inside, (end, _at(curve, end))]


def _at(curve: Sequence[tuple[float, float]], minute: float) -> float:
    for (t0, c0), (t1, c1) in pairwise(curve):
        if t0 <= minute <= t1:
            return c0 if t1 == t0 else c0 + (c1 - c0) * (minute - t0) / (t1 - t0)
    return curve[0][1] if minute < curve[0][0] else curve[-1][1]
