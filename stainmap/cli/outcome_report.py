"""What `predict` says of every area: as one JSON object, and as lines to read."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from stainmap.app.prediction import Prediction
from stainmap.model.colour import Colour
from stainmap.planning.advice_value import Advice
from stainmap.planning.outcome import AreaOutcome
from stainmap.planning.plan_hash import plan_hash
from stainmap.planning.unit_values import unit_values
from stainmap.predict.lights import ADAPTATION, FLUORESCENCE, OBSERVERS, SHOWN_LIGHTS, UnderLights
from stainmap.predict.uncertainty import Verdict, verdict

Lights = dict[Any, UnderLights]


def prediction_report(prediction: Prediction) -> dict[str, Any]:
    """Return the JSON object of a prediction; L*a*b* are rounded to 0.001."""
    outcome, lights = prediction.outcome, prediction.under_lights()
    scene = prediction.engine.scene
    return {
        "light": scene.light,
        "observer_degrees": scene.observer,
        "calibrated": outcome.calibrated,
        "statement": None if outcome.calibrated else str(Verdict.NONE),
        "uncertainty_from": outcome.provenance,
        "light_change_after": str(ADAPTATION),
        "fluorescence": FLUORESCENCE,
        "plan_hash": plan_hash(prediction.case),
        "areas": {
            one.label: _area(one, lights[one.area], calibrated=outcome.calibrated)
            for one in outcome.areas
        },
        "units": [
            {
                "tooth": one.unit.tooth.number,
                "role": str(one.unit.role),
                "body_lightness": round(one.lightness, 3),
                "from_unit_before": None if one.from_before is None else round(one.from_before, 3),
                "wall_mm": round(one.wall_mm, 3),
            }
            for one in unit_values(prediction.case, prediction.unit_outcomes())
        ],
        "advice": [_advice(one, prediction) for one in prediction.advice],
    }


def prediction_lines(prediction: Prediction) -> Iterator[str]:
    """Yield a table of all areas, and what it is worth."""
    outcome, lights = prediction.outcome, prediction.under_lights()
    heads = (
        f"{'area':20}{'mm2':>6}{'L*':>6}{'+-':>5}{'C*':>6}{'h':>5}{'dL*':>6}{'dC*':>6}{'dE00':>6}"
    )
    yield f"{heads}  between lights"
    for one in outcome.areas:
        colour, offset = one.predicted, one.offset_from_body
        row = f"{one.label:20}{one.area_mm2:6.1f}{colour.lightness:6.1f}{one.plus_minus[0]:5.1f}"
        row += f"{colour.chroma:6.1f}{colour.hue_degrees:5.0f}"
        row += " " * 12 if offset is None else f"{offset[0]:+6.1f}{offset[1]:+6.1f}"
        row += " " * 6 if one.delta_e_00 is None else f"{one.delta_e_00:6.1f}"
        yield f"{row}  {lights[one.area].largest_change[0]}"
    if len(prediction.case.units) > 1:
        values = unit_values(prediction.case, prediction.unit_outcomes())
        told = [
            f"{one.unit.tooth.number} {one.lightness:.1f}"
            + ("" if one.from_before is None else f" ({one.from_before:+.1f})")
            for one in values
        ]
        yield f"L* of each unit's body, and from the unit before it: {', '.join(told)}."
    if outcome.areas:
        yield f"Colours: {outcome.areas[0].predicted.measurement}."
    for text in dict.fromkeys(str(used) for used in outcome.conversions):
        yield f"Wanted colours were converted: {text}."
    if outcome.refused:
        yield f"No difference from what is wanted: {outcome.refused}"
    yield (
        f"Change between {', '.join(SHOWN_LIGHTS)}: the largest, 2 degrees, after {ADAPTATION}. "
        f"{FLUORESCENCE}"
    )
    yield from _doubt(prediction)
    if prediction.advice:
        yield "Advice:"
    for said in prediction.advice:
        yield f"  {said.severity}: {said.sentence}"


def _doubt(prediction: Prediction) -> Iterator[str]:
    outcome = prediction.outcome
    if not outcome.areas:
        return
    if not outcome.calibrated:
        yield f"Not calibrated: a {Verdict.NONE}."
    least = [min(column) for column in zip(*(a.plus_minus for a in outcome.areas), strict=True)]
    ranges = (
        f"+-{low:.1f}" + ("" if f"{low:.1f}" == f"{high:.1f}" else f" to {high:.1f}") + f" {axis}"
        for low, high, axis in zip(
            least, outcome.largest_plus_minus, ("L*", "a*", "b*"), strict=True
        )
    )
    yield f"One standard deviation: {', '.join(ranges)}. Parameters: {outcome.provenance}."
    yield "That of L* holds what the calculation leaves out on this shape."


def _area(one: AreaOutcome, lights: UnderLights, *, calibrated: bool) -> dict[str, Any]:
    low = one.predicted_low
    said = calibrated and one.delta_e_00 is not None
    return {
        "area_mm2_sintered": round(one.area_mm2, 3),
        "coats": [
            {
                "step": entry.step + 1,
                "liquid": entry.liquid,
                "n": _count(entry.coats[0].low, entry.coats[0].high),
                "inherited": entry.inherited,
            }
            for entry in one.coats
        ],
        "lab": _rounded((low or one.predicted).lab),
        "lab_high": None if low is None else _rounded(one.predicted.lab),
        "measured": _measured(one.predicted),
        "plus_minus": _rounded(one.plus_minus),
        "parameters_sd": None if one.parameters_sd is None else _rounded(one.parameters_sd),
        "lightness_doubt": round(one.lightness_doubt, 3),
        "wanted_lab": None if one.wanted is None else _rounded(one.wanted.lab),
        "wanted_measured": None if one.wanted is None else _measured(one.wanted),
        "conversions": [str(used) for used in one.conversions],
        "offset_from_body": None
        if one.offset_from_body is None
        else _rounded(one.offset_from_body),
        "de00": None if one.delta_e_00 is None else round(one.delta_e_00, 3),
        "refused": one.refused or None,
        "verdict": str(verdict(one.delta_e_00 or 0.0, calibrated=True)) if said else None,
        "lights": {
            str(observer): {
                light: _rounded(lights.colour(light, observer).lab) for light in SHOWN_LIGHTS
            }
            for observer in OBSERVERS
        },
        "largest_light_change": {
            str(change.observer_degrees): {
                "de00": round(change.de00, 3),
                "between": [change.light, change.other_light],
            }
            for change in lights.largest_change
        },
    }


def _advice(one: Advice, prediction: Prediction) -> dict[str, Any]:
    limit, place, units = one.limit, one.place, prediction.case.units
    return {
        "rule": one.rule,
        "severity": str(one.severity),
        "sentence": one.sentence,
        "remedy": one.remedy or None,
        "basis": one.basis or None,
        "figure": None if one.figure is None else round(one.figure, 3),
        "threshold": None
        if limit is None
        else {
            "name": limit.name,
            "value": limit.value,
            "unit": limit.unit,
            "mark": limit.mark.words,
            "source": limit.source,
        },
        "area": None if one.area is None else one.area.label,
        "unit": None if one.unit is None else units[one.unit].tooth.number,
        "point_mm": None if place is None else _rounded(place.point_mm),
        "vertices": 0 if place is None else len(place.vertices),
    }


def _measured(colour: Colour) -> dict[str, Any]:
    how = colour.measurement
    return {
        "geometry": how.geometry,
        "illuminant": how.illuminant,
        "observer_degrees": how.observer_degrees,
        "backing": how.backing,
    }


def _count(low: int, high: int) -> int | list[int]:
    return low if low == high else [low, high]


def _rounded(values: Sequence[float]) -> list[float]:
    return [round(float(value), 3) for value in values]
