"""The rosette of a unit on paper: its outer surface on a disc, with the lines of the zone map."""

from __future__ import annotations

import numpy as np

from stainmap.errors import ReadingError
from stainmap.model.case import Case
from stainmap.paper.area_lines import AreaFields, area_lines
from stainmap.paper.shading import ShadingFields
from stainmap.paper.unit_map import UnitMap
from stainmap.paper.views import CrownDirections, FlatExtent, Side
from stainmap.planning.flat_views import FlatPart, facing_places, flat_unit
from stainmap.surface.mesh import FloatArray, TriMesh


def rosette_map(whole: UnitMap, case: Case, unit: int) -> UnitMap | None:
    """Return a unit's rosette as a map seen from above, at the size its area has.

    Halves of a front tooth stand above one another. None if the outer surface cannot be laid flat.
    """
    try:
        parts = flat_unit(case.surface.mesh, case.reading, case.units, unit)
    except ReadingError:
        return None
    return _flat_map(whole, parts, CrownDirections.of(case.reading, case.units[unit].tooth))


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
