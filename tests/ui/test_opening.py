"""A mesh that was looked at stands in the view, beside the questions, until it is read."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import trimesh
from PySide6.QtCore import QPoint, QSettings, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from stainmap.app import opening
from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.crown import BodyKind
from stainmap.model.zone import Zone
from stainmap.ui.crown_picture import Look
from stainmap.ui.main_window import MainWindow
from stainmap.ui.poster import Poster
from stainmap.units import LengthUnit

LEFT, RIGHT = Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton
NONE = Qt.KeyboardModifier.NoModifier
PREMOLAR = Path(__file__).parents[2] / "sample_cases" / "upper_premolar_14.stl"


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Test without OpenGL what is the same with it."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")


@pytest.fixture
def busy(
    qtbot: QtBot, planned_case: Case, settings: QSettings, monkeypatch: pytest.MonkeyPatch
) -> MainWindow:
    """Return a window whose work is done in threads, as the program's is."""
    poster = Poster()
    session = Session(starter_catalogue(), post=poster)
    one = MainWindow(session, settings, JobRunner(post=poster))
    one.resize(1400, 900)
    qtbot.addWidget(one, before_close_func=lambda _: settle(qtbot, one, planned_case))
    one.show()
    qtbot.waitExposed(one)
    one.activateWindow()
    # Light in the grooves takes seconds and plays no part here.
    monkeypatch.setattr(session, "need_shading", lambda: None)
    # Reading takes as long as it does for a person: it is to be watched and stopped.
    monkeypatch.setattr(opening, "MAX_EDGE_MM", 0.14)
    session.adopt(planned_case, path=None, saved=True)
    qtbot.waitUntil(lambda: session.is_up_to_date, timeout=20000)
    return one


def settle(qtbot: QtBot, window: MainWindow, case: Case) -> None:
    """Leave nothing running and nothing unsaved behind."""
    job = window.session.job
    if job is not None:
        job.cancel()
        qtbot.waitUntil(lambda: job.is_finished, timeout=20000)
    window.session.adopt(case, path=None, saved=True)
    qtbot.waitUntil(lambda: window.session.is_up_to_date, timeout=20000)


def turn(window: MainWindow, start: QPoint) -> float:
    """Turn with the right button as a person does; return by how many degrees the view turned."""
    before = window.crown.camera.axes
    QTest.mousePress(window.crown, RIGHT, NONE, start)
    for step in range(1, 6):
        QTest.mouseMove(window.crown, start + QPoint(12 * step, 4 * step))
    QTest.mouseRelease(window.crown, RIGHT, NONE, start + QPoint(60, 20))
    cosine = (np.trace(before @ window.crown.camera.axes.T) - 1.0) / 2.0
    return float(np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0))))


def on_the_mesh(window: MainWindow) -> QPoint:
    """Return where the middle of the mesh is seen."""
    view, mesh = window.crown, window.crown.mesh
    assert mesh is not None
    middle = 0.5 * (mesh.vertices.min(axis=0) + mesh.vertices.max(axis=0))
    x, y, _ = view.camera.project(middle, view.width(), view.height())[0]
    return QPoint(round(x), round(y))


def middle_is_chalk(window: MainWindow, at: QPoint) -> bool:
    """Return True if the picture is a plain light grey at a place."""
    colour = window.crown.grab().toImage().pixelColor(at)
    channels = (colour.red(), colour.green(), colour.blue())
    return max(channels) - min(channels) <= 8 and min(channels) > 140


def test_the_mesh_is_seen_and_turned_while_questions_are_open(
    busy: MainWindow, qtbot: QtBot
) -> None:
    busy.set_look(Look.ZONES)
    busy.flow.open_path(PREMOLAR)
    qtbot.waitUntil(busy.flow.questions.isVisible, timeout=5000)
    # The mesh comes with the questions, not after them.
    assert busy.crown.is_bare
    place = on_the_mesh(busy)
    qtbot.waitUntil(lambda: middle_is_chalk(busy, place), timeout=5000)
    # In millimetres, not read, and not under the card.
    assert busy.session.look is not None
    mesh = busy.crown.mesh
    assert mesh is not None
    assert mesh.extent == pytest.approx(busy.session.look.mesh.extent)
    shown = busy.crown.camera.project(mesh.vertices, busy.crown.width(), busy.crown.height())
    card = busy.flow.questions.geometry()
    assert not any(card.contains(round(x), round(y)) for x, y, _ in shown)
    assert busy.crown.rect().contains(QPoint(*(int(v) for v in shown.min(axis=0)[:2])))
    assert busy.crown.rect().contains(QPoint(*(int(v) for v in shown.max(axis=0)[:2])))
    assert not busy.crown.zone_legend.isVisible()
    assert turn(busy, place) > 20.0
    # What is done to the card does not reach the crown behind it.
    axes = busy.crown.camera.axes
    QTest.mousePress(busy.flow.questions, RIGHT, NONE, QPoint(150, 8))
    QTest.mouseMove(busy.flow.questions, QPoint(200, 20))
    QTest.mouseRelease(busy.flow.questions, RIGHT, NONE, QPoint(200, 20))
    assert np.array_equal(axes, busy.crown.camera.axes)


def test_the_mesh_stays_and_turns_while_it_is_read_and_esc_leads_back(
    busy: MainWindow, qtbot: QtBot, planned_case: Case
) -> None:
    before = busy.crown.camera
    busy.flow.open_path(PREMOLAR)
    card = busy.flow.questions
    qtbot.waitUntil(card.isVisible, timeout=5000)
    QTest.mouseClick(card.sintered, LEFT, NONE, QPoint(8, card.sintered.height() // 2))
    QTest.keyClick(card.teeth, Qt.Key.Key_Return)
    assert not card.isVisible()
    assert busy.session.job is not None
    middle = on_the_mesh(busy)
    qtbot.waitUntil(lambda: middle_is_chalk(busy, middle), timeout=5000)
    assert turn(busy, middle) > 20.0
    assert busy.crown.is_bare
    # Esc stops the reading: the questions are open again. Once more: the old crown is back.
    QTest.keyClick(busy.crown, Qt.Key.Key_Escape)
    qtbot.waitUntil(card.isVisible, timeout=20000)
    assert card.teeth.text() == "14"
    QTest.keyClick(card.teeth, Qt.Key.Key_Escape)
    assert not card.isVisible()
    assert busy.session.case is planned_case
    assert busy.crown.shows(planned_case.surface.mesh)
    assert not busy.crown.is_bare
    assert busy.crown.camera.height_mm == before.height_mm
    assert np.array_equal(busy.crown.camera.axes, before.axes)
    assert busy.session.look is None


def test_another_file_stops_the_reading(busy: MainWindow, qtbot: QtBot, tmp_path: Path) -> None:
    busy.flow.open_path(PREMOLAR)
    card = busy.flow.questions
    qtbot.waitUntil(card.isVisible, timeout=5000)
    QTest.mouseClick(card.milled, LEFT, NONE, QPoint(8, card.milled.height() // 2))
    QTest.mouseClick(card.read, LEFT)
    first = busy.session.job
    assert first is not None
    before = busy.session.case
    other = tmp_path / "crown_24.stl"
    other.write_bytes(PREMOLAR.read_bytes())
    busy.flow.open_path(other)
    qtbot.waitUntil(lambda: card.isVisible() and card.teeth.text() == "24", timeout=20000)
    assert first.is_cancelled
    assert first.is_finished
    assert busy.session.case is before
    QTest.keyClick(card.teeth, Qt.Key.Key_Escape)
    assert busy.session.case is before


def test_what_is_no_crown_opens_with_a_warning(window: MainWindow, tmp_path: Path) -> None:
    """A ball has no grooves: it opens, all of it body, and a card says what was noticed."""
    path = tmp_path / "ball_36.stl"
    trimesh.creation.icosphere(subdivisions=3, radius=5.0).export(path)
    window.flow.open_path(path)
    card = window.flow.questions
    QTest.mouseClick(card.sintered, LEFT, NONE, QPoint(8, card.sintered.height() // 2))
    QTest.mouseClick(card.read, LEFT)
    case = window.session.case
    assert case is not None
    assert case.source.name == "ball_36.stl"
    assert case.reading.kind is BodyKind.NOT_A_CROWN
    assert set(case.zones.tolist()) == {int(Zone.BODY)}
    assert window.flow.message.isVisible()
    assert window.flow.message.accessibleName() == "This is not a crown"


def test_teeth_that_do_not_fit_are_refused_beside_the_picture(
    window: MainWindow, tmp_path: Path
) -> None:
    """What is wrong stands on the card, and the mesh can be looked at."""
    path = tmp_path / "crown_36_37.stl"
    path.write_bytes(PREMOLAR.read_bytes())
    before = window.session.case
    window.flow.open_path(path)
    card = window.flow.questions
    QTest.mouseClick(card.sintered, LEFT, NONE, QPoint(8, card.sintered.height() // 2))
    QTest.mouseClick(card.read, LEFT)
    assert window.session.case is before
    assert card.isVisible()
    assert window.crown.is_bare
    assert "unit" in card._note.text()
    assert card._note.height() >= card._note.heightForWidth(card._note.width())
    QTest.mouseClick(card.cancel, LEFT)


def test_cancel_leaves_the_open_case_and_its_colours(window: MainWindow, qtbot: QtBot) -> None:
    case = window.session.case
    # The pointer rests nowhere: a probe would be part of the picture.
    qtbot.wait(300)
    before = window.crown.canvas.grab().toImage()
    window.flow.open_path(PREMOLAR)
    assert window.flow.questions.isVisible()
    assert not window.plan.isEnabled()
    assert not window.commands.undo.isEnabled()
    qtbot.wait(300)
    assert window.crown.canvas.grab().toImage() != before
    QTest.mouseClick(window.flow.questions.cancel, LEFT)
    assert window.session.case is case
    assert window.plan.isEnabled()
    qtbot.waitUntil(lambda: window.crown.canvas.grab().toImage() == before, timeout=5000)
    assert window.plan.brush.head.remark.text() != ""


def test_another_unit_shows_the_mesh_in_its_size(window: MainWindow) -> None:
    window.flow.open_path(PREMOLAR)
    card = window.flow.questions
    look = window.session.look
    assert look is not None
    card.unit.setFocus()
    inch = card.unit.findData(LengthUnit.CENTIMETRE)
    while card.unit.currentIndex() < inch:
        QTest.keyClick(card.unit, Qt.Key.Key_Down)
    mesh = window.crown.mesh
    assert mesh is not None
    assert mesh.extent == pytest.approx(10.0 * look.mesh.extent)


def test_the_block_used_last_is_offered_again(
    window: MainWindow, settings: QSettings, qtbot: QtBot
) -> None:
    window.flow.open_path(PREMOLAR)
    assert window.flow.questions.block.currentText() == "medium 3Y"
    window.flow.go_back()
    window.plan.unit.block_chosen.emit("light 3Y")
    window.flow.open_path(PREMOLAR)
    assert window.flow.questions.block.currentText() == "light 3Y"
    assert settings.value("block", "", type=str) == "light 3Y"
    window.flow.go_back()
