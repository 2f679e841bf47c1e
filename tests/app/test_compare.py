"""Two plans side by side: the open one is left alone, and nothing is measured twice."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from stainmap.app import edits
from stainmap.app.brush import Brush
from stainmap.app.compare import (
    ShownPlan,
    another_case,
    another_plan,
    another_programme,
    bare_block,
    compared,
    effort_of,
    is_same_crown,
    on_surface_of,
    predict_beside,
    read_beside,
    taken,
    without_stain,
)
from stainmap.app.prediction import Prediction, predict_case
from stainmap.errors import PlanError, StainmapError
from stainmap.files.case_file import write_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan, Jar, StainPlan, Step
from stainmap.model.zone import Zone
from stainmap.predict.seen import Seen
from stainmap.surface.mesh import TriMesh
from tests.builders import dome_case


def painted_dome() -> Case:
    """Return a dome in the starter materials: two coats on the body, one on the cusp."""
    materials = starter_catalogue()
    case = dome_case(12, 32)
    backing = replace(
        case.backings[0], stump=materials.stumps[0].name, cement=materials.cements[0].name
    )
    case = replace(
        case,
        materials=materials,
        plan=StainPlan(block="medium 3Y"),
        backings=(backing,),
        programme="slow",
    )
    for at, liquid in enumerate(("barley", "slate")):
        case = edits.with_added_liquid(case, at, liquid)
    case = edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(2))
    return edits.with_coats(case, 1, Zone.CUSP, CoatSpan.exactly(1))


@pytest.fixture(scope="module")
def here() -> Prediction:
    return predict_case(painted_dome())


def test_another_plan_is_predicted_as_if_it_were_alone(here: Prediction) -> None:
    bare = without_stain(here.case)
    there = predict_beside(here, bare)
    alone = predict_case(bare)
    np.testing.assert_allclose(there.appearance.lab, alone.appearance.lab, atol=2e-3)
    # Stain only takes light away.
    body = here.outcome.area(Zone.BODY), there.outcome.area(Zone.BODY)
    assert body[0] is not None
    assert body[1] is not None
    assert body[0].predicted.lightness < body[1].predicted.lightness - 1.0


def test_the_open_plan_keeps_its_engine_and_its_measurements(here: Prediction) -> None:
    """The engine stands where the brush needs it; shape and softened shares are shared."""
    weights = np.where(here.case.reading.outer, here.case.surface.mesh.vertex_areas, 0.0)
    before = here.engine.mean_radiance_factor(weights)
    more = edits.with_coats(here.case, 0, Zone.BODY, CoatSpan.exactly(4))
    there = predict_beside(here, more)
    assert np.array_equal(here.engine.mean_radiance_factor(weights), before)
    assert there.engine is not here.engine
    assert there.engine.ground_work.wicking is here.engine.ground_work.wicking
    assert there.shape is here.shape
    assert there.layout is here.layout
    assert (there.engine.mean_radiance_factor(weights) < before).all()


def test_a_programme_beside_gives_what_comparing_furnaces_gives(here: Prediction) -> None:
    other = next(p.name for p in here.case.materials.programmes if p.name != "slow")
    against = another_programme(other)
    found = compared(here, predict_beside(here, against.case(here.case)), other)
    what_if = here.what_if(other)
    assert found.programmes == what_if
    assert found.areas == what_if.areas
    assert found.areas


def test_both_are_seen_in_the_light_of_the_open_plan(here: Prediction) -> None:
    warm = predict_case(here.case, previous=here, seen=Seen(light="A"), apart=True)
    there = predict_beside(warm, without_stain(here.case))
    assert there.seen == Seen(light="A")
    assert there.outcome.areas[0].predicted.measurement.illuminant == "A"


def test_effort_counts_rounds_jars_and_minutes(here: Prediction) -> None:
    """Three rounds of two minutes; two jars of two minutes, and two minutes before them."""
    effort = effort_of(here.case)
    assert (effort.coats, effort.jars) == (3, 2)
    assert effort.minutes == pytest.approx(3 * 2.0 + 2.0 + 2 * 2.0)
    nothing = effort_of(without_stain(here.case))
    assert (nothing.coats, nothing.jars, nothing.minutes) == (0, 0, 0.0)


def test_a_case_from_a_file_takes_the_surface_that_is_open(
    here: Prediction, tmp_path: Path
) -> None:
    more = edits.with_coats(here.case, 1, Zone.CUSP, CoatSpan.exactly(3))
    path = tmp_path / "other.stainmap"
    write_case(more, path)
    content = path.read_bytes()
    found = read_beside(path, here.case)
    assert found.surface is not here.case.surface
    moved = on_surface_of(found, here.case)
    assert moved.surface is here.case.surface
    assert moved.reading is here.case.reading
    there = predict_beside(here, found)
    assert there.shape is here.shape
    assert there.case.plan.steps[1].areas[0].coats == CoatSpan.exactly(3)
    assert path.read_bytes() == content


def test_a_case_of_another_mesh_is_refused_with_a_sentence(
    here: Prediction, tmp_path: Path
) -> None:
    path = tmp_path / "finer.stainmap"
    write_case(dome_case(13, 32), path)
    with pytest.raises(StainmapError, match="another mesh") as caught:
        read_beside(path, here.case)
    assert caught.value.advice
    assert "finer" in str(caught.value)


def test_a_block_of_another_enlargement_makes_no_other_crown(here: Prediction) -> None:
    mesh = here.case.surface.mesh
    larger = replace(
        here.case,
        surface=replace(here.case.surface, mesh=TriMesh(mesh.vertices * 1.02, mesh.faces)),
    )
    bent = mesh.vertices.copy()
    bent[7, 0] += 0.5
    other = replace(here.case, surface=replace(here.case.surface, mesh=TriMesh(bent, mesh.faces)))
    assert is_same_crown(here.case, larger)
    assert not is_same_crown(here.case, other)
    # Its size is its own: nothing is taken from the open surface.
    assert on_surface_of(larger, here.case) is larger


def test_what_stands_beside_can_be_taken(here: Prediction) -> None:
    case = here.case
    more = edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(3))
    by_case, by_plan = another_case("other", more), another_plan("suggested", more.plan)
    for against in (by_case, by_plan):
        assert against.take is not None
        assert against.take(case).plan == more.plan
        assert not against.follows
    programme = another_programme("fast" if case.programme == "slow" else "slow")
    assert programme.follows
    assert bare_block().take is None
    unknown = StainPlan(
        block=case.plan.block, jars=(Jar(number=1, liquid="nothing like it"),), steps=(Step(jar=1),)
    )
    with pytest.raises(StainmapError, match="nothing like it"):
        taken(case, unknown)


def test_what_is_shown_beside_is_not_painted_on(here: Prediction) -> None:
    shown = ShownPlan(here)
    assert shown.prediction is here
    assert shown.case is here.case
    assert shown.is_up_to_date
    assert shown.shading is None
    with pytest.raises(PlanError):
        shown.begin_stroke(Brush(area=Zone.BODY))
    shown.close()
