"""Reads the requirements of pyproject.toml and compares them with what is installed.

Knows only what the project's own file uses: version comparisons, one marker, and extras. The
libraries that know it all are among those which have yet to be installed.
"""

from __future__ import annotations

import re
import sys
import tomllib
from collections.abc import Sequence
from functools import cache
from pathlib import Path

_PROJECT = "stainmap"
_RECORDS = ".dist-info"
_SPECIFIER = re.compile(r"(>=|<=|==|!=|<|>)\s*([0-9][0-9.]*)")


def requirements(project_file: Path, extras: Sequence[str] = ()) -> tuple[str, ...]:
    """Return the requirements in force for this interpreter, without their markers.

    Parameters
    ----------
    project_file
        The pyproject.toml that names them.
    extras
        Names of optional groups to add.

    Raises
    ------
    ValueError
        If a marker is used that this reader does not know.
    """
    project = tomllib.loads(project_file.read_text(encoding="utf-8"))["project"]
    wanted = list(project["dependencies"])
    waiting = list(extras)
    while waiting:
        for requirement in project["optional-dependencies"][waiting.pop()]:
            own = re.fullmatch(rf"{_PROJECT}\[(\w+)\]", requirement)
            if own:
                waiting.append(own.group(1))
            else:
                wanted.append(requirement)
    in_force = (_without_marker(requirement) for requirement in wanted)
    return tuple(sorted({requirement for requirement in in_force if requirement}))


def unmet(wanted: Sequence[str]) -> tuple[str, ...]:
    """Return those requirements that the running interpreter does not meet.

    Looks only at the names and versions of installed distributions; imports none of them.
    """
    return tuple(requirement for requirement in wanted if not _is_met(requirement))


def allows(requirement: str, version: str) -> bool:
    """Return whether a requirement such as "numpy>=1.26,<3" allows a version."""
    have = numbers(version)
    return all(_compares(have, op, numbers(v)) for op, v in _SPECIFIER.findall(requirement))


def _without_marker(requirement: str) -> str:
    text, _, marker = requirement.partition(";")
    if marker and not _marker_holds(marker.strip()):
        return ""
    return text.strip()


def _marker_holds(marker: str) -> bool:
    parts = re.fullmatch(r"python_version\s*(<|>=)\s*['\"]([0-9.]+)['\"]", marker)
    if parts is None:
        raise ValueError(f"pyproject.toml has a marker the set-up does not know: {marker}.")
    return _compares(sys.version_info[:2], parts.group(1), numbers(parts.group(2)))


def _is_met(requirement: str) -> bool:
    name = re.split(r"[<>=!\[; ]", requirement, maxsplit=1)[0]
    installed = installed_version(name)
    return installed is not None and allows(requirement, installed)


def installed_version(name: str) -> str | None:
    """Return the version of an installed distribution, or None if there is none of that name.

    Told from the name of the folder of its records, as pip leaves it: ``name-version.dist-info``.
    Reading the records themselves takes the libraries for mail, longer than all else a start does
    before its window; that is left for what has been installed in some other way.
    """
    plain = _plain(name)
    for place in sys.path:
        if plain in (found := _recorded(place or ".")):
            return found[plain]
    import importlib.metadata  # noqa: PLC0415 - slow, see above

    try:
        return importlib.metadata.version(name)
    except importlib.metadata.PackageNotFoundError:
        return None


@cache
def _recorded(place: str) -> dict[str, str]:
    """Return the versions of what is installed in a folder of the module path, by plain name."""
    try:
        records = sorted(Path(place).glob(f"*-*{_RECORDS}"))
    except OSError:
        return {}
    found = {}
    for record in records:
        name, _, version = record.name.removesuffix(_RECORDS).partition("-")
        if (record / "METADATA").is_file():
            found[_plain(name)] = version
    return found


def _plain(name: str) -> str:
    return re.sub(r"[-_.]+", "-", name).lower()


def numbers(version: str) -> tuple[int, ...]:
    """Return the leading numbers of a version, ``(6, 11, 3)`` for "6.11.3"."""
    leading = re.match(r"[0-9]+(?:\.[0-9]+)*", version)
    return tuple(int(part) for part in leading.group().split(".")) if leading else ()


def _compares(left: tuple[int, ...], operator: str, right: tuple[int, ...]) -> bool:
    length = max(len(left), len(right))
    one = left + (0,) * (length - len(left))
    two = right + (0,) * (length - len(right))
    return {
        "<": one < two,
        "<=": one <= two,
        ">": one > two,
        ">=": one >= two,
        "==": one == two,
        "!=": one != two,
    }[operator]


def all_extras(project_file: Path) -> tuple[str, ...]:
    """Return the names of all optional groups of requirements."""
    project = tomllib.loads(project_file.read_text(encoding="utf-8"))["project"]
    return tuple(project["optional-dependencies"])
