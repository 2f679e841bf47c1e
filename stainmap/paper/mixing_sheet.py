"""The mixing list: jars, bench sequence, sintering programme, and labels to cut out."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from stainmap.errors import PlanError
from stainmap.files.atomic import write_bytes
from stainmap.model.plan import CoatSpan
from stainmap.optics.colorimetry import encode_srgb
from stainmap.paper.marks import draw_jar, draw_section, draw_ticks
from stainmap.paper.page import BOLD, HAIR, MEDIUM, SOFT, Align, Page, Rect
from stainmap.paper.programme_chart import programme_block
from stainmap.paper.sheet_data import SheetData
from stainmap.paper.sheet_frame import block_lot_text, liquid_lots_text
from stainmap.paper.sheet_layout import TITLE_DROP_MM, Block, Leaf, packed, printed
from stainmap.planning.mixing import JAR_LIFE_HOURS, JarBatch, MixingList, mixing_list
from stainmap.planning.schedule import (
    Drying,
    RunStage,
    coats_to_paint,
    drying,
    run_strip,
)
from stainmap.predict.sintering import duration_text

_BEFORE = (
    "dust blown off, fingers off the porous ceramic",
    "one brush per jar, no metal on it",
    "jars shaken, lots noted below",
    "extraction on, gloves and goggles on",
)
_TICK_MM = 4.0
_LABEL_HEIGHT_MM = 27.0
_SPREAD_MM = 4.0
# Not from the computer's language: the sheet's bytes depend on nothing but its data.
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def write_mixing_list(path: Path, sheet: SheetData) -> None:
    """Write the mixing list as a PDF; the same sheet data always give the same bytes.

    Raises
    ------
    StainmapError
        If there is no jar, a material is missing, or the file cannot be written.
    """
    write_bytes(path, mixing_list_bytes(sheet))


def mixing_list_bytes(sheet: SheetData) -> bytes:
    """Return the mixing list as a PDF file."""
    case = sheet.case
    if not case.plan.jars:
        raise PlanError("The plan has no jar to mix.", advice="Put a jar on the tray first.")
    page = Page(sheet.page, f"Mixing list {case.code}")
    mixing = mixing_list(case)
    blocks = [
        _jars_block(page, sheet, mixing),
        _bench_block(page, sheet),
        programme_block(page, case.materials.programme(case.programme)),
        *_label_blocks(page, sheet, mixing.batches),
    ]
    teeth = " ".join(str(unit.tooth.number) for unit in case.units)
    one = len(case.units) == 1
    subtitle = f"one unit, {teeth} {case.units[0].tooth.name}" if one else f"units {teeth}"
    leaves = [
        Leaf(
            title="Mixing list" if index == 0 else "Mixing list, continued",
            subtitle=subtitle,
            placed=tuple(placed),
        )
        for index, placed in enumerate(packed(page, blocks, spread=_SPREAD_MM))
    ]
    foot = f"{liquid_lots_text(sheet)}   {block_lot_text(sheet)}   Mixed at ______ by ______"
    return printed(page, sheet, leaves, foot)


def steps_text(numbers: Sequence[int]) -> str:
    """Return "step 3", "steps 1 and 2" or "steps 1, 2 and 7"."""
    if not numbers:
        return "no step"
    texts = [str(number) for number in numbers]
    if len(texts) == 1:
        return f"step {texts[0]}"
    return f"steps {', '.join(texts[:-1])} and {texts[-1]}"


def _serves_text(batch: JarBatch) -> str:
    teeth = " ".join(str(unit.tooth.number) for unit in batch.units)
    return f"{teeth}, {steps_text(batch.steps)}" if teeth else steps_text(batch.steps)


def _discard_text(sheet: SheetData, *, with_day: bool) -> str:
    when = sheet.discard_at
    if when is None:
        return f"after {JAR_LIFE_HOURS:g} h"
    clock = f"{when:%H:%M}"
    return f"{when.day} {_MONTHS[when.month - 1]} {clock}" if with_day else clock


def _jars_block(page: Page, sheet: SheetData, mixing: MixingList) -> Block:
    """Return the table of jars with what they look like, and what to look out for."""
    row = 13.0 if len(mixing.batches) <= 5 else 11.5
    notes = page.wrapped(_jar_notes(mixing), 7.5, page.inside)
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
        for index, batch in enumerate(mixing.batches):
            place = top + index * row
            page.line(page.left, place, page.right, place, weight=0.3, grey=HAIR)
            _draw_jar_row(page, sheet, batch, place, row)
        bottom = top + len(mixing.batches) * row
        page.line(page.left, bottom, page.right, bottom, weight=0.6, grey=SOFT)
        for index, line in enumerate(notes):
            page.text(page.left, bottom + 4.2 + 3.5 * index, line, 7.5, grey=SOFT)

    table = TITLE_DROP_MM + 8.2 + len(mixing.batches) * row
    return Block(height=table + 1.2 + 3.5 * len(notes), draw=draw, gap=0.0)


def _draw_jar_row(page: Page, sheet: SheetData, batch: JarBatch, y: float, row: float) -> None:
    jar, left = batch.jar, page.left
    size = row - 3.4
    middle = y + row / 2
    baseline = middle + 1.4
    draw_jar(page, jar.number, left, middle - size / 2, size)
    page.fitted(left + 15.0, baseline, jar.liquid, 11.0, 22.0, face=MEDIUM)
    page.text(left + 47.0, baseline, str(jar.liquid_drops), 11.0, face=MEDIUM, align="right")
    dyes = "   ".join(f"{name} {drops}" for name, drops in batch.dyes) or "none"
    page.fitted(left + 51.0, baseline, dyes, 9.0, 46.0)
    page.text(left + 106.0, baseline, f"{100.0 * batch.dilution:.0f} %", 9.0, align="right")
    swatch = Rect(left + 110.0, middle - 0.5 * (row - 5.0), 13.0, row - 5.0)
    page.swatch(swatch, encode_srgb(batch.look_linear).tolist())
    page.box(swatch, weight=0.4)
    page.text(left + 125.0, baseline, batch.look_word, 9.0)
    discard = _discard_text(sheet, with_day=False)
    room = page.inside - 142.0 - page.text_width(discard, 9.0)
    page.fitted(left + 140.0, baseline, _serves_text(batch), 9.0, room)
    page.text(page.right, baseline, discard, 9.0, align="right")


def _jar_notes(mixing: MixingList) -> str:
    parts = []
    if mixing.least_difference is not None and mixing.least_colour_blind is not None:
        parts.append(
            f"On chalk the jars differ by dE00 {int(mixing.least_difference)} or more, to"
            f" colour-blind eyes by {int(mixing.least_colour_blind)}; each has a number and a"
            " hatch."
        )
    return " ".join([*parts, "No liquid back into the bottle.", *mixing.remarks])


def _bench_block(page: Page, sheet: SheetData) -> Block:
    """Return the bench sequence with boxes to tick: before, and then one stage after another."""
    rows = _stage_rows(sheet)
    row = 6.4
    second = page.left + 0.52 * page.inside

    def draw(y: float) -> None:
        title = y + TITLE_DROP_MM
        draw_section(page, page.left, title, "Before")
        draw_section(page, second, title, "Then")
        for index, text in enumerate(_BEFORE):
            place = title + 4.0 + index * row
            draw_ticks(page, CoatSpan.exactly(1), page.left, place, _TICK_MM)
            page.text(page.left + 6.6, place + 3.2, text, 9.0)
        for index, (stage, when, text) in enumerate(rows):
            place = title + 4.0 + index * row
            draw_ticks(page, CoatSpan.exactly(1), second, place, _TICK_MM)
            page.text(second + 6.6, place + 3.2, stage, 9.0, face=MEDIUM)
            page.fitted(second + 20.0, place + 3.2, text, 9.0, page.right - second - 32.0)
            page.text(page.right, place + 3.2, when, 9.0, grey=SOFT, align="right")

    count = max(len(_BEFORE), len(rows))
    return Block(height=TITLE_DROP_MM + 4.0 + (count - 1) * row + _TICK_MM, draw=draw)


def _stage_rows(sheet: SheetData) -> list[tuple[str, str, str]]:
    """Return stage, clock time if it is known, and what is done."""
    case = sheet.case
    programme = case.materials.programme(case.programme)
    count = len(case.plan.steps)
    end_c = programme.segments[-1].target_c
    coats = sum(coats_to_paint(step) for step in case.plan.steps)
    texts = {
        RunStage.COATS: f"{steps_text(range(1, count + 1))}, {coats} rounds, see coat map"
        if count <= 2
        else f"steps 1 to {count}, {coats} rounds, see coat map",
        RunStage.DRY: _drying_text(drying(case)),
        RunStage.SINTER: f"{programme.name}, only when dry is ticked",
        RunStage.COOL: f"do not open above {end_c:.0f} °C",
    }
    starts = {}
    if sheet.mixed_at is not None:
        starts = {part.stage: part.start for part in run_strip(case, sheet.mixed_at)}
    return [
        (str(stage), f"{starts[stage]:%H:%M}" if stage in starts else "", text)
        for stage, text in texts.items()
    ]


def _drying_text(dried: Drying) -> str:
    length = duration_text(dried.minutes)
    if dried.temperature_c is None:
        return f"{length}, by the furnace's own stage"
    fahrenheit = dried.temperature_c * 1.8 + 32.0
    return f"{dried.temperature_c:.0f} °C ({fahrenheit:.0f} °F), {length}, assumed"


def _label_blocks(page: Page, sheet: SheetData, batches: Sequence[JarBatch]) -> list[Block]:
    """Return rows of labels to cut out; the first one with the title."""
    if not batches:
        return []
    most = 6 if len(batches) == 6 else 5
    width = min(36.0, page.inside / min(len(batches), most))
    rows = [batches[index : index + most] for index in range(0, len(batches), most)]
    return [
        _label_row(page, sheet, row, width, with_title=index == 0) for index, row in enumerate(rows)
    ]


def _label_row(
    page: Page, sheet: SheetData, batches: Sequence[JarBatch], width: float, *, with_title: bool
) -> Block:
    above = TITLE_DROP_MM + 3.6 if with_title else 0.0

    def draw(y: float) -> None:
        if with_title:
            remark = "cut along the broken lines"
            draw_section(page, page.left, y + TITLE_DROP_MM, "Jar labels", remark)
        for index, batch in enumerate(batches):
            label = Rect(page.left + index * width, y + above, width, _LABEL_HEIGHT_MM)
            _draw_label(page, sheet, batch, label)

    return Block(height=above + _LABEL_HEIGHT_MM, draw=draw, gap=5.5 if with_title else 0.0)


def _draw_label(page: Page, sheet: SheetData, batch: JarBatch, label: Rect) -> None:
    x, y, jar = label.x, label.y, batch.jar
    page.box(label, weight=0.4, grey=SOFT, dash=(2.0, 2.0))
    draw_jar(page, jar.number, x + 2.2, y + 2.5, 10.5)
    page.fitted(x + 14.4, y + 8.2, jar.liquid, 11.5, label.width - 15.8, face=BOLD)
    page.text(x + 14.4, y + 12.5, f"{jar.liquid_drops} drops", 7.5, grey=SOFT)
    room = label.width - 3.6
    dyes = "dye " + (", ".join(f"{name} {drops}" for name, drops in batch.dyes) or "none")
    if page.text_width(dyes, 7.2) > room:
        dyes = "dye " + ", ".join(f"{name[0].upper()}{drops}" for name, drops in batch.dyes)
    lines = (dyes, _serves_text(batch), f"discard {_discard_text(sheet, with_day=True)}")
    for index, text in enumerate(lines):
        page.fitted(x + 2.0, y + 17.4 + 3.6 * index, text, 7.5, room)
