"""The common shape of the window's dialogs: a sentence, a grid of fields, OK and Cancel."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QDialogButtonBox,
    QDoubleSpinBox,
    QGridLayout,
    QInputDialog,
    QLabel,
    QVBoxLayout,
    QWidget,
)

from stainmap.ui.manual_places import PLACE
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font

_WIDTH_PX = 460


class FormDialog(QDialog):
    """A dialog whose fields stand in a grid, one row after another."""

    def __init__(self, title: str, sentence: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        self.setMinimumWidth(_WIDTH_PX)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(24, 20, 24, 20)
        self._column.setSpacing(12)
        # What is filled in later, such as a table, makes the dialog larger.
        self._column.setSizeConstraint(QVBoxLayout.SizeConstraint.SetMinimumSize)
        self._column.addWidget(self.soft(sentence))
        self.grid = QGridLayout()
        self.grid.setHorizontalSpacing(12)
        self.grid.setVerticalSpacing(8)
        self._column.addLayout(self.grid)
        self._rows = 0

    def add_row(self, name: str, *fields: QWidget, strong: bool = False) -> None:
        """Add a line of fields behind its name."""
        label = QLabel(name)
        if strong:
            label.setFont(font(13, 600))
        label.setBuddy(fields[0])
        self.grid.addWidget(label, self._rows, 0)
        for column, field in enumerate(fields, start=1):
            self.grid.addWidget(field, self._rows, column)
        self._rows += 1

    def add_number(
        self,
        name: str,
        value: float,
        lowest: float,
        highest: float,
        *,
        before: str = "",
        decimals: int = 2,
        step: float = 0.1,
    ) -> QDoubleSpinBox:
        """Add a line with a number and return its field; `before` stands there if not the name."""
        box = number_box(name, value, lowest, highest, decimals=decimals, step=step)
        self.add_row(before or name, box)
        return box

    def add_heads(self, *words: str) -> None:
        """Add a line of small heads over the columns; the first stands over the names."""
        for column, word in enumerate(words):
            if word:
                self.grid.addWidget(SoftLabel(word, 11), self._rows, column)
        self._rows += 1

    def add_note(self, text: str) -> QLabel:
        """Add a quiet sentence over the whole width, and return it."""
        label = self.soft(text)
        self._column.addWidget(label)
        return label

    def add_widget(self, widget: QWidget) -> None:
        """Add something over the whole width."""
        self._column.addWidget(widget)

    def end(self, *, only_close: bool = False) -> None:
        """Add the buttons; nothing comes after them."""
        kinds = QDialogButtonBox.StandardButton
        buttons = QDialogButtonBox(kinds.Close if only_close else kinds.Ok | kinds.Cancel)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        self._column.addWidget(buttons)

    @staticmethod
    def soft(text: str) -> QLabel:
        """Return a quiet sentence that may take several lines."""
        label = SoftLabel(text)
        label.setWordWrap(True)
        return label


def number_box(
    name: str, value: float, lowest: float, highest: float, *, decimals: int = 2, step: float = 0.1
) -> QDoubleSpinBox:
    """Return a field for a number; its name is what a screen reader says."""
    box = QDoubleSpinBox()
    box.setRange(lowest, highest)
    box.setDecimals(decimals)
    box.setSingleStep(step)
    box.setValue(value)
    box.setAccessibleName(name)
    box.setAlignment(Qt.AlignmentFlag.AlignRight)
    box.lineEdit().setTextMargins(4, 0, 4, 0)
    return box


def ask_number(
    over: QWidget,
    title: str,
    words: str,
    value: float,
    lowest: float,
    highest: float,
    decimals: int,
    *,
    place: str,
) -> float | None:
    """Ask for a single number; None if that was left. F1 opens `place` of the manual."""
    dialog = QInputDialog(over)
    dialog.setProperty(PLACE, place)
    dialog.setWindowTitle(title)
    dialog.setLabelText(words)
    dialog.setInputMode(QInputDialog.InputMode.DoubleInput)
    dialog.setDoubleDecimals(decimals)
    dialog.setDoubleRange(lowest, highest)
    dialog.setDoubleValue(value)
    said = dialog.exec() == QDialog.DialogCode.Accepted
    number = dialog.doubleValue()
    dialog.deleteLater()
    return number if said else None


def choice_box(
    name: str, choices: Sequence[str], chosen: str, words: Callable[[str], str] = str
) -> QComboBox:
    """Return a field to choose from; its data are the choices, `words` says how they are called."""
    box = QComboBox()
    for one in choices:
        box.addItem(words(one), one)
    box.setCurrentIndex(max(box.findData(chosen), 0 if choices else -1))
    box.setAccessibleName(name)
    return box
