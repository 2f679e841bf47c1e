"""Suggest coats in the window: shown side by side, taken as one step, stopped; locks by key."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLabel

from stainmap.app import edits
from stainmap.errors import CancelledError
from stainmap.model.case import Case
from stainmap.model.zone import Accent, Zone
from stainmap.ui.coat_model import LOCKED_ROLE
from stainmap.ui.main_window import MainWindow
from stainmap.ui.suggest_dialog import SuggestDialog

pytestmark = pytest.mark.usefixtures("no_pictures")


def case_of(window: MainWindow) -> Case:
    case = window.session.case
    assert case is not None
    return case


@pytest.fixture
def few(window: MainWindow) -> MainWindow:
    """Return the window with three blocks in the case's materials, so that nothing takes long."""
    case = case_of(window)
    kept = tuple(b for b in case.materials.blocks if b.name in ("light 3Y", "medium 3Y", "deep 3Y"))
    materials = replace(case.materials, blocks=kept)
    window.session.adopt(replace(case, materials=materials), path=None, saved=True)
    return window


def opened(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> SuggestDialog:
    """Return the dialog as it stands when all work is done; nothing waits for it."""
    shown: list[SuggestDialog] = []

    def keep(dialog: SuggestDialog) -> None:
        shown.append(dialog)

    monkeypatch.setattr(SuggestDialog, "exec", keep)
    window.plan.suggest.click()
    (dialog,) = shown
    return dialog


def texts(dialog: SuggestDialog) -> str:
    return "\n".join(label.text() for label in dialog.findChildren(QLabel))


def test_a_plan_is_taken_as_one_step(few: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    before = case_of(few)
    dialog = opened(few, monkeypatch)
    said = texts(dialog)
    assert "Suggested" in said
    assert "simulated bench days" in said
    assert "Usual choice" in said
    assert len(dialog.takes) >= 2
    dialog.takes[0].click()
    after = case_of(few)
    assert after.plan != before.plan
    assert after.zones is before.zones
    history = few.session.history
    assert history is not None
    assert history.undo_label == "take suggested coats (suggested)"
    few.session.undo()
    assert case_of(few) is before


def test_a_block_is_taken_with_its_coats(few: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    dialog = opened(few, monkeypatch)
    assert set(dialog.blocks.takes) == {"light 3Y", "medium 3Y", "deep 3Y"}
    dialog.blocks.takes["light 3Y"].click()
    assert case_of(few).plan.block == "light 3Y"
    few.session.undo()
    assert case_of(few).plan.block == "medium 3Y"


def test_stock_and_jars_go_into_the_search(
    few: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    dialog = opened(few, monkeypatch)
    menu = dialog.stock.menu()
    assert menu is not None
    for action in menu.actions():
        action.setChecked(action.text() in ("barley", "ash"))
    dialog.jars.setValue(1)
    assert dialog.stock.text() == "2 of 10 liquids"
    dialog.again.click()
    dialog.takes[0].click()
    liquids = {jar.liquid for jar in case_of(few).plan.jars}
    assert len(liquids) <= 1
    assert liquids <= {"barley", "ash"}


def test_without_anything_wanted_it_says_so(
    few: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    few.session.edit("want nothing", lambda case: edits.with_target(case, None))
    dialog = opened(few, monkeypatch)
    assert "Nothing is wanted of this crown yet" in dialog.said.text()
    assert not dialog.takes


def test_closing_it_stops_the_search(few: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    stopped = []

    def stop(*_all: object, **_named: object) -> None:
        stopped.append(True)
        raise CancelledError("Stopped.")

    monkeypatch.setattr("stainmap.app.suggesting.suggest_coats", stop)
    dialog = opened(few, monkeypatch)
    assert stopped
    assert dialog.said.text() == "Stopped."
    asked = []
    dialog.stopped.connect(lambda: asked.append(True))
    dialog.reject()
    assert asked


def test_l_locks_a_cell_and_sets_it_free(window: MainWindow) -> None:
    table = window.plan.table
    table.select_cell(0, Zone.BODY)
    table.setFocus()
    QTest.keyClick(table, Qt.Key.Key_L)
    entry = case_of(window).plan.steps[0].entry(Zone.BODY)
    assert entry is not None
    assert entry.locked
    index = table.currentIndex()
    assert index.data(LOCKED_ROLE)
    assert str(index.data(Qt.ItemDataRole.ToolTipRole)).endswith("1 coat, locked")
    QTest.keyClick(table, Qt.Key.Key_L)
    entry = case_of(window).plan.steps[0].entry(Zone.BODY)
    assert entry is not None
    assert not entry.locked


def test_an_empty_cell_has_nothing_to_lock(window: MainWindow) -> None:
    before = case_of(window)
    window.plan.table.select_cell(0, Accent.MARGIN_BAND)
    QTest.keyClick(window.plan.table, Qt.Key.Key_L)
    assert case_of(window) is before
