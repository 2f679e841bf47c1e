"""What a plan is worth, in dE00: how far its areas are from what is wanted, and what it costs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.model.zone import Area, Zone
from stainmap.predict.parameter_spread import UNCALIBRATED
from stainmap.predict.uncertainty import ACCEPTABLE_DE00, PERCEPTIBLE_DE00, TIE_DE00

Array = NDArray[np.float64]

BODY_COUNTS: Final = 2.0
"""The body counts twice: the shade is read there, and all else is held against it; assumed."""

COAT_PRICE: Final = 0.02
"""dE00 that a coat must bring at least; decides between plans that nobody can tell apart."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Prices:
    """What must be gained, dE00 summed over all areas.

    Parameters
    ----------
    jar
        By a liquid more on the tray.
    liquid
        By a liquid more on an area, from a jar that is there already.
    coat
        By a coat.
    """

    jar: float
    liquid: float = TIE_DE00
    coat: float = COAT_PRICE


def usual_prices(*, calibrated: bool) -> Prices:
    """Return the prices: a liquid more must gain 0.8 dE00 beyond its uncertainty.

    What a liquid gains is as uncertain as its absorption, 30 % before calibration: the gain less
    that share must still be what half of observers see [Paravina2015].
    """
    doubt = 0.0 if calibrated else UNCALIBRATED.liquid_absorption
    return Prices(jar=PERCEPTIBLE_DE00 / (1.0 - doubt))


FREE: Final = Prices(jar=COAT_PRICE, liquid=COAT_PRICE, coat=COAT_PRICE / 10.0)
"""Prices for the closest plan there is, whatever it takes."""


def area_importance(areas: Sequence[Area]) -> Array:
    """Return how much each area counts, (A,)."""
    return np.array([BODY_COUNTS if area is Zone.BODY else 1.0 for area in areas])


def misfit(de00: ArrayLike) -> Array:
    """Return what differences from the wanted colours count: beyond 1.8 dE00 twice."""
    apart = np.asarray(de00, dtype=np.float64)
    return np.asarray(apart + np.maximum(apart - ACCEPTABLE_DE00, 0.0))


def plan_score(
    de00: ArrayLike,
    areas: Sequence[Area],
    *,
    jars: int,
    liquids: Sequence[int],
    coats: int,
    prices: Prices,
) -> float:
    """Return the score of a plan, dE00; less is better.

    Parameters
    ----------
    de00
        (A,) CIEDE2000 of each area to what is wanted of it.
    liquids
        (A,) number of liquids on each area.
    coats
        On all areas, the inner surface with them.
    """
    extra = sum(max(count - 1, 0) for count in liquids)
    apart = float(area_importance(areas) @ misfit(de00))
    return apart + prices.jar * jars + prices.liquid * extra + prices.coat * coats
