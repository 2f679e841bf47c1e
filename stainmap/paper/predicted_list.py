"""Predicted colours on paper: a swatch, L*, C* and h of every area, and what they are worth."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from stainmap.model.colour import Colour
from stainmap.model.zone import Accent, Area, Zone
from stainmap.optics.colorimetry import lab_to_srgb
from stainmap.paper.page import MEDIUM, SMALLEST_PT, SOFT, Page, Rect
from stainmap.paper.sheet_data import SheetData
from stainmap.planning.outcome import AreaOutcome, plus_minus_text

_ROW_MM, _LINE_MM, _GAP_MM = 4.4, 2.9, 0.8
_TITLE_MM, _FOOT_MM = 4.0, 10.6
_SWATCH_MM, _NAME_MM = 8.0, 10.0
# Below this the two ends of a span are printed as one.
_SEEN_STEP = 0.15
_INSIDE = (Zone.INNER, Accent.INNER_NECK_BAND)


def number_text(value: float, digits: int = 1, *, signed: bool = False) -> str:
    """Return a number with a true minus, and a plus if `signed`; nothing is plus or minus zero."""
    text = f"{abs(value):.{digits}f}"
    if float(text) == 0.0:
        return text
    return ("\N{MINUS SIGN}" if value < 0 else "+" if signed else "") + text


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PredictedList:
    """The predicted colours of some areas.

    Parameters
    ----------
    rows
        Body first, then by number; the inner surface is left out.
    title
        What stands above; empty in a further column of the same list.
    """

    sheet: SheetData
    unit: int
    rows: tuple[AreaOutcome, ...]
    title: str = "Predicted"

    @classmethod
    def of(cls, sheet: SheetData, unit: int, areas: tuple[Area, ...]) -> PredictedList:
        """Return the list of areas on the outer surface."""
        outcome = sheet.outcome_of(unit)
        rows = [row for row in outcome.areas if row.area in areas and row.area not in _INSIDE]
        rows.sort(key=lambda row: (row.area is not Zone.BODY, int(row.area)))
        return cls(sheet=sheet, unit=unit, rows=tuple(rows))

    @property
    def height(self) -> float:
        """Height with title and foot."""
        return _TITLE_MM + sum(map(_row_height, self.rows)) + _FOOT_MM

    def draw(self, page: Page, x: float, y: float, width: float) -> None:
        """Draw the list with the baseline of its title at y."""
        right = x + width
        columns = (right - 15.0, right - 6.0, right)
        page.text(x, y, self.title, 12.0, face=MEDIUM)
        for place, name in zip(columns, ("L*", "C*", "h"), strict=True):
            page.text(place, y, name, 7.5, grey=SOFT, align="right")
        y += _TITLE_MM
        for row in self.rows:
            self._draw_row(page, row, x, y, columns)
            y += _row_height(row)
        if self.title:
            self._draw_foot(page, x, y, width)

    def in_columns(self, count: int) -> tuple[PredictedList, ...]:
        """Return the list cut into columns of as many rows each, the first with the title."""
        each = max(math.ceil(len(self.rows) / count), 1)
        return tuple(
            replace(self, rows=self.rows[i : i + each], title=self.title if i == 0 else "")
            for i in range(0, max(len(self.rows), 1), each)
        )

    def _draw_row(
        self,
        page: Page,
        row: AreaOutcome,
        x: float,
        y: float,
        columns: tuple[float, float, float],
    ) -> None:
        height = _row_height(row) - _GAP_MM
        low = _lower_end(row)
        swatch = Rect(x, y, _SWATCH_MM, height)
        page.swatch(swatch, lab_to_srgb(row.predicted.lab).tolist())
        if low is not None:
            lower = Rect(x, y + height / 2, _SWATCH_MM, height / 2)
            page.swatch(lower, lab_to_srgb(low.lab).tolist())
        page.box(swatch, weight=0.3)
        baseline, name = y + 3.1, x + _NAME_MM
        room = columns[0] - name - 7.5
        label = page.short(self.sheet.label(row.area, self.unit), room, MEDIUM)
        page.fitted(name, baseline, label, 8.0, room, face=MEDIUM)
        _draw_values(page, row.predicted, baseline, columns, 8.0)
        if low is not None:
            baseline += _LINE_MM
            page.text(name, baseline, "lower end", SMALLEST_PT, grey=SOFT)
            _draw_values(page, low, baseline, columns, SMALLEST_PT)
        beside = _beside_text(row)
        if beside:
            room = columns[2] - name
            page.fitted(name, baseline + _LINE_MM, beside, SMALLEST_PT, room, grey=SOFT)

    def _draw_foot(self, page: Page, x: float, y: float, width: float) -> None:
        if not self.rows:
            return
        spread = f"{plus_minus_text(self.rows)} (one sd)"
        page.fitted(x, y + 3.2, spread, 7.8, width, face=MEDIUM)
        how = self.rows[0].predicted.measurement
        page.fitted(
            x,
            y + 6.6,
            f"{how.geometry}, {how.illuminant}, {how.observer_degrees}°, {how.backing}",
            7.5,
            width,
            grey=SOFT,
        )
        if any(row.offset_from_body is not None for row in self.rows):
            below = "second line: dL* and dC* from the body"
            page.fitted(x, y + 9.8, below, 7.5, width, grey=SOFT)


def _draw_values(
    page: Page,
    colour: Colour,
    baseline: float,
    columns: tuple[float, float, float],
    size: float,
) -> None:
    texts = (
        number_text(colour.lightness),
        number_text(colour.chroma),
        number_text(colour.hue_degrees, 0),
    )
    for place, text in zip(columns, texts, strict=True):
        page.text(place, baseline, text, size, align="right")


def _beside_text(row: AreaOutcome) -> str:
    """Return dL* and dC* from the body and what is wanted of them, or what the body should be."""
    if row.offset_from_body is not None:
        text = _pair(row.offset_from_body)
        return text if row.wanted_offset is None else f"{text} (wanted {_pair(row.wanted_offset)})"
    if row.wanted is not None:
        wanted = row.wanted
        return f"wanted {wanted.lightness:.1f}  {wanted.chroma:.1f}  {wanted.hue_degrees:.0f}"
    return ""


def _pair(offset: tuple[float, float]) -> str:
    return " ".join(number_text(value, signed=True) for value in offset)


def _row_height(row: AreaOutcome) -> float:
    lines = (_lower_end(row) is not None) + bool(_beside_text(row))
    return _ROW_MM + lines * _LINE_MM + _GAP_MM


def _lower_end(row: AreaOutcome) -> Colour | None:
    """Return the colour at the lower end of spans if it can be told from the upper end's."""
    low = row.predicted_low
    if low is None:
        return None
    steps = (one - other for one, other in zip(low.lab, row.predicted.lab, strict=True))
    return low if max(map(abs, steps)) >= _SEEN_STEP else None
