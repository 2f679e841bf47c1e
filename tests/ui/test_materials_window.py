"""The window of the materials, by mouse and keys: copied, changed, checked, imported, taken out."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtWidgets import QFileDialog, QInputDialog, QLineEdit, QMessageBox
from pytestqt.qtbot import QtBot
from shiboken6 import isValid

from stainmap.app.job import JobRunner
from stainmap.app.materials import MaterialKind, entry
from stainmap.app.materials_curves import Curve, Plot
from stainmap.files.catalogue import read_catalogue
from stainmap.ui.main_window import MainWindow
from stainmap.ui.materials_desk import MaterialsDesk
from stainmap.ui.materials_plot import described, ticks
from stainmap.ui.materials_tables import FormTable
from stainmap.ui.materials_window import MaterialsWindow
from tests.ui.accessible_tree import nameless

KIND = MaterialKind
BANDS = np.array([1.0, 2.0, 3.0])


@pytest.fixture(autouse=True)
def _unkept_is_dropped(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let windows close at the end of a test without waiting for an answer."""
    answer = QMessageBox.StandardButton.Discard
    monkeypatch.setattr(QMessageBox, "question", lambda *_args: answer)


@pytest.fixture
def desk(window: MainWindow) -> MaterialsDesk:
    return window.materials


@pytest.fixture
def view(qtbot: QtBot, window: MainWindow, desk: MaterialsDesk) -> MaterialsWindow:
    qtbot.keyClick(window, Qt.Key.Key_B, Qt.KeyboardModifier.ControlModifier)
    shown = desk.view
    assert shown is not None
    qtbot.waitExposed(shown)
    shown.activateWindow()
    qtbot.waitUntil(shown.isActiveWindow)
    return shown


def press(qtbot: QtBot, view: MaterialsWindow, name: str) -> None:
    button = view.buttons.get(name) or getattr(view.editor, name)
    assert button.isEnabled(), name
    qtbot.mouseClick(button, Qt.MouseButton.LeftButton)


def choose(view: MaterialsWindow, name: str) -> None:
    (item,) = view.list.findItems(name, Qt.MatchFlag.MatchFixedString | Qt.MatchFlag.MatchRecursive)
    view.list.setCurrentItem(item)


def type_into(qtbot: QtBot, table: FormTable, row: int, column: int, text: str) -> None:
    table.setFocus()
    table.setCurrentCell(row, column)
    qtbot.keyClick(table, Qt.Key.Key_Return)
    (editor,) = [one for one in table.findChildren(QLineEdit) if one.isVisible()]
    editor.selectAll()
    qtbot.keyClicks(editor, text)
    qtbot.keyClick(editor, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: not isValid(editor) or not editor.isVisible())


def own_liquid(qtbot: QtBot, view: MaterialsWindow) -> str:
    view.choose_kind(KIND.LIQUID)
    choose(view, "barley")
    press(qtbot, view, "Copy")
    return "barley, own"


def test_a_copy_is_changed_kept_and_undone_in_the_case(
    qtbot: QtBot,
    window: MainWindow,
    view: MaterialsWindow,
    desk: MaterialsDesk,
    settings: QSettings,
) -> None:
    name = own_liquid(qtbot, view)
    case = window.session.case
    assert case is not None
    before = entry(case.materials, KIND.LIQUID, name)
    assert before is not None
    assert "open case has it too" in view.editor.note.text()
    assert "the laboratory's own" in view.editor._standing.text()
    path = Path(settings.fileName()).with_name("materials.toml")
    assert [one.name for one in read_catalogue(path).liquids] == [name]
    assert window.session.materials.liquid(name)
    seen = view.editor.plot.accessibleDescription()
    type_into(qtbot, view.editor.nodes, 0, 1, "0,4")
    assert view.editor.plot.accessibleDescription() != seen
    assert read_catalogue(path).liquids == (before,)
    press(qtbot, view, "keep")
    changed = desk.store.own.liquid(name)
    assert changed.amplitudes_per_mm[0][1] == 0.4
    assert read_catalogue(path).liquids == (changed,)
    case = window.session.case
    assert case is not None
    assert case.materials.liquid(name) == changed
    qtbot.keyClick(view, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    case = window.session.case
    assert case is not None
    assert case.materials.liquid(name) == before
    assert desk.store.own.liquid(name) == changed
    assert "other numbers" in view.editor._standing.text()
    press(qtbot, view, "put")
    case = window.session.case
    assert case is not None
    assert case.materials.liquid(name) == changed


def test_a_number_out_of_range_is_refused_where_it_was_typed(
    qtbot: QtBot, view: MaterialsWindow
) -> None:
    own_liquid(qtbot, view)
    type_into(qtbot, view.editor.nodes, 1, 1, "-3")
    assert "liquid 'barley, own', ion 2: At full load, 1/mm is -3. Expected is 0 to 50." in (
        view.editor.note.text()
    )
    assert view.editor.nodes.item(1, 1).text() == "0.057"
    assert not view.editor.keep.isEnabled()


def test_what_comes_with_the_program_is_only_looked_at(qtbot: QtBot, view: MaterialsWindow) -> None:
    view.choose_kind(KIND.PROGRAMME)
    choose(view, "fast")
    item = view.editor.nodes.item(0, 0)
    assert not item.flags() & Qt.ItemFlag.ItemIsEditable
    for name in ("Rename", "Remove"):
        assert not view.buttons[name].isEnabled()
    assert not view.editor.read.isVisible()
    assert "hours" in view.editor.plot.accessibleDescription()


def test_what_the_case_uses_cannot_be_removed(
    qtbot: QtBot, window: MainWindow, view: MaterialsWindow, desk: MaterialsDesk
) -> None:
    name = own_liquid(qtbot, view)
    window.plan_desk.add_liquid(name)
    view.list.setFocus()
    choose(view, name)
    qtbot.keyClick(view.list, Qt.Key.Key_Delete)
    assert f"The open case uses the liquid '{name}' in jar 4" in view.editor.note.text()
    assert desk.store.is_own(KIND.LIQUID, name)
    window.session.undo()
    choose(view, name)
    qtbot.keyClick(view.list, Qt.Key.Key_Delete)
    assert not desk.store.is_own(KIND.LIQUID, name)
    case = window.session.case
    assert case is not None
    assert entry(case.materials, KIND.LIQUID, name) is None


def test_a_block_is_solved_and_told_what_it_cannot_be(
    qtbot: QtBot, window: MainWindow, view: MaterialsWindow, desk: MaterialsDesk
) -> None:
    choose(view, "medium 3Y")
    press(qtbot, view, "Copy")
    press(qtbot, view, "solve")
    assert "Layer 1 reaches L*" in view.editor.note.text()
    assert "dE00 0.0" in view.editor.note.text()
    type_into(qtbot, view.editor.nodes, 2, 0, "99")
    press(qtbot, view, "solve")
    assert "the nearest it can have is L* 8" in view.editor.note.text()
    press(qtbot, view, "keep")
    assert "nearest it can have" in view.editor.note.text()
    assert desk.store.own.blocks[0].layers[0].nominal.lightness < 90.0
    assert view.editor.keep.isEnabled()
    press(qtbot, view, "discard")
    assert view.editor.nodes.item(2, 0).text() != "99"
    titles = [view.editor.shown.itemText(at) for at in range(view.editor.shown.count())]
    assert titles == ["Reflectance", "Absorption", "Scattering"]
    names = [window.plan.unit.block.itemText(at) for at in range(window.plan.unit.block.count())]
    assert "medium 3Y, own" in names


def test_rows_renaming_and_origin(
    qtbot: QtBot, view: MaterialsWindow, desk: MaterialsDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    view.choose_kind(KIND.PROGRAMME)
    press(qtbot, view, "Add")
    count = view.editor.nodes.rowCount()
    view.editor.nodes.setFocus()
    qtbot.keyClick(view.editor.nodes, Qt.Key.Key_Insert)
    assert view.editor.nodes.rowCount() == count + 1
    qtbot.keyClick(view.editor.nodes, Qt.Key.Key_Delete)
    assert view.editor.nodes.rowCount() == count
    view.editor.origin.setFocus()
    qtbot.keyClick(view.editor.origin, Qt.Key.Key_Down)
    view.editor.origin.textActivated.emit(view.editor.origin.currentText())
    qtbot.keyClick(view, Qt.Key.Key_S, Qt.KeyboardModifier.ControlModifier)
    (own,) = desk.store.own.programmes
    assert own.provenance.value == "measured"
    monkeypatch.setattr(QInputDialog, "getText", lambda *_args, **_more: ("oven 2", True))
    view.list.setFocus()
    qtbot.keyClick(view.list, Qt.Key.Key_F2)
    assert [one.name for one in desk.store.own.programmes] == ["oven 2"]
    assert "is called oven 2" in view.editor.note.text()
    monkeypatch.setattr(QInputDialog, "getText", lambda *_args, **_more: ("slow", True))
    qtbot.keyClick(view.list, Qt.Key.Key_F2)
    assert "already is a programme called 'slow'" in view.editor.note.text()


def test_files_come_in_and_go_out(
    qtbot: QtBot,
    view: MaterialsWindow,
    desk: MaterialsDesk,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def reading(path: Path) -> None:
        monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_args: (str(path), ""))

    def writing(path: Path) -> None:
        monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_args: (str(path), ""))

    view.choose_kind(KIND.STUMP)
    choose(view, "metal")
    press(qtbot, view, "Copy")
    writing(tmp_path / "stump")
    press(qtbot, view, "Export")
    exported = read_catalogue(tmp_path / "stump.toml")
    assert [one.name for one in exported.stumps] == ["metal, own"]
    writing(tmp_path / "metal.csv")
    press(qtbot, view, "write")
    choose(view, "composite")
    press(qtbot, view, "Copy")
    reading(tmp_path / "metal.csv")
    press(qtbot, view, "read")
    assert "described to within" in view.editor.note.text()
    assert view.editor.keep.isEnabled()
    press(qtbot, view, "keep")
    assert desk.store.own.stump("composite, own").floor == pytest.approx(0.24, abs=0.01)
    text = (tmp_path / "stump.toml").read_text(encoding="utf-8")
    other = text.replace("metal, own", "alloy") + '\n[[stump]]\nname = "x"\nflor = 1.0\n'
    (tmp_path / "two.toml").write_text(other, encoding="utf-8")
    reading(tmp_path / "two.toml")
    press(qtbot, view, "Import")
    assert desk.store.is_own(KIND.STUMP, "alloy")
    assert "Imported: alloy." in view.editor.note.text()
    assert "two.toml, line" in view.editor.note.text()
    (tmp_path / "no.toml").write_text("x", encoding="utf-8")
    reading(tmp_path / "no.toml")
    press(qtbot, view, "Import")
    assert "not valid TOML" in view.editor.note.text()


def test_a_dye_of_ones_own_takes_the_place_of_its_namesake(
    qtbot: QtBot, window: MainWindow, view: MaterialsWindow, desk: MaterialsDesk
) -> None:
    view.choose_kind(KIND.DYE)
    assert not view.buttons["Add"].isEnabled()
    choose(view, "magenta")
    press(qtbot, view, "Copy")
    type_into(qtbot, view.editor.numbers, 1, 0, "0.9")
    press(qtbot, view, "keep")
    case = window.session.case
    assert case is not None
    assert [one.name for one in case.materials.dyes] == ["cyan", "magenta", "yellow"]
    assert case.materials.dyes[1].absorption_rgb[1] == 0.9
    assert "colours for chalk" in view.editor.plot.accessibleDescription()


def test_changes_that_are_not_kept_are_asked_about(
    qtbot: QtBot, view: MaterialsWindow, desk: MaterialsDesk, monkeypatch: pytest.MonkeyPatch
) -> None:
    name = own_liquid(qtbot, view)
    type_into(qtbot, view.editor.nodes, 0, 1, "0.4")
    choose(view, "slate")
    choose(view, name)
    assert view.editor.nodes.item(0, 1).text() == "0.4"
    buttons = QMessageBox.StandardButton
    monkeypatch.setattr(QMessageBox, "question", lambda *_args: buttons.Cancel)
    qtbot.keyClick(view, Qt.Key.Key_Escape)
    assert view.isVisible()
    monkeypatch.setattr(QMessageBox, "question", lambda *_args: buttons.Save)
    qtbot.keyClick(view, Qt.Key.Key_Escape)
    assert not view.isVisible()
    assert desk.store.own.liquid(name).amplitudes_per_mm[0][1] == 0.4


def test_the_case_is_left_alone_where_that_is_wanted(
    qtbot: QtBot, window: MainWindow, view: MaterialsWindow
) -> None:
    qtbot.keyClick(view.editor.also, Qt.Key.Key_Space)
    assert not view.editor.also.isChecked()
    case = window.session.case
    own_liquid(qtbot, view)
    assert window.session.case is case
    assert "stays as it is" in view.editor.note.text()


def test_everything_says_what_it_is_and_fits_small_screens(
    qtbot: QtBot, view: MaterialsWindow
) -> None:
    for kind in KIND:
        view.choose_kind(kind)
        assert nameless(view) == []
        assert view.minimumSizeHint().width() <= 1024
        assert view.minimumSizeHint().height() <= 660


def test_origins_stand_where_materials_are_chosen(window: MainWindow) -> None:
    box = window.plan.unit.block
    role = Qt.ItemDataRole.AccessibleTextRole
    assert box.itemData(box.findText("medium 3Y"), role) == "medium 3Y, invented"
    window.plan_desk._fill_menu()
    assert all("invented" in one.text() for one in window.plan_desk._menu.actions())


def test_a_damaged_set_is_said_at_the_start_and_in_the_window(
    qtbot: QtBot, window: MainWindow, settings: QSettings
) -> None:
    path = Path(settings.fileName()).with_name("materials.toml")
    path.write_text("nonsense", encoding="utf-8")
    desk = MaterialsDesk(window.session, settings, JobRunner(threaded=False), window)
    said: list[str] = []
    desk.said.connect(said.append)
    qtbot.waitUntil(lambda: bool(said))
    assert "kept as" in said[0]
    desk.open()
    assert desk.view is not None
    assert desk.view.editor.note.text() == said[0]
    desk.view.close()


def test_ticks_are_round_and_span_everything() -> None:
    for low, high in ((400.0, 700.0), (0.0, 0.013), (0.0, 1530.0), (0.0, 0.0), (0.0, 9.2)):
        marks = ticks(low, high)
        assert marks[0] <= low
        assert marks[-1] >= high
        assert 2 <= len(marks) <= 9
    plot = Plot(title="A", up="B", across="C", curves=(Curve(name="d", across=BANDS, up=BANDS),))
    assert described(plot) == "A, B over C. d: from 1 at 1 to 3 at 3, highest 3 at 3."
