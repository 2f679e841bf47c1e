"""How a cell of the coat table is drawn and typed into."""

from __future__ import annotations

from PySide6.QtCore import (
    QAbstractItemModel,
    QEvent,
    QObject,
    QPointF,
    QRectF,
    QRegularExpression,
    Qt,
    Signal,
)
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QKeyEvent,
    QPainter,
    QPen,
    QRegularExpressionValidator,
)
from PySide6.QtWidgets import (
    QAbstractItemDelegate,
    QAbstractItemView,
    QLineEdit,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from stainmap.model.plan import CoatSpan
from stainmap.ui.coat_model import BRUSHED_ROLE, INHERITED_ROLE, LOCKED_ROLE, SPAN_ROLE, Index
from stainmap.ui.coat_range import CoatRange
from stainmap.ui.marks import Align, paint_tally, paint_text, text_width
from stainmap.ui.theme import font, tones

_STEPS = {
    Qt.Key.Key_Return: (0, 1),
    Qt.Key.Key_Enter: (0, 1),
    Qt.Key.Key_Down: (0, 1),
    Qt.Key.Key_Up: (0, -1),
    Qt.Key.Key_Tab: (1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Backtab: (-1, 0),
    Qt.Key.Key_Left: (-1, 0),
}


class CoatCell(QStyledItemDelegate):
    """A number over its tally, a lighter inherited figure, or nothing.

    Signals
    -------
    left
        Typing ended with a key that moves on: columns and rows to go.
    filled
        What was typed is to go into all chosen cells.
    """

    left = Signal(int, int)
    filled = Signal(str)

    def __init__(self, parent: QWidget, chosen: CoatRange) -> None:
        super().__init__(parent)
        self._chosen = chosen
        self.ring = True
        self.row_shown = -1
        self.editor: QLineEdit | None = None

    def paint(self, painter: QPainter, option: QStyleOptionViewItem, index: Index) -> None:
        """Draw one cell; titles have no field."""
        table = self.parent()
        if not isinstance(table, QAbstractItemView):
            return
        t = tones(table)
        if not index.flags() & Qt.ItemFlag.ItemIsEnabled:
            if index.row():
                painter.fillRect(
                    option.rect.x(), option.rect.y(), option.rect.width(), 1, QColor(t.line)
                )
            return
        painter.save()
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        rect = QRectF(option.rect)
        if index.row() == self.row_shown:
            painter.fillRect(rect, QColor(t.raised))
        cell = rect.adjusted(1.5, 1.5, -1.5, -1.5)
        painter.setPen(Qt.PenStyle.NoPen)
        held = self._chosen.holds(index.row(), index.column())
        painter.setBrush(QColor(t.accent_fill if held else t.field))
        painter.drawRoundedRect(cell, 3, 3)
        self._paint_coats(painter, cell, index, t.ink, t.soft)
        if self.ring and table.currentIndex() == index:
            # Thin while the keyboard is elsewhere.
            painter.setPen(QPen(QColor(t.accent), 2.0 if table.hasFocus() else 1.0))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(cell, 3, 3)
        painter.restore()

    def _paint_coats(
        self, painter: QPainter, cell: QRectF, index: Index, ink: str, soft: str
    ) -> None:
        x, y = cell.center().x(), cell.y()
        span, inherited = index.data(SPAN_ROLE), index.data(INHERITED_ROLE)
        inherited = (inherited or "").replace("-", "\N{EN DASH}")
        if isinstance(span, CoatSpan):
            text = str(span).replace("-", "\N{EN DASH}")
            if inherited:
                self._paint_sum(painter, cell, f"{inherited}+", text, (ink, soft))
            else:
                at = (x, y + 13.5)
                paint_text(painter, at, text, ink, weight=650, align=Align.AlignHCenter)
            paint_tally(painter, x, y + 17.0, span.high, ink)
        elif inherited:
            px = 13 if text_width(inherited, 13) <= cell.width() - 2.0 else 11
            paint_text(painter, (x, y + 16.5), inherited, soft, px=px, align=Align.AlignHCenter)
        if index.data(LOCKED_ROLE):
            self._paint_lock(painter, cell, ink)
        if index.data(BRUSHED_ROLE):
            # A slanted stroke at the corner: coats were brushed here by hand as well.
            pen = QPen(QColor(ink), 1.6)
            pen.setCapStyle(Qt.PenCapStyle.RoundCap)
            painter.setPen(pen)
            corner = cell.bottomRight()
            painter.drawLine(corner + QPointF(-6, -3), corner + QPointF(-3, -8))

    def _paint_sum(
        self, painter: QPainter, cell: QRectF, below: str, own: str, inks: tuple[str, str]
    ) -> None:
        """Draw what is inherited and what is added to it, as "2+1"; "+1" where that is too long."""
        if text_width(below, 11) + text_width(own, 13, 650) > cell.width() - 2.0:
            below = "+"
        left = text_width(below, 11)
        x = cell.center().x() - (left + text_width(own, 13, 650)) / 2.0
        paint_text(painter, (x, cell.y() + 13.5), below, inks[1], px=11)
        paint_text(painter, (x + left, cell.y() + 13.5), own, inks[0], weight=650)

    def _paint_lock(self, painter: QPainter, cell: QRectF, ink: str) -> None:
        """Draw a small closed lock at the upper right corner."""
        body = QRectF(cell.right() - 9.0, cell.y() + 6.0, 6.0, 4.5)
        painter.setPen(QPen(QColor(ink), 1.2))
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawArc(QRectF(body.x() + 1.2, body.y() - 3.0, 3.6, 6.0), 0, 180 * 16)
        painter.fillRect(body, QColor(ink))

    # --- typing --------------------------------------------------------------------------

    def createEditor(self, parent: QWidget, _option: QStyleOptionViewItem, index: Index) -> QWidget:
        """Return a small line for a number or a span."""
        editor = self.editor = QLineEdit(parent)
        editor.destroyed.connect(self._forget_editor)
        editor.setFont(font(13, 650))
        editor.setAlignment(Qt.AlignmentFlag.AlignCenter)
        editor.setAccessibleName(str(index.data(Qt.ItemDataRole.AccessibleTextRole)))
        pattern = QRegularExpression(r"\d{0,2}([-\x{2013}]\d{0,2})?")
        editor.setValidator(QRegularExpressionValidator(pattern, editor))
        editor.setStyleSheet("padding: 0;")
        return editor

    def setEditorData(self, editor: QWidget, index: Index) -> None:
        """Show what the cell holds; what is typed stays where a prediction comes meanwhile."""
        if not (isinstance(editor, QLineEdit) and editor.isModified()):
            super().setEditorData(editor, index)

    def _forget_editor(self) -> None:
        self.editor = None

    def updateEditorGeometry(
        self, editor: QWidget, option: QStyleOptionViewItem, _index: Index
    ) -> None:
        """Lay the line over the cell, wide enough for a span."""
        rect = option.rect
        wide = max(rect.width(), 46)
        editor.setGeometry(rect.x() - (wide - rect.width()) // 2, rect.y(), wide, rect.height())

    def setModelData(self, editor: QWidget, model: QAbstractItemModel, index: Index) -> None:
        """Hand over what was typed; a span cut short counts as its number."""
        if isinstance(editor, QLineEdit):
            model.setData(index, _whole(editor.text()))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """End typing with the keys that move on."""
        if isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            step = _STEPS.get(Qt.Key(event.key()))
            if step == (0, 1) and event.modifiers() & Qt.KeyboardModifier.ControlModifier:
                if isinstance(watched, QLineEdit):
                    text = _whole(watched.text())
                    self.closeEditor.emit(watched, QAbstractItemDelegate.EndEditHint.NoHint)
                    self.filled.emit(text)
                return True
            if step is not None and isinstance(watched, QWidget):
                self.commitData.emit(watched)
                self.closeEditor.emit(watched, QAbstractItemDelegate.EndEditHint.NoHint)
                self.left.emit(*step)
                return True
        if (
            isinstance(event, QFocusEvent)
            and event.lostFocus()
            and event.reason() == Qt.FocusReason.PopupFocusReason
            and isinstance(watched, QWidget)
        ):
            # Whatever a menu does to the table, what was typed before is in it; and where the table
            # is made anew, the keyboard stays with it.
            self.commitData.emit(watched)
            self.closeEditor.emit(watched, QAbstractItemDelegate.EndEditHint.NoHint)
            return False
        return super().eventFilter(watched, event)


def _whole(text: str) -> str:
    """Return what was typed; a span cut short counts as its number."""
    return text.rstrip("-\N{EN DASH}")
