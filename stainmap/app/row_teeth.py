"""The teeth beside a crown: made from numbers, or read from a mesh that somebody has.

Made ones are the practice crowns, outside only: the shape of their own number where that can be
made, or else of the most similar tooth at the textbook size of their own. They are kept on the
disk once made. Nobody's teeth.
"""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from stainmap.app.job import Progress
from stainmap.app.opening import Answers, build_case, look_at_mesh
from stainmap.errors import PlanError, StainmapError
from stainmap.files.atomic import write_bytes
from stainmap.model.case import Case
from stainmap.model.tooth import Tooth, Unit
from stainmap.model.zone import OUTER_ZONES, Zone
from stainmap.paper.shading import ShadingFields, shading_fields
from stainmap.planning.coats import smoothing_length_mm
from stainmap.planning.directions import buccal_from_mesial
from stainmap.planning.progress import Steps
from stainmap.planning.row_placing import ToothBody
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import BoolArray, FloatArray, TriMesh, frozen, submesh
from stainmap.units import SizeState
from stainmap.words import translate

Floats = NDArray[np.float32]

RESOLUTION: Final = 0.45
"""Of made neighbours: edges of a quarter of a millimetre."""

# Raised whenever a made neighbour changes, so that those on the disk are made anew.
_KEPT_AS: Final = 3
_MIRRORED_QUADRANTS: Final = (2, 4)
_SOFTNESS_MM: Final = 0.6
_BLEND_MM: Final = 3.0
# Shapes that stand in where a tooth cannot be made from numbers of its own, by position.
_UPPER_SHAPES: Final = (1, 1, 3, 4, 5, 6, 6, 6)
_LOWER_SHAPES: Final = ((1, 1), (1, 1), (1, 3), (1, 4), (1, 5), (3, 6), (3, 6), (3, 6))
_QUADRANTS_ALIKE: Final = {1: (1, 3), 2: (2, 4), 3: (1, 3), 4: (2, 4)}
# Height of the crest over the margin as a share of that of the highest tip.
_CREST: Final = 0.85


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class RowTooth:
    """One tooth of the row in its own coordinates; arrays are per vertex, V long.

    Parameters
    ----------
    body
        Its outer surface.
    height
        (V,) 0 at the margin, 1 at the crest.
    shares
        (7, V) softened shares of zones, by number: as areas are told apart on the crown.
    blended
        (7, V) softer ones, by which a neighbour is coloured: natural teeth have no borders.
    fields
        What light needs to know of it.
    shape
        The tooth whose shape it has; another one than its own where that stands in.
    name
        Of the file it was read from; empty if it was made.
    in_place
        True if its coordinates are those of the crown.
    """

    body: ToothBody
    height: Floats
    shares: Floats
    blended: Floats
    fields: ShadingFields
    shape: Tooth
    name: str = ""
    in_place: bool = False


def shape_of(tooth: Tooth) -> Tooth:
    """Return the tooth whose shape is made for a tooth, on the same side of the mouth."""
    # What makes crowns is slow to import, and the window is to be there before.
    from stainmap.practice.crown_solids import MAKEABLE_TEETH  # noqa: PLC0415

    if tooth.number in MAKEABLE_TEETH:
        return tooth
    upper, lower = _QUADRANTS_ALIKE[tooth.quadrant]
    if tooth.is_upper:
        return Tooth(number=10 * upper + _UPPER_SHAPES[tooth.position - 1])
    jaw, position = _LOWER_SHAPES[tooth.position - 1]
    return Tooth(number=10 * (upper if jaw == 1 else lower) + position)


def made_tooth(
    tooth: Tooth,
    *,
    kept_in: Path | None = None,
    resolution: float = RESOLUTION,
    progress: Progress | None = None,
) -> RowTooth:
    """Return a tooth made from numbers, from the disk if it was made before.

    Parameters
    ----------
    kept_in
        Folder where made teeth are kept; None keeps none. What is damaged there is made anew, and
        a folder that cannot be written to is passed over.
    """
    shape = shape_of(tooth)
    file = None if kept_in is None else kept_in / f"{shape.number}-{resolution:g}-{_KEPT_AS}.npz"
    arrays = None if file is None else _kept(file)
    if arrays is None:
        arrays = _made(shape, resolution, progress)
        if file is not None:
            _keep(file, arrays)
    mesial = -1.0 if shape.quadrant in _MIRRORED_QUADRANTS else 1.0
    mesh = TriMesh(arrays["vertices"].astype(np.float64), arrays["faces"])
    return RowTooth(
        body=ToothBody(tooth=tooth, mesh=mesh, rows=np.diag([mesial, 1.0, 1.0])),
        height=arrays["height"],
        shares=arrays["shares"],
        blended=arrays["blended"],
        fields=ShadingFields(
            normals=mesh.vertex_normals.astype(np.float32),
            normals_red=arrays["red"],
            normals_green=arrays["green"],
            normals_blue=arrays["blue"],
            openness=arrays["openness"],
        ),
        shape=shape,
    )


def read_tooth(path: Path, tooth: Tooth, case: Case, progress: Progress | None = None) -> RowTooth:
    """Return a tooth read from a mesh file.

    Where the file's coordinates put it beside the crown, it stays there; where not, it is stood
    in the arch, which asks for a shape that tells mesial.

    Raises
    ------
    StainmapError
        If it cannot be read as one tooth, or it is not known how it stands.
    """
    look = look_at_mesh(path, progress)
    axis, mesial = _ways(case)
    factor = case.source.sintered_mm_per_unit
    in_place = stands_beside(look.mesh.bounds * factor, case.surface.mesh.bounds)
    answers = Answers(
        units=(Unit(tooth=tooth),),
        size_state=SizeState.SINTERED,
        block=case.plan.block,
        unit=case.source.unit if in_place else None,
        occlusal_axis=axis if in_place else None,
        mesial=_sidewards(case, tooth, mesial) if in_place else None,
    )
    read, operator = build_case(look, answers, case.materials, progress=progress)
    if read.reading.mesial is None or not np.isfinite(read.reading.height).any():
        raise PlanError(
            translate(
                "row teeth", "How the tooth in {name} stands cannot be told from its shape."
            ).format(name=path.name),
            advice=translate(
                "row teeth", "Export it where it stands beside the crown, in the same coordinates."
            ),
        )
    return _of_case(read, operator, path.name, in_place=in_place)


def stands_beside(bounds: FloatArray, crown: FloatArray) -> bool:
    """Return True if a body lies beside a crown and not around it or far off.

    Parameters
    ----------
    bounds, crown
        (2, 3) lowest and highest coordinates, mm, in the same coordinates.
    """
    middle, half = 0.5 * (crown[0] + crown[1]), 0.5 * (crown[1] - crown[0])
    other, other_half = 0.5 * (bounds[0] + bounds[1]), 0.5 * (bounds[1] - bounds[0])
    away = np.abs(other - middle)
    apart = away - half - other_half
    near = bool((apart < 2.0).all())
    return near and bool((away > 0.45 * np.minimum(half, other_half) * 2.0).any())


def _ways(case: Case) -> tuple[tuple[float, float, float], FloatArray]:
    axis, said = case.reading.occlusal_axis, case.reading.mesial
    mesial = np.zeros(3) if said is None else np.asarray(said, dtype=np.float64)
    return axis, mesial


def _sidewards(case: Case, tooth: Tooth, mesial: FloatArray) -> tuple[float, float, float] | None:
    """Return mesial of a tooth beside the crown: the crown's, or against it over the midline."""
    if not mesial.any():
        return None
    same = tooth.quadrant == case.units[0].tooth.quadrant
    x, y, z = (float(v) for v in (mesial if same else -mesial))
    return x, y, z


def _of_case(case: Case, operator: SurfaceOperator, name: str, *, in_place: bool) -> RowTooth:
    mesh, reading = case.surface.mesh, case.reading
    tooth = case.units[0].tooth
    fields = shading_fields(operator)
    shares, blended = _softened(operator, case.zones), _blended(operator, case.zones)
    part, kept = submesh(mesh, np.asarray(reading.outer[mesh.faces].all(axis=1)))
    axis = np.asarray(reading.occlusal_axis, dtype=np.float64)
    said = np.asarray(reading.mesial, dtype=np.float64)
    mesial = said - (said @ axis) * axis
    mesial /= np.linalg.norm(mesial)
    return RowTooth(
        body=ToothBody(
            tooth=tooth,
            mesh=part,
            rows=np.stack([mesial, buccal_from_mesial(mesial, axis, tooth), axis]),
        ),
        height=np.nan_to_num(reading.height[kept], nan=0.0),
        shares=shares[:, kept],
        blended=blended[:, kept],
        fields=_at(fields, kept),
        shape=tooth,
        name=name,
        in_place=in_place,
    )


def _made(shape: Tooth, resolution: float, progress: Progress | None) -> dict[str, NDArray[Any]]:
    """Return the outside of the average tooth of a shape, with all that is kept of it."""
    from stainmap.practice.crown_solids import form_of, outer_shell, solid_of  # noqa: PLC0415
    from stainmap.practice.crown_truth import truth_of  # noqa: PLC0415

    steps = Steps(progress)
    steps.say(0.0, translate("row teeth", "carving the surface"))
    solid = solid_of(form_of(shape), np.random.default_rng(0), 0.0, resolution)
    steps.say(0.3, translate("row teeth", "meshing the outer surface"))
    outside = outer_shell(solid, resolution)
    own = TriMesh(outside.vertices, outside.faces)
    steps.say(0.6, translate("row teeth", "noting zones"))
    zones = truth_of(solid, own, np.ones(own.vertex_count, dtype=np.bool_)).zones
    mesh = own
    if shape.quadrant in _MIRRORED_QUADRANTS:
        mesh = TriMesh(own.vertices * np.array([-1.0, 1.0, 1.0]), own.faces[:, ::-1])
    operator = SurfaceOperator(mesh)
    fields = shading_fields(operator, progress=steps.part(0.65, 1.0).say)
    return {
        "vertices": mesh.vertices.astype(np.float32),
        "faces": mesh.faces,
        "height": _height(mesh),
        "shares": _softened(operator, zones),
        "blended": _blended(operator, zones),
        "red": fields.normals_red,
        "green": fields.normals_green,
        "blue": fields.normals_blue,
        "openness": fields.openness,
    }


def _blended(operator: SurfaceOperator, zones: NDArray[np.uint8]) -> Floats:
    """Return shares that run into each other, but for fissures, which stay narrow."""
    fissure = zones == int(Zone.FISSURE)
    wide = _softened(operator, np.where(fissure, int(Zone.CUSP), zones), _BLEND_MM)
    narrow = _softened(operator, zones)[int(Zone.FISSURE)]
    shares = wide * (1.0 - narrow)
    shares[int(Zone.FISSURE)] = narrow
    return frozen(shares.astype(np.float32))


def _softened(
    operator: SurfaceOperator, zones: NDArray[np.integer], softness_mm: float = _SOFTNESS_MM
) -> Floats:
    hard = np.stack([zones == int(zone) for zone in OUTER_ZONES], axis=1)
    soft = np.clip(operator.smooth(hard, smoothing_length_mm(softness_mm)), 0.0, 1.0)
    shares = np.zeros((7, len(zones)), np.float32)
    shares[[int(zone) for zone in OUTER_ZONES]] = (
        soft / np.maximum(soft.sum(axis=1, keepdims=True), 1e-9)
    ).T
    return frozen(shares)


def _height(mesh: TriMesh) -> Floats:
    """Return 0 at the border of an open crown along z, 1 at a share of the highest tip."""
    border: BoolArray = mesh.boundary_vertices
    middle = mesh.vertices[border, :2].mean(axis=0)

    def around(points: FloatArray) -> FloatArray:
        return np.asarray(np.arctan2(points[:, 1] - middle[1], points[:, 0] - middle[0]))

    turn = around(mesh.vertices[border])
    order = np.argsort(turn)
    low = np.interp(
        around(mesh.vertices), turn[order], mesh.vertices[border, 2][order], period=2.0 * np.pi
    )
    rise = mesh.vertices[:, 2] - low
    return np.asarray(rise / (_CREST * float(rise.max())), dtype=np.float32)


def _at(fields: ShadingFields, kept: NDArray[np.int32]) -> ShadingFields:
    return ShadingFields(
        normals=fields.normals[kept],
        normals_red=fields.normals_red[kept],
        normals_green=fields.normals_green[kept],
        normals_blue=fields.normals_blue[kept],
        openness=fields.openness[kept],
    )


_ARRAYS: Final = (
    "vertices",
    "faces",
    "height",
    "shares",
    "blended",
    "red",
    "green",
    "blue",
    "openness",
)


def _kept(file: Path) -> Mapping[str, NDArray[Any]] | None:
    """Return the arrays of a file, or None if it is not there or not what it should be."""
    try:
        with np.load(io.BytesIO(file.read_bytes()), allow_pickle=False) as stored:
            arrays = {name: stored[name] for name in _ARRAYS}
        count = len(arrays["vertices"])
        fits = arrays["faces"].max(initial=-1) < count and arrays["shares"].shape == (7, count)
        finite = all(np.isfinite(arrays[name]).all() for name in _ARRAYS)
    except (OSError, ValueError, KeyError, EOFError, zipfile.BadZipFile):
        return None
    return arrays if fits and finite else None


def _keep(file: Path, arrays: Mapping[str, NDArray[Any]]) -> None:
    stream = io.BytesIO()
    named: dict[str, Any] = dict(arrays)
    np.savez(stream, **named)
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        write_bytes(file, stream.getvalue())
    except (OSError, StainmapError):
        return  # it is made again next time
