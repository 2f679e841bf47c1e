"""The small marks that sheets share: jars, numbers, tallies, boxes to tick, zone patches."""

from __future__ import annotations

from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Accent, Area, Zone
from stainmap.paper.page import BOLD, HAIR, INK, MEDIUM, SOFT, WHITE, Page, Rect

# Hatches of jars in the order of their numbers, in degrees: none, slanted, level, upright, crossed.
_JAR_HATCHES: tuple[tuple[float, ...], ...] = ((), (45.0,), (0.0,), (90.0,), (45.0, -45.0))
TALLY_HEIGHT = 2.7
_TALLY_PITCH, _TICK_GAP = 1.45, 0.7
# Hatches of zone patches, as on the map.
_ZONE_HATCHES: dict[Zone, tuple[float, ...]] = {
    Zone.CERVICAL: (0.0,),
    Zone.INTERPROXIMAL: (45.0,),
    Zone.CUSP: (-60.0,),
    Zone.FISSURE: (45.0, -45.0),
}


def draw_jar(page: Page, number: int, x: float, y: float, size: float) -> None:
    """Draw a jar's square with its hatch, and its number on a plain disc."""
    square = Rect(x, y, size, size)
    page.box(square, weight=0.35 + 0.045 * size, fill=WHITE, radius=0.14 * size)
    hatch = _JAR_HATCHES[(number - 1) % len(_JAR_HATCHES)]
    page.hatch(
        square.inset(0.035 * size), hatch, spacing=max(0.8, 0.145 * size), radius=0.12 * size
    )
    points = max(0.51 * size * 72.0 / 25.4, 7.2)
    if hatch:
        page.disc(*square.middle, (0.31 if number < 10 else 0.4) * size)
    draw_centred(page, *square.middle, str(number), points)


def draw_centred(page: Page, x: float, y: float, text: str, points: float) -> None:
    """Write bold figures with their middle at x, y."""
    page.text(x, y + 0.1283 * points, text, points, face=BOLD, align="centre")


def draw_number(page: Page, number: int, x: float, y: float, size: float = 3.9) -> None:
    """Draw an area's number in a white pill with its middle at x, y."""
    width = number_width(page, number, size)
    pill = Rect(x - width / 2, y - size / 2, width, size)
    page.box(pill, weight=0.5, fill=WHITE, radius=size / 2)
    draw_centred(page, x, y, str(number), 7.2)


def number_width(page: Page, number: int, size: float = 3.9) -> float:
    """Return the width of an area's pill."""
    return max(size, page.text_width(str(number), 7.2, BOLD) + 0.42 * size)


def draw_tally(page: Page, coats: CoatSpan, x: float, y: float, *, fading: bool = False) -> float:
    """Draw one upright stroke per coat, hollow beyond the lower end of a span; return the width.

    A fading entry's strokes get shorter from left to right.
    """
    for index in range(coats.high):
        left = 1.0 - 0.62 * index / max(coats.high - 1, 2) if fading else 1.0
        stroke = Rect(
            x + index * _TALLY_PITCH, y + TALLY_HEIGHT * (1.0 - left), 0.8, TALLY_HEIGHT * left
        )
        if index < coats.low:
            page.box(stroke, weight=0.0, fill=INK)
        else:
            page.box(stroke.inset(0.1), weight=0.4)
    return tally_width(coats)


def tally_width(coats: CoatSpan) -> float:
    """Return the width of a tally."""
    return max(coats.high * _TALLY_PITCH - (_TALLY_PITCH - 0.8), 0.0)


def draw_ticks(page: Page, coats: CoatSpan, x: float, y: float, size: float = 3.0) -> None:
    """Draw a box to tick per coat, dashed beyond the lower end of a span."""
    for index in range(coats.high):
        dash = () if index < coats.low else (1.1, 0.9)
        box = Rect(x + index * (size + _TICK_GAP), y, size, size)
        page.box(box, weight=0.6, fill=WHITE, dash=dash)


def ticks_width(coats: CoatSpan, size: float = 3.0) -> float:
    """Return the width of a row of boxes to tick."""
    return coats.high * (size + _TICK_GAP) - _TICK_GAP


def draw_patch(page: Page, area: Area, patch: Rect) -> None:
    """Draw the sample of an area: a zone's hatch, an accent's dashed outline."""
    if isinstance(area, Accent):
        page.box(patch, weight=0.6, dash=(1.6, 1.2), radius=0.4)
        return
    page.hatch(patch, _ZONE_HATCHES.get(area, ()), spacing=1.0, weight=0.35)
    page.box(patch, weight=0.6)


def draw_section(page: Page, x: float, y: float, title: str, remark: str = "") -> None:
    """Write a section's title, and what is said about it beside."""
    width = page.text(x, y, title, 12.0, face=MEDIUM)
    if remark:
        page.text(x + width + 4.0, y, remark, 7.5, grey=SOFT)


def draw_blank(page: Page, x: float, y: float, width: float) -> None:
    """Draw a line to write on."""
    page.line(x, y, x + width, y, weight=0.3, grey=HAIR)
