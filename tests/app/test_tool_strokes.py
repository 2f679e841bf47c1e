"""Fill and line on a dome with a groove, of which the place is known."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stainmap.app import edits
from stainmap.app.brush import Brush, Stroke, Tool
from stainmap.app.tool_strokes import CreaseWork, painted, taking_away
from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.plan import Streaks
from stainmap.model.zone import Accent, Zone
from stainmap.surface.mesh import TriMesh
from tests.builders import dome_case

# A groove over the top in the plane x = 0, as a fold of the outer surface.
WIDE_MM, DEEP_MM = 0.5, 0.35


@pytest.fixture(scope="module")
def case() -> Case:
    plain = dome_case(56, 160)
    vertices = plain.surface.mesh.vertices.copy()
    away = np.abs(vertices[:, 0])
    depth = DEEP_MM * np.clip(1.0 - away / WIDE_MM, 0.0, 1.0)
    radial = vertices / np.linalg.norm(vertices, axis=1, keepdims=True)
    vertices -= np.where(plain.reading.outer, depth, 0.0)[:, None] * radial
    mesh = TriMesh(vertices, plain.surface.mesh.faces)
    return replace(plain, surface=replace(plain.surface, mesh=mesh))


@pytest.fixture(scope="module")
def work(case: Case) -> CreaseWork:
    return CreaseWork(case.surface.mesh)


def vertex_at(case: Case, x: float, y: float, z: float) -> int:
    away = np.linalg.norm(case.surface.mesh.vertices - [x, y, z], axis=1)
    away[~case.reading.outer] = np.inf
    return int(away.argmin())


def test_fill_floods_one_side_of_the_groove(case: Case, work: CreaseWork) -> None:
    brush = Brush(area=Zone.FISSURE)
    vertex = vertex_at(case, 3.0, 0.0, 4.0)
    filled = painted(case, work.place_to_fill(case, vertex, 1.2, brush, 0.3), brush)
    x = case.surface.mesh.vertices[:, 0]
    mine = filled.zones == Zone.FISSURE
    assert mine[case.reading.outer & (x > 0.8)].all()
    assert not mine[x < -0.3].any()
    assert not mine[~case.reading.outer].any()
    # Done twice it is the very same case: no empty undo step.
    again = painted(filled, work.place_to_fill(filled, vertex, 1.2, brush, 0.3), brush)
    assert again is filled
    # Turned round it gives the proposal back.
    erase = taking_away(brush)
    back = painted(filled, work.place_to_fill(filled, vertex, 1.2, erase, 0.3), erase)
    assert np.array_equal(back.zones, case.zones)


def test_fill_adds_coats_of_a_step_that_fade_towards_the_crease(
    case: Case, work: CreaseWork
) -> None:
    brush = Brush(step=1, strength_coats=2.0)
    vertex = vertex_at(case, 3.0, 0.0, 4.0)
    filled = painted(case, work.place_to_fill(case, vertex, 1.2, brush, 0.4), brush)
    brushed = filled.plan.steps[1].brushed
    assert brushed is not None
    coats = np.zeros(len(case.zones))
    coats[brushed.vertices] = brushed.coats
    x = case.surface.mesh.vertices[:, 0]
    assert coats[case.reading.outer & (x > 1.2)] == pytest.approx(2.0)
    assert coats.max() == pytest.approx(2.0)
    assert ((coats > 0.1) & (coats < 1.9)).any()
    assert filled.zones is case.zones


def test_a_line_runs_along_the_groove_in_the_chosen_accent(case: Case, work: CreaseWork) -> None:
    brush = Brush(area=Accent.LINE_ANGLE, radius_mm=0.3, softness=0.5)
    start, end = vertex_at(case, 0.3, -3.3, 3.3), vertex_at(case, 0.3, 3.3, 3.3)
    paths = work.paths_from(case, start)
    assert work.paths_from(case, start) is paths
    place = work.place_of_line(case, paths.to(end), brush)
    drawn = painted(case, place, brush)
    share = drawn.accent(Accent.LINE_ANGLE)
    assert share is not None
    x, y, _ = case.surface.mesh.vertices.T
    middle = case.reading.outer & (np.abs(y) < 2.5)
    # The bottom of the groove is covered, and nothing beside it.
    assert (share[middle & (np.abs(x) < 0.06)] > 0.8).all()
    assert not share[middle & (np.abs(x) > 0.45)].any()
    assert not share[~case.reading.outer].any()
    unreachable = int(np.flatnonzero(~case.reading.outer)[0])
    nowhere = work.place_of_line(case, paths.to(unreachable), brush)
    assert painted(case, nowhere, brush) is case


def test_a_step_that_is_not_there_is_refused(case: Case, work: CreaseWork) -> None:
    brush = Brush(step=9)
    place = work.place_to_fill(case, vertex_at(case, 3.0, 0.0, 4.0), 1.2, brush, 0.0)
    with pytest.raises(PlanError, match="not in the plan"):
        painted(case, place, brush)


def test_the_eraser_leaves_a_moved_margin_alone(case: Case) -> None:
    moved = case.reading.outer & (case.surface.mesh.vertices[:, 2] < 0.4)
    proposal = np.where(moved, np.uint8(Zone.INNER), case.proposal).astype(np.uint8)
    changed = replace(case, proposal=proposal)
    stroke = Stroke.begun(changed, Brush(tool=Tool.ERASER, area=Zone.CERVICAL))
    everywhere = np.arange(len(case.zones), dtype=np.int32)
    stroke.dab(everywhere, np.ones(len(everywhere), np.float32))
    assert np.array_equal(stroke.result().zones == Zone.INNER, ~case.reading.outer)


def test_streaks_of_a_step_are_one_edit(case: Case) -> None:
    streaks = (Streaks(area=Zone.CUSP, count=4, length_mm=2.5, coats=1),)
    changed = edits.with_streaks(case, 1, streaks)
    assert changed.plan.steps[1].streaks == streaks
    assert edits.with_streaks(changed, 1, streaks) is changed
    assert edits.with_streaks(changed, 1, ()).plan.steps[1].streaks == ()
    with pytest.raises(PlanError, match="no step 9"):
        edits.with_streaks(case, 8, streaks)
