"""The start-up, driven from outside on small checkouts whose libraries are two tiny wheels."""

from __future__ import annotations

import importlib.metadata
import json
import os
import shutil
import subprocess
import sys
import textwrap
import zipfile
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from packaging.markers import Marker
from packaging.requirements import Requirement
from packaging.version import Version

from stainmap import bootstrap
from stainmap.startup import requirement

ROOT = Path(__file__).resolve().parent.parent
PROJECT = """
[project]
dependencies = ["stain-paint>=1.0", 'never-there; python_version<"3.2"']
[project.optional-dependencies]
test = ["stain-brush>=2.1,<3"]
dev = ["stainmap[test]"]
absent = ["stain-nowhere"]
"""
PROGRAM = """
VERBS = {"paint", "brush"}
def main(arguments):
    import importlib, os
    module = importlib.import_module("stain_" + arguments[0])
    print(module.COLOUR, *arguments[1:], os.getcwd(), sep="|")
    return 3
"""


def write_wheel(folder: Path, name: str, version: str) -> None:
    """Write the smallest wheel that pip installs: one module and its three records."""
    info = f"{name}-{version}.dist-info"
    files = {
        f"{name}.py": "COLOUR = 'barley'\n",
        f"{info}/METADATA": f"Metadata-Version: 2.1\nName: {name}\nVersion: {version}\n",
        f"{info}/WHEEL": "Wheel-Version: 1.0\nRoot-Is-Purelib: true\nTag: py3-none-any\n",
    }
    record = "".join(f"{path},,\n" for path in [*files, f"{info}/RECORD"])
    with zipfile.ZipFile(folder / f"{name}-{version}-py3-none-any.whl", "w") as wheel:
        for path, content in {**files, f"{info}/RECORD": record}.items():
            wheel.writestr(path, content)


class Checkout:
    """A small checkout in a path with spaces, with folders of its own for everything."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder / "the check out"
        self.package = self.folder / "stainmap"
        self.cache = folder / "a cache"
        self.wheels = folder / "wheels"
        shutil.copytree(
            ROOT / "stainmap" / "startup",
            self.package / "startup",
            ignore=shutil.ignore_patterns("__pycache__"),
        )
        for name in ("__init__.py", "__main__.py", "bootstrap.py"):
            shutil.copy(ROOT / "stainmap" / name, self.package)
        (self.package / "cli.py").write_text(PROGRAM, encoding="utf-8")
        (self.folder / "pyproject.toml").write_text(PROJECT, encoding="utf-8")
        (self.folder / "tests").mkdir()
        self.wheels.mkdir()
        write_wheel(self.wheels, "stain_paint", "1.4")
        write_wheel(self.wheels, "stain_brush", "2.10.1")

    def environment(self, **changes: str) -> dict[str, str]:
        kept = {
            name: value
            for name, value in os.environ.items()
            if not name.startswith(("PIP_", "STAINMAP_", "PYTHON"))
        }
        own = {
            "XDG_CACHE_HOME": str(self.cache),
            "LOCALAPPDATA": str(self.cache),
            "HOME": str(self.cache),
            "PIP_NO_INDEX": "1",
            "PIP_FIND_LINKS": self.wheels.as_uri(),
            "PIP_CONFIG_FILE": os.devnull,
        }
        return {**kept, **own, **changes}

    def begin(self, *arguments: str, **changes: str) -> subprocess.Popen[str]:
        return subprocess.Popen(
            [sys.executable, str(self.package), *arguments],
            env=self.environment(**changes),
            cwd=self.cache.parent,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )

    def run(self, *arguments: str, **changes: str) -> tuple[int, str, str]:
        with self.begin(*arguments, **changes) as process:
            out, err = process.communicate(timeout=120)
        return process.returncode, out, err

    def environments(self) -> list[Path]:
        return sorted(path.parent for path in self.cache.rglob(bootstrap.MARKER))


def installed_in(folder: Path) -> list[str]:
    """Return what the record of an environment says is installed in it."""
    record = json.loads((folder / bootstrap.MARKER).read_text(encoding="utf-8"))
    return record["requirements"]


@pytest.fixture(scope="module")
def started(tmp_path_factory: pytest.TempPathFactory) -> Checkout:
    """Return a checkout whose first start has been made."""
    checkout = Checkout(tmp_path_factory.mktemp("start up"))
    code, out, err = checkout.run("paint", "a b", "--c")
    assert "First start" in err, err
    assert out == f"barley|a b|--c|{checkout.cache.parent}\n"
    assert code == 3
    return checkout


def test_second_start_goes_straight_to_the_program(started: Checkout) -> None:
    """No word of set-up, and nothing is asked of pip: its index leads nowhere now."""
    code, out, err = started.run("paint", PIP_FIND_LINKS="/nowhere")
    assert (code, out, err) == (3, f"barley|{started.cache.parent}\n", "")


def test_record_names_what_is_installed(started: Checkout) -> None:
    (folder,) = started.environments()
    assert installed_in(folder) == ["stain-paint>=1.0"]


def test_one_environment_lies_in_the_cache_folder_alone(started: Checkout) -> None:
    assert len(started.environments()) == 1
    outside = [path for path in started.folder.rglob("*") if "pyvenv" in path.name]
    assert outside == []


def test_extras_are_added_and_wrong_input_leaves_a_sentence(started: Checkout) -> None:
    code = (
        "import sys; sys.path.insert(0, sys.argv[1])\n"
        "from stainmap import bootstrap\n"
        "try:\n    print(bootstrap.ready_python(extras=(sys.argv[2],)))\n"
        "except bootstrap.SetupError as error:\n    sys.exit(str(error))\n"
    )

    def ready(extra: str) -> subprocess.CompletedProcess[str]:
        return subprocess.run(
            [sys.executable, "-c", code, str(started.folder), extra],
            check=False,
            capture_output=True,
            text=True,
            env=started.environment(),
        )

    added = ready("dev")
    assert "Adding libraries" in added.stderr
    python = added.stdout.strip()
    found = subprocess.run([python, "-c", "import stain_paint, stain_brush"], check=False)
    assert found.returncode == 0
    assert ready("test").stderr == ""
    refused = ready("absent")
    assert refused.returncode == 1
    assert "could not be installed: No matching distribution found for stain-nowhere" in (
        refused.stderr
    )
    # The failed addition leaves the environment marked as unfinished, to be made again.
    (folder,) = started.environments()
    assert installed_in(folder) == []


def test_killed_set_up_is_made_again_by_one_of_two_starts(started: Checkout) -> None:
    for folder in started.environments():
        shutil.rmtree(folder)
    with started.begin("paint") as killed:
        assert killed.stderr is not None
        for line in killed.stderr:
            if "Fetching" in line:
                break
        killed.kill()
    (folder,) = started.environments()
    assert installed_in(folder) == []
    (folder / "left over").write_text("by the killed one", encoding="utf-8")

    with started.begin("paint") as one, started.begin("paint") as two:
        results = [process.communicate(timeout=120) for process in (one, two)]
    assert [one.returncode, two.returncode] == [3, 3], results
    assert sum("First start" in err for _, err in results) == 1
    assert sum("waiting" in err for _, err in results) >= 1
    assert not (folder / "left over").exists()


def test_damaged_environment_is_said_and_removed(started: Checkout) -> None:
    (folder,) = started.environments()
    for path in folder.rglob("stain_paint*"):
        if path.suffix == ".dist-info":
            shutil.rmtree(path)
    code, _, err = started.run("paint")
    assert code == 1
    assert "damaged" in err
    assert not folder.exists()


def test_foreign_folder_is_left_alone(started: Checkout, tmp_path: Path) -> None:
    (tmp_path / "thesis.txt").write_text("years of work", encoding="utf-8")
    code, _, err = started.run("paint", STAINMAP_ENV=str(tmp_path))
    assert code == 1
    assert "is not an environment made by this program" in err
    assert [path.name for path in tmp_path.iterdir()] == ["thesis.txt"]


@pytest.mark.skipif(os.name == "nt", reason="a path below a file is refused otherwise there")
def test_unwritable_place_is_said(started: Checkout, tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    code, _, err = started.run("paint", STAINMAP_ENV=str(tmp_path / "file" / "environment"))
    assert code == 1
    assert "cannot be written" in err
    assert "Traceback" not in err


@pytest.mark.parametrize("start", ["stainmap", "tests"])
def test_old_python_is_told_which_one_is_needed(start: str) -> None:
    code = f"""
        import runpy, sys
        sys.version_info = (3, 8, 1)
        runpy.run_path({str(ROOT / start)!r}, run_name="__main__")
    """
    done = subprocess.run(
        [sys.executable, "-c", textwrap.dedent(code)], check=False, capture_output=True, text=True
    )
    assert done.returncode == 1
    assert "3.11 or newer" in done.stderr
    assert "this is Python 3.8" in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        ("OSError: [Errno 28] No space left on device", "disk is full"),
        ("SSLError(1, '[SSL: CERTIFICATE_VERIFY_FAILED] ...", "certificate"),
        ("NewConnectionError: Temporary failure in name resolution", "network"),
        ("socket.gaierror: [Errno 11001] getaddrinfo failed", "network"),
        ("Collecting x\nERROR: No matching distribution found for x", "No matching distribution"),
    ],
)
def test_failures_of_pip_become_one_sentence(words: str, sentence: str) -> None:
    said = bootstrap.explain_pip(words.splitlines(), Path("pip.log"))
    assert sentence in said
    assert "\n" not in said


# ---------------------------------------------------------------------------------------------
# Requirements, against the library that every installer uses

versions = st.lists(st.integers(0, 30), min_size=1, max_size=4).map(
    lambda parts: ".".join(str(part) for part in parts)
)
specifiers = st.lists(
    st.tuples(st.sampled_from([">=", "<=", "<", ">", "==", "!="]), versions).map("".join),
    min_size=1,
    max_size=3,
).map(",".join)


@given(installed=versions, specifier=specifiers)
def test_versions_compare_as_installers_compare_them(installed: str, specifier: str) -> None:
    wanted = f"some-name{specifier}"
    expected = Requirement(wanted).specifier.contains(Version(installed))
    assert requirement.allows(wanted, installed) == expected


@pytest.mark.parametrize("extras", [(), ("test",), ("dev",)])
def test_own_requirements_are_read_as_installers_read_them(extras: tuple[str, ...]) -> None:
    import tomllib

    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    groups = {"": project["dependencies"], **project["optional-dependencies"]}
    names = ["", *extras] + (["test"] if "dev" in extras else [])
    expected = {
        Requirement(text).name
        for name in names
        for text in groups[name]
        if Requirement(text).name != "stainmap"
        and (Requirement(text).marker or Marker('python_version>"3"')).evaluate()
    }
    read = requirement.requirements(ROOT / "pyproject.toml", extras)
    assert {Requirement(text).name for text in read} == expected
    assert all(Requirement(text).marker is None for text in read)
    # The tests run with everything that the tests need, and the reader has to see that.
    if "dev" not in extras:
        assert requirement.unmet(read) == ()


def test_versions_are_those_that_the_records_tell(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """As the standard library reads them out of what was installed; a bare folder is no record."""
    names = [one.metadata["Name"] for one in importlib.metadata.distributions()]
    assert len(names) > 30
    for name in {*names, "no-such-library", *(name.replace("-", "_").upper() for name in names)}:
        try:
            told = importlib.metadata.version(name)
        except importlib.metadata.PackageNotFoundError:
            told = None
        assert requirement.installed_version(name) == told
    (tmp_path / "Half_gone-1.0.dist-info").mkdir()
    (tmp_path / "Un.Usual_name-2.0.post1.dist-info").mkdir()
    (tmp_path / "Un.Usual_name-2.0.post1.dist-info" / "METADATA").write_text("Version: 2.0.post1\n")
    monkeypatch.syspath_prepend(tmp_path)
    assert requirement.installed_version("half-gone") is None
    assert requirement.installed_version("un-usual.NAME") == "2.0.post1"


def test_unknown_library_is_unmet() -> None:
    assert requirement.unmet(["pytest>=1", "no-such-library", "pytest<1"]) == (
        "no-such-library",
        "pytest<1",
    )


def test_unknown_marker_is_refused(tmp_path: Path) -> None:
    text = "[project]\ndependencies = ['x; sys_platform==\"win32\"']\n"
    (tmp_path / "pyproject.toml").write_text(text, encoding="utf-8")
    with pytest.raises(ValueError, match="sys_platform"):
        requirement.requirements(tmp_path / "pyproject.toml")


@pytest.mark.parametrize(
    ("qt", "python", "sound"),
    [
        ("6.12.0", (3, 11), False),
        ("6.12.1", (3, 10), False),
        ("6.12.0", (3, 12), True),
        ("6.11.3", (3, 11), True),
        ("6.8", (3, 11), True),
        ("7.0", (3, 13), True),
    ],
)
def test_known_bad_pair_of_qt_and_python(qt: str, python: tuple[int, int], sound: bool) -> None:
    assert bootstrap.qt_is_sound(qt, python) is sound


def test_bad_pair_is_refused_with_a_way_out(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bootstrap, "installed_version", lambda _: "6.12.0")
    monkeypatch.setattr(sys, "version_info", (3, 11, 7, "final", 0))
    with pytest.raises(bootstrap.SetupError, match=r"PySide6-Essentials<6\.12"):
        bootstrap.refuse_unsound_qt()


# ---------------------------------------------------------------------------------------------
# Where the environment lies


def test_environment_of_each_checkout_is_its_own(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv(bootstrap.ENVIRONMENT_OVERRIDE, raising=False)
    one = bootstrap.environment_folder(Path("/one"))
    assert one == bootstrap.environment_folder(Path("/one"))
    assert one != bootstrap.environment_folder(Path("/two"))
    monkeypatch.setattr(sys, "base_prefix", "/another/python")
    assert one != bootstrap.environment_folder(Path("/one"))


def test_override_names_the_environment(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv(bootstrap.ENVIRONMENT_OVERRIDE, str(tmp_path / "mine"))
    assert bootstrap.environment_folder(Path("/one")) == tmp_path / "mine"


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="the variable is Linux's")
def test_cache_folder_of_the_user(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.delenv(bootstrap.ENVIRONMENT_OVERRIDE, raising=False)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    assert bootstrap.environment_folder(Path("/one")).is_relative_to(tmp_path / "stainmap")
    monkeypatch.delenv("XDG_CACHE_HOME")
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    assert bootstrap.environment_folder(Path("/one")).is_relative_to(tmp_path / "home" / ".cache")
