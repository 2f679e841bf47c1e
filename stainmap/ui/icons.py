"""Line icons: our own SVG drawings, tinted from the palette at the moment they are painted."""

from __future__ import annotations

from functools import lru_cache

from PySide6.QtCore import QByteArray, QPoint, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QIcon, QIconEngine, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from stainmap.paths import resource
from stainmap.ui.theme import tones

GRID_PX = 20


@lru_cache(maxsize=64)
def _drawing(name: str) -> str:
    return resource("icons", f"{name}.svg").read_text(encoding="utf-8")


@lru_cache(maxsize=256)
def _renderer(name: str, colour: str) -> QSvgRenderer:
    drawing = _drawing(name).replace("currentColor", colour)
    return QSvgRenderer(QByteArray(drawing.encode("utf-8")))


class TintedIconEngine(QIconEngine):
    """Paints one SVG in the ink of the palette, so that icons follow the scheme and the screen."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self._name = name

    def paint(self, painter: QPainter, rect: QRect, mode: QIcon.Mode, _state: QIcon.State) -> None:
        """Draw the icon into `rect`."""
        tone = tones()
        colour = tone.faint if mode == QIcon.Mode.Disabled else tone.ink
        _renderer(self._name, colour).render(painter, QRectF(rect))

    def pixmap(self, size: QSize, mode: QIcon.Mode, state: QIcon.State) -> QPixmap:
        """Return the icon as a picture with a clear background."""
        picture = QPixmap(size)
        picture.fill(Qt.GlobalColor.transparent)
        painter = QPainter(picture)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        self.paint(painter, QRect(QPoint(0, 0), size), mode, state)
        painter.end()
        return picture

    def clone(self) -> QIconEngine:
        """Return an engine for the same drawing."""
        return TintedIconEngine(self._name)


def icon(name: str) -> QIcon:
    """Return the icon drawn in ``resources/icons/<name>.svg``."""
    return QIcon(TintedIconEngine(name))


def paint_icon(painter: QPainter, name: str, rect: QRectF, colour: str) -> None:
    """Draw an icon in a colour of the caller's choice."""
    _renderer(name, colour).render(painter, rect)
