"""Whether all crowns of a pack can be made: looked at before a pack is shared."""

from __future__ import annotations

from collections.abc import Callable

from stainmap.errors import CancelledError, PackError, StainmapError
from stainmap.practice.exercise_crown import practice_crown
from stainmap.practice.packs import Pack

Progress = Callable[[float, str], None]


def check_crowns(pack: Pack, progress: Progress | None = None) -> None:
    """Make every crown of a pack once, a second each; refuse the pack if one is of no use.

    A pack that was read from a file is not asked for this: a crown that cannot be made is told
    when its exercise is begun.

    Raises
    ------
    PackError
        If a seed gives a crown that nothing can be asked of; the sentence names the exercise.
    """
    report = progress or _silent
    made: set[tuple[tuple[int, ...], int, float]] = set()
    for number, one in enumerate(pack.exercises, start=1):
        report((number - 1) / len(pack.exercises), f"making the crown of exercise {number}")
        key = (one.teeth, one.seed, float(one.variation))
        if key in made:
            continue
        made.add(key)
        try:
            practice_crown(one.teeth, one.seed, float(one.variation))
        except CancelledError:
            raise
        except StainmapError as error:
            raise PackError(
                error.message, where=f"{pack.title}, exercise {number}", advice=error.advice
            ) from error


def _silent(_share: float, _phrase: str) -> None:
    """Tell nobody."""
