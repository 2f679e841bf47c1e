"""The drawn heads of the coat table: jars over their steps, names before their rows."""

from __future__ import annotations

from PySide6.QtCore import QLineF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QHeaderView, QTableView

from stainmap.model.zone import Area
from stainmap.ui.coat_model import AREA_ROLE, JAR_ROLE
from stainmap.ui.marks import Align, JarLook, paint_jar, paint_text
from stainmap.ui.theme import tones
from stainmap.ui.zone_look import paint_area_patch

STEP_HEAD_PX = 60
AREA_HEAD_PX = 144
ROW_PX, TITLE_PX = 26, 20


class StepHeader(QHeaderView):
    """Jar with number and liquid once over its neighbouring steps, step numbers below."""

    def __init__(self, table: QTableView) -> None:
        super().__init__(Qt.Orientation.Horizontal, table)
        self.setSectionsClickable(True)
        self.setHighlightSections(False)
        self.setFixedHeight(STEP_HEAD_PX)
        self.setAccessibleName("Steps in painting order")
        self.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
        self.current = -1

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
            weight = 600 if k == self.current else 400
            number = str(k + 1)
            at = (x, STEP_HEAD_PX - 6.0)
            paint_text(painter, at, number, t.soft, px=11, weight=weight, align=Align.AlignHCenter)
        painter.setPen(QPen(QColor(t.line), 1))
        y = STEP_HEAD_PX - 0.5
        painter.drawLine(QLineF(0, y, self.viewport().width(), y))
        painter.end()

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
        self.setAccessibleName("Areas")
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
