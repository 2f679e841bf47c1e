"""From the hand to the picture: a stroke over a crown of 100,000 vertices, 900 x 900 pixels.

By the graphics driver; a software driver if there is no other. The same stroke is drawn several
times and each of its moves counts as its least disturbed. Processor time of all threads: a
software driver draws with several, so that what a person waits for is at most as much.
"""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Iterator

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.zone import Zone
from stainmap.predict.shape import CrownShape
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_view import CrownView
from stainmap.ui.gl_canvas import GlCanvas
from stainmap.ui.gl_painter import has_gl

pytestmark = [
    pytest.mark.benchmark,
    pytest.mark.skipif(not os.environ.get("STAINMAP_MORE"), reason="long; set STAINMAP_MORE=1"),
]

# Wanted: 16 ms of our own, the picture there after 33 ms (60 in one of twenty). Not reached: a dab
# on a patch that is cut anew takes longer. Found: 46 to 73 and 83 to 117 ms.
OWN_FOUND_MS, SEEN_FOUND_MS = 110.0, 175.0
ROUNDS, MOVES, PATIENCE_S = 4, 24, 5.0
NO_KEYS, NO_BUTTON = Qt.KeyboardModifier.NoModifier, Qt.MouseButton.NoButton
LEFT = Qt.MouseButton.LeftButton


@pytest.fixture(scope="module")
def desk(qapp: QApplication, crown: tuple[Case, CrownShape]) -> Iterator[CrownDesk]:
    """Return a visible crown of 100,000 vertices, predicted, the brush on its last step."""
    if not has_gl():
        pytest.skip("no OpenGL here")
    session = Session(starter_catalogue(), threaded=False)
    view = CrownView()
    view.resize(900, 900)
    desk = CrownDesk(session, view)
    session.subscribe(desk.refresh)
    view.show()
    assert QTest.qWaitForWindowExposed(view)
    session.adopt(crown[0], path=None, saved=True)
    desk.choose(Zone.BODY, 7)
    QTest.qWait(1500)
    yield desk
    view.close()
    session.close()


def send(view: CrownView, kind: QEvent.Type, at: QPointF, pressed: Qt.MouseButton) -> None:
    button = LEFT if kind != QEvent.Type.MouseMove else NO_BUTTON
    there = QPointF(view.mapToGlobal(at.toPoint()))
    QApplication.sendEvent(view, QMouseEvent(kind, at, there, button, pressed, NO_KEYS))


@pytest.fixture(scope="module")
def taken(desk: CrownDesk) -> tuple[np.ndarray, np.ndarray]:
    """Return ms of our own computing and until the picture is there, for each move of a stroke."""
    view = desk.view
    canvas = view.canvas
    assert isinstance(canvas, GlCanvas)
    shown = [0]
    canvas.shown.connect(lambda: shown.__setitem__(0, shown[0] + 1))
    turn = np.linspace(0.0, 4.0, MOVES + 1)
    places = [QPointF(450 + 150 * np.cos(a), 450 + 150 * np.sin(a)) for a in turn]
    own = np.full((ROUNDS, MOVES), np.nan)
    seen = np.full((ROUNDS, MOVES), np.nan)
    for turn_of in range(ROUNDS):
        send(view, QEvent.Type.MouseButtonPress, places[0], LEFT)
        QTest.qWait(60)
        for number, at in enumerate(places[1:]):
            before, began, mine = shown[0], time.process_time(), time.thread_time()
            send(view, QEvent.Type.MouseMove, at, LEFT)
            own[turn_of, number] = time.thread_time() - mine
            late = time.perf_counter() + PATIENCE_S
            while shown[0] == before and time.perf_counter() < late:
                QApplication.processEvents()
            seen[turn_of, number] = time.process_time() - began
            assert shown[0] > before
        # Taken back: the next round finds the crown as this one did.
        QTest.keyClick(view, Qt.Key.Key_Escape)
        QTest.qWait(60)
    return 1000.0 * np.min(own, axis=0), 1000.0 * np.min(seen, axis=0)


def test_a_stroke_stays_as_quick_as_it_is(
    taken: tuple[np.ndarray, np.ndarray], record_property: Callable[[str, object], None]
) -> None:
    """No more than was found on two shared cores, and half as much again."""
    own, seen = taken
    record_property("own_median_ms", round(float(np.median(own)), 1))
    record_property("seen_median_ms", round(float(np.median(seen)), 1))
    record_property("seen_p95_ms", round(float(np.percentile(seen, 95)), 1))
    print(f"own {np.median(own):.1f}, seen {np.median(seen):.1f}, {np.percentile(seen, 95):.1f} ms")
    assert np.median(own) < OWN_FOUND_MS
    assert np.median(seen) < SEEN_FOUND_MS
