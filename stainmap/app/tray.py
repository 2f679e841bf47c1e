"""A tray at work: its cases read, their coats laid, what is mixed and how the day goes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from stainmap.app.job import Progress
from stainmap.errors import CancelledError, StainmapError
from stainmap.files.case_file import read_case
from stainmap.files.tray_file import SUFFIX, read_tray
from stainmap.model.case import Case
from stainmap.model.tray import Tray, TrayEntry
from stainmap.planning.coats import CoatLayout
from stainmap.planning.plan_hash import plan_hash
from stainmap.planning.tray_mixing import PaintedCase, TrayMixing, tray_mixing
from stainmap.planning.tray_run import TrayRun, tray_run


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LaidCase:
    """A case on the tray, read and with its coats laid."""

    entry: TrayEntry
    painted: PaintedCase

    @property
    def case(self) -> Case:
        """The case."""
        return self.painted.case


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LaidTray:
    """The cases of a tray that could be read, and a sentence for everything that is not as it was.

    `tray` has all entries, also those that could not be read: nothing falls off unnoticed.
    """

    tray: Tray
    cases: tuple[LaidCase, ...]
    problems: tuple[str, ...]

    @property
    def units(self) -> int:
        """Units of all cases."""
        return sum(max(len(one.case.units), 1) for one in self.cases)

    def mixing(self) -> TrayMixing:
        """Return what is mixed for it."""
        return tray_mixing([one.painted for one in self.cases])

    def run(self, start: datetime) -> TrayRun:
        """Return its day; raise CatalogueError if a programme is unknown."""
        cases = [one.case for one in self.cases]
        return tray_run(cases, len(self.mixing().jars), start)


def lay_out(paths: Sequence[Path], progress: Progress | None = None) -> LaidTray:
    """Return the tray of some case files, and of the cases on trays among them.

    Raises
    ------
    CaseFileError
        If a tray among them cannot be read. Cases that cannot be read are spoken of instead.
    """
    entries: list[TrayEntry] = []
    for path in paths:
        if path.suffix == SUFFIX:
            entries += read_tray(path).entries
        else:
            entries.append(TrayEntry(path=path.resolve(), code="", plan_hash=""))
    return lay_tray(Tray(entries=tuple({one.path: one for one in entries}.values())), progress)


def lay_tray(
    tray: Tray,
    progress: Progress | None = None,
    *,
    known: Sequence[LaidCase] = (),
) -> LaidTray:
    """Return a tray with its cases read and their coats laid.

    Parameters
    ----------
    known
        Cases that are at hand, such as the open one; they are not read again.
    """
    at_hand = {one.entry.path: one for one in known}
    cases, problems = [], []
    for number, entry in enumerate(tray.entries):
        if progress is not None:
            progress(number / len(tray.entries), f"reading {entry.path.name}")
        try:
            laid = at_hand.get(entry.path) or _laid(entry.path, read_case(entry.path))
        except CancelledError:
            raise
        except StainmapError as error:
            text = str(error)
            named = text if entry.path.name in text else f"{entry.path.name}: {text}"
            problems.append(f"{named} It stays on the tray, unmixed.")
            continue
        if entry.plan_hash and entry.plan_hash != laid.entry.plan_hash:
            problems.append(
                f"{laid.entry.code} was planned anew since it was laid on the tray; the new plan"
                " counts."
            )
        cases.append(laid)
    found = {one.entry.path: one.entry for one in cases}
    entries = tuple(found.get(entry.path, entry) for entry in tray.entries)
    problems += _doubled(cases)
    return LaidTray(tray=Tray(entries=entries), cases=tuple(cases), problems=tuple(problems))


def laid_case(path: Path, case: Case, painted: PaintedCase | None = None) -> LaidCase:
    """Return an open case as it lies on a tray, its coats laid unless they are at hand."""
    if painted is None:
        return _laid(path, case)
    return LaidCase(entry=_entry(path, case), painted=painted)


def _laid(path: Path, case: Case) -> LaidCase:
    coats = CoatLayout(case.surface.mesh, case.reading.outer).coats(case)
    return LaidCase(entry=_entry(path, case), painted=PaintedCase(case=case, coats=coats))


def _entry(path: Path, case: Case) -> TrayEntry:
    return TrayEntry(path=path.resolve(), code=case.code, plan_hash=plan_hash(case))


def _doubled(cases: Sequence[LaidCase]) -> list[str]:
    codes = [one.case.code for one in cases]
    return [
        f"{codes.count(code)} cases have the code {code}; their sheets could be mistaken."
        for code in dict.fromkeys(codes)
        if codes.count(code) > 1
    ]
