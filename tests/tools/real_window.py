"""The program's own window, started as a person starts it and worked by mouse and keys.

Whoever starts one gives it a home of its own: nothing of the machine's user is read or written.
What moves by the clock stands still, so that two pictures of the same state are the same.
"""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, nullcontext
from datetime import UTC, datetime, tzinfo
from functools import partial
from itertools import pairwise
from pathlib import Path
from typing import Any
from unittest import mock

from PySide6.QtCore import (
    QCoreApplication,
    QEvent,
    QEventLoop,
    QPoint,
    QSettings,
    QSocketNotifier,
    Qt,
    QTimer,
)
from PySide6.QtGui import QAction, QCursor, QGuiApplication, QImage, QKeySequence
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QDialog, QLineEdit, QMenu, QWidget

from stainmap.app.settings import Motion, Scheme, Settings
from stainmap.app.settings_file import NAME, write_settings
from stainmap.ui import coupon_dialog, plan_desk, run_desk, start, tray_desk
from stainmap.ui.ending import Ending
from stainmap.ui.main_window import MainWindow

LEFT, RIGHT = Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton
NONE, SHIFT = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier
# Room for the smallest window at twice its size.
SCREEN = "-screen 0 2048x1400x24"
_ON_OWN_SCREEN = "STAINMAP_PICTURES_OF"
# A quarter past eight on a working day, wherever it is.
NOW = datetime(2025, 3, 4, 8, 15, tzinfo=UTC)
# What has not come by then does not come; a busy machine takes far longer than an idle one.
_PATIENCE_S = 120.0
_STILL_MS = 350


def let_work(ms: int) -> None:
    """Let the program work for a moment: its window, and its threads as they do in real life.

    QTest.qWait keeps the interpreter to itself while it waits. Threads that hand over to one
    another often, as those of a prediction do, come on ten times slower beside it.
    """
    loop = QEventLoop()
    QTimer.singleShot(ms, loop.quit)
    loop.exec()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)


class StandingClock(datetime):
    """A clock that stands still at `NOW`."""

    @classmethod
    def now(cls, tz: tzinfo | None = None) -> datetime:  # type: ignore[override]
        """Return the moment at which all pictures are taken."""
        return NOW.astimezone(tz) if tz is not None else NOW.replace(tzinfo=None)


def as_set_up(scheme: Scheme = Scheme.LIGHT, **more: Any) -> Settings:
    """Return settings in which nothing moves by itself."""
    return Settings(scheme=scheme, motion=Motion.REDUCED, **more)


@contextmanager
def home_of(folder: Path, settings: Settings) -> Iterator[None]:
    """Let everything the program keeps lie in a folder, with these settings."""
    config = folder / "config"
    kept = {
        "HOME": str(folder),
        "XDG_CONFIG_HOME": str(config),
        "XDG_DATA_HOME": str(folder / "data"),
        "XDG_STATE_HOME": str(folder / "state"),
        "XDG_CACHE_HOME": os.environ.get("XDG_CACHE_HOME", str(Path.home() / ".cache")),
        "TZ": "UTC",
    }
    write_settings(config / "stainmap" / NAME, settings)
    QSettings.setPath(QSettings.Format.IniFormat, QSettings.Scope.UserScope, str(config))
    authority = Path.home() / ".Xauthority"
    if "XAUTHORITY" not in os.environ and authority.is_file():
        kept["XAUTHORITY"] = str(authority)
    with mock.patch.dict(os.environ, kept):
        yield


class Hand:
    """Mouse and keys on one window of the program, and a camera before the screen.

    Every click, key press and typed field is counted: `steps`, with what each was for in `said`.
    """

    def __init__(self, window: MainWindow) -> None:
        self.window = window
        self.said: list[str] = []

    @property
    def steps(self) -> int:
        """How many clicks, key presses and typed fields there were."""
        return len(self.said)

    # --- waiting ---------------------------------------------------------------------------

    def wait(self, until: Callable[[], object], what: str, patience_s: float = _PATIENCE_S) -> None:
        """Let the program work until something has come."""
        end = time.monotonic() + patience_s
        while not until():
            if time.monotonic() > end:
                raise TimeoutError(f"It did not come: {what}. Done before: {self.said[-5:]}")
            let_work(15)

    def rest(self, ms: int = 50) -> None:
        """Let the program work for a moment."""
        let_work(ms)

    def settle(self, *, lit: bool = False) -> None:
        """Wait until nothing is computed any more and the picture stands still.

        With `lit` that includes the light in the grooves, which comes some seconds later.
        """
        session = self.window.session
        self.wait(lambda: session.job is None, "the end of the work")
        if session.case is not None and not self.window.flow.is_aside:
            self.wait(lambda: session.is_up_to_date, "the prediction")
            if lit:
                self.wait(lambda: session.shading is not None, "light in the grooves", 600.0)
        before = self.photograph()
        for _ in range(60):
            self.rest(_STILL_MS)
            now = self.photograph()
            if now == before:
                return
            before = now
        raise TimeoutError("The picture does not come to rest.")

    # --- the hand --------------------------------------------------------------------------

    def click(self, widget: QWidget, at: QPoint | None = None, what: str = "") -> None:
        """Click into a visible widget, in its middle if no other place is given."""
        place = widget.rect().center() if at is None else at
        if not widget.isVisible() or widget.visibleRegion().isEmpty():
            raise AssertionError(f"Nobody can click what cannot be seen: {_name(widget)} {what}")
        if not widget.isEnabled():
            raise AssertionError(f"{_name(widget)} is switched off.")
        self.said.append(f"click {what or _name(widget)}")
        QTest.mouseClick(widget, LEFT, NONE, place)
        QApplication.processEvents()

    def press(self, keys: str, widget: QWidget | None = None, what: str = "") -> None:
        """Press one key, with or without others held, where the keyboard is."""
        self.said.append(f"press {keys} {what}".rstrip())
        QTest.keySequence(widget or self.keyboard(), QKeySequence(keys))
        QApplication.processEvents()

    def type(self, words: str, widget: QWidget | None = None, what: str = "") -> None:
        """Type into the field that has the keyboard, in place of what stands there."""
        self.said.append(f"type {what or words}")
        field = widget or self.keyboard()
        if isinstance(field, QLineEdit):
            field.selectAll()
        QTest.keyClicks(field, words)
        QApplication.processEvents()

    def choose(self, box: QComboBox, words: str) -> None:
        """Choose a line of a box: a click on the box, a click on the line."""
        self.click(box)
        lines = box.view()
        self.wait(lines.isVisible, f"the lines of {_name(box)}")
        index = box.model().index(box.findText(words, Qt.MatchFlag.MatchStartsWith), 0)
        assert index.isValid(), f"{_name(box)} has no {words}"
        lines.scrollTo(index)
        # A box does not take a click that may still be part of the one that opened it.
        self.rest(QApplication.doubleClickInterval() + 50)
        self.click(lines.viewport(), lines.visualRect(index).center(), f"line {words}")

    def drag(self, widget: QWidget, *places: QPoint, what: str = "", button: Any = LEFT) -> None:
        """Draw from place to place with a button held."""
        self.said.append(f"drag {what or _name(widget)}")
        QTest.mousePress(widget, button, NONE, places[0])
        for start_, end in pairwise(places):
            for part in range(1, 7):
                QTest.mouseMove(widget, start_ + (end - start_) * (part / 6.0))
                self.rest(15)
        QTest.mouseRelease(widget, button, NONE, places[-1])
        QApplication.processEvents()

    def keyboard(self) -> QWidget:
        """Return what has the keyboard."""
        top = QApplication.activePopupWidget() or QApplication.activeModalWidget()
        if top is None:
            top = QApplication.activeWindow() or self.window
        return top.focusWidget() or top

    def menu(self, *way: str) -> None:
        """Choose an entry of the menus, by a click on each part of the way to it."""
        bar = self.window.top.menus
        action = _entry(bar.actions(), way[0])
        self.click(bar, bar.actionGeometry(action).center(), f"menu {way[0]}")
        menu = action.menu()
        for name in way[1:]:
            assert isinstance(menu, QMenu)
            shown = menu
            self.wait(shown.isVisible, f"the menu before {name}")
            action = _entry(shown.actions(), name)
            assert action.isEnabled(), f"{name} is switched off"
            self.click(shown, shown.actionGeometry(action).center(), f"entry {name}")
            menu = action.menu()

    def in_dialog(
        self, opens: Callable[[], object], works: Callable[[Any], object], what: str = "a dialog"
    ) -> None:
        """Open a dialog and work in it: what opens it goes on only once it is closed."""
        failed: list[BaseException] = []
        timer = self.when_dialog(works, failed)
        opens()
        self.wait(lambda: bool(failed) or not timer.isActive(), what)
        if failed:
            raise failed[0]
        if QApplication.activeModalWidget() is None:
            self.come_back()

    def come_back(self) -> None:
        """Have the keyboard in the program's own window: without a desktop nobody gives it back."""
        self.window.activateWindow()
        self.wait(self.window.isActiveWindow, "the keyboard in the window")

    def in_popup(self, opens: Callable[[], object], works: Callable[[], object]) -> None:
        """Open a menu whose button waits until it is closed, and work in it."""
        failed: list[BaseException] = []
        timer = QTimer(self.window, interval=40)

        def look() -> None:
            menu = QApplication.activePopupWidget()
            if menu is None or not menu.isVisible():
                return
            timer.stop()
            try:
                works()
            except BaseException as error:  # noqa: BLE001 - handed on below
                failed.append(error)
                menu.close()

        timer.timeout.connect(look)
        timer.start()
        opens()
        self.wait(lambda: bool(failed) or not timer.isActive(), "the menu")
        if failed:
            raise failed[0]

    def when_dialog(
        self, works: Callable[[Any], object], failed: list[BaseException] | None = None
    ) -> QTimer:
        """Work in the next dialog, once, as soon as it is open: whatever opens it waits for that.

        What goes wrong there is put into `failed`, or raised as Qt hands it on.
        """
        before = QApplication.activeModalWidget()
        timer = QTimer(self.window, interval=40)

        def look() -> None:
            dialog = QApplication.activeModalWidget()
            if dialog is None or dialog is before or not dialog.isVisible():
                return
            timer.stop()
            try:
                self.rest(80)
                works(dialog)
            except BaseException as error:
                if isinstance(dialog, QDialog):
                    dialog.reject()
                if failed is None:
                    raise
                failed.append(error)

        timer.timeout.connect(look)
        timer.start()
        return timer

    # --- the camera ------------------------------------------------------------------------

    def out_of_the_way(self) -> None:
        """Put the pointer where it points at nothing."""
        screen = QGuiApplication.primaryScreen().geometry()
        QCursor.setPos(screen.bottomRight() - QPoint(2, 2))
        QApplication.processEvents()

    def photograph(self, of: QWidget | None = None) -> QImage:
        """Return what the screen shows where a widget is: with all that lies over it."""
        widget = of or self.window
        corner = widget.mapToGlobal(QPoint(0, 0))
        screen = QGuiApplication.primaryScreen()
        picture = screen.grabWindow(0, corner.x(), corner.y(), widget.width(), widget.height())
        return picture.toImage().convertToFormat(QImage.Format.Format_RGB32)


@contextmanager
def started(
    home: Path,
    *files: Path,
    settings: Settings | None = None,
    size: tuple[int, int] = (1440, 900),
    sample: bool = True,
    at_dialog: Callable[[Hand, QWidget], object] | None = None,
) -> Iterator[Hand]:
    """Start the program as `stainmap FILE` does, and end it in the end without a question.

    Parameters
    ----------
    home
        Folder for everything it keeps.
    sample
        If not, the sample crown is left closed where no file is given.
    at_dialog
        What is done in a dialog that the start itself opens, the first time there is one.
    """
    dressed_application()
    caught: list[MainWindow] = []

    class Caught(MainWindow):
        def __init__(self, *arguments: Any) -> None:
            super().__init__(*arguments)
            self.resize(*size)
            self.move(0, 0)
            caught.append(self)

    endings: list[Ending] = []

    class Ended(Ending):
        def __init__(self, *arguments: Any) -> None:
            super().__init__(*arguments)
            endings.append(self)

    with (
        home_of(home, settings or as_set_up()),
        mock.patch.object(start, "MainWindow", Caught),
        mock.patch.object(plan_desk, "datetime", StandingClock),
        mock.patch.object(run_desk, "datetime", StandingClock),
        mock.patch.object(tray_desk, "datetime", StandingClock),
        mock.patch.object(coupon_dialog, "datetime", StandingClock),
        # What is fetched for later would go on after the end.
        mock.patch.object(start, "Warming"),
        mock.patch.object(start, "Ending", Ended),
        nullcontext() if sample or files else mock.patch.object(start, "_show_first"),
        mock.patch.object(QApplication, "exec", return_value=0),
    ):
        try:
            with _signals_as_they_were():
                start.run([str(file) for file in files])
                hand = Hand(caught[0])
                if at_dialog is not None:
                    hand.when_dialog(partial(at_dialog, hand))
                caught[0].activateWindow()
                hand.out_of_the_way()
                hand.wait(caught[0].isActiveWindow, "the window")
                yield hand
        finally:
            for ending in endings:
                for one in ending.findChildren(QSocketNotifier):
                    one.setEnabled(False)
                for socket in ending._socket or ():
                    socket.close()
            for window in caught:
                window.end_unasked()
                _let_threads_end()
                window.deleteLater()
                let_work(50)


def _let_threads_end() -> None:
    """Wait until nothing that is still worked on can speak to a window that has gone."""
    end = time.monotonic() + 20.0
    while time.monotonic() < end:
        let_work(30)
        if not any(one.name.startswith("stainmap_") for one in threading.enumerate()):
            return


@contextmanager
def _signals_as_they_were() -> Iterator[None]:
    """Take back what the window does about signals, once it has gone."""
    numbers = (signal.SIGTERM, signal.SIGHUP, signal.SIGINT)
    before = {number: signal.getsignal(number) for number in numbers}
    try:
        yield
    finally:
        signal.set_wakeup_fd(-1)
        for number, handler in before.items():
            signal.signal(number, handler)


def on_own_screen(module: str, main: Callable[[list[str]], int], screen: str = SCREEN) -> int:
    """Run a program of pictures on a virtual screen of its own, always of the same size."""
    if os.environ.get(_ON_OWN_SCREEN) == module:
        return main(sys.argv[1:])
    kept = {
        name: value
        for name, value in os.environ.items()
        if name not in ("DISPLAY", "QT_QPA_PLATFORM", "QT_SCALE_FACTOR", "STAINMAP_NO_GL")
    }
    command = ["xvfb-run", "-a", "-s", screen, sys.executable, "-m", module, *sys.argv[1:]]
    return subprocess.run(command, env=kept | {_ON_OWN_SCREEN: module}, check=False).returncode


def dressed_application() -> QApplication:
    """Return the application that all windows of one process share."""
    app = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(app, QApplication)
    return app


def _entry(actions: list[QAction], name: str) -> QAction:
    for action in actions:
        words = action.text().replace("&", "").rstrip(".")
        if words == name or words.startswith(f"{name} ") or words.endswith(name):
            return action
    raise LookupError(f"There is no {name} among {[one.text() for one in actions]}")


def _name(widget: QWidget) -> str:
    text = getattr(widget, "text", None)
    words = text() if callable(text) else ""
    return widget.accessibleName() or str(words) or type(widget).__name__
