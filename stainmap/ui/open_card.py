"""What a mesh file cannot say: which teeth it is, its unit, its size, its block."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QComboBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QRadioButton,
    QWidget,
)

from stainmap.errors import PlanError
from stainmap.model.tooth import Tooth
from stainmap.ui.plate import Plate
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font
from stainmap.units import LengthUnit, SizeState
from stainmap.words import marked, translate

if TYPE_CHECKING:
    from stainmap.planning.size_check import Size

CARD_PX = 312
DEFAULT_BLOCK = "medium 3Y"
_MOST_REMARKS = 2
_UNIT_NAMES = {
    LengthUnit.MILLIMETRE: marked("open card", "millimetres"),
    LengthUnit.CENTIMETRE: marked("open card", "centimetres"),
    LengthUnit.METRE: marked("open card", "metres"),
    LengthUnit.MICROMETRE: marked("open card", "micrometres"),
    LengthUnit.INCH: marked("open card", "inches"),
}
_DATE = re.compile(r"(?<!\d)(?:19|20)\d\d[-_.]\d\d[-_.]\d\d(?!\d)")
_NUMBER = re.compile(r"(?<![\d.])[1-4][1-8](?!\d)")


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
            raise PlanError(
                translate("open card", "'{word}' is not a tooth number.").format(word=word),
                advice=translate("open card", "Give two digits, as in 46."),
            )
        numbers.append(Tooth(number=int(word)).number)
    if len(set(numbers)) != len(numbers):
        raise PlanError(translate("open card", "A tooth is named twice."))
    return tuple(numbers)


def numbers_in_name(stem: str) -> tuple[int, ...]:
    """Return the two-digit ISO 3950 numbers in a file's name, in order; dates are passed over."""
    found = _NUMBER.findall(_DATE.sub(" ", stem))
    return tuple(dict.fromkeys(int(number) for number in found))


def teeth_in_words(numbers: Sequence[int]) -> str:
    """Return the names of teeth, each on a line of its own where there are several."""
    if len(numbers) == 1:
        return Tooth(number=numbers[0]).name
    return "\n".join(f"{number}  {Tooth(number=number).name}" for number in numbers)


class OpenCard(Plate):
    """Asks what is needed before a mesh can be read as a crown, beside the mesh itself.

    Signals
    -------
    accepted, cancelled
        The buttons; `answers` holds what was said.
    unit_chosen
        `LengthUnit` in which the file is to be understood.
    resized
        The card has another height.
    """

    accepted = Signal()
    cancelled = Signal()
    unit_chosen = Signal(object)
    resized = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("open card", "Questions about the mesh"))
        self.setFixedWidth(CARD_PX)
        self.body.setSpacing(8)
        self._extent: tuple[float, ...] = (0.0, 0.0, 0.0)
        self._title, self._size_line = QLabel(), SoftLabel()
        self._title.setFont(font(15, 600))
        self._remarks, self._teeth_line, self._problem = SoftLabel(), SoftLabel(), SoftLabel()
        self._note = QLabel()
        self._note.setFont(font(13, 500))
        for label in (self._title, self._remarks, self._note, self._teeth_line, self._problem):
            label.setWordWrap(True)
        self.body.addWidget(self._title)
        self.body.addWidget(self._size_line)
        self.body.addWidget(self._remarks)
        self.body.addWidget(self._note)
        self.teeth, self.unit, self.block = QLineEdit(), QComboBox(), QComboBox()
        self.milled = QRadioButton(translate("open card", "milled"))
        self.sintered = QRadioButton(translate("open card", "sintered"))
        self._size_group = QButtonGroup(self)
        self.body.addLayout(self._fields())
        self.body.addWidget(self._problem)
        self.read = QPushButton(translate("open card", "Read the crown"))
        self.cancel = QPushButton(translate("open card", "Cancel"))
        self.read.setProperty("main", True)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self.cancel)
        buttons.addWidget(self.read)
        self.body.addStretch(1)
        self.body.addLayout(buttons)
        self.read.clicked.connect(self._accept)
        self.cancel.clicked.connect(self.cancelled)
        self.teeth.returnPressed.connect(self._accept)
        self.teeth.textChanged.connect(self._check)
        self.unit.currentIndexChanged.connect(self._check)
        self.unit.activated.connect(lambda _index: self.unit_chosen.emit(self.chosen_unit))
        self._size_group.buttonToggled.connect(self._check)
        self.hide()

    def _fields(self) -> QGridLayout:
        """Lay out the questions."""
        grid = QGridLayout()
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(8)
        grid.setColumnStretch(1, 1)
        self.teeth.setPlaceholderText(translate("open card", "46, or 14 15 16 for a bridge"))
        self.teeth.setAccessibleName(translate("open card", "Tooth numbers, ISO 3950"))
        self.unit.setAccessibleName(translate("open card", "Unit of the file"))
        self.block.setAccessibleName(translate("open card", "Block"))
        for combo in (self.unit, self.block):
            combo.setSizeAdjustPolicy(
                QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
            )
            combo.setMinimumContentsLength(8)
        states = QHBoxLayout()
        states.setSpacing(18)
        for button in (self.milled, self.sintered):
            self._size_group.addButton(button)
            states.addWidget(button)
        states.addStretch(1)
        self._add(grid, 0, translate("open card", "Tooth"), self.teeth)
        grid.addWidget(self._teeth_line, 1, 1)
        self._add(grid, 2, translate("open card", "File in"), self.unit)
        grid.addWidget(QLabel(translate("open card", "Size is")), 3, 0)
        grid.addLayout(states, 3, 1)
        self._add(grid, 4, translate("open card", "Block"), self.block)
        return grid

    @staticmethod
    def _add(grid: QGridLayout, row: int, name: str, field: QWidget) -> None:
        label = QLabel(name)
        label.setBuddy(field)
        grid.addWidget(label, row, 0)
        grid.addWidget(field, row, 1)

    def ask(
        self,
        name: str,
        extent: Sequence[float],
        sizes: Sequence[Size],
        blocks: Sequence[str],
        *,
        remarks: Sequence[str] = (),
        last_block: str = "",
    ) -> None:
        """Ask about another file; nothing of an earlier one stays.

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
        last_block
            The block that was used last.
        """
        self._extent = tuple(float(v) for v in extent)
        self._title.setText(name)
        # One more takes no more room than the line that counts it.
        most = len(remarks) if len(remarks) == _MOST_REMARKS + 1 else _MOST_REMARKS
        lines = list(remarks[:most])
        if len(remarks) > most:
            lines.append(
                translate("open card", "and {count} more notes").format(count=len(remarks) - most)
            )
        self._remarks.setText("\n".join(lines))
        self._remarks.setToolTip("\n".join(remarks))
        self._note.setText("")
        self.block.clear()
        self.block.addItems(list(blocks))
        self.block.setCurrentText(last_block if last_block in blocks else DEFAULT_BLOCK)
        self._fill_units(sizes)
        self._guess_state(sizes)
        stem = name.rsplit(".", 1)[0]
        self.teeth.setText(" ".join(str(number) for number in numbers_in_name(stem)))
        self._check()

    def set_note(self, text: str) -> None:
        """Say what was wrong with the answers."""
        self._note.setText(text)
        self._check()

    def take_focus(self) -> None:
        """Let the tooth numbers be typed; what stands there is replaced."""
        self.teeth.setFocus(Qt.FocusReason.OtherFocusReason)
        self.teeth.selectAll()

    def _fill_units(self, sizes: Sequence[Size]) -> None:
        likely = list(dict.fromkeys(size.unit for size in sizes))
        rest = [unit for unit in _UNIT_NAMES if unit not in likely]
        self.unit.clear()
        for unit in (*likely, *rest):
            words = translate("open card", _UNIT_NAMES[unit])
            if likely and unit not in likely:
                words = translate("open card", "{unit}, no crown's size").format(unit=words)
            self.unit.addItem(words, unit)

    def _guess_state(self, sizes: Sequence[Size]) -> None:
        state = sizes[0].state if sizes else SizeState.UNKNOWN
        self._size_group.setExclusive(False)
        self.milled.setChecked(state is SizeState.MILLED)
        self.sintered.setChecked(state is SizeState.SINTERED)
        self._size_group.setExclusive(True)

    @property
    def chosen_unit(self) -> LengthUnit:
        """The unit in which the file is understood."""
        return LengthUnit(self.unit.currentData())

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
            unit=self.chosen_unit,
            size_state=SizeState.MILLED if self.milled.isChecked() else SizeState.SINTERED,
            block=self.block.currentText(),
        )

    def _accept(self) -> None:
        if self.answers is not None:
            self.accepted.emit()

    def _check(self) -> None:
        if self.unit.currentIndex() < 0:
            return
        factor = self.chosen_unit.millimetres
        size = " \N{MULTIPLICATION SIGN} ".join(f"{v * factor:.1f}" for v in self._extent)
        self._size_line.setText(f"{size} mm")
        problem, names = "", ""
        try:
            numbers = tooth_numbers(self.teeth.text())
            names = teeth_in_words(numbers)
            if not numbers:
                problem = translate("open card", "Which tooth is it?")
            elif self._size_group.checkedButton() is None:
                problem = translate(
                    "open card", "Is the mesh as milled, about a quarter oversize, or as sintered?"
                )
        except PlanError as error:
            problem = str(error)
        self._teeth_line.setText(names)
        self._problem.setText(problem)
        self.read.setEnabled(not problem)
        self._fit_height()

    def _fit_height(self) -> None:
        """Give every line of text its height: wrapped labels have none of their own."""
        for label in (self._remarks, self._note, self._teeth_line, self._problem):
            label.setVisible(bool(label.text()))
        before = self.height()
        self.body.invalidate()
        self.body.activate()
        # While it is shown it only grows, or the button would slip away from under the pointer.
        least = before if self.isVisible() else 0
        height = max(self.body.heightForWidth(CARD_PX), self.body.sizeHint().height())
        self.setFixedHeight(max(height, least))
        if self.height() != before:
            self.resized.emit()
