"""Where the numbers of a material come from, beside its name in every list to choose from."""

from __future__ import annotations

from collections.abc import Mapping

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRect, QSize, Qt
from PySide6.QtGui import QColor, QFontMetrics, QPainter
from PySide6.QtWidgets import QComboBox, QStyledItemDelegate, QStyleOptionViewItem

from stainmap.ui.theme import font, tones

_ORIGIN = Qt.ItemDataRole.UserRole + 1
_GAP_PX, _PX = 14, 12


class OriginDelegate(QStyledItemDelegate):
    """Writes the origin at the right of an entry; what the closed list shows stays the name."""

    def paint(
        self,
        painter: QPainter,
        option: QStyleOptionViewItem,
        index: QModelIndex | QPersistentModelIndex,
    ) -> None:
        """Draw the entry, then its origin."""
        super().paint(painter, option, index)
        word = index.data(_ORIGIN)
        if word:
            painter.save()
            painter.setFont(font(_PX))
            painter.setPen(QColor(tones().soft))
            room = QRect(option.rect).adjusted(0, 0, -_GAP_PX // 2, 0)
            side = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            painter.drawText(room, int(side), str(word))
            painter.restore()

    def sizeHint(
        self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> QSize:
        """Return room for both."""
        size = super().sizeHint(option, index)
        word = index.data(_ORIGIN)
        if word:
            wide = QFontMetrics(font(_PX)).horizontalAdvance(str(word))
            size.setWidth(size.width() + wide + 2 * _GAP_PX)
        return size


def mark_origins(box: QComboBox, origins: Mapping[str, str]) -> None:
    """Write beside each entry of a list where its numbers come from, in a word."""
    if not isinstance(box.itemDelegate(), OriginDelegate):
        box.setItemDelegate(OriginDelegate(box))
    for at in range(box.count()):
        name = box.itemText(at)
        word = origins.get(name, "")
        box.setItemData(at, word, _ORIGIN)
        if word:
            box.setItemData(at, f"{name}, {word}", Qt.ItemDataRole.AccessibleTextRole)
    box.view().setMinimumWidth(box.view().sizeHintForColumn(0) + 2 * _GAP_PX)
