"""Crowns that went wrong in one known way, for exercises in finding what it was."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from stainmap.model.case import Backing, Case, Region
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Area, Zone
from stainmap.practice.exercise import FAULTS, Kind
from stainmap.practice.exercise_plans import COOL, DARK, Row, composed
from stainmap.surface.region import border_distance
from stainmap.words import marked

RING_HALF_MM: Final = 0.55
"""Half the width of the ring that is left bare, sintered; assumed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FaultWords:
    """A fault in words.

    Parameters
    ----------
    cause
        What was done wrong.
    sign
        What is to be seen of it.
    lesson
        How it comes about, and what helps.
    """

    cause: str
    sign: str
    lesson: str


WORDS: Final[dict[Kind, FaultWords]] = {
    Kind.FAULT_WRONG_BLOCK: FaultWords(
        cause=marked("practice", "Another block was milled than the one that was planned"),
        sign=marked(
            "practice",
            "All areas are darker or deeper by about the same step, thick walls as much as thin"
            " ones",
        ),
        lesson=marked(
            "practice",
            "The block is the larger part of the colour: coats sit on top of it. A whole crown"
            " that is off alike, whatever was painted where, was milled from another block. Compare"
            " the lot on the sheet with the blank before the furnace is loaded.",
        ),
    ),
    Kind.FAULT_OVERSTAINED_FISSURE: FaultWords(
        cause=marked("practice", "The fissures got more coats than planned"),
        sign=marked(
            "practice", "Only the grooves are too dark; everything beside them is as planned"
        ),
        lesson=marked(
            "practice",
            "A fissure holds the liquid, and a wet brush fills it again and again. Count the"
            " coats aloud, and take up what stands in the groove with a dry brush.",
        ),
    ),
    Kind.FAULT_WHITE_RING: FaultWords(
        cause=marked("practice", "A strip between two areas was never painted"),
        sign=marked("practice", "A narrow light line runs along the border of neck and body"),
        lesson=marked(
            "practice",
            "Each area was painted up to its border, none over it. Let neighbouring areas meet:"
            " a border is feathered, not left free.",
        ),
    ),
    Kind.FAULT_GREEN_CUSP: FaultWords(
        cause=marked(
            "practice", "The cusps were lowered with a cool liquid instead of the planned one"
        ),
        sign=marked(
            "practice",
            "The cusps are greenish: their a* is below that of the plan, the rest is as planned",
        ),
        lesson=marked(
            "practice",
            "What lowers value also has a hue. On a yellowish block a cool liquid turns green."
            " Take a neutral or a rosier one, or mix the two kinds of coats.",
        ),
    ),
    Kind.FAULT_FAST_CYCLE: FaultWords(
        cause=marked("practice", "It was sintered in a faster programme than planned"),
        sign=marked(
            "practice", "The whole crown is lighter and paler, as if more opaque; nothing is bare"
        ),
        lesson=marked(
            "practice",
            "In a fast cycle grains stay small and pores stay open: light is scattered back"
            " before it has passed the stain. Fire in the programme the plan was made for, or"
            " plan for"
            " the one you have.",
        ),
    ),
    Kind.FAULT_DARK_STUMP: FaultWords(
        cause=marked("practice", "The stump is darker than it was said to be"),
        sign=marked(
            "practice", "The whole crown is darker and greyer, thin walls far more than thick ones"
        ),
        lesson=marked(
            "practice",
            "Zirconia is translucent: what lies behind shows, and most where the wall is"
            " thin."
            " Ask for the shade of the stump, and cover it with an opaque cement or a lighter"
            " block.",
        ),
    ),
}


def went_wrong(case: Case, kind: Kind, chance: np.random.Generator) -> Case:
    """Return a planned case as it was really done, with the one fault of this kind.

    Raises
    ------
    ValueError
        If the kind is no fault.
    """
    if kind is Kind.FAULT_WRONG_BLOCK:
        other = ("deep 5Y", "greyish 5Y")[int(chance.integers(2))]
        return replace(case, plan=replace(case.plan, block=other))
    if kind is Kind.FAULT_OVERSTAINED_FISSURE:
        return _overstained(case, int(chance.integers(3, 5)))
    if kind is Kind.FAULT_WHITE_RING:
        return _with_ring(case)
    if kind is Kind.FAULT_GREEN_CUSP:
        return _greened(case)
    if kind is Kind.FAULT_FAST_CYCLE:
        return replace(case, programme="very fast")
    if kind is Kind.FAULT_DARK_STUMP:
        stump = ("discoloured", "titanium base")[int(chance.integers(2))]
        backings = tuple(
            replace(one, stump=stump) if one.region is Region.STUMP else one
            for one in case.backings
        )
        return replace(case, backings=_stump_first(backings))
    raise ValueError(f"{kind} is no fault")


def _stump_first(backings: tuple[Backing, ...]) -> tuple[Backing, ...]:
    return tuple(sorted(backings, key=lambda one: one.region is not Region.STUMP))


def _overstained(case: Case, more: int) -> Case:
    """Return the case with so many coats more of the dark accent in the fissures."""
    plan = case.plan
    for index, step in enumerate(plan.steps):
        entry = step.entry(Zone.FISSURE)
        if entry is not None and plan.liquid_of(step) == DARK:
            coats = CoatSpan.exactly(entry.coats.high + more)
            plan = plan.with_step(index, step.with_coats(Zone.FISSURE, coats))
    return replace(case, plan=plan)


def _with_ring(case: Case) -> Case:
    """Return the case with a strip along the border of neck and body that belongs to no area."""
    mesh, outer = case.surface.mesh, case.reading.outer
    neck = outer & (case.zones == int(Zone.CERVICAL))
    away = border_distance(mesh, neck, 2.0 * RING_HALF_MM, within=outer)
    ring = outer & (np.abs(away) < RING_HALF_MM)
    zones = np.where(ring, np.uint8(0), case.zones)
    # A ring with soft edges would be no ring.
    steps = tuple(replace(step, edge_softness_mm=0.2) for step in case.plan.steps)
    return replace(case, zones=zones, plan=replace(case.plan, steps=steps))


def _greened(case: Case) -> Case:
    """Return the case with its cusps lowered by the cool liquid instead, and one coat more."""
    rows: list[Row] = []
    for step in case.plan.steps:
        coats: dict[Area, int] = {entry.area: entry.coats.high for entry in step.areas}
        liquid = case.plan.liquid_of(step)
        on_cusps = coats.pop(Zone.CUSP, 0)
        rows.append((liquid, coats))
        if on_cusps:
            rows.append((COOL, {Zone.CUSP: on_cusps + 1}))
    return composed(case, rows)


def choices(chance: np.random.Generator) -> tuple[Kind, ...]:
    """Return all faults in an order by chance, as they are offered."""
    return tuple(FAULTS[int(k)] for k in chance.permutation(len(FAULTS)))
