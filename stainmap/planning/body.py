"""The body that is read: the largest piece of a mesh with all that is computed on it once."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.model.tooth import Unit
from stainmap.planning.landmarks import UnitPart
from stainmap.planning.progress import Steps
from stainmap.planning.relief import Reliefs, find_reliefs
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.frame import PrincipalFrame, principal_frame
from stainmap.surface.mesh import (
    BoolArray,
    FloatArray,
    IndexArray,
    TriMesh,
    boundary_loops,
    connected_pieces,
    largest_piece,
    loop_length,
    submesh,
)
from stainmap.surface.openness import Outlook, Visibility, directions_around

# Pieces below this share of the area are crumbs of a scan or export, not bodies.
_CRUMB = 0.02
# Directions looked along, spread over the sphere: each stands for a cone of 12 degrees.
_DIRECTIONS = 96
# A border at least this long is a margin left open, a shorter one a hole in the mesh, mm.
_OPEN_MARGIN_MM = 10.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Body:
    """The largest piece of a mesh.

    Parameters
    ----------
    whole
        The mesh it is part of, V vertices.
    inside
        (V,) its vertices.
    mesh
        The piece by itself.
    reliefs
        Reliefs of the whole mesh.
    frame
        The piece's own frame.
    outlook
        Which directions of the whole sphere each vertex of the whole mesh sees.
    open_border
        The piece's longest border where it is an open sheet, as vertices of the whole; or None.
    count
        How many bodies the mesh holds, crumbs left out.
    """

    whole: TriMesh
    inside: BoolArray
    mesh: TriMesh
    reliefs: Reliefs
    frame: PrincipalFrame
    outlook: Outlook
    open_border: IndexArray | None
    count: int

    @property
    def vertices(self) -> IndexArray:
        """The piece's vertices by their numbers in the whole."""
        return np.flatnonzero(self.inside).astype(np.int32)


def find_body(operator: SurfaceOperator, steps: Steps) -> Body:
    """Return the largest body of the operator's mesh, ready to be read."""
    whole = operator.mesh
    inside, count = main_piece(whole)
    mesh = whole if inside.all() else submesh(whole, np.asarray(inside[whole.faces].all(axis=1)))[0]
    reliefs = find_reliefs(operator, steps.part(0.0, 0.6))
    frame = principal_frame(mesh)
    outlook = Visibility(mesh, frame=frame).outlook(
        whole.vertices,
        whole.vertex_normals,
        directions_around(frame.axes[:, 0], frame.axes[:, 1], _DIRECTIONS),
        progress=steps.part(0.6, 1.0).say,
    )
    return Body(
        whole=whole,
        inside=inside,
        mesh=mesh,
        reliefs=reliefs,
        frame=frame,
        outlook=outlook,
        open_border=_open_border(whole, inside),
        count=count,
    )


def main_piece(mesh: TriMesh) -> tuple[BoolArray, int]:
    """Return (V,) the largest piece, and how many pieces are too large to be crumbs."""
    count, label = connected_pieces(mesh)
    area = np.bincount(label, mesh.vertex_areas, minlength=count)
    bodies = int((area > _CRUMB * mesh.area).sum())
    return largest_piece(mesh, np.ones(mesh.vertex_count, dtype=np.bool_)), bodies


def _open_border(mesh: TriMesh, inside: BoolArray) -> IndexArray | None:
    if mesh.is_watertight:
        return None
    for loop in boundary_loops(mesh):
        if inside[loop[0]]:
            return loop if loop_length(mesh, loop) > _OPEN_MARGIN_MM else None
    return None


def unit_parts(
    whole: TriMesh,
    unit_index: NDArray[np.uint8],
    inside: BoolArray,
    units: tuple[Unit, ...],
) -> list[UnitPart]:
    """Return the units of a surface, cut apart, in the order of their index."""
    label = np.where(inside, unit_index.astype(np.int64), -1)
    face_label = label[whole.faces]
    one = np.asarray((face_label == face_label[:, :1]).all(axis=1))
    parts = []
    for index in range(int(label.max()) + 1):
        mesh, vertices = submesh(whole, one & (face_label[:, 0] == index))
        parts.append(
            UnitPart(
                index=index,
                unit=units[index] if index < len(units) else None,
                mesh=mesh,
                vertices=vertices,
            )
        )
    return parts


def centres(parts: list[UnitPart]) -> FloatArray:
    """Return the centroids (N, 3) of the parts' surfaces, mm."""
    return np.stack(
        [part.mesh.vertex_areas @ part.mesh.vertices / part.mesh.area for part in parts]
    )
