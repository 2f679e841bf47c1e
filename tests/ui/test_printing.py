"""Preview and print: what is shown and sent to the printer is what the PDF holds, in true size."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pypdf
import pypdfium2
import pytest
from PIL import Image
from PySide6.QtCore import Qt
from PySide6.QtGui import QDesktopServices
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QLabel
from pytestqt.qtbot import QtBot

from stainmap.app.edits import with_nesting_height
from stainmap.paper.page_size import PageSize
from stainmap.planning.plan_hash import short_hash
from stainmap.ui.main_window import MainWindow
from stainmap.ui.sheet_preview import print_pages, qt_image, set_up_printer


def test_a_picture_keeps_its_pixels() -> None:
    rng = np.random.default_rng(0)
    pixels = rng.integers(0, 256, (7, 5, 3), dtype=np.uint8)
    image = qt_image(Image.fromarray(pixels))
    got = [[image.pixelColor(x, y).getRgb()[:3] for x in range(5)] for y in range(7)]
    np.testing.assert_array_equal(np.array(got), pixels)


@pytest.mark.parametrize("page", list(PageSize))
def test_pages_are_printed_in_their_true_size(qtbot: QtBot, tmp_path: Path, page: PageSize) -> None:
    width, height = (round(mm / 25.4 * 100) for mm in page.size_mm)
    picture = np.full((height, width, 3), 255, np.uint8)
    picture[100:300, 100:200] = 0  # 2 inches high, 1 inch wide, 1 inch from the corner
    printer = QPrinter()
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "printed.pdf"))
    set_up_printer(printer, page)
    assert print_pages(printer, [Image.fromarray(picture)] * 2, page)
    reader = pypdf.PdfReader(tmp_path / "printed.pdf")
    assert len(reader.pages) == 2
    assert float(reader.pages[0].mediabox.width) / 72 * 25.4 == pytest.approx(
        page.size_mm[0], abs=0.5
    )
    document = pypdfium2.PdfDocument(tmp_path / "printed.pdf")
    back = np.asarray(document[1].render(scale=100 / 72).to_pil().convert("L"))
    document.close()
    rows, columns = np.nonzero(back < 128)
    assert np.array([rows.min(), np.ptp(rows), columns.min(), np.ptp(columns)]) == pytest.approx(
        [100, 200, 100, 100], abs=2
    )


def test_sheets_are_looked_at_and_printed(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    QTest.keySequence(window, "Ctrl+P")
    preview = window.printing.preview
    assert preview is not None
    pages = [label for label in preview.paper.findChildren(QLabel) if not label.pixmap().isNull()]
    names = [label.accessibleName() for label in pages]
    assert names[0].endswith("coat-map, page 1")
    assert {name.split(", ")[0].split("-", 2)[-1] for name in names} == {
        "coat-map",
        "agreement",
        "mixing-list",
    }
    assert pages[0].pixmap().width() == pytest.approx(210 / 25.4 * 110, abs=2)
    printed = tmp_path / "printed.pdf"

    def accept(dialog: QPrintDialog) -> int:
        dialog.printer().setOutputFormat(QPrinter.OutputFormat.PdfFormat)
        dialog.printer().setOutputFileName(str(printed))
        return int(QPrintDialog.DialogCode.Accepted.value)

    monkeypatch.setattr(QPrintDialog, "exec", accept)
    QTest.mouseClick(preview.buttons["Print..."], Qt.MouseButton.LeftButton)
    assert len(pypdf.PdfReader(printed).pages) == len(pages)
    assert window.status.message.text() == f"Sent {len(pages)} pages to the printer."
    preview.paper_format.activated.emit(1)
    other = window.printing.preview
    assert other is not None
    assert other is not preview
    first = next(one for one in other.paper.findChildren(QLabel) if not one.pixmap().isNull())
    assert first.pixmap().width() == pytest.approx(215.9 / 25.4 * 110, abs=2)
    other.close()


def test_what_is_printed_after_a_change_is_the_next_revision(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path))
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda _: True)
    session = window.session

    def head() -> str:
        window.commands.save_sheets.trigger()
        (coat_map,) = tmp_path.glob("*-coat-map.pdf")
        return " ".join(pypdf.PdfReader(coat_map).pages[0].extract_text().split())

    before = session.plan_hash
    first = head()
    assert session.case is not None
    revision = session.case.revision
    assert session.case.printed == before
    # The same plan again is the same revision.
    assert head() == first
    session.edit("height", lambda case: with_nesting_height(case, 0.3))
    after = session.plan_hash
    assert after != before
    second = head()
    assert short_hash(after) in second
    assert short_hash(before) in second  # replaces ...
    assert short_hash(after) not in first
    assert session.case.revision == revision + 1
    assert session.case.replaces == before
    assert session.case.printed == after
