"""The list of steps with small pictures: what it lists, where it leads, what it costs hidden."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from stainmap.app import edits
from stainmap.app.prediction import predict_case
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Zone
from stainmap.ui.history_list import HistoryList, Standing, in_two_lines
from stainmap.ui.main_window import MainWindow
from stainmap.ui.picture_canvas import PictureCanvas
from tests.ui.accessible_tree import nameless
from tests.ui.small_dome import small_planned_case

LEFT, NONE, CTRL = (
    Qt.MouseButton.LeftButton,
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.ControlModifier,
)


@pytest.fixture(scope="module")
def planned_case() -> Case:
    return small_planned_case()


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Test without OpenGL, and without computed pictures, what is the same with them."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")
    monkeypatch.setattr(PictureCanvas, "_draw_now", lambda _canvas: None)


def edit(window: MainWindow, coats: int) -> None:
    window.session.edit(
        f"{coats} coats on the body",
        lambda case: edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(coats)),
    )


@pytest.fixture
def listed(window: MainWindow, qtbot: QtBot) -> HistoryList:
    """Return the list after three steps, shown by its key."""
    for coats in (2, 3, 4):
        edit(window, coats)
    QTest.keyClick(window, Qt.Key.Key_H, CTRL)
    steps = window.ways.panel.list
    qtbot.waitUntil(lambda: window.ways.panel.isVisible() and steps.steps.rowCount() == 4)
    qtbot.waitUntil(lambda: all(steps.steps.picture(n) is not None for n in range(4)))
    return steps


def standings(steps: HistoryList) -> list[Standing]:
    return [row.standing for row in steps.steps.rows]


def click(steps: HistoryList, number: int) -> None:
    place = steps.visualRect(steps.steps.index(number)).center()
    QTest.mouseClick(steps.viewport(), LEFT, NONE, place)


def test_every_step_is_listed_with_its_picture(listed: HistoryList, window: MainWindow) -> None:
    labels = [row.label for row in listed.steps.rows]
    assert labels == ["as it was opened", *(f"{n} coats on the body" for n in (2, 3, 4))]
    assert standings(listed) == [Standing.DONE] * 3 + [Standing.CURRENT]
    assert window.ways.panel.head.remark.text() == "3 steps"
    assert nameless(window.ways.panel) == []
    # More barley is darker, picture by picture.
    means = []
    for number in range(4):
        picture = listed.steps.picture(number)
        assert picture is not None
        image = picture.toImage().convertToFormat(picture.toImage().Format.Format_RGB888)
        data = np.frombuffer(image.constBits(), np.uint8, image.sizeInBytes())
        means.append(float(data.reshape(image.height(), -1)[:, : 3 * image.width()].mean()))
    assert means == sorted(means, reverse=True)
    assert means[0] > means[3] + 1.0


def test_a_click_goes_there_and_undone_steps_say_so(
    listed: HistoryList, window: MainWindow, qtbot: QtBot
) -> None:
    history = window.session.history
    assert history is not None
    click(listed, 1)
    assert window.session.case is history.entries[1].case
    qtbot.waitUntil(lambda: standings(listed)[1] is Standing.CURRENT)
    assert standings(listed) == [
        Standing.DONE,
        Standing.CURRENT,
        Standing.UNDONE,
        Standing.UNDONE,
    ]
    assert window.ways.panel.head.remark.text() == "3 steps, 2 undone"
    spoken = [
        listed.steps.data(listed.steps.index(n), int(Qt.ItemDataRole.AccessibleTextRole))
        for n in range(4)
    ]
    assert spoken[1] == "Step 1, 2 coats on the body, where the case stands now"
    assert spoken[3] == "Step 3, 4 coats on the body, undone"
    click(listed, 3)
    assert window.session.case is history.case


def test_it_is_worked_by_keys(listed: HistoryList, window: MainWindow, qtbot: QtBot) -> None:
    history = window.session.history
    assert history is not None
    listed.setFocus()
    for _ in range(3):
        QTest.keyClick(listed, Qt.Key.Key_Up)
    assert window.session.case is history.case, "choosing alone goes nowhere"
    QTest.keyClick(listed, Qt.Key.Key_Return)
    assert window.session.case is history.entries[0].case
    qtbot.waitUntil(lambda: standings(listed)[0] is Standing.CURRENT)
    QTest.keyClick(listed, Qt.Key.Key_Down)
    QTest.keyClick(listed, Qt.Key.Key_Space)
    assert window.session.case is history.entries[1].case


def test_undo_and_a_new_step_are_followed(
    listed: HistoryList, window: MainWindow, qtbot: QtBot
) -> None:
    window.session.undo()
    window.session.undo()
    qtbot.waitUntil(lambda: standings(listed)[1] is Standing.CURRENT)
    edit(window, 6)
    qtbot.waitUntil(lambda: listed.steps.rowCount() == 3)
    assert listed.steps.rows[2].label == "6 coats on the body"
    qtbot.waitUntil(lambda: listed.steps.picture(2) is not None)
    assert len(window.ways.history._pictures) == 3, "pictures of dropped steps go with them"


def test_states_that_nobody_saw_are_worked_out(window: MainWindow, qtbot: QtBot) -> None:
    edit(window, 5)
    window.ways.history._colours.clear()
    QTest.keyClick(window, Qt.Key.Key_H, CTRL)
    steps = window.ways.panel.list
    qtbot.waitUntil(lambda: steps.steps.rowCount() == 2)
    qtbot.waitUntil(lambda: all(steps.steps.picture(n) is not None for n in range(2)))
    case, prediction = window.session.case, window.session.prediction
    assert case is not None
    assert prediction is not None
    # The prediction of the open case was left as it stood.
    alone = predict_case(case).appearance.lab
    np.testing.assert_allclose(prediction.engine.end_stroke().lab, alone, atol=0.05)


def test_hidden_it_makes_no_pictures(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("stainmap.app.history_pictures.rasterise", None)
    assert not window.ways.panel.isVisible()
    edit(window, 5)
    window.session.undo()
    assert window.ways.panel.list.steps.rowCount() == 0


def test_another_light_makes_other_pictures(
    listed: HistoryList, window: MainWindow, qtbot: QtBot
) -> None:
    old = listed.steps.picture(3)
    window.see_under("A", 2)
    qtbot.waitUntil(
        lambda: (
            listed.steps.picture(3) is not None
            and len(window.ways.history._pictures) == 4
            and listed.steps.picture(3) is not old
        )
    )


def test_a_narrow_window_takes_it_along(listed: HistoryList, window: MainWindow) -> None:
    ways, outcome = window.ways, window.outcome_dock
    window.resize(1100, 760)
    QTest.qWait(50)
    assert ways.dock in window.tabifiedDockWidgets(window.plan_dock)
    window.resize(1500, 900)
    QTest.qWait(50)
    assert ways.dock in window.tabifiedDockWidgets(outcome)
    assert window.plan_dock not in window.tabifiedDockWidgets(outcome)
    assert not ways.dock.isHidden()


def test_hidden_it_leaves_the_tabs_alone_and_comes_up_where_they_are(window: MainWindow) -> None:
    ways = window.ways
    window.resize(1100, 760)
    QTest.qWait(50)
    assert window.plan.table.isVisible(), "the plan is up in a narrow window"
    assert not ways.panel.isVisible()
    QTest.keyClick(window, Qt.Key.Key_H, CTRL)
    QTest.qWait(50)
    assert ways.panel.isVisible()
    assert ways.dock in window.tabifiedDockWidgets(window.plan_dock)
    QTest.keyClick(window, Qt.Key.Key_H, CTRL)
    assert not ways.panel.isVisible()


def test_long_words_break_once_between_words() -> None:
    first, second = in_two_lines("change what lies behind the crown", 120.0, 450)
    assert f"{first} {second}" == "change what lies behind the crown"
    assert in_two_lines("short", 120.0, 450) == ("short", "")
    assert in_two_lines("", 120.0, 450) == ("", "")
