"""The entries of `case.json`: what stands in a case file, name by name.

Names and meanings are those of `stainmap.model`; arrays lie beside the description, not in it. What
came with a later schema has a default, which is what older cases took for granted.
"""

from __future__ import annotations

from datetime import datetime
from typing import Any

import msgspec


class UnitDoc(msgspec.Struct, frozen=True):
    """A unit: ISO 3950 tooth number and role."""

    tooth: int
    role: str


class SourceDoc(msgspec.Struct, frozen=True):
    """The mesh that came in."""

    name: str
    sha256: str
    unit: str
    size_state: str
    enlargement_factor: float


class ReadingDoc(msgspec.Struct, frozen=True):
    """What was read from the shape, without the arrays."""

    kind: str
    occlusal_axis: tuple[float, float, float]
    mesial: tuple[float, float, float] | None
    connectors_mm2: tuple[float, ...]
    confidence: dict[str, float]
    set_by_user: tuple[str, ...]
    assumed_wall_mm: float | None
    warnings: tuple[str, ...]


class AreaDoc(msgspec.Struct, frozen=True):
    """Coats on one area by its number; fade as (full down to, zero at) in mm."""

    area: int
    low: int
    high: int
    fade_mm: tuple[float, float] | None = None
    locked: bool = False


class StreaksDoc(msgspec.Struct, frozen=True):
    """Streaks of one step."""

    area: int
    count: int
    length_mm: float
    coats: int
    direction: int


class StepDoc(msgspec.Struct, frozen=True):
    """One step; `brushed` says that arrays of brushed coats belong to it."""

    jar: int
    areas: tuple[AreaDoc, ...]
    edge_softness_mm: float
    streaks: tuple[StreaksDoc, ...] = ()
    brushed: bool = False


class JarDoc(msgspec.Struct, frozen=True):
    """One jar."""

    number: int
    liquid: str
    liquid_drops: int
    dye_drops: tuple[int, int, int]
    lot: str = ""


class PlanDoc(msgspec.Struct, frozen=True):
    """The stain plan."""

    block: str
    nesting_height_mm: float
    jars: tuple[JarDoc, ...]
    steps: tuple[StepDoc, ...]


class BackingDoc(msgspec.Struct, frozen=True):
    """What lies behind one region."""

    region: str
    stump: str
    cement: str
    cement_thickness_mm: float
    of_unit: int | None = None


class ColourDoc(msgspec.Struct, frozen=True):
    """A colour and how it was measured."""

    lab: tuple[float, float, float]
    geometry: str
    illuminant: str
    observer_degrees: int
    backing: str


class OffsetDoc(msgspec.Struct, frozen=True):
    """A wanted offset from the body."""

    area: int
    lightness: float
    chroma: float


class AreaShadeDoc(msgspec.Struct, frozen=True):
    """A colour that an area is held to by itself; doubt as standard deviation of L*, a*, b*."""

    area: int
    colour: ColourDoc
    conversions: tuple[str, ...] = ()
    doubt: tuple[float, float, float] | None = None


class TargetDoc(msgspec.Struct, frozen=True):
    """What is wanted."""

    name: str
    body: ColourDoc
    offsets: tuple[OffsetDoc, ...]
    conversions: tuple[str, ...] = ()
    held: tuple[AreaShadeDoc, ...] = ()
    body_doubt: tuple[float, float, float] | None = None


class ShadeDoc(msgspec.Struct, frozen=True):
    """A shade as it was read, how it was got, and its doubt."""

    source: str
    colour: ColourDoc
    doubt: tuple[float, float, float]
    name: str = ""
    conversions: tuple[str, ...] = ()
    note: str = ""


class ThirdDoc(msgspec.Struct, frozen=True):
    """The shade of one third: "cervical", "middle" or "incisal"."""

    third: str
    shade: ShadeDoc


class NeighbourDoc(msgspec.Struct, frozen=True):
    """A tooth beside the restoration, by its ISO 3950 number, and its shade."""

    tooth: int
    shade: ShadeDoc


class IntakeDoc(msgspec.Struct, frozen=True):
    """The answers of the intake page; stump and cement stand among the backings."""

    shades: tuple[ThirdDoc, ...] = ()
    stump_known: bool = False
    implant_base: bool = False
    neighbours: tuple[NeighbourDoc, ...] = ()
    wish: str = ""


class AmountsDoc(msgspec.Struct, frozen=True):
    """Drop volume, film per coat and what stays in the jar, as a laboratory found them."""

    drops_per_ml: float
    film_per_coat_mm: float
    left_in_jar_drops: float


class ProcessDoc(msgspec.Struct, frozen=True):
    """Whose hand paints, and how their coats become load; the assumed way where not said."""

    painter: str = ""
    hand_factor: float = 1.0
    coats_to_saturation: float = 4.0
    competition: float = 1.0
    outer_depth_mm: float = 0.4
    inner_depth_mm: float = 0.3
    wicking_mm: float = 0.15
    amounts: AmountsDoc | None = None


class GrindingDoc(msgspec.Struct, frozen=True):
    """What is ground off an area by its number, or off all of the outside."""

    depth_mm: float
    area: int | None = None


class AfterSinteringDoc(msgspec.Struct, frozen=True):
    """Finish, and what is ground away."""

    finish: str = "polished"
    ground: tuple[GrindingDoc, ...] = ()


class ScrewChannelDoc(msgspec.Struct, frozen=True):
    """Where a screw channel leaves a unit (from 0), in the mesh's coordinates."""

    unit: int
    point_mm: tuple[float, float, float]
    axis: tuple[float, float, float]
    radius_mm: float


class SlidersDoc(msgspec.Struct, frozen=True):
    """How far the proposed zones reach; the usual way where not said."""

    neck_climb: float = 0.30
    cusp_descent: float = 0.40
    fissure_width: float = 0.5


class BenchMarkDoc(msgspec.Struct, frozen=True):
    """A stage that is done, when, and the hash of the plan it was done by."""

    stage: str
    at: datetime
    plan_hash: str


class CaseDoc(msgspec.Struct, frozen=True):
    """All of `case.json`."""

    format: str
    schema: int
    program: str
    code: str
    notes: str
    revision: int
    replaces: str
    units: tuple[UnitDoc, ...]
    source: SourceDoc
    base_vertex_count: int
    reading: ReadingDoc
    plan: PlanDoc
    materials: dict[str, Any]
    backings: tuple[BackingDoc, ...]
    programme: str
    target: TargetDoc | None
    accents: tuple[int, ...]
    accent_proposal: tuple[int, ...]
    process: ProcessDoc = ProcessDoc()
    after_sintering: AfterSinteringDoc = AfterSinteringDoc()
    screw_channels: tuple[ScrewChannelDoc, ...] = ()
    sliders: SlidersDoc = SlidersDoc()
    intake: IntakeDoc | None = None
    printed: str = ""
    bench: tuple[BenchMarkDoc, ...] = ()
    hidden_advice: tuple[str, ...] = ()
