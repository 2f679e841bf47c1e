"""A walk through all menus of the real window: every entry is triggered, every dialog looked at.

With STAINMAP_LOOK naming a folder, a picture of each dialog is left there, to be looked at.
"""

from __future__ import annotations

import os
from dataclasses import dataclass, field
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QEvent, Qt, QTimer
from PySide6.QtGui import QAction
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QCheckBox,
    QDockWidget,
    QFileDialog,
    QLabel,
    QMessageBox,
    QPushButton,
    QRadioButton,
    QSizePolicy,
    QWidget,
)
from shiboken6 import isValid

from stainmap.ui.coat_table import CoatTable
from stainmap.ui.key_map import entries_of
from stainmap.ui.main_window import MainWindow
from stainmap.ui.manual_places import place_for_dialog
from stainmap.ui.manual_window import ManualWindow
from tests.ui.accessible_tree import nameless

SMALLEST = (1024, 700)
_MOST_TABS = 120
_LOOK_EVERY_MS = 30


@dataclass(kw_only=True)
class Met:
    """A dialog or window that an entry has opened, and what is wrong with it.

    `least` is the smallest size it can have.
    """

    title: str
    kind: str
    least: tuple[int, int]
    nameless: list[str] = field(default_factory=list)
    unreached: list[str] = field(default_factory=list)
    unmarked: list[str] = field(default_factory=list)
    cut: list[str] = field(default_factory=list)
    unhelped: list[str] = field(default_factory=list)


@dataclass(kw_only=True)
class Entry:
    """What came of a menu entry."""

    words: str
    enabled: bool
    met: list[Met] = field(default_factory=list)
    changed: bool = False

    @property
    def did_something(self) -> bool:
        return self.changed or bool(self.met)


class Tour:
    """Triggers entries of one window, and closes by keys whatever they open."""

    def __init__(self, window: MainWindow) -> None:
        self.window = window
        self._met: list[Met] = []
        self._seen: set[int] = set()
        self._pressed: dict[int, int] = {}
        self._folder = os.environ.get("STAINMAP_LOOK", "")
        self._timer = QTimer()
        self._timer.setInterval(_LOOK_EVERY_MS)
        self._timer.timeout.connect(self._look)
        self._busy = False

    def trigger(self, words: str, action: QAction) -> Entry:
        """Trigger an entry and tell what came of it."""
        entry = Entry(words=words, enabled=action.isEnabled())
        before = state_of(self.window)
        self._met, self._seen, self._pressed = [], set(), {}
        self._timer.start()
        action.trigger()
        settle()
        self._close_windows()
        self._timer.stop()
        entry.met = self._met
        entry.changed = state_of(self.window) != before
        return entry

    def _look(self) -> None:
        """Look at the dialog that is open, and press Esc in it."""
        if self._busy:
            return
        self._busy = True
        try:
            popup = QApplication.activePopupWidget()
            if popup is not None:
                popup.close()
            dialog = QApplication.activeModalWidget()
            if dialog is None or not dialog.isVisible():
                return
            if id(dialog) not in self._seen:
                self._seen.add(id(dialog))
                self._met.append(self._looked_at(dialog))
            self._press_escape(dialog)
        finally:
            self._busy = False

    def _press_escape(self, dialog: QWidget) -> None:
        times = self._pressed[id(dialog)] = self._pressed.get(id(dialog), 0) + 1
        QTest.keyClick(dialog, Qt.Key.Key_Escape)
        if times > 5 and dialog.isVisible():
            self._met[-1].unreached.append("Esc does not close it")
            dialog.close()

    def _close_windows(self) -> None:
        """Close what stands beside the window, such as the manual."""
        for one in QApplication.topLevelWidgets():
            if not isValid(one):
                continue
            other = one.isVisible() and one.isWindow() and one is not self.window
            if other and not isinstance(one, QDockWidget) and one.windowTitle():
                if id(one) not in self._seen:
                    self._met.append(self._looked_at(one))
                QTest.keyClick(one, Qt.Key.Key_Escape)
                settle()
                if isValid(one) and one.isVisible():
                    one.close()

    def _looked_at(self, dialog: QWidget) -> Met:
        least = dialog.minimumSizeHint().expandedTo(dialog.minimumSize())
        met = Met(
            title=dialog.windowTitle(),
            kind=type(dialog).__name__,
            least=(least.width(), least.height()),
        )
        if self._folder:
            name = "".join(c if c.isalnum() else "_" for c in met.title or met.kind)
            dialog.grab().save(str(Path(self._folder) / f"{name}.png"))
        if not isinstance(dialog, (QFileDialog, QMessageBox)):
            met.nameless = nameless(dialog)
            met.cut = cut(dialog)
            met.unreached, met.unmarked = by_tab(dialog)
        if not isinstance(dialog, ManualWindow):
            met.unhelped = by_f1(dialog, self.window)
        return met


def commands_of(window: MainWindow) -> dict[str, QAction]:
    """Return all entries of the menus by the way there."""
    found: dict[str, QAction] = {}
    for top in window.top.menus.actions():
        menu = top.menu()
        found |= dict(entries_of(menu, top.text().replace("&", "")))  # type: ignore[arg-type]
    return found


def settle() -> None:
    """Let everything happen that has been asked for."""
    for _ in range(3):
        QApplication.processEvents()
        QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete.value)


def state_of(window: MainWindow) -> tuple[object, ...]:
    """Return what somebody in front of the window could tell apart."""
    camera = window.crown._camera
    shown = []
    for one in window.findChildren(QWidget):
        if one is window.run or not one.isVisible():
            continue
        text = one.text() if isinstance(one, (QAbstractButton, QLabel)) else ""
        checked = one.isChecked() if isinstance(one, QAbstractButton) else False
        shown.append((type(one).__name__, text, checked, one.accessibleDescription()))
    return (
        window.session.case,
        window.session.path,
        window.session.seen,
        window.windowTitle(),
        window.isVisible(),
        repr(camera),
        window.crown.look,
        QApplication.palette().window().color().name(),
        QApplication.clipboard().text(),
        tuple(action.isChecked() for action in commands_of(window).values()),
        tuple(shown),
    )


# --- what is cut off -----------------------------------------------------------------------------


def cut(top: QWidget) -> list[str]:
    """Return labels and buttons whose words have less room than they need.

    Labels that let themselves be squeezed (`Ignored`) say the whole in a tool tip.
    """
    found = []
    for one in top.findChildren(QWidget):
        if not one.isVisible() or one.visibleRegion().isEmpty():
            continue
        if isinstance(one, QLabel) and not one.pixmap().isNull():
            continue
        if isinstance(one, QLabel):
            squeezed = one.sizePolicy().horizontalPolicy() is QSizePolicy.Policy.Ignored
            if one.wordWrap():
                short = one.heightForWidth(one.width()) > one.height() + 1
            else:
                short = one.sizeHint().width() > one.width() + 1 and not squeezed
            if one.text() and short:
                found.append(f"{type(one).__name__} '{one.text()}'")
        elif isinstance(one, (QPushButton, QCheckBox, QRadioButton)) and (
            one.sizeHint().width() > one.width() + 1
        ):
            found.append(_named(one))
    return found


# --- the manual ----------------------------------------------------------------------------------


def by_f1(dialog: QWidget, window: MainWindow) -> list[str]:
    """Return what is wrong with the manual that F1 opens beside a dialog, and leave the dialog."""
    dialog.activateWindow()
    _has_come_up(dialog)
    QTest.keyClick(dialog.focusWidget() or dialog, Qt.Key.Key_F1)
    manual = next((one for one in window.findChildren(ManualWindow) if one.isVisible()), None)
    if manual is None:
        return ["F1 opens nothing"]
    found = []
    if not _has_come_up(manual):
        found.append("the manual does not get the keyboard")
    page = place_for_dialog(dialog, window).split("#")[0]
    if manual.text.page.name != page:
        found.append(f"F1 opens {manual.text.page.name}, not {page}")
    # A click on the window as the desktop sends it: what a dialog blocks does not get it.
    manual.text.setFocus()
    words = manual.bar.words
    place = words.mapTo(manual, words.rect().center())
    button, none = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    QTest.mouseClick(manual.windowHandle(), button, none, place)
    if not manual.bar.words.hasFocus():
        found.append("the manual cannot be used")
    QTest.keyClick(manual, Qt.Key.Key_Escape)
    settle()
    if manual.isVisible() or not dialog.isVisible():
        found.append("Esc does not lead from the manual back to the dialog")
    if not _has_come_up(dialog):
        found.append("the dialog does not get the keyboard back")
    return found


def _has_come_up(window: QWidget) -> bool:
    """Wait until a window is the active one; what belongs to it counts as active by itself."""
    for _ in range(250):
        if QApplication.activeWindow() is window:
            return True
        QTest.qWait(20)
    return False


# --- the keyboard --------------------------------------------------------------------------------


def takes_tab(widget: QWidget) -> bool:
    """Return True if Tab is to lead to a widget."""
    policy = widget.focusPolicy()
    return bool(policy & Qt.FocusPolicy.TabFocus) and widget.isVisible() and widget.isEnabled()


def by_tab(top: QWidget) -> tuple[list[str], list[str]]:
    """Return the widgets that Tab does not lead to, and those that look alike with the focus."""
    top.activateWindow()
    QTest.qWaitForWindowActive(top, 5000)
    if top.focusWidget() is None:
        QTest.keyClick(top, Qt.Key.Key_Tab)
    wanted = [one for one in top.findChildren(QWidget) if takes_tab(one) and one.window() is top]
    # One of a group is enough: arrows lead to the others; so in a list.
    wanted = [one for one in wanted if not isinstance(one.parentWidget(), QAbstractItemView)]
    wanted = [one for one in wanted if not _is_by_arrows(one)]
    wanted = [one for one in wanted if one.focusProxy() is None]
    reached: set[int] = set()
    unmarked = []
    start = top.focusWidget()
    for _ in range(min(4 * len(wanted) + 8, _MOST_TABS)):
        # That of the window: without a window manager another may be the active one.
        here = top.focusWidget()
        if here is not None:
            seen = top.isActiveWindow() and not here.visibleRegion().isEmpty()
            seen = seen and not _is_by_arrows(here)
            if seen and id(here) not in reached and not _shows_focus(here):
                unmarked.append(_named(here))
            reached |= {id(here), *(id(above) for above in _above(here, top))}
        if isinstance(here, CoatTable):
            # Tab goes from cell to cell there, and on from the last one.
            model = here.model()
            here.setCurrentIndex(model.index(model.rowCount() - 1, model.columnCount() - 1))
        QTest.keyClick(here if here is not None else top, Qt.Key.Key_Tab)
        if all(id(one) in reached for one in wanted):
            break
    if start is not None:
        start.setFocus()
    return [_named(one) for one in wanted if id(one) not in reached], unmarked


def _is_by_arrows(widget: QWidget) -> bool:
    """Return True for one of a group of buttons that is not on: arrows lead to it."""
    if not isinstance(widget, QAbstractButton) or widget.isChecked():
        return False
    group = widget.group()
    return (group is not None and group.exclusive()) or (
        isinstance(widget, QRadioButton) and widget.autoExclusive()
    )


def _above(widget: QWidget, top: QWidget) -> list[QWidget]:
    """Return what a widget is the inside of, such as the field that a line edit belongs to."""
    found = []
    parent = widget.parentWidget()
    while parent is not None and parent is not top:
        if parent.focusProxy() is widget:
            found.append(parent)
        parent = parent.parentWidget()
    return found


def _shows_focus(widget: QWidget) -> bool:
    """Return True if a widget looks otherwise once the keyboard has left it."""
    widget.setFocus(Qt.FocusReason.TabFocusReason)
    with_focus = widget.grab().toImage()
    widget.clearFocus()
    without = widget.grab().toImage()
    widget.setFocus(Qt.FocusReason.TabFocusReason)
    return with_focus != without


def _named(widget: QWidget) -> str:
    text = widget.text() if isinstance(widget, QAbstractButton) else ""
    return f"{type(widget).__name__} '{widget.accessibleName() or text or widget.objectName()}'"
