"""Crowns made from numbers and a seed, with what is known about them beside the mesh.

They serve as samples, for training and for tests: nobody's teeth, and nobody's library of teeth.
Run as a script it writes an STL file:

    python -m stainmap.practice.crown_maker OUT.stl --tooth 36 --seed 1
"""

from __future__ import annotations

import argparse
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import PlanError, StainmapError
from stainmap.files.atomic import write_bytes
from stainmap.model.tooth import Tooth
from stainmap.practice.crown_back_tooth import BackToothSolid
from stainmap.practice.crown_data import TOOTH_FORMS
from stainmap.practice.crown_form import BackTooth, ToothForm
from stainmap.practice.crown_front_tooth import FrontToothSolid
from stainmap.practice.crown_meshing import EdgeLengths, join, sweep
from stainmap.practice.crown_truth import AccentMask, truth_of
from stainmap.practice.crown_variation import vary_back_tooth, vary_front_tooth
from stainmap.practice.crown_walls import minimum_walls
from stainmap.surface.mesh import TriMesh

FloatArray = NDArray[np.float64]
Progress = Callable[[float, str], None]

# Edge lengths at full resolution, mm: finer over the biting surface, where the grooves are.
_WALL_EDGE_MM = 0.13
_TOP_EDGE_MM = 0.098
_CAVITY_EDGE_MM = 0.145
_RELIEF_STEP_MM = 0.05
_COARSEST_RELIEF_STEP_MM = 0.1
_MIRRORED_QUADRANTS = (2, 4)
_STL_NOTE = b"stainmap practice crown, invented, for demonstration; mm, sintered size"


MAKEABLE_TEETH = tuple(
    sorted(
        10 * quadrant + form.position
        for form in TOOTH_FORMS
        for quadrant in ((1, 2) if form.is_upper else (3, 4))
    )
)
"""Numbers of the teeth that can be made (ISO 3950)."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MadeCrown:
    """A crown with cavity, and the truth about it. Sintered size, mm; arrays are per vertex.

    Parameters
    ----------
    tooth, seed, variation
        What it was made from.
    mesh
        Closed surface of V vertices; +z is occlusal, +y buccal.
    outer
        (V,) bool. The outer surface, margin included; the rest is the cavity.
    zones
        (V,) uint8. Numbers of `stainmap.model.zone.Zone`.
    accents
        Accents with (V,) float32 masks, 0 to 1, on the outer surface.
    occlusal_axis, mesial
        Unit vectors; mesial is -x in quadrants 2 and 4.
    tips
        (K, 3) places of the cusp tips; empty on front teeth. `tip_names` says which.
    pits
        (P, 3) places of the pits.
    fissure_lines
        (L, 2, 3) the bottoms of the main grooves as segments; empty on front teeth.
    minimum_occlusal_wall_mm, minimum_axial_wall_mm
        Thinnest wall over the stump's top, and around it from half a millimetre above the margin.
    """

    tooth: Tooth
    seed: int
    variation: float
    mesh: TriMesh
    outer: NDArray[np.bool_]
    zones: NDArray[np.uint8]
    accents: tuple[AccentMask, ...]
    occlusal_axis: tuple[float, float, float]
    mesial: tuple[float, float, float]
    tips: FloatArray
    tip_names: tuple[str, ...]
    pits: FloatArray
    fissure_lines: FloatArray
    minimum_occlusal_wall_mm: float
    minimum_axial_wall_mm: float


def make_crown(
    tooth: Tooth,
    *,
    seed: int = 0,
    variation: float = 0.0,
    resolution: float = 1.0,
    progress: Progress | None = None,
) -> MadeCrown:
    """Return a crown of a tooth; the same arguments give the same crown.

    Parameters
    ----------
    tooth
        One of `MAKEABLE_TEETH`.
    seed
        Which individual, 0 or more.
    variation
        0 for the average tooth with its small accidents, 1 for the full spread of individuals.
    resolution
        1 for edges of 0.1 to 0.13 mm, about 70 000 faces on a molar; their number goes with the
        square. 0.4 (edges of 0.25 to 0.33 mm) serves tests and small pictures, in 0.4 to 0.8 s of
        processor time. 0.25 to 2.
    progress
        Called with the share done and a phrase; raise out of it to stop.

    Raises
    ------
    PlanError
        If this tooth cannot be made.
    ValueError
        If seed, variation or resolution is out of range.
    """
    if seed < 0 or not 0.0 <= variation <= 1.0 or not 0.25 <= resolution <= 2.0:
        raise ValueError(
            "seed must be 0 or more, variation 0 to 1, resolution 0.25 to 2; got "
            f"{seed}, {variation}, {resolution}"
        )
    report = progress or _silent
    form = _form_of(tooth)
    report(0.0, "carving the surface")
    solid = _solid(form, seed, variation, resolution)
    report(0.25, "meshing the outer surface")
    lengths = EdgeLengths(wall_mm=_WALL_EDGE_MM / resolution, top_mm=_TOP_EDGE_MM / resolution)
    outside = sweep(solid.outer, solid.outer_fan, lengths)
    report(0.6, "meshing the cavity")
    edge = _CAVITY_EDGE_MM / resolution
    inside = sweep(
        solid.inner,
        solid.inner_fan,
        EdgeLengths(wall_mm=edge, top_mm=edge),
        border_azimuth=outside.border_azimuth,
    )
    vertices, faces = join(outside, inside)
    mesh = TriMesh(vertices, faces)
    outer = np.arange(len(vertices)) < len(outside.vertices)
    outer.flags.writeable = False
    report(0.8, "noting zones and walls")
    truth = truth_of(solid, mesh, outer)
    tip_names, tips, pits = _landmarks(solid, mesh, outer)
    roof, axial = minimum_walls(mesh, outer, vertices[:, 2] - solid.margin_height(vertices))
    lines = truth.fissure_lines
    mirrored = tooth.quadrant in _MIRRORED_QUADRANTS
    if mirrored:
        flip = np.array([-1.0, 1.0, 1.0])
        mesh = TriMesh(vertices * flip, faces[:, ::-1])
        tips, pits, lines = tips * flip, pits * flip, lines * flip
    report(1.0, "done")
    return MadeCrown(
        tooth=tooth,
        seed=seed,
        variation=variation,
        mesh=mesh,
        outer=outer,
        zones=truth.zones,
        accents=truth.accents,
        occlusal_axis=(0.0, 0.0, 1.0),
        mesial=(-1.0, 0.0, 0.0) if mirrored else (1.0, 0.0, 0.0),
        tips=tips,
        tip_names=tip_names,
        pits=pits,
        fissure_lines=lines,
        minimum_occlusal_wall_mm=roof,
        minimum_axial_wall_mm=axial,
    )


def stl_bytes(mesh: TriMesh) -> bytes:
    """Return the mesh as a binary STL file, in its own units."""
    record = np.zeros(
        mesh.face_count,
        dtype=[("normal", "<f4", 3), ("corners", "<f4", (3, 3)), ("attribute", "<u2")],
    )
    record["normal"] = mesh.face_normals
    record["corners"] = mesh.vertices[mesh.faces]
    count = np.array(mesh.face_count, dtype="<u4").tobytes()
    return _STL_NOTE.ljust(80, b" ") + count + record.tobytes()


def main(arguments: Sequence[str] | None = None) -> None:
    """Make a crown and write it as an STL file; leave with status 2 and a sentence if not."""
    parser = argparse.ArgumentParser(
        prog="python -m stainmap.practice.crown_maker",
        description="Make a practice crown and write it as binary STL in sintered millimetres.",
    )
    parser.add_argument("out", type=Path, metavar="OUT.stl")
    parser.add_argument("--tooth", type=int, default=36, help="ISO 3950 number (default 36)")
    parser.add_argument("--seed", type=int, default=0, help="which individual (default 0)")
    parser.add_argument("--variation", type=float, default=0.0, help="0 to 1 (default 0)")
    parser.add_argument("--resolution", type=float, default=1.0, help="0.25 to 2 (default 1)")
    chosen = parser.parse_args(arguments)
    try:
        crown = make_crown(
            Tooth(number=chosen.tooth),
            seed=chosen.seed,
            variation=chosen.variation,
            resolution=chosen.resolution,
        )
        write_bytes(chosen.out, stl_bytes(crown.mesh))
    except (StainmapError, ValueError) as error:
        parser.error(str(error))


def _silent(_share: float, _phrase: str) -> None:
    """Tell nobody."""


def _form_of(tooth: Tooth) -> ToothForm:
    for form in TOOTH_FORMS:
        if (form.is_upper, form.position) == (tooth.is_upper, tooth.position):
            return form
    raise PlanError(
        f"Tooth {tooth.number} cannot be made.",
        advice=f"Choose one of {', '.join(map(str, MAKEABLE_TEETH))}.",
    )


def _solid(
    form: ToothForm, seed: int, variation: float, resolution: float
) -> BackToothSolid | FrontToothSolid:
    generator = np.random.default_rng(seed)
    if isinstance(form, BackTooth):
        individual, warp_strength = vary_back_tooth(form, variation, generator)
        step = min(_RELIEF_STEP_MM / min(resolution, 1.0), _COARSEST_RELIEF_STEP_MM)
        return BackToothSolid(
            individual, warp_strength=warp_strength, generator=generator, relief_step_mm=step
        )
    return FrontToothSolid(vary_front_tooth(form, variation, generator), generator=generator)


def _landmarks(
    solid: BackToothSolid | FrontToothSolid, mesh: TriMesh, outer: NDArray[np.bool_]
) -> tuple[tuple[str, ...], FloatArray, FloatArray]:
    """Return the names and places of the cusp tips, and the places of the pits."""
    if isinstance(solid, FrontToothSolid):
        return (), np.zeros((0, 3)), np.zeros((0, 3))
    points = mesh.vertices
    x, y = points[:, 0], points[:, 1]
    upper = outer & (points[:, 2] > solid.form.turn_height)
    tips = []
    for cusp in solid.form.cusps:
        near = np.flatnonzero(upper & (np.hypot(x - cusp.tip[0], y - cusp.tip[1]) < 0.8))
        tips.append(points[near[points[near, 2].argmax()]])
    pits = []
    for px, py in solid.relief.pits:
        near = np.flatnonzero(upper & (np.hypot(x - px, y - py) < 0.25))
        pits.append(points[near[points[near, 2].argmin()]])
    return tuple(c.name for c in solid.form.cusps), np.array(tips), np.array(pits)


if __name__ == "__main__":
    main()
