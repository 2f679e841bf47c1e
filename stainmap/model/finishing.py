"""What is done to a crown after sintering: the finish of its surface, and what is ground away."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from stainmap.errors import PlanError
from stainmap.model.zone import Area
from stainmap.words import translate

DEEPEST_GRINDING_MM = 0.5


class Finish(StrEnum):
    """How the outer surface is left. Polished is what materials are described by."""

    AS_SINTERED = "as sintered"
    POLISHED = "polished"
    GLAZED = "glazed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Grinding:
    """Ceramic taken off the outer surface: of one area, or of all of it where `area` is None."""

    depth_mm: float
    area: Area | None = None

    def __post_init__(self) -> None:
        """Refuse what is no adjustment any more."""
        if not 0.0 < self.depth_mm <= DEEPEST_GRINDING_MM:
            raise PlanError(
                translate("finishing", "Grinding by {depth_mm} mm is out of range.").format(
                    depth_mm=self.depth_mm
                ),
                advice=translate(
                    "finishing", "Give more than 0 and at most {deepest_grinding_mm} mm."
                ).format(deepest_grinding_mm=DEEPEST_GRINDING_MM),
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class AfterSintering:
    """Finish of the whole crown, and what is ground away; where entries meet, the deepest."""

    finish: Finish = Finish.POLISHED
    ground: tuple[Grinding, ...] = ()

    def __post_init__(self) -> None:
        """Refuse an area that is ground twice."""
        areas = [entry.area for entry in self.ground]
        if len(set(areas)) != len(areas):
            raise PlanError(
                translate("finishing", "An area is ground twice."),
                advice=translate("finishing", "Give each area one depth."),
            )

    def with_ground(self, area: Area | None, depth_mm: float) -> AfterSintering:
        """Return the same with another depth for one area (None: all); 0 takes it away."""
        kept = tuple(entry for entry in self.ground if entry.area != area)
        if depth_mm == 0.0:
            return AfterSintering(finish=self.finish, ground=kept)
        entries = (*kept, Grinding(depth_mm=depth_mm, area=area))
        order = sorted(entries, key=lambda one: 0 if one.area is None else int(one.area))
        return AfterSintering(finish=self.finish, ground=tuple(order))
