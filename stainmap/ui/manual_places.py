"""Which place of the manual speaks of a part of the window, or of a dialog."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog, QWidget

if TYPE_CHECKING:
    from stainmap.ui.main_window import MainWindow

# A dialog that is used for several things says by this property which of them it is about.
PLACE = "manual_place"

BEHIND, READ = "plan.md#what-surrounds-the-coats", "first_plan.md#see-how-it-was-read"
_WANTED = "plan.md#what-is-wanted-and-the-intake-page"
_FILE = "sheets.md#the-case-file"

# By the name of its class, so that none has to be loaded to be looked up.
_DIALOGS = {
    "AfterDialog": BEHIND,
    "BackingDialog": BEHIND,
    "BenchDialog": "bridge.md#tray",
    "CompareWindow": "comparing.md#two-plans-side-by-side",
    "CouponDialog": "calibration.md#a-blank-coupon-of-the-furnace",
    "DisplayCheckDialog": "what_it_predicts.md#looks-and-lights",
    "DryingDialog": "plan.md#the-run",
    "EyeDialog": "practice.md#the-score",
    "FurnaceDialog": "plan.md#the-run",
    "IntakeDialog": _WANTED,
    "LightsDialog": "what_it_predicts.md#looks-and-lights",
    "MapDialog": "practice.md#what-there-is",
    "MaterialsWindow": "materials.md",
    "MixingDialog": "plan.md#jars",
    "OrderDialog": "plan.md#the-run",
    "PhotographDialog": _WANTED,
    "PracticeList": "practice.md#begin",
    "ProcessDialog": BEHIND,
    "ReadingDialog": READ,
    "RecoveryDialog": _FILE,
    "RepeatsDialog": "practice.md#packs-and-the-instructors-sheet",
    "RowDialog": "what_it_predicts.md#in-the-row",
    "SectionWindow": "what_it_predicts.md#section",
    "SettingsDialog": "settings.md",
    "SheetPreview": "sheets.md#the-sheets",
    "SlipsDialog": "practice.md#slips",
    "StreaksDialog": "zones_and_accents.md#tools",
    "SuggestDialog": "plan.md#suggest-coats",
    "TabTableDialog": _WANTED,
    "TeethDialog": READ,
    "TrayDialog": "bridge.md#tray",
    "WantedDialog": _WANTED,
    "WhatIfDialog": BEHIND,
}


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


def place_for_dialog(dialog: QWidget, window: MainWindow) -> str:
    """Return page and section for a dialog, or for a window beside the program's own.

    A question that another dialog asks belongs to that one; file dialogs and messages over the
    window itself are about opening and keeping cases.
    """
    above: QWidget | None = dialog
    while above is not None and above is not window:
        if said := above.property(PLACE):
            return str(said)
        for kind in type(above).__mro__:
            if kind.__name__ in _DIALOGS:
                return _DIALOGS[kind.__name__]
        above = above.parentWidget()
    opens = isinstance(dialog, QFileDialog) and (
        dialog.acceptMode() is QFileDialog.AcceptMode.AcceptOpen
    )
    return "first_plan.md#open-a-crown" if opens else _FILE
