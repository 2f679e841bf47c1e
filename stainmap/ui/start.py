"""The start of the window: what is set and what was left behind is read, then something opens."""

from __future__ import annotations

import gc
import os
import sys
from collections.abc import Sequence
from pathlib import Path

from platformdirs import user_data_path
from PySide6.QtCore import QSettings, QTimer
from PySide6.QtWidgets import QApplication

from stainmap.app.first_crown import FirstCrown
from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.app.settings import Typeface
from stainmap.app.settings_file import SettingsStore, settings_path
from stainmap.errors import StainmapError
from stainmap.files.catalogue import starter_catalogue
from stainmap.files.recovery import abandoned
from stainmap.ui.ending import Ending, journal_in
from stainmap.ui.language import set_language
from stainmap.ui.main_window import MainWindow
from stainmap.ui.motion import apply_motion
from stainmap.ui.picture_canvas import PictureCanvas
from stainmap.ui.poster import Poster
from stainmap.ui.screen_room import fit_small_screen
from stainmap.ui.theme import apply_theme, load_fonts
from stainmap.ui.warming import Warming
from stainmap.words import marked, translate

WITHOUT_GL = marked(
    "start",
    "OpenGL 3.3 is missing: the crown turns more coarsely, all else works.",
)
WITHOUT_FACE = marked(
    "start",
    "The program's typeface is missing: install stainmap again to make sheets.",
)
SMALL_SCREEN = marked(
    "start",
    "Small screen: panels can be put away in the menu View.",
)
_FIRST_PICTURE_MS = 50
_SCALE = "QT_SCALE_FACTOR"


def _set_size(percent: int) -> None:
    """Make everything larger; Qt reads this once, before there is an application."""
    own = float(os.environ.get(_SCALE, "") or 1.0)
    if percent != 100:
        os.environ[_SCALE] = f"{own * percent / 100.0:g}"


def _said_of_the_computer(window: MainWindow, store: SettingsStore) -> list[str]:
    """Return what is missing on this computer, a sentence each; the window makes do."""
    said = []
    if isinstance(window.crown.canvas, PictureCanvas):
        said.append(translate("start", WITHOUT_GL))
    if store.settings.typeface is Typeface.OWN and not load_fonts():
        said.append(translate("start", WITHOUT_FACE))
    if fit_small_screen(window):
        said.append(translate("start", SMALL_SCREEN))
    return said


def _collect_from_now_on() -> None:
    """Look for what has been thrown away, from now on, but not among what the start has made.

    That stays until the end. Whoever goes through hundreds of thousands of objects again and again
    holds up the brush for longer than a picture may take.
    """
    gc.freeze()
    gc.enable()


def _show_first(window: MainWindow, first: FirstCrown) -> None:
    """Show the sample, whose reading has begun; a damaged one leaves the window empty."""
    try:
        window.show_sample(*first.wait())
    except StainmapError as error:
        window.status.say(str(error))


def run(argv: Sequence[str], first: FirstCrown | None = None) -> int:
    """Open the window on a file, or on the sample; return the exit code when it is closed.

    Parameters
    ----------
    first
        The sample, if its reading has begun; it is shown unless a file is named.
    """
    store = SettingsStore(settings_path())
    app = QApplication.instance()
    if not isinstance(app, QApplication):
        _set_size(store.settings.size_percent)
        app = QApplication([sys.argv[0], *argv])
    app.setApplicationName("stainmap")
    app.setOrganizationName("stainmap")
    settings = QSettings(
        QSettings.Format.IniFormat, QSettings.Scope.UserScope, "stainmap", "window"
    )
    set_language(app, store.settings.language)
    apply_theme(app, store.settings.scheme, store.settings.typeface)
    apply_motion(app, store.settings.motion)
    poster = Poster()
    folder = user_data_path("stainmap", appauthor=False) / "recovery"
    left_behind = abandoned(folder)
    journal, no_journal = journal_in(folder)
    session = Session(starter_catalogue(), post=poster, journal=journal)
    window = MainWindow(session, settings, JobRunner(post=poster), store)
    files = [Path(argument) for argument in argv if not argument.startswith("-")]
    if not files:
        # Before the window: one picture is drawn sooner than an empty one and another.
        _show_first(window, first or FirstCrown())
    window.show()
    Ending(app, session, window.saving, window.end_unasked, window).heed_signals()
    Warming(session, JobRunner(post=poster), window)
    if files:
        # The bare window first: opening takes the processor for a while.
        QTimer.singleShot(_FIRST_PICTURE_MS, lambda: window.flow.open_path(files[0]))
    QTimer.singleShot(_FIRST_PICTURE_MS, _collect_from_now_on)
    if left_behind:
        QTimer.singleShot(2 * _FIRST_PICTURE_MS, lambda: window.recovery.offer(left_behind))
    if said := _said_of_the_computer(window, store):
        window.status.say(" ".join(said))
    if no_journal is not None:
        window.recovery.say_nothing_is_kept(no_journal)
    return app.exec()
