"""The margin: where the outer surface of a crown ends and its inner surface begins."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stainmap.errors import ReadingError
from stainmap.planning.relief import Relief
from stainmap.planning.table import border_vertices
from stainmap.surface.geodesic import surface_distance
from stainmap.surface.mesh import (
    BoolArray,
    FloatArray,
    TriMesh,
    connected_pieces,
    largest_piece,
)
from stainmap.surface.mincut import crease_costs, minimum_cut
from stainmap.surface.openness import Openness
from stainmap.words import translate

# How much the margin prefers creases, mm; the other numbers decide what is surely outside and
# surely inside. All were found by trial on real crowns, hollow and solid, and looked at.
CREASE_PREFERENCE_MM = 1.2
_OUTER_LEAN = -0.25
_OUTER_SEEN = 0.12
_INNER_LEAN = -0.7
_INNER_BELOW = 0.6
_INNER_SHARE = 0.03
_INNER_PIECE = 0.03
# The rim is no wider than an edge is milled; a broad shoulder belongs to the inner surface.
_RIM_SHARE = 0.72
_RIM_MM = 0.25
# Inner area over the length of its vector area: 1.1 for a solid base, 2.4 and more for a cavity.
CAVITY_RATIO = 1.5


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Parting:
    """One unit's surface, parted at the margin.

    Parameters
    ----------
    outer
        (V,) the outer surface.
    cavity_ratio
        Inner area over the length of the inner vector area: how hollow it is.
    """

    outer: BoolArray
    cavity_ratio: float


def part_at_margin(
    mesh: TriMesh, relief: Relief, sky: Openness, axis: FloatArray, *, connector: BoolArray
) -> Parting:
    """Part a unit's surface at the margin, by one minimum cut along creases.

    Parameters
    ----------
    mesh
        One unit.
    relief
        Its fine relief.
    sky
        What its vertices see of directions from just below the horizon up, around the axis.
    axis
        (3,) occlusal axis.
    connector
        (V,) what belongs to connectors; it is outer surface all around.

    Raises
    ------
    ReadingError
        If nothing of the surface is surely outside or surely inside.
    """
    lean = relief.normals @ axis
    along = mesh.vertices @ axis
    height = (along - along.min()) / max(float(np.ptp(along)), 1e-9)
    facing_up = (lean > _OUTER_LEAN) & (sky.seen > _OUTER_SEEN)
    outer = largest_piece(mesh, facing_up | connector)
    facing_down = (lean < _INNER_LEAN) & (height < _INNER_BELOW) & (sky.seen < _OUTER_SEEN)
    inner = (facing_down | (sky.share < _INNER_SHARE)) & ~outer & ~connector
    inner = _large_pieces(mesh, inner, _INNER_PIECE * mesh.area)
    if not outer.any() or not inner.any():
        raise ReadingError(
            translate("margin", "The outer and the inner surface cannot be told apart."),
            advice=translate(
                "margin", "Check that the biting side points along the occlusal axis."
            ),
        )
    cost = crease_costs(mesh, relief.curvature_per_mm, CREASE_PREFERENCE_MM)
    side = largest_piece(mesh, minimum_cut(mesh, outer, inner, cost))
    return Parting(outer=side, cavity_ratio=cavity_ratio(mesh, side))


def _large_pieces(mesh: TriMesh, mask: BoolArray, least_mm2: float) -> BoolArray:
    count, label = connected_pieces(mesh, mask)
    area = np.bincount(label[mask], mesh.vertex_areas[mask], minlength=count)
    kept = mask.copy()
    kept[mask] = area[label[mask]] > least_mm2
    return kept


def cavity_ratio(mesh: TriMesh, outer: BoolArray) -> float:
    """Return the inner area over the length of its vector area; 1 for a flat base, 0 for none."""
    inside = ~outer[mesh.faces].any(axis=1)
    areas = mesh.face_areas[inside]
    if not len(areas):
        return 0.0
    vector = np.linalg.norm(areas @ mesh.face_normals[inside])
    return float(areas.sum() / max(float(vector), 1e-9))


def part_by_facing(mesh: TriMesh, relief: Relief, axis: FloatArray) -> Parting:
    """Part a unit where its surface turns down, for pontics whose tissue side has no edge.

    The inner side is the largest piece of the lower half that faces away from the biting side.
    """
    along = mesh.vertices @ axis
    height = (along - along.min()) / max(float(np.ptp(along)), 1e-9)
    down = largest_piece(mesh, (relief.normals @ axis < -0.5) & (height < 0.5))
    return Parting(outer=~down, cavity_ratio=cavity_ratio(mesh, ~down))


def find_rim(mesh: TriMesh, outer: BoolArray, ground: Openness) -> BoolArray:
    """Return (V,) the rim of a hollow unit: inner surface at the margin that faces open space.

    Rim and chamfer see nearly all that lies before them; the walls of the cavity see half of it.
    Where a chamfer or a shoulder follows, the rim ends 0.25 mm from the margin, so that the wall
    there is measured to it.

    Parameters
    ----------
    mesh, outer
        One unit and its outer surface (V,).
    ground
        What its vertices see of the directions away from the biting side.
    """
    start = border_vertices(mesh, outer)
    from_margin = surface_distance(mesh, start, graph=mesh.adjacency, limit_mm=_RIM_MM)
    rim = ~outer & (ground.share > _RIM_SHARE) & np.isfinite(from_margin)
    count, label = connected_pieces(mesh, rim)
    margin = outer[mesh.edges[:, 0]] != outer[mesh.edges[:, 1]]
    touching = np.zeros(count + 1, dtype=np.bool_)
    touching[label[mesh.edges[margin]]] = True
    touching[-1] = False
    return np.asarray(rim & touching[label])
