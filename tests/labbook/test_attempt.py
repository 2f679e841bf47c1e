"""What an attempt refuses, and the form it is kept in."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone

import pytest

from stainmap.errors import LabbookError
from stainmap.labbook.attempt import Attempt, canonical_json, trainee_code

NOON = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)


def attempt(**changes: object) -> Attempt:
    told: dict[str, object] = {
        "trainee": "AB",
        "exercise": "Find zones and accents",
        "exercise_hash": "a" * 64,
        "kind": "find areas",
        "seed": 7,
        "started_at": NOON,
        "finished_at": NOON + timedelta(minutes=8),
        "score": 81.5,
        "skills": {"finding areas": 81.5},
        "details": {"coats": [1, 2], "why": "Ä"},
    } | changes
    return Attempt(**told)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("typed", "kept"),
    [("ab", "AB"), ("  a.b ", "A.B"), ("group 3", "GROUP 3"), ("żó-07", "ŻÓ-07")],
)
def test_codes_are_brought_to_one_form(typed: str, kept: str) -> None:
    assert trainee_code(typed) == kept
    assert trainee_code(kept) == kept


@pytest.mark.parametrize("typed", ["", "   ", "a/b", "..", "a\0b", "x" * 25, "-a", "a--b", "<b>"])
def test_what_is_no_code_gets_a_sentence(typed: str) -> None:
    with pytest.raises(LabbookError) as caught:
        trainee_code(typed)
    assert caught.value.advice


@pytest.mark.parametrize(
    "changes",
    [
        {"score": 100.1},
        {"score": float("nan")},
        {"skills": {"finding areas": -1.0}},
        {"skills": {"": 50.0}},
        {"seed": -1},
        {"seed": 2**31},
        {"exercise_hash": "A" * 64},
        {"pack_hash": "a" * 63},
        {"exercise": "  "},
        {"kind": "x" * 61},
        {"started_at": datetime(2026, 3, 1, 12, 0)},  # noqa: DTZ001 - that is what is refused
        {"finished_at": NOON - timedelta(seconds=1)},
        {"details": {"score": float("inf")}},
        {"details": {"when": NOON}},
    ],
)
def test_nonsense_is_refused(changes: dict[str, object]) -> None:
    with pytest.raises(LabbookError):
        attempt(**changes)


def test_times_become_utc() -> None:
    east = timezone(timedelta(hours=9))
    one = attempt(started_at=NOON.astimezone(east), finished_at=NOON + timedelta(minutes=1))
    assert one.started_at.tzinfo is UTC
    assert one.started_at == NOON
    assert one.minutes == 1.0


def test_canonical_json_is_one_form() -> None:
    assert canonical_json({"b": 1, "a": [True, None]}) == '{"a":[true,null],"b":1}'
    assert canonical_json({"a": [True, None], "b": 1}) == canonical_json(
        {"b": 1, "a": [True, None]}
    )
