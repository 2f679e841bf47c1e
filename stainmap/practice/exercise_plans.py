"""Plans that exercises are made from: sound ones by chance, within the usual limits and order.

An exercise of planning is made backwards: a sound plan is drawn, what it gives becomes what is
wanted. So what is wanted can be reached, and by more plans than that one.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

import numpy as np

from stainmap.model.case import Case
from stainmap.model.colour import Colour, Measurement
from stainmap.model.plan import CoatSpan, Jar, StainPlan, Step
from stainmap.model.target import AreaShade, Target
from stainmap.model.zone import Accent, Area, Zone
from stainmap.planning.dyes import recommended_dyes
from stainmap.practice.exercise_crown import zones_asked
from stainmap.practice.looking import Looked

Coats = Mapping[Area, int]
Row = tuple[str, Coats]

BASES: Final = (("barley", 2), ("tan", 1), ("tan", 2), ("clay", 1), ("clay", 2), ("stone", 2))
"""Bases, and coats of them on the body that are seen at a glance."""
LOWERING: Final = ("ash", "heather")
BRIGHT: Final = "amber"
DARK: Final = "umber"
COOL: Final = "slate"
"""Of the liquids that lower value the one that takes a* down, and so greens cusps."""


def composed(
    case: Case, rows: Sequence[Row], *, block: str = "", more_jars: Sequence[str] = ()
) -> Case:
    """Return the case with a plan of these steps, jars numbered in their order, dyes chosen.

    Parameters
    ----------
    rows
        Liquid and coats per area of every step, in painting order. Areas the crown lacks are left
        out, and so are steps without any.
    block
        Name of the block; the case's own if empty.
    more_jars
        Liquids that stand on the tray and are not used.
    """
    present = set(zones_asked(case)) | {Zone.INNER} | {mask.accent for mask in case.accents}
    kept: list[Row] = []
    for liquid, coats in rows:
        here = {area: count for area, count in coats.items() if area in present and count > 0}
        if here:
            kept.append((liquid, here))
    names = list(dict.fromkeys([*(liquid for liquid, _ in kept), *more_jars]))
    jars = tuple(Jar(number=number, liquid=name) for number, name in enumerate(names, start=1))
    steps = []
    for liquid, coats in kept:
        step = Step(jar=names.index(liquid) + 1)
        for area, count in coats.items():
            step = step.with_coats(area, CoatSpan.exactly(count))
        steps.append(step)
    plan = StainPlan(block=block or case.plan.block, jars=jars, steps=tuple(steps))
    planned = replace(case, plan=plan)
    dyed = tuple(
        replace(jar, dye_drops=drops)
        for jar, drops in zip(jars, recommended_dyes(planned), strict=True)
    )
    return replace(case, plan=replace(plan, jars=dyed))


def base_of(chance: np.random.Generator) -> tuple[str, int]:
    """Return a base, and how many coats of it the body gets."""
    return BASES[int(chance.integers(len(BASES)))]


def sound_rows(chance: np.random.Generator, level: int, lowering: str = "") -> list[Row]:
    """Return the steps of a sound plan for a whole crown; more accents at higher levels.

    Parameters
    ----------
    lowering
        What lowers the value of the cusps; one by chance if empty.
    """
    base, on_body = base_of(chance)
    drawn = LOWERING[int(chance.integers(len(LOWERING)))]
    on_cusps, on_fissures = int(chance.integers(2, 4)), int(chance.integers(1, 3))
    lowers: dict[Area, int] = {Zone.CUSP: on_cusps}
    darkens: dict[Area, int] = {Zone.FISSURE: on_fissures}
    if level >= 2:
        lowers[Zone.INTERPROXIMAL] = 1
    if level >= 3:
        darkens[Accent.MARGIN_BAND] = 1
    neck: dict[Area, int] = {
        Zone.CERVICAL: 2,
        Zone.BODY: on_body,
        Zone.INTERPROXIMAL: 2,
        Zone.FISSURE: 1,
    }
    return [
        (base, neck),
        (BRIGHT, {Zone.CERVICAL: 1, Zone.FISSURE: 1}),
        (lowering or drawn, lowers),
        (DARK, darkens),
    ]


def few_rows(chance: np.random.Generator, level: int) -> list[Row]:
    """Return the steps of a plan that does with two jars at level 1, with three from there on."""
    base, on_body = base_of(chance)
    lowering = LOWERING[int(chance.integers(len(LOWERING)))]
    rows: list[Row] = [
        (
            base,
            {
                Zone.CERVICAL: on_body + 1,
                Zone.BODY: on_body,
                Zone.INTERPROXIMAL: 2,
                Zone.FISSURE: 2,
            },
        ),
        (lowering, {Zone.CUSP: int(chance.integers(2, 4))}),
    ]
    if level >= 2:
        rows.append((DARK, {Zone.FISSURE: int(chance.integers(1, 3))}))
    return rows


def wanting(case: Case, looked: Looked, areas: Sequence[Area]) -> Case:
    """Return the case wanting of its areas what was looked at, to a tenth of L*, a*, b*."""
    how = Measurement(backing=case.backings[0].stump)

    def colour(area: Area) -> Colour:
        lightness, a, b = (round(value, 1) for value in looked.areas[area])
        return Colour(lightness=lightness, a=a, b=b, measurement=how)

    held = tuple(
        AreaShade(area=area, colour=colour(area))
        for area in areas
        if area is not Zone.BODY and area in looked.areas
    )
    target = Target(body=colour(Zone.BODY), name="invented", offsets=(), held=held)
    return replace(case, target=target)
