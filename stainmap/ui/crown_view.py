"""The crown in the middle of the window: turn it, point at it, paint on it."""

from __future__ import annotations

from enum import StrEnum
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QWheelEvent
from PySide6.QtWidgets import QWidget

from stainmap.model.tooth import Tooth
from stainmap.paper.views import CrownDirections, Side
from stainmap.surface.mesh import TriMesh
from stainmap.surface.picking import Hit, Picker
from stainmap.ui.brush_ring import BrushRing
from stainmap.ui.camera import Camera
from stainmap.ui.crown_picture import Look
from stainmap.ui.crown_stage import CrownStage

if TYPE_CHECKING:
    from stainmap.app.row import Row


_HOVER_MS = 25
# In a mesh of as many faces one is found at once; in a larger one that is prepared elsewhere, and
# so often is looked whether it is there.
_QUICKLY_PICKED, _MOST_LOOKS = 40_000, 60
# A hand that clicks moves this far at most; farther is a drag.
_CLICK_PX = 4
_SIDE_KEYS = {
    Qt.Key.Key_O: Side.OCCLUSAL,
    Qt.Key.Key_B: Side.BUCCAL,
    Qt.Key.Key_L: Side.LINGUAL,
    Qt.Key.Key_M: Side.MESIAL,
    Qt.Key.Key_D: Side.DISTAL,
    Qt.Key.Key_I: Side.INNER,
}
_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}


class PointerTask(StrEnum):
    """What the left button does on the crown."""

    TURN = "turn"
    PAINT = "paint"
    ASK = "ask"
    PLACE = "place"


class CrownView(CrownStage):
    """Shows one crown and turns what the mouse does to it into places on its surface.

    Right drag turns, middle drag (or Shift and right) shifts, the wheel zooms at the pointer.
    The left button paints, answers a question, or turns if there is nothing else to do. With the
    focus here the arrow keys turn, plus and minus zoom, Home fits, and O B L M D I look from the
    occlusal, buccal, lingual, mesial, distal and inner side. Esc takes a stroke back. While a
    tool waits for a place, a click or the Return key gives it the one under the pointer, a left
    drag turns, and Esc lets go of the tool.

    Signals
    -------
    pointed_at
        `Hit` under the pointer, or None.
    stroke_began, stroke_moved
        Position (3,) mm, nearest vertex, keyboard modifiers.
    stroke_ended, stroke_cancelled
        The button was lifted; Esc was pressed before it was.
    place_chosen
        `Hit` that was clicked while the task is `PointerTask.ASK`.
    tool_placed
        `Hit` that was clicked for a tool, and keyboard modifiers.
    tool_left
        Esc was pressed while a tool waits for a place.
    brush_resized
        +1 or -1: the ] or [ key.
    task_changed
        What the left button does, or the size of the brush, has changed.
    """

    pointed_at = Signal(object)
    stroke_began = Signal(object, int, object)
    stroke_moved = Signal(object, int, object)
    stroke_ended = Signal()
    stroke_cancelled = Signal()
    place_chosen = Signal(object)
    tool_placed = Signal(object, object)
    tool_left = Signal()
    brush_resized = Signal(int)
    task_changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self._row_picker: tuple[Row, Picker] | None = None
        self._ring: BrushRing | None = None
        self._task, self._brush_mm, self._has_ring = PointerTask.TURN, 0.6, True
        self._painting = self._pointed = self._shifts = False
        # True while places of a stroke are told that the hand has only passed.
        self.passes_by = False
        self._looked = 0
        self._pointer: QPointF | None = None
        self._dragged_from: QPointF | None = None
        self._clicked_at: QPointF | None = None
        self._stroke_at = QPointF()
        self._hover = self._timer(_HOVER_MS, self._point)

    def set_crown(self, mesh: TriMesh, directions: CrownDirections, tooth: Tooth) -> None:
        """Show another crown, from occlusal and buccal, as large as fits."""
        if mesh is not self._mesh:
            self._ring = None
            self.overlay.preview = None
        super().set_crown(mesh, directions, tooth)

    def set_bare(self, mesh: TriMesh, directions: CrownDirections, *, has_scale: bool) -> None:
        """Show a mesh of which nothing is known yet, in one colour whatever the look."""
        self._ring = None
        super().set_bare(mesh, directions, has_scale=has_scale)

    def clear(self) -> None:
        """Show no crown."""
        self._ring = None
        self.overlay.ring = self.overlay.preview = None
        super().clear()

    @property
    def task(self) -> PointerTask:
        """What the left button does."""
        return self._task

    def set_task(
        self, task: PointerTask, brush_radius_mm: float | None = None, *, ring: bool = True
    ) -> None:
        """Say what the left button does, how large the brush is, and whether that is shown."""
        self._task, self._has_ring = task, ring
        if brush_radius_mm is not None:
            self._brush_mm = brush_radius_mm
        cross = task is not PointerTask.TURN
        self.setCursor(Qt.CursorShape.CrossCursor if cross else Qt.CursorShape.ArrowCursor)
        # Soon and not at once: what the brush does is told anew several times in one go.
        self._hover.start()
        self.task_changed.emit()

    @property
    def ring_mm(self) -> float | None:
        """Radius of the brush; None while no outline of it is shown."""
        shown = self._task in (PointerTask.PAINT, PointerTask.PLACE) and self._has_ring
        return self._brush_mm if shown else None

    def show_pointer(self, hit: Hit | None) -> None:
        """Draw the brush's outline at a place that is pointed at elsewhere."""
        self._lay_ring(hit)

    def _set_camera(self, camera: Camera, *, moving: bool = True) -> None:
        super()._set_camera(camera, moving=moving)
        if moving:
            self._point_at_nothing()
        else:
            self._hover.start()

    def _come_to_rest(self) -> None:
        super()._come_to_rest()
        self._point()

    # --- picking -------------------------------------------------------------------------

    def pick(self, at: QPointF | QPoint) -> Hit | None:
        """Return what lies under a place of the view, in logical pixels."""
        if self._mesh is None:
            return None
        origin, direction = self._camera.ray(at.x(), at.y(), self.width(), self.height())
        hit = self._mesh.picker.pick(origin, direction)
        if hit is None or self.row is None or self.look is not Look.ROW:
            return hit
        return hit if self._is_before_neighbours(self.row, hit, origin, direction) else None

    def _is_before_neighbours(
        self, row: Row, hit: Hit, origin: NDArray[np.float64], direction: NDArray[np.float64]
    ) -> bool:
        """Return True if no neighbour hides a place of the crown."""
        if self._row_picker is None or self._row_picker[0] is not row:
            others = TriMesh(row.mesh.vertices, row.mesh.faces[row.crown_faces :])
            self._row_picker = (row, Picker(others))
        other = self._row_picker[1].pick(origin, direction)
        return other is None or other.distance_mm > hit.distance_mm

    def read_again(self) -> None:
        """Point again where the pointer rests, because what lies there has changed."""
        if self._pointed:
            self._hover.start()

    def _point(self) -> None:
        if self._painting or self._dragged_from is not None or self._pointer is None:
            return
        if self._bare:
            # There is nothing to read yet, and picking a large mesh takes preparing.
            self._point_at_nothing()
            return
        if self._looks_for_face():
            return
        hit = self.pick(self._pointer)
        if hit is None:
            self._point_at_nothing()
        else:
            self._pointed = True
            self._lay_ring(hit)
            self.pointed_at.emit(hit)

    def _looks_for_face(self) -> bool:
        """Return True, and come back, while what finds a face is being made elsewhere.

        It is made with the prediction; where that does not come, it is made here after a while.
        """
        mesh = self._mesh
        there = mesh is None or "picker" in vars(mesh) or mesh.face_count <= _QUICKLY_PICKED
        self._looked = 0 if there else self._looked + 1
        if there or self._looked > _MOST_LOOKS:
            return False
        self._hover.start()
        return True

    def _point_at_nothing(self) -> None:
        self._lay_ring(None)
        if self._pointed:
            self._pointed = False
            self.pointed_at.emit(None)

    def _lay_ring(self, hit: Hit | None) -> None:
        ring = None
        if hit is not None and self.ring_mm is not None and self._mesh is not None:
            if self._ring is None:
                self._ring = BrushRing(self._mesh)
            ring = self._ring.around(hit.position, hit.face, self._brush_mm, self._camera.eye)
        if ring is not None or self.overlay.ring is not None:
            self.overlay.set_ring(ring)

    # --- mouse and keys ------------------------------------------------------------------

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Begin a stroke, a question's answer, or a drag."""
        if self._mesh is None or self._painting:
            return
        left = event.button() == Qt.MouseButton.LeftButton
        if left and self._task is PointerTask.PAINT:
            self._begin_stroke(event)
        elif left and self._task is PointerTask.PLACE:
            self._clicked_at = event.position()
        elif not (left and self._task is PointerTask.ASK):
            shift = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            self._shifts = shift or event.button() == Qt.MouseButton.MiddleButton
            self._dragged_from = event.position()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Paint on, turn, shift, or look what lies under the pointer."""
        self._pointer = event.position()
        if self._painting:
            self._stroke_to(event)
        elif self._clicked_at is not None:
            if (event.position() - self._clicked_at).manhattanLength() > _CLICK_PX:
                self._dragged_from, self._shifts = self._clicked_at, False
                self._clicked_at = None
                self._drag(event)
        elif self._dragged_from is not None:
            self._drag(event)
        else:
            self._hover.start()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End what the press began."""
        left = event.button() == Qt.MouseButton.LeftButton
        if self._painting and left:
            self._painting = False
            self.stroke_ended.emit()
            self._hover.start()
        elif left and self._clicked_at is not None:
            self._clicked_at = None
            self._place_tool(event.position(), event.modifiers())
        elif self._dragged_from is not None:
            self._dragged_from = None
            self._hover.start()
        elif left and self._task is PointerTask.ASK:
            hit = self.pick(event.position())
            if hit is not None:
                self.place_chosen.emit(hit)

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is pointed at any more."""
        super().leaveEvent(event)
        self._pointer = None
        self._point_at_nothing()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zoom at the pointer."""
        steps = event.angleDelta().y() / 120.0
        if self._mesh is not None and steps and not self._painting:
            at = event.position()
            size = (self.width(), self.height())
            self._framed = False
            self._set_camera(self._camera.zoomed(1.15**steps, at.x(), at.y(), *size))
        event.accept()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Cancel a stroke, turn, zoom, look from a side, size the brush."""
        key = Qt.Key(event.key())
        if self._painting:
            if key == Qt.Key.Key_Escape:
                self._painting = False
                self.stroke_cancelled.emit()
            return
        if self._task is PointerTask.PLACE and self._mesh is not None:
            if key == Qt.Key.Key_Escape:
                self.tool_left.emit()
                return
            if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self._pointer is not None:
                self._place_tool(self._pointer, event.modifiers())
                return
        plain = event.modifiers() in (
            Qt.KeyboardModifier.NoModifier,
            Qt.KeyboardModifier.ShiftModifier,
            Qt.KeyboardModifier.KeypadModifier,
        )
        if self._mesh is None or not plain or not self._act_on(key, event):
            super().keyPressEvent(event)

    def _act_on(self, key: Qt.Key, event: QKeyEvent) -> bool:
        """Return True if the key means something here."""
        if key in _ARROWS:
            dx, dy = _ARROWS[key]
            if event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
                self._framed = False
                self._set_camera(self._camera.shifted(20.0 * dx, 20.0 * dy, self.height()))
            else:
                self._turn_by(20.0 * dx, 20.0 * dy)
        elif key in _SIDE_KEYS:
            self.look_from(_SIDE_KEYS[key])
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal, Qt.Key.Key_Minus):
            factor = 1.0 / 1.15 if key == Qt.Key.Key_Minus else 1.15
            middle = (self.width() / 2.0, self.height() / 2.0)
            size = (self.width(), self.height())
            self._framed = False
            self._set_camera(self._camera.zoomed(factor, *middle, *size))
        elif key == Qt.Key.Key_Home:
            self.fit()
        elif key in (Qt.Key.Key_BracketLeft, Qt.Key.Key_BracketRight):
            self.brush_resized.emit(1 if key == Qt.Key.Key_BracketRight else -1)
        elif key == Qt.Key.Key_V and self.look is Look.ROW:
            self.legends.row.grey.toggle()
        else:
            return False
        return True

    def _place_tool(self, at: QPointF, keys: Qt.KeyboardModifier) -> None:
        hit = self.pick(at)
        if hit is not None:
            self.tool_placed.emit(hit, keys)

    def _turn_by(self, dx: float, dy: float) -> None:
        if self._directions is not None:
            self._set_camera(self._camera.turned(dx, dy, self._directions.occlusal))

    def _drag(self, event: QMouseEvent) -> None:
        before, now = self._dragged_from, event.position()
        if before is None:
            return
        self._dragged_from = now
        dx, dy = now.x() - before.x(), now.y() - before.y()
        if self._shifts:
            self._framed = False
            self._set_camera(self._camera.shifted(dx, dy, self.height()))
        else:
            self._turn_by(dx, dy)

    def _begin_stroke(self, event: QMouseEvent) -> None:
        hit = self.pick(event.position())
        if hit is None:
            # Beside the crown there is nothing to paint on: turn it instead.
            self._dragged_from, self._shifts = event.position(), False
            return
        self._point_at_nothing()
        self._painting = True
        if self._rest.isActive():
            # A hand that paints has turned the crown to where it wants it: all of the mesh now.
            self._rest.stop()
            self._come_to_rest()
        self._stroke_at = event.position()
        self._lay_ring(hit)
        self.stroke_began.emit(hit.position, hit.vertex, event.modifiers())

    def _stroke_to(self, event: QMouseEvent) -> None:
        """Paint along the line since the last place, closely enough that no gaps remain."""
        step = max(self._brush_mm * 0.5 * self.height() / self._camera.height_mm, 2.0)
        start, end = self._stroke_at, event.position()
        way = end - start
        count = int(np.hypot(way.x(), way.y()) / step)
        hits = []
        for k in range(1, count + 1):
            at = start + way * (k * step / float(np.hypot(way.x(), way.y())))
            self._stroke_at = at
            hit = self.pick(at)
            if hit is not None:
                hits.append(hit)
        for left, hit in zip(range(len(hits) - 1, -1, -1), hits, strict=True):
            self.passes_by = left > 0
            self.stroke_moved.emit(hit.position, hit.vertex, event.modifiers())
            if not self._painting:
                break
        self.passes_by = False
        if hits and self._painting:
            self._lay_ring(hits[-1])
