"""Notices from background work, carried into the window's own thread."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QObject, Qt, Signal


class Poster(QObject):
    """Runs functions in the thread it was made in, whichever thread they come from."""

    posted = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.posted.connect(self._run, Qt.ConnectionType.QueuedConnection)

    def __call__(self, function: Callable[[], None]) -> None:
        """Run `function` soon."""
        self.posted.emit(function)

    def _run(self, function: Callable[[], None]) -> None:
        function()
