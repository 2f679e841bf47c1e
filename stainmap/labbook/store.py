"""The open lab book: what practice writes into it and reads from it."""

from __future__ import annotations

import json
from collections.abc import Sequence
from datetime import UTC, datetime

from sqlalchemy import Connection, Engine, RowMapping, delete, insert, select

from stainmap.errors import LabbookError
from stainmap.labbook.attempt import Attempt, KeptPack, canonical_json, trainee_code
from stainmap.labbook.connecting import reading, writing
from stainmap.labbook.days import checked_days
from stainmap.labbook.tables import ATTEMPTS, PACKS, REPEATS, SKILL_RESULTS, TRAINEES
from stainmap.words import translate


class Labbook:
    """A lab book that is open. Every call is a transaction of its own; threads may share it.

    Parameters
    ----------
    engine
        The database; its tables are of the newest version.
    where
        The file, for sentences.
    remark
        What happened while it was opened and the user must be told, or empty.

    Raises
    ------
    LabbookError
        By every call, if the book cannot be read or written.
    """

    def __init__(self, engine: Engine, *, where: str, remark: str = "") -> None:
        self._engine = engine
        self._where = where
        self.remark = remark

    # --- trainees

    def trainees(self) -> tuple[str, ...]:
        """Return the codes of all trainees, in the order of the alphabet."""
        with reading(self._engine, self._where) as connection:
            found = connection.execute(select(TRAINEES.c.code)).scalars()
            return tuple(sorted(found))

    def add_trainee(self, code: str) -> str:
        """Keep a trainee, new or known; return the code as it is kept."""
        kept = trainee_code(code)
        with writing(self._engine, self._where) as connection:
            _trainee_id(connection, kept)
        return kept

    # --- attempts

    def keep(self, attempt: Attempt) -> None:
        """Keep an attempt and its trainee; the same one again changes nothing."""
        with writing(self._engine, self._where) as connection:
            known = select(ATTEMPTS.c.id).where(ATTEMPTS.c.key == attempt.key)
            if connection.execute(known).first():
                return
            row = {
                "key": attempt.key,
                "trainee_id": _trainee_id(connection, attempt.trainee),
                "pack_sha256": attempt.pack_hash,
                "exercise": attempt.exercise,
                "exercise_sha256": attempt.exercise_hash,
                "kind": attempt.kind,
                "seed": attempt.seed,
                "started_at": attempt.started_at,
                "finished_at": attempt.finished_at,
                "score": attempt.score,
                "details": canonical_json(attempt.details),
            }
            number = _new_key(connection.execute(insert(ATTEMPTS).values(row)).inserted_primary_key)
            skills = [
                {"attempt_id": number, "skill": skill, "score": score}
                for skill, score in attempt.skills.items()
            ]
            if skills:
                connection.execute(insert(SKILL_RESULTS), skills)

    def attempts(
        self, trainee: str | None = None, *, pack_hash: str | None = None
    ) -> tuple[Attempt, ...]:
        """Return attempts, the oldest first: of one trainee, of one pack, or all."""
        conditions = []
        if trainee is not None:
            conditions.append(TRAINEES.c.code == trainee_code(trainee))
        if pack_hash is not None:
            conditions.append(ATTEMPTS.c.pack_sha256 == pack_hash)
        wanted = (
            select(ATTEMPTS, TRAINEES.c.code)
            .select_from(ATTEMPTS.join(TRAINEES))
            .where(*conditions)
            .order_by(ATTEMPTS.c.finished_at, ATTEMPTS.c.id)
        )
        scored = (
            select(SKILL_RESULTS)
            .select_from(SKILL_RESULTS.join(ATTEMPTS).join(TRAINEES))
            .where(*conditions)
        )
        with reading(self._engine, self._where) as connection:
            rows = connection.execute(wanted).mappings().all()
            skills: dict[int, dict[str, float]] = {}
            for one in connection.execute(scored):
                skills.setdefault(one.attempt_id, {})[one.skill] = one.score
        return tuple(_attempt(row, skills.get(row["id"], {})) for row in rows)

    # --- packs

    def keep_pack(self, pack: KeptPack) -> None:
        """Keep a pack beside the results that belong to it; the same one again changes nothing."""
        with writing(self._engine, self._where) as connection:
            known = select(PACKS.c.id).where(PACKS.c.sha256 == pack.sha256)
            if connection.execute(known).first():
                return
            row = {
                "sha256": pack.sha256,
                "title": pack.title,
                "content": pack.content,
                "added_at": datetime.now(UTC),
            }
            connection.execute(insert(PACKS).values(row))

    def packs(self) -> tuple[KeptPack, ...]:
        """Return all packs, the one that was added last at the end."""
        wanted = select(PACKS.c.sha256, PACKS.c.title, PACKS.c.content).order_by(PACKS.c.id)
        with reading(self._engine, self._where) as connection:
            return tuple(
                KeptPack(sha256=row.sha256, title=row.title, content=row.content)
                for row in connection.execute(wanted)
            )

    # --- repeats

    def repeat_days(self, trainee: str) -> tuple[int, ...] | None:
        """Return after how many days a trainee repeats; None if the usual ones were not changed."""
        wanted = (
            select(REPEATS.c.days)
            .select_from(REPEATS.join(TRAINEES))
            .where(TRAINEES.c.code == trainee_code(trainee))
            .order_by(REPEATS.c.position)
        )
        with reading(self._engine, self._where) as connection:
            return tuple(connection.execute(wanted).scalars()) or None

    def set_repeat_days(self, trainee: str, days: Sequence[int] | None) -> None:
        """Set after how many days a trainee repeats, rising; None goes back to the usual ones."""
        chosen = checked_days(days) if days is not None else ()
        with writing(self._engine, self._where) as connection:
            number = _trainee_id(connection, trainee_code(trainee))
            connection.execute(delete(REPEATS).where(REPEATS.c.trainee_id == number))
            rows = [
                {"trainee_id": number, "position": position, "days": one}
                for position, one in enumerate(chosen)
            ]
            if rows:
                connection.execute(insert(REPEATS), rows)


def _trainee_id(connection: Connection, code: str) -> int:
    """Return the number of a trainee, who is added if not known yet."""
    known = connection.execute(select(TRAINEES.c.id).where(TRAINEES.c.code == code)).scalar()
    if known is not None:
        return int(known)
    row = {"code": code, "added_at": datetime.now(UTC)}
    return _new_key(connection.execute(insert(TRAINEES).values(row)).inserted_primary_key)


def _new_key(key: Sequence[int] | None) -> int:
    if key is None:
        raise LabbookError(translate("store", "The database did not number a new row."))
    return int(key[0])


def _attempt(row: RowMapping, skills: dict[str, float]) -> Attempt:
    """Return an attempt as it was kept; raise LabbookError if somebody changed it by hand."""
    try:
        return _read(row, skills)
    except (LabbookError, ValueError, TypeError) as error:
        raise LabbookError(
            translate("store", "Attempt {row} in the lab book cannot be read ({error}).").format(
                row=row["id"], error=error
            ),
            advice=translate(
                "store", "Put back a copy of the lab book from before it was changed by hand."
            ),
        ) from error


def _read(row: RowMapping, skills: dict[str, float]) -> Attempt:
    return Attempt(
        trainee=row["code"],
        exercise=row["exercise"],
        exercise_hash=row["exercise_sha256"],
        kind=row["kind"],
        seed=row["seed"],
        started_at=row["started_at"],
        finished_at=row["finished_at"],
        score=row["score"],
        skills=skills,
        details=json.loads(row["details"]),
        pack_hash=row["pack_sha256"],
        key=row["key"],
    )
