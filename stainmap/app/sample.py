"""The sample cases, and how they are made. Everything in them is invented, for demonstration.

``python -m stainmap.app.sample FOLDER`` makes the cases anew from their meshes in FOLDER.
"""

from __future__ import annotations

import argparse
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from stainmap.files.case_file import SUFFIX, read_case, read_look, write_case
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.colour import Colour, Measurement
from stainmap.model.intake import Intake
from stainmap.model.plan import CoatSpan, Jar, StainPlan, Step
from stainmap.model.target import Target
from stainmap.model.zone import Accent, Area, Zone
from stainmap.paths import sample_case
from stainmap.units import SizeState

_BLOCK = "medium 3Y"
_LIQUIDS = ("barley", "amber", "clay", "slate", "ash", "umber")

Coats = dict[Area, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sample:
    """What a sample case is made from.

    Parameters
    ----------
    name
        Of its mesh and its case file, without ending.
    teeth
        Numbers of its units.
    code
        Of the case.
    body
        Wanted L*, a*, b* of the body.
    steps
        Liquid and coats per area, in painting order; within the limits of
        `planning.coat_limits`, as a test holds it to.
    notes
        What the case says of itself.
    """

    name: str
    teeth: tuple[int, ...]
    code: str
    body: tuple[float, float, float]
    steps: tuple[tuple[str, Coats], ...]
    notes: str

    def plan(self) -> StainPlan:
        """Return its plan, the jars without dye yet."""
        jars = tuple(Jar(number=one, liquid=name) for one, name in enumerate(_LIQUIDS, start=1))
        number_of = {jar.liquid: jar.number for jar in jars}
        steps = []
        for liquid, areas in self.steps:
            step = Step(jar=number_of[liquid])
            for area, coats in areas.items():
                step = step.with_coats(area, CoatSpan.exactly(coats))
            steps.append(step)
        return StainPlan(block=_BLOCK, jars=jars, steps=tuple(steps))


_RIDGES: Coats = {Zone.CUSP: 1, Accent.MARGINAL_RIDGE: 1, Accent.TRIANGULAR_RIDGE: 1}
_BASE: Coats = {Zone.BODY: 1, Zone.INTERPROXIMAL: 1, Zone.CERVICAL: 2, Zone.FISSURE: 1}
_WHOSE = (
    "of the teaching laboratory of Lindenfurt, a town that does not exist. "
    "No patient, no real materials."
)

SAMPLE = Sample(
    name="lower_molar_36",
    teeth=(36,),
    code="L-0036",
    body=(74.6, 1.4, 18.6),
    steps=(
        ("barley", {Zone.INNER: 2}),
        ("barley", _BASE),
        ("amber", {Zone.CERVICAL: 1, Zone.FISSURE: 1}),
        ("clay", {Zone.INTERPROXIMAL: 1}),
        ("slate", {Zone.CUSP: 1, Zone.INTERPROXIMAL: 1}),
        ("ash", _RIDGES),
        ("umber", {Zone.FISSURE: 2, Accent.MARGIN_BAND: 1}),
    ),
    notes=f"Invented, for demonstration: exercise crown {_WHOSE}",
)
# The tissue side of the pontic takes what the cervical zone takes, so the warm accent goes to the
# margins of the retainers alone. The dark accent sets the units apart over the connectors.
SAMPLE_BRIDGE = Sample(
    name="bridge_14_15_16",
    teeth=(14, 15, 16),
    code="L-1416",
    body=(74.6, 1.2, 17.6),
    steps=(
        ("barley", {Zone.INNER: 2}),
        ("barley", _BASE),
        ("amber", {Accent.MARGIN_BAND: 1, Zone.FISSURE: 1}),
        ("clay", {Zone.INTERPROXIMAL: 1}),
        ("slate", {Zone.CUSP: 1}),
        ("ash", _RIDGES),
        ("umber", {Zone.FISSURE: 2, Accent.MARGIN_BAND: 1, Accent.CONNECTOR: 1}),
    ),
    notes=f"Invented, for demonstration: exercise bridge {_WHOSE} Two retainers and a pontic.",
)
SAMPLES = (SAMPLE, SAMPLE_BRIDGE)


def open_sample(sample: Sample = SAMPLE) -> Case:
    """Return a sample case.

    Raises
    ------
    StainmapError
        If it is missing or damaged: the installation is.
    """
    return read_case(sample_case(f"{sample.name}{SUFFIX}"))


def sample_look(case: Case, sample: Sample = SAMPLE) -> NDArray[np.uint8] | None:
    """Return the colours (V, 3) a sample was last seen in, to show until it is predicted."""
    return read_look(sample_case(f"{sample.name}{SUFFIX}"), case)


def make_sample(mesh_path: Path, sample: Sample = SAMPLE) -> Case:
    """Return a sample case, read from its mesh as any other would be."""
    from stainmap.app.opening import Answers, build_case, look_at_mesh, units_from_numbers  # noqa: PLC0415
    from stainmap.planning.dyes import recommended_dyes  # noqa: PLC0415

    answers = Answers(
        units=units_from_numbers(sample.teeth),
        size_state=SizeState.SINTERED,
        block=_BLOCK,
        mesial=(1.0, 0.0, 0.0),
    )
    case, _ = build_case(look_at_mesh(mesh_path), answers, starter_catalogue(), code=sample.code)
    plan = sample.plan()
    present = {mask.accent for mask in case.accents} | set(Zone)
    steps = tuple(
        replace(step, areas=tuple(entry for entry in step.areas if entry.area in present))
        for step in plan.steps
    )
    lightness, a, b = sample.body
    stump = case.backings[0].stump
    body = Colour(lightness=lightness, a=a, b=b, measurement=Measurement(backing=stump))
    case = replace(
        case,
        plan=replace(plan, steps=steps),
        target=Target(body=body, name="invented"),
        intake=Intake(stump_known=True, wish="Invented: not to stand out among its neighbours."),
        notes=sample.notes,
    )
    jars = tuple(
        replace(jar, dye_drops=drops)
        for jar, drops in zip(plan.jars, recommended_dyes(case), strict=True)
    )
    return replace(case, plan=replace(case.plan, jars=jars))


def main() -> None:
    """Make the sample cases from the meshes beside them."""
    from stainmap.app.kept_figures import figures_to_keep  # noqa: PLC0415
    from stainmap.app.prediction import predict_case  # noqa: PLC0415
    from stainmap.predict.measured_shape import measured_shape  # noqa: PLC0415

    parser = argparse.ArgumentParser(prog="python -m stainmap.app.sample", description=__doc__)
    parser.add_argument("folder", type=Path, help="folder with the meshes, where the cases go")
    folder = parser.parse_args().folder
    from stainmap.app.pictures import preview_png  # noqa: PLC0415 - slow, and for makers only

    for sample in SAMPLES:
        case = make_sample(folder / f"{sample.name}.stl", sample)
        prediction = predict_case(case)
        path = folder / f"{sample.name}{SUFFIX}"
        write_case(
            case,
            path,
            preview_png=preview_png(prediction),
            look=prediction.appearance.srgb,
            measured=measured_shape(case, prediction.shape),
            figures=figures_to_keep(prediction),
        )


if __name__ == "__main__":
    main()
