"""The sample bridge, and how its case is made. Everything in it is invented, for demonstration.

``python -m stainmap.app.sample_bridge FOLDER`` makes the case anew from its mesh in FOLDER.
"""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path

from stainmap.app.opening import Answers, build_case, look_at_mesh, units_from_numbers
from stainmap.app.prediction import predict_case
from stainmap.files.case_file import SUFFIX, write_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.colour import Colour, Measurement
from stainmap.model.plan import CoatSpan, Jar, StainPlan, Step
from stainmap.model.target import Target
from stainmap.model.zone import Accent, Area, Zone
from stainmap.planning.dyes import recommended_dyes
from stainmap.units import SizeState

SAMPLE_BRIDGE = "bridge_14_15_16"
_NOTES = (
    "Invented, for demonstration: exercise bridge of the teaching laboratory of Lindenfurt, "
    "a town that does not exist. Two retainers and a pontic. No patient, no real materials."
)
_BLOCK = "medium 3Y"
# Jars in painting order; each step names its jar and the coats per area. Within the limits of
# `planning.coat_limits`: the tissue side takes what the cervical zone takes, so the warm accent
# goes to the margins of the retainers alone.
_LIQUIDS = ("barley", "amber", "clay", "slate", "ash", "umber")
_STEPS: tuple[tuple[str, dict[Area, int]], ...] = (
    ("barley", {Zone.INNER: 2}),
    ("barley", {Zone.BODY: 1, Zone.INTERPROXIMAL: 1, Zone.CERVICAL: 2, Zone.FISSURE: 1}),
    ("amber", {Accent.MARGIN_BAND: 1, Zone.FISSURE: 1}),
    ("clay", {Zone.INTERPROXIMAL: 1}),
    ("slate", {Zone.CUSP: 1, Zone.INTERPROXIMAL: 1}),
    ("ash", {Zone.CUSP: 1, Accent.MARGINAL_RIDGE: 1, Accent.TRIANGULAR_RIDGE: 1}),
    ("umber", {Zone.FISSURE: 2, Accent.MARGIN_BAND: 1}),
)


def bridge_plan() -> StainPlan:
    """Return the bridge's plan, its jars without dye yet."""
    jars = tuple(Jar(number=number, liquid=name) for number, name in enumerate(_LIQUIDS, start=1))
    number_of = {jar.liquid: jar.number for jar in jars}
    steps = []
    for liquid, areas in _STEPS:
        step = Step(jar=number_of[liquid])
        for area, coats in areas.items():
            step = step.with_coats(area, CoatSpan.exactly(coats))
        steps.append(step)
    return StainPlan(block=_BLOCK, jars=jars, steps=tuple(steps))


def make_sample_bridge(mesh_path: Path) -> Case:
    """Return the sample case of a bridge, read from its mesh as any other would be."""
    answers = Answers(
        units=units_from_numbers((14, 15, 16)),
        size_state=SizeState.SINTERED,
        block=_BLOCK,
        mesial=(1.0, 0.0, 0.0),
    )
    case, _ = build_case(look_at_mesh(mesh_path), answers, starter_catalogue(), code="L-1416")
    plan = bridge_plan()
    present = {mask.accent for mask in case.accents} | set(Zone)
    steps = tuple(
        replace(step, areas=tuple(entry for entry in step.areas if entry.area in present))
        for step in plan.steps
    )
    case = replace(case, plan=replace(plan, steps=steps))
    jars = tuple(
        replace(jar, dye_drops=drops)
        for jar, drops in zip(plan.jars, recommended_dyes(case), strict=True)
    )
    body = Colour(
        lightness=74.6,
        a=1.2,
        b=17.6,
        measurement=Measurement(backing=case.backings[0].stump),
    )
    return replace(
        case,
        plan=replace(case.plan, jars=jars),
        target=Target(body=body, name="invented"),
        notes=_NOTES,
    )


def main() -> None:
    """Make the case from the mesh beside it."""
    parser = argparse.ArgumentParser(
        prog="python -m stainmap.app.sample_bridge", description=__doc__
    )
    parser.add_argument("folder", type=Path, help="folder with the mesh, where the case goes")
    folder = parser.parse_args().folder
    case = make_sample_bridge(folder / f"{SAMPLE_BRIDGE}.stl")
    prediction = predict_case(case)
    from stainmap.app.pictures import preview_png  # noqa: PLC0415 - slow, and for makers only

    write_case(
        case,
        folder / f"{SAMPLE_BRIDGE}{SUFFIX}",
        preview_png=preview_png(prediction),
        look=prediction.appearance.srgb,
    )


if __name__ == "__main__":
    main()
