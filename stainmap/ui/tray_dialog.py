"""A tray: several cases mixed for, painted and fired together, as a window beside the crown."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from stainmap.app.tray import LaidTray
from stainmap.app.tray_day import TrayDay
from stainmap.errors import StainmapError
from stainmap.model.time_words import day_and_time
from stainmap.model.tray import Tray, TrayEntry
from stainmap.planning.batch_size import ESTIMATE
from stainmap.planning.mixing import JAR_LIFE_HOURS
from stainmap.planning.unit_state import UnitStage, UnitState
from stainmap.predict.sintering import duration_text
from stainmap.ui.colour_table import ColourTable
from stainmap.ui.form_dialog import FormDialog
from stainmap.ui.jar_rows import jar_heads, jar_rows
from stainmap.ui.tray_units import TrayUnits, UnitRow
from stainmap.words import marked, translate, value_word

_WORKING = marked("tray dialog", "Reading the cases…")
_EMPTY = marked("tray dialog", "Nothing lies on the tray. Add cases, or open a tray that was kept.")
_WIDTH_PX, _HEIGHT_PX, _TITLE_PX = 900, 740, 40
_LIST_PX, _JARS_PX, _REMARKS_PX = 140, 100, 52


class TrayDialog(FormDialog):
    """Shows a tray; what it asks for is done by whoever opened it.

    Signals
    -------
    laid
        `Tray` to read and show.
    add_asked, open_asked, keep_asked
        Case files are to be added, a kept tray opened, this one kept.
    sheets_asked
        The sheets of this `LaidTray` are to be seen.
    case_asked
        File of a case that is to be opened in the window.
    off_asked, state_asked, undo_asked
        The chosen cases are to be taken off; their state is to be set; the last of such steps is
        to be taken back.
    """

    laid = Signal(object)
    add_asked = Signal()
    open_asked = Signal()
    keep_asked = Signal()
    sheets_asked = Signal(object)
    case_asked = Signal(object)
    off_asked = Signal()
    state_asked = Signal()
    undo_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(
            translate("tray dialog", "Tray"),
            translate(
                "tray dialog",
                "Cases that are mixed for, painted and fired together. Jars of the same liquid "
                "and dye are put together; mixed jars are kept {hours:g} h at most.",
            ).format(hours=JAR_LIFE_HOURS),
            parent,
        )
        self.tray = Tray()
        self._shown: LaidTray | None = None
        self.units = TrayUnits()
        self.units.setMinimumSize(_WIDTH_PX, _LIST_PX)
        self.units.itemSelectionChanged.connect(self._allow)
        self.units.open_asked.connect(self.case_asked)
        self.units.off_asked.connect(self.off_asked)
        self.summary = self.add_note("")
        self.add_widget(self.units)
        self._column.setStretchFactor(self.units, 2)
        self.add_widget(self._unit_buttons())
        self.table = ColourTable(jar_heads())
        jars = _scrolled(self.table, translate("tray dialog", "Jars mixed for the tray"), _JARS_PX)
        self.add_widget(jars)
        self._column.setStretchFactor(jars, 3)
        self.add_note(translate("batch size", ESTIMATE))
        self.day = self.add_note("")
        self.remarks = self.soft("")
        self.remarks.setAlignment(Qt.AlignmentFlag.AlignTop)
        said = _scrolled(self.remarks, translate("tray dialog", "Remarks on the tray"), _REMARKS_PX)
        self.add_widget(said)
        self._column.setStretchFactor(said, 1)
        self.add_widget(self._tray_buttons())
        self.end(only_close=True)
        room = self.screen().availableGeometry().height() - _TITLE_PX
        self.resize(_WIDTH_PX + 60, min(_HEIGHT_PX, room))
        self.set_undo("")
        self.set_laid(None)

    def _unit_buttons(self) -> QWidget:
        self.case_button = _button(
            translate("tray dialog", "Open in the window"), self._ask_for_case
        )
        self.state_button = _button(
            translate("tray dialog", "Set the state..."), self.state_asked.emit
        )
        self.remove_button = _button(translate("tray dialog", "Take off"), self.off_asked.emit)
        self.undo_button = _button(translate("tray dialog", "Undo"), self.undo_asked.emit)
        self.undo_button.setShortcut(QKeySequence(QKeySequence.StandardKey.Undo))
        self.add_button = _button(translate("tray dialog", "Add cases..."), self.add_asked.emit)
        left = (self.case_button, self.state_button, self.remove_button, self.undo_button)
        return _in_a_row(left, (self.add_button,))

    def _tray_buttons(self) -> QWidget:
        self.open_button = _button(translate("tray dialog", "Open a tray..."), self.open_asked.emit)
        self.keep_button = _button(
            translate("tray dialog", "Keep this tray..."), self.keep_asked.emit
        )
        self.sheets_button = _button(
            translate("tray dialog", "Sheets..."), lambda: self.sheets_asked.emit(self._shown)
        )
        self.sheets_button.setShortcut(QKeySequence(QKeySequence.StandardKey.Print))
        self.sheets_button.setToolTip(
            translate(
                "tray dialog",
                "Coat maps, agreement pages and one mixing list: look at them, print or save "
                "them ({shortcut})",
            ).format(
                shortcut=self.sheets_button.shortcut().toString(
                    QKeySequence.SequenceFormat.NativeText
                )
            )
        )
        return _in_a_row((self.open_button, self.keep_button), (self.sheets_button,))

    def lay(self, tray: Tray) -> None:
        """Show another tray, once its cases have been read."""
        self.tray = tray
        self._shown = None
        self.day.setText(translate("tray dialog", _WORKING))
        self._allow()
        self.laid.emit(tray)

    def add_entries(self, entries: Sequence[TrayEntry]) -> None:
        """Lay further cases on the tray; one that lies there already stays once."""
        try:
            self.lay(
                Tray(entries=tuple({e.path: e for e in (*self.tray.entries, *entries)}.values()))
            )
        except StainmapError as error:
            self.set_problem(str(error))

    def without_chosen(self) -> Tray:
        """Return the tray without the cases that are chosen."""
        chosen = set(self.units.chosen)
        return Tray(entries=tuple(e for e in self.tray.entries if e.path not in chosen))

    def set_laid(
        self,
        shown: TrayDay | None,
        states: Mapping[Path, UnitState] | None = None,
        open_path: Path | None = None,
    ) -> None:
        """Show what was read; None shows an empty tray.

        Parameters
        ----------
        states
            How far the cases are.
        open_path
            File of the case that is open in the window.
        """
        laid = None if shown is None else shown.laid
        self._shown = laid
        if shown is None or laid is None or not laid.tray.entries:
            self.tray = Tray()
            self.units.set_rows(())
            self.summary.setText("")
            self.table.set_rows(())
            self.day.setText(translate("tray dialog", _EMPTY))
            self.remarks.setText("")
            self._allow()
            return
        self.tray = laid.tray
        self.show_states(states or {}, open_path)
        mixing, run = shown.mixing, shown.run
        self.table.set_rows(jar_rows(mixing.jars))
        said = [*laid.problems, *mixing.left_out, *mixing.remarks]
        self.day.setText("")
        if run is not None:
            ready = "; ".join(
                translate("tray dialog", "{name} ({codes}) ready {ready}").format(
                    name=firing.programme.name,
                    codes=", ".join(firing.codes),
                    ready=day_and_time(firing.ready),
                )
                for firing in run.firings
            )
            stages = ", ".join(
                f"{value_word(part.stage)} {duration_text(part.minutes)}" for part in run.parts
            )
            units = (
                translate("tray dialog", "1 unit")
                if laid.units == 1
                else translate("tray dialog", "{units} units").format(units=laid.units)
            )
            self.day.setText(
                translate("tray dialog", "{units}. {stages}. If started now: {ready}.").format(
                    units=units, stages=stages, ready=ready
                )
            )
            said += run.remarks
        self.remarks.setText(
            "\n".join(said) or translate("tray dialog", "Nothing to look out for.")
        )
        self._allow()

    def show_states(self, states: Mapping[Path, UnitState], open_path: Path | None) -> None:
        """Show how far the cases are."""
        laid = self._shown
        if laid is None:
            return
        read = {one.entry.path: one.labelled for one in laid.cases}
        rows = []
        for entry in laid.tray.entries:
            case, state = read.get(entry.path), states.get(entry.path)
            if case is None or state is None:
                rows.append(UnitRow(path=entry.path, code=entry.code))
                continue
            rows.append(
                UnitRow(
                    path=entry.path,
                    code=case.code,
                    teeth=" ".join(str(unit.tooth.number) for unit in case.units),
                    block=case.plan.block,
                    programme=case.programme,
                    state=state,
                    is_open=entry.path == open_path,
                )
            )
        self.units.set_rows(rows)
        self.summary.setText(_counted(rows))
        self._allow()

    def set_undo(self, what: str) -> None:
        """Name what undo would take back; empty where there is nothing."""
        self.undo_button.setEnabled(bool(what))
        self.undo_button.setToolTip(
            translate("tray dialog", "Undo: {step}").format(step=what)
            if what
            else translate("tray dialog", "Nothing to undo on the tray")
        )

    def set_problem(self, sentence: str) -> None:
        """Say why the tray is not as it was asked for."""
        self.day.setText("")
        self.remarks.setText(sentence)
        self._allow()

    def say(self, sentence: str) -> None:
        """Say what became of something, above what is to be looked out for."""
        said = self.remarks.text()
        self.remarks.setText(f"{sentence}\n{said}" if said else sentence)

    def _ask_for_case(self) -> None:
        chosen = self.units.chosen
        if chosen:
            self.case_asked.emit(chosen[0])

    def _allow(self) -> None:
        chosen = len(self.units.chosen)
        self.remove_button.setEnabled(chosen > 0)
        self.case_button.setEnabled(chosen == 1)
        self.state_button.setEnabled(chosen > 0 and self._shown is not None)
        self.keep_button.setEnabled(bool(self.tray.entries))
        self.sheets_button.setEnabled(self._shown is not None and bool(self._shown.cases))


def entries_of(paths: Sequence[str]) -> tuple[TrayEntry, ...]:
    """Return entries for files that were chosen; code and plan are not known yet."""
    return tuple(TrayEntry(path=Path(path).resolve(), code="", plan_hash="") for path in paths)


def _counted(rows: Sequence[UnitRow]) -> str:
    """Return "3 cases: 1 planned, 2 painted"."""
    counts = Counter(row.state.stage for row in rows if row.state is not None)
    parts = [f"{counts[stage]} {value_word(stage)}" for stage in UnitStage if counts[stage]]
    unread = sum(row.state is None for row in rows)
    if unread:
        parts.append(translate("tray dialog", "{unread} left out").format(unread=unread))
    told = ", ".join(parts)
    return (
        translate("tray dialog", "1 case: {told}.").format(told=told)
        if len(rows) == 1
        else translate("tray dialog", "{count} cases: {told}.").format(count=len(rows), told=told)
    )


def _scrolled(widget: QWidget, name: str, least_px: int) -> QScrollArea:
    held, column = QWidget(), QVBoxLayout()
    column.setContentsMargins(0, 0, 6, 0)
    column.addWidget(widget)
    column.addStretch(1)
    held.setLayout(column)
    area = QScrollArea()
    area.setWidget(held)
    area.setWidgetResizable(True)
    area.setMinimumHeight(least_px)
    area.setAccessibleName(name)
    return area


def _button(text: str, call: Callable[[], object]) -> QPushButton:
    button = QPushButton(text)
    button.setAutoDefault(False)
    button.clicked.connect(lambda _checked: call())
    return button


def _in_a_row(left: Sequence[QWidget], right: Sequence[QWidget]) -> QWidget:
    row = QWidget()
    line = QHBoxLayout(row)
    line.setContentsMargins(0, 0, 0, 0)
    for one in left:
        line.addWidget(one)
    line.addStretch(1)
    for one in right:
        line.addWidget(one)
    return row
