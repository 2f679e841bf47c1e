"""Plans on a plate of starter material, predicted by the plain calculation."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np

from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Backing, Region
from stainmap.model.material import Catalogue, Provenance, Stump
from stainmap.model.plan import Jar, StainPlan, Step
from stainmap.predict.reference import reference_lab
from stainmap.predict.scene import OpticalScene, build_scene

DENTINE = Backing(
    region=Region.STUMP,
    stump="natural dentine, medium",
    cement="clear",
    cement_thickness_mm=0.0,
)
WHITE_TILE, BLACK_TILE = (
    Backing(region=Region.STUMP, stump=name, cement="none, air gap", cement_thickness_mm=0.0)
    for name in ("white tile", "black tile")
)
Coats = Sequence[tuple[str, float]]


@cache
def materials() -> Catalogue:
    """Return the starter materials, and the two tiles that translucency is measured over."""
    starter = starter_catalogue()
    tiles = tuple(
        Stump(
            name=name,
            floor=reflectance,
            rise=0.0,
            centre_nm=550.0,
            width_nm=50.0,
            provenance=Provenance.INVENTED,
        )
        for name, reflectance in (("white tile", 0.85), ("black tile", 0.02))
    )
    return replace(starter, stumps=starter.stumps + tiles)


def plan_of(liquids: Sequence[str], block: str = "medium 3Y") -> StainPlan:
    """Return a plan with a step per entry and a jar per liquid, undiluted."""
    names = list(dict.fromkeys(liquids))
    return StainPlan(
        block=block,
        jars=tuple(Jar(number=number, liquid=name) for number, name in enumerate(names, start=1)),
        steps=tuple(Step(jar=names.index(name) + 1) for name in liquids),
    )


def scene_of(liquids: Sequence[str], block: str = "medium 3Y", **choices: Any) -> OpticalScene:
    """Return the scene of such a plan, slow cycle, cemented on natural dentine."""
    choices = {"programme": "slow", "backings": [DENTINE], **choices}
    return build_scene(materials(), plan_of(liquids, block), **choices)


def plate_lab(
    outside: Coats = (),
    *,
    wall_mm: float = 1.2,
    inside: Coats = (),
    block: str = "medium 3Y",
    **choices: Any,
) -> np.ndarray:
    """Return L*a*b* of a plate painted on its outside and inside, one step per entry."""
    scene = scene_of([name for name, _ in (*outside, *inside)], block, **choices)
    near = np.array([*(coats for _, coats in outside), *(0.0 for _ in inside)])
    far = np.array([*(0.0 for _ in outside), *(coats for _, coats in inside)])
    return reference_lab(scene, near[:, None], [wall_mm], far[:, None])[0]
