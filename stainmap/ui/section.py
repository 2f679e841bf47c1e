"""Plain building parts of the panels: section heads, hairlines, labels that stand for a number."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPainter, QPaintEvent, QPalette
from PySide6.QtWidgets import QHBoxLayout, QLabel, QSizePolicy, QWidget

from stainmap.ui.theme import font, tones

PADDING = 16


class Hairline(QWidget):
    """A line between two parts of a panel."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedHeight(1)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Draw the line."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor(tones(self).line))
        painter.end()


class SoftLabel(QLabel):
    """Text in the second ink."""

    def __init__(self, text: str = "", px: int = 12, parent: QWidget | None = None) -> None:
        super().__init__(text, parent)
        self.setFont(font(px))
        self.setForegroundRole(self.palette().ColorRole.PlaceholderText)


class TableNote(QLabel):
    """A small line under figures: what they mean, or what is wrong with one of them."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFont(font(11))
        self.setWordWrap(True)
        self.setIndent(0)
        self._warns = False

    def tell(self, text: str) -> None:
        """Show a remark."""
        self._show(text, warns=False)

    def warn(self, text: str) -> None:
        """Show a sentence that somebody should read, with the caution bar before it."""
        self._show(text, warns=True)

    def _show(self, text: str, *, warns: bool) -> None:
        self._warns = warns
        self.setForegroundRole(
            QPalette.ColorRole.WindowText if warns else QPalette.ColorRole.PlaceholderText
        )
        self.setContentsMargins(10 if warns else 0, 2, 0, 2)
        self.setText(text)
        self.setAccessibleName(text)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the caution bar, then the words."""
        if self._warns:
            painter = QPainter(self)
            painter.fillRect(0, 0, 3, self.height(), QColor(tones(self).caution))
            painter.end()
        super().paintEvent(event)


class SectionHead(QWidget):
    """A title with a quieter remark at the right."""

    def __init__(self, title: str, remark: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        name = QLabel(title)
        name.setFont(font(15, 600))
        self.remark = SoftLabel(remark)
        self.remark.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.remark.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        row.addWidget(name)
        row.addWidget(self.remark, 1)
        self._row = row

    def add_widget(self, widget: QWidget) -> None:
        """Put a control at the right end."""
        self._row.addWidget(widget)

    def set_remark(self, text: str) -> None:
        """Show another remark."""
        self.remark.setText(text)
        self.remark.setToolTip(text)
