"""What the attempts of one trainee say: learning curves, the weakest skill, what to repeat when.

Everything here is arithmetic on a list of attempts. It says how the exercises of this program went,
nothing about clinical skill: no trial with people has been made.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta, tzinfo
from statistics import NormalDist
from typing import Final

from stainmap.labbook.attempt import Attempt
from stainmap.practice.staircase import SHARE

REPEAT_DAYS: Final = (1, 7, 30)
"""Days from one try to the next. That spacing helps, and the more the longer something is to be
kept, is published for words and facts [Cepeda2006]; these three numbers, and their use for
exercises like ours, are common practice without a published source."""
PASSED: Final = 70.0
"""Score from which an exercise counts as known; assumed."""
# What thresholds meant before they said so themselves.
_FORMER_SHARE: Final = 0.75
RECENT: Final = 3
"""So many tries make the present level of a skill: one lucky one does not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """One try on a learning curve, and the level after it: the mean of the last `RECENT` tries."""

    at: datetime
    score: float
    level: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LearningCurve:
    """How a skill went over time, oldest try first."""

    skill: str
    points: tuple[Point, ...]

    @property
    def level(self) -> float | None:
        """The present level, 0 to 100; None if it was never tried."""
        return self.points[-1].level if self.points else None

    @property
    def gain(self) -> float | None:
        """How much the level has risen since the first tries; None below twice `RECENT` tries."""
        if len(self.points) < 2 * RECENT:
            return None
        return self.points[-1].level - self.points[RECENT - 1].level


@dataclass(frozen=True, slots=True, kw_only=True)
class ThresholdPoint:
    """A just-noticeable difference that was measured, L*, with one sd; right in five of six cases.

    Where `below_screen` is true it lies below `threshold_dl`, the finest that could be shown.
    """

    at: datetime
    threshold_dl: float
    sd_dl: float
    below_screen: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Repeat:
    """An exercise to be done again.

    Parameters
    ----------
    last
        Its last try: what it is called, its hash, kind and seed.
    due_on
        The day from which it may be repeated.
    after_days
        How long after the last try that is.
    done
        How many repeats lie behind, and `of` how many there are.
    """

    last: Attempt
    due_on: date
    after_days: int
    done: int
    of: int


def learning_curve(attempts: Iterable[Attempt], skill: str) -> LearningCurve:
    """Return the curve of a skill from attempts in any order; those without it do not count."""
    told = [one for one in _in_order(attempts) if skill in one.skills]
    scores = [one.skills[skill] for one in told]
    points = []
    for index, one in enumerate(told):
        last = scores[max(index + 1 - RECENT, 0) : index + 1]
        level = sum(last) / len(last)
        points.append(Point(at=one.finished_at, score=scores[index], level=level))
    return LearningCurve(skill=skill, points=tuple(points))


def learning_curves(
    attempts: Sequence[Attempt], skills: Sequence[str] = ()
) -> tuple[LearningCurve, ...]:
    """Return the curves of `skills` in their order, then of any other that was ever asked for."""
    asked = {skill for one in attempts for skill in one.skills}
    names = [*skills, *sorted(asked - set(skills))]
    return tuple(learning_curve(attempts, name) for name in names)


def weakest_skill(attempts: Sequence[Attempt], skills: Sequence[str]) -> str | None:
    """Return which of `skills` to practise next; None if there are none.

    One that was never tried comes first, in the order of `skills`; then the lowest level; of equal
    ones that which was not tried for the longest time.
    """
    curves = [learning_curve(attempts, name) for name in skills]
    untried = next((curve.skill for curve in curves if not curve.points), None)
    if untried is not None or not curves:
        return untried
    return min(curves, key=lambda one: (one.points[-1].level, one.points[-1].at)).skill


def threshold_curve(attempts: Iterable[Attempt]) -> tuple[ThresholdPoint, ...]:
    """Return the just-noticeable differences that tests have given, in order."""
    points = []
    for one in _in_order(attempts):
        threshold = one.details.get("threshold_dl")
        sd = one.details.get("threshold_sd", 0.0)
        if isinstance(threshold, int | float) and isinstance(sd, int | float):
            times = _as_five_of_six(one.details.get("threshold_share", _FORMER_SHARE))
            points.append(
                ThresholdPoint(
                    at=one.finished_at,
                    threshold_dl=times * float(threshold),
                    sd_dl=times * float(sd),
                    below_screen=one.details.get("threshold_below_screen") is True,
                )
            )
    return tuple(points)


def _as_five_of_six(share: object) -> float:
    """Return by what a threshold for another share of right answers is multiplied.

    By the law of even noise: differences that noise hides go as the normal quantile of the share.
    """
    if not isinstance(share, int | float) or not 0.5 < share < 1.0 or abs(share - SHARE) < 1e-3:
        return 1.0
    normal = NormalDist()
    return normal.inv_cdf(SHARE) / normal.inv_cdf(float(share))


def repeats(
    attempts: Iterable[Attempt],
    *,
    days: Sequence[int] = REPEAT_DAYS,
    zone: tzinfo | None = UTC,
) -> tuple[Repeat, ...]:
    """Return what is to be repeated and when, the earliest first.

    Each exercise, known by its hash, is repeated `days[0]` days after it was first passed,
    `days[1]` after that repeat, and so on; with the last repeat it is done. A try before its day
    changes nothing, unless it fails: whoever fails begins again, the first repeat a day of
    `days[0]` later.

    Parameters
    ----------
    attempts
        Those of one trainee, in any order.
    days
        Days between tries, rising.
    zone
        Where the trainee's days begin and end; the computer's own if None.
    """
    tries: dict[str, list[Attempt]] = {}
    for one in _in_order(attempts):
        tries.setdefault(one.exercise_hash, []).append(one)
    found = [_repeat(own, tuple(days), zone) for own in tries.values()]
    waiting = [one for one in found if one is not None]
    return tuple(sorted(waiting, key=lambda one: (one.due_on, one.last.finished_at)))


def due(waiting: Iterable[Repeat], today: date) -> tuple[Repeat, ...]:
    """Return those repeats whose day has come, in the order given."""
    return tuple(one for one in waiting if one.due_on <= today)


def _repeat(tries: Sequence[Attempt], days: tuple[int, ...], zone: tzinfo | None) -> Repeat | None:
    """Return the next repeat of one exercise, None when all of them are done."""
    done = 0
    counted = tries[0]
    for one in tries[1:]:
        if one.score < PASSED:
            done, counted = 0, one
        elif counted.score < PASSED:
            counted = one
        elif done < len(days) and _day(one, zone) >= _day(counted, zone) + timedelta(days[done]):
            done, counted = done + 1, one
    if done >= len(days):
        return None
    return Repeat(
        last=tries[-1],
        due_on=_day(counted, zone) + timedelta(days[done]),
        after_days=days[done],
        done=done,
        of=len(days),
    )


def _day(attempt: Attempt, zone: tzinfo | None) -> date:
    return attempt.finished_at.astimezone(zone).date()


def _in_order(attempts: Iterable[Attempt]) -> list[Attempt]:
    return sorted(attempts, key=lambda one: one.finished_at)
