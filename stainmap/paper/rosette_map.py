"""The rosette of a unit on paper: its outer surface on a disc, with the lines of the zone map."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import ReadingError
from stainmap.model.case import Case
from stainmap.paper.area_lines import AreaFields, area_lines
from stainmap.paper.paper_copy import PaperCopy
from stainmap.paper.shading import ShadingFields
from stainmap.paper.unit_map import UnitMap
from stainmap.paper.views import CrownDirections, FlatExtent, Side
from stainmap.planning.flat_views import FlatPart, facing_places, flat_unit
from stainmap.surface.mesh import FloatArray, TriMesh


class Rosettes:
    """The rosettes of a case's units.

    Parameters
    ----------
    whole
        The map of everything, on the copy.
    copy, case
        The copy and the case.
    """

    def __init__(self, whole: UnitMap, copy: PaperCopy, case: Case) -> None:
        self._case = case
        self._readings = (copy.coarse_reading, copy.reading, case.reading)
        self._make: tuple[Callable[[], _Ground], ...] = (
            lambda: _Ground.of(whole, copy.coarse.mesh, copy.coarse.mean),
            lambda: _Ground.of(whole, copy.mesh, np.asarray),
            lambda: _Ground.of(whole, copy.thinned.source, copy.thinned.back),
        )
        self._grounds: dict[int, _Ground] = {}
        self._enlargement = whole.enlargement

    def of(self, unit: int) -> UnitMap | None:
        """Return a unit's rosette as a map seen from above, at the size its area has.

        Halves of a front tooth stand above one another. What cannot be laid flat on the coarsest
        copy, because thinning has joined what lies close together, is laid flat on the next, in
        the end on the surface itself. None if that cannot be laid flat either.
        """
        case = self._case
        for level, reading in enumerate(self._readings):
            ground = self._grounds.get(level) or self._make[level]()
            self._grounds[level] = ground
            try:
                parts = flat_unit(ground.mesh, reading, case.units, unit)
            except ReadingError:
                continue
            directions = CrownDirections.of(case.reading, case.units[unit].tooth)
            return _flat_map(ground, parts, directions, self._enlargement)
        return None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Ground:
    """A surface to lay flat, and what belongs to its vertices."""

    mesh: TriMesh
    fields: AreaFields
    openness: NDArray[np.float32]

    @classmethod
    def of(
        cls, whole: UnitMap, mesh: TriMesh, taken: Callable[[FloatArray], FloatArray]
    ) -> _Ground:
        """Return a mesh with the fields of a map, as `taken` takes them there."""
        fields = whole.fields
        return cls(
            mesh=mesh,
            fields=AreaFields(
                zones=taken(fields.zones),
                accents={number: taken(share) for number, share in fields.accents.items()},
                coats=None if fields.coats is None else taken(fields.coats),
            ),
            openness=taken(whole.shading.openness.astype(np.float64)).astype(np.float32),
        )


def _flat_map(
    ground: _Ground,
    parts: tuple[FlatPart, ...],
    directions: CrownDirections,
    enlargement: float,
) -> UnitMap:
    vertex = np.concatenate([part.vertices for part in parts])
    first = np.cumsum([0, *(len(part.vertices) for part in parts)])
    faces = np.concatenate([part.faces + start for part, start in zip(parts, first, strict=False)])
    places, _ = facing_places(parts)
    mesh = TriMesh(np.c_[places, np.zeros(len(places))], faces)
    facing = np.broadcast_to(np.array([0.0, 0.0, 1.0], dtype=np.float32), (len(vertex), 3))
    fields = AreaFields(
        zones=ground.fields.zones[vertex],
        accents={number: share[vertex] for number, share in ground.fields.accents.items()},
        coats=None if ground.fields.coats is None else ground.fields.coats[vertex],
    )
    lines = area_lines(
        mesh,
        np.asarray(facing, dtype=np.float64),
        fields,
        directions,
        measured=ground.mesh.vertices[vertex],
    )
    axes: FloatArray = np.eye(3)
    return UnitMap(
        mesh=mesh,
        shading=ShadingFields(
            normals=facing,
            normals_red=facing,
            normals_green=facing,
            normals_blue=facing,
            openness=ground.openness[vertex],
        ),
        fields=fields,
        lines=lines,
        directions=directions,
        extents={
            Side.OCCLUSAL: FlatExtent(
                axes=axes, low=mesh.vertices.min(axis=0), high=mesh.vertices.max(axis=0)
            )
        },
        enlargement=enlargement,
        cuts=np.zeros((0, 3), dtype=np.int32),
    )
