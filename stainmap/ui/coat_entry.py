"""What is done to the chosen cells of the coat table: typed, cleared, locked, copied and pasted."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QGuiApplication, QKeyEvent, QKeySequence

from stainmap.app.coat_block import CellRange, CoatCell, block_text, pasted_cells
from stainmap.errors import PlanError
from stainmap.model.plan import MAX_COATS, CoatSpan
from stainmap.model.zone import Area
from stainmap.ui.coat_model import CoatModel
from stainmap.ui.coat_range import CoatRange
from stainmap.words import translate

CTRL, SHIFT, ALT = (
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.AltModifier,
)


def held_keys(event: QKeyEvent) -> set[Qt.KeyboardModifier]:
    """Return which of Ctrl, Shift and Alt are held down."""
    return {key for key in (CTRL, SHIFT, ALT) if event.modifiers() & key}


class CoatEntry(QObject):
    """Turns what is done to the chosen cells into edits; every one is one step of undo.

    Signals
    -------
    coats_edited, cells_edited, lock_requested, refused, said
        As of `CoatTable`.
    """

    coats_edited = Signal(int, object, object)
    cells_edited = Signal(object, str)
    lock_requested = Signal(object, bool)
    refused = Signal(str)
    said = Signal(str)

    def __init__(self, model: CoatModel, chosen: CoatRange, parent: QObject) -> None:
        super().__init__(parent)
        self._model, self._range = model, chosen

    def press(self, event: QKeyEvent) -> bool:
        """Do what a key does to the chosen cells; return False for any other key."""
        key, standard = Qt.Key(event.key()), QKeySequence.StandardKey
        if event.matches(standard.Copy):
            self.copy()
        elif key == Qt.Key.Key_C and held_keys(event) == {CTRL, SHIFT}:
            self.copy(heads=True)
        elif event.matches(standard.Cut):
            self.cut()
        elif event.matches(standard.Paste):
            self.paste()
        elif held_keys(event) & {CTRL, ALT}:
            return False
        elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.clear()
        elif event.text() in {"+", "-"}:
            self.change_by(1 if event.text() == "+" else -1)
        elif event.text().casefold() == "l":
            self.turn_lock()
        else:
            return False
        return True

    def _coats_of(self, step: int, area: Area) -> CoatSpan | None:
        return self._model.steps[step].coats.get(area)

    def _edit(self, cells: Sequence[CoatCell], what: str) -> None:
        """Ask for one edit of several cells, if it changes any; `what` says so of {count} cells."""
        new = tuple(cell for cell in cells if cell[2] != self._coats_of(cell[0], cell[1]))
        if len(new) == 1:
            self.coats_edited.emit(*new[0])
        elif new:
            self.cells_edited.emit(new, what.format(count=len(new)))

    def clear(self) -> None:
        """Clear the chosen cells."""
        if not self._range.is_row:
            self._edit(
                [(step, area, None) for step, area in self._range.cells],
                translate("coat entry", "clear {count} cells"),
            )

    def fill(self, text: str) -> None:
        """Put what was typed into all cells of the range."""
        try:
            span = CoatSpan.parse(text) if text else None
        except PlanError as error:
            self.refused.emit(str(error))
            return
        span = span if span is not None and span.high else None
        self._edit(
            [(step, area, span) for step, area in self._range.cells],
            translate("coat entry", "{coats} coats in {count} cells").replace("{coats}", text),
        )

    def change_by(self, coats: int) -> None:
        """Put more coats into the chosen cells, or fewer, at both ends of spans."""
        if self._range.is_row:
            return
        cells: list[CoatCell] = []
        for step, area in self._range.cells:
            span = self._coats_of(step, area)
            if span is None and self._range.is_large:
                continue  # what is bare stays bare among others
            low, high = (0, 0) if span is None else (span.low, span.high)
            low, high = (min(max(end + coats, 0), MAX_COATS) for end in (low, high))
            cells.append((step, area, CoatSpan(low=low, high=high) if high else None))
        self._edit(
            cells,
            translate("coat entry", "a coat more in {count} cells")
            if coats > 0
            else translate("coat entry", "a coat fewer in {count} cells"),
        )

    @property
    def lockable(self) -> tuple[tuple[tuple[int, Area], ...], bool]:
        """Cells of the range with coats of their own, and whether all of them are locked."""
        own = [] if self._range.is_row else self._range.cells
        own = [(step, area) for step, area in own if self._coats_of(step, area) is not None]
        return tuple(own), all(area in self._model.steps[step].locked for step, area in own)

    def turn_lock(self) -> None:
        """Lock the coats of the chosen cells, or set them free; say so where there are none."""
        cells, locked = self.lockable
        if cells:
            self.lock_requested.emit(cells, not locked)
        elif not self._range.is_row:
            self.refused.emit(
                translate("coat entry", "There are no coats of their own to lock here.")
            )

    # --- copy and paste ------------------------------------------------------------------

    def _block(self) -> CellRange | None:
        """Return the chosen range; of a name that is chosen, all steps of its area."""
        chosen = self._range.chosen
        if chosen is None or not self._range.is_row:
            return chosen
        return CellRange(
            top=chosen.top, left=0, bottom=chosen.top, right=self._model.columnCount() - 1
        )

    def copy(self, *, heads: bool = False) -> bool:
        """Copy the chosen coats as text that spreadsheets take; return False without any."""
        block = self._block()
        if block is None:
            self.refused.emit(translate("coat entry", "No cell of the coat table is chosen."))
            return False
        QGuiApplication.clipboard().setText(block_text(self._model.grid, block, heads=heads))
        count = block.height * block.width
        self.said.emit(
            translate("coat entry", "Copied the coats of one cell.")
            if count == 1
            else translate("coat entry", "Copied {count} cells.").format(count=count)
        )
        return True

    def cut(self) -> None:
        """Copy the chosen coats, then clear them."""
        block = self._block()
        if block is None or not self.copy():
            return
        areas = self._model.grid.areas[block.top : block.bottom + 1]
        steps = range(block.left, block.right + 1)
        self._edit(
            [(step, area, None) for area, _ in areas for step in steps],
            translate("coat entry", "cut {count} cells"),
        )

    def paste(self) -> None:
        """Put the text of the clipboard into the table: all of it, or a sentence about why not."""
        block = self._block()
        if block is None:
            self.refused.emit(translate("coat entry", "No cell of the coat table is chosen."))
            return
        try:
            cells = pasted_cells(QGuiApplication.clipboard().text(), self._model.grid, block)
        except PlanError as error:
            self.refused.emit(str(error))
            return
        self._edit(cells, translate("coat entry", "paste into {count} cells"))
