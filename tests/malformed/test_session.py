"""A bad file never changes the case that is open, whichever way it is bad."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from stainmap.app import edits
from stainmap.app.opening import Answers
from stainmap.app.session import Session
from stainmap.errors import StainmapError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.plan import StainPlan
from stainmap.model.tooth import Tooth, Unit
from stainmap.units import LengthUnit, SizeState
from tests.builders import dome_case
from tests.malformed.files import all_files
from tests.surface import shapes
from tests.surface.test_loading import binary_stl

SMALL_BYTES = 300_000


@pytest.fixture(scope="module")
def session() -> Iterator[Session]:
    materials = starter_catalogue()
    case = dome_case(8, 16)
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
    one = Session(materials, threaded=False)
    one.adopt(case, path=None)
    one.edit("note", lambda open_case: replace(open_case, notes="kept"))
    yield one
    one.close()


def answers(unit: LengthUnit | None = None) -> Answers:
    return Answers(
        units=(Unit(tooth=Tooth(number=46)),),
        size_state=SizeState.SINTERED,
        block="medium 3Y",
        unit=unit,
        occlusal_axis=(0.0, 0.0, 1.0),
    )


def state(session: Session) -> tuple[object, ...]:
    history = session.history
    assert history is not None
    return (session.case, history, history.undo_label, session.prediction, session.is_modified)


def test_looking_at_bad_files_changes_nothing(session: Session, tmp_path: Path) -> None:
    before = state(session)
    seen = refused = 0
    for one in all_files():
        if len(one.content) > SMALL_BYTES:
            continue
        path = tmp_path / one.name
        path.write_bytes(one.content)
        session.look = None
        session.look_at(path)
        assert session.job is None
        assert (session.look is None) == (session.problem is not None), one.name
        if session.problem is not None:
            assert "Please report" not in str(session.problem), one.name
            assert session.problem.where == one.name
            refused += 1
        assert all(now is then for now, then in zip(state(session), before, strict=True)), one.name
        seen += 1
    assert seen > 180
    assert refused > 140
    session.edit("note", lambda case: edits.with_block(case, "deep 3Y"))
    session.undo()
    assert session.case is before[0]


def hairball() -> bytes:
    """Return a thousand facets between a few points anywhere, all hanging together."""
    rng = np.random.default_rng(2)
    points = rng.normal(0, 4, (60, 3))
    corners = np.array([rng.choice(60, 3, replace=False) for _ in range(1000)])
    return binary_stl(points[corners])


def needles() -> bytes:
    """Return a ball drawn out to a thread."""
    ball = shapes.sphere(radius=5.0, subdivisions=2)
    return binary_stl((ball.vertices * (1.0, 0.002, 0.002))[ball.faces])


def one_facet() -> bytes:
    return binary_stl(np.array([[(0, 0, 0), (9.0, 0, 0), (0, 9.0, 0)]]))


def two_boxes_in_one_edge() -> bytes:
    box = shapes.box()
    corners = (box.vertices * 3.0)[box.faces]
    return binary_stl(np.concatenate([corners, corners + np.array([6.0, 9.0, 0.0])]))


def flat_square() -> bytes:
    square = np.array([[(0, 0, 0), (9, 0, 0), (9, 9, 0)], [(0, 0, 0), (9, 9, 0), (0, 9, 0)]])
    return binary_stl(square.astype(float))


@pytest.mark.parametrize(
    ("make", "unit"),
    [
        (hairball, None),
        (needles, LengthUnit.MILLIMETRE),
        (one_facet, LengthUnit.MILLIMETRE),
        (flat_square, LengthUnit.MILLIMETRE),
        (two_boxes_in_one_edge, None),
        # A crown of many metres: whoever says the unit may be wrong.
        (hairball, LengthUnit.METRE),
    ],
    ids=lambda one: getattr(one, "__name__", None) or str(one),
)
def test_opening_what_can_be_read_but_is_no_crown(
    session: Session, tmp_path: Path, make: Callable[[], bytes], unit: LengthUnit | None
) -> None:
    """It opens as what it is, or is refused in a sentence that asks nobody to report anything."""
    before = state(session)
    path = tmp_path / "odd.stl"
    path.write_bytes(make())
    session.look_at(path)
    assert session.look is not None, str(session.problem)
    session.open_mesh(session.look, answers(unit))
    if session.problem is not None:
        assert isinstance(session.problem, StainmapError)
        assert "Please report" not in str(session.problem)
        assert all(now is then for now, then in zip(state(session), before, strict=True))
        return
    opened = session.case
    assert isinstance(opened, Case)
    assert opened is not before[0]
    assert np.isfinite(opened.surface.mesh.vertices).all()
    # Back to the case that the other tests look at.
    kept = before[0]
    assert isinstance(kept, Case)
    session.adopt(kept, path=None)
