"""All pages of the manual: their order, their headings, and where words stand in them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtGui import QTextBlock, QTextCursor, QTextDocument, QTextTable

CONTENTS = "contents.md"
_MOST_HITS = 200
_LISTED = re.compile(r"^- \[[^\]]+\]\(([\w-]+\.md)\)", re.MULTILINE)
_NOT_IN_ANCHOR = re.compile(r"[^\w\- ]")


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line of a page as it is read: a paragraph, an entry of a list, a row of a table.

    Parameters
    ----------
    page, title
        File of the page, and its first heading.
    section
        Heading the line stands under; that of the page before the first one.
    block
        Number of its first text block in the page's document.
    level
        1 and more for headings, 0 for all else.
    text
        What it says; cells of a row are apart by two spaces.
    """

    page: Path
    title: str
    section: str
    block: int
    level: int
    text: str


class ManualIndex:
    """Finds words in all pages that lie beside one page; every page is read once.

    Parameters
    ----------
    folder
        Where the pages lie.
    """

    def __init__(self, folder: Path) -> None:
        self._folder = folder
        self._lines: dict[Path, tuple[Line, ...]] = {}

    def pages(self) -> tuple[Path, ...]:
        """Return all pages: the table of contents, what it lists in its order, then the others."""
        listed = [self._folder / CONTENTS]
        if listed[0].is_file():
            names = _LISTED.findall(listed[0].read_text(encoding="utf-8"))
            listed += [self._folder / name for name in names]
        listed += sorted(self._folder.glob("*.md"))
        return tuple(path for path in dict.fromkeys(listed) if path.is_file())

    def find(self, words: str) -> tuple[Line, ...]:
        """Return the lines that hold all words, headings first; capitals do not matter."""
        wanted = words.casefold().split()
        if not wanted:
            return ()
        found = [
            line
            for page in self.pages()
            for line in self.lines(page)
            if all(word in line.text.casefold() for word in wanted)
        ]
        found.sort(key=lambda line: not line.level)
        return tuple(found[:_MOST_HITS])

    def lines(self, page: Path) -> tuple[Line, ...]:
        """Return the lines of a page; none if it cannot be read."""
        if page not in self._lines:
            try:
                text = page.read_text(encoding="utf-8")
            except (OSError, UnicodeDecodeError):
                return ()
            document = QTextDocument()
            document.setMarkdown(text, QTextDocument.MarkdownFeature.MarkdownDialectGitHub)
            self._lines[page] = _lines_of(document, page)
        return self._lines[page]


def blocks_of(document: QTextDocument) -> list[QTextBlock]:
    """Return the text blocks of a document in their order."""
    blocks, block = [], document.begin()
    while block.isValid():
        blocks.append(block)
        block = block.next()
    return blocks


def anchor_of(heading: str) -> str:
    """Return the name by which a link means a heading: small letters, with hyphens for spaces."""
    return _NOT_IN_ANCHOR.sub("", heading.strip().casefold()).replace(" ", "-")


def _lines_of(document: QTextDocument, page: Path) -> tuple[Line, ...]:
    title = section = page.stem
    lines: list[Line] = []
    for numbers, level, text in _texts(document):
        if level == 1 and title == page.stem:
            title = text
        section = text if level else section
        if text.strip():
            lines.append(
                Line(page=page, title=title, section=section, block=numbers, level=level, text=text)
            )
    return tuple(lines)


def _texts(document: QTextDocument) -> Sequence[tuple[int, int, str]]:
    """Return number of the first block, level and text of every line; a table's row is one."""
    cursor = QTextCursor(document)
    found: list[tuple[int, int, str]] = []
    row: tuple[int, int] | None = None
    for block in blocks_of(document):
        cursor.setPosition(block.position())
        table = cursor.currentFrame()
        if isinstance(table, QTextTable):
            here = (table.objectIndex(), table.cellAt(cursor).row())
            if here == row:
                number, level, text = found.pop()
                found.append((number, level, f"{text}  {block.text()}"))
            else:
                found.append((block.blockNumber(), 0, block.text()))
            row = here
            continue
        row = None
        found.append((block.blockNumber(), block.blockFormat().headingLevel(), block.text()))
    return found
