"""The row of teeth on a canvas: the crown's part of it takes the crown's colours."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter

from stainmap.model.tooth import Unit
from stainmap.ui.camera import SPEAKING_MM, Camera
from stainmap.ui.crown_canvas import Canvas
from stainmap.ui.crown_picture import ROW_TEXT
from stainmap.ui.marks import Align, paint_text

if TYPE_CHECKING:
    from stainmap.app.row import Row


FloatArray = NDArray[np.float64]
Bytes = NDArray[np.uint8]

_LABEL_PX = 18.0
# From the facial side, a little from the bite and from mesial: as one sees into a mouth.
_BACK_VIEW = (0.14, 0.92, 0.40)
_FRONT_VIEW = (0.0, 0.98, 0.16)
# Vertices that lie deeper in the gum need not be in the picture.
_SEEN_FROM = 0.02


@dataclass(frozen=True, slots=True)
class RowLabel:
    """The number of a tooth at its neck (3,); a strong one is the crown's."""

    text: str
    position: FloatArray
    strong: bool


class RowLayer:
    """Keeps the row that a canvas may draw."""

    def __init__(self, canvas: Canvas) -> None:
        self._canvas = canvas
        self.row: Row | None = None
        self.labels: tuple[RowLabel, ...] = ()
        self._srgb: Bytes = np.empty((0, 3), np.uint8)

    def set_row(self, row: Row | None, units: tuple[Unit, ...], crown_srgb: Bytes | None) -> None:
        """Hold another row, or none; its neighbours are grey until they are coloured."""
        if row is None:
            if self.row is not None:
                self._canvas.drop_row()
            self.row, self.labels = None, ()
            return
        self.row = row
        self._srgb = np.full((row.mesh.vertex_count, 3), 168, np.uint8)
        if crown_srgb is not None:
            self._srgb[: row.crown_vertices] = crown_srgb
        arrays = self._canvas.row
        arrays.set_mesh(row.mesh)
        arrays.set_shading(row.fields)
        arrays.set_row_light(row.light, row.above_gum)
        arrays.set_colours(self._srgb)
        crowns = zip(units, row.labels, strict=True)
        self.labels = (
            *(RowLabel(str(unit.tooth.number), place, strong=True) for unit, place in crowns),
            *(
                RowLabel(str(one.beside.tooth.number), one.label, strong=False)
                for one in row.neighbours
            ),
        )

    def set_neighbours(self, srgb: Bytes) -> None:
        """Take the colours (n, 3) of all neighbours' vertices."""
        if self.row is not None:
            self._srgb[self.row.crown_vertices :] = srgb
            self._canvas.row.set_colours(self._srgb)

    def set_crown(self, srgb: Bytes) -> None:
        """Take the colours (V, 3) of the crown."""
        if self.row is not None:
            self._srgb[: self.row.crown_vertices] = srgb
            self._canvas.row.set_colours(self._srgb)

    def change_crown(self, vertices: NDArray[np.int32], srgb: Bytes) -> None:
        """Take the colours (k, 3) of some of the crown's vertices."""
        if self.row is not None:
            self._srgb[vertices] = srgb
            self._canvas.row.change_colours(vertices, srgb)

    @property
    def points(self) -> FloatArray | None:
        """Places (n, 3) that have to be in the picture; None without a row."""
        if self.row is None:
            return None
        seen = self.row.mesh.vertices[self.row.above_gum > _SEEN_FROM]
        return np.concatenate([seen, *(one.position[None] for one in self.labels)])

    def camera(self, units: tuple[Unit, ...]) -> Camera | None:
        """Return the camera somebody looks through who speaks with the patient."""
        row = self.row
        if row is None:
            return None
        front = any(unit.tooth.is_front for unit in units)
        shares = np.array(_FRONT_VIEW if front else _BACK_VIEW)
        towards = shares @ np.stack([row.mesial, row.outward, row.occlusal])
        up = -row.occlusal if units[0].tooth.is_upper else row.occlusal
        camera = Camera.looking_from(towards, up, np.zeros(3), 30.0)
        return camera.at_distance(SPEAKING_MM)


def paint_row_labels(
    painter: QPainter, labels: tuple[RowLabel, ...], camera: Camera, width: int, height: int
) -> None:
    """Write the numbers of teeth at their necks, away from the crowns."""
    if not labels:
        return
    places = camera.project(np.array([one.position for one in labels]), width, height)
    for one, (x, y, _) in zip(labels, places, strict=True):
        below = y > camera.project(camera.target[None], width, height)[0, 1]
        at = QPointF(x, y + (_LABEL_PX if below else -_LABEL_PX / 2.0))
        paint_text(
            painter,
            (at.x(), min(max(at.y(), 16.0), height - 8.0)),
            one.text,
            ROW_TEXT,
            weight=650 if one.strong else 450,
            align=Align.AlignHCenter,
        )
