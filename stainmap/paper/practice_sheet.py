"""The instructor's sheet: progress per trainee, what to repeat, all attempts, its worth."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from stainmap.files.atomic import write_bytes
from stainmap.paper.marks import draw_section
from stainmap.paper.page import HAIR, LIGHT_FACE, MEDIUM, REGULAR, SOFT, Align, Page
from stainmap.paper.practice_curves import curve_blocks, level_text, threshold_block
from stainmap.paper.practice_data import PracticeSheet, TraineePart
from stainmap.paper.sheet_frame import CONTENT_TOP_MM, foot_top
from stainmap.paper.sheet_layout import TITLE_DROP_MM, Block
from stainmap.planning.plan_hash import short_hash
from stainmap.words import in_english

WORTH: Final = (
    "What this sheet is worth: it tells how exercises of this program went. No trial with people"
    " has been made; it says nothing about clinical skill, and nobody should be graded by it alone."
    " Crowns and materials of the exercises are invented."
)
_ROW_MM, _HEAD_MM = 5.0, 7.6
_RULE_MM, _FOOT_MM = 34.0, 15.0

# Head, place of its left or right edge, alignment, room for the texts below it; mm.
_Columns = tuple[tuple[str, float, Align, float], ...]
_ATTEMPTS: Final[_Columns] = (
    ("day", 0.0, "left", 20.0),
    ("exercise", 22.0, "left", 76.0),
    ("seed", 118.0, "right", 18.0),
    ("minutes", 134.0, "right", 14.0),
    ("score", 148.0, "right", 12.0),
    ("pack", 154.0, "left", 26.0),
)
_REPEATS: Final[_Columns] = (
    ("from", 0.0, "left", 20.0),
    ("exercise", 22.0, "left", 76.0),
    ("seed", 118.0, "right", 18.0),
    ("repeat", 148.0, "right", 20.0),
)
_TRAINEES: Final[_Columns] = (
    ("trainee", 0.0, "left", 38.0),
    ("attempts", 56.0, "right", 14.0),
    ("minutes", 74.0, "right", 14.0),
    ("last on", 80.0, "left", 22.0),
    ("to practise next", 104.0, "left", 76.0),
)


def write_practice_sheet(path: Path, sheet: PracticeSheet) -> None:
    """Write the sheet as a PDF; the same data always give the same bytes.

    Raises
    ------
    StainmapError
        If the file cannot be written.
    """
    write_bytes(path, practice_sheet_bytes(sheet))


@in_english()
def practice_sheet_bytes(sheet: PracticeSheet) -> bytes:
    """Return the sheet as a PDF file: an overview of several trainees, then pages of each."""
    page = Page(sheet.page, "Practice")
    parts: list[tuple[str, str, list[Block]]] = []
    if len(sheet.trainees) > 1:
        parts.append(("all trainees", "", _overview_blocks(page, sheet.trainees)))
    parts += [(f"trainee {one.code}", one.code, _blocks(page, one)) for one in sheet.trainees]
    leaves = [
        (subtitle, who, placed)
        for subtitle, who, blocks in parts
        for placed in _packed(page, blocks)
    ]
    for number, (subtitle, who, placed) in enumerate(leaves, start=1):
        _draw_head(page, sheet, subtitle, f"{number} of {len(leaves)}")
        for y, block in placed:
            block.draw(y)
        _draw_foot(page)
        page.bookmark(f"Practice, {who or subtitle}", f"page{number}")
        page.next()
    return page.finished()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Row(Block):
    """A row of a table, and the head that stands above it where it begins a page."""

    head: Block


def _packed(page: Page, blocks: Sequence[Block]) -> list[list[tuple[float, Block]]]:
    """Place blocks below one another, on a new page where they no longer fit.

    Unlike other sheets' tables, these run on over pages, with their heads.
    """
    bottom = foot_top(page)
    pages: list[list[tuple[float, Block]]] = [[]]
    y = CONTENT_TOP_MM
    for index, block in enumerate(blocks):
        gap = block.gap if pages[-1] else 0.0
        needed = gap + block.height
        following = blocks[index + 1 : index + 2]
        if following and isinstance(following[0], _Row) and not isinstance(block, _Row):
            needed += following[0].height  # no head at the foot of a page
        if pages[-1] and y + needed > bottom:
            pages.append([])
            y, gap = CONTENT_TOP_MM, 0.0
            if isinstance(block, _Row):
                pages[-1].append((y, block.head))
                y += block.head.height
        pages[-1].append((y + gap, block))
        y += gap + block.height
    return pages


def _blocks(page: Page, part: TraineePart) -> list[Block]:
    blocks = [_summary_block(page, part), *curve_blocks(page, part.curves)]
    if part.thresholds:
        blocks.append(threshold_block(page, part.thresholds))
    if part.repeats:
        rows = [
            (one.due_on.isoformat(), one.exercise, str(one.seed), f"{one.number} of {one.of}")
            for one in part.repeats
        ]
        remark = "days apart by common practice"
        blocks += _table_blocks(page, "To repeat", remark, _REPEATS, rows)
    attempts = [
        (
            one.on.isoformat(),
            one.exercise,
            str(one.seed),
            f"{one.minutes:.0f}" if one.minutes >= 1.0 else "< 1",
            f"{one.score:.0f}",
            one.pack,
        )
        for one in part.attempts
    ]
    return blocks + _table_blocks(page, "Attempts", "score 0 to 100", _ATTEMPTS, attempts)


def _summary_block(page: Page, part: TraineePart) -> Block:
    """Return tries, time and what comes next, in one line."""
    count = len(part.attempts)
    minutes = sum(one.minutes for one in part.attempts)
    told = "1 attempt" if count == 1 else f"{count} attempts"
    told = f"{told} in {minutes:.0f} minutes of practice" if count else "No attempt yet"

    def draw(y: float) -> None:
        width = page.text(page.left, y + 4.0, told, 9.5, face=MEDIUM)
        if part.weakest:
            text = f"To practise next: {part.weakest}"
            room = page.inside - width - 8.0
            page.fitted(page.left + width + 8.0, y + 4.0, text, 9.5, room)

    return Block(height=6.0, draw=draw)


def _overview_blocks(page: Page, trainees: Sequence[TraineePart]) -> list[Block]:
    """Return a table of all trainees: attempts, minutes, level of every skill."""
    skills = list(dict.fromkeys(curve.skill for one in trainees for curve in one.curves))
    rows = [
        (
            one.code,
            str(len(one.attempts)),
            f"{sum(attempt.minutes for attempt in one.attempts):.0f}",
            max(attempt.on for attempt in one.attempts).isoformat() if one.attempts else "",
            one.weakest,
        )
        for one in trainees
    ]
    blocks = _table_blocks(page, "Trainees", "", _TRAINEES, rows)
    for skill in skills:
        blocks += _skill_blocks(page, skill, trainees)
    return blocks


def _skill_blocks(page: Page, skill: str, trainees: Sequence[TraineePart]) -> list[Block]:
    """Return the level of one skill of every trainee as a bar, by code and not by rank."""
    rows = [(one.code, curve) for one in trainees for curve in one.curves if curve.skill == skill]
    bar, end = 40.0, 118.0

    def head(y: float) -> None:
        draw_section(page, page.left, y + TITLE_DROP_MM, skill, "level, 0 to 100")

    def row(name: str, index: int) -> Block:
        curve = rows[index][1]

        def draw(y: float) -> None:
            page.fitted(page.left, y + 3.4, name, 8.5, bar - 4.0, face=MEDIUM)
            left, right = page.left + bar, page.left + end
            page.line(left, y + 2.4, right, y + 2.4, weight=0.25, grey=HAIR)
            if curve.levels:
                reach = left + (right - left) * curve.levels[-1] / 100.0
                page.line(left, y + 2.4, reach, y + 2.4, weight=4.5, grey=SOFT)
            page.fitted(right + 5.0, y + 3.4, level_text(curve), 8.0, page.right - right - 5.0)

        return _Row(height=_ROW_MM, draw=draw, gap=0.0, head=title)

    title = Block(height=TITLE_DROP_MM + 2.6, draw=head)
    return [title, *(row(name, index) for index, (name, _) in enumerate(rows))]


def _table_blocks(
    page: Page, title: str, remark: str, columns: _Columns, rows: Sequence[Sequence[str]]
) -> list[Block]:
    """Return a table, a block a row, so that it may run on over pages."""

    def head(y: float, name_of_it: str = title) -> None:
        draw_section(page, page.left, y + TITLE_DROP_MM, name_of_it, remark)
        for name, x, align, _ in columns:
            page.text(page.left + x, y + TITLE_DROP_MM + 5.6, name, 7.5, grey=SOFT, align=align)
        end = y + TITLE_DROP_MM + _HEAD_MM
        page.line(page.left, end, page.right, end, weight=0.3, grey=HAIR)

    def row(texts: Sequence[str]) -> Callable[[float], None]:
        def draw(y: float) -> None:
            for text, (name, x, align, room) in zip(texts, columns, strict=True):
                face = MEDIUM if name in ("score", "trainee") else REGULAR
                page.fitted(page.left + x, y + 3.7, text, 8.5, room, face=face, align=align)
            page.line(page.left, y + _ROW_MM, page.right, y + _ROW_MM, weight=0.25, grey=HAIR)

        return draw

    if not rows:
        return []
    height = TITLE_DROP_MM + _HEAD_MM
    again = Block(height=height, draw=lambda y: head(y, f"{title}, continued"))
    return [
        Block(height=height, draw=head),
        *(_Row(height=_ROW_MM, draw=row(texts), gap=0.0, head=again) for texts in rows),
    ]


def _draw_head(page: Page, sheet: PracticeSheet, subtitle: str, number: str) -> None:
    page.text(page.left, 23.0, "Practice", 22.0, face=LIGHT_FACE)
    page.fitted(page.left, 30.0, subtitle, 10.5, 76.0, face=MEDIUM)
    rows = (
        ("date", sheet.day.isoformat()),
        ("pack", sheet.pack_title or "all there are"),
        ("pack hash", short_hash(sheet.pack_hash) if sheet.pack_hash else "none"),
        ("page", number),
    )
    x = page.right - 76.0
    for index, (name, value) in enumerate(rows):
        y = 17.4 + 4.35 * index
        page.text(x, y, name, 8.0, grey=SOFT)
        page.fitted(x + 17.0, y, value, 8.5, 38.0, face=MEDIUM)
    if sheet.pack_hash:
        page.qr_code(short_hash(sheet.pack_hash), page.right - 17.5, 14.0, 17.5)
    page.line(page.left, _RULE_MM, page.right, _RULE_MM, weight=0.8)


def _draw_foot(page: Page) -> None:
    bottom = page.height - _FOOT_MM
    lines = page.wrapped(WORTH, 7.5, page.inside - 3.0)
    top = bottom - 2.6 - (len(lines) - 1) * 3.45
    page.line(page.left + 0.4, top - 2.4, page.left + 0.4, bottom - 1.8, weight=2.2, grey=SOFT)
    for index, line in enumerate(lines):
        page.text(page.left + 3.0, top + 3.45 * index, line, 7.5, face=MEDIUM)
    page.line(page.left, bottom, page.right, bottom, weight=0.4)
    page.text(page.right, bottom + 4.2, "made with stainmap", 7.5, grey=SOFT, align="right")
