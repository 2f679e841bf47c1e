"""The crown drawn by the graphics driver (OpenGL 3.3 core), sparing enough for a software driver.

A whole picture is drawn when the camera or the look changes; under the brush only the triangles
that changed are drawn again over it. At rest four shifted pictures are averaged, which smooths
edges without multisampling and leaves flat colours exact.
"""

from __future__ import annotations

import os
import time

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QOffscreenSurface,
    QOpenGLContext,
    QShowEvent,
    QSurfaceFormat,
)
from PySide6.QtOpenGL import (
    QOpenGLFramebufferObject,
    QOpenGLFramebufferObjectFormat,
    QOpenGLFunctions_3_3_Core,
    QOpenGLVersionFunctionsFactory,
    QOpenGLVersionProfile,
    QOpenGLVertexArrayObject,
)
from PySide6.QtOpenGLWidgets import QOpenGLWidget
from PySide6.QtWidgets import QWidget

from stainmap.ui import zone_look
from stainmap.ui.crown_buffers import PART, POINTER, TURNING, WHOLE, CrownBuffers
from stainmap.ui.crown_picture import ROW_SURROUND_LINEAR, SCALED, SCALED_RELIEF, CrownPicture, Look
from stainmap.ui.crown_shaders import ATTRIBUTES, Pass, Program, crown_program, resolve_program
from stainmap.ui.theme import SURROUND

SLOW_FRAME_MS = 40.0
_REST_MS = 140
_DEPTH_TEST, _LEQUAL, _CULL_FACE = 0x0B71, 0x0203, 0x0B44
_COLOUR_AND_DEPTH = 0x4000 | 0x0100
_TRIANGLES, _UNSIGNED_INT = 0x0004, 0x1405
# A software driver gathers all triangles it has not been told to draw: 60 MB for half a million.
_CORNERS_AT_ONCE, _INDEX_BYTES = 60_000, 4
_TEXTURE_0, _TEXTURE_2D = 0x84C0, 0x0DE1
_RGBA, _UNSIGNED_BYTE, _RGBA8 = 0x1908, 0x1401, 0x8058
_ALL = slice(None)
# Shifts in pixels on a turned grid, so that near-level and near-upright edges gain most.
_SHIFTS = ((-0.125, -0.375), (0.375, -0.125), (0.125, 0.375), (-0.375, 0.125))


def gl_format() -> QSurfaceFormat:
    """Return the surface format the canvas asks for: 3.3 core, plain 8-bit, no multisampling."""
    surface = QSurfaceFormat()
    surface.setVersion(3, 3)
    surface.setProfile(QSurfaceFormat.OpenGLContextProfile.CoreProfile)
    surface.setDepthBufferSize(24)
    surface.setSamples(0)
    return surface


def has_gl() -> bool:
    """Return True if an OpenGL 3.3 core context can be had; STAINMAP_NO_GL=1 says no."""
    if os.environ.get("STAINMAP_NO_GL"):
        return False
    surface = QOffscreenSurface()
    surface.setFormat(gl_format())
    surface.create()
    context = QOpenGLContext()
    context.setFormat(gl_format())
    if not surface.isValid() or not context.create() or not context.makeCurrent(surface):
        return False
    version = context.format().version()
    context.doneCurrent()
    return version >= (3, 3)


class GlCanvas(QOpenGLWidget):
    """Draws a crown; knows nothing of mouse and keys.

    Signals
    -------
    drawn
        Milliseconds that a whole picture took.
    averaged
        The picture at rest, with smooth edges, is there.
    areas_drawn
        (h, w, 4) uint8 from the top: zone, accent bits, depth high and low byte.
    """

    drawn = Signal(float)
    averaged = Signal()
    areas_drawn = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFormat(gl_format())
        self.setUpdateBehavior(QOpenGLWidget.UpdateBehavior.PartialUpdate)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAccessibleName("Crown picture")
        self.arrays = CrownBuffers()
        # A row of teeth with the crown among them; empty until somebody looks at it.
        self.row = CrownBuffers()
        self.frame_ms = 0.0
        self.wants_areas = False
        self._picture: CrownPicture | None = None
        self._moving = False
        self._functions: QOpenGLFunctions_3_3_Core | None = None
        self._array: QOpenGLVertexArrayObject | None = None
        self._programs: dict[Pass, Program] = {}
        self._resolve: Program | None = None
        self._shifted: list[QOpenGLFramebufferObject] = []
        self._shifts_done = self._corners_done = 0
        self._whole_due = True
        self._resolve_due = False
        self._part_due = False
        self._parts: list[NDArray[np.int32]] = []
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.timeout.connect(self._polish)

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
        self._whole_due, self._part_due, self._resolve_due = True, False, False
        self._stop_polishing()
        self.update()

    def draw_part(self, faces: NDArray[np.int32]) -> None:
        """Draw some triangles again over the picture, after values at their corners changed."""
        self._stop_polishing()
        self._resolve_due = False
        if not self._whole_due:
            # Several dabs may come before the picture is painted: all of them are drawn then.
            self._parts = [*self._parts, faces] if self._part_due else [faces]
            self._part_due = True
        self.update()

    def _stop_polishing(self) -> None:
        """Begin with the first shifted picture next time: the ones drawn show what was before."""
        self._rest.stop()
        self._rest.setProperty("shift", False)

    @property
    def _drawn(self) -> CrownBuffers:
        """What the picture shows: the crown, or the row it stands in."""
        picture = self._picture
        in_row = picture is not None and picture.look is Look.ROW
        return self.row if in_row and self.row.face_count(WHOLE) else self.arrays

    def drop_row(self) -> None:
        """Forget the row of teeth."""
        self.makeCurrent()
        self.row.clear()
        self.doneCurrent()

    @property
    def is_slow(self) -> bool:
        """True if whole pictures take longer than a turning crown allows."""
        return self.frame_ms > SLOW_FRAME_MS

    # --- Qt's OpenGL hooks ---------------------------------------------------------------

    def initializeGL(self) -> None:
        """Build programs for a new context; everything is uploaded again."""
        context = self.context()
        functions = QOpenGLVersionFunctionsFactory.get(QOpenGLVersionProfile(gl_format()), context)
        if not isinstance(functions, QOpenGLFunctions_3_3_Core):
            return
        functions.initializeOpenGLFunctions()
        self._functions = functions
        self.arrays.forget_card()
        self.row.forget_card()
        self._programs = {which: crown_program(functions, which) for which in Pass}
        self._resolve = resolve_program(functions)
        self._array = QOpenGLVertexArrayObject()
        self._array.create()
        self._shifted = []
        self._set_constants()
        self._whole_due = True
        context.aboutToBeDestroyed.connect(self._let_go, Qt.ConnectionType.DirectConnection)

    def resizeGL(self, _width: int, _height: int) -> None:
        """Draw a whole new picture for a new size."""
        self._whole_due = True
        self._shifted = []

    def paintGL(self) -> None:
        """Draw what is due; with nothing due the last picture stands."""
        if self._functions is None:
            return
        if self._whole_due:
            self._paint_whole()
        elif self._part_due:
            self._drawn.set_faces(PART, np.concatenate(self._parts))
            self._paint_triangles(PART, (0.0, 0.0))
            self._part_due, self._parts = False, []
            self._rest.start(_REST_MS)
        elif self._resolve_due:
            self._paint_average()

    def showEvent(self, event: QShowEvent) -> None:
        """Draw afresh after having been hidden."""
        self._whole_due = True
        super().showEvent(event)

    # --- inside --------------------------------------------------------------------------

    def _set_constants(self) -> None:
        zones = self._programs[Pass.ZONES]
        zones.bind()
        zones.set_list("zone_colour", zone_look.shader_zone_colours())
        zones.set_list("hatch_tone", zone_look.shader_hatch_tones())
        coats = self._programs[Pass.COATS]
        coats.bind()
        coats.set_list("coat_tone", zone_look.shader_coat_tones())

    def _paint_whole(self) -> None:
        began = time.perf_counter()
        self._clear_surround()
        light = self._moving and self.is_slow and self._drawn.face_count(TURNING) > 0
        self._paint_triangles(TURNING if light else WHOLE, (0.0, 0.0))
        self._whole_due = self._part_due = self._resolve_due = False
        if not self._moving:
            if self._functions is not None:
                self._functions.glFinish()
            if self._picture is not None:
                self.frame_ms = (time.perf_counter() - began) * 1e3
                self.drawn.emit(self.frame_ms)
                self._rest.start(_REST_MS)

    def _clear_surround(self) -> None:
        gl = self._functions
        if gl is None:
            return
        colour = QColor(SURROUND if self._picture is None else self._picture.surround)
        gl.glClearColor(colour.redF(), colour.greenF(), colour.blueF(), 1.0)
        gl.glClear(_COLOUR_AND_DEPTH)

    def _paint_triangles(
        self,
        faces: str,
        shift: tuple[float, float],
        which: Pass | None = None,
        corners: slice = _ALL,
    ) -> None:
        gl, array, picture = self._functions, self._array, self._picture
        drawn = self._drawn
        if gl is None or array is None or picture is None or not drawn.face_count(faces):
            return
        look = which or Pass(picture.look.value)
        if look is Pass.ROW and drawn is self.arrays:
            look = Pass.SINTERED
        program = self._programs[look]
        array.bind()
        gl.glEnable(_DEPTH_TEST)
        gl.glDepthFunc(_LEQUAL)
        if drawn.is_closed:
            gl.glEnable(_CULL_FACE)
        program.bind()
        self._set_uniforms(program, picture, shift)
        drawn.bind(gl, ATTRIBUTES[look])
        for first in range(drawn.bind_faces(faces))[corners][::_CORNERS_AT_ONCE]:
            end = min(first + _CORNERS_AT_ONCE, range(3 * drawn.face_count(faces))[corners].stop)
            count = end - first
            gl.glDrawElements(_TRIANGLES, count, _UNSIGNED_INT, POINTER(first * _INDEX_BYTES))
            gl.glFlush()
        gl.glDisable(_CULL_FACE)
        gl.glDisable(_DEPTH_TEST)
        array.release()

    def _set_uniforms(
        self, program: Program, picture: CrownPicture, shift: tuple[float, float]
    ) -> None:
        camera, directions = picture.camera, picture.directions
        width, height = max(self.width(), 1), max(self.height(), 1)
        ratio = self.devicePixelRatioF()
        program.set_matrix("clip_from_crown", camera.matrix(width, height))
        program.set_matrix("axes", camera.axes.T)
        program.set_matrix("frame", directions.rows)
        program.set_vector("occlusal", picture.sky)
        program.set_vector("origin", np.zeros(3))
        program.set_vector("eye_position", camera.eye)
        program.set_pair(
            "jitter", 2.0 * shift[0] / (width * ratio), 2.0 * shift[1] / (height * ratio)
        )
        relief = SCALED_RELIEF if picture.look in SCALED else 1.0
        program.set_number("relief", relief if picture.shading else 0.0)
        program.set_number("pixel_ratio", ratio)
        if picture.look is Look.ROW:
            program.set_number("surround", ROW_SURROUND_LINEAR)
            program.set_number("grey", 1.0 if picture.grey else 0.0)

    def _pixels(self) -> QSize:
        ratio = self.devicePixelRatioF()
        return QSize(round(self.width() * ratio), round(self.height() * ratio))

    def _polish(self) -> None:
        """At rest: draw one of the shifted pictures, and come back for the next."""
        if self._functions is None or self._whole_due or self._picture is None:
            return
        if self._moving or not self.isVisible():
            return
        self.makeCurrent()
        if not self._shifted:
            self._shifted = [_picture_buffer(self._pixels()) for _ in _SHIFTS]
        if not self._resolve_due and not self._rest.property("shift"):
            self._shifts_done = self._corners_done = 0
        target = self._shifted[self._shifts_done]
        target.bind()
        if not self._corners_done:
            self._clear_surround()
        # On a slow machine in pieces, so that the next stroke need not wait for a whole picture.
        all_corners = 3 * self._drawn.face_count(WHOLE)
        most = _CORNERS_AT_ONCE if self.is_slow else all_corners
        piece = slice(self._corners_done, min(self._corners_done + most, all_corners))
        self._paint_triangles(WHOLE, _SHIFTS[self._shifts_done], corners=piece)
        if self.is_slow:
            self._functions.glFinish()
        target.release()
        self.doneCurrent()
        self._corners_done = piece.stop if piece.stop < all_corners else 0
        if self._corners_done:
            self._rest.setProperty("shift", True)
            self._rest.start(0)
            return
        self._shifts_done += 1
        unfinished = self._shifts_done < len(_SHIFTS)
        self._rest.setProperty("shift", unfinished)
        if unfinished:
            self._rest.start(0)
        else:
            self._resolve_due = True
            self.update()

    def _paint_average(self) -> None:
        gl, array, resolve = self._functions, self._array, self._resolve
        self._resolve_due = False
        if gl is None or array is None or resolve is None or not self._shifted:
            return
        array.bind()
        resolve.bind()
        for k, picture in enumerate(self._shifted):
            gl.glActiveTexture(_TEXTURE_0 + k)
            gl.glBindTexture(_TEXTURE_2D, picture.texture())
            resolve.set_sampler(f"picture_{k}", k)
        gl.glDepthMask(0)
        gl.glDrawArrays(_TRIANGLES, 0, 3)
        gl.glDepthMask(1)
        gl.glActiveTexture(_TEXTURE_0)
        array.release()
        self.averaged.emit()
        if self.wants_areas:
            self._read_areas()

    def _read_areas(self) -> None:
        gl = self._functions
        if gl is None:
            return
        size = QSize(max(self.width() // 2, 1), max(self.height() // 2, 1))
        target = _picture_buffer(size)
        target.bind()
        gl.glViewport(0, 0, size.width(), size.height())
        gl.glClearColor(0.0, 0.0, 0.0, 0.0)
        gl.glClear(_COLOUR_AND_DEPTH)
        self._paint_triangles(WHOLE, (0.0, 0.0), Pass.AREAS)
        areas = np.zeros((size.height(), size.width(), 4), np.uint8)
        width, height = size.width(), size.height()
        pixels = POINTER(areas, areas.nbytes, True)
        gl.glReadPixels(0, 0, width, height, _RGBA, _UNSIGNED_BYTE, pixels)
        target.release()
        self._functions_bind_default()
        self.areas_drawn.emit(areas[::-1].copy())

    def _functions_bind_default(self) -> None:
        gl = self._functions
        if gl is not None:
            gl.glBindFramebuffer(0x8D40, self.defaultFramebufferObject())
            pixels = self._pixels()
            gl.glViewport(0, 0, pixels.width(), pixels.height())

    def _let_go(self) -> None:
        self.makeCurrent()
        self.arrays.release()
        self.row.release()
        self._shifted = []
        self._programs = {}
        self._resolve = self._array = None
        self._functions = None
        self.doneCurrent()


def _picture_buffer(size: QSize) -> QOpenGLFramebufferObject:
    buffer_format = QOpenGLFramebufferObjectFormat()
    buffer_format.setAttachment(QOpenGLFramebufferObject.Attachment.Depth)
    buffer_format.setInternalTextureFormat(_RGBA8)
    return QOpenGLFramebufferObject(size, buffer_format)
