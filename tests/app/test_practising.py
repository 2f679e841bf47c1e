"""What to practise next, and results that are kept whatever happens to the lab book."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

from stainmap.app.practising import (
    PracticeBook,
    Sitting,
    attempt_of,
    fresh_exercise,
    level_reached,
    next_exercise,
)
from stainmap.errors import LabbookError
from stainmap.labbook.attempt import Attempt
from stainmap.practice.exercise import FACTS, Kind, Skill, exercise

TODAY = date(2026, 5, 20)
NOON = datetime(2026, 5, 20, 12, tzinfo=UTC)


def tried(
    kind: Kind, score: float, *, seed: int = 1, level: int = 1, days_ago: float = 0.0
) -> Attempt:
    packed = exercise(kind, seed, level)
    at = NOON - timedelta(days=days_ago)
    return Attempt(
        trainee="AB",
        exercise=packed.name,
        exercise_hash=packed.sha256,
        kind=packed.kind,
        seed=seed,
        started_at=at,
        finished_at=at,
        score=score,
        skills={skill.value: score for skill in FACTS[kind].skills},
        details={"level": level},
    )


def test_a_newcomer_begins_with_the_first_skill() -> None:
    found = next_exercise((), TODAY)
    assert found.exercise.kind == Kind.FIND_AREAS.value
    assert found.exercise.settings == {"level": 1}
    assert "not tried yet" in found.why


def test_a_repeat_that_is_due_comes_first_and_is_the_same_exercise() -> None:
    # Passed a week ago: the repeat after a day is due.
    done = (tried(Kind.CHOOSE_BLOCK, 90.0, seed=4, days_ago=7.0),)
    found = next_exercise(done, TODAY)
    assert found.exercise.sha256 == done[0].exercise_hash
    assert "1 of 3" in found.why
    # Passed today: nothing is due, the next skill is.
    assert next_exercise((tried(Kind.CHOOSE_BLOCK, 90.0),), TODAY).exercise.kind != "choose block"


def test_the_weakest_skill_is_asked_with_a_crown_not_seen_yet() -> None:
    attempts = tuple(
        tried(kind, 30.0 if kind is Kind.LOWER_CUSPS else 95.0)
        for kind in Kind
        if kind is not Kind.BRIDGE_APART
    )
    found = next_exercise(attempts, TODAY)
    assert Skill.VALUE.value in found.why
    assert found.exercise.kind in (Kind.LOWER_CUSPS.value, Kind.BRIDGE_APART.value)
    again = fresh_exercise(Kind.LOWER_CUSPS, attempts)
    assert again.seed != 1


def test_good_tries_make_the_next_ones_harder() -> None:
    good = [tried(Kind.FEW_JARS, 95.0, seed=k) for k in (1, 2, 3)]
    assert level_reached(good[:2]) == 1
    assert level_reached(good) == 2
    assert level_reached([*good, tried(Kind.FEW_JARS, 20.0, seed=4)]) == 1
    harder = [tried(Kind.FEW_JARS, 95.0, seed=k, level=2) for k in (5, 6, 7)]
    assert level_reached([*good, *harder]) == 3


def test_attempts_of_packs_and_other_versions_do_not_stop_practice() -> None:
    foreign = Attempt(
        trainee="AB",
        exercise="something else",
        exercise_hash="0" * 64,
        kind="juggling",
        seed=1,
        started_at=NOON - timedelta(days=9),
        finished_at=NOON - timedelta(days=9),
        score=90.0,
    )
    assert next_exercise((foreign,), TODAY).exercise.kind == Kind.FIND_AREAS.value


def test_results_are_kept_and_found_again(tmp_path: Path) -> None:
    book = PracticeBook(tmp_path / "book.sqlite")
    assert book.trainees() == ()
    one = attempt_of(
        "ab", exercise(Kind.FEW_JARS, 2), 81.5, {"few coats and jars": 81.5}, started_at=NOON
    )
    assert book.keep(one)
    assert book.trainees() == ("AB",)
    again = PracticeBook(tmp_path / "book.sqlite")
    (kept,) = again.attempts("AB")
    assert kept.score == 81.5
    assert kept.details["level"] == 1


def test_a_book_that_cannot_be_opened_is_said_and_practice_goes_on(tmp_path: Path) -> None:
    (tmp_path / "folder").write_text("in the way", encoding="utf-8")
    book = PracticeBook(tmp_path / "folder" / "book.sqlite")
    one = attempt_of("AB", exercise(Kind.FEW_JARS, 2), 50.0, {}, started_at=NOON)
    assert not book.keep(one)
    assert "lab book" in book.trouble
    assert book.attempts("AB") == (one,)
    assert book.trainees() == ("AB",)
    with pytest.raises(LabbookError, match="lab book"):
        book.opened()


def test_a_sitting_says_when_it_is_long_enough() -> None:
    sitting = Sitting(began_at=NOON)
    assert sitting.words(NOON + timedelta(minutes=14)) == ""
    assert "for 16 minutes" in sitting.words(NOON + timedelta(minutes=16))
