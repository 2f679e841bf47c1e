"""A tray at work: its cases read, their coats laid, what is mixed and how the day goes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from threading import Lock

import numpy as np
from numpy.typing import NDArray

from stainmap.app.job import Progress
from stainmap.errors import CancelledError, StainmapError
from stainmap.files.case_file import read_case, read_figures
from stainmap.files.tray_file import SUFFIX, read_tray
from stainmap.model.case import Case
from stainmap.model.tray import Tray, TrayEntry
from stainmap.planning.area_figures import KeptFigures
from stainmap.planning.coats import CoatLayout
from stainmap.planning.plan_hash import plan_hash
from stainmap.planning.tray_mixing import PaintedCase, TrayMixing, tray_mixing
from stainmap.planning.tray_run import TrayRun, tray_run
from stainmap.words import listed, translate


class LaidCoats:
    """The coats (S, V) of a case, laid when they are first asked for and then kept.

    Parameters
    ----------
    case
        The case.
    known
        Its coats, if they are at hand.
    """

    def __init__(self, case: Case, known: NDArray[np.float32] | None = None) -> None:
        self._case = case
        self._coats = known
        self._lock = Lock()

    def get(self) -> NDArray[np.float32]:
        """Return the coats."""
        with self._lock:
            if self._coats is None:
                case = self._case
                layout = CoatLayout(case.surface.mesh, case.reading.outer)
                self._coats = layout.coats(case)
            return self._coats


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LaidCase:
    """A case on the tray, read; its coats are laid when they are needed.

    Parameters
    ----------
    entry
        Its file.
    case
        As it is in the file.
    labelled
        The same with a code that no other case of the tray has: sheets and lists call it by that.
    laid_coats
        Its coats, laid when they are first asked for.
    figures
        What its file says was predicted of its areas.
    """

    entry: TrayEntry
    case: Case
    labelled: Case
    laid_coats: LaidCoats
    figures: KeptFigures | None = None

    @property
    def painted(self) -> PaintedCase:
        """The case, labelled, with its coats."""
        return PaintedCase(case=self.labelled, coats=self.laid_coats.get())


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LaidTray:
    """The cases of a tray that could be read, and a sentence for everything that is not as it was.

    Parameters
    ----------
    tray
        All entries, also those that could not be read: nothing falls off unnoticed.
    cases
        Those that can be mixed for and painted.
    not_laid
        A sentence for every entry that is not among them.
    problems
        These sentences, and what else should be known of the tray.
    """

    tray: Tray
    cases: tuple[LaidCase, ...]
    not_laid: tuple[str, ...]
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
        cases = [one.labelled for one in self.cases]
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
    """Return a tray with its cases read.

    Parameters
    ----------
    known
        Cases that are at hand, such as the open one; they are not read again.
    """
    at_hand = {one.entry.path: one for one in known}
    cases: list[LaidCase] = []
    not_laid, problems = [], []
    for number, entry in enumerate(tray.entries):
        if progress is not None:
            progress(
                number / len(tray.entries),
                translate("tray", "reading {name}").format(name=entry.path.name),
            )
        try:
            laid = at_hand.get(entry.path) or _read(entry.path)
        except CancelledError:
            raise
        except StainmapError as error:
            text = str(error)
            named = text if entry.path.name in text else f"{entry.path.name}: {text}"
            not_laid.append(
                translate("tray", "{named} It stays on the tray, unmixed.").format(named=named)
            )
            continue
        if entry.plan_hash and entry.plan_hash != laid.entry.plan_hash:
            problems.append(
                translate(
                    "tray",
                    "{code} was planned anew since it was laid on the tray; the new plan counts.",
                ).format(code=laid.entry.code)
            )
        same = next((one for one in cases if _is_copy(one, laid)), None)
        if same is not None:
            not_laid.append(
                translate(
                    "tray",
                    "{name} is a copy of {name_2}, both {code}; it stays on the tray, unmixed.",
                ).format(name=entry.path.name, name_2=same.entry.path.name, code=laid.entry.code)
            )
            continue
        cases.append(laid)
    found = {one.entry.path: one.entry for one in cases}
    entries = tuple(found.get(entry.path, entry) for entry in tray.entries)
    told_apart, said = _told_apart(cases)
    return LaidTray(
        tray=Tray(entries=entries),
        cases=told_apart,
        not_laid=tuple(not_laid),
        problems=(*not_laid, *problems, *said),
    )


def laid_case(path: Path, case: Case, coats: NDArray[np.float32] | None = None) -> LaidCase:
    """Return a case as it lies on a tray; its coats (S, V) need not be laid if they are at hand."""
    return LaidCase(
        entry=_entry(path, case), case=case, labelled=case, laid_coats=LaidCoats(case, coats)
    )


def _read(path: Path) -> LaidCase:
    return replace(laid_case(path, read_case(path)), figures=read_figures(path))


def _entry(path: Path, case: Case) -> TrayEntry:
    return TrayEntry(path=path.resolve(), code=case.code, plan_hash=plan_hash(case))


def _is_copy(one: LaidCase, other: LaidCase) -> bool:
    """Return True if two files hold the same crown, planned alike under the same code."""
    return (
        one.case.code == other.case.code
        and one.entry.plan_hash == other.entry.plan_hash
        and one.case.source.sha256 == other.case.source.sha256
    )


def _told_apart(cases: Sequence[LaidCase]) -> tuple[tuple[LaidCase, ...], list[str]]:
    """Return the cases with codes that differ, and a sentence for every code that several have.

    Cases of one code are told apart by the names of their files, with as many folders before them
    as it takes.
    """
    codes = [one.case.code for one in cases]
    taken = set(codes)
    apart: dict[int, str] = {}
    said = []
    for code in dict.fromkeys(codes):
        sharing = [number for number, own in enumerate(codes) if own == code]
        if len(sharing) == 1:
            continue
        names = _names([cases[number].entry.path.with_suffix("") for number in sharing])
        for number, name in zip(sharing, names, strict=True):
            label = f"{code} ({name})"
            while label in taken:  # somebody's code looks just like it
                label += "'"
            taken.add(label)
            apart[number] = label
        files = listed([cases[number].entry.path.name for number in sharing])
        said.append(
            translate(
                "tray",
                "{files} have the code {code}; lists and sheets tell them apart by their files.",
            ).format(files=files, code=code)
        )
    named = tuple(
        replace(one, labelled=replace(one.case, code=apart[number])) if number in apart else one
        for number, one in enumerate(cases)
    )
    return named, said


def _names(paths: Sequence[Path]) -> list[str]:
    """Return the shortest ends of some paths that all differ."""
    longest = max(len(path.parts) for path in paths)
    for count in range(1, longest + 1):
        names = ["/".join(path.parts[-count:]) for path in paths]
        if len(set(names)) == len(names):
            return names
    return [str(path) for path in paths]
