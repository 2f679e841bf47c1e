"""The body that is read: the largest piece of a mesh, and a coarser copy of it to compute on."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.model.tooth import Unit
from stainmap.planning.landmarks import UnitPart
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.frame import PrincipalFrame, principal_frame
from stainmap.surface.mesh import (
    AnyArray,
    BoolArray,
    FloatArray,
    IndexArray,
    TriMesh,
    boundary_loops,
    connected_pieces,
    frozen,
    largest_piece,
    loop_length,
    submesh,
)
from stainmap.surface.thinning import Thinned, thin

# Pieces below this share of the area are crumbs of a scan or export, not bodies.
_CRUMB = 0.02
# A border at least this long is a margin left open, a shorter one a hole in the mesh, mm.
_OPEN_MARGIN_MM = 10.0
# The copy has about this many vertices, but no finer and no coarser spacing than this, mm. Relief
# at 0.2 mm and the borders of zones come out as on the mesh itself.
_COPY_VERTICES = 20_000
_FINEST_MM = 0.15
_COARSEST_MM = 0.35


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Body:
    """The largest piece of a mesh and a coarser copy of it.

    Parameters
    ----------
    whole
        The mesh it is part of, V vertices.
    vertices
        (P,) int32. The piece's vertices by their numbers in the whole.
    piece
        The piece by itself, P vertices.
    frame
        The piece's own frame.
    thinned
        A coarser copy of the piece, W vertices, and the way back.
    operator
        Operator of the copy.
    open_border
        The piece's longest border where it is an open sheet, as vertices of the piece; or None.
    count
        How many bodies the mesh holds, crumbs left out.
    """

    whole: TriMesh
    vertices: IndexArray
    piece: TriMesh
    frame: PrincipalFrame
    thinned: Thinned
    operator: SurfaceOperator
    open_border: IndexArray | None
    count: int

    @property
    def copy(self) -> TriMesh:
        """The coarser copy."""
        return self.thinned.mesh

    def open_margin(self) -> BoolArray | None:
        """Return (W,) the copy's vertices on the open border, or None if the body is closed."""
        if self.open_border is None:
            return None
        on_border = np.zeros(self.piece.vertex_count, dtype=np.bool_)
        on_border[self.open_border] = True
        return self.thinned.touched(on_border)

    def in_whole(self, values: AnyArray, elsewhere: float | bool) -> AnyArray:
        """Return values of the piece, (P, ...), at all vertices of the whole."""
        filled = np.full((self.whole.vertex_count, *values.shape[1:]), elsewhere, values.dtype)
        filled[self.vertices] = values
        return filled  # type: ignore[return-value]


def find_body(operator: SurfaceOperator) -> Body:
    """Return the largest body of the operator's mesh, ready to be read."""
    whole = operator.mesh
    count, label = connected_pieces(whole)
    area = np.bincount(label, whole.vertex_areas, minlength=count)
    inside = largest_piece(whole, np.ones(whole.vertex_count, dtype=np.bool_))
    if inside.all():
        piece, vertices = whole, frozen(np.arange(whole.vertex_count, dtype=np.int32))
    else:
        piece, vertices = submesh(whole, np.asarray(inside[whole.faces].all(axis=1)))
    frame = principal_frame(piece)
    spacing = float(np.clip(np.sqrt(piece.area / _COPY_VERTICES), _FINEST_MM, _COARSEST_MM))
    thinned = thin(piece, spacing, frame=frame)
    return Body(
        whole=whole,
        vertices=vertices,
        piece=piece,
        frame=frame,
        thinned=thinned,
        operator=operator if thinned.mesh is whole else SurfaceOperator(thinned.mesh),
        open_border=_open_border(piece),
        count=int((area > _CRUMB * whole.area).sum()),
    )


def _open_border(mesh: TriMesh) -> IndexArray | None:
    if mesh.is_watertight:
        return None
    loops = boundary_loops(mesh)
    return loops[0] if loops and loop_length(mesh, loops[0]) > _OPEN_MARGIN_MM else None


def unit_parts(
    mesh: TriMesh, unit_index: NDArray[np.uint8], units: tuple[Unit, ...]
) -> list[UnitPart]:
    """Return the units of a surface, cut apart, in the order of their index."""
    face_label = unit_index[mesh.faces]
    one = np.asarray((face_label == face_label[:, :1]).all(axis=1))
    parts = []
    for index in range(int(unit_index.max()) + 1):
        part, vertices = submesh(mesh, one & (face_label[:, 0] == index))
        unit = units[index] if index < len(units) else None
        parts.append(UnitPart(index=index, unit=unit, mesh=part, vertices=vertices))
    return parts


def centres(parts: list[UnitPart]) -> FloatArray:
    """Return the centroids (N, 3) of the parts' surfaces, mm."""
    return np.stack(
        [part.mesh.vertex_areas @ part.mesh.vertices / part.mesh.area for part in parts]
    )
