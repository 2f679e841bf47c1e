"""The crown keeps clear of the cards that lie on its view."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPoint, QPointF, QRect, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from stainmap.model.case import Case
from stainmap.model.tooth import Tooth
from stainmap.model.zone import Accent, Zone
from stainmap.surface.mesh import TriMesh
from stainmap.ui.case_figures import directions_of
from stainmap.ui.crown_cards import LegendRow
from stainmap.ui.crown_picture import Look
from stainmap.ui.crown_view import CrownView
from stainmap.ui.framing import free_part

ROWS = tuple(
    LegendRow(area=area, name=name, size_mm2=20.0)
    for area, name in (
        *((zone, zone.name.lower()) for zone in Zone),
        *((accent, "connector and embrasure") for accent in Accent),
    )
)


@pytest.fixture(autouse=True)
def _no_driver(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where things lie is the same with and without OpenGL."""
    monkeypatch.setenv("STAINMAP_NO_GL", "1")


@pytest.fixture
def wide(qtbot: QtBot, planned_case: Case) -> CrownView:
    """Return a view as in a window of 1600 x 1000, with something as long as a bridge in it."""
    one = CrownView()
    one.resize(820, 700)
    qtbot.addWidget(one)
    one.show()
    qtbot.waitExposed(one)
    one.zone_legend.set_rows(ROWS)
    mesh = planned_case.surface.mesh
    long = TriMesh(mesh.vertices * np.array([3.0, 1.0, 1.0]), mesh.faces)
    one.set_crown(long, directions_of(planned_case), Tooth(number=36))
    one.set_colours(np.full((mesh.vertex_count, 3), 180, np.uint8))
    one.set_zones(planned_case.zones, {})
    return one


def places(view: CrownView) -> np.ndarray:
    assert view.mesh is not None
    return view.camera.project(view.mesh.vertices, view.width(), view.height())[:, :2]


def is_clear(view: CrownView) -> bool:
    """Return True if all of the crown is seen, and no part of it under the legend."""
    at = places(view)
    low, high = at.min(axis=0), at.max(axis=0)
    inside = (low > 0).all() and high[0] < view.width() and high[1] < view.height()
    card = view.zone_legend.geometry()
    return bool(inside) and not any(card.contains(round(x), round(y)) for x, y in at)


def test_the_legend_does_not_cover_the_crown(wide: CrownView, qtbot: QtBot) -> None:
    before = wide.camera
    wide.set_look(Look.ZONES)
    assert wide.zone_legend.isVisible()
    qtbot.waitUntil(lambda: is_clear(wide), timeout=5000)
    # A legend that comes later, larger than before, is evaded as well.
    wide.resize(1100, 520)
    qtbot.waitUntil(lambda: is_clear(wide), timeout=5000)
    wide.resize(820, 700)
    # Without the legend the whole view is used again.
    wide.set_look(Look.SINTERED)
    qtbot.waitUntil(lambda: abs(wide.camera.height_mm - before.height_mm) < 1e-6, timeout=5000)


def test_what_was_zoomed_by_hand_stays_where_it_is(wide: CrownView, qtbot: QtBot) -> None:
    middle = QPoint(410, 350)
    event = QWheelEvent(
        QPointF(middle),
        QPointF(wide.mapToGlobal(middle)),
        QPoint(0, 0),
        QPoint(0, 360),
        Qt.MouseButton.NoButton,
        Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase,
        False,
    )
    QApplication.sendEvent(wide, event)
    before = wide.camera
    wide.set_look(Look.ZONES)
    qtbot.wait(250)
    assert wide.camera.height_mm == before.height_mm
    assert np.array_equal(wide.camera.target, before.target)
    # Home fits it again, beside the legend.
    wide.setFocus()
    QTest.keyClick(wide, Qt.Key.Key_Home)
    qtbot.waitUntil(lambda: is_clear(wide), timeout=5000)


@given(
    st.integers(0, 500),
    st.integers(0, 400),
    st.floats(0.2, 5.0),
)
def test_the_free_part_lies_beside_the_card_and_in_the_view(
    left: int, top: int, slimness: float
) -> None:
    card = QRect(left, top, 200, 150)
    x0, y0, x1, y1 = free_part(card, 800, 600, (slimness, 1.0))
    assert -1e-9 <= x0 < x1 <= 800 + 1e-9
    assert -1e-9 <= y0 < y1 <= 600 + 1e-9
    apart = x1 <= left or x0 >= left + 200 or y1 <= top or y0 >= top + 150
    assert apart
    assert (x1 - x0) / (y1 - y0) == pytest.approx(slimness)
