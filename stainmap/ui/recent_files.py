"""The files that were opened or saved last, in a menu of their own."""

from __future__ import annotations

import os
from collections.abc import Callable
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, QSettings
from PySide6.QtWidgets import QMenu

from stainmap.app.change import Change
from stainmap.app.session import Session
from stainmap.words import translate

_KEY = "recent"
_MOST = 8


class RecentFiles(QObject):
    """Remembers meshes and cases once they have been read or written, newest first.

    Parameters
    ----------
    open_file
        Opens one of them.
    """

    def __init__(
        self,
        session: Session,
        settings: QSettings,
        open_file: Callable[[Path], None],
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._session, self._settings, self._open_file = session, settings, open_file

    @property
    def paths(self) -> list[Path]:
        """Newest first. Whether they are still there is not looked at: a drive may be slow."""
        kept = self._settings.value(_KEY, [])
        names = [kept] if isinstance(kept, str) else kept if isinstance(kept, list) else []
        return [Path(name) for name in names if isinstance(name, str) and name][:_MOST]

    def fill(self, menu: QMenu) -> None:
        """Let a menu list them whenever it is opened."""
        menu.aboutToShow.connect(partial(self._list, menu))

    def refresh(self, change: Change) -> None:
        """Remember what has been read or written."""
        session = self._session
        if change.touches("look") and session.look is not None:
            self._add(session.look.path)
        if change.touches("opened", "file") and session.path is not None:
            self._add(session.path)

    def _add(self, path: Path) -> None:
        name = os.path.abspath(path)  # noqa: PTH100 - without a look at the disk
        if self.paths[:1] == [Path(name)]:
            return
        others = [str(one) for one in self.paths if one != Path(name)]
        self._settings.setValue(_KEY, [name, *others][:_MOST])

    def _list(self, menu: QMenu) -> None:
        menu.clear()
        for number, path in enumerate(self.paths, start=1):
            name = path.name.replace("&", "&&")
            action = menu.addAction(f"&{number}  {name}", partial(self._open_file, path))
            action.setToolTip(str(path))
            action.setStatusTip(str(path))
        menu.setToolTipsVisible(True)
        if menu.isEmpty():
            menu.addAction(translate("recent files", "Nothing has been opened yet")).setEnabled(
                False
            )
            return
        menu.addSeparator()
        menu.addAction(
            translate("recent files", "&Forget these"), lambda: self._settings.remove(_KEY)
        )
