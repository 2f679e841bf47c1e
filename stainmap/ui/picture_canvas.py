"""The crown as a computed picture, for computers without a usable graphics driver.

Slower and plainer than the driver's: zones have no hatch, and while the crown turns the picture
is coarse. Everything that can be done with the crown can still be done.
"""

from __future__ import annotations

import time
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRect, Qt, QTimer, Signal
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QWidget

from stainmap.optics.colorimetry import decode_srgb
from stainmap.paper import raster
from stainmap.surface.mesh import TriMesh
from stainmap.ui import zone_look
from stainmap.ui.crown_buffers import plain_shading
from stainmap.ui.crown_picture import (
    COLOURED,
    ROW_SURROUND_LINEAR,
    SCALED,
    SCALED_RELIEF,
    CrownPicture,
    Look,
)
from stainmap.ui.zone_shares import ACCENTS
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.paper.shading import Lighting, ShadingFields

_COARSE = 4
_SAMPLES = 2  # in each direction of a pixel at rest
_RELIEF = 0.55
_BORDER = 0.06
_LUMINANCE = np.array([0.2126, 0.7152, 0.0722], np.float32)


class PictureArrays:
    """The crown's values per vertex; the same methods as the card's buffers."""

    def __init__(self) -> None:
        self.mesh: TriMesh | None = None
        self.turning = np.empty((0, 3), np.int32)
        self.shading: ShadingFields | None = None
        self.srgb = np.empty((0, 3), np.uint8)
        self.zones = np.empty((0, 6), np.float32)
        self.accents = np.empty((0, 7), np.float32)
        self.coats = np.empty(0, np.float32)
        self.row_light: NDArray[np.float32] | None = None
        self.above_gum: NDArray[np.float32] | None = None

    def set_mesh(self, mesh: TriMesh) -> None:
        """Take a mesh; colour white and no zones until told otherwise."""
        count = mesh.vertex_count
        self.mesh = mesh
        self.turning = mesh.light_faces
        self.shading = plain_shading(mesh)
        self.srgb = np.full((count, 3), 255, np.uint8)
        self.zones = np.zeros((count, 6), np.float32)
        self.accents = np.zeros((count, 7), np.float32)
        self.coats = np.zeros(count, np.float32)

    def set_row_light(self, light: NDArray[np.float32], above_gum: NDArray[np.float32]) -> None:
        """Take the light (V,) on a row of teeth and how far it stands out of the gum (V,)."""
        self.row_light, self.above_gum = light, above_gum

    def set_shading(self, shading: ShadingFields) -> None:
        """Take normals and openness."""
        self.shading = shading

    def set_colours(self, srgb: NDArray[np.uint8]) -> None:
        """Take encoded colours (V, 3)."""
        self.srgb = np.array(srgb, dtype=np.uint8)

    def change_colours(self, vertices: NDArray[np.int32], srgb: NDArray[np.uint8]) -> None:
        """Take encoded colours (k, 3) of some vertices."""
        self.srgb[vertices] = srgb

    def set_shares(self, zones: NDArray[np.float32], accents: NDArray[np.float32]) -> None:
        """Take softened shares of zones (V, 6) and accents (V, 7)."""
        self.zones, self.accents = zones.copy(), accents.copy()

    def change_shares(
        self,
        vertices: NDArray[np.int32],
        zones: NDArray[np.float32],
        accents: NDArray[np.float32],
    ) -> None:
        """Take softened shares of some vertices."""
        self.zones[vertices], self.accents[vertices] = zones, accents

    def set_coats(self, coats: NDArray[np.float32]) -> None:
        """Take a number of coats (V,)."""
        self.coats = np.array(coats, dtype=np.float32)

    def change_coats(self, vertices: NDArray[np.int32], coats: NDArray[np.float32]) -> None:
        """Take the coats (k,) of some vertices."""
        self.coats[vertices] = coats


class PictureCanvas(QWidget):
    """Draws a crown without OpenGL; knows nothing of mouse and keys. Signals as `GlCanvas`."""

    drawn = Signal(float)
    areas_drawn = Signal(object)
    is_slow = True

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAccessibleName(translate("picture canvas", "Crown picture"))
        self.arrays = PictureArrays()
        # A row of teeth with the crown among them; empty until somebody looks at it.
        self.row = PictureArrays()
        self.wants_areas = False
        self.frame_ms = 0.0
        self._picture: CrownPicture | None = None
        self._lighting: Lighting | None = None
        self._relief: NDArray[np.float32] | None = None
        self._image: QImage | None = None
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.timeout.connect(self._draw_now)
        self._moving = False

    def draw(self, picture: CrownPicture, *, moving: bool = False) -> None:
        """Draw a whole picture soon, coarse while `moving`."""
        self._picture, self._moving = picture, moving
        self.draw_again()

    def draw_nothing(self) -> None:
        """Draw the bare surround."""
        self._picture = self._lighting = self._image = None
        self.update()

    def draw_again(self) -> None:
        """Draw the whole picture again."""
        self._lighting = None
        self._soon.start(0)

    def drop_row(self) -> None:
        """Forget the row of teeth."""
        self.row = PictureArrays()

    @property
    def _drawn(self) -> PictureArrays:
        """What the picture shows: the crown, or the row it stands in."""
        in_row = self._picture is not None and self._picture.look is Look.ROW
        return self.row if in_row and self.row.mesh is not None else self.arrays

    def draw_part(self, _faces: NDArray[np.int32], _where: QRect | None = None) -> None:
        """Colour the picture anew; where things lie has not changed."""
        self._soon.start(0)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Draw a new picture for a new size."""
        super().resizeEvent(event)
        self.draw_again()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Show the picture, stretched if it is a coarse one."""
        if self._image is not None:
            painter = QPainter(self)
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.drawImage(QRect(0, 0, self.width(), self.height()), self._image)
            painter.end()

    def _draw_now(self) -> None:
        from stainmap.paper.shading import develop  # noqa: PLC0415

        mesh, shading, picture = self._drawn.mesh, self._drawn.shading, self._picture
        if mesh is None or shading is None or picture is None or not self.isVisible():
            return
        began = time.perf_counter()
        if self._lighting is None:
            self._take_frame(mesh, shading, picture)
        if self._lighting is not None:
            pixels = develop(
                self._lighting.frame,
                self._coloured(self._lighting, picture),
                surround_srgb=int(picture.surround[1:3], 16) / 255.0,
            )
            height, width = pixels.shape[:2]
            stride = 3 * width
            format_ = QImage.Format.Format_RGB888
            self._image = QImage(pixels.tobytes(), width, height, stride, format_).copy()
        self.update()
        if not self._moving:
            self.frame_ms = (time.perf_counter() - began) * 1e3
            self.drawn.emit(self.frame_ms)
            if self.wants_areas:
                self._send_areas()

    def _take_frame(self, mesh: TriMesh, shading: ShadingFields, picture: CrownPicture) -> None:
        from stainmap.paper.shading import form_relief, light_frame  # noqa: PLC0415

        camera = picture.camera
        shrink = _COARSE if self._moving else 1
        frame = raster.rasterise(
            mesh.vertices,
            self._drawn.turning if self._moving else mesh.faces,
            raster.Camera(
                eye=_triple(camera.axes[2]),
                up=_triple(camera.axes[1]),
                centre=_triple(camera.target),
                height_mm=camera.height_mm,
                distance_mm=camera.distance_mm,
            ),
            max(self.width() // shrink, 1),
            max(self.height() // shrink, 1),
            samples=1 if self._moving else _SAMPLES,
        )
        self._lighting = light_frame(
            frame,
            shading,
            occlusal=picture.sky,
            chalk=picture.look is Look.BENCH,
        )
        relief = _RELIEF * (SCALED_RELIEF if picture.look in SCALED else 1.0)
        self._relief = form_relief(frame, shading, relief if picture.shading else 0.0)

    def _coloured(self, lighting: Lighting, picture: CrownPicture) -> NDArray[np.float32]:
        from stainmap.paper.shading import shade  # noqa: PLC0415

        arrays, frame = self._drawn, lighting.frame
        if arrays.row_light is not None and arrays.above_gum is not None:
            light, above_gum = arrays.row_light, arrays.above_gum
            return _in_row(lighting, picture, arrays.srgb, light, above_gum)
        if picture.look in COLOURED or self._relief is None:
            linear = decode_srgb(arrays.srgb / 255.0)
            if not picture.shading:
                return np.asarray(frame.take(linear))
            return np.asarray(shade(lighting, linear))
        if picture.look in SCALED:
            linear = decode_srgb(arrays.srgb / 255.0).astype(np.float32)
            return np.asarray(frame.take(linear) * self._relief[:, None])
        if picture.look is Look.COATS:
            whole = np.rint(np.clip(frame.take(arrays.coats), 0, 12)).astype(np.intp)
            return zone_look.shader_coat_tones()[whole] * self._relief[:, None]
        shares = np.sort(frame.take(arrays.zones), axis=1)
        zone = np.argmax(frame.take(arrays.zones), axis=1) + 1
        zone[shares[:, -1] < 0.02] = 0
        flat = zone_look.shader_zone_colours()[zone] * self._relief[:, None]
        flat[shares[:, -1] - shares[:, -2] < _BORDER] = 0.0
        return np.asarray(flat, dtype=np.float32)

    def _send_areas(self) -> None:
        if self._lighting is None:
            return
        frame = self._lighting.frame
        shares = frame.take(self.arrays.zones)
        zone = np.where(shares.max(axis=1) > 0.02, shares.argmax(axis=1) + 1, 0)
        bits = (frame.take(self.arrays.accents) > 0.5) @ (1 << np.arange(len(ACCENTS)))
        picture = np.zeros((*frame.face.shape, 4), np.uint8)
        flat = picture.reshape(-1, 4)
        flat[frame.hits, 0] = zone
        flat[frame.hits, 1] = bits
        depth = self._depth_of_hits(frame)
        flat[frame.hits, 2] = depth // 256
        flat[frame.hits, 3] = depth % 256
        self.areas_drawn.emit(picture)

    def _depth_of_hits(self, frame: raster.FrameBuffer) -> NDArray[np.int64]:
        """Return the depth as the graphics driver would have it, 0 to 65535."""
        picture, mesh = self._picture, self.arrays.mesh
        if picture is None or mesh is None:
            return np.zeros(len(frame.hits), np.int64)
        points = np.asarray(frame.take(mesh.vertices), dtype=np.float64)
        clip = np.c_[points, np.ones(len(points))] @ picture.camera.matrix(1.0, 1.0).T
        return np.asarray((clip[:, 2] / clip[:, 3] * 0.5 + 0.5) * 65535.0).astype(np.int64)


def _triple(vector: NDArray[np.float64]) -> tuple[float, float, float]:
    return (float(vector[0]), float(vector[1]), float(vector[2]))


def _in_row(
    lighting: Lighting,
    picture: CrownPicture,
    srgb: NDArray[np.uint8],
    light: NDArray[np.float32],
    above_gum: NDArray[np.float32],
) -> NDArray[np.float32]:
    """Return the linear light (n, 3) of a row: dimmed to the back, its necks in the dark."""
    from stainmap.paper.shading import shade, shoulder  # noqa: PLC0415

    frame, linear = lighting.frame, decode_srgb(srgb / 255.0)
    if picture.shading:
        colour = np.asarray(shoulder(shade(lighting, linear) * frame.take(light)[:, None]))
    else:
        colour = np.asarray(frame.take(linear), dtype=np.float32)
    if picture.grey:
        colour = np.repeat((colour @ _LUMINANCE)[:, None], 3, axis=1)
    sunk = frame.take(above_gum)[:, None]
    return np.asarray(ROW_SURROUND_LINEAR + (colour - ROW_SURROUND_LINEAR) * sunk, np.float32)
