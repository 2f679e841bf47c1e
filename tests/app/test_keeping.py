"""Where the open case is kept: its file, the journal, and what stands in the way of saving."""

from __future__ import annotations

import shutil
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from stainmap.app.session import Session
from stainmap.errors import CaseFileError, StainmapError
from stainmap.files.case_file import read_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.files.journal import Journal
from stainmap.files.recovery import abandoned
from tests.builders import dome_case

ROOT = Path(__file__).resolve().parents[2]
HOLDER = """
import sys
from pathlib import Path
from stainmap.files.case_lock import CaseLock
lock = CaseLock.take(Path(sys.argv[1]))
print("held" if lock else "refused", flush=True)
sys.stdin.read()
"""


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    """Return a session on a small case that lies in a file, with a journal."""
    one = Session(starter_catalogue(), threaded=False, journal=Journal(tmp_path / "kept"))
    one.adopt(dome_case(6, 12), path=None)
    (tmp_path / "work").mkdir()
    one.save(tmp_path / "work" / "dome.stainmap")
    yield one
    one.close()


def note(session: Session, text: str) -> None:
    session.edit("note", lambda case: replace(case, notes=text))


def kept(tmp_path: Path, session: Session) -> list[str]:
    """Return the notes of what would be there after a crash now."""
    session.keep_now()
    copy = tmp_path / "copy of the journal"
    shutil.rmtree(copy, ignore_errors=True)
    shutil.copytree(tmp_path / "kept", copy)
    return [one.read().notes for one in abandoned(copy)]


def test_every_step_is_kept_and_what_is_saved_is_not(session: Session, tmp_path: Path) -> None:
    assert kept(tmp_path, session) == []
    for text in ("one", "two", "three"):
        note(session, text)
        assert kept(tmp_path, session) == [text]
    session.undo()
    assert kept(tmp_path, session) == ["two"]
    session.undo()
    session.undo()
    assert kept(tmp_path, session) == [], "undone to what is on disk"
    session.redo()
    assert kept(tmp_path, session) == ["one"]
    session.save()
    assert kept(tmp_path, session) == []


def test_a_mesh_just_read_is_kept_before_its_first_edit(tmp_path: Path) -> None:
    one = Session(starter_catalogue(), threaded=False, journal=Journal(tmp_path / "kept"))
    one.adopt(replace(dome_case(6, 12), notes="read"), path=None)
    assert kept(tmp_path, one) == ["read"]
    one.close(keep_unsaved=False)
    assert abandoned(tmp_path / "kept") == ()


def test_recovered_work_goes_back_into_its_file(session: Session, tmp_path: Path) -> None:
    path = session.path
    assert path is not None
    note(session, "lost and found")
    session.close()
    (left,) = abandoned(tmp_path / "kept")
    fresh = Session(starter_catalogue(), threaded=False, journal=Journal(tmp_path / "kept"))
    fresh.recover(left)
    assert fresh.path == path
    assert fresh.is_modified
    fresh.keep_now()
    assert not left.folder.exists(), "kept twice"
    fresh.save()
    assert read_case(path).notes == "lost and found"
    fresh.close()
    assert abandoned(tmp_path / "kept") == ()


def test_recovered_work_does_not_replace_a_file_that_went_on(
    session: Session, tmp_path: Path
) -> None:
    path = session.path
    assert path is not None
    note(session, "left behind")
    session.close()
    other = Session(starter_catalogue(), threaded=False)
    other.open_case(path)
    note(other, "went on")
    other.save()
    other.close()
    (left,) = abandoned(tmp_path / "kept")
    fresh = Session(starter_catalogue(), threaded=False)
    fresh.recover(left)
    assert fresh.case is not None
    assert fresh.case.notes == "left behind"
    assert fresh.path is None
    assert left.folder.exists(), "nothing else keeps it"
    fresh.close()
    assert read_case(path).notes == "went on"


def test_a_case_open_in_another_program_says_by_whom_and_can_be_saved_once_it_is_free(
    tmp_path: Path,
) -> None:
    path = tmp_path / "dome.stainmap"
    first = Session(starter_catalogue(), threaded=False)
    first.adopt(dome_case(6, 12), path=None)
    first.save(path)
    first.close()
    command = [sys.executable, "-c", HOLDER, str(path)]
    with subprocess.Popen(
        command, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as holder:
        assert holder.stdout is not None
        assert holder.stdout.readline().strip() == "held"
        second = Session(starter_catalogue(), threaded=False)
        second.open_case(path)
        assert second.read_only
        assert f"process {holder.pid}" in second.read_only_because
        assert "since" in second.read_only_because
        note(second, "mine")
        with pytest.raises(CaseFileError, match=r"Somebody else has this case open: .*name"):
            second.save()
        holder.kill()
    second.save()
    assert not second.read_only
    assert read_case(path).notes == "mine"
    second.close()


def test_a_file_that_something_else_changed_is_not_overwritten(session: Session) -> None:
    path = session.path
    assert path is not None
    note(session, "mine")
    path.write_bytes(path.read_bytes() + b"\0")
    theirs = path.read_bytes()
    with pytest.raises(CaseFileError, match="changed this file"):
        session.save()
    assert path.read_bytes() == theirs
    assert session.is_modified
    # Whoever names the file knows that it is replaced.
    session.save(path)
    assert read_case(path).notes == "mine"


def test_a_drive_that_vanishes_costs_nothing(session: Session, tmp_path: Path) -> None:
    path = session.path
    assert path is not None
    shutil.rmtree(path.parent)
    note(session, "still here")
    with pytest.raises(StainmapError, match=r"The folder does not exist\. Choose another folder"):
        session.save()
    assert kept(tmp_path, session) == ["still here"]
    session.save(tmp_path / "elsewhere.stainmap")
    assert session.path == tmp_path / "elsewhere.stainmap"
    assert read_case(session.path).notes == "still here"


def test_a_protected_file_is_read_only_and_is_left_alone(session: Session, tmp_path: Path) -> None:
    path = session.path
    assert path is not None
    path.chmod(0o444)
    other = Session(starter_catalogue(), threaded=False)
    session.close()
    other.open_case(path)
    assert other.read_only
    assert other.read_only_because == "The file of this case is write-protected."
    note(other, "mine")
    before = path.read_bytes()
    with pytest.raises(CaseFileError, match="write-protected"):
        other.save()
    assert path.read_bytes() == before
    other.save(tmp_path / "mine.stainmap")
    assert not other.read_only
    other.close()


def test_what_a_killed_save_left_beside_the_file_is_swept(session: Session) -> None:
    path = session.path
    assert path is not None
    litter = path.parent / f".{path.name}.abcd1234.part"
    others = path.parent / ".other.stainmap.abcd1234.part"
    litter.write_bytes(b"half of it")
    others.write_bytes(b"somebody's")
    note(session, "more")
    session.save()
    assert not litter.exists()
    assert others.exists()


def test_saving_in_the_background_saves_what_was_open_then(tmp_path: Path) -> None:
    ended: list[StainmapError | None] = []
    one = Session(starter_catalogue(), threaded=False, journal=Journal(tmp_path / "kept"))
    one.adopt(dome_case(6, 12), path=None)
    note(one, "saved")
    one.save_in_background(tmp_path / "a.stainmap", on_ended=ended.append)
    assert ended == [None]
    assert not one.is_modified
    missing = tmp_path / "nowhere" / "b.stainmap"
    note(one, "not saved")
    one.save_in_background(missing, on_ended=ended.append)
    assert isinstance(ended[1], StainmapError)
    assert one.path == tmp_path / "a.stainmap"
    assert one.is_modified
    assert not list(tmp_path.glob(".*.part"))
    one.close(keep_unsaved=False)
