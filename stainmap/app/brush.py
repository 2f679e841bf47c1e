"""What the brush does to a draft while it moves; on release the draft becomes one new case."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.plan import MAX_COATS, BrushedCoats
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.words import translate


class Tool(StrEnum):
    """What the pointer does to the surface."""

    BRUSH = "brush"
    ERASER = "eraser"
    FILL = "fill"
    LINE = "line"

    @property
    def takes_a_place(self) -> bool:
        """True if it works on a place that is clicked, not along a stroke of the hand."""
        return self in (Tool.FILL, Tool.LINE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Brush:
    """A tool with its size, and what it works on.

    With `step` None it paints the zone or accent `area`; with a step index it adds coats of
    that step. The eraser gives a zone back its proposed label, takes away from an accent, and
    removes brushed coats only. Zones stay on their side of the margin unless `moves_margin`:
    then painting the inner surface outside, or an outer zone inside, corrects where it runs.
    Fill and line put on what the brush would, see `stainmap.app.tool_strokes`.
    """

    tool: Tool = Tool.BRUSH
    area: Area = Zone.BODY
    step: int | None = None
    radius_mm: float = 0.6
    softness: float = 0.5
    strength_coats: float = 1.0
    moves_margin: bool = False

    def __post_init__(self) -> None:
        """Refuse brushes that no hand could hold."""
        if not 0.1 <= self.radius_mm <= 3.0 or not 0.0 <= self.softness <= 1.0:
            raise PlanError(
                translate("brush", "A brush has a radius of 0.1 to 3 mm and a softness of 0 to 1.")
            )
        if not 0.0 < self.strength_coats <= MAX_COATS:
            raise PlanError(
                translate("brush", "A brush puts on more than 0 and at most {most} coats.").format(
                    most=MAX_COATS
                )
            )

    def describe(self, case: Case) -> str:
        """Return the line beside the tool that says what it does."""
        front = case.units[0].tooth.is_front
        if self.step is not None and self.step < len(case.plan.steps):
            liquid = case.plan.liquid_of(case.plan.steps[self.step])
            if self.tool is Tool.ERASER:
                return translate("brush", "removes brushed {liquid} of step {step}").format(
                    liquid=liquid, step=self.step + 1
                )
            texts = {
                Tool.BRUSH: translate("brush", "adds to step {step}, {liquid}"),
                Tool.FILL: translate("brush", "fills up to creases: step {step}, {liquid}"),
                Tool.LINE: translate("brush", "line along a crease: step {step}, {liquid}"),
            }
            return texts[self.tool].format(step=self.step + 1, liquid=liquid)
        name = area_label(self.area, front=front)
        if self.tool is Tool.ERASER:
            return (
                translate("brush", "gives back the proposal")
                if isinstance(self.area, Zone)
                else translate("brush", "takes away from {area}").format(area=name)
            )
        texts = {
            Tool.BRUSH: translate("brush", "paints {area}"),
            Tool.FILL: translate("brush", "fills up to creases: {area}"),
            Tool.LINE: translate("brush", "line along a crease: {area}"),
        }
        return texts[self.tool].format(area=name)


@dataclass(slots=True, kw_only=True)
class Stroke:
    """A stroke on its way. `reach` is how fully each vertex has been covered so far, 0 to 1.

    Covering a place twice within one stroke counts once, as a wet brush going back and forth.
    """

    case: Case
    brush: Brush
    reach: NDArray[np.float32]
    zones: NDArray[np.uint8]
    accent: NDArray[np.float32] | None = None
    brushed: NDArray[np.float32] | None = None
    touched: NDArray[np.bool_] = field(init=False)

    def __post_init__(self) -> None:
        """Start with nothing touched."""
        self.touched = np.zeros(len(self.zones), bool)

    @classmethod
    def begun(cls, case: Case, brush: Brush) -> Stroke:
        """Return a new stroke on drafts of the arrays that the brush changes."""
        count = len(case.zones)
        stroke = cls(
            case=case, brush=brush, reach=np.zeros(count, np.float32), zones=case.zones.copy()
        )
        if brush.step is not None:
            if not 0 <= brush.step < len(case.plan.steps):
                raise PlanError(
                    translate("brush", "The brush belongs to a step that is not in the plan.")
                )
            stroke.brushed = np.zeros(count, np.float32)
            already = case.plan.steps[brush.step].brushed
            if already is not None:
                stroke.brushed[already.vertices] = already.coats
        elif isinstance(brush.area, Accent):
            share = case.accent(brush.area)
            stroke.accent = np.zeros(count, np.float32) if share is None else share.copy()
        return stroke

    def dab(self, vertices: NDArray[np.int32], weight: NDArray[np.float32]) -> NDArray[np.int32]:
        """Press the brush once: `vertices` (k,) with `weight` (k,) 0 to 1; return what changed."""
        on_right_side = self._allowed(vertices)
        vertices, weight = vertices[on_right_side], weight[on_right_side]
        more = weight > self.reach[vertices]
        vertices, weight = vertices[more], weight[more]
        self.reach[vertices] = weight
        self.touched[vertices] = True
        if self.brushed is not None and self.brush.step is not None:
            self._dab_coats(self.brushed, self.brush.step, vertices, weight)
        elif self.accent is not None and isinstance(self.brush.area, Accent):
            self._dab_accent(self.accent, self.brush.area, vertices, weight)
        else:
            self._dab_zone(vertices, weight)
        return vertices

    def _allowed(self, vertices: NDArray[np.int32]) -> NDArray[np.bool_]:
        """Zones and accents stay on their side of the rim; coats go wherever the brush goes."""
        free = self.brush.moves_margin and isinstance(self.brush.area, Zone)
        if self.brush.step is not None or free:
            return np.ones(len(vertices), bool)
        inside = self.brush.area in (Zone.INNER, Accent.INNER_NECK_BAND)
        outer = self.case.reading.outer[vertices]
        return ~outer if inside else outer

    def _dab_coats(
        self,
        draft: NDArray[np.float32],
        step: int,
        vertices: NDArray[np.int32],
        weight: NDArray[np.float32],
    ) -> None:
        already = self.case.plan.steps[step].brushed
        before = np.zeros(len(vertices), np.float32) if already is None else already.at(vertices)
        if self.brush.tool is Tool.ERASER:
            draft[vertices] = before * (1.0 - weight)
        else:
            draft[vertices] = np.minimum(before + weight * self.brush.strength_coats, MAX_COATS)

    def _dab_accent(
        self,
        draft: NDArray[np.float32],
        accent: Accent,
        vertices: NDArray[np.int32],
        weight: NDArray[np.float32],
    ) -> None:
        old = self.case.accent(accent)
        before = np.zeros(len(vertices), np.float32) if old is None else old[vertices]
        if self.brush.tool is Tool.ERASER:
            draft[vertices] = np.minimum(before, 1.0 - weight)
        else:
            draft[vertices] = np.maximum(before, weight)

    def _dab_zone(self, vertices: NDArray[np.int32], weight: NDArray[np.float32]) -> None:
        inside = vertices[weight >= 0.5]
        if self.brush.tool is Tool.ERASER:
            if not self.brush.moves_margin:
                # Where the margin was moved by hand, the proposal lies on the other side of it.
                proposed_outer = self.case.proposal[inside] != int(Zone.INNER)
                inside = inside[proposed_outer == self.case.reading.outer[inside]]
            self.zones[inside] = self.case.proposal[inside]
        else:
            self.zones[inside] = int(self.brush.area)

    def result(self) -> Case:
        """Return the case with the stroke in it; the same case if nothing was touched."""
        if not self.touched.any():
            return self.case
        if self.brushed is not None and self.brush.step is not None:
            step = self.case.plan.steps[self.brush.step]
            step = replace(step, brushed=BrushedCoats.from_dense(self.brushed))
            return replace(self.case, plan=self.case.plan.with_step(self.brush.step, step))
        if self.accent is not None and isinstance(self.brush.area, Accent):
            return self.case.with_accent(self.brush.area, self.accent)
        return self._with_zones()

    def drawn(self) -> Case:
        """Return the case with the accent as far as it has been drawn; the stroke goes on."""
        if self.accent is None or not isinstance(self.brush.area, Accent):
            return self.case
        # A case makes its arrays read-only; the draft is still drawn on.
        return self.case.with_accent(self.brush.area, self.accent.copy())

    def _with_zones(self) -> Case:
        """Return the case with the draft zones; where the margin was moved, so is the reading."""
        outer = self.zones != int(Zone.INNER)
        reading = self.case.reading
        if self.brush.moves_margin and not np.array_equal(outer, reading.outer):
            reading = replace(
                reading,
                outer=outer,
                rim=reading.rim & ~outer,
                set_by_user=reading.set_by_user | {"inner_surface"},
            )
        return replace(self.case, zones=self.zones, reading=reading)

    @property
    def label(self) -> str:
        """Name of the edit in the history."""
        return self.brush.describe(self.case)
