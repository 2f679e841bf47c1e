"""What should be looked at before jars are mixed: their dye, and what they may be taken for."""

from __future__ import annotations

from itertools import combinations

import numpy as np

from stainmap.model.case import Case
from stainmap.planning.dyes import (
    AIM_COLOUR_BLIND,
    colour_word,
    dye_drop_limits,
    lab_of_linear,
    pair_differences,
    passes_for_result,
    sintered_effects,
)
from stainmap.predict.bench_look import chalk_linear_srgb, jar_linear_srgb
from stainmap.words import translate, value_word

JarWarnings = dict[int, tuple[str, ...]]
"""Sentences by the number of the jar."""


def jar_warnings(case: Case) -> JarWarnings:
    """Return a sentence for everything that is wrong with each jar, by its number.

    Too few or too many drops of dye, a dye that looks like what its liquid does after sintering,
    and jars that look alike on chalk, to all eyes or to colour-blind ones. Jars without any are
    left out.

    Raises
    ------
    CatalogueError
        If a jar holds a liquid that the materials do not have.
    """
    jars, dyes = case.plan.jars, case.materials.dyes
    found: dict[int, list[str]] = {jar.number: [] for jar in jars}
    if not jars:
        return {}
    looks = np.array([jar_linear_srgb(jar, dyes) for jar in jars])
    tints = lab_of_linear(looks) - lab_of_linear(chalk_linear_srgb())
    for jar, look, tint, effect in zip(jars, looks, tints, sintered_effects(case), strict=True):
        low, high = dye_drop_limits(jar.liquid_drops)
        drops = sum(jar.dye_drops)
        if not low <= drops <= high:
            found[jar.number].append(
                translate(
                    "jar warnings",
                    "{drops} drops of dye on {liquid} of liquid; usual are {low} to {high}.",
                ).format(drops=drops, liquid=jar.liquid_drops, low=low, high=high)
            )
        if drops and passes_for_result(effect, tint):
            found[jar.number].append(
                translate(
                    "jar warnings",
                    "Its {colour} dye looks like what {liquid} does after sintering.",
                ).format(colour=value_word(colour_word(look)), liquid=jar.liquid)
            )
    normal, blind = pair_differences(looks)
    for (one, other), seen, by_blind in zip(combinations(jars, 2), normal, blind, strict=True):
        if min(seen, by_blind) >= AIM_COLOUR_BLIND:
            continue
        text = (
            translate("jar warnings", "Looks like jar {number} on chalk; go by number and hatch.")
            if seen < AIM_COLOUR_BLIND
            else translate(
                "jar warnings",
                "Looks like jar {number} on chalk to some colour-blind eyes; go by number and"
                " hatch.",
            )
        )
        for mine, theirs in ((one, other), (other, one)):
            found[mine.number].append(text.format(number=theirs.number))
    return {number: tuple(said) for number, said in found.items() if said}
