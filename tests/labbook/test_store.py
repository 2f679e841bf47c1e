"""The lab book keeps what it is given, whatever else happens to its file."""

from __future__ import annotations

import sqlite3
import subprocess
import sys
import threading
import time
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from stainmap.errors import LabbookError
from stainmap.labbook.attempt import Attempt, KeptPack
from stainmap.labbook.opening import open_labbook
from stainmap.labbook.store import Labbook

NOON = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)
ROOT = Path(__file__).resolve().parents[2]


def attempt(number: int, trainee: str = "AB", **changes: object) -> Attempt:
    told = Attempt(
        trainee=trainee,
        exercise="Reach a shade",
        exercise_hash=f"{number % 16:x}" * 64,
        kind="reach shade",
        seed=number,
        started_at=NOON + timedelta(days=number),
        finished_at=NOON + timedelta(days=number, minutes=9),
        score=50.0 + number % 50,
        skills={"reaching a shade": 50.0, "mixing jars": 12.5},
        details={"coats": {"body": 2}, "text": "Käse\n\u2603", "deep": [[1], {"a": None}]},
    )
    return replace(told, **changes)  # type: ignore[arg-type]


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "data of a user %41" / "labbook.sqlite"


@pytest.fixture
def book(path: Path) -> Labbook:
    return open_labbook(path)


def test_attempts_come_back_as_they_were(book: Labbook, path: Path) -> None:
    kept = [attempt(2), attempt(1, pack_hash="b" * 64), attempt(3, "cd 7", skills={})]
    for one in kept:
        book.keep(one)
    again = open_labbook(path)
    assert again.remark == ""
    assert list(again.attempts()) == sorted(kept, key=lambda one: one.finished_at)
    assert again.attempts("ab") == (kept[1], kept[0])
    assert again.attempts(pack_hash="b" * 64) == (kept[1],)
    assert again.attempts("Cd 7", pack_hash="b" * 64) == ()
    assert again.attempts("nobody") == ()
    assert again.trainees() == ("AB", "CD 7")


def test_an_attempt_kept_twice_is_there_once(book: Labbook) -> None:
    one = attempt(1)
    book.keep(one)
    book.keep(replace(one, score=99.0))
    assert book.attempts() == (one,)


def test_packs_are_kept_once_by_their_hash(book: Labbook) -> None:
    pack = KeptPack(sha256="c" * 64, title="Molars", content=b"{}\x00\xff")
    book.keep_pack(pack)
    book.keep_pack(replace(pack, title="another name"))
    other = replace(pack, sha256="d" * 64)
    book.keep_pack(other)
    assert book.packs() == (pack, other)


def test_repeats_are_kept_per_trainee(book: Labbook) -> None:
    assert book.repeat_days("AB") is None
    book.set_repeat_days("AB", (1, 3, 14))
    book.set_repeat_days("CD", (5,))
    book.set_repeat_days("ab", (2, 10))
    assert book.repeat_days("AB") == (2, 10)
    assert book.repeat_days("CD") == (5,)
    book.set_repeat_days("AB", None)
    assert book.repeat_days("AB") is None
    for wrong in ((), (0, 3), (3, 3), (7, 1), (1, 4000), tuple(range(1, 12))):
        with pytest.raises(LabbookError, match="do not fit"):
            book.set_repeat_days("CD", wrong)
    assert book.repeat_days("CD") == (5,)


def test_a_trainee_with_attempts_cannot_vanish(book: Labbook, path: Path) -> None:
    """Foreign keys are on: what refers to a trainee holds him."""
    book.keep(attempt(1))
    with (
        book._engine.execution_options(stainmap_writes=True).begin() as connection,
        pytest.raises(Exception, match="FOREIGN KEY"),
    ):
        connection.exec_driver_sql("DELETE FROM practice_trainees")
    assert len(book.attempts()) == 1


def test_an_attempt_is_kept_whole_or_not_at_all(book: Labbook) -> None:
    one = attempt(1)
    object.__setattr__(one, "skills", {"fine": 10.0, "broken": 1000.0})
    with pytest.raises(LabbookError, match="cannot be used"):
        book.keep(one)
    assert book.attempts() == ()
    assert book.trainees() == ()


WRITER = """
import sys
from pathlib import Path
from datetime import UTC, datetime
from stainmap.labbook.attempt import Attempt, KeptPack
from stainmap.labbook.opening import open_labbook
path, trainee = Path(sys.argv[1]), sys.argv[2]
print("ready", flush=True)
sys.stdin.readline()
book = open_labbook(path)
for number in range(25):
    now = datetime.now(UTC)
    book.keep(Attempt(trainee=trainee, exercise="x", exercise_hash="e" * 64, kind="k", seed=number,
        started_at=now, finished_at=now, score=number, skills={"s": number}))
print(book.remark or "done", flush=True)
"""


def test_two_processes_make_and_write_one_book_at_once(path: Path) -> None:
    writers = [
        subprocess.Popen(
            [sys.executable, "-W", "error", "-c", WRITER, str(path), name],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            cwd=ROOT,
        )
        for name in ("AB", "CD")
    ]
    for one in writers:
        assert one.stdout is not None
        assert one.stdout.readline() == "ready\n", one.communicate()[1]
    for one in writers:
        assert one.stdin is not None
        one.stdin.write("go\n")
        one.stdin.flush()
    answers = [one.communicate(timeout=60) for one in writers]
    assert [out for out, _ in answers] == ["done\n", "done\n"], answers
    book = open_labbook(path)
    for name in ("AB", "CD"):
        assert [one.seed for one in book.attempts(name)] == list(range(25))
    assert [one.name for one in path.parent.glob("*.damaged*")] == []


def test_what_was_kept_before_a_kill_is_there(path: Path) -> None:
    endless = WRITER.replace("range(25)", "range(100_000)").replace(
        'skills={"s": number}))', 'skills={"s": number, "t": 1})); print(number, flush=True)'
    )
    with subprocess.Popen(
        [sys.executable, "-c", endless, str(path), "AB"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        cwd=ROOT,
    ) as writer:
        assert writer.stdin is not None
        assert writer.stdout is not None
        writer.stdin.write("go\n")
        writer.stdin.flush()
        told = [writer.stdout.readline() for _ in range(9)]
        writer.kill()
    assert told == ["ready\n", *(f"{number}\n" for number in range(8))]
    book = open_labbook(path)
    assert book.remark == ""
    found = book.attempts()
    assert len(found) >= 8
    # Without a gap from the first to the last, and each with all of its skills.
    assert [one.seed for one in found] == list(range(len(found)))
    assert all(set(one.skills) == {"s", "t"} for one in found)


def test_a_lock_is_waited_for_and_then_said(book: Labbook, path: Path) -> None:
    holder = sqlite3.connect(path, isolation_level=None, check_same_thread=False)
    holder.execute("BEGIN EXCLUSIVE")
    begun = time.monotonic()
    with pytest.raises(LabbookError, match="writing into the lab book all the time"):
        open_labbook(path, wait_s=0.2)
    assert time.monotonic() - begun < 5.0
    timer = threading.Timer(0.4, lambda: holder.execute("ROLLBACK"))
    timer.start()
    book.keep(attempt(1))
    timer.join()
    holder.close()
    assert len(book.attempts()) == 1


@pytest.mark.parametrize(
    "content",
    [b"no database at all, but long enough to look like one" * 40, "header", "middle"],
)
def test_a_damaged_book_is_kept_aside(book: Labbook, path: Path, content: bytes | str) -> None:
    for number in range(40):
        book.keep(attempt(number))
    whole = path.read_bytes()
    if content == "header":
        damaged = b"\x00" * 100 + whole[100:]
    elif content == "middle":
        assert len(whole) > 6 * 4096
        damaged = whole[:4096] + b"\xaa" * 4096 * 4 + whole[5 * 4096 :]
    else:
        assert isinstance(content, bytes)
        damaged = content
    path.write_bytes(damaged)
    again = open_labbook(path)
    (aside,) = path.parent.glob("labbook.damaged.*.sqlite")
    assert aside.read_bytes() == damaged
    assert aside.name in again.remark
    assert again.remark.count(".") >= 1
    assert again.attempts() == ()
    again.keep(attempt(1))
    assert open_labbook(path).remark == ""
    assert len(open_labbook(path).attempts()) == 1


def test_damage_under_an_open_book_is_a_sentence(book: Labbook, path: Path) -> None:
    book.keep(attempt(1))
    path.write_bytes(b"\x00" * 4096)
    with pytest.raises(LabbookError, match="damaged") as caught:
        book.attempts()
    assert str(path) in str(caught.value)


@pytest.mark.parametrize(
    "change", ["details = '{'", "details = '3'", "exercise_sha256 = 'x'", "seed = -1"]
)
def test_an_entry_changed_by_hand_is_a_sentence(book: Labbook, path: Path, change: str) -> None:
    book.keep(attempt(1))
    connection = sqlite3.connect(path)
    connection.execute(f"UPDATE practice_attempts SET {change}")  # noqa: S608 - given above
    connection.commit()
    connection.close()
    with pytest.raises(LabbookError, match="Attempt 1 in the lab book cannot be read"):
        book.attempts()


def test_a_book_that_vanished_is_a_sentence(book: Labbook, path: Path) -> None:
    path.unlink()
    with pytest.raises(LabbookError, match="cannot be opened"):
        book.keep(attempt(1))
    assert not path.exists()


def test_a_newer_book_is_refused_and_untouched(book: Labbook, path: Path) -> None:
    connection = sqlite3.connect(path)
    connection.execute("UPDATE labbook_version SET version_num = '0917'")
    connection.commit()
    connection.close()
    before = path.read_bytes()
    with pytest.raises(LabbookError, match=r"newer version .* \(version 0917"):
        open_labbook(path)
    assert path.read_bytes() == before
    assert [one.suffix for one in path.parent.iterdir() if "damaged" in one.name] == []


def test_somebody_elses_database_is_refused_and_untouched(path: Path) -> None:
    path.parent.mkdir()
    connection = sqlite3.connect(path)
    connection.execute("CREATE TABLE songs (title TEXT)")
    connection.commit()
    connection.close()
    before = path.read_bytes()
    with pytest.raises(LabbookError, match="no lab book"):
        open_labbook(path)
    assert path.read_bytes() == before


def test_a_folder_in_the_way_is_a_sentence(path: Path) -> None:
    path.mkdir(parents=True)
    with pytest.raises(LabbookError):
        open_labbook(path)
    file = path.parent / "file"
    file.write_text("x")
    with pytest.raises(LabbookError, match="cannot be kept here"):
        open_labbook(file / "labbook.sqlite")
