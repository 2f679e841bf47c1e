"""The jars on paper: the table of what is mixed, and labels to cut out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from stainmap.model.plan import Jar
from stainmap.optics.colorimetry import encode_srgb
from stainmap.paper.marks import draw_jar, draw_section
from stainmap.paper.page import BOLD, HAIR, MEDIUM, SMALLEST_PT, SOFT, Align, Page, Rect
from stainmap.paper.sheet_layout import TITLE_DROP_MM, Block
from stainmap.planning.mixing import JAR_LIFE_HOURS

_LABEL_HEIGHT_MM = 27.0
# Not from the computer's language: the sheet's bytes depend on nothing but its data.
_MONTHS: Final = (
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class JarLine:
    """One jar as it is printed.

    Parameters
    ----------
    jar
        Number, liquid and drops.
    dyes
        Names and drops of the dyes in it.
    look_linear, look_word
        What it looks like on chalky ceramic, linear sRGB and in a word.
    serves
        Units and steps, in a few words.
    amount
        How far it goes, in a few words; empty where that is not known.
    """

    jar: Jar
    dyes: tuple[tuple[str, int], ...]
    look_linear: tuple[float, float, float]
    look_word: str
    serves: str
    amount: str = ""


def steps_text(numbers: Sequence[int]) -> str:
    """Return "step 3", "steps 1 and 2" or "steps 1, 2 and 7"."""
    if not numbers:
        return "no step"
    texts = [str(number) for number in numbers]
    if len(texts) == 1:
        return f"step {texts[0]}"
    return f"steps {', '.join(texts[:-1])} and {texts[-1]}"


def discard_text(when: datetime | None, *, with_day: bool) -> str:
    """Return when a jar is thrown away, as "16:30" or "25 Nov 16:30"; else after how long."""
    if when is None:
        return f"after {JAR_LIFE_HOURS:g} h"
    clock = f"{when:%H:%M}"
    return f"{when.day} {_MONTHS[when.month - 1]} {clock}" if with_day else clock


def jar_notes(
    least_difference: float | None, least_colour_blind: float | None, remarks: Sequence[str]
) -> str:
    """Return what stands below the table of jars."""
    parts = []
    if least_difference is not None and least_colour_blind is not None:
        parts.append(
            f"On chalk the jars differ by dE00 {int(least_difference)} or more, to"
            f" colour-blind eyes by {int(least_colour_blind)}; each has a number and a"
            " hatch."
        )
    return " ".join([*parts, "No liquid back into the bottle.", *remarks])


def jars_block(
    page: Page, lines: Sequence[JarLine], note: str, discard_at: datetime | None
) -> Block:
    """Return the table of jars with what they look like, and what to look out for."""
    row = 13.0 if len(lines) <= 5 else 11.5
    notes = page.wrapped(note, 7.5, page.inside)
    heads: tuple[tuple[str, float, Align], ...] = (
        ("jar", 0.0, "left"),
        ("liquid", 15.0, "left"),
        ("drops", 47.0, "right"),
        ("dye and drops", 51.0, "left"),
        ("strength", 106.0, "right"),
        ("look on chalk", 110.0, "left"),
        ("serves", 140.0, "left"),
    )

    def draw(y: float) -> None:
        draw_section(
            page, page.left, y + TITLE_DROP_MM, "Jars", "drops of liquid and dye; dye burns off"
        )
        baseline = y + TITLE_DROP_MM + 6.2
        for name, x, align in heads:
            page.text(page.left + x, baseline, name, 7.5, grey=SOFT, align=align)
        page.text(page.right, baseline, "discard", 7.5, grey=SOFT, align="right")
        top = baseline + 2.0
        for index, one in enumerate(lines):
            place = top + index * row
            page.line(page.left, place, page.right, place, weight=0.3, grey=HAIR)
            _draw_jar_row(page, one, place, row, discard_text(discard_at, with_day=False))
        bottom = top + len(lines) * row
        page.line(page.left, bottom, page.right, bottom, weight=0.6, grey=SOFT)
        for index, line in enumerate(notes):
            page.text(page.left, bottom + 4.2 + 3.5 * index, line, 7.5, grey=SOFT)

    table = TITLE_DROP_MM + 8.2 + len(lines) * row
    return Block(height=table + 1.2 + 3.5 * len(notes), draw=draw, gap=0.0)


def _draw_jar_row(page: Page, one: JarLine, y: float, row: float, discard: str) -> None:
    jar, left = one.jar, page.left
    size = row - 3.4
    middle = y + row / 2
    baseline = middle + 1.4
    draw_jar(page, jar.number, left, middle - size / 2, size)
    page.fitted(left + 15.0, baseline, jar.liquid, 11.0, 22.0, face=MEDIUM)
    page.text(left + 47.0, baseline, str(jar.liquid_drops), 11.0, face=MEDIUM, align="right")
    dyes = "   ".join(f"{name} {drops}" for name, drops in one.dyes) or "none"
    page.fitted(left + 51.0, baseline, dyes, 9.0, 46.0)
    page.text(left + 106.0, baseline, f"{100.0 * jar.dilution:.0f} %", 9.0, align="right")
    swatch = Rect(left + 110.0, middle - 0.5 * (row - 5.0), 13.0, row - 5.0)
    page.swatch(swatch, encode_srgb(one.look_linear).tolist())
    page.box(swatch, weight=0.4)
    page.text(left + 125.0, baseline, one.look_word, 9.0)
    room = page.inside - 142.0 - page.text_width(discard, 9.0)
    page.fitted(left + 140.0, baseline, one.serves, 9.0, room)
    page.text(page.right, baseline, discard, 9.0, align="right")
    if one.amount:
        below = baseline + 3.4
        page.fitted(left + 140.0, below, one.amount, SMALLEST_PT, page.inside - 140.0, grey=SOFT)


def label_blocks(
    page: Page, batches: Sequence[JarLine], discard_at: datetime | None
) -> list[Block]:
    """Return rows of labels to cut out; the first one with the title."""
    if not batches:
        return []
    most = 6 if len(batches) == 6 else 5
    width = min(36.0, page.inside / min(len(batches), most))
    rows = [batches[index : index + most] for index in range(0, len(batches), most)]
    return [
        _label_row(page, row, width, discard_at, with_title=index == 0)
        for index, row in enumerate(rows)
    ]


def _label_row(
    page: Page,
    batches: Sequence[JarLine],
    width: float,
    discard_at: datetime | None,
    *,
    with_title: bool,
) -> Block:
    above = TITLE_DROP_MM + 3.6 if with_title else 0.0

    def draw(y: float) -> None:
        if with_title:
            remark = "cut along the broken lines"
            draw_section(page, page.left, y + TITLE_DROP_MM, "Jar labels", remark)
        for index, batch in enumerate(batches):
            label = Rect(page.left + index * width, y + above, width, _LABEL_HEIGHT_MM)
            _draw_label(page, batch, label, discard_text(discard_at, with_day=True))

    return Block(height=above + _LABEL_HEIGHT_MM, draw=draw, gap=5.5 if with_title else 0.0)


def _draw_label(page: Page, batch: JarLine, label: Rect, discard: str) -> None:
    x, y, jar = label.x, label.y, batch.jar
    page.box(label, weight=0.4, grey=SOFT, dash=(2.0, 2.0))
    draw_jar(page, jar.number, x + 2.2, y + 2.5, 10.5)
    page.fitted(x + 14.4, y + 8.2, jar.liquid, 11.5, label.width - 15.8, face=BOLD)
    page.text(x + 14.4, y + 12.5, f"{jar.liquid_drops} drops", 7.5, grey=SOFT)
    room = label.width - 3.6
    dyes = "dye " + (", ".join(f"{name} {drops}" for name, drops in batch.dyes) or "none")
    if page.text_width(dyes, 7.2) > room:
        dyes = "dye " + ", ".join(f"{name[0].upper()}{drops}" for name, drops in batch.dyes)
    lines = (dyes, batch.serves, f"discard {discard}")
    for index, text in enumerate(lines):
        page.fitted(x + 2.0, y + 17.4 + 3.6 * index, text, 7.5, room)
