"""Ends that nobody chose in the window: the desktop session ends, or the system says stop."""

from __future__ import annotations

import os
import signal
import socket
from collections.abc import Callable
from pathlib import Path
from types import FrameType

from PySide6.QtCore import QObject, QSocketNotifier, Qt
from PySide6.QtGui import QGuiApplication, QSessionManager

from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.files.journal import Journal
from stainmap.ui.saving_flow import SavingFlow


def journal_in(folder: Path) -> tuple[Journal | None, StainmapError | None]:
    """Return the journal of unsaved work, or why there can be none: the program runs without."""
    try:
        return Journal(folder), None
    except StainmapError as error:
        return None, error


class Ending(QObject):
    """Asks about unsaved work when the desktop session ends, and keeps it when nobody can answer.

    Parameters
    ----------
    close
        Closes the window without asking; unsaved work stays in the journal.
    """

    def __init__(
        self,
        app: QGuiApplication,
        session: Session,
        saving: SavingFlow,
        close: Callable[[], None],
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._session, self._saving, self._close = session, saving, close
        self._socket: tuple[socket.socket, socket.socket] | None = None
        # The session manager waits for the answer in this very call.
        app.commitDataRequest.connect(self.commit, Qt.ConnectionType.DirectConnection)

    def commit(self, manager: QSessionManager) -> None:
        """Answer a desktop session that is about to end; unsaved work may stop it."""
        if not self._session.is_modified:
            return
        self._session.keep_now()
        if manager.allowsInteraction():
            stays = not self._saving.may_leave()
            manager.release()
            if stays:
                manager.cancel()

    def heed_signals(self) -> None:
        """Close in order when the system asks for an end (SIGTERM, SIGHUP, Ctrl+C)."""
        if os.name != "posix":
            return
        # Python runs its handlers only when it is its turn; a byte on a socket wakes Qt for that.
        theirs, ours = socket.socketpair()
        theirs.setblocking(False)
        ours.setblocking(False)
        self._socket = (theirs, ours)
        notifier = QSocketNotifier(ours.fileno(), QSocketNotifier.Type.Read, self)
        notifier.activated.connect(self._woken)
        for number in (signal.SIGTERM, signal.SIGHUP, signal.SIGINT):
            signal.signal(number, self._told)
        signal.set_wakeup_fd(theirs.fileno(), warn_on_full_buffer=False)

    def _told(self, _number: int, _frame: FrameType | None) -> None:
        self._close()

    def _woken(self) -> None:
        if self._socket is not None:
            self._socket[1].recv(64)
