"""From the hand to the picture: a stroke over a crown, 900 x 900 pixels.

By the graphics driver; a software driver if there is no other. The same stroke is drawn several
times and each of its moves counts as its least disturbed; nothing is corrected for how quick the
machine is. Processor time of all threads until the picture is there: a software driver draws with
several, so that what a person waits for is at most as much. What is waited for after the stroke is
taken by the clock, since timers are part of it.
"""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from stainmap.app.job import call_now
from stainmap.app.session import Session
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.zone import Zone
from stainmap.ui.crown_desk import CrownDesk
from stainmap.ui.crown_view import CrownView
from stainmap.ui.gl_canvas import GlCanvas
from stainmap.ui.gl_painter import has_gl
from stainmap.ui.poster import Poster
from tests.benchmarks.painted_crowns import LIQUIDS
from tests.predict.crowns import painted_dome
from tests.tools.real_window import let_work

pytestmark = pytest.mark.benchmark

# Of one move of the hand: our own computing before the window is free again, ms, and until the
# picture is there, in the middle and for one of twenty.
OWN_MS, SEEN_MS, SEEN_P95_MS = 16.0, 33.0, 60.0
# Until all of the mesh is on the screen again after the brush has been lifted, ms.
WHOLE_MS = 150.0
ROUNDS, MOST_ROUNDS, MOVES, PATIENCE_S = 4, 12, 24, 60.0
NO_KEYS, NO_BUTTON = Qt.KeyboardModifier.NoModifier, Qt.MouseButton.NoButton
LEFT, RIGHT = Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton
_TURN = np.linspace(0.0, 4.0, MOVES + 1)
PLACES = [QPointF(450 + 150 * np.cos(a), 450 + 150 * np.sin(a)) for a in _TURN]
# Rings of a dome: a light one, and the one that is asked for.
RINGS = {"22,000": 60, "100,000": 129}


class Bench(NamedTuple):
    """A session and the view of its crown."""

    session: Session
    view: CrownView

    @property
    def canvas(self) -> GlCanvas:
        canvas = self.view.canvas
        assert isinstance(canvas, GlCanvas)
        return canvas

    def settle(self) -> None:
        """Wait until what is shown is predicted, and drawn with smooth edges."""
        late = time.perf_counter() + PATIENCE_S
        while not self.session.is_up_to_date and time.perf_counter() < late:
            let_work(20)
        assert self.session.is_up_to_date
        let_work(1500)


LONG = pytest.mark.skipif(not os.environ.get("STAINMAP_MORE"), reason="long; set STAINMAP_MORE=1")


def sizes(*, threaded: bool) -> pytest.MarkDecorator:
    """Return the mark of a test on a light crown and on the one that is asked for."""
    each = [
        pytest.param((size, threaded), id=size, marks=[] if size == "22,000" else LONG)
        for size in RINGS
    ]
    return pytest.mark.parametrize("bench", each, indirect=True)


@pytest.fixture(scope="module")
def bench(qapp: QApplication, request: pytest.FixtureRequest) -> Iterator[Bench]:
    """Return a visible crown, predicted, the brush on its last step."""
    if not has_gl():
        pytest.skip("no OpenGL here")
    # The stroke itself is taken with nothing else at work; its release as it is in the window.
    size, threaded = request.param
    session = Session(
        starter_catalogue(), threaded=threaded, post=Poster() if threaded else call_now
    )
    view = CrownView()
    view.resize(900, 900)
    desk = CrownDesk(session, view)
    session.subscribe(desk.refresh)
    view.show()
    assert QTest.qWaitForWindowExposed(view)
    session.adopt(painted_dome(LIQUIDS, rings=RINGS[size]), path=None, saved=True)
    desk.choose(Zone.BODY, 7)
    bench = Bench(session, view)
    bench.settle()
    yield bench
    view.close()
    session.close()


def send(
    view: CrownView,
    kind: QEvent.Type,
    at: QPointF,
    pressed: Qt.MouseButton,
    which: Qt.MouseButton = Qt.MouseButton.LeftButton,
) -> None:
    button = which if kind != QEvent.Type.MouseMove else NO_BUTTON
    there = QPointF(view.mapToGlobal(at.toPoint()))
    QApplication.sendEvent(view, QMouseEvent(kind, at, there, button, pressed, NO_KEYS))


@dataclass(slots=True)
class Taken:
    """What each move (n,) of a stroke took in its least disturbed round, ms."""

    own: np.ndarray
    seen: np.ndarray

    @property
    def is_enough(self) -> bool:
        """True if all that is asked holds."""
        own, seen = np.median(self.own), np.median(self.seen)
        return bool(own < OWN_MS and seen < SEEN_MS and np.percentile(self.seen, 95) < SEEN_P95_MS)


@pytest.fixture(scope="module")
def taken(bench: Bench) -> Taken:
    """Return what our own computing took, and until the picture was there."""
    view, shown = bench.view, [0]
    bench.canvas.shown.connect(lambda: shown.__setitem__(0, shown[0] + 1))
    least = Taken(np.full(MOVES, np.inf), np.full(MOVES, np.inf))
    for turn_of in range(MOST_ROUNDS):
        if turn_of >= ROUNDS and least.is_enough:
            break
        send(view, QEvent.Type.MouseButtonPress, PLACES[0], LEFT)
        QTest.qWait(60)
        for number, at in enumerate(PLACES[1:]):
            before, began, mine = shown[0], time.process_time(), time.thread_time()
            send(view, QEvent.Type.MouseMove, at, LEFT)
            own = 1000.0 * (time.thread_time() - mine)
            late = time.perf_counter() + PATIENCE_S
            while shown[0] == before and time.perf_counter() < late:
                QApplication.processEvents()
            seen = 1000.0 * (time.process_time() - began)
            assert shown[0] > before
            least.own[number] = min(least.own[number], own)
            least.seen[number] = min(least.seen[number], seen)
        # Taken back: the next round finds the crown as this one did.
        QTest.keyClick(view, Qt.Key.Key_Escape)
        QTest.qWait(60)
    return least


@sizes(threaded=False)
def test_a_stroke_is_seen_within_a_frame(
    taken: Taken, record_property: Callable[[str, object], None]
) -> None:
    own, own_p95 = np.median(taken.own), np.percentile(taken.own, 95)
    seen, seen_p95 = np.median(taken.seen), np.percentile(taken.seen, 95)
    record_property("own_median_ms", round(float(own), 1))
    record_property("own_p95_ms", round(float(own_p95), 1))
    record_property("seen_median_ms", round(float(seen), 1))
    record_property("seen_p95_ms", round(float(seen_p95), 1))
    print(f"own {own:.1f}, {own_p95:.1f}, seen {seen:.1f}, {seen_p95:.1f} ms")
    assert own < OWN_MS
    assert seen < SEEN_MS
    assert seen_p95 < SEEN_P95_MS


@sizes(threaded=True)
def test_all_of_the_mesh_is_there_soon_after_release(
    bench: Bench, record_property: Callable[[str, object], None]
) -> None:
    """Turned first, so that a slow machine shows the lighter mesh, and painted on at once."""
    view, canvas = bench.view, bench.canvas
    least, was_light = np.inf, False
    for _ in range(MOST_ROUNDS):
        # The right button turns, and back: the stroke finds the crown where it was.
        for dx in (4.0, 0.0):
            at = QPointF(100.0, 100.0)
            send(view, QEvent.Type.MouseButtonPress, at, RIGHT, RIGHT)
            send(view, QEvent.Type.MouseMove, at + QPointF(4.0 - dx, 0.0), RIGHT)
            send(view, QEvent.Type.MouseMove, at + QPointF(dx, 0.0), RIGHT)
            send(view, QEvent.Type.MouseButtonRelease, at, NO_BUTTON, RIGHT)
            QApplication.processEvents()
        was_light = was_light or not canvas.is_whole
        send(view, QEvent.Type.MouseButtonPress, PLACES[0], LEFT)
        send(view, QEvent.Type.MouseMove, PLACES[1], LEFT)
        QApplication.processEvents()
        send(view, QEvent.Type.MouseButtonRelease, PLACES[1], NO_BUTTON)
        began = time.perf_counter()
        while not canvas.is_whole and time.perf_counter() < began + PATIENCE_S:
            let_work(2)
        taken_ms = 1000.0 * (time.perf_counter() - began)
        assert canvas.is_whole
        least = min(least, taken_ms)
        if least < WHOLE_MS:
            break
        bench.settle()
    record_property("whole_ms", round(least, 1))
    print(f"all of the mesh {least:.0f} ms after release; lighter before: {was_light}")
    assert was_light == canvas.is_slow
    assert least < WHOLE_MS
