"""What lies behind the crown, as the intake page asks it: for all units, and where one differs."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QLabel, QVBoxLayout, QWidget

from stainmap.ui.backing_dialog import AS_ALL
from stainmap.ui.form_dialog import choice_box
from stainmap.ui.theme import font
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.ui.intake_dialog import IntakeFacts

NOT_KNOWN = marked("intake dialog", "not known yet")
_TOOTH, _IMPLANT = (
    marked("intake dialog", "a prepared tooth"),
    marked("intake dialog", "a base on an implant"),
)
_UNITS_IN_A_LINE = 4


class IntakeBacking(QWidget):
    """Stump, cement and what the crown stands on; in a bridge also stumps of single units.

    Signals
    -------
    changed
        Something was chosen.
    """

    changed = Signal()

    def __init__(self, facts: IntakeFacts, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._assumed = facts.stump
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        self.stands_on = choice_box(
            translate("intake dialog", "Stands on"),
            (_TOOTH, _IMPLANT),
            _IMPLANT if facts.intake.implant_base else _TOOTH,
            lambda one: translate("intake dialog", one),
        )
        self.stump = choice_box(
            translate("intake dialog", "Stump or base"),
            (NOT_KNOWN, *facts.stumps),
            facts.stump if facts.intake.stump_known else NOT_KNOWN,
            lambda one: translate("intake dialog", NOT_KNOWN) if one == NOT_KNOWN else one,
        )
        self.cement = choice_box(translate("intake dialog", "Cement"), facts.cements, facts.cement)
        self._stump_label = QLabel()
        fields = (
            (QLabel(translate("intake dialog", "stands on")), self.stands_on),
            (self._stump_label, self.stump),
            (QLabel(translate("intake dialog", "cement")), self.cement),
        )
        column.addLayout(_grid(fields, len(fields)))
        self.of_units: dict[int, QComboBox] = {}
        if facts.units:
            self._add_units(column, facts)
        for one in (self.stump, self.stands_on):
            one.currentTextChanged.connect(self._follow)
        self._follow()

    def _add_units(self, column: QVBoxLayout, facts: IntakeFacts) -> None:
        fields = []
        for unit, number in facts.units.items():
            box = choice_box(
                translate("backing dialog", "Behind {name}").format(name=number),
                (AS_ALL, *facts.stumps),
                facts.unit_stumps.get(unit, AS_ALL),
                lambda one: translate("backing dialog", AS_ALL) if one == AS_ALL else one,
            )
            box.currentTextChanged.connect(self._follow)
            self.of_units[unit] = box
            inside = translate("backing dialog", "inside {name}").format(name=number)
            fields.append((QLabel(inside), box))
        column.addLayout(_grid(fields, _UNITS_IN_A_LINE))

    @property
    def is_known(self) -> bool:
        """True if somebody says what lies behind the crown, or behind each of its units."""
        named = str(self.stump.currentData()) != NOT_KNOWN
        return named or 0 < len(self.of_units) == len(self.unit_stumps)

    @property
    def on_implant(self) -> bool:
        """True for a base on an implant instead of a prepared tooth."""
        return str(self.stands_on.currentData()) == _IMPLANT

    @property
    def chosen_stump(self) -> str:
        """What is to lie behind the crown: chosen, or assumed as before."""
        name = str(self.stump.currentData())
        return self._assumed if name == NOT_KNOWN else name

    @property
    def unit_stumps(self) -> dict[int, str]:
        """The stumps of single units that are not as in the others."""
        chosen = {unit: str(box.currentData()) for unit, box in self.of_units.items()}
        return {unit: stump for unit, stump in chosen.items() if stump != AS_ALL}

    def _follow(self) -> None:
        self._stump_label.setText(
            translate("intake dialog", "base")
            if self.on_implant
            else translate("intake dialog", "stump")
        )
        self.changed.emit()


def _grid(fields: Sequence[tuple[QLabel, QComboBox]], in_a_line: int) -> QGridLayout:
    """Return labels and their boxes beside one another, so many in a line."""
    grid = QGridLayout()
    grid.setHorizontalSpacing(10)
    grid.setVerticalSpacing(6)
    for place, (label, box) in enumerate(fields):
        row, column = divmod(place, in_a_line)
        label.setBuddy(box)
        label.setFont(font(13))
        grid.addWidget(label, row, 2 * column)
        grid.addWidget(box, row, 2 * column + 1)
    grid.setColumnStretch(2 * in_a_line, 1)
    return grid
