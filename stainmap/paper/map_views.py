"""The upper half of a coat map: five directions, the inner surface, silhouettes and a key."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stainmap.model.tooth import Tooth
from stainmap.paper.area_lines import Mark
from stainmap.paper.page import INK, MEDIUM, REGULAR, SOFT, Page
from stainmap.paper.unit_map import UnitMap, draw_mark, draw_silhouette, draw_view
from stainmap.paper.views import FLAT_SIDES, Side
from stainmap.paper.zone_drawing import ZoneDrawing

_GAP_MM, _CAPTION_MM, _ROW_GAP_MM = 4.0, 5.0, 3.5
_NOTE_MM = 4.5
_KEY_MM = 34.0
# The rosette is drawn as large as the views beside it allow, but no larger.
_ROSETTE_MM = 32.0
# Silhouettes are drawn one below the other with this gap.
_SILHOUETTE_GAP_MM = 3.0
_SILHOUETTES = (Side.BUCCAL, Side.MESIAL, Side.OCCLUSAL)

SCALES = (3.0, 2.5, 2.0, 1.5, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MapViews:
    """The views of one unit at one scale.

    Parameters
    ----------
    unit, tooth
        The unit's map and its tooth, for the names of the sides.
    scale
        Printed over milled length.
    rosette
        The outer surface laid flat, seen from above; None if it cannot be.
    """

    unit: UnitMap
    tooth: Tooth
    scale: float
    rosette: UnitMap | None = None

    def fits(self, page: Page) -> bool:
        """Return True if both rows are no wider than the page."""
        walls = sum(self._size(side)[0] for side in FLAT_SIDES) + 3 * _GAP_MM
        above = self._column(page, Side.OCCLUSAL) + self._column(page, Side.INNER) + 2 * _GAP_MM
        above += self._rosette_column(page)
        return max(walls, above + _KEY_MM + self._silhouette_width) <= page.inside

    @property
    def height(self) -> float:
        """Height of both rows with their captions."""
        return self._wall_height + _CAPTION_MM + _ROW_GAP_MM + self._lower_height

    @property
    def _wall_height(self) -> float:
        return max(self._size(side)[1] for side in FLAT_SIDES)

    @property
    def _lower_height(self) -> float:
        below = max(self._size(Side.OCCLUSAL)[1], self._size(Side.INNER)[1]) + _CAPTION_MM
        return max(below, self._silhouette_height)

    @property
    def _silhouette_width(self) -> float:
        return max(self.unit.size_on_paper(side, 1.0)[0] for side in _SILHOUETTES)

    @property
    def _silhouette_height(self) -> float:
        heights = [self.unit.size_on_paper(side, 1.0)[1] for side in _SILHOUETTES]
        return sum(heights) + 2 * _SILHOUETTE_GAP_MM

    def _size(self, side: Side) -> tuple[float, float]:
        return self.unit.size_on_paper(side, self.scale)

    def draw(self, page: Page, y: float) -> None:
        """Draw everything with the upper edge at y."""
        widths = [self._size(side)[0] for side in FLAT_SIDES]
        gap = (page.inside - sum(widths)) / (len(widths) - 1)
        x = page.left
        drawn: dict[Side, ZoneDrawing] = {}
        for side, width in zip(FLAT_SIDES, widths, strict=True):
            top = y + self._wall_height - self._size(side)[1]
            word = self._word(side)
            drawn[side] = draw_view(page, self.unit, side, self.scale, x, top, word)
            x += width + gap
        y += self._wall_height + _CAPTION_MM + _ROW_GAP_MM
        x = page.left
        for side in (Side.OCCLUSAL, Side.INNER):
            width, column = self._size(side)[0], self._column(page, side)
            left = x + 0.5 * (column - width)
            caption = self._caption(side)
            drawn[side] = draw_view(page, self.unit, side, self.scale, left, y, caption)
            x += column + _GAP_MM
            if side is Side.OCCLUSAL and self.rosette is not None:
                column = self._rosette_column(page) - _GAP_MM
                width, scale = self._rosette_size
                left = x + 0.5 * (column - width)
                draw_view(page, self.rosette, Side.OCCLUSAL, scale, left, y, self._rosette_caption)
                x += column + _GAP_MM
        self._draw_silhouettes(page, drawn, page.right, y)
        self._draw_notes(page, x + 2.0, y)

    def _caption(self, side: Side) -> str:
        known = self.unit.directions.sides_known
        return self._word(side) + (f", {self._word(Side.BUCCAL)} below" if known else "")

    def _column(self, page: Page, side: Side) -> float:
        """Return the width of a view of the lower row or of its caption, whichever is wider."""
        return max(self._size(side)[0], page.text_width(self._caption(side), 8.0, MEDIUM))

    @property
    def _rosette_caption(self) -> str:
        facial = self._word(Side.BUCCAL)
        if self.tooth.is_front:
            return f"laid flat, {facial} below"
        return f"rosette, {facial} below" if self.unit.directions.sides_known else "rosette"

    @property
    def _rosette_size(self) -> tuple[float, float]:
        """Return width in mm and scale of the rosette: areas are true to each other, not to 1."""
        if self.rosette is None:
            return 0.0, 1.0
        width, height = self.rosette.size_on_paper(Side.OCCLUSAL, 1.0)
        tallest = max(self._size(Side.OCCLUSAL)[1], self._size(Side.INNER)[1])
        scale = min(_ROSETTE_MM / width, tallest / height)
        return width * scale, scale

    def _rosette_column(self, page: Page) -> float:
        """Return the width of the rosette or its caption, with the gap after it; 0 without one."""
        if self.rosette is None:
            return 0.0
        caption = page.text_width(self._rosette_caption, 8.0, MEDIUM)
        return max(self._rosette_size[0], caption) + _GAP_MM

    def _draw_notes(self, page: Page, x: float, y: float) -> None:
        """Say how large the map is and what its lines mean."""
        length, width, height = self.unit.milled_size_mm
        lines = [
            (f"{self.scale:g}:1 in milled size", MEDIUM),
            (f"enlargement {self.unit.enlargement:.3f}", REGULAR),
            (f"{length:.1f} x {width:.1f} x {height:.1f} mm", REGULAR),
            ("silhouettes 1:1", REGULAR),
        ]
        if self.rosette is not None:
            lines.append(("laid flat: not to scale", REGULAR))
        if not self.unit.directions.sides_known:
            lines.append(("mesial not set: sides not told apart", MEDIUM))
        for index, (text, face) in enumerate(lines):
            grey = INK if face is MEDIUM else SOFT
            page.text(x, y + 3.0 + 3.6 * index, text, 7.5, face=face, grey=grey)
        _draw_key(page, x, y + 3.0 + 3.6 * len(lines) + 2.6, with_streaks=self._has_streaks)

    @property
    def _has_streaks(self) -> bool:
        return any(line.mark is Mark.STREAK for line in self.unit.lines)

    def _word(self, side: Side) -> str:
        return self.unit.directions.word(side, self.tooth)

    def _draw_silhouettes(
        self, page: Page, drawn: dict[Side, ZoneDrawing], right: float, y: float
    ) -> None:
        middle = right - self._silhouette_width / 2
        for side in _SILHOUETTES:
            height = self.unit.size_on_paper(side, 1.0)[1]
            draw_silhouette(page, drawn[side], self.scale, middle, y + height / 2)
            y += height + _SILHOUETTE_GAP_MM


def _draw_key(page: Page, x: float, y: float, *, with_streaks: bool) -> None:
    """Explain the lines of the map."""
    samples = [
        (Mark.BORDER, "border of a zone"),
        (Mark.ACCENT, "accent on top"),
        (Mark.CONTOUR, "one coat more"),
    ]
    if with_streaks:
        samples.append((Mark.STREAK, "streak of the brush"))
    for index, (mark, words) in enumerate(samples):
        middle = y + 5.2 * index - 1.0
        draw_mark(page, mark, np.array([[x, middle], [x + 6.0, middle]]))
        page.text(x + 7.5, middle + 1.0, words, 7.5, grey=SOFT)


_BRIDGE_SIDES = (Side.BUCCAL, Side.LINGUAL, Side.OCCLUSAL, Side.INNER)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BridgeViews:
    """A whole bridge from four sides, below one another or two by two."""

    unit: UnitMap
    tooth: Tooth
    scale: float
    columns: int

    @classmethod
    def fitting(cls, page: Page, unit: UnitMap, tooth: Tooth, room_mm: float) -> BridgeViews:
        """Return the views at the largest scale that fits the page and `room_mm` of height."""
        options = [
            cls(unit=unit, tooth=tooth, scale=scale, columns=columns)
            for scale in (*SCALES, 0.75, 0.5)
            for columns in (1, 2)
        ]
        return next(
            (one for one in options if one.width <= page.inside and one.height <= room_mm),
            options[-1],
        )

    def _rows(self) -> list[tuple[Side, ...]]:
        sides = _BRIDGE_SIDES
        return [sides[i : i + self.columns] for i in range(0, len(sides), self.columns)]

    def _size(self, side: Side) -> tuple[float, float]:
        return self.unit.size_on_paper(side, self.scale)

    @property
    def width(self) -> float:
        """Width of the widest row."""
        return max(
            sum(self._size(side)[0] for side in row) + (len(row) - 1) * _GAP_MM
            for row in self._rows()
        )

    @property
    def height(self) -> float:
        """Height of all rows with captions, and of the note."""
        rows = [max(self._size(side)[1] for side in row) for row in self._rows()]
        return sum(rows) + len(rows) * (_CAPTION_MM + _ROW_GAP_MM) + _NOTE_MM

    def draw(self, page: Page, y: float) -> None:
        """Draw everything with the upper edge at y."""
        for row in self._rows():
            x = page.left
            height = max(self._size(side)[1] for side in row)
            for side in row:
                word = self.unit.directions.word(side, self.tooth)
                top = y + height - self._size(side)[1]
                draw_view(page, self.unit, side, self.scale, x, top, word)
                x += self._size(side)[0] + _GAP_MM
            y += height + _CAPTION_MM + _ROW_GAP_MM
        note = f"{self.scale:g}:1 in milled size, enlargement {self.unit.enlargement:.3f}."
        page.text(page.left, y, note, 7.5, grey=SOFT)
