"""How sure a prediction is, and what may be said about a colour difference.

Until a laboratory has calibrated its materials, a prediction shows a direction and no verdict.
"""

from __future__ import annotations

from enum import StrEnum
from math import hypot
from typing import Final

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.model.colour import Colour
from stainmap.model.material import Catalogue, Provenance
from stainmap.model.plan import StainPlan
from stainmap.optics.difference import delta_e_00
from stainmap.predict.colour_conversion import convert

UNCALIBRATED_SD: Final = (2.5, 1.3, 2.5)
"""Standard deviation of L*, a*, b* before calibration: what 20 to 35 % in scattering, absorption,
depth and coats amount to."""

SMALLEST_SD: Final = 0.3
"""No calibration makes a prediction surer than this, per axis."""

FEWEST_COUPONS: Final = 5
"""Fired coupons it takes before a laboratory counts as calibrated."""

PERCEPTIBLE_DE00: Final = 0.8
ACCEPTABLE_DE00: Final = 1.8
"""50:50 % thresholds of 175 observers for dental colours [Paravina2015]."""

TIE_DE00: Final = 0.3
"""Plans closer than this in what they reach are ties; nobody sees the difference; assumed."""


class Verdict(StrEnum):
    """What a difference means to most people who look at it."""

    UNSEEN = "not seen by most"
    ACCEPTED = "seen, usually accepted"
    REJECTED = "usually rejected"
    NONE = "direction, not a match"


def verdict(difference_de00: float, *, calibrated: bool) -> Verdict:
    """Return the word for a CIEDE2000 difference; none before calibration [Paravina2015]."""
    if not calibrated:
        return Verdict.NONE
    if difference_de00 <= PERCEPTIBLE_DE00:
        return Verdict.UNSEEN
    return Verdict.ACCEPTED if difference_de00 <= ACCEPTABLE_DE00 else Verdict.REJECTED


def standard_deviation(
    parameters_sd: tuple[float, float, float] | None,
    discrepancy_sd: tuple[float, float, float] | None,
) -> tuple[float, float, float]:
    """Return one standard deviation of L*, a*, b* of a prediction.

    Parameters
    ----------
    parameters_sd
        What the uncertainty of the calibrated parameters amounts to; None before calibration.
    discrepancy_sd
        How far held-back coupons were off; None before calibration. The covariance of the
        parameters alone is overconfident, so this is never taken below 0.3.
    """
    if parameters_sd is None or discrepancy_sd is None:
        return UNCALIBRATED_SD
    lightness, a, b = (
        hypot(own, max(off, SMALLEST_SD))
        for own, off in zip(parameters_sd, discrepancy_sd, strict=True)
    )
    return lightness, a, b


def shown_sd(
    parameters_sd: ArrayLike,
    discrepancy_sd: tuple[float, float, float] | None = None,
    lightness_doubt: ArrayLike = 0.0,
) -> NDArray[np.float64]:
    """Return the standard deviation of L*, a*, b* that is shown, (..., 3).

    Before calibration the greater of `UNCALIBRATED_SD` and what the parameters amount to here.
    Not their sum: both stand for the same ignorance, the first for all of it roughly, the second
    for what six numbers can express, at this place. Afterwards parameters and discrepancy are
    independent and add up. What the calculation leaves out adds to L* in either case.

    Parameters
    ----------
    parameters_sd
        (..., 3) from `parameter_spread`.
    discrepancy_sd
        How far held-back coupons were off, never taken below 0.3; None before calibration.
    lightness_doubt
        (...) standard deviation of L* from `doubt`.
    """
    own = np.asarray(parameters_sd, dtype=np.float64)
    if discrepancy_sd is None:
        sd = np.maximum(own, UNCALIBRATED_SD)
    else:
        sd = np.hypot(own, np.maximum(discrepancy_sd, SMALLEST_SD))
    sd[..., 0] = np.hypot(sd[..., 0], lightness_doubt)
    return sd


def inside_uncertainty(difference: float, sd: float, other_sd: float = 0.0) -> bool:
    """Return whether a gap between two values is no larger than their common uncertainty."""
    return abs(difference) <= hypot(sd, other_sd)


def chance_within(
    predicted: Colour,
    wanted: Colour,
    sd: tuple[float, float, float],
    limit: float = ACCEPTABLE_DE00,
    *,
    calibrated: bool,
) -> float | None:
    """Return the chance that the fired colour lies within `limit` of the wanted one.

    A normal spread around the prediction, along L*, a* and b* by themselves, sampled at 8192
    fixed points: good to about 1 %.

    Parameters
    ----------
    predicted, wanted
        Both measured alike; convert before.
    sd
        Standard deviations of the prediction along L*, a*, b*.
    limit
        CIEDE2000 that counts as within.
    calibrated
        Without calibration there is no chance to tell.

    Returns
    -------
    0 to 1, or None before calibration.

    Raises
    ------
    PlanError
        If the two were measured unlike.
    """
    convert(wanted, predicted.measurement)
    if not calibrated:
        return None
    spread = np.random.default_rng(8192).standard_normal((4096, 3)) * np.array(sd)
    fired = np.array(predicted.lab) + np.concatenate([spread, -spread])
    return float(np.mean(delta_e_00(fired, wanted.lab) <= limit))


def is_calibrated(materials: Catalogue, plan: StainPlan) -> bool:
    """Return whether the block and every liquid of the plan come from a calibration."""
    used = [materials.block(plan.block).provenance]
    used += [materials.liquid(jar.liquid).provenance for jar in plan.jars]
    return all(provenance is Provenance.CALIBRATED for provenance in used)
