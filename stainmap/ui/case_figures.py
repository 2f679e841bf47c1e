"""From a case and its prediction to what the parts of the window show. No widgets in here."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.app.materials import MaterialKind, entries, origin_word
from stainmap.errors import StainmapError
from stainmap.model.case import Case, Region
from stainmap.model.crown import CrownReading
from stainmap.model.plan import Jar
from stainmap.model.tooth import Tooth
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.optics.colorimetry import encode_srgb
from stainmap.paper.views import CrownDirections, Side
from stainmap.planning.schedule import DRY_TEMPERATURE_C, coats_to_paint
from stainmap.surface.mesh import TriMesh
from stainmap.ui.coat_model import AreaRow, StepColumn
from stainmap.ui.crown_cards import LegendRow, ProbeReading
from stainmap.ui.marks import JarLook
from stainmap.ui.run_strip import RunDetail
from stainmap.ui.unit_panel import MaterialNames, UnitFacts
from stainmap.units import SizeState
from stainmap.words import translate, value_word

if TYPE_CHECKING:
    from stainmap.app.prediction import Prediction
    from stainmap.model.material import Dye
    from stainmap.planning.jar_warnings import JarWarnings
    from stainmap.planning.outcome import AreaOutcome, Outcome
    from stainmap.predict.point_check import PointCheck

# A place this far off the middle, as a share of half the crown's width, lies on a side.
_SIDE_SHARE = 0.3
_OPPOSITE = ((Side.MESIAL, Side.DISTAL), (Side.BUCCAL, Side.LINGUAL))


def directions_of(case: Case) -> CrownDirections:
    """Return the directions of the first unit, which name the sides on screen."""
    return CrownDirections.of(case.reading, case.units[0].tooth)


def hex_colour(srgb: NDArray[np.floating] | NDArray[np.uint8]) -> str:
    """Return encoded sRGB, uint8 or 0 to 1, as ``#rrggbb``."""
    values = np.asarray(srgb, dtype=np.float64)
    if srgb.dtype != np.uint8:
        values = np.clip(values, 0.0, 1.0) * 255.0
    return "#" + "".join(f"{int(v + 0.5):02x}" for v in values)


def jar_look(case: Case, jar: Jar, warnings: Sequence[str] = ()) -> JarLook:
    """Return a jar with the colour its dye has on the chalky ceramic, and what is wrong with it."""
    seen, word = _colour_of(jar, case.materials.dyes)
    named = zip(case.materials.dyes, jar.dye_drops, strict=False)
    dyes = ", ".join(f"{drops} {dye.name}" for dye, drops in named if drops)
    recipe = (
        translate("case figures", "{colour} on chalk; drops: {drops} {liquid}, {dyes}")
        if dyes
        else translate("case figures", "no dye; drops: {drops} {liquid}")
    )
    return JarLook(
        number=jar.number,
        liquid=jar.liquid,
        dye=seen,
        recipe=recipe.format(
            colour=value_word(word),
            drops=jar.liquid_drops,
            liquid=jar.liquid,
            dyes=dyes,
        ),
        warnings=tuple(warnings),
    )


@lru_cache(maxsize=256)
def _colour_of(jar: Jar, dyes: tuple[Dye, ...]) -> tuple[str, str]:
    """Return the colour of a jar on chalk, as ``#rrggbb`` and in a word: often asked for anew."""
    from stainmap.planning.dyes import colour_word  # noqa: PLC0415
    from stainmap.predict.bench_look import jar_linear_srgb  # noqa: PLC0415

    linear = jar_linear_srgb(jar, dyes)
    return hex_colour(encode_srgb(linear)), colour_word(linear)


def jars_on_tray(case: Case) -> tuple[JarLook, ...]:
    """Return all jars of the plan."""
    return tuple(jar_look(case, jar) for jar in case.plan.jars)


def areas_of(case: Case) -> tuple[Area, ...]:
    """Return the areas this crown has: zones with a vertex, accents with a mask, all with coats."""
    # Not `unique`, which brings all of the masked arrays along: the first picture waits for this.
    present = set(np.flatnonzero(np.bincount(case.zones)).tolist()) - {0}
    named = {entry.area for step in case.plan.steps for entry in step.areas}
    masked = {mask.accent for mask in case.accents}
    # Before zones have been proposed any of them may be painted.
    zones = [zone for zone in Zone if not present or int(zone) in present or zone in named]
    accents = [accent for accent in Accent if accent in masked or accent in named]
    return (*zones, *accents)


def area_name(case: Case, area: Area) -> str:
    """Return an area's name on this tooth."""
    return area_label(area, front=case.units[0].tooth.is_front)


def area_rows(case: Case) -> tuple[AreaRow, ...]:
    """Return the rows of the coat table."""
    return tuple(AreaRow(area=area, name=area_name(case, area)) for area in areas_of(case))


def step_columns(
    case: Case, outcome: Outcome | None, warnings: JarWarnings | None = None
) -> tuple[StepColumn, ...]:
    """Return the columns of the coat table; inherited figures come with an outcome."""
    said = warnings or {}
    looks = {jar.number: jar_look(case, jar, said.get(jar.number, ())) for jar in case.plan.jars}
    columns = []
    for index, step in enumerate(case.plan.steps):
        brushed: frozenset[Area] = frozenset()
        if step.brushed is not None and len(step.brushed.vertices):
            numbers = np.unique(case.zones[step.brushed.vertices])
            brushed = frozenset(Zone(int(number)) for number in numbers if number)
        columns.append(
            StepColumn(
                jar=looks[step.jar],
                coats={entry.area: entry.coats for entry in step.areas},
                inherited=_inherited(outcome, index),
                brushed=brushed,
                locked=frozenset(entry.area for entry in step.areas if entry.locked),
            )
        )
    return tuple(columns)


def _inherited(outcome: Outcome | None, step: int) -> dict[Area, str]:
    if outcome is None:
        return {}
    figures: dict[Area, str] = {}
    for area in outcome.areas:
        spans = [e.coats for e in area.coats if e.step == step and e.inherited]
        if spans:
            figures[area.area] = "/".join(str(span) for span in spans[0])
    return figures


def neighbour_values(case: Case, like: AreaOutcome) -> tuple[tuple[str, float], ...]:
    """Return number and L* of the neighbours that were read, as they compare with a prediction.

    Those that were measured unlike are left out; advice says so.
    """
    from stainmap.planning.targets import shade_in  # noqa: PLC0415

    found = []
    for neighbour in () if case.intake is None else case.intake.neighbours:
        try:
            seen = shade_in(neighbour.shade, like.predicted.measurement)
        except StainmapError:
            continue
        found.append((str(neighbour.tooth.number), seen.colour.lightness))
    return tuple(found)


def unit_facts(case: Case) -> UnitFacts:
    """Return what stands at the top of the plan."""
    along = case.surface.mesh.vertices @ np.asarray(case.reading.occlusal_axis)
    height = float(along.max() - along.min())
    backing = case.backing(Region.STUMP)
    milled = case.source.size_state is SizeState.MILLED
    return UnitFacts(
        teeth=tuple(unit.tooth.number for unit in case.units),
        description=translate("case figures", "{kind}, {height:.1f} mm high, sintered size").format(
            kind=value_word(case.reading.kind), height=height
        ),
        enlargement=f"\N{MULTIPLICATION SIGN} {case.source.enlargement_factor:.3f}",
        size=value_word("milled") if milled else value_word("sintered"),
        block=case.plan.block,
        stump=backing.stump,
        cement=backing.cement,
        programme=case.programme,
    )


def material_names(case: Case) -> MaterialNames:
    """Return what the unit's materials can be chosen from."""
    materials = case.materials
    return MaterialNames(
        blocks=tuple(block.name for block in materials.blocks),
        stumps=tuple(stump.name for stump in materials.stumps),
        cements=tuple(cement.name for cement in materials.cements),
        programmes=tuple(programme.name for programme in materials.programmes),
        origins={
            kind.value: {one.name: origin_word(one) for one in entries(materials, kind)}
            for kind in MaterialKind
        },
    )


def legend_rows(case: Case, outcome: Outcome | None) -> tuple[LegendRow, ...]:
    """Return the rows of the legend of zones."""
    rows = []
    for area in areas_of(case):
        found = None if outcome is None else outcome.area(area)
        size = None if found is None else found.area_mm2
        rows.append(LegendRow(area=area, name=area_name(case, area), size_mm2=size))
    return tuple(rows)


def legend_note(case: Case) -> str:
    """Return the size of the outer surface in words."""
    area = float(case.surface.mesh.vertex_areas[case.reading.outer].sum())
    return translate("case figures", "outer surface {area:.0f} mm², sintered").format(area=area)


def run_detail(case: Case) -> RunDetail:
    """Return what stands inside the stages of the run."""
    looks = {jar.number: jar_look(case, jar) for jar in case.plan.jars}
    programme = case.materials.programme(case.programme)
    curve = [(0.0, programme.start_c)]
    for segment in programme.segments:
        curve.append((curve[-1][0] + segment.minutes, segment.target_c))
    return RunDetail(
        jars=tuple(looks.values()),
        steps=tuple((looks[step.jar], coats_to_paint(step)) for step in case.plan.steps),
        dry_c=DRY_TEMPERATURE_C,
        curve=tuple(curve),
        programme=programme.name,
    )


def bench_srgb(case: Case, coats: NDArray[np.floating]) -> NDArray[np.uint8]:
    """Return what coats (S, n) of the plan's steps look like before sintering, (n, 3)."""
    from stainmap.predict.bench_look import bench_linear_srgb  # noqa: PLC0415

    linear = bench_linear_srgb(case.plan, coats, case.materials.dyes, rule=case.process.uptake)
    return np.asarray(encode_srgb(linear) * 255.0 + 0.5).astype(np.uint8)


def probe_reading(prediction: Prediction, vertex: int) -> ProbeReading:
    """Return what is known about one vertex."""
    case = prediction.case
    light, a, b = (float(v) for v in prediction.appearance.lab[vertex])
    return ProbeReading(
        area=place_name(case, vertex),
        coats=_coats_there(prediction, vertex),
        colour=hex_colour(prediction.appearance.srgb[vertex]),
        lightness=light,
        chroma=float(np.hypot(a, b)),
        hue_degrees=float(np.degrees(np.arctan2(b, a)) % 360.0),
        wall=_wall_there(prediction, vertex),
        plus_minus=prediction.sd_at(vertex)[0],
    )


def colour_words(lab: NDArray[np.floating]) -> str:
    """Return L*a*b* as its L*, C* and h in words."""
    light, a, b = (float(v) for v in lab)
    hue = np.degrees(np.arctan2(b, a)) % 360.0
    return f"L* {light:.1f} C* {np.hypot(a, b):.1f} h {hue:.0f}\N{DEGREE SIGN}"


def check_details(found: PointCheck) -> str:
    """Return the figures behind the verdict on a point, a line each."""
    lines = [
        (translate("case figures", "fast, as on screen"), found.fast, found.fast_de00),
        (translate("case figures", "all bands, as exported"), found.plain, found.plain_de00),
        (translate("case figures", "textbook surfaces"), found.textbook, found.textbook_de00),
        (translate("case figures", "transport (reference)"), found.transport, 0.0),
    ]
    rows = [
        translate(
            "case figures", "{name}: L* {lightness:.1f}, a* {a}, b* {b}, dE00 {off:.2f}"
        ).format(name=name, lightness=lab[0], a=_true(lab[1]), b=_true(lab[2]), off=off)
        for name, lab, off in lines
    ]
    rows.append(
        translate(
            "case figures",
            "wall {wall_mm:.2f} mm, {region}; {light}, {degrees}°, without light from the sides",
        ).format(
            wall_mm=found.wall_mm,
            region=value_word(found.region),
            light=found.light,
            degrees=found.observer_degrees,
        )
    )
    return "\n".join(rows)


def _true(value: float) -> str:
    """Return a figure with a true minus."""
    return f"{value:.1f}".replace("-", "\N{MINUS SIGN}")


def place_name(case: Case, vertex: int) -> str:
    """Return area and side of a vertex in words."""
    number = int(case.zones[vertex])
    if number == 0:
        return translate("case figures", "no zone yet")
    names = [area_name(case, Zone(number))]
    for mask in case.accents:
        if mask.share[vertex] > 0.5:
            names = [
                translate("case figures", "{accent} on {zone}").format(
                    accent=area_name(case, mask.accent), zone=names[0]
                )
            ]
            break
    side = _side_words(case, vertex)
    if side and number != Zone.INNER:
        names.append(side)
    return ", ".join(names)


def _side_words(case: Case, vertex: int) -> str:
    """Return "mesiobuccal" and the like, or nothing in the middle or while sides are unknown."""
    if case.reading.mesial is None:
        return ""
    unit = int(case.reading.unit_index[vertex])
    tooth = case.units[min(unit, len(case.units) - 1)].tooth
    directions, middle, halves = _unit_reach(case.surface.mesh, case.reading, unit, tooth)
    here = case.surface.mesh.vertices[vertex] - middle
    parts = []
    for (toward, away), half in zip(_OPPOSITE, halves, strict=True):
        along = float(here @ directions.towards(toward))
        if abs(along) > _SIDE_SHARE * half:
            parts.append(directions.word(toward if along > 0 else away, tooth))
    if len(parts) == 2:
        # The trade joins them: mesiobuccal, distopalatal.
        return {"mesial": "mesio", "distal": "disto"}[parts[0]] + value_word(parts[1])
    return value_word(parts[0]) if parts else ""


# The pointer asks at every place it comes to.
@lru_cache(maxsize=2)
def _unit_reach(
    mesh: TriMesh, reading: CrownReading, unit: int, tooth: Tooth
) -> tuple[CrownDirections, NDArray[np.float64], tuple[float, ...]]:
    """Return directions and middle of a unit, and how far it reaches from there, mm."""
    directions = CrownDirections.of(reading, tooth)
    points = mesh.vertices[reading.unit_index == unit]
    middle = 0.5 * (points.min(axis=0) + points.max(axis=0))
    axes = [directions.towards(toward) for toward, _ in _OPPOSITE]
    return directions, middle, tuple(0.5 * float(np.ptp(points @ axis)) for axis in axes)


def _coats_there(prediction: Prediction, vertex: int) -> str:
    plan = prediction.case.plan
    sums: dict[str, float] = {}
    for step, coats in zip(plan.steps, prediction.coats[:, vertex], strict=True):
        liquid = plan.liquid_of(step)
        sums[liquid] = sums.get(liquid, 0.0) + float(coats)
    words = [
        f"{liquid} {coats:.0f}" if abs(coats - round(coats)) < 0.05 else f"{liquid} {coats:.1f}"
        for liquid, coats in sums.items()
        if coats >= 0.05
    ]
    return ", ".join(words) if words else translate("case figures", "no coats")


def _wall_there(prediction: Prediction, vertex: int) -> str:
    case, shape = prediction.case, prediction.shape
    unit = int(case.reading.unit_index[vertex])
    words = (
        translate("case figures", "assumed wall {wall_mm:.2f} mm over {stump}")
        if shape.assumed_wall
        else translate("case figures", "wall {wall_mm:.2f} mm over {stump}")
    )
    return words.format(
        wall_mm=float(shape.wall_mm[vertex]), stump=case.backing(Region.STUMP, unit).stump
    )


def has_connectors(case: Case) -> bool:
    """Return True if the case has a connector or an embrasure that can be painted."""
    if len(case.units) < 2:
        return False
    from stainmap.planning import bridge_accents  # noqa: PLC0415

    return bridge_accents.has_connectors(case)
