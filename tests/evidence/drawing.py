"""Line plots as SVG: panels side by side, calm greys, nothing but paths, lines and text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from html import escape

import numpy as np

from tests.evidence.figures import MINUS, Curve, Panel, Plot, Stroke

# The light greys of the program; its manual window exchanges them for the dark ones.
GROUND, INK, SOFT, LINE, ACCENT = "#e8e8e8", "#161616", "#474747", "#b4b4b4", "#0a5c7d"
COLOURS = (GROUND, INK, SOFT, LINE, ACCENT)
FACE = "Stainmap Sans, Inter, Segoe UI, Helvetica, Arial, sans-serif"

WIDTH, PANEL_HEIGHT = 860.0, 190.0
LEFT, RIGHT, TOP, BOTTOM, BETWEEN = 46.0, 18.0, 74.0, 46.0, 52.0
# Colour, width and dashes; the truth is drawn as dots.
_LOOKS = {
    Stroke.TRUTH: (INK, 1.4, ""),
    Stroke.OURS: (ACCENT, 2.0, ""),
    Stroke.WITHOUT: (SOFT, 1.2, "2 4"),
    Stroke.OTHER: (SOFT, 1.4, "7 4"),
}
_DOT_APART = 7.0


def svg(plot: Plot) -> str:
    """Return a plot as an SVG document."""
    count = len(plot.panels)
    width = (WIDTH - LEFT - RIGHT - BETWEEN * (count - 1)) / count
    height = TOP + PANEL_HEIGHT + BOTTOM
    parts = [
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{WIDTH:.0f}" height="{height:.0f}" '
            f'viewBox="0 0 {WIDTH:.0f} {height:.0f}" font-family="{FACE}" font-size="11.5">'
        ),
        f"<title>{escape(plot.title)}</title>",
        f'<rect width="{WIDTH:.0f}" height="{height:.0f}" rx="3" fill="{GROUND}"/>',
        *_legend(plot),
    ]
    upright = _upright(plot.panels) if plot.one_scale else None
    for at, panel in enumerate(plot.panels):
        parts += _panel(panel, LEFT + at * (width + BETWEEN), width, upright)
    return "\n".join([*parts, "</svg>", ""])


def ticks(low: float, high: float, most: int) -> np.ndarray:
    """Return round values between two ends, as many as there are up to `most`, at least two."""
    power = 10.0 ** np.floor(np.log10((high - low) / max(most, 2)))
    for step in (power * each for each in (1.0, 2.0, 5.0, 10.0, 20.0)):
        first, last = np.ceil(low / step - 1e-9), np.floor(high / step + 1e-9)
        if last - first + 1 <= max(most, 2):
            break
    return np.arange(first, last + 0.5) * step + 0.0


def _text(x: float, y: float, words: str, *, fill: str = SOFT, anchor: str = "start") -> str:
    shown = escape(words)
    return f'<text x="{x:.1f}" y="{y:.1f}" fill="{fill}" text-anchor="{anchor}">{shown}</text>'


def _line(x1: float, y1: float, x2: float, y2: float, colour: str, width: float = 1.0) -> str:
    ends = f'x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}"'
    return f'<line {ends} stroke="{colour}" stroke-width="{width:g}"/>'


def _legend(plot: Plot) -> Iterator[str]:
    x, known = LEFT, set()
    for curve in (curve for panel in plot.panels for curve in panel.curves):
        if curve.label in known:
            continue
        known.add(curve.label)
        yield from _stroke(curve.stroke, np.array([x, x + 12, x + 24]), np.full(3, 18.0))
        yield _text(x + 32, 22.0, curve.label, fill=INK)
        x += 32 + 6.3 * len(curve.label) + 22


def _stroke(kind: Stroke, x: np.ndarray, y: np.ndarray, every_point: bool = False) -> Iterator[str]:
    colour, width, dashes = _LOOKS[kind]
    if kind is Stroke.TRUTH:
        every = 1 if every_point else max(1, round(len(x) * _DOT_APART / np.ptp(x)))
        # From the middle outwards, so that a symmetric profile keeps its middle and its symmetry.
        start = (len(x) // 2) % every
        for left, top in zip(x[start::every], y[start::every], strict=True):
            yield f'<circle cx="{left:.1f}" cy="{top:.1f}" r="1.8" fill="{colour}"/>'
        return
    dash = f' stroke-dasharray="{dashes}"' if dashes else ""
    points = " ".join(f"{left:.1f},{top:.1f}" for left, top in zip(x, y, strict=True))
    yield (
        f'<polyline points="{points}" fill="none" stroke="{colour}" stroke-width="{width:g}"'
        f'{dash} stroke-linejoin="round"/>'
    )


def _panel(
    panel: Panel, left: float, width: float, upright: tuple[float, float] | None
) -> Iterator[str]:
    low, high = panel.x_limits or _limits([curve.x for curve in panel.curves], margin=0.0)
    bottom, top = upright or _upright([panel])
    bottom = 0.0 if panel.y_from_zero else bottom
    floor = TOP + PANEL_HEIGHT

    def across(x: np.ndarray) -> np.ndarray:
        return left + (np.asarray(x) - low) / (high - low) * width

    def up(y: np.ndarray) -> np.ndarray:
        return floor - (np.asarray(y) - bottom) / (top - bottom) * PANEL_HEIGHT

    yield _text(left, TOP - 30, panel.title, fill=INK)
    yield _text(left, TOP - 12, panel.y_label)
    for value in ticks(bottom, top, 6):
        y = float(up(value))
        yield _line(left, y, left + width, y, LINE, 0.6)
        yield _text(left - 7, y + 4, _tick_text(value), anchor="end")
    for value in ticks(low, high, max(3, int(width // 58))):
        x = float(across(value))
        yield _line(x, floor, x, floor + 4, SOFT)
        yield _text(x, floor + 18, _tick_text(value), anchor="middle")
    yield _line(left, floor, left + width, floor, SOFT)
    yield _text(left + width / 2, floor + 36, panel.x_label, anchor="middle")
    for curve in sorted(panel.curves, key=_below_first):
        yield from _stroke(curve.stroke, across(curve.x), up(curve.y), curve.every_point)


def _below_first(curve: Curve) -> int:
    return (Stroke.WITHOUT, Stroke.OTHER, Stroke.OURS, Stroke.TRUTH).index(curve.stroke)


def _upright(panels: Sequence[Panel]) -> tuple[float, float]:
    return _limits([curve.y for panel in panels for curve in panel.curves], margin=0.06)


def _limits(values: list[np.ndarray], *, margin: float) -> tuple[float, float]:
    every = np.concatenate(values)
    low, high = float(every.min()), float(every.max())
    return low - margin * (high - low), high + margin * (high - low)


def _tick_text(value: float) -> str:
    return f"{value + 0.0:.6g}".replace("-", MINUS)
