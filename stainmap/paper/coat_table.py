"""The coat table on paper: areas are rows, steps are columns, cells are coats."""

from __future__ import annotations

from dataclasses import dataclass

from stainmap.model.plan import AreaCoats, CoatSpan
from stainmap.model.zone import Accent, Area, Zone
from stainmap.paper.marks import (
    TALLY_HEIGHT,
    draw_jar,
    draw_number,
    draw_patch,
    draw_section,
    draw_tally,
    tally_width,
)
from stainmap.paper.page import BOLD, HAIR, LIGHT, MEDIUM, REGULAR, SMALLEST_PT, SOFT, Page, Rect
from stainmap.paper.sheet_data import SheetData
from stainmap.planning.outcome import inherited_text

_LABEL_MM, _ROW_MM, _HEAD_MM = 42.0, 5.9, 13.2
_WIDEST_COLUMN_MM, _NAMED_COLUMN_MM = 11.2, 9.0
_TITLE_MM, _NOTE_LEADING_MM = 4.0, 3.3


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CoatTable:
    """The table of some areas, laid out within a width.

    Parameters
    ----------
    areas
        Rows from top to bottom.
    column_mm
        Width of a step's column.
    notes
        Lines below the table.
    """

    sheet: SheetData
    unit: int
    areas: tuple[Area, ...]
    column_mm: float
    notes: tuple[str, ...]

    @classmethod
    def within(
        cls, page: Page, sheet: SheetData, unit: int, areas: tuple[Area, ...], width: float
    ) -> CoatTable:
        """Return the table no wider than `width`."""
        steps = max(len(sheet.case.plan.steps), 1)
        column = min(_WIDEST_COLUMN_MM, (width - _LABEL_MM) / steps)
        wide = max(_LABEL_MM + steps * column, min(width, 100.0))
        notes = page.wrapped(_notes(sheet, unit, areas), SMALLEST_PT, wide)
        return cls(sheet=sheet, unit=unit, areas=areas, column_mm=column, notes=tuple(notes))

    @property
    def width(self) -> float:
        """Width of the table."""
        return _LABEL_MM + len(self.sheet.case.plan.steps) * self.column_mm

    @property
    def height(self) -> float:
        """Height with title and notes."""
        rows = len(self.areas) * _ROW_MM
        return _TITLE_MM + _HEAD_MM + rows + 0.6 + len(self.notes) * _NOTE_LEADING_MM

    def draw(self, page: Page, x: float, y: float) -> None:
        """Draw the table with the baseline of its title at y."""
        steps = self.sheet.case.plan.steps
        draw_section(page, x, y, "Coats")
        right = x + self.width
        remark = "areas down, steps across in the order they are painted"
        if self.width > 115.0:
            page.text(right, y, remark, 7.5, grey=SOFT, align="right")
        top = y + _TITLE_MM
        self._draw_head(page, x, top)
        first = top + _HEAD_MM
        bottom = first + len(self.areas) * _ROW_MM
        for index in range(len(steps) + 1):
            place = x + _LABEL_MM + index * self.column_mm
            page.line(place, first, place, bottom, weight=0.2, grey=HAIR)
        groups = [_group(area) for area in self.areas]
        for index, area in enumerate(self.areas):
            place = first + index * _ROW_MM
            new = index == 0 or groups[index] != groups[index - 1]
            weight, grey = (0.6, SOFT) if new else (0.25, HAIR)
            page.line(x, place, right, place, weight=weight, grey=grey)
            self._draw_row(page, area, x, place)
        page.line(x, bottom, right, bottom, weight=0.6, grey=SOFT)
        for index, line in enumerate(self.notes):
            baseline = bottom + 3.6 + index * _NOTE_LEADING_MM
            page.text(x, baseline, line, SMALLEST_PT, grey=SOFT)

    def _draw_head(self, page: Page, x: float, y: float) -> None:
        plan = self.sheet.case.plan
        size = min(5.2, self.column_mm - 0.6)
        for index, step in enumerate(plan.steps):
            middle = x + _LABEL_MM + (index + 0.5) * self.column_mm
            draw_jar(page, step.jar, middle - size / 2, y + 0.5 * (5.2 - size), size)
            if self.column_mm >= _NAMED_COLUMN_MM:
                name = plan.liquid_of(step)
                page.fitted(middle, y + 8.4, name, 7.5, self.column_mm - 0.4, align="centre")
            number = str(index + 1)
            page.text(middle, y + 11.9, number, 7.5, face=MEDIUM, grey=SOFT, align="centre")
        page.text(x, y + 11.9, "area", 7.5, grey=SOFT)
        page.text(x + _LABEL_MM - 1.6, y + 11.9, "step", 7.5, grey=SOFT, align="right")

    def _draw_row(self, page: Page, area: Area, x: float, y: float) -> None:
        middle = y + _ROW_MM / 2
        draw_number(page, int(area), x + 2.4, middle, 3.8)
        draw_patch(page, area, Rect(x + 5.6, middle - 1.5, 4.6, 3.0))
        face = MEDIUM if isinstance(area, Zone) else REGULAR
        room = _LABEL_MM - 12.6
        label = page.short(self.sheet.label(area, self.unit), room, face)
        page.fitted(x + 11.8, y + 4.05, label, 8.5, room, face=face)
        for index, step in enumerate(self.sheet.case.plan.steps):
            cell = Rect(x + _LABEL_MM + index * self.column_mm, y, self.column_mm, _ROW_MM)
            below = ""
            if isinstance(area, Accent):
                below = inherited_text(self.sheet.case, area, index, self.unit)
            own = step.entry(area)
            if own is not None:
                _draw_own(page, own, below, cell)
            elif below:
                place = cell.middle[0]
                room = cell.width - 0.6
                page.fitted(place, y + 4.05, below, 8.5, room, grey=LIGHT, align="centre")


def _draw_own(page: Page, entry: AreaCoats, below: str, cell: Rect) -> None:
    """Draw a cell's number and, where there is room, its tally; what is inherited before it."""
    text = str(entry.coats)
    for size, before, with_tally in _cell_ways(below):
        small = max(0.85 * size, SMALLEST_PT)
        light = page.text_width(before, small)
        number = page.text_width(text, size, BOLD)
        tally = 1.0 + tally_width(entry.coats) if with_tally else 0.0
        if light + number + tally <= cell.width - 0.8:
            break
    else:
        _draw_stacked(page, entry.coats, cell)
        return
    start = cell.middle[0] - 0.5 * (light + number + tally)
    baseline = cell.y + 4.15
    page.text(start, baseline, before, small, grey=LIGHT)
    page.text(start + light, baseline, text, size, face=BOLD)
    if with_tally:
        top = cell.middle[1] - 0.5 * TALLY_HEIGHT
        fading = entry.fade is not None
        draw_tally(page, entry.coats, start + light + number + 1.0, top, fading=fading)


def _draw_stacked(page: Page, coats: CoatSpan, cell: Rect) -> None:
    """Draw the ends of a span below one another, for columns too narrow for both."""
    lines = (f"{coats.low}-", str(coats.high)) if coats.is_span else ("", str(coats))
    for text, baseline in zip(lines, (cell.y + 2.65, cell.y + 5.3), strict=True):
        page.text(cell.middle[0], baseline, text, SMALLEST_PT, face=BOLD, align="centre")


def _cell_ways(below: str) -> list[tuple[float, str, bool]]:
    """Return ways to write a cell, the best first: size, what stands before it, with a tally."""
    full = f"{below} + " if below else ""
    short = "+" if below else ""
    sizes = ((10.0, True), (8.5, True), (10.0, False), (8.5, False), (SMALLEST_PT, False))
    return [(size, full, tally) for size, tally in sizes] + [
        (size, short, tally) for size, tally in sizes[-2:]
    ]


def _group(area: Area) -> int:
    """Return 0 for zones of the outer surface, 1 for accents on it, 2 for the inner surface."""
    if area in (Zone.INNER, Accent.INNER_NECK_BAND):
        return 2
    return 0 if isinstance(area, Zone) else 1


def _notes(sheet: SheetData, unit: int, areas: tuple[Area, ...]) -> str:
    """Return what the table's marks mean, as far as they appear in it."""
    steps = sheet.case.plan.steps
    entries = [entry for step in steps for entry in step.areas if entry.area in areas]
    parts = []
    if any(
        inherited_text(sheet.case, area, index, unit)
        for area in areas
        if isinstance(area, Accent)
        for index in range(len(steps))
    ):
        parts.append("Light figures: inherited from the zone below.")
    if any(entry.coats.is_span for entry in entries):
        parts.append("Hollow strokes: upper end of a span.")
    for entry in entries:
        if entry.fade is not None:
            full = entry.fade.full_down_to_mm * sheet.enlargement
            zero = entry.fade.zero_at_mm * sheet.enlargement
            parts.append(
                f"Falling strokes: {sheet.label(entry.area, unit)} fades out from {full:.1f} to"
                f" {zero:.1f} mm below tips and ridges (milled)."
            )
    return " ".join(dict.fromkeys(parts))
