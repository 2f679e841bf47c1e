"""The list of steps with a small picture each: where the case stands, and what was undone."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import (
    QAbstractListModel,
    QModelIndex,
    QPersistentModelIndex,
    QRectF,
    QSize,
    Qt,
    Signal,
)
from PySide6.QtGui import QColor, QImage, QKeyEvent, QPainter, QPalette, QPen, QPixmap
from PySide6.QtWidgets import (
    QAbstractItemView,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QVBoxLayout,
    QWidget,
)

from stainmap.ui.marks import Align, paint_text, text_width
from stainmap.ui.section import PADDING, SectionHead, SoftLabel
from stainmap.ui.theme import SURROUND, tones
from stainmap.words import marked, translate

PICTURE_PX = QSize(76, 60)
# Pictures are made this much larger, for screens of double density.
PICTURE_SCALE = 2
_ROW_PX, _GAP_PX = 68, 10
_UNDONE_OPACITY = 0.4
_STEP_ROLE = int(Qt.ItemDataRole.UserRole)
Index = QModelIndex | QPersistentModelIndex


class Standing(StrEnum):
    """Where a step stands to the case as it is."""

    DONE = "done"
    CURRENT = "now"
    UNDONE = "undone"


_STANDING = {
    Standing.CURRENT: marked("history list", "now"),
    Standing.UNDONE: marked("history list", "undone"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class StepRow:
    """One state of the case: its number, what led to it, and where it stands."""

    number: int
    label: str
    standing: Standing

    @property
    def spoken(self) -> str:
        """The row as one line of text."""
        if self.standing is Standing.CURRENT:
            return translate(
                "history list", "Step {number}, {label}, where the case stands now"
            ).format(number=self.number, label=self.label)
        if self.standing is Standing.UNDONE:
            return translate("history list", "Step {number}, {label}, undone").format(
                number=self.number, label=self.label
            )
        return translate("history list", "Step {number}, {label}").format(
            number=self.number, label=self.label
        )


class StepModel(QAbstractListModel):
    """Rows and their pictures."""

    def __init__(self) -> None:
        super().__init__()
        self._rows: tuple[StepRow, ...] = ()
        self._pictures: dict[int, QPixmap] = {}

    @property
    def rows(self) -> tuple[StepRow, ...]:
        """What is listed."""
        return self._rows

    def set_rows(self, rows: Sequence[StepRow], pictures: dict[int, QPixmap]) -> None:
        """List other rows; `pictures` by number."""
        same_length = len(rows) == len(self._rows)
        if not same_length:
            self.beginResetModel()
        self._rows, self._pictures = tuple(rows), dict(pictures)
        if not same_length:
            self.endResetModel()
        elif rows:
            self.dataChanged.emit(self.index(0), self.index(len(rows) - 1))

    def set_picture(self, number: int, picture: QPixmap) -> None:
        """Show the picture of a step that has been made."""
        self._pictures[number] = picture
        index = self.index(number)
        self.dataChanged.emit(index, index)

    def picture(self, number: int) -> QPixmap | None:
        """Return the picture of a step, if it has been made."""
        return self._pictures.get(number)

    def rowCount(self, _parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own default
        """Return how many steps there are."""
        return len(self._rows)

    def data(self, index: Index, role: int = int(Qt.ItemDataRole.DisplayRole)) -> object:
        """Return label, spoken words or the row itself."""
        if not index.isValid() or index.row() >= len(self._rows):
            return None
        row = self._rows[index.row()]
        if role == _STEP_ROLE:
            return row
        if role == int(Qt.ItemDataRole.DisplayRole):
            return row.label
        if role in (int(Qt.ItemDataRole.AccessibleTextRole), int(Qt.ItemDataRole.ToolTipRole)):
            return row.spoken
        return None


class StepDelegate(QStyledItemDelegate):
    """Draws a step: picture, number, label, and a word where it is the current or an undone one."""

    def __init__(self, model: StepModel, parent: QWidget) -> None:
        super().__init__(parent)
        self._model = model

    def sizeHint(self, _option: QStyleOptionViewItem, _index: Index) -> QSize:
        """Return the height of a row."""
        return QSize(180, _ROW_PX)

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draw one row."""
        row = index.data(_STEP_ROLE)
        widget = option.widget
        if not isinstance(row, StepRow) or widget is None:
            return
        t = tones(widget)
        rect = QRectF(option.rect)
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        current, undone = row.standing is Standing.CURRENT, row.standing is Standing.UNDONE
        if current:
            painter.fillRect(rect, QColor(t.accent_fill))
            painter.fillRect(QRectF(rect.left(), rect.top(), 4, rect.height()), QColor(t.accent))
        elif option.state & QStyle.StateFlag.State_MouseOver:
            painter.fillRect(rect, QColor(t.raised))
        field = QRectF(
            rect.left() + 12,
            rect.top() + (rect.height() - PICTURE_PX.height()) / 2,
            PICTURE_PX.width(),
            PICTURE_PX.height(),
        )
        painter.setOpacity(_UNDONE_OPACITY if undone else 1.0)
        painter.fillRect(field, QColor(SURROUND))
        picture = self._model.picture(row.number)
        if picture is not None:
            painter.drawPixmap(field, picture, QRectF(picture.rect()))
        painter.setOpacity(1.0)
        self._paint_words(painter, row, field.right() + _GAP_PX, rect)
        selected = option.state & QStyle.StateFlag.State_Selected
        if selected and widget.hasFocus():
            painter.setPen(QPen(QColor(t.accent), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(rect.adjusted(2, 2, -2, -2), 3, 3)
        painter.restore()

    @staticmethod
    def _paint_words(painter: QPainter, row: StepRow, x: float, rect: QRectF) -> None:
        t = tones()
        undone = row.standing is Standing.UNDONE
        ink = t.soft if undone else t.ink
        weight = 600 if row.standing is Standing.CURRENT else 450
        wide = rect.right() - 12 - x
        first, second = in_two_lines(row.label, wide, weight)
        middle = rect.center().y()
        top = middle - (14 if second else 5)
        paint_text(painter, (x, top), first, ink, weight=weight, width=wide)
        if second:
            paint_text(painter, (x, top + 17), second, ink, weight=weight, width=wide)
            top += 17
        paint_text(painter, (x, top + 18), str(row.number), t.soft, px=11)
        if row.standing is not Standing.DONE:
            right = (rect.right() - 12, top + 18)
            where = translate("history list", _STANDING[row.standing])
            paint_text(painter, right, where, t.soft, px=11, align=Align.AlignRight)


class HistoryList(QListView):
    """The steps from the first to the last that was undone.

    Arrow keys choose; a click, Return or the space bar goes to the chosen step.

    Signals
    -------
    chosen
        Number of the step to go to.
    """

    chosen = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("history list", "Steps of the history"))
        self.steps = StepModel()
        self.setModel(self.steps)
        self.setItemDelegate(StepDelegate(self.steps, self))
        self.setUniformItemSizes(True)
        self.setMouseTracking(True)
        self.setFrameShape(QListView.Shape.NoFrame)
        self.viewport().setBackgroundRole(QPalette.ColorRole.Window)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.clicked.connect(lambda index: self.chosen.emit(index.row()))

    def select(self, number: int) -> None:
        """Choose a step and bring it into sight."""
        index = self.steps.index(number)
        self.setCurrentIndex(index)
        self.scrollTo(index)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go to the chosen step."""
        keys = (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space)
        if event.key() in keys and self.currentIndex().isValid():
            self.chosen.emit(self.currentIndex().row())
            return
        super().keyPressEvent(event)


class HistoryPanel(QWidget):
    """The list under its head."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(translate("history list", "History"))
        self.head = SectionHead(translate("history list", "History"))
        self.list = HistoryList()
        self.note = SoftLabel(
            translate(
                "history list", "Kept until the case is closed; the file holds the last state."
            ),
            11,
        )
        self.note.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 10)
        column.setSpacing(8)
        for widget in (self.head, self.note):
            inner = QVBoxLayout()
            inner.setContentsMargins(PADDING, 0, PADDING, 0)
            inner.addWidget(widget)
            column.addLayout(inner)
            if widget is self.head:
                column.addWidget(self.list, 1)

    def sizeHint(self) -> QSize:
        """Return room for a handful of steps."""
        return QSize(300, 5 * _ROW_PX)


def in_two_lines(text: str, width: float, weight: int) -> tuple[str, str]:
    """Return a text broken once between words where it is wider than `width` pixels of 13 px."""
    words = text.split()
    if text_width(text, 13, weight) <= width or len(words) < 2:
        return text, ""
    first = words[0]
    for at, word in enumerate(words[1:], start=1):
        longer = f"{first} {word}"
        if text_width(longer, 13, weight) > width:
            return first, " ".join(words[at:])
        first = longer
    return first, ""


def picture_of(pixels: NDArray[np.uint8]) -> QPixmap:
    """Return an (H, W, 3) picture for the screen; only in the thread of the window."""
    height, width = pixels.shape[:2]
    image = QImage(pixels.tobytes(), width, height, 3 * width, QImage.Format.Format_RGB888)
    return QPixmap.fromImage(image)
