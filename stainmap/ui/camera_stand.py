"""The camera that stands before a crown: fitted beside cards, turned softly, moved by hands."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRect, QTimer, QVariantAnimation
from PySide6.QtWidgets import QWidget

from stainmap.paper.views import CrownDirections, Side
from stainmap.surface.mesh import TriMesh
from stainmap.ui.camera import Camera
from stainmap.ui.framing import fitted_beside, is_covered
from stainmap.ui.motion import moves

FloatArray = NDArray[np.float64]

TURN_MS = 150
_REST_MS = 120
# The first look at a crown: from the occlusal and buccal, a little mesially.
_START = np.array([0.30, 0.62, 0.66])


class CameraStand(QWidget):
    """A view of one mesh with a camera before it; what is drawn is left to those who inherit."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._mesh: TriMesh | None = None
        self._directions: CrownDirections | None = None
        self._camera = Camera()
        self._needs_fit = self._moved_aside = False
        # True until somebody zooms or shifts: then the crown stays where it was put.
        self._framed = True
        self._cover: QWidget | None = None
        self._rest = self._timer(_REST_MS, self._come_to_rest)
        self._turning: QVariantAnimation | None = None

    def _timer(self, milliseconds: int, call: Callable[[], None]) -> QTimer:
        timer = QTimer(self)
        timer.setSingleShot(True)
        timer.setInterval(milliseconds)
        timer.timeout.connect(call)
        return timer

    # --- for those who inherit -----------------------------------------------------------

    def _redraw(self, *, moving: bool = False) -> None:
        """Draw the mesh as the camera sees it now."""
        raise NotImplementedError

    def _before_first_fit(self) -> None:
        """Do what is left to do before a new mesh is seen for the first time."""

    @property
    def _points(self) -> FloatArray:
        """(n, 3) what has to be in the picture, while there is a mesh."""
        return np.empty((0, 3)) if self._mesh is None else self._mesh.vertices

    @property
    def _legend_rect(self) -> QRect:
        """Where a legend lies on the view; empty if none does."""
        return QRect()

    # --- the camera ----------------------------------------------------------------------

    @property
    def camera(self) -> Camera:
        """The camera as it stands."""
        return self._camera

    def _stand_before(self, directions: CrownDirections) -> None:
        """Look at another mesh for the first time; it is fitted as soon as the view is seen."""
        towards = _START @ directions.rows
        self._camera = Camera.looking_from(towards, directions.occlusal, np.zeros(3), 12.7)
        self._needs_fit = self._framed = True

    def look_from(self, side: Side) -> None:
        """Turn to one of the six sides."""
        if self._directions is not None:
            self.look_along(self._directions.towards(side), self._directions.up(side))

    def look_along(self, towards_eye: FloatArray, up: FloatArray) -> None:
        """Turn so that a direction points at the viewer, keeping size and middle where it can."""
        before = self._camera
        camera = Camera.looking_from(towards_eye, up, before.target, before.height_mm)
        camera = camera.at_distance(before.distance_mm)
        covered = self._framed and self._covers(camera)
        self._turn_to(self._fitted(camera) if covered else camera)

    def fit(self) -> None:
        """Show the whole crown."""
        if self._mesh is not None:
            self._framed = True
            self._turn_to(self._fitted(self._camera))

    def stand_at(self, camera: Camera) -> None:
        """Look from where somebody looked before."""
        self._framed = self._needs_fit = False
        self._jump_to(camera)

    @property
    def evaded(self) -> QWidget | None:
        """The card that was given to `keep_clear_of`."""
        return self._cover

    def keep_clear_of(self, card: QWidget | None) -> None:
        """Fit the crown beside a card that lies on the view, until told otherwise."""
        self._cover = card
        # Marks at the foot of the view make room as well.
        self.update()
        if self._mesh is not None and self._framed and self.isVisible():
            self._jump_to(self._fitted(self._camera))

    def _fitted(self, camera: Camera) -> Camera:
        if self._mesh is None:
            return camera
        fitted, self._moved_aside = fitted_beside(
            camera, self._points, self.size(), self._card_rect()
        )
        return fitted

    def _card_rect(self) -> QRect:
        if self._cover is not None:
            return self._cover.geometry()
        return self._legend_rect

    def _covers(self, camera: Camera) -> bool:
        """Return True if a card would lie on the crown."""
        if self._mesh is None:
            return False
        return is_covered(camera, self._points, self.size(), self._card_rect())

    def _move_aside(self) -> None:
        """Fit again where a card has come to lie on the crown, or the one it evaded is gone."""
        if self._mesh is None or not self._framed or self._needs_fit:
            return
        if self._moved_aside or self._covers(self._camera):
            self._turn_to(self._fitted(self._camera))

    def _turn_to(self, camera: Camera) -> None:
        if not moves() or not self.isVisible():
            self._jump_to(camera)
            return
        self._stop_turning()
        start = self._camera
        turning = self._turning = QVariantAnimation(self)
        turning.setDuration(TURN_MS)
        turning.setStartValue(0.0)
        turning.setEndValue(1.0)
        turning.valueChanged.connect(
            lambda share: self._set_camera(start.between(camera, _eased(float(share))))
        )
        turning.finished.connect(lambda: self._set_camera(camera, moving=False))
        turning.start(QVariantAnimation.DeletionPolicy.DeleteWhenStopped)
        turning.destroyed.connect(self._forget_turning)

    def _jump_to(self, camera: Camera) -> None:
        self._stop_turning()
        self._set_camera(camera, moving=False)

    def _stop_turning(self) -> None:
        if self._turning is not None:
            self._turning.stop()

    def _forget_turning(self) -> None:
        self._turning = None

    def _set_camera(self, camera: Camera, *, moving: bool = True) -> None:
        self._camera = camera
        self._redraw(moving=moving)
        if moving:
            self._rest.start()

    def _come_to_rest(self) -> None:
        self._redraw()

    def _fit_when_visible(self) -> None:
        if self._needs_fit and self._mesh is not None and self.isVisible():
            self._needs_fit = False
            self._before_first_fit()
            self._jump_to(self._fitted(self._camera))


def _eased(share: float) -> float:
    """Return how far a turn has come: quick at first, slow at the end."""
    return 1.0 - (1.0 - share) ** 3
