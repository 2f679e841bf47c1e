"""The three patches in the window: drawn as told, and what was seen is kept and shown."""

from __future__ import annotations

import numpy as np
from PySide6.QtCore import QSettings
from pytestqt.qtbot import QtBot

from stainmap.app.display_check import DARK_CODES, EVEN_GREY, STEPS_L, TOOTH_LAB
from stainmap.ui.display_check_dialog import DisplayCheckDialog, DisplayDesk, kept_judgement
from stainmap.ui.look_bar import LookBar


def test_patches_hold_what_is_asked_about(qtbot: QtBot, settings: QSettings) -> None:
    dialog = DisplayCheckDialog(settings)
    qtbot.addWidget(dialog)
    lines = dialog.lines.pixels()
    edge = lines[:, 0, 0]
    assert sorted(np.unique(edge)) == [0, 255]
    # As many white rows as black ones: half the light.
    assert abs(int((edge == 255).sum()) - int((edge == 0).sum())) <= 1
    assert lines[lines.shape[0] // 2, lines.shape[1] // 2, 0] == EVEN_GREY
    dialog.grey.setValue(201)
    assert dialog.lines.pixels()[lines.shape[0] // 2, lines.shape[1] // 2, 0] == 201
    assert sorted(np.unique(dialog.dark.pixels())) == [0, *DARK_CODES]
    tooth = np.unique(dialog.tooth.pixels().reshape(-1, 3), axis=0)
    assert len(tooth) == 1 + len(STEPS_L)
    # L* by CIE 1976 from the luminance of IEC 61966-2-1.
    light = ((tooth / 255.0 + 0.055) / 1.055) ** 2.4 @ np.array([0.2126, 0.7152, 0.0722])
    lightness = np.sort(116.0 * np.cbrt(light) - 16.0)
    # Eight bits hold L* to about a fifth here.
    steps = np.sort(np.array([0.0, *STEPS_L])) + TOOTH_LAB[0]
    assert np.abs(lightness - steps).max() < 0.25


def test_what_was_seen_is_kept_and_shown(qtbot: QtBot, settings: QSettings) -> None:
    looks = LookBar()
    qtbot.addWidget(looks)
    desk = DisplayDesk(settings, looks, looks)
    menu = looks.light.menu()
    assert "not been judged" in menu.actions()[-1].text()
    dialog = DisplayCheckDialog(settings)
    qtbot.addWidget(dialog)
    dialog.grey.setValue(208)
    dialog.steps_seen.setValue(1)
    assert "darker" in dialog.verdict.text()
    dialog.reject()
    assert kept_judgement(settings) is None
    dialog.accept()
    kept = kept_judgement(settings)
    assert kept is not None
    assert (kept.grey, kept.steps_seen) == (208, 1)
    again = DisplayCheckDialog(settings)
    qtbot.addWidget(again)
    assert again.grey.value() == 208
    assert kept.in_short in again.when.text()
    desk._show()
    assert kept.in_short in menu.actions()[-1].text()
    assert not menu.actions()[-1].isEnabled()
