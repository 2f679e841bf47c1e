"""A crown or bridge between its neighbours in the arch, and how far it is off them in colour."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.app.job import Progress
from stainmap.app.prediction import Prediction
from stainmap.app.row_teeth import RESOLUTION, RowTooth, made_tooth, read_tooth
from stainmap.errors import PlanError
from stainmap.model.case import Case
from stainmap.model.target import Target
from stainmap.model.tooth import Tooth
from stainmap.optics.colorimetry import lab_to_srgb
from stainmap.paper.occlusion import open_beside
from stainmap.paper.shading import ShadingFields
from stainmap.planning.arch import arch_depth_mm, arch_stand
from stainmap.planning.directions import buccal_from_mesial
from stainmap.planning.mirrored import unit_mesials
from stainmap.planning.progress import Steps
from stainmap.planning.row import row_order, row_place
from stainmap.planning.row_colours import (
    NeighbourColours,
    ZoneStep,
    neighbour_colours,
    neighbour_shade,
    steps_to,
)
from stainmap.planning.row_placing import (
    Beside,
    Placed,
    ToothBody,
    facial_edge,
    mouth_size,
    moved,
    stood_beside,
    teeth_beside,
)
from stainmap.surface.clustering import clustered_faces
from stainmap.surface.mesh import FloatArray, TriMesh, frozen, submesh
from stainmap.words import translate

Floats = NDArray[np.float32]
Bytes = NDArray[np.uint8]

LIGHT_AT_THE_BACK: Final = 0.5
"""Light at the back of the second molars, of that at the front (assumed)."""

_FULL_LIGHT: Final = 0.2  # of the arch's depth is lit as the front is
# Where the gum would end: shares of the crown's height at which it is hidden, and wholly seen.
_HIDDEN, _SEEN = 0.05, 0.27
_SHADOW_DIRECTIONS: Final = 48
_SHADOW_SIDE: Final = 200
# Times each vertex takes the mean of its neighbours: shadows are grainy, necks are frayed.
_SHADOW_PASSES: Final = 3
_NECK_PASSES: Final = 8
# Light that comes through the neighbours and back from them (assumed): contacts are not black.
_LEAST_OPEN: Final = 0.2
_SHADOW_CELL_MM: Final = 0.5
_UNKNOWN: Final = 168  # sRGB grey of neighbours while nothing is wanted


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Neighbour:
    """A tooth that stands in the row.

    Parameters
    ----------
    beside
        Which, and beside which unit.
    tooth
        The tooth as it was made or read.
    first, last
        Its vertices in the row's mesh: from `first` up to, not including, `last`.
    areas_mm2
        (V,) size of each of its vertices as it stands.
    label
        (3,) a place at its neck on the facial side.
    """

    beside: Beside
    tooth: RowTooth
    first: int
    last: int
    areas_mm2: FloatArray
    label: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Row:
    """A crown and its neighbours as one mesh in the crown's coordinates.

    Parameters
    ----------
    mesh
        The crown's vertices and faces first, in their order, then those of the neighbours.
    crown_vertices, crown_faces
        How many of them are the crown's.
    fields
        What light needs to know, with the shadow that teeth cast on each other.
    light
        (V,) 1 at the front of the mouth, `LIGHT_AT_THE_BACK` where the second molars end.
    above_gum
        (V,) 0 where the gum would hide it, 1 from a quarter of the height on.
    neighbours
        From the patient's right to left.
    labels
        (units, 3) a place at the neck of each unit on the facial side.
    outward, occlusal, mesial
        (3,) unit vectors out of the arch at the middle unit, towards its bite and to mesial.
    """

    mesh: TriMesh
    crown_vertices: int
    crown_faces: int
    fields: ShadingFields
    light: Floats
    above_gum: Floats
    neighbours: tuple[Neighbour, ...]
    labels: FloatArray
    outward: FloatArray
    occlusal: FloatArray
    mesial: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class RowStep:
    """The steps from a crown to one neighbour next to it."""

    tooth: Tooth
    unit: int
    steps: tuple[ZoneStep, ...]
    own_shade: bool


def build_row(
    case: Case,
    fields: ShadingFields,
    *,
    files: Mapping[int, Path] | None = None,
    kept_in: Path | None = None,
    resolution: float = RESOLUTION,
    progress: Progress | None = None,
) -> Row:
    """Return a case's crown between its neighbours.

    Parameters
    ----------
    fields
        What light needs to know of the crown.
    files
        Meshes of neighbours by tooth number; the others are made.
    kept_in
        Folder where made teeth are kept.
    resolution
        Of made teeth, as of a practice crown.

    Raises
    ------
    PlanError
        If it is not known where mesial is, or the body is no crown.
    StainmapError
        If a mesh cannot be read as its tooth.
    """
    bodies = _unit_bodies(case)
    besides = teeth_beside(case.units)
    steps = Steps(progress)
    teeth = []
    for number, beside in enumerate(besides):
        part = steps.part(0.7 * number / len(besides), 0.7 * (number + 1) / len(besides))
        path = (files or {}).get(beside.tooth.number)
        part.say(0.0, translate("row", "tooth {number}").format(number=beside.tooth.number))
        if path is None:
            made = made_tooth(
                beside.tooth, kept_in=kept_in, resolution=resolution, progress=part.say
            )
            teeth.append(made)
        else:
            teeth.append(read_tooth(path, beside.tooth, case, part.say))
    placed = _placed(bodies, besides, teeth)
    return _row(case, fields, bodies, besides, teeth, placed, steps.part(0.7, 1.0))


def gradient_of(row: Row, case: Case) -> tuple[NeighbourColours, ...] | None:
    """Return the colours of the neighbours in their order; None while nothing is wanted.

    Raises
    ------
    PlanError
        If what is wanted was measured otherwise and no conversion that is allowed helps.
    """
    target: Target | None = case.target
    if target is None:
        return None
    return tuple(
        neighbour_colours(
            target,
            neighbour_shade(case.intake, one.beside.tooth),
            one.tooth.shares,
            one.tooth.blended,
            one.areas_mm2,
        )
        for one in row.neighbours
    )


def neighbours_srgb(row: Row, colours: Sequence[NeighbourColours] | None) -> Bytes:
    """Return the encoded colours (n, 3) of all neighbours' vertices; grey without colours."""
    if colours is None:
        return np.full((row.mesh.vertex_count - row.crown_vertices, 3), _UNKNOWN, np.uint8)
    if not colours:
        return np.zeros((0, 3), np.uint8)
    lab = np.concatenate([one.lab for one in colours])
    return np.asarray(np.rint(np.clip(lab_to_srgb(lab), 0.0, 1.0) * 255.0), dtype=np.uint8)


def row_steps(
    row: Row, prediction: Prediction, colours: Sequence[NeighbourColours]
) -> tuple[RowStep, ...]:
    """Return the steps to each neighbour that stands next to a unit; figures of that unit."""
    outcomes = prediction.unit_outcomes()
    return tuple(
        RowStep(
            tooth=one.beside.tooth,
            unit=one.beside.unit,
            steps=steps_to(outcomes[one.beside.unit], colour),
            own_shade=colour.own_shade,
        )
        for one, colour in zip(row.neighbours, colours, strict=True)
        if one.beside.away == 1
    )


def _unit_bodies(case: Case) -> tuple[ToothBody, ...]:
    """Return the outer surface of each unit with its directions."""
    reading = case.reading
    if not np.isfinite(reading.height).any():
        raise PlanError(
            translate("row", "This body has no neck and no crest, so it has no place in the row."),
            advice=translate("row", "Look at it in another look."),
        )
    if reading.mesial is None:
        raise PlanError(
            translate(
                "row",
                "Which side is mesial is not known, so its neighbours have no side to stand on.",
            ),
            advice=translate("row", "Say where mesial is (menu Crown)."),
        )
    axis = np.asarray(reading.occlusal_axis, dtype=np.float64)
    mesh = case.surface.mesh
    bodies = []
    for index, (unit, mesial) in enumerate(zip(case.units, unit_mesials(case), strict=True)):
        own = (reading.unit_index == index) & reading.outer & (np.nan_to_num(reading.height) > 0.0)
        part, _ = submesh(mesh, np.asarray(own[mesh.faces].all(axis=1)))
        if not part.face_count:
            raise PlanError(
                translate("row", "Nothing of unit {number} lies above its margin.").format(
                    number=unit.tooth.number
                ),
                advice=translate("row", "Look at margin and units (menu Crown)."),
            )
        rows = np.stack([mesial, buccal_from_mesial(mesial, axis, unit.tooth), axis])
        bodies.append(ToothBody(tooth=unit.tooth, mesh=part, rows=rows))
    return tuple(bodies)


def _placed(
    bodies: Sequence[ToothBody], besides: Sequence[Beside], teeth: Sequence[RowTooth]
) -> list[Placed]:
    """Return how each neighbour stands, those next to the restoration first worked out."""
    found: dict[int, Placed] = {}
    stood: dict[tuple[int, bool], ToothBody] = {}
    for index in sorted(range(len(besides)), key=lambda index: besides[index].away):
        beside, tooth = besides[index], teeth[index]
        left = row_place(beside.tooth) > row_place(bodies[beside.unit].tooth)
        side = (beside.unit, left)
        next_to = stood.get(side, bodies[beside.unit])
        if tooth.in_place:
            placed = Placed(
                origin=np.zeros(3),
                rows=np.eye(3),
                axes=np.eye(3),
                scale=np.ones(3),
                shift=np.zeros(3),
            )
            stood[side] = tooth.body
        else:
            size = None if tooth.name else mouth_size(bodies[beside.unit])
            placed = stood_beside(tooth.body, next_to, size=size)
            stood[side] = moved(tooth.body, placed)
        found[index] = placed
    return [found[index] for index in range(len(besides))]


def _row(
    case: Case,
    fields: ShadingFields,
    bodies: Sequence[ToothBody],
    besides: Sequence[Beside],
    teeth: Sequence[RowTooth],
    placed: Sequence[Placed],
    steps: Steps,
) -> Row:
    crown = case.surface.mesh
    meshes = [
        TriMesh(place.points(tooth.body.mesh.vertices), tooth.body.mesh.faces)
        for tooth, place in zip(teeth, placed, strict=True)
    ]
    firsts = np.cumsum([crown.vertex_count, *(mesh.vertex_count for mesh in meshes)])
    mesh = TriMesh(
        np.concatenate([crown.vertices, *(one.vertices for one in meshes)]),
        np.concatenate(
            [crown.faces, *(one.faces + first for one, first in zip(meshes, firsts, strict=False))]
        ),
    )
    openness = _in_each_others_shadow(crown, fields, meshes, teeth, steps)
    turned = [_turned(tooth.fields, place) for tooth, place in zip(teeth, placed, strict=True)]
    all_fields = [fields, *turned]
    height = _evened(crown, np.nan_to_num(case.reading.height, nan=0.0), _NECK_PASSES)
    heights = [height, *(one.height for one in teeth)]
    order = row_order(case.units)
    middle = bodies[order[len(order) // 2]]
    return Row(
        mesh=mesh,
        crown_vertices=crown.vertex_count,
        crown_faces=crown.face_count,
        fields=ShadingFields(
            normals=np.concatenate([one.normals for one in all_fields]),
            normals_red=np.concatenate([one.normals_red for one in all_fields]),
            normals_green=np.concatenate([one.normals_green for one in all_fields]),
            normals_blue=np.concatenate([one.normals_blue for one in all_fields]),
            openness=np.concatenate(openness),
        ),
        light=light_along(mesh.vertices, middle),
        above_gum=_eased(np.concatenate(heights), _HIDDEN, _SEEN),
        neighbours=tuple(
            Neighbour(
                beside=beside,
                tooth=tooth,
                first=int(firsts[index]),
                last=int(firsts[index + 1]),
                areas_mm2=meshes[index].vertex_areas,
                label=_label(moved(tooth.body, placed[index])),
            )
            for index, (beside, tooth) in enumerate(zip(besides, teeth, strict=True))
        ),
        labels=np.array([_label(body) for body in bodies]),
        outward=middle.rows[1],
        occlusal=middle.rows[2],
        mesial=middle.rows[0],
    )


def light_along(points: FloatArray, body: ToothBody) -> Floats:
    """Return the light (N,) at places in a tooth's coordinates: it falls off to the back.

    1 over the front fifth of the arch's depth, `LIGHT_AT_THE_BACK` where the second molars end.
    """
    stand = arch_stand(body.tooth)
    anchor, _ = facial_edge(body.mesh.vertices, body.rows)
    away = points - anchor
    ahead = stand.place[1] + (away @ body.rows[0]) * stand.mesial[1]
    ahead = ahead + (away @ body.rows[1]) * stand.facial[1]
    depth = -ahead / arch_depth_mm(body.tooth)
    return np.asarray(1.0 - (1.0 - LIGHT_AT_THE_BACK) * _eased(depth, _FULL_LIGHT, 1.0))


def _in_each_others_shadow(
    crown: TriMesh,
    fields: ShadingFields,
    meshes: Sequence[TriMesh],
    teeth: Sequence[RowTooth],
    steps: Steps,
) -> list[Floats]:
    """Return the openness of crown and neighbours beside each other."""
    bodies = [crown, *meshes]
    normals = [fields.normals, *(mesh.vertex_normals for mesh in meshes)]
    own = [fields.openness, *(tooth.fields.openness for tooth in teeth)]
    light = [TriMesh(one.vertices, clustered_faces(one, _SHADOW_CELL_MM)) for one in bodies]
    result = []
    for number, (body, normal, alone) in enumerate(zip(bodies, normals, own, strict=True)):
        others = [one for k, one in enumerate(light) if k != number]
        if not others:
            return own
        part = steps.part(number / len(bodies), (number + 1) / len(bodies))
        open_share = open_beside(
            body.vertices,
            np.asarray(normal, dtype=np.float64),
            _together(others),
            directions=_SHADOW_DIRECTIONS,
            map_side=_SHADOW_SIDE,
            progress=part.say,
        )
        even = _evened(body, open_share, _SHADOW_PASSES)
        even = _LEAST_OPEN + (1.0 - _LEAST_OPEN) * even
        result.append(np.asarray(alone * even, dtype=np.float32))
    return result


def _together(meshes: Sequence[TriMesh]) -> TriMesh:
    """Return some meshes as one, without the vertices that no face of theirs has."""
    firsts = np.cumsum([0, *(mesh.vertex_count for mesh in meshes)])
    whole = TriMesh(
        np.concatenate([mesh.vertices for mesh in meshes]),
        np.concatenate([mesh.faces + first for mesh, first in zip(meshes, firsts, strict=False)]),
    )
    return submesh(whole, np.ones(whole.face_count, dtype=np.bool_))[0]


def _turned(fields: ShadingFields, place: Placed) -> ShadingFields:
    return ShadingFields(
        normals=place.normals(fields.normals),
        normals_red=place.normals(fields.normals_red),
        normals_green=place.normals(fields.normals_green),
        normals_blue=place.normals(fields.normals_blue),
        openness=fields.openness,
    )


def _evened(mesh: TriMesh, values: NDArray[np.floating], passes: int) -> Floats:
    """Return values (V,) after each vertex took the mean of its neighbours some times."""
    links = mesh.adjacency.copy()
    links.data[:] = 1.0
    count = np.maximum(np.asarray(links.sum(axis=1)).ravel(), 1.0)
    even = np.asarray(values, dtype=np.float64)
    for _ in range(passes):
        even = 0.5 * even + 0.5 * (links @ even) / count
    return np.asarray(even, dtype=np.float32)


def _label(body: ToothBody) -> FloatArray:
    local = body.mesh.vertices @ body.rows.T
    low, high = local.min(axis=0), local.max(axis=0)
    return np.asarray(np.array([0.5 * (low[0] + high[0]), high[1], low[2]]) @ body.rows)


def _eased(values: NDArray[np.floating], low: float, high: float) -> Floats:
    """Return 0 up to one value, 1 from another on, an S in between (a cubic)."""
    share = np.clip((values - low) / (high - low), 0.0, 1.0)
    return frozen(np.asarray(share * share * (3.0 - 2.0 * share), dtype=np.float32))
