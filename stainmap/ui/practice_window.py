"""The window of practice: the same window on a session of its own, with an exercise in it.

The user's window waits behind it as it is, with its case, its history and its file: nothing of it
is touched, so nothing of it can be lost.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any, TypeVar

from PIL.Image import Image
from PySide6.QtCore import QSettings, Qt, Signal
from PySide6.QtGui import QAction, QCloseEvent, QDropEvent, QKeySequence
from PySide6.QtWidgets import QVBoxLayout, QWidget

from stainmap.app.change import Change
from stainmap.app.job import Job, JobRunner, Progress
from stainmap.app.practising import PracticeBook, Sitting, scored_attempt
from stainmap.app.session import Session
from stainmap.app.settings_file import SettingsStore
from stainmap.errors import CancelledError, StainmapError
from stainmap.model.case import Case
from stainmap.model.zone import Zone
from stainmap.practice.exercise import Kind
from stainmap.practice.exercise_task import Task, make_task
from stainmap.practice.exercise_words import exercise_text
from stainmap.practice.packs import PackedExercise
from stainmap.practice.score import Mark, Overlay, Score
from stainmap.practice.scoring import FaultAnswer, score_fault, score_plan
from stainmap.surface.picking import Hit
from stainmap.ui.case_figures import colour_words
from stainmap.ui.coat_model import CoatModel
from stainmap.ui.crown_picture import Look
from stainmap.ui.main_window import MainWindow
from stainmap.ui.practice_bar import PracticeBar
from stainmap.ui.practice_making import MakingCover
from stainmap.ui.practice_map import MapDesk, map_pages
from stainmap.ui.practice_result import (
    TRUE,
    WRONG,
    ResultPanel,
    marked_colours,
    step_lines,
)
from stainmap.ui.practice_slips import SlipsDialog
from stainmap.ui.side_panels import OUTCOME_PX, PanelDock
from stainmap.words import marked, translate

_BUSY = marked("practice window", "Practice: leave it to open something else.")
_ROOM_FOR_RUN_PX = 860
T = TypeVar("T")


class PracticeWindow(MainWindow):
    """One sitting of practice.

    Signals
    -------
    ended
        The window is closed.
    list_asked
        Another exercise is to be chosen.
    """

    ended = Signal()
    list_asked = Signal()

    def __init__(
        self,
        session: Session,
        settings: QSettings,
        runner: JobRunner,
        *,
        book: PracticeBook,
        trainee: str,
        store: SettingsStore | None = None,
    ) -> None:
        self._task: Task | None = None
        self._answer: Case | None = None
        self._overlay: Overlay | None = None
        self._is_blind = False
        super().__init__(session, settings, runner, store)
        self._book, self.trainee = book, trainee
        self.practice.relay = self.list_asked.emit
        self._sitting = Sitting()
        self._practice_runner = runner.another()
        self._job: Job[Any] | None = None
        self._packed: PackedExercise | None = None
        self._pack_hash: str | None = None
        self._began = datetime.now(UTC)
        self.score: Score | None = None
        self.bar, self.cover = PracticeBar(), MakingCover(self.crown)
        self.map = MapDesk(self, self.bar.map, self.status.say)
        centre = self.strip.parentWidget()
        column = None if centre is None else centre.layout()
        if isinstance(column, QVBoxLayout):
            column.insertWidget(0, self.bar)
        self.result = ResultPanel()
        self.result_dock = PanelDock(translate("practice window", "Score"), self.result, OUTCOME_PX)
        self.result_dock.setObjectName("score dock")
        self.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, self.result_dock)
        self.result_dock.hide()
        self._listen()
        table = self.plan.table.model()
        if isinstance(table, CoatModel):
            table.may_suggest = False
        hand_in = QAction(translate("practice window", "Hand in"), self)
        hand_in.setShortcuts([QKeySequence("Ctrl+Return"), QKeySequence("Ctrl+Enter")])
        hand_in.triggered.connect(lambda _on: self.hand_in())
        self.addAction(hand_in)
        switch = QAction(translate("practice window", "As planned, as it came out"), self)
        switch.setShortcut(QKeySequence("V"))
        switch.triggered.connect(lambda _on: self._switch_planned())
        self.addAction(switch)

    def _listen(self) -> None:
        bar, result = self.bar, self.result
        bar.handed_in.connect(self.hand_in)
        bar.left.connect(self.close)
        bar.switched.connect(self._show_planned)
        bar.map_asked.connect(self._show_map)
        bar.stopped.connect(self._stop)
        bar.again.connect(self._again)
        bar.listed.connect(self.list_asked)
        result.shown.connect(self._show)
        result.stepped.connect(self._show_steps)
        result.slips_asked.connect(self._show_slips)
        self.crown.pointed_at.connect(self._read)

    @property
    def task(self) -> Task | None:
        """The exercise that is open, once it is made."""
        return self._task

    @property
    def is_handed_in(self) -> bool:
        """True once the answer is scored."""
        return self.score is not None

    # --- an exercise begins ------------------------------------------------------------------

    def start(self, packed: PackedExercise, pack_hash: str | None = None) -> None:
        """Make an exercise and open it."""
        if self._job is not None:
            self._job.cancel()
        self._packed, self._pack_hash = packed, pack_hash
        self._task, self.score, self._overlay, self._answer = None, None, None, None
        # Nothing of the crown before is to be taken for the new one.
        self.map.put_away()
        for dock in (self.result_dock, self.plan_dock, self.outcome_dock, self.run_dock):
            dock.hide()
        self.top.set_case(translate("practice window", "Practice"), "")
        self._tell_making(translate("practice window", "The crown is being made."))

        def work(progress: Progress) -> Task:
            return make_task(packed, progress)

        def done(task: Task) -> None:
            self._job = None
            self._begin(task)

        def failed(error: StainmapError) -> None:
            self._job = None
            if isinstance(error, CancelledError):
                return
            self.bar.show_not_made(str(error))
            self.cover.show_none()
            self.status.say(str(error))

        self._run(translate("practice window", "Making an exercise"), work, done, failed)

    def _run(
        self,
        title: str,
        work: Callable[[Progress], T],
        done: Callable[[T], None],
        failed: Callable[[StainmapError], None],
    ) -> None:
        job: Job[Any]
        job = self._practice_runner.start(
            title, work, on_done=done, on_failed=failed, on_progress=self._tell
        )
        if not job.is_finished:
            self._job = job

    def _tell(self, job: Job[Any]) -> None:
        if job.is_cancelled:
            return
        # That no crown is open yet needs not be said here.
        self.flow.message.hide()
        if self._task is None:
            self._tell_making(f"{job.phrase} ...", job.share)

    def _tell_making(self, phrase: str, share: float = 0.0) -> None:
        if self._packed is not None:
            self.bar.show_making(phrase, share, exercise_text(self._packed.name))
            self.cover.show_making()

    def _stop(self) -> None:
        """Wait no longer for the exercise that is being made."""
        if self._job is not None and self._task is None:
            self._job.cancel()
            self._job = None
            self.bar.show_not_made(
                translate("practice window", "Stopped: the exercise was not made.")
            )
            self.cover.show_none()

    def _begin(self, task: Task) -> None:
        self._task = task
        self._began = datetime.now(UTC)
        self._is_blind = task.kind.is_fault
        self._lock(False)
        self.bar.show_task(task.kind, task.words, task.choices)
        self.session.adopt(task.start, path=None, saved=True)
        self.cover.hide()
        docks = (self.plan_dock, self.outcome_dock, self.run_dock)
        for dock in docks:
            dock.setVisible(not self._is_blind)
        # Where it is low, what is to be done needs the room more than what the day takes.
        self.run_dock.setVisible(not self._is_blind and self.height() >= _ROOM_FOR_RUN_PX)
        self.looks.allow_looks(not self._is_blind)
        self.desk.allow_painting(not self._is_blind)
        self.set_look(Look.ZONES if task.kind is Kind.FIND_AREAS else Look.SINTERED)
        if task.kind is Kind.FIND_AREAS:
            self.plan.table.select_row(Zone.CERVICAL)
        if not self._is_blind:
            self._fold(self.width() < 1280)
            self.plan_dock.raise_()

    def _lock(self, locked: bool) -> None:
        """Let nothing be changed once the answer is handed in."""
        self.plan.setEnabled(not locked)
        self.desk.allow_painting(not locked and not self._is_blind)
        self._hold_what_is_given()

    def _hold_what_is_given(self) -> None:
        task, unit = self._task, self.plan.unit
        for given in (unit.tooth, unit.size_state, unit.stump, unit.programme, unit.intake):
            given.setEnabled(False)
        unit.block.setEnabled(task is not None and task.may_choose_block)
        unit.cement.setEnabled(task is not None and task.may_choose_cement)

    # --- the answer --------------------------------------------------------------------------

    def hand_in(self) -> None:
        """Score what is there, keep it, and show why."""
        focus: object = self.focusWidget()
        if isinstance(focus, QWidget) and self.plan.table.isAncestorOf(focus):
            # A number that is being typed is part of the answer: left, the cell takes it.
            self.plan.table.setFocus()
        task, case = self._task, self.session.case
        if task is None or case is None or self.is_handed_in or self.session.is_painting:
            return
        answer: Case | FaultAnswer = self.bar.answer if task.kind.is_fault else case
        self.bar.hand_in.setEnabled(False)

        def work(_progress: Progress) -> Score:
            if isinstance(answer, FaultAnswer):
                return score_fault(task, answer)
            return score_plan(task, answer)

        def done(score: Score) -> None:
            self._job = None
            if self._task is task:
                self._show_score(task, case, score)

        def failed(error: StainmapError) -> None:
            self._job = None
            self.bar.hand_in.setEnabled(True)
            self.status.say(str(error))

        self._run(translate("practice window", "Scoring"), work, done, failed)

    def _show_score(self, task: Task, case: Case, score: Score) -> None:
        self.score, self._answer = score, case
        self.map.put_away()
        attempt = scored_attempt(
            self.trainee, task.packed, score, started_at=self._began, pack_hash=self._pack_hash
        )
        remark = self._sitting.words()
        if not self._book.keep(attempt):
            remark = translate("practice window", "Not kept for later: {trouble}").format(
                trouble=self._book.trouble
            )
        self._overlay = score.overlay
        self._is_blind = False
        self._lock(True)
        self.looks.allow_looks(True)
        self.bar.show_done(task.words.spoken().ask)
        lines = [] if task.kind is Kind.FIND_AREAS else step_lines(task.true)
        self.result.set_score(score, went_wrong=task.kind.is_fault, lines=lines, remark=remark)
        self._place_result()
        first = self.result.wrong if self.result.wrong.isVisibleTo(self.result) else None
        (first or self.result.yours).setChecked(True)

    def _place_result(self) -> None:
        """Put the score at the right, in a narrow window as a tab beside the plan."""
        self.outcome_dock.hide()
        if self.width() < 1280:
            self.plan_dock.show()
            self.tabifyDockWidget(self.plan_dock, self.result_dock)
        else:
            self.plan_dock.show()
            self.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, self.result_dock)
        self.result_dock.show()
        self.result_dock.raise_()

    def _show(self, what: str) -> None:
        """Show the answer, where it is off, or a true answer."""
        task, answer = self._task, self._answer
        if task is None or answer is None:
            return
        areas = task.kind is Kind.FIND_AREAS
        if what == TRUE:
            self._show_steps(self.result.step)
            return
        self._adopt(answer)
        self.set_look(Look.ZONES if areas and what != WRONG else Look.SINTERED)
        if what == WRONG:
            self._draw_overlay()
        elif self.session.appearance is not None:
            self.crown.set_colours(self.session.appearance.srgb)

    def _show_steps(self, count: int) -> None:
        """Show the true answer up to a step."""
        task = self._task
        if task is None:
            return
        plan = task.true.plan
        areas = task.kind is Kind.FIND_AREAS
        # Of areas that were to be found, not the coats are the answer.
        shown = plan if areas else replace(plan, steps=plan.steps[:count])
        self._adopt(replace(task.true, plan=shown))
        self.set_look(Look.ZONES if areas else Look.SINTERED)
        if self.session.appearance is not None and self.session.is_up_to_date:
            self.crown.set_colours(self.session.appearance.srgb)

    def _adopt(self, case: Case) -> None:
        """Show a case of this exercise; as an edit, so that the prediction has less to do."""
        self.session.edit(translate("practice window", "look at an answer"), lambda _case: case)
        self._lock(True)

    def _draw_overlay(self) -> None:
        """Colour what was missed and what is too much; all else in the greys of the answer."""
        overlay, task = self._overlay, self._task
        if overlay is None or task is None:
            return
        shown = self.session.shown_srgb
        self.crown.set_colours(
            marked_colours(overlay, task.start_look.srgb if shown is None else shown)
        )

    def marked_mm2(self, mark: Mark) -> float:
        """Return how large the places of a mark are, for what is said of them."""
        if self._overlay is None or self._task is None:
            return 0.0
        sizes = self._task.true.surface.mesh.vertex_areas
        return float(sizes[self._overlay.marks == int(mark)].sum())

    # --- faults ------------------------------------------------------------------------------

    def _switch_planned(self) -> None:
        if self._is_blind:
            self.bar.planned.toggle()

    def _show_planned(self, planned: bool) -> None:
        task = self._task
        if task is not None and task.kind.is_fault and not self.is_handed_in:
            look = task.true_look if planned else task.start_look
            self.crown.set_colours(look.srgb)

    def _read(self, hit: Hit | None) -> None:
        task = self._task
        if task is None or not self._is_blind:
            return
        if hit is None:
            self.bar.say_here(
                translate("practice window", "Point at the crown to read both colours of a place.")
            )
            return
        came, planned = (look.lab[hit.vertex] for look in (task.start_look, task.true_look))
        wall = float(task.looker.ground.shape.wall_mm[hit.vertex])
        self.bar.say_here(
            translate(
                "practice window",
                "Came out {came}; planned {planned}; wall {wall:.1f} mm",
            ).format(came=colour_words(came), planned=colour_words(planned), wall=wall)
        )

    # --- the coat map, slips -----------------------------------------------------------------

    def _show_map(self) -> None:
        task = self._task
        if task is None:
            return
        self.map.begin()

        def done(pages: list[Image]) -> None:
            self._job = None
            self.map.end(pages if self.task is task and not self.is_handed_in else [])

        def failed(error: StainmapError) -> None:
            self._job = None
            self.map.end([], str(error))

        self._run(
            translate("practice window", "Drawing the coat map"),
            lambda progress: map_pages(task.true, progress),
            done,
            failed,
        )

    def _show_slips(self) -> None:
        task, answer = self._task, self._answer
        if task is None:
            return
        # Of a fault nobody has handed in a plan.
        own = answer if answer is not None and not task.kind.is_fault else None
        other = None if own is None or not own.plan.steps else task.judged(own)
        runner = self._practice_runner.another()
        SlipsDialog(task.true, task.looker, runner, self, other=other).show()

    def _again(self) -> None:
        if self._packed is not None:
            self.start(self._packed, self._pack_hash)

    # --- what is different from any other window ----------------------------------------------

    def set_look(self, look: Look) -> None:
        """Colour the crown by something else, unless that would tell what went wrong."""
        super().set_look(Look.SINTERED if self._is_blind else look)

    def _refresh(self, change: Change) -> None:
        super()._refresh(change)
        if self._task is None:
            return
        # What would do the exercise by itself is off.
        for action in (self.commands.propose, self.commands.sliders):
            action.setEnabled(False)
        self.plan.suggest.setEnabled(False)
        self._hold_what_is_given()
        self.sliders.offer(False)
        self.outcome.outcome.change.hide()
        if change.touches("opened", "appearance"):
            if self.is_handed_in and self.result.wrong.isChecked():
                self._draw_overlay()
            if self._is_blind:
                self._show_planned(self.bar.planned.isChecked())
                self.desk.allow_painting(False)

    def _show_title(self) -> None:
        """Name the exercise; nothing of it needs to be saved."""
        super()._show_title()
        if self.session.case is not None:
            self.setWindowTitle(translate("practice window", "Practice \u2013 stainmap"))
            self.setWindowModified(False)
            self.top.set_case(
                translate("practice window", "Practice"),
                self.session.case.code.removeprefix("practice "),
            )

    def open_sample(self) -> None:
        """Say that practice is under way."""
        self.status.say(translate("practice window", _BUSY))

    def ask_to_open(self) -> None:
        """Say that practice is under way."""
        self.status.say(translate("practice window", _BUSY))

    def dropEvent(self, event: QDropEvent) -> None:
        """Take no file."""
        event.ignore()
        self.status.say(translate("practice window", _BUSY))

    def closeEvent(self, event: QCloseEvent) -> None:
        """End practice; what is on the crown is an exercise and need not be saved."""
        if self._job is not None:
            self._job.cancel()
        case = self.session.case
        if case is not None and not self._closed:
            self.session.adopt(case, path=None, saved=True)
        closing = not self._closed
        super().closeEvent(event)
        if closing and event.isAccepted():
            self._practice_runner.close()
            self.ended.emit()
