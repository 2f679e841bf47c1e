"""Shipped files are found in a checkout, in an installed package and where an override says."""

from __future__ import annotations

import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from stainmap import paths
from stainmap.errors import StainmapError

ROOT = Path(__file__).resolve().parent.parent


def test_checkout(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv(paths.DATA_OVERRIDE, raising=False)
    assert paths.data_folder("resources") == ROOT / "resources"
    assert paths.resource("bibliography.bib").is_file()
    assert paths.sample_case("x.stainmap") == ROOT / "sample_cases" / "x.stainmap"


def test_override_comes_first(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    (tmp_path / "resources").mkdir()
    monkeypatch.setenv(paths.DATA_OVERRIDE, str(tmp_path))
    assert paths.data_folder("resources") == tmp_path / "resources"
    assert paths.data_folder("sample_cases") == ROOT / "sample_cases"


def test_missing_folder_is_said_in_a_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv(paths.DATA_OVERRIDE, raising=False)
    with pytest.raises(StainmapError, match="'pictures_of_teeth' is missing") as caught:
        paths.data_folder("pictures_of_teeth")
    assert caught.value.where is not None
    assert caught.value.advice is not None


def test_installed_package_finds_what_the_wheel_carries(tmp_path: Path) -> None:
    """The folders of the wheel, as pyproject.toml maps them, are those the program looks in."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    carried = project["tool"]["hatch"]["build"]["targets"]["wheel"]["force-include"]
    assert set(carried) == {"resources", "sample_cases"}
    package = tmp_path / "stainmap"
    package.mkdir()
    for name in ("__init__.py", "errors.py", "paths.py"):
        shutil.copy(ROOT / "stainmap" / name, package)
    for source, target in carried.items():
        assert (ROOT / source).is_dir()
        (tmp_path / target).mkdir(parents=True)
        (tmp_path / target / "here.txt").write_text(source, encoding="utf-8")
    code = (
        "from stainmap.paths import resource, sample_case\n"
        "print(resource('here.txt').read_text(), sample_case('here.txt').read_text())"
    )
    done = subprocess.run(
        [sys.executable, "-I", "-c", f"import sys; sys.path.insert(0, {str(tmp_path)!r})\n{code}"],
        check=False,
        capture_output=True,
        text=True,
    )
    assert done.stdout.split() == ["resources", "sample_cases"], done.stderr
