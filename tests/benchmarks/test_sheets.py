"""How long the sheets take, of the processor, as the undisturbed machine would take it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from stainmap.app.prediction import predict_case
from stainmap.app.sheets import sheet_data
from stainmap.files.case_file import read_case
from stainmap.paper.agreement_sheet import agreement_bytes
from stainmap.paper.coat_map import coat_map_bytes
from stainmap.paper.mixing_sheet import mixing_list_bytes
from stainmap.paper.sheet_data import SheetData
from stainmap.paper.tray_sheet import tray_list_bytes
from stainmap.paths import sample_case
from tests.benchmarks.measuring import milliseconds

pytestmark = pytest.mark.benchmark

# Wanted: sheets of one unit in 2 s, of a tray of twelve in 15 s. The second is not reached yet:
# drawing takes 13 to 16 s of one core, and with their predictions twelve cases took 43 s on two.
ONE_UNIT_MS = 2_000.0
TRAY_MS, TRAY_UNITS = 20_000.0, 12


@pytest.fixture(scope="module")
def sheet() -> SheetData:
    """Return what is printed about the sample crown of 60,000 vertices."""
    return sheet_data(predict_case(read_case(sample_case("lower_molar_36.stainmap"))))


def test_agreement_and_mixing_list_take_no_time(sheet: SheetData) -> None:
    for make in (agreement_bytes, mixing_list_bytes):
        assert milliseconds(lambda make=make: make(sheet), 300.0, repeats=1, rounds=4) < 300.0


def test_drawing_a_tray_of_twelve_stays_as_quick_as_it_is(sheet: SheetData) -> None:
    """Twelve times one unit: nothing of one is of use to the next, but for the mixing list."""

    def sheets() -> None:
        for make in (coat_map_bytes, agreement_bytes):
            make(sheet)

    tray = [replace(sheet, case=replace(sheet.case, code=f"T-{k}")) for k in range(TRAY_UNITS)]
    mixing = milliseconds(lambda: tray_list_bytes(tray), 500.0, repeats=1, rounds=4)
    enough = (TRAY_MS - mixing) / TRAY_UNITS
    assert enough < ONE_UNIT_MS
    one = milliseconds(sheets, enough, repeats=1, rounds=8)
    print(f"a unit {one:.0f} ms, twelve and their mixing list {TRAY_UNITS * one + mixing:.0f} ms")
    assert TRAY_UNITS * one + mixing < TRAY_MS
