"""The agreement page: what the dentist wanted, what is predicted, and the limits in plain words."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final

from stainmap.errors import PlanError
from stainmap.files.atomic import write_bytes
from stainmap.model.case import Backing, Case, Region
from stainmap.model.colour import Colour
from stainmap.model.intake import Intake, Shade
from stainmap.model.plan import CoatSpan
from stainmap.model.tooth import Role
from stainmap.model.zone import Accent, Zone
from stainmap.optics.colorimetry import lab_to_srgb
from stainmap.paper.agreement_limits import all_shades, limits
from stainmap.paper.marks import draw_blank, draw_section, draw_ticks
from stainmap.paper.page import HAIR, MEDIUM, REGULAR, SOFT, Align, Page, Rect
from stainmap.paper.predicted_list import number_text
from stainmap.paper.sheet_data import SheetData
from stainmap.paper.sheet_frame import lots_text
from stainmap.paper.sheet_layout import TITLE_DROP_MM, Block, Leaf, packed, printed
from stainmap.planning.outcome import AreaOutcome
from stainmap.predict.uncertainty import inside_uncertainty, verdict
from stainmap.words import in_english

_ROW_MM, _NOTE_PT, _NOTE_MM, _TEXT_PT, _TEXT_MM = 6.0, 7.5, 3.5, 9.0, 4.4
_SPREAD_MM = 4.0
# Where nobody can look, and accents, are left to the coat map; a bridge shows what is seen first.
_ON_BRIDGES: Final = (Zone.BODY, Zone.CERVICAL, Zone.CUSP)


def write_agreement(path: Path, sheet: SheetData) -> None:
    """Write the agreement page as a PDF; the same sheet data always give the same bytes.

    Raises
    ------
    StainmapError
        If a material is missing, or the file cannot be written.
    """
    write_bytes(path, agreement_bytes(sheet))


@in_english()
def agreement_bytes(sheet: SheetData) -> bytes:
    """Return the agreement page as a PDF file; a long wish or bridge takes more than one page."""
    case = sheet.case
    if not sheet.outcome.areas:
        raise PlanError("There is no area to agree on.", advice="Let zones be proposed first.")
    page = Page(sheet.page, f"Agreement {case.code}")
    blocks = [
        *_wanted_blocks(page, sheet),
        *_predicted_blocks(page, sheet),
        _limits_block(page, sheet),
        _answer_block(page),
    ]
    teeth = " ".join(str(unit.tooth.number) for unit in case.units)
    one = len(case.units) == 1
    subtitle = f"{teeth} {case.units[0].tooth.name}" if one else f"{teeth} {case.reading.kind}"
    leaves = [
        Leaf(
            title="Agreement" if index == 0 else "Agreement, continued",
            subtitle=subtitle,
            placed=tuple(placed),
        )
        for index, placed in enumerate(packed(page, blocks, spread=_SPREAD_MM))
    ]
    return printed(page, sheet.heading, leaves, lots_text(sheet))


def shade_text(shade: Shade) -> str:
    """Return how a shade was got and what it is called: "A3, classical tab"."""
    return f"{shade.name}, {shade.source}" if shade.name else str(shade.source)


def facts(sheet: SheetData) -> list[tuple[str, str]]:
    """Return what else the order says: stump, cement, base, neighbours are told apart elsewhere."""
    case, intake = sheet.case, sheet.case.intake
    known = intake is not None and intake.stump_known
    stumps = _by_unit(case, lambda backing: backing.stump)
    rows = [
        ("stump", stumps if known else f"not told; taken as {stumps}"),
        (
            "cement",
            _by_unit(case, lambda one: f"{one.cement}, {one.cement_thickness_mm:.2f} mm"),
        ),
    ]
    if intake is not None and intake.implant_base:
        rows.append(("stands on", "a base on an implant"))
    return rows


def _by_unit(case: Case, text: Callable[[Backing], str]) -> str:
    """Return what is said of the stump, unit by unit where their stumps differ."""
    found: dict[str, list[str]] = {}
    for number, unit in enumerate(case.units):
        if unit.role is not Role.PONTIC:
            told = text(case.backing(Region.STUMP, number))
            found.setdefault(told, []).append(str(unit.tooth.number))
    if len(found) < 2:
        return next(iter(found), text(case.backing(Region.STUMP)))
    return "; ".join(f"{' '.join(teeth)}: {told}" for told, teeth in found.items())


def _wanted_blocks(page: Page, sheet: SheetData) -> list[Block]:
    """Return shades as they were read, stump and cement, and the dentist's own words."""
    intake = sheet.case.intake
    rows = _shade_rows(sheet)
    told = facts(sheet)
    notes = _shade_notes(page, intake)
    heads: tuple[tuple[str, float, Align], ...] = (
        ("where", 0.0, "left"),
        ("shade as it was read", 34.0, "left"),
        ("L*", 104.0, "right"),
        ("C*", 116.0, "right"),
        ("h", 126.0, "right"),
        ("doubt, one sd of L* a* b*", 180.0, "right"),
    )
    table = TITLE_DROP_MM + 7.6 + _ROW_MM * max(len(rows), 1)

    def draw(y: float) -> None:
        draw_section(page, page.left, y + TITLE_DROP_MM, "What was wanted")
        head = y + TITLE_DROP_MM + 5.6
        for name, x, align in heads:
            page.text(page.left + x, head, name, 7.5, grey=SOFT, align=align)
        top = head + 2.0
        if not rows:
            page.text(page.left, top + 4.2, "No shade was given.", _TEXT_PT, face=MEDIUM)
        for index, row in enumerate(rows):
            place = top + index * _ROW_MM
            page.line(page.left, place, page.right, place, weight=0.25, grey=HAIR)
            for text, (_, x, align) in zip(row, heads, strict=True):
                face = MEDIUM if x == 34.0 else REGULAR
                room = {0.0: 32.0, 34.0: 60.0}.get(x, 52.0)
                page.fitted(
                    page.left + x, place + 4.2, text, _TEXT_PT, room, face=face, align=align
                )
        bottom = top + _ROW_MM * max(len(rows), 1)
        page.line(page.left, bottom, page.right, bottom, weight=0.6, grey=SOFT)
        y = bottom
        for index, (name, value) in enumerate(told):
            place = y + 4.6 + _TEXT_MM * index
            page.text(page.left, place, name, 8.0, grey=SOFT)
            page.fitted(page.left + 34.0, place, value, _TEXT_PT, page.inside - 34.0)
        y += 4.6 + _TEXT_MM * len(told)
        for index, line in enumerate(notes):
            page.text(page.left, y + _NOTE_MM * index, line, _NOTE_PT, grey=SOFT)

    height = table + 4.6 + _TEXT_MM * len(told) + _NOTE_MM * len(notes)
    blocks = [Block(height=height, draw=draw, gap=0.0)]
    wish = intake.wish.strip() if intake is not None else ""
    if wish:
        blocks += _text_blocks(page, "The dentist's wish", wish)
    return blocks


def _shade_rows(sheet: SheetData) -> list[tuple[str, str, str, str, str, str]]:
    case, intake = sheet.case, sheet.case.intake
    rows = []
    shades: list[tuple[str, Shade]] = []
    if intake is not None:
        shades += [(f"{one.third} third", one.shade) for one in intake.shades]
        shades += [(f"neighbour {one.tooth.number}", one.shade) for one in intake.neighbours]
    for where, shade in shades:
        rows.append((where, shade_text(shade), *_figures(shade.colour), _doubt(shade.doubt)))
    if case.target is not None and not any(where == "middle third" for where, _ in shades):
        target = case.target
        name = target.name or "as given"
        rows.insert(0, ("body", name, *_figures(target.body), _doubt(target.body_doubt)))
    return rows


def _figures(colour: Colour) -> tuple[str, str, str]:
    return (
        number_text(colour.lightness),
        number_text(colour.chroma),
        number_text(colour.hue_degrees, 0),
    )


def _doubt(sd: tuple[float, float, float] | None) -> str:
    if sd is None or not any(sd):
        return "not stated"
    return "\N{PLUS-MINUS SIGN}" + "  ".join(f"{value:.1f}" for value in sd)


def _shade_notes(page: Page, intake: Intake | None) -> list[str]:
    """Return the lines of what the shades say about themselves, each sentence once."""
    if intake is None:
        return []
    notes = dict.fromkeys(one.note.strip() for one in all_shades(intake) if one.note.strip())
    return page.wrapped(" ".join(notes), _NOTE_PT, page.inside) if notes else []


def _text_blocks(page: Page, title: str, text: str) -> list[Block]:
    """Return a titled text; one line a block after the first, so that it may run on."""
    paragraphs = [line for part in text.splitlines() for line in _lines(page, part)]
    first = TITLE_DROP_MM + 5.4

    def draw_first(y: float) -> None:
        draw_section(page, page.left, y + TITLE_DROP_MM, title)
        page.text(page.left, y + TITLE_DROP_MM + 5.0, paragraphs[0], _TEXT_PT)

    def drawing(line: str) -> Block:
        def draw(y: float) -> None:
            page.text(page.left, y + _TEXT_MM - 0.4, line, _TEXT_PT)

        return Block(height=_TEXT_MM, draw=draw, gap=0.0)

    return [Block(height=first, draw=draw_first), *(drawing(line) for line in paragraphs[1:])]


def _lines(page: Page, text: str) -> list[str]:
    """Return the lines of a paragraph; a word longer than the page is broken."""
    lines = []
    for line in page.wrapped(text, _TEXT_PT, page.inside):
        while page.text_width(line, _TEXT_PT) > page.inside:
            end = len(line)
            while page.text_width(line[:end], _TEXT_PT) > page.inside:
                end -= 1
            lines.append(line[:end])
            line = line[end:]  # noqa: PLW2901 - what is left of the same word
        lines.append(line)
    return lines


def predicted_rows(sheet: SheetData) -> list[tuple[str, AreaOutcome]]:
    """Return the rows of the second table: areas of a crown; body, neck and tips of each unit."""
    case = sheet.case
    rows = []
    for unit, one in enumerate(case.units):
        outcome = sheet.outcome_of(unit)
        for row in sorted(outcome.areas, key=lambda row: (row.area is not Zone.BODY, row.area)):
            if row.area is Zone.INNER or isinstance(row.area, Accent):
                continue
            if len(case.units) > 1 and row.area not in _ON_BRIDGES:
                continue
            label = sheet.label(row.area, unit)
            rows.append((f"{one.tooth.number} {label}" if len(case.units) > 1 else label, row))
    return rows


def difference_text(row: AreaOutcome, *, calibrated: bool) -> str:
    """Return what is said about the gap between predicted and wanted, in words."""
    if row.wanted is None:
        return "nothing wanted here"
    if row.delta_e_00 is None:
        return "not comparable"
    gap = row.predicted.lightness - row.wanted.lightness
    said = str(verdict(row.delta_e_00, calibrated=calibrated))
    if inside_uncertainty(gap, row.plus_minus[0], row.difference_sd[0]):
        return said if calibrated else "value inside the uncertainty"
    step = f"value {number_text(gap, signed=True)}"
    return f"{said}, {step}" if calibrated else step


def _predicted_blocks(page: Page, sheet: SheetData) -> list[Block]:
    rows = predicted_rows(sheet)
    calibrated = sheet.outcome.calibrated
    heads: tuple[tuple[str, float, Align], ...] = (
        ("area", 0.0, "left"),
        ("wanted | predicted", 34.0, "left"),
        ("L*", 72.0, "right"),
        ("C*", 83.0, "right"),
        ("h", 92.0, "right"),
        ("one sd L* a* b*", 120.0, "right"),
        ("dE00", 132.0, "right"),
        ("in words", 136.0, "left"),
    )

    def draw_head(y: float) -> None:
        draw_section(page, page.left, y + TITLE_DROP_MM, "What is predicted", _how(sheet))
        for name, x, align in heads:
            page.text(page.left + x, y + TITLE_DROP_MM + 5.6, name, 7.5, grey=SOFT, align=align)
        end = y + TITLE_DROP_MM + 7.6
        page.line(page.left, end, page.right, end, weight=0.3, grey=HAIR)

    def row_block(name: str, row: AreaOutcome) -> Block:
        def draw(y: float) -> None:
            baseline = y + 4.2
            page.fitted(page.left, baseline, name, _TEXT_PT, 32.0, face=MEDIUM)
            whole = Rect(page.left + 34.0, y + 0.7, 20.0, _ROW_MM - 1.4)
            half = Rect(whole.x, whole.y, 10.0, whole.height)
            if row.wanted is not None:
                page.swatch(half, lab_to_srgb(row.wanted.lab).tolist())
            page.swatch(
                Rect(whole.x + 10.0, whole.y, 10.0, whole.height),
                lab_to_srgb(row.predicted.lab).tolist(),
            )
            page.box(whole, weight=0.3)
            for text, x in zip(_figures(row.predicted), (72.0, 83.0, 92.0), strict=True):
                page.text(page.left + x, baseline, text, _TEXT_PT, align="right")
            page.text(page.left + 120.0, baseline, _doubt(row.plus_minus), 8.0, align="right")
            gap = "" if row.delta_e_00 is None else f"{row.delta_e_00:.1f}"
            page.text(page.left + 132.0, baseline, gap, _TEXT_PT, align="right")
            words = difference_text(row, calibrated=calibrated)
            page.fitted(page.left + 136.0, baseline, words, 8.0, page.inside - 136.0)
            page.line(page.left, y + _ROW_MM, page.right, y + _ROW_MM, weight=0.25, grey=HAIR)

        return Block(height=_ROW_MM, draw=draw, gap=0.0)

    head = Block(height=TITLE_DROP_MM + 7.6, draw=draw_head)
    return [head, *(row_block(name, row) for name, row in rows)]


def _how(sheet: SheetData) -> str:
    how = sheet.outcome.areas[0].predicted.measurement
    return f"after sintering; {how.geometry}, {how.illuminant}, {how.observer_degrees}°"


def _limits_block(page: Page, sheet: SheetData) -> Block:
    lines: list[tuple[bool, str]] = []
    for sentence in limits(sheet):
        broken = page.wrapped(sentence, 8.5, page.inside - 4.0)
        lines += [(index == 0, line) for index, line in enumerate(broken)]

    def draw(y: float) -> None:
        draw_section(page, page.left, y + TITLE_DROP_MM, "What nobody can promise")
        for index, (first, line) in enumerate(lines):
            baseline = y + TITLE_DROP_MM + 5.2 + 3.9 * index
            if first:
                page.box(Rect(page.left, baseline - 1.8, 1.2, 1.2), weight=0.0, fill=0.32)
            page.text(page.left + 4.0, baseline, line, 8.5)

    return Block(height=TITLE_DROP_MM + 5.2 + 3.9 * (len(lines) - 1) + 1.0, draw=draw)


def _answer_block(page: Page) -> Block:
    """Return the part that is filled in by hand: as it stands or with changes, who, when."""

    def draw(y: float) -> None:
        draw_section(page, page.left, y + TITLE_DROP_MM, "Answer")
        place = y + TITLE_DROP_MM + 3.6
        one = CoatSpan.exactly(1)
        draw_ticks(page, one, page.left, place, 4.0)
        page.text(page.left + 6.6, place + 3.2, "as it stands", _TEXT_PT)
        draw_ticks(page, one, page.left + 40.0, place, 4.0)
        page.text(page.left + 46.6, place + 3.2, "with these changes", _TEXT_PT)
        draw_blank(page, page.left + 80.0, place + 3.8, page.inside - 80.0)
        for index, who in enumerate(("dentist", "laboratory")):
            x = page.left + index * (0.5 * page.inside + 3.0)
            baseline = place + 14.0
            width = page.text(x, baseline, f"{who}, date", 8.0, grey=SOFT)
            draw_blank(page, x + width + 2.0, baseline + 0.6, 0.5 * page.inside - 5.0 - width)

    return Block(height=TITLE_DROP_MM + 3.6 + 14.6, draw=draw)
