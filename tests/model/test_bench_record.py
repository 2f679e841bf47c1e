"""Marks of the bench: in the order of the work, and none lost by accident."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from stainmap.errors import PlanError
from stainmap.model.bench_record import BenchMark, BenchRecord, BenchStage

NINE = datetime(2026, 5, 4, 9, 0, tzinfo=UTC)


def mark(stage: BenchStage, hours: float = 0.0) -> BenchMark:
    return BenchMark(stage=stage, at=NINE + timedelta(hours=hours), plan_hash="ab")


def test_the_latest_is_the_last_in_the_order_of_the_work() -> None:
    record = BenchRecord()
    assert record.latest is None
    for hours, stage in enumerate(BenchStage):
        record = record.with_mark(mark(stage, hours))
        assert record.latest == mark(stage, hours)
    assert [one.stage for one in record.marks] == list(BenchStage)
    assert record.mark(BenchStage.DRIED) == mark(BenchStage.DRIED, 2)


def test_a_stage_may_be_skipped_and_marked_later_takes_back_what_followed() -> None:
    record = BenchRecord().with_mark(mark(BenchStage.SINTERED, 9))
    assert record.mark(BenchStage.MIXED) is None
    record = record.with_mark(mark(BenchStage.PAINTED, 1))
    assert record.marks == (mark(BenchStage.PAINTED, 1),)
    assert record.before(BenchStage.PAINTED) == BenchRecord()


def test_times_do_not_run_backwards() -> None:
    record = BenchRecord().with_mark(mark(BenchStage.PAINTED, 2))
    with pytest.raises(PlanError, match=r"'dried' .* would lie before 'painted'"):
        record.with_mark(mark(BenchStage.DRIED, 1))


def test_a_time_without_a_zone_is_none() -> None:
    with pytest.raises(PlanError, match="no time zone"):
        BenchMark(stage=BenchStage.MIXED, at=NINE.replace(tzinfo=None), plan_hash="")


def test_a_stage_stands_once() -> None:
    with pytest.raises(PlanError, match="out of order"):
        BenchRecord(marks=(mark(BenchStage.DRIED), mark(BenchStage.DRIED)))
