"""A laboratory's way of staining: whose hand paints, how coats become load, how deep it goes."""

from __future__ import annotations

from dataclasses import dataclass, field

from stainmap.errors import PlanError
from stainmap.words import translate

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
                translate(
                    "process", "{coats_to_saturation} coats to saturation is out of range."
                ).format(coats_to_saturation=self.coats_to_saturation),
                advice=translate("process", "Give 0.5 to 40; 4 is the usual assumption."),
            )
        if not 0.0 <= self.competition <= 1.0:
            raise PlanError(
                translate("process", "A competition of {competition} is out of range.").format(
                    competition=self.competition
                ),
                advice=translate("process", "Give 0 to 1."),
            )
        if not 0.6 <= self.hand_factor <= 1.6:
            raise PlanError(
                translate("process", "A hand factor of {hand_factor} is out of range.").format(
                    hand_factor=self.hand_factor
                ),
                advice=translate("process", "Give 0.6 to 1.6."),
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class JarAmounts:
    """What is taken for granted when the contents of a jar are estimated.

    Parameters
    ----------
    drops_per_ml
        Drops of the laboratory's pipettes in one millilitre; count them to calibrate. 20, that
        is 0.05 mL each, by USP <1101>, which allows 15 % of error.
    film_per_coat_mm
        Liquid that one coat takes, as a film on the milled surface. Assumed: 0.5 mm of depth,
        half of it pores, of which a first coat fills a fifth, and a little beside.
    left_in_jar_drops
        Drops that stay in jar and brush. Assumed.
    """

    drops_per_ml: float = 20.0
    film_per_coat_mm: float = 0.06
    left_in_jar_drops: float = 5.0

    def __post_init__(self) -> None:
        """Refuse what no pipette and no coat gives."""
        if not 5.0 <= self.drops_per_ml <= 100.0:
            raise PlanError(
                translate(
                    "process", "{drops_per_ml:g} drops in a millilitre are out of range."
                ).format(drops_per_ml=self.drops_per_ml),
                advice=translate(
                    "process", "Count the drops that fill 1 mL: 5 to 100, usually about 20."
                ),
            )
        if not 0.001 <= self.film_per_coat_mm <= 1.0:
            raise PlanError(
                translate(
                    "process", "A film of {film_per_coat_mm:g} mm per coat is out of range."
                ).format(film_per_coat_mm=self.film_per_coat_mm),
                advice=translate("process", "Give 0.001 to 1 mm; 0.06 is assumed."),
            )
        if not 0.0 <= self.left_in_jar_drops <= 50.0:
            raise PlanError(
                translate(
                    "process", "{left_in_jar_drops:g} drops left in the jar are out of range."
                ).format(left_in_jar_drops=self.left_in_jar_drops),
                advice=translate("process", "Give 0 to 50."),
            )

    @property
    def drop_volume_ml(self) -> float:
        """Volume of one drop."""
        return 1.0 / self.drops_per_ml


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
    amounts
        Drop volume and film per coat; None where a laboratory has nothing of its own.
    """

    outer_depth_mm: float = 0.4
    inner_depth_mm: float = 0.3
    wicking_mm: float = 0.15
    uptake: UptakeRule = field(default_factory=UptakeRule)
    painter: str = ""
    amounts: JarAmounts | None = None

    def __post_init__(self) -> None:
        """Refuse depths without sense and names that no sheet has room for."""
        if not (0.0 < self.outer_depth_mm <= 2.0 and 0.0 < self.inner_depth_mm <= 2.0):
            raise PlanError(
                translate(
                    "process",
                    "Stained layers of {outer_depth_mm} and {inner_depth_mm} mm are out of range.",
                ).format(outer_depth_mm=self.outer_depth_mm, inner_depth_mm=self.inner_depth_mm),
                advice=translate("process", "Give more than 0 and at most 2 mm."),
            )
        if not 0.0 <= self.wicking_mm <= 2.0:
            raise PlanError(
                translate("process", "A wicking length of {wicking_mm} mm is out of range.").format(
                    wicking_mm=self.wicking_mm
                ),
                advice=translate("process", "Give 0 to 2 mm."),
            )
        if len(self.painter) > _LONGEST_NAME:
            raise PlanError(
                translate(
                    "process", "A name of {count} letters is too long for the sheets."
                ).format(count=len(self.painter)),
                advice=translate("process", "Give at most {longest_name}.").format(
                    longest_name=_LONGEST_NAME
                ),
            )

    @property
    def jar_amounts(self) -> JarAmounts:
        """Drop volume and film per coat, the assumed ones where there are no others."""
        return JarAmounts() if self.amounts is None else self.amounts
