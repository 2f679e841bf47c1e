"""The surface library serves anybody: it needs no other room and speaks of no trade."""

from __future__ import annotations

import pkgutil
import re
import subprocess
import sys
from pathlib import Path

import pytest

import stainmap.surface

ROOT = Path(__file__).resolve().parents[2]
MODULES = sorted((ROOT / "stainmap" / "surface").glob("*.py"))
TRADE = re.compile(
    r"tooth|teeth|dental|dentist|crown|molar|incisor|cusp|fissure|occlus|lingual|buccal|mesial"
    r"|distal|pontic|retainer|gingiva|cervical|zirconia|sinter",
    re.IGNORECASE,
)

ALONE = """
import sys
import stainmap.surface.{module}
rooms = {{name.split(".")[1] for name in sys.modules if name.startswith("stainmap.")}}
print(" ".join(sorted(rooms - {{"surface", "errors", "units"}})))
others = {{name.split(".")[0] for name in sys.modules}}
print(" ".join(sorted(others & {{"PySide6", "trimesh", "colour", "reportlab", "igl", "lxml"}})))
"""


def example() -> str:
    """Return the example of DEVELOPERS.md."""
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    section = text.split("## The surface library on its own", 1)[1].split("\n## ", 1)[0]
    (code,) = re.findall(r"```python\n(.*?)```", section, re.DOTALL)
    return str(code)


def test_example_of_the_developers_page_runs() -> None:
    done = subprocess.run(
        [sys.executable, "-W", "error", "-c", example()],
        cwd=ROOT, capture_output=True, text=True, check=False, timeout=120,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert "mm by" in done.stdout


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.stem)
def test_no_word_of_the_trade(path: Path) -> None:
    lines = path.read_text(encoding="utf-8").splitlines()
    assert [line for line in lines if TRADE.search(line)] == []


def test_needs_no_other_room_and_no_other_library() -> None:
    names = [module.name for module in pkgutil.iter_modules(stainmap.surface.__path__)]
    assert {"mesh", "loading", "report", "neck"} <= set(names)
    code = ALONE.format(module=", stainmap.surface.".join(names))
    done = subprocess.run(
        [sys.executable, "-c", code],
        cwd=ROOT, capture_output=True, text=True, check=False, timeout=120,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert done.stdout.split() == []


def test_every_module_is_named_in_the_index() -> None:
    text = stainmap.surface.__doc__ or ""
    names = {module.name for module in pkgutil.iter_modules(stainmap.surface.__path__)}
    inside = {name for name in names if name.startswith("loading_")} | {"formats", "soup"}
    assert {name for name in names - inside if f"`{name}`" not in text} == set()
