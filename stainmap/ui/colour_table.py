"""A small table of areas with swatches and figures, for dialogs."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QLabel, QWidget

from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font


class Swatches(QWidget):
    """Colours that touch, without border or gap."""

    def __init__(self, colours: Sequence[str], name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._colours = tuple(colours)
        self.setAccessibleName(name)
        self.setFixedSize(QSize(30 * len(self._colours), 24))

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill one field after another."""
        painter = QPainter(self)
        width = self.width() / len(self._colours)
        for k, colour in enumerate(self._colours):
            painter.fillRect(QRectF(k * width, 0, width, self.height()), QColor(colour))
        painter.end()


Cell = str | Swatches


class ColourTable(QWidget):
    """Rows of texts and swatches under heads; texts after the first column stand at the right."""

    def __init__(self, heads: Sequence[str], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(18)
        self._grid.setVerticalSpacing(6)
        self._grid.setColumnStretch(0, 1)
        for column, head in enumerate(heads):
            label = SoftLabel(head, 11)
            if column:
                label.setAlignment(Qt.AlignmentFlag.AlignRight)
            self._grid.addWidget(label, 0, column)
        self._cells: list[QWidget] = []

    def set_rows(self, rows: Sequence[Sequence[Cell]]) -> None:
        """Show other rows."""
        for cell in self._cells:
            self._grid.removeWidget(cell)
            cell.deleteLater()
        self._cells = []
        right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        for number, row in enumerate(rows, start=1):
            for column, entry in enumerate(row):
                if isinstance(entry, Swatches):
                    self._grid.addWidget(entry, number, column, right)
                    self._cells.append(entry)
                    continue
                label = QLabel(entry)
                label.setFont(font(13, 500 if column == 0 else 400))
                if column:
                    label.setAlignment(right)
                self._grid.addWidget(label, number, column)
                self._cells.append(label)

    @property
    def texts(self) -> list[str]:
        """What the cells say, row after row."""
        return [
            cell.text() if isinstance(cell, QLabel) else cell.accessibleName()
            for cell in self._cells
        ]
