"""A plane on the crown that can be raised and tilted, and cuts off what lies below it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QEvent, QLineF, QObject, QPointF, Qt, QTimer, Signal
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import (
    QCheckBox,
    QDoubleSpinBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSlider,
    QWidget,
)

from stainmap.app.session import Session
from stainmap.model.case import Case
from stainmap.model.crown import BodyKind
from stainmap.surface.picking import Hit
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_view import CrownView, PointerTask
from stainmap.ui.plate import Plate
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font
from stainmap.words import translate

if TYPE_CHECKING:
    from stainmap.app.cutting import NeckCut

FloatArray = NDArray[np.float64]
_MOST_TILT_DEG = 40.0
_PLANE = QColor(40, 60, 80, 46)
_FAINT = QColor(30, 40, 52, 90)
_LINE, _HALO = QColor(30, 40, 52), QColor(255, 255, 255, 190)
_EDGE_PX = 12
_LINES_EVERY_MS = 30


class CutCard(Plate):
    """Height and tilt of the plane, whether the cut is closed, and the two ways out.

    Signals
    -------
    moved
        A number has changed.
    accepted, cancelled
        The buttons.
    """

    moved = Signal()
    accepted = Signal()
    cancelled = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("cut tool", "Cut off the crown"))
        self.setFixedWidth(330)
        title = QLabel(translate("cut tool", "Cut off the crown"))
        title.setFont(font(15, 600))
        self._hint = SoftLabel()
        self._hint.setWordWrap(True)
        self.body.addWidget(title)
        self.body.addWidget(self._hint)
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setColumnStretch(1, 1)
        self.height_mm = self._row(grid, 0, translate("cut tool", "Height"), " mm", 0.05)
        self.tilt_deg = self._row(grid, 1, translate("cut tool", "Tilt"), "\N{DEGREE SIGN}", 0.5)
        self.lean_deg = self._row(grid, 2, translate("cut tool", "Lean"), "\N{DEGREE SIGN}", 0.5)
        for box in (self.tilt_deg, self.lean_deg):
            box.setRange(-_MOST_TILT_DEG, _MOST_TILT_DEG)
        self.body.addLayout(grid)
        self.close_it = QCheckBox(translate("cut tool", "close the cut with a flat base"))
        self.close_it.toggled.connect(self.moved)
        self.body.addWidget(self.close_it)
        self.body.addWidget(
            SoftLabel(translate("cut tool", "One step of undo. The file in the case stays whole."))
        )
        row = QHBoxLayout()
        row.addStretch(1)
        self.cancel, self.cut = (
            QPushButton(translate("cut tool", "Cancel")),
            QPushButton(translate("cut tool", "Cut")),
        )
        self.cut.setProperty("main", True)
        self.cancel.clicked.connect(self.cancelled)
        self.cut.clicked.connect(self.accepted)
        row.addWidget(self.cancel)
        row.addWidget(self.cut)
        self.body.addLayout(row)
        self.hide()

    def _row(
        self, grid: QGridLayout, number: int, name: str, suffix: str, step: float
    ) -> QDoubleSpinBox:
        slider, box = QSlider(Qt.Orientation.Horizontal), QDoubleSpinBox()
        slider.setRange(0, 1000)
        slider.setAccessibleName(translate("cut tool", "{name} of the plane").format(name=name))
        box.setDecimals(2 if step < 0.1 else 1)
        box.setSingleStep(step)
        box.setSuffix(suffix)
        box.setAccessibleName(
            translate("cut tool", "{name} of the plane, number").format(name=name)
        )
        label = QLabel(name)
        label.setBuddy(box)
        grid.addWidget(label, number, 0)
        grid.addWidget(slider, number, 1)
        grid.addWidget(box, number, 2)

        def from_slider(value: int) -> None:
            low, high = box.minimum(), box.maximum()
            box.setValue(low + (high - low) * value / 1000.0)

        def from_box(value: float) -> None:
            low, high = box.minimum(), box.maximum()
            slider.blockSignals(True)
            slider.setValue(round(1000.0 * (value - low) / max(high - low, 1e-9)))
            slider.blockSignals(False)
            self.moved.emit()

        slider.valueChanged.connect(from_slider)
        box.valueChanged.connect(from_box)
        return box

    def set_up(
        self, hint: str, span_mm: tuple[float, float], height: float, *, close: bool
    ) -> None:
        """Show a plane that stands level at a height between the two ends of a body."""
        self._hint.setText(hint)
        for box in (self.height_mm, self.tilt_deg, self.lean_deg):
            box.blockSignals(True)
        self.height_mm.setRange(*span_mm)
        self.close_it.setChecked(close)
        for box in (self.height_mm, self.tilt_deg, self.lean_deg):
            box.blockSignals(False)
        # Through another value, so that the sliders follow.
        for box, value in ((self.height_mm, height), (self.tilt_deg, 0.0), (self.lean_deg, 0.0)):
            box.setValue(box.minimum())
            box.setValue(value)


class CutOverlay(QWidget):
    """The plane and the line in which it meets the crown, drawn over its picture."""

    def __init__(self, view: CrownView) -> None:
        super().__init__(view)
        self.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        self.setAttribute(Qt.WidgetAttribute.WA_NoSystemBackground)
        self.setAccessibleName(translate("cut tool", "Plane of the cut"))
        self._view = view
        self.corners: FloatArray | None = None
        self.lines: FloatArray = np.zeros((0, 2, 3))
        self.hide()

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw both."""
        camera = self._view.camera
        if self.corners is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        size = (self.width(), self.height())
        square = QPolygonF([QPointF(x, y) for x, y, _ in camera.project(self.corners, *size)])
        painter.setBrush(_PLANE)
        painter.setPen(QPen(_HALO, 1.0))
        painter.drawPolygon(square)
        if len(self.lines):
            flat = camera.project(self.lines.reshape(-1, 3), *size)[:, :2].reshape(-1, 4)
            # What lies beyond the middle is behind the crown.
            middle = self.lines.reshape(-1, 3).mean(axis=0)
            near = (self.lines.mean(axis=1) - middle) @ camera.axes[2] >= 0.0
            lines = [QLineF(*(float(v) for v in row)) for row in flat]
            front = [line for line, seen in zip(lines, near, strict=True) if seen]
            for drawn, colour, width in (
                (lines, _FAINT, 1.2),
                (front, _HALO, 3.4),
                (front, _LINE, 1.4),
            ):
                painter.setPen(QPen(colour, width, c=Qt.PenCapStyle.RoundCap))
                painter.drawLines(drawn)
        painter.end()


class CutTool(QObject):
    """Lets a plane be laid through the neck of the open crown, and has it cut off there.

    Parameters
    ----------
    session, view, desk
        What is open, and where it is shown.
    """

    def __init__(self, session: Session, view: CrownView, desk: CrownDesk) -> None:
        super().__init__(view)
        self._session, self._view, self._desk = session, view, desk
        self._case: Case | None = None
        self._start: NeckCut | None = None
        self._keep: tuple[float, float, float] | None = None
        self._axes: FloatArray = np.eye(3)
        self.card, self.overlay = CutCard(view), CutOverlay(view)
        self.card.moved.connect(self._move)
        self.card.accepted.connect(self._cut)
        self.card.cancelled.connect(self.stop)
        view.place_chosen.connect(self._choose)
        view.overlay.installEventFilter(self)
        view.installEventFilter(self)
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(_LINES_EVERY_MS)
        self._soon.timeout.connect(self._draw_lines)
        self._unsubscribe: Callable[[], None] = session.subscribe(lambda _change: self._check())

    @property
    def is_active(self) -> bool:
        """True while a plane is shown."""
        return self._start is not None

    def start(self) -> None:
        """Show the plane where a cut is proposed."""
        from stainmap.app.cutting import proposed_cut  # noqa: PLC0415

        case = self._session.case
        if case is None or self._view.is_bare:
            return
        self._case, self._start, self._keep = case, proposed_cut(case), None
        axis = np.asarray(self._start.normal)
        mesial = case.reading.mesial
        side = np.eye(3)[int(np.abs(axis).argmin())] if mesial is None else np.asarray(mesial)
        side = side - (side @ axis) * axis
        side = side / np.linalg.norm(side)
        self._axes = np.stack([axis, side, np.cross(axis, side)])
        along = case.surface.mesh.vertices @ axis
        top, low = float(along.max()), float(along.min())
        at = float(axis @ self._start.point_mm)
        hint = translate(
            "cut tool", "Lay the plane through the neck; what lies below it is cut away."
        )
        if case.reading.kind is BodyKind.JAW:
            only = translate("cut tool", "Click the crown that is meant: only that is kept.")
            hint = f"{hint} {only}"
        self._desk.allow_painting(False)
        self._view.set_task(PointerTask.ASK)
        self.card.set_up(hint, (0.0, top - low), at - low, close=self._start.close)
        self.card.fit()
        self.card.move(_EDGE_PX, _EDGE_PX)
        self.card.show()
        self.card.raise_()
        self._view.keep_clear_of(self.card)
        self.overlay.setGeometry(self._view.rect())
        self.overlay.show()
        self.overlay.raise_()
        self.card.raise_()
        self._move()

    def stop(self) -> None:
        """Take the plane away; nothing is cut."""
        if self._start is None:
            return
        self._case = self._start = self._keep = None
        self.card.hide()
        self.overlay.hide()
        self._view.keep_clear_of(None)
        self._desk.allow_painting(True)
        self._view.setFocus()

    @property
    def plane(self) -> NeckCut | None:
        """The plane as it stands, or None."""
        case, start = self._case, self._start
        if case is None or start is None:
            return None
        axis, side, other = self._axes
        tilt, lean = np.radians([self.card.tilt_deg.value(), self.card.lean_deg.value()])
        normal = axis + np.tan(tilt) * side + np.tan(lean) * other
        normal = normal / np.linalg.norm(normal)
        low = float((case.surface.mesh.vertices @ axis).min())
        start_point = np.asarray(start.point_mm)
        point = start_point + (low + self.card.height_mm.value() - axis @ start_point) * axis
        if self._keep is not None:
            keep = np.asarray(self._keep)
            point = keep + (axis @ (point - keep)) * axis
        return replace(
            start,
            point_mm=(float(point[0]), float(point[1]), float(point[2])),
            normal=(float(normal[0]), float(normal[1]), float(normal[2])),
            close=self.card.close_it.isChecked(),
            keep_mm=self._keep,
        )

    def _move(self) -> None:
        plane = self.plane
        if plane is None:
            return
        case = self._case
        if case is None:
            return
        normal, point = np.asarray(plane.normal), np.asarray(plane.point_mm)
        side = self._axes[1] - (self._axes[1] @ normal) * normal
        side = side / np.linalg.norm(side)
        other = np.cross(normal, side)
        reach = min(0.54 * float(np.sort(case.surface.mesh.extent)[1]), 14.0)
        corners = [(1, 1), (-1, 1), (-1, -1), (1, -1)]
        self.overlay.corners = np.stack(
            [point + reach * (a * side + b * other) for a, b in corners]
        )
        if not self._soon.isActive():
            self._soon.start()
        self.overlay.update()

    def _draw_lines(self) -> None:
        from stainmap.app.cutting import section_lines  # noqa: PLC0415

        plane, case = self.plane, self._case
        if plane is not None and case is not None:
            self.overlay.lines = section_lines(case.surface.mesh, plane)
            self.overlay.update()

    def _choose(self, hit: Hit) -> None:
        if self._start is not None:
            x, y, z = (float(v) for v in hit.position)
            self._keep = (x, y, z)
            self._move()

    def _cut(self) -> None:
        plane = self.plane
        self.stop()
        if plane is not None:
            self._session.cut_off(plane)

    def _check(self) -> None:
        """Go away when another crown is open, or the surface has changed."""
        case = self._session.case
        if self._case is not None and (
            case is None or case.surface is not self._case.surface or self._view.is_bare
        ):
            self.stop()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Follow the camera, whose marks are drawn anew when it moves, and the view's size."""
        if self._start is not None:
            if watched is self._view.overlay and event.type() == QEvent.Type.Paint:
                self.overlay.update()
            elif watched is self._view and event.type() == QEvent.Type.Resize:
                self.overlay.setGeometry(self._view.rect())
        return super().eventFilter(watched, event)
