"""Flat views as real events: what is painted on them is painted on the crown."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QPointF, QSettings, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QSplitter, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from stainmap.app.change import Change
from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Zone
from stainmap.planning.flat_views import flat_unit
from stainmap.surface.picking import Picker
from stainmap.ui.crown_buffers import plain_shading
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_picture import Look, SeenValues
from stainmap.ui.crown_view import CrownView
from stainmap.ui.flat_colours import coloured
from stainmap.ui.flat_desk import FlatDesk
from stainmap.ui.flat_pane import ONE_BY_ONE, FlatChoice, FlatPane
from stainmap.ui.flat_picture import FlatPicture, flat_sheet, side_sheet
from stainmap.ui.flat_view import FlatView
from stainmap.ui.look_desk import LookDesk
from stainmap.ui.main_window import MainWindow
from tests.ui.conftest import new_window

LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
SIZE = 300


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Flat views are drawn without OpenGL: so are they here, which runs everywhere."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")


@pytest.fixture(scope="module")
def rosette(planned_case: Case) -> FlatPicture:
    parts = flat_unit(planned_case.surface.mesh, planned_case.reading, planned_case.units, 0)
    return FlatPicture(planned_case.surface.mesh, flat_sheet(parts), SIZE, SIZE)


@pytest.fixture(scope="module")
def front(planned_case: Case) -> FlatPicture:
    mesh = planned_case.surface.mesh
    axes = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])
    return FlatPicture(mesh, side_sheet(mesh, np.ones(mesh.face_count, bool), axes), SIZE, SIZE)


def values_of(case: Case, look: Look, **changed: object) -> SeenValues:
    """Return made values of every vertex."""
    count = case.surface.mesh.vertex_count
    generator = np.random.default_rng(5)
    zones = np.zeros((count, 6), np.float32)
    zones[np.arange(count), np.maximum(case.zones, 1) - 1] = 1.0
    known = {
        "look": look,
        "shading": True,
        "srgb": generator.integers(90, 220, (count, 3)).astype(np.uint8),
        "zones": zones,
        "accents": np.zeros((count, 7), np.float32),
        "coats": (case.surface.mesh.vertices[:, 2] * 0.8).astype(np.float32),
        "fields": plain_shading(case.surface.mesh),
        "rows": np.eye(3),
    }
    return SeenValues(**(known | changed))


@pytest.mark.parametrize("name", ["rosette", "front"])
def test_a_vertex_is_picked_where_it_is_drawn(name: str, request: pytest.FixtureRequest) -> None:
    picture: FlatPicture = request.getfixturevalue(name)
    mesh, found = picture.mesh, 0
    shown = np.unique(picture.sheet.faces[picture.seen_faces])
    for local in shown[::23]:
        vertex = picture.sheet.vertices[local]
        hit = picture.pick(*picture.places[local])
        if hit is None or np.linalg.norm(hit.position - mesh.vertices[vertex]) > 1.0:
            continue  # at the very edge, or half hidden
        found += 1
        assert hit.position == pytest.approx(hit.barycentric @ mesh.vertices[mesh.faces[hit.face]])
        place = picture.place_of(hit)
        assert place is not None
        assert place == pytest.approx(picture.places[local], abs=2.0)
    assert found > 0.9 * len(shown[::23])


def test_beside_the_disc_nothing_is_picked(rosette: FlatPicture) -> None:
    assert rosette.pick(2.0, 2.0) is None
    assert rosette.pick(-5.0, SIZE + 5.0) is None


def test_without_shading_colours_are_the_crowns_own(
    rosette: FlatPicture, planned_case: Case
) -> None:
    """Seven encoded colours come out as they went in, but at the edge of the disc."""
    count = planned_case.surface.mesh.vertex_count
    light = rosette.light(plain_shading(rosette.mesh), np.array([0.0, 0.0, 1.0]), chalk=False)
    inside = rosette.coverage > 0.999
    for colour in ((0, 0, 0), (3, 9, 27), (90, 120, 200), (180, 170, 150), (255, 255, 255)):
        srgb = np.full((count, 3), colour, np.uint8)
        values = values_of(planned_case, Look.SINTERED, srgb=srgb, shading=False)
        pixels = coloured(rosette, light, values, (0, 0, SIZE, SIZE))
        assert (pixels[inside] == colour).all()
    assert (pixels[rosette.coverage == 0.0] == 0x77).all()


@pytest.mark.parametrize("look", list(Look))
def test_a_part_is_coloured_as_the_whole(
    rosette: FlatPicture, planned_case: Case, look: Look
) -> None:
    """What the brush changes is found in its box, and nothing outside of it has changed."""
    mesh = rosette.mesh
    light = rosette.light(plain_shading(mesh), np.array([0.0, 0.0, 1.0]), chalk=False)
    before = values_of(planned_case, look)
    whole = (0, 0, SIZE, SIZE)
    old = coloured(rosette, light, before, whole)
    hit = rosette.pick(190.0, 130.0)
    assert hit is not None
    near = np.flatnonzero(np.linalg.norm(mesh.vertices - hit.position, axis=1) < 0.9)
    near = near.astype(np.int32)
    srgb, zones, coats = before.srgb.copy(), before.zones.copy(), before.coats.copy()
    srgb[near] = (20, 200, 20)
    zones[near] = np.eye(6, dtype=np.float32)[4]
    coats[near] += 2.0
    after = values_of(planned_case, look, srgb=srgb, zones=zones, coats=coats)
    new = coloured(rosette, light, after, whole)
    box = rosette.box_of(near)
    assert box is not None
    left, top, right, bottom = box
    assert (right - left) * (bottom - top) < 0.2 * SIZE**2
    patched = old.copy()
    patched[top:bottom, left:right] = coloured(rosette, light, after, box)
    assert (old != new).any()
    # At the edge of the box slopes are taken from one side only: lines there may differ a bit.
    off = np.abs(patched.astype(int) - new.astype(int)).max(axis=2)
    assert (off > 2).mean() < 0.001
    outside = np.ones((SIZE, SIZE), bool)
    outside[top:bottom, left:right] = False
    assert (old[outside] == new[outside]).all()


def test_the_ring_lies_at_the_brushs_radius(rosette: FlatPicture) -> None:
    hit = rosette.pick(200.0, 150.0)
    assert hit is not None
    pieces = rosette.ring(hit.position, 0.7)
    assert len(pieces) > 8
    for x, y in pieces.reshape(-1, 2)[::5]:
        there = rosette.pick(x, y)
        assert there is not None
        assert np.linalg.norm(there.position - hit.position) == pytest.approx(0.7, abs=0.12)


# --- at work -----------------------------------------------------------------------------


class Bench(QWidget):
    """Crown and flat views on one session, without the rest of the window."""

    def __init__(self, case: Case, settings: QSettings) -> None:
        super().__init__()
        self.session = Session(starter_catalogue(), threaded=False)
        self.session.adopt(case, path=None, saved=True)
        self.crown = CrownView()
        self.pane = FlatPane(JobRunner(threaded=False))
        self.split = QSplitter(Qt.Orientation.Vertical)
        self.split.addWidget(self.crown)
        self.split.addWidget(self.pane)
        column = QVBoxLayout(self)
        column.addWidget(self.split)
        self.desk = CrownDesk(self.session, self.crown, self)
        runner = JobRunner(threaded=False)
        self.flats = FlatDesk(
            self.session, self.desk, self.split, self.pane, runner, settings, self
        )
        self.looks = LookDesk(self.session, self.desk, runner, self)
        self.session.subscribe(self.refresh)
        self.refresh(Change(fields=frozenset({"opened", "zones", "appearance", "plan"})))
        self.desk.choose(Zone.FISSURE, None)

    def refresh(self, change: Change) -> None:
        self.desk.refresh(change)
        self.flats.refresh(change)

    def show_case(self, case: Case) -> None:
        """Show another reading of the same surface, as an edit does."""
        self.session.edit("changed", lambda _case: case)


@pytest.fixture(scope="module")
def bench(
    qapp: QApplication, planned_case: Case, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Bench]:
    """Return flat views at work, on the dome; each test leaves them as it found them."""
    place = tmp_path_factory.mktemp("settings") / "window.ini"
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("STAINMAP_NO_GL", "1")
        one = Bench(planned_case, QSettings(str(place), QSettings.Format.IniFormat))
    one.resize(760, 640)
    one.split.setSizes([60, 300])
    one.show()
    one.flats.switch(True)
    yield one
    one.session.close()
    one.close()
    one.deleteLater()


@pytest.fixture
def ready(qtbot: QtBot, bench: Bench, planned_case: Case) -> Iterator[Bench]:
    """Return the flat views with all six drawn."""
    bench.pane.choose(FlatChoice.ALL)
    bench.desk.choose(Zone.FISSURE, None)
    bench.crown.set_look(Look.SINTERED)
    wait_for_views(qtbot, bench)
    yield bench
    while bench.session.case is not planned_case:
        bench.session.undo()


def wait_for_views(qtbot: QtBot, bench: Bench) -> None:
    def ready() -> bool:
        return all(view.is_ready for view in bench.pane.shown_views)

    qtbot.waitUntil(ready, timeout=20_000)


def drag(view: FlatView, way: list[QPoint], *, let_go: bool = True) -> None:
    QTest.mousePress(view, LEFT, NONE, way[0])
    for place in way[1:]:
        QTest.mouseMove(view, place)
        QApplication.processEvents()
    if let_go:
        QTest.mouseRelease(view, LEFT, NONE, way[-1])


def middle_of(view: FlatView, right: float = 0.0, down: float = 0.0) -> QPoint:
    """Return a place beside the middle of a view, in shares of the smaller side."""
    size = min(view.width(), view.height())
    return QPoint(int(view.width() / 2 + right * size), int((view.height() - 16) / 2 + down * size))


def grey_of(view: FlatView) -> np.ndarray:
    """Return the disc as it is drawn, without numbers and words around it, in greys."""
    picture = view.picture
    assert picture is not None
    image = view.grab().toImage().convertToFormat(QImage.Format.Format_Grayscale8)
    rows = np.frombuffer(image.constBits(), np.uint8).reshape(image.height(), -1)
    return np.where(picture.rows >= 0, rows[: picture.height, : picture.width], 0).astype(int)


Recorded = list[tuple[np.ndarray, int]]


@pytest.fixture
def recorded(ready: Bench, monkeypatch: pytest.MonkeyPatch) -> Recorded:
    """Return the places at which the session's brush has been pressed."""
    places: Recorded = []
    press = ready.session.stroke_to

    def record(position: np.ndarray, vertex: int, **how: bool) -> object:
        places.append((position.copy(), vertex))
        return press(position, vertex, **how)

    monkeypatch.setattr(ready.session, "stroke_to", record)
    return places


@pytest.mark.parametrize("choice", [FlatChoice.ROSETTE, FlatChoice.BUCCAL, FlatChoice.OCCLUSAL])
def test_painting_on_a_flat_view_is_painting_on_the_crown(
    qtbot: QtBot,
    ready: Bench,
    planned_case: Case,
    recorded: Recorded,
    choice: FlatChoice,
) -> None:
    """A stroke there, and one at the same places of the surface, end in equal zones."""
    window = ready
    window.pane.choose(choice)
    wait_for_views(qtbot, window)
    window.desk.choose(Zone.FISSURE, None)
    view = window.pane.views[choice]
    drag(view, [middle_of(view, -0.15), middle_of(view, 0.0, 0.03), middle_of(view, 0.15)])
    painted = window.session.case
    assert painted is not None
    assert painted.zones is not planned_case.zones
    assert len(recorded) >= 3
    # The same brush at the same places, without any view.
    other = Session(starter_catalogue(), threaded=False)
    other.adopt(planned_case, path=None)
    other.begin_stroke(window.desk.brush)
    for position, vertex in recorded:
        other.stroke_to(position, vertex)
    other.end_stroke()
    assert other.case is not None
    assert np.array_equal(painted.zones, other.case.zones)
    assert (painted.zones != planned_case.zones).sum() > 20
    # The places are those that the crown itself gives when it is pointed at from outside.
    mesh = planned_case.surface.mesh
    picker = Picker(mesh)
    for position, vertex in recorded:
        normal = mesh.vertex_normals[vertex]
        hit = picker.pick(position + 3.0 * normal, -normal)
        assert hit is not None
        assert hit.position == pytest.approx(position, abs=0.02)
    # One step back, and everything is as before.
    window.session.undo()
    assert window.session.case is planned_case


def test_a_stroke_leaves_no_gap(qtbot: QtBot, ready: Bench, recorded: Recorded) -> None:
    """However fast the pointer moves, dabs lie closer than the brush is wide."""
    ready.pane.choose(FlatChoice.ROSETTE)
    wait_for_views(qtbot, ready)
    view = ready.pane.views[FlatChoice.ROSETTE]
    drag(view, [middle_of(view, -0.3), middle_of(view, 0.3)])
    places = np.array([position for position, _ in recorded])
    steps = np.linalg.norm(np.diff(places, axis=0), axis=1)
    assert len(places) > 8
    assert steps.max() < ready.desk.brush.radius_mm


def test_escape_takes_the_stroke_back(ready: Bench, planned_case: Case) -> None:
    view = ready.pane.views[FlatChoice.ROSETTE]
    ready.desk.choose(Zone.FISSURE, None)
    drag(view, [middle_of(view), middle_of(view, 0.2)], let_go=False)
    assert ready.session.is_painting
    QTest.keyClick(view, Qt.Key.Key_Escape)
    assert not ready.session.is_painting
    assert ready.session.case is planned_case


def settled(qtbot: QtBot, view: FlatView) -> np.ndarray:
    """Return the picture once it has been the same for a while, all that comes late included."""
    seen = [grey_of(view)]

    def still() -> bool:
        qtbot.wait(300)
        seen.append(grey_of(view))
        return np.array_equal(seen[-1], seen[-2])

    qtbot.waitUntil(still)
    return seen[-1]


def test_a_stroke_on_the_crown_is_seen_on_the_flat_views(qtbot: QtBot, ready: Bench) -> None:
    window = ready
    view = window.pane.views[FlatChoice.ROSETTE]
    window.desk.choose(Zone.FISSURE, None)
    window.crown.set_look(Look.ZONES)
    before = settled(qtbot, view)
    hit = view.pick(QPointF(middle_of(view, 0.1)))
    assert hit is not None
    window.crown.stroke_began.emit(hit.position, hit.vertex, NONE)
    qtbot.waitUntil(lambda: (np.abs(grey_of(view) - before) > 30).sum() > 30)
    window.crown.stroke_cancelled.emit()
    # Borders may lie a hair beside where they lay.
    qtbot.waitUntil(lambda: (np.abs(grey_of(view) - before) > 30).sum() < 5, timeout=10_000)


# In the row there are no flat views of the neighbours: the crown is shown sintered.
@pytest.mark.parametrize("look", [look for look in Look if look is not Look.ROW])
def test_every_look_is_followed(qtbot: QtBot, ready: Bench, look: Look) -> None:
    ready.crown.set_look(look)
    ready.desk.show_bench()
    ready.looks.show()
    qtbot.wait(50)
    values = ready.crown.seen_values
    assert values is not None
    assert values.look is look
    image = ready.pane.views[FlatChoice.ROSETTE].grab().toImage()
    colours = {image.pixel(x, image.height() // 2) for x in range(0, image.width(), 3)}
    # The dome's wall is even: surround, wall and the edge between them.
    assert len(colours) > {Look.COATS: 2, Look.THICKNESS: 1}.get(look, 3)


def test_what_is_pointed_at_is_read_and_ringed_everywhere(qtbot: QtBot, ready: Bench) -> None:
    window = ready
    view = window.pane.views[FlatChoice.ROSETTE]
    with qtbot.waitSignal(window.desk.named, timeout=2000) as spoken:
        QTest.mouseMove(view, middle_of(view, 0.05))
    assert "body" in spoken.args[0] or "cusp" in spoken.args[0]
    assert view.ring is not None
    assert window.pane.views[FlatChoice.OCCLUSAL].ring is not None
    assert (
        window.pane.views[FlatChoice.BUCCAL].ring is None or window.crown.overlay.ring is not None
    )
    QTest.mouseMove(view, QPoint(1, 1))
    qtbot.waitUntil(lambda: view.ring is None, timeout=2000)


def test_pane_is_remembered_and_works_nothing_out_while_hidden(
    qtbot: QtBot, window: MainWindow, settings: QSettings
) -> None:
    assert not window.flats.is_on
    assert all(view.picture is None for view in window.flat_pane.views.values())
    window.looks.flat.click()
    assert window.flats.is_on
    window.flat_pane.choose(FlatChoice.MESIAL)
    window.flat_pane.place.click()
    window.close()
    again = new_window(settings)
    qtbot.addWidget(again)
    assert again.flats.is_on
    assert again.looks.flat.isChecked()
    assert again.flat_pane.choice is FlatChoice.MESIAL
    assert again.split.orientation() == Qt.Orientation.Horizontal
    again.flats.switch(False)
    assert not again.looks.flat.isChecked()


def test_keys_choose_views(qtbot: QtBot, ready: Bench) -> None:
    pane = ready.pane
    for key, choice in (("w", FlatChoice.ROSETTE), ("m", FlatChoice.MESIAL), ("a", FlatChoice.ALL)):
        QTest.keyClicks(pane, key)
        assert pane.choice is choice
        shown = ONE_BY_ONE if choice is FlatChoice.ALL else (choice,)
        assert {one for one, view in pane.views.items() if not view.isHidden()} == set(shown)
    wait_for_views(qtbot, ready)
    view = pane.views[FlatChoice.DISTAL]
    QTest.mouseClick(view, LEFT, NONE, QPoint(view.width() // 2, view.height() - 5))
    assert pane.choice is FlatChoice.DISTAL


@pytest.fixture
def two_units(planned_case: Case) -> Case:
    """Return the dome as two units that part in the middle."""
    units = tuple(Unit(tooth=Tooth(number=n), role=Role.RETAINER) for n in (36, 37))
    index = (planned_case.surface.mesh.vertices[:, 0] < 0.0).astype(np.uint8)
    return replace(
        planned_case, units=units, reading=replace(planned_case.reading, unit_index=index)
    )


def test_every_unit_has_a_set_of_its_own(qtbot: QtBot, ready: Bench, two_units: Case) -> None:
    window = ready
    window.show_case(two_units)
    pane = window.pane
    assert [button.text() for button in pane.unit_buttons] == ["36", "37"]
    x = two_units.surface.mesh.vertices[:, 0]
    for unit, sign in ((0, 1.0), (1, -1.0)):
        pane.choose_unit(unit)
        qtbot.wait(20)
        wait_for_views(qtbot, window)
        for view in pane.shown_views:
            assert view.picture is not None
            own = view.picture.sheet.vertices
            assert (sign * x[own] > -0.6).all()


def test_front_teeth_get_a_facing_pair(qtbot: QtBot, ready: Bench, planned_case: Case) -> None:
    front = replace(planned_case, units=(Unit(tooth=Tooth(number=11)),))
    ready.show_case(front)
    qtbot.wait(20)
    wait_for_views(qtbot, ready)
    pane = ready.pane
    assert pane.buttons[FlatChoice.ROSETTE].text() == "labial and palatal"
    picture = pane.views[FlatChoice.ROSETTE].picture
    assert picture is not None
    (_, low, _), (_, high, _) = picture.sheet.discs
    assert low < high
    mesh = planned_case.surface.mesh
    facial = mesh.vertex_normals[picture.sheet.vertices[picture.sheet.places[:, 1] < 0.5 * high]]
    # Quadrant 1, mesial +x, occlusal +z: buccal is +y.
    assert facial[:, 1].mean() > 0.2


def test_what_cannot_be_laid_flat_is_said_and_the_sides_work(
    qtbot: QtBot, ready: Bench, planned_case: Case
) -> None:
    closed = replace(planned_case.reading, outer=np.ones(len(planned_case.zones), bool))
    ready.show_case(replace(planned_case, reading=closed))
    pane = ready.pane
    qtbot.waitUntil(lambda: "cannot be laid flat" in pane.views[FlatChoice.ROSETTE].message)
    qtbot.waitUntil(lambda: pane.views[FlatChoice.BUCCAL].is_ready, timeout=10_000)


def test_a_step_is_painted_as_on_the_crown(
    ready: Bench, planned_case: Case, recorded: Recorded
) -> None:
    """Brushed coats, not only zones: the same places give the same coats."""
    window = ready
    window.desk.choose(Zone.BODY, 0)
    view = window.pane.views[FlatChoice.ROSETTE]
    drag(view, [middle_of(view, -0.2, 0.1), middle_of(view, 0.1, 0.1)])
    case = window.session.case
    assert case is not None
    brushed = case.plan.steps[0].brushed
    assert brushed is not None
    other = Session(starter_catalogue(), threaded=False)
    other.adopt(planned_case, path=None)
    other.begin_stroke(window.desk.brush)
    for position, vertex in recorded:
        other.stroke_to(position, vertex)
    other.end_stroke()
    assert other.case is not None
    again = other.case.plan.steps[0].brushed
    assert again is not None
    assert np.array_equal(brushed.vertices, again.vertices)
    assert brushed.coats == pytest.approx(again.coats)
