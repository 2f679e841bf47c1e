"""The sheets as they will be printed, page below page; from here they go to a printer or a file."""

from __future__ import annotations

from collections.abc import Sequence

from PIL import Image
from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QImage, QPageLayout, QPageSize, QPainter, QPixmap
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import (
    QComboBox,
    QDialog,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from stainmap.paper.page_size import PageSize
from stainmap.ui.section import SoftLabel
from stainmap.words import marked, translate

PREVIEW_DPI = 110.0
PRINT_DPI = 300
_PAGE_SIZES = {
    PageSize.A4: QPageSize.PageSizeId.A4,
    PageSize.LETTER: QPageSize.PageSizeId.Letter,
}


class SheetPreview(QDialog):
    """Shows finished pages.

    Signals
    -------
    print_wanted, pdf_wanted, pictures_wanted
        A button was pressed.
    page_wanted
        Another paper format was chosen.
    """

    print_wanted = Signal()
    pdf_wanted = Signal()
    pictures_wanted = Signal()
    page_wanted = Signal(object)

    def __init__(
        self,
        pages: Sequence[tuple[str, Image.Image]],
        page: PageSize,
        parent: QWidget | None,
        *,
        left_out: Sequence[str] = (),
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(translate("sheet preview", "Sheets"))
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        column = QVBoxLayout(self)
        column.setContentsMargins(16, 12, 16, 12)
        self.left_out = SoftLabel("\n".join(left_out), 13)
        self.left_out.setWordWrap(True)
        self.left_out.setVisible(bool(left_out))
        column.addWidget(self.left_out)
        self.paper = QScrollArea()
        self.paper.setAccessibleName(translate("sheet preview", "Pages"))
        self.paper.setWidget(_pages(pages))
        self.paper.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        column.addWidget(self.paper, 1)
        self.paper_format = QComboBox()
        for one in PageSize:
            self.paper_format.addItem(str(one), one)
        self.paper_format.setCurrentIndex(list(PageSize).index(page))
        self.paper_format.setAccessibleName(translate("sheet preview", "Paper format"))
        self.paper_format.activated.connect(self._format_chosen)
        row = QHBoxLayout()
        text = (
            translate("sheet preview", "1 page, printed in true size.")
            if len(pages) == 1
            else translate("sheet preview", "{count} pages, printed in true size.")
        )
        row.addWidget(SoftLabel(text.format(count=len(pages)), 12), 1)
        row.addWidget(self.paper_format)
        self.buttons = {
            name: QPushButton(translate("sheet preview", name))
            for name in (
                marked("sheet preview", "Save as PDF..."),
                marked("sheet preview", "Save as pictures..."),
                marked("sheet preview", "Print..."),
                marked("sheet preview", "Close"),
            )
        }
        for button in self.buttons.values():
            row.addWidget(button)
        self.buttons["Print..."].setDefault(True)
        self.buttons["Print..."].clicked.connect(self.print_wanted)
        self.buttons["Save as PDF..."].clicked.connect(self.pdf_wanted)
        self.buttons["Save as pictures..."].clicked.connect(self.pictures_wanted)
        self.buttons["Close"].clicked.connect(self.close)
        column.addLayout(row)
        self._page = page
        room = self.screen().availableSize()
        self.resize(min(1040, room.width() - 40), min(900, room.height() - 60))

    def _format_chosen(self, index: int) -> None:
        chosen = self.paper_format.itemData(index)
        if chosen != self._page:
            self.page_wanted.emit(chosen)


def _pages(pages: Sequence[tuple[str, Image.Image]]) -> QWidget:
    """Return the pages below one another, each under the name of its sheet."""
    paper = QWidget()
    column = QVBoxLayout(paper)
    column.setContentsMargins(24, 16, 24, 24)
    column.setSpacing(8)
    for name, picture in pages:
        column.addWidget(SoftLabel(name, 12))
        label = QLabel()
        label.setPixmap(QPixmap.fromImage(qt_image(picture)))
        label.setAccessibleName(name)
        column.addWidget(label)
    return paper


def qt_image(picture: Image.Image) -> QImage:
    """Return a picture as Qt has them, on memory of its own."""
    rgb = picture.convert("RGB")
    flat = QImage(rgb.tobytes(), rgb.width, rgb.height, 3 * rgb.width, QImage.Format.Format_RGB888)
    return flat.copy()


def set_up_printer(printer: QPrinter, page: PageSize) -> None:
    """Set paper format, upright, and the corner of the paper as the origin."""
    printer.setPageSize(QPageSize(_PAGE_SIZES[page]))
    printer.setPageOrientation(QPageLayout.Orientation.Portrait)
    printer.setFullPage(True)


def print_pages(printer: QPrinter, pictures: Sequence[Image.Image], page: PageSize) -> bool:
    """Print pages in their true size; return False if the printer cannot be reached."""
    painter = QPainter()
    if not painter.begin(printer):
        return False
    try:
        per_mm = printer.resolution() / 25.4
        width, height = page.size_mm
        for index, picture in enumerate(pictures):
            if index and not printer.newPage():
                return False
            painter.drawImage(QRectF(0.0, 0.0, width * per_mm, height * per_mm), qt_image(picture))
    finally:
        painter.end()
    return True
