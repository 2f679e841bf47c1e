"""What is shown of a crown: canvas, marks and cards."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRect, Signal
from PySide6.QtGui import (
    QColor,
    QPainter,
    QPaintEvent,
    QResizeEvent,
    QShowEvent,
)
from PySide6.QtWidgets import QWidget

from stainmap.model.tooth import Tooth, Unit
from stainmap.paper.views import CrownDirections
from stainmap.surface.mesh import TriMesh
from stainmap.ui.camera import Camera, depth_from_buffer
from stainmap.ui.camera_stand import CameraStand
from stainmap.ui.crown_canvas import Canvas, make_canvas
from stainmap.ui.crown_cards import ProbeCard, ProbeReading
from stainmap.ui.crown_overlay import CrownOverlay, EmptyMark, Pill
from stainmap.ui.crown_picture import (
    ROW_SURROUND,
    ROW_TEXT,
    CrownPicture,
    Look,
    SeenValues,
    source_of,
)
from stainmap.ui.legends import Legends, ScaleWords
from stainmap.ui.pill_places import pill_places
from stainmap.ui.row_layer import RowLayer
from stainmap.ui.theme import SURROUND, SURROUND_TEXT
from stainmap.ui.zone_softening import ZoneSoftening
from stainmap.words import translate, value_word

if TYPE_CHECKING:
    from stainmap.app.row import Row
    from stainmap.paper.shading import ShadingFields


FloatArray = NDArray[np.float64]

_EDGE = 16


class CrownStage(CameraStand):
    """Shows one crown: its picture, what is written over it, and the camera before it.

    Signals
    -------
    seen_changed
        What is shown, or how, has changed: see `seen_values`.
    seen_changed_at
        It has changed at some vertices (k,) only.
    """

    seen_changed = Signal()
    seen_changed_at = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("crown stage", "Crown"))
        self.setMinimumSize(320, 240)
        self.canvas: Canvas = make_canvas(self)
        self.overlay = CrownOverlay(self)
        self.empty_mark = EmptyMark(self)
        self.probe_card = ProbeCard(self)
        self.legends = Legends(self)
        self.zone_legend, self.coat_legend = self.legends.zones, self.legends.coats
        self._areas = ZoneSoftening(self)
        self._areas.softened.connect(self._show_softened)
        # Colours of the looks that show colours, and which of them the canvas has.
        self._colours: dict[Look, NDArray[np.uint8]] = {}
        self._coloured_by: Look | None = None
        self._coats: NDArray[np.float32] | None = None
        self._fields: ShadingFields | None = None
        self._look, self._shading = Look.SINTERED, True
        self._bare = self._grey = False
        self._row = RowLayer(self.canvas)
        self._row_units: tuple[Unit, ...] = ()
        # Where the camera stood before it went to the row, and whether it was to fit the crown.
        self._left: tuple[Camera, bool] | None = None
        self.canvas.areas_drawn.connect(self._place_pills)
        self.legends.row.grey_switched.connect(self.set_grey)
        self.legends.row.resized.connect(self._make_room)

    # --- what is shown -------------------------------------------------------------------

    def set_crown(self, mesh: TriMesh, directions: CrownDirections, tooth: Tooth) -> None:
        """Show another crown, from occlusal and buccal, as large as fits."""
        self.overlay.directions, self.overlay.tooth = directions, tooth
        self.overlay.size_word = translate("crown view", "sintered")
        self.overlay.has_scale = True
        self._show_mesh(mesh, directions, bare=False)
        self.setAccessibleDescription(f"{tooth.number} {tooth.name}")

    def set_bare(self, mesh: TriMesh, directions: CrownDirections, *, has_scale: bool) -> None:
        """Show a mesh of which nothing is known yet, in one colour whatever the look."""
        self.overlay.directions = None
        self.overlay.size_word, self.overlay.has_scale = "", has_scale
        self._show_mesh(mesh, directions, bare=True)
        self.setAccessibleDescription(translate("crown stage", "a mesh that has not been read yet"))

    def _show_mesh(self, mesh: TriMesh, directions: CrownDirections, *, bare: bool) -> None:
        same_place = self._mesh is mesh
        self._directions, self._bare = directions, bare
        if same_place:
            self._apply_look()
            self._redraw()
            return
        self._mesh = mesh
        self._areas.take(mesh)
        self._colours, self._coloured_by = {}, None
        self._coats, self._fields = None, None
        self._row.set_row(None, (), None)
        self._left = None
        self.overlay.pills = ()
        self.canvas.arrays.set_mesh(mesh)
        self.empty_mark.hide()
        self._stand_before(directions)
        self.set_probe(None, None)
        self._apply_look()
        self._fit_when_visible()

    def clear(self) -> None:
        """Show no crown."""
        self._bare = False
        self._mesh = self._directions = None
        self._areas.take(None)
        self._row.set_row(None, (), None)
        self._left = None
        self.overlay.camera = None
        self.overlay.pills = ()
        self.canvas.draw_nothing()
        self.legends.hide()
        self.set_probe(None, None)
        self.empty_mark.show()
        self.overlay.update()
        self.seen_changed.emit()

    @property
    def has_crown(self) -> bool:
        """True while a crown is shown."""
        return self._mesh is not None

    @property
    def is_bare(self) -> bool:
        """True while a mesh is shown that has not been read yet."""
        return self._bare

    def shows(self, mesh: TriMesh) -> bool:
        """Return True if this very mesh is shown."""
        return self._mesh is mesh

    @property
    def mesh(self) -> TriMesh | None:
        """The mesh that is shown."""
        return self._mesh

    @property
    def look(self) -> Look:
        """What the crown is coloured by."""
        return self._look

    @property
    def _drawn_look(self) -> Look:
        return Look.SINTERED if self._bare else self._look

    def set_shading(self, shading: ShadingFields) -> None:
        """Take smoothed normals and openness once they have been worked out."""
        self._fields = shading
        self.canvas.arrays.set_shading(shading)
        self.canvas.draw_again()
        self.seen_changed.emit()

    def set_colours(self, srgb: NDArray[np.uint8], look: Look = Look.SINTERED) -> None:
        """Take colours (V, 3), encoded sRGB, of a look that shows colours."""
        self._colours[look] = np.array(srgb, dtype=np.uint8)
        if look is Look.SINTERED:
            self._row.set_crown(self._colours[look])
        if source_of(self._drawn_look) is look:
            self.canvas.arrays.set_colours(self._colours[look])
            self._coloured_by = look
            self.canvas.draw_again()
            self.seen_changed.emit()

    def update_colours(
        self, vertices: NDArray[np.int32], srgb: NDArray[np.uint8], look: Look = Look.SINTERED
    ) -> None:
        """Take the colours (k, 3) of some vertices, as the brush moves."""
        if look in self._colours:
            # Light fades out far beyond what can be seen of it: nothing is drawn again there.
            differs = (self._colours[look][vertices] != srgb).any(axis=1)
            vertices, srgb = vertices[differs], srgb[differs]
            self._colours[look][vertices] = srgb
        if look is Look.SINTERED:
            self._row.change_crown(vertices, srgb)
        if source_of(self._drawn_look) is look and self._coloured_by is look:
            self.canvas.arrays.change_colours(vertices, srgb)
            self._draw_around(vertices)

    def _show_colours(self, look: Look) -> None:
        """Give the canvas the colours of a look, unless it has them."""
        look = source_of(look)
        if self._coloured_by is not look and look in self._colours:
            self.canvas.arrays.set_colours(self._colours[look])
            self._coloured_by = look

    def set_zones(
        self, zones: NDArray[np.uint8], accents: Mapping[int, NDArray[np.float32]]
    ) -> None:
        """Take zone numbers (V,) and soft masks (V,) of accents by number, 7 to 13."""
        if self._mesh is None:
            return
        self._areas.set_areas(zones, accents)
        if self._drawn_look is Look.ZONES:
            self._see_areas()
            self.canvas.draw_again()
            self.seen_changed.emit()

    def _see_areas(self) -> None:
        """Soften the borders of areas that nobody has looked at yet."""
        if self._areas.look():
            self._put_shares()

    def _put_shares(self) -> None:
        if self._areas.drawn is not None:
            self.canvas.arrays.set_shares(*self._areas.drawn)

    def _show_softened(self) -> None:
        """Draw borders that were hard, or others, until now."""
        self._put_shares()
        if self._drawn_look is Look.ZONES:
            self.canvas.draw_again()
            self.seen_changed.emit()

    def update_zones(self, vertices: NDArray[np.int32], zones: NDArray[np.uint8]) -> None:
        """Take zone numbers (k,) of some vertices, as the brush moves."""
        self._update_shares(self._areas.change_zones(vertices, zones))

    def update_accent(
        self, number: int, vertices: NDArray[np.int32], share: NDArray[np.float32]
    ) -> None:
        """Take an accent's share (k,) at some vertices, as the brush moves."""
        self._update_shares(self._areas.change_accent(number, vertices, share))

    def set_coats(self, coats: NDArray[np.float32], title: str) -> None:
        """Take numbers of coats (V,) and what they are of, for the look "coats"."""
        self._coats = np.array(coats, dtype=np.float32)
        self.canvas.arrays.set_coats(coats)
        most = int(np.rint(coats.max())) if len(coats) else 0
        self.coat_legend.set_range(title, most)
        self._place_cards()
        if self._look is Look.COATS:
            self.canvas.draw_again()
            self.seen_changed.emit()

    def update_coats(self, vertices: NDArray[np.int32], coats: NDArray[np.float32]) -> None:
        """Take the coats (k,) of some vertices, as the brush moves."""
        if self._coats is not None:
            self._coats[vertices] = coats
        self.canvas.arrays.change_coats(vertices, coats)
        if self._look is Look.COATS:
            self._draw_around(vertices)

    def set_look(self, look: Look) -> None:
        """Colour the crown by something else."""
        self._look = look
        self._apply_look()
        self._go_to_row()
        self._move_aside()
        self._redraw()

    def _apply_look(self) -> None:
        look = self._drawn_look
        self.canvas.wants_areas = look is Look.ZONES
        self._show_colours(look)
        if look is Look.ZONES:
            self._see_areas()
        else:
            self.overlay.pills = ()
        in_row = look is Look.ROW
        self.overlay.ink = ROW_TEXT if in_row else SURROUND_TEXT
        self.overlay.row_labels = self._row.labels if in_row else ()
        self.setAccessibleName(
            translate("crown stage", "Crown, not read yet")
            if self._bare
            else translate("crown stage", "Crown, {look}").format(look=value_word(look))
        )
        self._place_cards()
        self.seen_changed.emit()

    @property
    def row(self) -> Row | None:
        """The row the crown stands in, once it has been made."""
        return self._row.row

    def set_row(self, row: Row | None, units: tuple[Unit, ...] = ()) -> None:
        """Take the row the crown stands in, for the look of that name; None drops it."""
        self._row_units = units
        self._row.set_row(row, units, self._colours.get(Look.SINTERED))
        if self._drawn_look is Look.ROW:
            self._apply_look()
            self._go_to_row()
            if self._left is not None and self._framed:
                self._jump_to(self._fitted(self._camera))
            self._redraw()

    def set_neighbours(self, srgb: NDArray[np.uint8]) -> None:
        """Take the colours (n, 3) of all vertices of the row that are not the crown's."""
        self._row.set_neighbours(srgb)
        if self._drawn_look is Look.ROW:
            self.canvas.draw_again()

    def set_grey(self, on: bool) -> None:
        """Take the colour out of the row, or put it back."""
        self._grey = on
        self._redraw()

    def _go_to_row(self) -> None:
        """Stand before the row while it is looked at, and where one stood before afterwards."""
        in_row = self._drawn_look is Look.ROW and self._row.row is not None
        if in_row and self._left is None:
            camera = self._row.camera(self._row_units)
            if camera is not None:
                self._left = (self._camera, self._framed)
                self._framed = True
                self._jump_to(self._fitted(camera))
        elif not in_row and self._left is not None:
            camera, framed = self._left
            self._left, self._framed = None, framed
            self._jump_to(self._fitted(camera) if framed else camera)

    @property
    def _points(self) -> FloatArray:
        points = self._row.points if self._left is not None else None
        return super()._points if points is None else points

    def set_scale(self, words: ScaleWords | None) -> None:
        """Say what the colours of a look stand for; None while there is nothing to show."""
        self.legends.scale.set_words(words)
        self._place_cards()
        self._move_aside()

    def set_relief(self, on: bool) -> None:
        """Switch the shading on or off."""
        self._shading = on
        self._redraw()
        self.seen_changed.emit()

    @property
    def seen_values(self) -> SeenValues | None:
        """What the crown shows now, vertex by vertex; None without a crown that was read."""
        if self._mesh is None or self._directions is None or self._bare:
            return None
        shares = self._areas.drawn
        return SeenValues(
            look=source_of(self._look),
            shading=self._shading,
            srgb=self._colours.get(source_of(self._look)),
            zones=None if shares is None else shares[0],
            accents=None if shares is None else shares[1],
            coats=self._coats,
            fields=self._fields,
            rows=self._directions.rows,
        )

    def set_probe(self, reading: ProbeReading | None, position: FloatArray | None) -> None:
        """Show what is known about a place, with a line from it to the card."""
        self.probe_card.set_reading(reading)
        self.overlay.probe = None if reading is None else position
        self._place_cards()
        self.overlay.update()

    # --- drawing it ----------------------------------------------------------------------

    def _redraw(self, *, moving: bool = False) -> None:
        if self._mesh is None or self._directions is None:
            return
        picture = CrownPicture(
            camera=self._camera,
            directions=self._directions,
            look=self._drawn_look,
            shading=self._shading,
            grey=self._grey,
        )
        self.canvas.draw(picture, moving=moving)
        self.overlay.update()

    def _set_camera(self, camera: Camera, *, moving: bool = True) -> None:
        self.overlay.camera = camera
        super()._set_camera(camera, moving=moving)

    def _before_first_fit(self) -> None:
        self._apply_look()

    @property
    def _legend_rect(self) -> QRect:
        return self.legends.rect

    def _draw_around(self, vertices: NDArray[np.int32]) -> None:
        if self._mesh is not None and len(vertices):
            faces = self._mesh.faces[self._mesh.faces_at(vertices)]
            where = self._rect_around(faces)
            self.canvas.draw_part(faces, where)
            self.overlay.lies_over(where)
            self.seen_changed_at.emit(vertices)

    def _rect_around(self, faces: NDArray[np.int32]) -> QRect:
        """Return where some triangles are drawn, with a pixel to spare."""
        corners = np.zeros(0 if self._mesh is None else self._mesh.vertex_count, np.bool_)
        corners[faces] = True
        if self._mesh is None or not len(faces) or self._drawn_look is Look.ROW:
            return self.rect()
        points = self._mesh.vertices[corners]
        places = self._camera.project(points, self.width(), self.height())[:, :2]
        left, top = (int(v) for v in np.floor(places.min(axis=0)) - 2)
        right, bottom = (int(v) for v in np.ceil(places.max(axis=0)) + 2)
        return QRect(left, top, right - left, bottom - top).intersected(self.rect())

    def _update_shares(self, rows: NDArray[np.int32] | None) -> None:
        shares = self._areas.drawn
        if rows is None or shares is None:
            return
        self.canvas.arrays.change_shares(rows, shares[0][rows], shares[1][rows])
        if self._look is Look.ZONES:
            self._draw_around(rows)

    def _place_pills(self, areas: NDArray[np.uint8]) -> None:
        if self._look is not Look.ZONES:
            return
        size = (float(max(self.width(), 1)), float(max(self.height(), 1)))
        pills = []
        for place in pill_places(areas, size[1] / areas.shape[0]):
            depth = depth_from_buffer(place.depth)
            pills.append(Pill(place.number, self._camera.point_at(place.x, place.y, *size, depth)))
        self.overlay.pills = tuple(pills)
        self.overlay.update()

    # --- Qt's other hooks ----------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        """Fill the surround, which shows where there is no crown."""
        painter = QPainter(self)
        in_row = self._drawn_look is Look.ROW
        painter.fillRect(event.rect(), QColor(ROW_SURROUND if in_row else SURROUND))
        painter.end()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the canvas and the sheet over it as large as the view."""
        super().resizeEvent(event)
        for layer in (self.canvas, self.overlay, self.empty_mark):
            layer.setGeometry(self.rect())
        self._place_cards()
        if self._mesh is not None and self._framed and not self._needs_fit:
            self._jump_to(self._fitted(self._camera))
        else:
            self._redraw()

    def showEvent(self, event: QShowEvent) -> None:
        """Fit a crown that was set before the view was shown."""
        super().showEvent(event)
        self._fit_when_visible()

    def _make_room(self) -> None:
        """Keep clear of a card that has become larger or smaller."""
        self._place_cards()
        self._move_aside()

    def _place_cards(self) -> None:
        if self.has_crown:
            self.legends.show(self._drawn_look, self.width(), _EDGE)
        else:
            self.legends.hide()
        card, legend_open = self.probe_card, self.legends.is_open
        card.move(_EDGE if legend_open else self.width() - _EDGE - card.width(), _EDGE)
        x = card.x() + (card.width() - 24 if legend_open else 24)
        self.overlay.probe_anchor = QPointF(x, card.y() + card.height())
