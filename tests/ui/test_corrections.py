"""The menu "Crown": what a person corrects of the reading, and what was noticed in it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QInputDialog, QMenu
from pytestqt.qtbot import QtBot

from stainmap.app.opening import Answers, build_case, look_at_mesh, units_from_numbers
from stainmap.model.case import Case
from stainmap.model.crown import BodyKind
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.ui.main_window import MainWindow
from stainmap.ui.teeth_dialog import TeethDialog
from stainmap.units import SizeState

LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier
ALT = Qt.KeyboardModifier.AltModifier


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Test without OpenGL what is the same with it."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")


@pytest.fixture
def asked(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> list[Answers]:
    """Return what the session is asked to read again; the dome itself is no crown to read."""
    heard: list[Answers] = []
    monkeypatch.setattr(window.session, "reread", heard.append)
    return heard


def choose(window: MainWindow, words: str) -> None:
    """Choose an entry of the menu with the mouse."""
    bar = window.top.menus
    entry = next(a for a in bar.actions() if a.text() == "&Crown")
    QTest.mouseClick(bar, LEFT, NONE, bar.actionGeometry(entry).center())
    menu = entry.menu()
    assert isinstance(menu, QMenu)
    action = next(a for a in menu.actions() if words in a.text().replace("&", ""))
    assert action.isEnabled()
    QTest.mouseClick(menu, LEFT, NONE, menu.actionGeometry(action).center())


def in_dialog(kind: type, act: Callable[[object], None]) -> None:
    """Act in a dialog once it is open."""

    def try_it() -> None:
        one = QApplication.activeModalWidget()
        if isinstance(one, kind):
            act(one)
        else:
            QTimer.singleShot(20, try_it)

    QTimer.singleShot(20, try_it)


def adopt(window: MainWindow, case: Case) -> None:
    window.session.adopt(case, path=None, saved=True)


def test_the_biting_side_can_always_be_said(
    window: MainWindow, asked: list[Answers], qtbot: QtBot
) -> None:
    choose(window, "which side bites")
    assert window.flow.message.accessibleName() == "Which way does it bite?"
    window.crown.look_along(np.array([0.0, 1.0, 0.0]), np.array([0.0, 0.0, 1.0]))
    qtbot.waitUntil(lambda: window.crown.camera.axes[2][1] > 0.9999999, timeout=5000)
    QTest.mouseClick(window.flow.message.buttons[0], LEFT)
    (answers,) = asked
    assert answers.occlusal_axis == pytest.approx((0.0, 1.0, 0.0), abs=1e-3)
    assert window.flow.message.isHidden()


def test_mesial_is_said_on_the_crown_and_esc_takes_the_question_back(
    window: MainWindow, asked: list[Answers], qtbot: QtBot
) -> None:
    choose(window, "where mesial is")
    assert window.flow.is_asking
    QTest.keyClick(window.crown, Qt.Key.Key_Escape)
    assert not window.flow.is_asking
    assert window.flow.message.isHidden()
    choose(window, "where mesial is")
    window.crown.look_along(np.array([0.0, -1.0, 0.0]), np.array([0.0, 0.0, 1.0]))
    qtbot.waitUntil(lambda: window.crown.camera.axes[2][1] < -0.9999999, timeout=5000)
    view = window.crown
    side = np.array([0.0, -4.8, 1.4])
    x, y, _ = view.camera.project(side, view.width(), view.height())[0]
    QTest.mouseClick(view, LEFT, NONE, QPoint(round(x), round(y)))
    (answers,) = asked
    assert answers.mesial is not None
    assert answers.mesial[1] < -4.0


def test_another_tooth_is_read_as_the_crown_stands(
    window: MainWindow, asked: list[Answers], planned_case: Case
) -> None:
    def type_number(dialog: object) -> None:
        assert isinstance(dialog, TeethDialog)
        QTest.keyClicks(dialog.numbers, "37")
        QTest.mouseClick(dialog.read, LEFT)

    in_dialog(TeethDialog, type_number)
    choose(window, "Tooth and roles")
    (answers,) = asked
    assert [unit.tooth.number for unit in answers.units] == [37]
    assert answers.occlusal_axis == planned_case.reading.occlusal_axis
    assert answers.mesial == planned_case.reading.mesial


def test_roles_of_a_bridge(qtbot: QtBot) -> None:
    units = [
        Unit(tooth=Tooth(number=14), role=Role.RETAINER),
        Unit(tooth=Tooth(number=15), role=Role.PONTIC),
    ]
    dialog = TeethDialog(units)
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog.units == tuple(units)
    QTest.keyClick(dialog.numbers, Qt.Key.Key_End)
    QTest.keyClicks(dialog.numbers, " 16")
    # What was said stays; the new tooth is taken for a retainer at the end.
    assert [unit.role for unit in dialog.units] == [Role.RETAINER, Role.PONTIC, Role.RETAINER]
    QTest.keyClick(dialog.roles[16], Qt.Key.Key_Down)
    assert dialog.units[2].role is Role.PONTIC
    QTest.keyClicks(dialog.numbers, "x")
    assert not dialog.read.isEnabled()
    assert dialog.units == ()


def test_the_wall_is_asked_for_only_where_it_is_assumed(
    window: MainWindow, planned_case: Case
) -> None:
    assert not window.commands.wall.isEnabled()
    solid = replace(planned_case, reading=replace(planned_case.reading, assumed_wall_mm=1.0))
    adopt(window, solid)

    def answer(dialog: object) -> None:
        assert isinstance(dialog, QInputDialog)
        dialog.setDoubleValue(1.6)
        QTest.keyClick(dialog, Qt.Key.Key_Return)

    in_dialog(QInputDialog, answer)
    choose(window, "no inner surface")
    case = window.session.case
    assert case is not None
    assert case.reading.assumed_wall_mm == pytest.approx(1.6)
    assert window.session.history is not None
    assert window.session.history.undo_label == "assume a wall of 1.6 mm"


def test_zones_are_proposed_again_with_the_same_answers(
    window: MainWindow, asked: list[Answers], planned_case: Case
) -> None:
    reading = replace(planned_case.reading, assumed_wall_mm=2.2, set_by_user=frozenset({"mesial"}))
    adopt(window, replace(planned_case, reading=reading))
    choose(window, "Propose zones again")
    (answers,) = asked
    assert answers.units == planned_case.units
    assert answers.mesial == planned_case.reading.mesial
    assert answers.assumed_wall_mm == 2.2


@pytest.mark.parametrize("with_key", [False, True])
def test_the_margin_moves_only_where_it_is_allowed(window: MainWindow, with_key: bool) -> None:
    window.plan.table.select_row(Zone.INNER)
    view = window.crown
    place = np.array([0.0, 4.0, 2.9])
    x, y, _ = view.camera.project(place, view.width(), view.height())[0]
    at = QPoint(round(x), round(y))
    hit = view.pick(at)
    assert hit is not None
    before = window.session.case
    QTest.mouseClick(view, LEFT, NONE, at)
    assert window.session.case is not None
    assert window.session.case.zones[hit.vertex] == Zone.BODY
    if not with_key:
        choose(window, "Brush moves the margin")
        assert window.plan.brush.head.remark.text().endswith("moves the margin")
    QTest.mouseClick(view, LEFT, ALT if with_key else NONE, at)
    after = window.session.case
    assert after is not before
    assert after.zones[hit.vertex] == Zone.INNER
    assert not after.reading.outer[hit.vertex]


def test_what_was_noticed_is_a_click_away(window: MainWindow, planned_case: Case) -> None:
    unit = window.plan.unit
    assert not unit.notes.isVisible()
    assert not window.commands.notes.isEnabled()
    notes = ("6 points were joined.", "The wall is assumed.")
    adopt(window, replace(planned_case, reading=replace(planned_case.reading, warnings=notes)))
    assert unit.notes.text() == "2 notes"
    assert window.flow.message.isHidden()
    QTest.mouseClick(unit.notes, LEFT)
    assert window.flow.message.accessibleDescription() == "\n".join(notes)
    QTest.keyClick(window.crown, Qt.Key.Key_Escape)
    assert window.flow.message.isHidden()
    choose(window, "What was noticed")
    assert window.flow.message.isVisible()


def test_what_is_no_crown_says_so_at_once(window: MainWindow, planned_case: Case) -> None:
    reading = replace(
        planned_case.reading, kind=BodyKind.NOT_A_CROWN, warnings=("It has no table.",)
    )
    adopt(window, replace(planned_case, reading=reading))
    card = window.flow.message
    assert card.isVisible()
    assert card.accessibleName() == "This is not a crown"
    assert card.accessibleDescription() == "It has no table."


def test_unknown_mesial_is_said_at_once_and_asked_for(
    window: MainWindow, planned_case: Case
) -> None:
    adopt(window, replace(planned_case, reading=replace(planned_case.reading, mesial=None)))
    assert window.flow.message.accessibleName() == "Where is mesial?"
    QTest.mouseClick(window.flow.message.buttons[0], LEFT)
    assert window.flow.is_asking


def test_corrections_by_hand_outlive_a_new_proposal(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A premolar made from numbers, read twice; what was painted in between is still there."""
    session = window.session
    # Light in the grooves takes seconds and plays no part here.
    monkeypatch.setattr(session, "need_shading", lambda: None)
    look = look_at_mesh(Path(__file__).parents[2] / "sample_cases" / "upper_premolar_14.stl")
    answers = Answers(
        units=units_from_numbers((14,)),
        size_state=SizeState.SINTERED,
        block="medium 3Y",
        mesial=(1.0, 0.0, 0.0),
    )
    case, _ = build_case(look, answers, session.materials)
    body = np.flatnonzero(case.zones == Zone.BODY)[:50]
    zones = case.zones.copy()
    zones[body] = Zone.CERVICAL
    band = case.accent(Accent.MARGIN_BAND)
    assert band is not None
    painted = band.copy()
    place = np.flatnonzero((band == 0.0) & case.reading.outer)[:30]
    painted[place] = 1.0
    adopt(window, replace(case, zones=zones).with_accent(Accent.MARGIN_BAND, painted))
    corrected = session.case
    choose(window, "Propose zones again")
    again = session.case
    assert again is not None
    assert again is not corrected
    assert np.array_equal(again.proposal, case.proposal)
    assert np.array_equal(again.zones, zones)
    assert np.array_equal(again.accent(Accent.MARGIN_BAND), painted)
    assert again.reading.warnings == case.reading.warnings
    keys = QKeySequence(QKeySequence.StandardKey.Undo)
    QTest.keySequence(window, keys)
    assert session.case is corrected
