"""The readable part of a case file: what `case.json` holds, and its history.

Schema history
--------------
1
    First version: units, source, reading, plan, materials, backings, programme, target.
2
    Adds process (hand factor, n0, eta, depths, wicking, who paints), after_sintering (finish, what
    is ground away), screw_channels and sliders (of the zones); in materials, the coupon of a
    programme; in target, the conversions that were chosen. A case of schema 1 was planned with the
    assumed process, polished, unground, without a channel.
3
    Adds intake (shades by thirds, whether the stump is known, implant base, neighbours, wish); in
    target, areas held to a shade of their own (held) and the doubt of the body's (body_doubt); in
    the plan, which coats are locked; in process, the amounts (drops in a millilitre, film per coat,
    what stays in the jar); in materials, the drying stage of a programme; the plan hash of the
    last sheets (printed). An older case has no intake: nobody has said what lies behind the crown.
4
    Adds bench: the stages done at the bench, each with its time and the hash of the plan it was
    done by. Of an older case nobody has said that anything was done. In backings, the unit that one
    lies behind (of_unit); advice that is hidden (hidden_advice). An older case has one stump behind
    all units, and hides nothing.

Every older version is read, only the newest is written, a newer one is refused.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import msgspec
from numpy.typing import NDArray

from stainmap.errors import CaseFileError
from stainmap.files.case_entries import (
    AfterSinteringDoc,
    AmountsDoc,
    AreaDoc,
    BackingDoc,
    BenchMarkDoc,
    CaseDoc,
    GrindingDoc,
    JarDoc,
    PlanDoc,
    ProcessDoc,
    ReadingDoc,
    ScrewChannelDoc,
    SlidersDoc,
    SourceDoc,
    StepDoc,
    StreaksDoc,
    UnitDoc,
)
from stainmap.files.case_shades import intake_doc, target_doc
from stainmap.files.catalogue_tables import catalogue_to_dict
from stainmap.model.bench_record import BenchMark, BenchRecord, BenchStage
from stainmap.model.case import Backing, Case, Region, ScrewChannel
from stainmap.model.finishing import AfterSintering, Finish, Grinding
from stainmap.model.plan import (
    AreaCoats,
    BrushedCoats,
    CoatSpan,
    Fade,
    Jar,
    StainPlan,
    Step,
    Streaks,
)
from stainmap.model.process import JarAmounts, StainProcess, UptakeRule
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Zone, area_from_number
from stainmap.model.zone_sliders import ZoneSliders
from stainmap.words import translate

SCHEMA = 4
FORMAT = "stainmap case"


class _Head(msgspec.Struct, frozen=True):
    """The two entries that are looked at before anything else."""

    format: str = ""
    schema: int = 0


def document_of(case: Case, program: str) -> CaseDoc:
    """Return the readable part of a case."""
    reading, source, plan = case.reading, case.source, case.plan
    return CaseDoc(
        format=FORMAT,
        schema=SCHEMA,
        program=program,
        code=case.code,
        notes=case.notes,
        revision=case.revision,
        replaces=case.replaces,
        printed=case.printed,
        units=tuple(UnitDoc(tooth=u.tooth.number, role=u.role.value) for u in case.units),
        source=SourceDoc(
            name=source.name,
            sha256=source.sha256,
            unit=source.unit.value,
            size_state=source.size_state.value,
            enlargement_factor=source.enlargement_factor,
        ),
        base_vertex_count=case.surface.base_vertex_count,
        reading=ReadingDoc(
            kind=reading.kind.value,
            occlusal_axis=reading.occlusal_axis,
            mesial=reading.mesial,
            connectors_mm2=reading.connectors_mm2,
            confidence=dict(reading.confidence),
            set_by_user=tuple(sorted(reading.set_by_user)),
            assumed_wall_mm=reading.assumed_wall_mm,
            warnings=reading.warnings,
        ),
        plan=PlanDoc(
            block=plan.block,
            nesting_height_mm=plan.nesting_height_mm,
            jars=tuple(
                JarDoc(
                    number=jar.number,
                    liquid=jar.liquid,
                    liquid_drops=jar.liquid_drops,
                    dye_drops=jar.dye_drops,
                    lot=jar.lot,
                )
                for jar in plan.jars
            ),
            steps=tuple(_step_doc(step) for step in plan.steps),
        ),
        materials=catalogue_to_dict(case.materials),
        backings=tuple(
            BackingDoc(
                region=b.region.value,
                stump=b.stump,
                cement=b.cement,
                cement_thickness_mm=b.cement_thickness_mm,
                of_unit=b.of_unit,
            )
            for b in case.backings
        ),
        programme=case.programme,
        target=target_doc(case.target),
        intake=intake_doc(case.intake),
        accents=tuple(int(mask.accent) for mask in case.accents),
        accent_proposal=tuple(int(mask.accent) for mask in case.accent_proposal),
        process=_process_doc(case.process),
        after_sintering=AfterSinteringDoc(
            finish=case.after_sintering.finish.value,
            ground=tuple(
                GrindingDoc(depth_mm=g.depth_mm, area=None if g.area is None else int(g.area))
                for g in case.after_sintering.ground
            ),
        ),
        screw_channels=tuple(
            ScrewChannelDoc(
                unit=channel.unit,
                point_mm=channel.point_mm,
                axis=channel.axis,
                radius_mm=channel.radius_mm,
            )
            for channel in case.screw_channels
        ),
        sliders=SlidersDoc(
            neck_climb=case.sliders.neck_climb,
            cusp_descent=case.sliders.cusp_descent,
            fissure_width=case.sliders.fissure_width,
        ),
        hidden_advice=case.hidden_advice,
        bench=tuple(
            BenchMarkDoc(stage=mark.stage.value, at=mark.at, plan_hash=mark.plan_hash)
            for mark in case.bench.marks
        ),
    )


def _process_doc(process: StainProcess) -> ProcessDoc:
    return ProcessDoc(
        painter=process.painter,
        hand_factor=process.uptake.hand_factor,
        coats_to_saturation=process.uptake.coats_to_saturation,
        competition=process.uptake.competition,
        outer_depth_mm=process.outer_depth_mm,
        inner_depth_mm=process.inner_depth_mm,
        wicking_mm=process.wicking_mm,
        amounts=None
        if process.amounts is None
        else AmountsDoc(
            drops_per_ml=process.amounts.drops_per_ml,
            film_per_coat_mm=process.amounts.film_per_coat_mm,
            left_in_jar_drops=process.amounts.left_in_jar_drops,
        ),
    )


def _step_doc(step: Step) -> StepDoc:
    return StepDoc(
        jar=step.jar,
        areas=tuple(
            AreaDoc(
                area=int(entry.area),
                low=entry.coats.low,
                high=entry.coats.high,
                fade_mm=None
                if entry.fade is None
                else (entry.fade.full_down_to_mm, entry.fade.zero_at_mm),
                locked=entry.locked,
            )
            for entry in step.areas
        ),
        edge_softness_mm=step.edge_softness_mm,
        streaks=tuple(
            StreaksDoc(
                area=int(s.area),
                count=s.count,
                length_mm=s.length_mm,
                coats=s.coats,
                direction=s.direction,
            )
            for s in step.streaks
        ),
        brushed=step.brushed is not None,
    )


def encode_document(document: CaseDoc) -> bytes:
    """Return indented, human-readable JSON."""
    return msgspec.json.format(msgspec.json.encode(document), indent=1)


def decode_document(content: bytes, where: str) -> CaseDoc:
    """Read `case.json`.

    Raises
    ------
    CaseFileError
        If it is no case, of a newer version, or damaged; the sentence names the entry.
    """
    try:
        head = msgspec.json.decode(content, type=_Head)
    except msgspec.DecodeError as error:
        raise CaseFileError(
            translate("case document", "The case description inside it is damaged."),
            where=where,
            advice=translate("case document", "Open an older copy of the case."),
        ) from error
    if head.format != FORMAT:
        raise CaseFileError(
            translate("case document", "It is not a case."),
            where=where,
            advice=translate("case document", "Choose a file that ends in .stainmap."),
        )
    if head.schema > SCHEMA:
        raise CaseFileError(
            translate(
                "case document",
                "A newer version wrote it (schema {schema}; this one reads up to {schema_2}).",
            ).format(schema=head.schema, schema_2=SCHEMA),
            where=where,
            advice=translate("case document", "Update stainmap."),
        )
    if head.schema < 1:
        raise CaseFileError(
            translate("case document", "Its schema {schema} does not exist.").format(
                schema=head.schema
            ),
            where=where,
        )
    try:
        return msgspec.json.decode(content, type=CaseDoc)
    except (msgspec.DecodeError, msgspec.ValidationError) as error:
        raise CaseFileError(
            translate(
                "case document", "The case description inside it does not fit ({error})."
            ).format(error=error),
            where=where,
            advice=translate("case document", "Open an older copy of the case."),
        ) from error


def units_of(document: CaseDoc) -> tuple[Unit, ...]:
    """Return the units; raise PlanError or ValueError for impossible ones."""
    return tuple(Unit(tooth=Tooth(number=u.tooth), role=Role(u.role)) for u in document.units)


def plan_of(document: CaseDoc, array: Callable[[str], NDArray[Any]]) -> StainPlan:
    """Return the plan; `array` gives the brushed coats by name."""
    plan = document.plan
    return StainPlan(
        block=plan.block,
        nesting_height_mm=plan.nesting_height_mm,
        jars=tuple(
            Jar(
                number=jar.number,
                liquid=jar.liquid,
                liquid_drops=jar.liquid_drops,
                dye_drops=jar.dye_drops,
                lot=jar.lot,
            )
            for jar in plan.jars
        ),
        steps=tuple(_step_of(index, step, array) for index, step in enumerate(plan.steps)),
    )


def _step_of(index: int, step: StepDoc, array: Callable[[str], NDArray[Any]]) -> Step:
    brushed = None
    if step.brushed:
        brushed = BrushedCoats(
            vertices=array(f"brushed_{index}_vertices"), coats=array(f"brushed_{index}_coats")
        )
    return Step(
        jar=step.jar,
        areas=tuple(
            AreaCoats(
                area=area_from_number(entry.area),
                coats=CoatSpan(low=entry.low, high=entry.high),
                fade=None
                if entry.fade_mm is None
                else Fade(full_down_to_mm=entry.fade_mm[0], zero_at_mm=entry.fade_mm[1]),
                locked=entry.locked,
            )
            for entry in step.areas
        ),
        edge_softness_mm=step.edge_softness_mm,
        streaks=tuple(
            Streaks(
                area=Zone(s.area),
                count=s.count,
                length_mm=s.length_mm,
                coats=s.coats,
                direction=s.direction,
            )
            for s in step.streaks
        ),
        brushed=brushed,
    )


def backings_of(document: CaseDoc) -> tuple[Backing, ...]:
    """Return what lies behind the crown."""
    return tuple(
        Backing(
            region=Region(b.region),
            stump=b.stump,
            cement=b.cement,
            cement_thickness_mm=b.cement_thickness_mm,
            of_unit=b.of_unit,
        )
        for b in document.backings
    )


def process_of(document: CaseDoc) -> StainProcess:
    """Return the way of staining; raise PlanError if a value is out of range."""
    process = document.process
    return StainProcess(
        outer_depth_mm=process.outer_depth_mm,
        inner_depth_mm=process.inner_depth_mm,
        wicking_mm=process.wicking_mm,
        uptake=UptakeRule(
            coats_to_saturation=process.coats_to_saturation,
            competition=process.competition,
            hand_factor=process.hand_factor,
        ),
        painter=process.painter,
        amounts=None
        if process.amounts is None
        else JarAmounts(
            drops_per_ml=process.amounts.drops_per_ml,
            film_per_coat_mm=process.amounts.film_per_coat_mm,
            left_in_jar_drops=process.amounts.left_in_jar_drops,
        ),
    )


def after_sintering_of(document: CaseDoc) -> AfterSintering:
    """Return finish and grinding; raise PlanError or ValueError for impossible ones."""
    after = document.after_sintering
    return AfterSintering(
        finish=Finish(after.finish),
        ground=tuple(
            Grinding(
                depth_mm=entry.depth_mm,
                area=None if entry.area is None else area_from_number(entry.area),
            )
            for entry in after.ground
        ),
    )


def screw_channels_of(document: CaseDoc) -> tuple[ScrewChannel, ...]:
    """Return where screw channels leave; raise PlanError for impossible ones."""
    return tuple(
        ScrewChannel(
            unit=channel.unit,
            point_mm=channel.point_mm,
            axis=channel.axis,
            radius_mm=channel.radius_mm,
        )
        for channel in document.screw_channels
    )


def sliders_of(document: CaseDoc) -> ZoneSliders:
    """Return how far the zones reach; raise PlanError if a slider is out of range."""
    sliders = document.sliders
    return ZoneSliders(
        neck_climb=sliders.neck_climb,
        cusp_descent=sliders.cusp_descent,
        fissure_width=sliders.fissure_width,
    )


def bench_of(document: CaseDoc) -> BenchRecord:
    """Return what was done at the bench; raise PlanError or ValueError for an impossible record."""
    return BenchRecord(
        marks=tuple(
            BenchMark(stage=BenchStage(mark.stage), at=mark.at, plan_hash=mark.plan_hash)
            for mark in document.bench
        )
    )
