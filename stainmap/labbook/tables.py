"""The tables of the lab book as they are now; `migrations` holds how they came to be so.

What practice keeps has names of its own (`practice_`), so that materials, lots, coupons and fired
results can join beside it. Every constraint has a name by rule, because SQLite can change a table
only by building it anew and has to know what to leave out. Only types and constraints that SQLite
and PostgreSQL share are used.
"""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Final

from sqlalchemy import (
    CheckConstraint,
    Column,
    DateTime,
    Dialect,
    Float,
    ForeignKey,
    Integer,
    LargeBinary,
    MetaData,
    String,
    Table,
    Text,
    TypeDecorator,
    UniqueConstraint,
)

VERSION_TABLE: Final = "labbook_version"
"""Where the schema's version stands; a name of its own tells this store from anybody else's."""

VERSION: Final = "0002"
"""The version of the tables below; a test holds it to the last of the migrations."""

METADATA: Final = MetaData(
    naming_convention={
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s_%(referred_table_name)s",
        "pk": "pk_%(table_name)s",
    }
)


class UtcTime(TypeDecorator[datetime]):
    """A moment: aware of its zone in Python, UTC without one in the database.

    SQLite keeps no zones. Naive times are refused: nobody could tell later what they meant.
    """

    impl = DateTime(timezone=False)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:  # noqa: ARG002
        """Return what is stored."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("a time without a zone cannot be kept")
        return value.astimezone(UTC).replace(tzinfo=None)

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:  # noqa: ARG002
        """Return what was stored, as UTC."""
        return None if value is None else value.replace(tzinfo=UTC)


TRAINEES: Final = Table(
    "practice_trainees",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("code", String(24), nullable=False),
    Column("added_at", UtcTime, nullable=False),
    UniqueConstraint("code"),
)

PACKS: Final = Table(
    "practice_packs",
    METADATA,
    Column("id", Integer, primary_key=True),
    Column("sha256", String(64), nullable=False),
    Column("title", String(60), nullable=False),
    # The file itself: what was practised can be shown when the file is long gone.
    Column("content", LargeBinary, nullable=False),
    Column("added_at", UtcTime, nullable=False),
    UniqueConstraint("sha256"),
)

ATTEMPTS: Final = Table(
    "practice_attempts",
    METADATA,
    Column("id", Integer, primary_key=True),
    # Made where the attempt was made: books of several benches can be put together later.
    Column("key", String(36), nullable=False),
    Column(
        "trainee_id",
        Integer,
        ForeignKey("practice_trainees.id", ondelete="RESTRICT"),
        nullable=False,
        index=True,
    ),
    # By hash, not by a foreign key: results may arrive before the pack they belong to.
    Column("pack_sha256", String(64), nullable=True),
    Column("exercise", String(60), nullable=False),
    Column("exercise_sha256", String(64), nullable=False, index=True),
    Column("kind", String(60), nullable=False),
    Column("seed", Integer, nullable=False),
    Column("started_at", UtcTime, nullable=False),
    Column("finished_at", UtcTime, nullable=False),
    Column("score", Float, nullable=False),
    Column("details", Text, nullable=False),
    UniqueConstraint("key"),
    CheckConstraint("score >= 0 AND score <= 100", name="score"),
    CheckConstraint("finished_at >= started_at", name="times"),
)

SKILL_RESULTS: Final = Table(
    "practice_skill_results",
    METADATA,
    Column(
        "attempt_id",
        Integer,
        ForeignKey("practice_attempts.id", ondelete="CASCADE"),
        primary_key=True,
    ),
    Column("skill", String(60), primary_key=True),
    Column("score", Float, nullable=False),
    CheckConstraint("score >= 0 AND score <= 100", name="score"),
)

REPEATS: Final = Table(
    "practice_repeats",
    METADATA,
    Column(
        "trainee_id",
        Integer,
        ForeignKey("practice_trainees.id", ondelete="CASCADE"),
        primary_key=True,
    ),
    Column("position", Integer, primary_key=True),
    Column("days", Integer, nullable=False),
    CheckConstraint("days >= 1 AND days <= 3650", name="days"),
)
