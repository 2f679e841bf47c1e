"""The layer both clients use: opening, editing, painting, undo, saving, late predictions."""

from __future__ import annotations

import threading
import time
from collections import deque
from collections.abc import Callable
from dataclasses import fields, replace
from pathlib import Path

import numpy as np
import pytest

from stainmap.app import edits
from stainmap.app.brush import Brush, Tool
from stainmap.app.change import Change
from stainmap.app.session import Session
from stainmap.errors import CaseFileError, StainmapError
from stainmap.files.case_lock import CaseLock
from stainmap.files.catalogue import starter_catalogue
from stainmap.files.journal import Journal
from stainmap.files.recovery import abandoned
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan, StainPlan
from stainmap.model.zone import Accent, Zone
from tests.builders import dome_case


def planned_dome() -> Case:
    """Return the dome with starter materials: barley on the body, umber in a second step."""
    materials = starter_catalogue()
    case = dome_case(32, 72)
    case = replace(
        case,
        materials=materials,
        plan=StainPlan(block="medium 3Y"),
        backings=(
            replace(
                case.backings[0],
                stump=materials.stumps[0].name,
                cement=materials.cements[0].name,
            ),
        ),
        programme="slow",
    )
    case = edits.with_added_liquid(case, 0, "barley")
    case = edits.with_added_liquid(case, 1, "umber")
    return edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(1))


@pytest.fixture
def session() -> Session:
    one = Session(starter_catalogue(), threaded=False)
    one.adopt(planned_dome(), path=None)
    return one


def top(session: Session) -> tuple[np.ndarray, int]:
    """Return a point on the outer body and its vertex."""
    assert session.case is not None
    mesh = session.case.surface.mesh
    vertex = int(np.argmin(np.linalg.norm(mesh.vertices - (4.0, 0.0, 3.0), axis=1)))
    return mesh.vertices[vertex], vertex


def test_a_prediction_follows_every_edit(session: Session) -> None:
    assert session.appearance is not None
    assert session.is_up_to_date
    before = session.appearance.lab.copy()
    session.edit(
        "more coats", lambda case: edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(4))
    )
    assert session.is_up_to_date
    assert session.case is not None
    body = session.case.zones == int(Zone.BODY)
    # Stain only lowers value and adds chroma.
    assert (session.appearance.lab[body, 0] < before[body, 0]).all()
    assert (session.appearance.lab[body, 2] > before[body, 2]).mean() > 0.95


def test_undo_gives_back_the_same_case_and_the_same_colours(session: Session) -> None:
    case, appearance = session.case, session.appearance
    assert case is not None
    assert appearance is not None
    session.edit("block", lambda one: edits.with_block(one, "deep 3Y"))
    assert session.appearance is not None
    assert np.abs(session.appearance.lab - appearance.lab).max() > 1.0
    session.undo()
    for field in fields(case):
        assert getattr(session.case, field.name) is getattr(case, field.name)
    assert np.abs(session.appearance.lab - appearance.lab).max() < 0.05
    session.redo()
    assert session.case is not None
    assert session.case.plan.block == "deep 3Y"


def test_an_edit_that_changes_nothing_is_no_step(session: Session) -> None:
    session.edit("nothing", lambda case: case)
    assert session.history is not None
    assert session.history.undo_label is None


def test_notices_say_what_changed(session: Session) -> None:
    heard: list[Change] = []
    end = session.subscribe(heard.append)
    session.edit("note", lambda case: replace(case, notes="look at the stump"))
    assert heard[0].fields == {"notes", "history", "file"}
    assert len(heard) == 1, "a note costs no prediction"
    assert session.is_up_to_date, "and leaves the one there is"
    assert session.prediction is not None
    assert session.prediction.case is session.case
    end()
    session.undo()
    assert len(heard) == 1


@pytest.mark.parametrize("tool", list(Tool))
def test_a_stroke_of_coats_is_one_undo_step_and_its_colours_come_at_once(
    session: Session, tool: Tool
) -> None:
    position, vertex = top(session)
    session.begin_stroke(Brush(step=1, radius_mm=0.8))
    session.stroke_to(position, vertex)
    session.end_stroke()
    session.begin_stroke(Brush(step=1, radius_mm=0.8, tool=tool))
    update = session.stroke_to(position, vertex)
    assert vertex in update.painted
    live = update.srgb[update.vertices == vertex][0].astype(int)
    session.end_stroke()
    assert session.appearance is not None
    assert np.abs(live - session.appearance.srgb[vertex].astype(int)).max() <= 3
    assert session.case is not None
    brushed = session.case.plan.steps[1].brushed
    if tool is Tool.ERASER:
        assert brushed is None or brushed.at(np.array([vertex], np.int32))[0] < 0.05
    else:
        assert brushed is not None
        assert brushed.at(np.array([vertex], np.int32))[0] == pytest.approx(2.0, abs=0.05)
    session.undo()
    session.undo()
    assert session.case.plan.steps[1].brushed is None


def test_the_first_place_of_a_stroke_may_be_shown_a_turn_later(session: Session) -> None:
    """Painted at once, recoloured as without a turn of its own, and no more than once."""
    position, vertex = top(session)
    session.begin_stroke(Brush(step=1, radius_mm=0.8))
    first = session.stroke_to(position, vertex, in_turns=True)
    assert vertex in first.painted
    assert not len(first.vertices)
    later = session.show_stroke()
    assert np.array_equal(later.painted, first.painted)
    assert vertex in later.vertices
    assert not len(session.show_stroke().vertices)
    session.cancel_stroke()
    assert not len(session.show_stroke().vertices)

    session.begin_stroke(Brush(step=1, radius_mm=0.8))
    at_once = session.stroke_to(position, vertex, in_turns=True)
    assert np.array_equal(at_once.vertices, later.vertices), "all is ready for it by now"
    assert np.array_equal(at_once.srgb, later.srgb)
    session.cancel_stroke()


def test_zones_and_accents_are_painted_and_given_back(session: Session) -> None:
    position, vertex = top(session)
    assert session.case is not None
    proposal = session.case.proposal[vertex]
    session.begin_stroke(Brush(area=Zone.FISSURE, radius_mm=0.6))
    session.stroke_to(position, vertex)
    session.end_stroke()
    assert session.case.zones[vertex] == int(Zone.FISSURE)
    session.begin_stroke(Brush(area=Accent.LINE_ANGLE, radius_mm=0.6))
    session.stroke_to(position, vertex)
    session.end_stroke()
    share = session.case.accent(Accent.LINE_ANGLE)
    assert share is not None
    assert share[vertex] > 0.9
    session.begin_stroke(Brush(area=Zone.FISSURE, tool=Tool.ERASER, radius_mm=0.6))
    session.stroke_to(position, vertex)
    session.end_stroke()
    assert session.case.zones[vertex] == proposal
    session.begin_stroke(Brush(area=Accent.LINE_ANGLE, tool=Tool.ERASER, radius_mm=0.6))
    session.stroke_to(position, vertex)
    session.end_stroke()
    share = session.case.accent(Accent.LINE_ANGLE)
    assert share is not None
    assert share[vertex] < 0.1


def test_zones_stay_on_their_side_of_the_margin_unless_it_is_moved(session: Session) -> None:
    position, vertex = top(session)
    assert session.case is not None
    session.begin_stroke(Brush(area=Zone.INNER))
    session.stroke_to(position, vertex)
    session.end_stroke()
    assert session.case.zones[vertex] != int(Zone.INNER)
    session.begin_stroke(Brush(area=Zone.INNER, moves_margin=True))
    session.stroke_to(position, vertex)
    session.end_stroke()
    assert session.case.zones[vertex] == int(Zone.INNER)
    assert not session.case.reading.outer[vertex]
    assert "inner_surface" in session.case.reading.set_by_user


def test_a_dropped_stroke_leaves_no_trace(session: Session) -> None:
    case, appearance = session.case, session.appearance
    assert appearance is not None
    before = appearance.lab.copy()
    position, vertex = top(session)
    session.begin_stroke(Brush(step=1, radius_mm=1.0, strength_coats=4.0))
    session.stroke_to(position, vertex)
    session.cancel_stroke()
    assert session.case is case
    session.begin_stroke(Brush(step=1, radius_mm=0.3, strength_coats=0.1))
    far = int(np.argmax(session.case.surface.mesh.vertices[:, 2])) if session.case else 0
    assert session.case is not None
    session.stroke_to(session.case.surface.mesh.vertices[far], far)
    session.end_stroke()
    assert session.appearance is not None
    assert np.abs(session.appearance.lab[vertex] - before[vertex]).max() < 0.1


class Mailbox:
    """A poster that keeps notices until they are fetched, as an event loop does."""

    def __init__(self) -> None:
        self._waiting: deque[Callable[[], None]] = deque()
        self._lock = threading.Lock()

    def post(self, notice: Callable[[], None]) -> None:
        with self._lock:
            self._waiting.append(notice)

    def run_until(self, condition: Callable[[], bool], seconds: float = 30.0) -> None:
        end = time.monotonic() + seconds
        while not condition():
            assert time.monotonic() < end, "it never came"
            notice = None
            with self._lock:
                if self._waiting:
                    notice = self._waiting.popleft()
            if notice is None:
                time.sleep(0.002)
            else:
                notice()


def test_many_quick_edits_end_at_the_last_one() -> None:
    box = Mailbox()
    session = Session(starter_catalogue(), post=box.post)
    session.adopt(planned_dome(), path=None)
    for coats in (2, 3, 4, 5, 6):
        session.edit(
            "coats",
            lambda case, n=coats: edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(n)),
        )
    assert not session.is_up_to_date
    box.run_until(lambda: session.is_up_to_date)
    late = session.appearance
    plain = Session(starter_catalogue(), threaded=False)
    assert session.case is not None
    plain.adopt(session.case, path=None)
    assert late is not None
    assert plain.appearance is not None
    assert np.abs(late.lab - plain.appearance.lab).max() < 0.1
    session.close()


def test_a_stroke_begun_before_the_prediction_is_coloured_when_it_arrives() -> None:
    box = Mailbox()
    session = Session(starter_catalogue(), post=box.post)
    session.adopt(planned_dome(), path=None)
    position, vertex = top(session)
    session.begin_stroke(Brush(step=1, radius_mm=0.8))
    first = session.stroke_to(position, vertex)
    assert len(first.painted)
    assert len(first.vertices) == 0
    box.run_until(lambda: session.is_up_to_date)
    assert session.case is not None
    beside = int(
        session.case.surface.mesh.faces[session.case.surface.mesh.faces[:, 0] == vertex][0, 1]
    )
    second = session.stroke_to(position + np.array([0.0, 0.3, 0.0]), beside)
    assert vertex in second.vertices
    session.end_stroke()
    session.close()


def test_what_cannot_be_predicted_is_said_and_the_case_stays_open(session: Session) -> None:
    session.edit("lost", lambda case: replace(case, programme="nowhere"))
    assert session.problem is not None
    assert "nowhere" in str(session.problem)
    session.undo()
    assert session.problem is None
    assert session.is_up_to_date


def test_saved_and_opened_again(session: Session, tmp_path: Path) -> None:
    assert session.is_modified
    with pytest.raises(CaseFileError):
        session.save()
    path = tmp_path / "dome.stainmap"
    session.save(path)
    assert not session.is_modified
    session.edit("note", lambda case: replace(case, notes="n"))
    assert session.is_modified
    session.undo()
    assert not session.is_modified
    other = Session(starter_catalogue(), threaded=False)
    other.open_case(path)
    assert other.case is not None
    assert other.case.plan == session.case.plan  # type: ignore[union-attr]
    session.close()
    other.close()


def test_a_case_that_is_open_elsewhere_opens_read_only(session: Session, tmp_path: Path) -> None:
    path = tmp_path / "dome.stainmap"
    session.save(path)
    other = Session(starter_catalogue(), threaded=False)
    other.open_case(path)
    assert other.read_only
    with pytest.raises(CaseFileError, match="Somebody else"):
        other.save()
    other.save(tmp_path / "copy.stainmap")
    assert not other.read_only
    session.close()
    lock = CaseLock.take(path)
    assert lock is not None
    lock.release()
    other.close()


def test_a_failed_opening_leaves_the_open_case(session: Session, tmp_path: Path) -> None:
    case = session.case
    broken = tmp_path / "broken.stainmap"
    broken.write_bytes(b"PK\x03\x04 nothing")
    session.open_case(broken)
    assert session.case is case
    assert isinstance(session.problem, CaseFileError)
    text = tmp_path / "text.stl"
    text.write_text("no mesh")
    session.look_at(text)
    assert session.case is case
    assert isinstance(session.problem, StainmapError)


def test_unsaved_work_is_kept_in_the_journal(tmp_path: Path) -> None:
    journal = Journal(tmp_path / "kept")
    session = Session(starter_catalogue(), threaded=False, journal=journal)
    session.adopt(planned_dome(), path=None)
    session.edit("note", lambda case: replace(case, notes="unsaved"))
    journal.close(keep=True)
    (left,) = abandoned(tmp_path / "kept")
    fresh = Session(starter_catalogue(), threaded=False)
    fresh.recover(left)
    assert fresh.case is not None
    assert fresh.path is None
    assert fresh.is_modified
    assert fresh.case.notes == "unsaved"
    fresh.close()


def test_a_saved_case_is_shown_as_it_was_last_seen_until_it_is_predicted(
    session: Session, tmp_path: Path
) -> None:
    path = tmp_path / "dome.stainmap"
    session.save(path)
    assert session.appearance is not None
    box = Mailbox()
    other = Session(starter_catalogue(), post=box.post)
    other.open_case(path)
    box.run_until(lambda: other.case is not None)
    assert other.appearance is None
    np.testing.assert_array_equal(other.shown_srgb, session.appearance.srgb)
    box.run_until(lambda: other.is_up_to_date)
    assert other.appearance is not None
    assert other.shown_srgb is other.appearance.srgb
    other.close()
