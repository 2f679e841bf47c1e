"""The crown as a prediction sees it: how thick the wall is, and what lies opposite each vertex."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.crown import CrownReading
from stainmap.model.tooth import Role
from stainmap.predict.iterations import product
from stainmap.predict.levels import SurfaceLevels, even_stiffness
from stainmap.predict.measured_shape import known_shape
from stainmap.predict.regions import INCISAL_EDGE_MM
from stainmap.predict.two_levels import TwoLevels
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.geodesic import surface_distance
from stainmap.surface.mesh import TriMesh
from stainmap.surface.thickness import nearest_vertex_distance, wall_thickness
from stainmap.words import translate

Progress = Callable[[float, str], None] | None
Floats = NDArray[np.float32]
Mask = NDArray[np.bool_]
Wall = NDArray[np.float64]
Indices = NDArray[np.int32]

# Of a crown without an inner surface (assumed): the wall, tapering to the thinner at the margin.
_ASSUMED_WALL_MM = 1.0
_MARGIN_WALL_MM = 0.5
_MARGIN_TAPER_MM = 1.5
# Nothing shines through more ceramic than this.
_OPAQUE_MM = 6.0
_THINNEST_MM = 0.05
# How squarely a face must look labial or palatal for light to leave by the other one.
_FACING = (0.2, 0.7)
_CURVATURE_LENGTH_MM = 0.35
# Bound of the error of the smoothed place by the maximum principle. What is left is a hundred times
# less: curvatures of molars then err by 0.001 per mm at most.
_CURVATURE_TOLERANCE_MM = 1e-2
# Of a cycle on two levels; two cycles are the rule, as the length is a few edges.
_SMOOTHING_STEPS, _CORRECTION_STEPS, _SMOOTHER_BEGIN = 3, 6, 0.25
_MOST_CYCLES = 30


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CrownShape:
    """What a prediction needs to know of the shape. Arrays are per vertex of the refined surface.

    Parameters
    ----------
    mesh, operator
        The refined surface and its smoothing operator.
    outer, inner
        (V,) bool. The surface seen in the mouth, and the rest: cavity, rim, base.
    wall_mm
        (V,) float32, sintered. Way through the ceramic to the other side of the wall.
    partner
        (V,) int32. The vertex there whose stain shows through; -1 where there is none.
    assumed_wall
        True if the crown has no inner surface, so that the wall is a guess.
    unit_index
        (V,) uint8.
    curvature_per_mm
        (V,) float32. Sum of the principal curvatures over 0.35 mm, convex positive.
    levels
        The surface as fields are solved on it.
    """

    mesh: TriMesh
    operator: SurfaceOperator
    outer: Mask
    inner: Mask
    wall_mm: Floats
    partner: Indices
    assumed_wall: bool
    unit_index: NDArray[np.uint8]
    curvature_per_mm: Floats
    levels: SurfaceLevels

    def __post_init__(self) -> None:
        """Make the arrays read-only."""
        for array in (self.outer, self.inner, self.wall_mm, self.partner, self.curvature_per_mm):
            array.flags.writeable = False


def crown_shape(
    case: Case, operator: SurfaceOperator | None = None, progress: Progress = None
) -> CrownShape:
    """Return the shape of a case's crown; about a second for 100,000 vertices.

    What the case's file holds of it is not measured again.

    On front teeth the way through the wall is, near the edge, the one to the opposite face, where
    that is shorter than the one to the cavity.

    Parameters
    ----------
    operator
        Operator of the case's surface, if one is at hand.
    progress
        Called with a share and a phrase; may raise CancelledError.
    """

    def report(share: float, phrase: str) -> None:
        if progress is not None:
            progress(share, phrase)

    mesh, reading = case.surface.mesh, case.reading
    outer = reading.outer
    report(0.0, translate("shape", "measuring the wall"))
    pontic = _of_units(case, [unit.role is Role.PONTIC for unit in case.units])
    cavity = ~outer & ~reading.rim & ~pontic
    assumed = reading.assumed_wall_mm is not None or not (cavity.any() and outer.any())
    known = known_shape(case)
    if known is not None:
        wall_mm, partner = known.wall_mm.copy(), known.partner.copy()
    else:
        if assumed:
            wall, partner = _assumed_wall(mesh, reading, pontic)
        else:
            wall, partner = _measured_wall(mesh, outer, cavity)
        front = _of_units(case, [unit.tooth.is_front for unit in case.units])
        _through_incisal_edges(mesh, reading, front, wall, partner)
        wall_mm = np.clip(wall, _THINNEST_MM, _OPAQUE_MM).astype(np.float32)
    report(0.4, translate("shape", "preparing the surface"))
    if operator is None:
        operator = SurfaceOperator(mesh)
    levels = SurfaceLevels(mesh.vertices, even_stiffness(mesh), operator.mass)
    report(0.8, translate("shape", "measuring curvature"))
    return CrownShape(
        mesh=mesh,
        operator=operator,
        outer=outer.copy(),
        inner=~outer,
        wall_mm=wall_mm,
        partner=partner,
        assumed_wall=assumed,
        unit_index=reading.unit_index,
        curvature_per_mm=(
            _curvature(mesh, levels) if known is None else known.curvature_per_mm.copy()
        ),
        levels=levels,
    )


def _of_units(case: Case, which: list[bool]) -> Mask:
    """Return the vertices (V,) of some of the units."""
    return np.array(which, dtype=np.bool_)[case.reading.unit_index]


def _assumed_wall(mesh: TriMesh, reading: CrownReading, pontic: Mask) -> tuple[Wall, Indices]:
    """Return the wall a crown without an inner surface is taken to have, and no partners.

    A pontic is as thick as it looks: its wall grows with the distance from the next retainer.
    """
    full = reading.assumed_wall_mm or _ASSUMED_WALL_MM
    thin = min(full, _MARGIN_WALL_MM)
    wall = np.full(mesh.vertex_count, full)
    start, end = mesh.edges.T
    crossing = (reading.outer[start] != reading.outer[end]) & ~(pontic[start] | pontic[end])
    margin = np.unique(mesh.edges[crossing])
    if len(margin):
        distance = surface_distance(mesh, margin, limit_mm=_MARGIN_TAPER_MM)
        wall = thin + (full - thin) * _smoothstep(distance / _MARGIN_TAPER_MM)
    if pontic.any():
        retainers = mesh.vertices[~pontic]
        wall[pontic] = full + (
            nearest_vertex_distance(mesh.vertices[pontic], retainers)[0]
            if len(retainers)
            else _OPAQUE_MM
        )
    return wall, np.full(mesh.vertex_count, -1, dtype=np.int32)


def _measured_wall(mesh: TriMesh, outer: Mask, cavity: Mask) -> tuple[Wall, Indices]:
    """Return the way to the other side of the wall, and the vertex there.

    The rim, and the underside of a pontic, have the wall of the outer surface next to them.
    """
    measured, opposite = wall_thickness(mesh, outer, cavity)
    wall, partner = measured.copy(), opposite.copy()
    left = np.flatnonzero(~outer & ~cavity)
    if len(left):
        border = np.flatnonzero(outer)
        nearest = border[nearest_vertex_distance(mesh.vertices[left], mesh.vertices[border])[1]]
        wall[left] = wall[nearest]
        partner[left] = nearest
    return wall, partner


def _through_incisal_edges(
    mesh: TriMesh, reading: CrownReading, front: Mask, wall: Wall, partner: Indices
) -> None:
    """Let light leave by the opposite face of an incisal edge where that is nearer, in place."""
    near_edge = front & reading.outer & (reading.depth_below_crest_mm < 2 * INCISAL_EDGE_MM)
    for unit in np.unique(reading.unit_index[near_edge]):
        edge = np.flatnonzero(near_edge & (reading.unit_index == unit))
        facing = _facing(mesh, edge, np.array(reading.occlusal_axis))
        sides = edge[facing > _FACING[0]], edge[facing < -_FACING[0]]
        if not (len(sides[0]) and len(sides[1])):
            continue
        sure = np.zeros(mesh.vertex_count)
        sure[edge] = _smoothstep((np.abs(facing) - _FACING[0]) / (_FACING[1] - _FACING[0]))
        sure[reading.depth_below_crest_mm >= INCISAL_EDGE_MM] = 0.0
        for here, there in (sides, sides[::-1]):
            through, index = nearest_vertex_distance(mesh.vertices[here], mesh.vertices[there])
            gain = sure[here] * np.maximum(wall[here] - through, 0.0)
            wall[here] -= gain
            opposite = (gain > 0.0) & (sure[here] > 0.5)
            partner[here[opposite]] = there[index[opposite]]


def _facing(mesh: TriMesh, vertices: NDArray[np.intp], axis: Wall) -> Wall:
    """Return how far each vertex looks to the one side of a blade (1) or the other (-1)."""
    normals = mesh.vertex_normals[vertices]
    level = normals - np.outer(normals @ axis, axis)
    spread = (level * mesh.vertex_areas[vertices, None]).T @ level
    across = np.linalg.eigh(spread)[1][:, -1]
    return np.asarray(normals @ across, dtype=np.float64)


def _smoothstep(x: Wall) -> Wall:
    x = np.clip(x, 0.0, 1.0)
    return np.asarray(x * x * (3.0 - 2.0 * x))


def _curvature(mesh: TriMesh, levels: SurfaceLevels) -> Floats:
    """Return the sum of the principal curvatures (V,) over 0.35 mm, 1/mm, convex positive.

    n . L X / M of the smoothed positions X = (1 - s^2 Laplacian)^-1 X0, which is the smoothing's
    own shift (X0 - X) / s^2 along the normal.
    """
    fine = levels.hierarchy.fine
    loss: Floats = fine.mass * np.float32(1.0 / _CURVATURE_LENGTH_MM**2)
    two = TwoLevels(
        levels.hierarchy,
        smoothing_steps=_SMOOTHING_STEPS,
        correction_steps=_CORRECTION_STEPS,
        smoother_begin=_SMOOTHER_BEGIN,
    )
    system, coarse = two.fine_system(loss), two.coarse_system(loss)
    centred = levels.positions.T - levels.positions.mean(axis=1)
    residual: Floats = -product(fine.stiffness, np.ascontiguousarray(centred))
    shift = np.zeros_like(residual)
    enough: Floats = loss * np.float32(_CURVATURE_TOLERANCE_MM)
    for _ in range(_MOST_CYCLES):
        if not (np.abs(residual) > enough).any():
            break
        two.refine(system, coarse, residual, shift, 1)
    along = -np.einsum("ij,ij->i", mesh.vertex_normals[levels.order], shift)
    curvature = np.empty(mesh.vertex_count, dtype=np.float32)
    curvature[levels.order] = along / _CURVATURE_LENGTH_MM**2
    return curvature
