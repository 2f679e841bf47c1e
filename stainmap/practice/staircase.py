"""A test of two alternatives whose difference shrinks, and the difference a person can just tell.

Two greys are shown, the trainee says which is lighter. The next difference is chosen where the
answer tells most, by the psi method [Kontsevich1999]: all that is not known (threshold, slope,
lapses) is a grid of probabilities, each answer changes them by Bayes' rule, and the difference is
taken whose answer is expected to tell most about the threshold alone. The chance of a right answer
is that of [Wichmann2001],

    0.5 + (0.5 - lapse) (1 - 2^-(d / threshold)^slope)

so that the threshold is the difference told apart in three of four cases, lapses apart: the usual
just-noticeable difference of two alternatives. As on the staircases of [Levitt1971] right answers
make the difference smaller and wrong ones larger, and turns are counted; but the threshold comes
from all answers, not from the turns alone, and the test ends by its uncertainty or its length.

How well it does: simulated observers with even noise are found within 20 % in four tests of five
(in three of four if they lapse in one answer of 25), those with a steeper curve nearly always, and
the stated uncertainty is that of the errors (`tests/practice/test_staircase.py`). An answer says
little: only tests more than twice as long do much better.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from functools import cache, lru_cache
from itertools import pairwise
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from stainmap.practice.grey_steps import GreyPair, grey_pair, smallest_step_dl

FloatArray = NDArray[np.float64]

LIGHTNESS: Final = 75.0
"""About the body of a natural crown: the value a trainee has to judge."""
LEAST_TRIALS: Final = 40
MOST_TRIALS: Final = 150
ENOUGH: Final = 0.12
"""Relative uncertainty (one sd) at which a test ends before its last trial."""

# Told without asking, from plain to fine: what is asked becomes clear, and lapses show.
_FIRST_DL: Final = (9.0, 6.0, 4.0, 2.5)
_THRESHOLDS: Final = np.geomspace(0.12, 12.0, 70)
# Of Weibull curves; 1.3 is what even noise on both greys gives, near 4 what detecting an edge does.
_SLOPES: Final = np.array([1.0, 1.4, 2.0, 2.8, 4.0])
_LAPSES: Final = np.array([0.0, 0.01, 0.03])
_LARGEST_DL: Final = 12.0


@cache
def _unknowns() -> tuple[FloatArray, FloatArray, FloatArray]:
    """Return threshold, slope and lapse (N,) of every cell of the grid."""
    grid = np.meshgrid(_THRESHOLDS, _SLOPES, _LAPSES, indexing="ij")
    threshold, slope, lapse = (one.ravel() for one in grid)
    return threshold, slope, lapse


@cache
def _prior() -> FloatArray:
    """Return the probability (N,) of every cell before the first answer: all alike."""
    count = len(_unknowns()[0])
    weights = np.full(count, 1.0 / count)
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
        The just-noticeable difference in L*, right in three of four cases.
    relative_sd
        Its uncertainty, one sd, as a share of it.
    low_dl, high_dl
        Between them it lies with 95 % probability.
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
        It ends after so many, or after `LEAST_TRIALS` when the uncertainty is below `ENOUGH`.
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
        return len(self.trials) >= LEAST_TRIALS and self.threshold().relative_sd <= ENOUGH

    @property
    def reversals(self) -> int:
        """How often shrinking differences turned into growing ones or the other way round."""
        shown = [trial.pair.difference_dl for trial in self.trials]
        steps = [b - a for a, b in pairwise(shown) if b != a]
        return sum(one * other < 0.0 for one, other in pairwise(steps))

    def next_pair(self) -> GreyPair:
        """Return the two greys to show next; which stands left is for the caller to draw by lot."""
        if len(self.trials) < len(_FIRST_DL):
            return grey_pair(self.lightness, _FIRST_DL[len(self.trials)])
        # Of the threshold alone: slope and lapses are to be known only as far as they serve it.
        weights = self._weights.reshape(len(_THRESHOLDS), -1)
        likely = weights.sum(axis=1)
        chances = _chances(self.lightness).reshape(-1, *weights.shape)
        right = np.einsum("ptk,tk->pt", chances, weights) / np.maximum(likely, 1e-300)
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

    def threshold(self) -> Threshold:
        """Return what the answers so far say; its uncertainty is wide at the beginning."""
        shape = (len(_THRESHOLDS), len(_SLOPES) * len(_LAPSES))
        weights = self._weights.reshape(shape).sum(axis=1)
        logs = np.log(_THRESHOLDS)
        mean = float(weights @ logs)
        sd = math.sqrt(max(float(weights @ (logs - mean) ** 2), 0.0))
        below = np.concatenate([[0.0], np.cumsum(weights)])
        edge = 0.5 * (logs[1] - logs[0])
        edges = np.concatenate([logs - edge, [logs[-1] + edge]])
        low, high = np.exp(np.interp([0.025, 0.975], below, edges))
        step = smallest_step_dl(self.lightness)
        finer = float(np.interp(math.log(step), edges, below))
        coarser = 1.0 - float(np.interp(math.log(_LARGEST_DL / 2.0), edges, below))
        return Threshold(
            threshold_dl=step if finer > 0.5 else math.exp(mean),
            relative_sd=sd,
            low_dl=float(low),
            high_dl=float(high),
            below_screen=finer > 0.5,
            not_found=coarser > 0.5,
        )


@lru_cache(maxsize=256)
def _chance(difference_dl: float) -> FloatArray:
    """Return the chance of a right answer (N,) for every cell of the grid."""
    threshold, slope, lapse = _unknowns()
    seen = -np.expm1(-math.log(2.0) * (difference_dl / threshold) ** slope)
    return np.asarray(0.5 + (0.5 - lapse) * seen, dtype=np.float64)


@cache
def _pairs(lightness: float) -> tuple[GreyPair, ...]:
    """Return all pairs a test may show about a lightness, the finest first."""
    found: dict[GreyPair, None] = {}
    for difference in np.geomspace(0.1, _LARGEST_DL, 60):
        found.setdefault(grey_pair(lightness, float(difference)))
    return tuple(found)


@cache
def _chances(lightness: float) -> FloatArray:
    """Return the chances (pairs, N) of right answers."""
    return np.stack([_chance(pair.difference_dl) for pair in _pairs(lightness)])


def _entropy_of(chance: FloatArray) -> FloatArray:
    """Return the entropy of an answer with this chance of being right."""
    sure = np.clip(chance, 1e-12, 1.0 - 1e-12)
    return -(sure * np.log(sure) + (1.0 - sure) * np.log1p(-sure))
