"""Plans, coats, fades and jars."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.errors import PlanError
from stainmap.model.plan import (
    CUSP_FADE,
    BrushedCoats,
    CoatSpan,
    Fade,
    Jar,
    StainPlan,
    Step,
    Streaks,
)
from stainmap.model.zone import Accent, Zone


@given(st.integers(0, 12), st.integers(0, 12))
def test_a_span_reads_back_as_it_was_written(one: int, other: int) -> None:
    low, high = sorted((one, other))
    span = CoatSpan(low=low, high=high)
    assert CoatSpan.parse(str(span)) == span


@pytest.mark.parametrize(
    "text", ["", "x", "-1", "3-2", "1-2-3", "2.5", "13", "\N{SUPERSCRIPT TWO}"]
)
def test_what_is_no_number_of_coats_is_refused_with_a_sentence(text: str) -> None:
    with pytest.raises(PlanError) as caught:
        CoatSpan.parse(text)
    assert caught.value.advice


def test_a_dash_is_as_good_as_a_hyphen() -> None:
    assert CoatSpan.parse("2\N{EN DASH}3") == CoatSpan(low=2, high=3)


def test_new_coats_on_the_cusp_fade_and_keep_the_fade_that_was_set() -> None:
    step = Step(jar=1).with_coats(Zone.CUSP, CoatSpan.exactly(2))
    entry = step.entry(Zone.CUSP)
    assert entry is not None
    assert entry.fade == CUSP_FADE
    own = Fade(full_down_to_mm=0.5, zero_at_mm=1.0)
    changed = Step(jar=1, areas=(type(entry)(area=Zone.CUSP, coats=entry.coats, fade=own),))
    again = changed.with_coats(Zone.CUSP, CoatSpan.exactly(3)).entry(Zone.CUSP)
    assert again is not None
    assert again.fade == own


def test_zero_coats_clear_a_cell() -> None:
    step = Step(jar=1).with_coats(Zone.BODY, CoatSpan.exactly(1))
    assert step.with_coats(Zone.BODY, CoatSpan.exactly(0)).areas == ()
    assert step.with_coats(Zone.BODY, None).areas == ()


def test_areas_stay_in_the_order_of_their_numbers() -> None:
    step = Step(jar=1)
    for area in (Accent.LINE_ANGLE, Zone.CUSP, Zone.CERVICAL):
        step = step.with_coats(area, CoatSpan.exactly(1))
    assert [int(entry.area) for entry in step.areas] == [1, 4, 10]


def test_a_step_from_a_jar_that_is_not_there_is_refused() -> None:
    with pytest.raises(PlanError, match="jar 2"):
        StainPlan(block="b", jars=(Jar(number=1, liquid="l"),), steps=(Step(jar=2),))


def test_steps_move_and_go() -> None:
    plan = StainPlan(
        block="b",
        jars=tuple(Jar(number=n, liquid="l") for n in (1, 2, 3)),
        steps=tuple(Step(jar=n) for n in (1, 2, 3)),
    )
    assert [step.jar for step in plan.moved_step(0, 2).steps] == [2, 3, 1]
    assert [step.jar for step in plan.without_step(1).steps] == [1, 3]


def test_dye_dilutes_by_its_drops() -> None:
    jar = Jar(number=1, liquid="l", liquid_drops=25, dye_drops=(2, 0, 1))
    assert jar.dilution == pytest.approx(25 / 28)


@given(st.lists(st.floats(0, 12, width=32), min_size=1, max_size=60))
def test_brushed_coats_come_back_where_they_were(values: list[float]) -> None:
    dense = np.array(values, np.float32)
    dense[dense < 2e-3] = 0.0
    sparse = BrushedCoats.from_dense(dense)
    everywhere = np.arange(len(dense), dtype=np.int32)
    got = np.zeros_like(dense) if sparse is None else sparse.at(everywhere)
    np.testing.assert_array_equal(got, dense)


def test_brushed_coats_are_read_only() -> None:
    brushed = BrushedCoats.from_dense(np.array([0.0, 1.0], np.float32))
    assert brushed is not None
    with pytest.raises(ValueError, match="read-only"):
        brushed.coats[0] = 3.0


def test_streaks_that_no_brush_makes_are_refused() -> None:
    with pytest.raises(PlanError):
        Streaks(area=Zone.CUSP, count=2, length_mm=3.0, coats=1)
    with pytest.raises(PlanError):
        Streaks(area=Zone.CUSP, count=5, length_mm=9.0, coats=1)


def test_a_lock_stays_when_the_coats_are_changed_and_goes_with_them() -> None:
    step = (
        Step(jar=1).with_coats(Zone.BODY, CoatSpan.exactly(2)).with_locked(Zone.BODY, locked=True)
    )
    entry = step.with_coats(Zone.BODY, CoatSpan.exactly(1)).entry(Zone.BODY)
    assert entry is not None
    assert entry.locked
    assert step.with_coats(Zone.BODY, None).entry(Zone.BODY) is None
    assert not step.with_locked(Zone.BODY, locked=False).areas[0].locked
