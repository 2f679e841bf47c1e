"""Marks of the bench in the files of cases that are not open: written whole, or not at all."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import numpy as np
import pytest

from stainmap.app.tray_bench import edit_file, with_record, with_stage
from stainmap.errors import CaseFileError, PlanError
from stainmap.files.case_file import read_case, read_look, write_case
from stainmap.files.case_lock import CaseLock
from stainmap.model.bench_record import BenchRecord, BenchStage
from stainmap.planning.plan_hash import plan_hash
from tests.builders import dome_case

NINE = datetime(2026, 5, 4, 9, 30, tzinfo=UTC)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    case, path = dome_case(6, 12), tmp_path / "one.stainmap"
    write_case(case, path, look=np.full((len(case.zones), 3), 7, np.uint8))
    return path


def test_a_mark_is_kept_in_the_file_and_nothing_else_changes(path: Path) -> None:
    before, after = edit_file(path, lambda case: with_stage(case, BenchStage.PAINTED, NINE))
    read = read_case(path)
    assert before.bench == BenchRecord()
    assert read.bench == after.bench
    latest = read.bench.latest
    assert latest is not None
    assert (latest.stage, latest.at) == (BenchStage.PAINTED, NINE)
    assert latest.plan_hash == plan_hash(read) == plan_hash(before)
    assert read_look(path, read) is not None, "what it was last seen in stays"
    edit_file(path, lambda case: with_record(case, before.bench))
    assert read_case(path).bench == BenchRecord()


def test_none_takes_all_marks_back(path: Path) -> None:
    case = with_stage(read_case(path), BenchStage.MIXED, NINE)
    assert with_stage(case, None, NINE).bench == BenchRecord()
    assert with_record(case, case.bench) is case


def test_a_case_that_is_open_elsewhere_is_left_alone(path: Path) -> None:
    lock = CaseLock.take(path)
    assert lock is not None
    content = path.read_bytes()
    with pytest.raises(CaseFileError, match="open elsewhere"):
        edit_file(path, lambda case: with_stage(case, BenchStage.MIXED, NINE))
    lock.release()
    assert path.read_bytes() == content
    edit_file(path, lambda case: with_stage(case, BenchStage.MIXED, NINE))


def test_a_refused_mark_leaves_the_file_as_it_was(path: Path) -> None:
    edit_file(path, lambda case: with_stage(case, BenchStage.PAINTED, NINE))
    content = path.read_bytes()
    with pytest.raises(PlanError, match="would lie before"):
        edit_file(path, lambda case: with_stage(case, BenchStage.DRIED, NINE.replace(hour=8)))
    assert path.read_bytes() == content
    edit_file(path, lambda case: replace(case, notes="free again"))
