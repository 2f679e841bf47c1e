"""The run's pages and the tray dialog, worked as a user works them."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QSettings, Qt
from PySide6.QtGui import QDesktopServices
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialog, QFileDialog, QLabel, QPushButton
from pytestqt.qtbot import QtBot

from stainmap.app.edits import with_coats
from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.files.case_file import write_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.process import JarAmounts
from stainmap.model.tooth import Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.planning.bridge_accents import has_connector_accent
from stainmap.planning.coats import CoatLayout
from stainmap.planning.schedule import RunStage
from stainmap.ui.intake_dialog import IntakeDialog
from stainmap.ui.main_window import MainWindow
from stainmap.ui.mixing_dialog import MixingDialog
from stainmap.ui.plate import ProgressCard
from stainmap.ui.poster import Poster
from stainmap.ui.process_dialog import ProcessDialog
from stainmap.ui.run_desk import RunDesk
from stainmap.ui.sheet_preview import SheetPreview
from stainmap.ui.stage_dialogs import DryingDialog, FurnaceDialog, OrderDialog
from stainmap.ui.tray_dialog import TrayDialog


def mixing_dialog(qtbot: QtBot, case: Case) -> MixingDialog:
    coats = CoatLayout(case.surface.mesh, case.reading.outer).coats(case)
    dialog = MixingDialog(case, coats)
    qtbot.addWidget(dialog)
    return dialog


def pages_of(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> list[QDialog]:
    """Let dialogs return at once; return the list that they are noted in."""
    opened: list[QDialog] = []

    def noted(dialog: QDialog) -> int:
        opened.append(dialog)
        return int(QDialog.DialogCode.Rejected)

    monkeypatch.setattr(QDialog, "exec", noted)
    return opened


def test_every_stage_opens_its_own_page_by_click_and_by_key(
    qtbot: QtBot, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    opened = pages_of(window, monkeypatch)
    strip = window.run
    window.run_dock.show()
    qtbot.waitUntil(lambda: window.session.is_up_to_date)
    strip.grab()
    kinds = [MixingDialog, OrderDialog, DryingDialog, FurnaceDialog, FurnaceDialog]
    places = [
        next(x for x in range(strip.width()) if strip.stage_at(float(x)) is stage) + 4
        for stage in RunStage
    ]
    for x in places:
        qtbot.mouseClick(strip, Qt.MouseButton.LeftButton, pos=QPoint(x, 50))
    assert [type(one) for one in opened] == kinds
    opened.clear()
    strip.setFocus()
    qtbot.keyClick(strip, Qt.Key.Key_Return)
    for _ in range(4):
        qtbot.keyClick(strip, Qt.Key.Key_Right)
        qtbot.keyClick(strip, Qt.Key.Key_Return)
    assert [type(one) for one in opened] == kinds
    assert strip.stage_at(5.0) is None
    # Left of the first stage there is none to open.
    qtbot.mouseClick(strip, Qt.MouseButton.LeftButton, pos=QPoint(5, 50))
    assert len(opened) == 5


def test_drop_volume_and_jar_sizes_are_one_undo_step(
    qtbot: QtBot, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    def worked(dialog: QDialog) -> int:
        assert isinstance(dialog, MixingDialog)
        dialog.drops.setValue(22.0)
        dialog.shrink.click()
        return int(QDialog.DialogCode.Accepted)

    monkeypatch.setattr(QDialog, "exec", worked)
    qtbot.waitUntil(lambda: window.session.is_up_to_date)
    before = window.session.case
    window.run_desk.open_mixing()
    after = window.session.case
    assert before is not None
    assert after is not None
    assert after.process.amounts == JarAmounts(drops_per_ml=22.0)
    window.session.undo()
    assert window.session.case is before


def test_smallest_jars_keep_their_ratios_and_the_usual_ones_come_back(
    qtbot: QtBot, planned_case: Case
) -> None:
    plain = tuple(
        replace(jar, liquid_drops=50, dye_drops=tuple(2 * drops for drops in jar.dye_drops))
        for jar in planned_case.plan.jars
    )
    case = replace(planned_case, plan=replace(planned_case.plan, jars=plain))
    dialog = mixing_dialog(qtbot, case)
    dialog.shrink.click()
    for old, new in zip(plain, dialog.case.plan.jars, strict=True):
        assert new.dilution == pytest.approx(old.dilution)
        assert new.liquid_drops <= 25
    dialog.usual.click()
    assert dialog.case.plan.jars == planned_case.plan.jars


def test_what_is_assumed_again_is_kept_as_nothing_of_ones_own(
    qtbot: QtBot, planned_case: Case
) -> None:
    dialog = mixing_dialog(qtbot, planned_case)
    takes = dialog.table.texts[4]
    dialog.film.setValue(120.0)
    assert dialog.case.process.jar_amounts.film_per_coat_mm == pytest.approx(0.12)
    assert float(dialog.table.texts[4]) == pytest.approx(2.0 * float(takes), abs=0.11)
    dialog.film.setValue(60.0)
    assert dialog.case.process == planned_case.process


def test_hand_and_uptake_leave_the_drops_alone(qtbot: QtBot, planned_case: Case) -> None:
    process = replace(planned_case.process, amounts=JarAmounts(drops_per_ml=23.0))
    dialog = ProcessDialog(process)
    qtbot.addWidget(dialog)
    assert dialog.process == process


def test_the_pages_say_what_the_bench_asks(qtbot: QtBot, planned_case: Case) -> None:
    late = planned_case.plan.steps[0].with_coats(Zone.CUSP, CoatSpan.exactly(1))
    late = replace(late, areas=tuple(e for e in late.areas if e.area is Zone.CUSP))
    neck = planned_case.plan.steps[1].with_coats(Zone.CUSP, None)
    neck = neck.with_coats(Zone.CERVICAL, CoatSpan.exactly(1))
    case = replace(planned_case, plan=replace(planned_case.plan, steps=(late, neck)))
    order = OrderDialog(case)
    drying, furnace = DryingDialog(case), FurnaceDialog(case)
    for one in (order, drying, furnace):
        qtbot.addWidget(one)
        assert not one.grab().isNull()
    assert "Step 2 paints 'cervical' after step 1 painted 'cusp'" in order.remarks.text()
    assert "oven, 93 °C (200 °F)" in drying.table.texts
    assert "10 min" in drying.table.texts
    assert "1500 °C (2732 °F)" in furnace.table.texts
    assert "1500 °C (2732 °F) 2 h" in furnace.curve.accessibleDescription()
    with qtbot.waitSignal(furnace.compare_asked):
        furnace.compare.click()


# --- tray -------------------------------------------------------------------------------------


@pytest.fixture
def saved(planned_case: Case, tmp_path: Path) -> list[Path]:
    paths = []
    for number in range(3):
        path = tmp_path / f"case_{number}.stainmap"
        write_case(replace(planned_case, code=f"T-{number}"), path)
        paths.append(path)
    return paths


def worked_tray(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch, work: object
) -> list[TrayDialog]:
    shown: list[TrayDialog] = []

    def opened(dialog: QDialog) -> int:
        assert isinstance(dialog, TrayDialog)
        shown.append(dialog)
        work(dialog)  # type: ignore[operator]
        return int(QDialog.DialogCode.Rejected)

    monkeypatch.setattr(QDialog, "exec", opened)
    window.run_desk.open_tray()
    return shown


def test_a_tray_is_laid_kept_and_opened_again(
    qtbot: QtBot,
    window: MainWindow,
    saved: list[Path],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    kept = tmp_path / "monday.staintray"
    monkeypatch.setattr(
        QFileDialog, "getOpenFileNames", lambda *_: ([str(path) for path in saved], "")
    )
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_: (str(kept)[:-10], ""))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_: (str(kept), ""))

    def work(dialog: TrayDialog) -> None:
        assert not dialog.keep_button.isEnabled()
        dialog.add_button.click()
        assert dialog.list.count() == 3
        assert dialog.day.text().startswith("3 units.")
        dialog.keep_button.click()
        dialog.list.setCurrentRow(0)
        dialog.remove_button.click()
        assert dialog.list.count() == 2
        dialog.open_button.click()
        assert dialog.list.count() == 3
        assert not dialog.grab().isNull()

    worked_tray(window, monkeypatch, work)
    assert kept.exists()


def test_what_cannot_be_read_is_said_and_the_rest_goes_on(
    qtbot: QtBot, window: MainWindow, saved: list[Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    saved[1].write_bytes(b"no case")
    monkeypatch.setattr(
        QFileDialog, "getOpenFileNames", lambda *_: ([str(path) for path in saved], "")
    )

    def work(dialog: TrayDialog) -> None:
        dialog.add_button.click()
        assert dialog.list.count() == 3
        assert "not read" in dialog.list.item(1).text()
        assert dialog.day.text().startswith("2 units.")
        assert "case_1.stainmap" in dialog.remarks.text()

    worked_tray(window, monkeypatch, work)


def test_the_sheets_of_a_tray_are_looked_at_and_saved(
    qtbot: QtBot,
    window: MainWindow,
    saved: list[Path],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    saved[1].write_bytes(b"no case")
    folder = tmp_path / "paper"
    folder.mkdir()
    monkeypatch.setattr(
        QFileDialog, "getOpenFileNames", lambda *_: ([str(path) for path in saved], "")
    )
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(folder))
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda _: True)

    def work(dialog: TrayDialog) -> None:
        assert not dialog.sheets_button.isEnabled()
        dialog.add_button.click()
        dialog.sheets_button.click()
        (preview,) = dialog.findChildren(SheetPreview)
        names = [one.accessibleName() for one in preview.paper.findChildren(QLabel)]
        assert {name.rpartition(", ")[0] for name in names if name} == {
            "T-0-coat-map",
            "T-0-agreement",
            "T-2-coat-map",
            "T-2-agreement",
            "tray-mixing-list",
        }
        assert preview.left_out.text().startswith("case_1.stainmap: ")
        preview.buttons["Save as PDF..."].click()
        assert sorted(path.name for path in folder.iterdir()) == [
            "T-0-agreement.pdf",
            "T-0-coat-map.pdf",
            "T-2-agreement.pdf",
            "T-2-coat-map.pdf",
            "tray-mixing-list.pdf",
        ]
        assert dialog.remarks.text().startswith("Wrote ")
        preview.buttons["Save as pictures..."].click()
        assert {"T-0-coat-map-1.png", "tray-mixing-list-1.png"} <= {
            path.name for path in folder.iterdir()
        }

    before = window.session.case
    assert worked_tray(window, monkeypatch, work)
    # The open case does not lie on the tray: nothing is noted in it.
    assert window.session.case is before


def test_the_tray_opens_with_its_key(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    opened = pages_of(window, monkeypatch)
    QTest.keySequence(window, "Ctrl+T")
    QTest.keySequence(window, "Ctrl+I")
    assert [type(one) for one in opened] == [TrayDialog, IntakeDialog]


def test_making_the_sheets_of_a_tray_can_be_stopped(
    qtbot: QtBot,
    settings: QSettings,
    saved: list[Path],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    poster = Poster()
    runner = JobRunner(post=poster)
    window = MainWindow(Session(starter_catalogue(), threaded=False), settings, runner)
    qtbot.addWidget(window)
    monkeypatch.setattr(
        QFileDialog, "getOpenFileNames", lambda *_: ([str(path) for path in saved], "")
    )

    def work(dialog: TrayDialog) -> None:
        dialog.show()
        dialog.add_button.click()
        qtbot.waitUntil(dialog.sheets_button.isEnabled)
        dialog.sheets_button.click()
        (card,) = dialog.findChildren(ProgressCard)
        assert card.isVisible()
        (stop,) = card.findChildren(QPushButton)
        stop.click()
        qtbot.waitUntil(card.isHidden)
        assert dialog.remarks.text().startswith("No sheets were made.")
        assert not dialog.findChildren(SheetPreview)
        dialog.hide()

    assert worked_tray(window, monkeypatch, work)


def test_a_saved_case_lies_on_the_tray_as_it_is_on_screen(
    qtbot: QtBot,
    window: MainWindow,
    saved: list[Path],
    planned_case: Case,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    window.session.adopt(replace(planned_case, code="T-0"), path=saved[0], saved=True)
    qtbot.waitUntil(lambda: window.session.is_up_to_date)

    def work(dialog: TrayDialog) -> None:
        assert dialog.list.count() == 1
        assert dialog.list.item(0).text().startswith("T-0")
        dialog.sheets_button.click()
        (preview,) = dialog.findChildren(SheetPreview)
        assert preview.left_out.isHidden()
        preview.buttons["Save as PDF..."].click()

    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_: str(tmp_path))
    monkeypatch.setattr(QDesktopServices, "openUrl", lambda _: True)
    worked_tray(window, monkeypatch, work)
    # What went to the bench is noted in the open case, so that the next plan says what it replaces.
    assert window.session.case is not None
    assert window.session.case.printed == window.session.plan_hash


def test_the_accent_over_connectors_is_one_step_and_only_for_bridges(
    qtbot: QtBot, window: MainWindow, planned_case: Case, settings: QSettings
) -> None:
    assert not window.commands.connectors.isEnabled()
    x = planned_case.surface.mesh.vertices[:, 0]
    bridge = replace(
        planned_case,
        units=(Unit(tooth=Tooth(number=36)), Unit(tooth=Tooth(number=37))),
        reading=replace(planned_case.reading, unit_index=(x > 0).astype(np.uint8)),
    ).with_accent(Accent.CONNECTOR, (abs(x) < 1.0).astype(np.float32))
    window.session.adopt(bridge, path=None, saved=True)
    assert window.commands.connectors.isEnabled()
    desk: RunDesk = window.run_desk
    desk.paint_connectors()
    assert window.session.case is not None
    assert has_connector_accent(window.session.case)
    window.session.undo()
    assert window.session.case is bridge


def test_the_value_of_each_unit_stands_in_the_window_and_follows_the_plan(
    window: MainWindow, planned_case: Case
) -> None:
    panel = window.outcome.unit_values
    assert panel.isHidden()
    x = planned_case.surface.mesh.vertices[:, 0]
    bridge = replace(
        planned_case,
        units=(Unit(tooth=Tooth(number=36)), Unit(tooth=Tooth(number=37))),
        reading=replace(planned_case.reading, unit_index=(x > 0).astype(np.uint8)),
    )
    window.session.adopt(bridge, path=None, saved=True)
    prediction = window.session.prediction
    assert prediction is not None

    def shown() -> list[str]:
        return [panel.table.texts[5 * row + 2] for row in range(2)]

    assert not panel.isHidden()
    first = shown()
    # The mean of one half's body, by hand: the two halves of the dome are alike.
    half = (x <= 0) & (bridge.zones == int(Zone.BODY))
    sizes = bridge.surface.mesh.vertex_areas[half]
    by_hand = float(np.average(prediction.appearance.lab[half, 0], weights=sizes))
    assert float(first[0]) == pytest.approx(by_hand, abs=0.4)
    window.session.edit("darker", lambda c: with_coats(c, 0, Zone.BODY, CoatSpan.exactly(3)))
    assert float(shown()[0]) < float(first[0]) - 0.5
    window.session.adopt(planned_case, path=None, saved=True)
    assert panel.isHidden()
