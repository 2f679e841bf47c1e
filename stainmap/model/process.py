"""A laboratory's way of staining: whose hand paints, how coats become load, how deep it goes."""

from __future__ import annotations

from dataclasses import dataclass, field

from stainmap.errors import PlanError

_LONGEST_NAME = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class UptakeRule:
    """How coats become load.

    Parameters
    ----------
    coats_to_saturation
        n0. One coat takes up 1 - exp(-1 / n0) of the room that is left. Default assumed.
    competition
        eta. 1: all liquids fill the same pores; 0: each saturates alone. Default assumed.
    hand_factor
        How wet the person's hand paints, multiplying every coat.
    """

    coats_to_saturation: float = 4.0
    competition: float = 1.0
    hand_factor: float = 1.0

    def __post_init__(self) -> None:
        """Refuse values that no calibration can give."""
        if not 0.5 <= self.coats_to_saturation <= 40.0:
            raise PlanError(
                f"{self.coats_to_saturation} coats to saturation is out of range.",
                advice="Give 0.5 to 40; 4 is the usual assumption.",
            )
        if not 0.0 <= self.competition <= 1.0:
            raise PlanError(
                f"A competition of {self.competition} is out of range.", advice="Give 0 to 1."
            )
        if not 0.6 <= self.hand_factor <= 1.6:
            raise PlanError(
                f"A hand factor of {self.hand_factor} is out of range.", advice="Give 0.6 to 1.6."
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class StainProcess:
    """What a laboratory's way of staining decides. All defaults are assumed until calibrated.

    Parameters
    ----------
    outer_depth_mm, inner_depth_mm
        Effective depth of the layer stained from outside and from inside, sintered. In walls
        thinner than both together the layers shrink in proportion, at unchanged concentration.
    wicking_mm
        Length by which liquid spreads along the porous surface, sintered (screened Poisson).
    uptake
        How coats become load.
    painter
        Who paints, as the laboratory calls them; the hand factor is theirs.
    """

    outer_depth_mm: float = 0.4
    inner_depth_mm: float = 0.3
    wicking_mm: float = 0.15
    uptake: UptakeRule = field(default_factory=UptakeRule)
    painter: str = ""

    def __post_init__(self) -> None:
        """Refuse depths without sense and names that no sheet has room for."""
        if not (0.0 < self.outer_depth_mm <= 2.0 and 0.0 < self.inner_depth_mm <= 2.0):
            raise PlanError(
                f"Stained layers of {self.outer_depth_mm} and {self.inner_depth_mm} mm are out of "
                "range.",
                advice="Give more than 0 and at most 2 mm.",
            )
        if not 0.0 <= self.wicking_mm <= 2.0:
            raise PlanError(
                f"A wicking length of {self.wicking_mm} mm is out of range.",
                advice="Give 0 to 2 mm.",
            )
        if len(self.painter) > _LONGEST_NAME:
            raise PlanError(
                f"A name of {len(self.painter)} letters is too long for the sheets.",
                advice=f"Give at most {_LONGEST_NAME}.",
            )
