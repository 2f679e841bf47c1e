"""What may be said about a difference, and when nothing may."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stainmap.errors import PlanError
from stainmap.model.colour import Colour, Measurement
from stainmap.model.material import Provenance
from stainmap.predict.uncertainty import (
    UNCALIBRATED_SD,
    Verdict,
    chance_within,
    inside_uncertainty,
    is_calibrated,
    standard_deviation,
    verdict,
)
from tests.predict.scenes import materials, plan_of


def colour_of(lightness: float, a: float = 0.0, b: float = 0.0) -> Colour:
    return Colour(lightness=lightness, a=a, b=b)


@pytest.mark.parametrize(
    ("difference", "word"),
    [
        (0.0, "not seen by most"),
        (0.8, "not seen by most"),
        (0.81, "seen, usually accepted"),
        (1.8, "seen, usually accepted"),
        (1.81, "usually rejected"),
    ],
)
def test_words_at_the_published_thresholds(difference: float, word: str) -> None:
    """50:50 % perceptibility 0.8 and acceptability 1.8 dE00 [Paravina2015] (its abstract)."""
    assert verdict(difference, calibrated=True) == word


def test_no_verdict_and_no_chance_before_calibration() -> None:
    assert verdict(0.0, calibrated=False) is Verdict.NONE
    assert str(Verdict.NONE) == "direction, not a match"
    one = colour_of(75.0, 0.0, 16.0)
    assert chance_within(one, one, (0.3, 0.3, 0.3), calibrated=False) is None


def test_no_chance_for_unlike_colours() -> None:
    one = colour_of(75.0, 0.0, 16.0)
    other = replace(one, measurement=Measurement(geometry="d/8 SCI"))
    with pytest.raises(PlanError, match="differ in geometry"):
        chance_within(one, other, (0.3, 0.3, 0.3), calibrated=True)


def test_calibration_is_never_surer_than_its_coupons() -> None:
    assert standard_deviation(None, None) == UNCALIBRATED_SD == (2.5, 1.3, 2.5)
    assert standard_deviation((1.0, 1.0, 1.0), None) == UNCALIBRATED_SD
    found = standard_deviation((0.4, 0.0, 0.0), (0.3, 0.1, 0.5))
    assert found == pytest.approx((0.5, 0.3, 0.5))


def test_gaps_inside_the_uncertainty() -> None:
    assert inside_uncertainty(-0.4, 0.5)
    assert not inside_uncertainty(0.6, 0.5)
    assert inside_uncertainty(0.6, 0.5, 0.5)


def test_chance_against_a_closed_form() -> None:
    """At L* 50 and no chroma, CIEDE2000 along L* is dL* itself: a one-dimensional normal."""
    from scipy.stats import norm

    for predicted, sd in ((50.0, 0.9), (51.0, 0.9), (53.0, 0.5)):
        chance = chance_within(
            colour_of(predicted), colour_of(50.0), (sd, 0.0, 0.0), calibrated=True
        )
        low, high = norm.cdf([-1.8, 1.8], predicted - 50.0, sd)
        # The weight of L* away from 50 makes dE00 a little smaller than dL*.
        assert chance == pytest.approx(high - low, abs=0.02)


def test_chance_falls_with_distance_and_doubt() -> None:
    wanted = colour_of(75.0, 1.0, 16.0)
    chances = [
        chance_within(colour_of(75.0 - away, 1.0, 16.0), wanted, (0.5, 0.5, 0.5), calibrated=True)
        for away in (0.0, 1.0, 2.0, 4.0)
    ]
    assert chances == sorted(chances, reverse=True)
    assert chances[0] == pytest.approx(1.0, abs=0.02)
    assert chances[-1] < 0.05
    doubtful = chance_within(wanted, wanted, UNCALIBRATED_SD, calibrated=True)
    assert doubtful is not None
    assert doubtful < 0.5


def test_a_plan_is_calibrated_when_all_of_it_is() -> None:
    calibrated = Provenance.CALIBRATED
    catalogue = materials()
    plan = plan_of(["barley", "slate"])
    assert not is_calibrated(catalogue, plan)
    blocks = tuple(replace(one, provenance=calibrated) for one in catalogue.blocks)
    assert not is_calibrated(replace(catalogue, blocks=blocks), plan)
    liquids = tuple(
        replace(one, provenance=calibrated) if one.name in ("barley", "slate") else one
        for one in catalogue.liquids
    )
    whole = replace(catalogue, blocks=blocks, liquids=liquids)
    assert is_calibrated(whole, plan)
    assert not is_calibrated(whole, plan_of(["barley", "umber"]))
    assert np.isfinite(UNCALIBRATED_SD).all()
