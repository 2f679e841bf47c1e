"""What has been done at the bench, stage by stage, with the time and the plan it was done by."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from stainmap.errors import PlanError
from stainmap.model.time_words import date_and_time
from stainmap.words import translate, value_word


class BenchStage(StrEnum):
    """A stage that somebody says is done, in the order of the work."""

    MIXED = "mixed"
    PAINTED = "painted"
    DRIED = "dried"
    SINTERED = "sintered"
    JUDGED = "judged"

    @property
    def rank(self) -> int:
        """Place in the order of the work, from 0."""
        return list(BenchStage).index(self)


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchMark:
    """A stage that is done.

    Parameters
    ----------
    stage
        Which one.
    at
        When, with its time zone.
    plan_hash
        Hash of the plan that was worked by; a plan that was changed since has another one.
    """

    stage: BenchStage
    at: datetime
    plan_hash: str

    def __post_init__(self) -> None:
        """Refuse a time that means another moment in every time zone."""
        if self.at.utcoffset() is None:
            raise PlanError(
                translate("bench record", "When '{stage}' was done has no time zone.").format(
                    stage=self.stage
                )
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchRecord:
    """The marks of a unit in the order of the work; a stage that nobody marked may be missing."""

    marks: tuple[BenchMark, ...] = ()

    def __post_init__(self) -> None:
        """Refuse stages out of order, and times that run backwards."""
        ranks = [mark.stage.rank for mark in self.marks]
        if ranks != sorted(set(ranks)):
            raise PlanError(
                translate("bench record", "The stages of the bench record are out of order.")
            )
        for before, after in zip(self.marks, self.marks[1:], strict=False):
            if after.at < before.at:
                raise PlanError(
                    translate(
                        "bench record", "'{after}' ({later}) would lie before '{before}' ({at})."
                    ).format(
                        after=value_word(after.stage),
                        later=date_and_time(after.at),
                        before=value_word(before.stage),
                        at=date_and_time(before.at),
                    ),
                    advice=translate("bench record", "Give a later time."),
                )

    @property
    def latest(self) -> BenchMark | None:
        """The mark of the last stage that is done, or None before the first."""
        return self.marks[-1] if self.marks else None

    def mark(self, stage: BenchStage) -> BenchMark | None:
        """Return the mark of a stage, or None."""
        return next((one for one in self.marks if one.stage is stage), None)

    def with_mark(self, mark: BenchMark) -> BenchRecord:
        """Return the record with a stage done; marks of later stages are taken back.

        Raises
        ------
        PlanError
            If the time lies before that of an earlier stage.
        """
        return BenchRecord(marks=(*self.before(mark.stage).marks, mark))

    def before(self, stage: BenchStage) -> BenchRecord:
        """Return the record without a stage and all that come after it."""
        return BenchRecord(marks=tuple(one for one in self.marks if one.stage.rank < stage.rank))
