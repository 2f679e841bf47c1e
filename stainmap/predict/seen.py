"""How a prediction is looked at: under which light, by whom, on how many bands."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from stainmap.predict.scene import Bands


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """How a prediction is looked at; the default is what is printed, apart from its bands.

    Parameters
    ----------
    bands
        "screen" for the fitted nodes of live work, "full" for export.
    light, observer
        One of `colorimetry.LIGHTS`, 2 or 10 degrees.
    curvature_correction
        Whether curved places are corrected (see `predict.curvature_correction`). Off, since what is
        wanted is told of flat places: the colour of a tab, offsets of the trade.
    """

    bands: Bands = "screen"
    light: str = "D65"
    observer: int = 2
    curvature_correction: bool = False
