"""How it was read: every reading with its confidence, each to be set; and the plane that cuts."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from stainmap.app.cutting import NeckCut
from stainmap.app.said import answers_of, confirmed, mesial_of_buccal, with_connectors
from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.crown import READINGS, BodyKind
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.ui.main_window import MainWindow
from stainmap.ui.reading_dialog import ReadingDialog
from stainmap.ui.reading_rows import Correction, body_in_words, connector_names, reading_rows

LEFT = Qt.MouseButton.LeftButton


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Test without OpenGL what is the same with it."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")


def bridge_of(case: Case) -> Case:
    """Return the case as if it were a bridge of three, split along its width."""
    mesh = case.surface.mesh
    along = mesh.vertices[:, 0]
    split = np.digitize(along, np.quantile(along, [1 / 3, 2 / 3])).astype(np.uint8)
    return replace(
        case,
        units=(
            Unit(tooth=Tooth(number=14), role=Role.RETAINER),
            Unit(tooth=Tooth(number=15), role=Role.PONTIC),
            Unit(tooth=Tooth(number=16), role=Role.RETAINER),
        ),
        reading=replace(
            case.reading,
            kind=BodyKind.BRIDGE,
            unit_index=split,
            connectors_mm2=(8.04, 7.5),
            confidence=tuple((name, 0.1 + 0.1 * k) for k, name in enumerate(READINGS)),
        ),
    )


def test_every_reading_of_a_bridge_has_a_row(planned_case: Case) -> None:
    case = bridge_of(planned_case)
    rows = {row.key: row for row in reading_rows(case)}
    assert tuple(rows) == READINGS
    assert rows["connectors"].found == "16\N{EN DASH}15 8.0 mm\u00b2, 15\N{EN DASH}14 7.5 mm\u00b2"
    assert rows["roles"].found == "14 retainer, 15 pontic, 16 retainer."
    assert rows["occlusal_axis"].words == "a guess, please check, 10 %"
    assert rows["connectors"].words == "likely, 60 %"
    assert rows["occlusal_axis"].found.endswith("of the file.")
    assert body_in_words(case) == "A bridge of 3 units."
    # A single crown has no connectors to speak of.
    single = {row.key for row in reading_rows(planned_case)}
    assert single == set(READINGS) - {"roles", "connectors"}


def test_what_is_confirmed_is_said_and_read_again_with(planned_case: Case) -> None:
    case = bridge_of(planned_case)
    for name in ("occlusal_axis", "margin", "units", "roles", "connectors", "buccal"):
        case = confirmed(case, name)
    rows = {row.key: row for row in reading_rows(case)}
    for name in READINGS:
        assert rows[name].words == "set by you", name
        assert not rows[name].can_be_confirmed
    answers = answers_of(case)
    assert answers.occlusal_axis == case.reading.occlusal_axis
    assert answers.mesial == case.reading.mesial
    assert answers.roles_said
    assert answers.connectors_mm2 == (8.04, 7.5)
    # The two places where units part lie between them.
    places = sorted(place[0] for place in answers.neck_places)
    thirds = np.quantile(case.surface.mesh.vertices[:, 0], [1 / 3, 2 / 3])
    assert places == pytest.approx(thirds, abs=0.3)


def test_sections_can_be_given(planned_case: Case) -> None:
    case = with_connectors(bridge_of(planned_case), (9.0, 10.0))
    assert case.reading.connectors_mm2 == (9.0, 10.0)
    assert case.reading.sure("connectors") == 1.0
    assert connector_names(case) == ["16\N{EN DASH}15", "15\N{EN DASH}14"]
    with pytest.raises(PlanError, match="2 connectors"):
        with_connectors(case, (9.0,))
    with pytest.raises(PlanError, match="out of range"):
        with_connectors(case, (9.0, 0.0))


def test_the_outer_side_tells_mesial(planned_case: Case) -> None:
    """Seen from occlusal with buccal up, mesial is to the left in quadrants 1 and 3 turned so."""
    axis = np.array(planned_case.reading.occlusal_axis)
    mesial = np.array(planned_case.reading.mesial)
    quadrant = planned_case.units[0].tooth.quadrant
    buccal = np.cross(axis, mesial) if quadrant in (1, 3) else np.cross(mesial, axis)
    x, y, z = (float(v) for v in 5.0 * buccal + 2.0 * axis)
    assert mesial_of_buccal(planned_case, (x, y, z)) == pytest.approx(mesial, abs=0.02)
    with pytest.raises(PlanError, match="along the occlusal axis"):
        mesial_of_buccal(planned_case, planned_case.reading.occlusal_axis)


def test_dialog_says_what_was_chosen(qtbot: QtBot, planned_case: Case) -> None:
    case = bridge_of(planned_case)
    for key, correction in (("mesial", Correction.MESIAL), ("units", Correction.PARTS)):
        dialog = ReadingDialog(body_in_words(case), reading_rows(case), ("noticed",))
        qtbot.addWidget(dialog)
        dialog.show()
        QTest.mouseClick(dialog.corrections[key], LEFT)
        assert dialog.chosen is correction
    dialog = ReadingDialog(body_in_words(case), reading_rows(case), may_cut=True)
    qtbot.addWidget(dialog)
    dialog.show()
    assert dialog.cut.isVisible()
    assert not dialog.whole.isVisible()
    QTest.mouseClick(dialog.confirmations["roles"], LEFT)
    assert dialog.confirmed == "roles"


def test_confirming_is_one_step_of_undo(window: MainWindow) -> None:
    before = window.session.case
    assert before is not None
    window.session.edit("the reading is right", lambda c: confirmed(c, "mesial"))
    assert window.session.case.reading.sure("mesial") == 1.0
    window.session.undo()
    assert window.session.case is before


def test_plane_of_the_cut(window: MainWindow, monkeypatch: pytest.MonkeyPatch) -> None:
    heard: list[NeckCut] = []
    monkeypatch.setattr(window.session, "cut_off", heard.append)
    case = window.session.case
    assert case is not None
    window.flow.cut_off_the_crown()
    tool = window.flow.cut_tool
    assert tool.is_active
    assert tool.card.isVisible()
    assert tool.overlay.isVisible()
    axis = np.array(case.reading.occlusal_axis)
    low = float((case.surface.mesh.vertices @ axis).min())
    tool.card.height_mm.setValue(2.0)
    assert np.dot(tool.plane.point_mm, axis) == pytest.approx(low + 2.0)
    tool.card.tilt_deg.setValue(20.0)
    assert np.dot(tool.plane.normal, axis) == pytest.approx(np.cos(np.radians(20.0)))
    tool.card.close_it.setChecked(False)
    QTest.mouseClick(tool.card.cut, LEFT)
    assert not tool.is_active
    (plane,) = heard
    assert not plane.close
    assert np.dot(plane.normal, axis) == pytest.approx(np.cos(np.radians(20.0)))
    # Esc takes the plane away, and nothing is cut.
    window.flow.cut_off_the_crown()
    assert window.flow.step_back()
    assert not tool.is_active
    assert len(heard) == 1
