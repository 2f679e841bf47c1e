"""Every entry of the menus does something; every dialog can be used by keys and screen readers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import QPointF, QSettings, Qt
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QApplication, QDialog
from pytestqt.qtbot import QtBot

from stainmap.app import edits
from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.app.settings import Motion, Settings
from stainmap.app.settings_file import SettingsStore
from stainmap.errors import CancelledError
from stainmap.files.case_file import write_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan, StainPlan
from stainmap.model.zone import Zone
from stainmap.paper.views import Side
from stainmap.ui.crown_picture import Look
from stainmap.ui.main_window import MainWindow
from stainmap.ui.row_desk import RowDesk
from stainmap.ui.theme import Scheme, apply_theme
from tests.builders import dome_case
from tests.ui.accessible_tree import nameless
from tests.ui.window_tour import SMALLEST, Entry, Tour, by_tab, commands_of, cut, settle

# These need another crown than the dome; their own tests trigger them, which are named here.
ELSEWHERE = {
    "Plan > Accent over connectors": "tests/ui/test_run_pages.py",
}


@pytest.fixture(scope="module")
def window(qapp: QApplication, tmp_path_factory: pytest.TempPathFactory) -> Iterator[MainWindow]:
    """Return a window of the smallest size on a dome for which every entry means something."""
    folder = tmp_path_factory.mktemp("tour")
    apply_theme(qapp, Scheme.LIGHT)
    settings = QSettings(str(folder / "window.ini"), QSettings.Format.IniFormat)
    session = Session(starter_catalogue(), threaded=False)
    one = MainWindow(session, settings, JobRunner(threaded=False), SettingsStore())
    one.own_settings.change(replace(Settings(), motion=Motion.REDUCED))
    one.resize(*SMALLEST)
    one.show()
    case = full_case()
    path = folder / "tour.stainmap"
    write_case(case, path)
    session.adopt(case, path=path, saved=True)
    settle()
    one.activateWindow()
    yield one
    session.adopt(case, path=path, saved=True)
    one.own_settings.change(Settings())
    apply_theme(qapp, Scheme.LIGHT)
    one.close()


def full_case() -> Case:
    """Return a small planned dome with a layered block, a screw channel, an assumed wall, notes."""
    case, materials = dome_case(16, 36), starter_catalogue()
    backing = replace(
        case.backings[0], stump=materials.stumps[0].name, cement=materials.cements[0].name
    )
    plan = StainPlan(block=materials.blocks[0].name)
    case = replace(case, materials=materials, plan=plan, backings=(backing,), programme="slow")
    for at, liquid in enumerate(("barley", "slate")):
        case = edits.with_added_liquid(case, at, liquid)
    case = edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(1))
    case = edits.with_coats(case, 1, Zone.CUSP, CoatSpan.exactly(2))
    layered = next(block for block in case.materials.blocks if len(block.layers) > 1)
    mesh = case.surface.mesh
    top = int(np.argmax(mesh.vertices[:, 2]))
    x, y, z = (float(v) for v in mesh.vertices[top])
    case = edits.with_screw_channel(edits.with_block(case, layered.name), (x, y, z), top)
    reading = replace(
        case.reading, assumed_wall_mm=1.0, warnings=("The dome is no tooth, and says so.",)
    )
    return replace(case, reading=reading)


@pytest.fixture(scope="module")
def entries(window: MainWindow, tmp_path_factory: pytest.TempPathFactory) -> list[Entry]:
    """Trigger every entry once and return what came of each."""
    done = []
    with pytest.MonkeyPatch.context() as patch:
        # Nothing leaves the test: the desktop's viewer would stay open after it.
        patch.setattr(QDesktopServices, "openUrl", lambda _url: True)
        # A small one, which costs less to predict.
        patch.setattr("stainmap.ui.main_window.open_sample", full_case)
        # What takes long and has tests of its own: all blocks, the teeth of the row.
        patch.setattr("stainmap.app.suggesting.compare_blocks", stopped)
        patch.setattr(RowDesk, "show", lambda _desk, **_again: None)
        tour = Tour(window)
        case, path = window.session.case, window.session.path
        assert case is not None
        for words in commands_of(window):
            if words == "File > Quit":
                continue
            if window.session.case is not case or window.session.is_modified:
                window.session.adopt(case, path=path, saved=True)
            prepare(window, words)
            settle()
            # By the way there: Undo is called otherwise once there is something to undo.
            action = commands_of(window).get(words) or by_start(window, words)
            done.append(tour.trigger(words, action))
            calm(window)
    return done


def stopped(*_arguments: object, **_more: object) -> None:
    raise CancelledError("Stopped.")


def by_start(window: MainWindow, words: str):
    return next(action for name, action in commands_of(window).items() if name.startswith(words))


def prepare(window: MainWindow, words: str) -> None:
    """Bring the window into a state in which an entry means something."""
    session = window.session
    if words.startswith(("Edit > Undo", "Edit > Redo", "File > Save")):
        session.edit("a coat", lambda c: edits.with_coats(c, 0, Zone.CUSP, CoatSpan.exactly(3)))
        if words.startswith("Edit > Redo"):
            session.undo()
    if words.startswith("View > Look from"):
        side = Side.BUCCAL if "buccal" not in words else Side.LINGUAL
        window.crown.look_from(side)
    if words == "View > Whole crown":
        window.crown._framed = False
        window.crown._set_camera(window.crown._camera.zoomed(3.0, 10.0, 10.0, 400, 300))
    if words.startswith("View > "):
        other = Look.ZONES if words != "View > Zones" else Look.SINTERED
        window.set_look(other)
    if words == "View > Check this point":
        window.crown._pointer = QPointF(window.crown.width() / 2.0, window.crown.height() / 2.0)
        window.crown._point()
    if words == "View > Colours of the window > system":
        window.own_settings.set_scheme(Scheme.LIGHT)
    table = window.plan.table
    if "coats" in words and words.startswith("Edit"):
        table.select_cell(1, Zone.CUSP)
        if "Paste" in words:
            QApplication.clipboard().setText("3")
        else:
            QApplication.clipboard().clear()


def calm(window: MainWindow) -> None:
    """Bring the window back to rest: no question, no tool, no card."""
    for _ in range(4):
        if not (window.flow.step_back() or window.tools.step_back() or window.sliders.step_back()):
            break
        settle()
    for dock in (window.plan_dock, window.outcome_dock, window.run_dock):
        dock.show()
    settle()


def failing(entries: list[Entry], what: str) -> list[str]:
    return [
        f"{one.words}: {met.title}: {thing}"
        for one in entries
        for met in one.met
        for thing in getattr(met, what)
    ]


def test_every_entry_does_something(entries: list[Entry]) -> None:
    assert len(entries) > 45
    disabled = {one.words for one in entries if not one.enabled}
    assert disabled == set(ELSEWHERE)
    nothing = [one.words for one in entries if one.enabled and not one.did_something]
    assert not nothing, "\n".join(nothing)


def test_every_control_of_every_dialog_says_what_it_is(entries: list[Entry]) -> None:
    assert sum(len(one.met) for one in entries) > 20
    found = failing(entries, "nameless")
    assert not found, "\n".join(found)


def test_the_keyboard_reaches_everything_in_every_dialog(entries: list[Entry]) -> None:
    found = failing(entries, "unreached")
    assert not found, "\n".join(found)


def test_the_focus_is_seen_in_every_dialog(entries: list[Entry]) -> None:
    found = failing(entries, "unmarked")
    assert not found, "\n".join(found)


def test_f1_opens_a_manual_that_can_be_read_beside_every_dialog(entries: list[Entry]) -> None:
    found = failing(entries, "unhelped")
    assert not found, "\n".join(found)


def test_no_dialog_that_was_waited_for_stays(window: MainWindow, entries: list[Entry]) -> None:
    """A hidden one would keep its case and prediction; the tray and the section are shown again."""
    settle()
    left = {type(one).__name__ for one in window.findChildren(QDialog)}
    assert left <= {"TrayDialog", "SectionWindow"}


def test_every_dialog_fits_the_smallest_screen(entries: list[Entry]) -> None:
    large = {
        f"{met.title}: {met.least}"
        for one in entries
        for met in one.met
        if met.least[0] > SMALLEST[0] or met.least[1] > SMALLEST[1]
    }
    assert not large, "\n".join(large)


def test_no_words_are_cut_in_any_dialog(entries: list[Entry]) -> None:
    found = failing(entries, "cut")
    assert not found, "\n".join(found)


def test_no_words_are_cut_in_the_smallest_window(window: MainWindow) -> None:
    assert (window.width(), window.height()) == SMALLEST
    found = []
    for dock in (window.outcome_dock, window.plan_dock):
        dock.raise_()
        settle()
        found += cut(window)
    assert not found, "\n".join(found)


def test_the_outcome_folds_under_the_plan_in_the_smallest_window(window: MainWindow) -> None:
    assert window.outcome_dock in window.tabifiedDockWidgets(window.plan_dock)
    assert window.crown.width() >= 400


def test_every_control_of_the_window_says_what_it_is(window: MainWindow) -> None:
    found = nameless(window)
    assert not found, "\n".join(found)


def test_the_keyboard_reaches_everything_in_the_window(window: MainWindow) -> None:
    window.plan_dock.raise_()
    settle()
    unreached, unmarked = by_tab(window)
    assert not unreached, "\n".join(unreached)
    assert not unmarked, "\n".join(unmarked)


def test_own_widgets_describe_themselves(window: MainWindow) -> None:
    """What is painted by hand says in words what it shows."""
    ladder, run, crown = window.outcome.ladder, window.run, window.crown
    assert "L*" in ladder.accessibleDescription()
    assert "sinter" in run.accessibleDescription()
    assert "36" in crown.accessibleDescription()
    assert window.looks.accessibleName() == "Looks"
    for button in window.looks.buttons.values():
        assert button.accessibleName()


def test_a_key_goes_from_part_to_part_also_to_a_folded_one(window: MainWindow) -> None:
    window.activateWindow()
    window.plan_dock.raise_()
    window.plan.table.setFocus()
    settle()
    assert window.outcome.visibleRegion().isEmpty(), "folded under the plan"
    actions = commands_of(window)
    order = [window.crown, window.outcome, window.run, window.plan]
    for part in order:
        actions["View > Next part of the window"].trigger()
        settle()
        focus = window.focusWidget()
        assert focus is part or part.isAncestorOf(focus)
        # The picture covers the view that holds it.
        seen = window.crown.canvas if part is window.crown else part
        assert not seen.visibleRegion().isEmpty()
    for part in (window.run, window.outcome, window.crown, window.plan):
        actions["View > Part of the window before"].trigger()
        settle()
        focus = window.focusWidget()
        assert focus is part or part.isAncestorOf(focus)


def test_tab_brings_a_folded_panel_to_the_top(qtbot: QtBot, window: MainWindow) -> None:
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)
    window.plan_dock.raise_()
    window.plan.table.setFocus()
    settle()
    assert window.outcome.outcome.change.visibleRegion().isEmpty()
    window.outcome.outcome.change.setFocus(Qt.FocusReason.TabFocusReason)
    settle()
    assert not window.outcome.visibleRegion().isEmpty()
