"""A range of cells of the coat table: from the current cell to the end of a drag or of Shift."""

from __future__ import annotations

from PySide6.QtCore import QItemSelection, QItemSelectionModel, QRect, Qt
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import QTableView

from stainmap.app.coat_block import CellRange
from stainmap.model.zone import Area
from stainmap.ui.coat_model import CoatModel
from stainmap.ui.theme import tones


class CoatRange:
    """Knows which cells are chosen; typing goes to the current one, which is a corner of them."""

    def __init__(self, table: QTableView, model: CoatModel) -> None:
        self._table, self._model = table, model
        self._end: tuple[int, int] | None = None
        self.is_row = False
        """True while the name of an area is chosen instead of cells."""

    def collapse(self) -> None:
        """Choose the current cell alone."""
        self._end = None
        self._tell()

    def extend_to(self, row: int, column: int) -> None:
        """Choose all cells from the current one to another; titles are passed over."""
        if self._model.area_at(row) is None or not self._table.currentIndex().isValid():
            return
        self._end = (row, min(max(column, 0), self._model.columnCount() - 1))
        self._tell()
        self._table.scrollTo(self._model.index(*self._end))

    def extend_by(self, columns: int, rows: int) -> None:
        """Move the end of the range, over titles, no further than the table."""
        row, column = self.end
        areas = self._model.area_rows
        if row in areas:
            place = min(max(areas.index(row) + rows, 0), len(areas) - 1)
            self.extend_to(areas[place], column + columns)

    @property
    def end(self) -> tuple[int, int]:
        """Row and column of the corner opposite the current cell."""
        here = self._table.currentIndex()
        return (here.row(), here.column()) if self._end is None else self._end

    @property
    def is_large(self) -> bool:
        """True if more than one cell is chosen."""
        here = self._table.currentIndex()
        return self.end != (here.row(), here.column())

    @property
    def chosen(self) -> CellRange | None:
        """The range, titles left out; None without a current cell."""
        here, (row, column) = self._table.currentIndex(), self.end
        areas = self._model.area_rows
        if here.row() not in areas or row not in areas:
            return None
        top, bottom = sorted((areas.index(here.row()), areas.index(row)))
        left, right = sorted((here.column(), column))
        return CellRange(top=top, left=left, bottom=bottom, right=right)

    @property
    def cells(self) -> list[tuple[int, Area]]:
        """Step (from 0) and area of every cell in the range."""
        chosen, grid = self.chosen, self._model.grid
        if chosen is None:
            return []
        return [
            (step, area)
            for area, _ in grid.areas[chosen.top : chosen.bottom + 1]
            for step in range(chosen.left, chosen.right + 1)
        ]

    def holds(self, row: int, column: int) -> bool:
        """Return True if a cell belongs to a range of several."""
        here, (end_row, end_column) = self._table.currentIndex(), self.end
        top, bottom = sorted((here.row(), end_row))
        left, right = sorted((here.column(), end_column))
        return self.is_large and top <= row <= bottom and left <= column <= right

    def paint(self, painter: QPainter) -> None:
        """Draw a line round the range, if it is one, and the focus where no cell shows it."""
        if self._table.hasFocus() and (self.is_row or not self._model.columnCount()):
            self._frame_focus(painter)
        if not self.is_large:
            return
        row, column = self.end
        first = self._table.visualRect(self._table.currentIndex())
        last = self._table.visualRect(self._model.index(row, column))
        painter.setPen(QPen(QColor(tones(self._table).accent), 1.5))
        painter.drawRect(QRect(first.united(last)).adjusted(0, 0, -1, -1))

    def _frame_focus(self, painter: QPainter) -> None:
        """Draw the focus round a row, or round all there is."""
        room, here = self._table.viewport().rect(), self._table.currentIndex()
        if self._model.columnCount() and here.isValid():
            room.setTop(self._table.visualRect(here).top())
            room.setHeight(self._table.visualRect(here).height())
        painter.setPen(QPen(QColor(tones(self._table).accent), 2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawRoundedRect(room.adjusted(1, 1, -1, -1), 3, 3)

    def _tell(self) -> None:
        """Let Qt know, and with it whatever reads the screen aloud."""
        here, (row, column) = self._table.currentIndex(), self.end
        if here.isValid():
            corner = self._model.index(row, column)
            top = self._model.index(
                min(here.row(), corner.row()), min(here.column(), corner.column())
            )
            bottom = self._model.index(
                max(here.row(), corner.row()), max(here.column(), corner.column())
            )
            self._table.selectionModel().select(
                QItemSelection(top, bottom), QItemSelectionModel.SelectionFlag.ClearAndSelect
            )
        self._table.viewport().update()
