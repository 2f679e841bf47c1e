"""A window with a text to read, as high as it needs and no higher than the screen."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QTextBrowser, QVBoxLayout, QWidget

from stainmap.ui.screen_room import resize_within_screen

_WIDTH_PX, _HIGHEST_PX, _AROUND_PX = 560, 900, 110


class ToldDialog(QDialog):
    """Shows rich text that is scrolled by keys where it is long."""

    def __init__(self, title: str, html: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(title)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 16, 20, 16)
        column.setSpacing(12)
        self.text = QTextBrowser()
        self.text.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.text.setAccessibleName(title)
        self.text.setHtml(f"<h3>{title}</h3>{html}")
        column.addWidget(self.text, 1)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Close)
        buttons.rejected.connect(self.reject)
        column.addWidget(buttons)
        document = self.text.document()
        document.setTextWidth(_WIDTH_PX - 60)
        need = round(document.size().height()) + _AROUND_PX
        resize_within_screen(self, _WIDTH_PX, min(need, _HIGHEST_PX))
        buttons.button(QDialogButtonBox.StandardButton.Close).setFocus()
