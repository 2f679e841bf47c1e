"""Before and after, two plans side by side, history and film: put together for a window."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt

from stainmap.app.change import Change
from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.ui.compare_before import BeforeDesk
from stainmap.ui.history_desk import HistoryDesk
from stainmap.ui.history_list import HistoryPanel
from stainmap.ui.side_panels import PanelDock
from stainmap.words import translate

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from stainmap.planning.suggest_result import SuggestedPlan, Suggestions
    from stainmap.ui.compare_desk import CompareDesk
    from stainmap.ui.film_desk import FilmDesk
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
        self._session, self._window = session, window
        self._compare: CompareDesk | None = None
        self._film: FilmDesk | None = None
        self._runners = (runner.another(), runner.another())
        plans, pictures = self._runners
        self.before = BeforeDesk(session, window.desk, plans, self)
        self.panel = HistoryPanel()
        self.history = HistoryDesk(session, self.panel, pictures, self)
        self.dock = PanelDock(translate("compare ways", "History"), self.panel)
        window.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, self.dock)
        window.tabifyDockWidget(window.outcome_dock, self.dock)
        self.dock.hide()
        self.dock.visibilityChanged.connect(self.history.seen)
        self.dock.toggleViewAction().triggered.connect(self._raise)
        self._connect()

    def _connect(self) -> None:
        window = self._window
        window.suggest.beside_asked.connect(self._show_suggested)
        window.dialogs.crowns_asked.connect(self._show_programme)
        window.flow.set_aside.connect(self._set_aside)

    def _set_aside(self, aside: bool) -> None:
        """Show nothing in place of the open plan while a mesh that is being opened is shown."""
        if aside:
            self._end_shows()

    def _end_shows(self) -> None:
        self.before.end()
        if self._film is not None:
            self._film.close()

    def _show_suggested(self, found: Suggestions, chosen: SuggestedPlan) -> None:
        self.compare.show_suggested(found, chosen)

    def _show_programme(self, name: str) -> None:
        self.compare.show_programme(name)

    # What is behind these two is made when it is asked for: the window is there sooner.

    @property
    def compare(self) -> CompareDesk:
        """Two plans side by side."""
        if self._compare is None:
            from stainmap.ui.compare_desk import CompareDesk  # noqa: PLC0415 - slow to import

            window = self._window
            desk = CompareDesk(self._session, self._runners[0], window.crown, window)
            desk.said.connect(window.status.say)
            desk.light_asked.connect(
                lambda light: window.see_under(light, self._session.seen.observer)
            )
            self._compare = desk
        return self._compare

    @property
    def film(self) -> FilmDesk:
        """The plan, coat after coat."""
        if self._film is None:
            from stainmap.ui.film_desk import FilmDesk  # noqa: PLC0415 - slow to import

            window = self._window
            self._film = FilmDesk(self._session, window.desk, self._runners[0], window)
            self._film.said.connect(window.status.say)
            self._film.started.connect(self.before.end)
        return self._film

    def open_compare(self) -> None:
        """Show two plans side by side."""
        self.compare.open()

    def open_film(self) -> None:
        """Show the plan, coat after coat."""
        self.film.open()

    @property
    def manual_places(self) -> dict[QWidget, str]:
        """Which place of the manual speaks of which of the parts there are."""
        places: dict[QWidget, str] = {self.panel: "comparing.md#history"}
        if self._film is not None:
            places[self._film.card] = "comparing.md#the-film-of-the-plan"
        return places

    def _raise(self, shown: bool) -> None:
        """Bring the history to the front of the panels it shares its place with."""
        if shown:
            self._place()
            self.dock.raise_()
            self.panel.list.setFocus()

    def refresh(self, change: Change) -> None:
        """Follow the open case."""
        self.before.refresh(change)
        self.history.refresh(change)
        for desk in (self._film, self._compare):
            if desk is not None:
                desk.refresh(change)

    def fold(self, narrow: bool) -> None:
        """Go with the outcome: to the plan's side in a narrow window, and back."""
        # A hidden one is placed when it is shown; moved now it would change which tab is up.
        if self.dock.isHidden():
            return
        if not narrow and not self.dock.isFloating():
            self._window.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, self.dock)
        self._place()

    def _place(self) -> None:
        """Share the place of the outcome, wherever that is."""
        if not self.dock.isFloating() and not self._window.outcome_dock.isFloating():
            self._window.tabifyDockWidget(self._window.outcome_dock, self.dock)
            self.dock.show()

    def close(self) -> None:
        """Let the work under way go, and what is shown beside or instead of the plan."""
        self._end_shows()
        if self._compare is not None and self._compare.view is not None:
            self._compare.view.close()
        for one in self._runners:
            one.close()
