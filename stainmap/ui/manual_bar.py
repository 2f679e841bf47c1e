"""The bar over the manual: back, forward, the way to its first page and to the keys, search."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QSize, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QToolButton, QWidget

from stainmap.ui.manual_search import CONTENTS
from stainmap.ui.plate import link_button
from stainmap.ui.section import SoftLabel
from stainmap.ui.theme import font, tones
from stainmap.words import speaks_english, translate

_BAR_PX, _WORDS_PX = 48, 260


class ManualBar(QWidget):
    """Where to go in the manual.

    Signals
    -------
    page_asked
        Name of a page.
    down_pressed
        The Down key was pressed in the search line.
    """

    page_asked = Signal(str)
    down_pressed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFixedHeight(_BAR_PX)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 0, 16, 0)
        row.setSpacing(8)
        self.back = _arrow(Qt.ArrowType.LeftArrow, translate("manual bar", "Back"), "Alt+Left")
        self.forward = _arrow(
            Qt.ArrowType.RightArrow, translate("manual bar", "Forward"), "Alt+Right"
        )
        self.contents, self.keys = (
            link_button(translate("manual bar", "contents")),
            link_button(translate("manual bar", "keys and mouse")),
        )
        self.contents.clicked.connect(lambda: self.page_asked.emit(CONTENTS))
        self.keys.clicked.connect(lambda: self.page_asked.emit("keys.md"))
        self.count = SoftLabel("", 12)
        self.words = QLineEdit()
        self.words.setPlaceholderText(translate("manual bar", "search the manual"))
        self.words.setAccessibleName(translate("manual bar", "Search the manual"))
        self.words.setToolTip(
            translate(
                "manual bar", "Words in all pages (Ctrl+F); Return jumps, Down goes to the list"
            )
        )
        self.words.setClearButtonEnabled(True)
        self.words.setFont(font(13))
        self.words.setFixedWidth(_WORDS_PX)
        self.words.installEventFilter(self)
        for widget in (self.back, self.forward):
            row.addWidget(widget)
        row.addSpacing(8)
        row.addWidget(self.contents)
        row.addSpacing(8)
        row.addWidget(self.keys)
        if not speaks_english():
            row.addSpacing(8)
            row.addWidget(SoftLabel(translate("manual bar", "The manual is in English."), 12))
        row.addStretch(1)
        row.addWidget(self.count)
        row.addWidget(self.words)

    def seek(self) -> None:
        """Put the keyboard into the search line."""
        self.words.setFocus()
        self.words.selectAll()

    def say_count(self, count: int | None) -> None:
        """Say how many lines were found; None where nothing is searched for."""
        words = {
            None: "",
            0: translate("manual bar", "nothing found"),
            1: translate("manual bar", "1 line"),
        }
        self.count.setText(
            words.get(count, translate("manual bar", "{count} lines").format(count=count))
        )

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the Down key lead from the search line into the list."""
        if (
            isinstance(event, QKeyEvent)
            and event.type() == QEvent.Type.KeyPress
            and event.key() == Qt.Key.Key_Down
        ):
            self.down_pressed.emit()
            return True
        return super().eventFilter(watched, event)

    def paintEvent(self, _event: QPaintEvent) -> None:
        """Fill the bar and draw its lower line."""
        painter = QPainter(self)
        t = tones(self)
        painter.fillRect(self.rect(), QColor(t.bar))
        painter.fillRect(0, self.height() - 1, self.width(), 1, QColor(t.line))
        painter.end()


def _arrow(way: Qt.ArrowType, name: str, keys: str) -> QToolButton:
    button = QToolButton()
    button.setArrowType(way)
    button.setIconSize(QSize(16, 16))
    button.setFixedSize(30, 30)
    button.setAccessibleName(name)
    button.setToolTip(f"{name} ({keys})")
    return button
