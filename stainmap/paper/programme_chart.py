"""The sintering programme on paper: temperature over time, and its segments in words."""

from __future__ import annotations

import math

from stainmap.model.material import SinteringProgramme
from stainmap.paper.marks import draw_section
from stainmap.paper.page import HAIR, MEDIUM, SOFT, Page
from stainmap.paper.sheet_layout import TITLE_DROP_MM, Block
from stainmap.planning.schedule import sintering_minutes
from stainmap.predict.sintering import duration_text, programme_corners, time_class
from stainmap.units import TemperatureUnit

_CHART_HEIGHT_MM, _TABLE_MM, _TABLE_BOTH_MM, _GAP_MM = 30.0, 56.0, 92.0, 9.0
_AXIS_MM = 8.0
_ROW_MM = 5.2
_TICKS_MINUTES = (5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 240.0, 480.0)


_ABOVE_PEAK_MM = 4.4


def programme_block(page: Page, programme: SinteringProgramme, degrees: TemperatureUnit) -> Block:
    """Return the block of a programme, its temperatures in these degrees."""
    rows = _segment_rows(programme, degrees)
    table_mm = _TABLE_BOTH_MM if degrees is TemperatureUnit.BOTH else _TABLE_MM
    body = max(_CHART_HEIGHT_MM + 5.0, len(rows) * _ROW_MM)

    def draw(y: float) -> None:
        draw_section(page, page.left, y + TITLE_DROP_MM, "Sintering programme", _remark(programme))
        top = y + TITLE_DROP_MM + 4.5
        right = page.right - table_mm
        _draw_chart(page, programme, degrees, page.left + _AXIS_MM, top, right - _GAP_MM)
        for index, (what, rate, minutes) in enumerate(rows):
            line = top + index * _ROW_MM
            page.line(right, line, page.right, line, weight=0.25, grey=HAIR)
            page.text(right, line + 3.7, what, 8.5)
            page.text(page.right - 20.0, line + 3.7, rate, 8.5, grey=SOFT, align="right")
            page.text(page.right, line + 3.7, minutes, 8.5, face=MEDIUM, align="right")
        bottom = top + len(rows) * _ROW_MM
        page.line(right, bottom, page.right, bottom, weight=0.25, grey=HAIR)

    return Block(height=TITLE_DROP_MM + 4.5 + body, draw=draw)


def _remark(programme: SinteringProgramme) -> str:
    sinter, cool = sintering_minutes(programme)
    text = f"{programme.name}: {duration_text(sinter)}"
    if cool:
        text += f" and {duration_text(cool)} of cooling"
    kind = time_class(programme.minutes)
    coupon = programme.coupon
    origin = (
        programme.provenance
        if coupon is None
        else f"by a blank coupon, {coupon.read_by}, {coupon.read_on}"
    )
    factor = programme.effective_scattering_factor
    return f"{text}; class {kind}, scattering x {factor:.2f}, {origin}"


def _segment_rows(
    programme: SinteringProgramme, degrees: TemperatureUnit
) -> list[tuple[str, str, str]]:
    """Return what each segment does, its rate or temperature, and how long it takes."""
    rows = []
    before = programme.start_c
    for segment in programme.segments:
        change = segment.target_c - before
        if change == 0.0:
            what, rate = "hold", degrees.text(segment.target_c)
        else:
            what = f"to {degrees.text(segment.target_c)}"
            per_minute = change / segment.minutes
            rate = degrees.text_of_difference(per_minute, "min", decimals=1)
        rows.append((what, rate, duration_text(segment.minutes)))
        before = segment.target_c
    return rows


def _draw_chart(
    page: Page,
    programme: SinteringProgramme,
    degrees: TemperatureUnit,
    left: float,
    top: float,
    right: float,
) -> None:
    """Draw the curve; the axis counts degrees Fahrenheit where nothing else is wanted."""
    times, temperatures = programme_corners(programme)
    between = 1000 if degrees is TemperatureUnit.FAHRENHEIT else 500
    hottest = degrees.of(float(temperatures.max()))
    highest = between * math.ceil(hottest / between)
    if (1.0 - hottest / highest) * _CHART_HEIGHT_MM < _ABOVE_PEAK_MM:
        highest += between  # room for the words: below the peak the curve runs through them
    total = float(times[-1])

    def across(minutes: float) -> float:
        return left + (right - left) * minutes / total

    def at(number: float) -> float:
        return top + _CHART_HEIGHT_MM * (1.0 - number / highest)

    def up(celsius: float) -> float:
        return at(degrees.of(celsius))

    for number in range(0, highest + 1, between):
        page.line(left, at(number), right, at(number), weight=0.25, grey=HAIR)
        page.text(left - 1.5, at(number) + 0.9, str(number), 7.2, grey=SOFT, align="right")
    page.text(left - 1.5, top - 1.6, degrees.axis_sign, 7.2, grey=SOFT, align="right")
    step = next((tick for tick in _TICKS_MINUTES if total / tick <= 8.0), _TICKS_MINUTES[-1])
    for index in range(int(total / step) + 1):
        minutes = index * step
        text = f"{minutes / 60.0:g} h" if step >= 30.0 else f"{minutes:g} min"
        page.text(
            across(minutes), top + _CHART_HEIGHT_MM + 4.0, text, 7.2, grey=SOFT, align="centre"
        )
    points = [
        (across(float(minutes)), up(float(celsius)))
        for minutes, celsius in zip(times, temperatures, strict=True)
    ]
    page.path(points, weight=1.1, round_ends=True)
    at_peak = times[temperatures == temperatures.max()]
    middle, held = 0.5 * float(at_peak.min() + at_peak.max()), float(at_peak.max() - at_peak.min())
    peak = degrees.text(programme.peak_c)
    text = f"{peak}, {duration_text(held)}" if held else peak
    page.text(across(middle), up(programme.peak_c) - 1.4, text, 8.0, face=MEDIUM, align="centre")
