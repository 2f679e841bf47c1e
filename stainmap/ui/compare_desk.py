"""Compare at work: what can stand beside the plan, worked out in the background, kept in step."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QFileDialog, QMenu, QWidget

from stainmap.app.change import Change
from stainmap.app.compare import (
    Against,
    another_case,
    another_plan,
    another_programme,
    bare_block,
    compared,
    predict_beside,
    read_beside,
)
from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.prediction import Prediction
from stainmap.app.session import Session
from stainmap.app.suggesting import suggest_coats
from stainmap.errors import CancelledError, StainmapError
from stainmap.files.case_file import SUFFIX
from stainmap.model.case import Case
from stainmap.planning.suggest_result import SuggestedPlan, Suggestions
from stainmap.planning.suggest_words import title_of
from stainmap.ui.compare_window import CompareWindow
from stainmap.ui.crown_view import CrownView
from stainmap.words import marked, translate

_NOT_READY = marked("compare desk", "The prediction is not ready yet.")
_STOPPED = marked("compare desk", "Stopped.")


class CompareDesk(QObject):
    """Opens the window with two crowns, and fills it.

    Signals
    -------
    said
        A sentence for the status line.
    light_asked
        Name of a light that the crown is to be seen under.
    """

    said = Signal(str)
    light_asked = Signal(str)

    def __init__(
        self, session: Session, runner: JobRunner, crown: CrownView, window: QWidget
    ) -> None:
        super().__init__(window)
        self._session, self._runner, self._crown = session, runner, crown
        self._window = window
        self.folder = ""
        self.view: CompareWindow | None = None
        self._against: Against | None = None
        self._there: Prediction | None = None
        self._suggested: tuple[Case, Suggestions] | None = None
        self._job: Job[Any] | None = None
        # Which piece of work is the newest; older ones are not listened to.
        self._serial = 0

    # --- opened and closed -----------------------------------------------------------------

    def open(self) -> None:
        """Show the plan beside what it was before the last step, or the bare block."""
        history = self._session.history
        if history is None:
            return
        if self.view is not None and self._against is not None:
            self._bring_up()
        elif history.position > 0:
            self.show_beside(self._of_history(history.position - 1))
        else:
            self.show_beside(bare_block())

    def show_programme(self, name: str) -> None:
        """Show the plan beside the same one in another furnace programme."""
        self.show_beside(another_programme(name))

    def show_suggested(self, found: Suggestions, chosen: SuggestedPlan) -> None:
        """Show the plan beside a suggested one; the others stay at hand."""
        case = self._session.case
        if case is not None:
            self._suggested = (case, found)
            self.show_beside(self._of_suggestion(chosen))

    def show_beside(self, against: Against) -> None:
        """Show the plan beside something, in the window there is for it."""
        prediction = self._session.prediction
        if prediction is None or not self._session.is_up_to_date:
            self.said.emit(translate("compare desk", _NOT_READY))
            return
        if self.view is None:
            self._make_window()
        self._bring_up()
        self._choose(against)

    def _make_window(self) -> None:
        view = self.view = CompareWindow(self._runner, self._window)
        view.light_asked.connect(self.light_asked)
        view.take_asked.connect(self._take)
        view.stopped.connect(self._stop)
        view.closed.connect(self._close)
        view.against_menu.aboutToShow.connect(self._fill_menu)
        view.set_look(self._crown.look)
        self._fill_menu()

    def _bring_up(self) -> None:
        view, prediction = self.view, self._session.prediction
        if view is None or prediction is None:
            return
        view.show()
        view.raise_()
        view.activateWindow()
        if view.here.prediction is not prediction:
            view.set_here(prediction, self._session.shading)
            view.here.view.stand_at(self._crown.camera)
            view.here.view.fit()

    def _close(self) -> None:
        """Keep nothing of what was compared; the next time begins anew."""
        view, self.view = self.view, None
        self._against = self._there = self._suggested = None
        if view is not None:
            view.deleteLater()
            self._window.activateWindow()

    # --- the session speaks ----------------------------------------------------------------

    def refresh(self, change: Change) -> None:
        """Keep the window in step with the open case."""
        view = self.view
        if view is None:
            return
        if change.touches("opened"):
            view.close()
            return
        here = self._session.prediction
        if not change.touches("appearance", "shading") or here is None:
            return
        if not self._session.is_up_to_date:
            return
        view.set_here(here, self._session.shading)
        against, there = self._against, self._there
        if against is None:
            return
        if there is None or against.follows or there.seen != here.seen:
            self._predict(against)
        else:
            self._show(here, there, against)

    # --- what stands beside it -------------------------------------------------------------

    def _fill_menu(self) -> None:
        view, history, case = self.view, self._session.history, self._session.case
        if view is None or history is None or case is None:
            return
        menu = view.against_menu
        menu.clear()
        steps = menu.addMenu(translate("compare desk", "A &step of the history"))
        for at, entry in enumerate(history.entries):
            if at != history.position:
                name = self._name_of_step(at, entry.label)
                self._add(steps, name, partial(self._choose_step, at))
        steps.setEnabled(bool(steps.actions()))
        self._fill_suggestions(menu.addMenu(translate("compare desk", "A s&uggested plan")), case)
        furnaces = menu.addMenu(translate("compare desk", "Another f&urnace programme"))
        for one in case.materials.programmes:
            if one.name != case.programme:
                against = another_programme(one.name)
                self._add(furnaces, one.name, partial(self._choose, against))
        furnaces.setEnabled(bool(furnaces.actions()))
        self._add(
            menu, translate("compare desk", "The &bare block"), lambda: self._choose(bare_block())
        )
        self._add(menu, translate("compare desk", "Another &case file..."), self._ask_for_file)

    def _fill_suggestions(self, menu: QMenu, case: Case) -> None:
        found = None
        if self._suggested is not None and self._suggested[0] is case:
            found = self._suggested[1]
        for plan in () if found is None else found.plans:
            self._add(menu, title_of(plan.kind), partial(self._choose, self._of_suggestion(plan)))
        self._add(menu, translate("compare desk", "&Search for plans"), self._search)

    @staticmethod
    def _add(menu: QMenu, text: str, call: Callable[[], object]) -> QAction:
        action = menu.addAction(text)
        action.triggered.connect(lambda _on: call())
        return action

    @staticmethod
    def _name_of_step(at: int, label: str) -> str:
        return (
            f"{at}  {label}"
            if at
            else translate("compare desk", "{at}  as it was opened").format(at=at)
        )

    def _choose_step(self, at: int) -> None:
        self._choose(self._of_history(at))

    def _of_history(self, at: int) -> Against:
        history = self._session.history
        if history is None:
            return bare_block()
        entry = history.entries[at]
        if at == history.position - 1:
            return another_case(
                translate("compare desk", "Before the step: {label}").format(
                    label=history.undo_label
                ),
                entry.case,
            )
        if at == 0:
            return another_case(translate("compare desk", "As it was opened"), entry.case)
        return another_case(
            translate("compare desk", "After step {at}: {label}").format(at=at, label=entry.label),
            entry.case,
        )

    @staticmethod
    def _of_suggestion(plan: SuggestedPlan) -> Against:
        return another_plan(
            translate("compare desk", "Suggested plan: {title}").format(
                title=title_of(plan.kind, inside=True)
            ),
            plan.plan,
        )

    def _ask_for_file(self) -> None:
        view, case = self.view, self._session.case
        if view is None or case is None:
            return
        name, _ = QFileDialog.getOpenFileName(
            view,
            translate("compare desk", "Another case of the same crown"),
            self.folder,
            translate("compare desk", "Cases (*{suffix})").format(suffix=SUFFIX),
        )
        if name:
            self.read_file(Path(name))

    def read_file(self, path: Path) -> None:
        """Show the plan beside that of another case file of the same mesh."""
        case = self._session.case
        if case is None or self.view is None:
            return

        def done(found: Case) -> None:
            self._choose(
                another_case(translate("compare desk", "Case {name}").format(name=path.stem), found)
            )

        self._start(
            translate("compare desk", "Reading the case"),
            lambda progress: read_beside(path, case, progress),
            done,
        )

    def _search(self) -> None:
        """Look for plans, and show the first of them."""
        here = self._session.prediction
        if here is None:
            return

        def done(found: Suggestions) -> None:
            if self._session.case is here.case:
                self._suggested = (here.case, found)
                self._choose(self._of_suggestion(found.plans[0]))

        self._start(
            translate("compare desk", "Suggesting coats"),
            lambda progress: suggest_coats(here, progress=progress),
            done,
        )

    def _choose(self, against: Against) -> None:
        self._against, self._there = against, None
        self._predict(against)

    def _predict(self, against: Against) -> None:
        view, here = self.view, self._session.prediction
        if view is None or here is None:
            return
        view.name_there(against.title)
        view.set_compared(None)
        view.allow_taking(False)

        def work(progress: Progress) -> Prediction:
            return predict_beside(here, against.case(here.case), progress)

        def done(there: Prediction) -> None:
            if self._against is against:
                self._there = there
                self._show(here, there, against)

        self._start(translate("compare desk", "Predicting the other plan"), work, done)

    def _show(self, here: Prediction, there: Prediction, against: Against) -> None:
        view = self.view
        if view is None:
            return
        same = there.case.surface.mesh is here.case.surface.mesh
        view.set_there(against.title, there, self._session.shading if same else None)
        view.set_compared(compared(here, there, against.programme))
        view.allow_taking(against.take is not None)

    def _take(self) -> None:
        """Make the plan at the right the open one, as one undo step."""
        against = self._against
        if against is None or against.take is None:
            return
        take = against.take
        try:
            self._session.edit(
                translate("compare desk", "take the plan beside it ({title})").format(
                    title=against.title
                ),
                take,
            )
        except StainmapError as error:
            if self.view is not None:
                self.view.progress.end_work(str(error))

    # --- work ------------------------------------------------------------------------------

    def _start(
        self, title: str, work: Callable[[Progress], Any], done: Callable[[Any], None]
    ) -> None:
        """Do something in the background; what was under way before is let go."""
        self._stop()
        view = self.view
        if view is None:
            return
        self._serial += 1
        serial = self._serial
        view.progress.show_progress(0.0, title)

        def is_current() -> bool:
            return self._serial == serial and self.view is view

        def finish(result: Any) -> None:
            if is_current():
                view.progress.end_work()
                done(result)

        def failed(error: StainmapError) -> None:
            if is_current():
                stopped = isinstance(error, CancelledError)
                view.progress.end_work(
                    translate("compare desk", _STOPPED) if stopped else str(error)
                )

        def follow(job: Job[Any]) -> None:
            if is_current() and not job.is_cancelled:
                view.progress.show_progress(job.share, job.phrase)

        job = self._runner.start(title, work, on_done=finish, on_failed=failed, on_progress=follow)
        if not job.is_finished:
            self._job = job

    def _stop(self) -> None:
        if self._job is not None:
            self._job.cancel()
            self._job = None
