"""The guided first plan on the real window, done by mouse and keys."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QPoint, QRect, QSettings, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu, QPushButton
from pytestqt.qtbot import QtBot

from stainmap.app import edits
from stainmap.app.guided import STEPS, GuidedStep
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Zone
from stainmap.ui.main_window import MainWindow
from stainmap.ui.outcome_panel import OutcomeRow
from stainmap.ui.picture_canvas import PictureCanvas
from stainmap.ui.teeth_dialog import TeethDialog
from tests.ui.conftest import new_window
from tests.ui.small_dome import small_planned_case

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier


@pytest.fixture(scope="module")
def planned_case() -> Case:
    return small_planned_case()


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Test without OpenGL, and without computed pictures, what is the same with them."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")
    monkeypatch.setattr(PictureCanvas, "_draw_now", lambda _canvas: None)


def step_of(window: MainWindow) -> GuidedStep | None:
    guide = window.guided.guide
    assert guide is not None
    return guide.step


def choose(window: MainWindow, menu: str, entry: str) -> None:
    """Choose an entry of a menu."""
    top = next(one for one in window.top.menus.actions() if one.text().replace("&", "") == menu)
    below = top.menu()
    assert isinstance(below, QMenu)
    next(one for one in below.actions() if one.text().replace("&", "") == entry).trigger()


def ring(window: MainWindow) -> QRect:
    assert window.guided.ring.isVisible()
    return window.guided.ring.geometry()


def test_the_whole_of_it_is_done_by_mouse_and_keys(
    window: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    guided, card = window.guided, window.guided.card
    choose(window, "Help", "Guided first plan")
    assert card.isVisible()
    assert card.said.startswith("step 1 of 6 Open a crown")
    QTest.mouseClick(card.keep, LEFT)
    # 2: the menu is ringed, and its dialog answered.
    assert step_of(window) is GuidedStep.TOOTH
    crown = next(one for one in window.top.menus.actions() if one.text() == "&Crown")
    place = window.top.menus.actionGeometry(crown)
    assert ring(window).contains(window.top.menus.mapTo(window, place.center()))

    def answer() -> None:
        dialog = QApplication.activeModalWidget()
        assert isinstance(dialog, TeethDialog)
        QTest.keyClick(dialog, Qt.Key.Key_Escape)

    QTimer.singleShot(100, answer)
    choose(window, "Crown", "Tooth and roles...")
    # 3: a stroke on the crown with a zone chosen.
    assert step_of(window) is GuidedStep.ZONE
    window.desk.choose(Zone.CERVICAL, None)
    middle = QPoint(window.crown.width() // 2, window.crown.height() // 2)
    QTest.mousePress(window.crown, LEFT, NONE, middle)
    QTest.mouseMove(window.crown, middle + QPoint(30, 12))
    QTest.mouseRelease(window.crown, LEFT, NONE, middle + QPoint(30, 12))
    # 4: a digit in the table.
    assert step_of(window) is GuidedStep.COAT
    # Without a window manager nobody gives the keyboard back after a dialog.
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    window.plan.table.setFocus()
    qtbot.waitUntil(window.plan.table.hasFocus)
    QTest.keyClick(window.plan.table, Qt.Key.Key_4)
    QTest.keyClick(window.plan.table, Qt.Key.Key_Return)
    # 5: an area of the outcome.
    qtbot.waitUntil(lambda: step_of(window) is GuidedStep.OUTCOME)
    row = window.outcome.outcome.findChildren(OutcomeRow)[0]
    QTest.mouseClick(row, LEFT)
    # 6: the preview, which is closed again.
    assert step_of(window) is GuidedStep.SHEETS
    monkeypatch.setattr(window.printing, "show_preview", lambda *_all: None)
    window.commands.sheets.trigger()
    assert step_of(window) is None
    assert "whole plan" in card.said
    assert not guided.ring.isVisible()
    QTest.mouseClick(card.close_button, LEFT)
    assert not card.isVisible()
    assert guided.stands_at is None


def test_steps_are_skipped_gone_back_to_and_left(window: MainWindow) -> None:
    guided, card = window.guided, window.guided.card
    guided.start()
    assert not card.back.isVisible()
    for step in STEPS[1:4]:
        QTest.mouseClick(card.skip, LEFT)
        assert step_of(window) is step
    QTest.mouseClick(card.back, LEFT)
    assert step_of(window) is GuidedStep.ZONE
    QTest.keyClick(card.close_button, Qt.Key.Key_Space)
    assert guided.guide is None
    assert not guided.ring.isVisible()
    assert guided.stands_at == STEPS.index(GuidedStep.ZONE)
    # What is done now is heard by nobody.
    window.session.undo()


def test_another_start_goes_on_where_it_was_left(
    qtbot: QtBot, settings: QSettings, planned_case: Case
) -> None:
    settings.setValue("guided/at", 3)
    window = new_window(settings)
    qtbot.addWidget(window)
    window.show()
    qtbot.waitExposed(window)
    assert window.strip.guided.text() == "Go on with the first plan"
    window.session.adopt(planned_case, path=None, saved=True)
    window.strip.guided_asked.emit()
    assert step_of(window) is GuidedStep.COAT
    table = window.plan.table
    middle = table.mapTo(window, table.visibleRegion().boundingRect().center())
    assert ring(window).contains(middle)
    settings.setValue("guided/at", "rubbish")
    window.guided.close()
    assert window.guided.stands_at is None
    window.guided.start()
    assert step_of(window) is GuidedStep.OPEN


def test_undo_and_redo_are_no_steps(window: MainWindow) -> None:
    window.session.edit(
        "coat", lambda case: edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(3))
    )
    window.guided.start()
    for _ in range(3):
        window.guided.card.skipped.emit()
    assert step_of(window) is GuidedStep.COAT
    window.session.undo()
    assert step_of(window) is GuidedStep.COAT
    window.session.redo()
    assert step_of(window) is GuidedStep.COAT


def test_opening_a_crown_is_the_first_step(window: MainWindow, planned_case: Case) -> None:
    window.guided.start()
    window.session.adopt(planned_case, path=None, saved=True)
    assert step_of(window) is GuidedStep.TOOTH


def test_controls_have_names_and_the_ring_lets_clicks_through(window: MainWindow) -> None:
    window.guided.start()
    card = window.guided.card
    for button in card.findChildren(QPushButton):
        assert button.accessibleName()
    assert "step 1 of 6" in card.accessibleDescription()
    assert window.guided.ring.testAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
    for step in STEPS:
        assert not window.guided.place_of(step).isEmpty(), step
