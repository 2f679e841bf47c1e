"""Learning curves and thresholds on paper: small charts side by side, all to one scale."""

from __future__ import annotations

import math
from collections.abc import Sequence

from stainmap.paper.marks import draw_section
from stainmap.paper.page import HAIR, INK, LIGHT, MEDIUM, SOFT, WHITE, Page
from stainmap.paper.practice_data import CurveLine, ThresholdLine
from stainmap.paper.sheet_layout import TITLE_DROP_MM, Block

_ACROSS = 3
_GAP_MM, _AXIS_MM = 6.0, 6.5
_CHART_MM, _HEAD_MM, _FOOT_MM = 22.0, 10.2, 5.2
_DISC_MM = 0.75
_CEILINGS_DL = (1.0, 2.0, 4.0, 8.0, 16.0)


def curve_blocks(page: Page, curves: Sequence[CurveLine]) -> list[Block]:
    """Return the charts of all skills in rows of three, under one title."""
    rows = [curves[begin : begin + _ACROSS] for begin in range(0, len(curves), _ACROSS)]
    return [_curve_row(page, row, first=index == 0) for index, row in enumerate(rows)]


def _curve_row(page: Page, curves: Sequence[CurveLine], *, first: bool) -> Block:
    title = TITLE_DROP_MM + 4.0 if first else 0.0
    width = (page.inside - (_ACROSS - 1) * _GAP_MM) / _ACROSS

    def draw(y: float) -> None:
        if first:
            remark = "score of every try, 0 to 100; the line is the mean of the last three"
            draw_section(page, page.left, y + TITLE_DROP_MM, "Learning curves", remark)
        for index, curve in enumerate(curves):
            _draw_curve(page, curve, page.left + index * (width + _GAP_MM), y + title, width)

    return Block(height=title + _HEAD_MM + _CHART_MM + _FOOT_MM, draw=draw, gap=3.0)


def _draw_curve(page: Page, curve: CurveLine, left: float, top: float, width: float) -> None:
    right = left + width
    page.fitted(left, top + 3.4, curve.skill, 9.0, width, face=MEDIUM)
    page.fitted(left, top + 7.0, level_text(curve), 7.5, width, grey=SOFT)
    axis, low, high = left + _AXIS_MM, top + _HEAD_MM + _CHART_MM, top + _HEAD_MM

    def up(score: float) -> float:
        return low - (low - high) * score / 100.0

    for score in (0.0, 50.0, 100.0):
        page.line(axis, up(score), right, up(score), weight=0.25, grey=HAIR)
        page.text(axis - 1.2, up(score) + 0.9, f"{score:.0f}", 7.2, grey=SOFT, align="right")
    places = _spread(len(curve.scores), axis + 1.5, right - 1.5)
    levels = [(x, up(level)) for x, level in zip(places, curve.levels, strict=True)]
    if len(levels) > 1:
        page.path(levels, weight=1.1, round_ends=True)
    for x, score in zip(places, curve.scores, strict=True):
        page.disc(x, up(score), _DISC_MM, fill=INK)
        page.disc(x, up(score), _DISC_MM - 0.28, fill=WHITE)
    if curve.first_on is not None and curve.last_on is not None:
        _draw_days(page, curve.first_on.isoformat(), curve.last_on.isoformat(), axis, right, low)


def level_text(curve: CurveLine) -> str:
    """Return what is said above a curve: level, change, tries."""
    if not curve.levels:
        return "not tried yet"
    tries = "1 try" if len(curve.scores) == 1 else f"{len(curve.scores)} tries"
    if curve.gain is None:
        return f"level {curve.levels[-1]:.0f}, {tries}"
    return f"level {curve.levels[-1]:.0f} ({curve.gain:+.0f} since the first), {tries}"


def threshold_block(page: Page, thresholds: Sequence[ThresholdLine]) -> Block:
    """Return the chart of just-noticeable differences, smaller being finer."""
    top_of = max(one.threshold_dl + one.sd_dl for one in thresholds)
    ceiling = next((one for one in _CEILINGS_DL if one >= top_of), 4.0 * math.ceil(top_of / 4.0))
    last = thresholds[-1]

    def draw(y: float) -> None:
        remark = "difference in L* told apart in five of six cases, with one sd; smaller is finer"
        draw_section(page, page.left, y + TITLE_DROP_MM, "Value by eye", remark)
        axis, right = page.left + 10.0, page.left + 0.62 * page.inside
        high = y + TITLE_DROP_MM + 5.0
        low = high + _CHART_MM

        def up(value: float) -> float:
            return low - (low - high) * min(value / ceiling, 1.0)

        for value in (0.0, 0.5 * ceiling, ceiling):
            page.line(axis, up(value), right, up(value), weight=0.25, grey=HAIR)
            page.text(axis - 1.2, up(value) + 0.9, f"{value:g}", 7.2, grey=SOFT, align="right")
        places = _spread(len(thresholds), axis + 2.0, right - 2.0)
        points = [(x, up(one.threshold_dl)) for x, one in zip(places, thresholds, strict=True)]
        if len(points) > 1:
            page.path(points, weight=0.6, grey=LIGHT)
        for (x, height), one in zip(points, thresholds, strict=True):
            above = up(one.threshold_dl + (0.0 if one.below_screen else one.sd_dl))
            below = up(0.0 if one.below_screen else max(one.threshold_dl - one.sd_dl, 0.0))
            page.line(x, above, x, below, weight=0.5)
            page.disc(x, height, _DISC_MM + 0.1, fill=INK)
            if one.below_screen:
                page.disc(x, height, _DISC_MM - 0.18, fill=WHITE)
        _draw_days(page, thresholds[0].on.isoformat(), last.on.isoformat(), axis, right, low)
        page.text(right + 6.0, high + 6.0, threshold_text(last), 12.0, face=MEDIUM)
        page.text(right + 6.0, high + 10.4, f"last measured {last.on.isoformat()}", 8.0, grey=SOFT)
        note = "On one screen, in one room: it changes with both. An open point: finer than shown."
        for index, line in enumerate(page.wrapped(note, 7.5, page.right - right - 6.0)):
            page.text(right + 6.0, high + 15.0 + 3.4 * index, line, 7.5, grey=SOFT)

    return Block(height=TITLE_DROP_MM + 5.0 + _CHART_MM + _FOOT_MM, draw=draw)


def threshold_text(one: ThresholdLine) -> str:
    """Return a threshold in figures."""
    if one.below_screen:
        return f"below {one.threshold_dl:.2f} L*"
    return f"{one.threshold_dl:.2f} \N{PLUS-MINUS SIGN} {one.sd_dl:.2f} L*"


def _draw_days(page: Page, first: str, last: str, left: float, right: float, low: float) -> None:
    page.text(left, low + 3.8, first, 7.2, grey=SOFT)
    if first != last:
        page.text(right, low + 3.8, last, 7.2, grey=SOFT, align="right")


def _spread(count: int, left: float, right: float) -> list[float]:
    """Return `count` places from left to right; a single one stands in the middle."""
    if count == 1:
        return [0.5 * (left + right)]
    return [left + (right - left) * index / (count - 1) for index in range(count)]
