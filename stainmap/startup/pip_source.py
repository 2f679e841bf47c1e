"""Finds a pip for a Python that came without one; needs the standard library only.

Debian and its relatives leave `ensurepip` out of their python3 package. What helps is tried in
this order: the system's package for it (as administrator), a pip that this interpreter can
import, a pip wheel on the disk, the system's pip wheel fetched without being installed, and a
pip wheel from the package index that pip has been configured to use.
"""

from __future__ import annotations

import configparser
import contextlib
import importlib.util
import os
import re
import shutil
import subprocess
import sys
import tempfile
import urllib.error
import urllib.parse
import urllib.request
from collections.abc import Callable, Sequence
from pathlib import Path

from stainmap.startup import system_packages
from stainmap.startup.requirement import numbers

_SYSTEM_WHEELS = Path("/usr/share/python-wheels")
_WHEEL_LINK = re.compile(r'href="([^"]*?/?pip-([0-9]+(?:\.[0-9]+)*)-py3-none-any\.whl)[^"]*"')
_TIMEOUT_S = 30


def ensurepip_works() -> bool:
    """Return whether `python -m venv` can put pip into an environment."""
    return importlib.util.find_spec("ensurepip") is not None


def venv_package() -> str:
    """Return the name of the system package that completes this Python."""
    return f"python{sys.version_info[0]}.{sys.version_info[1]}-venv"


def venv_package_line() -> str:
    """Return the command an administrator types to complete this Python."""
    return f"apt-get install {venv_package()}"


def install_venv_package(say: Callable[[str], None]) -> bool:
    """Install the system package that completes this Python; return whether that worked."""
    if not system_packages.may_install() or Path(sys.base_prefix) != Path("/usr"):
        return False
    with contextlib.suppress(system_packages.PackagesError):
        system_packages.install([venv_package()], say)
    return ensurepip_works_in_child()


def ensurepip_works_in_child() -> bool:
    """Return whether a fresh interpreter finds ensurepip (this one may have cached its absence)."""
    return _succeeds([sys.executable, "-c", "import ensurepip"])


def pip_command(python: Path) -> list[str] | None:
    """Return the words that run a pip for the environment of `python`, or None without one."""
    if _succeeds([str(python), "-c", "import pip"]):
        return [str(python), "-m", "pip"]
    if importlib.util.find_spec("pip") is not None:
        return [sys.executable, "-m", "pip", "--python", str(python)]
    return None


def bring_pip(python: Path) -> bool:
    """Install pip into the environment of `python` from a wheel; return whether that worked."""
    with tempfile.TemporaryDirectory(prefix="stainmap-") as folder:
        for find in (_wheel_on_disk, _wheel_from_system, _wheel_from_index):
            wheel = find(Path(folder))
            if wheel is not None and _install_wheel(python, wheel):
                return True
    return False


def configured_index() -> str | None:
    """Return the address of the package index set for pip, or None if pip has its default."""
    from_environment = os.environ.get("PIP_INDEX_URL")
    if from_environment:
        return from_environment
    found: str | None = None
    for path in _pip_config_files():
        parser = configparser.RawConfigParser()
        try:
            parser.read(path, encoding="utf-8")
        except (configparser.Error, UnicodeDecodeError):
            continue
        for section in ("global", "install"):
            if parser.has_option(section, "index-url"):
                found = parser[section]["index-url"]
    return found


def newest_pip_wheel(page: str, address: str) -> str | None:
    """Return the address of the newest pip wheel linked from a page of a package index."""
    links = _WHEEL_LINK.findall(page)
    if not links:
        return None
    newest: str = max(links, key=lambda link: numbers(link[1]))[0]
    return urllib.parse.urljoin(address, newest)


def _pip_config_files() -> tuple[Path, ...]:
    configured = os.environ.get("XDG_CONFIG_HOME")
    config = Path(configured) if configured else Path.home() / ".config"
    files = [
        Path("/etc/xdg/pip/pip.conf"),
        Path("/etc/pip.conf"),
        Path.home() / ".pip" / "pip.conf",
        config / "pip" / "pip.conf",
    ]
    named = os.environ.get("PIP_CONFIG_FILE")
    return (*files, Path(named)) if named else tuple(files)


def _wheel_on_disk(_folder: Path) -> Path | None:
    wheels = sorted(_SYSTEM_WHEELS.glob("pip-*.whl"))
    return wheels[-1] if wheels else None


def _wheel_from_system(folder: Path) -> Path | None:
    """Fetch the system's pip wheel as an ordinary user, without installing its package."""
    if shutil.which("apt-get") is None or shutil.which("dpkg-deb") is None:
        return None
    fetch = ["apt-get", "-q", "download", "python3-pip-whl"]
    if not _succeeds(fetch, folder):
        # The system's lists of packages are missing: fetch our own copy of them first.
        lists, cache = folder / "lists", folder / "cache"
        for part in (lists, cache):
            (part / "partial").mkdir(parents=True)
        private = ["-o", f"Dir::State::Lists={lists}", "-o", f"Dir::Cache={cache}"]
        if not _succeeds(["apt-get", "-q", *private, "update"], folder):
            return None
        if not _succeeds([*fetch[:2], *private, *fetch[2:]], folder):
            return None
    packages = sorted(folder.glob("python3-pip-whl*.deb"))
    if not packages or not _succeeds(["dpkg-deb", "-x", str(packages[-1]), str(folder / "deb")]):
        return None
    wheels = sorted((folder / "deb").rglob("pip-*.whl"))
    return wheels[-1] if wheels else None


def _wheel_from_index(folder: Path) -> Path | None:
    index = configured_index()
    if index is None or urllib.parse.urlsplit(index).scheme not in ("http", "https"):
        return None
    address = index.rstrip("/") + "/pip/"
    try:
        with urllib.request.urlopen(address, timeout=_TIMEOUT_S) as answer:  # noqa: S310 - checked
            page = answer.read().decode("utf-8", "replace")
            link = newest_pip_wheel(page, answer.url)
        if link is None:
            return None
        with urllib.request.urlopen(link, timeout=_TIMEOUT_S) as answer:  # noqa: S310
            content = answer.read()
    except (urllib.error.URLError, OSError, ValueError):
        return None
    wheel = folder / Path(urllib.parse.urlsplit(link).path).name
    wheel.write_bytes(content)
    return wheel


def _install_wheel(python: Path, wheel: Path) -> bool:
    return _succeeds([str(python), f"{wheel}/pip", "install", "--no-index", str(wheel)])


def _succeeds(command: Sequence[str], folder: Path | None = None) -> bool:
    try:
        done = subprocess.run(command, check=False, capture_output=True, cwd=folder)
    except OSError:
        return False
    return done.returncode == 0
