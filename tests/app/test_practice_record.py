"""The instructor's sheet: from the lab book onto paper, read back by others."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from stainmap.app.practice_record import practice_sheet
from stainmap.errors import LabbookError
from stainmap.labbook.attempt import Attempt
from stainmap.labbook.opening import open_labbook
from stainmap.labbook.store import Labbook
from stainmap.paper.page_size import PageSize
from stainmap.paper.practice_sheet import practice_sheet_bytes, write_practice_sheet
from stainmap.planning.plan_hash import short_hash
from stainmap.practice.exercise import FACTS, Kind, exercise
from stainmap.practice.packs import Pack

BEGIN = datetime(2026, 3, 1, 9, 0, tzinfo=UTC)
PACK = Pack(title="Invented week 1", exercises=(exercise(Kind.FIND_AREAS, 5),))


def tried(trainee: str, day: int, score: float, skill: str, **more: object) -> Attempt:
    one = exercise(Kind.FIND_AREAS, 5)
    told: dict[str, object] = {
        "trainee": trainee,
        "exercise": FACTS[Kind.FIND_AREAS].title,
        "exercise_hash": one.sha256,
        "kind": one.kind,
        "seed": one.seed,
        "started_at": BEGIN + timedelta(days=day),
        "finished_at": BEGIN + timedelta(days=day, minutes=11),
        "score": score,
        "skills": {skill: score},
    } | more
    return Attempt(**told)  # type: ignore[arg-type]


@pytest.fixture
def book(tmp_path: Path) -> Labbook:
    """Return a lab book of two invented trainees."""
    book = open_labbook(tmp_path / "labbook.sqlite")
    for day, score in enumerate((31.0, 44.0, 52.0, 61.0, 77.0, 73.0, 88.0)):
        pack = PACK.sha256 if day % 2 else None
        book.keep(tried("AB", day, score, "finding areas", pack_hash=pack))
    book.keep(tried("AB", 3, 64.0, "mixing jars", exercise_hash="c" * 64, seed=123456789))
    for day, threshold in ((2, 2.4), (9, 1.3)):
        details = {
            "threshold_dl": threshold,
            "threshold_sd": 0.2 * threshold,
            "threshold_share": 5 / 6,
        }
        book.keep(tried("CD-07", day, 70.0, "seeing value", details=details))
    return book


def sheet_texts(book: Labbook, **how: object) -> list[str]:
    sheet = practice_sheet(book, today=date(2026, 3, 20), zone=UTC, **how)  # type: ignore[arg-type]
    return [page.extract_text() for page in PdfReader(BytesIO(practice_sheet_bytes(sheet))).pages]


def test_every_page_says_what_it_is_worth(book: Labbook) -> None:
    pages = sheet_texts(book)
    assert len(pages) == 3
    for number, text in enumerate(pages, start=1):
        flat = " ".join(text.split())
        assert "No trial with people has been made" in flat
        assert "nothing about clinical skill" in flat
        assert "2026-03-20" in flat
        assert f"{number} of 3" in flat


def test_progress_of_each_trainee_is_printed(book: Labbook) -> None:
    overview, first, second = sheet_texts(book)
    assert "all trainees" in overview
    for code in ("AB", "CD-07"):
        assert code in overview
    assert "trainee AB" in first
    assert "8 attempts in 88 minutes" in first
    # The mean of the last three less that of the first three, by hand: 79.3 and 42.3.
    assert "level 79 (+37 since the first), 7 tries" in first
    assert "123456789" in first
    assert "2026-03-07" in first
    assert "To repeat" in first
    assert "built in" in first
    assert short_hash(PACK.sha256) in first
    assert "Value by eye" not in first
    assert "trainee CD-07" in second
    assert "1.30 ± 0.26 L*" in second
    fine = {
        "threshold_dl": 0.39,
        "threshold_sd": 0.1,
        "threshold_share": 5 / 6,
        "threshold_below_screen": True,
    }
    book.keep(tried("CD-07", 12, 100.0, "seeing value", details=fine))
    book.keep(tried("CD-07", 13, 10.0, "seeing value", details={"threshold_found": False}))
    assert "below 0.39 L*" in sheet_texts(book)[2]


def test_of_a_pack_only_what_belongs_to_it(book: Labbook) -> None:
    (page,) = sheet_texts(book, pack=PACK)
    assert "trainee AB" in page
    assert "CD-07" not in page
    assert "3 attempts" in page
    assert "Invented week 1" in page
    assert page.count(short_hash(PACK.sha256)) == 4
    with pytest.raises(LabbookError, match="no trainee to print"):
        sheet_texts(book, pack=replace(PACK, title="nobody tried it"))


def test_a_named_trainee_is_printed_even_without_attempts(book: Labbook) -> None:
    book.add_trainee("EF")
    (page,) = sheet_texts(book, trainees=["EF"])
    assert "No attempt yet" in page


def test_long_histories_run_on_and_give_the_same_bytes(book: Labbook, tmp_path: Path) -> None:
    name = "An exercise with a name that is as long as names may be, xx"
    for day in range(80):
        book.keep(tried("AB", 10 + day, 50.0 + day / 2, f"skill {day % 5}", exercise=name))
    sheet = practice_sheet(
        book, trainees=["AB"], today=date(2026, 6, 20), zone=UTC, page=PageSize.LETTER
    )
    path = tmp_path / "sheet.pdf"
    write_practice_sheet(path, sheet)
    assert path.read_bytes() == practice_sheet_bytes(sheet)
    pages = [page.extract_text() for page in PdfReader(path).pages]
    assert len(pages) == 3
    assert sum(text.count(name) for text in pages) == 80
