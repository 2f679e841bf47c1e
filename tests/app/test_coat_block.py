"""Coats to and from spreadsheet programs: what is read back is what was written."""

from __future__ import annotations

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.app.coat_block import CellRange, CoatGrid, block_text, pasted_cells
from stainmap.app.edits import with_cells
from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Accent, Area, Zone
from tests.builders import dome_case

AREAS: tuple[tuple[Area, str], ...] = (
    (Zone.CERVICAL, "cervical"),
    (Zone.BODY, "body"),
    (Zone.CUSP, "cusp"),
    (Accent.MARGIN_BAND, "margin band"),
)
ONE = CoatSpan.exactly


COATS: tuple[dict[Area, CoatSpan], ...] = (
    {Zone.CERVICAL: ONE(3), Zone.BODY: ONE(1)},
    {Zone.CERVICAL: CoatSpan(low=2, high=3), Zone.CUSP: ONE(12)},
    {},
)
GRID = CoatGrid(areas=AREAS, liquids=("first", "second", "first"), coats=COATS)
ALL = CellRange(top=0, left=0, bottom=3, right=2)


def at(row: int, step: int) -> CellRange:
    return CellRange(top=row, left=step, bottom=row, right=step)


def test_a_range_is_written_with_tabs_and_spans_with_a_dash() -> None:
    chosen = CellRange(top=0, left=0, bottom=2, right=1)
    assert block_text(GRID, chosen) == "3\t2\N{EN DASH}3\n1\t\n\t12\n"


def test_with_heads_it_names_areas_and_steps() -> None:
    chosen = CellRange(top=1, left=1, bottom=2, right=2)
    text = block_text(GRID, chosen, heads=True)
    assert list(csv.reader(io.StringIO(text), delimiter="\t")) == [
        ["area", "step 2 second", "step 3 first"],
        ["body", "", ""],
        ["cusp", "12", ""],
    ]


def test_what_was_written_is_read_back_the_same() -> None:
    for heads in (False, True):
        cells = pasted_cells(block_text(GRID, ALL, heads=heads), GRID, ALL)
        assert {(step, area): span for step, area, span in cells} == {
            (step, area): COATS[step].get(area) for step in range(3) for area, _ in AREAS
        }


def test_a_block_without_heads_begins_at_the_chosen_cell() -> None:
    assert pasted_cells("1\t2-3\n\t4\n", GRID, at(1, 1)) == (
        (1, Zone.BODY, ONE(1)),
        (2, Zone.BODY, CoatSpan(low=2, high=3)),
        (1, Zone.CUSP, None),
        (2, Zone.CUSP, ONE(4)),
    )


@pytest.mark.parametrize("text", ["2", "2\n", "2\r\n", " 2 ", "2.0", "2,00", '"2"'])
def test_a_cell_is_read_as_spreadsheets_write_it(text: str) -> None:
    assert pasted_cells(text, GRID, at(0, 0)) == ((0, Zone.CERVICAL, ONE(2)),)


def test_empty_lines_clear_too_but_none_beyond_the_table() -> None:
    for text in ("2\n\n", "2\n\n\n\n\n"):
        cells = pasted_cells(text, GRID, at(2, 0))
        assert cells == ((0, Zone.CUSP, ONE(2)), (0, Accent.MARGIN_BAND, None))


def test_zero_and_an_empty_cell_clear() -> None:
    for text in ("0", "0-0", "\n", "\t\n"):
        cells = pasted_cells(text, GRID, at(0, 0))
        assert {span for _, _, span in cells} == {None}


def test_one_cell_fills_the_range_and_a_block_is_repeated_where_it_fits() -> None:
    assert {span for _, _, span in pasted_cells("4", GRID, ALL)} == {ONE(4)}
    assert len(pasted_cells("4", GRID, ALL)) == 12
    cells = pasted_cells("1\n2\n", GRID, ALL)
    assert [span for _, _, span in cells] == 3 * [ONE(1)] + 3 * [ONE(2)] + 3 * [ONE(1)] + 3 * [
        ONE(2)
    ]
    # Three lines do not fit into four: they go where the range begins, once.
    assert len(pasted_cells("1\n2\n3\n", GRID, ALL)) == 3


def test_heads_say_where_a_block_goes_whatever_is_chosen() -> None:
    text = "\tStep 3 FIRST\tstep 1\nCusp\t5\t6\nBODY\t7\t8\n"
    assert pasted_cells(text, GRID, at(3, 2)) == (
        (2, Zone.CUSP, ONE(5)),
        (0, Zone.CUSP, ONE(6)),
        (2, Zone.BODY, ONE(7)),
        (0, Zone.BODY, ONE(8)),
    )
    assert pasted_cells("cusp\t5\n", GRID, at(0, 1)) == ((1, Zone.CUSP, ONE(5)),)
    assert pasted_cells("step 2\tstep 3\n5\t6\n", GRID, at(1, 0)) == (
        (1, Zone.BODY, ONE(5)),
        (2, Zone.BODY, ONE(6)),
    )


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("x", "'x' for cervical, step 1 (line 1, column 1 of what was copied) is no number of"),
        ("1\t1\n1\t-1", "'-1' for body, step 2 (line 2, column 2"),
        ("2.5", "'2.5' for cervical, step 1 (line 1, column 1 of what was copied) is no whole"),
        ("3-2", "'3-2' for cervical, step 1"),
        ("13", "'13' for cervical, step 1"),
        ("02. Mar", "'02. Mar' for cervical, step 1"),
        ("1\t1\t1\t1", "The block is 4 steps wide; from step 1 on there are 3."),
        ("1\n1\n1\n1\n1", "The block has 5 lines; from 'cervical' on there are 4 areas."),
        ("neck\t1\ncusp\t1", "'neck' is no area of this crown."),
        ("\t1\ncusp\t1", "A line has no area."),
        ("cusp\t1\ncusp\t1", "'cusp' is named twice."),
        ("area\tstep 9\ncusp\t1", "'step 9' is over column 2, but the plan has 3 steps."),
        ("area\tstep 2 first\ncusp\t1", "but step 2 is of second here."),
        ("step 1\tstep 1\n1\t1", "Step 1 is named twice."),
        ("area\tstep 1\tlater\ncusp\t1\t1", "Over column 3 stands 'later', no step."),
        ("area\tstep 1\nneck\t1", "'neck' is no area of this crown."),
        ("step 1\tstep 2\n", "Below the heads there are no coats."),
        ("area\tstep 1\n\t2", "Over a column of coats stands no step."),
        ("", "There is nothing to paste."),
        ("a\0b", "no block of coats"),
        ("1\t" * 20_000, "no block of coats"),
    ],
)
def test_what_is_wrong_is_said_in_one_sentence(text: str, says: str) -> None:
    with pytest.raises(PlanError) as caught:
        pasted_cells(text, GRID, at(0, 0))
    assert says in str(caught.value)
    assert "\n" not in str(caught.value)


@given(st.text(alphabet="0123456789-,.\t\n\r\"' xéarea step", max_size=60))
def test_whatever_is_pasted_is_taken_whole_or_refused(text: str) -> None:
    try:
        cells = pasted_cells(text, GRID, at(0, 0))
    except PlanError:
        return
    assert cells
    assert len({(step, area) for step, area, _ in cells}) == len(cells)
    for step, area, span in cells:
        assert 0 <= step < 3
        assert area in dict(AREAS)
        assert span is None or 1 <= span.high <= 12


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case(6, 12)


def test_many_cells_are_changed_at_once(case: Case) -> None:
    changed = with_cells(case, [(0, Zone.BODY, ONE(5)), (1, Zone.BODY, ONE(6))])
    assert [step.entry(Zone.BODY).coats for step in changed.plan.steps[:2]] == [ONE(5), ONE(6)]  # type: ignore[union-attr]
    assert with_cells(case, ()) is case
