"""The dialogs around the plan: each answer is one undo step; what is shown was predicted."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QDialog, QInputDialog
from pytestqt.qtbot import QtBot

from stainmap.app.prediction import Prediction
from stainmap.model.case import Case, Region
from stainmap.model.colour import Conversion
from stainmap.model.finishing import Finish
from stainmap.model.material import BlankCoupon
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Zone
from stainmap.predict.seen import Seen
from stainmap.ui.after_dialog import AfterDialog
from stainmap.ui.backing_dialog import AS_ALL, BackingDialog, behind_now, units_on_stumps
from stainmap.ui.coupon_dialog import CouponDialog
from stainmap.ui.lights_dialog import LightsDialog
from stainmap.ui.main_window import MainWindow
from stainmap.ui.process_dialog import ProcessDialog
from stainmap.ui.wanted_dialog import WantedDialog
from stainmap.ui.what_if_dialog import WhatIfDialog
from tests.builders import dome_case

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Test without OpenGL what is the same with it."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")


def case_of(window: MainWindow) -> Case:
    case = window.session.case
    assert case is not None
    return case


def prediction_of(window: MainWindow) -> Prediction:
    prediction = window.session.prediction
    assert prediction is not None
    return prediction


def answer(monkeypatch: pytest.MonkeyPatch, kind: type[QDialog], act: Callable[..., None]) -> None:
    """Let a dialog of a kind be filled in and closed with OK as soon as it opens."""

    def run(dialog: QDialog) -> QDialog.DialogCode:
        act(dialog)
        dialog.accept()
        return QDialog.DialogCode(dialog.result())

    monkeypatch.setattr(kind, "exec", run)


def watched(monkeypatch: pytest.MonkeyPatch, kind: type[QDialog]) -> list[QDialog]:
    """Return the dialogs of a kind that open from now on; none of them waits."""
    shown: list[QDialog] = []

    def keep(dialog: QDialog) -> None:
        shown.append(dialog)

    monkeypatch.setattr(kind, "exec", keep)
    return shown


def test_grinding_and_finish_change_the_prediction_in_one_step(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    before, first = prediction_of(window), case_of(window)

    def act(dialog: AfterDialog) -> None:
        box = dialog.depths[None]
        box.setCurrentIndex(box.findData(0.2))
        dialog.finish.setCurrentText(str(Finish.GLAZED))

    answer(monkeypatch, AfterDialog, act)
    window.dialogs.ask_for_finish()
    changed = case_of(window)
    assert changed.after_sintering.finish is Finish.GLAZED
    assert [entry.depth_mm for entry in changed.after_sintering.ground] == [0.2]
    # Grinding takes stain away: where there was some, chroma falls.
    body = before.outcome.area(Zone.BODY), prediction_of(window).outcome.area(Zone.BODY)
    assert body[0] is not None
    assert body[1] is not None
    assert body[1].predicted.chroma < body[0].predicted.chroma - 0.3
    window.session.undo()
    assert case_of(window) is first


def test_a_wet_hand_stains_more(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    before = prediction_of(window).outcome.area(Zone.BODY)

    def act(dialog: ProcessDialog) -> None:
        dialog.show()
        # A style sheet can shrink the field inside to nothing: the number must be seen.
        assert dialog.hand.lineEdit().width() > 0.8 * dialog.hand.width()
        dialog.hand.setValue(1.5)

    answer(monkeypatch, ProcessDialog, act)
    window.dialogs.ask_for_process()
    assert case_of(window).process.uptake.hand_factor == 1.5
    after = prediction_of(window).outcome.area(Zone.BODY)
    assert before is not None
    assert after is not None
    assert after.predicted.lightness < before.predicted.lightness
    # OK without a change is no step.
    history = window.session.history
    window.dialogs.ask_for_process()
    assert window.session.history is history


def test_what_lies_behind_is_asked_for_every_region(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    dark = next(stump.name for stump in case_of(window).materials.stumps if "metal" in stump.name)
    before = prediction_of(window).appearance.lab.copy()

    def act(dialog: BackingDialog) -> None:
        fields = dialog._fields[Region.STUMP, None]
        fields.stump.setCurrentText(dark)
        fields.thickness_mm.setValue(0.1)

    answer(monkeypatch, BackingDialog, act)
    window.dialogs.ask_for_backings()
    backing = case_of(window).backing(Region.STUMP)
    assert (backing.stump, backing.cement_thickness_mm) == (dark, 0.1)
    assert np.abs(prediction_of(window).appearance.lab - before).max() > 0.5


def test_a_unit_of_a_bridge_can_have_a_stump_of_its_own(qtbot: QtBot) -> None:
    case = dome_case(6, 12)
    half = (case.surface.mesh.vertices[:, 0] > 0.0).astype(np.uint8)
    units = (
        Unit(tooth=Tooth(number=14), role=Role.RETAINER),
        Unit(tooth=Tooth(number=15), role=Role.RETAINER),
    )
    case = replace(case, units=units, reading=replace(case.reading, unit_index=half))
    assert units_on_stumps(case) == {0: "14", 1: "15"}
    pontic = replace(case, units=(units[0], replace(units[1], role=Role.PONTIC)))
    assert units_on_stumps(pontic) == {0: "14"}
    before = behind_now(case)
    stump = before[0].stump
    dialog = BackingDialog(
        before, [stump, "metal"], [before[0].cement], units=units_on_stumps(case)
    )
    qtbot.addWidget(dialog)
    assert dialog.backings == before
    fields = dialog._fields[Region.STUMP, 1]
    assert not fields.cement.isEnabled()
    fields.stump.setCurrentText("metal")
    assert fields.cement.isEnabled()
    own = replace(before[0], stump="metal", of_unit=1)
    assert dialog.backings == (*before, own)
    # Opened again it shows what was chosen, and lets it go.
    again = BackingDialog(
        behind_now(replace(case, backings=(*case.backings, own))),
        [stump, "metal"],
        [before[0].cement],
        units=units_on_stumps(case),
    )
    qtbot.addWidget(again)
    assert again.backings == (*before, own)
    again._fields[Region.STUMP, 1].stump.setCurrentText(AS_ALL)
    assert again.backings == before


def test_a_click_places_the_screw_channel_and_the_menu_takes_it_away(window: MainWindow) -> None:
    window.flow.ask_for_screw_channel()
    assert window.flow.is_asking
    middle = QPoint(window.crown.width() // 2, window.crown.height() // 2)
    # The crown moves aside for the question, and back when it is answered.
    hit = window.crown.pick(middle)
    assert hit is not None
    QTest.mouseClick(window.crown, LEFT, NONE, middle)
    assert not window.flow.is_asking
    (channel,) = case_of(window).screw_channels
    np.testing.assert_allclose(channel.point_mm, hit.position)
    assert window.commands.unscrew.isEnabled()
    window.dialogs.close_screw_channels()
    assert case_of(window).screw_channels == ()


def test_a_coupon_needs_somebody_who_read_it(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    dialog = CouponDialog(case_of(window), window)
    dialog.used.setChecked(True)
    dialog.accept()
    assert dialog.result() != QDialog.DialogCode.Accepted
    assert "who read it" in dialog.said.text()

    def act(other: CouponDialog) -> None:
        other.used.setChecked(True)
        other.factor.setValue(1.3)
        other.read_by.setText("bench 2")
        other.read_on.setText("2026-03-01")

    answer(monkeypatch, CouponDialog, act)
    before = prediction_of(window).outcome.area(Zone.BODY)
    window.dialogs.ask_for_coupon()
    programme = case_of(window).materials.programme(case_of(window).programme)
    assert programme.coupon == BlankCoupon(
        scattering_factor=1.3, read_by="bench 2", read_on="2026-03-01"
    )
    after = prediction_of(window).outcome.area(Zone.BODY)
    assert before is not None
    assert after is not None
    assert after.predicted.lightness > before.predicted.lightness


def test_a_coupon_of_the_nominal_colour_gives_the_factor_of_the_slow_programme(
    window: MainWindow,
) -> None:
    """What a block is described by, read back, is a factor of 1 within its own residual."""
    case = case_of(window)
    dialog = CouponDialog(case, window)
    layer = case.materials.block(case.plan.block).layers[0]
    dialog.thickness_mm.setValue(layer.nominal_thickness_mm)
    dialog.coupled.setChecked(True)
    dialog.work_out()
    assert dialog.factor.value() == pytest.approx(1.0, abs=0.1), dialog.said.text()


def test_furnaces_are_compared_as_the_prediction_compares_them(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    shown = watched(monkeypatch, WhatIfDialog)
    window.dialogs.compare_furnaces()
    (dialog,) = shown
    assert isinstance(dialog, WhatIfDialog)
    other = dialog.programme.currentText()
    found = prediction_of(window).what_if(other)
    cells = dialog.table.texts
    assert [cells[7 * k] for k in range(len(found.areas))] == [one.label for one in found.areas]
    assert [cells[7 * k + 6] for k in range(len(found.areas))] == [
        f"{one.change_de00:.1f}" for one in found.areas
    ]
    assert "A direction" in dialog.note.text()


def test_another_light_changes_the_picture_and_not_the_plan(window: MainWindow) -> None:
    before, case = prediction_of(window), case_of(window)
    window.looks.light_chosen.emit("A", 2)
    after = prediction_of(window)
    assert case_of(window) is case
    assert after.seen == Seen(light="A")
    assert "A" in window.looks.light.text()
    assert np.abs(after.appearance.lab - before.appearance.lab).max() > 0.5
    body = after.outcome.area(Zone.BODY)
    assert body is not None
    assert body.predicted.measurement.illuminant == "A"
    # The wanted colour is known under D65 alone.
    assert body.delta_e_00 is None or body.conversions
    window.looks.light_chosen.emit("D65", 2)
    np.testing.assert_allclose(
        prediction_of(window).appearance.lab, before.appearance.lab, atol=1e-3
    )


def test_exports_are_under_daylight_whatever_is_on_screen(
    window: MainWindow, tmp_path: Path
) -> None:
    window.session.export(tmp_path / "day.csv")
    window.session.see(replace(window.session.seen, light="A"))
    window.session.export(tmp_path / "lamp.csv")
    assert (tmp_path / "day.csv").read_bytes() == (tmp_path / "lamp.csv").read_bytes()


def test_all_lights_are_shown_with_the_largest_change(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    shown = watched(monkeypatch, LightsDialog)
    window.dialogs.show_lights()
    seen = prediction_of(window).under_lights()
    (dialog,) = shown
    assert isinstance(dialog, LightsDialog)
    cells = dialog.table.texts
    assert cells[7::8] == [str(one.largest_change[0]) for one in seen.values()]


def test_a_point_is_checked_where_the_pointer_was(window: MainWindow, qtbot: QtBot) -> None:
    window.dialogs.check_point()
    assert window.flow.message.isHidden(), "nothing was pointed at yet"
    middle = QPoint(window.crown.width() // 2, window.crown.height() // 2)
    QTest.mouseMove(window.crown, middle)
    qtbot.waitUntil(lambda: window.desk.last_vertex is not None, timeout=3000)
    window.dialogs.check_point()
    assert window.flow.message.isVisible()
    assert "exact calculation" in window.flow.message.accessibleDescription()


def test_the_switch_for_curvature_changes_a_curved_crown(window: MainWindow) -> None:
    before = prediction_of(window).appearance.lab.copy()
    window.correct_curvature(True)
    after = prediction_of(window).appearance.lab
    # The dome is convex: lighter, on the mean of its outer surface.
    outer = case_of(window).reading.outer
    assert (after - before)[outer, 0].mean() > 0.2
    window.correct_curvature(False)
    np.testing.assert_allclose(prediction_of(window).appearance.lab, before, atol=1e-3)


def test_an_unlike_reading_is_compared_only_by_a_named_conversion(window: MainWindow) -> None:
    dialog = WantedDialog(None, {}, window)
    assert not dialog.converts.isVisibleTo(dialog)
    dialog.read_geometry.setCurrentText("d/8 SCI")
    assert dialog.converts.isVisibleTo(dialog)
    assert str(Conversion.FIRST_SURFACE) in dialog.converts.text()
    refused = dialog.target
    assert (refused.body.measurement.geometry, refused.conversions) == ("d/8 SCI", ())
    window.session.edit("want", lambda case: replace(case, target=refused))
    body = prediction_of(window).outcome.area(Zone.BODY)
    assert body is not None
    assert body.delta_e_00 is None
    assert "geometry" in body.refused
    dialog.converts.setChecked(True)
    chosen = dialog.target
    assert chosen.conversions == (Conversion.FIRST_SURFACE,)
    window.session.edit("want", lambda case: replace(case, target=chosen))
    body = prediction_of(window).outcome.area(Zone.BODY)
    assert body is not None
    assert body.delta_e_00 is not None
    # A lamp that no conversion knows: nothing is offered.
    dialog.read_light.setCurrentText("FL2")
    assert not dialog.converts.isVisibleTo(dialog)
    assert dialog.target.conversions == ()


def test_the_height_in_a_layered_block_is_asked_for_and_moves_the_layers(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert not window.commands.height.isEnabled(), "a block of one layer has no height"
    layered = next(one for one in case_of(window).materials.blocks if len(one.layers) > 1)
    window.plan.unit.block_chosen.emit(layered.name)
    assert window.commands.height.isEnabled()
    before = prediction_of(window).appearance.lab.copy()
    height_mm = layered.layers[-1].bottom_mm

    def answer(dialog: QInputDialog) -> int:
        dialog.setDoubleValue(height_mm)
        return QDialog.DialogCode.Accepted

    monkeypatch.setattr(QInputDialog, "exec", answer)
    window.dialogs.ask_for_height()
    assert case_of(window).plan.nesting_height_mm == height_mm
    assert np.abs(prediction_of(window).appearance.lab - before).max() > 0.3
