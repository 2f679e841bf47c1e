"""What is slow only the first time is fetched in a quiet moment, before anybody waits for it."""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module

from PySide6.QtCore import QObject, QTimer

from stainmap.app.change import Change
from stainmap.app.job import JobRunner, Progress
from stainmap.app.session import Session
from stainmap.optics.colorimetry import xyz_weights
from stainmap.predict.lights import OBSERVERS, SHOWN_LIGHTS
from stainmap.words import translate

# After the first prediction, when the crown has been drawn and the hand is still on its way.
_QUIET_MS = 2500
_MODULES = (
    "stainmap.app.pictures",
    "stainmap.app.sheets",
    "stainmap.app.practising",
    "stainmap.ui.practice_list",
)


class Warming(QObject):
    """Fetches libraries and light weights once the first prediction stands in the window.

    Parameters
    ----------
    runner
        Does so in a thread of its own.
    """

    def __init__(self, session: Session, runner: JobRunner, parent: QObject) -> None:
        super().__init__(parent)
        self._runner = runner
        self._timer = QTimer(self, singleShot=True, interval=_QUIET_MS)
        self._timer.timeout.connect(self._begin)
        self._end: Callable[[], None] = session.subscribe(self._hear)

    def _hear(self, change: Change) -> None:
        if change.touches("appearance"):
            self._end()
            self._timer.start()

    def _begin(self) -> None:
        self._runner.start(
            translate("warming", "Getting ready"),
            _fetch,
            on_done=lambda _none: None,
            on_failed=lambda _error: None,
        )


def _fetch(_progress: Progress) -> None:
    for name in _MODULES:
        import_module(name)
    for light in SHOWN_LIGHTS:
        for observer in OBSERVERS:
            xyz_weights(light, observer)
