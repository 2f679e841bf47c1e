"""The section beside the crown: through the place pointed at, moved, read, and gone again."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from PySide6.QtCore import QPoint
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from stainmap.app.section import SectionWay, offset_of
from stainmap.model.plan import StainPlan
from stainmap.ui.main_window import MainWindow
from stainmap.ui.section_window import SectionWindow, piece_words
from tests.builders import INNER_RADIUS_MM, OUTER_RADIUS_MM


def opened(window: MainWindow, qtbot: QtBot) -> SectionWindow:
    window.sections.open()
    section = window.sections.window
    assert section is not None
    qtbot.addWidget(section)
    qtbot.waitExposed(section)
    return section


def test_it_lies_through_the_place_pointed_at_and_says_the_wall(
    window: MainWindow, qtbot: QtBot
) -> None:
    case, prediction = window.session.case, window.session.prediction
    assert case is not None
    assert prediction is not None
    mesh = case.surface.mesh
    vertex = int(np.argmin(np.linalg.norm(mesh.vertices - [1.2, 2.0, 4.2], axis=1)))
    window.desk._last_vertex = vertex
    one = opened(window, qtbot)
    wanted = offset_of(prediction, SectionWay.ACROSS, mesh.vertices[vertex])
    assert abs(one.slider.value() / 20 - wanted) < 0.03
    assert one.section is not None
    thinnest = float(one.section.wall_mm[one.section.thinnest].mean())
    assert f"{thinnest:.2f} mm" in one.thinnest.text()
    assert abs(thinnest - (OUTER_RADIUS_MM - INNER_RADIUS_MM)) < 0.1
    assert one.picture.accessibleDescription() == one.thinnest.text()
    # The line on the crown is where the plane cuts it.
    cut = window.crown.overlay.cut
    assert cut is not None
    assert np.array_equal(cut.pieces, one.section.lines)


def test_the_plane_is_turned_and_moved(window: MainWindow, qtbot: QtBot) -> None:
    one = opened(window, qtbot)
    before = one.section
    one.way.setCurrentIndex(one.way.findData(SectionWay.LEVEL))
    assert one.section is not before
    assert one.section is not None
    assert one.section.words == ("distal", "mesial", "buccal")
    heights = one.section.lines[..., 2]
    assert np.ptp(heights) < 1e-6
    one.slider.setValue(one.slider.maximum())
    assert one.section.lines[..., 2].mean() > heights.mean()
    # Even at its ends the plane still meets the crown.
    assert len(one.section.ends)
    one.slider.setValue(one.slider.minimum())
    assert len(one.section.ends)


def test_what_is_pointed_at_is_told(window: MainWindow, qtbot: QtBot) -> None:
    one = opened(window, qtbot)
    assert one.section is not None
    middle = QPoint(one.picture.width() // 2, one.picture.height() // 3)
    QTest.mouseMove(one.picture, middle)
    qtbot.waitUntil(lambda: "wall" in one.pointed.text())
    outer = int(np.flatnonzero(one.section.outer)[0])
    assert piece_words(one.section, outer).startswith("outer surface: wall")
    image = one.picture.grab().toImage()
    colours = {
        image.pixelColor(x, y).name()
        for x in range(0, image.width(), 3)
        for y in range(0, image.height(), 3)
    }
    assert len(colours) > 4


def test_an_edit_is_followed_and_closing_takes_the_line_away(
    window: MainWindow, qtbot: QtBot
) -> None:
    one = opened(window, qtbot)
    assert one.section is not None
    assert one.section.stained_mm.max() > 0.0
    block = "medium 3Y"
    window.session.edit("bare", lambda case: replace(case, plan=StainPlan(block=block)))
    qtbot.waitUntil(lambda: one.section is not None and one.section.stained_mm.max() == 0.0)
    one.close()
    QApplication.processEvents()
    assert window.crown.overlay.cut is None
