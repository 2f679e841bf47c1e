"""What went to the bench, noted in the files of cases that are not open: revision and plan."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from stainmap.app.job import Progress
from stainmap.app.sheets import revised
from stainmap.app.tray import LaidCase
from stainmap.errors import StainmapError
from stainmap.files.case_file import read_case, read_figures, read_look, read_preview, write_case
from stainmap.files.case_lock import CaseLock, holder_of
from stainmap.model.case import Case
from stainmap.planning.plan_hash import plan_hash
from stainmap.words import translate


def note_printed(printed: Sequence[LaidCase], progress: Progress | None = None) -> tuple[str, ...]:
    """Note in the files of cases which plan was printed; return a sentence for every miss.

    Files are written as a save does, whole or not at all. A case that is open elsewhere, or that
    was changed since its sheets were made, is left alone.
    """
    missed = []
    for number, one in enumerate(printed):
        path = one.entry.path
        if progress is not None:
            progress(number / len(printed), path.name)
        try:
            said = _noted(path, one.case)
        except StainmapError as error:
            said = translate(
                "printed note", "The revision was not noted in {name}: {error}"
            ).format(name=path.name, error=error)
        if said:
            missed.append(said)
    return tuple(missed)


def _noted(path: Path, printed: Case) -> str:
    """Note what was printed of one case; return why not, or nothing."""
    if printed.printed == plan_hash(printed):
        return ""
    lock = CaseLock.take(path)
    if lock is None:
        holder = holder_of(path)
        where = (
            translate("printed note", "open elsewhere ({holder})").format(holder=holder)
            if holder
            else translate("printed note", "open elsewhere")
        )
        return translate(
            "printed note", "{name} is {where}: that it was printed is not noted in it."
        ).format(name=path.name, where=where)
    try:
        now = read_case(path)
        if _as_printed(now) != _as_printed(printed):
            return translate(
                "printed note",
                "{name} was changed since its sheets were made: that they were printed is not "
                "noted in it.",
            ).format(name=path.name)
        write_case(
            revised(now),
            path,
            preview_png=read_preview(path),
            look=read_look(path, now),
            figures=read_figures(path),
        )
    finally:
        lock.release()
    return ""


def _as_printed(case: Case) -> tuple[str, int, str]:
    return plan_hash(case), case.revision, case.printed
