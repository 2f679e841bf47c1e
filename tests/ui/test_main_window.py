"""The whole window on one session, worked with mouse and keys."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, QSettings, Qt, QUrl
from PySide6.QtGui import QDesktopServices, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSlider,
    QApplication,
    QComboBox,
    QFileDialog,
    QLineEdit,
    QMessageBox,
    QScrollBar,
    QWidget,
)
from pytestqt.qtbot import QtBot

from stainmap.app import edits
from stainmap.app.session import Session
from stainmap.files.case_file import read_case, write_case
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Accent, Zone
from stainmap.optics.colorimetry import encode_srgb
from stainmap.predict.bench_look import chalk_linear_srgb
from stainmap.ui.case_figures import probe_reading, step_columns, unit_facts
from stainmap.ui.crown_picture import Look
from stainmap.ui.main_window import MainWindow
from stainmap.ui.wanted_dialog import WantedDialog
from tests.ui.conftest import new_window

LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier


pytestmark = pytest.mark.usefixtures("no_pictures")


def case_of(window: MainWindow) -> Case:
    case = window.session.case
    assert case is not None
    return case


def keys(window: MainWindow, sequence: str) -> None:
    """Press a shortcut as the user does."""
    QTest.keySequence(window, sequence)
    QApplication.processEvents()


def type_into_table(window: MainWindow, step: int, area: Zone | Accent, text: str) -> None:
    table = window.plan.table
    table.setFocus()
    table.select_cell(step, area)
    QTest.keyClick(table, text[0])
    (line,) = table.findChildren(QLineEdit)
    for key in text[1:]:
        QTest.keyClick(line, key)
    QTest.keyClick(line, Qt.Key.Key_Return)


def test_a_typed_coat_becomes_one_undo_step_with_a_prediction(window: MainWindow) -> None:
    session = window.session
    assert session.outcome is not None
    before = session.outcome.area(Zone.BODY)
    assert before is not None
    type_into_table(window, 0, Zone.BODY, "4")
    entry = case_of(window).plan.steps[0].entry(Zone.BODY)
    assert entry is not None
    assert entry.coats == CoatSpan.exactly(4)
    after = session.outcome.area(Zone.BODY)
    assert after is not None
    assert after.predicted.lightness < before.predicted.lightness
    assert session.history is not None
    assert session.history.undo_label == "4 on body, step 1"
    assert window.commands.undo.text() == "&Undo 4 on body, step 1"
    keys(window, "Ctrl+Z")
    entry = case_of(window).plan.steps[0].entry(Zone.BODY)
    assert entry is not None
    assert entry.coats == CoatSpan.exactly(1)
    keys(window, "Ctrl+Shift+Z")
    assert case_of(window).plan.steps[0].entry(Zone.BODY).coats == CoatSpan.exactly(4)


def test_the_outcome_panel_shows_what_the_session_predicts(window: MainWindow) -> None:
    outcome = window.session.outcome
    assert outcome is not None
    body = outcome.area(Zone.BODY)
    assert body is not None
    names = [row.accessibleName() for row in window.outcome.outcome._rows if row.isVisible()]
    assert names[0].startswith(f"body: predicted L* {body.predicted.lightness:.1f}")
    # Nothing is calibrated, and the window says so.
    assert "Not calibrated" in window.outcome.outcome.caution.accessibleName()
    assert "invented" in window.status.message.text()


def test_steps_come_and_go_and_move(window: MainWindow) -> None:
    window.plan_desk.add_liquid("amber")
    assert case_of(window).plan.liquid_of(case_of(window).plan.steps[3]) == "amber"
    window.plan.table.step_move_requested.emit(3, 0)
    assert case_of(window).plan.liquid_of(case_of(window).plan.steps[0]) == "amber"
    assert window.plan.table.model().columnCount() == 4
    window.plan.table.step_remove_requested.emit(0)
    assert window.plan.table.model().columnCount() == 3


def crown_place(window: MainWindow, point: tuple[float, float, float]) -> QPoint:
    view = window.crown
    x, y, _ = view.camera.project(np.array(point), view.width(), view.height())[0]
    return QPoint(round(x), round(y))


def stroke(window: MainWindow, *places: QPoint) -> None:
    QTest.mousePress(window.crown, LEFT, NONE, places[0])
    for place in places[1:]:
        QTest.mouseMove(window.crown, place)
        QApplication.processEvents()
    QTest.mouseRelease(window.crown, LEFT, NONE, places[-1])


def test_a_stroke_adds_coats_of_the_chosen_step_and_is_one_undo_step(window: MainWindow) -> None:
    window.plan.table.select_cell(1, Zone.BODY)
    assert window.plan.brush.head.remark.text() == "adds to step 2, slate"
    near = (0.6, 4.0, 2.9)
    start, end = crown_place(window, near), crown_place(window, (-0.6, 4.0, 2.9))
    before = case_of(window)
    stroke(window, start, end)
    brushed = case_of(window).plan.steps[1].brushed
    assert brushed is not None
    painted = case_of(window).surface.mesh.vertices[brushed.vertices]
    # A brush of 0.6 mm along a way of 1.2 mm stays within 0.7 mm of its line.
    line = np.array(near) / np.linalg.norm(near) * 5.0
    assert np.abs(painted[:, 2] - line[2]).max() < 0.8
    assert np.linalg.norm(painted, axis=1).min() > 4.9
    assert brushed.coats.max() == pytest.approx(1.0, abs=0.05)
    keys(window, "Ctrl+Z")
    assert case_of(window) is before


def test_a_stroke_with_a_name_chosen_paints_that_zone(window: MainWindow) -> None:
    window.plan.table.select_row(Zone.CUSP)
    assert window.plan.brush.head.remark.text() == "paints cusp"
    place = crown_place(window, (0.0, 4.0, 2.9))
    hit = window.crown.pick(place)
    assert hit is not None
    assert case_of(window).zones[hit.vertex] == Zone.BODY
    stroke(window, place)
    assert case_of(window).zones[hit.vertex] == Zone.CUSP
    # The eraser gives back what was proposed.
    QTest.mouseClick(window.plan.brush.tools["eraser"], LEFT)
    stroke(window, place)
    assert case_of(window).zones[hit.vertex] == Zone.BODY


def test_escape_leaves_the_case_as_it_was(window: MainWindow) -> None:
    window.plan.table.select_cell(1, Zone.BODY)
    before = case_of(window)
    place = crown_place(window, (0.0, 4.0, 2.9))
    QTest.mousePress(window.crown, LEFT, NONE, place)
    QTest.keyClick(window.crown, Qt.Key.Key_Escape)
    QTest.mouseRelease(window.crown, LEFT, NONE, place)
    assert case_of(window) is before
    assert not window.session.is_modified


def test_pointing_reads_the_place(window: MainWindow, qtbot: QtBot) -> None:
    QTest.mouseMove(window.crown, crown_place(window, (0.0, 4.0, 2.9)))
    qtbot.waitUntil(window.crown.probe_card.isVisible, timeout=2000)
    said = window.crown.probe_card.accessibleDescription()
    assert window.status.pointed.text() == said
    assert said.startswith("body, buccal, barley 1, L* ")
    # The dome's wall is 1 mm everywhere.
    assert "wall 1.0" in said
    QTest.mouseMove(window.crown, QPoint(3, 3))
    qtbot.waitUntil(lambda: not window.crown.probe_card.isVisible(), timeout=2000)


def seen_from(window: MainWindow, toward: tuple[int, int, int]) -> bool:
    return bool(np.allclose(window.crown.camera.axes[2], toward, atol=1e-6))


@pytest.mark.parametrize(
    ("key", "look"), [(1, Look.SINTERED), (2, Look.BENCH), (3, Look.ZONES), (4, Look.COATS)]
)
def test_alt_and_a_number_choose_a_look(window: MainWindow, key: int, look: Look) -> None:
    keys(window, f"Alt+{key}")
    assert window.crown.look is look
    assert window.looks.buttons[look].isChecked()


def test_the_bench_look_shows_dye_where_coats_are(window: MainWindow) -> None:
    """Bare places are chalk; a stroke's dye is what the jar's own swatch shows, before firing."""
    case = case_of(window)
    step = len(case.plan.steps) - 1
    jar = replace(case.plan.jar(case.plan.steps[step].jar), dye_drops=(0, 2, 1))
    window.session.edit("another dye", lambda case: edits.with_jar(case, jar))
    keys(window, "Alt+2")
    before = window.crown._colours[Look.BENCH].copy()
    window.desk.choose(Zone.CUSP, step)
    prediction = window.session.prediction
    assert prediction is not None
    bare = np.flatnonzero(prediction.coats.sum(axis=0) < 1e-6)
    assert len(bare)
    chalk = np.rint(encode_srgb(chalk_linear_srgb()) * 255.0)
    assert np.abs(before[bare].astype(float) - chalk).max() <= 1.0
    vertex = int(bare[len(bare) // 2])
    place = case.surface.mesh.vertices[vertex]
    window.desk._begin(place, vertex, Qt.KeyboardModifier.NoModifier)
    QApplication.processEvents()
    during = window.crown._colours[Look.BENCH].copy()
    assert tuple(during[vertex]) != tuple(before[vertex])
    window.desk._cancel()
    assert np.array_equal(window.crown._colours[Look.BENCH], before)
    window.desk._begin(place, vertex, Qt.KeyboardModifier.NoModifier)
    window.desk._end()
    after = window.crown._colours[Look.BENCH]
    assert np.abs(after[vertex].astype(int) - during[vertex].astype(int)).max() <= 2


def test_control_and_a_number_look_from_a_side(window: MainWindow, qtbot: QtBot) -> None:
    # Mesial is +x, occlusal +z; in quadrant 3 buccal is occlusal x mesial, +y.
    for key, toward in (("Ctrl+2", (0, 1, 0)), ("Ctrl+4", (1, 0, 0))):
        keys(window, key)
        qtbot.waitUntil(lambda side=toward: seen_from(window, side), timeout=5000)


def test_asking_for_an_area_turns_the_crown_to_it(window: MainWindow, qtbot: QtBot) -> None:
    window.turn_to(Zone.CUSP)
    qtbot.waitUntil(lambda: window.crown.camera.axes[2][2] > 0.95, timeout=5000)
    window.turn_to(Zone.INNER)
    qtbot.waitUntil(lambda: window.crown.camera.axes[2][2] < -0.95, timeout=5000)


def test_choosing_materials_edits_the_case(window: MainWindow) -> None:
    window.plan.unit.block_chosen.emit("light 3Y")
    assert case_of(window).plan.block == "light 3Y"
    other = next(
        s.name
        for s in case_of(window).materials.stumps
        if s.name != unit_facts(case_of(window)).stump
    )
    window.plan.unit.stump_chosen.emit(other)
    assert unit_facts(case_of(window)).stump == other
    window.plan.unit.size_chosen.emit("milled")
    facts = unit_facts(case_of(window))
    assert facts.size == "milled"
    # Milled is larger: the sintered crown shrinks by the block's enlargement factor.
    height = float(facts.description.split(", ")[1].split()[0])
    assert height == pytest.approx(5.0 / case_of(window).source.enlargement_factor, abs=0.06)


# --- title, saving, leaving --------------------------------------------------------------


def test_the_title_marks_unsaved_work(window: MainWindow, tmp_path: Path) -> None:
    assert not window.isWindowModified()
    type_into_table(window, 0, Zone.BODY, "3")
    assert window.isWindowModified()
    assert "not saved" in window.top.state.text()
    window.saving.save_to(tmp_path / "crown.stainmap")
    assert not window.isWindowModified()
    assert window.windowTitle().startswith("crown[*]")
    again = read_case(tmp_path / "crown.stainmap")
    assert again.plan.steps[0].entry(Zone.BODY).coats == CoatSpan.exactly(3)


def test_unsaved_work_is_not_lost_without_asking(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []

    def answer(button: QMessageBox.StandardButton) -> None:
        monkeypatch.setattr(QMessageBox, "question", lambda *args: asked.append(args[2]) or button)

    answer(QMessageBox.StandardButton.Cancel)
    assert window.saving.may_leave()
    assert asked == []
    type_into_table(window, 0, Zone.BODY, "2")
    window.close()
    assert asked == ["The case has changes that are not saved."]
    assert window.isVisible()
    answer(QMessageBox.StandardButton.Discard)
    assert window.saving.may_leave()


def test_save_as_asks_and_adds_the_ending(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(tmp_path / "mine"), ""))
    assert window.saving.save_as()
    assert (tmp_path / "mine.stainmap").is_file()
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: ("", ""))
    assert not window.saving.save_as()


def test_a_place_that_cannot_be_written_is_said(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    said: list[str] = []
    monkeypatch.setattr(QMessageBox, "warning", lambda *args: said.append(args[2]))
    in_the_way = tmp_path / "a file"
    in_the_way.write_text("not a folder", encoding="utf-8")
    assert not window.saving.save_to(in_the_way / "crown.stainmap")
    assert "a file" in said[0]


def test_export_writes_what_the_ending_says(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "crown.csv"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(path), ""))
    window.saving.export()
    assert path.read_text(encoding="utf-8").count("\n") > 1000
    plain = tmp_path / "crown"
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(plain), "Mesh (*.ply)"))
    window.saving.export()
    assert plain.with_suffix(".ply").read_bytes().startswith(b"ply")


def test_sheets_are_written_where_the_user_says(
    window: MainWindow, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened: list[QUrl] = []
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path))
    monkeypatch.setattr(QDesktopServices, "openUrl", opened.append)
    window.commands.save_sheets.trigger()
    sheets = sorted(path.name for path in tmp_path.glob("*.pdf"))
    assert sheets == ["T-0001-agreement.pdf", "T-0001-coat-map.pdf", "T-0001-mixing-list.pdf"]
    assert all((tmp_path / name).read_bytes().startswith(b"%PDF") for name in sheets)
    assert opened[0].toLocalFile().endswith("T-0001-coat-map.pdf")
    assert not window.printing.progress.isVisible()
    assert window.status.message.text().startswith("Wrote T-0001-coat-map.pdf")


def test_what_is_wanted_can_be_changed(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    def answer(dialog: WantedDialog) -> int:
        assert dialog.body[0].value() == pytest.approx(74.0)
        dialog.body[0].setValue(71.0)
        light, chroma = dialog.offsets[Zone.CUSP]
        assert (light.value(), chroma.value()) == (-3.0, -2.0)
        light.selectAll()
        QTest.keyClicks(light, "-4.5")
        QTest.keyClick(light, Qt.Key.Key_Return)
        return int(WantedDialog.DialogCode.Accepted)

    monkeypatch.setattr(WantedDialog, "exec", answer)
    QTest.mouseClick(window.outcome.outcome.change, LEFT)
    target = case_of(window).target
    assert target is not None
    assert target.body.lightness == 71.0
    cusp = target.wanted(Zone.CUSP)
    assert cusp is not None
    assert cusp.lightness == pytest.approx(66.5)
    keys(window, "Ctrl+Z")
    assert case_of(window).target.body.lightness == 74.0


# --- opening -----------------------------------------------------------------------------


@pytest.fixture
def empty(qtbot: QtBot, settings: QSettings) -> MainWindow:
    one = new_window(settings)
    one.resize(1400, 900)

    def settle(window: MainWindow) -> None:
        if window.session.case is not None:
            window.session.adopt(window.session.case, path=None, saved=True)

    qtbot.addWidget(one, before_close_func=settle)
    one.show()
    qtbot.waitExposed(one)
    return one


def message_of(window: MainWindow) -> str:
    card = window.flow.message
    return f"{card.accessibleName()} {card.accessibleDescription()}" if card.isVisible() else ""


def test_with_nothing_open_the_window_says_what_to_do(empty: MainWindow, qtbot: QtBot) -> None:
    # Not at once: what a program is started on is about to be opened.
    assert message_of(empty) == ""
    qtbot.waitUntil(lambda: "No crown yet" in message_of(empty), timeout=3000)
    assert empty.crown.empty_mark.isVisible()
    assert not empty.plan.unit.block.isEnabled()
    assert not empty.commands.save.isEnabled()
    assert empty.windowTitle() == "stainmap"


def test_a_dropped_case_opens(
    empty: MainWindow, planned_case: Case, tmp_path: Path, qtbot: QtBot
) -> None:
    path = tmp_path / "dropped.stainmap"
    write_case(planned_case, path)
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    event = QDropEvent(QPointF(700, 400), Qt.DropAction.CopyAction, data, LEFT, NONE)
    empty.dropEvent(event)
    qtbot.waitUntil(lambda: empty.session.case is not None, timeout=5000)
    assert message_of(empty) == ""
    assert empty.session.path == path
    assert empty.crown.has_crown
    assert empty.flow.folder == str(tmp_path)


def test_a_damaged_file_is_refused_in_words(empty: MainWindow, tmp_path: Path) -> None:
    path = tmp_path / "broken.stl"
    path.write_bytes(b"\x00" * 200)
    empty.flow.open_path(path)
    said = message_of(empty)
    assert "broken.stl" in said
    assert empty.flow.message.buttons[0].text() == "open another"
    assert empty.session.case is None


def test_a_missing_file_is_refused_and_the_open_case_stays(
    window: MainWindow, tmp_path: Path
) -> None:
    before = case_of(window)
    window.flow.open_path(tmp_path / "gone.stl")
    assert message_of(window)
    assert case_of(window) is before
    QTest.mouseClick(window.flow.message.buttons[0], LEFT)
    assert message_of(window) == ""


def test_a_mesh_is_asked_about_and_then_read(
    empty: MainWindow, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    """A premolar made from numbers; where mesial is, the shape of a single crown may not tell."""
    path = Path(__file__).parents[2] / "sample_cases" / "upper_premolar_14.stl"
    # Light in the grooves takes seconds and plays no part here.
    monkeypatch.setattr(empty.session, "need_shading", lambda: None)

    empty.flow.open_path(path)
    card = empty.flow.questions
    assert card.isVisible()
    assert card.teeth.text() == "14"
    QTest.mouseClick(card.sintered, LEFT, NONE, QPoint(8, card.sintered.height() // 2))
    QTest.mouseClick(card.read, LEFT)
    if empty.session.case is None:
        assert "Where is mesial?" in message_of(empty)
        empty.crown.look_along(np.array([1.0, 0.0, 0.0]), np.array([0.0, 0.0, 1.0]))
        qtbot.waitUntil(lambda: seen_from(empty, (1, 0, 0)), timeout=5000)
        middle = QPoint(empty.crown.width() // 2, empty.crown.height() // 2)
        QTest.mouseClick(empty.crown, LEFT, NONE, middle)
    case = empty.session.case
    assert case is not None
    assert case.reading.mesial is not None
    # The crown maker's crowns have mesial at +x and occlusal at +z.
    assert case.reading.mesial[0] > 0.8
    assert case.reading.occlusal_axis[2] > 0.95
    assert set(np.unique(case.zones)) >= {1, 2, 3, 4, 6}
    assert message_of(empty) == ""


def test_asking_for_mesial_can_be_cancelled(window: MainWindow) -> None:
    window.flow.ask_for_mesial()
    assert "Where is mesial?" in message_of(window)
    QTest.mouseClick(window.flow.message.buttons[0], LEFT)
    assert message_of(window) == ""
    assert window.plan.brush.head.remark.text() != ""


# --- the window itself -------------------------------------------------------------------


def test_a_narrow_window_folds_the_outcome_into_a_tab(window: MainWindow, qtbot: QtBot) -> None:
    assert window.outcome_dock not in window.tabifiedDockWidgets(window.plan_dock)
    window.resize(1024, 700)
    qtbot.wait(50)
    assert window.outcome_dock in window.tabifiedDockWidgets(window.plan_dock)
    assert window.width() == 1024
    assert window.height() == 700
    assert window.crown.width() >= 500
    window.resize(1500, 900)
    qtbot.wait(50)
    assert window.outcome_dock not in window.tabifiedDockWidgets(window.plan_dock)
    assert window.outcome_dock.isVisible()


def test_the_strip_is_over_the_sample_only(
    window: MainWindow, planned_case: Case, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    assert not window.strip.isVisible()
    other = replace(planned_case, code="other")
    monkeypatch.setattr("stainmap.ui.main_window.open_sample", lambda: other)
    window.open_sample()
    assert window.strip.isVisible()
    # An edited sample still is the sample; a mesh that is looked at is not.
    type_into_table(window, 0, Zone.BODY, "3")
    assert window.strip.isVisible()
    window.flow.open_path(Path(__file__).parents[2] / "sample_cases" / "upper_premolar_14.stl")
    assert not window.strip.isVisible()
    window.flow.go_back()
    assert window.strip.isVisible()
    path = tmp_path / "crown.stainmap"
    write_case(planned_case, path)
    window.flow.open_path(path)
    assert window.session.path == path
    assert not window.strip.isVisible()


def test_sizes_and_the_strip_are_remembered(
    qtbot: QtBot, settings: QSettings, planned_case: Case, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("stainmap.ui.main_window.open_sample", lambda: planned_case)
    first = new_window(settings)
    qtbot.addWidget(first)
    if first.screen().availableGeometry().width() < 1400:
        pytest.skip("Qt fits a remembered window into the screen, and this one is too small")
    first.resize(1333, 777)
    first.show()
    qtbot.waitExposed(first)
    assert not first.strip.isVisible()
    first.open_sample()
    assert first.strip.isVisible()
    QTest.mouseClick(first.strip.close_button, LEFT)
    first.close()
    settings.sync()
    second = new_window(settings)
    qtbot.addWidget(second)
    second.show()
    qtbot.waitExposed(second)
    assert (second.width(), second.height()) == (1333, 777)
    second.open_sample()
    assert not second.strip.isVisible()
    second.close()


def test_nothing_that_can_be_used_is_nameless(window: MainWindow) -> None:
    kinds = (QAbstractButton, QAbstractSlider, QComboBox, QLineEdit, QAbstractItemView)
    nameless = []
    for widget in window.findChildren(QWidget):
        inner = isinstance(widget, QScrollBar) or widget.objectName().startswith("qt_")
        if not isinstance(widget, kinds) or inner or not widget.isVisible():
            continue
        name = widget.accessibleName()
        if not name and isinstance(widget, QAbstractButton):
            name = widget.text()
        if not name and widget.focusPolicy() != Qt.FocusPolicy.NoFocus:
            nameless.append(f"{type(widget).__name__} in {type(widget.parent()).__name__}")
    assert nameless == []


def test_every_command_has_a_name_and_no_key_means_two_things(window: MainWindow) -> None:
    actions = [
        action for action in window.findChildren(type(window.commands.open)) if action.text()
    ]
    used: dict[str, str] = {}
    for action in actions:
        key = action.shortcut().toString()
        if key:
            assert used.setdefault(key, action.text()) == action.text(), key
    assert {"Ctrl+O", "Ctrl+S", "Ctrl+Z", "Ctrl+Shift+Z", "Alt+1", "Alt+3", "Alt+4"} <= set(used)


# --- figures from a case -----------------------------------------------------------------


def test_columns_and_readings_follow_the_case(session: Session) -> None:
    case, prediction = session.case, session.prediction
    assert case is not None
    assert prediction is not None
    columns = step_columns(case, session.outcome)
    assert [column.jar.liquid for column in columns] == ["barley", "slate", "umber"]
    assert len({column.jar.dye for column in columns}) == 3
    # The margin band lies on the cervical zone, which has no coats: nothing is inherited.
    assert columns[0].inherited.get(Accent.MARGIN_BAND, "") in ("", "0")
    top = int(np.argmax(case.surface.mesh.vertices[:, 2]))
    reading = probe_reading(prediction, top)
    assert reading.area == "cusp"
    assert reading.coats == "slate 2"
    assert reading.lightness == pytest.approx(float(prediction.appearance.lab[top, 0]))
