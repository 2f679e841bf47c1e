"""Compiled modules are kept in the program's cache where none may appear beside the sources."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "stainmap"

WORK = """
import os, subprocess, sys
from pathlib import Path
from stainmap.startup.bytecode import keep_in
keep_in(Path(sys.argv[1]))
import stainmap.units
subprocess.run([sys.executable, "-c", "import stainmap.errors"], check=True)
"""


def compiled_after(folder: Path, **settings: str) -> set[str]:
    """Run a program with settings of Python's; return what lies compiled in the folder."""
    own = ("PYTHONDONTWRITEBYTECODE", "PYTHONPYCACHEPREFIX")
    environment = {name: value for name, value in os.environ.items() if name not in own}
    command = [sys.executable, "-c", WORK, str(folder)]
    subprocess.run(command, cwd=ROOT, env=environment | settings, check=True, timeout=60)
    return {path.name.partition(".")[0] for path in folder.rglob("*.pyc")}


def test_what_is_compiled_is_kept_apart_from_the_sources(tmp_path: Path) -> None:
    before = set(PACKAGE.rglob("*.pyc"))
    kept = compiled_after(tmp_path / "kept", PYTHONDONTWRITEBYTECODE="1")
    # The second by a child, which is told by the environment.
    assert {"units", "errors"} <= kept
    assert set(PACKAGE.rglob("*.pyc")) == before


@pytest.mark.parametrize("told", [True, False])
def test_whoever_has_named_a_place_or_forbidden_nothing_is_let_alone(
    told: bool, tmp_path: Path
) -> None:
    settings = {"PYTHONPYCACHEPREFIX": str(tmp_path / "named")}
    if told:
        settings["PYTHONDONTWRITEBYTECODE"] = "1"
    assert compiled_after(tmp_path / "kept", **settings) == set()
    assert any((tmp_path / "named").rglob("units.*.pyc")) is not told
