"""The tools beside the brush, worked with mouse and keys in the whole window."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPoint, QSettings, Qt, QTimer
from PySide6.QtGui import QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QPushButton
from pytestqt.qtbot import QtBot

from stainmap.app.brush import Tool
from stainmap.app.session import Session
from stainmap.model.case import Case
from stainmap.model.plan import Streaks
from stainmap.model.zone import Accent, Zone
from stainmap.surface.mesh import TriMesh
from stainmap.ui.brush_bar import Command
from stainmap.ui.crown_view import PointerTask
from stainmap.ui.main_window import MainWindow
from stainmap.ui.streaks_dialog import StreaksDialog
from tests.builders import dome_case
from tests.ui.conftest import new_window

LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier


pytestmark = pytest.mark.usefixtures("no_pictures")


def small(case: Case, planned: Case) -> Case:
    """Return a coarse dome with the plan and the materials of the other."""
    return replace(
        case,
        materials=planned.materials,
        plan=planned.plan,
        backings=planned.backings,
        programme=planned.programme,
    )


def opened(qtbot: QtBot, settings: QSettings, case: Case) -> MainWindow:
    """Return a visible window on a case."""
    one = new_window(settings)
    one.resize(1040, 760)
    # Without unsaved work the window closes without asking.
    qtbot.addWidget(one, before_close_func=lambda _: one.session.adopt(case, path=None, saved=True))
    one.show()
    qtbot.waitExposed(one)
    one.activateWindow()
    one.session.adopt(case, path=None, saved=True)
    return one


@pytest.fixture
def window(qtbot: QtBot, planned_case: Case, settings: QSettings) -> MainWindow:
    """Return a window on a smooth dome."""
    return opened(qtbot, settings, small(dome_case(20, 48), planned_case))


@pytest.fixture(scope="module")
def grooved_case() -> Case:
    """Return a dome with a groove over the top, in the plane x = 0."""
    plain = dome_case(36, 108)
    vertices = plain.surface.mesh.vertices.copy()
    depth = 0.35 * np.clip(1.0 - np.abs(vertices[:, 0]) / 0.5, 0.0, 1.0)
    radial = vertices / np.linalg.norm(vertices, axis=1, keepdims=True)
    vertices -= np.where(plain.reading.outer, depth, 0.0)[:, None] * radial
    mesh = TriMesh(vertices, plain.surface.mesh.faces)
    # The plan names the cusp zone, but nothing is in it yet.
    zones = np.where(plain.zones == Zone.CUSP, np.uint8(Zone.BODY), plain.zones)
    surface = replace(plain.surface, mesh=mesh)
    return replace(plain, surface=surface, zones=zones, proposal=zones.copy())


@pytest.fixture
def grooved(
    qtbot: QtBot, planned_case: Case, settings: QSettings, grooved_case: Case
) -> MainWindow:
    """Return a window on the grooved dome, seen from above."""
    one = opened(qtbot, settings, small(grooved_case, planned_case))
    one.crown.look_along(np.array([0.0, 0.0, 1.0]), np.array([0.0, 1.0, 0.0]))
    QTest.qWait(200)
    return one


def case_of(window: MainWindow) -> Case:
    case = window.session.case
    assert case is not None
    return case


def place(window: MainWindow, x: float, y: float, z: float) -> QPoint:
    view = window.crown
    at = view.camera.project(np.array([x, y, z]), view.width(), view.height())[0]
    return QPoint(round(at[0]), round(at[1]))


def click(window: MainWindow, at: QPoint, keys: Qt.KeyboardModifier = NONE) -> None:
    QTest.mouseMove(window.crown, at)
    QTest.qWait(60)
    QTest.mouseClick(window.crown, LEFT, keys, at)


def press(window: MainWindow, keys: str) -> None:
    # After a dialog the screen gives the keyboard back a moment later.
    window.activateWindow()
    assert QTest.qWaitForWindowActive(window, 30_000)
    QTest.keySequence(window, keys)
    # The key of a button shows it pressed for a tenth of a second before it acts.
    bar = window.plan.brush
    for button in (*bar.tools.values(), *bar.commands.values()):
        if button.shortcut() == QKeySequence(keys):
            while button.isDown():
                QTest.qWait(10)
    QApplication.processEvents()


def undo_label(session: Session) -> str | None:
    return None if session.history is None else session.history.undo_label


def test_fill_by_key_and_click_is_one_undo_step_and_shows_itself_first(
    qtbot: QtBot, grooved: MainWindow
) -> None:
    grooved.plan.table.select_row(Zone.CUSP)
    press(grooved, "F")
    assert grooved.plan.brush.settings.tool is Tool.FILL
    assert grooved.plan.brush.head.remark.text() == "fills up to creases: cusp"
    assert grooved.status.message.text().startswith("Fill: click a place")
    assert grooved.crown.task is PointerTask.PLACE
    assert grooved.plan.brush.crease.isVisible()
    before = case_of(grooved)
    here = place(grooved, 2.5, 1.0, 4.2)
    QTest.mouseMove(grooved.crown, here)
    qtbot.waitUntil(lambda: grooved.crown.overlay.preview is not None)
    preview = grooved.crown.overlay.preview
    assert preview is not None
    assert len(preview.pieces) > 20
    assert preview.pieces[:, :, 0].min() > -0.3
    assert case_of(grooved) is before
    click(grooved, here)
    mine = case_of(grooved).zones == Zone.CUSP
    x = before.surface.mesh.vertices[:, 0]
    assert mine[before.reading.outer & (x > 0.8)].all()
    assert not mine[x < -0.3].any()
    assert undo_label(grooved.session) == "fills up to creases: cusp"
    # With Shift it gives the proposal back; one undo brings the fill back, another takes it away.
    click(grooved, here, SHIFT)
    assert np.array_equal(case_of(grooved).zones, before.zones)
    press(grooved, "Ctrl+Z")
    assert np.array_equal(case_of(grooved).zones == Zone.CUSP, mine)
    press(grooved, "Ctrl+Z")
    assert case_of(grooved) is before
    # A second click in the same place changes nothing, and says so.
    click(grooved, here)
    click(grooved, here)
    assert grooved.status.message.text().startswith("Nothing changes there")
    press(grooved, "Ctrl+Z")
    assert case_of(grooved) is before


def test_esc_lets_go_of_a_tool_and_a_left_drag_turns(grooved: MainWindow) -> None:
    press(grooved, "F")
    before, camera = case_of(grooved), grooved.crown.camera
    start = place(grooved, 2.5, 1.0, 4.2)
    QTest.mousePress(grooved.crown, LEFT, NONE, start)
    QTest.mouseMove(grooved.crown, start + QPoint(30, 10))
    QTest.mouseMove(grooved.crown, start + QPoint(60, 20))
    QTest.mouseRelease(grooved.crown, LEFT, NONE, start + QPoint(60, 20))
    assert case_of(grooved) is before
    assert not np.allclose(grooved.crown.camera.axes, camera.axes)
    QTest.keyClick(grooved.crown, Qt.Key.Key_Escape)
    assert grooved.plan.brush.settings.tool is Tool.BRUSH
    assert grooved.crown.task is PointerTask.PAINT
    assert grooved.crown.overlay.preview is None


def test_a_line_is_clicked_twice_with_a_preview_and_esc_starts_again(
    grooved: MainWindow,
) -> None:
    grooved.plan.table.select_row(Accent.MARGIN_BAND)
    grooved.plan.brush.radius.set_value(0.3)
    press(grooved, "C")
    before = case_of(grooved)
    one, other = place(grooved, 0.0, -3.0, 3.65), place(grooved, 0.0, 3.0, 3.65)
    click(grooved, one)
    assert grooved.tools.start is not None
    assert grooved.status.message.text().startswith("Line: now click where it ends")
    QTest.mouseMove(grooved.crown, other)
    QTest.qWait(80)
    preview = grooved.crown.overlay.preview
    assert preview is not None
    assert preview.start is not None
    assert np.abs(preview.pieces[:, :, 0]).max() < 0.25
    QTest.keyClick(grooved.crown, Qt.Key.Key_Escape)
    assert grooved.tools.start is None
    assert grooved.crown.overlay.preview is None
    assert grooved.plan.brush.settings.tool is Tool.LINE
    assert case_of(grooved) is before
    click(grooved, one)
    click(grooved, other)
    share = case_of(grooved).accent(Accent.MARGIN_BAND)
    assert share is not None
    x, y, z = before.surface.mesh.vertices.T
    upper = before.reading.outer & (z > 1.5)
    assert (share[upper & (np.abs(x) < 0.1) & (np.abs(y) < 2.5)] > 0.5).all()
    assert not share[upper & (np.abs(x) > 0.5)].any()
    assert undo_label(grooved.session) == "line along a crease: margin band"
    press(grooved, "Ctrl+Z")
    assert case_of(grooved) is before


def test_a_line_adds_coats_where_a_cell_is_chosen(grooved: MainWindow) -> None:
    grooved.plan.table.select_cell(1, Zone.CUSP)
    press(grooved, "C")
    assert grooved.plan.brush.head.remark.text() == "line along a crease: step 2, slate"
    click(grooved, place(grooved, 0.0, -3.0, 3.65))
    QTest.mouseMove(grooved.crown, place(grooved, 0.0, 3.0, 3.65))
    QTest.qWait(60)
    # Return is as good as a click.
    QTest.keyClick(grooved.crown, Qt.Key.Key_Return)
    brushed = case_of(grooved).plan.steps[1].brushed
    assert brushed is not None
    assert brushed.coats.max() == pytest.approx(1.0)


def test_grow_shrink_and_smooth_work_on_the_chosen_area(window: MainWindow) -> None:
    window.plan.table.select_row(Zone.CUSP)
    window.plan.brush.grow.set_value(0.5)
    before = case_of(window)
    area = before.surface.mesh.vertex_areas

    def covered() -> float:
        return float(area[case_of(window).zones == Zone.CUSP].sum())

    start = covered()
    press(window, "G")
    assert covered() > 1.15 * start
    assert undo_label(window.session) == "grow cusp by 0.5 mm"
    assert window.status.message.text().startswith("Grow cusp by 0.5 mm: done")
    press(window, "Ctrl+Z")
    press(window, "Shift+G")
    assert covered() < 0.87 * start
    assert undo_label(window.session) == "shrink cusp by 0.5 mm"
    press(window, "Ctrl+Z")
    assert case_of(window) is before
    jagged = before.zones.copy()
    belt = np.flatnonzero((before.zones == Zone.BODY) & before.reading.outer)
    jagged[belt[::7]] = int(Zone.CUSP)
    window.session.edit("splash", lambda case: replace(case, zones=jagged))
    press(window, "S")
    assert undo_label(window.session) == "smooth the edge of cusp"
    edges = before.surface.mesh.edges
    cusp = case_of(window).zones == Zone.CUSP
    splashed = jagged == Zone.CUSP
    assert (cusp[edges[:, 0]] != cusp[edges[:, 1]]).sum() < (
        splashed[edges[:, 0]] != splashed[edges[:, 1]]
    ).sum()


def test_a_command_shows_its_edge_while_its_button_is_pointed_at(window: MainWindow) -> None:
    window.plan.table.select_row(Zone.CUSP)
    before = case_of(window)
    button = window.plan.brush.commands[Command.GROW]
    QApplication.sendEvent(button, QEvent(QEvent.Type.Enter))
    QTest.qWait(400)
    preview = window.crown.overlay.preview
    assert preview is not None
    # The cap ends at 4.0 mm; 0.3 mm farther along the sphere its edge is lower.
    assert preview.pieces[:, :, 2].max() < 3.99
    assert case_of(window) is before
    QApplication.sendEvent(button, QEvent(QEvent.Type.Leave))
    assert window.crown.overlay.preview is None


def test_a_command_that_cannot_be_carried_out_says_why_or_rests(window: MainWindow) -> None:
    window.plan.table.select_row(Zone.INNER)
    before = case_of(window)
    press(window, "G")
    assert "ends at the margin" in window.status.message.text()
    assert case_of(window) is before
    window.desk.allow_painting(False)
    window.plan.table.select_row(Zone.CUSP)
    press(window, "G")
    assert case_of(window) is before
    window.desk.allow_painting(True)
    for button in (*window.plan.brush.tools.values(), *window.plan.brush.commands.values()):
        assert button.accessibleName()
        assert button.shortcut().toString() in button.toolTip()


def pick_entry(window: MainWindow, key: str, text: str) -> None:
    """Open a menu by its key and choose an entry by its text."""
    press(window, key)
    menu = QApplication.activePopupWidget()
    assert menu is not None
    (action,) = [one for one in menu.actions() if one.text() == text]
    action.hover()
    action.trigger()
    menu.close()


def test_mirror_and_reset_are_menus_with_one_undo_step_each(window: MainWindow) -> None:
    before = case_of(window)
    x, _, z = before.surface.mesh.vertices.T
    spot = before.reading.outer & (x > 2.5) & (z > 2.5)
    zones = np.where(spot, np.uint8(Zone.FISSURE), before.zones).astype(np.uint8)
    window.session.edit("a spot", lambda case: replace(case, zones=zones))
    window.plan.table.select_row(Zone.FISSURE)
    pick_entry(window, "X", "What was corrected by hand: mesial to distal")
    both = case_of(window).zones == Zone.FISSURE
    assert both.sum() == pytest.approx(2 * spot.sum(), abs=2)
    assert both[before.reading.outer & (x < -2.6) & (z > 2.6)].all()
    assert undo_label(window.session) == "mirror corrections, mesial to distal"
    pick_entry(window, "R", "The chosen area, fissure")
    assert np.array_equal(case_of(window).zones, before.zones)
    press(window, "Ctrl+Z")
    pick_entry(window, "R", "All zones and accents")
    assert np.array_equal(case_of(window).zones, before.zones)
    assert undo_label(window.session) == "reset all areas to the proposal"
    assert window.crown.overlay.preview is None


def meanwhile(window: MainWindow, action: Callable[[StreaksDialog], None]) -> None:
    """Let something be done in the dialog once it has opened."""

    def run() -> None:
        dialog = QApplication.activeModalWidget()
        if isinstance(dialog, StreaksDialog):
            waiting.stop()
            action(dialog)

    waiting = QTimer(window, interval=20)
    waiting.timeout.connect(run)
    waiting.start()


def test_streaks_of_a_step_are_placed_edited_and_removed(window: MainWindow) -> None:
    window.plan.table.select_cell(1, Zone.CUSP)
    before = case_of(window)
    seen: list[int] = []

    def add(dialog: StreaksDialog) -> None:
        assert dialog.step == 1
        dialog.add.click()
        (row,) = dialog.groups
        row.count.setValue(4)
        row.length.setValue(2.5)
        row.coats.setValue(2)
        preview = window.crown.overlay.preview
        assert preview is not None
        seen.append(len(preview.pieces))
        dialog.accept()

    meanwhile(window, add)
    press(window, "T")
    wanted = Streaks(area=Zone.CUSP, count=4, length_mm=2.5, coats=2)
    assert case_of(window).plan.steps[1].streaks == (wanted,)
    assert undo_label(window.session) == "change streaks"
    # Four strokes on the facial and four on the lingual side.
    assert seen == [8]
    assert window.crown.overlay.preview is None
    coats = window.session.coats
    assert coats is not None
    # Two coats of streaks over the two of the cusp zone, where that begins.
    assert coats[1].max() > 2.5
    take_them_back(window, wanted)
    press(window, "Ctrl+Z")
    press(window, "Ctrl+Z")
    assert case_of(window) is before


def take_them_back(window: MainWindow, wanted: Streaks) -> None:
    """Turn streaks round and cancel, then remove them."""

    def upwards(dialog: StreaksDialog) -> None:
        (row,) = dialog.groups
        row.direction.setCurrentIndex(1)
        # From the cap at the top nothing leads to the biting edge; from the foot it does.
        assert "nothing leads that way" in dialog.note.text()
        row.area.setCurrentIndex(0)
        assert not dialog.note.isVisible()
        dialog.reject()

    def remove(dialog: StreaksDialog) -> None:
        (button,) = [one for one in dialog.findChildren(QPushButton) if one.text() == "Remove"]
        button.click()
        assert dialog.note.text() == "This step has no streaks."
        dialog.accept()

    meanwhile(window, upwards)
    window.tools.ask_for_streaks()
    assert case_of(window).plan.steps[1].streaks == (wanted,)
    meanwhile(window, remove)
    window.tools.ask_for_streaks()
    assert case_of(window).plan.steps[1].streaks == ()
