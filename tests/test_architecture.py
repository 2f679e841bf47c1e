"""The rooms of the program keep to themselves; see "Where things live" in DEVELOPERS.md."""

from __future__ import annotations

import ast
import importlib.util
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "stainmap"
MODULES = sorted(path for path in PACKAGE.rglob("*.py") if "_data" not in path.parts)

IMPORT_CORE = """
import importlib, pkgutil, sys
import stainmap
names = [
    module.name for module in pkgutil.walk_packages(stainmap.__path__, "stainmap.")
    if not module.name.startswith(("stainmap.ui", "stainmap.__main__"))
]
for name in names:
    importlib.import_module(name)
assert len(names) > 40, names
unwanted = {"PySide6", "shiboken6", "colour", "matplotlib", "pytest"}
print(" ".join(sorted(unwanted & set(sys.modules))))
"""


def fresh_python(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, *arguments], check=False, capture_output=True, text=True, cwd=ROOT
    )


def test_core_brings_neither_qt_nor_slow_libraries() -> None:
    """Everything outside the window is imported in a fresh interpreter, warnings as errors."""
    done = fresh_python("-W", "error", "-c", IMPORT_CORE)
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == ""


def test_startup_needs_only_the_standard_library() -> None:
    """Without site-packages (-S) and the user's settings (-I) the start-up still imports."""
    code = f"import sys; sys.path.insert(0, {str(ROOT)!r}); import stainmap.__main__"
    done = fresh_python("-I", "-S", "-W", "error", "-c", code)
    assert done.returncode == 0, done.stderr


@pytest.mark.parametrize("path", [PACKAGE / "__main__.py", ROOT / "tests" / "__main__.py"])
def test_old_python_can_read_the_start(path: Path) -> None:
    """The start must be understood by old Pythons, to say which one is needed."""
    ast.parse(path.read_text(encoding="utf-8"), feature_version=(3, 6))


@pytest.mark.skipif(
    importlib.util.find_spec("importlinter") is None,
    reason="import-linter is a tool of the dev extra; .ci/run runs it",
)
def test_imports_point_down() -> None:
    code = "from importlinter.cli import lint_imports_command; lint_imports_command()"
    done = fresh_python("-c", code, "--no-cache")
    assert done.returncode == 0, done.stdout + done.stderr


def test_every_import_between_rooms_is_absolute_and_downward() -> None:
    """A second look without import-linter, so that the plain test run holds the order as well."""
    order = [
        {"errors"},
        {"paths", "units", "memory", "words"},
        {"surface", "optics"},
        {"model"},
        {"predict"},
        {"planning"},
        {"labbook"},
        {"files"},
        {"paper", "practice"},
        {"app"},
        {"cli", "ui"},
    ]
    level = {room: index for index, rooms in enumerate(order) for room in rooms}
    exempt = {"__main__", "__init__", "bootstrap", "startup"}
    wrong = []
    for path in MODULES:
        room = path.relative_to(PACKAGE).parts[0].removesuffix(".py")
        if room in exempt:
            continue
        imported = {name for name in imported_rooms(path) if name != room}
        upward = sorted(name for name in imported if level[name] >= level[room])
        wrong += [f"{path.relative_to(ROOT)} imports {name}" for name in upward]
    assert wrong == []


def imported_rooms(path: Path) -> set[str]:
    """Return the rooms of stainmap that a module imports anywhere in its text."""
    names: list[str] = []
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            names += [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path} has a relative import"
            names += [f"{node.module}.{alias.name}" for alias in node.names]
    parts = [name.split(".") for name in names]
    return {part[1] for part in parts if part[0] == "stainmap" and len(part) > 1} - {"__version__"}


def test_each_topic_has_a_name_and_a_size() -> None:
    vague = {"utils", "util", "helpers", "helper", "manager", "common", "misc"}
    assert [path for path in MODULES if path.stem in vague] == []
    long = {path.name: len(path.read_text(encoding="utf-8").splitlines()) for path in MODULES}
    assert {name: lines for name, lines in long.items() if lines > 500} == {}
