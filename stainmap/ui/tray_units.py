"""The units of a tray as a list: how far each is, told by words and by a mark without colour."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPen
from PySide6.QtWidgets import (
    QAbstractItemView,
    QHeaderView,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QTreeWidget,
    QTreeWidgetItem,
    QWidget,
)

from stainmap.planning.unit_state import SheetStanding, UnitStage, UnitState
from stainmap.ui.coat_model import Index
from stainmap.ui.marks import paint_caution
from stainmap.ui.theme import font, tones
from stainmap.words import marked, translate

HEADS = (
    marked("tray units", "state"),
    marked("tray units", "case"),
    marked("tray units", "units"),
    marked("tray units", "block"),
    marked("tray units", "programme"),
    marked("tray units", "sheet"),
    marked("tray units", "file"),
)
_STATE, _SHEET = 0, 5
# Lying, not standing: narrow ones pass for letters that a typeface lacks.
_BOXES, _BOX_PX, _GAP_PX, _BOX_HEIGHT_PX = 5, 10.0, 1.5, 8.0
_MARK_PX = 64
_ROW_PX = 28
_STATE_ROLE = Qt.ItemDataRole.UserRole + 1


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitRow:
    """One case on the tray, as the list shows it.

    Parameters
    ----------
    path
        Its file.
    code, teeth, block, programme
        As they stand on its sheets; empty but for the code where the case could not be read.
    state
        None where it could not be read, or is left out.
    is_open
        True for the case that is open in the window.
    """

    path: Path
    code: str
    teeth: str = ""
    block: str = ""
    programme: str = ""
    state: UnitState | None = None
    is_open: bool = False

    @property
    def cells(self) -> tuple[str, ...]:
        """What stands in the columns."""
        state = self.state
        name = (
            translate("tray units", "{name} (open)").format(name=self.path.name)
            if self.is_open
            else self.path.name
        )
        if state is None:
            return (translate("tray units", "left out"), self.code or "?", "", "", "", "", name)
        words = (
            translate("tray units", "{state}; changed since").format(state=state.words)
            if state.changed_since
            else state.words
        )
        return (
            words,
            self.code,
            self.teeth,
            self.block,
            self.programme,
            state.sheet_words,
            name,
        )

    @property
    def remark(self) -> str:
        """What is said of it when it is pointed at."""
        state = self.state
        if state is None:
            return translate(
                "tray units",
                "This case is left out; the remarks below say why. It stays on the tray.",
            )
        said = [state.open_reason]
        if state.changed_since:
            said.append(
                translate("tray units", "The plan was changed after this state was marked.")
            )
        if state.sheet is SheetStanding.OLDER:
            said.append(
                translate(
                    "tray units",
                    "The plan is newer than revision {revision}, which was printed last: print the "
                    "sheets again.",
                ).format(revision=state.revision)
            )
        return " ".join(text for text in said if text)


class TrayUnits(QTreeWidget):
    """A row per case. Return or a double click asks to open it, Delete to take it off.

    Signals
    -------
    open_asked
        File of a case that is to be opened in the window.
    off_asked
        The chosen cases are to be taken off.
    """

    open_asked = Signal(object)
    off_asked = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("tray units", "Cases on the tray"))
        self.setHeaderLabels([translate("tray units", head) for head in HEADS])
        self.setRootIsDecorated(False)
        self.setUniformRowHeights(True)
        self.setAllColumnsShowFocus(True)
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setItemDelegate(_UnitDelegate(self))
        self.setIndentation(0)
        head = self.header()
        head.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        head.setStretchLastSection(True)
        head.setFont(font(11))
        head.setStyleSheet(
            "QHeaderView { background: transparent; }"
            "QHeaderView::section { background: transparent; border: 0; padding: 4px 6px; }"
        )
        head.setDefaultAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter)
        self.itemActivated.connect(lambda item: self.open_asked.emit(self._rows_of(item).path))
        self.rows: tuple[UnitRow, ...] = ()

    def set_rows(self, rows: Sequence[UnitRow]) -> None:
        """Show other rows; what was chosen stays chosen where it still is."""
        chosen = set(self.chosen)
        here = self.currentIndex().row()
        self.rows = tuple(rows)
        self.clear()
        for row in rows:
            item = QTreeWidgetItem(list(row.cells))
            item.setData(_STATE, _STATE_ROLE, row.state)
            item.setToolTip(_STATE, row.remark)
            item.setToolTip(_SHEET, row.remark)
            item.setToolTip(len(HEADS) - 1, str(row.path))
            item.setData(
                _STATE, Qt.ItemDataRole.AccessibleTextRole, f"{', '.join(row.cells)}. {row.remark}"
            )
            if row.is_open:
                for column in range(len(HEADS)):
                    item.setFont(column, font(13, 600))
            self.addTopLevelItem(item)
            item.setSelected(row.path in chosen)
        if rows:
            place = self.model().index(min(max(here, 0), len(rows) - 1), 0)
            # What is marked as the current row is what the buttons are for.
            flag = self.selectionModel().SelectionFlag
            keeps = bool(self.chosen)
            self.selectionModel().setCurrentIndex(
                place, flag.NoUpdate if keeps else flag.ClearAndSelect | flag.Rows
            )

    @property
    def chosen(self) -> tuple[Path, ...]:
        """Files of the chosen cases, from top to bottom."""
        return tuple(
            self.rows[index].path
            for index in range(self.topLevelItemCount())
            if (item := self.topLevelItem(index)) is not None and item.isSelected()
        )

    def _rows_of(self, item: QTreeWidgetItem) -> UnitRow:
        return self.rows[self.indexOfTopLevelItem(item)]

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Open with Return, take off with Delete."""
        item = self.currentItem()
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and item is not None:
            self.open_asked.emit(self._rows_of(item).path)
        elif event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.off_asked.emit()
        else:
            super().keyPressEvent(event)


class _UnitDelegate(QStyledItemDelegate):
    """Draws five boxes before the words of a state: filled as far as the bench is done."""

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draw a cell, with a mark before state and sheet where there is one."""
        state = index.data(_STATE_ROLE) if index.column() == _STATE else None
        older = index.column() == _SHEET and _older(index)
        shift = _MARK_PX if index.column() == _STATE else 18 if older else 0
        self._paint_words(painter, option, index, shift)
        y = option.rect.center().y() + 0.5
        if isinstance(state, UnitState):
            painter.save()
            paint_state(painter, QPointF(option.rect.x() + 8.0, y), state.stage, self.parent())
            painter.restore()
        if older:
            painter.save()
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            mark = QRectF(option.rect.x() + 6.0, y - 6.0, 12.0, 12.0)
            paint_caution(painter, mark, tones(_widget(self.parent())))
            painter.restore()

    def _paint_words(
        self, painter: QPainter, option: QStyleOptionViewItem, index: Index, shift: int
    ) -> None:
        moved = QStyleOptionViewItem(option)
        self.initStyleOption(moved, index)
        view = _widget(self.parent())
        style = view.style() if view is not None else None
        if style is None:
            return
        words, moved.text = moved.text, ""
        style.drawControl(style.ControlElement.CE_ItemViewItem, moved, painter, view)
        painter.save()
        painter.setFont(moved.font)
        painter.setPen(QColor(tones(view).ink))
        room = option.rect.adjusted(6 + shift, 0, -4, 0)
        text = painter.fontMetrics().elidedText(words, Qt.TextElideMode.ElideRight, room.width())
        painter.drawText(
            room, int(Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft), text
        )
        painter.restore()

    def sizeHint(self, option: QStyleOptionViewItem, index: Index) -> QSize:
        """Return the room of words and mark."""
        size = super().sizeHint(option, index)
        shift = _MARK_PX if index.column() == _STATE else 18 if index.column() == _SHEET else 0
        return QSize(size.width() + shift + 12, max(size.height(), _ROW_PX))


def paint_state(painter: QPainter, left: QPointF, stage: UnitStage, widget: object = None) -> None:
    """Draw five boxes, a stage of the bench each: filled if done; dotted around a draft."""
    t = tones(_widget(widget))
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for box in range(_BOXES):
        x = left.x() + box * (_BOX_PX + _GAP_PX)
        rect = QRectF(x + 0.5, left.y() - _BOX_HEIGHT_PX / 2.0, _BOX_PX - 1.0, _BOX_HEIGHT_PX - 1)
        pen = QPen(QColor(t.soft), 1.0)
        if stage is UnitStage.DRAFT:
            pen.setStyle(Qt.PenStyle.DotLine)
        painter.setPen(pen)
        painter.setBrush(QColor(t.ink) if box < stage.bench_done else Qt.BrushStyle.NoBrush)
        painter.drawRect(rect)


def _older(index: Index) -> bool:
    state = index.sibling(index.row(), _STATE).data(_STATE_ROLE)
    return isinstance(state, UnitState) and state.sheet is SheetStanding.OLDER


def _widget(owner: object) -> QWidget | None:
    return owner if isinstance(owner, QWidget) else None
