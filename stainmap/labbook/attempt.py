"""What is kept of practice: who tried which exercise when, and how it went. Plain values."""

from __future__ import annotations

import json
import re
import uuid
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any, Final

from stainmap.errors import LabbookError
from stainmap.words import translate

MOST_CODE_CHARACTERS: Final = 24
MOST_NAME_CHARACTERS: Final = 60
MOST_SEED: Final = 2**31 - 1
_CODE = re.compile(r"[^\W_](?:[ .\-_]?[^\W_])*")
_SHA256 = re.compile(r"[0-9a-f]{64}")


def trainee_code(text: str) -> str:
    """Return initials or a code as it is kept: no blanks around it, upper case.

    Letters and digits of any script, single blanks, dots, hyphens or underscores between them, 24
    characters at most: enough for "AB", "ab-07" or "group 3", and no place for a file name or a
    line break.

    Raises
    ------
    LabbookError
        If it is empty, too long or holds anything else.
    """
    code = " ".join(text.split()).upper()
    if not code:
        raise LabbookError(
            translate("attempt", "A trainee needs initials or a code."),
            advice=translate("attempt", 'Type some, as "AB".'),
        )
    if len(code) > MOST_CODE_CHARACTERS:
        raise LabbookError(
            translate(
                "attempt",
                "The code of a trainee has {count} characters; {most_code_characters} are kept.",
            ).format(count=len(code), most_code_characters=MOST_CODE_CHARACTERS),
            advice=translate("attempt", "Use initials or a short code, not a full name."),
        )
    if not _CODE.fullmatch(code):
        raise LabbookError(
            translate("attempt", '"{code}" is no code of a trainee.').format(code=code),
            advice=translate(
                "attempt",
                'Use letters and digits, with single hyphens or blanks between, as "AB-07".',
            ),
        )
    return code


def skill_name(text: str) -> str:
    """Return the name of a skill, refusing what is empty or longer than 60 characters."""
    name = " ".join(text.split())
    if not 0 < len(name) <= MOST_NAME_CHARACTERS:
        raise LabbookError(
            translate(
                "attempt", "A skill's name has 1 to {most_name_characters} characters."
            ).format(most_name_characters=MOST_NAME_CHARACTERS)
        )
    return name


@dataclass(frozen=True, slots=True, kw_only=True)
class Attempt:
    """One finished try at one exercise. It belongs to a trainee and, by its hash, to an exercise.

    Parameters
    ----------
    trainee
        Initials or a code, see `trainee_code`.
    exercise
        What the exercise is called on screen and on paper, at most 60 characters.
    exercise_hash
        SHA-256 of the exercise's canonical JSON, 64 hexadecimal digits: two attempts with the same
        hash had the same task.
    pack_hash
        SHA-256 of the pack it came from, or None for the exercises that are built in.
    kind
        Which kind of exercise it is, as a short word such as "zones"; practice knows them.
    seed
        The seed its crown was made from, 0 to 2^31 - 1.
    started_at, finished_at
        Times with their time zone; kept in UTC.
    score
        0 to 100.
    skills
        0 to 100 per name of a skill that the exercise asked for; none for an exercise that was
        broken off. The names are practice's, in a form to be read.
    details
        Whatever else is to be kept, as a JSON object: coats painted, faults found. A staircase
        keeps its threshold there, see `stainmap.practice.staircase.Threshold.details`.
    key
        Made anew for every attempt; writing one twice keeps it once.
    """

    trainee: str
    exercise: str
    exercise_hash: str
    kind: str
    seed: int
    started_at: datetime
    finished_at: datetime
    score: float
    skills: Mapping[str, float] = field(default_factory=dict)
    details: Mapping[str, Any] = field(default_factory=dict)
    pack_hash: str | None = None
    key: str = field(default_factory=lambda: str(uuid.uuid4()))

    def __post_init__(self) -> None:
        """Bring codes and times to the form they are kept in; refuse what makes no sense."""
        put = object.__setattr__
        put(self, "trainee", trainee_code(self.trainee))
        _check_task(self)
        _check_times(self.started_at, self.finished_at)
        put(self, "started_at", self.started_at.astimezone(UTC))
        put(self, "finished_at", self.finished_at.astimezone(UTC))
        scores = {skill_name(name): float(value) for name, value in self.skills.items()}
        for score in (self.score, *scores.values()):
            if not 0.0 <= score <= 100.0:
                raise LabbookError(
                    translate("attempt", "A score of {score:g} is not between 0 and 100.").format(
                        score=score
                    )
                )
        put(self, "skills", scores)
        if not isinstance(self.details, Mapping):
            raise LabbookError(translate("attempt", "The details of an attempt are a JSON object."))
        put(self, "details", json.loads(canonical_json(self.details)))

    @property
    def minutes(self) -> float:
        """How long it took."""
        return (self.finished_at - self.started_at).total_seconds() / 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptPack:
    """A pack as it is kept: hash, title, and the bytes of its file."""

    sha256: str
    title: str
    content: bytes


def _check_task(attempt: Attempt) -> None:
    """Refuse names, hashes and seeds that cannot be kept."""
    for name in (attempt.exercise, attempt.kind):
        if not 0 < len(name.strip()) <= MOST_NAME_CHARACTERS:
            raise LabbookError(
                translate(
                    "attempt",
                    "An exercise and its kind need names of 1 to {most_name_characters}"
                    " characters.",
                ).format(most_name_characters=MOST_NAME_CHARACTERS)
            )
    for digest in (attempt.exercise_hash, attempt.pack_hash):
        if digest is not None and not _SHA256.fullmatch(digest):
            raise LabbookError(
                translate("attempt", "'{digest}' is no SHA-256.").format(digest=digest)
            )
    if not 0 <= attempt.seed <= MOST_SEED:
        raise LabbookError(
            translate("attempt", "The seed {seed} is not between 0 and {most_seed}.").format(
                seed=attempt.seed, most_seed=MOST_SEED
            )
        )


def _check_times(started_at: datetime, finished_at: datetime) -> None:
    """Refuse times without a zone, and an end before the beginning."""
    if started_at.tzinfo is None or finished_at.tzinfo is None:
        raise LabbookError(translate("attempt", "A time of an attempt has no time zone."))
    if finished_at < started_at:
        raise LabbookError(translate("attempt", "An attempt cannot end before it begins."))


def canonical_json(value: Any) -> str:
    """Return JSON that is the same for the same value: keys in order, no blanks, ASCII.

    Raises
    ------
    LabbookError
        If the value holds anything that JSON does not know, numbers that are not finite included.
    """
    try:
        return json.dumps(
            value, sort_keys=True, separators=(",", ":"), ensure_ascii=True, allow_nan=False
        )
    except (TypeError, ValueError) as error:
        raise LabbookError(
            translate("attempt", "This cannot be kept as JSON ({error}).").format(error=error)
        ) from error
