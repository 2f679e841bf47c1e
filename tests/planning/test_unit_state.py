"""How far a unit is: what follows from the case, and what was marked."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

import numpy as np
import pytest

from stainmap.model.bench_record import BenchMark, BenchRecord, BenchStage
from stainmap.model.case import Case
from stainmap.model.intake import Intake
from stainmap.model.plan import StainPlan
from stainmap.planning.plan_hash import plan_hash
from stainmap.planning.unit_state import SheetStanding, UnitStage, needs_walls, unit_state
from tests.builders import dome_case

NINE = datetime(2026, 5, 4, 9, 30, tzinfo=UTC)


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case(12, 28)


def marked(case: Case, stage: BenchStage) -> Case:
    mark = BenchMark(stage=stage, at=NINE, plan_hash=plan_hash(case))
    return replace(case, bench=BenchRecord(marks=(mark,)))


def test_a_plan_with_coats_is_planned_and_an_empty_one_a_draft(case: Case) -> None:
    assert unit_state(case, plan_hash(case)).stage is UnitStage.PLANNED
    empty = replace(case, plan=StainPlan(block=case.plan.block))
    found = unit_state(empty, plan_hash(empty))
    assert (found.stage, found.words) == (UnitStage.DRAFT, "draft")
    assert found.open_reason == "Nothing is painted in this plan yet."
    bare = replace(case, zones=np.zeros_like(case.zones))
    assert unit_state(bare, "").open_reason == "No zones have been proposed yet."


def test_a_thin_wall_over_an_unknown_stump_makes_a_draft(case: Case) -> None:
    thin = np.full(len(case.zones), 0.6, np.float32)
    assert needs_walls(case)
    found = unit_state(case, "", thin)
    assert found.stage is UnitStage.DRAFT
    assert found.open_reason.startswith("Draft: ")
    said = replace(case, intake=Intake(stump_known=True))
    assert not needs_walls(said)
    assert unit_state(said, "", thin).stage is UnitStage.PLANNED


@pytest.mark.parametrize("stage", list(BenchStage))
def test_what_was_marked_is_the_state_with_its_time(case: Case, stage: BenchStage) -> None:
    one = marked(case, stage)
    found = unit_state(one, plan_hash(one))
    assert found.stage == stage.value
    assert found.stage.bench_done == stage.rank + 1
    assert found.words == f"{stage}, {NINE.astimezone().day} {NINE.astimezone():%b %H:%M}"
    assert not found.changed_since


def test_a_plan_that_was_changed_after_the_mark_is_told(case: Case) -> None:
    one = marked(case, BenchStage.PAINTED)
    changed = replace(one, programme=one.programme, plan=replace(one.plan, nesting_height_mm=1.0))
    assert unit_state(changed, plan_hash(changed)).changed_since


def test_the_printed_sheet_is_held_to_the_plan(case: Case) -> None:
    now = plan_hash(case)
    assert unit_state(case, now).sheet_words == "no sheet"
    printed = replace(case, printed=now, revision=2)
    assert unit_state(printed, now).sheet_words == "revision 2"
    older = unit_state(printed, "other")
    assert older.sheet is SheetStanding.OLDER
    assert older.sheet_words == "newer than revision 2"
