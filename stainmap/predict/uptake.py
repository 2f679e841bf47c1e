"""How much of each liquid stays in the porous ceramic.

A coat of liquid i adds ``max(0, 1 - [eta U + (1 - eta) u_i]) (1 - exp(-c / n0))`` to its own load
u_i, in painting order, with U the sum of all loads and c the coats. Saturation of this first-order
kind is assumed, not published; n0 and eta are what a laboratory calibrates. No coat ever lowers a
load, so with liquids that do not scatter more coats never make a crown lighter.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.model.process import UptakeRule

REFERENCE_ENLARGEMENT: Final = 1.245
"""Enlargement of the blocks that liquids are described on."""


def full_load_ratio(enlargement_factor: float) -> float:
    """Return how strongly a full load stains a block, 1 at the reference enlargement.

    Ions stay where they were when the ceramic shrinks around them, so that their concentration
    rises by the cube of the enlargement e. A body that sinters to full density has the share
    1 - e^-3 of pores before (conservation of mass); filled with the same liquid it ends at a
    concentration that goes with (1 - e^-3) e^3 = e^3 - 1. Dense ceramic, e = 1, takes up nothing.
    """
    return (enlargement_factor**3 - 1.0) / (REFERENCE_ENLARGEMENT**3 - 1.0)


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


def coats_for_share(
    coats: ArrayLike,
    share: ArrayLike,
    step_liquid: ArrayLike,
    step_dilution: ArrayLike,
    *,
    liquid_count: int,
    rule: UptakeRule,
) -> NDArray[np.float64]:
    """Return the coats (S, V) that leave a share of the load that `coats` (S, V) leave.

    The share s (V,), 0 to 1, of every step's own contribution a, and so of every liquid's load:
    ``c = -n0 / f ln(1 - s a / room)`` with the room that the smaller loads before it leave. There
    is always room enough, for ``1 - s x >= s (1 - x)``.
    """
    added = added_by_step(coats, step_liquid, step_dilution, liquid_count=liquid_count, rule=rule)
    added *= np.asarray(share, dtype=np.float64)
    liquids = np.asarray(step_liquid, dtype=np.intp)
    effective = np.asarray(step_dilution, dtype=np.float64) * rule.hand_factor
    load = np.zeros((liquid_count, *added.shape[1:]))
    total = np.zeros(added.shape[1:])
    result = np.zeros_like(added)
    eta = rule.competition
    for step, (liquid, factor) in enumerate(zip(liquids, effective, strict=True)):
        room = 1.0 - (eta * total + (1.0 - eta) * load[liquid])
        # No room is left only where nothing is added, of a share of one.
        filled = np.divide(added[step], room, out=np.zeros_like(room), where=added[step] > 0.0)
        filled = np.minimum(filled, 1.0 - 1e-12)
        result[step] = -np.log1p(-filled) * rule.coats_to_saturation / factor
        load[liquid] += added[step]
        total += added[step]
    return result
