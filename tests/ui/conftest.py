"""A dressed application, and crowns to show in it."""

from __future__ import annotations

import hashlib
import os
import sys
from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from PySide6.QtCore import QCoreApplication, QEvent, QSettings
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from stainmap.app import edits, opening
from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan, StainPlan
from stainmap.model.tooth import Tooth
from stainmap.model.zone import Accent, Zone
from stainmap.paper import shading
from stainmap.paper.shading import ShadingFields, shading_fields
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.ui import picture_canvas
from stainmap.ui.case_figures import directions_of
from stainmap.ui.crown_view import CrownView
from stainmap.ui.main_window import MainWindow
from stainmap.ui.theme import Scheme, apply_theme
from tests.builders import dome_case

if sys.platform.startswith("linux") and not os.environ.get("DISPLAY"):
    # Without a display everything but OpenGL can still be tested.
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


# What has not come by then does not come; a busy machine takes far longer than an idle one.
PATIENCE_MS = 30_000


class PatientBot(QtBot):
    """Waits for what must come as long as a busy machine may need."""

    def waitUntil(self, callback: Callable[[], bool | None], *, timeout: int = 0) -> None:
        """Wait until `callback` is content, `timeout` ms or `PATIENCE_MS`, the longer of them."""
        super().waitUntil(callback, timeout=max(timeout, PATIENCE_MS))

    def waitExposed(self, widget: QWidget, *, timeout: int = 0) -> Any:
        """Wait until a window is on screen, likewise."""
        return super().waitExposed(widget, timeout=max(timeout, PATIENCE_MS))


@pytest.fixture
def qtbot(qapp: QApplication, request: pytest.FixtureRequest) -> PatientBot:
    """Return a bot with patience."""
    return PatientBot(request)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Take out one warning that Qt gives for every window without a display."""
    if os.environ.get("QT_QPA_PLATFORM") == "offscreen":
        note = "This plugin does not support propagateSizeHints"
        for item in items:
            item.add_marker(pytest.mark.qt_log_ignore(note, extend=True))


@pytest.fixture(autouse=True)
def _dressed(qapp: QApplication) -> None:
    if qapp.property("dressed") is None:
        apply_theme(qapp, Scheme.LIGHT)
        qapp.setProperty("dressed", True)


@pytest.fixture(scope="session", autouse=True)
def _light_looked_up() -> Iterator[None]:
    """Look into the grooves of a surface once, however often it is made or shown."""
    kept: dict[bytes, ShadingFields] = {}

    def fields(operator: SurfaceOperator, **rest: Any) -> ShadingFields:
        mesh = operator.mesh
        key = hashlib.sha256(mesh.vertices.tobytes() + mesh.faces.tobytes()).digest()
        if key not in kept:
            if len(kept) > 7:
                kept.pop(next(iter(kept)))
            kept[key] = shading_fields(operator, **rest)
        return kept[key]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(shading, "shading_fields", fields)
        yield


@pytest.fixture(scope="module", autouse=True)
def _coarser() -> Iterator[None]:
    """Refine what is opened to half as fine edges, and draw pixels, not parts of them.

    Enough for what a window is tested for: pictures drawn without a driver took two thirds of all
    its tests. `test_crown_canvas` draws them in full. Module by module: the same process goes on
    with tests of other rooms.
    """
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(opening, "MAX_EDGE_MM", 2.0 * opening.MAX_EDGE_MM)
        patch.setattr(picture_canvas, "_SAMPLES", 1)
        yield
    # A window lives as long as what its own buttons do holds it: for ever, unless it is deleted.
    # And that waits for an event loop.
    for left in QApplication.topLevelWidgets():
        if left.parent() is None:
            left.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)


@pytest.fixture
def no_pictures(monkeypatch: pytest.MonkeyPatch) -> None:
    """Draw no crown at all, by no driver: for what is the same whatever the crown looks like."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")
    monkeypatch.setattr(picture_canvas.PictureCanvas, "_draw_now", lambda _canvas: None)


@pytest.fixture(scope="session")
def planned_case() -> Case:
    """Return the dome with starter materials and a plan of three steps."""
    materials = starter_catalogue()
    case = dome_case(32, 72)
    backing = replace(
        case.backings[0], stump=materials.stumps[0].name, cement=materials.cements[0].name
    )
    case = replace(
        case,
        materials=materials,
        plan=StainPlan(block="medium 3Y"),
        backings=(backing,),
        programme="slow",
    )
    for at, liquid in enumerate(("barley", "slate", "umber")):
        case = edits.with_added_liquid(case, at, liquid)
    case = edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(1))
    case = edits.with_coats(case, 1, Zone.CUSP, CoatSpan.exactly(2))
    return edits.with_coats(case, 2, Accent.MARGIN_BAND, CoatSpan.exactly(1))


@pytest.fixture
def view(qtbot: QtBot, planned_case: Case) -> CrownView:
    """Return a visible crown view with the dome in it, fitted."""
    one = CrownView()
    one.resize(500, 400)
    qtbot.addWidget(one)
    one.show()
    qtbot.waitExposed(one)
    mesh = planned_case.surface.mesh
    one.set_crown(mesh, directions_of(planned_case), Tooth(number=36))
    one.set_colours(np.full((mesh.vertex_count, 3), 180, np.uint8))
    return one


@pytest.fixture
def session(planned_case: Case) -> Session:
    """Return a session that does everything at once, with the planned dome open."""
    one = Session(starter_catalogue(), threaded=False)
    one.adopt(planned_case, path=None, saved=True)
    return one


@pytest.fixture
def settings(tmp_path: Path) -> QSettings:
    return QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)


def new_window(settings: QSettings) -> MainWindow:
    """Return a window on an empty session; all work is done at once."""
    session = Session(starter_catalogue(), threaded=False)
    return MainWindow(session, settings, JobRunner(threaded=False))


@pytest.fixture
def window(qtbot: QtBot, planned_case: Case, settings: QSettings) -> MainWindow:
    """Return a visible window on the planned dome."""
    one = new_window(settings)
    one.resize(1400, 900)

    def leave(_: QWidget) -> None:
        # Without unsaved work the window closes without asking.
        if one.session.is_modified:
            one.session.adopt(planned_case, path=None, saved=True)

    qtbot.addWidget(one, before_close_func=leave)
    one.show()
    qtbot.waitExposed(one)
    one.activateWindow()
    qtbot.waitUntil(one.isActiveWindow)
    one.session.adopt(planned_case, path=None, saved=True)
    return one
