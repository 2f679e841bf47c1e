"""The page of evidence in its window: opened by the menu, read, closed by a key."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, Qt, QUrl
from PySide6.QtGui import QAction, QImage, QTextDocument, QTextTable
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from stainmap.paths import resource
from stainmap.ui.main_window import MainWindow
from stainmap.ui.manual_text import drawn, in_tones
from stainmap.ui.manual_window import ManualWindow
from stainmap.ui.theme import DARK, LIGHT, Scheme, apply_theme

PAGE = resource("manual", "evidence.md")
DRAWING = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="40" height="20" viewBox="0 0 40 20">'
    '<rect width="40" height="20" fill="#e8e8e8"/></svg>'
)


@pytest.fixture
def manual(qtbot: QtBot) -> ManualWindow:
    one = ManualWindow(PAGE)
    qtbot.addWidget(one)
    one.show()
    qtbot.waitExposed(one)
    return one


def headings() -> list[str]:
    return re.findall(r"^## (.+)$", PAGE.read_text(encoding="utf-8"), re.MULTILINE)


def drawings() -> list[str]:
    return re.findall(r"!\[[^\]]+\]\(([^)]+)\)", PAGE.read_text(encoding="utf-8"))


def evidence_action(window: MainWindow) -> QAction:
    return next(one for one in window.findChildren(QAction) if one.text() == "&Evidence")


def test_help_opens_one_window_and_esc_closes_it(qtbot: QtBot, window: MainWindow) -> None:
    action = evidence_action(window)
    action.trigger()
    action.trigger()
    (manual,) = window.findChildren(ManualWindow)
    qtbot.waitExposed(manual)
    assert manual.windowTitle() == "Evidence"
    assert "The starter materials are invented." in manual.text.toPlainText()
    manual.activateWindow()
    qtbot.waitUntil(manual.isActiveWindow)
    qtbot.keyClick(manual.text, Qt.Key.Key_Escape)
    qtbot.waitUntil(lambda: not manual.isVisible())
    action.trigger()
    assert manual.isVisible()
    assert window.findChildren(ManualWindow) == [manual]
    manual.close()


def test_sections_are_listed_and_lead_there(qtbot: QtBot, manual: ManualWindow) -> None:
    listed = [manual.contents.item(at).text() for at in range(manual.contents.count())]
    assert listed == headings()
    bar = manual.text.verticalScrollBar()
    assert bar.value() == 0
    assert manual.contents.currentItem() is None
    at = listed.index("Translucency")
    place = manual.contents.visualItemRect(manual.contents.item(at)).center()
    qtbot.mouseClick(manual.contents.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert bar.value() > 2000
    heading = manual.text.cursorForPosition(QPoint(manual.text.viewport().width() // 2, 24))
    assert heading.block().text() == "Translucency"
    assert manual.contents.currentItem().text() == "Translucency"
    bar.setValue(bar.maximum())
    assert manual.contents.currentItem().text() == listed[-1]
    bar.setValue(0)
    assert manual.contents.currentItem() is None


def test_no_drawing_dangles(manual: ManualWindow) -> None:
    assert len(drawings()) >= 6
    for name in drawings():
        picture = manual.text.loadResource(
            QTextDocument.ResourceType.ImageResource.value, QUrl(name)
        )
        assert isinstance(picture, QImage)
        assert picture.width() > 400, name


def test_tables_have_their_rows(manual: ManualWindow) -> None:
    root = manual.text.document().rootFrame()
    tables = [frame for frame in root.childFrames() if isinstance(frame, QTextTable)]
    assert len(tables) > 15
    heads = [table.cellAt(0, table.columns() - 1).firstCursorPosition() for table in tables]
    assert {head.block().text() for head in heads} == {"Origin"}


def test_page_follows_the_colours_of_the_window(qapp: QApplication, manual: ManualWindow) -> None:
    try:
        apply_theme(qapp, Scheme.DARK)
        qapp.processEvents()
        image = manual.text.grab().toImage()
        assert image.pixelColor(3, image.height() // 2).name() == DARK.panel
        picture = manual.text.loadResource(
            QTextDocument.ResourceType.ImageResource.value, QUrl(drawings()[0])
        )
        assert isinstance(picture, QImage)
        assert picture.pixelColor(20, picture.height() - 20).name() == DARK.field
        assert manual.contents.count() == len(headings())
    finally:
        apply_theme(qapp, Scheme.LIGHT)


def test_drawings_change_tones_and_keep_within_the_column() -> None:
    assert in_tones(DRAWING, LIGHT) == DRAWING
    assert in_tones(DRAWING, DARK) == DRAWING.replace(LIGHT.field, DARK.field)
    sharp = drawn(DRAWING, DARK, 2.0, 20)
    assert (sharp.width(), sharp.height(), sharp.devicePixelRatio()) == (40, 20, 2.0)
    assert sharp.pixelColor(20, 10).name() == DARK.field
    assert drawn("no drawing", LIGHT, 1.0, 100).isNull()


def test_text_stays_within_a_narrow_window(qtbot: QtBot, manual: ManualWindow) -> None:
    for width in (720, 1000, 1800):
        manual.resize(width, 600)
        qtbot.waitUntil(lambda width=width: manual.width() == width)
        assert manual.contents.isVisible() == (width >= 900)
        text = manual.text
        qtbot.waitUntil(
            lambda text=text: text.document().size().width() <= text.viewport().width() + 1
        )


def test_a_missing_page_is_said(qtbot: QtBot, tmp_path: Path) -> None:
    one = ManualWindow(tmp_path / "nothing.md")
    qtbot.addWidget(one)
    text = one.text.toPlainText()
    assert "nothing.md" in text
    assert "Install stainmap again." in text
    assert one.contents.count() == 0
