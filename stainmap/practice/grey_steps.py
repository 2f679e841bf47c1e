"""Greys as a screen shows them: whole steps of its levels, and what they are in L*.

A screen of 8 bits a colour has 256 greys. Near the value of a tooth the next grey is 0.4 L* away:
no finer difference can be shown, so none can be tested.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.optics.colorimetry import decode_srgb, xyz_to_lab
from stainmap.words import translate

LEVELS: Final = 256
_DARKEST, _LIGHTEST = 20.0, 95.0


@dataclass(frozen=True, slots=True, kw_only=True)
class GreyPair:
    """Two greys of which one is lighter.

    Parameters
    ----------
    darker, lighter
        Levels of the screen, 0 to 255, the same in red, green and blue.
    """

    darker: int
    lighter: int

    def __post_init__(self) -> None:
        """Refuse levels that no screen has, and greys that are alike."""
        if not 0 <= self.darker < self.lighter < LEVELS:
            raise ValueError(f"{self.darker} and {self.lighter} are no two greys of a screen")

    @property
    def difference_dl(self) -> float:
        """How far they are apart, L*."""
        return float(_lightness()[self.lighter] - _lightness()[self.darker])


@cache
def _lightness() -> NDArray[np.float64]:
    """Return L* (256) of all greys by the sRGB curve [IEC1999], white being 100."""
    luminance = decode_srgb(np.arange(LEVELS) / (LEVELS - 1.0))
    lightness = xyz_to_lab(np.stack([luminance] * 3, axis=-1), np.ones(3))[:, 0]
    lightness.flags.writeable = False
    return lightness


def grey_lightness(level: int) -> float:
    """Return L* of a grey on a screen that keeps to sRGB; its white is 100."""
    if not 0 <= level < LEVELS:
        raise ValueError(f"a screen has no level {level}")
    return float(_lightness()[level])


@cache
def smallest_step_dl(lightness: float) -> float:
    """Return the smallest difference in L* that 8 bits show about a lightness."""
    return grey_pair(lightness, 0.0).difference_dl


def grey_pair(lightness: float, difference_dl: float) -> GreyPair:
    """Return the two greys about a lightness that come nearest to a difference, one level at least.

    Raises
    ------
    PlanError
        If the screen has no two such greys: lightness outside 20 to 95.
    """
    if not _DARKEST <= lightness <= _LIGHTEST:
        raise PlanError(
            translate(
                "grey steps", "A lightness of {lightness:g} cannot be tested on a screen."
            ).format(lightness=lightness),
            advice=translate(
                "grey steps", "Choose one from {darkest:.0f} to {lightest:.0f}."
            ).format(darkest=_DARKEST, lightest=_LIGHTEST),
        )
    grey = _lightness()
    best: tuple[float, GreyPair] | None = None
    for levels in range(1, LEVELS):
        middles = 0.5 * (grey[levels:] + grey[:-levels])
        darker = int(np.abs(middles - lightness).argmin())
        pair = GreyPair(darker=darker, lighter=darker + levels)
        off = abs(pair.difference_dl - difference_dl)
        if best is not None and off >= best[0]:
            return best[1]
        best = (off, pair)
    raise AssertionError("no screen has greys that far apart")


def step_sentence(lightness: float) -> str:
    """Return what the screen cannot show about a lightness, as it is said beside the test."""
    step = smallest_step_dl(lightness)
    return translate(
        "grey steps",
        "A screen of 8 bits a colour shows no difference below {step:.2f} L* near L* "
        "{lightness:.0f}; whoever sees that one nearly always may see finer ones than "
        "can be shown here.",
    ).format(step=step, lightness=lightness)
