"""Two crown views that are turned together."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from stainmap.ui.camera import Camera
from stainmap.ui.crown_view import CrownView


class LinkedView(CrownView):
    """A crown view that tells where its camera goes, and goes where another one's went.

    Signals
    -------
    camera_moved
        `Camera`, and whether it is still on its way.
    """

    camera_moved = Signal(object, bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        self._follows = False
        super().__init__(parent)

    def link(self, other: LinkedView) -> None:
        """Turn together with another view from now on."""
        self.camera_moved.connect(other.follow)
        other.camera_moved.connect(self.follow)

    def follow(self, camera: Camera, moving: bool) -> None:
        """Look from where the other view looks."""
        self._follows = True
        self._stop_turning()
        # What was fitted there is not fitted here once more.
        self._framed = self._needs_fit = False
        self._set_camera(camera, moving=moving)
        self._follows = False

    def _set_camera(self, camera: Camera, *, moving: bool = True) -> None:
        super()._set_camera(camera, moving=moving)
        if not self._follows:
            self.camera_moved.emit(camera, moving)
