"""Unsaved work survives a program that is killed."""

from __future__ import annotations

import subprocess
import sys
import time
from dataclasses import replace
from pathlib import Path

from stainmap.files.case_file import read_case
from stainmap.files.recovery import Journal, abandoned
from tests.builders import dome_case

ROOT = Path(__file__).resolve().parents[2]

KILLED = """
import os, signal, sys, time
from dataclasses import replace
from pathlib import Path
from stainmap.files.recovery import Journal
from tests.builders import dome_case
journal = Journal(Path(sys.argv[1]), delay_s=0.05)
case = dome_case(6, 12)
for number in range(3):
    journal.note(replace(case, notes=str(number)))
end = time.monotonic() + 20
while time.monotonic() < end and not journal.path.exists():
    time.sleep(0.02)
print("kept", flush=True)
time.sleep(30)
"""


def test_a_killed_program_leaves_its_newest_state(tmp_path: Path) -> None:
    folder = tmp_path / "recovered"
    program = subprocess.Popen(
        [sys.executable, "-c", KILLED, str(folder)], cwd=ROOT, stdout=subprocess.PIPE, text=True
    )
    with program:
        assert program.stdout is not None
        assert program.stdout.readline().strip() == "kept"
        assert abandoned(folder) == ()
        program.kill()
    (left,) = abandoned(folder)
    assert read_case(left.path).notes == "2"
    left.discard()
    assert abandoned(folder) == ()


def test_saved_work_leaves_nothing(tmp_path: Path) -> None:
    journal = Journal(tmp_path, delay_s=0.01)
    journal.note(dome_case(6, 12))
    end = time.monotonic() + 10
    while not journal.path.exists() and time.monotonic() < end:
        time.sleep(0.01)
    assert journal.path.exists()
    journal.clear()
    journal.close(keep=False)
    assert list(tmp_path.iterdir()) == []


def test_closing_with_unsaved_work_keeps_it(tmp_path: Path) -> None:
    journal = Journal(tmp_path, delay_s=60.0)
    journal.note(replace(dome_case(6, 12), notes="unsaved"))
    journal.close(keep=True)
    (left,) = abandoned(tmp_path)
    assert read_case(left.path).notes == "unsaved"
