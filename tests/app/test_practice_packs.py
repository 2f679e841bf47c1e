"""What came out of a pack is repeated out of the pack, without its file."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from stainmap.app.practice_packs import exercises_kept, kept_pack
from stainmap.app.practising import PracticeBook, next_exercise
from stainmap.errors import LabbookError
from stainmap.labbook.attempt import Attempt, KeptPack
from stainmap.practice.exercise import Kind, exercise
from stainmap.practice.packs import Pack

# No exercise of the program's own: the spread of individuals is one that no level has.
OWN = replace(exercise(Kind.FIND_AREAS, 5), variation=0.25, name="An instructor's own")
PACK = Pack(title="Invented", exercises=(OWN, exercise(Kind.DARK_STUMP, 3)))
NOW = datetime.now(UTC)


def tried(days_ago: float, pack_hash: str | None) -> Attempt:
    then = NOW - timedelta(days=days_ago)
    return Attempt(
        trainee="AB",
        exercise=OWN.name,
        exercise_hash=OWN.sha256,
        kind=OWN.kind,
        seed=OWN.seed,
        started_at=then,
        finished_at=then,
        score=90.0,
        skills={"finding areas": 90.0},
        details={"level": 1},
        pack_hash=pack_hash,
    )


def test_a_repeat_from_a_pack_comes_out_of_the_lab_book(tmp_path: Path) -> None:
    path = tmp_path / "labbook.sqlite"
    PracticeBook(path).keep_pack(PACK)
    book = PracticeBook(path)
    book.keep(tried(2.5, PACK.sha256))
    today = NOW.astimezone().date()
    found = next_exercise(book.attempts("ab"), today, from_packs=book.from_packs())
    assert (found.exercise, found.pack_hash) == (OWN, PACK.sha256)
    assert "repeat is due: 1 of 3" in found.why
    # Without the pack it cannot be made; the weakest skill is next instead.
    other = next_exercise(book.attempts("ab"), today)
    assert other.exercise.sha256 != OWN.sha256
    assert other.pack_hash == ""


def test_own_days_count_for_what_is_next(tmp_path: Path) -> None:
    book = PracticeBook(tmp_path / "labbook.sqlite")
    book.keep_pack(PACK)
    book.keep(tried(2.5, PACK.sha256))
    assert book.repeat_days("AB") is None
    book.set_repeat_days("AB", (5, 20))
    assert book.repeat_days("AB") == (5, 20)
    today = NOW.astimezone().date()
    days = book.repeat_days("AB") or ()
    found = next_exercise(book.attempts("AB"), today, days=days, from_packs=book.from_packs())
    assert found.pack_hash == ""
    with pytest.raises(LabbookError, match="do not fit"):
        book.set_repeat_days("AB", (9, 3))


def test_packs_of_another_version_are_passed_over() -> None:
    unknown = KeptPack(sha256="a" * 64, title="from afar", content=b'{"format": "?"}')
    found = exercises_kept([unknown, kept_pack(PACK)])
    assert set(found) == {(PACK.sha256, one.sha256) for one in PACK.exercises}
    assert exercises_kept([unknown]) == {}


def test_a_book_that_cannot_be_opened_is_in_nobodys_way(tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("x")
    book = PracticeBook(blocked / "labbook.sqlite")
    book.keep_pack(PACK)
    assert book.from_packs() == {}
    assert book.repeat_days("AB") is None
    assert "cannot be kept here" in book.trouble
    with pytest.raises(LabbookError, match="cannot be kept here"):
        book.set_repeat_days("AB", (1, 2))
