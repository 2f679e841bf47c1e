"""Coats as text, as spreadsheet programs take and give it: tabs between cells, a line per area.

A block may carry heads: names of areas in its first column, steps ("step 3 slate") in its first
line. Heads say where a block goes; without them it goes to the cell it is put on and to the right
and below. Nothing is taken from a block in which anything is wrong.
"""

from __future__ import annotations

import csv
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from stainmap.errors import PlanError
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Area
from stainmap.words import marked, translate

CoatCell = tuple[int, Area, CoatSpan | None]
"""Step (from 0), area, and the coats that go there; None clears the cell."""

MOST_CHARACTERS: Final = 20_000
_NOTHING = marked("coat block", "Nothing was pasted.")
_AREA = "area"
_STEP = re.compile(r"step\s+(\d{1,3})\b[\s,:]*(.*)", re.IGNORECASE)
# A spreadsheet shows whole numbers with as many zeros as its cell is set to.
_WHOLE = re.compile(r"(\d+)[.,]0+")
_DECIMAL = re.compile(r"\d*[.,]\d+")


@dataclass(frozen=True, slots=True, kw_only=True)
class CoatGrid:
    """The table as it stands on screen.

    Parameters
    ----------
    areas
        Its rows with their names, from top to bottom; titles of groups are no rows.
    liquids
        The liquid of each step: its columns.
    coats
        What each step puts on areas.
    """

    areas: tuple[tuple[Area, str], ...]
    liquids: tuple[str, ...]
    coats: tuple[Mapping[Area, CoatSpan], ...]

    def head(self, step: int) -> str:
        """Return what stands over a step (from 0), as "step 3 slate"."""
        return f"step {step + 1} {self.liquids[step]}"


@dataclass(frozen=True, slots=True, kw_only=True)
class CellRange:
    """Rows and columns of a grid, both from 0; the last ones belong to it."""

    top: int
    left: int
    bottom: int
    right: int

    @property
    def height(self) -> int:
        """Number of rows."""
        return self.bottom - self.top + 1

    @property
    def width(self) -> int:
        """Number of steps."""
        return self.right - self.left + 1


def block_text(grid: CoatGrid, chosen: CellRange, *, heads: bool = False) -> str:
    """Return the coats of a range as text; with `heads` after the names of areas and steps.

    Spans are written with a dash: a spreadsheet would take 2-3 for a day in March.
    """
    steps = range(chosen.left, chosen.right + 1)
    lines = [[_AREA, *map(grid.head, steps)]] if heads else []
    for area, name in grid.areas[chosen.top : chosen.bottom + 1]:
        cells = [_written(grid.coats[step].get(area)) for step in steps]
        lines.append([name, *cells] if heads else cells)
    return "".join("\t".join(line) + "\n" for line in lines)


def _written(span: CoatSpan | None) -> str:
    return "" if span is None else str(span).replace("-", "\N{EN DASH}")


def pasted_cells(text: str, grid: CoatGrid, chosen: CellRange) -> tuple[CoatCell, ...]:
    """Return the cells that a block of text fills.

    Parameters
    ----------
    chosen
        Where it is put. One cell fills all of the range, and a block that fits into it several
        times is repeated; any other block begins at its first cell. Empty cells clear.

    Raises
    ------
    PlanError
        If anything of it is no number of coats, or has no place in the table; the sentence names
        the cell.
    """
    lines = _lines(text)
    steps, lines = _steps_named(lines, grid)
    areas, lines, shift = _areas_named(lines, grid, has_steps=steps is not None)
    if steps is not None:
        # The corner over the names is no step.
        steps = steps[shift:]
    while areas is None and len(lines) > 1 and _is_beyond(lines, grid, chosen):
        lines.pop()
    rows = areas if areas is not None else list(range(chosen.top, chosen.top + len(lines)))
    columns = steps if steps is not None else list(range(chosen.left, chosen.left + len(lines[0])))
    _check_room(rows, columns, grid)
    headed = areas is not None or steps is not None
    spans = [
        [
            _span(entry, f"{grid.areas[row][1]}, step {column + 1}{'' if headed else place}")
            for column, entry, place in zip(columns, line, _places(number, line), strict=True)
        ]
        for number, (row, line) in enumerate(zip(rows, lines, strict=True))
    ]
    if not headed:
        rows, columns, spans = _repeated(rows, columns, spans, chosen)
    return tuple(
        (column, grid.areas[row][0], span)
        for row, line in zip(rows, spans, strict=True)
        for column, span in zip(columns, line, strict=True)
    )


def _lines(text: str) -> list[list[str]]:
    """Return cells line by line, all lines of the same length; a blank line is an empty cell."""
    if len(text) > MOST_CHARACTERS or "\0" in text:
        raise PlanError(
            translate("coat block", "What was copied is no block of coats."),
            advice=translate("coat block", _NOTHING),
        )
    try:
        cells = [
            [cell.replace("\N{NO-BREAK SPACE}", " ").strip() for cell in line]
            for line in csv.reader(text.splitlines(), delimiter="\t")
        ]
    except csv.Error as error:
        raise PlanError(
            translate("coat block", "What was copied is no block of coats."),
            advice=translate("coat block", _NOTHING),
        ) from error
    if not cells:
        raise PlanError(
            translate("coat block", "There is nothing to paste."),
            advice=translate("coat block", "Copy coats first."),
        )
    width = max(*map(len, cells), 1)
    return [line + [""] * (width - len(line)) for line in cells]


def _steps_named(
    lines: list[list[str]], grid: CoatGrid
) -> tuple[list[int] | None, list[list[str]]]:
    """Return the steps (from 0) that the first line names, if it does, and the other lines.

    The corner over names of areas counts as step -1.
    """
    first = lines[0]
    named = [_STEP.fullmatch(cell) for cell in first]
    if not any(named):
        return None, lines
    steps = []
    for place, (cell, match) in enumerate(zip(first, named, strict=True)):
        if match is None:
            if place == 0 and cell.casefold() in ("", _AREA):
                steps.append(-1)
                continue
            raise PlanError(
                translate("coat block", "Over column {place} stands '{cell}', no step.").format(
                    place=place + 1, cell=cell
                ),
                advice=translate("coat block", _NOTHING),
            )
        number, liquid = int(match[1]), match[2].strip()
        if not 1 <= number <= len(grid.liquids):
            raise PlanError(
                translate(
                    "coat block", "'{cell}' is over column {place}, but the plan has {count} steps."
                ).format(cell=cell, place=place + 1, count=len(grid.liquids)),
                advice=translate("coat block", _NOTHING),
            )
        own = grid.liquids[number - 1]
        if liquid and liquid.casefold() != own.casefold():
            raise PlanError(
                translate(
                    "coat block",
                    "'{cell}' is over column {place}, but step {number} is of {own} here.",
                ).format(cell=cell, place=place + 1, number=number, own=own),
                advice=translate("coat block", _NOTHING),
            )
        if number - 1 in steps:
            raise PlanError(
                translate("coat block", "Step {number} is named twice.").format(number=number),
                advice=translate("coat block", _NOTHING),
            )
        steps.append(number - 1)
    if len(lines) == 1:
        raise PlanError(
            translate("coat block", "Below the heads there are no coats."),
            advice=translate("coat block", _NOTHING),
        )
    return steps, lines[1:]


def _areas_named(
    lines: list[list[str]], grid: CoatGrid, *, has_steps: bool
) -> tuple[list[int] | None, list[list[str]], int]:
    """Return the rows that the first column names, if it does, the rest, and its width, 0 or 1."""
    known = {name.casefold(): row for row, (_, name) in enumerate(grid.areas)}
    names = [line[0].casefold() for line in lines]
    if len(lines[0]) < 2 or not any(name in known for name in names):
        if has_steps and any(re.search(r"[^\W\d]", name) for name in names):
            wrong = next(line[0] for line in lines if re.search(r"[^\W\d]", line[0]))
            raise PlanError(
                translate("coat block", "'{wrong}' is no area of this crown.").format(wrong=wrong),
                advice=translate("coat block", _NOTHING),
            )
        return None, lines, 0
    rows, rest = [], []
    for name, line in zip(names, lines, strict=True):
        if not any(line):
            continue
        if name not in known:
            said = (
                translate("coat block", "'{line}' is no area of this crown.").format(line=line[0])
                if name
                else translate("coat block", "A line has no area.")
            )
            raise PlanError(said, advice=translate("coat block", _NOTHING))
        if known[name] in rows:
            raise PlanError(
                translate("coat block", "'{line}' is named twice.").format(line=line[0]),
                advice=translate("coat block", _NOTHING),
            )
        rows.append(known[name])
        rest.append(line[1:])
    return rows, rest, 1


def _is_beyond(lines: list[list[str]], grid: CoatGrid, chosen: CellRange) -> bool:
    """Return True if the last line is empty and would lie below the table."""
    return not any(lines[-1]) and chosen.top + len(lines) > len(grid.areas)


def _check_room(rows: Sequence[int], columns: Sequence[int], grid: CoatGrid) -> None:
    if -1 in columns:
        raise PlanError(
            translate("coat block", "Over a column of coats stands no step."),
            advice=translate("coat block", _NOTHING),
        )
    left = len(grid.liquids) - columns[0]
    if columns[-1] >= len(grid.liquids):
        raise PlanError(
            (
                translate(
                    "coat block", "The block is {wide} steps wide; from step {step} on there is 1."
                )
                if left == 1
                else translate(
                    "coat block",
                    "The block is {wide} steps wide; from step {step} on there are {left}.",
                )
            ).format(wide=len(columns), step=columns[0] + 1, left=left),
            advice=translate("coat block", _NOTHING),
        )
    if rows[-1] >= len(grid.areas):
        below = len(grid.areas) - rows[0]
        raise PlanError(
            (
                translate(
                    "coat block", "The block has {lines} lines; from '{area}' on there is one area."
                )
                if below == 1
                else translate(
                    "coat block",
                    "The block has {lines} lines; from '{area}' on there are {below} areas.",
                )
            ).format(lines=len(rows), area=grid.areas[rows[0]][1], below=below),
            advice=translate("coat block", _NOTHING),
        )


def _places(number: int, line: Sequence[str]) -> list[str]:
    return [
        translate("coat block", " (line {number}, column {column} of what was copied)").format(
            number=number + 1, column=column
        )
        for column in range(1, len(line) + 1)
    ]


def _span(entry: str, where: str) -> CoatSpan | None:
    if not entry:
        return None
    whole = _WHOLE.fullmatch(entry)
    if whole is None and _DECIMAL.fullmatch(entry):
        raise PlanError(
            translate(
                "coat block",
                "'{entry}' for {where} is no whole number of coats; a span such as 2-3 says "
                "between.",
            ).format(entry=entry, where=where),
            advice=translate("coat block", _NOTHING),
        )
    try:
        span = CoatSpan.parse(whole[1] if whole else entry)
    except PlanError as error:
        raise PlanError(
            translate("coat block", "'{entry}' for {where} is no number of coats.").format(
                entry=entry, where=where
            ),
            advice=translate("coat block", _NOTHING),
        ) from error
    return span if span.high else None


Spans = list[list[CoatSpan | None]]


def _repeated(
    rows: list[int], columns: list[int], spans: Spans, chosen: CellRange
) -> tuple[list[int], list[int], Spans]:
    """Return a block as often as it fits into a larger range; else as it is."""
    high, wide = len(rows), len(columns)
    if (chosen.height, chosen.width) == (1, 1) or chosen.height % high or chosen.width % wide:
        return rows, columns, spans
    return (
        list(range(chosen.top, chosen.bottom + 1)),
        list(range(chosen.left, chosen.right + 1)),
        [
            [spans[row % high][column % wide] for column in range(chosen.width)]
            for row in range(chosen.height)
        ],
    )
