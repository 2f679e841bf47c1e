"""How far a unit is: what the case tells by itself, and what was marked at the bench."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from stainmap.model.bench_record import BenchStage
from stainmap.model.case import Case
from stainmap.model.time_words import date_and_time
from stainmap.planning.draft import draft_reason
from stainmap.words import translate, value_word


class UnitStage(StrEnum):
    """Draft and planned follow from the case; the others are those of the bench."""

    DRAFT = "draft"
    PLANNED = "planned"
    MIXED = BenchStage.MIXED.value
    PAINTED = BenchStage.PAINTED.value
    DRIED = BenchStage.DRIED.value
    SINTERED = BenchStage.SINTERED.value
    JUDGED = BenchStage.JUDGED.value

    @property
    def bench_done(self) -> int:
        """How many stages of the bench lie behind it, 0 to 5."""
        return max(list(UnitStage).index(self) - 1, 0)


class SheetStanding(StrEnum):
    """The printed sheet beside the plan as it is now."""

    NONE = "no sheet"
    CURRENT = "sheet as planned"
    OLDER = "plan newer than the sheet"


@dataclass(frozen=True, slots=True, kw_only=True)
class UnitState:
    """How far a unit is.

    Parameters
    ----------
    stage
        The furthest that is reached.
    at
        When it was marked; None for draft and planned.
    open_reason
        Why the plan is a draft, in a sentence, also of a unit that is at the bench; or empty.
    changed_since
        True if the plan was changed after the stage was marked.
    sheet, revision
        The printed sheet, and the revision on it.
    """

    stage: UnitStage
    at: datetime | None
    open_reason: str
    changed_since: bool
    sheet: SheetStanding
    revision: int

    @property
    def words(self) -> str:
        """The stage and when it was reached, such as "painted, 4 May 09:30"."""
        if self.at is None:
            return value_word(self.stage)
        at = self.at.astimezone()
        return f"{value_word(self.stage)}, {date_and_time(at)}"

    @property
    def sheet_words(self) -> str:
        """What is said of the printed sheet."""
        if self.sheet is SheetStanding.NONE:
            return value_word(self.sheet)
        if self.sheet is SheetStanding.CURRENT:
            return translate("unit state", "revision {revision}").format(revision=self.revision)
        return translate("unit state", "newer than revision {revision}").format(
            revision=self.revision
        )


def unit_state(case: Case, plan_hash: str, wall_mm: NDArray[np.float32] | None = None) -> UnitState:
    """Return how far the units of a case are; those of a bridge go together.

    Parameters
    ----------
    plan_hash
        Hash of the case's plan as it is now.
    wall_mm
        (V,) wall, as `predict.shape` measures it; without, thin walls over an unknown stump are
        not looked for.
    """
    latest = case.bench.latest
    reason = _open_reason(case, wall_mm)
    if latest is None:
        stage = UnitStage.DRAFT if reason else UnitStage.PLANNED
    else:
        stage = UnitStage(latest.stage.value)
    if not case.printed:
        sheet = SheetStanding.NONE
    else:
        sheet = SheetStanding.CURRENT if case.printed == plan_hash else SheetStanding.OLDER
    return UnitState(
        stage=stage,
        at=None if latest is None else latest.at,
        open_reason=reason,
        changed_since=latest is not None and latest.plan_hash != plan_hash,
        sheet=sheet,
        revision=case.revision,
    )


def needs_walls(case: Case) -> bool:
    """Return True if only the thickness of walls tells whether the case is a draft."""
    known = case.intake is not None and case.intake.stump_known
    return not known and not _open_reason(case, None)


def _open_reason(case: Case, wall_mm: NDArray[np.float32] | None) -> str:
    if not case.zones.any():
        return translate("unit state", "No zones have been proposed yet.")
    if not any(step.areas or step.streaks or step.brushed for step in case.plan.steps):
        return translate("unit state", "Nothing is painted in this plan yet.")
    return "" if wall_mm is None else draft_reason(case, wall_mm)
