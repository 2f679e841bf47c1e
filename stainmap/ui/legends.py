"""The legends at the upper right of the crown: one for each look that needs one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QRect, QRectF, QSignalBlocker, Qt, Signal
from PySide6.QtGui import QColor, QImage, QPainter, QPen
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QProgressBar,
    QToolButton,
    QVBoxLayout,
    QWidget,
)

from stainmap.planning.look_colours import LOOK_DEPTHS_MM, NEUTRAL, Scale
from stainmap.ui.crown_cards import Card, CoatLegend, ZoneLegend
from stainmap.ui.crown_picture import SCALED, Look
from stainmap.ui.marks import Align, paint_text, wrapped
from stainmap.ui.row_card import RowCard
from stainmap.ui.theme import font, tones
from stainmap.words import marked, translate

# In a smaller view the legend of zones would hide the crown; the coat table shows its samples.
_ZONES_FROM_PX = 700
_NOTHING_YET = marked("legends", "nothing has been predicted yet")
_WIDTH_PX, _BAR_PX, _LINE_PX, _SAMPLE_PX = 268, 14, 17, 24


@dataclass(frozen=True, slots=True)
class Tick:
    """A figure that is marked on a scale; a strong one is drawn through the bar."""

    figure: float
    label: str
    strong: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ScaleWords:
    """What a legend of a scale says.

    Parameters
    ----------
    title
        What is shown, with its unit.
    scale
        The colours.
    ticks
        Figures marked below the bar.
    notes
        Lines below it.
    neutral
        What the neutral grey means, or empty where it cannot occur.
    """

    title: str
    scale: Scale
    ticks: Sequence[Tick]
    notes: Sequence[str] = ()
    neutral: str = ""


class ScaleLegend(Card):
    """A bar of colours with the figures they stand for."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("legends", "Legend of the look"))
        self._words: ScaleWords | None = None
        self._notes: list[str] = []
        self._neutral: list[str] = []
        self.set_words(None)
        self.hide()

    def set_words(self, words: ScaleWords | None) -> None:
        """Show another scale, or say that there is nothing to show yet."""
        self._words = words
        if words is None:
            self.setFixedSize(_WIDTH_PX, 32)
            self.setAccessibleDescription(translate("legends", _NOTHING_YET))
            self.update()
            return
        wide = _WIDTH_PX - 24.0
        self._notes = [line for note in words.notes for line in wrapped(note, wide, 11)]
        self._neutral = wrapped(words.neutral, wide - _SAMPLE_PX, 11)
        lines = len(self._notes) + len(self._neutral)
        self.setFixedSize(_WIDTH_PX, 68 + _LINE_PX * lines)
        spoken = [words.title, *(tick.label for tick in words.ticks), *words.notes, words.neutral]
        self.setAccessibleDescription(", ".join(part for part in spoken if part))
        self.update()

    def paint_contents(self, painter: QPainter) -> None:
        """Draw title, bar, marked figures and notes."""
        words = self._words
        t = tones(self)
        wide = self.width() - 24.0
        if words is None:
            paint_text(
                painter, (12, 21), translate("legends", _NOTHING_YET), t.soft, px=12, width=wide
            )
            return
        paint_text(painter, (12, 20), words.title, t.ink, px=12, weight=550, width=wide)
        bar = QRectF(12, 28, wide, _BAR_PX)
        self._paint_bar(painter, bar, words.scale)
        painter.setPen(QPen(QColor(t.soft), 1))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRect(bar.adjusted(0.5, 0.5, -0.5, -0.5))
        span = words.scale.high - words.scale.low
        for tick in words.ticks:
            share = (tick.figure - words.scale.low) / span
            x = round(bar.left() + share * bar.width()) + 0.5
            x = min(max(x, bar.left() + 0.5), bar.right() - 0.5)
            ink = t.ink if tick.strong else t.soft
            painter.setPen(QPen(QColor(ink), 2 if tick.strong else 1))
            painter.drawLine(
                int(x),
                int(bar.top() if tick.strong else bar.bottom()),
                int(x),
                int(bar.bottom()) + 4,
            )
            at = Align.AlignHCenter
            if share < 0.03:
                at = Align.AlignLeft
            elif share > 0.97:
                at = Align.AlignRight
            weight = 600 if tick.strong else 400
            paint_text(painter, (x, 59), tick.label, ink, px=12, weight=weight, align=at)
        y = 59.0
        for line in self._notes:
            y += _LINE_PX
            paint_text(painter, (12, y), line, t.soft, px=11, width=wide)
        for number, line in enumerate(self._neutral):
            y += _LINE_PX
            if not number:
                painter.fillRect(QRectF(12, y - 10, 18, 12), QColor(*NEUTRAL))
            place = (12 + _SAMPLE_PX, y)
            paint_text(painter, place, line, t.soft, px=11, width=wide - _SAMPLE_PX)

    @staticmethod
    def _paint_bar(painter: QPainter, bar: QRectF, scale: Scale) -> None:
        count = int(bar.width()) * 2
        colours = scale.srgb(np.linspace(scale.low, scale.high, count))
        row = np.ascontiguousarray(colours[None])
        image = QImage(row.tobytes(), count, 1, 3 * count, QImage.Format.Format_RGB888)
        painter.drawImage(bar, image)


class GroundCard(Card):
    """How deep the crown is ground in the look "ground": three depths to choose from.

    Signals
    -------
    depth_chosen
        Millimetres.
    stop_asked
        What is being worked out is no longer wanted.
    """

    depth_chosen = Signal(float)
    stop_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents, False)
        self.setAccessibleName(translate("legends", "Depth of grinding"))
        self.setFixedSize(_WIDTH_PX, 120)
        self.note = ""
        column = QVBoxLayout(self)
        column.setContentsMargins(12, 30, 12, 58)
        row = QHBoxLayout()
        row.setSpacing(4)
        column.addLayout(row)
        self._busy = QProgressBar(self)
        self._busy.setRange(0, 0)
        self._busy.setTextVisible(False)
        self._busy.setAccessibleName(translate("legends", "Grinding is being worked out"))
        self._busy.setGeometry(12, 100, 160, 8)
        self.stop = QToolButton(self)
        self.stop.setText(translate("legends", "Stop"))
        self.stop.setAccessibleName(translate("legends", "Stop working out the ground crown"))
        self.stop.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.stop.setGeometry(_WIDTH_PX - 76, 92, 64, 24)
        self.stop.clicked.connect(self.stop_asked)
        self._group = QButtonGroup(self)
        self.buttons: dict[float, QToolButton] = {}
        for depth in LOOK_DEPTHS_MM:
            button = QToolButton()
            button.setText(f"{depth:.1f} mm")
            button.setCheckable(True)
            button.setFont(font(13, 500))
            button.setMinimumSize(76, 30)
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            button.setAccessibleName(
                translate("legends", "Ground by {depth:.1f} millimetres").format(depth=depth)
            )
            button.clicked.connect(lambda _on, depth=depth: self.depth_chosen.emit(depth))
            self._group.addButton(button)
            self.buttons[depth] = button
            row.addWidget(button)
        self.say("")
        self.hide()

    def set_depth(self, depth_mm: float) -> None:
        """Mark a depth as the one that is shown."""
        blocker = QSignalBlocker(self)
        self.buttons[depth_mm].setChecked(True)
        blocker.unblock()

    def say(self, note: str) -> None:
        """Say what is shown."""
        self._set_note(note, working=False)

    def say_working(self, note: str) -> None:
        """Say that something is on its way, which can be stopped."""
        self._set_note(note, working=True)

    def _set_note(self, note: str, *, working: bool) -> None:
        self.note = note
        for part in (self._busy, self.stop):
            part.setVisible(working)
        self.setAccessibleDescription(note)
        self.update()

    def paint_contents(self, painter: QPainter) -> None:
        """Draw title and notes."""
        t = tones(self)
        wide = self.width() - 24.0
        title = translate("legends", "outer surface ground by")
        paint_text(painter, (12, 20), title, t.ink, px=12, weight=550, width=wide)
        paint_text(painter, (12, 80), self.note, t.soft, px=11, width=wide)
        if self.stop.isHidden():
            limits = translate("legends", "walls thinner by as much; polished again")
            paint_text(painter, (12, 96), limits, t.soft, px=11, width=wide)


class Legends:
    """All legends of one view, of which the look that is on shows at most one."""

    def __init__(self, view: QWidget) -> None:
        self.zones, self.coats = ZoneLegend(view), CoatLegend(view)
        self.scale, self.ground = ScaleLegend(view), GroundCard(view)
        self.row = RowCard(view)

    @property
    def _all(self) -> tuple[Card, ...]:
        return (self.zones, self.coats, self.scale, self.ground, self.row)

    @property
    def is_open(self) -> bool:
        """True while one is shown, or will be as soon as the window is."""
        return any(not card.isHidden() for card in self._all)

    @property
    def rect(self) -> QRect:
        """Where the one that is shown lies; empty if none is."""
        # Not isVisible: a card of a window that is not shown yet counts as well.
        return next((card.geometry() for card in self._all if not card.isHidden()), QRect())

    def hide(self) -> None:
        """Show none."""
        for card in self._all:
            card.hide()

    def show(self, look: Look, width_px: int, edge_px: int) -> None:
        """Show the legend of a look in a view of some width, at its upper right."""
        self.zones.setVisible(look is Look.ZONES and width_px >= _ZONES_FROM_PX)
        self.coats.setVisible(look is Look.COATS)
        self.scale.setVisible(look in SCALED)
        self.ground.setVisible(look is Look.GROUND)
        self.row.setVisible(look is Look.ROW)
        for card in self._all:
            card.move(width_px - edge_px - card.width(), edge_px)
