"""The table of a crown: what lies within the crest that runs over its cusps and ridges."""

from __future__ import annotations

import numpy as np

from stainmap.planning.relief import Reliefs
from stainmap.surface.mesh import BoolArray, FloatArray, TriMesh, largest_piece
from stainmap.surface.mincut import crease_costs, minimum_cut

# All found by trial on real crowns and looked at. Lengths are shares of c, the root of the outer
# area (13 to 16 mm); curvatures are multiples of 1/c.
_CREASE_PREFERENCE = 0.2
_TABLE_LEAN = 0.45
_FOSSA_CURVATURE = 0.46
_TABLE_ABOVE = 0.35
_WALL_LEAN = 0.15
_WALL_BELOW = 0.25


def find_table(
    mesh: TriMesh, outer: BoolArray, axis: FloatArray, size_mm: float, reliefs: Reliefs
) -> BoolArray:
    """Return (V,) the table: a minimum cut along the crest between fossae and walls.

    Empty if no part of the surface is surely table, as on a body without fossae.

    Parameters
    ----------
    mesh, outer
        One unit and its outer surface (V,).
    axis
        (3,) occlusal axis.
    size_mm
        c, the root of the outer area.
    reliefs
        Reliefs of the unit.
    """
    lean = reliefs.middle.normals @ axis
    height = relative_height(mesh, outer, axis)
    curvature = reliefs.wide.curvature_per_mm * size_mm
    wall = ~outer | ((lean < _WALL_LEAN) & (curvature > 0.0)) | (height < _WALL_BELOW)
    fossae = outer & (lean > _TABLE_LEAN) & (curvature < -_FOSSA_CURVATURE)
    fossae &= (height > _TABLE_ABOVE) & ~wall
    if not fossae.any() or not wall.any():
        return np.zeros(mesh.vertex_count, dtype=np.bool_)
    cost = crease_costs(mesh, reliefs.middle.curvature_per_mm, _CREASE_PREFERENCE * size_mm)
    return largest_piece(mesh, minimum_cut(mesh, fossae, wall, cost) & outer)


def relative_height(mesh: TriMesh, outer: BoolArray, axis: FloatArray) -> FloatArray:
    """Return (V,) the height along the axis, 0 and 1 at percentiles 2 and 98 of the outer ones."""
    along = mesh.vertices @ axis
    low, high = np.percentile(along[outer], [2.0, 98.0])
    return np.asarray((along - low) / max(float(high - low), 1e-9))


def border_vertices(mesh: TriMesh, mask: BoolArray) -> BoolArray:
    """Return (V,) the vertices with an edge that leaves or enters the mask, on both sides."""
    crossing = mask[mesh.edges[:, 0]] != mask[mesh.edges[:, 1]]
    border = np.zeros(mesh.vertex_count, dtype=np.bool_)
    border[mesh.edges[crossing]] = True
    return border


def crest_plane_normal(points: FloatArray, axis: FloatArray) -> FloatArray | None:
    """Return the unit normal of the plane through crest points, on the axis' side.

    None where the plane is too steep (beyond 37 degrees) to be that of a crest.
    """
    if len(points) < 3:
        return None
    arm = points - points.mean(axis=0)
    normal = np.linalg.eigh(arm.T @ arm)[1][:, 0]
    normal = normal * (1.0 if normal @ axis >= 0 else -1.0)
    return np.asarray(normal) if float(normal @ axis) > 0.8 else None
