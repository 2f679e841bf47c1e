"""The text of a page of the manual: Markdown with tables and drawings, in our type and tones."""

from __future__ import annotations

import re
from pathlib import Path

from PySide6.QtCore import QByteArray, QSize, Qt, QUrl
from PySide6.QtGui import (
    QBrush,
    QFont,
    QFontMetricsF,
    QImage,
    QPainter,
    QResizeEvent,
    QTextBlock,
    QTextBlockFormat,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextFormat,
    QTextFragment,
    QTextFrameFormat,
    QTextLength,
    QTextTable,
    QTextTableCellFormat,
    QTextTableFormat,
)
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QFrame, QTextBrowser

from stainmap.ui.manual_search import blocks_of
from stainmap.ui.theme import FAMILY, LIGHT, Tones, font, tones
from stainmap.words import translate

COLUMN_PX = 860
_TEXT_PX, _CELL_PX, _HEAD_PX = 14, 12, 11
_LINE_PERCENT = 140.0
_HEADINGS = {1: (24, 300, 0, 12), 2: (17, 600, 34, 8)}
_CELL_PADDING = 8.0
_FACES = re.compile(r'font-family="[^"]*"')
# A head of several words may break; a column of figures need not be wider than its widest word.
_NUMBERS = re.compile(r"^[\d\s.,/+%\N{MINUS SIGN}-]+$")


class ManualText(QTextBrowser):
    """The text of one page in a column; its SVG drawings wear the tones of the window."""

    def __init__(self, page: Path) -> None:
        super().__init__()
        self._page = page
        self._drawings: set[str] = set()
        self._drawn_px = 0
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setOpenLinks(False)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(translate("manual text", "page of the manual"))
        self.document().setDocumentMargin(0)
        self.show_page()

    @property
    def page(self) -> Path:
        """File of the page that is shown."""
        return self._page

    def open_page(self, page: Path) -> None:
        """Show another page from its beginning."""
        self._page = page
        self.show_page()
        self.verticalScrollBar().setValue(0)

    def show_page(self) -> None:
        """Read the page and dress it in the tones of the moment; the place in it is kept."""
        place = self.verticalScrollBar().value()
        try:
            text = self._page.read_text(encoding="utf-8")
        except (OSError, UnicodeDecodeError):
            text = translate(
                "manual text",
                "# The page is missing\n\n"
                "The file {name} of the manual cannot be read. Install stainmap again.",
            ).format(name=self._page.name)
        document = self.document()
        document.clear()
        self._drawings.clear()
        document.setDefaultFont(font(_TEXT_PX))
        document.setMarkdown(text, QTextDocument.MarkdownFeature.MarkdownDialectGitHub)
        _dress(document, tones(self))
        self._set_column()
        self.moveCursor(QTextCursor.MoveOperation.Start)
        self.verticalScrollBar().setValue(place)

    def loadResource(self, kind: int, name: QUrl | str) -> object:
        """Return a drawing or a picture that lies beside the page, as wide as there is room."""
        file = QUrl(name).path()
        known = file.endswith((".svg", ".png")) and ".." not in file
        if kind != QTextDocument.ResourceType.ImageResource.value or not known:
            return super().loadResource(kind, QUrl(name))
        self._drawings.add(file)
        return self._draw(file)

    def _draw(self, file: str) -> QImage:
        if file.endswith(".png"):
            picture = QImage(str(self._page.parent / file))
            return framed(picture, tones(self), self.devicePixelRatioF(), self.column_px)
        try:
            svg = (self._page.parent / file).read_text(encoding="utf-8")
        except (OSError, UnicodeDecodeError):
            return QImage()
        return drawn(svg, tones(self), self.devicePixelRatioF(), self.column_px)

    @property
    def column_px(self) -> int:
        """Width of the column of text."""
        return max(320, min(COLUMN_PX, self.viewport().width() - 80))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the column in the middle."""
        super().resizeEvent(event)
        self._set_column()

    def _set_column(self) -> None:
        whole = self.viewport().width()
        aside = max(24, (whole - self.column_px) // 2)
        frame = QTextFrameFormat()
        frame.setLeftMargin(aside)
        frame.setRightMargin(max(24, whole - self.column_px - aside))
        frame.setTopMargin(28)
        frame.setBottomMargin(60)
        document = self.document()
        if self.column_px != self._drawn_px:
            # The document keeps drawings as wide as the column was when it met them.
            self._drawn_px = self.column_px
            for file in self._drawings:
                document.addResource(
                    QTextDocument.ResourceType.ImageResource.value, QUrl(file), self._draw(file)
                )
        document.rootFrame().setFrameFormat(frame)


def drawn(svg: str, t: Tones, ratio: float, most_px: int) -> QImage:
    """Return an SVG drawing of the light tones as a picture in the tones `t`.

    Parameters
    ----------
    svg
        The drawing, with colours of the light tones.
    t
        Tones to draw it in.
    ratio
        Device pixels per pixel of the window.
    most_px
        Width it may take; a wider drawing is made smaller.
    """
    renderer = QSvgRenderer(QByteArray(in_tones(svg, t).encode()))
    size = renderer.defaultSize()
    if size.isEmpty():
        return QImage()
    if size.width() > most_px:
        size = QSize(most_px, round(size.height() * most_px / size.width()))
    image = QImage(size * ratio, QImage.Format.Format_ARGB32_Premultiplied)
    image.fill(Qt.GlobalColor.transparent)
    painter = QPainter(image)
    renderer.render(painter)
    painter.end()
    image.setDevicePixelRatio(ratio)
    return image


def framed(picture: QImage, t: Tones, ratio: float, most_px: int) -> QImage:
    """Return a picture of the program with a hairline round it, not wider than `most_px`."""
    if picture.isNull():
        return picture
    width = min(picture.width(), most_px)
    shown = picture.convertToFormat(QImage.Format.Format_RGB32)
    shown = shown.scaledToWidth(round(width * ratio), Qt.TransformationMode.SmoothTransformation)
    painter = QPainter(shown)
    painter.setPen(t.colour("line"))
    painter.drawRect(shown.rect().adjusted(0, 0, -1, -1))
    painter.end()
    shown.setDevicePixelRatio(ratio)
    return shown


def in_tones(svg: str, t: Tones) -> str:
    """Return a drawing made in the light tones, in the tones `t` and in the window's face.

    Qt takes the list of faces that other viewers want for the name of one.
    """
    svg = _FACES.sub(f'font-family="{FAMILY}"', svg)
    exchanged = {getattr(LIGHT, role): getattr(t, role) for role in LIGHT.__dataclass_fields__}
    pattern = re.compile("|".join(map(re.escape, exchanged)))
    return svg if t is LIGHT else pattern.sub(lambda found: exchanged[found.group()], svg)


def _dress(document: QTextDocument, t: Tones) -> None:
    """Give headings, paragraphs and tables their type, room and lines."""
    cursor = QTextCursor(document)
    cursor.beginEditBlock()
    tables: dict[int, QTextTable] = {}
    for block in blocks_of(document):
        cursor.setPosition(block.position())
        frame = cursor.currentFrame()
        if isinstance(frame, QTextTable):
            tables[frame.objectIndex()] = frame
        else:
            _dress_block(cursor, block, t)
    for table in tables.values():
        _dress_table(table, t)
    cursor.endEditBlock()
    document.clearUndoRedoStacks()


def _dress_block(cursor: QTextCursor, block: QTextBlock, t: Tones) -> None:
    level = block.blockFormat().headingLevel()
    room = QTextBlockFormat()
    face = QTextCharFormat()
    face.setForeground(QBrush(t.colour("ink")))
    if level in _HEADINGS:
        px, weight, above, below = _HEADINGS[level]
        inherit = QTextCharFormat.FontPropertiesInheritanceBehavior.FontPropertiesAll
        face.setFont(font(px, weight), inherit)
        face.clearProperty(QTextFormat.Property.FontSizeAdjustment)
        room.setTopMargin(above)
        room.setBottomMargin(below)
    else:
        around = 3 if cursor.currentList() is not None else 7
        room.setTopMargin(around)
        room.setBottomMargin(around)
        # A drawing is a letter of its line; the line's share on top would be empty room.
        if "\N{OBJECT REPLACEMENT CHARACTER}" not in block.text():
            proportional = QTextBlockFormat.LineHeightTypes.ProportionalHeight
            room.setLineHeight(_LINE_PERCENT, proportional.value)
        if cursor.currentList() is None and _is_note(block):
            room.setTopMargin(0)
            _set_face(face, font(_CELL_PX))
            face.setForeground(QBrush(t.colour("soft")))
    _select(cursor, block)
    cursor.mergeCharFormat(face)
    cursor.mergeBlockFormat(room)
    _dress_pieces(cursor, block, t)


def _is_note(block: QTextBlock) -> bool:
    """Return whether a paragraph begins in italics, as captions of drawings and tables do."""
    pieces = _pieces(block)
    return bool(pieces) and pieces[0].charFormat().fontItalic()


def _dress_pieces(cursor: QTextCursor, block: QTextBlock, t: Tones) -> None:
    """Set bold words in the heaviest cut there is, which Qt would smear, and mark links as such."""
    bold, link = QTextCharFormat(), QTextCharFormat()
    bold.setFontWeight(QFont.Weight.DemiBold)
    link.setForeground(QBrush(t.colour("accent")))
    for piece in _pieces(block):
        cursor.setPosition(piece.position())
        end = piece.position() + piece.length()
        cursor.setPosition(end, QTextCursor.MoveMode.KeepAnchor)
        if piece.charFormat().fontWeight() > QFont.Weight.DemiBold:
            cursor.mergeCharFormat(bold)
        if piece.charFormat().isAnchor():
            cursor.mergeCharFormat(link)


def _pieces(block: QTextBlock) -> list[QTextFragment]:
    """Return the runs of one format of a block."""
    found, each = [], block.begin()
    while not each.atEnd():
        found.append(each.fragment())
        each += 1
    return found


def _select(cursor: QTextCursor, block: QTextBlock) -> None:
    cursor.setPosition(block.position())
    cursor.movePosition(QTextCursor.MoveOperation.EndOfBlock, QTextCursor.MoveMode.KeepAnchor)


def _dress_table(table: QTextTable, t: Tones) -> None:
    look = QTextTableFormat()
    look.setBorder(0)
    look.setBorderCollapse(True)
    look.setCellPadding(0)
    look.setCellSpacing(0)
    look.setTopMargin(8)
    look.setBottomMargin(12)
    look.setHeaderRowCount(1)
    look.setWidth(QTextLength(QTextLength.Type.PercentageLength, 100))
    columns = range(table.columns())
    look.setColumnWidthConstraints([_column(table, at) for at in columns])
    for column in columns:
        for row in range(table.rows()):
            _dress_cell(table, row, column, t)
    table.setFormat(look)


def _cell_text(table: QTextTable, row: int, column: int) -> str:
    cell = table.cellAt(row, column)
    cursor = cell.firstCursorPosition()
    cursor.setPosition(cell.lastCursorPosition().position(), QTextCursor.MoveMode.KeepAnchor)
    return cursor.selectedText()


def _column(table: QTextTable, column: int) -> QTextLength:
    """Return the width of a column: figures as wide as they are, words share the rest."""
    texts = [_cell_text(table, row, column) for row in range(table.rows())]
    figures = QFontMetricsF(font(_CELL_PX))
    heads = QFontMetricsF(font(_HEAD_PX))
    if not all(_NUMBERS.match(text) for text in texts[1:]):
        longest = max(figures.horizontalAdvance(text) for text in texts)
        share = min(max(longest, 60.0), 420.0)
        if longest < 120.0:
            return QTextLength(QTextLength.Type.FixedLength, share + 2 * _CELL_PADDING + 4)
        return QTextLength(QTextLength.Type.VariableLength, 0)
    widest = max(figures.horizontalAdvance(text) for text in texts[1:])
    words = max(heads.horizontalAdvance(word) for word in (texts[0].split() or [""]))
    width = max(widest, words, 34.0) + 2 * _CELL_PADDING + 4
    return QTextLength(QTextLength.Type.FixedLength, width)


def _dress_cell(table: QTextTable, row: int, column: int, t: Tones) -> None:
    head = row == 0
    origin = column == table.columns() - 1 and _cell_text(table, 0, column) == "Origin"
    cell = table.cellAt(row, column)
    around = QTextTableCellFormat()
    around.setTopPadding(4)
    around.setBottomPadding(4)
    around.setLeftPadding(0 if column == 0 else _CELL_PADDING)
    around.setRightPadding(_CELL_PADDING)
    around.setBottomBorder(1)
    around.setBottomBorderStyle(QTextFrameFormat.BorderStyle.BorderStyle_Solid)
    around.setBottomBorderBrush(QBrush(t.colour("line" if head else "hair")))
    around.setVerticalAlignment(
        QTextCharFormat.VerticalAlignment.AlignBottom
        if head
        else QTextCharFormat.VerticalAlignment.AlignTop
    )
    cell.setFormat(around)
    cursor = cell.firstCursorPosition()
    cursor.setPosition(cell.lastCursorPosition().position(), QTextCursor.MoveMode.KeepAnchor)
    face = QTextCharFormat()
    _set_face(face, font(_HEAD_PX if head else _CELL_PX))
    face.setForeground(QBrush(t.colour("soft" if head or origin else "ink")))
    if head:
        face.setFontWeight(QFont.Weight.Normal)
    cursor.mergeCharFormat(face)
    room = QTextBlockFormat()
    room.setTopMargin(0)
    room.setBottomMargin(0)
    if head and table.rows() > 1:
        # A head stands over its column the way the column stands.
        below = table.cellAt(1, column).firstCursorPosition()
        room.setAlignment(below.blockFormat().alignment())
    cursor.mergeBlockFormat(room)
    _dress_pieces(cursor, cell.firstCursorPosition().block(), t)


def _set_face(face: QTextCharFormat, wanted: QFont) -> None:
    """Set family and size only, so that what is bold stays bold."""
    face.setFontFamilies([wanted.family()])
    face.setProperty(QTextFormat.Property.FontPixelSize, wanted.pixelSize())
