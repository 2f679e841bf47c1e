"""The coat table: the whole plan as numbers, typed or clicked."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QPoint, QSize, Qt, Signal
from PySide6.QtGui import (
    QFocusEvent,
    QKeyEvent,
    QKeySequence,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QLabel, QMenu, QTableView, QWidget

from stainmap.model.zone import Area
from stainmap.ui.coat_cells import CoatCell
from stainmap.ui.coat_entry import ALT, CTRL, SHIFT, CoatEntry, held_keys
from stainmap.ui.coat_headers import (
    AREA_HEAD_PX,
    ROW_PX,
    STEP_HEAD_PX,
    TITLE_PX,
    AreaHeader,
    StepHeader,
)
from stainmap.ui.coat_model import AreaRow, CoatModel, Index, StepColumn, corner_words
from stainmap.ui.coat_range import CoatRange
from stainmap.ui.marks import JarLook
from stainmap.ui.order_tag import OrderTag
from stainmap.ui.step_menu import step_menu
from stainmap.ui.theme import font
from stainmap.words import translate

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

    Keys: arrows, Tab, Home and End move, with Shift they choose a range; digits type a number or a
    span such as 2-3, Ctrl+Return puts it into all of the range; plus and minus change it by one;
    Delete clears it; L locks it or sets it free; Ctrl+C, Ctrl+X and Ctrl+V copy, cut and paste;
    Ctrl+Shift with Left or Right moves the step; Left from the first step chooses the area's name,
    which makes the brush paint that area; the menu key opens the step's menu.

    Signals
    -------
    coats_edited
        Step (from 0), area, CoatSpan or None.
    cells_edited
        A tuple of such cells that are one edit, and what it does, in words.
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
        A tuple of steps (from 0) and areas, and whether their coats are to stay when coats are
        suggested.
    step_dragged
        Step (from 0) and the place it would get while it is dragged; -1, -1 once it is not.
    refused
        A sentence about what was typed or pasted.
    said
        A sentence about what was done.
    """

    coats_edited = Signal(int, object, object)
    cells_edited = Signal(object, str)
    row_selected = Signal(object)
    cell_selected = Signal(int, object)
    step_add_requested = Signal(int, int)
    step_remove_requested = Signal(int)
    step_move_requested = Signal(int, int)
    step_jar_requested = Signal(int, int)
    lock_requested = Signal(object, bool)
    step_dragged = Signal(int, int)
    refused = Signal(str)
    said = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._model = CoatModel(self)
        self._range = CoatRange(self, self._model)
        self._cells = CoatCell(self, self._range)
        self.entry = CoatEntry(self._model, self._range, self)
        self._steps_head, self._areas_head = StepHeader(self), AreaHeader(self)
        self._jars: tuple[JarLook, ...] = ()
        self._quiet = False
        self.setModel(self._model)
        self.setItemDelegate(self._cells)
        self.setHorizontalHeader(self._steps_head)
        self.setVerticalHeader(self._areas_head)
        self.setAccessibleName(translate("coat table", "Coats by area and step"))
        self.setShowGrid(False)
        self.setFrameShape(QTableView.Shape.NoFrame)
        self.setCornerButtonEnabled(False)
        self.setTabKeyNavigation(False)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.DoubleClicked)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setHorizontalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setStyleSheet(
            "QTableView { background: transparent; selection-background-color: transparent; }"
            "QTableView:focus, QTableCornerButton::section { background: transparent; border: 0; }"
        )
        self._steps_head.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self._areas_head.setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self._corner = [self._corner_label(words) for words in corner_words()]
        self._corner[1].setAlignment(Qt.AlignmentFlag.AlignRight)
        self._order = OrderTag(self)
        self._model.modelReset.connect(self._range.collapse)
        self._model.edited.connect(self.coats_edited)
        self._model.refused.connect(self.refused)
        self.entry.coats_edited.connect(self.coats_edited)
        self.entry.cells_edited.connect(self.cells_edited)
        self.entry.lock_requested.connect(self.lock_requested)
        self.entry.refused.connect(self.refused)
        self.entry.said.connect(self.said)
        self._cells.left.connect(self._go)
        self._cells.filled.connect(self.entry.fill)
        self._areas_head.sectionClicked.connect(self._choose_row)
        self._steps_head.step_clicked.connect(self._choose_step)
        self._steps_head.step_dragged.connect(self._drag_step)
        self._steps_head.step_dropped.connect(self.move_step)
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
        self.setAccessibleDescription("" if steps or not areas else self._model.no_steps_yet)
        self._mark_row()
        self.updateGeometry()
        self.viewport().update()

    def select_cell(self, step: int, area: Area) -> None:
        """Make one cell the current one."""
        row = self._model.row_of(area)
        if row >= 0 and 0 <= step < self._model.columnCount():
            self._range.is_row = False
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
        self._range.collapse()
        self._mark_row()
        area = self._model.area_at(current.row())
        if area is not None and not self._quiet and not self._range.is_row:
            self.cell_selected.emit(current.column(), area)

    def _mark_row(self) -> None:
        area = self._area()
        self._cells.ring = not self._range.is_row
        self._cells.row_shown = -1 if area is None else self.currentIndex().row()
        self._areas_head.current = area
        self._steps_head.current = -1 if self._range.is_row else self.currentIndex().column()
        self._steps_head.viewport().update()
        self._areas_head.chosen = area if self._range.is_row else None
        self._areas_head.viewport().update()
        self.viewport().update()

    def _choose_row(self, row: int) -> None:
        area = self._model.area_at(row)
        if area is None:
            return
        self._range.is_row = True
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
            self._range.is_row = False
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
        elif self._range.is_row:
            if columns < 0:
                return
            column = 0
        elif column + columns < 0:
            self._choose_row(row)
            return
        else:
            column = min(column + columns, self._model.columnCount() - 1)
        if self._range.is_row and rows:
            self._choose_row(row)
            return
        leaves_name, self._range.is_row = self._range.is_row, False
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
        self._range.is_row = False
        self.setCurrentIndex(self._model.index(row, column))
        return True

    # --- keys and mouse ------------------------------------------------------------------

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Move, choose, type, clear, copy and paste."""
        if self._move_by_key(event) or self.entry.press(event) or self._type_by_key(event):
            return
        if event.key() == Qt.Key.Key_Escape and (self._steps_head.cancel() or self._range.is_large):
            self._range.collapse()
        else:
            event.ignore()

    def _move_by_key(self, event: QKeyEvent) -> bool:
        """Move, or choose a range with Shift; return False for any other key."""
        key, held = Qt.Key(event.key()), held_keys(event)
        arrow = _ARROWS.get(key)
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and held == {SHIFT}:
            self._go(0, -1)
        elif key in (Qt.Key.Key_Home, Qt.Key.Key_End) and not held - {CTRL, SHIFT}:
            self._jump(to_end=key == Qt.Key.Key_End, far=CTRL in held, extend=SHIFT in held)
        elif arrow is not None and held == {CTRL, SHIFT} and arrow[0]:
            step = self.currentIndex().column()
            self.move_step(step, step + arrow[0])
        elif arrow is not None and held == {SHIFT} and not self._range.is_row:
            self._range.extend_by(*arrow)
        elif arrow is not None and not held - {SHIFT}:
            self._go(*arrow)
        else:
            return False
        return True

    def _type_by_key(self, event: QKeyEvent) -> bool:
        """Begin to type; return False for any other key."""
        if event.matches(QKeySequence.StandardKey.SelectAll):
            self.select_all_cells()
        elif held_keys(event) & {CTRL, ALT}:
            return False
        elif event.key() == Qt.Key.Key_F2 and not self._range.is_row:
            self._open_editor(self.currentIndex())
        elif event.text().isdecimal():
            self._start_typing(event.text())
        else:
            return False
        return True

    def _jump(self, *, to_end: bool, far: bool, extend: bool) -> None:
        """Go to the first or last step, `far` to that of the first or last area."""
        areas = self._model.area_rows
        here = self._range.end if extend else (self.currentIndex().row(), 0)
        if not areas or not self._model.columnCount() or here[0] not in areas:
            return
        row = areas[-1 if to_end else 0] if far else here[0]
        column = self._model.columnCount() - 1 if to_end else 0
        if extend and not self._range.is_row:
            self._range.extend_to(row, column)
            return
        self._range.is_row = False
        self.setCurrentIndex(self._model.index(row, column))
        self._mark_row()

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
        """Leave the name for a cell that is clicked; with Shift, choose all cells up to it."""
        index = self.indexAt(event.position().toPoint())
        area = self._model.area_at(index.row()) if index.isValid() else None
        if event.modifiers() == SHIFT and area is not None and not self._range.is_row:
            self._range.extend_to(index.row(), index.column())
            return
        if area is not None and self._range.is_row:
            self._range.is_row = False
            if index == self.currentIndex():
                self.cell_selected.emit(index.column(), area)
        super().mousePressEvent(event)
        if area is not None:
            self._range.collapse()
        self._mark_row()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Choose a range while the button is held down."""
        if not event.buttons() & Qt.MouseButton.LeftButton:
            super().mouseMoveEvent(event)
            return
        index = self.indexAt(event.position().toPoint())
        if index.isValid() and not self._range.is_row:
            self._range.extend_to(index.row(), index.column())

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the cells, and a line round those that are chosen."""
        super().paintEvent(event)
        painter = QPainter(self.viewport())
        self._range.paint(painter)
        if self._model.rowCount() and not self._model.columnCount():
            painter.setFont(font(13))
            painter.setPen(self.palette().color(QPalette.ColorRole.PlaceholderText))
            room = self.viewport().rect().adjusted(12, TITLE_PX, -8, 0)
            painter.drawText(room, int(Qt.TextFlag.TextWordWrap), self._model.no_steps_yet)
        painter.end()

    def select_all_cells(self) -> None:
        """Choose all cells."""
        areas = self._model.area_rows
        if areas and self._model.columnCount():
            self._range.is_row = False
            self.setCurrentIndex(self._model.index(areas[0], 0))
            self._range.extend_to(areas[-1], self._model.columnCount() - 1)
            self._mark_row()

    def _start_typing(self, text: str) -> None:
        index = self.currentIndex()
        if self._range.is_row or not index.isValid():
            return
        self._open_editor(index)
        if self._cells.editor is not None:
            self._cells.editor.insert(text)

    def _open_editor(self, index: Index) -> None:
        """Open a cell to be typed into, unless one is open or it is none."""
        if index.flags() & Qt.ItemFlag.ItemIsEditable and self.state() != self.State.EditingState:
            self.edit(index)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Spread the columns and keep the corner's words in the corner."""
        super().resizeEvent(event)
        self._fit_columns()
        for label in self._corner:
            label.setGeometry(0, STEP_HEAD_PX - 18, AREA_HEAD_PX - 10, 16)
            label.raise_()

    # --- steps -------------------------------------------------------------------------

    def contextMenuEvent(self, _event: object) -> None:
        """Open the menu of the current step at the keyboard's or mouse's place."""
        step = self.currentIndex().column()
        if step >= 0:
            place = self.visualRect(self.currentIndex()).bottomLeft()
            self.step_menu(step).popup(self.viewport().mapToGlobal(place))

    def show_order(self, step: int | None, to: int, change: str) -> None:
        """Say beside a step that is dragged what its place would change; None hides that."""
        head = self._steps_head
        x = AREA_HEAD_PX + head.sectionViewportPosition(to) + head.sectionSize(to) // 2
        self._order.show_at(QPoint(x, STEP_HEAD_PX + 2), step, to, change)

    def _drag_step(self, step: int, to: int) -> None:
        """Take the keyboard while a step is dragged, so that Esc lets go of it."""
        self.setFocus()
        self.step_dragged.emit(step, to)

    def _menu_at_head(self, place: QPoint) -> None:
        step = self._steps_head.logicalIndexAt(place)
        if step >= 0:
            self.step_menu(step).popup(self._steps_head.mapToGlobal(place))

    def step_menu(self, step: int) -> QMenu:
        """Return the menu of a step."""
        return step_menu(self, step)

    @property
    def jars(self) -> tuple[JarLook, ...]:
        """The jars on the tray."""
        return self._jars

    @property
    def columns(self) -> tuple[StepColumn, ...]:
        """What is shown of the steps."""
        return self._model.steps

    def move_step(self, step: int, to: int) -> None:
        """Ask for a step to be painted at another place in the order; the choice goes with it."""
        area = self._area()
        if step == to or not 0 <= to < len(self.columns):
            return
        self.step_move_requested.emit(step, to)
        if area is not None and not self._range.is_row:
            self.select_cell(to, area)
