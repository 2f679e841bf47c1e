"""Necks: where a body is narrower than on either side, and the smallest section there."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import csgraph

from stainmap.surface.mesh import FloatArray, IndexArray, TriMesh, frozen, submesh
from stainmap.surface.section import Outline, crossing_points, hull_area, plane_section

# A section is a neck where it is below this share of the largest section on either side.
NECK_SHARE = 0.6
# Distance between slices.
SLICE_MM = 0.35
# Slices within which a neck must be the smallest: necks are at least this far apart and from the
# ends.
_APART = 6
# How far a plane may leave the slice it started from: tilted about either direction (tangent of
# the angle) and shifted.
_MOST_TILT = 0.6
_MOST_SHIFT_MM = 2.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Neck:
    """The smallest section of a neck.

    Parameters
    ----------
    normal
        (3,) unit normal of its plane, along the body.
    offset_mm
        The plane is ``x . normal = offset``.
    centre
        (3,) middle of the section, mm.
    section_mm2
        Area of the section.
    share
        Convex area of the slice where it was found over the smaller of the largest ones on
        either side; 1 where it was not searched for.
    """

    normal: FloatArray
    offset_mm: float
    centre: FloatArray
    section_mm2: float
    share: float


def find_necks(
    mesh: TriMesh,
    axes: FloatArray,
    *,
    most_share: float = NECK_SHARE,
    measured_on: TriMesh | None = None,
    progress: Callable[[float], None] | None = None,
) -> tuple[Neck, ...]:
    """Return the necks of a long body, in order along its first axis.

    The convex area of slices 0.35 mm apart, across the first axis, has a minimum at a neck, while
    hollows in what is beside it do not show in it. Each minimum is then made smaller still by
    `smallest_section`. Necks closer than 2 mm to each other or to an end are not found.

    Parameters
    ----------
    mesh
        The body, closed or nearly so.
    axes
        (3, 3) orthonormal columns; the first runs along the body.
    most_share
        Share of the largest section on either side below which a minimum is a neck.
    measured_on
        The surface on which sections are measured in the end; the mesh itself if None. A coarse
        copy is quicker to search.
    progress
        Hears the share done; may raise to stop.
    """
    axis = axes[:, 0]
    along = mesh.vertices @ axis
    count = max(round(float(np.ptp(along)) / SLICE_MM), 3 * _APART)
    offsets = np.linspace(along.min(), along.max(), count + 2)[1:-1]
    areas = np.zeros(count)
    for number, offset in enumerate(offsets):
        if progress is not None and number % 10 == 0:
            progress(0.6 * number / count)
        areas[number] = hull_area(crossing_points(mesh, axis, float(offset)), axis)
    necks = []
    found = narrow_slices(areas, most_share)
    for number, (place, share) in enumerate(found):
        if progress is not None:
            progress(0.6 + 0.4 * number / len(found))
        necks.append(
            smallest_section(
                mesh, axes, float(offsets[place]), measured_on=measured_on, share=share
            )
        )
    return tuple(necks)


def narrow_slices(areas: FloatArray, most_share: float) -> list[tuple[int, float]]:
    """Return the slices that are necks and their share of the smaller neighbour, in order.

    Parameters
    ----------
    areas
        (S,) areas of slices, 0.35 mm apart, along a body.
    most_share
        Share of the largest on either side below which a minimum is a neck.
    """
    accepted: list[int] = []
    shares: dict[int, float] = {}
    low = [
        i
        for i in range(2, len(areas) - 2)
        if areas[i] == areas[max(0, i - _APART) : i + _APART + 1].min()
    ]
    for i in sorted(low, key=lambda k: areas[k]):
        left = max((k for k in accepted if k < i), default=0)
        right = min((k for k in accepted if k > i), default=len(areas) - 1)
        if i - left <= _APART or right - i <= _APART:
            continue
        beside = min(areas[left : i + 1].max(), areas[i : right + 1].max())
        if areas[i] < most_share * beside:
            accepted.append(i)
            shares[i] = float(areas[i] / beside)
    return [(i, shares[i]) for i in sorted(accepted)]


def smallest_section(
    mesh: TriMesh,
    axes: FloatArray,
    offset_mm: float,
    *,
    near: FloatArray | None = None,
    measured_on: TriMesh | None = None,
    share: float = 1.0,
) -> Neck:
    """Return the smallest section of a neck near one of its slices.

    The plane is tilted by up to 31 degrees about either direction across the body and shifted by
    up to 2 mm until the convex area of the outline there is smallest [Nelder1965].

    Parameters
    ----------
    mesh
        The body.
    axes
        (3, 3) orthonormal columns; the slice lies across the first.
    offset_mm
        Where: ``x . axes[:, 0] = offset``.
    near
        (3,) a place: of several outlines the one around it is meant; None for the largest.
    measured_on
        The surface on which the section is measured in the end; the mesh itself if None.
    share
        Kept in the result.

    Raises
    ------
    ValueError
        If the slice does not meet the body.
    """
    along, side, up = axes.T
    first = plane_section(mesh, along, offset_mm)
    if not first:
        raise ValueError(f"the slice at {offset_mm} mm does not meet the body")
    if near is not None:
        first = tuple(sorted(first, key=lambda o: float(np.linalg.norm(o.centre - near))))
    start = first[0].centre
    reach = 1.5 * float(np.linalg.norm(first[0].points - start, axis=1).max()) + 1.5
    part, _ = submesh(mesh, np.linalg.norm(mesh.face_centres - start, axis=1) < reach)
    limits = np.array([_MOST_TILT, _MOST_TILT, _MOST_SHIFT_MM])

    def plane(x: FloatArray) -> tuple[FloatArray, float]:
        normal = along + x[0] * side + x[1] * up
        normal = normal / np.linalg.norm(normal)
        return normal, float(start @ normal + x[2])

    def measure(x: FloatArray) -> float:
        normal, offset = plane(x)
        outline = _at(part, normal, offset, start)
        beyond = np.maximum(np.abs(x) - limits, 0.0)
        area = hull_area(outline.points, normal) if outline is not None else 1e3
        return area + 200.0 * float(beyond @ beyond)

    simplex = np.array([[0.0, 0.0, 0.0], [0.25, 0.0, 0.0], [0.0, 0.25, 0.0], [0.0, 0.0, 0.5]])
    from scipy.optimize import minimize  # noqa: PLC0415 - takes a third of a second

    best = minimize(
        measure,
        np.zeros(3),
        method="Nelder-Mead",
        options={"initial_simplex": simplex, "maxiter": 80, "xatol": 0.01, "fatol": 0.01},
    ).x
    normal, offset = plane(np.asarray(best))
    outline = _at(measured_on or mesh, normal, offset, start) or first[0]
    return Neck(
        normal=frozen(normal),
        offset_mm=offset,
        centre=frozen(outline.centre),
        section_mm2=abs(outline.area_mm2),
        share=share,
    )


def _at(mesh: TriMesh, normal: FloatArray, offset_mm: float, near: FloatArray) -> Outline | None:
    """Return the outline around a place: the largest of those whose centre is within 3 mm."""
    outlines = plane_section(mesh, normal, offset_mm)
    within = 1.5 * _MOST_SHIFT_MM
    close = [o for o in outlines if float(np.linalg.norm(o.centre - near)) < within]
    found = close or list(outlines)
    return found[0] if found else None


def parts_between(mesh: TriMesh, necks: tuple[Neck, ...]) -> NDArray[np.uint8]:
    """Return (V,) which part between the necks each vertex belongs to, from 0 along the body.

    Edges that cross a neck near it are cut; the pieces left are the parts. Where that leaves
    another number of pieces the side of the planes decides.
    """
    if not necks:
        return np.zeros(mesh.vertex_count, dtype=np.uint8)
    side = np.stack([mesh.vertices @ neck.normal > neck.offset_mm for neck in necks])
    i, j = mesh.edges.T
    crossing = []
    for neck, beyond in zip(necks, side, strict=True):
        # A section of the neck is about as wide as it is high; three radii reach all of it.
        reach = 3.0 * np.sqrt(neck.section_mm2 / np.pi) + 0.5
        near = np.linalg.norm(mesh.vertices - neck.centre, axis=1) < reach
        crossing.append((beyond[i] != beyond[j]) & near[i])
    cut = np.any(crossing, axis=0)
    graph = sparse.coo_array(
        (np.ones(int((~cut).sum()), dtype=np.int8), (i[~cut], j[~cut])),
        shape=(mesh.vertex_count,) * 2,
    )
    count, piece = csgraph.connected_components(graph, directed=False)
    rank = None
    if count == len(necks) + 1:
        rank = _in_a_row(piece, side, mesh.edges, crossing)
    return np.asarray(side.sum(axis=0) if rank is None else rank[piece], dtype=np.uint8)


def _in_a_row(
    piece: IndexArray,
    side: NDArray[np.bool_],
    edges: IndexArray,
    crossing: list[NDArray[np.bool_]],
) -> NDArray[np.int64] | None:
    """Return the place of each piece in the row, walked from neck to neck; None if it branches.

    On a bent body the planes of the necks, carried on, would cut other parts too.
    """
    rank = np.full(len(crossing) + 1, -1, dtype=np.int64)
    for number, (beyond, cut) in enumerate(zip(side, crossing, strict=True)):
        ends = edges[cut]
        if not len(ends):
            return None
        before = int(np.bincount(piece[ends[~beyond[ends]]]).argmax())
        after = int(np.bincount(piece[ends[beyond[ends]]]).argmax())
        if number == 0:
            rank[before] = 0
        elif rank[before] != number:
            return None
        rank[after] = number + 1
    return rank if np.array_equal(np.sort(rank), np.arange(len(rank))) else None
