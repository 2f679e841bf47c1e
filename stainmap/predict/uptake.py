"""How much of each liquid stays in the porous ceramic.

A coat of liquid i adds ``max(0, 1 - [eta U + (1 - eta) u_i]) (1 - exp(-c / n0))`` to its own load
u_i, in painting order, with U the sum of all loads and c the coats. Saturation of this first-order
kind is assumed, not published; n0 and eta are what a laboratory calibrates. No coat ever lowers a
load, so with liquids that do not scatter more coats never make a crown lighter.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.errors import PlanError


@dataclass(frozen=True, slots=True, kw_only=True)
class UptakeRule:
    """How coats become load.

    Parameters
    ----------
    coats_to_saturation
        n0. One coat takes up 1 - exp(-1 / n0) of the room that is left. Default assumed.
    competition
        eta. 1: all liquids fill the same pores; 0: each saturates alone. Default assumed.
    hand_factor
        How wet the person's hand paints, multiplying every coat.
    """

    coats_to_saturation: float = 4.0
    competition: float = 1.0
    hand_factor: float = 1.0

    def __post_init__(self) -> None:
        """Refuse values that no calibration can give."""
        if not 0.5 <= self.coats_to_saturation <= 40.0:
            raise PlanError(
                f"{self.coats_to_saturation} coats to saturation is out of range.",
                advice="Give 0.5 to 40; 4 is the usual assumption.",
            )
        if not 0.0 <= self.competition <= 1.0:
            raise PlanError(
                f"A competition of {self.competition} is out of range.", advice="Give 0 to 1."
            )
        if not 0.6 <= self.hand_factor <= 1.6:
            raise PlanError(
                f"A hand factor of {self.hand_factor} is out of range.", advice="Give 0.6 to 1.6."
            )


def added_by_step(
    coats: ArrayLike,
    step_liquid: ArrayLike,
    step_dilution: ArrayLike,
    *,
    liquid_count: int,
    rule: UptakeRule,
) -> NDArray[np.float64]:
    """Return the load that every step adds, (S, V), never negative.

    Parameters
    ----------
    coats
        (S, V) coats of each step, in painting order; part coats are allowed.
    step_liquid
        (S,) which of the liquids, 0 to `liquid_count` - 1, the step paints.
    step_dilution
        (S,) share of liquid in the jar, above 0, at most 1; a coat counts that much less.
    liquid_count
        Number of liquids L.
    rule
        Saturation, competition and hand.
    """
    coats = np.asarray(coats, dtype=np.float64)
    liquids = np.asarray(step_liquid, dtype=np.intp)
    effective = np.asarray(step_dilution, dtype=np.float64) * rule.hand_factor
    load = np.zeros((liquid_count, *coats.shape[1:]))
    total = np.zeros(coats.shape[1:])
    added = np.empty_like(coats)
    eta = rule.competition
    for step, (liquid, factor) in enumerate(zip(liquids, effective, strict=True)):
        room = np.maximum(1.0 - (eta * total + (1.0 - eta) * load[liquid]), 0.0)
        added[step] = room * -np.expm1(-factor * coats[step] / rule.coats_to_saturation)
        load[liquid] += added[step]
        total += added[step]
    return added


def load_after_steps(
    coats: ArrayLike,
    step_liquid: ArrayLike,
    step_dilution: ArrayLike,
    *,
    liquid_count: int,
    rule: UptakeRule,
) -> NDArray[np.float64]:
    """Return the load of every liquid after all steps, (L, V), 0 to 1; see `added_by_step`."""
    added = added_by_step(coats, step_liquid, step_dilution, liquid_count=liquid_count, rule=rule)
    load = np.zeros((liquid_count, *added.shape[1:]))
    np.add.at(load, np.asarray(step_liquid, dtype=np.intp), added)
    return load
