"""Every plan within the limits per area on every kind of wall, and the ones farthest out.

Nothing is searched by chance: all counts of coats of all liquids that `coat_limits` allows on an
outer zone are tried, painted from pale to dark and from dark to pale, over what stands inside,
behind and around them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from itertools import combinations_with_replacement, product

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Backing
from stainmap.model.zone import OUTER_ZONES, Area, Zone
from stainmap.optics.slab import km_reflectance_transmittance
from stainmap.optics.stack import LayerOptics
from stainmap.planning.coat_limits import LIMITS, excesses, use_of
from stainmap.predict.blocks import layer_share
from stainmap.predict.reference import load_of_coats
from stainmap.predict.scene import OpticalScene, build_scene
from tests.predict.scenes import materials, plan_of

LIQUIDS = tuple(liquid.name for liquid in materials().liquids)
HEIGHTS_MM = (0.0, 11.5, 15.0)


@cache
def plans_within_limits(area: Area) -> tuple[Mapping[str, int], ...]:
    """Return the coats by liquid of every plan that an area may have, the bare one first."""
    most = sum(limit.most for limit in LIMITS[area] if len(limit.uses) == 1)
    within = sum(limit.most for limit in LIMITS[area])
    named = [
        name
        for name in LIQUIDS
        if not excesses(area, {name: 1}, materials()) and use_of(materials().liquid(name))
    ]
    found = []
    for count in range(min(max(most, 4), within) + 1):
        for coats in combinations_with_replacement(named, count):
            plan = {name: coats.count(name) for name in dict.fromkeys(coats)}
            if not excesses(area, plan, materials()):
                found.append(plan)
    return tuple(found)


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where a plan was found: what it is part of."""

    zone: Zone
    outside: Mapping[str, int]
    inside: Mapping[str, int]
    dark_first: bool
    backing: Backing
    wall_mm: float
    programme: str
    height_mm: float | None


def counts(plans: Sequence[Mapping[str, int]]) -> NDArray[np.float64]:
    """Return the coats (L, n) of plans, one row per liquid."""
    return np.array([[plan.get(name, 0) for plan in plans] for name in LIQUIDS], dtype=np.float64)


def loads(scene: OpticalScene, plans: Sequence[Mapping[str, int]]) -> NDArray[np.float64]:
    """Return the loads (L, 2 n) of plans, pale first and then dark first."""
    coats = counts(plans)
    turned = scene_of_order(scene, dark_first=True)
    return np.concatenate([load_of_coats(scene, coats), load_of_coats(turned, coats[::-1])], axis=1)


def scene_of_order(scene: OpticalScene, *, dark_first: bool) -> OpticalScene:
    """Return the scene with a step per liquid, in the order of the catalogue or against it."""
    if not dark_first:
        return scene
    return replace(scene, step_liquid=scene.step_liquid[::-1].copy())


def every_look(
    block: str,
    backings: Sequence[Backing],
    walls_mm: Sequence[float],
    programmes: Sequence[str],
    inside: Sequence[Mapping[str, int]],
) -> Iterator[tuple[NDArray[np.float64], list[tuple[Zone, Mapping[str, int]]], dict]]:
    """Yield L*a*b* (2 n, i, 3) of n plans over i plans inside, per circumstance."""
    outside = [(zone, plan) for zone in OUTER_ZONES for plan in plans_within_limits(zone)]
    for programme in programmes:
        scene = build_scene(
            materials(), plan_of(LIQUIDS, block), programme=programme, backings=list(backings)
        )
        near_load = loads(scene, [plan for _, plan in outside])
        far_load = load_of_coats(scene, counts(inside))
        layers = len(scene.block_absorption_per_mm)
        for height in HEIGHTS_MM if layers > 1 else (None,):
            share = (
                np.ones(1)
                if height is None
                else layer_share(materials().block(block), [height])[:, 0]
            )
            K = share @ scene.block_absorption_per_mm
            S = share @ scene.block_scattering_per_mm
            near = LayerOptics.homogeneous(
                (K + near_load.T @ scene.liquid_absorption_per_mm)[:, None],
                S,
                scene.process.outer_depth_mm,
            )
            far = LayerOptics.homogeneous(
                K + far_load.T @ scene.liquid_absorption_per_mm, S, scene.process.inner_depth_mm
            )
            for wall, (region, backing) in product(walls_mm, enumerate(backings)):
                stained = scene.process.outer_depth_mm + scene.process.inner_depth_mm
                R, T = km_reflectance_transmittance(K, S, wall - stained)
                core = LayerOptics(reflectance=R, reverse_reflectance=R, transmittance=T)
                behind = core.over_backing(far.over_backing(scene.backing_reflectance[region]))
                within = near.over_backing(behind)
                outward = scene.radiance_factor * within / (1.0 - scene.front_internal * within)
                yield (
                    scene.lab(outward),
                    outside,
                    {
                        "backing": backing,
                        "wall_mm": wall,
                        "programme": programme,
                        "height_mm": height,
                    },
                )


def extremes(
    block: str,
    backings: Sequence[Backing],
    *,
    walls_mm: Sequence[float],
    programmes: Sequence[str],
    inside: Sequence[Mapping[str, int]],
) -> dict[str, tuple[float, Place]]:
    """Return the least and largest a* and b* of all plans within the limits, and where.

    Walls of at least 0.7 mm: thinner ones are stained through.
    """
    best: dict[str, tuple[float, Place]] = {}
    for lab, outside, around in every_look(block, backings, walls_mm, programmes, inside):
        for axis, name in ((1, "a"), (2, "b")):
            for end, position in (
                ("least", lab[..., axis].argmin()),
                ("largest", lab[..., axis].argmax()),
            ):
                row, column = np.unravel_index(position, lab.shape[:2])
                value = float(lab[row, column, axis])
                key = f"{end} {name}"
                farther = key not in best or (
                    value < best[key][0] if end == "least" else value > best[key][0]
                )
                if farther:
                    zone, plan = outside[row % len(outside)]
                    best[key] = (
                        value,
                        Place(
                            zone=zone,
                            outside=plan,
                            inside=inside[column],
                            dark_first=row >= len(outside),
                            **around,
                        ),
                    )
    return best
