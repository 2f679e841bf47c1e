"""Opening, planning and closing again and again takes no more memory.

In every run a few rounds on a light crown, after which no more surfaces, cases and predictions may
be alive than before. With STAINMAP_MORE=1 50 rounds on a larger one, and what the system has given
to the process after the first ten is held against the end.
"""

from __future__ import annotations

import gc
import os
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from stainmap import memory
from stainmap.app import edits
from stainmap.app.brush import Brush
from stainmap.app.job import JobRunner
from stainmap.app.prediction import Prediction
from stainmap.app.session import Session
from stainmap.files.case_file import write_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.files.journal import Journal
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Zone
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh
from stainmap.ui.crown_picture import Look
from stainmap.ui.main_window import MainWindow
from tests.app.session_moves import planned

MORE = bool(os.environ.get("STAINMAP_MORE"))
ROUNDS, WARM = (50, 10) if MORE else (5, 2)
CROWN = (32, 72) if MORE else (8, 16)
MOST = 1.05
LARGE = (Case, TriMesh, Prediction, SurfaceOperator, Session)
STATM = Path("/proc/self/statm")

pytestmark = [
    pytest.mark.benchmark,
    pytest.mark.memory,
    pytest.mark.skipif(not STATM.exists(), reason="this system does not tell in this way"),
]


def resident_mb() -> float:
    """Return what the process has of the machine's memory, after giving back what it can."""
    gc.collect()
    memory.give_back_freed()
    pages = int(STATM.read_text().split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 2**20


def alive() -> Counter[str]:
    """Return how many of the large things there are."""
    gc.collect()
    return Counter(type(one).__name__ for one in gc.get_objects() if isinstance(one, LARGE))


def hold_flat(one_round: Callable[[], None], record: Callable[[str, object], None]) -> None:
    """Make the rounds and see that nothing of them stays."""
    for _ in range(WARM):
        one_round()
    before, before_mb = alive(), resident_mb()
    for _ in range(ROUNDS - WARM):
        one_round()
    after, after_mb = alive(), resident_mb()
    record("alive", dict(after))
    record("MB before and after", (round(before_mb, 1), round(after_mb, 1)))
    assert after == before
    if MORE:
        assert after_mb < MOST * before_mb


def plan_a_little(session: Session) -> None:
    for coats in (2, 3):
        session.edit(
            "coats",
            lambda case, n=coats: edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(n)),
        )
    assert session.case is not None
    mesh = session.case.surface.mesh
    session.begin_stroke(Brush(step=1, radius_mm=1.0))
    for vertex in (40, 44, 48):
        session.stroke_to(mesh.vertices[vertex], vertex)
    session.end_stroke()
    session.undo()
    session.redo()


def test_sessions_leave_no_memory_behind(
    tmp_path: Path, record_property: Callable[[str, object], None]
) -> None:
    path = tmp_path / "dome.stainmap"
    write_case(planned(*CROWN), path)

    def one_round() -> None:
        session = Session(starter_catalogue(), threaded=False, journal=Journal(tmp_path / "kept"))
        session.open_case(path)
        plan_a_little(session)
        session.save()
        session.close()

    hold_flat(one_round, record_property)


@pytest.mark.skipif(not MORE, reason="a minute of processor time; set STAINMAP_MORE=1")
def test_a_window_keeps_no_memory_of_cases_it_had_open(
    qtbot: QtBot,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    record_property: Callable[[str, object], None],
) -> None:
    monkeypatch.setenv("STAINMAP_NO_GL", "1")
    paths = [tmp_path / f"{name}.stainmap" for name in "ab"]
    for path in paths:
        write_case(planned(*CROWN), path)
    session = Session(starter_catalogue(), threaded=False)
    settings = QSettings(str(tmp_path / "window.ini"), QSettings.Format.IniFormat)
    window = MainWindow(session, settings, JobRunner(threaded=False))
    window.resize(1100, 700)
    qtbot.addWidget(window, before_close_func=lambda one: one.end_unasked())
    window.show()
    qtbot.waitExposed(window)

    def one_round() -> None:
        paths.reverse()
        window.open_file(paths[0])
        plan_a_little(session)
        for look in (Look.ZONES, Look.SINTERED):
            window.set_look(look)
            QApplication.processEvents()
        session.save()
        QApplication.processEvents()

    hold_flat(one_round, record_property)
