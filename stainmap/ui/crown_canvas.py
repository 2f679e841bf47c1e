"""The two ways a crown is drawn, behind one face: the graphics driver, or a computed picture."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from stainmap.ui.gl_canvas import GlCanvas
from stainmap.ui.gl_painter import ready_painter
from stainmap.ui.picture_canvas import PictureCanvas

Canvas = GlCanvas | PictureCanvas


def make_canvas(parent: QWidget) -> Canvas:
    """Return a canvas that works on this computer."""
    painter = ready_painter()
    return PictureCanvas(parent) if painter is None else GlCanvas(parent, painter)
