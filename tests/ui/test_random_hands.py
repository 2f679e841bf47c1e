"""Random actions with mouse, keys and menus: nothing raises, undo and redo hold.

Sixty of them in every run, 200 (or STAINMAP_RUNS) with STAINMAP_MORE=1.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator

import numpy as np
import pytest
from PySide6.QtCore import QPoint, QSettings, Qt, QTimer
from PySide6.QtGui import QAction
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QApplication,
    QDialog,
    QFileDialog,
    QLineEdit,
    QMenu,
    QMessageBox,
    QWidget,
)
from pytestqt.qtbot import QtBot

from stainmap.app.job import JobRunner
from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.zone import Accent, Zone
from stainmap.ui.main_window import MainWindow
from tests.app.session_moves import HeldRunner, digest, planned

LEFT, RIGHT = Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton
NONE, SHIFT = Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.ShiftModifier
MORE = bool(os.environ.get("STAINMAP_MORE"))
ACTIONS = int(os.environ.get("STAINMAP_RUNS", "200")) if MORE else 60
# They leave the window, or open another one.
LEFT_OUT = ("Quit", "Open", "Recent", "practice", "Practice", "pack", "exercise", "Exercise")
# They take seconds each; every entry of the menus is chosen elsewhere too.
if not MORE:
    LEFT_OUT += ("Suggest", "sheets", "film", "Film", "Compare", "lights", "point", "Manual")
KEYS = "peg[]fcgsxtrobldmi+-0123456789"


class Hands:
    """Works the window as somebody who does not know what they do."""

    def __init__(self, window: MainWindow, seed: int) -> None:
        self.window, self.rng = window, np.random.default_rng(seed)
        self.done: list[str] = []
        self.actions: tuple[Callable[[], None], ...] = (
            *(self.type_coat,) * 4,
            *(self.paint,) * 4,
            self.turn,
            *(self.press_key,) * 4,
            *(self.choose_from_menu,) * 4,
            self.click_somewhere,
            *(self.undo,) * 2,
            self.redo,
        )

    def below(self, count: int) -> int:
        return int(self.rng.integers(count))

    def act(self) -> None:
        action = self.actions[self.below(len(self.actions))]
        self.done.append(action.__name__)
        # Whatever dialog opens is answered at once: accepted or refused.
        accept = bool(self.rng.random() < 0.5)
        closing = QTimer(self.window)
        closing.timeout.connect(lambda: self._answer(accept=accept))
        closing.start(30)
        action()
        QApplication.processEvents()
        self._answer(accept=False)
        closing.stop()
        closing.deleteLater()

    def _answer(self, *, accept: bool) -> None:
        dialog = QApplication.activeModalWidget()
        popup = QApplication.activePopupWidget()
        if popup is not None:
            popup.close()
        if isinstance(dialog, QDialog):
            dialog.accept() if accept and not isinstance(dialog, QMessageBox) else dialog.reject()

    def _place(self) -> QPoint:
        view = self.window.crown
        spread = 0.6 * self.rng.random(2) + 0.2
        return QPoint(int(spread[0] * view.width()), int(spread[1] * view.height()))

    def _choose_row(self) -> None:
        table, plan = self.window.plan.table, self.window.session.case
        areas = (*Zone, *Accent)
        area = areas[self.below(len(areas))]
        if plan is not None and plan.plan.steps and self.rng.random() < 0.6:
            table.select_cell(self.below(len(plan.plan.steps)), area)
        else:
            table.select_row(area)

    def type_coat(self) -> None:
        self._choose_row()
        table = self.window.plan.table
        table.setFocus()
        QTest.keyClicks(table, ("0", "1", "2", "3", "+", "-")[self.below(6)])
        for line in table.findChildren(QLineEdit):
            QTest.keyClicks(line, ("", "-3", "x")[self.below(3)])
            QTest.keyClick(line, Qt.Key.Key_Return)
            break

    def paint(self) -> None:
        self._choose_row()
        view, start = self.window.crown, self._place()
        QTest.mousePress(view, LEFT, NONE, start)
        for _ in range(self.below(4)):
            start += QPoint(self.below(21) - 10, self.below(21) - 10)
            QTest.mouseMove(view, start)
        if self.rng.random() < 0.2:
            QTest.keyClick(view, Qt.Key.Key_Escape)
        QTest.mouseRelease(view, LEFT, NONE, start)

    def turn(self) -> None:
        view, start = self.window.crown, self._place()
        QTest.mousePress(view, RIGHT, NONE, start)
        QTest.mouseMove(view, start + QPoint(self.below(80), self.below(80)))
        QTest.mouseRelease(view, RIGHT, NONE, start)

    def press_key(self) -> None:
        target = (self.window.crown, self.window.plan.table)[self.below(2)]
        target.setFocus()
        self.done[-1] = f"key {(key := KEYS[self.below(len(KEYS))])}"
        QTest.keyClick(target, key, (NONE, SHIFT)[self.below(2)])
        if self.rng.random() < 0.3:
            QTest.keyClick(target, Qt.Key.Key_Escape)

    def choose_from_menu(self) -> None:
        found = [one for one in _entries(self.window) if one.isEnabled()]
        action = found[self.below(len(found))]
        self.done[-1] = f"menu {action.text()}"
        action.trigger()

    def click_somewhere(self) -> None:
        parts: list[QWidget] = [
            self.window.plan,
            self.window.outcome,
            self.window.run,
            self.window.looks,
        ]
        part = parts[self.below(len(parts))]
        place = QPoint(self.below(max(part.width(), 1)), self.below(max(part.height(), 1)))
        widget = part.childAt(place) or part
        QTest.mouseClick(widget, LEFT, NONE, widget.mapFrom(part, place))

    def undo(self) -> None:
        QTest.keySequence(self.window, "Ctrl+Z")

    def redo(self) -> None:
        QTest.keySequence(self.window, "Ctrl+Shift+Z")


def _entries(window: MainWindow) -> Iterator[QAction]:
    waiting = [one.menu() for one in window.top.menus.actions()]
    while waiting:
        menu = waiting.pop()
        if not isinstance(menu, QMenu) or any(word in menu.title() for word in LEFT_OUT):
            continue
        for action in menu.actions():
            if action.menu() is not None:
                waiting.append(action.menu())
            elif not action.isSeparator() and not any(
                word in action.text().replace("&", "") for word in LEFT_OUT
            ):
                yield action


def test_random_hands(qtbot: QtBot, settings: QSettings, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("STAINMAP_NO_GL", "1")
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *_a, **_k: ("", ""))
    monkeypatch.setattr(QFileDialog, "getOpenFileName", lambda *_a, **_k: ("", ""))
    monkeypatch.setattr(QFileDialog, "getExistingDirectory", lambda *_a, **_k: "")
    monkeypatch.setattr(QMessageBox, "question", lambda *_a: QMessageBox.StandardButton.Cancel)
    monkeypatch.setattr(QMessageBox, "warning", lambda *_a: QMessageBox.StandardButton.Cancel)
    session = Session(starter_catalogue(), threaded=False)
    predictions = HeldRunner()
    session._predicting._jobs = predictions
    window = MainWindow(session, settings, JobRunner(threaded=False))
    window.resize(1200, 800)
    case = planned()
    qtbot.addWidget(window, before_close_func=lambda _: session.adopt(case, path=None, saved=True))
    window.show()
    qtbot.waitExposed(window)
    session.adopt(case, path=None, saved=True)
    predictions.let_go()
    before = digest(case)
    hands = Hands(window, 8)
    try:
        for number in range(ACTIONS):
            hands.act()
            if number % 8 == 0:
                predictions.let_go()
            assert session.case is not None
    except Exception as error:
        error.add_note(f"last actions: {', '.join(hands.done[-8:])}")
        raise
    # A field that is being typed into takes Ctrl+Z for itself, and so does another window.
    for other in QApplication.topLevelWidgets():
        if other is not window and other.isVisible():
            other.close()
    window.activateWindow()
    window.crown.setFocus()
    QTest.keyClick(window.crown, Qt.Key.Key_Escape)
    assert not session.is_painting
    history = session.history
    assert history is not None
    assert len(history.entries) > ACTIONS // 20, "hardly anything was done"
    last, after = history.entries[-1].case, digest(history.entries[-1].case)
    while window.commands.undo.isEnabled():
        window.commands.undo.trigger()
    assert session.case is case, (
        f"undo {window.commands.undo.isEnabled()}, aside {window.flow.is_aside}, "
        f"focus {QApplication.focusWidget()}, at {session.history.position}"
    )
    assert digest(case) == before
    while window.commands.redo.isEnabled():
        window.commands.redo.trigger()
    assert session.case is last
    assert digest(last) == after
