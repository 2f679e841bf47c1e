"""How areas look in the window: zone patches, what the shaders need, the tones of the coats."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QLineF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen

from stainmap.model.zone import Accent, Area, Zone
from stainmap.optics.colorimetry import decode_srgb, encode_srgb, lab_to_srgb
from stainmap.paper.zone_colours import WHITE_HATCH, zone_colour_linear
from stainmap.ui.theme import Tones

_NO_ZONE = 0.52  # linear
# Hatch of a patch: angles in degrees and spacing in pixels; on the crown see zones.frag.
_HATCHES: dict[Zone, tuple[tuple[float, float], ...]] = {
    Zone.CERVICAL: ((0.0, 4.0),),
    Zone.INTERPROXIMAL: ((-45.0, 4.5),),
    Zone.CUSP: ((60.0, 5.0),),
    Zone.FISSURE: ((45.0, 4.0), (-45.0, 4.0)),
}
MOST_COATS = 12


def zone_colour(zone: Zone) -> QColor:
    """Return the colour of a zone for patches and legends."""
    red, green, blue = np.asarray(encode_srgb(zone_colour_linear(zone)))
    return QColor.fromRgbF(float(red), float(green), float(blue))


def shader_zone_colours() -> NDArray[np.float32]:
    """Return (7, 3) linear colours by zone number; 0 stands for "no zone yet"."""
    rows = [np.full(3, _NO_ZONE)] + [zone_colour_linear(zone) for zone in Zone]
    return np.array(rows, dtype=np.float32)


def shader_hatch_tones() -> NDArray[np.float32]:
    """Return (7,) linear greys of the hatches by zone number."""
    return np.array([0.0] + [0.86 if zone in WHITE_HATCH else 0.02 for zone in Zone], np.float32)


def coat_tones() -> NDArray[np.float64]:
    """Return (13, 3) sRGB, 0 to 1, of 0 to 12 coats: even steps of L*, a cool hue.

    The hue is cool because a predicted tooth never is: a coat count must not pass for a colour.
    """
    lightness = np.concatenate([[88.0], np.linspace(80.0, 20.0, MOST_COATS)])
    chroma = np.concatenate([[0.0], np.linspace(8.0, 24.0, MOST_COATS)])
    hue = math.radians(250.0)
    lab = np.stack([lightness, chroma * math.cos(hue), chroma * math.sin(hue)], axis=1)
    return np.asarray(lab_to_srgb(lab), dtype=np.float64)


def shader_coat_tones() -> NDArray[np.float32]:
    """Return (13, 3) linear colours of 0 to 12 coats."""
    return np.asarray(decode_srgb(coat_tones()), dtype=np.float32)


def paint_area_patch(painter: QPainter, rect: QRectF, area: Area, tones: Tones) -> None:
    """Draw the small sample of an area: a zone's colour and hatch, an accent's dashed outline."""
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    outline = QPainterPath()
    outline.addRoundedRect(rect, 2, 2)
    pen = QPen(QColor(tones.ink), 1.0)
    if isinstance(area, Accent):
        pen = QPen(QColor(tones.ink), 1.2)
        pen.setDashPattern([2, 2])
        painter.fillPath(outline, QColor(tones.field))
    else:
        painter.fillPath(outline, zone_colour(area))
        painter.setClipPath(outline)
        white = area in WHITE_HATCH
        painter.setPen(QPen(QColor(255, 255, 255, 215) if white else QColor(0, 0, 0, 170), 1.0))
        for angle, spacing in _HATCHES.get(area, ()):
            paint_hatch(painter, rect, angle, spacing)
        painter.setClipping(False)
    painter.setPen(pen)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(outline)
    painter.restore()


def paint_hatch(painter: QPainter, rect: QRectF, degrees: float, spacing: float) -> None:
    """Draw parallel lines through the middle of `rect` with the painter's pen; clip beforehand."""
    painter.save()
    painter.translate(rect.center())
    painter.rotate(degrees)
    reach = (rect.width() + rect.height()) / 2.0
    for k in range(-int(reach / spacing) - 1, int(reach / spacing) + 2):
        painter.drawLine(QLineF(-reach, k * spacing, reach, k * spacing))
    painter.restore()
