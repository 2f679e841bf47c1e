"""The intake page, shades from photographs and the word draft, in the window."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QDialog, QDialogButtonBox, QFileDialog
from pytestqt.qtbot import QtBot

from stainmap.files.shades_file import starter_shades
from stainmap.model.case import Case, Region
from stainmap.model.colour import Conversion
from stainmap.model.intake import Intake, ShadeSource, Third
from stainmap.model.shade_table import OffsetClass
from stainmap.model.zone import Zone
from stainmap.planning.shade_tabs import tab_colour
from stainmap.ui.intake_backing import NOT_KNOWN
from stainmap.ui.intake_dialog import IntakeDialog, IntakeFacts
from stainmap.ui.main_window import MainWindow
from stainmap.ui.photograph_dialog import PATCH, PhotographDialog
from stainmap.ui.shade_row import ShadeRow
from stainmap.ui.tab_table_dialog import TabTableDialog
from stainmap.ui.wanted_dialog import WantedDialog

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier


pytestmark = pytest.mark.usefixtures("no_pictures")


def case_of(window: MainWindow) -> Case:
    case = window.session.case
    assert case is not None
    return case


def answer(monkeypatch: pytest.MonkeyPatch, kind: type[QDialog], act: Callable[..., None]) -> None:
    """Let a dialog be shown, filled in and closed with OK as soon as it opens."""

    def run(dialog: QDialog) -> QDialog.DialogCode:
        dialog.show()
        try:
            act(dialog)
        except BaseException:
            dialog.reject()
            raise
        if dialog.isVisible():
            dialog.accept()
        return QDialog.DialogCode(dialog.result())

    monkeypatch.setattr(kind, "exec", run)


def choose(row: ShadeRow, source: str) -> None:
    """Choose how a shade was read, as a user does who opens the list."""
    row.source.setCurrentText(source)
    row.source.activated.emit(row.source.currentIndex())


def test_the_page_becomes_one_step_of_the_case(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = case_of(window)

    def fill(page: IntakeDialog) -> None:
        assert page.stump.currentText() == NOT_KNOWN
        assert "nobody has said" in page.caution.text() or "Assumed" in page.caution.text()
        choose(page.thirds[Third.MIDDLE], "tab")
        page.thirds[Third.MIDDLE].tab.setCurrentText("A3.5")
        choose(page.thirds[Third.CERVICAL], "measured")
        page.thirds[Third.CERVICAL].lab[0].setValue(69.0)
        assert str(Conversion.TAB_TABLE) in page.conversions.text()
        assert "memory" in page.conversions.text()
        number, neighbour = page.neighbours[0]
        assert {n.currentText() for n, _ in page.neighbours} == {"35", "37"}
        choose(neighbour, "tab")
        assert number.currentText() in page.conversions.text()
        page.stump.setCurrentText("discoloured")
        page.stands_on.setCurrentIndex(1)
        page.wish.setPlainText("  a little older  ")
        assert not page.caution.isVisible()

    answer(monkeypatch, IntakeDialog, fill)
    QTest.keyClick(window, Qt.Key.Key_I, Qt.KeyboardModifier.ControlModifier)
    case = case_of(window)
    assert case.intake is not None
    assert case.intake.stump_known
    assert case.intake.implant_base
    assert case.intake.wish == "a little older"
    assert len(case.intake.neighbours) == 1
    assert case.backing(Region.STUMP).stump == "discoloured"
    assert case.target is not None
    assert case.target.name == "A3.5"
    body = window.session.outcome
    assert body is not None
    area = body.area(Zone.BODY)
    assert area is not None
    assert area.wanted is not None
    assert area.wanted.lab == tab_colour(starter_shades().tab("A3.5")).lab
    neck = body.area(Zone.CERVICAL)
    assert neck is not None
    assert neck.wanted is not None
    assert neck.wanted.lightness == 69.0
    QTest.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert case_of(window) is before


def test_the_page_opened_again_shows_what_was_said(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fill(page: IntakeDialog) -> None:
        choose(page.thirds[Third.MIDDLE], "measured")
        for box, value in zip(page.thirds[Third.MIDDLE].lab, (73.5, 1.5, 20.5), strict=True):
            box.setValue(value)
        page.geometry_.setCurrentText("d/8 SCE")
        assert page.told.isVisible()
        page.converts.setChecked(True)
        page.neighbours[0][0].setCurrentText("34")
        choose(page.neighbours[0][1], "tab")

    answer(monkeypatch, IntakeDialog, fill)
    window.intake.ask_for_intake()
    intake = case_of(window).intake
    assert intake is not None
    shade = intake.shade(Third.MIDDLE)
    assert shade is not None
    assert shade.conversions == (Conversion.FIRST_SURFACE,)
    assert not intake.stump_known
    seen: list[Intake] = []

    def look(page: IntakeDialog) -> None:
        seen.append(page.intake)
        assert page.converts.isChecked()

    answer(monkeypatch, IntakeDialog, look)
    at = case_of(window)
    window.intake.ask_for_intake()
    assert seen == [intake]
    assert case_of(window) is at, "nothing was changed, so nothing is to be undone"


def test_nonsense_is_said_on_the_page(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    before = case_of(window)

    def fill(page: IntakeDialog) -> None:
        row = page.thirds[Third.MIDDLE]
        choose(row, "measured")
        row.lab[0].setValue(12.0)
        assert "outside what tooth-coloured ceramic can look like" in page.caution.text()
        row.lab[0].setValue(75.0)
        for number, neighbour in page.neighbours:
            number.setCurrentText("35")
            choose(neighbour, "tab")
        page.accept()
        assert "given twice" in page.caution.text()
        assert page.isVisible()
        page.reject()

    answer(monkeypatch, IntakeDialog, fill)
    window.intake.ask_for_intake()
    assert case_of(window) is before


def test_the_unit_panel_says_draft_until_the_stump_is_chosen(window: MainWindow) -> None:
    """The dome's wall is 1.0 mm; a crown made a little smaller has a thinner one."""
    unit = window.plan.unit
    assert unit.intake.isVisible()
    case = case_of(window)
    mesh = case.surface.mesh
    smaller = replace(case.surface, mesh=type(mesh)(mesh.vertices * 0.9, mesh.faces))
    window.session.edit("shrink", lambda c: replace(c, surface=smaller))
    assert unit.intake.text() == "draft: intake"
    assert "thinner than 1.0 mm" in unit.intake.toolTip()
    assert unit.intake.accessibleDescription() == unit.intake.toolTip()
    unit.stump_chosen.emit("natural dentine, dark")
    assert unit.intake.text() == "intake"
    intake = case_of(window).intake
    assert intake is not None
    assert intake.stump_known
    unit.cement_chosen.emit("opaque")
    window.session.undo()
    window.session.undo()
    assert unit.intake.text() == "draft: intake"


# ---- what is wanted


def test_offsets_become_usual_for_the_class_and_own_shades_can_be_left(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fill(page: IntakeDialog) -> None:
        choose(page.thirds[Third.MIDDLE], "tab")
        choose(page.thirds[Third.CERVICAL], "tab")

    answer(monkeypatch, IntakeDialog, fill)
    window.intake.ask_for_intake()

    def keep(dialog: WantedDialog) -> None:
        assert not dialog.offsets[Zone.CERVICAL][0].isVisible()
        dialog.own_shades[Zone.CERVICAL].click()
        assert dialog.offsets[Zone.CERVICAL][0].isVisible()
        dialog.offsets[Zone.CUSP][0].setValue(-1.5)
        link = next(
            b for b in dialog.findChildren(type(window.plan.unit.intake)) if "molars" in b.text()
        )
        link.click()

    answer(monkeypatch, WantedDialog, keep)
    window.intake.ask_for_target()
    target = case_of(window).target
    assert target is not None
    assert target.held == ()
    assert target.body_doubt is not None
    assert target.body == starter_shades().tab("A3").colour
    molars = window.intake.shades.table.offsets(OffsetClass.MOLAR)
    assert next(one for one in molars if one.area is Zone.CUSP).lightness == -1.5
    assert window.intake.own_file.exists()
    window.session.edit("unwant", lambda case: replace(case, target=None))
    answer(monkeypatch, WantedDialog, lambda _dialog: None)
    window.intake.ask_for_target()
    again = case_of(window).target
    assert again is not None
    assert again.offsets == molars


def test_the_intake_page_is_reached_from_what_is_wanted(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    shown: list[IntakeDialog] = []
    answer(monkeypatch, IntakeDialog, shown.append)

    def leave(dialog: WantedDialog) -> None:
        links = dialog.findChildren(type(window.plan.unit.intake))
        next(link for link in links if link.text() == "intake page...").click()

    answer(monkeypatch, WantedDialog, leave)
    window.intake.ask_for_target()
    qtbot.waitUntil(lambda: bool(shown), timeout=2000)


def test_a_tab_of_the_table_can_be_corrected(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    def correct(dialog: TabTableDialog) -> None:
        ok = dialog.findChild(QDialogButtonBox).button(QDialogButtonBox.StandardButton.Ok)
        dialog.cells.item(1, 3).setText("sixteen")
        assert "'sixteen' is not a number" in dialog.problem.text()
        assert not ok.isEnabled()
        dialog.cells.item(1, 3).setText("17,50")
        assert ok.isEnabled()
        dialog.cells.item(3, 1).setText("1")
        dialog.shipped.click()
        dialog.cells.item(1, 3).setText("17.5")

    def fill(page: IntakeDialog) -> None:
        choose(page.thirds[Third.MIDDLE], "tab")
        page.thirds[Third.MIDDLE].tab.setCurrentText("A2")
        page.tabs.click()
        assert "changed on this computer" in page.conversions.text()

    answer(monkeypatch, TabTableDialog, correct)
    answer(monkeypatch, IntakeDialog, fill)
    window.intake.ask_for_intake()
    target = case_of(window).target
    assert target is not None
    assert target.body.b == 17.5
    assert window.intake.shades.table.tab("A3.5") == starter_shades().tab("A3.5")


# ---- photographs


def picture(folder: Path, *, patch: tuple[int, int, int] = (125, 118, 110)) -> Path:
    pixels = np.full((450, 700, 3), (70, 45, 45), np.uint8)
    pixels[150:300, 60:200] = patch
    pixels[60:400, 260:400] = (205, 190, 160)
    path = folder / "teeth.png"
    Image.fromarray(pixels).save(path)
    return path


def click(dialog: PhotographDialog, x: float, y: float) -> None:
    QApplication.processEvents()
    place = dialog.picture.to_widget(x, y)
    QTest.mouseClick(dialog.picture, LEFT, NONE, QPoint(round(place.x()), round(place.y())))


def test_a_photograph_gives_the_shades_of_its_spots(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_args: (str(picture(tmp_path)), ""))

    def pick(dialog: PhotographDialog) -> None:
        ok = dialog.box.button(QDialogButtonBox.StandardButton.Ok)
        assert "neutral grey patch" in dialog.advice.text()
        dialog.ask_for_picture()
        assert "No grey patch was picked" in dialog.advice.text()
        assert not ok.isEnabled()
        click(dialog, 130, 225)
        assert "K" in dialog.said[PATCH].text()
        assert dialog.buttons["middle"].isChecked(), "the tooth follows the patch"
        click(dialog, 330, 200)
        assert ok.isEnabled()
        assert "least certain" in dialog.advice.text()
        before = dialog.picture.spots["middle"]
        QTest.keyClick(dialog.picture, Qt.Key.Key_Down)
        QTest.keyClicks(dialog.picture, "+")
        after = dialog.picture.spots["middle"]
        assert (after.y > before.y, after.radius > before.radius) == (True, True)
        dialog.reflectance.setValue(60.0)
        assert "brighter than a perfect white" in dialog.advice.text()
        dialog.reflectance.setValue(18.0)

    def fill(page: IntakeDialog) -> None:
        choose(page.thirds[Third.MIDDLE], "photograph")
        assert page.thirds[Third.MIDDLE].source.currentText() == "photograph"

    answer(monkeypatch, PhotographDialog, pick)
    answer(monkeypatch, IntakeDialog, fill)
    window.intake.ask_for_intake()
    intake = case_of(window).intake
    assert intake is not None
    shade = intake.shade(Third.MIDDLE)
    assert shade is not None
    assert shade.source is ShadeSource.PHOTOGRAPH
    assert "teeth.png" in shade.note
    outcome = window.session.outcome
    assert outcome is not None
    body = outcome.area(Zone.BODY)
    assert body is not None
    assert [one.conversion for one in body.conversions] == [Conversion.PHOTOGRAPH]
    assert min(body.difference_sd) > 1.0


def test_a_photograph_that_tells_nothing_leaves_the_row_as_it_was(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    red = picture(tmp_path, patch=(190, 90, 90))
    other = tmp_path / "crown.png"
    other.write_bytes(b"solid crown")

    def pick(dialog: PhotographDialog) -> None:
        dialog.show_picture(other)
        assert "not a picture" in dialog.advice.text()
        dialog.show_picture(red)
        click(dialog, 130, 225)
        assert "not a neutral grey" in dialog.advice.text()
        click(dialog, 330, 200)
        assert not dialog.box.button(QDialogButtonBox.StandardButton.Ok).isEnabled()
        dialog.reject()

    def fill(page: IntakeDialog) -> None:
        choose(page.thirds[Third.MIDDLE], "photograph")
        assert page.thirds[Third.MIDDLE].source.currentText() == "not read"
        assert page.intake == Intake()

    before = case_of(window)
    answer(monkeypatch, PhotographDialog, pick)
    answer(monkeypatch, IntakeDialog, fill)
    window.intake.ask_for_intake()
    assert case_of(window) is before


def test_everything_on_the_page_has_a_name_and_can_be_reached_by_tab(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch, qtbot: QtBot
) -> None:
    def walk(page: IntakeDialog) -> None:
        choose(page.thirds[Third.MIDDLE], "measured")
        page.activateWindow()
        qtbot.waitUntil(page.isActiveWindow)
        page.thirds[Third.MIDDLE].source.setFocus()
        names = []
        for _ in range(60):
            focused = page.focusWidget()
            names.append(focused.accessibleName() or getattr(focused, "text", str)())
            QTest.keyClick(focused, Qt.Key.Key_Tab)
            if page.focusWidget() is page.thirds[Third.MIDDLE].source:
                break
        assert all(names), names
        for wanted in (
            "middle: L*",
            "Stump or base",
            "Cement",
            "The dentist's wish",
            "Neighbour 1",
        ):
            assert any(wanted in name for name in names), (wanted, names)
        page.reject()

    answer(monkeypatch, IntakeDialog, walk)
    window.intake.ask_for_intake()


def test_units_of_a_bridge_have_stumps_of_their_own(qtbot: QtBot) -> None:
    """A stump for all but one; the plan is no draft either once each unit has its own."""
    facts = IntakeFacts(
        title="bridge",
        front=False,
        intake=Intake(),
        beside=(),
        stump="stump",
        cement="clear",
        stumps=("stump", "dark"),
        cements=("clear",),
        draft="A thin wall.",
        units={0: "14", 2: "16"},
        unit_stumps={2: "dark"},
    )
    page = IntakeDialog(facts, starter_shades(), lambda _places, _first: {})
    qtbot.addWidget(page)
    page.show()
    assert page.behind.unit_stumps == {2: "dark"}
    assert page.caution.isVisible()
    assert not page.intake.stump_known
    page.behind.of_units[0].setCurrentText("stump")
    assert page.intake.stump_known
    assert not page.caution.isVisible()
    page.behind.of_units[2].setCurrentIndex(0)
    assert page.behind.unit_stumps == {0: "stump"}
    assert page.behind.chosen_stump == "stump"
