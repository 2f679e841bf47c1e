"""The two small tables that a material is edited in: its numbers, and what it is made up of."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QAbstractItemModel, QModelIndex, QPersistentModelIndex, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTableWidget,
    QTableWidgetItem,
    QWidget,
)

from stainmap.words import translate

_CHOICES = Qt.ItemDataRole.UserRole
_ROW_PX, _LEAST_PX, _MOST_PX, _HEAD_PX = 25, 70, 220, 24

HEAD_STYLE = (
    "QHeaderView, QHeaderView::section { background: palette(alternate-base);"
    " color: palette(text); border: 0; padding: 1px 5px; }"
)
"""Heads of lists and tables, flat as everything else."""
_STYLE = (
    "QTableView { selection-background-color: palette(midlight); selection-color: palette(text); }"
)


class FormTable(QTableWidget):
    """Cells of text, typed or chosen; what is typed is told, and shown once it was taken.

    Signals
    -------
    typed
        Line and column from 0, and the text.
    removed, added
        A line is to go; one is to come below the current one.
    """

    typed = Signal(int, int, str)
    removed = Signal()
    added = Signal()

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.setTabKeyNavigation(False)
        self.setStyleSheet(_STYLE)
        self.horizontalHeader().setStyleSheet(HEAD_STYLE)
        self.verticalHeader().setStyleSheet(HEAD_STYLE)
        for header in (self.horizontalHeader(), self.verticalHeader()):
            header.setHighlightSections(False)
        self.setItemDelegate(_Chooser(self))
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setAlternatingRowColors(True)
        self.setCornerButtonEnabled(False)
        self.verticalHeader().setDefaultSectionSize(_ROW_PX)
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.setMinimumHeight(3 * _ROW_PX)
        self._filling = False
        self._texts: list[list[str]] = []
        self.itemChanged.connect(self._tell)

    def fill(
        self,
        lines: Sequence[str],
        columns: Sequence[str],
        texts: Sequence[Sequence[str]],
        choices: Sequence[Sequence[tuple[str, ...]]],
        hints: Sequence[Sequence[str]],
        *,
        editable: bool,
    ) -> None:
        """Show heads and cells; the place of the keyboard stays where it can.

        Parameters
        ----------
        choices
            What can be chosen, per cell; nothing where it is typed.
        hints
            What can be typed, per cell.
        """
        here = self.currentRow(), self.currentColumn()
        self._filling = True
        self._texts = [list(row) for row in texts]
        self.setRowCount(len(lines))
        self.setColumnCount(len(columns))
        self.setHorizontalHeaderLabels(list(columns))
        self.setVerticalHeaderLabels(list(lines))
        for at, row in enumerate(texts):
            for column, text in enumerate(row):
                # Cells are changed rather than made anew: one of them may be telling right now.
                item = self.item(at, column)
                if item is None:
                    item = QTableWidgetItem()
                    self.setItem(at, column, item)
                item.setText(text)
                flags = Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
                item.setFlags(flags | Qt.ItemFlag.ItemIsEditable if editable else flags)
                item.setData(_CHOICES, list(choices[at][column]))
                item.setToolTip(hints[at][column])
                spoken = text or translate("materials tables", "empty")
                item.setData(
                    Qt.ItemDataRole.AccessibleTextRole,
                    f"{lines[at]}, {columns[column]}: {spoken}",
                )
                side = Qt.AlignmentFlag.AlignLeft
                if not choices[at][column]:
                    side = Qt.AlignmentFlag.AlignRight
                item.setTextAlignment(side | Qt.AlignmentFlag.AlignVCenter)
        widest = max((self.fontMetrics().horizontalAdvance(one) for one in lines), default=0)
        self.verticalHeader().setFixedWidth(widest + _HEAD_PX)
        self.resizeColumnsToContents()
        for column in range(self.columnCount()):
            self.setColumnWidth(column, min(max(self.columnWidth(column) + 8, _LEAST_PX), _MOST_PX))
        if self.rowCount() and self.columnCount():
            line = min(max(here[0], 0), self.rowCount() - 1)
            self.setCurrentCell(line, min(max(here[1], 0), self.columnCount() - 1))
        self._filling = False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Insert adds a line, Delete takes the current one away, Return types into the cell."""
        key = event.key()
        if key == Qt.Key.Key_Insert:
            self.added.emit()
        elif key == Qt.Key.Key_Delete:
            self.removed.emit()
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.currentItem() is not None:
            if self.state() != QAbstractItemView.State.EditingState:
                self.editItem(self.currentItem())
        else:
            super().keyPressEvent(event)

    def _tell(self, item: QTableWidgetItem) -> None:
        if self._filling or item.text() == self._texts[item.row()][item.column()]:
            return
        self.typed.emit(item.row(), item.column(), item.text())

    def put_back(self) -> None:
        """Show again what was there before something was typed that could not be taken."""
        self._filling = True
        for at, row in enumerate(self._texts):
            for column, text in enumerate(row):
                item = self.item(at, column)
                if item is not None:
                    item.setText(text)
        self._filling = False


class _Chooser(QStyledItemDelegate):
    """Offers a list where a cell has choices."""

    def createEditor(
        self,
        parent: QWidget,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> QWidget:
        """Return a list, or the field to type in."""
        choices = index.data(_CHOICES)
        if not choices:
            return super().createEditor(parent, option, index)
        box = QComboBox(parent)
        box.addItems(list(choices))
        box.setAccessibleName(translate("materials tables", "Choose"))
        box.activated.connect(lambda _at: self._done(box))
        return box

    def _done(self, box: QComboBox) -> None:
        self.commitData.emit(box)
        self.closeEditor.emit(box)

    def setEditorData(self, editor: QWidget, index: QModelIndex | QPersistentModelIndex) -> None:
        """Show what the cell holds."""
        if isinstance(editor, QComboBox):
            editor.setCurrentText(str(index.data()))
        else:
            super().setEditorData(editor, index)

    def setModelData(
        self,
        editor: QWidget,
        model: QAbstractItemModel,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Put into the cell what was chosen or typed."""
        if isinstance(editor, QComboBox):
            model.setData(index, editor.currentText())
        else:
            super().setModelData(editor, model, index)
