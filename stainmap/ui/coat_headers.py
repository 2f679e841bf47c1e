"""The drawn heads of the coat table: jars over their steps, names before their rows."""

from __future__ import annotations

from PySide6.QtCore import QLineF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QApplication, QHeaderView, QScrollBar, QTableView

from stainmap.model.zone import Area
from stainmap.ui.coat_model import AREA_ROLE, JAR_ROLE
from stainmap.ui.marks import Align, JarLook, paint_jar, paint_text
from stainmap.ui.theme import tones
from stainmap.ui.zone_look import paint_area_patch
from stainmap.words import translate

STEP_HEAD_PX = 60
AREA_HEAD_PX = 144
ROW_PX, TITLE_PX = 26, 20


class StepHeader(QHeaderView):
    """Jar with number and liquid once over its neighbouring steps, step numbers below.

    A step is dragged to another place in the order; a mark shows where it would go.

    Signals
    -------
    step_clicked
        Step (from 0).
    step_dragged
        Step that is dragged, and its place if it were dropped now; -1, -1 when it no longer is.
    step_dropped
        Step, and its new place.
    """

    step_clicked = Signal(int)
    step_dragged = Signal(int, int)
    step_dropped = Signal(int, int)

    def __init__(self, table: QTableView) -> None:
        super().__init__(Qt.Orientation.Horizontal, table)
        self.setSectionsClickable(True)
        self.setHighlightSections(False)
        self.setFixedHeight(STEP_HEAD_PX)
        self.setAccessibleName(translate("coat headers", "Steps in painting order"))
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        self.current = -1
        self._pressed: tuple[int, int] | None = None  # step, and where along the head
        self._place = -1

    # --- dragging ------------------------------------------------------------------------

    @property
    def dragged(self) -> tuple[int, int] | None:
        """Step that is dragged, and its place if it were dropped now."""
        return None if self._pressed is None or self._place < 0 else (self._pressed[0], self._place)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Take hold of a step."""
        if event.button() == Qt.MouseButton.LeftButton:
            x = round(event.position().x())
            step = self.logicalIndexAt(x)
            self._pressed, self._place = None if step < 0 else (step, x), -1

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drag it, once the pointer has gone further than a click would."""
        if self._pressed is None or not event.buttons() & Qt.MouseButton.LeftButton:
            return
        x = round(event.position().x())
        if self._place < 0 and abs(x - self._pressed[1]) < QApplication.startDragDistance():
            return
        bar = self.horizontal_bar()
        if bar is not None and not 0 <= x < self.viewport().width():
            bar.setValue(bar.value() + (self.sectionSize(0) if x > 0 else -self.sectionSize(0)))
        place = self._place_at(x)
        if place != self._place:
            self._place = place
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
            self.step_dragged.emit(self._pressed[0], place)
        self.viewport().update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Drop the step, or take it as a click."""
        pressed, place = self._pressed, self._place
        if pressed is None or event.button() != Qt.MouseButton.LeftButton:
            return
        self.cancel()
        if place < 0:
            self.step_clicked.emit(pressed[0])
        elif place != pressed[0]:
            self.step_dropped.emit(pressed[0], place)

    def cancel(self) -> bool:
        """Let go of what is dragged, as if nothing had been; return False if nothing is."""
        was = self.dragged is not None
        self._pressed, self._place = None, -1
        self.unsetCursor()
        self.viewport().update()
        if was:
            self.step_dragged.emit(-1, -1)
        return was

    def horizontal_bar(self) -> QScrollBar | None:
        """Return what scrolls the steps."""
        table = self.parent()
        return table.horizontalScrollBar() if isinstance(table, QTableView) else None

    def _place_at(self, x: int) -> int:
        """Return the place in the order of a step that is dropped at `x`."""
        ends = [
            self.sectionViewportPosition(k) + self.sectionSize(k) // 2 for k in range(self.count())
        ]
        step = 0 if self._pressed is None else self._pressed[0]
        gap = sum(x > end for end in ends)
        return gap if gap <= step else gap - 1

    def sizeHint(self) -> QSize:
        """Return the room jars, names and numbers need."""
        return QSize(super().sizeHint().width(), STEP_HEAD_PX)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw runs of steps from one jar, and every step's number."""
        painter = QPainter(self.viewport())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        painter.fillRect(self.viewport().rect(), QColor(t.panel))
        jars = [self._jar(k) for k in range(self.count())]
        start = 0
        while start < len(jars):
            end = start
            while end + 1 < len(jars) and jars[end + 1] == jars[start]:
                end += 1
            jar = jars[start]
            if jar is not None:
                self._paint_run(painter, jar, start, end)
            start = end + 1
        for k in range(self.count()):
            x = self.sectionViewportPosition(k) + self.sectionSize(k) / 2.0
            dragged = self.dragged is not None and self.dragged[0] == k
            weight = 600 if k == self.current or dragged else 400
            number = str(k + 1)
            at = (x, STEP_HEAD_PX - 6.0)
            paint_text(painter, at, number, t.soft, px=11, weight=weight, align=Align.AlignHCenter)
        painter.setPen(QPen(QColor(t.line), 1))
        y = STEP_HEAD_PX - 0.5
        painter.drawLine(QLineF(0, y, self.viewport().width(), y))
        self._paint_drag(painter)
        painter.end()

    def _paint_drag(self, painter: QPainter) -> None:
        """Frame the number of the step that is dragged, and draw a bar where it would go."""
        if self.dragged is None:
            return
        step, place = self.dragged
        accent = QColor(tones(self).accent)
        painter.setPen(QPen(accent, 1.5))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        left = self.sectionViewportPosition(step)
        box = QRectF(left + 2, STEP_HEAD_PX - 18.0, self.sectionSize(step) - 4, 16)
        painter.drawRoundedRect(box, 3, 3)
        gap = place if place <= step else place + 1
        last = self.count() - 1
        x = (
            self.sectionViewportPosition(gap)
            if gap <= last
            else self.sectionViewportPosition(last) + self.sectionSize(last)
        )
        painter.fillRect(QRectF(x - 1.5, 4, 3, STEP_HEAD_PX - 5), accent)

    def _jar(self, step: int) -> JarLook | None:
        jar = self.model().headerData(step, Qt.Orientation.Horizontal, JAR_ROLE)
        return jar if isinstance(jar, JarLook) else None

    def _paint_run(self, painter: QPainter, jar: JarLook, start: int, end: int) -> None:
        t = tones(self)
        left = float(self.sectionViewportPosition(start))
        right = float(self.sectionViewportPosition(end) + self.sectionSize(end))
        middle = (left + right) / 2.0
        paint_jar(painter, QRectF(middle - 9, 3, 18, 21), jar, t)
        room = right - left + 10.0
        at = (middle, 40.0)
        paint_text(
            painter, at, jar.liquid, t.ink, px=11, weight=500, align=Align.AlignHCenter, width=room
        )
        if end > start:
            painter.setPen(QPen(QColor(t.soft), 1))
            painter.drawLine(QLineF(left + 6, 14.5, middle - 13, 14.5))
            painter.drawLine(QLineF(middle + 13, 14.5, right - 6, 14.5))


class AreaHeader(QHeaderView):
    """Sample, number and name of each area; titles over the groups."""

    def __init__(self, table: QTableView) -> None:
        super().__init__(Qt.Orientation.Vertical, table)
        self.setSectionsClickable(True)
        self.setHighlightSections(False)
        self.setFixedWidth(AREA_HEAD_PX)
        self.setMinimumSectionSize(TITLE_PX)
        self.setAccessibleName(translate("coat headers", "Areas"))
        self.chosen: Area | None = None
        self.current: Area | None = None

    def sizeHint(self) -> QSize:
        """Return the room the longest usual name needs."""
        return QSize(AREA_HEAD_PX, super().sizeHint().height())

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw every row's head."""
        painter = QPainter(self.viewport())
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        t = tones(self)
        painter.fillRect(self.viewport().rect(), QColor(t.panel))
        for row in range(self.count()):
            y = float(self.sectionViewportPosition(row))
            area = self.model().headerData(row, Qt.Orientation.Vertical, AREA_ROLE)
            name = str(self.model().headerData(row, Qt.Orientation.Vertical))
            if area is None:
                if row:
                    painter.setPen(QPen(QColor(t.line), 1))
                    painter.drawLine(QLineF(0, y + 0.5, self.width(), y + 0.5))
                paint_text(painter, (0, y + 14), name, t.soft, px=11)
                continue
            self._paint_area(painter, area, name, y)
        painter.end()

    def _paint_area(self, painter: QPainter, area: Area, name: str, y: float) -> None:
        t = tones(self)
        here = area in (self.current, self.chosen)
        if here:
            painter.fillRect(QRectF(-6, y, self.width() + 6.0, ROW_PX), QColor(t.raised))
        paint_area_patch(painter, QRectF(1, y + 6, 14, 14), area, t)
        number = str(int(area))
        at = (33.0, y + 17.5)
        paint_text(painter, at, number, t.soft, px=11, align=Align.AlignRight)
        weight = 600 if here else 400
        room = self.width() - 39.0
        paint_text(painter, (40, y + 17.5), name, t.ink, weight=weight, width=room)
        if area == self.chosen:
            painter.setPen(QPen(QColor(t.accent), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(QRectF(37, y + 2, self.width() - 40.0, ROW_PX - 4), 3, 3)
