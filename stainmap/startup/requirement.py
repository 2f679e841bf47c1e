"""Reads the requirements of pyproject.toml and compares them with what is installed.

Knows only what the project's own file uses: version comparisons, one marker, and extras. The
libraries that know it all are among those which have yet to be installed.
"""

from __future__ import annotations

import importlib.metadata
import re
import sys
import tomllib
from collections.abc import Sequence
from pathlib import Path

_PROJECT = "stainmap"
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
    try:
        installed = importlib.metadata.version(name)
    except importlib.metadata.PackageNotFoundError:
        return False
    return allows(requirement, installed)


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
