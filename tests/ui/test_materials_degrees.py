"""Temperatures of furnace programmes in the window of the materials, as the settings have them."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtWidgets import QTableWidgetItem
from pytestqt.qtbot import QtBot

from stainmap.app.materials import MaterialKind
from stainmap.app.materials_curves import plots_of
from stainmap.app.materials_fields import NODES
from stainmap.app.settings import Settings
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.material import SinteringProgramme
from stainmap.ui.main_window import MainWindow
from stainmap.ui.materials_degrees import expected, plot_in, shown, typed
from stainmap.ui.materials_editor import MaterialEditor
from stainmap.units import TemperatureUnit
from tests.ui.small_dome import small_planned_case

CELSIUS, FAHRENHEIT = TemperatureUnit.CELSIUS, TemperatureUnit.FAHRENHEIT


@pytest.fixture
def planned_case() -> Case:
    """Return a dome of few vertices: how it looks plays no part."""
    return small_planned_case()


@pytest.fixture
def editor(qtbot: QtBot) -> MaterialEditor:
    one = MaterialEditor()
    qtbot.addWidget(one)
    one.show_entry(programme(), starter_catalogue(), "", editable=True)
    return one


def programme() -> SinteringProgramme:
    return next(one for one in starter_catalogue().programmes if one.name == "slow")


def heads(editor: MaterialEditor) -> tuple[str, str, str]:
    """Return what stands before the start, over the targets, and before the last piece."""
    top, column = editor.numbers.verticalHeaderItem(0), editor.nodes.horizontalHeaderItem(0)
    row = editor.nodes.verticalHeaderItem(editor.nodes.rowCount() - 1)
    return top.text(), column.text(), row.text()


def last(editor: MaterialEditor) -> QTableWidgetItem:
    item = editor.nodes.item(editor.nodes.rowCount() - 1, 0)
    assert item is not None
    return item


def test_both_are_seen_and_celsius_is_typed(editor: MaterialEditor) -> None:
    start, target, piece = heads(editor)
    held = programme().segments[-1].target_c
    assert start.endswith(f"({FAHRENHEIT.text(programme().start_c)})")
    assert target == "To, °C"
    assert piece.endswith(FAHRENHEIT.text(held))
    assert float(last(editor).text()) == held


def test_fahrenheit_alone_is_seen_typed_and_kept_as_celsius(editor: MaterialEditor) -> None:
    editor.write_temperatures(FAHRENHEIT)
    start, target, piece = heads(editor)
    assert start == "Starts at, °F"
    assert target == "To, °F"
    assert "°" not in piece
    held = programme().segments[-1].target_c
    assert float(last(editor).text()) == pytest.approx(1.8 * held + 32.0)
    last(editor).setText("212")
    draft = editor.draft
    assert isinstance(draft, SinteringProgramme)
    assert draft.segments[-1].target_c == pytest.approx(100.0)
    last(editor).setText("hot")
    assert last(editor).text() == "212"
    editor.write_temperatures(CELSIUS)
    assert last(editor).text() == "100"


def test_limits_and_plot_are_in_the_degrees_that_are_typed() -> None:
    (target, _) = NODES[MaterialKind.PROGRAMME].columns
    assert expected(target, CELSIUS) == "0 to 1700"
    assert expected(target, FAHRENHEIT) == "32 to 3092"
    assert typed(target, shown(target, "1530", FAHRENHEIT), FAHRENHEIT) == "1530"
    (plot,) = plots_of(programme(), starter_catalogue())
    other = plot_in(plot, FAHRENHEIT)
    assert (plot.up, other.up) == ("°C", "°F")
    np.testing.assert_allclose(other.curves[0].up, 1.8 * plot.curves[0].up + 32.0)


def test_the_window_follows_the_settings(window: MainWindow) -> None:
    window.materials.open()
    view = window.materials.view
    assert view is not None
    view.editor.show_entry(programme(), starter_catalogue(), "", editable=False)
    assert heads(view.editor)[1] == "To, °C"
    window.own_settings.change(replace(Settings(), degrees=FAHRENHEIT))
    assert heads(view.editor)[1] == "To, °F"
    window.own_settings.change(Settings())
    view.close()
