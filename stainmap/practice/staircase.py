"""A test of two alternatives whose difference shrinks, and the difference a person can just tell.

Two greys are shown, the trainee says which is lighter. The next difference is chosen where the
answer tells most, by the psi method [Kontsevich1999]: all that is not known (threshold, slope,
lapses) is a grid of probabilities, each answer changes them by Bayes' rule, and the difference is
taken whose answer is expected to tell most about the threshold alone. As on the staircases of
[Levitt1971] right answers make the difference smaller and wrong ones larger, and turns are counted;
but the threshold comes from all answers, not from the turns alone.

The chance of a right answer is that of signal detection [Green1966] with a lapse rate
[Wichmann2001],

    0.5 + (0.5 - lapse) (2 Phi(z (d / threshold)^slope) - 1),    z = Phi^-1(5/6)

with slope 1 where nothing but even noise lies on both greys, and steeper where the eye gains on
larger differences. So the threshold is the difference told apart in five of six cases, lapses
apart. That is between the 79 % of the usual staircase [Levitt1971] and the 84 % of one standard
deviation of the noise; three of four cases, the other usual mark, takes half as many pairs again
for the same certainty, since answers there say less.

The test ends as soon as the answers leave no more than `DOUBT` that its threshold is off by more
than 20 %, so an even hand is done sooner than an uneven one, and nobody by a fixed count. An answer
of two alternatives says little: with even noise it takes some 450 pairs, with a steep curve some
200. How well that does is held by `tests/practice/test_staircase.py` with simulated observers.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from functools import cache, lru_cache
from itertools import pairwise
from statistics import NormalDist
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtr

from stainmap.practice.grey_steps import GreyPair, grey_pair, smallest_step_dl

FloatArray = NDArray[np.float64]

LIGHTNESS: Final = 75.0
"""About the body of a natural crown: the value a trainee has to judge."""
SHARE: Final = 5.0 / 6.0
"""Share of right answers at the threshold."""
WITHIN: Final = 0.2
"""The threshold is to be found within this share of itself."""
DOUBT: Final = 0.02
"""Probability, by the answers, that it is not; the test ends there."""
LEAST_TRIALS: Final = 40
MOST_TRIALS: Final = 550
RANGE_DL: Final = (0.5, 4.0)
"""Thresholds that are found as surely as said; finer ones a screen does not show, of coarser ones
the plainest pairs are not plain enough to tell lapses from doubt (94 of 100 within 20 % at 6)."""

_Z: Final = NormalDist().inv_cdf(SHARE)
# Told without asking, from plain to fine: what is asked becomes clear, and lapses show.
_FIRST_DL: Final = (9.0, 6.0, 4.0, 2.5)
_THRESHOLDS: Final = np.geomspace(0.1, 25.0, 100)
_COARSEST_DL: Final = 10.0
_SURE: Final = 0.98
# About the uncertainty (one sd) at which no more than the doubt is left.
_ENOUGH_SD: Final = 0.083
# 1 is what even noise on both greys gives, 2 to 3 what detecting an edge does; below 1 attention
# comes and goes. How likely each is to begin with is assumed; answers soon outweigh it.
_SLOPES: Final = np.array([0.85, 1.0, 1.2, 1.5, 2.0, 2.8])
_SLOPES_LIKELY: Final = np.array([0.15, 0.25, 0.20, 0.15, 0.15, 0.10])
_LAPSES: Final = np.array([0.0, 0.01, 0.02, 0.035])
_LARGEST_DL: Final = 20.0
_OUT_OF_THE_QUESTION: Final = 1e-6


@cache
def _unknowns() -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return threshold, slope and lapse (N,) of every cell of the grid."""
    grid = np.meshgrid(_THRESHOLDS, _SLOPES, _LAPSES, indexing="ij")
    threshold, slope, lapse = (one.ravel() for one in grid)
    return threshold, slope, lapse


@cache
def _prior() -> FloatArray:
    """Return the probability (N,) of every cell before the first answer."""
    shape = (len(_THRESHOLDS), len(_SLOPES), len(_LAPSES))
    weights: FloatArray = np.broadcast_to(_SLOPES_LIKELY[None, :, None], shape).ravel()
    weights = weights / float(weights.sum())
    weights.flags.writeable = False
    return weights


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """What was shown, and whether the answer was right."""

    pair: GreyPair
    correct: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Threshold:
    """What a person can just tell apart, as far as the answers say.

    Parameters
    ----------
    threshold_dl
        The just-noticeable difference in L*, right in `SHARE` of the cases.
    relative_sd
        Its uncertainty, one sd, as a share of it.
    low_dl, high_dl
        Between them it lies with 95 % probability.
    doubt
        Probability that it is off by more than `WITHIN`.
    below_screen
        It is rather smaller than the smallest difference the screen shows, which `threshold_dl` is
        then: it lies below that.
    not_found
        Even large differences were not told apart; `threshold_dl` means nothing then.
    """

    threshold_dl: float
    relative_sd: float
    low_dl: float
    high_dl: float
    doubt: float
    below_screen: bool
    not_found: bool

    @property
    def details(self) -> dict[str, Any]:
        """What an attempt in the lab book keeps of it, see `progress.threshold_curve`."""
        if self.not_found:
            return {"threshold_found": False}
        return {
            "threshold_dl": self.threshold_dl,
            "threshold_sd": self.relative_sd * self.threshold_dl,
            "threshold_share": round(SHARE, 4),
            "threshold_below_screen": self.below_screen,
        }


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Staircase:
    """A test on its way; every answer makes a new one, so that nothing is lost by going back.

    Parameters
    ----------
    lightness
        L* about which the greys lie.
    trials
        What has been answered.
    most_trials
        It ends after so many at the latest.
    """

    lightness: float = LIGHTNESS
    trials: tuple[Trial, ...] = ()
    most_trials: int = MOST_TRIALS
    _weights: FloatArray = field(default_factory=_prior)

    @property
    def finished(self) -> bool:
        """True when no more needs to be asked."""
        if len(self.trials) >= self.most_trials:
            return True
        if len(self.trials) < LEAST_TRIALS:
            return False
        edges, below = self._distribution()
        finer, coarser = _beyond(edges, below, self.lightness)
        return max(finer, coarser) > _SURE or self.threshold().doubt <= DOUBT

    @property
    def reversals(self) -> int:
        """How often shrinking differences turned into growing ones or the other way round."""
        shown = [trial.pair.difference_dl for trial in self.trials]
        steps = [b - a for a, b in pairwise(shown) if b != a]
        return sum(one * other < 0.0 for one, other in pairwise(steps))

    @property
    def share_done(self) -> float:
        """How far the test is, 0 to 1, by how much more has to be known of the threshold.

        Certainty grows as the inverse square of the uncertainty, and so with the number of pairs.
        It may go back a little after an answer that surprises.
        """
        asked = len(self.trials) / self.most_trials
        known = (_ENOUGH_SD / max(self.threshold().relative_sd, _ENOUGH_SD)) ** 2
        return min(max(asked, known * min(len(self.trials) / LEAST_TRIALS, 1.0)), 1.0)

    def next_pair(self) -> GreyPair:
        """Return the two greys to show next; which stands left is for the caller to draw by lot."""
        if len(self.trials) < len(_FIRST_DL):
            return grey_pair(self.lightness, _FIRST_DL[len(self.trials)])
        # Of the threshold alone: slope and lapses are to be known only as far as they serve it.
        weights = self._weights.reshape(len(_THRESHOLDS), -1)
        likely = weights.sum(axis=1)
        # What is out of the question tells nothing, and takes most of the time.
        kept = np.flatnonzero(likely > _OUT_OF_THE_QUESTION)
        weights, likely = weights[kept], likely[kept]
        right = np.einsum("ptk,tk->pt", _chances(self.lightness)[:, kept], weights) / likely
        told = _entropy_of(right @ likely) - _entropy_of(right) @ likely
        return _pairs(self.lightness)[int(told.argmax())]

    def answered(self, pair: GreyPair, *, correct: bool) -> Staircase:
        """Return the test with one answer more."""
        chance = _chance(pair.difference_dl)
        weights = self._weights * (chance if correct else 1.0 - chance)
        weights = weights / weights.sum()
        weights.flags.writeable = False
        trial = Trial(pair=pair, correct=correct)
        return replace(self, trials=(*self.trials, trial), _weights=weights)

    def taken_back(self) -> Staircase:
        """Return the test without its last answer, as before it was given; itself if there is none.

        For a finger that slipped: nobody is told whether an answer was right, so taking one back
        helps nobody who cannot see the difference.
        """
        test = replace(self, trials=(), _weights=_prior())
        for trial in self.trials[:-1]:
            test = test.answered(trial.pair, correct=trial.correct)
        return test

    def threshold(self) -> Threshold:
        """Return what the answers so far say; its uncertainty is wide at the beginning."""
        edges, below = self._distribution()
        weights, logs = np.diff(below), 0.5 * (edges[:-1] + edges[1:])
        mean = float(weights @ logs)
        sd = math.sqrt(max(float(weights @ (logs - mean) ** 2), 0.0))
        low, high = np.exp(np.interp([0.025, 0.975], below, edges))
        # What is told is the figure from which the truth is least likely off by more than that;
        # as a share below is less than the same share above, it lies a little under the mean.
        told = mean - 0.5 * (math.log(1.0 / (1.0 - WITHIN)) - math.log(1.0 + WITHIN))
        bounds = [told - math.log(1.0 + WITHIN), told - math.log(1.0 - WITHIN)]
        near = np.interp(bounds, edges, below)
        finer, coarser = _beyond(edges, below, self.lightness)
        step = smallest_step_dl(self.lightness)
        return Threshold(
            threshold_dl=step if finer > 0.5 else math.exp(told),
            relative_sd=sd,
            low_dl=float(low),
            high_dl=float(high),
            doubt=1.0 - float(near[1] - near[0]),
            below_screen=finer > 0.5,
            not_found=coarser > 0.5,
        )

    def _distribution(self) -> tuple[FloatArray, FloatArray]:
        """Return logarithms of thresholds (T + 1,), and how likely it is to lie below each."""
        weights = self._weights.reshape(len(_THRESHOLDS), -1).sum(axis=1)
        logs = np.log(_THRESHOLDS)
        edge = 0.5 * (logs[1] - logs[0])
        edges = np.concatenate([logs - edge, [logs[-1] + edge]])
        return edges, np.concatenate([[0.0], np.cumsum(weights)])


def _beyond(edges: FloatArray, below: FloatArray, lightness: float) -> tuple[float, float]:
    """Return how likely a threshold is finer than the screen, and coarser than can be tested."""
    finer = float(np.interp(math.log(smallest_step_dl(lightness)), edges, below))
    return finer, 1.0 - float(np.interp(math.log(_COARSEST_DL), edges, below))


@lru_cache(maxsize=256)
def _chance(difference_dl: float) -> FloatArray:
    """Return the chance of a right answer (N,) for every cell of the grid."""
    threshold, slope, lapse = _unknowns()
    seen = 2.0 * ndtr(_Z * (difference_dl / threshold) ** slope) - 1.0
    return np.asarray(0.5 + (0.5 - lapse) * seen, dtype=np.float64)


@cache
def _pairs(lightness: float) -> tuple[GreyPair, ...]:
    """Return all pairs a test may show about a lightness, the finest first."""
    found: dict[GreyPair, None] = {}
    for difference in np.geomspace(0.1, _LARGEST_DL, 70):
        found.setdefault(grey_pair(lightness, float(difference)))
    return tuple(found)


@cache
def _chances(lightness: float) -> FloatArray:
    """Return the chances (pairs, T, N / T) of right answers."""
    chances = np.stack([_chance(pair.difference_dl) for pair in _pairs(lightness)])
    return chances.reshape(len(chances), len(_THRESHOLDS), -1)


def _entropy_of(chance: FloatArray) -> FloatArray:
    """Return the entropy of an answer with this chance of being right."""
    sure = np.clip(chance, 1e-12, 1.0 - 1e-12)
    return -(sure * np.log(sure) + (1.0 - sure) * np.log1p(-sure))
