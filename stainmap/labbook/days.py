"""Days between repeats, checked."""

from __future__ import annotations

import re
from collections.abc import Iterable
from itertools import pairwise
from typing import Final

from stainmap.errors import LabbookError
from stainmap.words import translate

MOST_DAYS: Final = 3650
MOST_REPEATS: Final = 10
_BETWEEN = re.compile(r"[,;\s]+")


def checked_days(days: Iterable[int]) -> tuple[int, ...]:
    """Return days of repeats; refuse none, more than ten, what does not rise, and over 3650.

    Raises
    ------
    LabbookError
        If they do not fit; the sentence shows them.
    """
    chosen = tuple(days)
    rising = all(one < other for one, other in pairwise(chosen))
    few = 1 <= len(chosen) <= MOST_REPEATS
    if not few or not rising or chosen[0] < 1 or chosen[-1] > MOST_DAYS:
        raise _unfit(", ".join(map(str, chosen)))
    return chosen


def days_from_text(text: str) -> tuple[int, ...]:
    """Return days of repeats as somebody types them, "1, 7, 30"; raises as `checked_days`."""
    words = [word for word in _BETWEEN.split(text) if word]
    if not all(word.isascii() and word.isdigit() and len(word) <= 6 for word in words):
        raise _unfit(" ".join(text.split())[:40])
    return checked_days(int(word) for word in words)


def _unfit(given: str) -> LabbookError:
    return LabbookError(
        translate("days", "The days of repeats ({value}) do not fit.").format(
            value=given or translate("days", "none")
        ),
        advice=translate(
            "days",
            "Give one to {most_repeats} whole numbers from 1 to {most_days} that rise, as "
            "1, 7, 30.",
        ).format(most_repeats=MOST_REPEATS, most_days=MOST_DAYS),
    )
