"""The parts of the window, one after another by a key, also where one is folded under another."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QDockWidget, QWidget

if TYPE_CHECKING:
    from stainmap.ui.main_window import MainWindow


def go_to_next_part(window: MainWindow, step: int = 1) -> None:
    """Take the keyboard to the next part (or with -1 to the one before) that is open.

    Plan, crown, outcome and run; one that lies under another comes to the top.
    """
    parts: list[tuple[QDockWidget | None, QWidget]] = [
        (window.plan_dock, window.plan),
        (None, window.crown),
        (window.outcome_dock, window.outcome),
        (window.run_dock, window.run),
    ]
    # A dock that was closed stays closed; a folded one is only hidden by the other.
    parts = [(dock, part) for dock, part in parts if dock is None or not dock.isHidden()]
    focus = window.focusWidget()
    here = next(
        (k for k, (_, part) in enumerate(parts) if focus is part or part.isAncestorOf(focus)),
        -1 if step > 0 else 0,
    )
    dock, part = parts[(here + step) % len(parts)]
    if dock is not None:
        dock.raise_()
    target = window.plan.table if part is window.plan else _first_in(part)
    target.setFocus(Qt.FocusReason.ShortcutFocusReason)


def raise_with_focus(window: MainWindow) -> None:
    """Let a panel that lies under another come to the top once Tab leads the keyboard into it."""
    app = QApplication.instance()
    if not isinstance(app, QApplication):
        return

    def follow(_before: QWidget | None, now: QWidget | None) -> None:
        if now is None or now.window() is not window:
            return
        for dock in (window.plan_dock, window.outcome_dock):
            if dock.isAncestorOf(now) and now.visibleRegion().isEmpty():
                dock.raise_()

    app.focusChanged.connect(follow)
    window.destroyed.connect(lambda: app.focusChanged.disconnect(follow))


def _first_in(part: QWidget) -> QWidget:
    """Return what the keyboard comes to first in a part."""
    if part.focusPolicy() & Qt.FocusPolicy.TabFocus:
        return part
    one = part.nextInFocusChain()
    while one is not None and one is not part:
        takes = one.focusPolicy() & Qt.FocusPolicy.TabFocus
        if part.isAncestorOf(one) and takes and one.isEnabled() and not one.isHidden():
            return one
        one = one.nextInFocusChain()
    return part
