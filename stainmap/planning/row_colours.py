"""What the neighbours of a crown look like, as far as is known, and the steps to them.

A neighbour is coloured by the same gradient as is wanted of the crown: body, and the other zones'
offsets from it or shades of their own. Where its own shade was given, its body has that.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.colour import Colour
from stainmap.model.intake import Intake, Shade
from stainmap.model.target import Target
from stainmap.model.tooth import Tooth
from stainmap.model.zone import OUTER_ZONES, Area, Zone
from stainmap.planning.look_colours import wanted_lab
from stainmap.planning.outcome import Outcome
from stainmap.planning.targets import shade_in, wanted_in

Floats = NDArray[np.float32]

# A vertex speaks for the zone that has more than this share of it, as in the outcome.
_SHARE: Final = 0.5
_IN_ORDER: Final = (Zone.BODY, Zone.CERVICAL, Zone.INTERPROXIMAL, Zone.CUSP, Zone.FISSURE)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class NeighbourColours:
    """The colour of a neighbour.

    Parameters
    ----------
    lab
        (V, 3) L*a*b* under D65.
    means
        (3,) area-weighted mean L*a*b* of each zone it has, its zones told apart as sharply as
        those of the crown.
    own_shade
        True if its own shade was given; False if it follows what is wanted of the crown.
    """

    lab: Floats
    means: Mapping[Zone, NDArray[np.float64]]
    own_shade: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ZoneStep:
    """Predicted zone of the crown less the same zone of a neighbour: dL* and dC*."""

    zone: Zone
    lightness: float
    chroma: float


def neighbour_shade(intake: Intake | None, tooth: Tooth) -> Shade | None:
    """Return the shade that was given of a neighbour, or None."""
    neighbours = () if intake is None else intake.neighbours
    return next((one.shade for one in neighbours if one.tooth == tooth), None)


def neighbour_colours(
    target: Target,
    shade: Shade | None,
    shares: Floats,
    blended: Floats,
    areas_mm2: NDArray[np.float64],
) -> NeighbourColours:
    """Return what a neighbour looks like.

    Parameters
    ----------
    target
        What is wanted of the crown.
    shade
        The neighbour's own shade, of its middle third; None where none was given.
    shares
        (7, V) softened shares of its zones by number, as `CoatLayout.shares` gives them: what
        means are taken over.
    blended
        (7, V) softer ones: what it is coloured by.
    areas_mm2
        (V,) size of each vertex.

    Raises
    ------
    PlanError
        If what is wanted was measured otherwise and no conversion that is allowed helps.
    """
    if shade is not None:
        # Offsets are steps as seen; shades that thirds of the crown have are not the neighbour's.
        target = replace(target, body=shade_in(shade).colour, conversions=(), held=())
    wanted: list[tuple[Area, Colour]] = []
    body = wanted_in(target, Zone.BODY)
    for zone in OUTER_ZONES:
        own = wanted_in(target, zone) or body
        if own is not None:
            wanted.append((zone, own.colour))
    lab, apart = wanted_lab(wanted, blended, ()), wanted_lab(wanted, shares, ())
    if body is not None:
        for one in (lab, apart):
            one[~np.isfinite(one[:, 0])] = body.colour.lab
    means: dict[Zone, NDArray[np.float64]] = {}
    for zone in OUTER_ZONES:
        weight = areas_mm2 * shares[int(zone)] * (shares[int(zone)] > _SHARE)
        if weight.sum() > 0.0:
            means[zone] = np.asarray(weight @ apart.astype(np.float64) / weight.sum())
    return NeighbourColours(lab=lab, means=means, own_shade=shade is not None)


def steps_to(outcome: Outcome, neighbour: NeighbourColours) -> tuple[ZoneStep, ...]:
    """Return the steps of all zones that crown and neighbour both have, the body's first."""
    found = []
    for zone in _IN_ORDER:
        area, mean = outcome.area(zone), neighbour.means.get(zone)
        if area is None or mean is None:
            continue
        found.append(
            ZoneStep(
                zone=zone,
                lightness=area.predicted.lightness - float(mean[0]),
                chroma=area.predicted.chroma - float(np.hypot(mean[1], mean[2])),
            )
        )
    return tuple(found)
