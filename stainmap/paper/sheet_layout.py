"""Sheets put together from blocks: placed below one another, on as many pages as they need."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from stainmap.paper.page import Page
from stainmap.paper.sheet_data import Heading
from stainmap.paper.sheet_frame import CONTENT_TOP_MM, draw_foot, draw_head, foot_top
from stainmap.planning.progress import Steps

SECTION_GAP_MM = 5.5
TITLE_DROP_MM = 3.4
"""From the upper edge of a block to the baseline of its title."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Block:
    """A part of a sheet: how high it is, and how it is drawn with its upper edge at y."""

    height: float
    draw: Callable[[float], None]
    gap: float = SECTION_GAP_MM


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Leaf:
    """One page: title, line below it, and blocks with the y of their upper edges."""

    title: str
    subtitle: str
    placed: tuple[tuple[float, Block], ...]


def packed(
    page: Page, blocks: Sequence[Block], *, spread: float = 0.0
) -> list[list[tuple[float, Block]]]:
    """Place blocks below one another, on a new page where they no longer fit.

    Room left at the bottom goes between the blocks, up to `spread` mm a gap.
    """
    bottom = foot_top(page)
    pages: list[list[Block]] = [[]]
    y = CONTENT_TOP_MM
    for block in blocks:
        gap = block.gap if pages[-1] else 0.0
        if pages[-1] and y + gap + block.height > bottom:
            pages.append([])
            y, gap = CONTENT_TOP_MM, 0.0
        pages[-1].append(block)
        y += gap + block.height
    return [_placed(some, bottom, spread) for some in pages]


def _placed(blocks: Sequence[Block], bottom: float, spread: float) -> list[tuple[float, Block]]:
    gaps = [0.0, *(block.gap for block in blocks[1:])]
    wide = sum(gap > 0.0 for gap in gaps)
    left = bottom - CONTENT_TOP_MM - sum(gaps) - sum(block.height for block in blocks)
    extra = min(max(left, 0.0) / wide, spread) if wide else 0.0
    placed = []
    y = CONTENT_TOP_MM
    for gap, block in zip(gaps, blocks, strict=True):
        y += gap + (extra if gap > 0.0 else 0.0)
        placed.append((y, block))
        y += block.height
    return placed


def printed(
    page: Page,
    heading: Heading,
    leaves: Sequence[Leaf],
    foot: str,
    *,
    steps: Steps | None = None,
) -> bytes:
    """Draw all leaves with head and foot; return the PDF."""
    for number, leaf in enumerate(leaves, start=1):
        draw_head(page, heading, leaf.title, leaf.subtitle, number, len(leaves))
        for y, block in leaf.placed:
            if steps is not None:
                steps.say((number - 1) / len(leaves), f"drawing page {number}")
            block.draw(y)
        draw_foot(page, heading, foot)
        page.bookmark(f"{leaf.title}, {leaf.subtitle}", f"page{number}")
        page.next()
    return page.finished()
