"""The table of classical tabs, with its doubts; any value can be changed on this computer."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialogButtonBox,
    QHeaderView,
    QTableWidget,
    QTableWidgetItem,
    QWidget,
)

from stainmap.errors import StainmapError
from stainmap.files.shades_file import starter_shades
from stainmap.model.shade_table import ShadeTable, Tab
from stainmap.ui.form_dialog import FormDialog
from stainmap.ui.plate import link_button
from stainmap.ui.theme import tones
from stainmap.words import marked, translate

_HEADS = (
    marked("tab table dialog", "tab"),
    "L*",
    "a*",
    "b*",
    "\N{PLUS-MINUS SIGN} L*",
    "\N{PLUS-MINUS SIGN} a*",
    "\N{PLUS-MINUS SIGN} b*",
    marked("tab table dialog", "where from"),
)
_OWN = marked("tab table dialog", "changed on this computer")
_SENTENCE = marked(
    "tab table dialog",
    "L*a*b* under illuminant C, 2°, integrating sphere. These values were written "
    "down from memory of a published table and are not verified; correct any of "
    "them. Cases keep the values they were planned with.",
)


class TabTableDialog(FormDialog):
    """All tabs in a table; a changed one says that it was changed here."""

    def __init__(self, table: ShadeTable, parent: QWidget | None = None) -> None:
        super().__init__(
            translate("tab table dialog", "Table of tabs"),
            translate("tab table dialog", _SENTENCE),
            parent,
        )
        self._tabs = table.tabs
        self.cells = QTableWidget(len(table.tabs), len(_HEADS))
        self.cells.setAccessibleName(translate("tab table dialog", "Table of tabs"))
        self.cells.setHorizontalHeaderLabels(
            [translate("tab table dialog", head) for head in _HEADS]
        )
        self.cells.verticalHeader().hide()
        self.cells.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        header = self.cells.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(len(_HEADS) - 1, QHeaderView.ResizeMode.Stretch)
        for line, tab in enumerate(table.tabs):
            self._fill(line, tab)
        self.cells.setMinimumSize(620, 420)
        self.add_widget(self.cells)
        self.shipped = link_button(translate("tab table dialog", "the shipped values again"))
        self.shipped.clicked.connect(self._take_shipped)
        self.add_widget(self.shipped)
        self.problem = self.add_note("")
        self.problem.setStyleSheet(f"color: {tones(self).caution};")
        self.cells.itemChanged.connect(lambda _item: self._check())
        self.end()
        self._check()

    @property
    def tabs(self) -> tuple[Tab, ...]:
        """The tabs as they are now; raises StainmapError for a cell that holds no such number."""
        return tuple(self._tab(line) for line in range(len(self._tabs)))

    def _take_shipped(self) -> None:
        """Put the shipped value of every shipped tab back."""
        shipped = {tab.name: tab for tab in starter_shades().tabs}
        self._tabs = tuple(shipped.get(tab.name, tab) for tab in self._tabs)
        for line, tab in enumerate(self._tabs):
            self._fill(line, tab)

    def _fill(self, line: int, tab: Tab) -> None:
        parts = [part for part in (tab.note, tab.provenance) if part]
        said = "; ".join(translate("tab table dialog", part) for part in parts)
        numbers = (*tab.colour.lab, *tab.doubt)
        words = [
            tab.name,
            *(f"{value:.2f}".replace("-", "\N{MINUS SIGN}") for value in numbers),
            said,
        ]
        for column, word in enumerate(words):
            item = QTableWidgetItem(word)
            if column in (0, len(words) - 1):
                item.setFlags(item.flags() & ~Qt.ItemFlag.ItemIsEditable)
                item.setToolTip(word)
            else:
                item.setTextAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
            self.cells.setItem(line, column, item)

    def _tab(self, line: int) -> Tab:
        tab = self._tabs[line]
        values = [self._number(line, column) for column in range(1, 7)]
        old = (*tab.colour.lab, *tab.doubt)
        if all(round(a, 2) == b for a, b in zip(old, values, strict=True)):
            return tab
        lightness, a, b, *doubt = values
        return replace(
            tab,
            colour=replace(tab.colour, lightness=lightness, a=a, b=b),
            doubt=(doubt[0], doubt[1], doubt[2]),
            note="",
            provenance=_OWN,
        )

    def _number(self, line: int, column: int) -> float:
        item = self.cells.item(line, column)
        text = "" if item is None else item.text()
        try:
            return round(float(text.strip().replace("\N{MINUS SIGN}", "-").replace(",", ".")), 2)
        except ValueError as error:
            raise StainmapError(
                translate("tab table dialog", "'{text}' is not a number.").format(text=text),
                where=f"{self._tabs[line].name}, {_HEADS[column]}",
                advice=translate("tab table dialog", "Write it as 74.36."),
            ) from error

    def _check(self) -> None:
        problem = ""
        try:
            _ = self.tabs
        except StainmapError as error:
            problem = str(error)
        self.problem.setText(problem)
        self.problem.setVisible(bool(problem))
        buttons = self.findChild(QDialogButtonBox)
        if isinstance(buttons, QDialogButtonBox):
            buttons.button(QDialogButtonBox.StandardButton.Ok).setEnabled(not problem)
