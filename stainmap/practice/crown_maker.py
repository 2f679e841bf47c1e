"""Crowns made from numbers and a seed, with what is known about them beside the mesh.

They serve as samples, for training and for tests: nobody's teeth, and nobody's library of teeth.
Run as a script it writes an STL file:

    python -m stainmap.practice.crown_maker OUT.stl --tooth 36 --seed 1
    python -m stainmap.practice.crown_maker OUT.stl --tooth 14-15-16

Bridges are made by `crown_bridge`.
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
from stainmap.practice.crown_bridge import make_bridge
from stainmap.practice.crown_meshing import join
from stainmap.practice.crown_solids import (
    MAKEABLE_TEETH,
    cavity_shell,
    check_choices,
    form_of,
    landmarks_of,
    outer_shell,
    solid_of,
)
from stainmap.practice.crown_truth import AccentMask, truth_of
from stainmap.practice.crown_walls import minimum_walls
from stainmap.surface.mesh import TriMesh
from stainmap.words import translate

__all__ = ["MAKEABLE_TEETH", "MadeCrown", "main", "make_crown", "stl_bytes"]

FloatArray = NDArray[np.float64]
Progress = Callable[[float, str], None]

_MIRRORED_QUADRANTS = (2, 4)
_STL_NOTE = b"stainmap practice crown, invented, for demonstration; mm, sintered size"


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
    check_choices(seed, variation, resolution)
    report = progress or _silent
    form = form_of(tooth)
    report(0.0, translate("crown maker", "carving the surface"))
    solid = solid_of(form, np.random.default_rng(seed), variation, resolution)
    report(0.25, translate("crown maker", "meshing the outer surface"))
    outside = outer_shell(solid, resolution)
    report(0.6, translate("crown maker", "meshing the cavity"))
    inside = cavity_shell(solid, resolution, outside.border_azimuth)
    vertices, faces = join(outside, inside)
    mesh = TriMesh(vertices, faces)
    outer = np.arange(len(vertices)) < len(outside.vertices)
    outer.flags.writeable = False
    report(0.8, translate("crown maker", "noting zones and walls"))
    truth = truth_of(solid, mesh, outer)
    tip_names, tips, pits = landmarks_of(solid, mesh, outer)
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
    parser.add_argument(
        "--tooth", default="36", help="ISO 3950 number, or a bridge as 14-15-16 (default 36)"
    )
    parser.add_argument("--seed", type=int, default=0, help="which individual (default 0)")
    parser.add_argument("--variation", type=float, default=0.0, help="0 to 1 (default 0)")
    parser.add_argument("--resolution", type=float, default=1.0, help="0.25 to 2 (default 1)")
    chosen = parser.parse_args(arguments)
    try:
        mesh = _chosen_mesh(chosen.tooth, chosen.seed, chosen.variation, chosen.resolution)
        write_bytes(chosen.out, stl_bytes(mesh))
    except (StainmapError, ValueError) as error:
        parser.error(str(error))


def _chosen_mesh(teeth: str, seed: int, variation: float, resolution: float) -> TriMesh:
    """Return the mesh of a crown, or of a bridge where several numbers are joined by hyphens."""
    numbers = tuple(int(part) if part.isdigit() else 0 for part in teeth.split("-"))
    if len(numbers) > 1:
        return make_bridge(numbers, seed=seed, variation=variation, resolution=resolution).mesh
    if not numbers[0]:
        raise PlanError(
            translate("crown maker", '"{teeth}" is not a tooth number.').format(teeth=teeth),
            advice=translate(
                "crown maker", "Give two digits by ISO 3950 as in 46, or a bridge as in 14-15-16."
            ),
        )
    return make_crown(
        Tooth(number=numbers[0]), seed=seed, variation=variation, resolution=resolution
    ).mesh


def _silent(_share: float, _phrase: str) -> None:
    """Tell nobody."""


if __name__ == "__main__":
    main()
