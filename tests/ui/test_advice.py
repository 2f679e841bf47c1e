"""The list of advice, and the way from a sentence to its place on the crown."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from stainmap.app import edits
from stainmap.model.advice_limits import AdviceLimit, Mark
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Zone
from stainmap.planning.advice_value import Advice, Place, Severity
from stainmap.ui.advice_panel import AdvicePanel, AdviceRow, counted, kept_together
from stainmap.ui.flat_pane import FlatChoice
from stainmap.ui.main_window import MainWindow

LIMIT = AdviceLimit(
    name="connector_back", value=9.0, unit="mm2", mark=Mark.FROM_MEMORY, source="Usual guidance."
)
PLACE = Place(
    vertices=np.array([3, 5], np.int32), point_mm=(0.0, 0.0, 5.0), toward_eye=(0.0, 0.0, 1.0)
)
SMALL = Advice(
    rule="connector",
    sentence="Connector 15-14: 8.1 mm².",
    severity=Severity.SETTLE,
    remedy="Make it larger.",
    figure=8.1,
    limit=LIMIT,
    place=PLACE,
)
LOT = Advice(rule="lot missing", sentence="No lot is noted.", severity=Severity.NOTE)


@pytest.fixture
def panel(qtbot: QtBot) -> AdvicePanel:
    one = AdvicePanel()
    one.resize(312, 300)
    qtbot.addWidget(one)
    one.set_advice((SMALL, LOT))
    one.show()
    qtbot.waitExposed(one)
    return one


def test_a_row_says_limit_and_source_when_it_is_opened(panel: AdvicePanel) -> None:
    first = panel.rows[0]
    assert panel.head.remark.text() == "1 to settle, 1 noted"
    assert not first.is_open
    QTest.mouseClick(first, Qt.MouseButton.LeftButton)
    assert first.is_open
    detail = first.detail.text().replace("\N{NO-BREAK SPACE}", " ")
    assert detail == "Make it larger. Limit: 9 mm². Usual guidance (from memory)."
    assert "from memory" in first.toolTip()
    QTest.mouseClick(first, Qt.MouseButton.LeftButton)
    assert not first.is_open


def test_only_what_has_a_place_can_be_shown(panel: AdvicePanel) -> None:
    asked: list[Advice] = []
    panel.show_asked.connect(asked.append)
    first, second = panel.rows
    assert first.show_me.isVisible()
    assert not second.show_me.isVisible()
    QTest.mouseClick(first.show_me, Qt.MouseButton.LeftButton)
    QTest.keyClick(second, Qt.Key.Key_Return)
    assert asked == [SMALL]


def test_the_keyboard_goes_up_and_down_opens_and_shows(panel: AdvicePanel) -> None:
    asked: list[Advice] = []
    panel.show_asked.connect(asked.append)
    first, second = panel.rows
    first.setFocus()
    QTest.keyClick(first, Qt.Key.Key_Down)
    assert panel.focusWidget() is second
    QTest.keyClick(second, Qt.Key.Key_Down)
    assert panel.focusWidget() is second
    QTest.keyClick(second, Qt.Key.Key_Up)
    QTest.keyClick(first, Qt.Key.Key_Space)
    assert first.is_open
    QTest.keyClick(first, Qt.Key.Key_Enter)
    assert asked == [SMALL]


def test_what_is_open_stays_open_until_it_says_something_else(panel: AdvicePanel) -> None:
    first: AdviceRow = panel.rows[0]
    first.open_detail(True)
    panel.set_advice((SMALL, LOT), SMALL)
    assert first.is_open
    assert first.show_me.text() == "unmark"
    panel.set_advice((replace(SMALL, sentence="Connector 15-14: 8.0 mm²."),))
    assert not first.is_open
    assert panel.rows[1].isHidden()


def test_words_for_none_and_for_all() -> None:
    assert counted(()) == ""
    check = replace(LOT, severity=Severity.CHECK)
    assert counted((SMALL, check, check, LOT)) == "1 to settle, 2 to check, 1 noted"
    nb = "\N{NO-BREAK SPACE}"
    assert kept_together("9 mm² of 14") == f"9{nb}mm² of 14"
    assert kept_together("up to 3.1 dE00, 2.3 L*") == f"up to 3.1{nb}dE00, 2.3{nb}L*"


# --- in the window -----------------------------------------------------------------------


def said(window: MainWindow, rule: str) -> Advice:
    prediction = window.session.prediction
    assert prediction is not None
    return next(one for one in prediction.advice if one.rule == rule)


def test_show_me_turns_the_crown_and_marks_the_place(window: MainWindow, qtbot: QtBot) -> None:
    window.session.edit(
        "too many", lambda case: edits.with_coats(case, 0, Zone.CUSP, CoatSpan.exactly(9))
    )
    advice = said(window, "more coats than taken up")
    panel = window.outcome.advice
    row = next(one for one in panel.rows if one.advice is advice)
    QTest.keyClick(row, Qt.Key.Key_Return)
    assert window.advice.shown is advice
    place = advice.place
    assert place is not None
    overlay = window.crown.overlay
    assert overlay.found is not None
    assert len(overlay.found.pieces) > 20
    assert overlay.found.start == pytest.approx(place.point_mm)
    toward = np.array(place.toward_eye)
    # The turn is animated.
    qtbot.waitUntil(lambda: window.crown.camera.axes[2] @ toward > 0.99, timeout=30_000)
    # The same advice of the next prediction stays marked, and goes when it is followed.
    window.session.edit(
        "fewer", lambda case: edits.with_coats(case, 0, Zone.CUSP, CoatSpan.exactly(8))
    )
    assert window.advice.shown is said(window, "more coats than taken up")
    window.session.edit(
        "few", lambda case: edits.with_coats(case, 0, Zone.CUSP, CoatSpan.exactly(1))
    )
    assert window.advice.shown is None
    assert overlay.found is None


def test_show_me_again_hides_the_mark_and_so_does_another_crown(window: MainWindow) -> None:
    window.session.edit(
        "too many", lambda case: edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(9))
    )
    advice = said(window, "more coats than taken up")
    window.advice.show_or_hide(advice)
    assert window.crown.overlay.found is not None
    window.advice.show_or_hide(advice)
    assert window.crown.overlay.found is None
    window.advice.show_or_hide(advice)
    case = window.session.case
    assert case is not None
    window.session.adopt(case, path=None, saved=True)
    assert window.advice.shown is None
    assert window.crown.overlay.found is None


def test_advice_is_hidden_in_the_case_and_shown_again(window: MainWindow) -> None:
    panel, session = window.outcome.advice, window.session
    before = len(panel.rows[0].advice.sentence) if panel.rows and panel.rows[0].advice else 0
    assert before, "the crown of these tests has advice"
    first = panel.rows[0].advice
    assert first is not None
    count = sum(not row.isHidden() for row in panel.rows)
    QTest.keyClick(panel.rows[0], Qt.Key.Key_Delete)
    case = session.case
    assert case is not None
    assert case.hidden_advice == (first.key,)
    assert sum(not row.isHidden() for row in panel.rows) == count - 1
    assert all(row.advice is None or row.advice.key != first.key for row in panel.rows[: count - 1])
    assert panel.all.text() == "1 hidden: show again"
    assert session.is_up_to_date
    session.undo()
    assert sum(not row.isHidden() for row in panel.rows) == count
    session.redo()
    panel.all.click()
    assert session.case is not None
    assert session.case.hidden_advice == ()
    assert panel.all.isHidden()
    assert sum(not row.isHidden() for row in panel.rows) == count


def test_the_link_below_an_opened_row_hides_it_too(panel: AdvicePanel) -> None:
    asked: list[Advice] = []
    panel.hide_asked.connect(asked.append)
    first = panel.rows[0]
    assert not first.put_aside.isVisible()
    first.open_detail(True)
    QTest.mouseClick(first.put_aside, Qt.MouseButton.LeftButton)
    assert asked == [SMALL]
    panel.set_advice((), hidden=2)
    assert panel.nothing.text() == "Nothing else to say about this plan."
    assert panel.all.text() == "2 hidden: show again"


def test_the_place_is_marked_on_the_flat_views_too(window: MainWindow, qtbot: QtBot) -> None:
    window.session.edit(
        "too many", lambda case: edits.with_coats(case, 0, Zone.CUSP, CoatSpan.exactly(9))
    )
    window.flats.switch(True)
    rosette = window.flat_pane.views[FlatChoice.ROSETTE]
    above = window.flat_pane.views[FlatChoice.OCCLUSAL]
    qtbot.waitUntil(lambda: rosette.is_ready and above.is_ready, timeout=30_000)
    assert rosette.found is None
    advice = said(window, "more coats than taken up")
    window.advice.show_or_hide(advice)
    place = advice.place
    assert place is not None
    case = window.session.case
    assert case is not None
    for view in (rosette, above):
        assert view.found is not None
        pieces, _ = view.found
        assert len(pieces) > 20
        picture = view.picture
        assert picture is not None
        # Each piece runs between a vertex inside and one outside: half-way along an edge.
        inside = np.zeros(case.surface.mesh.vertex_count, dtype=bool)
        inside[place.vertices] = True
        drawn = picture.places[inside[picture.sheet.vertices]]
        gap = np.linalg.norm(pieces.mean(axis=1)[:, None] - drawn[None], axis=2).min(axis=1)
        assert gap.max() < 2.0 * picture._edge_px
    window.advice.show_or_hide(advice)
    assert rosette.found is None
    assert above.found is None
