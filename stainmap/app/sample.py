"""The sample case, and how it is made. Everything in it is invented, for demonstration.

``python -m stainmap.app.sample FOLDER`` makes the sample case anew from its mesh in FOLDER.
"""

from __future__ import annotations

import argparse
from dataclasses import replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from stainmap.app.opening import Answers, build_case, look_at_mesh, units_from_numbers
from stainmap.app.prediction import predict_case
from stainmap.files.case_file import SUFFIX, read_case, read_look, write_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.colour import Colour, Measurement
from stainmap.model.plan import CoatSpan, Jar, StainPlan, Step
from stainmap.model.target import Target
from stainmap.model.zone import Accent, Area, Zone
from stainmap.paths import sample_case
from stainmap.planning.dyes import recommended_dyes
from stainmap.units import SizeState

SAMPLE = "lower_molar_36"
_BLOCK = "medium 3Y"
_NOTES = (
    "Invented, for demonstration: exercise crown of the teaching laboratory of Lindenfurt, "
    "a town that does not exist. No patient, no real materials."
)
# Jars in painting order; each step names its jar and the coats per area. Within the limits of
# `planning.coat_limits`, as a test holds it to.
_LIQUIDS = ("barley", "amber", "clay", "slate", "ash", "umber")
_STEPS: tuple[tuple[str, dict[Area, int]], ...] = (
    ("barley", {Zone.INNER: 2}),
    ("barley", {Zone.BODY: 1, Zone.INTERPROXIMAL: 1, Zone.CERVICAL: 2, Zone.FISSURE: 1}),
    ("amber", {Zone.CERVICAL: 1, Zone.FISSURE: 1}),
    ("clay", {Zone.INTERPROXIMAL: 1}),
    ("slate", {Zone.CUSP: 1, Zone.INTERPROXIMAL: 1}),
    ("ash", {Zone.CUSP: 1, Accent.MARGINAL_RIDGE: 1, Accent.TRIANGULAR_RIDGE: 1}),
    ("umber", {Zone.FISSURE: 2, Accent.MARGIN_BAND: 1}),
)


def open_sample() -> Case:
    """Return the sample case.

    Raises
    ------
    StainmapError
        If it is missing or damaged: the installation is.
    """
    return read_case(sample_case(f"{SAMPLE}{SUFFIX}"))


def sample_look(case: Case) -> NDArray[np.uint8] | None:
    """Return the colours (V, 3) the sample was last seen in, to show until it is predicted."""
    return read_look(sample_case(f"{SAMPLE}{SUFFIX}"), case)


def sample_plan() -> StainPlan:
    """Return the sample's plan, its jars without dye yet."""
    jars = tuple(Jar(number=number, liquid=name) for number, name in enumerate(_LIQUIDS, start=1))
    number_of = {jar.liquid: jar.number for jar in jars}
    steps = []
    for liquid, areas in _STEPS:
        step = Step(jar=number_of[liquid])
        for area, coats in areas.items():
            step = step.with_coats(area, CoatSpan.exactly(coats))
        steps.append(step)
    return StainPlan(block=_BLOCK, jars=jars, steps=tuple(steps))


def make_sample(mesh_path: Path) -> Case:
    """Return the sample case, read from its mesh as any other crown would be."""
    materials = starter_catalogue()
    answers = Answers(
        units=units_from_numbers((36,)),
        size_state=SizeState.SINTERED,
        block=_BLOCK,
        mesial=(1.0, 0.0, 0.0),
    )
    case, _ = build_case(look_at_mesh(mesh_path), answers, materials, code="L-0036")
    plan = sample_plan()
    present = {mask.accent for mask in case.accents} | set(Zone)
    steps = tuple(
        replace(step, areas=tuple(entry for entry in step.areas if entry.area in present))
        for step in plan.steps
    )
    body = Colour(
        lightness=74.6,
        a=1.4,
        b=18.6,
        measurement=Measurement(backing=case.backings[0].stump),
    )
    case = replace(case, plan=replace(plan, steps=steps))
    jars = tuple(
        replace(jar, dye_drops=drops)
        for jar, drops in zip(plan.jars, recommended_dyes(case), strict=True)
    )
    return replace(
        case,
        plan=replace(case.plan, jars=jars),
        target=Target(body=body, name="invented"),
        notes=_NOTES,
    )


def main() -> None:
    """Make the sample case from the mesh beside it."""
    parser = argparse.ArgumentParser(prog="python -m stainmap.app.sample", description=__doc__)
    parser.add_argument("folder", type=Path, help="folder with the mesh, where the case goes")
    folder = parser.parse_args().folder
    case = make_sample(folder / f"{SAMPLE}.stl")
    path = folder / f"{SAMPLE}{SUFFIX}"
    prediction = predict_case(case)
    look = prediction.appearance.srgb
    from stainmap.app.pictures import preview_png  # noqa: PLC0415 - slow, and for makers only

    write_case(case, path, preview_png=preview_png(prediction), look=look)


if __name__ == "__main__":
    main()
