"""What the bench shows before sintering: chalky ceramic, and the indicator dyes of the jars.

The dyes are organic and burn off; none of this says anything about the colour after sintering.
All numbers are invented, for demonstration. Colours are linear sRGB, 0 to 1.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.errors import PlanError
from stainmap.model.material import Dye
from stainmap.model.plan import Jar, StainPlan
from stainmap.model.process import UptakeRule
from stainmap.optics.colorimetry import lab_to_linear_srgb
from stainmap.predict.uptake import added_by_step
from stainmap.words import translate

CHALK_LAB: Final = (90.5, 0.1, 4.2)
"""Presintered ceramic, D65; invented."""

SWATCH_COATS: Final = 2.0
"""Coats of a jar's liquid in the swatch that stands for the jar on screen and paper."""

_USUAL_DROPS: Final = 25.0


def chalk_linear_srgb() -> NDArray[np.float64]:
    """Return the colour of untouched chalky ceramic, (3,) linear sRGB."""
    return np.clip(lab_to_linear_srgb(CHALK_LAB), 0.0, 1.0)


def dye_absorption_rgb(jar: Jar, dyes: Sequence[Dye]) -> NDArray[np.float64]:
    """Return what a jar's dyes absorb at full load, (3,) for linear R, G, B.

    Raises
    ------
    PlanError
        If the jar holds drops of a dye that the catalogue does not have.
    """
    if any(drops > 0 for drops in jar.dye_drops[len(dyes) :]):
        raise PlanError(
            translate(
                "bench look", "Jar {number} holds a dye that the materials do not have."
            ).format(number=jar.number),
            advice=translate(
                "bench look", "Add the dye to the materials, or mix the jar without it."
            ),
        )
    absorption = np.zeros(3)
    for drops, dye in zip(jar.dye_drops, dyes, strict=False):
        absorption += drops * _USUAL_DROPS / jar.liquid_drops * np.array(dye.absorption_rgb)
    return absorption


def jar_linear_srgb(
    jar: Jar, dyes: Sequence[Dye], *, coats: float = SWATCH_COATS, rule: UptakeRule | None = None
) -> NDArray[np.float64]:
    """Return what `coats` of a jar look like on chalky ceramic, (3,) linear sRGB."""
    added = added_by_step(
        [[coats]], [0], [jar.dilution], liquid_count=1, rule=UptakeRule() if rule is None else rule
    )
    tint = np.exp(-added[0, 0] * dye_absorption_rgb(jar, dyes))
    return np.asarray(chalk_linear_srgb() * tint, dtype=np.float64)


def bench_linear_srgb(
    plan: StainPlan,
    coats: ArrayLike,
    dyes: Sequence[Dye],
    *,
    rule: UptakeRule | None = None,
) -> NDArray[np.float64]:
    """Return what the painted, unsintered crown looks like, (V, 3) linear sRGB.

    Every step leaves its dye where it leaves its liquid: what later steps add less for want of
    room, they also tint less. To see the crown in the middle of painting, give the coats so far.

    Parameters
    ----------
    plan
        Jars and steps.
    coats
        (S, V) coats of each step.
    dyes
        The catalogue's dyes, in the order of the jars' drops.
    rule
        How coats become load; the assumed one if None.
    """
    liquids = list(dict.fromkeys(jar.liquid for jar in plan.jars))
    jars = [plan.jar(step.jar) for step in plan.steps]
    added = added_by_step(
        coats,
        [liquids.index(jar.liquid) for jar in jars],
        [jar.dilution for jar in jars],
        liquid_count=len(liquids),
        rule=UptakeRule() if rule is None else rule,
    )
    absorption = np.array([dye_absorption_rgb(jar, dyes) for jar in jars]).reshape(-1, 3)
    return np.asarray(chalk_linear_srgb() * np.exp(-(added.T @ absorption)), dtype=np.float64)
