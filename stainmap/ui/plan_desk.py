"""The plan, outcome and run panels at work: edits go to the session, what follows is shown."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import datetime
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtWidgets import QMenu

from stainmap.app import edits
from stainmap.app.change import Change
from stainmap.app.materials import origin_word
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.model.case import Case, Region
from stainmap.model.material import Catalogue
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import OUTER_ZONES, Accent, Area, Zone
from stainmap.planning.schedule import coats_to_paint, run_strip
from stainmap.ui import case_figures as figures
from stainmap.ui.answers import answers_of
from stainmap.ui.run_strip import RunDetail, RunStrip
from stainmap.ui.side_panels import OutcomeSide, PlanPanel
from stainmap.units import SizeState, TemperatureUnit
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.planning.jar_warnings import JarWarnings
    from stainmap.planning.outcome import AreaOutcome

_INSIDE = (Zone.INNER, Accent.INNER_NECK_BAND)
_CLOCK_MS = 20_000
_NOTHING_PAINTED = marked(
    "plan desk", "No coats in this plan yet: how long the day takes is told once there are."
)
_UNIT_FIELDS = ("units", "plan", "backings", "programme", "source", "surface", "reading")
_SIZES = {"milled": SizeState.MILLED, "sintered": SizeState.SINTERED}


class PlanDesk(QObject):
    """Keeps the panels in step with a session.

    Signals
    -------
    area_chosen
        Area, and the step (from 0) or None: what the brush works on from now.
    said
        A sentence for the status line.
    problem
        A StainmapError from an edit.
    area_asked_for
        Area to turn the crown to.
    reread_asked
        `Answers` with which the crown is to be read again.
    """

    area_chosen = Signal(object, object)
    said = Signal(str)
    problem = Signal(object)
    area_asked_for = Signal(object)
    reread_asked = Signal(object)

    def __init__(
        self,
        session: Session,
        plan: PlanPanel,
        outcome: OutcomeSide,
        run: RunStrip,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._session, self._plan, self._outcome, self._run = session, plan, outcome, run
        self._warned: tuple[Catalogue, object, JarWarnings] | None = None
        self._degrees = TemperatureUnit.BOTH
        table, unit = plan.table, plan.unit
        table.coats_edited.connect(self._set_coats)
        table.cells_edited.connect(
            lambda cells, label: self._edit(label, lambda c: edits.with_cells(c, cells))
        )
        table.row_selected.connect(lambda area: self.area_chosen.emit(area, None))
        table.cell_selected.connect(lambda step, area: self.area_chosen.emit(area, step))
        table.step_add_requested.connect(self._add_step)
        table.step_remove_requested.connect(
            lambda step: self._edit(
                translate("plan desk", "remove a step"), lambda c: edits.without_step(c, step)
            )
        )
        table.step_jar_requested.connect(
            lambda step, jar: self._edit(
                translate("plan desk", "take a step from another jar"),
                lambda c: edits.with_step_jar(c, step, jar),
            )
        )
        table.lock_requested.connect(self._lock)
        table.refused.connect(self._refuse)
        table.said.connect(self.said)
        unit.tooth_chosen.connect(self._set_tooth)
        unit.block_chosen.connect(
            lambda name: self._edit(
                translate("plan desk", "choose the block"), lambda c: edits.with_block(c, name)
            )
        )
        unit.programme_chosen.connect(
            lambda name: self._edit(
                translate("plan desk", "choose the programme"),
                lambda c: edits.with_programme(c, name),
            )
        )
        unit.size_chosen.connect(
            lambda name: self._edit(
                translate("plan desk", "set the size of the mesh"),
                lambda c: edits.with_size(c, _SIZES[name], c.source.unit),
            )
        )
        unit.stump_chosen.connect(lambda name: self._set_backing(stump=name))
        unit.cement_chosen.connect(lambda name: self._set_backing(cement=name))
        outcome.outcome.area_asked_for.connect(self.area_asked_for)
        table.cell_selected.connect(lambda *_: self._show_note())
        self._menu = QMenu(plan)
        plan.add_step.setMenu(self._menu)
        self._menu.aboutToShow.connect(self._fill_menu)
        self._clock = QTimer(self)
        self._clock.setInterval(_CLOCK_MS)
        self._clock.timeout.connect(self._show_run)
        self._clock.start()
        self._show_unit()
        self._show_outcome()
        self._show_run()

    # --- the session speaks --------------------------------------------------------------

    def refresh(self, change: Change) -> None:
        """Show what has changed."""
        opened = change.touches("opened")
        if opened or change.touches("plan", "units", "accents", "outcome", "zones"):
            self._show_table()
        if opened or change.touches("materials", *_UNIT_FIELDS):
            self._show_unit()
        if opened or change.touches("outcome", "target"):
            self._show_outcome()
        if opened or change.touches("plan", "programme", "units", "materials"):
            self._show_run()
        if opened and self._session.case is not None:
            self._start_choice(self._session.case)

    def _start_choice(self, case: Case) -> None:
        """Choose the first planned cell, so that brush and table have something to work on."""
        for index, step in enumerate(case.plan.steps):
            outer = [entry.area for entry in step.areas if entry.area in OUTER_ZONES]
            if outer:
                self._plan.table.select_cell(index, outer[0])
                return
        self._plan.table.select_row(figures.areas_of(case)[0])

    def _show_table(self) -> None:
        case = self._session.case
        if case is None:
            return
        columns = figures.step_columns(case, self._session.outcome, self._warnings(case))
        self._plan.table.set_plan(figures.area_rows(case), columns, figures.jars_on_tray(case))
        self._show_note()

    def _warnings(self, case: Case) -> JarWarnings:
        """Return what is wrong with the jars; worked out anew only if that may have changed."""
        if self._session.prediction is None and self._session.problem is None:
            # With the first prediction: to solve a block takes a large library, which that brings.
            return {}
        from stainmap.planning.jar_warnings import jar_warnings  # noqa: PLC0415

        plan = case.plan
        key = (plan.jars, plan.block, plan.nesting_height_mm, case.programme, case.backings[:1])
        if self._warned is None or self._warned[:2] != (case.materials, key):
            try:
                self._warned = (case.materials, key, jar_warnings(case))
            except StainmapError:
                self._warned = (case.materials, key, {})  # the prediction says what is wrong
        return self._warned[2]

    def _show_note(self) -> None:
        """Say what is wrong with the jar of the chosen step, or with the first such jar."""
        columns = self._plan.table.columns
        here = self._plan.table.currentIndex().column()
        ordered = [*columns[max(here, 0) : max(here, 0) + 1], *columns]
        warned = next((column.jar for column in ordered if column.jar.warnings), None)
        if warned is not None:
            self._plan.note.warn(
                translate("plan desk", "Jar {number}: {warning}").format(
                    number=warned.number, warning=warned.warnings[0]
                )
            )
        elif columns:
            self._plan.note.tell(
                translate("plan desk", "light figures are inherited from the zone below")
            )
        else:
            self._plan.note.tell("")  # the table itself says how to begin

    def _refuse(self, sentence: str) -> None:
        """Say why something was not taken, where it was typed and at the foot of the window."""
        self._plan.note.warn(sentence)
        self.said.emit(sentence)

    def _show_unit(self) -> None:
        case = self._session.case
        self._plan.add_step.setEnabled(case is not None)
        self._plan.suggest.setEnabled(case is not None)
        self._plan.table.setEnabled(case is not None)
        self._plan.brush.setEnabled(case is not None)
        if case is None:
            self._plan.unit.set_facts(None)
            self._plan.unit.set_notes(())
            return
        self._plan.unit.set_materials(figures.material_names(case))
        self._plan.unit.set_facts(figures.unit_facts(case))
        self._plan.unit.set_notes(case.reading.warnings)

    def _show_outcome(self) -> None:
        outcome = self._session.outcome
        side = self._outcome
        areas: list[AreaOutcome] = []
        if outcome is not None:
            # What lies inside is not seen; the body comes first, the others are held against it.
            areas = [one for one in outcome.areas if one.area not in _INSIDE]
            areas.sort(key=lambda one: one.area is not Zone.BODY)
        wanted = [one for one in areas if one.wanted is not None]
        zones = [one for one in areas if not isinstance(one.area, Accent)]
        calibrated = outcome is not None and outcome.calibrated
        side.outcome.set_outcomes(wanted or zones, calibrated=calibrated)
        if outcome is None and self._session.case is not None:
            side.outcome.head.set_remark(translate("plan desk", "being predicted"))
        # What is wanted under another light is no step of value from what is predicted.
        comparable = [replace(one, wanted=None) if one.refused else one for one in areas]
        case = self._session.case
        beside = () if case is None or not areas else figures.neighbour_values(case, areas[0])
        side.ladder.set_outcomes(comparable, beside)
        for widget in (side.ladder, side.ladder_head, side.outcome.caution):
            widget.setVisible(bool(areas))
        if outcome is not None and not outcome.calibrated:
            from stainmap.planning.outcome import plus_minus_text  # noqa: PLC0415

            side.outcome.caution.set_text(
                translate("plan desk", "Not calibrated: direction, not a match."),
                plus_minus_text(wanted or zones, "   "),
            )

    def write_temperatures(self, degrees: TemperatureUnit) -> None:
        """Write temperatures of the run in other degrees."""
        self._degrees = degrees
        self._show_run()

    def _show_run(self) -> None:
        case = self._session.case
        if case is None:
            self._run.set_run((), RunDetail())
            return
        if not any(coats_to_paint(step) for step in case.plan.steps):
            self._run.set_run((), RunDetail(), translate("plan desk", _NOTHING_PAINTED))
            return
        try:
            now = datetime.now().astimezone().replace(second=0, microsecond=0)
            detail = replace(figures.run_detail(case), degrees=self._degrees)
            self._run.set_run(run_strip(case, now), detail)
        except StainmapError as error:
            self.problem.emit(error)

    # --- the user speaks -----------------------------------------------------------------

    def _edit(self, label: str, change: Callable[[Case], Case]) -> None:
        try:
            self._session.edit(label, change)
        except StainmapError as error:
            self.problem.emit(error)

    def _set_coats(self, step: int, area: Area, span: CoatSpan | None) -> None:
        case = self._session.case
        if case is None:
            return
        label = (
            translate("plan desk", "clear {area}, step {step}")
            if span is None
            else translate("plan desk", "{span} on {area}, step {step}")
        ).format(span=span, area=figures.area_name(case, area), step=step + 1)
        self._edit(label, lambda c: edits.with_coats(c, step, area, span))

    def _lock(self, cells: Sequence[tuple[int, Area]], locked: bool) -> None:
        def change(case: Case) -> Case:
            for step, area in cells:
                case = edits.with_lock(case, step, area, locked=locked)
            return case

        if len(cells) == 1:
            label = (
                translate("plan desk", "lock the coats of step {step}")
                if locked
                else translate("plan desk", "set free the coats of step {step}")
            ).format(step=cells[0][0] + 1)
        else:
            label = (
                translate("plan desk", "lock the coats of {count} cells")
                if locked
                else translate("plan desk", "set free the coats of {count} cells")
            ).format(count=len(cells))
        self._edit(label, change)

    def _add_step(self, at: int, jar: int) -> None:
        self._edit(
            translate("plan desk", "add a step"), lambda c: edits.with_added_step(c, at, jar)
        )

    def add_liquid(self, liquid: str) -> None:
        """Add a step of a liquid at the end."""
        case = self._session.case
        if case is None:
            return
        at = len(case.plan.steps)
        self._edit(
            translate("plan desk", "add a step of {liquid}").format(liquid=liquid),
            lambda c: edits.with_added_liquid(c, at, liquid),
        )

    def _fill_menu(self) -> None:
        self._menu.clear()
        case = self._session.case
        if case is None:
            return
        on_tray = {jar.liquid: jar.number for jar in case.plan.jars}
        for liquid in case.materials.liquids:
            jar = (
                translate("plan desk", "jar {number}").format(number=on_tray[liquid.name])
                if liquid.name in on_tray
                else translate("plan desk", "new jar")
            )
            action = self._menu.addAction(
                f"{liquid.name}: {liquid.purpose} ({jar}, {origin_word(liquid)})"
            )
            action.triggered.connect(lambda _checked, name=liquid.name: self.add_liquid(name))

    def _set_backing(self, *, stump: str = "", cement: str = "") -> None:
        from stainmap.app.intake import with_stump_known  # noqa: PLC0415

        def change(case: Case) -> Case:
            old = case.backing(Region.STUMP)
            changed = edits.with_backing(
                case, Region.STUMP, stump=stump or old.stump, cement=cement or old.cement
            )
            return with_stump_known(changed) if stump else changed

        self._edit(translate("plan desk", "choose what lies behind"), change)

    def _set_tooth(self, number: int) -> None:
        from stainmap.app.opening import units_from_numbers  # noqa: PLC0415

        case = self._session.case
        if case is None or case.units[0].tooth.number == number:
            return
        try:
            units = units_from_numbers((number,))
            answers = answers_of(self._session)
        except StainmapError as error:
            self.problem.emit(error)
            return
        same_side = case.units[0].tooth.quadrant % 2 == units[0].tooth.quadrant % 2
        mesial = answers.mesial if same_side else None
        self.reread_asked.emit(replace(answers, units=units, mesial=mesial))

    @staticmethod
    def outcome_of(session: Session, area: Area) -> AreaOutcome | None:
        """Return the outcome of one area, if there is a prediction."""
        return None if session.outcome is None else session.outcome.area(area)
