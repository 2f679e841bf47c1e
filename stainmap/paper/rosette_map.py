"""The rosette of a unit on paper: its outer surface on a disc, with the lines of the zone map."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from stainmap.errors import ReadingError
from stainmap.model.case import Case
from stainmap.paper.area_lines import AreaFields, area_lines
from stainmap.paper.paper_copy import PaperCopy
from stainmap.paper.shading import ShadingFields
from stainmap.paper.unit_map import UnitMap
from stainmap.paper.views import CrownDirections, FlatExtent, Side
from stainmap.planning.flat_views import FlatPart, facing_places, flat_unit
from stainmap.surface.mesh import FloatArray, TriMesh


def rosette_map(whole: UnitMap, copy: PaperCopy, case: Case, unit: int) -> UnitMap | None:
    """Return a unit's rosette as a map seen from above, at the size its area has.

    Halves of a front tooth stand above one another. What cannot be laid flat on the copy, because
    thinning has joined what lies close together, is laid flat on the surface itself. None if that
    cannot be laid flat either.
    """
    directions = CrownDirections.of(case.reading, case.units[unit].tooth)
    for mesh, reading in ((copy.mesh, copy.reading), (case.surface.mesh, case.reading)):
        try:
            parts = flat_unit(mesh, reading, case.units, unit)
        except ReadingError:
            continue
        around = whole if mesh is whole.mesh else _on_surface(whole, copy)
        return _flat_map(around, parts, directions)
    return None


def _on_surface(whole: UnitMap, copy: PaperCopy) -> UnitMap:
    """Return what the rosette needs of a map on the copy, on the surface itself; no lines."""
    back = copy.thinned.back
    fields, openness = whole.fields, whole.shading.openness
    return replace(
        whole,
        mesh=copy.thinned.source,
        fields=AreaFields(
            zones=back(fields.zones),
            accents={number: back(share) for number, share in fields.accents.items()},
            coats=None if fields.coats is None else back(fields.coats),
        ),
        shading=replace(
            whole.shading, openness=back(openness.astype(np.float64)).astype(np.float32)
        ),
        lines=(),
    )


def _flat_map(whole: UnitMap, parts: tuple[FlatPart, ...], directions: CrownDirections) -> UnitMap:
    vertex = np.concatenate([part.vertices for part in parts])
    first = np.cumsum([0, *(len(part.vertices) for part in parts)])
    faces = np.concatenate([part.faces + start for part, start in zip(parts, first, strict=False)])
    places, _ = facing_places(parts)
    mesh = TriMesh(np.c_[places, np.zeros(len(places))], faces)
    facing = np.broadcast_to(np.array([0.0, 0.0, 1.0], dtype=np.float32), (len(vertex), 3))
    fields = AreaFields(
        zones=whole.fields.zones[vertex],
        accents={number: share[vertex] for number, share in whole.fields.accents.items()},
        coats=None if whole.fields.coats is None else whole.fields.coats[vertex],
    )
    lines = area_lines(
        mesh,
        np.asarray(facing, dtype=np.float64),
        fields,
        directions,
        measured=whole.mesh.vertices[vertex],
    )
    axes: FloatArray = np.eye(3)
    return UnitMap(
        mesh=mesh,
        shading=ShadingFields(
            normals=facing,
            normals_red=facing,
            normals_green=facing,
            normals_blue=facing,
            openness=whole.shading.openness[vertex],
        ),
        fields=fields,
        lines=lines,
        directions=directions,
        extents={
            Side.OCCLUSAL: FlatExtent(
                axes=axes, low=mesh.vertices.min(axis=0), high=mesh.vertices.max(axis=0)
            )
        },
        enlargement=whole.enlargement,
        cuts=np.zeros((0, 3), dtype=np.int32),
    )
