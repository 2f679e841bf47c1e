"""Which of the two clients a command line starts."""

from __future__ import annotations

import os
import runpy
import subprocess
import sys
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

import stainmap.__main__ as program
from stainmap import bootstrap, cli
from stainmap.startup import system_packages

ROOT = Path(__file__).resolve().parent.parent
SAMPLE = "sample"


@pytest.fixture
def started(monkeypatch: pytest.MonkeyPatch) -> list[tuple[str, Sequence[str]]]:
    """Return the list in which the clients, replaced for the test, note that they were started."""
    calls: list[tuple[str, Sequence[str]]] = []

    def note(client: str) -> Callable[..., int]:
        def start(arguments: Sequence[str] = ()) -> int:
            calls.append((client, list(arguments)))
            return 7

        return start

    monkeypatch.setattr(cli, "main", note("verb"))
    monkeypatch.setattr(cli, "headless_sample", note(SAMPLE))
    monkeypatch.setattr(program, "_window", note("window"))
    monkeypatch.setattr(system_packages, "ensure", lambda *_, **__: None)
    monkeypatch.setattr(system_packages, "display_answers", lambda: True)
    return calls


@pytest.mark.parametrize(
    ("arguments", "with_display", "without"),
    [
        ([], "window", SAMPLE),
        (["crown.stl"], "window", None),
        (["a b/case.stainmap"], "window", None),
        (["inspect", "crown.stl", "--json"], "verb", "verb"),
        (["--help"], "verb", "verb"),
        (["--version"], "verb", "verb"),
        (["no-such-verb"], "verb", "verb"),
    ],
)
def test_client(
    arguments: list[str],
    with_display: str,
    without: str | None,
    started: list[tuple[str, Sequence[str]]],
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.setattr(system_packages, "has_display", lambda: True)
    assert program.start(arguments) == 7
    monkeypatch.setattr(system_packages, "has_display", lambda: False)
    code = program.start(arguments)
    assert started[0] == (with_display, arguments)
    if without is None:
        assert code == 1
        assert "there is no display to show" in capsys.readouterr().err
        assert len(started) == 1
    else:
        assert code == 7
        assert started[1] == (without, arguments)


def test_file_without_an_ending_opens(
    started: list[tuple[str, Sequence[str]]], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setattr(system_packages, "has_display", lambda: True)
    (tmp_path / "crown").touch()
    program.start([str(tmp_path / "crown")])
    assert started == [("window", [str(tmp_path / "crown")])]


def test_silent_display_is_said_and_the_sample_planned(
    started: list[tuple[str, Sequence[str]]],
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.setattr(system_packages, "has_display", lambda: True)
    monkeypatch.setattr(system_packages, "display_answers", lambda: False)
    monkeypatch.setenv("DISPLAY", ":55")
    assert program.start([]) == 7
    assert started == [(SAMPLE, [])]
    assert ":55 does not answer" in capsys.readouterr().err


@pytest.mark.parametrize(
    "error",
    [bootstrap.SetupError("no room"), system_packages.PackagesError("no room")],
    ids=["environment", "packages"],
)
def test_failing_set_up_ends_in_a_sentence(
    error: Exception, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def fail(*_: object, **__: object) -> None:
        raise error

    monkeypatch.setattr(bootstrap, "enter", fail)
    monkeypatch.setattr(sys, "argv", ["stainmap"])
    assert program.main() == 1
    assert capsys.readouterr().err == "stainmap: no room\n"


@pytest.mark.parametrize("as_module", [True, False])
def test_started_as_folder_and_as_module(as_module: bool, tmp_path: Path) -> None:
    """Both ways give the same answer, from any folder, and modules inside are not shadowed."""
    folder = ROOT if as_module else tmp_path
    command = ["-m", "stainmap"] if as_module else [str(ROOT / "stainmap")]
    done = subprocess.run(
        [sys.executable, "-W", "error", *command, "--version"],
        check=False,
        capture_output=True,
        text=True,
        cwd=folder,
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.strip().endswith("0.1.0")


def test_wrong_usage_ends_with_two() -> None:
    done = subprocess.run(
        [sys.executable, str(ROOT / "stainmap"), "no-such-verb"], check=False, capture_output=True
    )
    assert done.returncode == 2


@pytest.mark.parametrize("writable", [True, False])
def test_records_stay_out_of_a_checkout_that_may_not_be_written(
    writable: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "path", [*sys.path])
    monkeypatch.setattr(os, "environ", {"HOME": "unused"})
    start = runpy.run_path(str(ROOT / "tests" / "__main__.py"), run_name="start of the tests")
    monkeypatch.setattr(os, "access", lambda *_: writable)
    options = start["outside_options"]()
    named = [os.environ.get("HYPOTHESIS_STORAGE_DIRECTORY"), *options[1:]]
    if writable:
        assert options == []
        assert named == [None]
    else:
        assert all(sys.prefix in str(name) for name in named)
