"""Before and after, two plans side by side, history and film: put together for a window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt

from stainmap.app.change import Change
from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.ui.compare_before import BeforeDesk
from stainmap.ui.compare_desk import CompareDesk
from stainmap.ui.film_desk import FilmDesk
from stainmap.ui.history_desk import HistoryDesk
from stainmap.ui.history_list import HistoryPanel
from stainmap.ui.side_panels import PanelDock

if TYPE_CHECKING:
    from stainmap.ui.main_window import MainWindow


class WaysToCompare(QObject):
    """What shows the open plan beside something else, or as it was.

    Parameters
    ----------
    runner
        Its threads are like those that are used here; small pictures need not wait for plans.
    """

    def __init__(self, session: Session, runner: JobRunner, window: MainWindow) -> None:
        super().__init__(window)
        self._window = window
        self._runners = (runner.another(), runner.another())
        plans, pictures = self._runners
        self.before = BeforeDesk(session, window.desk, plans, self)
        self.compare = CompareDesk(session, plans, window.crown, window)
        self.film = FilmDesk(session, window.desk, plans, window)
        self.panel = HistoryPanel()
        self.history = HistoryDesk(session, self.panel, pictures, self)
        self.dock = PanelDock("History", self.panel)
        window.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, self.dock)
        window.tabifyDockWidget(window.outcome_dock, self.dock)
        self.dock.hide()
        self.dock.visibilityChanged.connect(self.history.seen)
        self.dock.toggleViewAction().triggered.connect(self._raise)
        self._connect()

    def _connect(self) -> None:
        window = self._window
        self.film.started.connect(self.before.end)
        for desk in (self.compare, self.film):
            desk.said.connect(window.status.say)
        self.compare.light_asked.connect(
            lambda light: window.see_under(light, window.session.seen.observer)
        )
        window.suggest.beside_asked.connect(self.compare.show_suggested)
        window.dialogs.crowns_asked.connect(self.compare.show_programme)

    def _raise(self, shown: bool) -> None:
        """Bring the history to the front of the panels it shares its place with."""
        if shown:
            self.dock.raise_()
            self.panel.list.setFocus()

    def refresh(self, change: Change) -> None:
        """Follow the open case."""
        self.before.refresh(change)
        self.film.refresh(change)
        self.history.refresh(change)
        self.compare.refresh(change)

    def fold(self, narrow: bool) -> None:
        """Go with the outcome: to the plan's side in a narrow window, and back."""
        window = self._window
        if self.dock.isFloating():
            return
        shown = not self.dock.isHidden()
        if not narrow:
            window.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, self.dock)
        window.tabifyDockWidget(window.outcome_dock, self.dock)
        self.dock.setVisible(shown)

    def close(self) -> None:
        """Let the work under way go, and the window with two crowns."""
        if self.compare.view is not None:
            self.compare.view.close()
        for one in self._runners:
            one.close()
