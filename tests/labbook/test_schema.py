"""The tables that migrations make are those the program uses, from whatever version they start.

The oracle is Alembic's own comparison; what it leaves out (checks, what happens on deletion) is
read back from SQLite and held against tables that SQLAlchemy makes straight from their description.
"""

from __future__ import annotations

import shutil
import sqlite3
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import Column, Inspector, Integer, create_engine, inspect
from sqlalchemy.dialects import postgresql
from sqlalchemy.schema import CreateTable

from stainmap.errors import LabbookError
from stainmap.labbook import upgrading
from stainmap.labbook.connecting import reading, sqlite_engine
from stainmap.labbook.opening import open_labbook
from stainmap.labbook.tables import METADATA, VERSION, VERSION_TABLE
from stainmap.labbook.upgrading import known_versions, upgrade

DATA = Path(__file__).resolve().parent.parent / "data"
OLDER = known_versions()[:-1]


def differences(path: Path) -> list[object]:
    with reading(sqlite_engine(path), "here") as connection:
        context = MigrationContext.configure(
            connection, opts={"version_table": VERSION_TABLE, "compare_type": True}
        )
        return list(compare_metadata(context, METADATA))


def described(found: Inspector) -> dict[str, object]:
    """Return all that SQLite tells of the tables."""
    return {
        name: (
            [(c["name"], str(c["type"]), c["nullable"]) for c in found.get_columns(name)],
            found.get_pk_constraint(name),
            sorted(found.get_foreign_keys(name), key=str),
            sorted(found.get_unique_constraints(name), key=str),
            sorted(found.get_check_constraints(name), key=str),
            sorted(found.get_indexes(name), key=str),
        )
        for name in found.get_table_names()
        if name != VERSION_TABLE
    }


def version_in(path: Path) -> str:
    connection = sqlite3.connect(path)
    try:
        return str(connection.execute("SELECT version_num FROM labbook_version").fetchone()[0])
    finally:
        connection.close()


def test_migrations_end_at_the_tables_in_use(tmp_path: Path) -> None:
    path = tmp_path / "book.sqlite"
    open_labbook(path)
    assert differences(path) == []
    assert version_in(path) == VERSION
    straight = create_engine("sqlite://")
    METADATA.create_all(straight)
    migrated = sqlite_engine(path)
    with straight.connect() as one, migrated.connect() as other:
        assert described(inspect(one)) == described(inspect(other))
        assert set(described(inspect(other))) == set(METADATA.tables)


def test_the_comparison_would_find_a_forgotten_column(tmp_path: Path) -> None:
    """Guard the test above."""
    path = tmp_path / "book.sqlite"
    open_labbook(path)
    table = METADATA.tables["practice_packs"]
    column = Column("forgotten", Integer)
    table.append_column(column)
    try:
        found = differences(path)
    finally:
        table._columns.remove(column)
    assert "forgotten" in str(found)
    assert differences(path) == []


def test_every_older_version_is_kept() -> None:
    assert known_versions()[-1] == VERSION
    assert OLDER == ("0001",)
    for version in OLDER:
        assert version_in(DATA / f"labbook_{version}.sqlite") == version


@pytest.mark.parametrize("version", OLDER)
def test_older_books_are_brought_up_to_date(version: str, tmp_path: Path) -> None:
    path = tmp_path / "labbook.sqlite"
    shutil.copy(DATA / f"labbook_{version}.sqlite", path)
    before = path.read_bytes()
    book = open_labbook(path)
    assert book.remark == ""
    assert version_in(path) == VERSION
    assert differences(path) == []
    # What was in it is still there, and the new parts work.
    assert book.trainees() == ("AB", "CD-07")
    attempts = book.attempts("ab")
    assert [one.score for one in attempts] == [54.0, 71.5]
    assert attempts[1].skills == {"finding areas": 71.5, "leading value": 66.0}
    assert attempts[1].details == {"invented": True, "threshold_dl": 1.4}
    assert attempts[0].started_at.isoformat() == "2026-02-03T08:00:00+00:00"
    assert [pack.title for pack in book.packs()] == ["Invented pack"]
    book.set_repeat_days("AB", (2, 9))
    assert book.repeat_days("AB") == (2, 9)
    # The file as it was stands beside it.
    (copy,) = tmp_path.glob(f"labbook.version-{version}.*.sqlite")
    assert version_in(copy) == version
    assert [len(open_labbook(copy).attempts()), len(before)] == [3, len(before)]


def test_an_upgrade_that_fails_leaves_everything_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "labbook.sqlite"
    shutil.copy(DATA / "labbook_0001.sqlite", path)

    def broken(connection: object) -> None:
        upgrade(connection)  # type: ignore[arg-type]
        raise LabbookError("It went wrong at the end.")

    with monkeypatch.context() as patch:
        patch.setattr(upgrading, "upgrade", broken)
        with pytest.raises(LabbookError, match="at the end"):
            open_labbook(path)
    assert version_in(path) == "0001"
    connection = sqlite3.connect(path)
    tables = {row[0] for row in connection.execute("SELECT name FROM sqlite_master")}
    connection.close()
    assert "practice_repeats" not in tables
    assert len(open_labbook(path).attempts()) == 3


def test_references_that_lead_nowhere_stop_an_upgrade(tmp_path: Path) -> None:
    path = tmp_path / "labbook.sqlite"
    shutil.copy(DATA / "labbook_0001.sqlite", path)
    connection = sqlite3.connect(path)
    connection.execute("DELETE FROM practice_trainees WHERE code = 'AB'")
    connection.commit()
    connection.close()
    with pytest.raises(LabbookError, match="refer to others that are missing"):
        open_labbook(path)
    assert version_in(path) == "0001"


def test_postgresql_would_take_the_tables() -> None:
    """Only the words are looked at; no server is asked."""
    texts = [
        str(CreateTable(table).compile(dialect=postgresql.dialect()))
        for table in METADATA.sorted_tables
    ]
    assert len(texts) == 5
    assert any("BYTEA" in text for text in texts)
    assert all("pk_practice_" in text for text in texts)
