"""Killed at any moment (SIGKILL), a session loses at most the step that was under way.

The file on disk is the one before or the one after the last save, whole. STAINMAP_MORE=1 kills
fifty times instead of eight.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest

from stainmap.app.session import Session
from stainmap.files.case_file import read_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.files.recovery import abandoned
from tests.app.session_moves import digest

ROOT = Path(__file__).resolve().parents[2]
ROUNDS = 50 if os.environ.get("STAINMAP_MORE") else 8
# Alone on the machine: what is kept is written beside the work, and a hand that is quicker than any
# real one must not meet other tests that hold up the disk.
pytestmark = [
    pytest.mark.skipif(not hasattr(os, "fork"), reason="workers are forked"),
    pytest.mark.alone,
]


def outcome_of(folder: Path) -> tuple[str, int, float]:
    """Return where the newest state was found, of how many moves states were lost, how old, s.

    A move may make several states: four steps of undo in one breath.
    """
    log = [json.loads(line) for line in (folder / "log").read_text().splitlines()]
    killed_s = float((folder / "killed").read_text())
    moves, states = 0, []
    for entry in log:
        moves += entry["what"] == "move"
        if entry["what"] == "state":
            states.append(entry | {"move": moves})
    digests = [entry["digest"] for entry in states]
    saves = [entry["digest"] for entry in log if entry["what"] == "saving"]
    saved = sum(entry["what"] == "saved" for entry in log)

    def place(found: str) -> int:
        assert found in digests, "what was found was never made"
        return len(digests) - 1 - digests[::-1].index(found)

    best, where = -1, "nowhere"
    file = folder / "case.stainmap"
    if file.exists():
        on_disk = digest(read_case(file))
        assert on_disk in saves[max(saved - 1, 0) : saved + 1], "neither the old nor the new file"
        best, where = place(on_disk), "file"
    else:
        assert saved == 0, "the file is gone"
    left = abandoned(folder / "kept")
    if left:
        session = Session(starter_catalogue(), threaded=False)
        session._predicting._jobs.start = lambda *_args, **_notices: None  # type: ignore[assignment, method-assign, return-value]
        session.recover(left[0])
        assert session.problem is None
        assert session.case is not None
        if place(digest(session.case)) > best:
            best, where = place(digest(session.case)), "journal"
        session.close()
    lost = states[best + 1 :]
    return (
        where,
        len({entry["move"] for entry in lost}),
        max((killed_s - entry["at_s"] for entry in lost), default=0.0),
    )


def test_killed_at_random_moments(
    tmp_path: Path, record_property: Callable[[str, object], None]
) -> None:
    command = [sys.executable, "-m", "tests.app.killed_session", str(tmp_path), str(ROUNDS), "7"]
    subprocess.run(command, cwd=ROOT, check=True, timeout=60 + 20 * ROUNDS)
    found: Counter[str] = Counter()
    lost: Counter[int] = Counter()
    oldest_s = 0.0
    for number in range(ROUNDS):
        where, count, age_s = outcome_of(tmp_path / str(number))
        found[where] += 1
        lost[count] += 1
        oldest_s = max(oldest_s, age_s)
        assert count <= 1, f"round {number}: more than the step under way is lost"
    assert found["journal"] > 0
    record_property("found in", dict(found))
    record_property("moves lost", dict(lost))
    record_property("oldest state lost, s", oldest_s)
