"""The stain plan: jars, and steps in the order they are painted."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.zone import Area, Zone
from stainmap.words import translate

MAX_COATS = 12
MAX_STEPS = 24
# Less than a thousandth of a coat is no coat.
_LEAST_BRUSHED = 1e-3


@dataclass(frozen=True, slots=True, kw_only=True)
class CoatSpan:
    """A whole number of coats, or a span such as 2-3 that is predicted at both ends."""

    low: int
    high: int

    def __post_init__(self) -> None:
        """Refuse negative, reversed or absurd counts."""
        if not 0 <= self.low <= self.high <= MAX_COATS:
            raise PlanError(
                translate("plan", "{low}-{high} is not a number of coats.").format(
                    low=self.low, high=self.high
                ),
                advice=translate(
                    "plan", "Give 0 to {max_coats}, or a span with the smaller number first."
                ).format(max_coats=MAX_COATS),
            )

    @classmethod
    def exactly(cls, coats: int) -> CoatSpan:
        """Return the span that is one whole number."""
        return cls(low=coats, high=coats)

    @classmethod
    def parse(cls, text: str) -> CoatSpan:
        """Read "3" or "2-3" (hyphen or dash); raise PlanError for anything else."""
        parts = text.strip().replace("\N{EN DASH}", "-").split("-")
        if not 1 <= len(parts) <= 2 or not all(p.strip().isdecimal() for p in parts):
            raise PlanError(
                translate("plan", "'{text}' is not a number of coats.").format(text=text),
                advice=translate("plan", "Type 3, or a span such as 2-3."),
            )
        return cls(low=int(parts[0]), high=int(parts[-1]))

    @property
    def is_span(self) -> bool:
        """True if the two ends differ."""
        return self.low != self.high

    def __str__(self) -> str:
        """Return "3" or "2-3"."""
        return f"{self.low}-{self.high}" if self.is_span else str(self.low)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fade:
    """Full coats down to `full_down_to_mm` below the tip or ridge, none from `zero_at_mm` on.

    Lengths are sintered millimetres.
    """

    full_down_to_mm: float
    zero_at_mm: float

    def __post_init__(self) -> None:
        """Refuse fades that end before they begin."""
        if not 0.0 <= self.full_down_to_mm < self.zero_at_mm:
            raise PlanError(
                translate(
                    "plan", "A fade from {full_down_to_mm} to {zero_at_mm} mm has no length."
                ).format(full_down_to_mm=self.full_down_to_mm, zero_at_mm=self.zero_at_mm),
                advice=translate("plan", "The second length must be the larger one."),
            )


# Common practice, no published source. On whole crowns the cusp zone comes down 2.5 to 3.5 mm from
# the tips: a fade that ends higher leaves a bare strip above the coats of the body.
CUSP_FADE = Fade(full_down_to_mm=1.0, zero_at_mm=3.5)


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaCoats:
    """What one step puts on one area; what is `locked` stays when coats are suggested."""

    area: Area
    coats: CoatSpan
    fade: Fade | None = None
    locked: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Streaks:
    """A few tapered strokes that carry a step's coat from `area` into what lies beyond it.

    `direction` is +1 towards the margin, -1 towards the occlusal; length in sintered mm.
    """

    area: Zone
    count: int
    length_mm: float
    coats: int
    direction: int = 1

    def __post_init__(self) -> None:
        """Refuse streaks that a brush cannot make."""
        if not 3 <= self.count <= 7 or not 2.0 <= self.length_mm <= 4.0:
            raise PlanError(
                translate("plan", "{count} streaks of {length_mm} mm are not streaks.").format(
                    count=self.count, length_mm=self.length_mm
                ),
                advice=translate("plan", "Give 3 to 7 strokes of 2 to 4 mm."),
            )
        if self.direction not in (1, -1) or not 1 <= self.coats <= MAX_COATS:
            raise PlanError(
                translate(
                    "plan",
                    "A streak runs towards the margin or away from it, with at least one coat.",
                )
            )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BrushedCoats:
    """Extra coats put on by hand: sparse, per vertex of the refined surface."""

    vertices: NDArray[np.int32]
    coats: NDArray[np.float32]

    def __post_init__(self) -> None:
        """Refuse unequal lengths; make the arrays read-only."""
        if self.vertices.shape != self.coats.shape or self.vertices.ndim != 1:
            raise PlanError(translate("plan", "Brushed coats need one number per vertex."))
        if len(self.vertices) > 1 and not (np.diff(self.vertices) > 0).all():
            raise PlanError(
                translate("plan", "Brushed coats must name their vertices in rising order.")
            )
        self.vertices.flags.writeable = False
        self.coats.flags.writeable = False

    @classmethod
    def from_dense(cls, coats: NDArray[np.float32]) -> BrushedCoats | None:
        """Return the vertices that carry coats, of (V,) coats, or None if none does."""
        vertices = np.flatnonzero(coats > _LEAST_BRUSHED).astype(np.int32)
        if len(vertices) == 0:
            return None
        return cls(vertices=vertices, coats=coats[vertices].astype(np.float32))

    def at(self, vertices: NDArray[np.int32]) -> NDArray[np.float32]:
        """Return the coats at some vertices, (k,) float32; 0 where none were brushed."""
        if len(self.vertices) == 0:
            return np.zeros(len(vertices), np.float32)
        place = np.minimum(np.searchsorted(self.vertices, vertices), len(self.vertices) - 1)
        found = self.vertices[place] == vertices
        return np.where(found, self.coats[place], np.float32(0.0))


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One step of the plan: a jar, brushed onto some areas.

    `edge_softness_mm` is the 10-90 % width of the feathered border, sintered.
    """

    jar: int
    areas: tuple[AreaCoats, ...] = ()
    edge_softness_mm: float = 0.6
    streaks: tuple[Streaks, ...] = ()
    brushed: BrushedCoats | None = None

    def __post_init__(self) -> None:
        """Refuse an area named twice and softness out of range."""
        areas = [entry.area for entry in self.areas]
        if len(set(areas)) != len(areas):
            raise PlanError(translate("plan", "An area appears twice in one step."))
        if not 0.0 <= self.edge_softness_mm <= 3.0:
            raise PlanError(
                translate(
                    "plan", "An edge softness of {edge_softness_mm} mm is out of range (0 to 3)."
                ).format(edge_softness_mm=self.edge_softness_mm)
            )

    def entry(self, area: Area) -> AreaCoats | None:
        """Return what the step puts on `area`, or None."""
        return next((entry for entry in self.areas if entry.area == area), None)

    def with_coats(self, area: Area, coats: CoatSpan | None) -> Step:
        """Return the step with other coats on `area`; None or zero clears it.

        A new entry on the cusp zone fades with height by default, so the slope stays clean.
        """
        kept = tuple(entry for entry in self.areas if entry.area != area)
        if coats is None or coats.high == 0:
            return replace(self, areas=kept)
        old = self.entry(area)
        fade = old.fade if old is not None else CUSP_FADE if area == Zone.CUSP else None
        locked = old is not None and old.locked
        entries = (*kept, AreaCoats(area=area, coats=coats, fade=fade, locked=locked))
        return replace(self, areas=tuple(sorted(entries, key=lambda entry: int(entry.area))))

    def with_locked(self, area: Area, *, locked: bool) -> Step:
        """Return the step with its coats on `area` locked, or free again."""
        areas = tuple(
            replace(entry, locked=locked) if entry.area == area else entry for entry in self.areas
        )
        return replace(self, areas=areas)


@dataclass(frozen=True, slots=True, kw_only=True)
class Jar:
    """A jar on the bench: liquid, drops of it, drops of the three indicator dyes, lot."""

    number: int
    liquid: str
    liquid_drops: int = 25
    dye_drops: tuple[int, int, int] = (0, 0, 0)
    lot: str = ""

    def __post_init__(self) -> None:
        """Refuse an empty jar and negative drops."""
        if self.number < 1 or self.liquid_drops < 1 or min(self.dye_drops) < 0:
            raise PlanError(
                translate(
                    "plan", "Jar {number} has no liquid or a negative number of drops."
                ).format(number=self.number)
            )

    @property
    def dilution(self) -> float:
        """Share of liquid among all drops, by which every coat counts less."""
        return self.liquid_drops / (self.liquid_drops + sum(self.dye_drops))


@dataclass(frozen=True, slots=True, kw_only=True)
class StainPlan:
    """Block, jars and steps in painting order. Lengths are sintered millimetres."""

    block: str
    jars: tuple[Jar, ...] = ()
    steps: tuple[Step, ...] = ()
    nesting_height_mm: float = 0.0

    def __post_init__(self) -> None:
        """Refuse doubled jars, steps from unknown jars, too many steps."""
        numbers = [jar.number for jar in self.jars]
        if len(set(numbers)) != len(numbers):
            raise PlanError(translate("plan", "Two jars have the same number."))
        missing = [step.jar for step in self.steps if step.jar not in numbers]
        if missing:
            raise PlanError(
                translate("plan", "A step uses jar {missing}, which is not on the tray.").format(
                    missing=missing[0]
                )
            )
        if len(self.steps) > MAX_STEPS:
            raise PlanError(
                translate("plan", "A plan has at most {max_steps} steps.").format(
                    max_steps=MAX_STEPS
                )
            )

    def jar(self, number: int) -> Jar:
        """Return the jar with this number; raise PlanError if there is none."""
        for jar in self.jars:
            if jar.number == number:
                return jar
        raise PlanError(
            translate("plan", "There is no jar {number} on the tray.").format(number=number)
        )

    def liquid_of(self, step: Step) -> str:
        """Return the name of the liquid a step uses."""
        return self.jar(step.jar).liquid

    def with_step(self, index: int, step: Step) -> StainPlan:
        """Return the plan with step `index` (from 0) replaced."""
        steps = list(self.steps)
        steps[index] = step
        return replace(self, steps=tuple(steps))

    def without_step(self, index: int) -> StainPlan:
        """Return the plan without step `index` (from 0)."""
        return replace(self, steps=self.steps[:index] + self.steps[index + 1 :])

    def moved_step(self, index: int, to: int) -> StainPlan:
        """Return the plan with step `index` moved to position `to`."""
        steps = list(self.steps)
        steps.insert(to, steps.pop(index))
        return replace(self, steps=tuple(steps))
