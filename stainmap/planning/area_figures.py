"""What was computed of the areas of a crown: numbers alone, kept so nobody computes them twice.

Whoever plans a crown has its prediction; whoever prints it later, with eleven others, needs from it
no more than a few numbers per area. They count only for the very crown and plan they were computed
of, and only in the version of the program that computed them.
"""

from __future__ import annotations

from dataclasses import dataclass

from stainmap.model.zone import Area

Lab = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaFigures:
    """What was computed of one area; as in `outcome.AreaOutcome`.

    Parameters
    ----------
    lab, lab_low
        Area-weighted mean L*, a*, b* at the upper and at the lower end of spans; the latter is None
        without spans.
    """

    area: Area
    area_mm2: float
    lab: Lab
    lab_low: Lab | None
    parameters_sd: Lab | None
    lightness_doubt: float
    wall_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptFigures:
    """What was computed of all areas, under D65 and by the 2 degree observer.

    Parameters
    ----------
    key
        What it was computed of, and by what (see `figures_key.figures_key`); of anything else it
        does not hold.
    whole
        Of the crown or bridge as a whole.
    units
        Of every unit of a bridge by itself; empty for a single crown.
    """

    key: str
    whole: tuple[AreaFigures, ...]
    units: tuple[tuple[AreaFigures, ...], ...] = ()
