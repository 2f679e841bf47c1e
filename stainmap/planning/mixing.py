"""The mixing list: what goes into each jar, what it looks like on chalk, what it serves."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.material import Dye
from stainmap.model.plan import Jar
from stainmap.model.tooth import Unit
from stainmap.model.zone import Zone
from stainmap.planning.dyes import (
    AIM_COLOUR_BLIND,
    colour_word,
    dye_drop_limits,
    lab_of_linear,
    least_differences,
    pair_differences,
    passes_for_result,
    sintered_effects,
)
from stainmap.predict.bench_look import chalk_linear_srgb, jar_linear_srgb
from stainmap.words import listed, translate, value_word

FloatArray = NDArray[np.float64]

JAR_LIFE_HOURS: Final = 8.0
"""After this a mixed jar is thrown away; assumed, the maker's instructions decide."""
MOST_DYE_SHARE: Final = 0.12
"""Drops of dye on a drop of liquid that are usual at most: 3 on 25, common practice."""


@dataclass(frozen=True, slots=True, kw_only=True)
class JarBatch:
    """One jar as it is mixed.

    Parameters
    ----------
    jar, liquid
        The jar of the plan and its liquid's name.
    dyes
        Names and drops of the dyes in it, those with none left out.
    look_linear
        Linear sRGB of what it looks like on chalky ceramic.
    look_word
        The same in a word, for black-and-white paper.
    steps
        Numbers of the steps it serves, from 1.
    units
        Units whose areas those steps paint.
    """

    jar: Jar
    dyes: tuple[tuple[str, int], ...]
    look_linear: tuple[float, float, float]
    look_word: str
    steps: tuple[int, ...]
    units: tuple[Unit, ...]

    @property
    def dilution(self) -> float:
        """Share of liquid among all drops, by which every coat counts less."""
        return self.jar.dilution


@dataclass(frozen=True, slots=True, kw_only=True)
class MixingList:
    """All jars of a tray.

    Parameters
    ----------
    batches
        Jars in the order of the tray.
    least_difference, least_colour_blind
        Smallest dE00 between the looks of two jars, for normal and for simulated colour-blind
        eyes; None with fewer than two jars.
    remarks
        What should be looked at before mixing, each one sentence.
    """

    batches: tuple[JarBatch, ...]
    least_difference: float | None
    least_colour_blind: float | None
    remarks: tuple[str, ...]


def mixing_list(case: Case) -> MixingList:
    """Return what is mixed for a case: jars, drops, looks, what they serve, remarks.

    Raises
    ------
    PlanError, CatalogueError
        If a jar holds a liquid or a dye that the materials do not have.
    """
    dyes = case.materials.dyes
    batches = tuple(_batch(case, jar, dyes) for jar in case.plan.jars)
    looks = np.array([batch.look_linear for batch in batches]).reshape(-1, 3)
    normal, colour_blind = least_differences(looks)
    return MixingList(
        batches=batches,
        least_difference=normal,
        least_colour_blind=colour_blind,
        remarks=_dye_remarks(case, batches)
        + alike_remarks([batch.jar.number for batch in batches], looks),
    )


def _batch(case: Case, jar: Jar, dyes: Sequence[Dye]) -> JarBatch:
    case.materials.liquid(jar.liquid)  # a sentence if it does not exist
    look = jar_linear_srgb(jar, dyes)
    steps = tuple(
        number for number, step in enumerate(case.plan.steps, start=1) if step.jar == jar.number
    )
    names = [dye.name for dye in dyes]
    return JarBatch(
        jar=jar,
        dyes=tuple(
            (name, drops) for name, drops in zip(names, jar.dye_drops, strict=False) if drops
        ),
        look_linear=(float(look[0]), float(look[1]), float(look[2])),
        look_word=colour_word(look),
        steps=steps,
        units=units_painted(case, steps),
    )


def units_painted(case: Case, steps: Sequence[int]) -> tuple[Unit, ...]:
    """Return the units that have a vertex of any area which the steps (from 1) paint."""
    served = np.zeros(len(case.units), dtype=np.bool_)
    unit = np.minimum(case.reading.unit_index, max(len(case.units) - 1, 0))
    for number in steps:
        step = case.plan.steps[number - 1]
        for entry in step.areas:
            mask = (
                case.zones == int(entry.area)
                if isinstance(entry.area, Zone)
                else case.accent(entry.area)
            )
            if mask is not None:
                served[unit[np.asarray(mask) > 0]] = True
        for streaks in step.streaks:
            served[unit[case.zones == int(streaks.area)]] = True
        if step.brushed is not None:
            served[unit[step.brushed.vertices]] = True
    return tuple(one for one, yes in zip(case.units, served, strict=True) if yes)


def _dye_remarks(case: Case, batches: Sequence[JarBatch]) -> tuple[str, ...]:
    remarks = []
    chalk = lab_of_linear(chalk_linear_srgb())
    for batch, effect in zip(batches, sintered_effects(case), strict=True):
        jar = batch.jar
        low, high = dye_drop_limits(jar.liquid_drops)
        drops = sum(jar.dye_drops)
        if not low <= drops <= high:
            remarks.append(
                translate(
                    "mixing",
                    "Jar {number}: {drops} drops of dye on {liquid} of liquid; usual are "
                    "{low} to {high}.",
                ).format(
                    number=jar.number,
                    drops=drops,
                    liquid=jar.liquid_drops,
                    low=low,
                    high=high,
                )
            )
        if drops > MOST_DYE_SHARE * jar.liquid_drops + 1e-9:
            remarks.append(dye_share_remark(jar))
        tint = lab_of_linear(np.array(batch.look_linear)) - chalk
        if drops and passes_for_result(effect, tint):
            remarks.append(
                translate(
                    "mixing",
                    "Jar {number}: its {colour} dye looks like what {liquid} does after sintering.",
                ).format(number=jar.number, colour=value_word(batch.look_word), liquid=jar.liquid)
            )
    return tuple(remarks)


def dye_share_remark(jar: Jar) -> str:
    """Return the sentence about a jar with more dye than is usual."""
    share = sum(jar.dye_drops) / jar.liquid_drops
    return translate(
        "mixing",
        "Jar {number}: {share:.0%} of dye, more than {most:.0%}; it thins "
        "the liquid, and every coat counts {dilution:.0%} (the prediction has it in).",
    ).format(number=jar.number, share=share, most=MOST_DYE_SHARE, dilution=jar.dilution)


def alike_remarks(numbers: Sequence[int], looks: FloatArray) -> tuple[str, ...]:
    """Return a sentence that names the pairs of jars which can be taken for one another."""
    pairs = list(combinations(numbers, 2))
    normal, blind = pair_differences(looks)
    alike = normal < AIM_COLOUR_BLIND
    kinds = (
        (
            translate("mixing", "These jars look alike on chalk: {pairs}. Go by number and hatch."),
            alike,
        ),
        (
            translate(
                "mixing",
                "These jars look alike on chalk to some colour-blind eyes: {pairs}. Go by number"
                " and hatch.",
            ),
            (blind < AIM_COLOUR_BLIND) & ~alike,
        ),
    )
    remarks = []
    for text, mask in kinds:
        names = [
            listed([str(one), str(other)])
            for (one, other), yes in zip(pairs, mask, strict=True)
            if yes
        ]
        if names:
            remarks.append(text.format(pairs=", ".join(names)))
    return tuple(remarks)
