"""Computers on which something is missing, and ends that nobody asked for: the real program.

What is the same with OpenGL is tested without it.
"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QSettings, QSize
from PySide6.QtGui import QFontInfo
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QScrollArea, QToolButton
from pytestqt.qtbot import QtBot

from stainmap.app import first_crown
from stainmap.app.first_crown import FirstCrown
from stainmap.app.settings import Settings
from stainmap.app.settings_file import NAME, SettingsStore
from stainmap.errors import CaseFileError
from stainmap.files.case_file import write_case
from stainmap.files.recovery import abandoned
from stainmap.model.case import Case
from stainmap.paper import typeface
from stainmap.paths import resource
from stainmap.ui import start, theme
from stainmap.ui.main_window import MainWindow
from stainmap.ui.picture_canvas import PictureCanvas
from stainmap.ui.screen_room import fit_small_screen
from stainmap.ui.side_panels import PLAN_PX
from stainmap.ui.theme import Scheme, apply_theme
from tests.ui.conftest import new_window
from tests.ui.small_dome import small_planned_case

ROOT = Path(__file__).resolve().parents[2]
PATIENCE_S = 120.0
SMALL = QSize(800, 560)

# The real start on a case; somebody changes it, and tells when the change is made.
PROGRAM = """
import sys
from dataclasses import replace
sys.path.insert(0, sys.argv[1])
from PySide6.QtCore import QTimer
from stainmap.ui import start

class Telling(start.MainWindow):
    def __init__(self, *arguments):
        super().__init__(*arguments)
        self.looks_again = QTimer(self, interval=30)
        self.looks_again.timeout.connect(self.look)
        self.looks_again.start()

    def look(self):
        if self.session.case is None:
            return
        self.looks_again.stop()
        self.session.edit("note", lambda case: replace(case, notes="the lights went out"))
        QTimer.singleShot(500, lambda: print("TOLD", self.status.message.text(), flush=True))

start.MainWindow = Telling
sys.exit(start.run(sys.argv[2:]))
"""


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("STAINMAP_NO_GL", "1")


@pytest.fixture
def planned_case() -> Case:
    """Return a dome of few vertices: how it looks plays no part."""
    return small_planned_case()


@pytest.fixture
def store(tmp_path: Path) -> SettingsStore:
    return SettingsStore(tmp_path / NAME)


# --- ends ----------------------------------------------------------------------------------


@pytest.mark.skipif(os.name != "posix", reason="signals")
@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGKILL])
def test_an_end_from_outside_loses_nothing(
    number: signal.Signals, tmp_path: Path, planned_case: Case
) -> None:
    """A window that is told to end, or killed, leaves what was not saved to the next start."""
    path = tmp_path / "crown.stainmap"
    write_case(planned_case, path)
    environment = os.environ | {
        "HOME": str(tmp_path),
        "XDG_CONFIG_HOME": str(tmp_path / "config"),
        "XDG_DATA_HOME": str(tmp_path / "data"),
        "OPENBLAS_NUM_THREADS": "1",
    }
    with subprocess.Popen(
        [sys.executable, "-c", PROGRAM, str(ROOT), str(path)],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        env=environment,
        cwd=ROOT,
    ) as program:
        assert program.stdout is not None
        told = program.stdout.readline()
        assert told.startswith("TOLD"), program.stderr.read() if program.stderr else ""
        program.send_signal(number)
        ended = program.wait(timeout=PATIENCE_S)
    assert ended == (0 if number is signal.SIGTERM else -signal.SIGKILL)
    (left,) = abandoned(tmp_path / "data" / "stainmap" / "recovery")
    assert left.read().notes == "the lights went out"
    assert left.file == path


# --- what is missing -----------------------------------------------------------------------


@pytest.fixture
def no_faces(qapp: QApplication, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Take the shipped typeface away: from the window, and from the paper."""

    def without(*parts: str) -> Path:
        return tmp_path / "gone" if parts[0] == "fonts" else resource(*parts)

    def reset() -> None:
        theme.load_fonts.cache_clear()

    monkeypatch.setattr(theme, "resource", without)
    monkeypatch.setattr(typeface, "resource", without)
    reset()
    apply_theme(qapp, Scheme.LIGHT)
    yield
    monkeypatch.undo()
    reset()
    apply_theme(qapp, Scheme.LIGHT)


def test_without_its_typeface_the_window_speaks_in_the_desktops(
    qapp: QApplication,
    no_faces: None,
    settings: QSettings,
    store: SettingsStore,
    planned_case: Case,
) -> None:
    one = new_window(settings)
    try:
        one.show()
        one.session.adopt(planned_case, path=None, saved=True)
        desktops = theme._family_of(theme.Typeface.SYSTEM)
        assert desktops != theme.FAMILY
        labels = [label for label in one.findChildren(QLabel) if label.text()]
        assert len(labels) > 20
        assert {label.font().family() for label in labels} == {desktops}
        assert all(QFontInfo(label.font()).pixelSize() > 8 for label in labels)
        (said,) = [text for text in start._said_of_the_computer(one, store) if "typeface" in text]
        assert "install stainmap again" in said.casefold()
    finally:
        one.session.adopt(planned_case, path=None, saved=True)
        one.close()
        one.deleteLater()


def test_without_its_typeface_sheets_are_refused_with_a_sentence(
    no_faces: None, window: MainWindow, monkeypatch: pytest.MonkeyPatch
) -> None:
    from reportlab.pdfbase import pdfmetrics

    monkeypatch.setattr(pdfmetrics, "_fonts", {})
    monkeypatch.setattr(typeface, "_registered", False, raising=False)
    QTest.keySequence(window, "Ctrl+P")
    said = window.status.message.text()
    assert "typeface" in said or "font" in said.casefold(), said
    assert window.printing.preview is None


def test_without_opengl_that_is_said_and_all_else_works(
    window: MainWindow, store: SettingsStore
) -> None:
    assert isinstance(window.crown.canvas, PictureCanvas)
    assert start.WITHOUT_GL in start._said_of_the_computer(window, store)


def test_a_small_screen_is_said_and_the_window_fits_it(
    window: MainWindow, monkeypatch: pytest.MonkeyPatch, store: SettingsStore, qtbot: QtBot
) -> None:
    assert not fit_small_screen(window)

    class Small:
        def availableSize(self):
            return SMALL

    monkeypatch.setattr(MainWindow, "screen", lambda _self: Small())
    assert start.SMALL_SCREEN in start._said_of_the_computer(window, store)
    assert window.minimumSize() == SMALL
    assert window.size() == SMALL
    assert window.crown.width() > 250

    # What has no room is scrolled to, and nothing lies under anything else.
    plan = window.plan_dock.widget()
    assert isinstance(plan, QScrollArea)
    qtbot.waitUntil(lambda: plan.horizontalScrollBar().maximum() > 0)
    assert plan.horizontalScrollBar().isVisible()
    assert window.plan.width() >= PLAN_PX
    corner = plan.mapTo(window, QPoint(plan.width(), 0))
    assert corner.x() <= window.crown.mapTo(window, QPoint(0, 0)).x()
    for button in (*window.looks.buttons.values(), window.looks.light):
        assert button.width() >= button.sizeHint().width()
        assert button.geometry().right() < window.looks.width()
    more = window.top.menus.findChild(QToolButton, "qt_menubar_ext_button")
    assert more is not None
    menus = window.top.menus
    seen = menus.actionGeometry(menus.actions()[-1]).right() < menus.width()
    assert seen != more.isVisible()
    window.setMinimumSize(1024, 660)
    window.resize(1024, 700)
    qtbot.waitUntil(lambda: not plan.horizontalScrollBar().isVisible())
    assert plan.width() >= PLAN_PX


# --- settings ------------------------------------------------------------------------------


def test_settings_that_are_no_file_are_said_and_the_program_starts(tmp_path: Path) -> None:
    """Where the file should lie stands a folder: that is told, and the folder is kept aside."""
    (tmp_path / NAME).mkdir()
    (tmp_path / NAME / "somebody's.txt").write_text("mine")
    one = SettingsStore(tmp_path / NAME)
    assert "cannot be read" in one.problem
    assert "defaults are used" in one.problem
    assert one.settings == Settings()
    assert [path.read_text() for path in tmp_path.rglob("somebody's.txt")] == ["mine"]
    one.keep(replace(Settings(), scheme=Scheme.DARK))
    assert SettingsStore(tmp_path / NAME).settings.scheme is Scheme.DARK


def test_a_damaged_sample_leaves_the_window_empty_with_a_sentence(
    settings: QSettings, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    def damaged() -> Case:
        raise CaseFileError("The case is damaged.", where="sample", advice="Install again.")

    monkeypatch.setattr(first_crown, "open_sample", damaged)
    window = new_window(settings)
    qtbot.addWidget(window)
    start._show_first(window, FirstCrown())
    assert window.session.case is None
    assert "The case is damaged." in window.status.message.text()
