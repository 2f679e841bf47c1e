"""The list of exercises: days of repeats are set, packs are kept, the sheet is of the open pack."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialogButtonBox
from pytestqt.qtbot import QtBot

from stainmap.app.practising import PracticeBook
from stainmap.practice.exercise import Kind, exercise
from stainmap.practice.packs import Pack, write_pack
from stainmap.ui.practice_list import PracticeList
from stainmap.ui.practice_repeats import RepeatsDialog

TODAY = datetime.now(UTC).date()


@pytest.fixture
def book(tmp_path: Path) -> PracticeBook:
    return PracticeBook(tmp_path / "labbook.sqlite")


def press(dialog: RepeatsDialog, button: QDialogButtonBox.StandardButton) -> None:
    box = dialog.findChild(QDialogButtonBox)
    assert isinstance(box, QDialogButtonBox)
    QTest.mouseClick(box.button(button), Qt.MouseButton.LeftButton)


def test_days_that_do_not_fit_are_said_and_nothing_closes(qtbot: QtBot) -> None:
    dialog = RepeatsDialog("AB", None)
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog.days.text() == "1, 7, 30"
    assert dialog.chosen() is None
    for wrong in ("", "7, 1", "0 3", "1, two", "3.5", "-2", "1,2,3,4,5,6,7,8,9,10,11"):
        dialog.days.setText(wrong)
        press(dialog, QDialogButtonBox.StandardButton.Ok)
        assert dialog.isVisible()
        assert "do not fit" in dialog.trouble.text()
    dialog.days.setText(" 2;5  20")
    press(dialog, QDialogButtonBox.StandardButton.Ok)
    assert not dialog.isVisible()
    assert dialog.chosen() == (2, 5, 20)


def test_days_are_set_from_the_list(qtbot: QtBot, book: PracticeBook) -> None:
    shown = PracticeList(book, "AB", TODAY)
    qtbot.addWidget(shown)
    shown.show()

    def answer() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, RepeatsDialog)
        dialog.days.selectAll()
        QTest.keyClicks(dialog.days, "3, 10")
        QTest.keyClick(dialog.days, Qt.Key.Key_Return)

    QTimer.singleShot(50, answer)
    QTest.mouseClick(shown.repeats, Qt.MouseButton.LeftButton)
    assert book.repeat_days("AB") == (3, 10)
    shown.name.clear()
    QTest.mouseClick(shown.repeats, Qt.MouseButton.LeftButton)
    assert "type initials or a code" in shown.trouble.text()


def test_a_pack_that_is_opened_is_kept(qtbot: QtBot, book: PracticeBook, tmp_path: Path) -> None:
    pack = Pack(title="Invented", exercises=(exercise(Kind.DARK_STUMP, 3),))
    write_pack(pack, tmp_path / "a.stainpack")
    shown = PracticeList(book, "AB", TODAY)
    qtbot.addWidget(shown)
    assert shown.pack is None
    shown.show_pack(tmp_path / "a.stainpack")
    assert shown.pack == pack
    (tmp_path / "a.stainpack").unlink()
    assert set(book.from_packs()) == {(pack.sha256, pack.exercises[0].sha256)}
