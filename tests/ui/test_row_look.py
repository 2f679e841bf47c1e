"""The look "In the row" in the window: made in the background, coloured, compared, left again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QColor, QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from stainmap.app import row as app_row
from stainmap.app.row import gradient_of, neighbours_srgb
from stainmap.model.tooth import Tooth
from stainmap.ui.camera import DISTANCE_MM, SPEAKING_MM
from stainmap.ui.crown_picture import ROW_SURROUND, Look
from stainmap.ui.gl_canvas import GlCanvas
from stainmap.ui.main_window import MainWindow
from stainmap.ui.row_dialog import RowDialog

KEPT: dict[int, object] = {}


@pytest.fixture(autouse=True)
def _coarse(monkeypatch: pytest.MonkeyPatch) -> None:
    """Make neighbours coarsely, and each but once."""
    made = app_row.made_tooth

    def coarse(tooth: Tooth, **given: object) -> object:
        if tooth.number not in KEPT:
            KEPT[tooth.number] = made(tooth, resolution=0.25)
        return KEPT[tooth.number]

    monkeypatch.setattr(app_row, "made_tooth", coarse)
    monkeypatch.setattr(app_row, "_SHADOW_DIRECTIONS", 8)


@pytest.fixture(params=["computed", "driver"])
def shown(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> Iterator[MainWindow]:
    """Return a window in the look, by either canvas."""
    if request.param == "computed":
        monkeypatch.setenv("STAINMAP_NO_GL", "1")
    window: MainWindow = request.getfixturevalue("window")
    if request.param == "driver" and not isinstance(window.crown.canvas, GlCanvas):
        pytest.skip("no OpenGL here")
    QTest.keySequence(window, "Alt+8")
    qtbot: QtBot = request.getfixturevalue("qtbot")
    qtbot.waitUntil(lambda: window.crown.row is not None)
    qtbot.waitUntil(lambda: "L*" in window.row_desk.card.accessibleDescription())
    return window


def grabbed(window: MainWindow, qtbot: QtBot) -> np.ndarray:
    with qtbot.waitSignal(window.crown.canvas.drawn, timeout=20_000):
        window.crown.canvas.draw_again()
    canvas = window.crown.canvas
    image = canvas.grabFramebuffer() if isinstance(canvas, GlCanvas) else canvas.grab().toImage()
    image = image.convertToFormat(QImage.Format.Format_RGB888)
    flat = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), -1)
    return flat[:, : 3 * image.width()].reshape(image.height(), image.width(), 3).copy()


def test_neighbours_are_coloured_and_figures_are_told(shown: MainWindow, qtbot: QtBot) -> None:
    row, prediction = shown.crown.row, shown.session.prediction
    assert row is not None
    assert prediction is not None
    told = shown.row_desk.card.accessibleDescription()
    assert "body less that of 35" in told
    assert "body less that of 37" in told
    assert "nobody's teeth" in told
    colours = gradient_of(row, prediction.case)
    dark = np.array(QColor(ROW_SURROUND).getRgb()[:3])
    camera = shown.crown.camera
    assert camera.distance_mm == SPEAKING_MM
    size = (shown.crown.width(), shown.crown.height())
    parts = [(0, row.crown_vertices), *((one.first, one.last) for one in row.neighbours)]

    def is_seen() -> bool:
        """Crown and neighbours: their facing points are lighter than the dark, the corner is not.

        A slow machine draws the picture piece by piece.
        """
        picture = grabbed(shown, qtbot)
        ratio = picture.shape[1] / size[0]
        lighter = []
        for first, last in parts:
            points = row.mesh.vertices[first:last]
            facing = points[np.argmax(points @ row.outward + 0.3 * points @ row.occlusal)]
            x, y, _ = camera.project(facing[None], *size)[0]
            pixel = picture[int(y * ratio), int(x * ratio)].astype(int)
            lighter.append(pixel.sum() > dark.sum() + 60)
        return bool((picture[2, 2] == dark).all() and all(lighter))

    qtbot.waitUntil(is_seen)
    assert len(neighbours_srgb(row, colours)) == row.mesh.vertex_count - row.crown_vertices


def test_v_takes_the_colour_out(shown: MainWindow, qtbot: QtBot) -> None:
    coloured = grabbed(shown, qtbot).astype(int)
    assert np.ptp(coloured, axis=2).max() > 15
    shown.crown.setFocus()
    with qtbot.waitSignal(shown.crown.canvas.drawn, timeout=20_000):
        QTest.keyClick(shown.crown, Qt.Key.Key_V)
    assert shown.row_desk.card.grey.isChecked()
    grey = grabbed(shown, qtbot).astype(int)
    assert np.ptp(grey, axis=2).max() <= 1
    # What is grey is as light as it was: luminance, decoded (IEC 61966-2-1), is kept.
    weights = np.array([0.2126, 0.7152, 0.0722])

    def luminance(picture: np.ndarray) -> np.ndarray:
        c = picture / 255.0
        return np.where(c <= 0.04045, c / 12.92, ((c + 0.055) / 1.055) ** 2.4) @ weights

    assert np.median(np.abs(luminance(grey) - luminance(coloured))) < 0.01
    QTest.keyClick(shown.crown, Qt.Key.Key_V)
    assert not shown.row_desk.card.grey.isChecked()


def test_leaving_goes_back_to_where_one_stood(window: MainWindow, qtbot: QtBot) -> None:
    before = window.crown.camera
    QTest.keySequence(window, "Alt+8")
    qtbot.waitUntil(lambda: window.crown.row is not None)
    assert window.crown.camera.distance_mm == SPEAKING_MM
    QTest.keySequence(window, "Alt+1")
    assert window.crown.look is Look.SINTERED
    after = window.crown.camera
    assert after.distance_mm == DISTANCE_MM
    assert after.axes == pytest.approx(before.axes)
    # The row is kept: it is there at once when somebody looks again.
    row = window.crown.row
    QTest.keySequence(window, "Alt+8")
    assert window.crown.row is row


def test_what_a_neighbour_hides_is_not_pointed_at(window: MainWindow, qtbot: QtBot) -> None:
    QTest.keySequence(window, "Alt+8")
    qtbot.waitUntil(lambda: window.crown.row is not None)
    row, view = window.crown.row, window.crown
    assert row is not None
    one = row.neighbours[0]
    # Look along the row from mesial: the neighbour stands before the crown.
    view.look_along(row.mesial, row.occlusal)
    qtbot.waitUntil(lambda: view.camera.axes[2] @ row.mesial > 0.99)
    middle = row.mesh.vertices[one.first : one.last].mean(axis=0)
    x, y, _ = view.camera.project(middle[None], view.width(), view.height())[0]
    assert view.pick(QPointF(x, y)) is None
    view.look_along(-row.mesial, row.occlusal)
    window.set_look(Look.SINTERED)
    view.look_along(row.mesial, row.occlusal)
    crown = row.mesh.vertices[: row.crown_vertices].mean(axis=0)
    x, y, _ = view.camera.project(crown[None], view.width(), view.height())[0]
    assert view.pick(QPointF(x, y)) is not None


def test_an_edit_changes_crown_and_figures(window: MainWindow, qtbot: QtBot) -> None:
    QTest.keySequence(window, "Alt+8")
    qtbot.waitUntil(lambda: "L*" in window.row_desk.card.accessibleDescription())
    before = window.row_desk.card.accessibleDescription()
    session = window.session
    assert session.case is not None
    session.edit("value", lambda case: replace(case, plan=replace(case.plan, steps=())))
    qtbot.waitUntil(lambda: window.row_desk.card.accessibleDescription() != before)
    QApplication.processEvents()
    assert window.crown.row is not None


def test_without_mesial_a_sentence_says_what_to_do(window: MainWindow, qtbot: QtBot) -> None:
    session = window.session
    assert session.case is not None
    session.edit("mesial", lambda case: replace(case, reading=replace(case.reading, mesial=None)))
    QTest.keySequence(window, "Alt+8")
    qtbot.waitUntil(lambda: "no neighbours" in window.row_desk.card.note)
    assert window.crown.row is None


def test_meshes_are_chosen_tooth_by_tooth(qtbot: QtBot, tmp_path: Path) -> None:
    teeth = (Tooth(number=35), Tooth(number=37))
    known = tmp_path / "x.stl"
    dialog = RowDialog(teeth, {35: known, 44: known})
    qtbot.addWidget(dialog)
    assert dialog.files == {35: known}
    dialog.set_file(teeth[1], known)
    dialog.set_file(teeth[0], None)
    assert dialog.files == {37: known}
    assert dialog.open_buttons[37].accessibleName() == "Open a mesh of 37"
