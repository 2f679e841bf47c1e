"""Landmarks of one unit: margin, table, crest, and how high each place lies between them."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.model.tooth import Unit
from stainmap.planning.relief import Reliefs
from stainmap.planning.table import border_vertices, crest_plane_normal, find_table, relative_height
from stainmap.surface.geodesic import Graph, distance_graph, surface_distance
from stainmap.surface.mesh import BoolArray, FloatArray, IndexArray, TriMesh, frozen

# On front teeth only the highest part of the crest is the incisal edge; the rest of it runs down
# the sides of the palatal fossa.
_EDGE_ABOVE = 0.80
# Heights of what is not yet the crest end here, so that 1 means the crest.
_BELOW_CREST = 0.999
# Where there is no table at all the highest places stand in for a crest.
_TOP_ABOVE = 0.96
# A crest plane steeper than this to the occlusal axis is that of a palatal fossa, degrees.
_FRONT_TILT_DEG = 25.0
# Sectors around a back tooth, and strips across an incisal edge, in which the top is looked for,
# how far outside the crest (in shares of c) and how far in (in shares of its radius); then the
# blur between tops, mm.
_SECTORS = 72
_STRIPS = 24
_BESIDE_CREST = 0.06
_RIDGE_RADIUS = 0.45
_CREST_BLUR_MM = 0.3


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class UnitPart:
    """One unit cut out of the whole surface.

    Parameters
    ----------
    index
        Its place among the units of the case.
    unit
        Tooth and role, or None where nobody has said.
    mesh
        Its surface, V vertices; open where connectors were cut.
    vertices
        (V,) int32. Their numbers in the whole surface.
    """

    index: int
    unit: Unit | None
    mesh: TriMesh
    vertices: IndexArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Landmarks:
    """What was found on one unit. Arrays are per vertex of the unit, V long.

    Parameters
    ----------
    part
        The unit.
    outer
        (V,) outer surface; of a pontic, all of it.
    tissue
        (V,) tissue side of a pontic; empty elsewhere.
    table, crest
        (V,) what lies within the crest, and the crest itself; on front teeth the incisal edge.
    fossa_border
        (V,) the whole border of the table, front teeth included.
    front
        Whether it is read as a front tooth.
    axis
        (3,) occlusal axis of the reading.
    up
        (3,) normal of the crest plane on back teeth, else the axis.
    size_mm
        c, the root of the outer area; lengths of the zones are shares of it.
    margin_mm, crest_mm
        (V,) distance along the outer surface from margin and crest; infinite elsewhere.
    rise
        (V,) share of the way from margin to crest; above 1 in the table, NaN off the outer surface.
    """

    part: UnitPart
    outer: BoolArray
    tissue: BoolArray
    table: BoolArray
    crest: BoolArray
    fossa_border: BoolArray
    front: bool
    axis: FloatArray
    up: FloatArray
    size_mm: float
    margin_mm: FloatArray
    crest_mm: FloatArray
    rise: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Crest:
    """The table of a unit and the crest around it.

    Parameters
    ----------
    size_mm
        c, the root of the outer area.
    table
        (V,) what lies within the crest.
    border
        (V,) the border of the table, on the outer surface.
    top
        (V,) the crest: that border, or the incisal edge.
    front
        Whether the unit is read as a front tooth.
    up
        (3,) normal of the crest plane on back teeth, else the axis.
    """

    size_mm: float
    table: BoolArray
    border: BoolArray
    top: BoolArray
    front: bool
    up: FloatArray


def find_crest(
    part: UnitPart,
    outer: BoolArray,
    axis: FloatArray,
    reliefs: Reliefs,
    *,
    front: bool | None = None,
) -> Crest:
    """Return the crest of a unit whose outer surface and axis are known.

    Parameters
    ----------
    part
        The unit.
    outer
        (V,) its outer surface down to the margin; of a pontic, down to the tissue side.
    axis
        (3,) occlusal axis.
    reliefs
        Reliefs of the unit.
    front
        Whether to read it as a front tooth; None to ask its tooth, or else its shape.
    """
    mesh = part.mesh
    size = float(np.sqrt(mesh.vertex_areas[outer].sum()))
    table = find_table(mesh, outer, axis, size, reliefs)
    border = border_vertices(mesh, table) & outer
    normal = crest_plane_normal(mesh.vertices[border], axis)
    if front is None:
        front = _is_front(part.unit, normal, axis)
    top = border & (relative_height(mesh, outer, axis) > _EDGE_ABOVE) if front else border
    up = axis if front or normal is None else normal
    return Crest(size_mm=size, table=table, border=border, top=top, front=front, up=up)


def find_landmarks(
    part: UnitPart,
    outer: BoolArray,
    axis: FloatArray,
    crest: Crest,
    *,
    open_margin: BoolArray | None = None,
) -> Landmarks:
    """Return the landmarks of a unit whose outer surface, axis and crest are known.

    Parameters
    ----------
    part, outer, axis, crest
        The unit and what is known of it.
    open_margin
        (V,) its margin where the surface ends there; None where an inner surface follows.
    """
    mesh = part.mesh
    top = crest.top
    if not top.any():
        top = outer & (relative_height(mesh, outer, axis) > _TOP_ABOVE)
    margin = border_vertices(mesh, outer) if open_margin is None else open_margin
    margin = margin & outer
    graph = distance_graph(mesh)
    margin_mm = _distance(mesh, margin, outer, graph)
    crest_mm = _distance(mesh, top, outer, graph)
    rise = _rise(margin_mm, crest_mm, crest, outer)
    return Landmarks(
        part=part,
        outer=frozen(outer.copy()),
        tissue=frozen(np.zeros_like(outer)),
        table=frozen(crest.table.copy()),
        crest=frozen(top),
        fossa_border=frozen(crest.border.copy()),
        front=crest.front,
        axis=axis,
        up=crest.up,
        size_mm=crest.size_mm,
        margin_mm=frozen(margin_mm),
        crest_mm=frozen(crest_mm),
        rise=frozen(rise),
    )


def as_pontic(landmarks: Landmarks) -> Landmarks:
    """Return the landmarks of a pontic: all of it is outer surface, the inside its tissue side."""
    tissue = ~landmarks.outer
    rise = np.where(tissue, 0.0, landmarks.rise)
    return replace(
        landmarks, outer=frozen(np.ones_like(tissue)), tissue=frozen(tissue), rise=frozen(rise)
    )


def _is_front(unit: Unit | None, crest_normal: FloatArray | None, axis: FloatArray) -> bool:
    """Return whether to read a unit as a front tooth; by its table's tilt if nobody has said."""
    if unit is not None:
        return unit.tooth.is_front
    if crest_normal is None:
        return False
    return bool(crest_normal @ axis < np.cos(np.radians(_FRONT_TILT_DEG)))


def _rise(
    margin_mm: FloatArray, crest_mm: FloatArray, crest: Crest, outer: BoolArray
) -> FloatArray:
    """Return (V,) the share of the way from margin to crest; 1 and more only from the crest on."""
    rise = np.full(len(outer), np.nan)
    both = outer & np.isfinite(margin_mm) & np.isfinite(crest_mm)
    share = margin_mm[both] / np.maximum(margin_mm[both] + crest_mm[both], 1e-9)
    rise[both] = np.minimum(share, _BELOW_CREST)
    rise[outer & ~both] = 0.0
    if crest.front:
        rise[crest.top & both] = 1.0
    else:
        within = crest.table & both
        rise[within] = 1.0 + crest_mm[within] / crest.size_mm
    return rise


def _distance(mesh: TriMesh, start: BoolArray, within: BoolArray, graph: Graph) -> FloatArray:
    if not start.any():
        return np.full(mesh.vertex_count, np.inf)
    return surface_distance(mesh, start, graph=graph, within=within)


def ridge_points(landmarks: Landmarks, up: FloatArray) -> FloatArray:
    """Return points (K, 3) along the top of a unit: over tips and ridges, or the incisal edge.

    On back teeth the highest place in each of 72 sectors around the middle of the crest, looked
    for in the outer half of the table; the crest itself runs beside the tips. On front teeth the
    highest place of each of 24 strips across the edge.

    Parameters
    ----------
    landmarks
        The unit.
    up
        (3,) unit vector along which heights count.
    """
    mesh = landmarks.part.mesh
    crest = mesh.vertices[landmarks.crest]
    if not len(crest):
        return np.zeros((0, 3))
    middle = crest.mean(axis=0)
    along, across = _plan_directions(crest - middle, up)
    near = landmarks.table & (not landmarks.front)
    near |= landmarks.crest_mm < _BESIDE_CREST * landmarks.size_mm
    place = np.flatnonzero(landmarks.outer & near)
    arm = mesh.vertices[place] - middle
    if landmarks.front:
        position = arm @ along
        ends = np.percentile(position, [1.0, 99.0])
        sector = np.searchsorted(np.linspace(ends[0], ends[1], _STRIPS + 1)[1:-1], position)
    else:
        sector, radius = _sectors(arm, along, across)
        crest_sector, crest_radius = _sectors(crest - middle, along, across)
        total = np.bincount(crest_sector, crest_radius, minlength=_SECTORS)
        count = np.bincount(crest_sector, minlength=_SECTORS)
        mean = np.where(count > 0, total / np.maximum(count, 1), crest_radius.mean())
        outside = radius > _RIDGE_RADIUS * mean[sector]
        place, sector = place[outside], sector[outside]
    order = np.lexsort((mesh.vertices[place] @ up, sector))
    last = np.append(np.diff(sector[order]) != 0, True)
    return np.asarray(mesh.vertices[place[order[last]]])


def _sectors(
    arm: FloatArray, along: FloatArray, across: FloatArray
) -> tuple[NDArray[np.int64], FloatArray]:
    """Return the sector and the distance from the middle of points seen from above."""
    x, y = arm @ along, arm @ across
    turn = np.arctan2(y, x) / (2.0 * np.pi) + 0.5
    return (turn * _SECTORS).astype(np.int64) % _SECTORS, np.hypot(x, y)


def _plan_directions(arm: FloatArray, up: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Return the long direction of points seen along `up`, and the one across it."""
    flat = arm - (arm @ up)[:, None] * up
    along = np.linalg.eigh(flat.T @ flat)[1][:, 2]
    return along, np.cross(up, along)


def height_of_top(landmarks: Landmarks, up: FloatArray) -> FloatArray:
    """Return (V,) the height of the tips and ridges near each vertex, along `up`, mm.

    The height of the ridge points is carried to other places by inverse distance weights
    (Shepard) of the distances across the axis. NaN if the unit has no crest.
    """
    mesh = landmarks.part.mesh
    top = np.full(mesh.vertex_count, np.nan)
    ridge = ridge_points(landmarks, up)
    if not len(ridge):
        return top
    middle = ridge.mean(axis=0)
    level = ((ridge - middle) @ up).astype(np.float32)
    ridge_flat = ((ridge - middle) - level[:, None] * up).astype(np.float32)
    blur = (ridge_flat**2).sum(axis=1) + np.float32(_CREST_BLUR_MM**2)
    every = np.arange(mesh.vertex_count)
    for chunk in np.array_split(every, max(1, len(every) // 4096)):
        arm = mesh.vertices[chunk] - middle
        flat = (arm - (arm @ up)[:, None] * up).astype(np.float32)
        squared = (flat**2).sum(axis=1)[:, None] + blur - 2.0 * (flat @ ridge_flat.T)
        weight = 1.0 / np.square(np.maximum(squared, np.float32(1e-3)))
        top[chunk] = (weight @ level) / weight.sum(axis=1) + middle @ up
    return top
