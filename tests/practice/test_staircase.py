"""Simulated observers of known threshold are recovered; what a screen cannot show is said.

The observers are ours, the laws they follow are not: even noise on both greys is signal detection
with equal variances, whose share of right answers is the normal distribution's (from the standard
library), and the Weibull curve is the usual one for detection. The program's own curve is of
neither kind exactly. This tests the arithmetic of the test, not human eyes.
"""

from __future__ import annotations

import os
from collections.abc import Callable
from statistics import NormalDist

import numpy as np
import pytest

from stainmap.errors import PlanError
from stainmap.practice.grey_steps import (
    GreyPair,
    grey_lightness,
    grey_pair,
    smallest_step_dl,
    step_sentence,
)
from stainmap.practice.staircase import (
    DOUBT,
    LEAST_TRIALS,
    MOST_TRIALS,
    RANGE_DL,
    SHARE,
    Staircase,
)

MORE = bool(os.environ.get("STAINMAP_MORE"))
SEEDS = 100 if MORE else 3
THRESHOLDS_DL = (*RANGE_DL, 0.7, 1.0, 2.0, 3.0) if MORE else (0.7, 3.0)
Observer = Callable[[float], float]


def even_noise(threshold_dl: float, lapse: float) -> Observer:
    """Return the chance of a right answer of an observer right in 5 of 6 cases at a threshold."""
    normal = NormalDist(0.0, threshold_dl / NormalDist().inv_cdf(SHARE))
    return lambda difference: 0.5 * lapse + (1.0 - lapse) * normal.cdf(difference)


def steep(threshold_dl: float, lapse: float) -> Observer:
    """Return the same of a Weibull curve of slope 3."""
    at_share = (-np.log2(2.0 * (1.0 - SHARE))) ** (1.0 / 3.0)

    def chance(difference: float) -> float:
        seen = 1.0 - 0.5 * 2.0 ** -((at_share * difference / threshold_dl) ** 3)
        return float(0.5 * lapse + (1.0 - lapse) * seen)

    return chance


def answers_of(observer: Observer, seed: int) -> Staircase:
    chance = np.random.default_rng(seed)
    test = Staircase()
    while not test.finished:
        pair = test.next_pair()
        right = bool(chance.random() < observer(pair.difference_dl))
        test = test.answered(pair, correct=right)
    return test


@pytest.mark.parametrize("lapse", [0.0, 0.04])
@pytest.mark.parametrize("kind", [even_noise, steep])
def test_thresholds_are_recovered(kind: Callable[[float, float], Observer], lapse: float) -> None:
    """In 95 of 100 single tests within 20 %, at every threshold in range.

    With STAINMAP_MORE a hundred tests at each of six thresholds; else a few, of which one may miss.
    """
    errors, covered, lengths = [], [], []
    within: dict[float, list[bool]] = {}
    for threshold_dl in THRESHOLDS_DL:
        observer = kind(threshold_dl, lapse)
        # Other seeds at each threshold: the same lots would err the same way at all of them.
        seeds = (100_000 * int(10 * threshold_dl) + seed for seed in range(SEEDS))
        for test in (answers_of(observer, seed) for seed in seeds):
            found = test.threshold()
            ratio = found.threshold_dl / threshold_dl
            within.setdefault(threshold_dl, []).append(0.8 < ratio < 1.2)
            errors.append(np.log(ratio) / found.relative_sd)
            covered.append(found.low_dl < threshold_dl < found.high_dl)
            lengths.append(len(test.trials))
            assert LEAST_TRIALS <= len(test.trials) <= MOST_TRIALS
            assert found.doubt <= DOUBT or len(test.trials) == MOST_TRIALS or found.below_screen
            assert not found.not_found
    if MORE:
        assert {one: np.mean(hits) for one, hits in within.items() if np.mean(hits) < 0.95} == {}
    assert sum(not hit for hits in within.values() for hit in hits) <= max(
        1, round(0.05 * len(errors))
    )
    # The uncertainty is honest: errors are of its size, and the interval holds the truth.
    assert np.sqrt(np.mean(np.square(errors))) < 1.35
    assert np.mean(covered) >= 0.85
    # Whoever is steadier is done sooner.
    if kind is steep:
        assert np.median(lengths) < 320


def test_an_even_hand_is_done_sooner() -> None:
    pairs = [
        np.mean([len(answers_of(kind(1.5, 0.0), seed).trials) for seed in range(2)])
        for kind in (steep, even_noise)
    ]
    assert pairs[0] < 0.8 * pairs[1]


def test_an_answer_is_taken_back() -> None:
    test = Staircase()
    assert test.taken_back().trials == ()
    for correct in (True, True, False):
        before = test
        test = test.answered(test.next_pair(), correct=correct)
    again = test.taken_back()
    assert again.trials == before.trials
    assert again.threshold() == before.threshold()
    assert again.next_pair() == before.next_pair()


def test_how_far_it_is_rises_to_the_end() -> None:
    chance, observer, test = np.random.default_rng(4), steep(1.0, 0.0), Staircase()
    shares = [test.share_done]
    while not test.finished:
        pair = test.next_pair()
        test = test.answered(pair, correct=bool(chance.random() < observer(pair.difference_dl)))
        shares.append(test.share_done)
    assert shares[0] == 0.0
    assert shares[len(shares) // 2] < shares[-1]
    assert shares[-1] > 0.8
    assert max(shares) <= 1.0


def test_the_difference_shrinks_and_turns() -> None:
    test = answers_of(steep(1.0, 0.0), 3)
    shown = [trial.pair.difference_dl for trial in test.trials]
    assert shown[0] > 8.0
    assert shown[:4] == sorted(shown[:4], reverse=True)
    assert max(shown[60:]) < 4.5
    assert test.reversals > 10
    rising, falling = Staircase(), Staircase()
    for difference in (4.0, 2.0, 1.0):
        falling = falling.answered(grey_pair(75.0, difference), correct=True)
    assert falling.reversals == 0
    rising = falling.answered(grey_pair(75.0, 3.0), correct=False)
    assert rising.reversals == 1


def test_answers_move_the_threshold_the_right_way() -> None:
    pair = grey_pair(75.0, 1.5)
    right, wrong = Staircase(), Staircase()
    for _ in range(8):
        right, wrong = right.answered(pair, correct=True), wrong.answered(pair, correct=False)
    begin = Staircase().threshold()
    assert right.threshold().threshold_dl < begin.threshold_dl < wrong.threshold().threshold_dl
    assert right.threshold().relative_sd < begin.relative_sd
    assert begin == Staircase().threshold()


def test_an_eye_finer_than_the_screen_is_said_to_be_so() -> None:
    test = answers_of(steep(0.05, 0.0), 1)
    assert len(test.trials) < 150
    found = test.threshold()
    assert found.below_screen
    assert found.threshold_dl == smallest_step_dl(75.0)
    assert found.details["threshold_below_screen"]


def test_guessing_finds_nothing() -> None:
    tests = [answers_of(lambda _: 0.5, seed) for seed in range(4)]
    assert all(len(one.trials) < 250 for one in tests)
    found = [one.threshold() for one in tests]
    assert all(one.not_found for one in found)
    assert not any(one.below_screen for one in found)
    assert [one.details for one in found] == [{"threshold_found": False}] * 4


def test_greys_are_those_of_the_srgb_standard() -> None:
    """Values of CIE L* of sRGB greys from memory: level 119 is about 50, 188 half the light."""
    assert grey_lightness(0) == 0.0
    assert grey_lightness(255) == pytest.approx(100.0, abs=1e-9)
    assert grey_lightness(119) == pytest.approx(50.03, abs=0.02)
    assert grey_lightness(188) == pytest.approx(76.0, abs=0.25)


def test_the_smallest_step_near_a_tooth() -> None:
    """By the slope of the two curves: about 0.39 L* a level near L* 75."""
    assert 0.35 < smallest_step_dl(75.0) < 0.42
    pair = grey_pair(75.0, 0.0)
    assert pair.lighter - pair.darker == 1
    assert f"{smallest_step_dl(75.0):.2f} L*" in step_sentence(75.0)


@pytest.mark.parametrize("lightness", [20.0, 55.0, 75.0, 88.0, 95.0])
@pytest.mark.parametrize("difference_dl", [0.1, 0.7, 1.3, 2.5, 4.0])
def test_pairs_are_the_nearest_there_are(lightness: float, difference_dl: float) -> None:
    pair = grey_pair(lightness, difference_dl)
    step = smallest_step_dl(lightness)
    if difference_dl > step:
        assert abs(pair.difference_dl - difference_dl) <= 0.55 * step
    middle = 0.5 * (grey_lightness(pair.darker) + grey_lightness(pair.lighter))
    assert abs(middle - lightness) <= 0.6 * step


def test_greys_no_screen_has_are_refused() -> None:
    with pytest.raises(PlanError, match="cannot be tested on a screen"):
        grey_pair(99.0, 1.0)
    for darker, lighter in ((5, 5), (9, 3), (-1, 3), (250, 256)):
        with pytest.raises(ValueError, match="no two greys"):
            GreyPair(darker=darker, lighter=lighter)
