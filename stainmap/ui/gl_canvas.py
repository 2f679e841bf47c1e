"""The crown on the screen, drawn by the graphics driver and sparing enough for a software one.

A whole picture is drawn when the camera or the look changes; under the brush only the triangles
that changed are drawn again over it, and only where they lie is put on the screen anew. What takes
a driver long is drawn in pieces between which hands are attended to: until it is there, the
picture before stays, or a lighter mesh from where one looks now. At rest four shifted pictures are
averaged, which smooths edges without multisampling and leaves flat colours exact.
"""

from __future__ import annotations

import time
from enum import Enum, auto

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRect, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QImage,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QShowEvent,
)
from PySide6.QtWidgets import QWidget

from stainmap.ui.crown_buffers import PART, TURNING, WHOLE, CrownBuffers
from stainmap.ui.crown_picture import CrownPicture, Look
from stainmap.ui.crown_shaders import Pass
from stainmap.ui.gl_painter import CORNERS_AT_ONCE, GlPainter, Sheet, surround_of
from stainmap.words import translate

SLOW_FRAME_MS = 40.0
_REST_MS = 140
# As much is drawn at once as takes about so long, and no fewer corners than that.
_PIECE_MS, _FEWEST_CORNERS = 9.0, 9_000
# Before a driver has drawn anything: more corners than this may take it long.
_UNTRIED_CORNERS = 60_000
# Shifts in pixels on a turned grid, so that near-level and near-upright edges gain most.
_SHIFTS = ((-0.125, -0.375), (0.375, -0.125), (0.125, 0.375), (-0.375, 0.125))
_ALL = slice(None)


class _Work(Enum):
    """What is drawn in pieces."""

    WHOLE = auto()
    SHIFTED = auto()
    AREAS = auto()


class GlCanvas(QWidget):
    """Draws a crown; knows nothing of mouse and keys.

    Parameters
    ----------
    painter
        What draws, if it is there already: to get hold of a driver twice takes twice as long.

    Signals
    -------
    drawn
        Milliseconds that a whole picture took.
    averaged
        The picture at rest, with smooth edges, is there.
    areas_drawn
        (h, w, 4) uint8 from the top: zone, accent bits, depth high and low byte.
    shown
        Something new has been put on the screen.
    """

    drawn = Signal(float)
    averaged = Signal()
    areas_drawn = Signal(object)
    shown = Signal()

    def __init__(self, parent: QWidget | None = None, painter: GlPainter | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAccessibleName(translate("gl canvas", "Crown picture"))
        self.arrays = CrownBuffers()
        # A row of teeth with the crown among them; empty until somebody looks at it.
        self.row = CrownBuffers()
        self.frame_ms = 0.0
        self.wants_areas = False
        self._ms_per_corner: float | None = None
        self._picture: CrownPicture | None = None
        self._moving = False
        self._painter: GlPainter | None = None
        # What is on the screen; the picture it was drawn for, where that still is what it shows.
        self._image = QImage()
        self._sheet: Sheet | None = None
        self._stands: CrownPicture | None = None
        self._is_light = False
        self._whole_due = True
        self._parts: list[NDArray[np.int32]] = []
        self._parts_at = QRect()
        # What is being drawn in pieces, and how far that has come.
        self._work: _Work | None = None
        self._work_sheet: Sheet | None = None
        self._work_ms, self._corners_done = 0.0, 0
        self._missed: list[NDArray[np.int32]] = []
        self._shifted: list[Sheet] = []
        self._rest = self._timer(_REST_MS, self._polish)
        self._next = self._timer(0, self._go_on)
        if painter is not None:
            self._take(painter)

    def _timer(self, milliseconds: int, call: object) -> QTimer:
        timer = QTimer(self, singleShot=True, interval=milliseconds)
        timer.timeout.connect(call)
        return timer

    # --- what to draw --------------------------------------------------------------------

    def draw(self, picture: CrownPicture, *, moving: bool = False) -> None:
        """Draw a whole picture soon; `moving` allows a lighter mesh on a slow machine."""
        self._picture, self._moving = picture, moving
        self.draw_again()

    def draw_nothing(self) -> None:
        """Draw the bare surround."""
        self._picture = None
        self.draw_again()

    def draw_again(self) -> None:
        """Draw the whole picture again, because arrays have changed."""
        self._whole_due = True
        self._stop_work()
        self.update()

    def draw_part(self, faces: NDArray[np.int32], where: QRect | None = None) -> None:
        """Draw some triangles again over the picture, after values at their corners changed.

        Only `where` they lie is put on the screen anew; everywhere if that is not told.
        """
        if self._whole_due:
            return
        place = self.rect() if where is None else where
        if self._work is _Work.WHOLE:
            # Some pieces show what was before: these triangles come once more when all are there.
            self._missed.append(faces)
        else:
            self._stop_work()
        # Several dabs may come before the picture is painted: all of them are drawn then.
        self._parts.append(faces)
        self._parts_at = self._parts_at.united(place)
        self.update(place)

    def drop_row(self) -> None:
        """Forget the row of teeth."""
        if self._painter is None:
            self.row.clear()
            return
        with self._painter.current():
            self.row.clear()

    def _stop_work(self) -> None:
        """Let go of what is drawn in pieces, which shows what was before."""
        self._rest.stop()
        self._next.stop()
        self._work, self._missed, self._shifted = None, [], []

    @property
    def _drawn(self) -> CrownBuffers:
        """What the picture shows: the crown, or the row it stands in."""
        picture = self._picture
        in_row = picture is not None and picture.look is Look.ROW
        return self.row if in_row and self.row.face_count(WHOLE) else self.arrays

    @property
    def is_whole(self) -> bool:
        """True if what is on the screen is all of the mesh, as it is now."""
        return not (self._is_light or self._whole_due or self._parts or self._work is _Work.WHOLE)

    @property
    def is_slow(self) -> bool:
        """True if whole pictures take longer than a turning crown allows."""
        return self._expected_ms > SLOW_FRAME_MS

    @property
    def _expected_ms(self) -> float:
        """How long a whole picture will take, by how long the last one took."""
        corners = 3 * self._drawn.face_count(WHOLE)
        if self._ms_per_corner is None:
            return 0.0 if corners <= _UNTRIED_CORNERS else 2.0 * SLOW_FRAME_MS
        return self._ms_per_corner * corners

    # --- Qt's hooks ----------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw what is due, and show what there is."""
        anew = self._bring_up_to_date()
        painter = QPainter(self)
        if self._image.isNull():
            painter.fillRect(event.rect(), surround_of(self._picture))
        else:
            painter.setClipRect(event.rect())
            painter.drawImage(0, 0, self._image)
        painter.end()
        if anew:
            self.shown.emit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw a whole new picture for a new size."""
        super().resizeEvent(event)
        self._sheet = self._work_sheet = self._stands = None
        self.draw_again()

    def showEvent(self, event: QShowEvent) -> None:
        """Draw afresh after having been hidden."""
        self._whole_due = True
        super().showEvent(event)

    def grabFramebuffer(self) -> QImage:
        """Return the picture with everything that is due, in device pixels."""
        self._bring_up_to_date()
        while self._work is _Work.WHOLE:
            self._go_on()
        return self._image.copy()

    # --- drawing it ----------------------------------------------------------------------

    def _ready(self) -> GlPainter | None:
        """Return what draws, with a sheet of the right size; None if there is no driver."""
        painter = self._take(GlPainter()) if self._painter is None else self._painter
        return painter if painter.is_ready else None

    def _take(self, painter: GlPainter) -> GlPainter:
        """Draw with a painter from now on; it is let go with the canvas."""
        self._painter = painter
        painter.keeps(self.arrays, self.row)
        self.arrays.forget_card()
        self.row.forget_card()
        self.destroyed.connect(lambda *_: painter.release())
        return painter

    def _bring_up_to_date(self) -> bool:
        """Draw what is due; return whether the picture is another one now."""
        if not (self._whole_due or self._parts):
            return False
        painter = self._ready()
        if painter is None:
            return False
        with painter.current():
            if self._sheet is None or self._sheet.size != self._pixels:
                self._sheet, self._stands, self._whole_due = Sheet.of(self._pixels), None, True
            if self._whole_due:
                return self._draw_whole(painter, self._sheet)
            self._draw_parts(painter, self._sheet, self._parts)
            self._read(painter, self._sheet, self._parts_at)
            self._parts, self._parts_at = [], QRect()
            if self._work is None:
                self._rest.start()
        return True

    def _draw_whole(self, painter: GlPainter, sheet: Sheet) -> bool:
        """Draw the whole picture, or begin to; return whether there is something to see of it."""
        self._whole_due, self._parts, self._parts_at = False, [], QRect()
        picture, slow = self._picture, self.is_slow
        if picture is not None and slow and not self._moving:
            self._begin(_Work.WHOLE)
            if self._stands is not None and _same_place(self._stands, picture):
                return False
        light = self._is_light = slow and self._drawn.face_count(TURNING) > 0
        began = time.perf_counter()
        painter.begin(sheet)
        painter.clear(surround_of(picture))
        self._draw(painter, TURNING if light else WHOLE)
        if not self._moving and not slow:
            painter.finish()
        self._read(painter, sheet, QRect())
        self._stands = picture
        if picture is not None and not self._moving and not slow:
            self._note_time(1e3 * (time.perf_counter() - began))
            self._rest.start()
        return True

    def _draw(
        self,
        painter: GlPainter,
        faces: str,
        *,
        shift: tuple[float, float] = (0.0, 0.0),
        which: Pass | None = None,
        corners: slice = _ALL,
        lifted: bool = False,
    ) -> None:
        if self._picture is not None:
            view = (max(self.width(), 1), max(self.height(), 1), self.devicePixelRatioF())
            drawn = self._drawn
            painter.triangles(
                drawn,
                self._picture,
                faces,
                view,
                shift=shift,
                which=which,
                corners=corners,
                lifted=lifted,
            )

    def _draw_parts(self, painter: GlPainter, sheet: Sheet, parts: list[NDArray[np.int32]]) -> None:
        self._drawn.set_faces(PART, np.concatenate(parts))
        painter.begin(sheet)
        self._draw(painter, PART, lifted=self._is_light)

    def _note_time(self, milliseconds: float) -> None:
        self.frame_ms = milliseconds
        self._ms_per_corner = milliseconds / max(3 * self._drawn.face_count(WHOLE), 1)
        self.drawn.emit(milliseconds)

    def _read(self, painter: GlPainter, sheet: Sheet, where: QRect) -> None:
        """Take a rectangle (logical pixels) of a sheet onto the screen's picture; all if empty."""
        ratio, size = self.devicePixelRatioF(), sheet.size
        everything = QRect(0, 0, size.width(), size.height())
        if self._image.size() != size:
            self._image, where = QImage(size, QImage.Format.Format_RGB32), QRect()
            self._image.setDevicePixelRatio(ratio)
        place = everything
        if not where.isEmpty():
            left, top = int(where.left() * ratio) - 1, int(where.top() * ratio) - 1
            wide, high = int(where.width() * ratio) + 3, int(where.height() * ratio) + 3
            place = QRect(left, top, wide, high).intersected(everything)
        if place.isEmpty():
            return
        shown = np.frombuffer(self._image.bits(), np.uint8)
        shown = shown.reshape(size.height(), self._image.bytesPerLine() // 4, 4)
        rows = slice(place.top(), place.bottom() + 1)
        shown[rows, place.left() : place.right() + 1] = painter.read(sheet, place)

    @property
    def _pixels(self) -> QSize:
        ratio = self.devicePixelRatioF()
        return QSize(max(round(self.width() * ratio), 1), max(round(self.height() * ratio), 1))

    # --- in pieces -----------------------------------------------------------------------

    def _begin(self, work: _Work) -> None:
        self._work, self._work_ms, self._corners_done = work, 0.0, 0
        self._missed = []
        self._next.start()

    def _polish(self) -> None:
        """At rest: begin with the first of the shifted pictures."""
        if self._whole_due or self._parts or self._picture is None or self._moving:
            return
        if self.isVisible() and self._work is None:
            self._begin(_Work.SHIFTED)

    def _go_on(self) -> None:
        """Draw one more piece, and come back for the next."""
        work, painter = self._work, self._ready()
        if work is None or painter is None or self._picture is None or not self.isVisible():
            return
        with painter.current():
            if self._work_sheet is None or self._work_sheet.size != self._pixels:
                self._work_sheet = Sheet.of(self._pixels)
            sheet = self._work_sheet
            began = time.perf_counter()
            size = self._areas_size if work is _Work.AREAS else None
            painter.begin(sheet, size)
            if not self._corners_done:
                empty = QColor(0, 0, 0, 0)
                painter.clear(empty if work is _Work.AREAS else surround_of(self._picture))
            corners = 3 * self._drawn.face_count(WHOLE)
            piece = slice(self._corners_done, min(self._corners_done + self._at_once, corners))
            shift = _SHIFTS[len(self._shifted)] if work is _Work.SHIFTED else (0.0, 0.0)
            which = Pass.AREAS if work is _Work.AREAS else None
            self._draw(painter, WHOLE, shift=shift, which=which, corners=piece)
            painter.finish()
            self._work_ms += 1e3 * (time.perf_counter() - began)
            self._corners_done = piece.stop
            if self._corners_done < corners:
                self._next.start()
                return
            self._end_work(work, painter, sheet)

    @property
    def _at_once(self) -> int:
        """How many corners are drawn in one piece."""
        if not self.is_slow:
            return 3 * self._drawn.face_count(WHOLE)
        each = self._ms_per_corner
        most = CORNERS_AT_ONCE if each is None else int(_PIECE_MS / max(each, 1e-7))
        most = min(max(most, _FEWEST_CORNERS), CORNERS_AT_ONCE)
        return most - most % 3

    def _end_work(self, work: _Work, painter: GlPainter, sheet: Sheet) -> None:
        """Show, or keep, what has been drawn in pieces."""
        self._work = None
        if work is _Work.WHOLE:
            missed, self._missed, self._is_light = self._missed, [], False
            if missed:
                self._draw_parts(painter, sheet, missed)
            self._sheet, self._work_sheet = sheet, self._sheet
            self._stands = self._picture
            self._parts, self._parts_at = [], QRect()
            self._read(painter, sheet, QRect())
            self._note_time(self._work_ms)
            self._rest.start()
            self.update()
            self.shown.emit()
        elif work is _Work.SHIFTED:
            kept = Sheet.of(sheet.size, with_depth=False)
            painter.copy(sheet, kept)
            self._shifted.append(kept)
            if len(self._shifted) < len(_SHIFTS):
                self._begin(_Work.SHIFTED)
            else:
                self._end_average(painter)
        else:
            size = self._areas_size
            height = sheet.size.height()
            corner = QRect(0, height - size.height(), size.width(), size.height())
            self._work_sheet = None
            self.areas_drawn.emit(painter.read(sheet, corner, as_screen=False).copy())

    def _end_average(self, painter: GlPainter) -> None:
        """Show the mean of the shifted pictures, over the depth of the one that is not."""
        if self._sheet is None:
            return
        painter.begin(self._sheet)
        painter.average(self._shifted)
        self._read(painter, self._sheet, QRect())
        self._shifted = []
        if self.wants_areas:
            self._begin(_Work.AREAS)
        else:
            # Eight bytes a pixel that nothing needs until the crown is looked at anew.
            self._work_sheet = None
        self.update()
        self.averaged.emit()

    @property
    def _areas_size(self) -> QSize:
        return QSize(max(self.width() // 2, 1), max(self.height() // 2, 1))


def _same_place(one: CrownPicture, other: CrownPicture) -> bool:
    """Return True if two pictures show a crown from the same place in the same look."""
    return one.camera is other.camera and one.look is other.look
