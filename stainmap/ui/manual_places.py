"""Which place of the manual speaks of the part of the window that has the keyboard."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

if TYPE_CHECKING:
    from stainmap.ui.main_window import MainWindow


def open_by_f1(beside: QWidget, place: str) -> None:
    """Let F1 open a place of the manual from a window that stands beside the program's own."""

    def show() -> None:
        owner = beside.parentWidget()
        commands = None if owner is None else getattr(owner.window(), "commands", None)
        if commands is not None:
            commands.show_manual(place)

    QShortcut(QKeySequence("F1"), beside, show)


def place_for(focus: QWidget | None, window: MainWindow) -> str:
    """Return page and section for a widget of the window; without one, the contents."""
    from stainmap.ui.manual_search import CONTENTS  # noqa: PLC0415

    places: dict[QWidget, str] = {
        window.plan.table: "plan.md#the-coat-table",
        window.plan.brush: "zones_and_accents.md#the-brush",
        window.plan.unit: "first_plan.md",
        window.crown: "zones_and_accents.md",
        window.flat_pane: "zones_and_accents.md#flat-views",
        window.looks: "what_it_predicts.md#looks-and-lights",
        window.outcome.advice: "plan.md#advice",
        window.outcome: "what_it_predicts.md#the-outcome",
        window.run: "plan.md#the-run",
        **window.ways.manual_places,
    }
    while focus is not None:
        if focus in places:
            return places[focus]
        focus = focus.parentWidget()
    return CONTENTS
