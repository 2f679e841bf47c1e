"""The window: crown in the middle, plan and outcome beside it, the run below."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QByteArray, QSettings, Qt, QTimer
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QKeyEvent, QResizeEvent
from PySide6.QtWidgets import (
    QMainWindow,
    QSplitter,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.change import Change
from stainmap.app.job import JobRunner
from stainmap.app.sample import open_sample, sample_look
from stainmap.app.session import Session
from stainmap.app.settings_file import SettingsStore
from stainmap.model.case import Case
from stainmap.model.material import Provenance
from stainmap.model.zone import Accent, Area
from stainmap.planning.plan_hash import short_hash
from stainmap.ui import case_figures as figures
from stainmap.ui.advice_desk import AdviceDesk
from stainmap.ui.compare_ways import WaysToCompare
from stainmap.ui.corrections import Corrections
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_picture import Look
from stainmap.ui.crown_view import CrownView
from stainmap.ui.display_check_dialog import DisplayDesk
from stainmap.ui.flat_desk import FlatDesk
from stainmap.ui.flat_pane import FlatPane
from stainmap.ui.guided_desk import GuidedDesk
from stainmap.ui.intake_desk import IntakeDesk
from stainmap.ui.look_bar import LookBar
from stainmap.ui.look_desk import LookDesk
from stainmap.ui.materials_desk import MaterialsDesk
from stainmap.ui.next_part import raise_with_focus
from stainmap.ui.opening_flow import OpeningFlow
from stainmap.ui.order_desk import OrderDesk
from stainmap.ui.plan_desk import PlanDesk
from stainmap.ui.plan_dialogs import PlanDialogs
from stainmap.ui.practice_desk import PracticeDesk
from stainmap.ui.printing_flow import PrintingFlow
from stainmap.ui.reach_desk import ReachDesk
from stainmap.ui.recent_files import RecentFiles
from stainmap.ui.recovery_desk import RecoveryDesk
from stainmap.ui.row_desk import RowDesk
from stainmap.ui.run_desk import RunDesk
from stainmap.ui.run_strip import RunStrip
from stainmap.ui.saving_flow import SavingFlow
from stainmap.ui.screen_room import resize_within_screen
from stainmap.ui.section_window import SectionDesk
from stainmap.ui.settings_desk import SettingsDesk
from stainmap.ui.settings_reach import go_by_settings
from stainmap.ui.side_panels import OUTCOME_PX, PLAN_PX, OutcomeSide, PanelDock, PlanPanel
from stainmap.ui.start_strip import StartStrip
from stainmap.ui.status_line import StatusLine
from stainmap.ui.suggest_desk import SuggestDesk
from stainmap.ui.top_bar import TopBar
from stainmap.ui.unit_values_panel import UnitValuesDesk
from stainmap.ui.window_actions import WindowActions
from stainmap.ui.zone_sliders_desk import ZoneSlidersDesk
from stainmap.ui.zone_tool_desk import ZoneToolDesk
from stainmap.words import marked, translate

_NARROW_PX, _LEAST_PX, _HANDLE_PX = 1280, 1024, 8
_NOTHING_YET_MS = 300
_INVENTED = marked("main window", "Sample materials are invented: do not fire by them")
_PLANNING_AID = marked("main window", "A planning aid: the makers' instructions for use decide")


class MainWindow(QMainWindow):
    """One window on one session.

    Parameters
    ----------
    session
        What is open. The window subscribes to it and closes it in the end.
    settings
        Where sizes, places and choices are remembered.
    runner
        Runs what the window itself starts, such as printing.
    store
        What is set for this computer; defaults, kept until the window closes, if None.
    """

    def __init__(
        self,
        session: Session,
        settings: QSettings,
        runner: JobRunner,
        store: SettingsStore | None = None,
    ) -> None:
        super().__init__()
        self.session, self._settings, self._runner = session, settings, runner
        self._closed = self._ends_unasked = False
        # The sample as it was opened; what is made of it by editing still is the sample.
        self._sample: Case | None = None
        self._is_sample = False
        self.setAcceptDrops(True)
        self.setMinimumSize(_LEAST_PX, 660)
        self.top, self.status = TopBar(), StatusLine()
        self.strip, self.looks, self.crown = StartStrip(), LookBar(), CrownView()
        self.plan, self.outcome, self.run = PlanPanel(), OutcomeSide(), RunStrip()
        # Pictures of flat views need not wait until a rosette has been laid flat.
        # Nor need the ground crown.
        # Nor need what another order of the steps would change.
        self._own_runners = tuple(runner.another() for _ in range(4))
        self.flat_pane = FlatPane(self._own_runners[0])
        self._lay_out()
        self.desk = CrownDesk(session, self.crown, self)
        self.flats = FlatDesk(
            session, self.desk, self.split, self.flat_pane, self._own_runners[1], settings, self
        )
        self.flow = OpeningFlow(session, self.crown, self.desk, self)
        self.saving = SavingFlow(session, self)
        self.recovery = RecoveryDesk(session, self.flow, self)
        self.recent = RecentFiles(session, settings, self.open_file, self)
        self.printing = PrintingFlow(session, runner, self.crown, self)
        self.plan_desk = PlanDesk(session, self.plan, self.outcome, self.run, self)
        self.order = OrderDesk(session, self.plan.table, self._own_runners[3], self)
        self.reach = ReachDesk(session, self.outcome.outcome, self._own_runners[3], self)
        self.unit_values = UnitValuesDesk(session, runner, self.outcome.unit_values, self)
        self.advice = AdviceDesk(session, self.outcome.advice, self.crown, self)
        self.advice.marked.connect(self.flats.mark)
        self.tools = ZoneToolDesk(session, self.crown, self.desk, self.plan.brush, runner, self)
        self.look_desk = LookDesk(session, self.desk, self._own_runners[2], self)
        self.sections = SectionDesk(session, self.desk, self)
        self.display = DisplayDesk(settings, self.looks, self)
        self.row_desk = RowDesk(session, self.desk, self._own_runners[2], settings, self)
        self._make_dialogs(session, settings, runner)
        self.own_settings = SettingsDesk(store or SettingsStore(), session, self)
        self.ways = WaysToCompare(session, runner, self)
        self.practice = PracticeDesk(self, settings, runner)
        self.guided = GuidedDesk(self, settings)
        self.commands = WindowActions(self)
        self._connect()
        go_by_settings(self)
        raise_with_focus(self)
        self._end_subscription = session.subscribe(self._refresh)
        self._restore()
        self.set_look(Look.SINTERED)
        self._show_title()
        # Later: what a program is started on is about to be opened.
        idle = QTimer(self, singleShot=True, interval=_NOTHING_YET_MS)
        idle.timeout.connect(self.flow.show_nothing_yet)
        idle.start()

    def _make_dialogs(self, session: Session, settings: QSettings, runner: JobRunner) -> None:
        """Make what opens dialogs about the open case."""
        self.sliders = ZoneSlidersDesk(session, self.crown, runner, self.set_look, self)
        self.corrections = Corrections(session, self.flow, self)
        self.intake = IntakeDesk(session, self.plan.unit, settings, self)
        self.dialogs = PlanDialogs(session, runner, self.desk, self.flow, self)
        self.run_desk = RunDesk(session, runner, self.run, self)
        self.suggest = SuggestDesk(session, runner, self)
        self.materials = MaterialsDesk(session, settings, runner, self)

    def _lay_out(self) -> None:
        self.setMenuWidget(self.top)
        centre = QWidget()
        column = QVBoxLayout(centre)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.strip)
        column.addWidget(self.looks)
        self.split = QSplitter(Qt.Orientation.Vertical)
        self.split.setChildrenCollapsible(False)
        self.split.addWidget(self.crown)
        self.split.addWidget(self.flat_pane)
        self.split.setStretchFactor(0, 1)
        column.addWidget(self.split, 1)
        self.setCentralWidget(centre)
        self.plan_dock = PanelDock(translate("main window", "Plan"), self.plan, PLAN_PX)
        self.outcome_dock = PanelDock(translate("main window", "Outcome"), self.outcome, OUTCOME_PX)
        self.run_dock = PanelDock(translate("main window", "Run"), self.run)
        self.setTabPosition(Qt.DockWidgetArea.AllDockWidgetAreas, QTabWidget.TabPosition.North)
        self.setCorner(Qt.Corner.BottomLeftCorner, Qt.DockWidgetArea.BottomDockWidgetArea)
        self.setCorner(Qt.Corner.BottomRightCorner, Qt.DockWidgetArea.BottomDockWidgetArea)
        self.addDockWidget(Qt.DockWidgetArea.LeftDockWidgetArea, self.plan_dock)
        self.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, self.outcome_dock)
        self.addDockWidget(Qt.DockWidgetArea.BottomDockWidgetArea, self.run_dock)
        line = self.statusBar()
        line.setSizeGripEnabled(False)
        line.setContentsMargins(0, 0, 0, 0)
        line.addWidget(self.status, 1)
        line.setStyleSheet("QStatusBar { border: 0; } QStatusBar::item { border: 0; }")

    def _connect(self) -> None:
        self.strip.open_asked.connect(self.flow.ask_for_file)
        self.strip.dismissed.connect(self._dismiss_strip)
        self.looks.look_chosen.connect(self.set_look)
        self.looks.shading_switched.connect(self.crown.set_relief)
        self.looks.fit_asked.connect(self.crown.fit)
        self.looks.flat.setChecked(self.flats.is_on)
        self.looks.flat_switched.connect(self.flats.switch)
        self.flats.switched.connect(self.looks.flat.setChecked)
        self.looks.light_chosen.connect(self.see_under)
        self.dialogs.said.connect(self.status.say)
        self.run_desk.said.connect(self.status.say)
        self.run_desk.tray.said.connect(self.status.say)
        self.run_desk.tray.case_asked.connect(self.open_file)
        self.row_desk.said.connect(self.status.say)
        self.display.said.connect(self.status.say)
        self.run_desk.compare_asked.connect(self.dialogs.compare_furnaces)
        self.suggest.said.connect(self.status.say)
        self.materials.said.connect(self.status.say)
        self.order.said.connect(self.status.say)
        self.plan.suggest.clicked.connect(self.suggest.open)
        self.intake.said.connect(self.status.say)
        self.sliders.said.connect(self.status.say)
        self.tools.said.connect(self.status.say)
        self.plan.brush.settings_changed.connect(self.desk.set_brush)
        self.crown.brush_resized.connect(self.plan.brush.resize_brush)
        self.plan_desk.area_chosen.connect(self.desk.choose)
        self.plan_desk.said.connect(self.status.say)
        self.plan_desk.reread_asked.connect(self.flow.reread)
        self.plan.unit.notes_asked.connect(self.flow.show_notes)
        self.plan_desk.area_asked_for.connect(self.turn_to)
        for desk in (self.plan_desk, self.order, self.desk):
            desk.problem.connect(lambda error: self.status.say(str(error)))
        self.desk.purpose_changed.connect(
            lambda text, coats: self.plan.brush.set_purpose(text, coats=coats)
        )
        self.desk.named.connect(self.status.set_pointed)
        self.flow.opened_file.connect(self._remember_folder)
        self.flow.block_named.connect(self._remember_block)
        self.flow.set_aside.connect(self._set_aside)
        self.plan.unit.block_chosen.connect(self._remember_block)
        self.saving.said.connect(self.status.say)
        self.recovery.said.connect(self.status.say)
        self.printing.said.connect(self.status.say)
        self.outcome.outcome.change_asked.connect(self.intake.ask_for_target)
        self.desk.set_brush(self.plan.brush.settings)
        self.crown.canvas.drawn.connect(lambda _ms: self.session.first_look_is_drawn())

    # --- the session speaks --------------------------------------------------------------

    def _refresh(self, change: Change) -> None:
        self.desk.refresh(change)
        self.look_desk.refresh(change)
        self.row_desk.refresh(change)
        self.sections.refresh(change)
        self.flats.refresh(change)
        self.plan_desk.refresh(change)
        self.order.refresh(change)
        self.reach.refresh(change)
        self.run_desk.tray.refresh(change)
        self.unit_values.refresh(change)
        self.intake.refresh(change)
        self.advice.refresh(change)
        self.tools.refresh(change)
        self.flow.refresh(change)
        self.sliders.refresh(change)
        self.saving.refresh(change)
        self.ways.refresh(change)
        self.materials.refresh(change)
        self.guided.refresh(change)
        self.recovery.refresh(change)
        self.recent.refresh(change)
        if change.touches("seen"):
            self.looks.set_light(self.session.seen.light, self.session.seen.observer)
        if change.touches("file", "history", "opened", "units", "code", "outcome"):
            self._show_title()
        if change.touches("opened"):
            self._is_sample = self.session.case is self._sample
            if not self._is_sample:
                self._sample = None
            self.show_strip()
            self.set_look(self.crown.look)
        problem = self.session.problem
        if change.touches("problem") and problem is not None and not self.flow.is_asking:
            self.status.say(str(problem))
        self.commands.refresh()

    def _show_title(self) -> None:
        session, case = self.session, self.session.case
        if case is None:
            self.setWindowTitle("stainmap")
            self.top.set_case("", "")
            self.status.set_case("", "")
            self.status.set_standing(translate("main window", _PLANNING_AID))
            return
        words = [translate("main window", "revision {revision}").format(revision=case.revision)]
        if session.read_only:
            words.append(translate("main window", "read-only"))
        if session.is_modified:
            words.append(translate("main window", "not saved"))
        name = case.code if session.path is None else session.path.stem
        self.setWindowTitle(f"{name}[*] \N{EN DASH} stainmap")
        self.setWindowModified(session.is_modified)
        self.top.set_case(name, "  ".join(words))
        invented = case.materials.block(case.plan.block).provenance is Provenance.INVENTED
        self.status.set_standing(
            translate("main window", _INVENTED)
            if invented
            else translate("main window", _PLANNING_AID)
        )
        hash_ = session.plan_hash
        figures_ = translate("main window", "{count:,} points").format(
            count=case.surface.mesh.vertex_count
        )
        self.status.set_case(
            figures_,
            translate("main window", "plan {hash_}").format(hash_=short_hash(hash_))
            if hash_
            else "",
        )

    # --- what menus and keys ask for -----------------------------------------------------

    def set_look(self, look: Look) -> None:
        """Colour the crown by something else."""
        self.looks.set_look(look)
        self.crown.set_look(look)
        self.desk.show_bench()
        self.look_desk.show()
        self.row_desk.show(again=True)
        self.commands.mark_look(look)

    def turn_to(self, area: Area) -> None:
        """Turn the crown so that the largest part of an area faces the viewer."""
        case = self.session.case
        if case is None:
            return
        mesh = case.surface.mesh
        weight = mesh.vertex_areas.copy()
        if isinstance(area, Accent):
            share = case.accent(area)
            weight *= 0.0 if share is None else share
        else:
            weight *= case.zones == int(area)
        toward = weight @ mesh.vertex_normals
        if np.linalg.norm(toward) < 0.15 * weight.sum():
            # It goes all round: look at it from the buccal, where it is seen best.
            toward = figures.directions_of(case).buccal + 0.25 * toward / max(weight.sum(), 1e-9)
        directions = figures.directions_of(case)
        up = directions.occlusal
        if abs(toward @ up) > 0.96 * np.linalg.norm(toward):
            up = -directions.buccal
        self.crown.look_along(toward, up)

    def see_under(self, light: str, observer: int) -> None:
        """Predict for another light and observer."""
        self.session.see(replace(self.session.seen, light=light, observer=observer))

    def correct_curvature(self, corrected: bool) -> None:
        """Correct the prediction of curved places, or leave them as flat ones."""
        self.session.see(replace(self.session.seen, curvature_correction=corrected))

    def open_sample(self) -> None:
        """Open the sample crown, if nothing is lost by it."""
        if self.saving.may_leave():
            sample = open_sample()
            self.show_sample(sample, sample_look(sample))

    def show_sample(self, sample: Case, look: NDArray[np.uint8] | None) -> None:
        """Show the sample crown, in the colours (V, 3) it was last seen in."""
        self._sample = sample
        self.session.adopt(sample, path=None, saved=True, first_look=look)

    def ask_to_open(self) -> None:
        """Let a file be chosen, if nothing is lost by it."""
        if self.saving.may_leave():
            self.flow.ask_for_file()

    def open_file(self, path: Path) -> None:
        """Open a file, if nothing is lost by it."""
        if self.saving.may_leave():
            self.flow.open_path(path)

    def end_unasked(self) -> None:
        """Close although nobody can be asked; unsaved work is there again after the next start."""
        self._ends_unasked = True
        self.close()

    # --- Qt's hooks ----------------------------------------------------------------------

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take files; which of them can be opened is said when they are dropped."""
        if event.mimeData().hasUrls():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open the file that was dropped, if nothing is lost by it."""
        urls = event.mimeData().urls()
        event.acceptProposedAction()
        # The desktop waits for the drop to end; a question must not keep it waiting.
        if len(urls) == 1 and urls[0].isLocalFile():
            path = Path(urls[0].toLocalFile())
            QTimer.singleShot(0, lambda: self.open_file(path))
        else:
            QTimer.singleShot(0, lambda: self.flow.refuse_dropped(len(urls)))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc takes back what was begun last: a reading, a question, a mesh, a tool."""
        escape = event.key() == Qt.Key.Key_Escape
        if not escape or not (
            self.flow.step_back() or self.tools.step_back() or self.sliders.step_back()
        ):
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """In a narrow window the outcome folds into a tab beside the plan."""
        super().resizeEvent(event)
        width = event.size().width()
        tight = width < _LEAST_PX
        self.looks.squeeze(tight)
        for dock in self.findChildren(PanelDock):
            dock.squeeze(width - self.looks.least_px - _HANDLE_PX if tight else width)
        self._fold(width < _NARROW_PX)

    def _fold(self, narrow: bool) -> None:
        folded = self.outcome_dock in self.tabifiedDockWidgets(self.plan_dock)
        if narrow and not folded and not self.outcome_dock.isFloating():
            self.tabifyDockWidget(self.plan_dock, self.outcome_dock)
            self.plan_dock.raise_()
        elif not narrow and folded:
            self.addDockWidget(Qt.DockWidgetArea.RightDockWidgetArea, self.outcome_dock)
            self.outcome_dock.show()
        if narrow != folded:
            docks, widths = [self.plan_dock, self.outcome_dock], [PLAN_PX, OUTCOME_PX]
            self.resizeDocks(docks, widths, Qt.Orientation.Horizontal)
            self.ways.fold(narrow)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Ask before unsaved work is lost; remember sizes and places."""
        if self._closed:
            return
        if not (self._ends_unasked or (self.materials.may_leave() and self.saving.may_leave())):
            event.ignore()
            return
        self._closed = True
        self._settings.setValue("geometry", self.saveGeometry())
        self._settings.setValue("state", self.saveState())
        self._end_subscription()
        if self.session.job is not None:
            self.session.job.cancel()
        self.session.close(keep_unsaved=self._ends_unasked)
        self._runner.close()
        self.ways.close()
        for one in self._own_runners:
            one.close()
        event.accept()

    def _restore(self) -> None:
        resize_within_screen(self, 1600, 1000)
        geometry = self._settings.value("geometry", QByteArray(), type=QByteArray)
        state = self._settings.value("state", QByteArray(), type=QByteArray)
        if isinstance(geometry, QByteArray) and not geometry.isEmpty():
            self.restoreGeometry(geometry)
        if isinstance(state, QByteArray) and not state.isEmpty():
            self.restoreState(state)
        else:
            docks, widths = [self.plan_dock, self.outcome_dock], [PLAN_PX, OUTCOME_PX]
            self.resizeDocks(docks, widths, Qt.Orientation.Horizontal)
        self.show_strip()
        self.flow.folder = self.saving.folder = str(self._settings.value("folder", "", type=str))
        self.flow.last_block = str(self._settings.value("block", "", type=str))

    def _dismiss_strip(self) -> None:
        self._settings.setValue("strip_dismissed", True)
        self.show_strip()

    def show_strip(self) -> None:
        """Show the strip over the sample, and over nothing else."""
        dismissed = bool(self._settings.value("strip_dismissed", False, type=bool))
        on_sample = self._is_sample and not dismissed and not self.flow.is_aside
        self.strip.setVisible(on_sample and not self.guided.is_on)

    def _remember_block(self, name: str) -> None:
        self.flow.last_block = name
        self._settings.setValue("block", name)

    def _set_aside(self, aside: bool) -> None:
        """Nothing of the open case is worked on while another mesh is shown in its place."""
        for part in (self.plan, self.outcome, self.run):
            part.setEnabled(not aside)
        self.looks.allow_looks(not aside)
        self.show_strip()
        self.commands.refresh()

    def _remember_folder(self, path: Path) -> None:
        self.flow.folder = self.saving.folder = str(path.parent)
        self._settings.setValue("folder", str(path.parent))
