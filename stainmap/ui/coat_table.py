"""The coat table: the whole plan as numbers, typed or clicked."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPoint, QSize, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QLabel, QMenu, QTableView, QWidget

from stainmap.model.plan import MAX_COATS, CoatSpan
from stainmap.model.zone import Area
from stainmap.ui.coat_cells import CoatCell
from stainmap.ui.coat_headers import (
    AREA_HEAD_PX,
    ROW_PX,
    STEP_HEAD_PX,
    TITLE_PX,
    AreaHeader,
    StepHeader,
)
from stainmap.ui.coat_model import AreaRow, CoatModel, Index, StepColumn
from stainmap.ui.marks import JarLook
from stainmap.ui.theme import font

_NARROWEST_PX, _WIDEST_PX = 36, 56
_SCROLL_PX = 10
_ARROWS = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Down: (0, 1),
    Qt.Key.Key_Return: (0, 1),
    Qt.Key.Key_Enter: (0, 1),
}


class CoatTable(QTableView):
    """Areas down, steps across, coats in the cells.

    Keys: arrows and Tab move; digits type a number or a span such as 2-3; plus and minus change
    it by one; Delete clears it; L locks it or sets it free; Left from the first step chooses the
    area's name, which makes the brush paint that area; the menu key opens the step's menu.

    Signals
    -------
    coats_edited
        Step (from 0), area, CoatSpan or None.
    row_selected
        Area whose name was chosen.
    cell_selected
        Step (from 0), area.
    step_add_requested, step_remove_requested
        Where the new step goes and the number of its jar; which step to remove.
    step_move_requested
        Step and its new position.
    step_jar_requested
        Step and the number of its new jar.
    lock_requested
        Step (from 0), area, whether its coats are to stay when coats are suggested.
    refused
        A sentence about what was typed.
    """

    coats_edited = Signal(int, object, object)
    row_selected = Signal(object)
    cell_selected = Signal(int, object)
    step_add_requested = Signal(int, int)
    step_remove_requested = Signal(int)
    step_move_requested = Signal(int, int)
    step_jar_requested = Signal(int, int)
    lock_requested = Signal(int, object, bool)
    refused = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = CoatModel(self)
        self._cells = CoatCell(self)
        self._steps_head, self._areas_head = StepHeader(self), AreaHeader(self)
        self._jars: tuple[JarLook, ...] = ()
        self._row_chosen = False
        self._quiet = False
        self.setModel(self._model)
        self.setItemDelegate(self._cells)
        self.setHorizontalHeader(self._steps_head)
        self.setVerticalHeader(self._areas_head)
        self.setAccessibleName("Coats by area and step")
        self.setShowGrid(False)
        self.setFrameShape(QTableView.Shape.NoFrame)
        self.setCornerButtonEnabled(False)
        self.setTabKeyNavigation(False)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.DoubleClicked)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setStyleSheet(
            "QTableView { background: transparent; }"
            "QTableCornerButton::section { background: transparent; border: 0; }"
        )
        self._steps_head.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self._areas_head.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self._corner = [self._corner_label("area"), self._corner_label("step")]
        self._corner[1].setAlignment(Qt.AlignmentFlag.AlignRight)
        self._model.edited.connect(self.coats_edited)
        self._model.refused.connect(self.refused)
        self._cells.left.connect(self._go)
        self._areas_head.sectionClicked.connect(self._choose_row)
        self._steps_head.sectionClicked.connect(self._choose_step)
        self._steps_head.customContextMenuRequested.connect(self._menu_at_head)

    def _corner_label(self, word: str) -> QLabel:
        label = QLabel(word, self)
        label.setFont(font(11))
        label.setForegroundRole(label.palette().ColorRole.PlaceholderText)
        label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
        return label

    # --- what is shown -------------------------------------------------------------------

    def set_plan(
        self, areas: Sequence[AreaRow], steps: Sequence[StepColumn], jars: Sequence[JarLook]
    ) -> None:
        """Show a plan: its areas, its steps in painting order, and the jars on the tray."""
        area, column = self._area(), self.currentIndex().column()
        self._jars = tuple(jars)
        self._quiet = True
        self._model.set_plan(areas, steps)
        for row in range(self._model.rowCount()):
            height = TITLE_PX if self._model.area_at(row) is None else ROW_PX
            self._areas_head.resizeSection(row, height)
        self._fit_columns()
        if not self.currentIndex().isValid() and self._model.columnCount():
            row = self._model.row_of(area) if area is not None else -1
            column = min(max(column, 0), self._model.columnCount() - 1)
            if row >= 0:
                self.setCurrentIndex(self._model.index(row, column))
        self._quiet = False
        self._mark_row()
        self.updateGeometry()
        self.viewport().update()

    def select_cell(self, step: int, area: Area) -> None:
        """Make one cell the current one."""
        row = self._model.row_of(area)
        if row >= 0 and 0 <= step < self._model.columnCount():
            self._row_chosen = False
            self.setCurrentIndex(self._model.index(row, step))
            self._mark_row()

    def select_row(self, area: Area) -> None:
        """Choose an area by its name."""
        row = self._model.row_of(area)
        if row >= 0:
            self._choose_row(row)

    def sizeHint(self) -> QSize:
        """Return the room all rows need; columns scroll."""
        rows = sum(
            TITLE_PX if self._model.area_at(row) is None else ROW_PX
            for row in range(self._model.rowCount())
        )
        scroll = _SCROLL_PX if self._scrolls() else 0
        return QSize(404, STEP_HEAD_PX + rows + scroll)

    def minimumSizeHint(self) -> QSize:
        """Return the same height: rows are never hidden."""
        return QSize(AREA_HEAD_PX + 3 * _NARROWEST_PX, self.sizeHint().height())

    def _scrolls(self) -> bool:
        room = self.width() - AREA_HEAD_PX
        return self._model.columnCount() * _NARROWEST_PX > room

    def _fit_columns(self) -> None:
        count = self._model.columnCount()
        if count:
            room = (self.width() - AREA_HEAD_PX) // count
            width = min(max(room, _NARROWEST_PX), _WIDEST_PX)
            for column in range(count):
                self._steps_head.resizeSection(column, width)
        self.setFixedHeight(self.sizeHint().height())

    # --- choosing ------------------------------------------------------------------------

    def _area(self) -> Area | None:
        return self._model.area_at(self.currentIndex().row())

    def currentChanged(self, current: Index, previous: Index) -> None:
        """Tell which cell is current now."""
        super().currentChanged(current, previous)
        self._mark_row()
        area = self._model.area_at(current.row())
        if area is not None and not self._quiet and not self._row_chosen:
            self.cell_selected.emit(current.column(), area)

    def _mark_row(self) -> None:
        area = self._area()
        self._cells.ring = not self._row_chosen
        self._cells.row_shown = -1 if area is None else self.currentIndex().row()
        self._areas_head.current = area
        self._steps_head.current = -1 if self._row_chosen else self.currentIndex().column()
        self._steps_head.viewport().update()
        self._areas_head.chosen = area if self._row_chosen else None
        self._areas_head.viewport().update()
        self.viewport().update()

    def _choose_row(self, row: int) -> None:
        area = self._model.area_at(row)
        if area is None:
            return
        self._row_chosen = True
        if self._model.columnCount():
            column = max(self.currentIndex().column(), 0)
            self.setCurrentIndex(self._model.index(row, column))
        self._mark_row()
        self.setFocus()
        self.row_selected.emit(area)

    def _choose_step(self, step: int) -> None:
        area = self._area()
        row = self._model.row_of(area) if area is not None else self._next_row(-1, 1)
        if row >= 0:
            self._row_chosen = False
            self.setCurrentIndex(self._model.index(row, step))
            self._mark_row()
            self.setFocus()

    def _next_row(self, row: int, way: int) -> int:
        """Return the next row that is an area, or -1."""
        row += way
        while 0 <= row < self._model.rowCount():
            if self._model.area_at(row) is not None:
                return row
            row += way
        return -1

    def _go(self, columns: int, rows: int) -> None:
        """Move the current cell; Left from the first step goes to the name."""
        current = self.currentIndex()
        row, column = current.row(), current.column()
        if rows:
            row = self._next_row(row, rows)
            if row < 0:
                return
        elif self._row_chosen:
            if columns < 0:
                return
            column = 0
        elif column + columns < 0:
            self._choose_row(row)
            return
        else:
            column = min(column + columns, self._model.columnCount() - 1)
        if self._row_chosen and rows:
            self._choose_row(row)
            return
        leaves_name, self._row_chosen = self._row_chosen, False
        self.setCurrentIndex(self._model.index(row, column))
        self._mark_row()
        area = self._area()
        if leaves_name and area is not None and self.currentIndex() == current:
            self.cell_selected.emit(column, area)

    def _tab(self, way: int) -> bool:
        """Move on by one cell, over the ends of rows; return False at either end of the table."""
        current = self.currentIndex()
        row, column = current.row(), current.column() + way
        if not 0 <= column < self._model.columnCount():
            row = self._next_row(row, way)
            column = 0 if way > 0 else self._model.columnCount() - 1
        if row < 0 or not current.isValid():
            return False
        self._row_chosen = False
        self.setCurrentIndex(self._model.index(row, column))
        return True

    # --- keys and mouse ------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move, type, clear, or open the step's menu."""
        key = Qt.Key(event.key())
        plain = not event.modifiers() & (
            Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
        )
        if plain and key in _ARROWS:
            self._go(*_ARROWS[key])
        elif plain and key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self._type("")
        elif plain and event.text() in ("+", "-"):
            self._change_by(1 if event.text() == "+" else -1)
        elif plain and event.text().casefold() == "l":
            self._turn_lock()
        elif plain and event.text().isdecimal():
            self._start_typing(event.text())
        elif key == Qt.Key.Key_F2 and not self._row_chosen:
            self.edit(self.currentIndex())
        else:
            event.ignore()

    def focusNextPrevChild(self, forward: bool) -> bool:
        """Tab walks the cells first, and leaves the table after the last one."""
        if self.hasFocus() and self._tab(1 if forward else -1):
            return True
        return super().focusNextPrevChild(forward)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Have a current cell as soon as the keyboard arrives."""
        super().focusInEvent(event)
        if not self.currentIndex().isValid() and self._model.columnCount():
            row = self._next_row(-1, 1)
            if row >= 0:
                self.setCurrentIndex(self._model.index(row, 0))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Leave the name for a cell that is clicked."""
        index = self.indexAt(event.position().toPoint())
        area = self._model.area_at(index.row()) if index.isValid() else None
        if area is not None and self._row_chosen:
            self._row_chosen = False
            if index == self.currentIndex():
                self.cell_selected.emit(index.column(), area)
        super().mousePressEvent(event)
        self._mark_row()

    def _type(self, text: str) -> None:
        if not self._row_chosen and self.currentIndex().isValid():
            self._model.setData(self.currentIndex(), text)

    def _change_by(self, coats: int) -> None:
        area = self._area()
        if area is None or self._row_chosen:
            return
        span = self._model.steps[self.currentIndex().column()].coats.get(area)
        low, high = (0, 0) if span is None else (span.low, span.high)
        low, high = (min(max(end + coats, 0), MAX_COATS) for end in (low, high))
        self._model.setData(self.currentIndex(), str(CoatSpan(low=low, high=high)))

    def _turn_lock(self) -> None:
        """Lock the coats of the current cell, or set them free; say so where there are none."""
        area, column = self._area(), self.currentIndex().column()
        if area is None or self._row_chosen:
            return
        step = self._model.steps[column]
        if area in step.coats:
            self.lock_requested.emit(column, area, area not in step.locked)
        else:
            self.refused.emit("There are no coats of their own to lock in this cell.")

    def _start_typing(self, text: str) -> None:
        index = self.currentIndex()
        if self._row_chosen or not index.isValid():
            return
        self.edit(index)
        if self._cells.editor is not None:
            self._cells.editor.setText(text)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Spread the columns and keep the corner's words in the corner."""
        super().resizeEvent(event)
        self._fit_columns()
        for label in self._corner:
            label.setGeometry(0, STEP_HEAD_PX - 18, AREA_HEAD_PX - 10, 16)
            label.raise_()

    # --- the step's menu -----------------------------------------------------------------

    def contextMenuEvent(self, _event: object) -> None:
        """Open the menu of the current step at the keyboard's or mouse's place."""
        step = self.currentIndex().column()
        if step >= 0:
            place = self.visualRect(self.currentIndex()).bottomLeft()
            self.step_menu(step).popup(self.viewport().mapToGlobal(place))

    def _menu_at_head(self, place: QPoint) -> None:
        step = self._steps_head.logicalIndexAt(place)
        if step >= 0:
            self.step_menu(step).popup(self._steps_head.mapToGlobal(place))

    def step_menu(self, step: int) -> QMenu:
        """Return the menu of a step: add, remove, move, change its jar."""
        menu = QMenu(f"Step {step + 1}", self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        jar_now = self._model.steps[step].jar.number
        add = menu.addAction("Add a step after this one")
        add.triggered.connect(lambda: self.step_add_requested.emit(step + 1, jar_now))
        remove = menu.addAction("Remove this step")
        remove.triggered.connect(lambda: self.step_remove_requested.emit(step))
        area = self._area()
        if area is not None and area in self._model.steps[step].coats:
            locked = area in self._model.steps[step].locked
            lock = menu.addAction("Set these coats free" if locked else "Lock these coats")
            lock.triggered.connect(lambda: self.lock_requested.emit(step, area, not locked))
        menu.addSeparator()
        left = menu.addAction("Paint it earlier")
        left.setEnabled(step > 0)
        left.triggered.connect(lambda: self.step_move_requested.emit(step, step - 1))
        right = menu.addAction("Paint it later")
        right.setEnabled(step + 1 < len(self._model.steps))
        right.triggered.connect(lambda: self.step_move_requested.emit(step, step + 1))
        jars = menu.addMenu("Take it from")
        for jar in self._jars:
            action = jars.addAction(f"jar {jar.number}, {jar.liquid}")
            action.setCheckable(True)
            action.setChecked(jar.number == jar_now)
            action.triggered.connect(
                lambda _checked, number=jar.number: self.step_jar_requested.emit(step, number)
            )
        return menu
