"""One flat view of a unit: a side, or the rosette. Painted on like the crown."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QEvent, QPointF, QRect, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QResizeEvent,
)
from PySide6.QtWidgets import QWidget

from stainmap.app.job import JobRunner, Progress
from stainmap.errors import StainmapError
from stainmap.surface.mesh import BoolArray, FloatArray, IndexArray, TriMesh
from stainmap.surface.picking import Hit
from stainmap.ui.crown_buffers import plain_shading
from stainmap.ui.crown_picture import Look, SeenValues
from stainmap.ui.crown_view import PointerTask
from stainmap.ui.flat_colours import Box, coloured
from stainmap.ui.flat_marks import (
    WORDS_FROM_PX,
    SideMark,
    paint_found,
    paint_marks,
    paint_ring,
)
from stainmap.ui.flat_picture import FlatLight, FlatPicture, FlatSheet, Margins, fitted_scale
from stainmap.ui.marks import Align, paint_pill, paint_text, text_width
from stainmap.ui.pill_places import pill_places
from stainmap.ui.theme import SURROUND, SURROUND_TEXT
from stainmap.ui.zone_shares import ACCENTS, ZONE_COUNT
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.paper.shading import ShadingFields

_AT_ONCE_MS, _SETTLE_MS, _PILLS_MS, _HOVER_MS = 0, 90, 160, 25
_CAPTION_PX, _ABOVE_PX, _LETTER_PX = 22, 6, 12
# Logical pixels per mm from which areas have room for their numbers.
_DISC_PILLS_FROM, _SIDE_PILLS_FROM, _ACCENT_PILLS_FROM = 6.0, 12.0, 15.0
_SMALLEST_PX = 48
# A stroke is a chain of dabs no farther apart than this share of the brush's radius.
_DAB_SHARE, _HALVINGS = 0.5, 5


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FlatContent:
    """What a view is to show.

    Parameters
    ----------
    mesh, sheet
        The crown, and the part of it that is shown.
    occlusal
        (3,) where some of the light comes from.
    marks
        The words around it, one tuple for each disc of the sheet; one for a side.
    """

    mesh: TriMesh
    sheet: FlatSheet
    occlusal: FloatArray
    marks: tuple[tuple[SideMark, ...], ...]


class FlatView(QWidget):
    """Shows one flat view and turns what the mouse does to it into places on the crown.

    Signals
    -------
    pointed_at
        `Hit` under the pointer, or None.
    stroke_began, stroke_moved
        Position (3,) mm, nearest vertex, keyboard modifiers.
    stroke_ended, stroke_cancelled
        The button was lifted; Esc was pressed before it was.
    place_chosen, tool_placed
        As the crown's: a `Hit` that was clicked as an answer, or for a tool with the modifiers.
    caption_clicked
        The name under the view was clicked.
    """

    pointed_at = Signal(object)
    stroke_began = Signal(object, int, object)
    stroke_moved = Signal(object, int, object)
    stroke_ended = Signal()
    stroke_cancelled = Signal()
    place_chosen = Signal(object)
    tool_placed = Signal(object, object)
    caption_clicked = Signal()

    def __init__(self, name: str, runner: JobRunner, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._runner = runner
        self._caption, self._message = name, ""
        self._content: FlatContent | None = None
        self._values: SeenValues | None = None
        self.picture: FlatPicture | None = None
        self._light: FlatLight | None = None
        self._lit_as: tuple[int, bool] | None = None
        self._plain: ShadingFields | None = None
        self._pixels: NDArray[np.uint8] | None = None
        self._pills: list[tuple[int, QPointF]] = []
        self._ring: FloatArray | None = None
        self._found: tuple[BoolArray, int] | None = None
        self._found_drawn: tuple[FloatArray, FloatArray | None] | None = None
        self._order = 0
        self._asked: tuple[float, ...] | None = None
        self.scale_limit = np.inf
        self.brush_mm: float = 0.6
        self._ring_shown = False
        self._task = PointerTask.TURN
        self._painting = self._pointed = False
        self._pointer: QPointF | None = None
        self._stroke_at = QPointF()
        self._stroke_hit: Hit | None = None
        self._settle = self._timer(_SETTLE_MS, self._build)
        self._number = self._timer(_PILLS_MS, self._place_pills)
        self._hover = self._timer(_HOVER_MS, self._point)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.ClickFocus)
        self.setMinimumSize(_SMALLEST_PX, _SMALLEST_PX)
        self.set_caption(name)

    def _timer(self, milliseconds: int, call: Callable[[], None]) -> QTimer:
        timer = QTimer(self, singleShot=True, interval=milliseconds)
        timer.timeout.connect(call)
        return timer

    # --- what is shown -------------------------------------------------------------------

    def set_caption(self, caption: str) -> None:
        """Name the view."""
        self._caption = caption
        self.setAccessibleName(
            translate("flat view", "Flat view, {caption}").format(caption=caption)
        )
        self.update()

    def set_content(self, content: FlatContent | None, message: str = "") -> None:
        """Show something else, or only a sentence."""
        self._message = message
        if content is not self._content:
            self._content = content
            self._forget()
            if content is not None and self.isVisible():
                self._settle.start(_AT_ONCE_MS)
        self.update()

    def _forget(self) -> None:
        self._order += 1
        self._asked = None
        self.picture = self._light = self._lit_as = self._pixels = self._ring = self._plain = None
        self._found_drawn = None
        self._pills = []

    @property
    def message(self) -> str:
        """What is said in place of a picture."""
        return self._message

    @property
    def ring(self) -> FloatArray | None:
        """The outline of the brush as it is drawn, line pieces in pixels."""
        return self._ring

    @property
    def is_ready(self) -> bool:
        """True once the picture is there in its size."""
        return self._pixels is not None and self._fits and not self._settle.isActive()

    @property
    def _fits(self) -> bool:
        """True while the picture has the size of the view."""
        ratio, picture = self.devicePixelRatioF(), self.picture
        size = (round(self.width() * ratio), round(self.height() * ratio))
        return picture is not None and (picture.width, picture.height) == size

    def set_values(self, values: SeenValues | None) -> None:
        """Take what the crown shows; all of the view is coloured anew."""
        self._values = values
        self._colour(None)
        self.update()

    def change_at(self, values: SeenValues, vertices: IndexArray) -> None:
        """Take what the crown shows, which has changed at some vertices only."""
        self._values = values
        box = None if self.picture is None else self.picture.box_of(vertices)
        if box is not None:
            self._colour(box)
            ratio = self.devicePixelRatioF()
            left, top, right, bottom = (int(v / ratio) for v in box)
            self.update(QRect(left, top, right - left + 2, bottom - top + 2))

    def _colour(self, box: Box | None) -> None:
        picture, values = self.picture, self._values
        if picture is None or values is None:
            return
        if values.fields is None and self._plain is None:
            self._plain = plain_shading(picture.mesh)
        fields = values.fields or self._plain
        if fields is None:
            return
        chalk = values.look is Look.BENCH
        if self._light is None or self._lit_as != (id(fields), chalk):
            occlusal = np.zeros(3) if self._content is None else self._content.occlusal
            self._light = picture.light(fields, occlusal, chalk=chalk)
            self._lit_as = (id(fields), chalk)
        ratio = self.devicePixelRatioF()
        whole = (0, 0, picture.width, picture.height)
        if box is None or self._pixels is None:
            self._pixels = coloured(picture, self._light, values, whole, ratio)
        else:
            left, top, right, bottom = box
            part = coloured(picture, self._light, values, box, ratio)
            self._pixels[top:bottom, left:right] = part
        if values.look is Look.ZONES:
            self._number.start()
        else:
            self._pills = []

    def _place_pills(self) -> None:
        """Put the numbers of areas into the middle of their widest parts."""
        picture, values = self.picture, self._values
        if picture is None or values is None or values.zones is None or values.accents is None:
            return
        scale = picture.pixels_per_mm / self.devicePixelRatioF()
        least = _DISC_PILLS_FROM if picture.sheet.discs else _SIDE_PILLS_FROM
        if values.look is not Look.ZONES or scale < least:
            return
        rows = np.arange(len(picture.corners), dtype=np.int32)
        shares = picture.take(values.zones, rows)
        areas = np.zeros((*picture.rows.shape, 4), np.uint8)
        shown = picture.rows >= 0
        zone = np.where(shares.max(axis=1) > 0.02, shares.argmax(axis=1) + 1, 0)
        bits = (picture.take(values.accents, rows) > 0.5) @ (1 << np.arange(len(ACCENTS)))
        areas[shown, 0], areas[shown, 1] = zone, bits * (scale >= _ACCENT_PILLS_FROM)
        ratio = self.devicePixelRatioF()
        self._pills = [
            (place.number, QPointF(place.x, place.y)) for place in pill_places(areas, 1.0 / ratio)
        ]
        self.update()

    # --- what advice is about ------------------------------------------------------------

    def show_found(self, inside: BoolArray | None, vertex: int = 0) -> None:
        """Mark a region (V,) of the crown and a vertex in its middle; None takes the mark away."""
        self._found = None if inside is None else (inside, vertex)
        self._outline_found()
        self.update()

    @property
    def found(self) -> tuple[FloatArray, FloatArray | None] | None:
        """The mark as it is drawn: line pieces in pixels, and its middle if that is seen."""
        return self._found_drawn

    def _outline_found(self) -> None:
        picture, found = self.picture, self._found
        self._found_drawn = None
        if picture is None or found is None or len(found[0]) != picture.mesh.vertex_count:
            return
        inside, vertex = found
        self._found_drawn = picture.outline(inside), picture.place_of_vertex(vertex)

    # --- size ----------------------------------------------------------------------------

    @property
    def _margins(self) -> Margins:
        beside = _LETTER_PX + 5
        if self.width() >= WORDS_FROM_PX and self._content is not None:
            words = [mark.word for marks in self._content.marks for mark in marks]
            widest = max((text_width(word, 12, 500) for word in words), default=0.0)
            beside = round(widest) + 14
        above = _ABOVE_PX
        if self._content is not None and self._content.sheet.axes is None:
            above += 14
        return beside, above, _CAPTION_PX + (14 if above > _ABOVE_PX else 0)

    def fitted_scale(self) -> float:
        """Return the logical pixels per mm at which the content fills the view."""
        if self._content is None:
            return np.inf
        return fitted_scale(self._content.sheet, self.width(), self.height(), self._margins)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Make a picture of the new size once the size has settled."""
        super().resizeEvent(event)
        if self._content is not None:
            self._settle.start(_SETTLE_MS)

    def build_soon(self) -> None:
        """Make the picture, unless it is there in this size and scale."""
        if self._content is not None:
            self._settle.start(_AT_ONCE_MS)

    def _build(self) -> None:
        content = self._content
        if content is None or not self.isVisible():
            return
        ratio = self.devicePixelRatioF()
        width, height = (round(v * ratio) for v in (self.width(), self.height()))
        beside, above, below = (round(v * ratio) for v in self._margins)
        limit = self.scale_limit * ratio
        asked: tuple[float, ...] = (width, height, beside, above, below, limit)
        if self._asked == asked:
            return
        self._asked = asked
        self._order += 1
        order = self._order

        def work(_progress: Progress) -> FlatPicture | None:
            if not self._is_newest(order):
                return None  # another size has been asked for since
            margins = (beside, above, below)
            return FlatPicture(content.mesh, content.sheet, width, height, margins, limit)

        def done(picture: FlatPicture | None) -> None:
            if self._is_newest(order) and picture is not None:
                self.picture, self._light, self._pixels = picture, None, None
                self._ring = None
                self._outline_found()
                self._colour(None)
                self.update()

        def failed(error: StainmapError) -> None:
            if self._is_newest(order):
                self._message = str(error)
                self.update()

        self._runner.start(
            translate("flat view", "Drawing a flat view"), work, on_done=done, on_failed=failed
        )

    def _is_newest(self, order: int) -> bool:
        return order == self._order

    # --- drawing -------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Show the pixels, and what is written over them."""
        painter = QPainter(self)
        painter.fillRect(event.rect(), QColor(SURROUND))
        picture = self.picture
        if picture is not None and self._pixels is not None:
            height, width = self._pixels.shape[:2]
            format_ = QImage.Format.Format_RGB888
            image = QImage(self._pixels.data, width, height, 3 * width, format_)
            # Until there is one of the new size, the old one is stretched.
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform, not self._fits)
            painter.drawImage(self.rect(), image)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if picture is not None and self._pixels is not None and self._fits:
            for number, place in self._pills:
                paint_pill(painter, place, str(number), large=number <= ZONE_COUNT)
            if self._content is not None:
                paint_marks(painter, self.rect(), picture, self._content.sheet, self._content.marks)
            if self._found_drawn is not None:
                pieces, middle = self._found_drawn
                ratio = self.devicePixelRatioF()
                paint_found(painter, pieces / ratio, None if middle is None else middle / ratio)
            if self._ring is not None:
                paint_ring(painter, self._ring / self.devicePixelRatioF())
        elif picture is None and self._message:
            room = QRect(8, 8, max(self.width() - 16, 8), max(self.height() - _CAPTION_PX - 12, 8))
            painter.setPen(QColor(SURROUND_TEXT))
            flags = int(Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap)
            painter.drawText(room, flags, self._message)
        at = (self.width() / 2.0, self.height() - 7.0)
        centre = Align.AlignHCenter
        paint_text(painter, at, self._caption, SURROUND_TEXT, px=12, weight=500, align=centre)
        painter.end()

    # --- pointing and painting -----------------------------------------------------------

    def set_task(self, task: PointerTask, ring_mm: float | None) -> None:
        """Say what the left button does, and how large the brush is; None for no outline."""
        self._task, self._ring_shown = task, ring_mm is not None
        if ring_mm is not None:
            self.brush_mm = ring_mm
        idle = task is PointerTask.TURN
        self.setCursor(Qt.CursorShape.ArrowCursor if idle else Qt.CursorShape.CrossCursor)

    def pick(self, at: QPointF) -> Hit | None:
        """Return the place of the crown under a place of the view, in logical pixels."""
        if self.picture is None or not self._fits:
            return None
        ratio = self.devicePixelRatioF()
        return self.picture.pick(at.x() * ratio, at.y() * ratio)

    def show_pointer(self, hit: Hit | None) -> None:
        """Draw the brush's outline around a place of the crown, wherever it is pointed at."""
        ring = None
        picture = self.picture if self._ring_shown else None
        if hit is not None and picture is not None and picture.place_of(hit) is not None:
            ring = picture.ring(hit.position, self.brush_mm)
        if ring is not None or self._ring is not None:
            self._ring = ring
            self.update()

    def _point(self) -> None:
        if self._painting or self._pointer is None:
            return
        hit = self.pick(self._pointer)
        if hit is not None or self._pointed:
            self._pointed = hit is not None
            self.pointed_at.emit(hit)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a stroke; the name below is a button."""
        if event.button() != Qt.MouseButton.LeftButton or self._painting:
            return
        hit = self.pick(event.position())
        if hit is None:
            if event.position().y() > self.height() - _CAPTION_PX:
                self.caption_clicked.emit()
            return
        if self._task is PointerTask.PLACE:
            self.tool_placed.emit(hit, event.modifiers())
        elif self._task is PointerTask.ASK:
            self.place_chosen.emit(hit)
        if self._task is not PointerTask.PAINT:
            return
        self._painting, self._stroke_at, self._stroke_hit = True, event.position(), hit
        self.stroke_began.emit(hit.position, hit.vertex, event.modifiers())
        self.show_pointer(hit)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Paint on, or look what lies under the pointer."""
        self._pointer = event.position()
        if self._painting:
            self._stroke_to(event.position(), event.modifiers())
        else:
            self._hover.start()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End the stroke."""
        if self._painting and event.button() == Qt.MouseButton.LeftButton:
            self._painting = False
            self.stroke_ended.emit()
            self._hover.start()

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is pointed at any more."""
        super().leaveEvent(event)
        self._pointer = None
        if self._pointed:
            self._pointed = False
            self.pointed_at.emit(None)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc takes the stroke back; all other keys are the pane's."""
        if self._painting:
            if event.key() == Qt.Key.Key_Escape:
                self._painting = False
                self.stroke_cancelled.emit()
            return
        event.ignore()

    def _stroke_to(self, end: QPointF, keys: Qt.KeyboardModifier) -> None:
        """Dab along the line to a place, closely enough for the surface that lies there."""
        hit = self.pick(end)
        self._dab_between(self._stroke_at, self._stroke_hit, end, hit, keys, _HALVINGS)
        self._stroke_at, self._stroke_hit = end, hit
        if hit is not None:
            self.show_pointer(hit)

    def _dab_between(
        self,
        start: QPointF,
        first: Hit | None,
        end: QPointF,
        last: Hit | None,
        keys: Qt.KeyboardModifier,
        halvings: int,
    ) -> None:
        """Emit the end of a line, and its middle and so on before, where they are far apart."""
        way = end - start
        pixels = float(np.hypot(way.x(), way.y()))
        far = first is None or last is None
        if first is not None and last is not None:
            apart = float(np.linalg.norm(first.position - last.position))
            far = apart > _DAB_SHARE * self.brush_mm
        if far and halvings and pixels > 2.0:
            middle = (start + end) / 2.0
            hit = self.pick(middle)
            self._dab_between(start, first, middle, hit, keys, halvings - 1)
            self._dab_between(middle, hit, end, last, keys, halvings - 1)
        elif last is not None and self._painting:
            self.stroke_moved.emit(last.position, last.vertex, keys)
