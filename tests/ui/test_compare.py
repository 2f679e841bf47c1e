"""Before and after by a key, and two crowns side by side, at work in the window."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, Qt
from PySide6.QtGui import QAction, QKeyEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu, QPushButton
from pytestqt.qtbot import QtBot

from stainmap.app import edits
from stainmap.app.compare import without_stain
from stainmap.app.prediction import predict_case
from stainmap.errors import CancelledError
from stainmap.files.case_file import write_case
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Zone
from stainmap.ui.compare_window import CompareWindow
from stainmap.ui.crown_picture import Look
from stainmap.ui.crown_view import PointerTask
from stainmap.ui.main_window import MainWindow
from stainmap.ui.picture_canvas import PictureCanvas
from stainmap.ui.suggest_dialog import SuggestDialog
from stainmap.ui.what_if_dialog import WhatIfDialog
from tests.builders import dome_case
from tests.ui.accessible_tree import nameless
from tests.ui.small_dome import small_planned_case

RIGHT, NONE, SHIFT = (
    Qt.MouseButton.RightButton,
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.ShiftModifier,
)
KEY = Qt.Key.Key_H


@pytest.fixture(scope="module")
def planned_case() -> Case:
    return small_planned_case()


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Test without OpenGL, and without computed pictures, what is the same with them."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")
    monkeypatch.setattr(PictureCanvas, "_draw_now", lambda _canvas: None)


@pytest.fixture
def changed(window: MainWindow, qtbot: QtBot) -> MainWindow:
    """Return the window after one step, with the keyboard on the crown."""
    window.session.edit(
        "four coats", lambda case: edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(4))
    )
    window.crown.setFocus()
    qtbot.waitUntil(window.crown.hasFocus)
    return window


def case_of(window: MainWindow) -> Case:
    case = window.session.case
    assert case is not None
    return case


def shown(window: MainWindow) -> np.ndarray:
    """Return the colours that the crown shows now, (V, 3)."""
    seen = window.crown.seen_values
    assert seen is not None
    assert seen.srgb is not None
    return seen.srgb.copy()


def act(menu: QMenu, *names: str) -> QAction:
    """Return an entry of a menu, by the words of the entries on the way to it."""
    found = next(one for one in menu.actions() if names[0] in one.text().replace("&", ""))
    below = found.menu()
    if len(names) == 1:
        return found
    assert isinstance(below, QMenu)
    return act(below, *names[1:])


# --- before and after ------------------------------------------------------------------------


def test_a_held_key_shows_what_was_before_and_letting_go_what_is(changed: MainWindow) -> None:
    history = changed.session.history
    assert history is not None
    now, before = shown(changed), predict_case(history.entries[0].case).appearance.srgb
    assert np.abs(now.astype(int) - before).max() > 5
    QTest.keyPress(changed.crown, KEY)
    assert np.abs(shown(changed).astype(int) - before).max() <= 1
    assert "Before the last step: four coats" in changed.ways.before.mark.said
    assert changed.ways.before.mark.isVisible()
    assert changed.crown.task is PointerTask.TURN
    QTest.keyRelease(changed.crown, KEY)
    assert np.array_equal(shown(changed), now)
    assert changed.ways.before.mark.said == ""
    assert changed.crown.task is PointerTask.PAINT
    assert changed.session.history is history


def test_shift_shows_the_bare_block(changed: MainWindow) -> None:
    now = shown(changed)
    bare = predict_case(without_stain(case_of(changed))).appearance.srgb
    QTest.keyPress(changed.crown, KEY, SHIFT)
    assert np.abs(shown(changed).astype(int) - bare).max() <= 1
    assert "bare block" in changed.ways.before.mark.said
    QTest.keyRelease(changed.crown, KEY)
    assert np.array_equal(shown(changed), now)


def test_without_a_step_before_it_says_so_and_shows_the_block(window: MainWindow) -> None:
    window.crown.setFocus()
    QTest.keyPress(window.crown, KEY)
    assert "no step before" in window.ways.before.mark.said
    QTest.keyRelease(window.crown, KEY)


def test_a_key_that_repeats_is_one_press(changed: MainWindow) -> None:
    now = shown(changed)
    QTest.keyPress(changed.crown, KEY)
    before = shown(changed)
    for kind in (QEvent.Type.KeyRelease, QEvent.Type.KeyPress):
        event = QKeyEvent(kind, int(KEY), NONE, "h", True, 1)
        QApplication.sendEvent(changed.crown, event)
        assert np.array_equal(shown(changed), before)
    QTest.keyRelease(changed.crown, KEY)
    assert np.array_equal(shown(changed), now)


def test_losing_the_keyboard_lets_go(changed: MainWindow, qtbot: QtBot) -> None:
    now = shown(changed)
    QTest.keyPress(changed.crown, KEY)
    assert not np.array_equal(shown(changed), now)
    changed.plan.table.setFocus()
    qtbot.waitUntil(lambda: not changed.crown.hasFocus())
    assert np.array_equal(shown(changed), now)
    assert not changed.ways.before.shows_before


def test_every_look_shows_what_was_before(changed: MainWindow) -> None:
    for look in (Look.BENCH, Look.VALUE, Look.OFFSET):
        changed.set_look(look)
        now = shown(changed)
        QTest.keyPress(changed.crown, KEY)
        assert not np.array_equal(shown(changed), now), look
        QTest.keyRelease(changed.crown, KEY)
        assert np.array_equal(shown(changed), now), look


def test_zones_of_before_are_shown_and_come_back(window: MainWindow) -> None:
    zones = case_of(window).zones.copy()
    zones[case_of(window).zones == int(Zone.BODY)] = int(Zone.CERVICAL)

    def all_cervical(case: Case) -> Case:
        return replace(case, zones=zones)

    window.session.edit("no body", all_cervical)
    window.set_look(Look.ZONES)
    body = int(Zone.BODY) - 1

    def has_body() -> bool:
        seen = window.crown.seen_values
        assert seen is not None
        assert seen.zones is not None
        return bool((seen.zones[:, body] > 0.5).any())

    assert not has_body()
    QTest.keyPress(window.crown, KEY)
    assert has_body()
    QTest.keyRelease(window.crown, KEY)
    assert not has_body()


def test_the_reading_under_the_pointer_is_of_what_is_shown(
    changed: MainWindow, qtbot: QtBot
) -> None:
    middle = QPoint(changed.crown.width() // 2, changed.crown.height() // 2)
    QTest.mouseMove(changed.crown, middle)
    qtbot.waitUntil(lambda: "L*" in changed.status.pointed.text())
    QTest.keyPress(changed.crown, KEY, SHIFT)
    qtbot.waitUntil(lambda: "no coats" in changed.status.pointed.text())
    QTest.keyRelease(changed.crown, KEY)


def test_the_menu_shows_it_without_holding_a_key_until_esc(changed: MainWindow) -> None:
    now = shown(changed)
    view = next(a.menu() for a in changed.top.menus.actions() if "View" in a.text())
    assert isinstance(view, QMenu)
    before, bare = act(view, "Before the last step"), act(view, "bare block")
    before.trigger()
    assert before.isChecked()
    assert not bare.isChecked()
    assert not np.array_equal(shown(changed), now)
    bare.trigger()
    assert (before.isChecked(), bare.isChecked()) == (False, True)
    bare.trigger()
    assert np.array_equal(shown(changed), now)
    before.trigger()
    QTest.keyClick(changed.crown, Qt.Key.Key_Escape)
    assert not before.isChecked()
    assert np.array_equal(shown(changed), now)


def test_the_next_step_ends_it(changed: MainWindow) -> None:
    changed.ways.before.show_before(True)
    changed.session.undo()
    assert not changed.ways.before.shows_before
    assert np.array_equal(shown(changed), predict_case(case_of(changed)).appearance.srgb)


# --- side by side ----------------------------------------------------------------------------


@pytest.fixture
def beside(changed: MainWindow, qtbot: QtBot) -> CompareWindow:
    """Return the window with two crowns, opened by its key."""
    QTest.keyClick(changed, Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    view = changed.ways.compare.view
    assert view is not None
    qtbot.waitExposed(view)
    return view


def test_the_step_before_stands_beside_with_its_figures(
    beside: CompareWindow, changed: MainWindow
) -> None:
    here, there = beside.here.prediction, beside.there.prediction
    history = changed.session.history
    assert history is not None
    assert here is changed.session.prediction
    assert there is not None
    assert there.case is history.entries[0].case
    assert there.shape is here.shape
    assert beside.there.title.text() == "Before the step: four coats"
    cells = beside.tables.areas.texts
    body = cells.index("body")
    one, two = here.outcome.area(Zone.BODY), there.outcome.area(Zone.BODY)
    assert one is not None
    assert two is not None
    row = cells[body : body + 10]
    assert row[2:4] == [f"{one.predicted.lightness:.1f}", f"{two.predicted.lightness:.1f}"]
    assert row[5:7] == [f"{one.predicted.chroma:.1f}", f"{two.predicted.chroma:.1f}"]
    assert row[4].startswith("+")
    facts = beside.tables.facts.texts
    assert facts[1:3] == ["7", "4"]
    assert "coats: body" in facts
    assert "jars: 3" in beside.here.effort.text()


def test_turning_one_crown_turns_the_other(beside: CompareWindow, qtbot: QtBot) -> None:
    for one, other in (
        (beside.here.view, beside.there.view),
        (beside.there.view, beside.here.view),
    ):
        start = one.camera.axes.copy()
        middle = QPoint(one.width() // 2, one.height() // 2)
        QTest.mousePress(one, RIGHT, NONE, middle)
        QTest.mouseMove(one, middle + QPoint(60, 25))
        QTest.mouseRelease(one, RIGHT, NONE, middle + QPoint(60, 25))
        assert np.abs(one.camera.axes - start).max() > 0.2
        np.testing.assert_array_equal(other.camera.axes, one.camera.axes)
        assert other.camera.height_mm == one.camera.height_mm
    one = beside.there.view
    QTest.keyClick(one, Qt.Key.Key_Plus)
    assert beside.here.view.camera.height_mm == one.camera.height_mm
    QTest.keyClick(beside.here.view, Qt.Key.Key_B)
    qtbot.waitUntil(lambda: np.array_equal(one.camera.axes, beside.here.view.camera.axes))


def test_a_place_is_read_on_both(beside: CompareWindow, qtbot: QtBot) -> None:
    view = beside.here.view
    QTest.mouseMove(view, QPoint(view.width() // 2, view.height() // 2))
    qtbot.waitUntil(view.probe_card.isVisible)
    qtbot.waitUntil(beside.there.view.probe_card.isVisible)
    one, two = (v.probe_card.accessibleDescription() for v in (view, beside.there.view))
    assert one.split(",")[0] == two.split(",")[0]
    assert view.task is PointerTask.TURN


def test_look_and_light_are_those_of_both(beside: CompareWindow, changed: MainWindow) -> None:
    QTest.keyClick(beside, Qt.Key.Key_5, Qt.KeyboardModifier.AltModifier)
    assert beside.look.currentText() == "Value"
    assert beside.here.view.look is beside.there.view.look is Look.VALUE
    beside.light_asked.emit("A")
    assert changed.session.seen.light == "A"
    here, there = beside.here.prediction, beside.there.prediction
    assert here is changed.session.prediction
    assert there is not None
    assert here.seen.light == there.seen.light == "A"
    assert nameless(beside) == []


def test_a_programme_the_bare_block_and_another_step_can_stand_there(
    beside: CompareWindow, changed: MainWindow
) -> None:
    menu = beside.against_menu
    menu.aboutToShow.emit()
    act(menu, "furnace", "fast").trigger()
    there = beside.there.prediction
    assert there is not None
    assert there.case.programme == "fast"
    assert "time, cold to opening" in beside.tables.facts.texts
    act(menu, "bare block").trigger()
    there = beside.there.prediction
    assert there is not None
    assert there.case.plan.steps == ()
    assert not beside.take.isEnabled()
    changed.session.undo()
    menu.aboutToShow.emit()
    act(menu, "history", "four coats").trigger()
    there = beside.there.prediction
    assert there is not None
    assert there.case.plan.steps[0].areas[0].coats == CoatSpan.exactly(4)


def test_the_left_side_follows_the_plan_and_so_does_what_is_made_of_it(
    beside: CompareWindow, changed: MainWindow
) -> None:
    act(beside.against_menu, "bare block").trigger()
    changed.session.edit("block", lambda case: edits.with_block(case, "light 3Y"))
    here, there = beside.here.prediction, beside.there.prediction
    assert here is changed.session.prediction
    assert there is not None
    assert there.case.plan.block == "light 3Y"


def test_what_stands_beside_is_taken_as_one_step(
    beside: CompareWindow, changed: MainWindow
) -> None:
    before = case_of(changed)
    there = beside.there.prediction
    assert there is not None
    beside.take.click()
    assert case_of(changed).plan == there.case.plan
    history = changed.session.history
    assert history is not None
    assert history.undo_label == "take the plan beside it (Before the step: four coats)"
    changed.session.undo()
    assert case_of(changed) is before


def test_a_case_file_stands_there_or_a_sentence_says_why_not(
    beside: CompareWindow, changed: MainWindow, tmp_path: Path, planned_case: Case
) -> None:
    good, wrong = tmp_path / "good.stainmap", tmp_path / "wrong.stainmap"
    write_case(edits.with_coats(planned_case, 0, Zone.BODY, CoatSpan.exactly(2)), good)
    write_case(dome_case(10, 30), wrong)
    changed.ways.compare.read_file(good)
    there, here = beside.there.prediction, beside.here.prediction
    assert there is not None
    assert here is not None
    assert there.case.plan.steps[0].areas[0].coats == CoatSpan.exactly(2)
    assert there.shape is here.shape
    assert beside.there.title.text() == "Case good"
    changed.ways.compare.read_file(wrong)
    assert "another mesh" in beside.progress.said.text()
    assert beside.there.prediction is there


def test_esc_or_another_case_closes_it(beside: CompareWindow, changed: MainWindow) -> None:
    QTest.keyClick(beside, Qt.Key.Key_Escape)
    assert changed.ways.compare.view is None
    assert not beside.isVisible()
    changed.ways.compare.open()
    assert changed.ways.compare.view is not None
    changed.session.adopt(case_of(changed), path=None, saved=True)
    assert changed.ways.compare.view is None


def test_ways_from_the_dialogs_lead_to_both_crowns(
    changed: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(WhatIfDialog, "exec", lambda dialog: dialog.crowns.click())
    changed.dialogs.compare_furnaces()
    view = changed.ways.compare.view
    assert view is not None
    there = view.there.prediction
    assert there is not None
    assert there.case.programme != case_of(changed).programme

    def stop(*_all: object, **_named: object) -> None:
        raise CancelledError("Stopped.")

    def click_the_second(dialog: SuggestDialog) -> None:
        links = [
            one
            for one in dialog.findChildren(QPushButton)
            if one.accessibleName().startswith("See the open plan beside")
        ]
        assert len(links) == len(dialog.takes) >= 2
        links[1].click()

    # Other blocks take long and are not asked for.
    monkeypatch.setattr("stainmap.app.suggesting.compare_blocks", stop)
    monkeypatch.setattr(SuggestDialog, "exec", click_the_second)
    changed.suggest.open()
    there = view.there.prediction
    assert there is not None
    assert there.case.plan != case_of(changed).plan
    assert view.there.title.text().startswith("Suggested plan: ")
    view.against_menu.aboutToShow.emit()
    offered = act(view.against_menu, "suggested").menu()
    assert isinstance(offered, QMenu)
    assert offered.actions()[0].text() == "Suggested", "the others stay at hand"
