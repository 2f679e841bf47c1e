"""One immutable value that holds everything the user has made."""

from __future__ import annotations

from dataclasses import dataclass, field, fields, replace
from enum import StrEnum
from math import isfinite
from typing import Any

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.bench_record import BenchRecord
from stainmap.model.crown import CrownReading, CrownSurface, MeshSource
from stainmap.model.finishing import AfterSintering
from stainmap.model.intake import Intake
from stainmap.model.material import Catalogue
from stainmap.model.plan import StainPlan
from stainmap.model.process import StainProcess
from stainmap.model.target import Target
from stainmap.model.tooth import Unit
from stainmap.model.zone import Accent
from stainmap.model.zone_sliders import ZoneSliders
from stainmap.words import translate


class Region(StrEnum):
    """Where a backing lies."""

    STUMP = "stump"
    PONTIC = "pontic"
    INCISAL_EDGE = "incisal edge"
    SCREW_CHANNEL = "screw channel"


@dataclass(frozen=True, slots=True, kw_only=True)
class Backing:
    """What lies behind one region: a stump of the catalogue, behind a cement layer.

    `of_unit` is the unit, from 0, that it lies behind; None behind all that have none of their own.
    """

    region: Region
    stump: str
    cement: str
    cement_thickness_mm: float = 0.05
    of_unit: int | None = None

    def __post_init__(self) -> None:
        """Refuse a cement layer thicker than any crown leaves room for."""
        if not 0.0 <= self.cement_thickness_mm <= 1.0:
            raise PlanError(
                translate(
                    "case", "A cement layer of {cement_thickness_mm} mm is out of range."
                ).format(cement_thickness_mm=self.cement_thickness_mm),
                advice=translate("case", "Give 0 to 1 mm."),
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class ScrewChannel:
    """Where the channel of a screw leaves a unit: it cannot be read from the shape.

    Parameters
    ----------
    unit
        Which of the case's units, from 0.
    point_mm
        A point of its axis on or near the outer surface, in the mesh's coordinates (sintered).
    axis
        Direction of the channel, of any length but zero; which way it runs does not matter.
    radius_mm
        Sintered radius, 0.5 to 3 mm.
    """

    unit: int
    point_mm: tuple[float, float, float]
    axis: tuple[float, float, float]
    radius_mm: float = 1.2

    def __post_init__(self) -> None:
        """Refuse channels that point nowhere or that no screw passes."""
        if self.unit < 0 or not all(map(isfinite, (*self.point_mm, *self.axis))):
            raise PlanError(
                translate("case", "A screw channel has no place."),
                advice=translate("case", "Point at where it leaves."),
            )
        if not any(self.axis):
            raise PlanError(translate("case", "The axis of a screw channel points nowhere."))
        if not 0.5 <= self.radius_mm <= 3.0:
            raise PlanError(
                translate(
                    "case", "A screw channel of radius {radius_mm} mm is out of range."
                ).format(radius_mm=self.radius_mm),
                advice=translate("case", "Give 0.5 to 3 mm."),
            )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class AccentMask:
    """A soft mask of one accent: (V,) float32, 0 to 1."""

    accent: Accent
    share: NDArray[np.float32]

    def __post_init__(self) -> None:
        """Make the mask read-only."""
        self.share.flags.writeable = False


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Case:
    """Everything about one crown or bridge. An edit makes a new case that shares the old arrays.

    Parameters
    ----------
    code
        Case code; never a patient's name.
    zones
        (V,) uint8. Zone number per vertex; 0 where no zone has been proposed yet.
    proposal
        (V,) uint8. The zones as proposed, to which the eraser goes back.
    accents, accent_proposal
        Soft masks on top of the zones, as they are and as proposed.
    materials
        The materials as they were when the case was planned.
    process
        Whose hand paints, and how their coats become load.
    after_sintering
        Finish of the surface, and what is ground away.
    screw_channels
        Where channels leave; a plug lies there instead of a stump.
    sliders
        How far the zones reach in the proposal.
    intake
        What was asked before planning; None where nobody has filled it in.
    revision, replaces
        Revision printed on the sheets, and the plan hash it replaces.
    printed
        Plan hash of the last sheets that were printed or saved; empty before the first.
    bench
        What has been done at the bench, and when.
    hidden_advice
        Keys of advice (`Advice.key`) that is not shown any more.
    """

    code: str
    units: tuple[Unit, ...]
    source: MeshSource
    surface: CrownSurface
    reading: CrownReading
    zones: NDArray[np.uint8]
    proposal: NDArray[np.uint8]
    accents: tuple[AccentMask, ...]
    accent_proposal: tuple[AccentMask, ...]
    plan: StainPlan
    materials: Catalogue
    backings: tuple[Backing, ...]
    programme: str
    target: Target | None = None
    notes: str = ""
    revision: int = 1
    replaces: str = ""
    process: StainProcess = field(default_factory=StainProcess)
    after_sintering: AfterSintering = field(default_factory=AfterSintering)
    screw_channels: tuple[ScrewChannel, ...] = ()
    sliders: ZoneSliders = field(default_factory=ZoneSliders)
    intake: Intake | None = None
    printed: str = ""
    bench: BenchRecord = field(default_factory=BenchRecord)
    hidden_advice: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        """Check that per-vertex arrays fit the surface; make them read-only."""
        count = len(self.surface.mesh.vertices)
        arrays: list[NDArray[Any]] = [self.zones, self.proposal, self.reading.outer]
        arrays += [mask.share for mask in (*self.accents, *self.accent_proposal)]
        if any(array.shape != (count,) for array in arrays):
            raise PlanError(
                translate("case", "Zones, accents and readings do not fit the surface.")
            )
        if any(channel.unit >= len(self.units) for channel in self.screw_channels):
            raise PlanError(
                translate("case", "A screw channel belongs to a unit that is not there.")
            )
        own = [one.of_unit for one in self.backings if one.of_unit is not None]
        if any(not 0 <= unit < len(self.units) for unit in own):
            raise PlanError(translate("case", "A stump belongs to a unit that is not there."))
        for array in arrays:
            array.flags.writeable = False

    def accent(self, accent: Accent) -> NDArray[np.float32] | None:
        """Return the soft mask of an accent, or None if the case has none of it."""
        return next((mask.share for mask in self.accents if mask.accent == accent), None)

    def with_accent(self, accent: Accent, share: NDArray[np.float32]) -> Case:
        """Return the case with another mask for `accent`."""
        kept = [mask for mask in self.accents if mask.accent != accent]
        kept.append(AccentMask(accent=accent, share=share))
        return replace(self, accents=tuple(sorted(kept, key=lambda mask: int(mask.accent))))

    def backing(self, region: Region, unit: int | None = None) -> Backing:
        """Return the backing of a region, falling back to the stump's.

        That of a unit (from 0) falls back to what lies behind all units, region by region.
        """
        whose = (None,) if unit is None else (unit, None)
        for wanted in (region, Region.STUMP):
            for of_unit in whose:
                for backing in self.backings:
                    if backing.region == wanted and backing.of_unit == of_unit:
                        return backing
        raise PlanError(
            translate("case", "The case does not say what lies behind the crown."),
            advice=translate("case", "Choose a stump."),
        )


def changed_fields(before: Case | None, after: Case) -> frozenset[str]:
    """Return the names of the fields that are not the same object in both cases."""
    names = [one.name for one in fields(after)]
    if before is None:
        return frozenset(names)
    return frozenset(
        name for name in names if not _same(getattr(before, name), getattr(after, name))
    )


def _same(one: Any, other: Any) -> bool:
    if one is other:
        return True
    return isinstance(one, (int, str, float)) and one == other
