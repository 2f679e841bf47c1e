"""Everything a sheet prints, as plain values."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.material import Block, Provenance
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.paper.page_size import PageSize
from stainmap.paper.shading import ShadingFields
from stainmap.planning.mixing import JAR_LIFE_HOURS
from stainmap.planning.outcome import Outcome
from stainmap.planning.plan_hash import SHOWN_DIGITS, short_hash
from stainmap.units import TemperatureUnit

NOT_CALIBRATED = "Not calibrated: direction, not a match."
INVENTED = "Invented materials: do not fire by this sheet."
NO_REFERENCE = "Printed colour is not a shade reference."
CAUTIONS = (
    "Staining liquids are acidic metal-salt solutions: gloves, goggles, ventilation."
    " Make no dust; what there is goes into the extraction, not into the air."
    " Ovens are hot, presintered walls break."
    " The makers' instructions for use, the safety data sheets and local rules come first."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """What head and foot of a page say: texts as printed, empty where a line is left to fill in.

    Parameters
    ----------
    draft
        Why it is a draft; empty if it is none.
    warnings
        What the sheet is worth, in medium type at its foot.
    """

    code: str
    revision: str
    hash_text: str
    replaces_text: str
    day: date
    technician: str
    draft: str
    warnings: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SheetData:
    """What is printed about one case.

    Parameters
    ----------
    case
        The case.
    coats
        (S, V) float32. Coats of every step at every vertex, at the upper end of spans.
    outcome
        Prediction per area.
    plan_hash
        Hash of the plan; its first eight characters are printed.
    day
        Date of the sheet.
    shading
        Shading fields of the mesh if they are at hand; otherwise they are computed.
    page
        Paper format.
    mixed_at
        When the jars are mixed, for the time they are thrown away; None leaves a line to fill in.
    technician
        Who paints; empty leaves a line to fill in.
    unit_outcomes
        Prediction per area of every unit of a bridge by itself; empty for a single crown.
    degrees
        How temperatures are written.
    draft
        Why the plan is a draft, in a sentence that is printed on every page; empty if it is none.
    """

    case: Case
    coats: NDArray[np.float32]
    outcome: Outcome
    plan_hash: str
    day: date
    shading: ShadingFields | None = None
    page: PageSize = PageSize.A4
    mixed_at: datetime | None = None
    technician: str = ""
    unit_outcomes: tuple[Outcome, ...] = ()
    degrees: TemperatureUnit = TemperatureUnit.BOTH
    draft: str = ""

    def __post_init__(self) -> None:
        """Refuse data that belong to different cases."""
        vertices = self.case.surface.mesh.vertex_count
        if self.coats.shape != (len(self.case.plan.steps), vertices):
            raise PlanError("The coats do not fit the plan and the surface.")
        if len(self.plan_hash.replace("-", "")) < SHOWN_DIGITS:
            raise PlanError(f"'{self.plan_hash}' is no plan hash.")
        if self.unit_outcomes and len(self.unit_outcomes) != len(self.case.units):
            raise PlanError("The predictions do not fit the units.")
        if not self.case.units:
            raise PlanError(
                "The case names no unit.", advice="Say which tooth it is before printing."
            )

    @property
    def hash_text(self) -> str:
        """The eight characters of the plan hash, as "7c41-09ae"."""
        return short_hash(self.plan_hash.replace("-", ""))

    @property
    def replaces_text(self) -> str:
        """The plan hash this revision replaces, or "none"."""
        replaced = self.case.replaces.replace("-", "")
        return short_hash(replaced) if len(replaced) >= SHOWN_DIGITS else replaced or "none"

    def outcome_of(self, unit: int) -> Outcome:
        """Return what is predicted of one unit: its own means, not the bridge's."""
        return self.unit_outcomes[unit] if self.unit_outcomes else self.outcome

    @property
    def block(self) -> Block:
        """The block; raises CatalogueError if the materials do not have it."""
        return self.case.materials.block(self.case.plan.block)

    @property
    def enlargement(self) -> float:
        """Milled over sintered length."""
        return self.block.enlargement_factor

    @property
    def is_invented(self) -> bool:
        """True if block, programme or any liquid on the tray is an invented one."""
        case = self.case
        used = [self.block.provenance, case.materials.programme(case.programme).provenance]
        used += [case.materials.liquid(jar.liquid).provenance for jar in case.plan.jars]
        return Provenance.INVENTED in used

    @property
    def warnings(self) -> str:
        """What stands at the foot of every sheet in medium type."""
        parts = [INVENTED] if self.is_invented else []
        if not self.outcome.calibrated:
            parts.append(NOT_CALIBRATED)
        return " ".join(parts)

    @property
    def heading(self) -> Heading:
        """What stands at head and foot of every page about the case."""
        return Heading(
            code=self.case.code,
            revision=str(self.case.revision),
            hash_text=self.hash_text,
            replaces_text=self.replaces_text,
            day=self.day,
            technician=self.technician,
            draft=self.draft,
            warnings=self.warnings,
        )

    @property
    def discard_at(self) -> datetime | None:
        """When the jars are thrown away."""
        if self.mixed_at is None:
            return None
        return self.mixed_at + timedelta(hours=JAR_LIFE_HOURS)

    def painted_areas(self) -> tuple[Area, ...]:
        """Return the areas of the map, in its order: all zones there are, accents with coats."""
        case = self.case
        zones = [zone for zone in Zone if (case.zones == int(zone)).any()]
        planned = {entry.area for step in case.plan.steps for entry in step.areas}
        accents = [
            mask.accent
            for mask in case.accents
            if mask.accent in planned and float(mask.share.max(initial=0.0)) > 0.5
        ]
        outer: list[Area] = [zone for zone in zones if zone is not Zone.INNER]
        inside: list[Area] = [zone for zone in zones if zone is Zone.INNER]
        inside += [accent for accent in accents if accent is Accent.INNER_NECK_BAND]
        outer += [accent for accent in accents if accent is not Accent.INNER_NECK_BAND]
        return tuple(outer + inside)

    def label(self, area: Area, unit: int = 0) -> str:
        """Return the name of an area in the trade's words for the unit's kind of tooth."""
        return area_label(area, front=self.case.units[unit].tooth.is_front)
