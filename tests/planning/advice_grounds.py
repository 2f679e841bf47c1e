"""Grounds for rules of advice on the dome, whose walls, coats and colours a test chooses."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from stainmap.files.advice_file import starter_limits
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.material import Catalogue
from stainmap.model.plan import AreaCoats, CoatSpan, Jar, StainPlan, Step
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Area
from stainmap.planning.advice_ground import AdviceGround
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import area_weights, judge
from stainmap.predict.scene import scene_from_case
from tests.builders import dome_case


def base_case(materials: Catalogue | None = None, rings: int = 40, around: int = 96) -> Case:
    """Return the dome in starter materials with an empty plan and no target."""
    catalogue = starter_catalogue() if materials is None else materials
    case = dome_case(rings, around)
    backing = replace(
        case.backings[0], stump="natural dentine, medium", cement=catalogue.cements[0].name
    )
    return replace(
        case,
        materials=catalogue,
        plan=StainPlan(block="medium 3Y"),
        backings=(backing,),
        programme="slow",
        target=None,
    )


def painted(case: Case, *steps: tuple[str, Area, int]) -> Case:
    """Return the case with one undyed jar and one step for each liquid, area, coats."""
    jars = tuple(Jar(number=k + 1, liquid=liquid) for k, (liquid, _, _) in enumerate(steps))
    made = tuple(
        Step(jar=k + 1, areas=(AreaCoats(area=area, coats=CoatSpan.exactly(count)),))
        for k, (_, area, count) in enumerate(steps)
    )
    return replace(case, plan=replace(case.plan, jars=jars, steps=made))


def with_units(case: Case, *teeth: int, pontics: tuple[int, ...] = ()) -> Case:
    """Return the dome cut into as many units, side by side along x, from the patient's right."""
    units = tuple(
        Unit(tooth=Tooth(number=n), role=Role.PONTIC if n in pontics else Role.RETAINER)
        for n in teeth
    )
    x = case.surface.mesh.vertices[:, 0]
    index = np.clip(((x + 5.0) / 10.0 * len(teeth)).astype(int), 0, len(teeth) - 1)
    reading = replace(case.reading, unit_index=index.astype(np.uint8))
    return replace(case, units=units, reading=reading)


def ground_of(
    case: Case,
    *,
    wall_mm: NDArray[np.float64] | float = 1.5,
    lightness: NDArray[np.float64] | float = 74.0,
    coats: NDArray[np.float64] | None = None,
    assumed_wall: bool = False,
) -> AdviceGround:
    """Return what rules look at, with these walls, values and coats."""
    count = len(case.zones)
    wall = np.broadcast_to(np.asarray(wall_mm, np.float32), (count,)).copy()
    lab = np.tile(np.float32([74.0, 1.0, 18.0]), (count, 1))
    lab[:, 0] = lightness
    layout = CoatLayout(case.surface.mesh, case.reading.outer)
    laid = layout.coats(case) if coats is None else np.asarray(coats, np.float32)
    return AdviceGround(
        case=case,
        outcome=judge(case, layout, wall, lab),
        wall_mm=wall,
        partner=np.full(count, -1, np.int32),
        assumed_wall=assumed_wall,
        coats=laid,
        lightness=lab[:, 0],
        weights=area_weights(case, layout),
        scene=scene_from_case(case),
        limits=starter_limits(),
    )
