"""The page of evidence as Markdown with its pictures, and what counts as the same page."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from tests.evidence.drawing import svg
from tests.evidence.figures import Block, Cell, Check, Plot, Section, Source, Table

# L*, a*, b* and what is made of them; their stars are no emphasis.
STARRED = re.compile(r"(?<![\w*])(?:[LabC]\*)+(?!\*)")
NUMBER = re.compile(r"(?<![\w.#])[-\N{MINUS SIGN}+]?\d+(?:\.(\d+))?")


def markdown(title: str, opening: Sequence[str], sections: Sequence[Section]) -> str:
    """Return the whole page: title, opening, the headlines, all sections."""
    headlines = [check for section in sections for check in section.checks if check.headline]
    lines = [f"# {title}", "", *_spaced(opening), "## In short", "", *_checks(headlines), ""]
    for section in sections:
        lines += [f"## {section.title}", ""]
        for block in section.blocks:
            lines += [*_block(block), ""]
    return STARRED.sub(_escaped, "\n".join(lines).rstrip() + "\n")


def _escaped(name: re.Match[str]) -> str:
    return name.group().replace("*", r"\*")


def pictures(sections: Sequence[Section]) -> dict[str, str]:
    """Return the SVG text of every picture of the page by its file name."""
    return {plot.file_name: svg(plot) for section in sections for plot in section.plots}


def differences(old: str, new: str, *, units: float = 1.0) -> list[str]:
    """Return the lines that say something else, numbers being equal within rounding.

    Parameters
    ----------
    old, new
        Two versions of a text.
    units
        By how many units of its last printed decimal a number may differ.
    """
    before, after = old.splitlines(), new.splitlines()
    if len(before) != len(after):
        return [f"{len(before)} lines became {len(after)}"]
    return [
        f"line {at}: {one!r} became {other!r}"
        for at, (one, other) in enumerate(zip(before, after, strict=True), start=1)
        if not _same(one, other, units)
    ]


def _same(one: str, other: str, units: float) -> bool:
    if NUMBER.sub("#", one) != NUMBER.sub("#", other):
        return False
    pairs = zip(NUMBER.finditer(one), NUMBER.finditer(other), strict=True)
    return all(_close(a, b, units) for a, b in pairs)


def _close(one: re.Match[str], other: re.Match[str], units: float) -> bool:
    decimals = [len(match.group(1) or "") for match in (one, other)]
    if decimals[0] != decimals[1]:
        return False
    if decimals[0] == 0:
        # Counts, years, names: exactly the same.
        return _value(one) == _value(other)
    return abs(_value(one) - _value(other)) <= (units + 1e-6) * 10.0 ** -decimals[0]


def _value(match: re.Match[str]) -> float:
    return float(match.group().replace("\N{MINUS SIGN}", "-"))


def _spaced(paragraphs: Sequence[str]) -> Iterator[str]:
    for paragraph in paragraphs:
        yield paragraph
        yield ""


def _block(block: Block) -> list[str]:
    if isinstance(block, str):
        return [block]
    if isinstance(block, Table):
        return _table(block.heads, block.rows)
    if isinstance(block, Plot):
        return [
            f"![{block.title}]({block.file_name})",
            "",
            f"*{block.title}.* {block.caption} Origin: {block.source}.",
        ]
    return _checks(block)


def _checks(checks: Sequence[Check]) -> list[str]:
    rows = [
        ((check.what, f"{check.found} {check.unit}".strip(), check.asked), check.source)
        for check in checks
    ]
    return _table(("What is held", "Found", "Asked"), rows)


def _table(heads: Sequence[str], rows: Sequence[tuple[tuple[Cell, ...], Source]]) -> list[str]:
    """Return a table; a source that all rows share is told once, below, its word in every row."""
    numbers = [all(_is_number(cells[at]) for cells, _ in rows) for at in range(len(heads))]
    shared = len(rows) > 1 and len({source for _, source in rows}) == 1
    lines = [_row([*heads, "Origin"])]
    lines.append(_row([*("--:" if right else ":--" for right in numbers), ":--"]))
    for cells, source in rows:
        told = str(source.origin) if shared else str(source)
        lines.append(_row([*(str(cell) for cell in cells), told]))
    if shared:
        lines += ["", f"*Origin of all rows.* {rows[0][1]}."]
    return lines


def _is_number(cell: Cell) -> bool:
    return not isinstance(cell, str)


def _row(cells: Sequence[str]) -> str:
    return "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |"
