"""A planned dome as sheet data: a closed form under the prints."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date
from typing import Any

import numpy as np
import pytest

from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import AccentMask, Backing, Case, Region
from stainmap.model.plan import AreaCoats, CoatSpan, Jar, StainPlan, Step, Streaks
from stainmap.model.zone import Accent, Area, Zone
from stainmap.paper.shading import ShadingFields, shading_fields
from stainmap.paper.sheet_data import SheetData
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import judge
from stainmap.planning.plan_hash import plan_hash
from stainmap.predict.reference import reference_lab
from stainmap.predict.scene import scene_from_case
from stainmap.surface.diffusion import SurfaceOperator
from tests.builders import dome_case

LIQUIDS = ("barley", "slate", "ash", "umber")
STEPS: tuple[tuple[int, dict[Area, str]], ...] = (
    (1, {Zone.INNER: "2"}),
    (1, {Zone.CERVICAL: "3", Zone.BODY: "1"}),
    (2, {Zone.CUSP: "2-3"}),
    (3, {Accent.MARGINAL_RIDGE: "1"}),
    (4, {Accent.MARGIN_BAND: "1"}),
)


def areas(coats: dict[Area, str]) -> tuple[AreaCoats, ...]:
    """Return a step's entries from "3" and "2-3"."""
    step = Step(jar=1)
    for area, text in coats.items():
        step = step.with_coats(area, CoatSpan.parse(text))
    return step.areas


def painted_dome() -> Case:
    """Return the dome with starter materials, five steps, streaks and two accents."""
    case = dome_case(28, 64)
    materials = starter_catalogue()
    points = case.surface.mesh.vertices
    ridge = np.exp(-(((points[:, 0] - 3.0) / 0.8) ** 2) - (points[:, 1] / 1.5) ** 2)
    ridge = np.where(case.reading.outer & (points[:, 2] > 2.0), ridge, 0.0)
    jars = tuple(
        Jar(number=number, liquid=name, dye_drops=materials.liquid(name).dye_drops)
        for number, name in enumerate(LIQUIDS, start=1)
    )
    steps = [Step(jar=jar, areas=areas(coats)) for jar, coats in STEPS]
    steps[2] = replace(
        steps[2], streaks=(Streaks(area=Zone.CUSP, count=3, length_mm=2.5, coats=1),)
    )
    return replace(
        case,
        code="S-0036",
        revision=4,
        replaces="7c4109ae" * 8,
        materials=materials,
        backings=(Backing(region=Region.STUMP, stump="natural dentine, medium", cement="clear"),),
        accents=(
            *case.accents,
            AccentMask(accent=Accent.MARGINAL_RIDGE, share=ridge.astype(np.float32)),
        ),
        accent_proposal=(),
        plan=StainPlan(block="medium 3Y", jars=jars, steps=tuple(steps)),
    )


@pytest.fixture(scope="session")
def dome() -> Case:
    """Return the painted dome."""
    return painted_dome()


@pytest.fixture(scope="session")
def operator(dome: Case) -> SurfaceOperator:
    """Return the operator of the dome's mesh."""
    return SurfaceOperator(dome.surface.mesh)


@pytest.fixture(scope="session")
def shading(operator: SurfaceOperator) -> ShadingFields:
    """Return the shading fields of the dome's mesh."""
    return shading_fields(operator)


MakeSheet = Callable[..., SheetData]


@pytest.fixture(scope="session")
def make_sheet(shading: ShadingFields) -> MakeSheet:
    """Return a function that makes sheet data of a case on the dome's mesh."""

    def make(case: Case, **more: Any) -> SheetData:
        layout = CoatLayout(case.surface.mesh, case.reading.outer)
        scene = scene_from_case(case)
        wall = np.ones(len(case.zones), np.float32)
        coats = layout.coats(case)
        low = reference_lab(scene, layout.coats(case, "low"), wall)
        lab = reference_lab(scene, coats, wall)
        outcome = judge(case, layout, wall, lab.astype(np.float32), low.astype(np.float32))
        data: dict[str, Any] = {
            "case": case,
            "coats": coats,
            "outcome": outcome,
            "plan_hash": plan_hash(case),
            "day": date(2026, 11, 25),
            "shading": shading,
        }
        return SheetData(**(data | more))

    return make


@pytest.fixture(scope="session")
def sheet(make_sheet: MakeSheet, dome: Case) -> SheetData:
    """Return the sheet data of the painted dome."""
    return make_sheet(dome)
