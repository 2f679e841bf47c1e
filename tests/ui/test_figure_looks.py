"""The looks that stand for a figure, and the ground crown, chosen and read in the window."""

from __future__ import annotations

from threading import Event

import numpy as np
import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from stainmap.app.job import JobRunner
from stainmap.app.looks import ground_look, offsets_of, value_srgb, walls_of
from stainmap.app.prediction import Prediction
from stainmap.model.zone import Zone
from stainmap.ui import look_desk
from stainmap.ui.crown_picture import Look
from stainmap.ui.crown_view import CrownView
from stainmap.ui.gl_canvas import GlCanvas
from stainmap.ui.gl_painter import has_gl
from stainmap.ui.look_bar import LookBar
from stainmap.ui.main_window import MainWindow
from stainmap.ui.poster import Poster

NONE = Qt.KeyboardModifier.NoModifier
FIGURES = (Look.VALUE, Look.OFFSET, Look.THICKNESS)


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("STAINMAP_NO_GL", "1")


def press(window: MainWindow, key: int) -> Prediction:
    QTest.keySequence(window, f"Alt+{key}")
    QApplication.processEvents()
    prediction = window.session.prediction
    assert prediction is not None
    return prediction


def shown(window: MainWindow, look: Look) -> np.ndarray:
    assert window.crown.look is look
    values = window.crown.seen_values
    assert values is not None
    assert values.srgb is not None
    return values.srgb


def test_each_key_shows_its_figure_and_its_legend(window: MainWindow) -> None:
    legend = window.crown.legends.scale
    prediction = press(window, 5)
    expected = value_srgb(prediction.appearance.lab)
    assert np.array_equal(shown(window, Look.VALUE), expected)
    assert not legend.isHidden()
    assert "Value, L*" in legend.accessibleDescription()
    press(window, 6)
    assert np.array_equal(shown(window, Look.OFFSET), offsets_of(prediction).srgb())
    assert "0.8, 1.8" in legend.accessibleDescription()
    press(window, 7)
    walls = walls_of(prediction)
    assert np.array_equal(shown(window, Look.THICKNESS), walls.srgb())
    assert f"{walls.minimum_mm:.2f}" in legend.accessibleDescription()
    press(window, 1)
    assert legend.isHidden()


def test_the_bar_has_nine_looks(window: MainWindow) -> None:
    numbers = sorted(one.entry.number for one in window.looks.buttons.values())
    assert numbers == list(range(1, 10))


def test_ground_is_worked_out_for_the_depth_that_is_chosen(window: MainWindow) -> None:
    case = window.session.case
    prediction = press(window, 9)
    card = window.crown.legends.ground
    assert not card.isHidden()
    assert card.buttons[0.2].isChecked()
    assert np.array_equal(shown(window, Look.GROUND), ground_look(prediction, 0.2).srgb)
    QTest.mouseClick(card.buttons[0.3], Qt.MouseButton.LeftButton)
    assert window.look_desk.depth_mm == 0.3
    assert np.array_equal(shown(window, Look.GROUND), ground_look(prediction, 0.3).srgb)
    assert "L*" in card.note
    # The case is as it was, and so is what is predicted of it.
    assert window.session.case is case
    assert window.session.prediction is prediction
    assert not window.session.is_modified


def test_grinding_can_be_stopped_and_begun_again(
    window: MainWindow, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    prediction = press(window, 1)
    desk, card = window.look_desk, window.crown.legends.ground
    ready = ground_look(prediction, 0.1)
    let_go = Event()

    def slowly(_prediction: Prediction, _depth: float) -> object:
        let_go.wait(30.0)
        return ready

    runner = JobRunner(post=Poster())
    monkeypatch.setattr(look_desk, "ground_look", slowly)
    monkeypatch.setattr(desk, "_runner", runner)
    press(window, 9)
    assert not card.stop.isHidden()
    assert "until then" in card.note
    assert np.array_equal(shown(window, Look.GROUND), prediction.appearance.srgb)
    QTest.mouseClick(card.stop, Qt.MouseButton.LeftButton)
    assert card.stop.isHidden()
    assert "stopped" in card.note
    qtbot.waitUntil(lambda: desk._grinding is None)
    let_go.set()
    assert "stopped" in card.note
    # The same depth again, and it is worked out.
    QTest.mouseClick(card.buttons[0.1], Qt.MouseButton.LeftButton)
    qtbot.waitUntil(lambda: "L* changes" in card.note)
    assert card.stop.isHidden()
    assert np.array_equal(shown(window, Look.GROUND), ready.srgb)
    runner.close()


def test_a_reading_tells_the_figure_of_the_look(window: MainWindow, qtbot: QtBot) -> None:
    view = window.crown
    middle = QPoint(view.width() // 2, view.height() // 2)
    for key, words in ((5, "from the body"), (7, "above the minimum"), (9, "ground 0.2 mm: L*")):
        press(window, key)
        QTest.mouseMove(view, middle + QPoint(key, 0))
        qtbot.waitUntil(lambda w=words: w in view.probe_card.accessibleDescription())
    vertex = window.desk.last_vertex
    assert vertex is not None
    prediction = press(window, 6)
    off = offsets_of(prediction).de00
    vertex = int(np.flatnonzero(np.isfinite(off))[0]) if np.isfinite(off).any() else vertex
    said = window.look_desk.figure_at(vertex)
    assert said.startswith(f"{off[vertex]:.1f} dE00") or said == "nothing to compare with"
    inside = int(np.flatnonzero(~prediction.case.reading.outer)[0])
    assert window.look_desk.figure_at(inside) == "nothing to compare with"
    press(window, 1)
    assert window.look_desk.figure_at(vertex) == ""


@pytest.mark.parametrize(("key", "look"), [(5, Look.VALUE), (6, Look.OFFSET)])
def test_value_and_offset_follow_the_brush(window: MainWindow, key: int, look: Look) -> None:
    prediction = press(window, key)
    case = prediction.case
    before = shown(window, look).copy()
    known = np.isfinite(offsets_of(prediction).de00) & (case.zones == int(Zone.BODY))
    assert known.any()
    vertex = int(np.flatnonzero(known)[known.sum() // 2])
    window.desk.choose(Zone.BODY, 2)
    place = case.surface.mesh.vertices[vertex]
    window.desk._begin(place, vertex, NONE)
    # The first place of a stroke is shown in a turn of its own.
    QApplication.processEvents()
    during = shown(window, look).copy()
    assert tuple(during[vertex]) != tuple(before[vertex])
    window.desk._cancel()
    assert np.array_equal(shown(window, look), before)
    window.desk._begin(place, vertex, NONE)
    window.desk._end()
    after = shown(window, look)
    newest = window.session.prediction
    assert newest is not None
    assert newest is not prediction
    expected = (
        value_srgb(newest.appearance.lab) if look is Look.VALUE else offsets_of(newest).srgb()
    )
    assert np.array_equal(after, expected)
    assert tuple(after[vertex]) != tuple(before[vertex])


def test_walls_follow_another_block(window: MainWindow) -> None:
    press(window, 7)
    window.plan.unit.block_chosen.emit("light 3Y")
    prediction = window.session.prediction
    assert prediction is not None
    assert np.array_equal(shown(window, Look.THICKNESS), walls_of(prediction).srgb())
    assert "light 3Y" in window.crown.legends.scale.accessibleDescription()


def test_a_narrow_bar_keeps_numbers_and_the_name_that_is_on(qtbot: QtBot) -> None:
    # Inside something: a window of its own would not get narrower than its layout likes.
    around = QWidget()
    bar = LookBar(around)
    qtbot.addWidget(around)
    around.resize(1200, 60)
    bar.set_look(Look.THICKNESS)
    bar.resize(1200, bar.height())
    around.show()
    qtbot.waitExposed(around)
    QApplication.processEvents()
    wide = {look: button.width() for look, button in bar.buttons.items()}
    assert bar.minimumSizeHint().width() < 600
    bar.resize(bar.minimumSizeHint().width(), bar.height())
    qtbot.wait(50)
    assert bar.buttons[Look.SINTERED].width() < wide[Look.SINTERED] - 20
    assert bar.buttons[Look.THICKNESS].width() == wide[Look.THICKNESS]
    assert bar.light.geometry().right() <= bar.width()
    assert bar.light.text() == "Light D65"


def test_the_narrowest_bar_keeps_numbers_alone(qtbot: QtBot) -> None:
    around = QWidget()
    bar = LookBar(around)
    qtbot.addWidget(around)
    around.resize(1200, 60)
    bar.set_look(Look.THICKNESS)
    wide = bar.minimumSizeHint().width()
    bar.squeeze(True)
    least = bar.minimumSizeHint().width()
    assert least == bar.least_px < min(wide, 480)
    bar.resize(least, bar.height())
    around.show()
    qtbot.waitExposed(around)
    qtbot.wait(50)
    for one in (*bar.buttons.values(), bar.shading, bar.flat, bar.light):
        assert one.width() >= one.sizeHint().width()
        assert one.geometry().right() < least
    assert bar.light.text() == "D65"


@pytest.mark.parametrize("driver", [True, False])
@pytest.mark.parametrize("look", [*FIGURES, Look.GROUND])
def test_both_canvases_draw_the_colours_as_they_are(
    qtbot: QtBot,
    monkeypatch: pytest.MonkeyPatch,
    request: pytest.FixtureRequest,
    driver: bool,
    look: Look,
) -> None:
    if driver:
        monkeypatch.delenv("STAINMAP_NO_GL")
        if not has_gl():
            pytest.skip("no OpenGL here")
    view: CrownView = request.getfixturevalue("view")
    assert isinstance(view.canvas, GlCanvas) is driver
    mesh = view.mesh
    assert mesh is not None
    view.set_relief(False)
    view.set_look(look)
    with qtbot.waitSignal(view.canvas.drawn, timeout=20_000):
        view.set_colours(np.full((mesh.vertex_count, 3), (120, 60, 150), np.uint8), look)
    image = view.canvas.grabFramebuffer() if driver else view.canvas.grab().toImage()
    colours = [
        QColor(image.pixel(x, y)).getRgb()[:3]
        for x in range(0, image.width(), 9)
        for y in range(0, image.height(), 9)
    ]
    own = sum(max(abs(a - b) for a, b in zip(c, (120, 60, 150), strict=True)) <= 1 for c in colours)
    assert own / len(colours) > 0.1
