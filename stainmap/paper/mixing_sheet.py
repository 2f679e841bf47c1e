"""The mixing list: jars, bench sequence, sintering programme, and labels to cut out."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from stainmap.errors import PlanError
from stainmap.files.atomic import write_bytes
from stainmap.model.plan import CoatSpan
from stainmap.paper.jar_table import JarLine, jar_notes, jars_block, label_blocks, steps_text
from stainmap.paper.marks import draw_section, draw_ticks
from stainmap.paper.page import MEDIUM, SOFT, Page
from stainmap.paper.programme_chart import programme_block
from stainmap.paper.sheet_data import SheetData
from stainmap.paper.sheet_frame import block_lot_text, liquid_lots_text
from stainmap.paper.sheet_layout import TITLE_DROP_MM, Block, Leaf, packed, printed
from stainmap.planning.batch_size import jar_needs, served_text, units_served
from stainmap.planning.mixing import JarBatch, MixingList, mixing_list
from stainmap.planning.schedule import (
    Drying,
    RunStage,
    coats_to_paint,
    drying,
    run_strip,
)
from stainmap.predict.sintering import duration_text
from stainmap.units import TemperatureUnit
from stainmap.words import in_english

_BEFORE = (
    "dust blown off, fingers off the porous ceramic",
    "one brush per jar, no metal on it",
    "jars shaken, lots noted below",
    "extraction on, gloves and goggles on",
)
_TICK_MM = 4.0
_SPREAD_MM = 4.0


def write_mixing_list(path: Path, sheet: SheetData) -> None:
    """Write the mixing list as a PDF; the same sheet data always give the same bytes.

    Raises
    ------
    StainmapError
        If there is no jar, a material is missing, or the file cannot be written.
    """
    write_bytes(path, mixing_list_bytes(sheet))


@in_english()
def mixing_list_bytes(sheet: SheetData) -> bytes:
    """Return the mixing list as a PDF file."""
    case = sheet.case
    if not case.plan.jars:
        raise PlanError("The plan has no jar to mix.", advice="Put a jar on the tray first.")
    page = Page(sheet.page, f"Mixing list {case.code}")
    mixing = mixing_list(case)
    lines = _jar_lines(sheet, mixing)
    note = jar_notes(mixing.least_difference, mixing.least_colour_blind, mixing.remarks)
    blocks = [
        jars_block(page, lines, note, sheet.discard_at),
        bench_block(page, _stage_rows(sheet)),
        programme_block(page, case.materials.programme(case.programme), sheet.degrees),
        *label_blocks(page, lines, sheet.discard_at),
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
    return printed(page, sheet.heading, leaves, foot)


def _jar_lines(sheet: SheetData, mixing: MixingList) -> list[JarLine]:
    needs = jar_needs(sheet.case, sheet.coats)
    return [
        JarLine(
            jar=batch.jar,
            dyes=batch.dyes,
            look_linear=batch.look_linear,
            look_word=batch.look_word,
            serves=_serves_text(batch),
            amount=f"for {served_text(units_served(batch.jar, [need]))}, estimated",
        )
        for batch, need in zip(mixing.batches, needs, strict=True)
    ]


def _serves_text(batch: JarBatch) -> str:
    teeth = " ".join(str(unit.tooth.number) for unit in batch.units)
    return f"{teeth}, {steps_text(batch.steps)}" if teeth else steps_text(batch.steps)


def bench_block(page: Page, rows: Sequence[tuple[str, str, str]]) -> Block:
    """Return the bench sequence with boxes to tick: before, and then one stage after another."""
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
        RunStage.DRY: _drying_text(drying(case), sheet.degrees),
        RunStage.SINTER: f"{programme.name}, only when dry is ticked",
        RunStage.COOL: f"do not open above {sheet.degrees.text(end_c)}",
    }
    starts = {}
    if sheet.mixed_at is not None:
        starts = {part.stage: part.start for part in run_strip(case, sheet.mixed_at)}
    return [
        (str(stage), f"{starts[stage]:%H:%M}" if stage in starts else "", text)
        for stage, text in texts.items()
    ]


def _drying_text(dried: Drying, degrees: TemperatureUnit) -> str:
    length = duration_text(dried.minutes)
    if dried.temperature_c is None:
        return f"{length}, by the furnace's own stage"
    return f"{degrees.text(dried.temperature_c)}, {length}, assumed"


def drying_text(one: Drying, degrees: TemperatureUnit) -> str:
    """Return "93 °C (200 °F), 10 min, assumed", or that the programme dries."""
    minutes = duration_text(one.minutes)
    if one.temperature_c is None:
        return f"in the furnace, {minutes} before it heats up"
    return f"{degrees.text(one.temperature_c)}, {minutes}, assumed"
