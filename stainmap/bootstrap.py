"""Makes a private Python environment on first start; needs the standard library only.

A checkout can be started on a machine that has nothing but Python. If the interpreter at hand
does not hold the libraries named in pyproject.toml, they are installed into an environment of
our own in the user's cache folder, and the program starts again inside it.

The environment of a checkout is one folder, named after the place of the checkout and the
version of Python. A small file in it says what has been installed. That record is emptied before
anything is changed and written again at the very end, so an environment whose set-up was
interrupted is never mistaken for a good one: it is thrown away and made again.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import IO

from stainmap.startup import bytecode
from stainmap.startup.requirement import (
    all_extras,
    installed_version,
    numbers,
    requirements,
    unmet,
)

ENVIRONMENT_OVERRIDE = "STAINMAP_ENV"
MARKER = "stainmap-environment.json"

_PROJECT = "stainmap"
_NO_NETWORK = re.compile(
    r"name resolution|getaddrinfo failed|Network is unreachable|No route to host|NewConnectionError"
    r"|ConnectTimeoutError|ReadTimeoutError|Max retries exceeded|ProxyError|nodename nor servname",
    re.IGNORECASE,
)


class SetupError(Exception):
    """The set-up cannot go on; the message is one sentence for the user."""


class Progress:
    """Writes one plain line per stage of the set-up, with the seconds since it began."""

    def __init__(self, stream: IO[str] | None = None) -> None:
        self._stream = sys.stderr if stream is None else stream
        self._began = time.monotonic()

    def say(self, text: str) -> None:
        """Write one line at once."""
        seconds = time.monotonic() - self._began
        print(f"[{seconds:4.0f} s] {text}", file=self._stream, flush=True)


def checkout_folder() -> Path | None:
    """Return the folder of the checkout this module lies in, or None if it was installed."""
    folder = Path(__file__).resolve().parent.parent
    project = folder / "pyproject.toml"
    return folder if project.is_file() and (folder / "tests").is_dir() else None


# ---------------------------------------------------------------------------------------------
# Where the environment lies


def environment_folder(checkout: Path) -> Path:
    """Return the folder of the private environment of a checkout for this Python."""
    override = os.environ.get(ENVIRONMENT_OVERRIDE)
    if override:
        return Path(override).expanduser().absolute()
    version = f"{sys.implementation.name}-{sys.version_info[0]}.{sys.version_info[1]}"
    identity = "\n".join((str(checkout), version, str(Path(sys.base_prefix).resolve())))
    key = hashlib.sha256(identity.encode()).hexdigest()[:12]
    return _cache_folder() / _PROJECT / "environments" / f"{version}-{key}"


def environment_python(folder: Path) -> Path:
    """Return the interpreter inside an environment folder."""
    windows = folder / "Scripts" / "python.exe"
    return windows if os.name == "nt" else folder / "bin" / "python"


def _cache_folder() -> Path:
    if sys.platform == "win32":
        local = os.environ.get("LOCALAPPDATA")
        return Path(local) if local else Path.home() / "AppData" / "Local"
    if sys.platform == "darwin":
        return Path.home() / "Library" / "Caches"
    configured = os.environ.get("XDG_CACHE_HOME")
    return Path(configured) if configured else Path.home() / ".cache"


# ---------------------------------------------------------------------------------------------
# Entering it


def enter(script: Path, arguments: Sequence[str], *, extras: Sequence[str] = ()) -> None:
    """Return if this interpreter holds all that is needed, else run the script in one that does.

    In the second case the call does not return: the process is replaced, or on Windows ends with
    the exit code of its child.

    Raises
    ------
    SetupError
        If the environment cannot be made.
    """
    checkout = checkout_folder()
    if checkout is None:
        return
    bytecode.keep_in(_cache_folder() / _PROJECT / "bytecode")
    wanted = requirements(checkout / "pyproject.toml", extras)
    if not unmet(wanted):
        return
    folder = environment_folder(checkout)
    if Path(sys.prefix).resolve() == folder.resolve():
        _reset(folder)
        raise SetupError("The private environment was damaged and has been removed; start again.")
    python = ready_python(extras=extras)
    run_in_place([str(python), str(script), *arguments])


def ready_python(*, extras: Sequence[str] = ()) -> Path:
    """Return an interpreter of the private environment with everything installed.

    Raises
    ------
    SetupError
        If this is no checkout, or the environment cannot be made.
    """
    checkout = checkout_folder()
    if checkout is None:
        raise SetupError("Only a checkout of the program makes an environment of its own.")
    project = checkout / "pyproject.toml"
    wanted = requirements(project, extras)
    folder = environment_folder(checkout)
    if not _holds(folder, wanted):
        known = requirements(project, all_extras(project))
        progress = Progress()
        try:
            folder.parent.mkdir(parents=True, exist_ok=True)
            with _lock(folder.with_name(folder.name + ".lock"), progress) as lock:
                if not _holds(folder, wanted):
                    held = _prepare(folder, known, progress)
                    everything = tuple(sorted({*held, *wanted}))
                    _install(folder, everything, progress, lock)
                    _mark(folder, everything)
                    progress.say("The environment is ready; later starts skip this")
        except OSError as error:
            raise SetupError(
                f"The private environment cannot be written: {error}. "
                f"Name another folder in {ENVIRONMENT_OVERRIDE}."
            ) from error
    return environment_python(folder)


def run_in_place(command: Sequence[str]) -> None:
    """Replace this process by a command; on Windows run it and exit with its code."""
    sys.stdout.flush()
    sys.stderr.flush()
    if os.name == "nt":
        sys.exit(subprocess.run(command, check=False).returncode)
    os.execvp(command[0], list(command))  # noqa: S606 - a list, no shell


def refuse_unsound_qt() -> None:
    """Refuse a PySide6 that was installed by hand and dies with this Python.

    PySide6 6.12 on Python before 3.12 drops a reference to None in nearly every call that
    returns nothing; the process ends without an exception after some hundreds of repaints.

    Raises
    ------
    SetupError
        If the pair at hand is such a one.
    """
    # The larger of the two packages brings the smaller one along, of its own version.
    qt = installed_version("PySide6-Essentials") or installed_version("PySide6")
    if qt is not None and not qt_is_sound(qt, sys.version_info[:2]):
        raise SetupError(
            f"PySide6 {qt} ends without a word on Python {sys.version_info[0]}."
            f"{sys.version_info[1]}; run \"pip install 'PySide6-Essentials<6.12'\", or use "
            "Python 3.12 or newer."
        )


def qt_is_sound(qt: str, python: tuple[int, ...]) -> bool:
    """Return whether a version of PySide6 is known to live with a version of Python."""
    return numbers(qt) < (6, 12) or python >= (3, 12)


# ---------------------------------------------------------------------------------------------
# Making it


def _holds(folder: Path, wanted: Sequence[str]) -> bool:
    return environment_python(folder).exists() and set(wanted) <= set(_installed(folder))


def _installed(folder: Path) -> tuple[str, ...]:
    try:
        record = json.loads((folder / MARKER).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return ()
    return tuple(record.get("requirements", ()))


def _prepare(folder: Path, known: Sequence[str], progress: Progress) -> tuple[str, ...]:
    """Leave an environment with pip in it, marked as unfinished; return what it holds already."""
    installed = _installed(folder)
    if folder.exists() and any(folder.iterdir()) and not (folder / MARKER).is_file():
        raise SetupError(
            f"{folder} is not an environment made by this program; name a new folder in "
            f"{ENVIRONMENT_OVERRIDE}."
        )
    if installed and set(installed) <= set(known) and environment_python(folder).exists():
        progress.say("Adding libraries to the private Python environment")
        _mark(folder, ())
        return installed
    progress.say(f"First start: making a private Python environment in {folder}")
    progress.say("About 180 MB are fetched and 700 MB stored; this takes some minutes at most")
    _reset(folder)
    _mark(folder, ())
    _make_bare(folder, progress)
    return ()


def _reset(folder: Path) -> None:
    """Remove an environment of ours, its marker last."""
    if not (folder / MARKER).is_file():
        return
    for entry in folder.iterdir():
        if entry.name == MARKER:
            continue
        if entry.is_dir() and not entry.is_symlink():
            shutil.rmtree(entry)
        else:
            entry.unlink()
    shutil.rmtree(folder)


def _mark(folder: Path, installed: Sequence[str]) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    draft = folder / (MARKER + ".new")
    draft.write_text(json.dumps({"requirements": list(installed)}), encoding="utf-8")
    draft.replace(folder / MARKER)


def _make_bare(folder: Path, progress: Progress) -> None:
    """Make the environment with pip in it, also where Python came without ensurepip."""
    from stainmap.startup import pip_source  # noqa: PLC0415 - brings HTTP, for the set-up alone

    with_pip = pip_source.ensurepip_works() or pip_source.install_venv_package(progress.say)
    options = [] if with_pip else ["--without-pip"]
    made = _run([sys.executable, "-m", "venv", *options, str(folder)])
    if made.returncode != 0:
        raise SetupError(f"Python could not make an environment: {_last_line(made.stdout)}")
    python = environment_python(folder)
    if pip_source.pip_command(python) is not None:
        return
    progress.say("This Python has no pip; looking for one")
    if not pip_source.bring_pip(python):
        raise SetupError(
            "This Python comes without pip and none could be fetched; connect to the network, or "
            f"as administrator run '{pip_source.venv_package_line()}', then start again."
        )


def _install(folder: Path, wanted: Sequence[str], progress: Progress, lock: IO[bytes]) -> None:
    """Run pip, which shares the lock: should this process be killed, no other start interferes.

    Raises
    ------
    SetupError
        If pip fails, with the reason in a sentence.
    """
    from stainmap.startup import pip_source  # noqa: PLC0415 - see above

    progress.say("Fetching the libraries")
    log_file = folder / "pip.log"
    pip = pip_source.pip_command(environment_python(folder))
    if pip is None:
        raise SetupError("The private environment has lost its pip; start again.")
    command = [
        *(*pip, "install", "--no-input"),
        *("--disable-pip-version-check", "--prefer-binary", "--retries", "2"),
        *("--progress-bar", "off", *wanted),
    ]
    lines: list[str] = []
    with (
        log_file.open("w", encoding="utf-8") as log,
        subprocess.Popen(
            command,
            env=_pip_environment(),
            pass_fds=() if os.name == "nt" else (lock.fileno(),),
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            encoding="utf-8",
            errors="replace",
        ) as process,
    ):
        assert process.stdout is not None  # noqa: S101 - asked for with PIPE
        for line in process.stdout:
            log.write(line)
            lines.append(line)
            _report_line(line, progress)
    if process.returncode != 0:
        raise SetupError(explain_pip(lines, log_file))


def _report_line(line: str, progress: Progress) -> None:
    size = re.search(r"Downloading (\S+?)-[^ /]*\.whl.*\(([0-9]+)(?:\.[0-9]+)? MB\)", line)
    if size and int(size.group(2)) >= 5:
        progress.say(f"  {Path(size.group(1)).name}, {size.group(2)} MB")
    elif line.startswith("Installing collected packages"):
        progress.say("Unpacking them")


def explain_pip(lines: Sequence[str], log_file: Path) -> str:
    """Return one sentence for the user from what a failing pip has written."""
    text = "\n".join(lines)
    if "No space left" in text:
        return "The disk is full; the libraries need about 700 MB. Make room and start again."
    if "CERTIFICATE_VERIFY_FAILED" in text:
        return (
            "The libraries could not be fetched because this machine does not trust the "
            "certificate of the package index or of a proxy before it; set pip's 'cert' option "
            "to the right certificates and start again."
        )
    if _NO_NETWORK.search(text):
        return (
            "The libraries could not be fetched because the network or the package index cannot "
            "be reached; connect (or set pip's proxy or index) and start again."
        )
    errors = [line for line in lines if line.startswith("ERROR")]
    reason = _last_line("\n".join(errors or lines)).removeprefix("ERROR:").strip()
    return f"The libraries could not be installed: {reason} (all of pip's words: {log_file})"


def _pip_environment() -> dict[str, str]:
    """Return the user's settings without those that would send files elsewhere."""
    diverting = {"PIP_TARGET", "PIP_PREFIX", "PIP_ROOT", "PIP_USER", "PYTHONPATH", "PYTHONHOME"}
    kept = {name: value for name, value in os.environ.items() if name not in diverting}
    return {**kept, "PIP_USER": "0"}


def _run(command: Sequence[str]) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        command,
        check=False,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        errors="replace",
    )


def _last_line(text: str) -> str:
    lines = [line for line in text.splitlines() if line.strip()]
    return lines[-1].strip() if lines else "no reason was given"


@contextlib.contextmanager
def _lock(path: Path, progress: Progress) -> Iterator[IO[bytes]]:
    """Hold a lock that the system lets go when the process ends, however it ends."""
    with path.open("a+b") as handle:
        waiting = False
        while not _try_lock(handle):
            if not waiting:
                progress.say("Another start is setting up the environment; waiting for it")
                waiting = True
            time.sleep(0.5)
        yield handle


def _try_lock(handle: IO[bytes]) -> bool:
    try:
        if sys.platform == "win32":
            import msvcrt  # noqa: PLC0415 - exists on this system only

            handle.seek(0)
            msvcrt.locking(handle.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl  # noqa: PLC0415

            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except (BlockingIOError, PermissionError):
        return False
    return True
