"""The coat map: what is painted where, in which order, on one page per unit."""

from __future__ import annotations

from pathlib import Path

from stainmap.errors import PlanError
from stainmap.files.atomic import write_bytes
from stainmap.model.case import Case
from stainmap.model.zone import Area, Zone
from stainmap.paper.coat_table import CoatTable
from stainmap.paper.map_views import SCALES, BridgeViews, MapViews
from stainmap.paper.marks import draw_blank, draw_section
from stainmap.paper.page import MEDIUM, SOFT, Page
from stainmap.paper.paper_copy import PaperCopy
from stainmap.paper.paper_light import paper_operator, paper_shading
from stainmap.paper.predicted_list import PredictedList, number_text
from stainmap.paper.rosette_map import Rosettes
from stainmap.paper.sheet_data import SheetData
from stainmap.paper.sheet_frame import CONTENT_TOP_MM, foot_top, foot_with_lots
from stainmap.paper.sheet_layout import TITLE_DROP_MM, Block, Leaf, packed, printed
from stainmap.paper.step_order import (
    StepEntry,
    balanced,
    column_height,
    draw_steps,
    step_entries,
)
from stainmap.paper.unit_map import UnitMap, part_map, whole_map
from stainmap.planning.progress import Progress, Steps
from stainmap.planning.schedule import SOAK_MINUTES
from stainmap.words import in_english

_PREDICTED_MM, _BESIDE_GAP_MM = 53.0, 6.0
_COLUMN_GAP_MM = 6.0
_LEAST_SCALE = 2.5
_NARROWEST_MM = 6.4  # a step's column beside the predicted colours
_ORDER_TITLE_MM, _BLANK_MM = 3.6, 8.0


def write_coat_map(path: Path, sheet: SheetData, *, progress: Progress | None = None) -> None:
    """Write the coat map as a PDF; the same sheet data always give the same bytes.

    A bridge gets an overview and a page for every unit. Takes a few seconds; `progress` hears how
    far it is, and stops it by raising.

    Raises
    ------
    StainmapError
        If the plan has no step, a material is missing, or the file cannot be written.
    """
    write_bytes(path, coat_map_bytes(sheet, progress=progress))


@in_english()
def coat_map_bytes(sheet: SheetData, *, progress: Progress | None = None) -> bytes:
    """Return the coat map as a PDF file."""
    case = sheet.case
    if not case.plan.steps:
        raise PlanError("The plan has no step to paint.", advice="Add a step first.")
    page = Page(sheet.page, f"Coat map {case.code}")
    steps = Steps(progress)
    light = steps.part(0.0, 0.5)
    copy = PaperCopy.of(case)
    operator = paper_operator(copy.mesh)
    if sheet.shading is None:
        shading = paper_shading(operator, copy.coarse, progress=light.say)
    else:
        shading = copy.shading(sheet.shading)
    steps.say(0.5, "finding the lines of the map")
    whole = whole_map(sheet, copy, shading, operator)
    rosettes = Rosettes(whole, copy, case)
    leaves: list[Leaf] = []
    if len(case.units) > 1:
        leaves += _overview(page, sheet, whole)
    for unit in range(len(case.units)):
        own = whole if len(case.units) == 1 else part_map(whole, copy, case, unit)
        leaves += _unit_leaves(page, sheet, own, rosettes.of(unit), unit)
    foot = foot_with_lots(page, sheet)
    return printed(page, sheet.heading, leaves, foot, steps=steps.part(0.6, 1.0))


def unit_name(case: Case, unit: int) -> str:
    """Return "36 lower left first molar", with the role on bridges."""
    one = case.units[unit]
    role = f", {one.role}" if len(case.units) > 1 else ""
    return f"{one.tooth.number} {one.tooth.name}{role}"


def unit_areas(sheet: SheetData, unit: int) -> tuple[Area, ...]:
    """Return the areas that a unit has, in the order of the map."""
    case = sheet.case
    own = case.reading.unit_index == unit
    if len(case.units) == 1:
        return sheet.painted_areas()
    areas = []
    for area in sheet.painted_areas():
        if isinstance(area, Zone):
            present = bool((case.zones[own] == int(area)).any())
        else:
            mask = case.accent(area)
            present = mask is not None and bool((mask[own] > 0.5).any())
        if present:
            areas.append(area)
    return tuple(areas)


def _unit_leaves(
    page: Page, sheet: SheetData, unit_map: UnitMap, rosette: UnitMap | None, unit: int
) -> list[Leaf]:
    """Lay one unit out: on one page, at the largest scale at which all of it fits there."""
    areas = unit_areas(sheet, unit)
    tooth = sheet.case.units[unit].tooth
    tables = _table_blocks(page, sheet, unit, areas)
    order = _order_block(page, step_entries(page, sheet, unit, areas, _column_width(page)))
    room = foot_top(page) - CONTENT_TOP_MM
    candidates = [
        MapViews(unit=unit_map, tooth=tooth, scale=scale, rosette=rosette) for scale in SCALES
    ]
    fitting = [views for views in candidates if views.fits(page)] or candidates[-1:]
    needed = sum(block.height + block.gap for block in (*tables, order))
    done = _done_block(page, 0.0)
    # Rather without lines for notes than smaller, but rather on two pages than much smaller.
    readable = [views for views in fitting if views.scale >= _LEAST_SCALE]
    choices = [
        views
        for views in readable
        for more in (done.height + done.gap, 0.0)
        if views.height + needed + more <= room
    ]
    views = (choices or fitting)[0]
    blocks = [Block(height=views.height, draw=lambda y: views.draw(page, y), gap=0.0)]
    pages = packed(page, [*blocks, *tables, order])
    _add_done(page, pages)
    subtitle = unit_name(sheet.case, unit)
    return [
        Leaf(
            title="Coat map" if index == 0 else "Coat map, continued",
            subtitle=subtitle,
            placed=tuple(placed),
        )
        for index, placed in enumerate(pages)
    ]


def _table_blocks(page: Page, sheet: SheetData, unit: int, areas: tuple[Area, ...]) -> list[Block]:
    """Return coat table and predicted colours side by side, or below one another."""
    predicted = PredictedList.of(sheet, unit, areas)
    room = page.inside - _PREDICTED_MM - _BESIDE_GAP_MM
    beside = CoatTable.within(page, sheet, unit, areas, room)
    title = TITLE_DROP_MM
    if beside.column_mm >= _NARROWEST_MM:
        x = page.right - _PREDICTED_MM

        def draw(y: float) -> None:
            beside.draw(page, page.left, y + title)
            predicted.draw(page, x, y + title, _PREDICTED_MM)

        return [Block(height=title + max(beside.height, predicted.height), draw=draw)]
    wide = CoatTable.within(page, sheet, unit, areas, page.inside)
    columns = predicted.in_columns(3)
    step = (page.inside - _PREDICTED_MM) / 2.0

    def draw_columns(y: float) -> None:
        for index, column in enumerate(columns):
            column.draw(page, page.left + index * step, y + title, _PREDICTED_MM)

    return [
        Block(height=title + wide.height, draw=lambda y: wide.draw(page, page.left, y + title)),
        Block(height=title + max(column.height for column in columns), draw=draw_columns),
    ]


def _column_width(page: Page) -> float:
    return 0.5 * (page.inside - _COLUMN_GAP_MM)


def _order_block(page: Page, entries: tuple[StepEntry, ...]) -> Block:
    left, right = balanced(entries)

    def draw(y: float) -> None:
        remark = f"tick a box for every coat; let it soak {SOAK_MINUTES:g} min between coats"
        draw_section(page, page.left, y + TITLE_DROP_MM, "Order", remark)
        top = y + TITLE_DROP_MM + _ORDER_TITLE_MM
        draw_steps(page, left, page.left, top)
        draw_steps(page, right, page.left + _column_width(page) + _COLUMN_GAP_MM, top)

    height = TITLE_DROP_MM + _ORDER_TITLE_MM + max(column_height(left), column_height(right))
    return Block(height=height, draw=draw, gap=5.0)


def _done_block(page: Page, extra: float) -> Block:
    """Return the lines for what was done otherwise; one, and more where `extra` mm are left."""
    lines = 1 + min(int(extra / _BLANK_MM), 2)

    def draw(y: float) -> None:
        indent = page.text_width("Done otherwise", 12.0, MEDIUM) + 5.0
        page.text(page.left, y + TITLE_DROP_MM, "Done otherwise", 12.0, face=MEDIUM)
        for index in range(lines):
            start = page.left + (indent if index == 0 else 0.0)
            draw_blank(page, start, y + 4.0 + index * _BLANK_MM, page.right - start)

    return Block(height=4.6 + (lines - 1) * _BLANK_MM, draw=draw, gap=4.0)


def _add_done(page: Page, pages: list[list[tuple[float, Block]]]) -> None:
    """Fill what is left of the last page with lines to write on."""
    y, last = pages[-1][-1]
    start = y + last.height
    smallest = _done_block(page, 0.0)
    left = foot_top(page) - start - smallest.height - smallest.gap
    if left >= 0.0:
        pages[-1].append((start + smallest.gap, _done_block(page, left)))


def _overview(page: Page, sheet: SheetData, whole: UnitMap) -> list[Leaf]:
    """Return the first page of a bridge: the whole of it from four sides, and its units."""
    case = sheet.case
    views = BridgeViews.fitting(
        page, whole, case.units[0].tooth, foot_top(page) - CONTENT_TOP_MM - 55.0
    )
    units = _units_block(page, sheet, whole)
    blocks = [Block(height=views.height, draw=lambda y: views.draw(page, y), gap=0.0), units]
    pages = packed(page, blocks)
    teeth = " ".join(str(unit.tooth.number) for unit in case.units)
    return [
        Leaf(title="Coat map, overview", subtitle=f"{teeth} {case.reading.kind}", placed=tuple(p))
        for p in pages
    ]


def _body_text(sheet: SheetData, unit: int) -> str:
    """Return L*, C* and h of a unit's body, and by how much its value is off what is wanted."""
    body = sheet.outcome_of(unit).area(Zone.BODY)
    if body is None:
        return ""
    one = body.predicted
    text = f"{one.lightness:.1f}  {one.chroma:.1f}  {one.hue_degrees:.0f}"
    if body.wanted is None or body.delta_e_00 is None:
        return text
    gap = number_text(one.lightness - body.wanted.lightness, signed=True)
    return f"{text}   value {gap}"


def _units_block(page: Page, sheet: SheetData, whole: UnitMap) -> Block:
    """Return the list of units and connectors."""
    case = sheet.case
    rows = [(str(unit.tooth.number), unit.tooth.name, str(unit.role)) for unit in case.units]
    bodies = [_body_text(sheet, unit) for unit in range(len(case.units))]
    connectors = ", ".join(f"{area:.1f}" for area in case.reading.connectors_mm2)
    length, width, height = whole.milled_size_mm

    def draw(y: float) -> None:
        draw_section(page, page.left, y + TITLE_DROP_MM, "Units")
        baseline = y + 9.0
        page.text(
            page.left + 150.0,
            y + TITLE_DROP_MM,
            "body predicted: L*, C*, h",
            7.5,
            grey=SOFT,
            align="right",
        )
        for (number, name, role), text in zip(rows, bodies, strict=True):
            page.line(page.left, baseline - 4.0, page.left + 150.0, baseline - 4.0, weight=0.25)
            page.text(page.left, baseline, number, 9.0, face=MEDIUM)
            page.text(page.left + 10.0, baseline, name, 9.0)
            page.text(page.left + 70.0, baseline, role, 9.0, grey=SOFT)
            page.text(page.left + 150.0, baseline, text, 9.0, align="right")
            baseline += 5.6
        size = f"{length:.1f} x {width:.1f} x {height:.1f} mm milled"
        page.text(page.left, baseline, size, 8.0, grey=SOFT)
        if connectors:
            text = f"smallest section of the connectors {connectors} mm² (sintered)"
            page.text(page.left + 45.0, baseline, text, 8.0, grey=SOFT)

    return Block(height=9.0 + 5.6 * len(rows) + 2.0, draw=draw)
