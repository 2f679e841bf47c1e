"""A tray: several cases mixed for, painted and fired together; kept in a file of its own."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QHBoxLayout, QListWidget, QPushButton, QScrollArea, QWidget

from stainmap.app.tray import LaidTray
from stainmap.errors import StainmapError
from stainmap.model.tray import Tray, TrayEntry
from stainmap.planning.batch_size import ESTIMATE
from stainmap.planning.mixing import JAR_LIFE_HOURS
from stainmap.predict.sintering import duration_text
from stainmap.ui.colour_table import ColourTable
from stainmap.ui.form_dialog import FormDialog
from stainmap.ui.jar_rows import JAR_HEADS, jar_rows

_WORKING = "Reading the cases\N{HORIZONTAL ELLIPSIS}"
_EMPTY = "Nothing lies on the tray. Add cases, or open a tray that was kept."
_LIST_PX, _REMARKS_PX = 104, 84


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
    """

    laid = Signal(object)
    add_asked = Signal()
    open_asked = Signal()
    keep_asked = Signal()
    sheets_asked = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(
            "Tray",
            "Cases that are mixed for, painted and fired together. Jars of the same liquid and dye"
            f" are put together; mixed jars are kept {JAR_LIFE_HOURS:g} h at most.",
            parent,
        )
        self.setMinimumWidth(760)
        self.tray = Tray()
        self._shown: LaidTray | None = None
        self.list = QListWidget()
        self.list.setAccessibleName("Cases on the tray")
        self.list.setFixedHeight(_LIST_PX)
        self.list.setSelectionMode(QListWidget.SelectionMode.ExtendedSelection)
        self.list.itemSelectionChanged.connect(self._allow)
        self.add_widget(self.list)
        self.add_widget(self._buttons())
        self.table = ColourTable(JAR_HEADS)
        self.add_widget(self.table)
        self.add_note(ESTIMATE)
        self.day = self.add_note("")
        self.remarks = self.soft("")
        self.remarks.setAlignment(Qt.AlignmentFlag.AlignTop)
        area = QScrollArea()
        area.setWidget(self.remarks)
        area.setWidgetResizable(True)
        area.setFrameShape(QScrollArea.Shape.NoFrame)
        area.setFixedHeight(_REMARKS_PX)
        self.add_widget(area)
        self.end(only_close=True)
        self.set_laid(None)

    def _buttons(self) -> QWidget:
        row = QWidget()
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        self.add_button = QPushButton("Add cases...")
        self.remove_button = QPushButton("Take off")
        self.open_button = QPushButton("Open a tray...")
        self.keep_button = QPushButton("Keep this tray...")
        for button, call in (
            (self.add_button, self.add_asked.emit),
            (self.remove_button, self._take_off),
            (self.open_button, self.open_asked.emit),
            (self.keep_button, self.keep_asked.emit),
        ):
            button.setAutoDefault(False)
            button.clicked.connect(call)
            line.addWidget(button)
        line.addStretch(1)
        self.sheets_button = QPushButton("Sheets...")
        self.sheets_button.setAutoDefault(False)
        self.sheets_button.setShortcut(QKeySequence(QKeySequence.StandardKey.Print))
        self.sheets_button.setToolTip(
            "Coat maps, agreement pages and one mixing list: look at them, print or save them"
            f" ({self.sheets_button.shortcut().toString(QKeySequence.SequenceFormat.NativeText)})"
        )
        self.sheets_button.clicked.connect(lambda: self.sheets_asked.emit(self._shown))
        line.addWidget(self.sheets_button)
        return row

    def lay(self, tray: Tray) -> None:
        """Show another tray, once its cases have been read."""
        self.tray = tray
        self._shown = None
        self.day.setText(_WORKING)
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

    def _take_off(self) -> None:
        chosen = {index.row() for index in self.list.selectedIndexes()}
        left = (e for row, e in enumerate(self.tray.entries) if row not in chosen)
        self.lay(Tray(entries=tuple(left)))

    def set_laid(self, laid: LaidTray | None) -> None:
        """Show what was read; None shows an empty tray."""
        self._shown = laid
        if laid is None or not laid.tray.entries:
            self.tray = Tray()
            self.list.clear()
            self.table.set_rows(())
            self.day.setText(_EMPTY)
            self.remarks.setText("")
            self._allow()
            return
        self.tray = laid.tray
        self._show_cases(laid)
        mixing = laid.mixing()
        self.table.set_rows(jar_rows(mixing.jars))
        said = [*laid.problems, *mixing.left_out, *mixing.remarks]
        try:
            run = laid.run(datetime.now().astimezone().replace(second=0, microsecond=0))
        except StainmapError as error:
            self.day.setText("")
            said.insert(0, str(error))
        else:
            ready = "; ".join(
                f"{firing.programme.name} ({firing.units} units) ready {firing.ready:%a %H:%M}"
                for firing in run.firings
            )
            stages = ", ".join(f"{part.stage} {duration_text(part.minutes)}" for part in run.parts)
            self.day.setText(f"{laid.units} units. {stages}. If started now: {ready}.")
            said += run.remarks
        self.remarks.setText("\n".join(said) or "Nothing to look out for.")
        self._allow()
        self.adjustSize()

    def _show_cases(self, laid: LaidTray) -> None:
        read = {one.entry.path: one.case for one in laid.cases}
        self.list.clear()
        for entry in laid.tray.entries:
            case = read.get(entry.path)
            if case is None:
                self.list.addItem(f"{entry.code or '?'}   {entry.path.name}   not read")
                continue
            teeth = " ".join(str(unit.tooth.number) for unit in case.units)
            parts = (case.code, teeth, case.plan.block, case.programme, entry.path.name)
            self.list.addItem("   ".join(parts))

    def set_problem(self, sentence: str) -> None:
        """Say why the tray is not as it was asked for."""
        self.day.setText("")
        self.remarks.setText(sentence)
        self._allow()

    def say(self, sentence: str) -> None:
        """Say what became of something, above what is to be looked out for."""
        said = self.remarks.text()
        self.remarks.setText(f"{sentence}\n{said}" if said else sentence)

    def _allow(self) -> None:
        self.remove_button.setEnabled(bool(self.list.selectedIndexes()))
        self.keep_button.setEnabled(bool(self.tray.entries))
        self.sheets_button.setEnabled(self._shown is not None and bool(self._shown.cases))


def entries_of(paths: Sequence[str]) -> tuple[TrayEntry, ...]:
    """Return entries for files that were chosen; code and plan are not known yet."""
    return tuple(TrayEntry(path=Path(path).resolve(), code="", plan_hash="") for path in paths)
