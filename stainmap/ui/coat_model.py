"""The coat table as a table model: areas are rows, steps are columns, cells are coats."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    Signal,
)

from stainmap.app.coat_block import CoatGrid
from stainmap.errors import PlanError
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Accent, Area, Zone
from stainmap.ui.marks import JarLook
from stainmap.words import marked, translate

Index = QModelIndex | QPersistentModelIndex

SPAN_ROLE = Qt.ItemDataRole.UserRole + 1
INHERITED_ROLE = Qt.ItemDataRole.UserRole + 2
BRUSHED_ROLE = Qt.ItemDataRole.UserRole + 3
LOCKED_ROLE = Qt.ItemDataRole.UserRole + 6
AREA_ROLE = Qt.ItemDataRole.UserRole + 4
JAR_ROLE = Qt.ItemDataRole.UserRole + 5
# A name that is too long for its column is read in its tool tip.
_NAMES = (
    Qt.ItemDataRole.DisplayRole,
    Qt.ItemDataRole.AccessibleTextRole,
    Qt.ItemDataRole.ToolTipRole,
)
_OUTSIDE, _ON_TOP, _INSIDE = (
    marked("coat model", "outer surface"),
    marked("coat model", "on top of it"),
    marked("coat model", "inside"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class StepColumn:
    """One step: its jar, coats by area, what accents inherit, where coats are brushed or locked."""

    jar: JarLook
    coats: dict[Area, CoatSpan] = field(default_factory=dict)
    inherited: dict[Area, str] = field(default_factory=dict)
    """Figures such as "2" or "1/2" that an accent takes from the zones below it."""
    brushed: frozenset[Area] = frozenset()
    locked: frozenset[Area] = frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaRow:
    """One area: its name as on this tooth."""

    area: Area
    name: str


Row = AreaRow | str
"""An area, or the title of a group of them."""


class CoatModel(QAbstractTableModel):
    """Rows in three groups with a title row each; columns in painting order.

    The model changes only when it is given a new plan, so that what it shows is always the plan.

    Attributes
    ----------
    may_suggest
        False where nothing is suggested; then the hint in an empty table says nothing of it.

    Signals
    -------
    edited
        Step (from 0), area, and the CoatSpan that was typed, or None for a cleared cell.
    refused
        A sentence about what was typed.
    """

    edited = Signal(int, object, object)
    refused = Signal(str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[Row, ...] = ()
        self._steps: tuple[StepColumn, ...] = ()
        self.may_suggest = True

    @property
    def no_steps_yet(self) -> str:
        """What stands in the table while the plan has no steps."""
        if not self.may_suggest:
            return translate("coat table", "No steps yet.\n\n+ step adds one of a liquid.")
        return translate(
            "coat table",
            "No steps yet.\n\n+ step adds one of a liquid; Suggest coats looks for a whole plan.",
        )

    def set_plan(self, areas: Sequence[AreaRow], steps: Sequence[StepColumn]) -> None:
        """Show these areas and steps."""
        rows = _grouped(areas)
        if rows != self._rows or len(steps) != len(self._steps):
            self.beginResetModel()
            self._rows, self._steps = rows, tuple(steps)
            self.endResetModel()
            return
        self._steps = tuple(steps)
        if self._rows and self._steps:
            last = self.index(len(self._rows) - 1, len(self._steps) - 1)
            self.dataChanged.emit(self.index(0, 0), last)
            horizontal = Qt.Orientation.Horizontal
            self.headerDataChanged.emit(horizontal, 0, len(self._steps) - 1)

    @property
    def steps(self) -> tuple[StepColumn, ...]:
        """The columns."""
        return self._steps

    def area_at(self, row: int) -> Area | None:
        """Return the area of a row, or None for a title."""
        if not 0 <= row < len(self._rows):
            return None
        entry = self._rows[row]
        return None if isinstance(entry, str) else entry.area

    def row_of(self, area: Area) -> int:
        """Return the row of an area, or -1."""
        for number, entry in enumerate(self._rows):
            if not isinstance(entry, str) and entry.area == area:
                return number
        return -1

    @property
    def area_rows(self) -> list[int]:
        """Rows that are areas, from top to bottom; the others are titles."""
        return [row for row in range(len(self._rows)) if self.area_at(row) is not None]

    @property
    def grid(self) -> CoatGrid:
        """The table without its titles, as coats are copied from and pasted into."""
        return CoatGrid(
            areas=tuple((row.area, row.name) for row in self._rows if not isinstance(row, str)),
            liquids=tuple(step.jar.liquid for step in self._steps),
            coats=tuple(step.coats for step in self._steps),
        )

    def title_at(self, row: int) -> str:
        """Return the name that stands before a row."""
        entry = self._rows[row]
        return entry if isinstance(entry, str) else entry.name

    # --- Qt's table --------------------------------------------------------------------------

    def rowCount(self, parent: Index | None = None) -> int:
        """Return the number of rows, titles included."""
        return 0 if parent is not None and parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index | None = None) -> int:
        """Return the number of steps."""
        return 0 if parent is not None and parent.isValid() else len(self._steps)

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Cells can be chosen and typed into; titles cannot."""
        if self.area_at(index.row()) is None:
            return Qt.ItemFlag.NoItemFlags
        enabled, selectable = Qt.ItemFlag.ItemIsEnabled, Qt.ItemFlag.ItemIsSelectable
        return enabled | selectable | Qt.ItemFlag.ItemIsEditable

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Return what a cell shows, or says to a screen reader."""
        area = self.area_at(index.row())
        if area is None or not 0 <= index.column() < len(self._steps):
            return None
        step = self._steps[index.column()]
        span = step.coats.get(area)
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.EditRole):
            return "" if span is None else str(span)
        if role == SPAN_ROLE:
            return span
        if role == INHERITED_ROLE:
            return step.inherited.get(area, "")
        if role == BRUSHED_ROLE:
            return area in step.brushed
        if role == LOCKED_ROLE:
            return area in step.locked
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return self._sentence(index.row(), index.column(), area, step)
        return None

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Pass on what was typed; empty or 0 clears the cell."""
        area = self.area_at(index.row())
        if role != Qt.ItemDataRole.EditRole or area is None:
            return False
        text = str(value).strip()
        try:
            span = CoatSpan.parse(text) if text else None
        except PlanError as error:
            self.refused.emit(str(error))
            return False
        if span is not None and span.high == 0:
            span = None
        if span != self._steps[index.column()].coats.get(area):
            self.edited.emit(index.column(), area, span)
        return True

    def headerData(
        self,
        section: int,
        orientation: Qt.Orientation,
        role: int = Qt.ItemDataRole.DisplayRole,
    ) -> Any:
        """Return step numbers, area names, and what the drawn heads need."""
        if orientation == Qt.Orientation.Horizontal:
            known = 0 <= section < len(self._steps)
            return self._step_head(section, role) if known else None
        if not 0 <= section < len(self._rows):
            return None
        if role == AREA_ROLE:
            return self.area_at(section)
        if role in _NAMES:
            return self.title_at(section)
        return None

    def _step_head(self, step: int, role: int) -> Any:
        jar = self._steps[step].jar
        if role == JAR_ROLE:
            return jar
        if role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole):
            return translate("coat model", "step {step}, jar {number} {liquid}").format(
                step=step + 1, number=jar.number, liquid=jar.liquid
            )
        if role in (Qt.ItemDataRole.ToolTipRole, Qt.ItemDataRole.AccessibleDescriptionRole):
            return _head_words(step, jar)
        return None

    def _sentence(self, row: int, column: int, area: Area, step: StepColumn) -> str:
        place = translate("coat model", "{area}, step {step} {liquid}").format(
            area=self.title_at(row), step=column + 1, liquid=step.jar.liquid
        )
        span, inherited = step.coats.get(area), step.inherited.get(area, "")
        if span is not None:
            what = (
                translate("coat model", "{span} coat")
                if str(span) == "1"
                else translate("coat model", "{span} coats")
            ).format(span=span)
            if inherited:
                what = translate(
                    "coat model", "{coats} on {inherited} inherited from the zone below"
                ).format(coats=what, inherited=inherited)
        elif inherited:
            what = translate("coat model", "{inherited} inherited from the zone below").format(
                inherited=inherited
            )
        else:
            what = translate("coat model", "no coats")
        said = [what]
        if area in step.brushed:
            said.append(translate("coat model", "brushed by hand too"))
        if area in step.locked:
            said.append(translate("coat model", "locked"))
        return f"{place}: {', '.join(said)}"


def corner_words() -> tuple[str, str]:
    """Return what stands at the corner of the table: for its lines, for its columns."""
    return translate("coat table", "area"), translate("coat table", "step")


def _head_words(step: int, jar: JarLook) -> str:
    """Return what is said of a step that is pointed at."""
    lines = [
        translate("coat model", "Step {step}, jar {number} {liquid}").format(
            step=step + 1, number=jar.number, liquid=jar.liquid
        ),
        jar.recipe,
        *jar.warnings,
    ]
    lines.append(
        translate(
            "coat model",
            "Drag it to paint it earlier or later, or press Ctrl+Shift with Left or Right.",
        )
    )
    return "\n".join(line for line in lines if line)


def _grouped(areas: Sequence[AreaRow]) -> tuple[Row, ...]:
    """Return the areas under their titles: zones outside, accents on top, what lies inside."""
    inside = {Zone.INNER, Accent.INNER_NECK_BAND}
    groups = (
        (
            translate("coat model", _OUTSIDE),
            [r for r in areas if isinstance(r.area, Zone) and r.area not in inside],
        ),
        (
            translate("coat model", _ON_TOP),
            [r for r in areas if isinstance(r.area, Accent) and r.area not in inside],
        ),
        (translate("coat model", _INSIDE), [r for r in areas if r.area in inside]),
    )
    rows: list[Row] = []
    for title, members in groups:
        if members:
            rows += [title, *members]
    return tuple(rows)
