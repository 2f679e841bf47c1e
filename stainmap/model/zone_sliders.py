"""How far proposed zones reach, in the words of the trade."""

from __future__ import annotations

from dataclasses import dataclass

from stainmap.errors import PlanError
from stainmap.words import translate

NECK_CLIMB = (0.15, 0.50)
CUSP_DESCENT = (0.30, 0.60)
FISSURE_WIDTH = (0.0, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class ZoneSliders:
    """How far the proposed zones reach. The defaults are common practice, no published source.

    Parameters
    ----------
    neck_climb
        How high the cervical zone climbs, as a share of the way from margin to crest; 0.15 to
        0.50.
    cusp_descent
        How far the cusp (or incisal) zone comes down from the crest, as such a share; 0.30 to
        0.60.
    fissure_width
        How wide fissures are: 0 keeps to their bottoms, 1 takes all of a valley that is deeper
        than its surroundings.

    Raises
    ------
    PlanError
        If one is out of range.
    """

    neck_climb: float = 0.30
    cusp_descent: float = 0.40
    fissure_width: float = 0.5

    def __post_init__(self) -> None:
        """Refuse what lies outside the sliders."""
        for name, value, (low, high) in (
            ("neck_climb", self.neck_climb, NECK_CLIMB),
            ("cusp_descent", self.cusp_descent, CUSP_DESCENT),
            ("fissure_width", self.fissure_width, FISSURE_WIDTH),
        ):
            if not low <= value <= high:
                raise PlanError(
                    translate("zone sliders", "{value} is out of range.").format(value=value),
                    where=name,
                    advice=translate("zone sliders", "Give {low} to {high}.").format(
                        low=low, high=high
                    ),
                )
