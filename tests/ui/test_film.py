"""The film on the crown: played, stepped, sped up, saved, ended by what changes the plan."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog, QWidget
from pytestqt.qtbot import QtBot

from stainmap.app import edits
from stainmap.app.compare import without_stain
from stainmap.app.film import Film
from stainmap.app.prediction import predict_case
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Zone
from stainmap.ui.crown_picture import Look
from stainmap.ui.crown_view import PointerTask
from stainmap.ui.film_card import FilmCard
from stainmap.ui.film_desk import FilmDesk
from stainmap.ui.main_window import MainWindow
from stainmap.ui.picture_canvas import PictureCanvas
from tests.ui.accessible_tree import nameless
from tests.ui.small_dome import small_planned_case

LEFT, NONE, CTRL = (
    Qt.MouseButton.LeftButton,
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.ControlModifier,
)


@pytest.fixture(scope="module")
def planned_case() -> Case:
    return small_planned_case()


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Test without OpenGL, and without computed pictures, what is the same with them."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")
    monkeypatch.setattr(PictureCanvas, "_draw_now", lambda _canvas: None)


@pytest.fixture
def desk(window: MainWindow) -> FilmDesk:
    """Return the film, opened by its key; the plan has four coats."""
    QTest.keyClick(window, Qt.Key.Key_M, CTRL)
    assert window.ways.film.film is not None
    return window.ways.film


def film_of(desk: FilmDesk) -> Film:
    assert desk.film is not None
    return desk.film


def shown(window: MainWindow) -> np.ndarray:
    seen = window.crown.seen_values
    assert seen is not None
    assert seen.srgb is not None
    return seen.srgb.copy()


def test_it_begins_with_the_bare_block_on_the_crown(desk: FilmDesk, window: MainWindow) -> None:
    case = window.session.case
    assert case is not None
    bare = predict_case(without_stain(case)).appearance.srgb
    assert np.abs(shown(window).astype(int) - bare).max() <= 1
    assert "bare block" in desk.card.said
    assert len(film_of(desk).moments) == 5
    assert window.crown.task is PointerTask.TURN
    assert window.crown.evaded is desk.card
    assert nameless(desk.card) == []


def test_on_back_and_the_strokes_go_coat_by_coat(desk: FilmDesk, window: MainWindow) -> None:
    card, film = desk.card, film_of(desk)
    assert not card.back.isEnabled()
    QTest.mouseClick(card.on, LEFT)
    assert np.array_equal(shown(window), film.moments[1].srgb)
    assert card.said.startswith("Step 1, coat 1 of 1: barley from jar 1 On body: ")
    stroke = card.track.strokes()[3].center().toPoint()
    QTest.mouseClick(card.track, LEFT, NONE, stroke)
    assert np.array_equal(shown(window), film.moments[3].srgb)
    QTest.mouseClick(card.back, LEFT)
    assert card.said.startswith("Step 2, coat 1 of 2: slate")
    card.track.setFocus()
    QTest.keyClick(card.track, Qt.Key.Key_End)
    assert np.array_equal(shown(window), film.moments[4].srgb)
    assert not card.on.isEnabled()
    QTest.keyClick(card.track, Qt.Key.Key_Left)
    assert card.track.value() == 3


def test_it_plays_to_the_end_and_begins_anew(
    desk: FilmDesk, window: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("stainmap.ui.film_desk.SECONDS_EACH", 0.05)
    card = desk.card
    QTest.mouseClick(card.play, LEFT)
    assert desk.is_playing
    assert card.play.text() == "pause"
    qtbot.waitUntil(lambda: not desk.is_playing)
    assert card.track.value() == 4
    assert card.play.text() == "play"
    QTest.mouseClick(card.play, LEFT)
    assert card.track.value() < 4
    window.crown.setFocus()
    QTest.keyClick(window.crown, Qt.Key.Key_Space)
    assert not desk.is_playing
    here = card.track.value()
    QTest.keyClick(window.crown, Qt.Key.Key_PageUp)
    assert card.track.value() == max(here - 1, 0)
    QTest.keyClick(window.crown, Qt.Key.Key_PageDown)
    QTest.keyClick(window.crown, Qt.Key.Key_PageDown)
    assert card.track.value() == max(here - 1, 0) + 2


def test_faster_and_slower_within_their_bounds(desk: FilmDesk) -> None:
    waits = [desk._wait_ms]
    for _ in range(4):
        QTest.mouseClick(desk.card.faster, LEFT)
        waits.append(desk._wait_ms)
    assert waits == [1600, 800, 400, 400, 400]
    for _ in range(5):
        QTest.mouseClick(desk.card.slower, LEFT)
    assert desk._wait_ms == 3200


def test_looks_follow_and_the_reading_is_of_the_moment(desk: FilmDesk, window: MainWindow) -> None:
    window.set_look(Look.BENCH)
    chalk = shown(window)
    assert np.ptp(chalk.astype(int), axis=1).max() < 16
    desk.card.track.setValue(1)
    assert np.ptp(shown(window).astype(int), axis=1).max() > 20
    window.set_look(Look.COATS)
    seen = window.crown.seen_values
    assert seen is not None
    assert seen.coats is not None
    np.testing.assert_allclose(seen.coats, film_of(desk).coats_at(1).sum(axis=0), atol=1e-6)


def test_closing_shows_the_plan_again(desk: FilmDesk, window: MainWindow) -> None:
    prediction = window.session.prediction
    assert prediction is not None
    desk.card.track.setValue(2)
    QTest.mouseClick(desk.card.close_button, LEFT)
    assert not desk.is_open
    assert desk.film is None
    assert np.array_equal(shown(window), prediction.appearance.srgb)
    assert window.crown.task is PointerTask.PAINT
    assert window.crown.evaded is None
    window.ways.film.open()
    window.crown.setFocus()
    QTest.keyClick(window.crown, Qt.Key.Key_Escape)
    assert not desk.is_open


def test_another_plan_ends_it(desk: FilmDesk, window: MainWindow) -> None:
    window.session.edit(
        "more", lambda case: edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(3))
    )
    assert not desk.is_open
    assert "film is over" in window.status.message.text()
    prediction = window.session.prediction
    assert prediction is not None
    assert np.array_equal(shown(window), prediction.appearance.srgb)


def test_a_mesh_that_is_being_opened_ends_it(desk: FilmDesk, window: MainWindow) -> None:
    window.flow.set_aside.emit(True)
    assert not desk.is_open
    assert not window.desk.is_replaced
    assert window.crown.evaded is None


def test_a_plan_without_coats_gets_a_sentence(window: MainWindow) -> None:
    window.session.edit("nothing", without_stain)
    window.ways.film.open()
    assert not window.ways.film.is_open
    assert "paints nothing" in window.status.message.text()


def test_before_and_after_rests_while_it_is_shown(desk: FilmDesk, window: MainWindow) -> None:
    desk.card.track.setValue(2)
    now = shown(window)
    window.crown.setFocus()
    QTest.keyPress(window.crown, Qt.Key.Key_H)
    assert np.array_equal(shown(window), now)
    QTest.keyRelease(window.crown, Qt.Key.Key_H)
    assert np.array_equal(shown(window), now)
    assert not window.ways.before.shows_before


def test_reduced_motion_leaves_the_steps(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(FilmDesk, "is_animated", property(lambda _self: False))
    window.ways.film.open()
    card = window.ways.film.card
    assert not card.play.isVisible()
    assert not card.faster.isVisible()
    assert card.on.isVisible()
    window.crown.setFocus()
    QTest.keyClick(window.crown, Qt.Key.Key_Space)
    assert not window.ways.film.is_playing
    QTest.mouseClick(card.on, LEFT)
    assert card.track.value() == 1


def test_it_is_saved_as_seen_and_says_where(
    desk: FilmDesk, window: MainWindow, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr("stainmap.ui.film_desk._PICTURE_PX", (160, 120))
    wanted = tmp_path / "film"
    monkeypatch.setattr(
        QFileDialog,
        "getSaveFileName",
        lambda *_all: (str(wanted), "Animated GIF, 256 colours (*.gif)"),
    )
    QTest.mouseClick(desk.card.save, LEFT)
    path = tmp_path / "film.gif"
    assert str(path) in window.status.message.text()
    with Image.open(path) as read:
        assert read.n_frames == 5
        assert read.info["duration"] == 1600
    desk.save_to(tmp_path / "film.png")
    assert len(list(tmp_path.glob("film-*.png"))) == 5
    desk.save_to(tmp_path / "film.png")
    assert "written over" in desk.card.progress.said.text()


def test_the_card_is_no_wider_than_the_view(qtbot: QtBot) -> None:
    view = QWidget()
    qtbot.addWidget(view)
    card = FilmCard(view)
    for width in (420, 820):
        view.resize(width, 500)
        card.place(view)
        assert card.width() <= width - 16
        assert card.geometry().bottom() <= 500
