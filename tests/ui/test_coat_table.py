"""Typing a plan: real keys and clicks on the coat table."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Accent, Area, Zone
from stainmap.ui.coat_model import AreaRow, StepColumn
from stainmap.ui.coat_table import CoatTable
from stainmap.ui.marks import JarLook

BARLEY = JarLook(number=1, liquid="barley", dye="#7fbfd0")
SLATE = JarLook(number=2, liquid="slate", dye="#dc7f8f")
AREAS = tuple(
    AreaRow(area=area, name=area.label)
    for area in (*Zone, Accent.MARGIN_BAND, Accent.INNER_NECK_BAND)
)


def steps() -> list[StepColumn]:
    return [
        StepColumn(
            jar=BARLEY,
            coats={Zone.BODY: CoatSpan.exactly(1), Zone.CERVICAL: CoatSpan(low=2, high=3)},
            inherited={Accent.MARGIN_BAND: "1/2"},
        ),
        StepColumn(
            jar=SLATE, coats={Zone.CUSP: CoatSpan.exactly(2)}, brushed=frozenset({Zone.CUSP})
        ),
        StepColumn(jar=SLATE),
    ]


Edit = tuple[int, Area, CoatSpan | None]


@pytest.fixture
def edits() -> list[Edit]:
    return []


@pytest.fixture
def table(qtbot: QtBot, edits: list[Edit]) -> CoatTable:
    frame = QWidget()
    one = CoatTable(frame)
    one.resize(404, 400)
    frame.resize(420, 420)
    qtbot.addWidget(frame)
    frame.show()
    qtbot.waitExposed(frame)
    frame.activateWindow()
    one.set_plan(AREAS, steps(), [BARLEY, SLATE])
    one.coats_edited.connect(lambda *edit: edits.append(edit))
    one.setFocus()
    # The screen tells a moment later that the window is the active one.
    qtbot.waitUntil(one.hasFocus)
    one.select_cell(0, Zone.BODY)
    one.frame_ = frame
    return one


def typed(table: CoatTable, text: str) -> QLineEdit:
    """Type into the table, then into the line that opened; return the line."""
    QTest.keyClick(table, text[0])
    (line,) = table.findChildren(QLineEdit)
    for key in text[1:]:
        QTest.keyClick(line, key)
    return line


def here(table: CoatTable) -> tuple[int, Area | None]:
    index = table.currentIndex()
    return index.column(), table.model().area_at(index.row())


def test_a_digit_and_enter_set_a_number(table: CoatTable, edits: list[Edit]) -> None:
    QTest.keyClick(typed(table, "4"), Qt.Key.Key_Return)
    assert edits == [(0, Zone.BODY, CoatSpan.exactly(4))]
    assert here(table) == (0, Zone.INTERPROXIMAL)


def test_a_span_is_typed_with_a_hyphen(table: CoatTable, edits: list[Edit]) -> None:
    QTest.keyClick(typed(table, "2-3"), Qt.Key.Key_Tab)
    assert edits == [(0, Zone.BODY, CoatSpan(low=2, high=3))]
    assert here(table) == (1, Zone.BODY)


def test_twelve_is_not_read_as_one(table: CoatTable, edits: list[Edit]) -> None:
    QTest.keyClick(typed(table, "12"), Qt.Key.Key_Down)
    assert edits == [(0, Zone.BODY, CoatSpan.exactly(12))]


def test_escape_leaves_the_cell_as_it_was(table: CoatTable, edits: list[Edit]) -> None:
    QTest.keyClick(typed(table, "7"), Qt.Key.Key_Escape)
    assert edits == []
    assert here(table) == (0, Zone.BODY)


def test_typing_the_same_number_is_no_edit(table: CoatTable, edits: list[Edit]) -> None:
    QTest.keyClick(typed(table, "1"), Qt.Key.Key_Return)
    assert edits == []


def test_letters_are_no_coats(table: CoatTable, edits: list[Edit]) -> None:
    QTest.keyClick(table, "x")
    assert table.findChildren(QLineEdit) == []
    assert typed(table, "2x").text() == "2"
    assert edits == []


def test_a_span_with_the_larger_number_first_is_refused_in_words(
    table: CoatTable, edits: list[Edit], qtbot: QtBot
) -> None:
    with qtbot.waitSignal(table.refused) as said:
        QTest.keyClick(typed(table, "3-2"), Qt.Key.Key_Return)
    assert "3-2 is not a number of coats" in said.args[0]
    assert edits == []


@pytest.mark.parametrize("key", [Qt.Key.Key_Delete, Qt.Key.Key_Backspace])
def test_delete_clears(table: CoatTable, edits: list[Edit], key: Qt.Key) -> None:
    QTest.keyClick(table, key)
    assert edits == [(0, Zone.BODY, None)]


def test_zero_clears_too(table: CoatTable, edits: list[Edit]) -> None:
    QTest.keyClick(typed(table, "0"), Qt.Key.Key_Return)
    assert edits == [(0, Zone.BODY, None)]


def test_plus_and_minus_change_by_one_at_both_ends_of_a_span(
    table: CoatTable, edits: list[Edit]
) -> None:
    QTest.keyClick(table, Qt.Key.Key_Plus)
    table.select_cell(0, Zone.CERVICAL)
    QTest.keyClick(table, Qt.Key.Key_Minus)
    table.select_cell(2, Zone.FISSURE)
    QTest.keyClick(table, Qt.Key.Key_Plus)
    assert edits == [
        (0, Zone.BODY, CoatSpan.exactly(2)),
        (0, Zone.CERVICAL, CoatSpan(low=1, high=2)),
        (2, Zone.FISSURE, CoatSpan.exactly(1)),
    ]


def test_arrows_walk_over_the_titles_of_groups(table: CoatTable) -> None:
    table.select_cell(1, Zone.FISSURE)
    QTest.keyClick(table, Qt.Key.Key_Down)
    assert here(table) == (1, Accent.MARGIN_BAND)
    QTest.keyClick(table, Qt.Key.Key_Down)
    assert here(table) == (1, Zone.INNER)
    QTest.keyClick(table, Qt.Key.Key_Up)
    QTest.keyClick(table, Qt.Key.Key_Up)
    assert here(table) == (1, Zone.FISSURE)
    QTest.keyClick(table, Qt.Key.Key_Right)
    QTest.keyClick(table, Qt.Key.Key_Right)
    assert here(table) == (2, Zone.FISSURE)


def test_left_from_the_first_step_chooses_the_areas_name(table: CoatTable, qtbot: QtBot) -> None:
    with qtbot.waitSignal(table.row_selected) as chosen:
        QTest.keyClick(table, Qt.Key.Key_Left)
    assert chosen.args == [Zone.BODY]
    with qtbot.waitSignal(table.row_selected) as chosen:
        QTest.keyClick(table, Qt.Key.Key_Down)
    assert chosen.args == [Zone.INTERPROXIMAL]
    with qtbot.waitSignal(table.cell_selected) as cell:
        QTest.keyClick(table, Qt.Key.Key_Right)
    assert cell.args == [0, Zone.INTERPROXIMAL]


def test_a_name_takes_no_digits(table: CoatTable, edits: list[Edit]) -> None:
    QTest.keyClick(table, Qt.Key.Key_Left)
    QTest.keyClick(table, "5")
    QTest.keyClick(table, Qt.Key.Key_Delete)
    assert table.findChildren(QLineEdit) == []
    assert edits == []


def test_a_click_on_a_name_and_on_a_cell_says_which(table: CoatTable, qtbot: QtBot) -> None:
    header = table.verticalHeader()
    row = table.model().row_of(Zone.CUSP)
    with qtbot.waitSignal(table.row_selected) as chosen:
        place = QPoint(60, header.sectionViewportPosition(row) + 10)
        QTest.mouseClick(header.viewport(), Qt.MouseButton.LeftButton, pos=place)
    assert chosen.args == [Zone.CUSP]
    cell = table.visualRect(table.model().index(row, 1)).center()
    with qtbot.waitSignal(table.cell_selected) as said:
        QTest.mouseClick(table.viewport(), Qt.MouseButton.LeftButton, pos=cell)
    assert said.args == [1, Zone.CUSP]


def test_tab_walks_the_cells_and_leaves_after_the_last(table: CoatTable) -> None:
    after = QLineEdit(table.frame_)
    after.show()
    QWidget.setTabOrder(table, after)
    table.select_cell(2, Zone.FISSURE)
    QTest.keyClick(table, Qt.Key.Key_Tab)
    assert here(table) == (0, Accent.MARGIN_BAND)
    table.select_cell(2, Accent.INNER_NECK_BAND)
    QTest.keyClick(table, Qt.Key.Key_Tab)
    assert after.hasFocus()


def test_a_new_plan_keeps_the_current_cell(table: CoatTable) -> None:
    table.select_cell(1, Zone.CUSP)
    table.set_plan(AREAS, [*steps(), StepColumn(jar=BARLEY)], [BARLEY, SLATE])
    assert here(table) == (1, Zone.CUSP)
    table.set_plan(AREAS, steps()[:1], [BARLEY])
    assert here(table) == (0, Zone.CUSP)


def test_many_steps_scroll_and_few_fill_the_room(table: CoatTable) -> None:
    assert table.columnWidth(0) > 36
    assert table.horizontalScrollBar().maximum() == 0
    table.set_plan(AREAS, [StepColumn(jar=BARLEY)] * 24, [BARLEY])
    assert table.columnWidth(0) == 36
    assert table.horizontalScrollBar().maximum() > 0


def test_every_cell_speaks(table: CoatTable) -> None:
    model = table.model()

    def said(step: int, area: Area) -> str:
        return model.index(model.row_of(area), step).data(Qt.ItemDataRole.AccessibleTextRole)

    assert said(0, Zone.BODY) == "body, step 1 barley: 1 coat"
    assert said(0, Zone.CERVICAL) == "cervical, step 1 barley: 2-3 coats"
    assert said(0, Accent.MARGIN_BAND) == (
        "margin band, step 1 barley: 1/2 inherited from the zone below"
    )
    assert said(1, Zone.CUSP) == "cusp, step 2 slate: 2 coats, brushed by hand too"
    assert said(2, Zone.FISSURE) == "fissure, step 3 slate: no coats"
    heads = [
        model.headerData(k, Qt.Orientation.Horizontal, Qt.ItemDataRole.AccessibleTextRole)
        for k in range(3)
    ]
    assert heads[2] == "step 3, jar 2 slate"


def press(table: CoatTable, step: int, text: str) -> None:
    menu = table.step_menu(step)
    actions = [
        *menu.actions(),
        *(a for sub in menu.actions() if sub.menu() for a in sub.menu().actions()),
    ]
    (action,) = [action for action in actions if action.text() == text]
    assert action.isEnabled()
    action.trigger()


@pytest.mark.parametrize(
    ("text", "signal", "expected"),
    [
        ("Add a step after this one", lambda t: t.step_add_requested, [2, 2]),
        ("Remove this step", lambda t: t.step_remove_requested, [1]),
        ("Paint it earlier", lambda t: t.step_move_requested, [1, 0]),
        ("Paint it later", lambda t: t.step_move_requested, [1, 2]),
        ("jar 1, barley", lambda t: t.step_jar_requested, [1, 1]),
    ],
)
def test_the_steps_menu(
    table: CoatTable,
    qtbot: QtBot,
    text: str,
    signal: Callable[[CoatTable], object],
    expected: list[int],
) -> None:
    with qtbot.waitSignal(signal(table)) as sent:
        press(table, 1, text)
    assert sent.args == expected


def test_the_first_step_cannot_be_painted_earlier(table: CoatTable) -> None:
    actions = {action.text(): action for action in table.step_menu(0).actions()}
    assert not actions["Paint it earlier"].isEnabled()
    actions = {action.text(): action for action in table.step_menu(2).actions()}
    assert not actions["Paint it later"].isEnabled()
