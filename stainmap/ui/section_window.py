"""A section through the crown beside it: wall, stained depth, and where on the crown it lies."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QLineF, QObject, QPointF, QSize, Qt, Signal
from PySide6.QtGui import (
    QCloseEvent,
    QColor,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
    QPolygonF,
)
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QHBoxLayout,
    QLabel,
    QSlider,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.change import Change
from stainmap.app.session import Session
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_overlay import Preview
from stainmap.ui.marks import Align, paint_text
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font, tones
from stainmap.ui.zone_look import MOST_COATS, coat_tones
from stainmap.words import marked, translate, value_word

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.app.section import Section

FloatArray = NDArray[np.float64]

_STEPS_PER_MM = 20
_RIM_PX, _GRID_MM = 34.0, 1.0
_NOTHING = marked("section window", "nothing has been predicted yet")


class SectionPicture(QWidget):
    """Draws a section to scale over a grid of millimetres.

    Signals
    -------
    told
        What lies under the pointer, or empty.
    """

    told = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setMinimumSize(QSize(360, 300))
        self.setMouseTracking(True)
        self.setAccessibleName(translate("section window", "Section"))
        self._section: Section | None = None

    def set_section(self, section: Section | None) -> None:
        """Show another section."""
        self._section = section
        self.setAccessibleDescription(
            translate("section window", _NOTHING) if section is None else thinnest_words(section)
        )
        self.update()

    def _scale(self, section: Section) -> tuple[float, FloatArray]:
        """Return pixels per mm and the place in the middle."""
        low, high = section.ends.min(axis=(0, 1)), section.ends.max(axis=(0, 1))
        room = np.array([self.width() - 2 * _RIM_PX, self.height() - 2 * _RIM_PX])
        scale = float((np.maximum(room, 40.0) / np.maximum(high - low, 0.5)).min())
        return scale, 0.5 * (low + high)

    def _to_screen(self, section: Section, places: FloatArray) -> FloatArray:
        scale, middle = self._scale(section)
        away = (places - middle) * scale
        x = 0.5 * self.width() + away[..., 0]
        return np.stack([x, 0.5 * self.height() - away[..., 1]], axis=-1)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw grid, ceramic, stain, outline and the thinnest place."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.panel))
        section = self._section
        if section is None or not len(section.ends):
            words = (
                translate("section window", _NOTHING)
                if section is None
                else translate("section window", "the plane misses the crown")
            )
            middle = (self.width() / 2.0, self.height() / 2.0)
            paint_text(painter, middle, words, t.soft, align=Align.AlignHCenter)
            painter.end()
            return
        self._paint_grid(painter, section)
        path = QPainterPath()
        path.setFillRule(Qt.FillRule.OddEvenFill)
        for outline in section.outlines:
            path.addPolygon(_polygon(self._to_screen(section, outline)))
            path.closeSubpath()
        painter.fillPath(path, QColor(t.field))
        painter.save()
        painter.setClipPath(path)
        self._paint_stain(painter, section)
        painter.restore()
        painter.setPen(QPen(QColor(t.ink), 1.2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPath(path)
        self._paint_thinnest(painter, section)
        left, right, top = section.words
        height, wide = self.height(), self.width()
        paint_text(painter, (6, height / 2), left, t.soft, px=12)
        paint_text(painter, (wide - 6, height / 2), right, t.soft, px=12, align=Align.AlignRight)
        paint_text(painter, (wide / 2, 16), top, t.soft, px=12, align=Align.AlignHCenter)
        painter.end()

    def _paint_grid(self, painter: QPainter, section: Section) -> None:
        scale, middle = self._scale(section)
        painter.setPen(QPen(QColor(tones(self).hair), 1))
        for axis, length in ((0, self.width()), (1, self.height())):
            half = 0.5 * length / scale
            for at in np.arange(np.ceil(middle[axis] - half), middle[axis] + half, _GRID_MM):
                away = (at - middle[axis]) * scale
                if axis == 0:
                    x = 0.5 * self.width() + away
                    painter.drawLine(QLineF(x, 0, x, self.height()))
                else:
                    y = 0.5 * self.height() - away
                    painter.drawLine(QLineF(0, y, self.width(), y))

    def _paint_stain(self, painter: QPainter, section: Section) -> None:
        deep = section.ends + section.inward * section.stained_mm[..., None]
        outside = self._to_screen(section, section.ends)
        inside = self._to_screen(section, deep)
        shades = coat_tones()
        painter.setPen(Qt.PenStyle.NoPen)
        for piece in np.flatnonzero((section.stained_mm > 0.0).any(axis=1)):
            coats = min(max(round(float(section.coats[piece].mean())), 1), MOST_COATS)
            painter.setBrush(QColor.fromRgbF(*shades[coats]))
            corners = np.concatenate([outside[piece], inside[piece][::-1]])
            painter.drawPolygon(_polygon(corners))

    def _paint_thinnest(self, painter: QPainter, section: Section) -> None:
        if section.thinnest is None:
            return
        t = tones(self)
        place = section.ends[section.thinnest].mean(axis=0)
        wall = float(section.wall_mm[section.thinnest].mean())
        inner = place + section.inward[section.thinnest].mean(axis=0) * wall
        (x, y), (u, v) = self._to_screen(section, np.stack([place, inner]))
        thin = wall < section.minimum_mm
        ink = t.caution if thin else t.accent
        painter.setPen(QPen(QColor(ink), 2.4))
        painter.drawLine(QLineF(x, y, u, v))
        away = 1.0 if x >= self.width() / 2.0 else -1.0
        at = (min(max(x + 10 * away, 60.0), self.width() - 60.0), y - 6)
        align = Align.AlignLeft if away > 0 else Align.AlignRight
        paint_text(
            painter,
            at,
            f"{wall:.2f} mm",
            ink,
            px=12,
            weight=600,
            align=align,
        )

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Tell what lies under the pointer."""
        section = self._section
        if section is None or not len(section.ends):
            return
        scale, middle = self._scale(section)
        at = event.position()
        x = (at.x() - 0.5 * self.width()) / scale + middle[0]
        y = (0.5 * self.height() - at.y()) / scale + middle[1]
        piece = section.nearest(np.array([x, y]))
        self.told.emit("" if piece is None else piece_words(section, piece))


def piece_words(section: Section, piece: int) -> str:
    """Return what is known of one piece of a section."""
    side = (
        translate("section window", "outer surface")
        if section.outer[piece]
        else translate("section window", "inner surface")
    )
    wall = float(section.wall_mm[piece].mean())
    stained = float(section.stained_mm[piece].mean())
    coats = float(section.coats[piece].mean())
    if stained <= 0.0:
        return translate("section window", "{side}: wall {wall:.2f} mm, no stain").format(
            side=side, wall=wall
        )
    return translate(
        "section window",
        "{side}: wall {wall:.2f} mm, stained {stained:.2f} mm deep, {coats:.1f} coats",
    ).format(side=side, wall=wall, stained=stained, coats=coats)


def thinnest_words(section: Section) -> str:
    """Return where the wall is thinnest, beside what the block allows."""
    if section.thinnest is None:
        return translate("section window", "no wall above the margin here")
    wall = float(section.wall_mm[section.thinnest].mean())
    text = (
        translate(
            "section window", "thinnest wall {wall:.2f} mm, below the block's minimum {least:.2f}"
        )
        if wall < section.minimum_mm
        else translate(
            "section window", "thinnest wall {wall:.2f} mm, above the block's minimum {least:.2f}"
        )
    )
    return text.format(wall=wall, least=section.minimum_mm)


class SectionWindow(QDialog):
    """The section with its plane: which way it stands, and where.

    Signals
    -------
    closed
        Nobody looks any more.
    """

    closed = Signal()

    def __init__(self, session: Session, desk: CrownDesk, parent: QWidget | None = None) -> None:
        from stainmap.app.section import SectionWay  # noqa: PLC0415

        super().__init__(parent)
        self._session, self._desk, self._view = session, desk, desk.view
        self.setWindowTitle(translate("section window", "Section"))
        self.setModal(False)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 14, 16, 14)
        column.setSpacing(10)
        row = QHBoxLayout()
        column.addLayout(row)
        self.way = QComboBox()
        self.way.setAccessibleName(translate("section window", "Plane"))
        for one in SectionWay:
            self.way.addItem(value_word(one), one)
        row.addWidget(QLabel(translate("section window", "Plane")))
        row.addWidget(self.way)
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setAccessibleName(translate("section window", "Where the plane lies"))
        row.addWidget(self.slider, 1)
        self.place = QLabel()
        self.place.setMinimumWidth(64)
        self.place.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self.place)
        self.picture = SectionPicture()
        column.addWidget(self.picture, 1)
        self.thinnest = QLabel()
        self.thinnest.setFont(font(13, 550))
        self.pointed = SoftLabel(
            translate("section window", "point at the section to read a place")
        )
        legend = translate(
            "section window",
            "stained depth: the darker, the more coats. One square is one millimetre.",
        )
        for label in (self.thinnest, self.pointed, SoftLabel(legend, 11)):
            column.addWidget(label)
        self.resize(560, 560)
        self.section: Section | None = None
        self.way.currentIndexChanged.connect(lambda _index: self._choose_way())
        self.slider.valueChanged.connect(lambda _value: self.show_section())
        self.picture.told.connect(self.pointed.setText)

    def _prediction(self) -> Prediction | None:
        """Return what is predicted of the crown that is shown, or None."""
        prediction, case = self._session.prediction, self._session.case
        if prediction is None or case is None or prediction.case.surface is not case.surface:
            return None
        return prediction

    def go_through(self, point: FloatArray | None) -> None:
        """Lay the plane through a point (3,) mm, or the middle of the crown."""
        from stainmap.app.section import SectionWay, offset_of, section_range  # noqa: PLC0415

        prediction = self._prediction()
        if prediction is None:
            self.show_section()
            return
        way = SectionWay(self.way.currentData())
        low, high = section_range(prediction, way)
        at = 0.5 * (low + high) if point is None else offset_of(prediction, way, point)
        # A plane that only touches the crown shows nothing.
        self.slider.blockSignals(True)
        self.slider.setRange(
            int(np.ceil(low * _STEPS_PER_MM + 1)), int(np.floor(high * _STEPS_PER_MM - 1))
        )
        self.slider.setValue(round(at * _STEPS_PER_MM))
        self.slider.blockSignals(False)
        self.show_section()

    def _choose_way(self) -> None:
        vertex, prediction = self._desk.last_vertex, self._prediction()
        if prediction is None or vertex is None:
            self.go_through(None)
        else:
            self.go_through(prediction.case.surface.mesh.vertices[vertex])

    def show_section(self) -> None:
        """Show the section where the plane lies now."""
        from stainmap.app.section import SectionWay, section_at  # noqa: PLC0415

        prediction = self._prediction()
        if prediction is None:
            self.section = None
            self.thinnest.setText(translate("section window", _NOTHING))
            self._view.overlay.cut = None
        else:
            way = SectionWay(self.way.currentData())
            offset = self.slider.value() / _STEPS_PER_MM
            self.section = section_at(prediction, way, offset)
            self.place.setText(f"{offset:.2f} mm")
            self.thinnest.setText(thinnest_words(self.section))
            self._view.overlay.cut = Preview(
                pieces=self.section.lines, normals=self.section.normals
            )
        self.picture.set_section(self.section)
        self._view.overlay.update()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Take the line off the crown."""
        self._leave()
        super().closeEvent(event)

    def reject(self) -> None:
        """Esc: take the line off the crown."""
        self._leave()
        super().reject()

    def _leave(self) -> None:
        self._view.overlay.cut = None
        self._view.overlay.update()
        self.closed.emit()


class SectionDesk(QObject):
    """Keeps the one window of a section in step with the session."""

    def __init__(self, session: Session, desk: CrownDesk, window: QWidget) -> None:
        super().__init__(window)
        self._session, self._desk, self._window = session, desk, window
        self.window: SectionWindow | None = None

    def open(self) -> None:
        """Show the section through the place that was pointed at last."""
        if self.window is None:
            self.window = SectionWindow(self._session, self._desk, self._window)
        case, vertex = self._session.case, self._desk.last_vertex
        point = None
        if case is not None and vertex is not None and vertex < case.surface.mesh.vertex_count:
            point = case.surface.mesh.vertices[vertex]
        self.window.go_through(point)
        self.window.show()
        self.window.raise_()

    def refresh(self, change: Change) -> None:
        """Show what has changed."""
        window = self.window
        if window is None or not window.isVisible():
            return
        if change.touches("opened", "surface"):
            window.go_through(None)
        elif change.touches("appearance", "outcome", "reading", "units"):
            window.show_section()


def _polygon(places: FloatArray) -> QPolygonF:
    return QPolygonF([QPointF(x, y) for x, y in places.tolist()])
