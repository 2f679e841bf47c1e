"""How much liquid a plan takes out of each jar, and how large a jar has to be. Estimates.

Area in milled size times the film that a coat takes (`JarAmounts`, assumed until calibrated),
summed over the coats as they lie on the surface, feathering and fades included, at the upper end of
spans. A jar's drops can be multiplied only together, or the dye would dilute otherwise than
predicted: the smallest jar has the same ratios in the fewest whole drops, and every other one is a
multiple of it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.plan import Jar
from stainmap.model.process import JarAmounts
from stainmap.model.tooth import Unit
from stainmap.words import marked, translate

USUAL_JAR_DROPS: Final = 25
"""Drops of liquid in the usual jar; common practice, no published source."""
ESTIMATE: Final = marked(
    "batch size",
    "Estimate: area in milled size times the film that a coat takes, which is assumed until"
    " somebody has measured it.",
)
_MOST_UNITS = 99
# Whole drops that fit but for the rounding of a sum.
_ROUNDING_DROPS = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class JarNeed:
    """What one case takes out of one of its jars.

    Parameters
    ----------
    jar
        As the plan has it.
    units
        The case's units, all of them.
    unit_ml
        What each of them takes, mL, liquid and dye together.
    step_ml
        Number of each step that uses the jar, from 1, and what it takes, mL.
    amounts
        What the estimate takes for granted.
    """

    jar: Jar
    units: tuple[Unit, ...]
    unit_ml: tuple[float, ...]
    step_ml: tuple[tuple[int, float], ...]
    amounts: JarAmounts

    @property
    def ml(self) -> float:
        """What the case takes, mL."""
        return math.fsum(self.unit_ml)

    @property
    def drops(self) -> float:
        """What the case takes, in drops of the laboratory's pipette; not whole."""
        return self.ml * self.amounts.drops_per_ml

    @property
    def painted_units(self) -> tuple[Unit, ...]:
        """Units that take anything."""
        return tuple(u for u, ml in zip(self.units, self.unit_ml, strict=True) if ml > 0.0)


def jar_needs(case: Case, coats: NDArray[np.float32]) -> tuple[JarNeed, ...]:
    """Return what a case takes out of each of its jars, in their order.

    Parameters
    ----------
    coats
        (S, V) coats of every step at every vertex, at the upper end of spans, as
        `CoatLayout.coats` lays them.

    Raises
    ------
    CatalogueError
        If the materials do not have the block: its enlargement factor is not known then.
    PlanError
        If the coats are not those of the plan.
    """
    mesh, plan = case.surface.mesh, case.plan
    if coats.shape != (len(plan.steps), mesh.vertex_count):
        raise PlanError(translate("batch size", "The coats do not fit the plan and the surface."))
    block = case.materials.block(plan.block)
    amounts = case.process.jar_amounts
    milled_mm2 = mesh.vertex_areas * block.enlargement_factor**2
    film_mm = amounts.film_per_coat_mm * case.process.uptake.hand_factor
    count = max(len(case.units), 1)
    unit = np.minimum(case.reading.unit_index, count - 1)
    ml = np.zeros((len(plan.steps), count))
    for index, on_surface in enumerate(coats):
        # Cubic millimetres are microlitres.
        film = np.bincount(unit, weights=milled_mm2 * on_surface, minlength=count)
        ml[index] = film * film_mm / 1000.0
    return tuple(
        JarNeed(
            jar=jar,
            units=case.units,
            unit_ml=tuple(ml[steps].sum(axis=0).tolist())[: len(case.units)],
            step_ml=tuple((index + 1, float(ml[index].sum())) for index in steps),
            amounts=amounts,
        )
        for jar in plan.jars
        for steps in [[i for i, step in enumerate(plan.steps) if step.jar == jar.number]]
    )


def smallest_jar(jar: Jar) -> Jar:
    """Return the jar with the same ratios in the fewest whole drops."""
    divisor = math.gcd(jar.liquid_drops, *jar.dye_drops)
    return _times(jar, 1, divisor)


def smallest_for(jar: Jar, need_drops: float, amounts: JarAmounts) -> Jar:
    """Return the smallest jar of the same ratios that holds what is needed and what stays behind.

    Parameters
    ----------
    need_drops
        What is painted with it, in drops; 0 or more.
    """
    one = smallest_jar(jar)
    wanted = max(need_drops, 0.0) + amounts.left_in_jar_drops
    return _times(one, max(math.ceil((wanted - _ROUNDING_DROPS) / all_drops(one)), 1), 1)


def all_drops(jar: Jar) -> int:
    """Return the drops of liquid and dye together."""
    return jar.liquid_drops + sum(jar.dye_drops)


def holds_enough(jar: Jar, need_drops: float, amounts: JarAmounts) -> bool:
    """Return True if a jar holds what is needed and what stays behind in it."""
    return need_drops + amounts.left_in_jar_drops <= all_drops(jar) + _ROUNDING_DROPS


def units_served(jar: Jar, needs: Sequence[JarNeed]) -> int | None:
    """Return how many units such as these a jar serves; None if nothing is painted with it.

    A unit takes the mean of those that take anything. Not more than 99: nobody asks.
    """
    painted = [ml * need.amounts.drops_per_ml for need in needs for ml in need.unit_ml if ml > 0.0]
    if not painted:
        return None
    usable = all_drops(jar) - max(need.amounts.left_in_jar_drops for need in needs)
    each = math.fsum(painted) / len(painted)
    return int(min(max(usable + _ROUNDING_DROPS, 0.0) / each, _MOST_UNITS))


def served_text(units: int | None) -> str:
    """Return "nothing", "1 unit", "12 units" or "99 units and more"."""
    if units is None:
        return translate("batch size", "nothing")
    if units >= _MOST_UNITS:
        return translate("batch size", "{most_units} units and more").format(most_units=_MOST_UNITS)
    return (
        translate("batch size", "1 unit")
        if units == 1
        else translate("batch size", "{units} units").format(units=units)
    )


def _times(jar: Jar, factor: int, divisor: int) -> Jar:
    cyan, magenta, yellow = (drops * factor // divisor for drops in jar.dye_drops)
    return replace(
        jar,
        liquid_drops=jar.liquid_drops * factor // divisor,
        dye_drops=(cyan, magenta, yellow),
    )
