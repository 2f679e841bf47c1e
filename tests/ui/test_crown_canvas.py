"""What the graphics driver draws: exact where it must be, and like the numpy renderer elsewhere."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray
from PySide6.QtGui import QImage
from pytestqt.qtbot import QtBot

from stainmap.model.case import Case
from stainmap.model.tooth import Tooth
from stainmap.optics.colorimetry import decode_srgb
from stainmap.paper import raster
from stainmap.paper.shading import develop, light_frame, shade
from stainmap.paper.views import Side
from stainmap.ui import picture_canvas
from stainmap.ui.camera import DISTANCE_MM
from stainmap.ui.case_figures import directions_of
from stainmap.ui.crown_buffers import plain_shading
from stainmap.ui.crown_picture import Look
from stainmap.ui.crown_view import CrownView
from stainmap.ui.gl_canvas import GlCanvas
from stainmap.ui.picture_canvas import PictureCanvas

pytestmark = pytest.mark.gl
SURROUND = (0x77, 0x77, 0x77)


@pytest.fixture(autouse=True)
def _in_full(monkeypatch: pytest.MonkeyPatch) -> None:
    """Draw parts of pixels too, as for a person."""
    monkeypatch.setattr(picture_canvas, "_SAMPLES", 2)


def pixels(image: QImage) -> NDArray[np.uint8]:
    """Return (h, w, 3) of an image."""
    plain = image.convertToFormat(QImage.Format.Format_RGB888)
    rows = np.frombuffer(plain.constBits(), np.uint8).reshape(plain.height(), -1)
    return rows[:, : 3 * plain.width()].reshape(plain.height(), plain.width(), 3).copy()


def drawn(view: CrownView, qtbot: QtBot) -> NDArray[np.uint8]:
    """Return what stands on the canvas right after the next whole picture."""
    canvas = view.canvas
    assert isinstance(canvas, GlCanvas)
    with qtbot.waitSignal(canvas.drawn, timeout=5000):
        canvas.draw_again()
    return pixels(canvas.grabFramebuffer())


def polished(view: CrownView, qtbot: QtBot) -> NDArray[np.uint8]:
    """Return the picture with smoothed edges that follows when nothing moves."""
    canvas = view.canvas
    assert isinstance(canvas, GlCanvas)
    with qtbot.waitSignal(canvas.averaged, timeout=5000):
        canvas.draw_again()
    return pixels(canvas.grabFramebuffer())


def test_every_unlit_colour_comes_back_exactly(view: CrownView, qtbot: QtBot) -> None:
    view.set_relief(False)
    mesh = view.mesh
    assert mesh is not None
    for level in (0, 1, 7, 12, 64, 127, 128, 200, 254, 255):
        colour = np.array([level, 255 - level, (level * 7) % 256], np.uint8)
        view.set_colours(np.tile(colour, (mesh.vertex_count, 1)))
        picture = drawn(view, qtbot)
        crown = (picture != SURROUND).any(axis=2)
        assert crown.mean() > 0.2
        assert (picture[crown] == colour).all()


def test_the_surround_is_neutral_and_exact(view: CrownView, qtbot: QtBot) -> None:
    picture = drawn(view, qtbot)
    for corner in (picture[0, 0], picture[0, -1], picture[-1, 0], picture[-1, -1]):
        assert tuple(corner) == SURROUND


def test_smoothed_edges_leave_flat_colours_exact(view: CrownView, qtbot: QtBot) -> None:
    view.set_relief(False)
    mesh = view.mesh
    assert mesh is not None
    view.set_colours(np.full((mesh.vertex_count, 3), (211, 187, 150), np.uint8))
    sharp, smooth = drawn(view, qtbot), polished(view, qtbot)
    inside = (sharp == (211, 187, 150)).all(axis=2)
    mixed = ~((smooth == (211, 187, 150)).all(axis=2) | (smooth == SURROUND).all(axis=2))
    assert mixed.sum() > 100
    assert mixed.mean() < 0.02
    # A pixel that kept its colour kept it exactly; only the rim is mixed.
    assert (inside & ~mixed).sum() > 0.95 * inside.sum()


def test_light_agrees_with_the_picture_renderer(view: CrownView, qtbot: QtBot) -> None:
    """The renderer for paper was written apart from the shaders, from the same description."""
    mesh, camera = view.mesh, view.camera
    assert mesh is not None
    rng = np.random.default_rng(1)
    tilt = 0.5 + 0.5 * mesh.vertices / 5.0
    srgb = np.clip(120 + 90 * tilt + rng.integers(0, 4, (mesh.vertex_count, 1)), 0, 255)
    srgb = srgb.astype(np.uint8)
    view.set_colours(srgb)
    ours = polished(view, qtbot).astype(float)
    frame = raster.rasterise(
        mesh.vertices,
        mesh.faces,
        raster.Camera(
            eye=tuple(camera.axes[2]),
            up=tuple(camera.axes[1]),
            centre=tuple(camera.target),
            height_mm=camera.height_mm,
            distance_mm=DISTANCE_MM,
        ),
        view.width(),
        view.height(),
    )
    lighting = light_frame(frame, plain_shading(mesh), occlusal=(0.0, 0.0, 1.0))
    theirs = develop(frame, shade(lighting, decode_srgb(srgb / 255.0))).astype(float)
    difference = np.abs(ours - theirs).max(axis=2)
    # Both average four samples per pixel, at other places; edges differ, faces do not.
    assert np.median(difference[theirs.min(axis=2) != 0x77]) <= 1.0
    assert (difference > 6).mean() < 0.02


def test_a_part_drawn_again_equals_the_whole_drawn_again(view: CrownView, qtbot: QtBot) -> None:
    mesh = view.mesh
    assert mesh is not None
    drawn(view, qtbot)
    near = np.linalg.norm(mesh.vertices - mesh.vertices[5], axis=1) < 1.5
    vertices = np.flatnonzero(near).astype(np.int32)
    view.update_colours(vertices, np.full((len(vertices), 3), 30, np.uint8))
    canvas = view.canvas
    assert isinstance(canvas, GlCanvas)
    part = pixels(canvas.grabFramebuffer())
    whole = drawn(view, qtbot)
    assert (part == whole).all()
    assert (whole < 100).all(axis=2).sum() > 50


def slow(view: CrownView) -> GlCanvas:
    """Return the canvas as if the driver took ten milliseconds for a hundred corners."""
    canvas = view.canvas
    assert isinstance(canvas, GlCanvas)
    canvas._ms_per_corner = 0.1
    assert canvas.is_slow
    return canvas


def test_a_picture_in_pieces_equals_the_one_at_once(view: CrownView, qtbot: QtBot) -> None:
    """While it is drawn the picture before stays, and what is painted meanwhile is not lost."""
    mesh = view.mesh
    assert mesh is not None
    before = drawn(view, qtbot)
    near = np.linalg.norm(mesh.vertices - mesh.vertices[5], axis=1) < 1.5
    vertices = np.flatnonzero(near).astype(np.int32)
    canvas = slow(view)
    with qtbot.waitSignal(canvas.drawn, timeout=10_000):
        view.set_colours(np.full((mesh.vertex_count, 3), (200, 180, 150), np.uint8))
        qtbot.waitUntil(lambda: canvas._corners_done > 0, timeout=10_000)
        assert (pixels(canvas._image) == before).all()
        view.update_colours(vertices, np.full((len(vertices), 3), 30, np.uint8))
    in_pieces = pixels(canvas.grabFramebuffer())
    canvas._ms_per_corner = 0.0
    assert (in_pieces == drawn(view, qtbot)).all()
    assert (in_pieces != before).any()


def test_from_elsewhere_a_lighter_mesh_comes_first(view: CrownView, qtbot: QtBot) -> None:
    before = drawn(view, qtbot)
    canvas = slow(view)
    with qtbot.waitSignal(canvas.drawn, timeout=10_000):
        with qtbot.waitSignal(canvas.shown, timeout=10_000):
            view.stand_at(view.camera.turned(80, 30, np.array([0.0, 0.0, 1.0])))
        light = pixels(canvas._image)
    whole = pixels(canvas.grabFramebuffer())
    assert (light != before).any(axis=2).mean() > 0.1
    # The same crown from the same place, but for a facet's size at its rim.
    there = (whole != SURROUND).any(axis=2)
    assert (((light != SURROUND).any(axis=2)) != there).mean() < 0.02
    canvas._ms_per_corner = 0.0
    assert (whole == drawn(view, qtbot)).all()


def test_a_stroke_over_the_lighter_mesh_is_seen_without_gaps(view: CrownView, qtbot: QtBot) -> None:
    """The lighter mesh lies before the crown in places; what is painted is not to be behind it."""
    mesh = view.mesh
    assert mesh is not None
    view.set_relief(False)
    view.set_colours(np.full((mesh.vertex_count, 3), 200, np.uint8))
    drawn(view, qtbot)
    canvas = slow(view)
    with qtbot.waitSignal(canvas.shown, timeout=10_000):
        view.stand_at(view.camera.turned(20, 10, np.array([0.0, 0.0, 1.0])))
    canvas._next.stop()
    assert canvas._is_light
    near = np.linalg.norm(mesh.vertices - mesh.vertices[5], axis=1) < 1.5
    vertices = np.flatnonzero(near).astype(np.int32)
    view.update_colours(vertices, np.full((len(vertices), 3), 30, np.uint8))
    canvas._bring_up_to_date()
    over_light = (pixels(canvas._image) == 30).all(axis=2)
    canvas._next.start()
    whole = (pixels(canvas.grabFramebuffer()) == 30).all(axis=2)
    assert whole.sum() > 500
    assert (whole & ~over_light).sum() == 0


def test_a_slow_driver_polishes_to_the_same_picture(view: CrownView, qtbot: QtBot) -> None:
    at_once = polished(view, qtbot)
    slow(view)
    in_pieces = polished(view, qtbot)
    assert (in_pieces == at_once).all()


def test_only_what_a_brush_has_changed_is_put_on_the_screen(view: CrownView, qtbot: QtBot) -> None:
    mesh = view.mesh
    assert mesh is not None
    view.set_colours(np.full((mesh.vertex_count, 3), 120, np.uint8))
    drawn(view, qtbot)
    canvas = view.canvas
    assert isinstance(canvas, GlCanvas)
    vertices = np.array([0], dtype=np.int32)
    view.update_colours(vertices, np.full((1, 3), 120, np.uint8))
    assert not canvas._parts, "the colour it has already"
    before = pixels(canvas._image)
    view.update_colours(vertices, np.full((1, 3), 20, np.uint8))
    (faces,) = canvas._parts
    assert len(faces) == len(mesh.faces_at(vertices))
    place = canvas._parts_at
    assert 0 < place.width() * place.height() < 0.1 * view.width() * view.height()
    after = pixels(canvas.grabFramebuffer())
    rows, columns = np.nonzero((after != before).any(axis=2))
    assert len(rows) > 5
    assert place.left() <= columns.min() <= columns.max() <= place.right()
    assert place.top() <= rows.min() <= rows.max() <= place.bottom()


def test_zones_show_their_colours_and_black_borders(
    view: CrownView, planned_case: Case, qtbot: QtBot
) -> None:
    view.set_zones(planned_case.zones, {})
    view.set_look(Look.ZONES)
    view.look_along(np.array([0.0, 1.0, 0.0]), np.array([0.0, 0.0, 1.0]))
    qtbot.wait(300)
    picture = polished(view, qtbot).astype(int)
    middle = picture[:, view.width() // 2]
    # From the top: cusp (olive), body (green), cervical (blue); from the published set "muted".
    olive = np.flatnonzero((middle[:, 0] > middle[:, 2] + 30) & (middle[:, 1] > middle[:, 2] + 30))
    green = np.flatnonzero((middle[:, 1] > middle[:, 0] + 30) & (middle[:, 2] > middle[:, 0] + 30))
    blue = np.flatnonzero((middle[:, 2] > middle[:, 1] + 40) & (middle[:, 2] > middle[:, 0] + 20))
    assert olive.max() < green.min() + 3
    assert green.max() < blue.min() + 3
    assert len(green) > 40
    for border in (green.min(), green.max()):
        window = middle[border - 8 : border + 9]
        assert window.max(axis=1).min() < 90
        assert window.min(axis=1).max() > 200


def test_numbers_find_the_middle_of_their_zones(
    view: CrownView, planned_case: Case, qtbot: QtBot
) -> None:
    view.set_zones(planned_case.zones, {7: planned_case.accents[0].share})
    view.look_along(np.array([0.0, 1.0, 0.0]), np.array([0.0, 0.0, 1.0]))
    with qtbot.waitSignal(view.canvas.areas_drawn, timeout=8000):
        view.set_look(Look.ZONES)
    found = {pill.number: pill.position for pill in view.overlay.pills}
    assert {1, 2, 4} <= set(found)
    # On the dome the zones are bands of height: cervical below 1.5 mm, cusp above 4 mm.
    assert 0.0 <= found[1][2] <= 1.7
    assert 1.4 <= found[2][2] <= 4.1
    assert found[4][2] >= 3.9
    for position in found.values():
        assert np.linalg.norm(position) == pytest.approx(5.0, abs=0.1)


def test_without_opengl_a_computed_picture_shows_the_same(
    qtbot: QtBot, planned_case: Case, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("STAINMAP_NO_GL", "1")
    plain = CrownView()
    plain.resize(300, 240)
    qtbot.addWidget(plain)
    plain.show()
    qtbot.waitExposed(plain)
    assert isinstance(plain.canvas, PictureCanvas)
    mesh = planned_case.surface.mesh
    plain.set_crown(mesh, directions_of(planned_case), Tooth(number=36))
    plain.set_relief(False)
    with qtbot.waitSignal(plain.canvas.drawn, timeout=5000):
        plain.set_colours(np.full((mesh.vertex_count, 3), (200, 180, 150), np.uint8))
    picture = pixels(plain.canvas.grab().toImage())
    assert (picture == (200, 180, 150)).all(axis=2).mean() > 0.2
    assert tuple(picture[0, 0]) == SURROUND
    for look in (Look.ZONES, Look.COATS):
        plain.set_zones(planned_case.zones, {})
        with qtbot.waitSignal(plain.canvas.drawn, timeout=5000):
            plain.set_look(look)
    plain.look_from(Side.BUCCAL)
