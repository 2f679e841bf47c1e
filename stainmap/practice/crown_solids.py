"""From a tooth's number and a seed to the solid of one individual, and its landmarks."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError
from stainmap.model.tooth import Tooth
from stainmap.practice.crown_back_tooth import BackToothSolid
from stainmap.practice.crown_data import TOOTH_FORMS
from stainmap.practice.crown_form import BackTooth, ToothForm
from stainmap.practice.crown_front_tooth import FrontToothSolid
from stainmap.practice.crown_meshing import EdgeLengths, Shell, sweep
from stainmap.practice.crown_variation import vary_back_tooth, vary_front_tooth
from stainmap.surface.mesh import TriMesh
from stainmap.words import translate

FloatArray = NDArray[np.float64]
ToothSolid = BackToothSolid | FrontToothSolid

# Edge lengths at full resolution, mm: finer over the biting surface, where the grooves are.
WALL_EDGE_MM = 0.13
_TOP_EDGE_MM = 0.098
_CAVITY_EDGE_MM = 0.145
_RELIEF_STEP_MM = 0.05
_COARSEST_RELIEF_STEP_MM = 0.1

MAKEABLE_TEETH = tuple(
    sorted(
        10 * quadrant + form.position
        for form in TOOTH_FORMS
        for quadrant in ((1, 2) if form.is_upper else (3, 4))
    )
)
"""Numbers of the teeth that can be made (ISO 3950)."""


def check_choices(seed: int, variation: float, resolution: float) -> None:
    """Refuse what no crown can be made from.

    Raises
    ------
    ValueError
        If seed, variation or resolution is out of range.
    """
    if seed < 0 or not 0.0 <= variation <= 1.0 or not 0.25 <= resolution <= 2.0:
        raise ValueError(
            "seed must be 0 or more, variation 0 to 1, resolution 0.25 to 2; got "
            f"{seed}, {variation}, {resolution}"
        )


def form_of(tooth: Tooth) -> ToothForm:
    """Return the form of a tooth.

    Raises
    ------
    PlanError
        If this tooth cannot be made.
    """
    for form in TOOTH_FORMS:
        if (form.is_upper, form.position) == (tooth.is_upper, tooth.position):
            return form
    raise PlanError(
        translate("crown solids", "Tooth {number} cannot be made.").format(number=tooth.number),
        advice=translate("crown solids", "Choose one of {map}.").format(
            map=", ".join(map(str, MAKEABLE_TEETH))
        ),
    )


def solid_of(
    form: ToothForm, generator: np.random.Generator, variation: float, resolution: float
) -> ToothSolid:
    """Return the solid of one individual of a form; chance comes from the generator alone."""
    if isinstance(form, BackTooth):
        individual, warp_strength = vary_back_tooth(form, variation, generator)
        step = min(_RELIEF_STEP_MM / min(resolution, 1.0), _COARSEST_RELIEF_STEP_MM)
        return BackToothSolid(
            individual, warp_strength=warp_strength, generator=generator, relief_step_mm=step
        )
    return FrontToothSolid(vary_front_tooth(form, variation, generator), generator=generator)


def outer_shell(solid: ToothSolid, resolution: float) -> Shell:
    """Return the triangulated outer surface of a solid."""
    lengths = EdgeLengths(wall_mm=WALL_EDGE_MM / resolution, top_mm=_TOP_EDGE_MM / resolution)
    return sweep(solid.outer, solid.outer_fan, lengths)


def cavity_shell(solid: ToothSolid, resolution: float, border_azimuth: FloatArray) -> Shell:
    """Return the triangulated cavity of a solid, its border where the outer surface has its own."""
    edge = _CAVITY_EDGE_MM / resolution
    return sweep(
        solid.inner,
        solid.inner_fan,
        EdgeLengths(wall_mm=edge, top_mm=edge),
        border_azimuth=border_azimuth,
    )


def landmarks_of(
    solid: ToothSolid, mesh: TriMesh, outer: NDArray[np.bool_]
) -> tuple[tuple[str, ...], FloatArray, FloatArray]:
    """Return the names (K) and places (K, 3) of the cusp tips, and the places (P, 3) of the pits.

    `mesh` was made from the solid and lies in its frame; `outer` (V,) is its outer surface.
    """
    points = mesh.vertices
    if isinstance(solid, FrontToothSolid):
        no_pits = np.zeros((0, 3))
        if solid.form.cusp is None:
            return (), np.zeros((0, 3)), no_pits
        return ("cusp",), points[[int(points[:, 2].argmax())]], no_pits
    x, y = points[:, 0], points[:, 1]
    upper = outer & (points[:, 2] > solid.form.turn_height)
    tips = []
    for cusp in solid.form.cusps:
        near = np.flatnonzero(upper & (np.hypot(x - cusp.tip[0], y - cusp.tip[1]) < 0.8))
        tips.append(points[near[points[near, 2].argmax()]])
    pits = []
    for px, py in solid.relief.pits:
        away = np.where(upper, np.hypot(x - px, y - py), np.inf)
        # On a coarse mesh no vertex may be that near.
        near = np.flatnonzero(away <= max(0.25, float(away.min())))
        pits.append(points[near[points[near, 2].argmin()]])
    return tuple(c.name for c in solid.form.cusps), np.array(tips), np.array(pits)
