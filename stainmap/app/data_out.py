"""Plan and prediction as data for other programs: one JSON document, or a table of areas.

What the entries mean is told in `resources/manual/data.md`; `resources/schemas` has the JSON
schema that every document keeps to.
"""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Sequence
from typing import Any, Final

from stainmap import __version__
from stainmap.app.prediction import Prediction
from stainmap.model.case import Case
from stainmap.model.colour import Colour
from stainmap.model.plan import Jar, Step
from stainmap.model.zone import area_label
from stainmap.planning.draft import draft_reason
from stainmap.planning.outcome import AreaOutcome
from stainmap.planning.plan_hash import plan_hash
from stainmap.predict.uncertainty import Verdict, verdict

FORMAT: Final = "stainmap plan and prediction"
VERSION: Final = 1

Entries = dict[str, Any]


def data_json(prediction: Prediction) -> str:
    """Return plan and prediction as a JSON document, indented; L*a*b* are rounded to 0.001."""
    return json.dumps(data_document(prediction), ensure_ascii=False, indent=1) + "\n"


def data_document(prediction: Prediction) -> Entries:
    """Return plan and prediction as plain JSON types."""
    case = prediction.case
    return {
        "format": FORMAT,
        "version": VERSION,
        "program": __version__,
        "case": {
            "code": case.code,
            "revision": case.revision,
            "replaces": case.replaces or None,
            "plan_hash": plan_hash(case),
            "kind": str(case.reading.kind),
            "units": [
                {"tooth": one.tooth.number, "name": one.tooth.name, "role": str(one.role)}
                for one in case.units
            ],
            "draft": draft_reason(case, prediction.shape.wall_mm) or None,
        },
        "plan": _plan(case),
        "prediction": _predicted(prediction),
    }


def areas_table(prediction: Prediction) -> str:
    """Return a CSV with a row per unit and area; its headers name light and observer."""
    seen = prediction.seen
    under = f"({seen.light}, {seen.observer} deg)"
    triples = ("L*", "a*", "b*")
    heads = [
        "case",
        "plan hash",
        "tooth",
        "number",
        "area",
        "area mm2 sintered",
        "wall mm sintered",
    ]
    for what in ("", "low ", "sd ", "wanted "):
        heads += [f"{what}{axis} {under}" for axis in triples]
    heads += [f"dE00 {under}", "dL* from body", "dC* from body"]
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(heads)
    case = prediction.case
    for unit, outcome in zip(case.units, prediction.unit_outcomes(), strict=True):
        for one in outcome.areas:
            low = None if one.predicted_low is None else one.predicted_low.lab
            wanted = None if one.wanted is None else one.wanted.lab
            row: list[Any] = [case.code, plan_hash(case), unit.tooth.number, int(one.area)]
            row += [one.label, f"{one.area_mm2:.3f}", f"{one.wall_mm:.3f}"]
            for values in (one.predicted.lab, low, one.plus_minus, wanted):
                row += ["", "", ""] if values is None else [f"{value:.3f}" for value in values]
            row.append("" if one.delta_e_00 is None else f"{one.delta_e_00:.3f}")
            offset = one.offset_from_body
            row += ["", ""] if offset is None else [f"{value:.3f}" for value in offset]
            writer.writerow(row)
    return text.getvalue()


def _plan(case: Case) -> Entries:
    plan, materials = case.plan, case.materials
    block, programme = materials.block(plan.block), materials.programme(case.programme)
    return {
        "block": block.name,
        "block_lot": block.lot or None,
        "enlargement_factor": block.enlargement_factor,
        "nesting_height_mm_sintered": plan.nesting_height_mm,
        "programme": programme.name,
        "peak_c": programme.peak_c,
        "backings": [
            {
                "region": str(one.region),
                "stump": one.stump,
                "cement": one.cement,
                "cement_mm": one.cement_thickness_mm,
                "tooth": None if one.of_unit is None else case.units[one.of_unit].tooth.number,
            }
            for one in case.backings
        ],
        "jars": [_jar(case, jar) for jar in plan.jars],
        "steps": [_step(case, number, step) for number, step in enumerate(plan.steps, start=1)],
    }


def _jar(case: Case, jar: Jar) -> Entries:
    names = [dye.name for dye in case.materials.dyes]
    return {
        "number": jar.number,
        "liquid": jar.liquid,
        "liquid_drops": jar.liquid_drops,
        "dye_drops": dict(zip(names, jar.dye_drops, strict=False)),
        "lot": jar.lot or None,
    }


def _step(case: Case, number: int, step: Step) -> Entries:
    front = case.units[0].tooth.is_front
    return {
        "number": number,
        "jar": step.jar,
        "liquid": case.plan.liquid_of(step),
        "edge_softness_mm_sintered": step.edge_softness_mm,
        "areas": [
            {
                "number": int(entry.area),
                "name": area_label(entry.area, front=front),
                "coats_low": entry.coats.low,
                "coats_high": entry.coats.high,
                "fade_mm_sintered": None
                if entry.fade is None
                else [entry.fade.full_down_to_mm, entry.fade.zero_at_mm],
            }
            for entry in step.areas
        ],
        "streaks": [
            {
                "number": int(one.area),
                "count": one.count,
                "length_mm_sintered": one.length_mm,
                "coats": one.coats,
                "towards_margin": one.direction == 1,
            }
            for one in step.streaks
        ],
        "brushed_vertices": 0 if step.brushed is None else len(step.brushed.vertices),
    }


def _predicted(prediction: Prediction) -> Entries:
    outcome = prediction.outcome
    units = zip(prediction.case.units, prediction.unit_outcomes(), strict=True)
    return {
        "light": prediction.seen.light,
        "observer_degrees": prediction.seen.observer,
        "calibrated": outcome.calibrated,
        "statement": None if outcome.calibrated else str(Verdict.NONE),
        "uncertainty_from": outcome.provenance,
        "units": [
            {
                "tooth": unit.tooth.number,
                "areas": [_area(area, calibrated=one.calibrated) for area in one.areas],
            }
            for unit, one in units
        ],
    }


def _area(one: AreaOutcome, *, calibrated: bool) -> Entries:
    said = calibrated and one.delta_e_00 is not None
    return {
        "number": int(one.area),
        "name": one.label,
        "area_mm2_sintered": round(one.area_mm2, 3),
        "wall_mm_sintered": round(one.wall_mm, 3),
        "predicted": _colour(one.predicted),
        "predicted_low": None if one.predicted_low is None else _colour(one.predicted_low),
        "sd": _rounded(one.plus_minus),
        "wanted": None if one.wanted is None else _colour(one.wanted),
        "wanted_sd": _rounded(one.difference_sd),
        "conversions": [str(used) for used in one.conversions],
        "offset_from_body": None
        if one.offset_from_body is None
        else _rounded(one.offset_from_body),
        "wanted_offset": None if one.wanted_offset is None else _rounded(one.wanted_offset),
        "de00": None if one.delta_e_00 is None else round(one.delta_e_00, 3),
        "refused": one.refused or None,
        "verdict": str(verdict(one.delta_e_00 or 0.0, calibrated=True)) if said else None,
    }


def _colour(colour: Colour) -> Entries:
    how = colour.measurement
    return {
        "lab": _rounded(colour.lab),
        "geometry": how.geometry,
        "illuminant": how.illuminant,
        "observer_degrees": how.observer_degrees,
        "backing": how.backing,
    }


def _rounded(values: Sequence[float]) -> list[float]:
    return [round(float(value), 3) for value in values]
