"""The coat table at work in the window: ranges, the order of steps, warnings, neighbours."""

from __future__ import annotations

from dataclasses import replace

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from stainmap.model.case import Case
from stainmap.model.colour import Colour, Measurement
from stainmap.model.intake import Intake, Neighbour, Shade, ShadeSource
from stainmap.model.plan import CoatSpan, StainPlan
from stainmap.model.tooth import Tooth
from stainmap.model.zone import Zone
from stainmap.optics.difference import delta_e_00
from stainmap.ui.coat_table import CoatTable
from stainmap.ui.main_window import MainWindow
from stainmap.ui.order_tag import OrderTag

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


@pytest.fixture
def table(qtbot: QtBot, window: MainWindow) -> CoatTable:
    one = window.plan.table
    one.setFocus()
    qtbot.waitUntil(one.hasFocus)
    return one


def _cusp_in_all(case: Case) -> StainPlan:
    plan = case.plan
    for index, step in enumerate(plan.steps):
        plan = plan.with_step(index, step.with_coats(Zone.CUSP, CoatSpan.exactly(4)))
    return plan


def case_of(window: MainWindow) -> Case:
    case = window.session.case
    assert case is not None
    return case


def test_blocks_are_pasted_whole_or_not_at_all_each_as_one_step_of_undo(
    window: MainWindow, table: CoatTable
) -> None:
    before = case_of(window)
    table.select_cell(0, Zone.BODY)
    QGuiApplication.clipboard().setText("1\t2\t3\n2\t3-4\t\n")
    QTest.keyClick(table, Qt.Key.Key_V, CTRL)
    table.select_cell(0, Zone.BODY)
    for _ in range(2):
        QTest.keyClick(table, Qt.Key.Key_Right, SHIFT)
    QTest.keyClick(table, Qt.Key.Key_Down, SHIFT)
    QTest.keyClick(table, Qt.Key.Key_C, CTRL)
    assert QGuiApplication.clipboard().text() == "1\t2\t3\n2\t3\N{EN DASH}4\t\n"
    history = window.session.history
    assert history is not None
    # One coat lay on the body before, and two of the second step on the cusp.
    assert history.undo_label == "paste into 4 cells"
    window.session.undo()
    assert window.session.case is before
    # A bad cell.
    table.select_cell(0, Zone.CUSP)
    QGuiApplication.clipboard().setText("1\tx\n")
    QTest.keyClick(table, Qt.Key.Key_V, CTRL)
    assert window.session.case is before
    assert window.plan.note.text().startswith("'x' for cusp, step 2")
    assert "Nothing was pasted." in window.status.message.text()
    # From one place to another, by keys alone.
    table.select_cell(0, Zone.BODY)
    QTest.keyClick(table, Qt.Key.Key_C, CTRL)
    QTest.keyClick(table, Qt.Key.Key_Right)
    QTest.keyClick(table, Qt.Key.Key_Down, SHIFT)
    QTest.keyClick(table, Qt.Key.Key_V, CTRL)
    step = case_of(window).plan.steps[1]
    assert [entry.area for entry in step.areas[:2]] == [Zone.BODY, Zone.CUSP]
    QTest.keyClick(table, Qt.Key.Key_L)
    assert [entry.locked for entry in case_of(window).plan.steps[1].areas[:2]] == [True, True]
    window.session.undo()
    assert not any(entry.locked for entry in case_of(window).plan.steps[1].areas)


def test_another_order_says_what_it_changes_after_a_move_and_while_a_step_is_dragged(
    window: MainWindow, table: CoatTable
) -> None:
    session = window.session
    session.edit("cusp", lambda c: replace(c, plan=_cusp_in_all(c)))
    before = session.outcome
    table.select_cell(2, Zone.CUSP)
    QTest.keyClick(table, Qt.Key.Key_Left, CTRL | SHIFT)
    assert [case_of(window).plan.liquid_of(s) for s in case_of(window).plan.steps] == [
        "barley",
        "umber",
        "slate",
    ]
    after = session.outcome
    assert before is not None
    assert after is not None
    one, other = before.area(Zone.CUSP), after.area(Zone.CUSP)
    assert one is not None
    assert other is not None
    figure = float(delta_e_00(one.predicted.lab, other.predicted.lab))
    said = window.status.message.text()
    assert said.startswith("Step 3, umber, is step 2 now: ")
    assert f"cusp changes by dE00 {figure:.1f}" in said
    session.undo()
    assert case_of(window).plan.liquid_of(case_of(window).plan.steps[2]) == "umber"
    # While it is dragged.
    (tag,) = table.findChildren(OrderTag)
    table.step_dragged.emit(2, 0)
    assert tag.isVisible()
    assert tag.text().startswith("step 3 as step 1: dE00 ")
    assert not tag.text().startswith("step 3 as step 1: dE00 0.0")
    table.step_dragged.emit(2, 2)
    assert tag.text() == "step 3 stays"
    table.step_dragged.emit(-1, -1)
    assert tag.isHidden()


def test_warnings_stand_at_their_jars_and_neighbours_on_the_ladder(
    window: MainWindow, table: CoatTable
) -> None:
    assert "inherited" in window.plan.note.text()
    case = case_of(window)
    first, second = case.plan.jars[:2]
    jars = (first, replace(second, dye_drops=first.dye_drops), *case.plan.jars[2:])
    window.session.edit("dye", lambda c: replace(c, plan=replace(c.plan, jars=jars)))
    table.select_cell(1, Zone.CUSP)
    assert window.plan.note.text().startswith("Jar 2: Its blue dye looks like what slate does")
    assert "Looks like jar 1 on chalk" in table.columns[1].jar.warnings[1]
    table.select_cell(0, Zone.BODY)
    assert window.plan.note.text().startswith("Jar 1: ")
    window.session.undo()
    assert "inherited" in window.plan.note.text()
    # Neighbours.
    how = Measurement(backing=case_of(window).backings[0].stump)
    shade = Shade(
        source=ShadeSource.MEASURED,
        colour=Colour(lightness=71.5, a=1.0, b=18.0, measurement=how),
    )
    intake = Intake(neighbours=(Neighbour(tooth=Tooth(number=35), shade=shade),))
    window.session.edit("neighbour", lambda c: replace(c, intake=intake))
    assert "beside it 35 L* 71.5" in window.outcome.ladder.accessibleDescription()
    assert not window.outcome.ladder.grab().isNull()

    # A plan without coats: nothing is made of the day, and the table says how to go on.
    window.session.edit("clear", lambda c: replace(c, plan=StainPlan(block=c.plan.block)))
    assert window.run.accessibleDescription().startswith("No coats in this plan yet")
    assert "No steps yet" in table.accessibleDescription()
    assert window.plan.note.text() == ""
    assert not table.grab().isNull()
    window.session.undo()
    assert table.accessibleDescription() == ""
