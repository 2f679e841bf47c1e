"""Random changes of good files: whatever comes out is a sentence or a sound mesh.

The seed is fixed, so a failure comes again. `STAINMAP_MORE=1` tries fifty times as many cases, with
another seed each day; `STAINMAP_FUZZ` gives a number of cases. One case is looked at with
``tests.malformed.fuzz.case(seed, number)``.
"""

from __future__ import annotations

import datetime as dt
import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
CASES = 2400


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no limits for a process")
def test_random_changes_are_read_or_refused(
    record_property: Callable[[str, object], None],
) -> None:
    more = bool(os.environ.get("STAINMAP_MORE"))
    count = int(os.environ.get("STAINMAP_FUZZ", 50 * CASES if more else CASES))
    seed = dt.datetime.now(tz=dt.UTC).toordinal() if more else 20_260
    record_property("cases", count)
    record_property("seed", seed)

    def limited() -> None:
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (4 << 30, 4 << 30))

    done = subprocess.run(
        [sys.executable, "-m", "tests.malformed.fuzz", str(seed), str(count)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
        preexec_fn=limited,
    )
    lines = [json.loads(line) for line in done.stdout.splitlines()]
    assert done.returncode == 0, f"died after {lines[-1:]}: {done.stderr[-1500:]}"
    assert lines[-1] == {"done": count}
    assert [line for line in lines if "wrong" in line] == []
