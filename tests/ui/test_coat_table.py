"""Typing a plan: real keys and clicks on the coat table."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QGuiApplication, QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QMenu, QWidget
from pytestqt.qtbot import QtBot

from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Accent, Area, Zone
from stainmap.ui.coat_model import AreaRow, StepColumn
from stainmap.ui.coat_table import CoatTable
from stainmap.ui.marks import JarLook
from stainmap.ui.order_tag import OrderTag

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


def test_what_is_typed_is_in_the_table_when_a_menu_opens(
    table: CoatTable, edits: list[Edit]
) -> None:
    """A step that a menu adds makes the table anew: what was being typed would be gone."""
    typed(table, "4")
    menu = QMenu(table)
    menu.addAction("one")
    menu.popup(table.mapToGlobal(table.rect().center()))
    QTest.qWait(20)
    assert edits == [(0, Zone.BODY, CoatSpan.exactly(4))]
    table.set_plan(AREAS, (*steps(), steps()[0]), [BARLEY, SLATE])
    menu.close()
    assert table.hasFocus()


def test_what_is_typed_stays_while_a_prediction_arrives(
    table: CoatTable, edits: list[Edit]
) -> None:
    line = typed(table, "2")
    table.set_plan(AREAS, steps(), [BARLEY, SLATE])
    assert line.text() == "2"
    QTest.keyClick(line, "-")
    table.set_plan(AREAS, steps(), [BARLEY, SLATE])
    QTest.keyClick(line, "3")
    QTest.keyClick(line, Qt.Key.Key_Return)
    assert edits == [(0, Zone.BODY, CoatSpan(low=2, high=3))]


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


def test_home_and_end_go_to_the_ends_of_the_row_and_with_ctrl_of_the_table(
    table: CoatTable,
) -> None:
    ctrl = Qt.KeyboardModifier.ControlModifier
    QTest.keyClick(table, Qt.Key.Key_End)
    assert here(table) == (2, Zone.BODY)
    QTest.keyClick(table, Qt.Key.Key_Home)
    assert here(table) == (0, Zone.BODY)
    QTest.keyClick(table, Qt.Key.Key_End, ctrl)
    assert here(table) == (2, Accent.INNER_NECK_BAND)
    QTest.keyClick(table, Qt.Key.Key_Home, ctrl)
    assert here(table) == (0, Zone.CERVICAL)


# --- ranges ----------------------------------------------------------------------------------

SHIFT, CTRL = Qt.KeyboardModifier.ShiftModifier, Qt.KeyboardModifier.ControlModifier
ONE = CoatSpan.exactly
Many = tuple[tuple[Edit, ...], str]


@pytest.fixture
def many(table: CoatTable) -> list[Many]:
    found: list[Many] = []
    table.cells_edited.connect(lambda cells, label: found.append((cells, label)))
    return found


def clipboard() -> str:
    return QGuiApplication.clipboard().text()


def place_of(table: CoatTable, step: int, area: Area) -> QPoint:
    return table.visualRect(table.model().index(table.model().row_of(area), step)).center()


def test_shift_and_arrows_choose_a_range_that_delete_clears_at_once(
    table: CoatTable, edits: list[Edit], many: list[Many]
) -> None:
    table.select_cell(0, Zone.CERVICAL)
    QTest.keyClick(table, Qt.Key.Key_Right, SHIFT)
    for _ in range(3):
        QTest.keyClick(table, Qt.Key.Key_Down, SHIFT)
    assert here(table) == (0, Zone.CERVICAL), "typing still goes to the first cell"
    assert len(table.selectedIndexes()) == 8, "what reads the screen aloud knows the range"
    QTest.keyClick(table, Qt.Key.Key_Delete)
    (edit,) = many
    assert edit == (
        ((0, Zone.CERVICAL, None), (0, Zone.BODY, None), (1, Zone.CUSP, None)),
        "clear 3 cells",
    )
    assert edits == []
    QTest.keyClick(table, Qt.Key.Key_Escape)
    assert len(table.selectedIndexes()) == 1


def test_a_range_goes_over_titles_and_no_further_than_the_table(table: CoatTable) -> None:
    table.select_cell(1, Zone.FISSURE)
    QTest.keyClick(table, Qt.Key.Key_Down, SHIFT)
    assert len(table.selectedIndexes()) == 2
    QTest.keyClick(table, Qt.Key.Key_End, CTRL | SHIFT)
    assert len(table.selectedIndexes()) == 8
    QTest.keyClick(table, Qt.Key.Key_Down, SHIFT)
    assert len(table.selectedIndexes()) == 8
    QTest.keyClick(table, Qt.Key.Key_A, CTRL)
    assert len(table.selectedIndexes()) == 24


def test_a_drag_and_a_click_with_shift_choose_a_range(table: CoatTable, many: list[Many]) -> None:
    view, left = table.viewport(), Qt.MouseButton.LeftButton
    QTest.mousePress(view, left, pos=place_of(table, 0, Zone.CERVICAL))
    drag = QMouseEvent(
        QMouseEvent.Type.MouseMove,
        QPointF(place_of(table, 1, Zone.BODY)),
        view.mapToGlobal(QPointF(place_of(table, 1, Zone.BODY))),
        Qt.MouseButton.NoButton,
        left,
        Qt.KeyboardModifier.NoModifier,
    )
    QApplication.sendEvent(view, drag)
    QTest.mouseRelease(view, left, pos=place_of(table, 1, Zone.BODY))
    assert len(table.selectedIndexes()) == 4
    assert here(table) == (0, Zone.CERVICAL)
    QTest.mouseClick(view, left, pos=place_of(table, 0, Zone.BODY))
    assert len(table.selectedIndexes()) == 1
    QTest.mouseClick(view, left, SHIFT, place_of(table, 0, Zone.CUSP))
    QTest.keyClick(table, Qt.Key.Key_Plus)
    assert many == [], "one cell that changes is an edit like any other"
    assert len(table.selectedIndexes()) == 3


def test_plus_on_a_range_leaves_bare_cells_bare(table: CoatTable, many: list[Many]) -> None:
    table.select_cell(0, Zone.CERVICAL)
    for _ in range(2):
        QTest.keyClick(table, Qt.Key.Key_Down, SHIFT)
    QTest.keyClick(table, Qt.Key.Key_Plus)
    assert many == [
        (
            ((0, Zone.CERVICAL, CoatSpan(low=3, high=4)), (0, Zone.BODY, ONE(2))),
            "a coat more in 2 cells",
        )
    ]


def test_what_is_typed_goes_into_the_whole_range_with_ctrl_and_return(
    table: CoatTable, many: list[Many]
) -> None:
    table.select_cell(1, Zone.FISSURE)
    QTest.keyClick(table, Qt.Key.Key_Right, SHIFT)
    QTest.keyClick(typed(table, "2-3"), Qt.Key.Key_Return, CTRL)
    span = CoatSpan(low=2, high=3)
    assert many == [(((1, Zone.FISSURE, span), (2, Zone.FISSURE, span)), "2-3 coats in 2 cells")]


def test_copy_and_paste_go_through_text_with_tabs(
    table: CoatTable, edits: list[Edit], many: list[Many]
) -> None:
    table.select_cell(0, Zone.CERVICAL)
    QTest.keyClick(table, Qt.Key.Key_Right, SHIFT)
    QTest.keyClick(table, Qt.Key.Key_Down, SHIFT)
    QTest.keyClick(table, Qt.Key.Key_C, CTRL)
    assert clipboard() == "2\N{EN DASH}3\t\n1\t\n"
    QTest.keyClick(table, Qt.Key.Key_C, CTRL | SHIFT)
    assert clipboard().splitlines()[0] == "area\tstep 1 barley\tstep 2 slate"
    QTest.keyClick(table, Qt.Key.Key_X, CTRL)
    assert many.pop()[1] == "cut 2 cells"
    table.select_cell(1, Zone.CUSP)
    QTest.keyClick(table, Qt.Key.Key_V, CTRL)
    ((cells, label),) = many
    assert cells == (
        (1, Zone.CUSP, CoatSpan(low=2, high=3)),
        (1, Zone.FISSURE, ONE(1)),
    )
    assert label == "paste into 2 cells"
    assert edits == []


def test_a_block_with_one_bad_cell_is_refused_whole(
    table: CoatTable, qtbot: QtBot, edits: list[Edit], many: list[Many]
) -> None:
    QGuiApplication.clipboard().setText("1\t2\n3\tlots\n")
    with qtbot.waitSignal(table.refused) as said:
        QTest.keyClick(table, Qt.Key.Key_V, CTRL)
    assert "'lots' for interproximal, step 2 (line 2, column 2" in said.args[0]
    assert "Nothing was pasted." in said.args[0]
    assert edits == []
    assert many == []


def test_a_name_copies_the_coats_of_all_steps(table: CoatTable) -> None:
    table.select_row(Zone.CERVICAL)
    QTest.keyClick(table, Qt.Key.Key_C, CTRL)
    assert clipboard() == "2\N{EN DASH}3\t\t\n"


def test_l_locks_all_coats_of_a_range(table: CoatTable, qtbot: QtBot) -> None:
    table.select_cell(0, Zone.CERVICAL)
    QTest.keyClick(table, Qt.Key.Key_A, CTRL)
    with qtbot.waitSignal(table.lock_requested) as asked:
        QTest.keyClick(table, "l")
    assert asked.args == [((0, Zone.CERVICAL), (0, Zone.BODY), (1, Zone.CUSP)), True]


# --- the order of steps ----------------------------------------------------------------------


def head_place(table: CoatTable, step: int, share: float = 0.5) -> QPoint:
    head = table.horizontalHeader()
    x = head.sectionViewportPosition(step) + round(share * head.sectionSize(step))
    return QPoint(x, 20)


def drag_to(table: CoatTable, start: QPoint, end: QPoint) -> None:
    """Press on the head of the steps and go to another place, without letting go."""
    view, left = table.horizontalHeader().viewport(), Qt.MouseButton.LeftButton
    QTest.mousePress(view, left, pos=start)
    for place in (start + (end - start) / 2, end):
        event = QMouseEvent(
            QMouseEvent.Type.MouseMove,
            QPointF(place),
            view.mapToGlobal(QPointF(place)),
            Qt.MouseButton.NoButton,
            left,
            Qt.KeyboardModifier.NoModifier,
        )
        QApplication.sendEvent(view, event)


def test_a_step_is_dragged_to_another_place(table: CoatTable) -> None:
    view, left = table.horizontalHeader().viewport(), Qt.MouseButton.LeftButton
    dragged: list[tuple[int, int]] = []
    moved: list[tuple[int, int]] = []
    table.step_dragged.connect(lambda *one: dragged.append(one))
    table.step_move_requested.connect(lambda *one: moved.append(one))
    for start, end, expected in ((0, 2, (0, 2)), (2, 0, (2, 0)), (1, 2, (1, 2))):
        dragged.clear()
        share = 0.9 if end > start else 0.1
        drag_to(table, head_place(table, start), head_place(table, end, share))
        assert dragged[-1] == expected
        QTest.mouseRelease(view, left, pos=head_place(table, end, share))
        assert moved.pop() == expected
        assert dragged[-1] == (-1, -1)
    assert moved == []


def test_esc_lets_go_of_a_step_that_is_dragged(table: CoatTable) -> None:
    view, left = table.horizontalHeader().viewport(), Qt.MouseButton.LeftButton
    moved: list[tuple[int, int]] = []
    table.step_move_requested.connect(lambda *one: moved.append(one))
    drag_to(table, head_place(table, 0), head_place(table, 2, 0.9))
    QTest.keyClick(table, Qt.Key.Key_Escape)
    QTest.mouseRelease(view, left, pos=head_place(table, 2, 0.9))
    assert moved == []


def test_a_click_on_a_step_chooses_it(table: CoatTable) -> None:
    view = table.horizontalHeader().viewport()
    QTest.mouseClick(view, Qt.MouseButton.LeftButton, pos=head_place(table, 2))
    assert here(table) == (2, Zone.BODY)


def test_ctrl_shift_and_arrows_move_the_step_and_the_choice_with_it(
    table: CoatTable, qtbot: QtBot
) -> None:
    with qtbot.waitSignal(table.step_move_requested) as asked:
        QTest.keyClick(table, Qt.Key.Key_Right, CTRL | SHIFT)
    assert asked.args == [0, 1]
    assert here(table) == (1, Zone.BODY)
    with qtbot.assertNotEmitted(table.step_move_requested):
        table.select_cell(0, Zone.BODY)
        QTest.keyClick(table, Qt.Key.Key_Left, CTRL | SHIFT)


def test_what_a_new_place_changes_stands_beside_the_step(table: CoatTable) -> None:
    (label,) = table.findChildren(OrderTag)
    table.show_order(0, 2, "dE00 0.4, cusp")
    assert label.isVisible()
    assert label.text() == "step 1 as step 3: dE00 0.4, cusp"
    table.show_order(None, -1, "")
    assert label.isHidden()


def test_a_jar_with_a_warning_says_so_at_its_steps(table: CoatTable) -> None:
    warned = replace(SLATE, recipe="red on chalk", warnings=("Looks like jar 1 on chalk.",))
    before = table.horizontalHeader().grab().toImage()
    table.set_plan(AREAS, [StepColumn(jar=BARLEY), StepColumn(jar=warned)], [BARLEY, warned])
    tip = table.model().headerData(1, Qt.Orientation.Horizontal, Qt.ItemDataRole.ToolTipRole)
    assert tip.splitlines()[1:3] == ["red on chalk", "Looks like jar 1 on chalk."]
    assert table.horizontalHeader().grab().toImage() != before


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
    bare = table.grab().toImage()
    own = replace(steps()[0], coats={**steps()[0].coats, Accent.MARGIN_BAND: ONE(1)})
    table.set_plan(AREAS, [own, *steps()[1:]], [BARLEY, SLATE])
    assert said(0, Accent.MARGIN_BAND) == (
        "margin band, step 1 barley: 1 coat on 1/2 inherited from the zone below"
    )
    assert table.grab().toImage() != bare
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
