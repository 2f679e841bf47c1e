"""More than a hundred malformed files: one sentence, or a repaired mesh with a note.

Each is loaded in a process of its own, which may take neither much time nor much memory, must not
die and must not let any other exception out. The limits are several times what the worst
file needs on an idle machine, and far below what such files ask for.
"""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.malformed.files import Malformed, all_files

ROOT = Path(__file__).resolve().parents[2]
MOST_SECONDS = 10.0
MOST_MB = 800.0

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="Windows cannot fork")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("malformed")


@pytest.fixture(scope="module")
def told(folder: Path) -> dict[str, tuple[Malformed, dict[str, Any]]]:
    """Return each file and what came of it, by its name."""
    made = {}
    for one in all_files():
        (folder / one.name).write_bytes(one.content)
        # The contents are large and no longer needed.
        made[one.name] = one._replace(content=b"")
    done = subprocess.run(
        [sys.executable, "-m", "tests.malformed.child", str(folder)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
        timeout=600,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    lines = [json.loads(line) for line in done.stdout.splitlines()]
    for path in folder.iterdir():
        if path.stat().st_size > 1 << 20:
            path.unlink()
    return {line["name"]: (made[line["name"]], line) for line in lines}


def test_there_are_more_than_a_hundred(
    told: dict[str, tuple[Malformed, dict[str, Any]]],
    record_property: Callable[[str, object], None],
) -> None:
    outcomes = [line["outcome"] for _, line in told.values()]
    record_property("malformed files", len(outcomes))
    record_property("refused with a sentence", outcomes.count("refused"))
    record_property("read with a note", outcomes.count("read"))
    assert len(outcomes) > 150
    assert set(outcomes) == {"refused", "read"}
    assert {Path(name).suffix for name in told} >= {".stl", ".ply", ".obj", ".off", ".3mf"}


def test_each_gives_one_sentence_or_a_mesh_with_a_note(
    told: dict[str, tuple[Malformed, dict[str, Any]]],
) -> None:
    wrong = {}
    for name, (made, line) in told.items():
        if line["outcome"] == "refused":
            text = f"{line['message']} {line['advice']}"
            fine = (
                line["where"] == name
                and line["message"].endswith(".")
                and line["advice"].endswith(".")
                and len(text) < 300
                and "\n" not in text
                and "Traceback" not in text
            )
        else:
            text = " ".join(line.get("notes", ()))
            fine = line["outcome"] == "read" and bool(text) and line["faces"] > 0
        if not fine or made.says not in text:
            wrong[name] = (made.says, line)
    assert wrong == {}


def test_none_takes_long_or_much_memory(
    told: dict[str, tuple[Malformed, dict[str, Any]]],
    record_property: Callable[[str, object], None],
) -> None:
    slowest = max((line["seconds"], name) for name, (_, line) in told.items())
    largest = max((line["peak_mb"], name) for name, (_, line) in told.items())
    record_property("longest processor time, s", slowest)
    record_property("largest memory, MB", largest)
    assert slowest[0] < MOST_SECONDS, slowest
    assert largest[0] < MOST_MB, largest
