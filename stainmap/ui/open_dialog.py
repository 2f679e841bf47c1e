"""What a mesh file cannot say: which teeth it is, its unit, its size, its block."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtWidgets import (
    QButtonGroup,
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from stainmap.errors import PlanError
from stainmap.model.tooth import Tooth
from stainmap.planning.size_check import Size
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font
from stainmap.units import LengthUnit, SizeState

_UNIT_NAMES = {
    LengthUnit.MILLIMETRE: "millimetres",
    LengthUnit.CENTIMETRE: "centimetres",
    LengthUnit.METRE: "metres",
    LengthUnit.MICROMETRE: "micrometres",
    LengthUnit.INCH: "inches",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenAnswers:
    """What the person said."""

    numbers: tuple[int, ...]
    unit: LengthUnit
    size_state: SizeState
    block: str


def tooth_numbers(text: str) -> tuple[int, ...]:
    """Return the numbers in "46" or "14, 15 16".

    Raises
    ------
    PlanError
        If something is not a tooth number, or a number comes twice.
    """
    words = text.replace(",", " ").replace(";", " ").split()
    numbers = []
    for word in words:
        if not word.isdecimal():
            raise PlanError(f"'{word}' is not a tooth number.", advice="Give two digits, as in 46.")
        numbers.append(Tooth(number=int(word)).number)
    if len(set(numbers)) != len(numbers):
        raise PlanError("A tooth is named twice.")
    return tuple(numbers)


class OpenDialog(QDialog):
    """Asks what is needed before a mesh can be read as a crown.

    Parameters
    ----------
    name
        File name.
    extent
        (3,) size of the mesh in the file's own units.
    sizes
        Sizes at which it could be a crown, likeliest first.
    blocks
        Names of the blocks to choose from.
    remarks
        What was mended or is odd in the file.
    """

    def __init__(
        self,
        name: str,
        extent: Sequence[float],
        sizes: Sequence[Size],
        blocks: Sequence[str],
        remarks: Sequence[str] = (),
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle("Open a mesh")
        self._extent = tuple(float(v) for v in extent)
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 20)
        column.setSpacing(12)
        title = QLabel(name)
        title.setFont(font(15, 600))
        self._size_line, self._teeth_line, self._problem = SoftLabel(), SoftLabel(), SoftLabel()
        column.addWidget(title)
        column.addWidget(self._size_line)
        for remark in remarks:
            column.addWidget(SoftLabel(remark))
        self.teeth, self.unit, self.block = QLineEdit(), QComboBox(), QComboBox()
        self.milled, self.sintered = QRadioButton("milled"), QRadioButton("sintered")
        self._size_group = QButtonGroup(self)
        column.addLayout(self._fields())
        column.addWidget(self._problem)
        column.addStretch(1)
        for label in self.findChildren(SoftLabel):
            label.setWordWrap(True)
        self.block.addItems(list(blocks))
        self._fill_units(sizes)
        self._guess_state(sizes)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
        self.read = buttons.addButton("Read the crown", QDialogButtonBox.ButtonRole.AcceptRole)
        self.read.setProperty("main", True)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        column.addWidget(buttons)
        self.teeth.textChanged.connect(self._check)
        self.unit.currentIndexChanged.connect(self._check)
        self._size_group.buttonToggled.connect(self._check)
        self._check()
        self.teeth.setFocus()

    def _fields(self) -> QGridLayout:
        """Lay out the questions."""
        grid = QGridLayout()
        grid.setHorizontalSpacing(16)
        grid.setVerticalSpacing(10)
        grid.setColumnMinimumWidth(1, 300)
        self.teeth.setPlaceholderText("46, or 14 15 16 for a bridge")
        self.teeth.setAccessibleName("Tooth numbers, ISO 3950")
        self.unit.setAccessibleName("Unit of the file")
        self.block.setAccessibleName("Block")
        states = QHBoxLayout()
        for button in (self.milled, self.sintered):
            self._size_group.addButton(button)
            states.addWidget(button)
        states.addStretch(1)
        self._add(grid, 0, "Tooth", self.teeth)
        grid.addWidget(self._teeth_line, 1, 1)
        self._add(grid, 2, "File in", self.unit)
        grid.addWidget(QLabel("Size is"), 3, 0)
        grid.addLayout(states, 3, 1)
        self._add(grid, 4, "Block", self.block)
        return grid

    @staticmethod
    def _add(grid: QGridLayout, row: int, name: str, field: QWidget) -> None:
        label = QLabel(name)
        label.setBuddy(field)
        grid.addWidget(label, row, 0)
        grid.addWidget(field, row, 1)

    def _fill_units(self, sizes: Sequence[Size]) -> None:
        likely = list(dict.fromkeys(size.unit for size in sizes))
        rest = [unit for unit in _UNIT_NAMES if unit not in likely]
        for unit in (*likely, *rest):
            note = "" if unit in likely or not likely else ", not the size of a crown"
            self.unit.addItem(f"{_UNIT_NAMES[unit]}{note}", unit)

    def _guess_state(self, sizes: Sequence[Size]) -> None:
        state = sizes[0].state if sizes else SizeState.UNKNOWN
        if state is SizeState.MILLED:
            self.milled.setChecked(True)
        elif state is SizeState.SINTERED:
            self.sintered.setChecked(True)

    @property
    def answers(self) -> OpenAnswers | None:
        """What was said so far, or None while something is missing."""
        try:
            numbers = tooth_numbers(self.teeth.text())
        except PlanError:
            return None
        if not numbers or self._size_group.checkedButton() is None:
            return None
        return OpenAnswers(
            numbers=numbers,
            unit=LengthUnit(self.unit.currentData()),
            size_state=SizeState.MILLED if self.milled.isChecked() else SizeState.SINTERED,
            block=self.block.currentText(),
        )

    def _check(self) -> None:
        factor = LengthUnit(self.unit.currentData()).millimetres
        size = " \N{MULTIPLICATION SIGN} ".join(f"{v * factor:.1f}" for v in self._extent)
        self._size_line.setText(f"{size} mm")
        problem, names = "", ""
        try:
            numbers = tooth_numbers(self.teeth.text())
            names = ", ".join(Tooth(number=n).name for n in numbers)
            if not numbers:
                problem = "Which tooth is it?"
            elif self._size_group.checkedButton() is None:
                problem = "Is the mesh as milled, about a quarter oversize, or as sintered?"
        except PlanError as error:
            problem = str(error)
        self._teeth_line.setText(names)
        self._problem.setText(problem)
        self.read.setEnabled(not problem)
