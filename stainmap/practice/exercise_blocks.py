"""The choice of a block: how near every block of a class comes to a shade, with how many coats."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from stainmap.model.case import Case
from stainmap.model.material import ScatteringClass
from stainmap.model.zone import Zone
from stainmap.optics.difference import delta_e_00
from stainmap.planning.reach_model import ReachModel
from stainmap.planning.reach_options import area_options, paintable_liquids
from stainmap.planning.reach_places import representative_places
from stainmap.practice.exercise_plans import Row, base_of
from stainmap.practice.looking import Looked, Looker

CLASS: Final = ScatteringClass.Y3
"""Strength is not chosen by colour: only blocks of one class are compared."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockFit:
    """How near the body comes on one block.

    Parameters
    ----------
    de00
        CIEDE2000 of the body to what is wanted, with the best coats within the usual limits.
    coats
        How many coats that takes.
    bare
        L*, a*, b* of the body without any.
    """

    block: str
    de00: float
    coats: int
    bare: tuple[float, float, float]


def blocks_asked(case: Case) -> tuple[str, ...]:
    """Return the one-layer blocks of the class that is asked about."""
    return tuple(
        one.name
        for one in case.materials.blocks
        if len(one.layers) == 1 and one.layers[0].scattering is CLASS
    )


def shade_of_block(case: Case, chance: np.random.Generator) -> tuple[str, list[Row]]:
    """Return a block by chance, and coats on it that make the shade which is asked for."""
    names = blocks_asked(case)
    block = names[int(chance.integers(len(names)))]
    base, _ = base_of(chance)
    return block, [(base, {Zone.CERVICAL: 1, Zone.BODY: 1, Zone.INTERPROXIMAL: 1})]


def block_fits(true: Case, look: Looked, looker: Looker) -> tuple[BlockFit, ...]:
    """Return how near every block comes to the body that is wanted, in the order of the materials.

    Parameters
    ----------
    true
        A plan that reaches what is wanted, on its block.
    look
        What it gives; the quick model is brought to it, as the search for coats does it.
    """
    liquids = paintable_liquids(true.materials, None)
    places = representative_places(true, looker.ground, looker.layout, [Zone.BODY])
    options = area_options(Zone.BODY, liquids, true.materials)
    nothing = np.zeros((1, len(liquids)), dtype=np.int64)
    wanted = np.array(look.areas[Zone.BODY])
    home = ReachModel(true, places, liquids)
    fixed = wanted - home.plan_colours(true.plan)[0]
    fits = []
    for name in blocks_asked(true):
        model = ReachModel(true, places, liquids, block=name)
        colours = model.table(0, options.counts, nothing)[0, :, 0] + fixed
        apart = np.asarray(delta_e_00(colours, wanted))
        # Of coats that nobody can tell apart, the fewest.
        coats = options.counts.sum(axis=1)
        good = np.flatnonzero(apart <= apart.min() + 0.3)
        chosen = int(good[np.argmin(coats[good])])
        bare = colours[0]
        fits.append(
            BlockFit(
                block=name,
                de00=float(apart[chosen]),
                coats=int(coats[chosen]),
                bare=(float(bare[0]), float(bare[1]), float(bare[2])),
            )
        )
    return tuple(fits)
