"""Checks the system libraries that Qt needs on Linux, and installs or names the missing ones.

Qt answers a missing library with the name of one that is often not the missing one. Asking the
loader for each library by name takes some milliseconds and tells the truth.
"""

from __future__ import annotations

import ctypes
import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass


class PackagesError(Exception):
    """System packages are missing and cannot be installed from here; one sentence."""


@dataclass(frozen=True, slots=True)
class Library:
    """A shared library, and the names of its package on Debian's relatives, newest first."""

    soname: str
    packages: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Program:
    """A program, and its package on Debian's relatives."""

    name: str
    package: str


# Found on a bare Debian 12 by asking the loader for every library of PySide6-Essentials.
QT_LIBRARIES = (
    Library("libglib-2.0.so.0", ("libglib2.0-0t64", "libglib2.0-0")),
    Library("libGL.so.1", ("libgl1",)),
    Library("libEGL.so.1", ("libegl1",)),
    Library("libxkbcommon.so.0", ("libxkbcommon0",)),
    Library("libdbus-1.so.3", ("libdbus-1-3",)),
    Library("libfontconfig.so.1", ("libfontconfig1",)),
)
X11_LIBRARIES = (
    Library("libxcb-cursor.so.0", ("libxcb-cursor0",)),
    Library("libxkbcommon-x11.so.0", ("libxkbcommon-x11-0",)),
    Library("libxcb-icccm.so.4", ("libxcb-icccm4",)),
    Library("libxcb-keysyms.so.1", ("libxcb-keysyms1",)),
    Library("libxcb-shape.so.0", ("libxcb-shape0",)),
)
VIRTUAL_SCREEN = (Program("xvfb-run", "xvfb"), Program("xauth", "xauth"))


def has_display() -> bool:
    """Return whether a window can be meant to open: always, but on a Linux without a display."""
    if not sys.platform.startswith("linux"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


def display_answers() -> bool:
    """Return whether the X display that DISPLAY names can be reached (True where none is named).

    Qt ends the whole process if it cannot; this asks beforehand.
    """
    if not sys.platform.startswith("linux") or not os.environ.get("DISPLAY"):
        return True
    try:
        xcb = ctypes.CDLL("libxcb.so.1")
    except OSError:
        return True
    xcb.xcb_connect.restype = ctypes.c_void_p
    xcb.xcb_connection_has_error.argtypes = xcb.xcb_disconnect.argtypes = [ctypes.c_void_p]
    connection = xcb.xcb_connect(None, None)
    refused = xcb.xcb_connection_has_error(connection)
    xcb.xcb_disconnect(connection)
    return not refused


def window_libraries() -> tuple[Library, ...]:
    """Return the libraries a window needs on this machine's kind of display."""
    if not sys.platform.startswith("linux"):
        return ()
    return QT_LIBRARIES + (X11_LIBRARIES if os.environ.get("DISPLAY") else ())


def missing_libraries(libraries: Sequence[Library]) -> tuple[Library, ...]:
    """Return those libraries that the system's loader cannot open."""
    return tuple(library for library in libraries if not _opens(library.soname))


def missing_programs(programs: Sequence[Program]) -> tuple[Program, ...]:
    """Return those programs that are not on the search path."""
    return tuple(program for program in programs if shutil.which(program.name) is None)


def ensure(
    libraries: Sequence[Library],
    programs: Sequence[Program] = (),
    *,
    say: Callable[[str], None],
) -> None:
    """Make sure libraries and programs are there, installing them where that is possible.

    Raises
    ------
    PackagesError
        If some are missing and cannot be installed; the sentence holds the line to type.
    """
    if not missing_libraries(libraries) and not missing_programs(programs):
        return
    refusal = ""
    if may_install():
        try:
            install(None, say, libraries=libraries, programs=programs)
        except PackagesError as error:
            refusal = f" {error}"
    lacking = missing_libraries(libraries)
    absent = missing_programs(programs)
    if lacking or absent:
        names = [library.soname for library in lacking] + [program.name for program in absent]
        raise PackagesError(
            f"The system lacks {', '.join(names)}; as administrator run "
            f"'{install_line(lacking, absent)}', then start again.{refusal}"
        )


def may_install() -> bool:
    """Return whether this process may install system packages by apt-get."""
    return (
        sys.platform.startswith("linux")
        and os.geteuid() == 0
        and shutil.which("apt-get") is not None
    )


def install(
    packages: Sequence[str] | None,
    say: Callable[[str], None],
    *,
    libraries: Sequence[Library] = (),
    programs: Sequence[Program] = (),
) -> None:
    """Install packages by name, or those of the missing libraries and programs, by apt-get.

    Raises
    ------
    PackagesError
        If apt-get fails, with its last complaint.
    """
    say("Refreshing the system's list of packages")
    _apt_get("update")
    # Names are chosen only now: before the update apt may not know a single package.
    names = list(packages or ())
    names += debian_packages(missing_libraries(libraries), missing_programs(programs))
    say(f"Installing system packages: {' '.join(names)}")
    _apt_get("install", "-y", "--no-install-recommends", *names)


def debian_packages(libraries: Sequence[Library], programs: Sequence[Program]) -> list[str]:
    """Return package names as this release of the system spells them."""
    names = []
    for library in libraries:
        known = [name for name in library.packages[:-1] if _apt_knows(name)]
        names.append(known[0] if known else library.packages[-1])
    return names + [program.package for program in programs]


def install_line(libraries: Sequence[Library], programs: Sequence[Program]) -> str:
    """Return the command an administrator types for these, for the package manager at hand."""
    if shutil.which("apt-get"):
        return f"apt-get install {' '.join(debian_packages(libraries, programs))}"
    for manager in ("dnf", "zypper"):
        if shutil.which(manager):
            # These two install by the name of the library itself.
            wanted = [f'"{library.soname}()(64bit)"' for library in libraries]
            wanted += [f"/usr/bin/{program.name}" for program in programs]
            return f"{manager} install {' '.join(wanted)}"
    names = [library.soname for library in libraries] + [program.name for program in programs]
    return f"install the packages that hold {', '.join(names)}"


def _opens(soname: str) -> bool:
    try:
        ctypes.CDLL(soname)
    except OSError:
        return False
    return True


def _apt_knows(package: str) -> bool:
    if shutil.which("apt-cache") is None:
        return False
    answer = subprocess.run(
        ["apt-cache", "policy", package], check=False, capture_output=True, text=True
    )
    return "Candidate:" in answer.stdout and "Candidate: (none)" not in answer.stdout


def _apt_get(*arguments: str) -> None:
    command = ["apt-get", "-q", "-o", "DPkg::Lock::Timeout=300", *arguments]
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive", "LC_ALL": "C"}
    done = subprocess.run(
        command,
        check=False,
        env=environment,
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        errors="replace",
    )
    if done.returncode != 0:
        complaints = [line for line in done.stdout.splitlines() if line.startswith(("E:", "Err"))]
        reason = complaints[-1] if complaints else f"exit code {done.returncode}"
        raise PackagesError(f"apt-get {arguments[0]} failed ({reason.strip()}).")
