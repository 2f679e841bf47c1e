"""A tray as it is shown: what is mixed, and its day or why there is none."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from stainmap.app.tray import LaidTray, laid_case
from stainmap.app.tray_day import tray_day
from stainmap.errors import CatalogueError
from stainmap.model.case import Case
from stainmap.model.tray import Tray
from tests.builders import dome_case

NINE = datetime(2026, 5, 4, 9, 30, tzinfo=UTC)


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case(6, 12)


def laid(*cases: Case) -> LaidTray:
    found = tuple(laid_case(Path(f"/{one.code}.stainmap"), one) for one in cases)
    tray = Tray(entries=tuple(one.entry for one in found))
    return LaidTray(tray=tray, cases=found, not_laid=(), problems=())


def test_mixing_and_day_are_those_of_the_tray(case: Case) -> None:
    tray = laid(case, replace(case, code="other"))
    day = tray_day(tray, NINE)
    assert day.run is not None
    assert day.run == tray.run(NINE)
    assert [jar.jar for jar in day.mixing.jars] == [jar.jar for jar in tray.mixing().jars]


def test_a_programme_that_a_case_does_not_know_is_named(case: Case) -> None:
    with pytest.raises(CatalogueError, match="gone"):
        tray_day(laid(replace(case, programme="gone")), NINE)


def test_an_empty_tray_has_no_day(case: Case) -> None:
    day = tray_day(laid(), NINE)
    assert day.run is None
    assert day.mixing.jars == ()
