"""The page of the settings that lists all commands and their keys, and lets them be changed."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHBoxLayout,
    QHeaderView,
    QKeySequenceEdit,
    QLabel,
    QLineEdit,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QVBoxLayout,
    QWidget,
)

from stainmap.ui.key_map import Command, KeyMap, native, portable
from stainmap.ui.section import SoftLabel
from stainmap.words import translate


class KeysPage(QWidget):
    """A list of commands; below it the key of the chosen one, to be pressed anew."""

    def __init__(self, map_: KeyMap, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._map = map_
        self._keys: dict[str, str] = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 16, 16, 16)
        column.setSpacing(8)
        self.wanted = QLineEdit()
        self.wanted.setAccessibleName(translate("settings", "Find a command or a key"))
        self.wanted.setPlaceholderText(translate("settings", "find a command or a key"))
        self.wanted.setClearButtonEnabled(True)
        self.wanted.textChanged.connect(self._filter)
        column.addWidget(self.wanted)
        self.table = self._table()
        column.addWidget(self.table, 1)
        self.edit = QKeySequenceEdit()
        self.edit.setMaximumSequenceLength(1)
        self.edit.setAccessibleName(translate("settings", "New key"))
        self.take = _button(translate("settings", "Give it this key"), self._take)
        self.free = _button(translate("settings", "No key"), self._free)
        self.reset = _button(translate("settings", "As it came"), self._reset_one)
        self.reset_all = _button(
            translate("settings", "All as they came"), lambda: self.set_keys({})
        )
        label = QLabel(translate("settings", "&New key"))
        label.setBuddy(self.edit)
        line = QHBoxLayout()
        line.addWidget(label)
        line.addWidget(self.edit, 1)
        self.edit.setMinimumWidth(140)
        for button in (self.take, self.free, self.reset):
            line.addWidget(button)
        column.addLayout(line)
        self.said = SoftLabel("")
        self.said.setWordWrap(True)
        self.said.setAccessibleName(translate("settings", "What came of it"))
        foot = QHBoxLayout()
        foot.addWidget(self.said, 1)
        foot.addWidget(self.reset_all)
        column.addLayout(foot)
        self.table.itemSelectionChanged.connect(self._chosen)
        self._fill()

    def _table(self) -> QTableWidget:
        heads = [
            translate("settings", "command"),
            translate("settings", "key"),
            translate("settings", "as it came"),
        ]
        table = QTableWidget(0, len(heads))
        table.setHorizontalHeaderLabels(heads)
        table.setAccessibleName(translate("settings", "Commands and their keys"))
        table.verticalHeader().hide()
        table.setShowGrid(False)
        table.setTabKeyNavigation(False)
        table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
        table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        head = table.horizontalHeader()
        head.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        for keys in (1, 2):
            head.setSectionResizeMode(keys, QHeaderView.ResizeMode.ResizeToContents)
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft)
        head.setHighlightSections(False)
        return table

    @property
    def keys(self) -> dict[str, str]:
        """The keys that differ from those the commands came with, and what is not known here."""
        known = {one.name: one for one in self._map.commands(self._keys)}
        return {
            name: key
            for name, key in self._keys.items()
            if name not in known or portable(key) != known[name].default
        }

    def set_keys(self, keys: Mapping[str, str]) -> None:
        """Show other keys."""
        self._keys = dict(keys)
        self.said.setText("")
        self._fill()

    def choose(self, name: str) -> None:
        """Choose a command of the list."""
        for row, one in enumerate(self._map.commands()):
            if one.name == name:
                self.table.selectRow(row)

    @property
    def chosen(self) -> Command | None:
        """The chosen command."""
        rows = {index.row() for index in self.table.selectionModel().selectedRows()}
        commands = self._map.commands(self._keys)
        return commands[rows.pop()] if len(rows) == 1 else None

    def _fill(self) -> None:
        chosen = self.chosen
        commands = self._map.commands(self._keys)
        self.table.setRowCount(len(commands))
        for row, one in enumerate(commands):
            for column, text in enumerate((one.words, native(one.key), native(one.default))):
                item = QTableWidgetItem(text)
                if column == 1 and one.key != one.default:
                    face = item.font()
                    face.setWeight(face.Weight.DemiBold)
                    item.setFont(face)
                    item.setToolTip(translate("settings", "changed"))
                self.table.setItem(row, column, item)
        self.table.resizeRowsToContents()
        self._filter(self.wanted.text())
        if chosen is not None:
            self.choose(chosen.name)
        self._chosen()

    def _filter(self, wanted: str) -> None:
        words = wanted.lower().split()
        for row in range(self.table.rowCount()):
            items = [self.table.item(row, column) for column in range(2)]
            text = " ".join(item.text() for item in items if item is not None).lower()
            self.table.setRowHidden(row, not all(word in text for word in words))

    def _chosen(self) -> None:
        one = self.chosen
        for widget in (self.edit, self.take, self.free, self.reset):
            widget.setEnabled(one is not None)
        self.edit.setKeySequence(QKeySequence(one.key if one is not None else ""))
        self.reset.setEnabled(one is not None and one.key != one.default)

    def _take(self) -> None:
        self._put(portable(self.edit.keySequence()))

    def _free(self) -> None:
        self._put("")

    def _reset_one(self) -> None:
        one = self.chosen
        if one is not None:
            self._put(one.default)

    def _put(self, key: str) -> None:
        """Give the chosen command a key, or say what stands against it."""
        one = self.chosen
        if one is None:
            return
        against = self._map.why_not(one.name, key, self._keys)
        if against:
            self.said.setText(against)
            return
        if key == one.default:
            self._keys.pop(one.name, None)
        else:
            self._keys[one.name] = key
        if key:
            said = translate("settings", "{command} has {key} now.")
        else:
            said = translate("settings", "{command} has no key now.")
        self._fill()
        self.said.setText(said.format(command=one.words, key=native(key)))


def _button(words: str, call: Callable[[], object]) -> QPushButton:
    button = QPushButton(words)
    button.setAutoDefault(False)
    button.clicked.connect(lambda _checked: call())
    return button
