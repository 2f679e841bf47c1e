"""F1 everywhere: one window for the manual, which can be read beside an open dialog as well."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QGuiApplication, QKeySequence, QShortcut
from PySide6.QtWidgets import QApplication, QDialog, QWidget
from shiboken6 import isValid

from stainmap.paths import resource
from stainmap.ui.manual_places import place_for, place_for_dialog
from stainmap.ui.manual_search import CONTENTS

if TYPE_CHECKING:
    from stainmap.ui.main_window import MainWindow
    from stainmap.ui.manual_window import ManualWindow

_SHORTCUT = "manual by F1"
_BESIDE = (Qt.WindowType.Window, Qt.WindowType.Dialog, Qt.WindowType.Sheet)


class ManualDesk(QObject):
    """Shows the manual at the place that fits, from a window and from all that it opens."""

    def __init__(self, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._manual: ManualWindow | None = None
        self._asking: QWidget | None = None
        # Whatever gets the keyboard is given its F1 then: dialogs of Qt's own, too.
        application = cast(QGuiApplication, QGuiApplication.instance())
        application.focusWindowChanged.connect(self._heed)

    def show_for_focus(self) -> None:
        """Show what is told of the part of the window that has the keyboard."""
        self.show(place_for(self._window.focusWidget(), self._window))

    def show(self, place: str) -> None:
        """Show a page of the manual, or a section of it, in the one window there is for it."""
        from stainmap.ui.manual_window import ManualWindow  # noqa: PLC0415

        if self._manual is None:
            self._manual = ManualWindow(resource("manual", CONTENTS), self._window)
            self._manual.closed.connect(self._go_back)
        manual = self._manual
        asking = QApplication.activeWindow()
        if asking is not manual:
            self._asking = asking
        manual.show()
        self._stand_over(QApplication.activeModalWidget())
        manual.go_to(place)
        manual.raise_()
        manual.activateWindow()

    def _stand_over(self, dialog: QWidget | None) -> None:
        """Have the manual belong to a dialog: what does not, a modal one blocks."""
        if self._manual is None:
            return
        owner: QWidget = self._window if dialog is None else dialog
        above, own = owner.windowHandle(), self._manual.windowHandle()
        if own.transientParent() == above:
            return
        own.setTransientParent(above)
        if isinstance(owner, QDialog):
            owner.finished.connect(self._let_go)

    def _go_back(self) -> None:
        """Give the keyboard to whatever asked for the manual, if it is still there."""
        asking, self._asking = self._asking, None
        if asking is None or not isValid(asking) or not asking.isVisible():
            modal: QWidget | None = QApplication.activeModalWidget()
            asking = self._window if modal is None else modal
        asking.activateWindow()

    def _let_go(self) -> None:
        """Belong to what is left once a dialog is closed: the one that opened it, or the window."""
        self._stand_over(QApplication.activeModalWidget())

    def _is_ours(self, beside: QWidget) -> bool:
        above = beside.parentWidget()
        while above is not None and above is not self._window:
            above = above.parentWidget()
        return above is not None

    def _heed(self) -> None:
        beside = QApplication.activeWindow()
        if beside is None or beside is self._window or beside is self._manual:
            return
        if beside.windowType() not in _BESIDE or not self._is_ours(beside):
            return
        if beside.findChild(QShortcut, _SHORTCUT) is not None:
            return
        shortcut = QShortcut(QKeySequence("F1"), beside)
        shortcut.setObjectName(_SHORTCUT)
        shortcut.activated.connect(lambda: self.show(place_for_dialog(beside, self._window)))
