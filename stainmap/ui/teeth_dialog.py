"""Which teeth the units of the open crown are, and which of them stand on a stump."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from stainmap.app.opening import units_from_numbers
from stainmap.errors import PlanError
from stainmap.model.tooth import Role, Unit
from stainmap.ui.open_card import tooth_numbers
from stainmap.ui.section import SoftLabel
from stainmap.words import translate, value_word

_BRIDGE_ROLES = (Role.RETAINER, Role.PONTIC)


class TeethDialog(QDialog):
    """Tooth numbers, and in a bridge the role of each unit.

    Parameters
    ----------
    units
        The units as they are known now.
    """

    def __init__(self, units: Sequence[Unit], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("teeth dialog", "Tooth and roles"))
        self._roles_said = {
            unit.tooth.number: unit.role for unit in units if unit.role in _BRIDGE_ROLES
        }
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(12)
        hint = SoftLabel(
            translate(
                "teeth dialog",
                "Numbers by ISO 3950, in the order of the units.\n"
                "The crown is read again; corrections of zones made by hand are kept.",
            )
        )
        column.addWidget(hint)
        self.numbers = QLineEdit(" ".join(str(unit.tooth.number) for unit in units))
        self.numbers.setAccessibleName(translate("teeth dialog", "Tooth numbers, ISO 3950"))
        self.numbers.setMinimumWidth(340)
        column.addWidget(self.numbers)
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(16)
        self._grid.setColumnStretch(0, 1)
        column.addLayout(self._grid)
        self.roles: dict[int, QComboBox] = {}
        self._problem = SoftLabel()
        self._problem.setWordWrap(True)
        column.addWidget(self._problem)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        self.read = buttons.addButton(
            translate("teeth dialog", "Read again"), QDialogButtonBox.ButtonRole.AcceptRole
        )
        self.read.setProperty("main", True)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column.addWidget(buttons)
        self.numbers.textChanged.connect(self._check)
        self.numbers.selectAll()
        self._check()

    @property
    def units(self) -> tuple[Unit, ...]:
        """What was said, or nothing while a number is wrong."""
        try:
            units = units_from_numbers(tooth_numbers(self.numbers.text()))
        except PlanError:
            return ()
        if len(units) == 1:
            return units
        said = {number: Role(combo.currentData()) for number, combo in self.roles.items()}
        return tuple(
            Unit(tooth=unit.tooth, role=said.get(unit.tooth.number, unit.role)) for unit in units
        )

    def _check(self) -> None:
        problem = ""
        units: tuple[Unit, ...] = ()
        try:
            units = units_from_numbers(tooth_numbers(self.numbers.text()))
        except PlanError as error:
            problem = str(error)
        self._problem.setText(problem)
        self._problem.setVisible(bool(problem))
        self.read.setEnabled(not problem)
        if not problem:
            self._ask_for_roles(units)
        self.adjustSize()

    def _ask_for_roles(self, units: Sequence[Unit]) -> None:
        """Lay out a row per tooth; a role that was said before is kept."""
        for number, combo in self.roles.items():
            self._roles_said[number] = Role(combo.currentData())
        while self._grid.count():
            item = self._grid.takeAt(0)
            widget = None if item is None else item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self.roles = {}
        for row, unit in enumerate(units):
            number = unit.tooth.number
            self._grid.addWidget(QLabel(f"{number}  {unit.tooth.name}"), row, 0)
            if len(units) == 1:
                continue
            combo = QComboBox()
            combo.setAccessibleName(
                translate("teeth dialog", "Role of {number}").format(number=number)
            )
            for role in _BRIDGE_ROLES:
                combo.addItem(value_word(role), role)
            combo.setCurrentIndex(_BRIDGE_ROLES.index(self._roles_said.get(number, unit.role)))
            self.roles[number] = combo
            self._grid.addWidget(combo, row, 1)
