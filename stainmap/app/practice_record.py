"""From the lab book to the instructor's sheet."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime, tzinfo

from stainmap.labbook.attempt import Attempt
from stainmap.labbook.store import Labbook
from stainmap.paper.page_size import PageSize
from stainmap.paper.practice_data import (
    BUILT_IN,
    AttemptLine,
    CurveLine,
    PracticeSheet,
    RepeatLine,
    ThresholdLine,
    TraineePart,
)
from stainmap.planning.plan_hash import short_hash
from stainmap.practice.exercise import Skill
from stainmap.practice.packs import Pack
from stainmap.practice.progress import (
    REPEAT_DAYS,
    LearningCurve,
    learning_curves,
    repeats,
    threshold_curve,
    weakest_skill,
)
from stainmap.words import in_english

SKILLS = tuple(skill.value for skill in Skill)


@in_english()
def practice_sheet(
    book: Labbook,
    *,
    trainees: Sequence[str] | None = None,
    pack: Pack | None = None,
    page: PageSize = PageSize.A4,
    today: date | None = None,
    zone: tzinfo | None = None,
) -> PracticeSheet:
    """Return what the instructor's sheet prints.

    Parameters
    ----------
    book
        The lab book.
    trainees
        Codes; all there are if None.
    pack
        Only what belongs to this pack; then only those who have tried it, unless named.
    page
        Paper format.
    today
        Date of the sheet; the present day if None.
    zone
        Where days begin and end; the computer's own if None.

    Raises
    ------
    LabbookError
        If there is nobody to print, or the book cannot be read.
    """
    now = datetime.now().astimezone()
    where = zone if zone is not None else now.tzinfo
    pack_hash = pack.sha256 if pack is not None else None
    parts = []
    for code in trainees if trainees is not None else book.trainees():
        attempts = book.attempts(code, pack_hash=pack_hash)
        if attempts or trainees is not None or pack is None:
            days = book.repeat_days(code) or REPEAT_DAYS
            parts.append(_part(code, attempts, days, where))
    return PracticeSheet(
        day=today if today is not None else now.date(),
        trainees=tuple(parts),
        pack_title=pack.title if pack is not None else "",
        pack_hash=pack_hash or "",
        page=page,
    )


def _part(
    code: str, attempts: Sequence[Attempt], days: Sequence[int], zone: tzinfo | None
) -> TraineePart:
    # Skills that nobody has asked of this trainee would fill the page with empty charts.
    curves = [one for one in learning_curves(attempts, SKILLS) if one.points]
    return TraineePart(
        code=code,
        curves=tuple(_curve(one, zone) for one in curves),
        attempts=tuple(_attempt(one, zone) for one in reversed(attempts)),
        thresholds=tuple(
            ThresholdLine(
                on=_day(one.at, zone),
                threshold_dl=one.threshold_dl,
                sd_dl=one.sd_dl,
                below_screen=one.below_screen,
            )
            for one in threshold_curve(attempts)
        ),
        repeats=tuple(
            RepeatLine(
                exercise=one.last.exercise,
                seed=one.last.seed,
                due_on=one.due_on,
                number=one.done + 1,
                of=one.of,
            )
            for one in repeats(attempts, days=days, zone=zone)
        ),
        weakest=weakest_skill(attempts, SKILLS) or "" if attempts else "",
    )


def _curve(curve: LearningCurve, zone: tzinfo | None) -> CurveLine:
    return CurveLine(
        skill=curve.skill,
        scores=tuple(point.score for point in curve.points),
        levels=tuple(point.level for point in curve.points),
        first_on=_day(curve.points[0].at, zone),
        last_on=_day(curve.points[-1].at, zone),
        gain=curve.gain,
    )


def _attempt(attempt: Attempt, zone: tzinfo | None) -> AttemptLine:
    return AttemptLine(
        on=_day(attempt.finished_at, zone),
        exercise=attempt.exercise,
        seed=attempt.seed,
        minutes=attempt.minutes,
        score=attempt.score,
        pack=short_hash(attempt.pack_hash) if attempt.pack_hash else BUILT_IN,
    )


def _day(when: datetime, zone: tzinfo | None) -> date:
    return when.astimezone(zone).date()
