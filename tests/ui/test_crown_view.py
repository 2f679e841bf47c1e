"""Mouse and keys on the crown, as real events."""

from __future__ import annotations

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from stainmap.paper.views import Side
from stainmap.ui.crown_cards import ProbeReading
from stainmap.ui.crown_view import CrownView, PointerTask
from stainmap.ui.picture_canvas import PictureCanvas
from tests.builders import OUTER_RADIUS_MM

LEFT, RIGHT, MIDDLE = (
    Qt.MouseButton.LeftButton,
    Qt.MouseButton.RightButton,
    Qt.MouseButton.MiddleButton,
)
NONE, SHIFT = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Pointer and camera are the same with and without OpenGL; without, they run everywhere."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")


def drag(view: CrownView, button: Qt.MouseButton, way: list[QPoint], keys: object = NONE) -> None:
    QTest.mousePress(view, button, keys, way[0])
    for place in way[1:]:
        QTest.mouseMove(view, place)
        QApplication.processEvents()
    QTest.mouseRelease(view, button, keys, way[-1])


def wheel(view: CrownView, at: QPoint, notches: int) -> None:
    event = QWheelEvent(
        QPointF(at),
        QPointF(view.mapToGlobal(at)),
        QPoint(0, 0),
        QPoint(0, 120 * notches),
        Qt.MouseButton.NoButton,
        NONE,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(view, event)


def test_without_opengl_the_view_uses_the_picture_renderer(view: CrownView) -> None:
    assert isinstance(view.canvas, PictureCanvas)


def test_picking_at_a_projected_vertex_gives_that_vertex(view: CrownView) -> None:
    mesh = view.mesh
    assert mesh is not None
    eye = view.camera.eye
    outer = np.linalg.norm(mesh.vertices, axis=1) > OUTER_RADIUS_MM - 0.01
    facing = np.einsum("ij,ij->i", mesh.vertex_normals, eye - mesh.vertices) > 40.0
    candidates = np.flatnonzero(outer & facing)
    assert len(candidates) > 200
    for vertex in candidates[::17]:
        x, y, _ = view.camera.project(mesh.vertices[vertex], view.width(), view.height())[0]
        hit = view.pick(QPointF(x, y))
        assert hit is not None
        assert hit.vertex == vertex
        assert hit.position == pytest.approx(mesh.vertices[vertex], abs=0.02)


def test_beside_the_crown_nothing_is_picked(view: CrownView) -> None:
    assert view.pick(QPoint(3, 3)) is None


def test_right_drag_turns_and_keeps_the_size(view: CrownView) -> None:
    before = view.camera
    drag(view, RIGHT, [QPoint(250, 200), QPoint(280, 200), QPoint(310, 205)])
    after = view.camera
    assert after.height_mm == before.height_mm
    # Each pixel sideways is half a degree about the occlusal axis.
    flat = [camera.axes[2] - camera.axes[2][2] * np.array([0, 0, 1]) for camera in (before, after)]
    cosine = flat[0] @ flat[1] / np.linalg.norm(flat[0]) / np.linalg.norm(flat[1])
    assert np.degrees(np.arccos(cosine)) == pytest.approx(30.0, abs=0.5)


@pytest.mark.parametrize(("button", "keys"), [(MIDDLE, NONE), (RIGHT, SHIFT)])
def test_middle_drag_and_shift_pull_the_crown_along(
    view: CrownView, button: Qt.MouseButton, keys: Qt.KeyboardModifier
) -> None:
    before = view.camera
    drag(view, button, [QPoint(250, 200), QPoint(270, 190), QPoint(290, 180)], keys)
    moved = view.camera.project(before.target, view.width(), view.height())[0, :2]
    assert view.camera.axes == pytest.approx(before.axes)
    assert moved == pytest.approx((290, 180), abs=0.5)


def test_the_wheel_zooms_at_the_pointer(view: CrownView) -> None:
    under = view.camera.point_at(300, 150, view.width(), view.height())
    before = view.camera.height_mm
    wheel(view, QPoint(300, 150), 2)
    assert view.camera.height_mm == pytest.approx(before / 1.15**2)
    place = view.camera.project(under, view.width(), view.height())[0, :2]
    assert place == pytest.approx((300, 150), abs=1e-6)


@pytest.mark.parametrize(
    ("key", "toward"),
    [
        (Qt.Key.Key_O, (0, 0, 1)),
        (Qt.Key.Key_I, (0, 0, -1)),
        (Qt.Key.Key_M, (1, 0, 0)),
        (Qt.Key.Key_D, (-1, 0, 0)),
        (Qt.Key.Key_B, (0, 1, 0)),
        (Qt.Key.Key_L, (0, -1, 0)),
    ],
)
def test_keys_look_from_six_sides(
    view: CrownView, qtbot: QtBot, key: Qt.Key, toward: tuple[int, int, int]
) -> None:
    # Tooth 36 with mesial +x and occlusal +z: in quadrant 3 buccal is occlusal x mesial, +y.
    QTest.keyClick(view, key)
    qtbot.waitUntil(lambda: np.allclose(view.camera.axes[2], toward, atol=1e-6), timeout=5000)


def test_home_shows_the_whole_crown_again(view: CrownView, qtbot: QtBot) -> None:
    fitted = view.camera
    wheel(view, QPoint(10, 10), 6)
    QTest.keyClick(view, Qt.Key.Key_Home)
    qtbot.waitUntil(lambda: view.camera.height_mm == pytest.approx(fitted.height_mm), timeout=5000)
    assert view.camera.target == pytest.approx(fitted.target, abs=1e-6)


def test_arrow_keys_turn_and_plus_zooms(view: CrownView) -> None:
    before = view.camera
    QTest.keyClick(view, Qt.Key.Key_Right)
    assert not np.allclose(view.camera.axes, before.axes)
    QTest.keyClick(view, Qt.Key.Key_Plus)
    assert view.camera.height_mm < before.height_mm


def record(view: CrownView) -> list[tuple[str, object]]:
    events: list[tuple[str, object]] = []
    view.stroke_began.connect(lambda at, _v, _k: events.append(("began", at)))
    view.stroke_moved.connect(lambda at, _v, _k: events.append(("moved", at)))
    view.stroke_ended.connect(lambda: events.append(("ended", None)))
    view.stroke_cancelled.connect(lambda: events.append(("cancelled", None)))
    return events


def test_a_stroke_lies_on_the_surface_without_gaps(view: CrownView) -> None:
    view.set_task(PointerTask.PAINT, 0.6)
    events = record(view)
    # One fast jump: what lies between must still be painted.
    drag(view, LEFT, [QPoint(200, 200), QPoint(300, 210)])
    names = [name for name, _ in events]
    assert names[0] == "began"
    assert names[-1] == "ended"
    places = np.array([at for name, at in events if name in ("began", "moved")])
    radius = np.linalg.norm(places, axis=1)
    assert radius == pytest.approx(np.full(len(places), OUTER_RADIUS_MM), abs=0.05)
    steps = np.linalg.norm(np.diff(places, axis=0), axis=1)
    assert steps.max() < 0.6
    start = view.pick(QPoint(200, 200))
    assert start is not None
    assert places[0] == pytest.approx(start.position)


def test_escape_takes_a_stroke_back(view: CrownView) -> None:
    view.set_task(PointerTask.PAINT, 0.6)
    events = record(view)
    QTest.mousePress(view, LEFT, NONE, QPoint(220, 200))
    QTest.mouseMove(view, QPoint(240, 200))
    QApplication.processEvents()
    QTest.keyClick(view, Qt.Key.Key_Escape)
    QTest.mouseMove(view, QPoint(260, 200))
    QApplication.processEvents()
    QTest.mouseRelease(view, LEFT, NONE, QPoint(260, 200))
    names = [name for name, _ in events]
    assert names[-1] == "cancelled"
    assert "ended" not in names


def test_left_drag_beside_the_crown_turns_even_with_a_brush(view: CrownView) -> None:
    view.set_task(PointerTask.PAINT, 0.6)
    events = record(view)
    before = view.camera
    drag(view, LEFT, [QPoint(5, 5), QPoint(60, 5)])
    assert events == []
    assert not np.allclose(view.camera.axes, before.axes)


def test_a_question_is_answered_by_a_click(view: CrownView, qtbot: QtBot) -> None:
    view.set_task(PointerTask.ASK)
    with qtbot.waitSignal(view.place_chosen) as chosen:
        QTest.mouseClick(view, LEFT, NONE, QPoint(250, 200))
    assert np.linalg.norm(chosen.args[0].position) == pytest.approx(OUTER_RADIUS_MM, abs=0.05)


def test_pointing_tells_the_place_and_lays_the_ring(view: CrownView, qtbot: QtBot) -> None:
    view.set_task(PointerTask.PAINT, 0.8)
    with qtbot.waitSignal(view.pointed_at) as pointed:
        QTest.mouseMove(view, QPoint(250, 200))
    hit = pointed.args[0]
    ring = view.overlay.ring
    assert ring is not None
    # The ring lies where a ball of the brush's radius cuts the dome.
    distance = np.linalg.norm(ring - hit.position, axis=2)
    assert distance == pytest.approx(np.full(distance.shape, 0.8), abs=0.03)
    assert np.linalg.norm(ring, axis=2).min() > OUTER_RADIUS_MM - 0.03
    with qtbot.waitSignal(view.pointed_at) as pointed:
        QTest.mouseMove(view, QPoint(2, 2))
    assert pointed.args[0] is None
    assert view.overlay.ring is None


def test_brush_keys_ask_for_another_size(view: CrownView) -> None:
    asked: list[int] = []
    view.brush_resized.connect(asked.append)
    QTest.keyClick(view, Qt.Key.Key_BracketRight)
    QTest.keyClick(view, Qt.Key.Key_BracketLeft)
    assert asked == [1, -1]


def test_the_probe_card_can_be_read_aloud(view: CrownView) -> None:
    reading = ProbeReading(
        area="cusp, distobuccal",
        coats="slate 2",
        colour="#b8a98c",
        lightness=71.74,
        chroma=13.8,
        hue_degrees=88.2,
        wall="wall 1.53 mm over natural dentine",
        plus_minus=3.4,
    )
    view.set_probe(reading, np.array([0.0, 0.0, 5.0]))
    assert view.probe_card.isVisible()
    said = view.probe_card.accessibleDescription()
    assert (
        "cusp, distobuccal, slate 2, L* 71.7 \N{PLUS-MINUS SIGN} 3.4, C* 13.8, h 88 degrees" in said
    )
    view.set_probe(None, None)
    assert not view.probe_card.isVisible()


def test_clearing_shows_the_sign_and_picks_nothing(view: CrownView) -> None:
    view.clear()
    assert not view.has_crown
    assert view.empty_mark.isVisible()
    assert view.pick(QPoint(250, 200)) is None
    view.look_from(Side.BUCCAL)
    QTest.keyClick(view, Qt.Key.Key_Right)
