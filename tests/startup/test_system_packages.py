"""Missing system libraries are found, named and, by an administrator, installed."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

from stainmap.startup import system_packages
from stainmap.startup.system_packages import Library, PackagesError, Program

ABSENT = Library("libno-such-thing.so.7", ("libno-such-thing7t64", "libno-such-thing7"))
TOOL = Program("no-such-tool", "no-such-package")

pytestmark = pytest.mark.skipif(
    not sys.platform.startswith("linux"), reason="system packages are looked at on Linux only"
)


class FakeSystem:
    """A search path that holds nothing but the package tools written into it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.said: list[str] = []
        self.log = folder / "log.txt"

    def write(self, tool: str, script: str) -> None:
        path = self.folder / tool
        path.write_text(f'#!/bin/sh\necho "{tool} $*" >> "{self.log}"\n{script}\n')
        path.chmod(0o755)

    def calls(self) -> list[str]:
        return self.log.read_text().splitlines() if self.log.exists() else []


@pytest.fixture
def system(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> FakeSystem:
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(os, "geteuid", lambda: 1000)
    return FakeSystem(tmp_path)


def test_only_what_is_missing_is_reported(system: FakeSystem) -> None:
    here = Library("libc.so.6", ("libc6",))
    assert system_packages.missing_libraries((here, ABSENT)) == (ABSENT,)
    system.write("some-tool", "")
    some = Program("some-tool", "some-package")
    assert system_packages.missing_programs((some, TOOL)) == (TOOL,)
    system_packages.ensure((here,), (some,), say=system.said.append)
    assert system.said == []


def test_ordinary_user_gets_the_line_to_type(system: FakeSystem) -> None:
    system.write("apt-get", "exit 99")
    system.write("apt-cache", 'echo "  Candidate: (none)"')
    with pytest.raises(PackagesError) as caught:
        system_packages.ensure((ABSENT,), (TOOL,), say=system.said.append)
    line = "apt-get install libno-such-thing7 no-such-package"
    assert f"as administrator run '{line}'" in str(caught.value)
    assert "lacks libno-such-thing.so.7, no-such-tool" in str(caught.value)
    assert not any(call.startswith("apt-get") for call in system.calls())


def test_newer_release_spells_its_package_its_own_way(system: FakeSystem) -> None:
    """A release that knows the newer spelling gets it, one that does not the older."""
    system.write("apt-get", "")
    system.write("apt-cache", 'echo "  Candidate: 2.84.1"')
    assert system_packages.debian_packages((ABSENT,), ()) == ["libno-such-thing7t64"]
    system.write("apt-cache", 'echo "  Candidate: (none)"')
    assert system_packages.debian_packages((ABSENT,), ()) == ["libno-such-thing7"]
    system.write("apt-cache", "")
    assert system_packages.debian_packages((ABSENT,), ()) == ["libno-such-thing7"]


def test_administrator_has_them_installed(
    system: FakeSystem, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The list is refreshed before names are chosen, and nothing is asked of the terminal."""
    monkeypatch.setattr(os, "geteuid", lambda: 0)
    system.write("apt-cache", 'echo "  Candidate: (none)"')
    tool = system.folder / "no-such-tool"
    put = f'[ "$DEBIAN_FRONTEND" = noninteractive ] && : > "{tool}" && /bin/chmod 755 "{tool}"'
    system.write("apt-get", f'case "$*" in *install*) {put};; esac')
    system_packages.ensure((), (TOOL,), say=system.said.append)
    calls = system.calls()
    assert [call.split()[4] for call in calls] == ["update", "install"]
    assert calls[-1].endswith("-y --no-install-recommends no-such-package")
    assert len(system.said) == 2


def test_failing_installation_is_said_with_its_reason(
    system: FakeSystem, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "geteuid", lambda: 0)
    system.write("apt-get", 'echo "E: Unable to locate package"; exit 100')
    with pytest.raises(PackagesError, match=r"update failed \(E: Unable to locate package"):
        system_packages.ensure((ABSENT,), say=system.said.append)


@pytest.mark.parametrize("manager", ["dnf", "zypper"])
def test_other_package_managers_install_by_library(system: FakeSystem, manager: str) -> None:
    system.write(manager, "")
    line = system_packages.install_line((ABSENT,), (TOOL,))
    assert line == f'{manager} install "libno-such-thing.so.7()(64bit)" /usr/bin/no-such-tool'


def test_without_a_known_package_manager_the_libraries_are_named(system: FakeSystem) -> None:
    assert str(system.folder) == os.environ["PATH"]
    line = system_packages.install_line((ABSENT,), (TOOL,))
    assert line == "install the packages that hold libno-such-thing.so.7, no-such-tool"


@pytest.mark.parametrize(
    ("variables", "display"),
    [({}, False), ({"DISPLAY": ":0"}, True), ({"WAYLAND_DISPLAY": "wayland-0"}, True)],
)
def test_display_is_known_by_its_variables(
    variables: dict[str, str], display: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    for name in ("DISPLAY", "WAYLAND_DISPLAY"):
        monkeypatch.delenv(name, raising=False)
    for name, value in variables.items():
        monkeypatch.setenv(name, value)
    assert system_packages.has_display() is display
    needs_x11 = system_packages.X11_LIBRARIES[0] in system_packages.window_libraries()
    assert needs_x11 is ("DISPLAY" in variables)


def test_display_that_does_not_answer(monkeypatch: pytest.MonkeyPatch) -> None:
    real = os.environ.get("DISPLAY")
    monkeypatch.setenv("DISPLAY", ":9753")
    assert not system_packages.display_answers()
    if real:
        monkeypatch.setenv("DISPLAY", real)
        assert system_packages.display_answers()


def test_qt_finds_every_library_it_asks_for() -> None:
    """What the tests run with is what the tables name: none of it is missing here."""
    assert system_packages.missing_libraries(system_packages.QT_LIBRARIES) == ()
    assert system_packages.missing_libraries(system_packages.X11_LIBRARIES) == ()
