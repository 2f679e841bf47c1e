"""Unsaved work survives a program that is killed, and damage to what it left."""

from __future__ import annotations

import os
import subprocess
import sys
import threading
from dataclasses import replace
from pathlib import Path

import pytest

from stainmap.errors import CaseFileError, StainmapError
from stainmap.files import journal as journal_module
from stainmap.files.case_file import write_case
from stainmap.files.journal import Journal
from stainmap.files.journal_state import ENTRIES, highest_revision, read_state, state_paths
from stainmap.files.recovery import Recovered, abandoned
from stainmap.model.case import Case
from tests.builders import dome_case

ROOT = Path(__file__).resolve().parents[2]

KILLED = """
import sys, time
from dataclasses import replace
from pathlib import Path
from stainmap.files.journal import Journal
from tests.builders import dome_case
journal = Journal(Path(sys.argv[1]))
case = dome_case(6, 12)
for number in range(3):
    journal.note(replace(case, notes=str(number)))
journal.flush()
print("kept", flush=True)
time.sleep(30)
"""


def small(notes: str = "") -> Case:
    return replace(dome_case(6, 12), notes=notes)


def test_a_killed_program_leaves_its_newest_state(tmp_path: Path) -> None:
    folder = tmp_path / "recovered"
    program = subprocess.Popen(
        [sys.executable, "-c", KILLED, str(folder)], cwd=ROOT, stdout=subprocess.PIPE, text=True
    )
    with program:
        assert program.stdout is not None
        assert program.stdout.readline().strip() == "kept"
        assert abandoned(folder) == (), "it still runs"
        program.kill()
    (left,) = abandoned(folder)
    assert left.read().notes == "2"
    left.discard()
    assert abandoned(folder) == ()
    assert list(folder.iterdir()) == []


def test_saved_work_leaves_nothing(tmp_path: Path) -> None:
    journal = Journal(tmp_path)
    journal.note(small())
    assert journal.flush()
    assert state_paths(journal.folder)
    journal.forget()
    assert journal.flush()
    assert not state_paths(journal.folder)
    assert list((journal.folder / ENTRIES).iterdir()) == []
    journal.close(keep=True)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("keep", [True, False])
def test_closing_keeps_unsaved_work_or_drops_it(tmp_path: Path, *, keep: bool) -> None:
    journal = Journal(tmp_path)
    journal.note(small("unsaved"))
    journal.close(keep=keep)
    assert [one.read().notes for one in abandoned(tmp_path)] == (["unsaved"] if keep else [])


def left_behind(folder: Path, *notes: str) -> Recovered:
    """Return what a journal leaves that has kept some states, one after another."""
    journal = Journal(folder)
    case = small()
    for one in notes:
        journal.note(replace(case, notes=one))
        assert journal.flush()
    journal.close(keep=True)
    return abandoned(folder)[0]


def test_what_states_share_is_written_once(tmp_path: Path) -> None:
    journal = Journal(tmp_path)
    case = small()
    journal.note(case)
    assert journal.flush()
    entries = journal.folder / ENTRIES
    first = {path.name: path.stat().st_ino for path in entries.iterdir()}
    zones = case.zones.copy()
    zones[:5] = 3
    journal.note(replace(case, zones=zones))
    assert journal.flush()
    after = {path.name: path.stat().st_ino for path in entries.iterdir()}
    # Only the new zones; everything else lies there as it did.
    assert len(set(after) - set(first)) == 1
    assert all(after[name] == first[name] for name in set(first) & set(after))
    # Two states are kept; of the first nothing is left when a third has come.
    journal.note(replace(case, notes="third"))
    assert journal.flush()
    assert len(state_paths(journal.folder)) == 2
    named = {
        digest
        for path in state_paths(journal.folder)
        for digest, _ in read_state(path).entries.values()  # type: ignore[union-attr]
    }
    assert {path.name for path in entries.iterdir()} == named
    journal.close(keep=False)


def test_the_highest_revision_counts_and_no_date_does(tmp_path: Path) -> None:
    left = left_behind(tmp_path, "older", "newer")
    newest, oldest = state_paths(left.folder)
    os.utime(newest, (0, 0))
    os.utime(oldest, (2e9, 2e9))
    os.utime(left.folder, (0, 0))
    (again,) = abandoned(tmp_path)
    assert again.read().notes == "newer"


@pytest.mark.parametrize("harm", ["flipped", "cut short", "gone", "entry flipped", "entry gone"])
def test_a_damaged_state_gives_way_to_the_one_before(tmp_path: Path, harm: str) -> None:
    left = left_behind(tmp_path, "older", "newer")
    path = state_paths(left.folder)[0]
    state = read_state(path)
    assert state is not None
    if harm.startswith("entry"):
        path = left.folder / ENTRIES / state.entries["case.json"][0]
    content = bytearray(path.read_bytes())
    if harm.endswith("gone"):
        path.unlink()
    elif harm == "cut short":
        path.write_bytes(content[: len(content) // 2])
    else:
        content[len(content) // 2] ^= 1
        path.write_bytes(content)
    (again,) = abandoned(tmp_path)
    assert again.read().notes == "older"


def test_what_is_damaged_beyond_use_is_said_and_stays(tmp_path: Path) -> None:
    left = left_behind(tmp_path, "only")
    for path in (left.folder / ENTRIES).iterdir():
        content = bytearray(path.read_bytes())
        content[-1] ^= 1
        path.write_bytes(content)
    (again,) = abandoned(tmp_path)
    with pytest.raises(CaseFileError, match="damaged"):
        again.read()
    assert again.folder.exists()


def test_work_that_was_carried_on_comes_before_what_it_came_from(tmp_path: Path) -> None:
    first = left_behind(tmp_path, "a", "b", "c")
    second = left_behind(tmp_path, "d")
    assert second.revision > first.revision
    assert [one.read().notes for one in abandoned(tmp_path)] == ["d", "c"]
    assert highest_revision(tmp_path) == second.revision


def test_a_program_killed_before_it_kept_anything_leaves_nothing(tmp_path: Path) -> None:
    (tmp_path / "123-abc" / ENTRIES).mkdir(parents=True)
    assert abandoned(tmp_path) == ()
    assert list(tmp_path.iterdir()) == []


def test_what_is_recovered_is_let_go_only_when_it_is_kept_again(tmp_path: Path) -> None:
    left = left_behind(tmp_path, "work")
    gate, journal = threading.Event(), Journal(tmp_path)
    journal.note(left.read(), then=gate.set)
    assert gate.wait(10.0)
    assert state_paths(journal.folder)
    journal.close(keep=False)


def test_a_full_disk_is_said_and_the_work_is_kept_once_there_is_room(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told: list[StainmapError | None] = []
    journal = Journal(tmp_path, on_problem=told.append)
    monkeypatch.setattr(journal_module, "_RETRY_S", 0.05)

    def full(_handle: int) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as disk:
        disk.setattr(os, "fsync", full)
        journal.note(small("first"))
        assert not journal.flush()
        assert "full" in str(journal.problem)
    assert journal.flush(5.0) or journal.problem is not None
    for _ in range(100):
        if journal.problem is None:
            break
        threading.Event().wait(0.05)
    assert journal.problem is None
    assert told[0] is not None
    assert told[-1] is None
    journal.close(keep=True)
    assert abandoned(tmp_path)[0].read().notes == "first"


def test_noting_does_not_wait_for_the_disk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    journal, hung = Journal(tmp_path), threading.Event()
    monkeypatch.setattr(os, "fsync", lambda _handle: hung.wait(10.0))
    finished = threading.Event()

    def work() -> None:
        for number in range(100):
            journal.note(small(str(number)))
        journal.forget()
        journal.note(small("last"))
        finished.set()

    threading.Thread(target=work, daemon=True).start()
    assert finished.wait(5.0), "an edit waited for the disk"
    hung.set()
    journal.close(keep=True)
    assert abandoned(tmp_path)[0].read().notes == "last"


def test_no_place_for_a_journal_is_a_sentence(tmp_path: Path) -> None:
    (tmp_path / "recovery").write_text("a file in the way")
    with pytest.raises(StainmapError, match="not a folder"):
        Journal(tmp_path / "recovery")


def test_what_was_saved_where_is_known_again(tmp_path: Path) -> None:
    path = tmp_path / "crown.stainmap"
    write_case(small(), path)
    journal = Journal(tmp_path / "kept")
    journal.note(small("more"), file=path, file_digest="0" * 64)
    journal.close(keep=True)
    (left,) = abandoned(tmp_path / "kept")
    assert left.file == path
    assert left.file_digest == "0" * 64
    assert left.label == "T-0001, crown.stainmap"
