"""All coats that an area may have within the usual limits, whichever liquids are in stock."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, product

import numpy as np
from numpy.typing import NDArray

from stainmap.model.material import Catalogue
from stainmap.model.zone import Accent, Area, Zone
from stainmap.planning.coat_limits import LIMITS, Use, excesses, use_of

Counts = NDArray[np.int64]

_MOST_LIQUIDS = 2
_MOST_ON_CUSPS = 3
_CUSPS = (Zone.CUSP, Accent.MARGINAL_RIDGE, Accent.TRIANGULAR_RIDGE)
# Painting order: what is spread widely first, accents last (common practice).
_ORDER = (Use.BASE, Use.BRIGHT_ACCENT, Use.LOWERS_VALUE, Use.DARK_ACCENT)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class AreaOptions:
    """Everything an area may get.

    Parameters
    ----------
    counts
        (n, L) coats of each liquid; the first row has only what is locked.
    mask
        (n,) bit k is set where liquid k is used.
    """

    area: Area
    counts: Counts
    mask: Counts


def paintable_liquids(materials: Catalogue, stock: Sequence[str] | None) -> tuple[str, ...]:
    """Return the liquids that may be proposed, in the order they are painted.

    Parameters
    ----------
    stock
        Names of those at hand; all if None. Liquids for no known use are never proposed: nobody
        has said how many coats of them an area takes.
    """
    known = [one for one in materials.liquids if use_of(one) is not None]
    if stock is not None:
        known = [one for one in known if one.name in stock]
    position = {liquid.name: index for index, liquid in enumerate(materials.liquids)}

    def key(name: str) -> tuple[int, int]:
        use = use_of(materials.liquid(name))
        return _ORDER.index(use) if use is not None else len(_ORDER), position[name]

    return tuple(sorted((one.name for one in known), key=key))


def most_liquids(area: Area) -> int:
    """Return how many liquids an area gets at most: two, on cusps three; common practice."""
    return _MOST_ON_CUSPS if area in _CUSPS else _MOST_LIQUIDS


def area_options(
    area: Area,
    liquids: Sequence[str],
    materials: Catalogue,
    locked: Mapping[str, int] | None = None,
    *,
    most: int | None = None,
) -> AreaOptions:
    """Return all coats an area may have within its limits.

    Parameters
    ----------
    liquids
        L names, in painting order.
    locked
        Coats by liquid that stay as they are and count towards the limits; where they alone go
        beyond a limit nothing is added.
    most
        Most liquids; the usual number for the area if None.
    """
    held = dict(locked or {})
    most = most_liquids(area) if most is None else most
    uses = {name: use_of(materials.liquid(name)) for name in liquids}
    highest = {
        name: min(
            (limit.most for limit in LIMITS[area] if uses[name] in limit.uses),
            default=0,
        )
        for name in liquids
        if name not in held
    }
    free = [name for name, top in highest.items() if top > 0]
    rows: list[Mapping[str, int]] = [held]
    for size in range(1, max(most - len(held), 0) + 1):
        for chosen in combinations(free, size):
            for counts in product(*(range(1, highest[name] + 1) for name in chosen)):
                coats = held | dict(zip(chosen, counts, strict=True))
                if not excesses(area, coats, materials):
                    rows.append(coats)
    counts_ = np.array([[row.get(name, 0) for name in liquids] for row in rows], dtype=np.int64)
    counts_ = counts_.reshape(len(rows), len(liquids))
    bits = 1 << np.arange(len(liquids), dtype=np.int64)
    return AreaOptions(area=area, counts=counts_, mask=(counts_ > 0) @ bits)
