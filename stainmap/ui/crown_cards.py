"""Cards at the edge of the crown view: the reading under the pointer, and the legends."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from stainmap.model.zone import Accent, Area
from stainmap.ui.marks import Align, paint_text, text_width
from stainmap.ui.theme import tones
from stainmap.ui.zone_look import MOST_COATS, coat_tones, paint_area_patch
from stainmap.words import translate

_PROBE_PX, _PROBE_HEIGHT_PX, _FIGURE_PX = 290, 98, 20


@dataclass(frozen=True, slots=True, kw_only=True)
class ProbeReading:
    """What is known about one place: area, coats, colour as ``#rrggbb`` with its figures, wall.

    `plus_minus` is one standard deviation of L*; `figure` what the look tells, if that is more.
    """

    area: str
    coats: str
    colour: str
    lightness: float
    chroma: float
    hue_degrees: float
    wall: str
    plus_minus: float
    figure: str = ""

    @property
    def spoken(self) -> str:
        """The reading as one line of text."""
        said = translate(
            "crown cards",
            "{area}, {coats}, L* {lightness:.1f} ± {plus_minus:.1f}, C* {chroma:.1f}, h "
            "{hue_degrees:.0f} degrees, {wall}",
        ).format(
            area=self.area,
            coats=self.coats,
            lightness=self.lightness,
            plus_minus=self.plus_minus,
            chroma=self.chroma,
            hue_degrees=self.hue_degrees,
            wall=self.wall,
        )
        return f"{said}, {self.figure}" if self.figure else said


class Card(QWidget):
    """A plain plate on the crown's surround."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the plate and what the card holds."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(tones(self).panel))
        painter.drawRoundedRect(QRectF(self.rect()), 4, 4)
        self.paint_contents(painter)
        painter.end()

    def paint_contents(self, painter: QPainter) -> None:
        """Draw what stands on the plate."""


class ProbeCard(Card):
    """Colour and wall of the place under the pointer."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedSize(_PROBE_PX, _PROBE_HEIGHT_PX)
        self.setAccessibleName(translate("crown cards", "Reading under the pointer"))
        self._reading: ProbeReading | None = None
        self.hide()

    def set_reading(self, reading: ProbeReading | None) -> None:
        """Show a reading, or hide the card."""
        self._reading = reading
        self.setAccessibleDescription("" if reading is None else reading.spoken)
        taller = _FIGURE_PX if reading is not None and reading.figure else 0
        self.setFixedSize(_PROBE_PX, _PROBE_HEIGHT_PX + taller)
        self.setVisible(reading is not None)
        self.update()

    def paint_contents(self, painter: QPainter) -> None:
        """Draw swatch, names and figures."""
        reading = self._reading
        if reading is None:
            return
        t = tones(self)
        painter.fillRect(QRectF(12, 12, 24, 24), QColor(reading.colour))
        room = self.width() - 58.0
        paint_text(painter, (46, 22), reading.area, t.ink, weight=600, width=room)
        paint_text(painter, (46, 38), reading.coats, t.soft, px=12, width=room)
        figures = (
            ("L*", f"{reading.lightness:.1f}"),
            ("C*", f"{reading.chroma:.1f}"),
            ("h", f"{reading.hue_degrees:.0f}\N{DEGREE SIGN}"),
        )
        for k, (name, value) in enumerate(figures):
            x = 12 + 74.0 * k + (20 if k else 0)
            paint_text(painter, (x, 61), name, t.soft, px=12)
            paint_text(painter, (x + (19 if k < 2 else 12), 61), value, t.ink, weight=550)
        spread = f"\N{PLUS-MINUS SIGN}{reading.plus_minus:.1f}"
        paint_text(painter, (62, 61), spread, t.soft, px=12)
        wide = self.width() - 24.0
        paint_text(painter, (12, 84), reading.wall, t.soft, px=12, width=wide)
        if reading.figure:
            paint_text(painter, (12, 105), reading.figure, t.ink, weight=550, width=wide)


@dataclass(frozen=True, slots=True, kw_only=True)
class LegendRow:
    """One area of the legend: its name as on this tooth, and its size in sintered mm2."""

    area: Area
    name: str
    size_mm2: float | None


class ZoneLegend(Card):
    """Colours, hatches, numbers, names and sizes of the areas."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("crown cards", "Legend of zones"))
        self._zones: tuple[LegendRow, ...] = ()
        self._accents: tuple[LegendRow, ...] = ()
        self._note = ""
        self._name_px = 104.0
        self.hide()

    def set_rows(self, rows: Sequence[LegendRow], note: str = "") -> None:
        """Show these areas; `note` stands below them."""
        self._zones = tuple(row for row in rows if not isinstance(row.area, Accent))
        self._accents = tuple(row for row in rows if isinstance(row.area, Accent))
        self._note = note
        lines = 1 + len(self._zones) + (1 + len(self._accents) if self._accents else 0)
        widest = max((text_width(row.name, 12, 450) for row in rows), default=0.0)
        self._name_px = min(max(104.0, widest + 4.0), 180.0)
        self.setFixedSize(round(100 + self._name_px), 20 + 20 * lines + (18 if note else 0) - 6)
        self.setAccessibleDescription(", ".join(f"{row.area:d} {row.name}" for row in rows))
        self.update()

    def paint_contents(self, painter: QPainter) -> None:
        """Draw the two lists."""
        t = tones(self)
        right = self.width() - 12.0
        y = 21.0
        lists = (
            (translate("crown cards", "zones"), self._zones),
            (translate("crown cards", "on top, dashed"), self._accents),
        )
        for title, rows in lists:
            if not rows:
                continue
            paint_text(painter, (12, y), title, t.soft, px=11)
            paint_text(
                painter,
                (right, y),
                "mm²",
                t.soft,
                px=11,
                align=Align.AlignRight,
            )
            y += 20
            for row in rows:
                paint_area_patch(painter, QRectF(12, y - 11, 18, 14), row.area, t)
                number = str(int(row.area))
                paint_text(
                    painter, (51, y), number, t.ink, px=12, weight=600, align=Align.AlignRight
                )
                paint_text(
                    painter, (58, y), row.name, t.ink, px=12, weight=450, width=self._name_px
                )
                if row.size_mm2 is not None:
                    size = f"{row.size_mm2:.0f}"
                    paint_text(painter, (right, y), size, t.soft, px=12, align=Align.AlignRight)
                y += 20
        if self._note:
            paint_text(painter, (12, y + 2), self._note, t.soft, px=11, width=right - 12)


class CoatLegend(Card):
    """Tones of the numbers of coats."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("crown cards", "Legend of coats"))
        self._title = ""
        self._most = 4
        self.hide()

    def set_range(self, title: str, most: int) -> None:
        """Show the tones of 0 to `most` coats under a title such as "step 3, slate"."""
        self._title = title
        self._most = max(1, min(most, MOST_COATS))
        self.setFixedSize(max(150, 24 + 26 * (self._most + 1)), 66)
        self.setAccessibleDescription(
            translate("crown cards", "{title}, 0 to {most} coats").format(
                title=title, most=self._most
            )
        )
        self.update()

    def paint_contents(self, painter: QPainter) -> None:
        """Draw one patch per number."""
        t = tones(self)
        paint_text(
            painter, (12, 20), self._title, t.ink, px=12, weight=550, width=self.width() - 24.0
        )
        for coats, (red, green, blue) in enumerate(coat_tones()[: self._most + 1]):
            x = 12 + 26.0 * coats
            painter.fillRect(QRectF(x, 28, 26, 14), QColor.fromRgbF(red, green, blue))
            painter.setPen(QPen(QColor(t.soft), 1))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRect(QRectF(x + 0.5, 28.5, 26, 14))
            label = (x + 13, 57)
            paint_text(painter, label, str(coats), t.soft, px=12, align=Align.AlignHCenter)
