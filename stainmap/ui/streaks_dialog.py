"""Asks for the streaks of a step: where they begin, which way, how many, how long, how strong."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QDoubleSpinBox,
    QGridLayout,
    QPushButton,
    QSpinBox,
    QWidget,
)

from stainmap.model.case import Case
from stainmap.model.plan import MAX_COATS, Streaks
from stainmap.model.zone import OUTER_ZONES, Zone
from stainmap.planning.streaks import streak_starts
from stainmap.ui import case_figures as figures
from stainmap.ui.form_dialog import FormDialog, choice_box, number_box
from stainmap.ui.section import SoftLabel
from stainmap.words import marked, translate

_DIRECTIONS = {
    1: marked("streaks dialog", "towards the margin"),
    -1: marked("streaks dialog", "towards the biting edge"),
}
_ROW_PX = 34
_DEFAULT = Streaks(area=Zone.CUSP, count=5, length_mm=3.0, coats=1)


class StreaksDialog(FormDialog):
    """The streaks of one step at a time; all steps that were changed are taken together.

    Signals
    -------
    changed
        Step (from 0) and its streaks, as they are set now.
    """

    changed = Signal(int, object)

    def __init__(self, case: Case, step: int, parent: QWidget | None = None) -> None:
        super().__init__(
            translate("streaks dialog", "Streaks"),
            translate(
                "streaks dialog",
                "A few tapered strokes that carry the coat of a step from one zone into the"
                " next, on"
                " the facial and on the lingual side. Lengths are sintered mm.",
            ),
            parent,
        )
        self._case = case
        self._streaks = [one.streaks for one in case.plan.steps]
        self._groups: list[_Row] = []
        names = [
            f"{number}, {case.plan.liquid_of(one)}"
            for number, one in enumerate(case.plan.steps, start=1)
        ]
        self.step_box = choice_box(translate("streaks dialog", "Step"), names, names[step])
        self.add_row(translate("streaks dialog", "Step"), self.step_box)
        self._table = QWidget()
        self._lines = QGridLayout(self._table)
        self._lines.setContentsMargins(0, 0, 0, 0)
        self._lines.setHorizontalSpacing(8)
        self.add_widget(self._table)
        self.add = QPushButton(translate("streaks dialog", "Add streaks"))
        self.add.setAutoDefault(False)
        self.add.clicked.connect(self._add)
        self.add_widget(self.add)
        self.note = self.add_note("")
        self.end()
        self.step_box.currentIndexChanged.connect(self._show_step)
        self._show_step()

    @property
    def step(self) -> int:
        """The step that is shown, from 0."""
        return self.step_box.currentIndex()

    @property
    def streaks(self) -> list[tuple[Streaks, ...]]:
        """What every step has now."""
        return list(self._streaks)

    @property
    def groups(self) -> list[_Row]:
        """The rows of fields, one for each group of strokes."""
        return self._groups

    def _zones(self) -> list[Zone]:
        present = set(self._case.zones.tolist())
        zones = [zone for zone in OUTER_ZONES if int(zone) in present]
        return zones or list(OUTER_ZONES)

    def _show_step(self) -> None:
        while self._lines.count():
            item = self._lines.takeAt(0)
            widget = None if item is None else item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self._groups = []
        here = self._streaks[self.step]
        if here:
            for column, word in enumerate(
                (
                    translate("streaks dialog", "from"),
                    translate("streaks dialog", "they run"),
                    translate("streaks dialog", "number"),
                    "mm",
                    translate("streaks dialog", "coats"),
                )
            ):
                self._lines.addWidget(SoftLabel(word, 11), 0, column)
        for index, streaks in enumerate(here):
            row = _Row(self._case, streaks, [*dict.fromkeys((*self._zones(), streaks.area))])
            row.bind(self._read, partial(self._remove, index))
            self._lines.setRowMinimumHeight(index + 1, _ROW_PX)
            for column, field in enumerate(row.fields):
                self._lines.addWidget(field, index + 1, column)
            self._groups.append(row)
        self._tell()

    def _add(self) -> None:
        zones = self._zones()
        first = replace(_DEFAULT, area=_DEFAULT.area if _DEFAULT.area in zones else zones[0])
        self._streaks[self.step] += (first,)
        self._show_step()

    def _remove(self, at: int) -> None:
        here = self._streaks[self.step]
        self._streaks[self.step] = here[:at] + here[at + 1 :]
        self._show_step()

    def _read(self) -> None:
        self._streaks[self.step] = tuple(row.value for row in self._groups)
        self._tell()

    def _tell(self) -> None:
        """Say where streaks find no border to begin at, and let them be shown."""
        case, here = self._case, self._streaks[self.step]
        mesh, zones, reading = case.surface.mesh, case.zones, case.reading
        lost = [one for one in here if not streak_starts(mesh, zones, reading, one)]
        words = "" if here else translate("streaks dialog", "This step has no streaks.")
        if lost:
            name = figures.area_name(case, lost[0].area)
            words = translate(
                "streaks dialog",
                "From {name} nothing leads that way: choose another zone or direction.",
            ).format(name=name)
        self.note.setText(words)
        self.note.setVisible(bool(words))
        self.changed.emit(self.step, here)


class _Row:
    """The fields of one group of strokes."""

    def __init__(self, case: Case, streaks: Streaks, zones: list[Zone]) -> None:
        self._zones = zones
        names = [figures.area_name(case, zone) for zone in zones]
        words = [translate("streaks dialog", word) for word in _DIRECTIONS.values()]
        self.area: QComboBox = choice_box(
            translate("streaks dialog", "From zone"), names, names[zones.index(streaks.area)]
        )
        self.direction: QComboBox = choice_box(
            translate("streaks dialog", "They run"),
            words,
            words[list(_DIRECTIONS).index(streaks.direction)],
        )
        self.count, self.coats = QSpinBox(), QSpinBox()
        for box, name, low, high, value in (
            (
                self.count,
                translate("streaks dialog", "Number of strokes on each side"),
                3,
                7,
                streaks.count,
            ),
            (self.coats, translate("streaks dialog", "Coats"), 1, MAX_COATS, streaks.coats),
        ):
            box.setRange(low, high)
            box.setValue(value)
            box.setAccessibleName(name)
            box.setToolTip(
                translate("streaks dialog", "{name}, {low} to {high}").format(
                    name=name, low=low, high=high
                )
            )
            box.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.length: QDoubleSpinBox = number_box(
            translate("streaks dialog", "Length in sintered mm"),
            streaks.length_mm,
            2.0,
            4.0,
            decimals=1,
            step=0.1,
        )
        self.remove = QPushButton(translate("streaks dialog", "Remove"))
        self.remove.setAutoDefault(False)

    @property
    def fields(self) -> tuple[QWidget, ...]:
        """The widgets from left to right."""
        return (self.area, self.direction, self.count, self.length, self.coats, self.remove)

    @property
    def value(self) -> Streaks:
        """What is set."""
        return Streaks(
            area=self._zones[self.area.currentIndex()],
            count=self.count.value(),
            length_mm=round(self.length.value(), 1),
            coats=self.coats.value(),
            direction=list(_DIRECTIONS)[self.direction.currentIndex()],
        )

    def bind(self, changed: Callable[[], None], removed: Callable[[], None]) -> None:
        """Call `changed` when a field changes, `removed` when the row is to go."""
        self.area.currentIndexChanged.connect(lambda _index: changed())
        self.direction.currentIndexChanged.connect(lambda _index: changed())
        for box in (self.count, self.length, self.coats):
            box.valueChanged.connect(lambda _value: changed())
        self.remove.clicked.connect(lambda _on: removed())
