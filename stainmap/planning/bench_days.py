"""Simulated days at the bench: how many of them a plan survives.

On every day one cell gets a coat more or fewer, the hand is wetter or drier, the walls come out
thicker or thinner, a jar has more dye than it should, and the stump is a step lighter or darker
than was said, each by chance. The sizes are assumed. The same simulator that helped to choose a
plan counts its days afterwards, so a second thousand tests the sampling, not the bench.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Backing, Case
from stainmap.model.material import Catalogue
from stainmap.optics.difference import delta_e_00
from stainmap.planning.reach_model import ReachModel
from stainmap.predict.blocks import stump_reflectance
from stainmap.predict.uncertainty import ACCEPTABLE_DE00, PERCEPTIBLE_DE00

Array = NDArray[np.float64]

HAND_SHARE: Final = 0.25
"""A coat is up to this share wetter or drier; assumed."""
WALL_MM: Final = 0.2
"""Walls are up to this much thicker or thinner; assumed."""
MOST_EXTRA_DYE: Final = 3
"""Drops of dye too many in one jar of 25, up to; assumed."""
TO_RANK, TO_SHOW = 100, 1000


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class BenchDays:
    """What goes otherwise on D days.

    Parameters
    ----------
    hand
        (D,) factor of all coats.
    wall_mm
        (D,) added to all walls.
    stump_step
        (D,) -1, 0 or 1.
    cell
        (D,) 0 to 1: which painted cell gets a coat more or fewer.
    coat_step
        (D,) 1 or -1.
    jar
        (D,) 0 to 1: which jar is too rich in dye.
    extra_dye
        (D,) drops.
    """

    hand: Array
    wall_mm: Array
    stump_step: NDArray[np.int64]
    cell: Array
    coat_step: NDArray[np.int64]
    jar: Array
    extra_dye: NDArray[np.int64]

    def __len__(self) -> int:
        """Return how many days these are."""
        return len(self.hand)


def bench_days(count: int, seed: int) -> BenchDays:
    """Return days by chance, the same ones for the same seed."""
    chance = np.random.default_rng(seed)
    return BenchDays(
        hand=chance.uniform(1.0 - HAND_SHARE, 1.0 + HAND_SHARE, count),
        wall_mm=chance.uniform(-WALL_MM, WALL_MM, count),
        stump_step=chance.integers(-1, 2, count),
        cell=chance.random(count),
        coat_step=2 * chance.integers(0, 2, count) - 1,
        jar=chance.random(count),
        extra_dye=chance.integers(0, MOST_EXTRA_DYE + 1, count),
    )


def stump_steps(case: Case) -> tuple[Backing, ...]:
    """Return the case's backings three times: a step darker, as they are, a step lighter.

    A step is the next one of the same kind by its lightness: of natural dentine, light, medium,
    dark. What has no kind (metal, a plug) is what it is.
    """
    rows: list[Backing] = []
    for step in (-1, 0, 1):
        for backing in case.backings:
            name = _beside(case.materials, backing.stump, step)
            rows.append(replace(backing, stump=name))
    return tuple(rows)


def _beside(materials: Catalogue, name: str, step: int) -> str:
    kind = name.split(",", maxsplit=1)[0]
    family = [one for one in materials.stumps if one.name.split(",", maxsplit=1)[0] == kind]
    lightness = {one.name: float(stump_reflectance(one, np.array([550.0]))[0]) for one in family}
    order = sorted(lightness, key=lambda one: lightness[one])
    place = min(max(order.index(name) + step, 0), len(order) - 1)
    return order[place]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Survival:
    """How a plan fared.

    Parameters
    ----------
    days
        How many were simulated.
    survived
        On how many every area kept to what was allowed.
    by_area
        (A,) on how many each area did.
    """

    days: int
    survived: int
    by_area: NDArray[np.int64]

    @property
    def share(self) -> float:
        """Share of days survived, 0 to 1."""
        return self.survived / self.days


def colours_on(
    model: ReachModel,
    days: BenchDays,
    near: Sequence[NDArray[np.int64]],
    inner: NDArray[np.int64],
    dilution: Array,
) -> Array:
    """Return the colours (D, A, 3) that a plan gives on every day, by the quick model.

    Parameters as for `survive`.
    """
    coats = np.stack(near).astype(np.float64)
    areas = len(coats)
    table = np.vstack([coats, inner[None]])
    count = len(days)
    every = np.repeat(table[None], count, axis=0)
    cells = np.argwhere(table > 0)
    if len(cells):
        chosen = cells[(days.cell * len(cells)).astype(np.intp)]
        every[np.arange(count), chosen[:, 0], chosen[:, 1]] += days.coat_step
    every = np.maximum(every, 0.0) * days.hand[:, None, None]
    share = np.repeat(dilution[None].astype(np.float64), count, axis=0)
    used = np.flatnonzero(table.any(axis=0))
    if len(used):
        rich = used[(days.jar * len(used)).astype(np.intp)]
        here = np.arange(count), rich
        share[here] = 1.0 / (1.0 / share[here] + days.extra_dye / 25.0)
    rows = model.backing_rows
    shift = (days.stump_step + 1) * rows
    return model.days(every[:, :areas], every[:, areas], share, days.wall_mm, shift)


def survive(
    model: ReachModel,
    days: BenchDays,
    near: Sequence[NDArray[np.int64]],
    inner: NDArray[np.int64],
    dilution: Array,
    *,
    fixed: Array,
    wanted: Array,
) -> Survival:
    """Return on how many days a plan keeps all areas near what is wanted.

    An area holds while it is within 1.8 dE00 of what is wanted, or no further from it than planned
    by what half of observers see [Paravina2015]: a plan that cannot come closer is not blamed for
    that, only for getting worse.

    Parameters
    ----------
    model
        With the backings of `stump_steps`.
    near
        (L,) coats of each area.
    inner
        (L,) coats inside.
    dilution
        (L,) share of liquid in each jar.
    fixed, wanted
        As in the search.
    """
    coats = np.stack(near).astype(np.float64)
    own = colours_on(model, days, near, inner, dilution)
    planned = model.days(
        coats[None],
        inner[None].astype(np.float64),
        dilution[None],
        np.zeros(1),
        np.full(1, model.backing_rows, dtype=np.int64),
    )
    at_plan = delta_e_00(fixed + planned[0], wanted)
    allowed = np.maximum(ACCEPTABLE_DE00, at_plan + PERCEPTIBLE_DE00)
    holds = delta_e_00(fixed + own, wanted[None]) <= allowed[None]
    return Survival(
        days=len(days), survived=int(holds.all(axis=1).sum()), by_area=holds.sum(axis=0)
    )
