"""A tray: the cases that are mixed for, painted and fired together."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from stainmap.errors import PlanError
from stainmap.words import translate

MOST_CASES = 100


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayEntry:
    """A case on a tray: its file, its code, and the hash of its plan when it was laid there."""

    path: Path
    code: str
    plan_hash: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Tray:
    """The cases of a tray in the order they were laid on it; each file once."""

    entries: tuple[TrayEntry, ...] = ()

    def __post_init__(self) -> None:
        """Refuse a case that lies on the tray twice, and trays that no bench has."""
        paths = [entry.path for entry in self.entries]
        twice = next((path for path in paths if paths.count(path) > 1), None)
        if twice is not None:
            raise PlanError(
                translate("tray", "{name} lies on the tray twice.").format(name=twice.name),
                advice=translate("tray", "Lay each case once."),
            )
        if len(paths) > MOST_CASES:
            raise PlanError(
                translate("tray", "{count} cases are too many for one tray.").format(
                    count=len(paths)
                ),
                advice=translate("tray", "Lay at most {most_cases}.").format(most_cases=MOST_CASES),
            )
