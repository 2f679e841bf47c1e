"""What is done at the bench, marked in cases: the open one by an edit, others in their files."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime
from pathlib import Path

from stainmap.errors import CaseFileError
from stainmap.files.case_file import read_case, read_figures, read_look, read_preview, write_case
from stainmap.files.case_lock import CaseLock, holder_of
from stainmap.model.bench_record import BenchMark, BenchRecord, BenchStage
from stainmap.model.case import Case
from stainmap.planning.plan_hash import plan_hash
from stainmap.words import translate


def with_stage(case: Case, stage: BenchStage | None, at: datetime) -> Case:
    """Return the case with a stage of the bench done; None takes all of them back.

    Marks of later stages are taken back.

    Raises
    ------
    PlanError
        If the time lies before that of an earlier stage.
    """
    if stage is None:
        return with_record(case, BenchRecord())
    mark = BenchMark(stage=stage, at=at, plan_hash=plan_hash(case))
    return with_record(case, case.bench.with_mark(mark))


def with_record(case: Case, record: BenchRecord) -> Case:
    """Return the case with another record of the bench."""
    return case if record == case.bench else replace(case, bench=record)


def edit_file(path: Path, change: Callable[[Case], Case]) -> tuple[Case, Case]:
    """Change a case that is not open here, in its file; return it before and after.

    The file is written as a save does, whole or not at all.

    Raises
    ------
    StainmapError
        If it cannot be read or written, is open elsewhere, or cannot be changed in this way.
    """
    lock = CaseLock.take(path)
    if lock is None:
        holder = holder_of(path)
        where = (
            translate("tray bench", "open elsewhere ({holder})").format(holder=holder)
            if holder
            else translate("tray bench", "open elsewhere")
        )
        raise CaseFileError(
            translate("tray bench", "{name} is {where}.").format(name=path.name, where=where),
            advice=translate("tray bench", "Close it there first."),
        )
    try:
        before = read_case(path)
        after = change(before)
        if after is not before:
            write_case(
                after,
                path,
                preview_png=read_preview(path),
                look=read_look(path, before),
                figures=read_figures(path),
            )
    finally:
        lock.release()
    return before, after
