"""What is written over the crown: numbers, sides, scale, the brush's ring, the probe's line."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QEvent, QLineF, QObject, QPointF, QRect, QRectF, Qt
from PySide6.QtGui import QColor, QFocusEvent, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from stainmap.model.tooth import Tooth
from stainmap.paper.views import FLAT_SIDES, CrownDirections, Side
from stainmap.ui.camera import Camera
from stainmap.ui.marks import Align, paint_pill, paint_text, text_width
from stainmap.ui.row_layer import RowLabel, paint_row_labels
from stainmap.ui.theme import LIGHT, SURROUND_TEXT
from stainmap.ui.zone_shares import ZONE_COUNT
from stainmap.words import translate, value_word

FloatArray = NDArray[np.float64]
_ARM = 36.0
_BESIDE_CARD_PX = 470
_SCALES_MM = (0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0)
_WHITE_HALO = QColor(255, 255, 255, 170)
# The surround is the same in both schemes, so what the active tool would do is too.
_TOOL = QColor(LIGHT.accent)

_FOUND_PX = 17.0


@dataclass(frozen=True, slots=True)
class Pill:
    """A number fixed to a point (3,) of the crown."""

    number: int
    position: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Preview:
    """What a tool would do, as lines on the crown.

    Parameters
    ----------
    pieces, normals
        (n, 2, 3) pieces of lines, mm, and the outward normal (n, 3) at each: those that face
        away are not drawn.
    start
        (3,) place that was clicked first, or None.
    """

    pieces: FloatArray
    normals: FloatArray
    start: FloatArray | None = None


class CrownOverlay(QWidget):
    """A clear sheet over the picture of the crown."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_NoSystemBackground)
        self.setAccessibleName(translate("crown overlay", "Marks on the crown"))
        self.camera: Camera | None = None
        self.directions: CrownDirections | None = None
        self.tooth = Tooth(number=11)
        self.pills: tuple[Pill, ...] = ()
        self.ring: FloatArray | None = None
        self._below = QRect()
        self.ring_point: FloatArray | None = None
        self.preview: Preview | None = None
        self.found: Preview | None = None
        self.cut: Preview | None = None
        self.probe: FloatArray | None = None
        self.probe_anchor = QPointF()
        self.size_word = translate("crown view", "sintered")
        self.has_scale = True
        self.ink = SURROUND_TEXT
        self.row_labels: tuple[RowLabel, ...] = ()
        # True while the keyboard has come to the view by a key.
        self.marks_focus = False
        parent.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Mark the view once the keyboard comes to it by Tab; a click needs no mark."""
        if isinstance(event, QFocusEvent) and watched is self.parent():
            by_key = event.reason() in (
                Qt.FocusReason.TabFocusReason,
                Qt.FocusReason.BacktabFocusReason,
                Qt.FocusReason.ShortcutFocusReason,
            )
            marks = event.gotFocus() and by_key
            if marks != self.marks_focus:
                self.marks_focus = marks
                self.update()
        return super().eventFilter(watched, event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw all marks that apply; of the words at the rim only what is to be painted anew."""
        camera, directions = self.camera, self.directions
        if camera is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.marks_focus:
            painter.setPen(QPen(_TOOL, 2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(2, 2, -2, -2), 3, 3)
        self._paint_pills(painter, camera)
        anew, self._below = event.rect(), QRect()
        # Beside the card with the steps to the neighbours there is no room on a small screen.
        room = not self.row_labels or self.width() >= _BESIDE_CARD_PX
        if directions is not None and room and anew.intersects(self._corner_rect(left=True)):
            self._paint_sides(painter, camera, directions)
        if self.has_scale and anew.intersects(self._corner_rect(left=False)):
            self._paint_scale(painter, camera)
        paint_row_labels(painter, self.row_labels, camera, self.width(), self.height())
        self._paint_found(painter, camera)
        self._paint_cut(painter, camera)
        self._paint_preview(painter, camera)
        self._paint_ring(painter, camera)
        self._paint_probe(painter, camera)
        painter.end()

    def set_ring(self, ring: FloatArray | None) -> None:
        """Draw another outline of the brush; only what it and the last one cover is painted."""
        before, self.ring = self._ring_rect(), ring
        changed = before.united(self._ring_rect())
        if not changed.isEmpty():
            self.update(changed.united(self._below))

    def lies_over(self, changed: QRect) -> None:
        """Take note of what is painted anew below: with the ring it makes one rectangle.

        Painting clipped to anything else takes three times as long.
        """
        self._below = self._below.united(changed)

    def _ring_rect(self) -> QRect:
        """Return where the outline of the brush lies, with room for its line."""
        if self.camera is None or self.ring is None or not len(self.ring):
            return QRect()
        places = self._to_screen(self.camera, self.ring.reshape(-1, 3))[:, :2]
        left, top = (int(v) for v in np.floor(places.min(axis=0)))
        right, bottom = (int(v) for v in np.ceil(places.max(axis=0)))
        return QRect(left, top, right - left, bottom - top).adjusted(-4, -4, 4, 4)

    def _corner_rect(self, *, left: bool) -> QRect:
        """Return where the sides' names, or the scale, have their room at most."""
        wide = min(240, self.width())
        if left and self.row_labels:
            return QRect(0, 0, wide, 150)
        start = 0 if left else self.width() - wide
        high = 150 + self._foot_px(start, start + wide)
        return QRect(start, self.height() - high, wide, high)

    def _to_screen(self, camera: Camera, points: FloatArray) -> FloatArray:
        return camera.project(points, self.width(), self.height())

    def _paint_pills(self, painter: QPainter, camera: Camera) -> None:
        if not self.pills:
            return
        places = self._to_screen(camera, np.array([pill.position for pill in self.pills]))
        for pill, (x, y, _) in zip(self.pills, places, strict=True):
            paint_pill(painter, QPointF(x, y), str(pill.number), large=pill.number <= ZONE_COUNT)

    def _paint_sides(self, painter: QPainter, camera: Camera, directions: CrownDirections) -> None:
        centre = QPointF(86.0, self.height() - 64.0 - self._foot_px(8, 172))
        if self.row_labels:
            # Neighbours stand from side to side at the foot; nothing does above them.
            centre.setY(72.0)
        sides = [Side.OCCLUSAL, *(FLAT_SIDES if directions.sides_known else ())]
        for side in sides:
            x, y = (float(v) for v in camera.axes[:2] @ directions.towards(side))
            length = float(np.hypot(x, y))
            # Arms that point at the viewer are too short to be read; occlusal only from the side.
            if length < (0.8 if side is Side.OCCLUSAL else 0.3):
                continue
            tip = QPointF(centre.x() + _ARM * x, centre.y() - _ARM * y)
            painter.setPen(QPen(QColor(self.ink), 1.2))
            painter.setBrush(QColor(self.ink))
            painter.drawEllipse(centre, 2, 2)
            painter.drawLine(centre, tip)
            word = value_word(directions.word(side, self.tooth))
            out = QPointF(tip.x() + 6 * x / length, tip.y() - 6 * y / length)
            align = Align.AlignHCenter
            if abs(x) > 0.35 * length:
                align = Align.AlignLeft if x > 0 else Align.AlignRight
            drop = 4.0 - 5.0 * y / length
            at = (out.x(), out.y() + drop)
            paint_text(painter, at, word, self.ink, px=12, weight=500, align=align)

    def _foot_px(self, left: int, right: int) -> int:
        """Return how high a card lies on the foot of the view where a mark is to stand."""
        card = getattr(self.parent(), "evaded", None)
        if card is None or not card.isVisible():
            return 0
        place = card.geometry()
        if place.right() < left or place.left() > right or place.bottom() < self.height() - 100:
            return 0
        return int(self.height() - place.top())

    def _paint_scale(self, painter: QPainter, camera: Camera) -> None:
        pixels_per_mm = self.height() / camera.height_mm
        length_mm = next((mm for mm in _SCALES_MM if mm * pixels_per_mm >= 60.0), _SCALES_MM[-1])
        length = length_mm * pixels_per_mm
        text = f"{length_mm:g} mm {self.size_word}".strip()
        width = max(length, text_width(text, 12, 500))
        middle = self.width() - 20.0 - width / 2.0
        y = self.height() - 24.0 - self._foot_px(round(middle - width / 2.0), self.width())
        left, right = middle - length / 2.0, middle + length / 2.0
        painter.setPen(QPen(QColor(self.ink), 1.2))
        painter.drawLine(QLineF(left, y, right, y))
        for x in (left, right):
            painter.drawLine(QLineF(x, y - 4, x, y + 4))
        at = (middle, y - 8)
        paint_text(painter, at, text, self.ink, px=12, weight=500, align=Align.AlignHCenter)

    def _paint_preview(self, painter: QPainter, camera: Camera) -> None:
        preview = self.preview
        if preview is None:
            return
        if len(preview.pieces):
            towards_eye = camera.eye - preview.pieces.mean(axis=1)
            facing = np.einsum("ni,ni->n", towards_eye, preview.normals) > 0.0
            self._paint_pieces(painter, camera, preview.pieces[facing], _TOOL, 2.2)
        if preview.start is not None:
            x, y, _ = (float(v) for v in self._to_screen(camera, preview.start)[0])
            painter.setPen(QPen(_WHITE_HALO, 2.0))
            painter.setBrush(_TOOL)
            painter.drawEllipse(QPointF(x, y), 4, 4)

    def _paint_found(self, painter: QPainter, camera: Camera) -> None:
        """Draw the border of what advice is about, and a ring around its middle."""
        found = self.found
        if found is None:
            return
        if len(found.pieces):
            towards_eye = camera.eye - found.pieces.mean(axis=1)
            facing = np.einsum("ni,ni->n", towards_eye, found.normals) > 0.0
            ink = QColor(SURROUND_TEXT)
            self._paint_pieces(painter, camera, found.pieces[facing], ink, 2.0)
        if found.start is not None:
            x, y, _ = (float(v) for v in self._to_screen(camera, found.start)[0])
            painter.setBrush(Qt.BrushStyle.NoBrush)
            for colour, width in ((_WHITE_HALO, 5.0), (QColor(SURROUND_TEXT), 2.4)):
                painter.setPen(QPen(colour, width))
                painter.drawEllipse(QPointF(x, y), _FOUND_PX, _FOUND_PX)

    def _paint_cut(self, painter: QPainter, camera: Camera) -> None:
        """Draw where a section lies, as far as it is seen from here."""
        cut = self.cut
        if cut is not None and len(cut.pieces):
            towards_eye = camera.eye - cut.pieces.mean(axis=1)
            facing = np.einsum("ni,ni->n", towards_eye, cut.normals) > 0.0
            self._paint_pieces(painter, camera, cut.pieces[facing], _TOOL, 1.6)

    def _paint_ring(self, painter: QPainter, camera: Camera) -> None:
        if self.ring is not None:
            self._paint_pieces(painter, camera, self.ring, QColor(SURROUND_TEXT), 1.2)

    def _paint_pieces(
        self,
        painter: QPainter,
        camera: Camera,
        pieces: FloatArray,
        ink: QColor,
        width_px: float,
    ) -> None:
        """Draw pieces of lines (n, 2, 3) in an ink with a white halo."""
        if not len(pieces):
            return
        points = self._to_screen(camera, pieces.reshape(-1, 3))[:, :2].reshape(-1, 4)
        # One path: halos of single pieces would double where they meet, and take longer.
        path = QPainterPath()
        for x, y, to_x, to_y in points.tolist():
            path.moveTo(x, y)
            path.lineTo(to_x, to_y)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for colour, width in ((_WHITE_HALO, width_px + 2.0), (ink, width_px)):
            pen = QPen(colour, width)
            pen.setCapStyle(Qt.PenCapStyle.SquareCap)
            painter.setPen(pen)
            painter.drawPath(path)

    def _paint_probe(self, painter: QPainter, camera: Camera) -> None:
        if self.probe is None:
            return
        x, y, _ = (float(v) for v in self._to_screen(camera, self.probe)[0])
        place, anchor = QPointF(x, y), self.probe_anchor
        line = QLineF(place, anchor)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for colour, width in ((_WHITE_HALO, 3.2), (QColor(SURROUND_TEXT), 1.1)):
            painter.setPen(QPen(colour, width))
            if self.ring is None:
                painter.drawEllipse(place, 6, 6)
            if line.length() > 8.0:
                painter.drawLine(QLineF(line.pointAt(6.0 / line.length()), anchor))


class EmptyMark(QWidget):
    """The program's sign, dashed, where no crown is open yet; solid while one is read."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAccessibleName(translate("crown overlay", "No crown is open"))
        self._solid = False

    def set_solid(self, solid: bool) -> None:
        """Draw full lines instead of dashes."""
        self._solid = solid
        self.setAccessibleName(
            translate("crown overlay", "A crown is being read")
            if solid
            else translate("crown overlay", "No crown is open")
        )
        self.update()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw two rings and a fissure cross."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        pen = QPen(QColor(SURROUND_TEXT), 1.4)
        if not self._solid:
            pen.setDashPattern([4, 4])
        painter.setPen(pen)
        radius = min(58.0, min(self.width(), self.height()) * 0.16)
        centre = QPointF(self.width() / 2.0, self.height() * 0.42)
        painter.drawEllipse(centre, radius, radius)
        painter.drawEllipse(centre, radius * 0.62, radius * 0.62)
        top = QPointF(centre.x(), centre.y() - radius * 0.45)
        painter.drawLine(top, QPointF(centre.x(), centre.y() + radius * 0.45))
        painter.drawArc(
            QRectF(centre.x() - radius * 0.7, centre.y() - radius * 0.1, radius * 1.4, radius),
            50 * 16,
            80 * 16,
        )
        painter.end()
