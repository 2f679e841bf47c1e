"""A picture on which round spots are placed, with the mouse or with keys."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from stainmap.planning.photograph import Photograph, Spot
from stainmap.ui.marks import paint_text, text_width
from stainmap.ui.theme import SURROUND
from stainmap.words import translate

_STEPS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
}
_LEAST_RADIUS = 4.0


class PictureSpots(QWidget):
    """Shows a photograph; a click places the spot that is chosen.

    Arrow keys move the chosen spot (with Shift ten times as far), plus and minus or the wheel make
    it larger and smaller.

    Signals
    -------
    placed
        Name of the spot that was placed, moved or resized.
    """

    placed = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(translate("picture spots", "Photograph"))
        self.setAccessibleDescription(
            translate(
                "picture spots",
                "Click to place the chosen spot. Arrow keys move it, plus and minus change its"
                " size.",
            )
        )
        self.setMinimumSize(360, 280)
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.spots: dict[str, Spot] = {}
        self.chosen = ""
        self._photograph: Photograph | None = None
        self._image = QImage()

    def set_photograph(self, photograph: Photograph) -> None:
        """Show another picture, without spots."""
        height, width = photograph.pixels.shape[:2]
        self._photograph = photograph
        image = QImage(
            photograph.pixels.tobytes(), width, height, 3 * width, QImage.Format.Format_RGB888
        )
        self._image = image.copy()
        self.spots = {}
        self.update()

    def choose(self, name: str) -> None:
        """Let the next click place this spot."""
        self.chosen = name
        self.update()

    def sizeHint(self) -> QSize:
        """Return room for a picture."""
        return QSize(560, 420)

    def to_picture(self, place: QPointF) -> tuple[float, float]:
        """Return the pixel at a place of the widget."""
        frame, scale = self._frame()
        return (place.x() - frame.x()) / scale, (place.y() - frame.y()) / scale

    def to_widget(self, x: float, y: float) -> QPointF:
        """Return the place of the widget at a pixel."""
        frame, scale = self._frame()
        return QPointF(frame.x() + x * scale, frame.y() + y * scale)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Place the chosen spot."""
        if event.button() is Qt.MouseButton.LeftButton and not self._image.isNull():
            self._place(*self.to_picture(event.position()))
        else:
            super().mousePressEvent(event)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Make the chosen spot larger or smaller."""
        self._resize(1.12 if event.angleDelta().y() > 0 else 1 / 1.12)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move or resize the chosen spot."""
        key = Qt.Key(event.key())
        if self._image.isNull():
            super().keyPressEvent(event)
        elif key in _STEPS:
            far = 10.0 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1.0
            across, down = _STEPS[key]
            spot = self.spots.get(self.chosen) or self._middle()
            step = far * max(self._image.width() / 400.0, 1.0)
            self._place(spot.x + step * across, spot.y + step * down)
        elif event.text() in ("+", "-"):
            self._resize(1.12 if event.text() == "+" else 1 / 1.12)
        else:
            super().keyPressEvent(event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the picture and its spots; rings in black and white show on anything."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), SURROUND)
        painter.setRenderHints(
            QPainter.RenderHint.Antialiasing | QPainter.RenderHint.SmoothPixmapTransform
        )
        if self._image.isNull():
            painter.end()
            return
        frame, scale = self._frame()
        painter.drawImage(frame, self._image)
        for name, spot in self.spots.items():
            centre, radius = self.to_widget(spot.x, spot.y), spot.radius * scale
            wide = 2.0 if name == self.chosen else 1.0
            painter.setBrush(Qt.BrushStyle.NoBrush)
            for colour, ring in (("#000000", radius + wide), ("#ffffff", radius)):
                painter.setPen(QPen(QColor(colour), wide))
                painter.drawEllipse(centre, ring, ring)
            width = text_width(name, 12, 600) + 10
            plate = QRectF(centre.x() - width / 2, centre.y() + radius + 5, width, 18)
            painter.fillRect(plate, "#161616")
            paint_text(
                painter,
                (plate.x() + 5, plate.y() + 13),
                name,
                "#ffffff",
                px=12,
                weight=600,
            )
        if self.hasFocus():
            painter.setPen(QPen(QColor("#161616"), 2))
            painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))
        painter.end()

    def _frame(self) -> tuple[QRectF, float]:
        """Return where the picture lies in the widget, and widget pixels per picture pixel."""
        width, height = max(self._image.width(), 1), max(self._image.height(), 1)
        scale = min(self.width() / width, self.height() / height)
        return (
            QRectF(
                (self.width() - width * scale) / 2,
                (self.height() - height * scale) / 2,
                width * scale,
                height * scale,
            ),
            scale,
        )

    def _middle(self) -> Spot:
        width, height = self._image.width(), self._image.height()
        return Spot(x=width / 2, y=height / 2, radius=max(0.02 * min(width, height), 6.0))

    def _place(self, x: float, y: float) -> None:
        if not self.chosen:
            return
        spot = self.spots.get(self.chosen) or self._middle()
        x = min(max(x, 0.0), float(self._image.width()))
        y = min(max(y, 0.0), float(self._image.height()))
        self.spots[self.chosen] = replace(spot, x=x, y=y)
        self.update()
        self.placed.emit(self.chosen)

    def _resize(self, factor: float) -> None:
        spot = self.spots.get(self.chosen)
        if spot is None:
            return
        most = 0.25 * min(self._image.width(), self._image.height())
        radius = min(max(spot.radius * factor, _LEAST_RADIUS), most)
        self.spots[self.chosen] = replace(spot, radius=radius)
        self.update()
        self.placed.emit(self.chosen)
