"""Learning curves, the weakest skill and repeats, by made-up histories reckoned by hand."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta, timezone
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.labbook.attempt import Attempt
from stainmap.practice.progress import (
    PASSED,
    REPEAT_DAYS,
    due,
    learning_curve,
    learning_curves,
    repeats,
    threshold_curve,
    weakest_skill,
)

BEGIN = datetime(2026, 3, 1, 10, 0, tzinfo=UTC)
DAY_0 = date(2026, 3, 1)


def tried(day: float, score: float = 80.0, *, exercise: str = "a", **more: object) -> Attempt:
    told: dict[str, object] = {
        "trainee": "AB",
        "exercise": exercise,
        "exercise_hash": f"{ord(exercise[0]):064x}",
        "kind": "invented",
        "seed": 1,
        "started_at": BEGIN + timedelta(days=day),
        "finished_at": BEGIN + timedelta(days=day, minutes=5),
        "score": score,
    } | more
    return Attempt(**told)  # type: ignore[arg-type]


def scored(day: float, **skills: float) -> Attempt:
    return tried(day, skills=skills)


def due_days(*attempts: Attempt, **how: object) -> list[int]:
    """Return how many days after the first the repeats are due."""
    return [(one.due_on - DAY_0).days for one in repeats(attempts, **how)]  # type: ignore[arg-type]


def test_a_curve_has_every_try_and_the_mean_of_the_last_three() -> None:
    history = [scored(n, shade=score) for n, score in enumerate((10, 40, 70, 100, 40))]
    shuffled = Random(1).sample(history, len(history))
    curve = learning_curve([*shuffled, scored(9, order=5.0)], "shade")
    assert [point.score for point in curve.points] == [10, 40, 70, 100, 40]
    assert [point.level for point in curve.points] == pytest.approx([10, 25, 40, 70, 70])
    assert curve.level == pytest.approx(70)
    assert curve.gain is None
    longer = learning_curve([*history, scored(6, shade=100)], "shade")
    assert longer.gain == pytest.approx(80 - 40)
    assert learning_curve(history, "mixing").level is None


def test_all_curves_asked_ones_first() -> None:
    history = [scored(0, b=1, x=1), scored(1, a=1)]
    names = [curve.skill for curve in learning_curves(history, ["x", "new"])]
    assert names == ["x", "new", "a", "b"]


def test_the_weakest_skill_is_next() -> None:
    skills = ["areas", "shade", "order"]
    assert weakest_skill([], skills) == "areas"
    assert weakest_skill([], []) is None
    history = [scored(0, areas=90, shade=20), scored(1, areas=90, shade=30)]
    assert weakest_skill(history, skills) == "order"
    history.append(scored(2, order=60))
    assert weakest_skill(history, skills) == "shade"
    # Three better tries make another one the weakest.
    history += [scored(3 + n, shade=95) for n in range(3)]
    assert weakest_skill(history, skills) == "order"


def test_of_equally_weak_skills_the_one_longest_ago_is_next() -> None:
    history = [scored(0, shade=50), scored(1, areas=50)]
    assert weakest_skill(history, ["areas", "shade"]) == "shade"


def test_repeats_come_after_1_7_and_30_days() -> None:
    assert REPEAT_DAYS == (1, 7, 30)
    assert due_days(tried(0)) == [1]
    assert due_days(tried(0), tried(1)) == [1 + 7]
    assert due_days(tried(0), tried(1), tried(8)) == [8 + 30]
    assert due_days(tried(0), tried(1), tried(8), tried(38)) == []
    # Whoever comes late is due later, and nothing falls due twice.
    assert due_days(tried(0), tried(5)) == [5 + 7]
    # What is done stays done.
    assert due_days(tried(0), tried(1), tried(8), tried(38), tried(39)) == []


def test_too_early_changes_nothing_and_failing_begins_again() -> None:
    assert due_days(tried(0), tried(0.1), tried(0.2)) == [1]
    assert due_days(tried(0), tried(1), tried(3)) == [8]
    assert due_days(tried(0), tried(1), tried(8, PASSED - 1)) == [9]
    assert due_days(tried(0), tried(1), tried(2, 10.0)) == [3]
    assert due_days(tried(0, 10.0)) == [1]
    # The first pass after a failure counts as the first try, not as a repeat.
    assert due_days(tried(0, 10.0), tried(0.2)) == [1]
    assert due_days(tried(0, 10.0), tried(4)) == [5]
    assert due_days(tried(0, 10.0), tried(4), tried(5)) == [12]


def test_exercises_are_repeated_each_on_its_own() -> None:
    waiting = repeats([tried(0, exercise="b"), tried(0.1, exercise="a"), tried(1, exercise="b")])
    assert [(one.last.exercise, one.after_days, one.done, one.of) for one in waiting] == [
        ("a", 1, 0, 3),
        ("b", 7, 1, 3),
    ]
    assert [one.last.exercise for one in due(waiting, DAY_0)] == []
    assert [one.last.exercise for one in due(waiting, DAY_0 + timedelta(1))] == ["a"]
    assert len(due(waiting, DAY_0 + timedelta(8))) == 2


def test_other_days_may_be_set() -> None:
    assert due_days(tried(0), tried(2), days=(2, 5)) == [7]
    assert due_days(tried(0), tried(2), tried(7), days=(2, 5)) == []


def test_a_day_ends_where_the_trainee_lives() -> None:
    evening = tried(0.5)  # 22:05 by UTC
    assert due_days(evening) == [1]
    assert due_days(evening, zone=timezone(timedelta(hours=9))) == [2]


def test_thresholds_for_another_share_are_brought_to_one() -> None:
    """Quantiles of the normal distribution from memory: 0.6745 at 3/4, 0.9674 at 5/6."""
    (point,) = threshold_curve([tried(1, details={"threshold_dl": 1.0, "threshold_sd": 0.1})])
    assert point.threshold_dl == pytest.approx(0.9674 / 0.6745, abs=1e-3)
    assert point.sd_dl == pytest.approx(0.1 * point.threshold_dl)


def test_thresholds_are_taken_from_details() -> None:
    history = [
        tried(2, details={"threshold_dl": 1.1, "threshold_sd": 0.2, "threshold_share": 0.8333}),
        tried(0, details={"threshold_dl": 2, "threshold_share": 0.8333}),
        tried(1, details={"threshold_dl": "much"}),
        tried(3),
    ]
    points = [(one.threshold_dl, one.sd_dl) for one in threshold_curve(history)]
    assert points == [(2.0, 0.0), (1.1, 0.2)]


@given(
    st.lists(st.tuples(st.floats(0, 400), st.sampled_from("abc"), st.floats(0, 100)), max_size=25),
    st.randoms(),
)
def test_repeats_never_lie_before_the_last_counted_try(
    told: list[tuple[float, str, float]], lots: Random
) -> None:
    history = [tried(day, score, exercise=name) for day, name, score in told]
    waiting = repeats(history)
    if len({one.finished_at for one in history}) == len(history):
        assert repeats(lots.sample(history, len(history))) == waiting
    assert len({one.last.exercise_hash for one in waiting}) == len(waiting)
    for one in waiting:
        own = [a.finished_at.date() for a in history if a.exercise_hash == one.last.exercise_hash]
        assert min(own) < one.due_on <= max(own) + timedelta(REPEAT_DAYS[-1])
        assert 0 <= one.done < one.of
        assert one.last.finished_at.date() == max(own)
    assert [one.due_on for one in waiting] == sorted(one.due_on for one in waiting)
