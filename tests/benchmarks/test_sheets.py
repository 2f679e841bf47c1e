"""How long the sheets take, of the processor, as the undisturbed machine would take it."""

from __future__ import annotations

import pytest

from stainmap.app.prediction import predict_case
from stainmap.app.sheets import sheet_data
from stainmap.files.case_file import read_case
from stainmap.paper.agreement_sheet import agreement_bytes
from stainmap.paper.coat_map import coat_map_bytes
from stainmap.paper.mixing_sheet import mixing_list_bytes
from stainmap.paper.sheet_data import SheetData
from stainmap.paths import sample_case
from tests.benchmarks.measuring import milliseconds

pytestmark = pytest.mark.benchmark

# A tray of 12 takes as many coat maps, and next to nothing besides.
ASKED_MS, HELD_MS = 2_000.0, 6_500.0


@pytest.fixture(scope="module")
def sheet() -> SheetData:
    """Return what is printed about the sample crown of 60,000 vertices."""
    return sheet_data(predict_case(read_case(sample_case("lower_molar_36.stainmap"))))


def test_agreement_and_mixing_list_take_no_time(sheet: SheetData) -> None:
    for make in (agreement_bytes, mixing_list_bytes):
        assert milliseconds(lambda make=make: make(sheet), 300.0, repeats=1, rounds=4) < 300.0


def test_a_coat_map_does_not_become_slower(sheet: SheetData) -> None:
    taken = milliseconds(lambda: coat_map_bytes(sheet), HELD_MS, repeats=1, rounds=4)
    assert taken < HELD_MS


@pytest.mark.xfail(
    strict=True,
    reason="4 to 5 s; of them views 1.3, rosette 1.1, lines 0.9, light 0.6: the surface is finer"
    " than paper needs",
)
def test_a_coat_map_is_there_in_two_seconds(sheet: SheetData) -> None:
    assert milliseconds(lambda: coat_map_bytes(sheet), ASKED_MS, repeats=1, rounds=1) < ASKED_MS
