"""Practice in a window, by mouse and keys: every kind once, and the user's own case untouched.

With STAINMAP_PICTURES set to a folder, every exercise leaves pictures there to be looked at.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QPoint, QSettings, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLabel, QMessageBox
from pytestqt.qtbot import QtBot

from stainmap.app.job import Job, JobRunner
from stainmap.app.practising import PracticeBook
from stainmap.app.session import Session
from stainmap.errors import CancelledError
from stainmap.model.case import Case
from stainmap.model.zone import Area, Zone
from stainmap.practice.exercise import FAULTS, Kind, exercise
from stainmap.practice.exercise_crown import practice_materials
from stainmap.practice.exercise_faults import WORDS as FAULT_WORDS
from stainmap.practice.packs import PackedExercise
from stainmap.practice.score import FLOOR, Mark
from stainmap.practice.staircase import DOUBT, LEAST_TRIALS
from stainmap.ui.main_window import MainWindow
from stainmap.ui.practice_eye import EyeDialog, eye_points, threshold_words
from stainmap.ui.practice_list import PracticeList
from stainmap.ui.practice_map import MapDialog
from stainmap.ui.practice_slips import SlipsDialog
from stainmap.ui.practice_window import PracticeWindow
from tests.practice import practice_tasks

MORE = bool(os.environ.get("STAINMAP_MORE"))
SLOW = pytest.mark.skipif(not MORE, reason="takes long: STAINMAP_MORE=1")
LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier


def packed(kind: Kind, level: int = 1) -> PackedExercise:
    """Return an exercise on a premolar, which is smaller than a molar."""
    return replace(practice_tasks.packed(kind, level), teeth=(15,))


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Test without OpenGL what is the same with it."""
    if not os.environ.get("STAINMAP_PICTURES"):
        monkeypatch.setenv("STAINMAP_NO_GL", "1")


@pytest.fixture
def book(tmp_path: Path) -> PracticeBook:
    return PracticeBook(tmp_path / "labbook.sqlite")


@pytest.fixture
def practice(qtbot: QtBot, tmp_path: Path, book: PracticeBook) -> Iterator[PracticeWindow]:
    """Return a window of practice that does everything at once."""
    one = PracticeWindow(
        Session(practice_materials(), threaded=False),
        QSettings(str(tmp_path / "practice.ini"), QSettings.Format.IniFormat),
        JobRunner(threaded=False),
        book=book,
        trainee="AB",
    )
    size = os.environ.get("STAINMAP_SIZE", "1024x700").split("x")
    one.resize(int(size[0]), int(size[1]))
    qtbot.addWidget(one)
    one.show()
    qtbot.waitExposed(one)
    one.activateWindow()
    qtbot.waitUntil(one.isActiveWindow)
    yield one
    one.close()


def picture(window: PracticeWindow, name: str) -> None:
    folder = os.environ.get("STAINMAP_PICTURES")
    if folder:
        QTest.qWait(700)
        window.screen().grabWindow(window.winId()).save(f"{folder}/{name}.png")


def case_of(window: MainWindow) -> Case:
    case = window.session.case
    assert case is not None
    return case


def add_step(window: MainWindow, liquid: str) -> None:
    """Add a step of a liquid by the menu of the button."""
    menu = window.plan.add_step.menu()
    assert menu is not None
    menu.aboutToShow.emit()
    action = next(one for one in menu.actions() if one.text().startswith(f"{liquid}:"))
    action.trigger()


def type_coats(window: MainWindow, step: int, area: Area, coats: int) -> None:
    """Click a cell and type a number."""
    table = window.plan.table
    table.select_cell(step, area)
    table.setFocus()
    QTest.keyClick(table, str(coats))
    editor = QApplication.focusWidget()
    QTest.keyClick(editor or table, Qt.Key.Key_Return)


def enter(window: MainWindow, case: Case) -> None:
    """Enter the steps of a plan, cell by cell."""
    for index, step in enumerate(case.plan.steps):
        add_step(window, case.plan.liquid_of(step))
        for entry in step.areas:
            type_coats(window, index, entry.area, entry.coats.high)


def hand_in(window: PracticeWindow) -> float:
    QTest.mouseClick(window.bar.hand_in, LEFT)
    assert window.score is not None
    return window.score.value


def choose(window: PracticeWindow, name: str, kind: Kind) -> None:
    """Choose what is seen ("sign") or what was done ("cause") by keys."""
    assert window.task is not None
    box = window.bar.sign if name == "sign" else window.bar.cause
    pick(box, getattr(FAULT_WORDS[kind], name))
    assert getattr(window.bar.answer, name) is kind


def pick(box: QComboBox, text: str) -> None:
    """Choose an entry of a list by keys."""
    box.setFocus()
    down = box.findText(text) > box.currentIndex()
    while box.currentText() != text:
        before = box.currentIndex()
        QTest.keyClick(box, Qt.Key.Key_Down if down else Qt.Key.Key_Up)
        assert box.currentIndex() != before


def begun(window: PracticeWindow, kind: Kind, level: int = 1) -> None:
    window.start(exercise(kind, 1) if kind is Kind.BRIDGE_APART else packed(kind, level))
    assert window.task is not None
    assert window.bar.steps.isVisible()
    picture(window, f"{kind.name.lower()}-1-begin")


# --- every kind once -------------------------------------------------------------------------


@pytest.mark.parametrize(
    "kind",
    [
        Kind.FEW_JARS,
        pytest.param(Kind.REACH_SHADE, marks=SLOW),
        pytest.param(Kind.PAPER_MAP, marks=SLOW),
    ],
)
def test_a_plan_is_entered_by_mouse_and_keys_and_scores_in_full(
    practice: PracticeWindow, book: PracticeBook, kind: Kind
) -> None:
    begun(practice, kind)
    task = practice.task
    assert task is not None
    assert not practice.plan.suggest.isEnabled()
    assert not practice.commands.propose.isEnabled()
    enter(practice, task.true)
    assert hand_in(practice) == 100.0
    picture(practice, f"{kind.name.lower()}-2-score")
    (kept,) = book.attempts("AB")
    assert kept.score == 100.0
    assert kept.kind == kind.value
    # The solved plan, step by step.
    result = practice.result
    QTest.mouseClick(result.back, LEFT)
    QTest.mouseClick(result.back, LEFT)
    assert result.true.isChecked()
    assert len(case_of(practice).plan.steps) == len(task.true.plan.steps) - 2
    assert "nothing painted yet" in result.where.text() or "is done" in result.where.text()
    picture(practice, f"{kind.name.lower()}-3-step")
    QTest.mouseClick(result.on, LEFT)
    assert len(case_of(practice).plan.steps) == len(task.true.plan.steps) - 1


def test_the_true_answer_is_shown_after_a_poor_one(practice: PracticeWindow) -> None:
    begun(practice, Kind.REACH_SHADE)
    task = practice.task
    assert task is not None
    add_step(practice, "ash")
    type_coats(practice, 0, Zone.BODY, 3)
    value = hand_in(practice)
    assert FLOOR <= value < 60.0
    picture(practice, "poor-2-score")
    result = practice.result
    assert result.wrong.isChecked()
    QTest.mouseClick(result.true, LEFT, pos=QPoint(8, result.true.height() // 2))
    assert case_of(practice).plan == task.true.plan
    QTest.mouseClick(result.yours, LEFT, pos=QPoint(8, result.yours.height() // 2))
    assert [case_of(practice).plan.liquid_of(step) for step in case_of(practice).plan.steps] == [
        "ash"
    ]
    # Nothing can be changed any more, and nothing handed in twice.
    assert not practice.plan.isEnabled()
    practice.hand_in()
    assert practice.score is not None
    assert practice.score.value == value
    QTest.mouseClick(practice.bar.once_more, LEFT)
    assert practice.score is None
    assert practice.plan.isEnabled()
    assert case_of(practice).plan.steps == ()


def test_a_number_that_is_being_typed_is_part_of_the_answer(practice: PracticeWindow) -> None:
    begun(practice, Kind.REACH_SHADE)
    assert "Suggest" not in practice.plan.table.accessibleDescription()
    add_step(practice, "barley")
    practice.plan.table.select_cell(0, Zone.BODY)
    practice.plan.table.setFocus()
    QTest.keyClick(practice.plan.table, "2")
    editor = QApplication.focusWidget()
    assert editor is not None
    QTest.keyClick(editor, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    practice.hand_in()
    assert practice.score is not None
    entry = case_of(practice).plan.steps[0].entry(Zone.BODY)
    assert entry is not None
    assert entry.coats.high == 2
    rule = "Every area is judged as if all others were as wanted"
    assert any(label.text().startswith(rule) for label in practice.result.findChildren(QLabel))


def test_the_coat_map_is_put_away_in_time(practice: PracticeWindow) -> None:
    begun(practice, Kind.REACH_SHADE)
    page = Image.new("RGB", (20, 20), "white")
    for go_on in (practice.hand_in, practice._again):
        practice.map.end([page])
        sheet = next(one for one in practice.findChildren(MapDialog) if one.isVisible())
        go_on()
        assert not sheet.isVisible()


def test_no_crown_of_before_is_shown_while_another_is_made(practice: PracticeWindow) -> None:
    assert not practice.cover.isVisible()
    begun(practice, Kind.REACH_SHADE)
    assert not practice.cover.isVisible()
    seen = []
    practice.bar.progress.valueChanged.connect(
        lambda _: seen.append(
            (
                practice.cover.isVisible(),
                practice.cover.geometry() == practice.crown.rect(),
                practice.plan_dock.isVisible() or practice.outcome_dock.isVisible(),
            )
        )
    )
    practice.start(replace(packed(Kind.REACH_SHADE), seed=5))
    assert seen
    assert set(seen) == {(True, True, False)}
    assert not practice.cover.isVisible()
    assert practice.plan_dock.isVisible()


def test_zones_are_painted_with_the_brush(practice: PracticeWindow) -> None:
    begun(practice, Kind.FIND_AREAS)
    task = practice.task
    assert task is not None
    assert practice.plan.brush.head.remark.text() == "paints cervical"
    practice.plan.table.select_row(Zone.CUSP)
    practice.plan.brush.resize_brush(+8)
    crown = practice.crown
    tips = np.flatnonzero(task.true.zones == int(Zone.CUSP))
    places = []
    for vertex in tips[:: max(len(tips) // 12, 1)]:
        place = case_of(practice).surface.mesh.vertices[vertex]
        x, y, _ = crown.camera.project(place, crown.width(), crown.height())[0]
        places.append(QPoint(round(x), round(y)))
    for place in places:
        if crown.rect().contains(place) and crown.pick(place) is not None:
            QTest.mousePress(crown, LEFT, NONE, place)
            QTest.mouseRelease(crown, LEFT, NONE, place)
    painted = case_of(practice).zones == int(Zone.CUSP)
    assert painted.any()
    value = hand_in(practice)
    assert practice.score is not None
    cusp = next(part for part in practice.score.parts if part.name == "cusp")
    assert cusp.points > 1.0
    assert value < 80.0
    assert "cusp zone overlaps" in practice.score.best
    assert practice.marked_mm2(Mark.MISSED) > 20.0
    picture(practice, "find_areas-2-score")


def test_a_block_is_chosen_and_a_dark_stump_covered(practice: PracticeWindow) -> None:
    begun(practice, Kind.CHOOSE_BLOCK)
    task = practice.task
    assert task is not None
    pick(practice.plan.unit.block, task.true.plan.block)
    assert case_of(practice).plan.block == task.true.plan.block
    assert hand_in(practice) == 100.0
    picture(practice, "choose_block-2-score")
    begun(practice, Kind.DARK_STUMP)
    task = practice.task
    assert task is not None
    pick(practice.plan.unit.cement, "opaque")
    pick(practice.plan.unit.block, task.true.plan.block)
    assert hand_in(practice) == 100.0
    picture(practice, "dark_stump-2-score")


@SLOW
def test_cusps_are_lowered_from_the_tray(practice: PracticeWindow) -> None:
    begun(practice, Kind.LOWER_CUSPS)
    task = practice.task
    assert task is not None
    at = len(case_of(practice).plan.steps)
    for step in task.true.plan.steps:
        entry = step.entry(Zone.CUSP)
        if entry is not None:
            add_step(practice, task.true.plan.liquid_of(step))
            type_coats(practice, at, Zone.CUSP, entry.coats.high)
            at += 1
    value = hand_in(practice)
    # Added at the end, after the accent of the fissures: all but the order is right.
    assert value >= 85.0
    picture(practice, "lower_cusps-2-score")


@pytest.mark.parametrize(
    "kind", [FAULTS[0], *(pytest.param(kind, marks=SLOW) for kind in FAULTS[1:])]
)
def test_a_fault_is_found_by_keys(practice: PracticeWindow, kind: Kind) -> None:
    begun(practice, kind)
    task = practice.task
    assert task is not None
    # Nothing that tells the cause is to be seen.
    for dock in (practice.plan_dock, practice.outcome_dock, practice.run_dock):
        assert not dock.isVisible()
    practice.set_look(practice.crown.look.__class__.COATS)
    assert practice.crown.look is practice.crown.look.__class__.SINTERED
    came = task.start_look.srgb
    QTest.keyClick(practice, Qt.Key.Key_V)
    assert practice.bar.planned.isChecked()
    QTest.keyClick(practice, Qt.Key.Key_V)
    assert not practice.bar.planned.isChecked()
    assert practice.session.shown_srgb is not None
    assert np.abs(practice.session.shown_srgb.astype(int) - came).max() <= 2
    centre = QPoint(practice.crown.width() // 2, practice.crown.height() // 2)
    QTest.mouseMove(practice.crown, centre)
    choose(practice, "sign", kind)
    choose(practice, "cause", kind)
    picture(practice, f"{kind.name.lower()}-2-answer")
    QTest.keyClick(practice, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert practice.score is not None
    assert practice.score.value == 100.0
    assert practice.plan_dock.isVisible()
    picture(practice, f"{kind.name.lower()}-3-score")


@SLOW
def test_a_bridge_is_set_apart(practice: PracticeWindow) -> None:
    begun(practice, Kind.BRIDGE_APART)
    task = practice.task
    assert task is not None
    from stainmap.model.zone import Accent

    last = len(case_of(practice).plan.steps) - 1
    type_coats(practice, last, Accent.CONNECTOR, 1)
    assert hand_in(practice) == 100.0
    picture(practice, "bridge_apart-2-score")


def test_value_is_judged_by_keys_until_the_threshold_is_known(qtbot: QtBot) -> None:
    dialog = EyeDialog(5, blank_ms=0)
    qtbot.addWidget(dialog)
    dialog.show()
    qtbot.waitExposed(dialog)
    told = []
    dialog.finished_test.connect(lambda found, pairs: told.append((found, pairs)))
    QTest.mouseClick(dialog.begin, LEFT)
    chance, taken_back = np.random.default_rng(1), False
    while not told:
        qtbot.waitUntil(lambda: dialog.view.is_asking)
        if len(dialog.test.trials) == 3 and not taken_back:
            taken_back = True
            QTest.keyClick(dialog.view, Qt.Key.Key_Backspace)
            assert len(dialog.test.trials) == 2
            qtbot.waitUntil(lambda: dialog.view.is_asking)
        if len(dialog.test.trials) == 30:
            assert not dialog.enough.isEnabled()
        # An observer that tells 2 L* in five of six cases (Weibull of slope 3).
        sees = 1.0 - 0.5 * 2.0 ** -(np.log2(3.0) * (dialog._pair.difference_dl / 2.0) ** 3)
        right = chance.random() < sees
        left = dialog._left_is_lighter == right
        QTest.keyClick(dialog.view, Qt.Key.Key_Left if left else Qt.Key.Key_Right)
    found, pairs = told[0]
    assert pairs >= 40
    assert found.threshold_dl == pytest.approx(2.0, rel=0.2)
    assert found.doubt <= DOUBT
    assert f"{found.threshold_dl:.1f} L*" in dialog.ask.text() == threshold_words(found)
    assert 10.0 <= eye_points(found) <= 100.0


def test_a_test_that_is_broken_off_is_kept_with_what_it_told(qtbot: QtBot) -> None:
    dialog = EyeDialog(5, blank_ms=0)
    qtbot.addWidget(dialog)
    dialog.show()
    qtbot.waitExposed(dialog)
    told = []
    dialog.finished_test.connect(lambda found, pairs: told.append((found, pairs)))
    QTest.mouseClick(dialog.begin, LEFT)
    while len(dialog.test.trials) < LEAST_TRIALS:
        qtbot.waitUntil(lambda: dialog.view.is_asking)
        left = dialog._left_is_lighter == (dialog._pair.difference_dl > 1.5)
        QTest.keyClick(dialog.view, Qt.Key.Key_Left if left else Qt.Key.Key_Right)
    qtbot.waitUntil(lambda: dialog.view.is_asking)
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    ((found, pairs),) = told
    assert pairs == LEAST_TRIALS
    assert found.low_dl < found.threshold_dl < found.high_dl
    assert dialog.isVisible()
    QTest.keyClick(dialog, Qt.Key.Key_Escape)
    assert not dialog.isVisible()
    assert len(told) == 1


# --- the user's own case ---------------------------------------------------------------------


def test_the_users_case_waits_and_is_there_again(
    window: MainWindow, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QMessageBox, "question", lambda *_a, **_n: pytest.fail("asked"))
    window.practice.use_book(tmp_path / "book.sqlite")
    window.session.edit("a note", lambda case: replace(case, notes="mine, not saved"))
    mine, history = window.session.case, window.session.history
    window.practice._begin("AB", packed(Kind.FEW_JARS, 1), "")
    practice = window.practice.practice
    assert practice is not None
    assert practice.isVisible()
    assert not window.isVisible()
    add_step(practice, "ash")
    practice.ask_to_open()
    assert "leave it" in practice.status.message.text()
    QTest.mouseClick(practice.bar.leave, LEFT)
    assert window.isVisible()
    assert window.practice.practice is None
    assert window.session.case is mine
    assert window.session.history is history
    assert window.session.is_modified
    window.session.undo()
    assert window.session.case is not mine


def test_what_is_given_cannot_be_chosen(practice: PracticeWindow) -> None:
    begun(practice, Kind.FEW_JARS)
    unit = practice.plan.unit
    for given in (unit.block, unit.cement, unit.stump, unit.programme, unit.tooth):
        assert not given.isEnabled()
    assert not practice.outcome.outcome.change.isVisible()
    begun(practice, Kind.CHOOSE_BLOCK)
    assert unit.block.isEnabled()
    assert not unit.cement.isEnabled()


def test_an_exercise_that_is_stopped_is_not_made(practice: PracticeWindow) -> None:
    practice._packed = packed(Kind.FEW_JARS)
    notices: list[object] = []
    practice._job = Job(
        "Making an exercise",
        lambda progress: progress(0.3, "carving"),
        post=lambda deliver: deliver(),
        on_done=notices.append,
        on_failed=notices.append,
        on_progress=practice._tell,
    )
    job = practice._job
    practice.bar.show_making("carving", 0.2)
    assert practice.bar.stop.isVisible()
    assert not practice.bar.hand_in.isVisible()
    QTest.mouseClick(practice.bar.stop, LEFT)
    assert job.is_cancelled
    job.run()
    assert isinstance(notices[0], CancelledError)
    assert "Stopped" in practice.bar.ask.text()
    assert practice.cover.isVisible()
    assert practice.bar.next.isVisible()
    QTest.mouseClick(practice.bar.once_more, LEFT)
    assert practice.task is not None
    assert practice.bar.hand_in.isVisible()
    assert not practice.bar.next.isVisible()


def test_what_cannot_be_made_is_a_sentence_on_the_bar(
    practice: PracticeWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    from stainmap.practice import exercise_crown

    def impossible(*_all: object, **_named: object) -> None:
        raise ValueError("the cavity leaves the crown")

    monkeypatch.setattr(exercise_crown, "make_crown", impossible)
    practice.start(replace(packed(Kind.FEW_JARS), seed=77))
    assert "Take another seed" in practice.bar.ask.text()
    assert practice.session.case is None


# --- list, packs, slips ----------------------------------------------------------------------


def listed(qtbot: QtBot, book: PracticeBook) -> PracticeList:
    from datetime import date

    one = PracticeList(book, "", date(2026, 5, 4))
    qtbot.addWidget(one)
    one.show()
    qtbot.waitExposed(one)
    return one


def test_the_list_asks_once_who_practises(qtbot: QtBot, book: PracticeBook) -> None:
    dialog = listed(qtbot, book)
    assert not dialog.recommended.isEnabled()
    assert not any(button.isEnabled() for button in dialog.buttons.values())
    chosen: list[tuple[PackedExercise, str]] = []
    dialog.chosen.connect(lambda one, pack: chosen.append((one, pack)))
    QTest.keyClicks(dialog.name, "a/b")
    assert "is no code of a trainee" in dialog.trouble.text()
    dialog.name.clear()
    QTest.keyClicks(dialog.name, "ab")
    assert dialog.trainee == "AB"
    assert dialog.recommended.isEnabled()
    QTest.mouseClick(dialog.recommended, LEFT)
    assert chosen[0][0].kind == Kind.FIND_AREAS.value
    assert chosen[0][1] == ""


def test_packs_are_written_read_and_refused_by_the_list(
    qtbot: QtBot, book: PracticeBook, tmp_path: Path
) -> None:
    dialog = listed(qtbot, book)
    QTest.keyClicks(dialog.name, "AB")
    path = tmp_path / "week one.stainpack"
    dialog.write_pack(path)
    dialog.show_pack(path)
    assert dialog.head.text() == "week one"
    assert len(dialog.buttons) == len(Kind)
    chosen: list[tuple[PackedExercise, str]] = []
    dialog.chosen.connect(lambda one, pack: chosen.append((one, pack)))
    path.write_bytes(path.read_bytes().replace(b'"seed": 1', b'"seed": 2', 1))
    dialog.show_pack(path)
    assert "damaged or was changed by hand" in dialog.trouble.text()
    QTest.mouseClick(next(iter(dialog.buttons.values())), LEFT)
    assert len(chosen[0][1]) == 64


def test_slips_are_listed_the_gravest_first(qtbot: QtBot, practice: PracticeWindow) -> None:
    practice.start(packed(Kind.FEW_JARS, 1))
    task = practice.task
    assert task is not None
    # A plan that leaves out the base.
    fragile = replace(task.true, plan=replace(task.true.plan, steps=task.true.plan.steps[1:]))
    dialog = SlipsDialog(task.true, task.looker, JobRunner(threaded=False), other=fragile)
    qtbot.addWidget(dialog)
    dialog.show()
    rows = dialog.table.rowCount()
    assert rows == len(dialog.effects) > 10
    figures = [float(dialog.table.item(row, 4).text()) for row in range(rows)]
    assert figures == sorted(figures, reverse=True)
    assert "simulated days" in dialog.spread.text()
    assert "The plan you handed in keeps them on" in dialog.spread.text()
    before = dialog.spread.text()
    dialog.hand.setValue(40.0)
    qtbot.waitUntil(lambda: dialog.spread.text() != before)
