"""The run's pages and the tray dialog, worked as a user works them."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QSettings, Qt
from PySide6.QtWidgets import QDialog
from pytestqt.qtbot import QtBot

from stainmap.app.edits import with_coats
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.process import JarAmounts
from stainmap.model.tooth import Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.planning.bridge_accents import has_connector_accent
from stainmap.planning.coats import CoatLayout
from stainmap.planning.schedule import RunStage
from stainmap.ui.main_window import MainWindow
from stainmap.ui.mixing_dialog import MixingDialog
from stainmap.ui.process_dialog import ProcessDialog
from stainmap.ui.run_desk import RunDesk
from stainmap.ui.stage_dialogs import DryingDialog, FurnaceDialog, OrderDialog


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
