"""What three patches tell of a display: its mid tones, its dark tones, the least step seen on it.

The picture of a crown is encoded as IEC 61966-2-1 has it; whether the display decodes it so is
judged by an eye. No eye can judge white by itself; a display for colour work is set to D65.
"""

from __future__ import annotations

import json
from dataclasses import asdict, dataclass
from datetime import date
from math import log
from typing import Final

import numpy as np

from stainmap.optics.colorimetry import encode_srgb
from stainmap.words import translate

EVEN_GREY: Final = round(float(encode_srgb(0.5)) * 255.0)
"""Encoded grey that looks like fine black and white lines on a display as it should be: 188."""

DARK_CODES: Final = (4, 8, 12, 18, 26)
"""Encoded greys of the five dark squares on black."""

STEPS_L: Final = (2.0, 1.0, 0.5)
"""L* by which the three squares are lighter than the tooth-coloured patch around them."""

TOOTH_LAB: Final = (74.0, 2.0, 18.0)

# A crown's colours lie about here.
_CROWN_LIGHTNESS: Final = 74.0
_RIGHT_WITHIN_L: Final = 2.0
_DARK_ENOUGH: Final = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class DisplayJudgement:
    """What somebody saw on a display.

    Parameters
    ----------
    grey
        Encoded grey, 1 to 254, that looked as light as black and white lines.
    dark_seen, steps_seen
        How many of the dark squares and of the tooth-coloured ones were seen.
    day
        When, as YYYY-MM-DD.
    """

    grey: int
    dark_seen: int
    steps_seen: int
    day: str

    def __post_init__(self) -> None:
        """Refuse what cannot have been seen."""
        if not (
            1 <= self.grey <= 254
            and 0 <= self.dark_seen <= len(DARK_CODES)
            and 0 <= self.steps_seen <= len(STEPS_L)
        ):
            raise ValueError("a judgement of the display is out of range")

    @property
    def exponent(self) -> float:
        """Exponent of the display's curve that gives half the light at `grey`."""
        return log(0.5) / log(self.grey / 255.0)

    @property
    def crown_lightness_error(self) -> float:
        """How much lighter than meant a colour of L* 74 is shown, in L*."""
        meant = ((_CROWN_LIGHTNESS + 16.0) / 116.0) ** 3
        shown = float(encode_srgb(meant)) ** self.exponent
        # Held to the curve of an exponent through the right grey, so that only the eye's own
        # deviation counts.
        right = float(encode_srgb(meant)) ** (log(0.5) / log(EVEN_GREY / 255.0))
        return float(116.0 * (np.cbrt(shown) - np.cbrt(right)))

    @property
    def least_step(self) -> float | None:
        """The least step in L* that was seen; None if none was."""
        return STEPS_L[self.steps_seen - 1] if self.steps_seen else None

    @property
    def is_good(self) -> bool:
        """True if crowns are shown about as light as meant, and steps of one L* are seen."""
        step = self.least_step
        return (
            abs(self.crown_lightness_error) <= _RIGHT_WITHIN_L
            and self.dark_seen >= _DARK_ENOUGH
            and step is not None
            and step <= 1.0
        )

    @property
    def sentences(self) -> tuple[str, ...]:
        """What follows from it, a sentence each."""
        error = self.crown_lightness_error
        if abs(error) <= _RIGHT_WITHIN_L:
            first = translate(
                "display check", "Crowns are shown about as light as they are predicted."
            )
        else:
            text = (
                translate(
                    "display check",
                    "Crowns are shown about {error:.0f} L* lighter than they are predicted.",
                )
                if error > 0
                else translate(
                    "display check",
                    "Crowns are shown about {error:.0f} L* darker than they are predicted.",
                )
            )
            first = text.format(error=abs(error))
        if self.dark_seen >= _DARK_ENOUGH:
            second = translate("display check", "Grooves keep their dark tones.")
        else:
            second = translate(
                "display check", "Dark tones run together: grooves look deeper than they are."
            )
        step = self.least_step
        if step is None:
            third = translate(
                "display check", "Not even a step of 2 L* is seen: decide by the figures alone."
            )
        else:
            third = translate("display check", "A step of {step:g} L* is seen.").format(step=step)
        return first, second, third

    @property
    def in_short(self) -> str:
        """One line for where there is room for one."""
        if self.is_good:
            return translate(
                "display check", "display judged on {day}: good enough to look at"
            ).format(day=self.day)
        return translate("display check", "display judged on {day}: decide by the figures").format(
            day=self.day
        )

    def to_text(self) -> str:
        """Return it as text that `judgement_from` reads."""
        return json.dumps(asdict(self))


def judgement_from(text: str) -> DisplayJudgement | None:
    """Return the judgement in a text, or None if there is none that makes sense."""
    try:
        found = json.loads(text)
        date.fromisoformat(str(found["day"]))
        return DisplayJudgement(
            grey=int(found["grey"]),
            dark_seen=int(found["dark_seen"]),
            steps_seen=int(found["steps_seen"]),
            day=str(found["day"]),
        )
    except (ValueError, TypeError, KeyError):
        return None
