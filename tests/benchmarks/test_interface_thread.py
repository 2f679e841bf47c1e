"""The interface thread answers while a person works: a watchdog measures how late.

Counted is what the interface thread itself computes before it answers (its own processor time): how
long it waits for a core depends on what else the machine does. OpenGL in software counts too.
"""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QSettings, Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit
from pytestqt.qtbot import QtBot

from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.files.journal import Journal
from stainmap.model.case import Case
from stainmap.model.zone import Accent, Zone
from stainmap.ui.crown_picture import Look
from stainmap.ui.main_window import MainWindow
from stainmap.ui.poster import Poster
from tests.app.session_moves import planned
from tests.ui.watchdog import Watchdog

# Of the longest block, and from where blocks are told.
_ASKED_MS, _NOTED_MS = 60.0, 30.0
_MOST_SESSIONS = 3
# Rings, and vertices around, of outside and inside each.
_SIZES = {"4,600": (32, 72), "100,000": (150, 330)}
LEFT, NONE = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier

pytestmark = pytest.mark.benchmark


@pytest.fixture
def busy(gl_context: None, qtbot: QtBot, tmp_path: Path) -> Iterator[MainWindow]:
    """Return a window as it is started: threads, a journal, everything."""
    poster = Poster()
    session = Session(starter_catalogue(), post=poster, journal=Journal(tmp_path / "kept"))
    settings = QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)
    window = MainWindow(session, settings, JobRunner(post=poster))
    window.resize(1100, 700)
    qtbot.addWidget(window, before_close_func=lambda _: window.end_unasked())
    window.show()
    qtbot.waitExposed(window)
    yield window
    window.end_unasked()


def crown_of(vertices: str) -> Case:
    """Return a planned dome as it comes from the job that reads a file."""
    case = planned(*_SIZES[vertices])
    case.surface.mesh.make_ready_to_draw()
    return case


def work(window: MainWindow, qtbot: QtBot, dog: Watchdog, case: Case, folder: Path) -> None:
    """Do a little of everything that a person does all day."""
    session, table, view = window.session, window.plan.table, window.crown

    def step(name: str, *actions: Callable[[], object]) -> None:
        dog.during = name
        for action in actions:
            action()
            QApplication.processEvents()
        qtbot.waitUntil(lambda: session.is_up_to_date, timeout=120_000)
        qtbot.wait(60)

    def type_coat(key: str) -> None:
        table.setFocus()
        table.select_cell(0, Zone.BODY)
        QTest.keyClicks(table, key)
        for line in table.findChildren(QLineEdit)[:1]:
            QTest.keyClick(line, Qt.Key.Key_Return)

    def stroke() -> None:
        place = QPoint(view.width() // 2, view.height() // 2)
        QTest.mouseMove(view, place)
        QTest.mousePress(view, LEFT, NONE, place)
        # A press and the first move come one after the other, never in one event.
        QApplication.processEvents()
        for k in range(1, 8):
            QTest.mouseMove(view, place + QPoint(6 * k, 3 * k))
            QApplication.processEvents()
        QTest.mouseRelease(view, LEFT, NONE, place + QPoint(42, 21))

    step("opening", lambda: session.adopt(case, path=None))
    step("typing coats", lambda: type_coat("3"))
    for look in (Look.ZONES, Look.COATS, Look.SINTERED):
        step(f"look {look}", lambda look=look: window.set_look(look))
    step("brushing coats", lambda: table.select_cell(1, Zone.BODY), stroke)
    step("brushing a zone", lambda: table.select_row(Zone.CUSP), stroke)
    step("brushing an accent", lambda: table.select_row(Accent.LINE_ANGLE), stroke)
    step("undo", session.undo, session.undo)
    step("redo", session.redo)
    step("saving", lambda: window.saving.save_to(folder / "crown.stainmap"))
    qtbot.waitUntil(lambda: not session.is_modified, timeout=30_000)


@pytest.mark.parametrize(
    "vertices",
    [
        "4,600",
        pytest.param(
            "100,000",
            marks=pytest.mark.skipif(
                not os.environ.get("STAINMAP_MORE"), reason="long; set STAINMAP_MORE=1"
            ),
        ),
    ],
)
def test_the_interface_thread_is_never_blocked_for_long(
    vertices: str,
    busy: MainWindow,
    qtbot: QtBot,
    tmp_path: Path,
    record_property: Callable[[str, object], None],
) -> None:
    # What is fetched on first use (fonts, modules) is not what is looked for: once through before.
    warm = Watchdog(1e6)
    work(busy, qtbot, warm, crown_of("4,600"), tmp_path)
    warm.stop()
    longest: list[float] = []
    for _ in range(_MOST_SESSIONS):
        # The least disturbed session counts, all of it: caches and cores are shared with others.
        case = crown_of(vertices)
        dog = Watchdog(_NOTED_MS)
        began = time.monotonic()
        work(busy, qtbot, dog, case, tmp_path)
        dog.stop()
        assert dog.answers > 50, f"hardly ever asked in {time.monotonic() - began:.0f} s"
        longest.append(dog.longest_own_ms())
        print(f"longest block {longest[-1]:.0f} ms\n{dog.report(6)}")
        if longest[-1] < _ASKED_MS:
            break
    record_property("longest block, ms of own processor time", min(longest))
    assert min(longest) < _ASKED_MS, dog.report()
