"""What draws a crown with the graphics driver (OpenGL 3.3 core) into buffers off the screen.

Off the screen, and read back: a window that holds a view of the driver's own is put together by the
driver as a whole at every repaint, which a software driver takes 15 ms for. A picture of
900 x 900 pixels is read back in half a millisecond, what a brush has changed in a hundredth.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRect, QSize
from PySide6.QtGui import QColor, QOffscreenSurface, QOpenGLContext, QSurfaceFormat
from PySide6.QtOpenGL import (
    QOpenGLFramebufferObject,
    QOpenGLFramebufferObjectFormat,
    QOpenGLFunctions_3_3_Core,
    QOpenGLVersionFunctionsFactory,
    QOpenGLVersionProfile,
    QOpenGLVertexArrayObject,
)
from shiboken6 import isValid

from stainmap.ui import zone_look
from stainmap.ui.crown_buffers import POINTER, CrownBuffers
from stainmap.ui.crown_picture import ROW_SURROUND_LINEAR, SCALED, SCALED_RELIEF, CrownPicture, Look
from stainmap.ui.crown_shaders import ATTRIBUTES, Pass, Program, crown_program, resolve_program
from stainmap.ui.theme import SURROUND

# A software driver gathers all triangles it has not been told to draw: 60 MB for half a million.
CORNERS_AT_ONCE, _INDEX_BYTES = 60_000, 4
_DEPTH_TEST, _LEQUAL, _CULL_FACE = 0x0B71, 0x0203, 0x0B44
_COLOUR, _DEPTH = 0x4000, 0x0100
# A fifth of a millimetre of the 160 that the camera sees, in steps of a depth of 24 bits.
_POLYGON_OFFSET, _LIFTED_STEPS = 0x8037, 0.2 / 160.0 * 2.0**24
_TRIANGLES, _UNSIGNED_INT = 0x0004, 0x1405
_TEXTURE_0, _TEXTURE_2D = 0x84C0, 0x0DE1
_RGBA, _BGRA, _UNSIGNED_BYTE, _RGBA8 = 0x1908, 0x80E1, 0x1401, 0x8058
_ALL = slice(None)
_UNSHIFTED = (0.0, 0.0)


def gl_format() -> QSurfaceFormat:
    """Return the surface format that is asked for: 3.3 core, plain 8-bit, no multisampling."""
    surface = QSurfaceFormat()
    surface.setVersion(3, 3)
    surface.setProfile(QSurfaceFormat.OpenGLContextProfile.CoreProfile)
    surface.setDepthBufferSize(24)
    surface.setSamples(0)
    return surface


def has_gl() -> bool:
    """Return True if an OpenGL 3.3 core context can be had; STAINMAP_NO_GL=1 says no."""
    return ready_painter() is not None


def ready_painter() -> GlPainter | None:
    """Return what draws, or None where no OpenGL 3.3 core context can be had, see `has_gl`."""
    if os.environ.get("STAINMAP_NO_GL"):
        return None
    painter = GlPainter()
    return painter if painter.is_ready else None


@dataclass(frozen=True, slots=True)
class Sheet:
    """A buffer to draw on, with or without depth, in device pixels."""

    buffer: QOpenGLFramebufferObject

    @classmethod
    def of(cls, size: QSize, *, with_depth: bool = True) -> Sheet:
        """Return a new one; a context must be current."""
        kind = QOpenGLFramebufferObjectFormat()
        if with_depth:
            kind.setAttachment(QOpenGLFramebufferObject.Attachment.CombinedDepthStencil)
        kind.setInternalTextureFormat(_RGBA8)
        return cls(QOpenGLFramebufferObject(size, kind))

    @property
    def size(self) -> QSize:
        """Width and height, device pixels."""
        return self.buffer.size()


class GlPainter:
    """A context of its own, the programs in it, and how a crown is drawn with them."""

    def __init__(self) -> None:
        self._surface = QOffscreenSurface()
        self._surface.setFormat(gl_format())
        self._surface.create()
        self._context: QOpenGLContext | None = QOpenGLContext()
        self._context.setFormat(gl_format())
        self._gl: QOpenGLFunctions_3_3_Core | None = None
        self._programs: dict[Pass, Program] = {}
        self._resolve: Program | None = None
        self._array: QOpenGLVertexArrayObject | None = None
        self._buffers: tuple[CrownBuffers, ...] = ()
        can_be_had = self._surface.isValid() and self._context.create()
        if can_be_had and self._context.makeCurrent(self._surface):
            self._set_up(self._context)
            self._context.doneCurrent()

    @property
    def is_ready(self) -> bool:
        """False if the driver gives no context, or has been let go."""
        return self._gl is not None

    def keeps(self, *buffers: CrownBuffers) -> None:
        """Say whose arrays are on this context's card; they are released with it."""
        self._buffers = buffers

    @contextmanager
    def current(self) -> Iterator[None]:
        """Make the context current for a while."""
        if self._context is not None:
            self._context.makeCurrent(self._surface)
        try:
            yield
        finally:
            if self._context is not None:
                self._context.doneCurrent()

    def _set_up(self, context: QOpenGLContext) -> None:
        if context.format().version() < (3, 3):
            return
        gl = QOpenGLVersionFunctionsFactory.get(QOpenGLVersionProfile(gl_format()), context)
        if not isinstance(gl, QOpenGLFunctions_3_3_Core):
            return
        gl.initializeOpenGLFunctions()
        self._array = QOpenGLVertexArrayObject()
        self._array.create()
        self._gl = gl

    def _program(self, gl: QOpenGLFunctions_3_3_Core, which: Pass) -> Program:
        """Return a program in use, built when it is first asked for."""
        program = self._programs.get(which)
        if program is not None:
            program.bind()
            return program
        program = self._programs[which] = crown_program(gl, which)
        program.bind()
        if which is Pass.ZONES:
            program.set_list("zone_colour", zone_look.shader_zone_colours())
            program.set_list("hatch_tone", zone_look.shader_hatch_tones())
        elif which is Pass.COATS:
            program.set_list("coat_tone", zone_look.shader_coat_tones())
        return program

    def release(self) -> None:
        """Give everything back; nothing can be drawn afterwards."""
        if self._context is None:
            return
        if not isValid(self._surface):
            # The program ends, and the window system has taken everything already.
            self._gl = self._context = None
            return
        with self.current():
            for buffers in self._buffers:
                buffers.release()
            self._programs, self._resolve, self._array = {}, None, None
        self._gl = self._context = None

    # --- drawing; the context must be current ---------------------------------------------

    def begin(self, sheet: Sheet, size: QSize | None = None) -> None:
        """Draw onto a sheet from now on, or onto a corner of it."""
        if self._gl is not None:
            pixels = sheet.size if size is None else size
            sheet.buffer.bind()
            self._gl.glViewport(0, 0, pixels.width(), pixels.height())

    def clear(self, colour: QColor) -> None:
        """Fill what is drawn onto."""
        if self._gl is not None:
            self._gl.glClearColor(colour.redF(), colour.greenF(), colour.blueF(), colour.alphaF())
            self._gl.glClear(_COLOUR | _DEPTH)

    def finish(self) -> None:
        """Wait until all is drawn."""
        if self._gl is not None:
            self._gl.glFinish()

    def triangles(
        self,
        drawn: CrownBuffers,
        picture: CrownPicture,
        faces: str,
        view: tuple[int, int, float],
        *,
        shift: tuple[float, float] = _UNSHIFTED,
        which: Pass | None = None,
        corners: slice = _ALL,
        lifted: bool = False,
    ) -> None:
        """Draw a list of triangles, or some of its corners.

        Parameters
        ----------
        view
            Width and height of the view in logical pixels, and device pixels in one of them.
        shift
            Of the whole picture, device pixels.
        which
            What is drawn; by the look of the picture if None.
        lifted
            True draws them before a lighter mesh that lies as much as a fifth of a millimetre
            before or behind them.
        """
        gl, array = self._gl, self._array
        if gl is None or array is None or not drawn.face_count(faces):
            return
        look = which or Pass(picture.look.value)
        if look is Pass.ROW and not drawn.has_row_light:
            look = Pass.SINTERED
        array.bind()
        gl.glEnable(_DEPTH_TEST)
        gl.glDepthFunc(_LEQUAL)
        if drawn.is_closed:
            gl.glEnable(_CULL_FACE)
        if lifted:
            gl.glEnable(_POLYGON_OFFSET)
            gl.glPolygonOffset(-1.0, -_LIFTED_STEPS)
        program = self._program(gl, look)
        _set_uniforms(program, picture, view, shift)
        drawn.bind(gl, ATTRIBUTES[look])
        for first in range(drawn.bind_faces(faces))[corners][::CORNERS_AT_ONCE]:
            end = min(first + CORNERS_AT_ONCE, range(3 * drawn.face_count(faces))[corners].stop)
            count = end - first
            gl.glDrawElements(_TRIANGLES, count, _UNSIGNED_INT, POINTER(first * _INDEX_BYTES))
            gl.glFlush()
        gl.glDisable(_POLYGON_OFFSET)
        gl.glDisable(_CULL_FACE)
        gl.glDisable(_DEPTH_TEST)
        array.release()

    def average(self, sheets: Sequence[Sheet]) -> None:
        """Draw the mean of four pictures; depth stays as it is."""
        gl, array = self._gl, self._array
        if gl is None or array is None:
            return
        resolve = self._resolve = self._resolve or resolve_program(gl)
        array.bind()
        resolve.bind()
        for k, sheet in enumerate(sheets):
            gl.glActiveTexture(_TEXTURE_0 + k)
            gl.glBindTexture(_TEXTURE_2D, sheet.buffer.texture())
            resolve.set_sampler(f"picture_{k}", k)
        gl.glDepthMask(0)
        gl.glDrawArrays(_TRIANGLES, 0, 3)
        gl.glDepthMask(1)
        gl.glActiveTexture(_TEXTURE_0)
        array.release()

    def copy(self, sheet: Sheet, onto: Sheet) -> None:
        """Copy the colours of one sheet onto another of its size."""
        QOpenGLFramebufferObject.blitFramebuffer(onto.buffer, sheet.buffer)

    def read(self, sheet: Sheet, where: QRect, *, as_screen: bool = True) -> NDArray[np.uint8]:
        """Return what lies on a rectangle of a sheet, (h, w, 4) from the top.

        As bytes blue, green, red, alpha, which a screen takes, or red first.
        """
        pixels = np.empty((where.height(), where.width(), 4), np.uint8)
        if self._gl is not None:
            sheet.buffer.bind()
            self._gl.glReadPixels(
                where.x(),
                sheet.size.height() - where.y() - where.height(),
                where.width(),
                where.height(),
                _BGRA if as_screen else _RGBA,
                _UNSIGNED_BYTE,
                POINTER(pixels, pixels.nbytes, True),
            )
        return pixels[::-1]


def surround_of(picture: CrownPicture | None) -> QColor:
    """Return what a picture stands before."""
    return QColor(SURROUND if picture is None else picture.surround)


def _set_uniforms(
    program: Program,
    picture: CrownPicture,
    view: tuple[int, int, float],
    shift: tuple[float, float],
) -> None:
    camera, directions = picture.camera, picture.directions
    width, height, ratio = view
    program.set_matrix("clip_from_crown", camera.matrix(width, height))
    program.set_matrix("axes", camera.axes.T)
    program.set_matrix("frame", directions.rows)
    program.set_vector("occlusal", picture.sky)
    program.set_vector("origin", np.zeros(3))
    program.set_vector("eye_position", camera.eye)
    program.set_pair("jitter", 2.0 * shift[0] / (width * ratio), 2.0 * shift[1] / (height * ratio))
    relief = SCALED_RELIEF if picture.look in SCALED else 1.0
    program.set_number("relief", relief if picture.shading else 0.0)
    program.set_number("pixel_ratio", ratio)
    if picture.look is Look.ROW:
        program.set_number("surround", ROW_SURROUND_LINEAR)
        program.set_number("grey", 1.0 if picture.grey else 0.0)
