"""The mixing list of a tray: one list of jars for all its cases, and who takes of which jar."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from datetime import datetime, timedelta
from pathlib import Path
from typing import Final

from stainmap.errors import PlanError
from stainmap.files.atomic import write_bytes
from stainmap.model.case import Case
from stainmap.paper.jar_table import JarLine, jar_notes, jars_block, label_blocks
from stainmap.paper.marks import draw_jar, draw_section
from stainmap.paper.mixing_sheet import bench_block, drying_text
from stainmap.paper.page import HAIR, MEDIUM, SMALLEST_PT, SOFT, Page
from stainmap.paper.programme_chart import programme_block
from stainmap.paper.sheet_data import INVENTED, NOT_CALIBRATED, Heading, SheetData
from stainmap.paper.sheet_layout import TITLE_DROP_MM, Block, Leaf, packed, printed
from stainmap.planning.batch_size import served_text
from stainmap.planning.mixing import JAR_LIFE_HOURS
from stainmap.planning.plan_hash import short_hash
from stainmap.planning.schedule import DRY_TEMPERATURE_C, Drying, RunStage
from stainmap.planning.tray_mixing import PaintedCase, TrayJar, TrayMixing, tray_mixing
from stainmap.planning.tray_run import TrayRun, tray_run
from stainmap.units import TemperatureUnit
from stainmap.words import in_english

_ROW_MM, _HEAD_MM, _CASE_MM = 8.6, 9.0, 92.0
_JARS_ACROSS: Final = 8
_SPREAD_MM = 4.0


def write_tray_list(path: Path, sheets: Sequence[SheetData]) -> None:
    """Write the mixing list of several cases as a PDF; the same data always give the same bytes.

    Raises
    ------
    StainmapError
        If there is no jar in any case, a material is missing, or the file cannot be written.
    """
    write_bytes(path, tray_list_bytes(sheets))


@in_english()
def tray_list_bytes(sheets: Sequence[SheetData]) -> bytes:
    """Return the mixing list of several cases as a PDF file."""
    if not sheets:
        raise PlanError("There is no case on the tray.", advice="Name one.")
    codes = [one.case.code for one in sheets]
    twice = [code for code in dict.fromkeys(codes) if codes.count(code) > 1]
    if twice:
        # Who lays a tray tells cases of one code apart, by the names of their files.
        raise PlanError(
            f"Two cases of the tray have the code {twice[0]}.",
            advice="Give one of them another, so that nobody takes one for the other.",
        )
    first = sheets[0]
    mixing = tray_mixing([PaintedCase(case=one.case, coats=one.coats) for one in sheets])
    if not mixing.jars:
        raise PlanError(
            " ".join(mixing.left_out) or "No case of the tray has a jar to mix.",
            advice="Put a jar on the tray first.",
        )
    cases = [one.case for one in sheets]
    start = first.mixed_at or datetime.combine(first.day, datetime.min.time())
    run = tray_run(cases, len(mixing.jars), start)
    page = Page(first.page, f"Mixing list of {len(sheets)} cases")
    discard_at = None
    if first.mixed_at is not None:
        discard_at = first.mixed_at + timedelta(hours=JAR_LIFE_HOURS)
    lines = [_jar_line(jar) for jar in mixing.jars]
    remarks = (*mixing.left_out, *mixing.remarks, *run.remarks)
    note = jar_notes(mixing.least_difference, mixing.least_colour_blind, remarks)
    rows = _stage_rows(run, first.degrees, clock=first.mixed_at is not None)
    blocks = [
        jars_block(page, lines, note, discard_at),
        *_case_blocks(page, sheets, mixing),
        bench_block(page, rows),
        *(programme_block(page, firing.programme, first.degrees) for firing in run.firings),
        *label_blocks(page, lines, discard_at),
    ]
    units = sum(len(case.units) for case in cases)
    leaves = [
        Leaf(
            title="Mixing list" if index == 0 else "Mixing list, continued",
            subtitle=f"tray of {len(cases)} cases, {units} units",
            placed=tuple(placed),
        )
        for index, placed in enumerate(packed(page, blocks, spread=_SPREAD_MM))
    ]
    lots = "  ".join(f"{one.jar.number} {one.jar.lot or '_____'}" for one in mixing.jars)
    foot = f"Liquid lots  {lots}   Mixed at ______ by ______"
    return printed(page, tray_heading(sheets), leaves, foot)


def tray_hash(sheets: Sequence[SheetData]) -> str:
    """Return the SHA-256 of the cases' plan hashes in the order of the tray."""
    hashes = "\n".join(one.plan_hash.replace("-", "") for one in sheets)
    return hashlib.sha256(hashes.encode("ascii")).hexdigest()


def tray_heading(sheets: Sequence[SheetData]) -> Heading:
    """Return head and foot of a tray's list; revisions and plans of the cases are listed below."""
    drafts = [one.case.code for one in sheets if one.draft]
    technicians = {one.technician for one in sheets}
    warnings = [INVENTED] if any(one.is_invented for one in sheets) else []
    if not all(one.outcome.calibrated for one in sheets):
        warnings.append(NOT_CALIBRATED)
    return Heading(
        code=f"tray of {len(sheets)}",
        revision="see the cases",
        hash_text=short_hash(tray_hash(sheets)),
        replaces_text="see the cases",
        day=sheets[0].day,
        technician=technicians.pop() if len(technicians) == 1 else "",
        draft=f"Drafts on this tray: {', '.join(drafts)}. See their own sheets." if drafts else "",
        warnings=" ".join(warnings),
    )


def _jar_line(one: TrayJar) -> JarLine:
    cases = sum(bool(serving.units) for serving in one.servings)
    units = "1 unit" if one.units == 1 else f"{one.units} units"
    of = "1 case" if cases == 1 else f"{cases} cases"
    return JarLine(
        jar=one.jar,
        dyes=one.dyes,
        look_linear=one.look_linear,
        look_word=one.look_word,
        serves=f"{units} of {of}" if cases else "nothing yet",
        amount=f"for {served_text(one.serves)}, estimated",
    )


def _case_blocks(page: Page, sheets: Sequence[SheetData], mixing: TrayMixing) -> list[Block]:
    """Return the cases with what they take of which jar; of many jars below one another."""
    blocks = []
    for begin in range(0, len(mixing.jars), _JARS_ACROSS):
        jars = mixing.jars[begin : begin + _JARS_ACROSS]
        blocks.append(_head_block(page, jars, continued=begin > 0))
        blocks += [_case_block(page, sheet, jars) for sheet in sheets]
    return blocks


def _places(page: Page, count: int) -> list[float]:
    step = (page.inside - _CASE_MM) / max(count, 4)
    return [page.left + _CASE_MM + (index + 0.5) * step for index in range(count)]


def _head_block(page: Page, jars: Sequence[TrayJar], *, continued: bool) -> Block:
    def draw(y: float) -> None:
        title = "Cases, further jars" if continued else "Cases"
        draw_section(page, page.left, y + TITLE_DROP_MM, title, "below a jar: its steps there")
        for x, one in zip(_places(page, len(jars)), jars, strict=True):
            draw_jar(page, one.jar.number, x - 2.6, y + 1.6, 5.2)
        end = y + _HEAD_MM
        page.line(page.left, end, page.right, end, weight=0.6, grey=SOFT)

    return Block(height=_HEAD_MM, draw=draw)


def _case_block(page: Page, sheet: SheetData, jars: Sequence[TrayJar]) -> Block:
    case = sheet.case
    teeth = " ".join(str(unit.tooth.number) for unit in case.units)
    facts = (
        f"revision {case.revision}, plan {sheet.hash_text}, replaces {sheet.replaces_text};"
        f" {sheet.block.name}, lot {sheet.block.lot or '______'}; {case.programme}"
    )

    def draw(y: float) -> None:
        name = f"{case.code}, draft" if sheet.draft else case.code
        width = min(page.text_width(name, 9.0, MEDIUM), 46.0)
        page.fitted(page.left, y + 3.8, name, 9.0, 46.0, face=MEDIUM)
        page.fitted(page.left + width + 3.0, y + 3.8, teeth, 9.0, _CASE_MM - width - 5.0)
        page.fitted(page.left, y + 7.2, facts, SMALLEST_PT, _CASE_MM - 2.0, grey=SOFT)
        for x, one in zip(_places(page, len(jars)), jars, strict=True):
            page.fitted(x, y + 5.4, taken_text(case, one), 9.0, 12.0, align="centre")
        page.line(page.left, y + _ROW_MM, page.right, y + _ROW_MM, weight=0.25, grey=HAIR)

    return Block(height=_ROW_MM, draw=draw, gap=0.0)


def taken_text(case: Case, one: TrayJar) -> str:
    """Return the steps of a case that use a jar, as "1, 2"; empty if none does."""
    steps = sorted(
        number for serving in one.servings if serving.code == case.code for number in serving.steps
    )
    return ", ".join(map(str, steps))


def _stage_rows(
    run: TrayRun, degrees: TemperatureUnit, *, clock: bool
) -> list[tuple[str, str, str]]:
    """Return stage, clock time if it is known, and what is done, firing by firing."""
    rows = []
    for part in run.parts:
        match part.stage:
            case RunStage.MIX:
                continue
            case RunStage.COATS:
                text = "each case by its own coat map"
            case RunStage.DRY:
                # As long as the run of the tray says: all units dry together.
                temperature_c = None if part.programme else DRY_TEMPERATURE_C
                dried = Drying(
                    minutes=part.minutes,
                    temperature_c=temperature_c,
                    in_furnace=bool(part.programme),
                )
                text = drying_text(dried, degrees)
            case RunStage.SINTER:
                text = f"{part.programme}, only when dry is ticked"
            case RunStage.COOL:
                firing = next(f for f in run.firings if f.programme.name == part.programme)
                end_c = firing.programme.segments[-1].target_c
                text = f"do not open above {degrees.text(end_c)}"
        rows.append((str(part.stage), f"{part.start:%H:%M}" if clock else "", text))
    return rows
