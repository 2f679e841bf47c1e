"""The sliders of the zones: live, one undo step where they come to rest, painting kept."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cache
from typing import NoReturn

import numpy as np
import pytest
from PySide6.QtCore import QSettings, Qt
from pytestqt.qtbot import QtBot

from stainmap.app import opening, prediction
from stainmap.app.opening import Answers, build_case, look_at_mesh, units_from_numbers
from stainmap.errors import StainmapError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.tooth import Tooth
from stainmap.model.zone import Accent, Zone
from stainmap.model.zone_sliders import ZoneSliders
from stainmap.practice.crown_maker import make_crown, stl_bytes
from stainmap.ui.crown_picture import Look
from stainmap.ui.main_window import MainWindow
from stainmap.units import SizeState
from tests.ui.conftest import new_window


@pytest.fixture(scope="module")
def case_of(tmp_path_factory: pytest.TempPathFactory) -> Callable[[int], Case]:
    """Return a maker of cases of practice crowns, read from their files."""

    @cache
    def make(number: int) -> Case:
        path = tmp_path_factory.mktemp("crowns") / f"{number}.stl"
        crown = make_crown(Tooth(number=number), resolution=0.3)
        path.write_bytes(stl_bytes(crown.mesh))
        # As it is meshed, without refining: the window predicts it again after every step.
        patch = pytest.MonkeyPatch()
        patch.setattr(opening, "MAX_EDGE_MM", 1.0)
        answers = Answers(
            units=units_from_numbers((number,)),
            size_state=SizeState.SINTERED,
            block="medium 3Y",
            mesial=crown.mesial,
        )
        case, _ = build_case(look_at_mesh(path), answers, starter_catalogue())
        patch.undo()
        return case

    return make


@pytest.fixture
def window(
    qtbot: QtBot,
    settings: QSettings,
    case_of: Callable[[int], Case],
    monkeypatch: pytest.MonkeyPatch,
) -> Iterator[MainWindow]:
    def nothing(*_: object, **__: object) -> NoReturn:
        raise StainmapError("Colours are not what is looked at here.")

    monkeypatch.setattr(prediction, "predict_case", nothing)
    one = new_window(settings)
    one.resize(1500, 1000)
    case = case_of(36)
    qtbot.addWidget(one, before_close_func=lambda _: one.session.adopt(case, path=None, saved=True))
    one.show()
    qtbot.waitExposed(one)
    one.session.adopt(case, path=None, saved=True)
    yield one
    one.sliders.close()


def area(case: Case, zone: Zone) -> float:
    return float(case.surface.mesh.vertex_areas[case.zones == zone].sum())


def press(window: MainWindow, steps: int) -> None:
    """Move the neck's slider by keys, as somebody without a mouse does."""
    slider = window.sliders.card.neck.slider
    slider.setValue(slider.value() + steps)


def test_they_are_reached_from_menu_and_legend(window: MainWindow, qtbot: QtBot) -> None:
    desk = window.sliders
    assert not desk.is_open
    assert not desk.button.isVisible(), "nowhere but beside the legend of zones"
    window.set_look(Look.ZONES)
    assert desk.button.isVisible()
    qtbot.mouseClick(desk.button, Qt.MouseButton.LeftButton)
    assert desk.is_open
    assert not desk.button.isVisible()
    assert window.crown.evaded is desk.card
    qtbot.mouseClick(desk.card.close_button, Qt.MouseButton.LeftButton)
    assert not desk.is_open
    assert window.crown.evaded is None
    window.set_look(Look.SINTERED)
    window.commands.sliders.trigger()
    assert desk.is_open
    assert window.crown.look is Look.ZONES
    assert window.crown.rect().contains(desk.card.geometry())
    # What speaks in the window goes first, then the sliders.
    for _ in range(2):
        qtbot.keyClick(window, Qt.Key.Key_Escape)
    assert not desk.is_open


def test_zones_follow_and_come_to_rest_in_one_step(window: MainWindow, qtbot: QtBot) -> None:
    desk, session = window.sliders, window.session
    before = session.case
    assert before is not None
    drawn: list[np.ndarray] = []
    window.crown.set_zones = lambda zones, _accents: drawn.append(zones)  # type: ignore[method-assign]
    desk.open()
    for _ in range(3):
        press(window, 4)
    assert len(drawn) == 3, "each move is shown"
    assert session.case is before, "and none of them is kept yet"
    sizes = [(zones == Zone.CERVICAL).sum() for zones in drawn]
    assert sizes[0] < sizes[1] < sizes[2]
    qtbot.waitUntil(lambda: session.case is not before)
    after = session.case
    assert after is not None
    assert after.sliders == ZoneSliders(neck_climb=0.42)
    assert np.array_equal(after.zones, drawn[2])
    assert session.history is not None
    assert session.history.undo_label == "let the neck climb 42%"
    session.undo()
    assert session.case is before
    assert desk.card.sliders == before.sliders, "the slider goes back as well"
    session.redo()
    assert desk.card.sliders == after.sliders


def test_what_was_painted_stays(window: MainWindow, qtbot: QtBot) -> None:
    desk, session = window.sliders, window.session
    rng = np.random.default_rng(3)

    def paint(case: Case) -> Case:
        zones, share = case.zones.copy(), np.array(case.accent(Accent.LINE_ANGLE))
        some = rng.choice(np.flatnonzero(case.reading.outer), 60, replace=False)
        zones[some] = np.where(zones[some] == Zone.CUSP, Zone.BODY, Zone.CUSP)
        share[some] = 0.77
        return replace(case, zones=zones).with_accent(Accent.LINE_ANGLE, share)

    session.edit("paint", paint)
    painted = session.case
    assert painted is not None
    hand = painted.zones != painted.proposal
    assert hand.sum() == 60
    desk.open()
    for value in (50, 15, 37):
        desk.card.neck.slider.setValue(value)
        desk.card.cusps.slider.setValue(value + 8 if value > 15 else 30)
        desk.card.fissures.slider.setValue(value)
    desk.card.let_go.emit()
    moved = session.case
    assert moved is not None
    assert moved is not painted
    assert np.array_equal(moved.zones[hand], painted.zones[hand])
    assert np.array_equal(moved.zones[~hand], moved.proposal[~hand])
    line_angle = moved.accent(Accent.LINE_ANGLE)
    assert line_angle is not None
    assert (line_angle[hand] == np.float32(0.77)).all()
    # Where the sliders were before, everything is as it was; only what was painted as the proposal
    # had it for a while is no correction any more.
    still = moved.zones != moved.proposal
    assert still.sum() > 40
    desk.card.usual.click()
    back = session.case
    assert back is not None
    assert np.array_equal(back.zones[still | ~hand], painted.zones[still | ~hand])
    assert np.array_equal(back.proposal, painted.proposal)
    assert back.accent(Accent.LINE_ANGLE) is not None
    assert np.array_equal(back.accent(Accent.LINE_ANGLE), painted.accent(Accent.LINE_ANGLE))


def test_painting_between_two_moves_is_kept_too(window: MainWindow) -> None:
    desk, session = window.sliders, window.session
    desk.open()
    press(window, 10)
    desk.card.let_go.emit()

    def paint(case: Case) -> Case:
        zones = case.zones.copy()
        zones[np.flatnonzero(case.reading.outer)[:40]] = Zone.FISSURE
        return replace(case, zones=zones)

    session.edit("paint", paint)
    press(window, -20)
    desk.card.let_go.emit()
    case = session.case
    assert case is not None
    assert (case.zones[np.flatnonzero(case.reading.outer)[:40]] == Zone.FISSURE).all()
    assert case.sliders.neck_climb == pytest.approx(0.2)


def test_front_teeth_have_an_incisal_edge_and_no_fissures(
    window: MainWindow, case_of: Callable[[int], Case]
) -> None:
    desk, session = window.sliders, window.session
    session.adopt(case_of(11), path=None, saved=True)
    desk.open()
    assert desk.card.fissures.isHidden()
    assert "incisal edge" in desk.card.cusps.slider.accessibleName()
    before = session.case
    desk.card.cusps.slider.setValue(55)
    desk.card.let_go.emit()
    assert before is not None
    assert session.case is not None
    assert area(session.case, Zone.CUSP) > 1.15 * area(before, Zone.CUSP)


def test_another_crown_puts_them_away(window: MainWindow, case_of: Callable[[int], Case]) -> None:
    window.sliders.open()
    press(window, 5)
    window.session.adopt(case_of(11), path=None, saved=True)
    assert not window.sliders.is_open
    assert window.session.case is not None
    assert window.session.case.sliders == ZoneSliders()


def test_a_body_without_zones_says_so(window: MainWindow) -> None:
    case = window.session.case
    assert case is not None
    nowhere = np.full(len(case.zones), np.nan, np.float32)
    bare = replace(case, reading=replace(case.reading, height=nowhere), accents=())
    window.session.adopt(bare, path=None, saved=True)
    said: list[str] = []
    window.sliders.said.connect(said.append)
    window.sliders.open()
    assert not window.sliders.card.neck.isEnabled()
    assert "No zones are proposed" in said[0]
