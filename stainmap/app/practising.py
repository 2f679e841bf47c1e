"""Practice as the window drives it: what to do next, and results that go into the lab book."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from stainmap.app.practice_packs import Exercises, exercises_kept, kept_pack
from stainmap.errors import LabbookError, StainmapError
from stainmap.labbook.attempt import Attempt, trainee_code
from stainmap.paths import labbook_file
from stainmap.practice.exercise import (
    FACTS,
    LEVELS,
    SITTING_MINUTES,
    Kind,
    Skill,
    exercise,
    level_of,
)
from stainmap.practice.packs import Pack, PackedExercise
from stainmap.practice.progress import RECENT, REPEAT_DAYS, due, repeats, weakest_skill
from stainmap.practice.score import Score
from stainmap.words import translate, value_word

if TYPE_CHECKING:
    from stainmap.labbook.store import Labbook

HARDER_FROM = 85.0
"""Mean of the last tries of a kind from which the next one is of a higher level; assumed."""
_SKILLS = tuple(skill.value for skill in Skill)


@dataclass(frozen=True, slots=True, kw_only=True)
class NextExercise:
    """An exercise, why it is the one to do now, and the hash of the pack it came from or ""."""

    exercise: PackedExercise
    why: str
    pack_hash: str = ""


class PracticeBook:
    """The lab book as practice uses it: opened when first needed, never in the way.

    Where it cannot be opened or written, practice goes on, what was done is kept until the program
    ends, and `trouble` says what is wrong.

    Parameters
    ----------
    path
        Its file; that of the user if None.
    """

    def __init__(self, path: Path | None = None) -> None:
        self._path = path
        self._book: Labbook | None = None
        self._unkept: list[Attempt] = []
        self.trouble = ""

    def _opened(self) -> Labbook | None:
        if self._book is None:
            # The database takes a quarter of a second to import; only who practises waits for it.
            from stainmap.labbook.opening import open_labbook  # noqa: PLC0415

            try:
                self._book = open_labbook(labbook_file() if self._path is None else self._path)
            except LabbookError as error:
                self.trouble = str(error)
                return None
            self.trouble = self._book.remark
        return self._book

    def opened(self) -> Labbook:
        """Return the lab book itself.

        Raises
        ------
        LabbookError
            If it cannot be opened.
        """
        book = self._opened()
        if book is None:
            raise LabbookError(self.trouble)
        return book

    def trainees(self) -> tuple[str, ...]:
        """Return the codes of all who have practised here."""
        book = self._opened()
        own = {one.trainee for one in self._unkept}
        if book is None:
            return tuple(sorted(own))
        try:
            return tuple(sorted(own | set(book.trainees())))
        except LabbookError as error:
            self.trouble = str(error)
            return tuple(sorted(own))

    def attempts(self, trainee: str) -> tuple[Attempt, ...]:
        """Return all attempts of a trainee, the oldest first."""
        code = trainee_code(trainee)
        mine = [one for one in self._unkept if one.trainee == code]
        book = self._opened()
        if book is None:
            return tuple(mine)
        try:
            return (*book.attempts(code), *mine)
        except LabbookError as error:
            self.trouble = str(error)
            return tuple(mine)

    def keep(self, attempt: Attempt) -> bool:
        """Keep an attempt; return False if it is only kept until the program ends."""
        book = self._opened()
        if book is not None:
            try:
                book.keep(attempt)
            except LabbookError as error:
                self.trouble = str(error)
            else:
                return True
        self._unkept.append(attempt)
        return False

    def keep_pack(self, pack: Pack) -> None:
        """Keep a pack, so that its exercises can be repeated without its file."""
        book = self._opened()
        if book is not None:
            try:
                book.keep_pack(kept_pack(pack))
            except LabbookError as error:
                self.trouble = str(error)

    def from_packs(self) -> Exercises:
        """Return the exercises of all packs that were ever opened here."""
        book = self._opened()
        try:
            return {} if book is None else exercises_kept(book.packs())
        except LabbookError as error:
            self.trouble = str(error)
            return {}

    def repeat_days(self, trainee: str) -> tuple[int, ...] | None:
        """Return the days a trainee has set for repeats, None for the usual ones."""
        book = self._opened()
        try:
            return None if book is None else book.repeat_days(trainee)
        except LabbookError as error:
            self.trouble = str(error)
            return None

    def set_repeat_days(self, trainee: str, days: tuple[int, ...] | None) -> None:
        """Set them, None for the usual ones; raise LabbookError if they cannot be kept."""
        self.opened().set_repeat_days(trainee, days)


def attempt_of(
    trainee: str,
    packed: PackedExercise,
    score: float,
    skills: dict[str, float],
    *,
    started_at: datetime,
    details: dict[str, Any] | None = None,
    pack_hash: str | None = None,
) -> Attempt:
    """Return an attempt that ends now."""
    level = level_of(packed)
    return Attempt(
        trainee=trainee,
        exercise=packed.name,
        exercise_hash=packed.sha256,
        kind=packed.kind,
        seed=packed.seed,
        started_at=started_at,
        finished_at=max(datetime.now(UTC), started_at),
        score=score,
        skills=skills,
        details={"level": level, "teeth": list(packed.teeth), **(details or {})},
        pack_hash=pack_hash,
    )


def scored_attempt(
    trainee: str,
    packed: PackedExercise,
    score: Score,
    *,
    started_at: datetime,
    pack_hash: str | None = None,
) -> Attempt:
    """Return the attempt for a score on a crown."""
    return attempt_of(
        trainee,
        packed,
        score.value,
        score.skills,
        started_at=started_at,
        details=dict(score.details),
        pack_hash=pack_hash,
    )


def next_exercise(
    attempts: Sequence[Attempt],
    today: date,
    *,
    days: Sequence[int] = REPEAT_DAYS,
    from_packs: Mapping[tuple[str, str], PackedExercise] | None = None,
) -> NextExercise:
    """Return what to do now: a repeat that is due, or else the skill that is weakest.

    A kind that was done gets another crown each time; after several good tries a harder one.

    Parameters
    ----------
    days
        After which repeats are due.
    from_packs
        Exercises by the hash of their pack and their own; an attempt alone does not tell them.
    """
    for repeat in due(repeats(attempts, days=days, zone=None), today):
        pack_hash = repeat.last.pack_hash or ""
        packed = (from_packs or {}).get((pack_hash, repeat.last.exercise_hash))
        again = _again(repeat.last) if packed is None else packed
        if again is not None:
            return NextExercise(
                exercise=again,
                why=translate(
                    "practising", "A repeat is due: {done} of {of}, so that it stays."
                ).format(done=repeat.done + 1, of=repeat.of),
                pack_hash=pack_hash,
            )
    skill = weakest_skill(attempts, _SKILLS) or _SKILLS[0]
    kinds = [kind for kind in Kind if FACTS[kind].skills[0] == skill] or [
        kind for kind in Kind if skill in FACTS[kind].skills
    ]
    tries = {kind: sum(one.kind == kind.value for one in attempts) for kind in kinds}
    kind = min(kinds, key=lambda one: tries[one])
    tried = any(skill in one.skills for one in attempts)
    why = (
        translate("practising", "Your weakest skill so far: {skill}.").format(
            skill=value_word(skill)
        )
        if tried
        else translate("practising", "A skill not tried yet: {skill}.").format(
            skill=value_word(skill)
        )
    )
    return NextExercise(exercise=fresh_exercise(kind, attempts), why=why)


def fresh_exercise(
    kind: Kind, attempts: Sequence[Attempt], level: int | None = None
) -> PackedExercise:
    """Return an exercise of a kind that the trainee has not seen yet.

    Parameters
    ----------
    level
        How hard; by how the last tries went if None.
    """
    own = [one for one in attempts if one.kind == kind.value]
    if level is None:
        level = level_reached(own)
    seen = {one.seed for one in own}
    seed = next(number for number in range(1, len(seen) + 2) if number not in seen)
    return exercise(kind, seed, level)


def level_reached(own: Sequence[Attempt]) -> int:
    """Return the level that the last tries of one kind recommend."""
    level = LEVELS[0]
    while level < LEVELS[-1]:
        here = [one.score for one in own if one.details.get("level", LEVELS[0]) == level]
        last = here[-RECENT:]
        if len(last) < RECENT or sum(last) / len(last) < HARDER_FROM:
            break
        level += 1
    return level


def _again(last: Attempt) -> PackedExercise | None:
    """Return the exercise of an attempt anew, or None if it came from a pack or another version."""
    level = last.details.get("level", LEVELS[0])
    try:
        made = exercise(Kind(last.kind), last.seed, int(level))
    except (StainmapError, ValueError, TypeError):
        return None
    return made if made.sha256 == last.exercise_hash else None


@dataclass(frozen=True, slots=True, kw_only=True)
class Sitting:
    """Since when somebody practises; fifteen minutes are a sitting, and nothing happens then."""

    began_at: datetime = field(default_factory=lambda: datetime.now(UTC))

    def words(self, now: datetime | None = None) -> str:
        """Return what to say when it has lasted long enough, or nothing."""
        minutes = ((now or datetime.now(UTC)) - self.began_at).total_seconds() / 60.0
        if minutes < SITTING_MINUTES:
            return ""
        return translate(
            "practising",
            "You have practised for {minutes:.0f} minutes: a good moment to stop for today.",
        ).format(minutes=minutes)
