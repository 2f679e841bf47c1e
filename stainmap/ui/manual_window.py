"""The manual in a window of its own: its pages, the way between them, a search over them all."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QEvent, Qt, QUrl, Signal
from PySide6.QtGui import QCloseEvent, QKeySequence, QResizeEvent, QShortcut, QTextCursor
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QListWidget,
    QListWidgetItem,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from stainmap.ui.manual_bar import ManualBar
from stainmap.ui.manual_search import Line, ManualIndex, anchor_of, blocks_of
from stainmap.ui.manual_text import COLUMN_PX, ManualText
from stainmap.ui.screen_room import resize_within_screen
from stainmap.ui.theme import font, tones
from stainmap.words import translate

_CONTENTS_PX = 250
_NARROW_PX = 900
_LEAST_PX = 720
# A hit shows so many letters of its line, and so many before the word.
_EXCERPT, _BEFORE_HIT = 90, 40


class ManualWindow(QWidget):
    """The pages of one folder: sections or hits at the left, the way to other pages on top.

    Esc leaves the search, or closes the window; Alt and the arrows go back and forward.

    Signals
    -------
    closed
        It is not seen any more.
    """

    closed = Signal()

    def __init__(self, page: Path, owner: QWidget | None = None) -> None:
        super().__init__(owner, Qt.WindowType.Window)
        self.setMinimumWidth(_LEAST_PX)
        resize_within_screen(self, COLUMN_PX + _CONTENTS_PX + 100, 860)
        self._index = ManualIndex(page.parent)
        self._before: list[tuple[Path, int]] = []
        self._after: list[tuple[Path, int]] = []
        self.text = ManualText(page)
        self.bar = ManualBar()
        self.contents, self.hits = (
            _list(translate("manual window", "sections of the page")),
            _list(translate("manual window", "where it stands")),
        )
        self._aside = QStackedWidget()
        self._aside.setFixedWidth(_CONTENTS_PX)
        self._aside.addWidget(self.contents)
        self._aside.addWidget(self.hits)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.bar)
        row = QHBoxLayout()
        row.setSpacing(0)
        row.addWidget(self._aside)
        row.addWidget(self.text)
        column.addLayout(row, 1)
        self._connect()
        self._show_new_page()
        self._wear_tones()
        self.text.setFocus()

    def _connect(self) -> None:
        find = QKeySequence(QKeySequence.StandardKey.Find)
        for keys, call in (
            (QKeySequence("Esc"), self._leave),
            (QKeySequence(QKeySequence.StandardKey.Close), self.close),
            (find, self.bar.seek),
            (QKeySequence("Alt+Left"), self.go_back),
            (QKeySequence("Alt+Right"), self.go_forward),
        ):
            QShortcut(keys, self, call)
        self.bar.back.clicked.connect(self.go_back)
        self.bar.forward.clicked.connect(self.go_forward)
        self.bar.page_asked.connect(self.go_to)
        self.bar.words.textChanged.connect(self._find)
        self.bar.words.returnPressed.connect(self._jump)
        self.bar.down_pressed.connect(self._into_hits)
        self.hits.itemClicked.connect(self._jump)
        self.hits.itemActivated.connect(self._jump)
        self.text.anchorClicked.connect(self._follow)
        self.contents.itemClicked.connect(self._go_to_section)
        self.contents.itemActivated.connect(self._go_to_section)
        self.text.verticalScrollBar().valueChanged.connect(self._mark_section)
        # Where headings stand is known when the page has been laid out, and again after a resize.
        layout = self.text.document().documentLayout()
        layout.documentSizeChanged.connect(lambda _size: self._mark_section())

    def changeEvent(self, event: QEvent) -> None:
        """Follow the colours of the window."""
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and hasattr(self, "text"):
            self._wear_tones()
            self.text.show_page()
            self._list_sections()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Leave the narrow window to the text, unless something is searched for."""
        super().resizeEvent(event)
        self._share_room()

    def _share_room(self) -> None:
        self._aside.setVisible(self.width() >= _NARROW_PX or self.is_searching)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Close, and say so: the keyboard is to go where it came from."""
        super().closeEvent(event)
        self.closed.emit()

    def _leave(self) -> None:
        if self.is_searching:
            self.bar.words.clear()
            self.text.setFocus()
        else:
            self.close()

    # --- from page to page ---------------------------------------------------------------

    def go_to(self, place: str) -> None:
        """Show a page, `plan.md`, or a section of it, `plan.md#locks`; it can be gone back from."""
        name, _, anchor = place.partition("#")
        page = self.text.page.with_name(name) if name else self.text.page
        self._turn_to(page)
        self._show_section(anchor)

    def go_back(self) -> None:
        """Show what was looked at before."""
        self._retrace(self._before, self._after)

    def go_forward(self) -> None:
        """Show again what was gone back from."""
        self._retrace(self._after, self._before)

    def _here(self) -> tuple[Path, int]:
        return self.text.page, self.text.verticalScrollBar().value()

    def _turn_to(self, page: Path) -> None:
        self._before.append(self._here())
        self._after.clear()
        if page != self.text.page:
            self.text.open_page(page)
        self._show_new_page()

    def _retrace(self, source: list[tuple[Path, int]], other: list[tuple[Path, int]]) -> None:
        if not source:
            return
        other.append(self._here())
        page, place = source.pop()
        if page != self.text.page:
            self.text.open_page(page)
        self._show_new_page()
        document = self.text.document()
        # Asking where the end is has all of the page laid out, so that the place exists.
        document.documentLayout().blockBoundingRect(document.lastBlock())
        self.text.verticalScrollBar().setValue(place)

    def _show_new_page(self) -> None:
        self._list_sections()
        self.bar.back.setEnabled(bool(self._before))
        self.bar.forward.setEnabled(bool(self._after))
        titles = (b.text() for b in blocks_of(self.text.document()))
        self.setWindowTitle(
            next((title for title in titles if title), translate("manual window", "Manual"))
        )

    def _follow(self, url: QUrl) -> None:
        self.go_to(f"{url.fileName()}#{url.fragment()}" if url.fragment() else url.fileName())

    def _show_section(self, anchor: str) -> None:
        bar = self.text.verticalScrollBar()
        for block in blocks_of(self.text.document()):
            if anchor and block.blockFormat().headingLevel() and anchor_of(block.text()) == anchor:
                bar.setValue(self._top_of(block.blockNumber()) - 16)
                return
        bar.setValue(0)

    # --- the search ----------------------------------------------------------------------

    @property
    def is_searching(self) -> bool:
        """True while there are words in the search line."""
        return bool(self.bar.words.text().strip())

    def _find(self, words: str) -> None:
        self.hits.clear()
        found = self._index.find(words)
        for line in found:
            item = QListWidgetItem(f"{line.title}\n{_excerpt(line, words)}")
            item.setData(Qt.ItemDataRole.UserRole, line)
            item.setToolTip(line.section)
            self.hits.addItem(item)
        self.hits.setCurrentRow(0 if found else -1)
        self._aside.setCurrentWidget(self.hits if self.is_searching else self.contents)
        self.bar.say_count(len(found) if self.is_searching else None)
        self._share_room()

    def _into_hits(self) -> None:
        if self.hits.count():
            self.hits.setFocus()

    def _jump(self) -> None:
        """Show the chosen hit, its first word marked."""
        if self.hits.currentRow() < 0:
            return
        item = self.hits.currentItem()
        line: Line = item.data(Qt.ItemDataRole.UserRole)
        self._turn_to(line.page)
        document = self.text.document()
        block = document.findBlockByNumber(line.block)
        top = self._top_of(line.block)
        cursor = QTextCursor(block)
        word = self.bar.words.text().split()[0]
        found = document.find(word, cursor)
        self.text.setTextCursor(cursor if found.isNull() else found)
        self.text.verticalScrollBar().setValue(top - self.text.viewport().height() // 5)

    # --- sections ------------------------------------------------------------------------

    def _wear_tones(self) -> None:
        t = tones(self)
        self.text.setStyleSheet(f"QTextBrowser {{ background: {t.panel}; color: {t.ink}; }}")
        look = (
            f"QListWidget {{ background: {t.bar}; color: {t.soft}; padding: 24px 0 0 0;"
            f" outline: 0; border-right: 1px solid {t.line}; }}"
            "QListWidget::item { padding: 6px 14px 6px 18px; border-left: 3px solid transparent; }"
            f"QListWidget::item:hover {{ color: {t.ink}; }}"
            f"QListWidget::item:selected {{ color: {t.ink}; background: {t.raised};"
            f" border-left: 3px solid {t.accent}; }}"
        )
        self.contents.setStyleSheet(look)
        self.hits.setStyleSheet(look)

    def _list_sections(self) -> None:
        self.contents.clear()
        for block in blocks_of(self.text.document()):
            if block.blockFormat().headingLevel() == 2:
                item = QListWidgetItem(block.text())
                item.setData(Qt.ItemDataRole.UserRole, block.blockNumber())
                self.contents.addItem(item)
        self._mark_section()

    def _top_of(self, block_number: int) -> int:
        document = self.text.document()
        block = document.findBlockByNumber(block_number)
        return round(document.documentLayout().blockBoundingRect(block).top())

    def _go_to_section(self, item: QListWidgetItem) -> None:
        top = self._top_of(item.data(Qt.ItemDataRole.UserRole))
        self.text.verticalScrollBar().setValue(top - 16)
        self.contents.setCurrentItem(item)

    def _mark_section(self) -> None:
        """Mark the last section whose heading stands in the upper quarter or above."""
        bar = self.text.verticalScrollBar()
        line = bar.value() + self.text.viewport().height() // 4
        items = [self.contents.item(at) for at in range(self.contents.count())]
        role = Qt.ItemDataRole.UserRole
        passed = [item for item in items if self._top_of(item.data(role)) <= line]
        if 0 < bar.maximum() == bar.value():
            passed = items
        if passed:
            self.contents.setCurrentItem(passed[-1])
        else:
            self.contents.setCurrentRow(-1)


def _list(name: str) -> QListWidget:
    found = QListWidget()
    found.setFrameShape(QFrame.Shape.NoFrame)
    found.setWordWrap(True)
    found.setFont(font(13))
    found.setAccessibleName(name)
    found.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    return found


def _excerpt(line: Line, words: str) -> str:
    """Return the part of a line around the first word that is searched for."""
    at = max(line.text.casefold().find(words.casefold().split()[0]), 0)
    start = 0 if at < _BEFORE_HIT else line.text.rfind(" ", 0, at - _BEFORE_HIT // 2) + 1
    part = line.text[start : start + _EXCERPT]
    dots = "\N{HORIZONTAL ELLIPSIS}"
    end = dots if start + _EXCERPT < len(line.text) else ""
    return f"{dots if start else ''}{part}{end}"
