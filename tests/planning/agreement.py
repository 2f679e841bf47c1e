"""How far a proposal agrees with what is known of a made crown, or with another proposal."""

from __future__ import annotations

import igl
import numpy as np
from numpy.typing import NDArray
from scipy.spatial import cKDTree

from stainmap.model.zone import Zone
from stainmap.practice.crown_maker import MadeCrown
from stainmap.practice.crown_walls import ABOVE_MARGIN_MM
from stainmap.surface.mesh import BoolArray, FloatArray, TriMesh
from stainmap.surface.thickness import wall_thickness

BORDER_MM = 0.3
_LINE_STEP_MM = 0.05

Zones = NDArray[np.uint8]


def zone_agreement(
    mesh: TriMesh,
    found: Zones,
    wanted: Zones,
    where: BoolArray,
    *,
    band_mm: float = BORDER_MM,
) -> float:
    """Return the share of an area whose found zone is the wanted one, or is so `band_mm` away.

    Distances are straight, between vertices of the same side.
    """
    area = mesh.vertex_areas
    right = found == wanted
    for zone in np.unique(found[where & ~right]):
        asked = np.flatnonzero(where & ~right & (found == zone))
        there = mesh.vertices[where & (wanted == zone)]
        if len(there):
            right[asked] = cKDTree(there).query(mesh.vertices[asked])[0] <= band_mm
    return float(area[where & right].sum() / area[where].sum())


def line_found(crown: MadeCrown, mesh: TriMesh, zones: Zones) -> tuple[float, float]:
    """Return the share of the known fissure lines' length within 0.3 mm of found fissures.

    And, so that not everything may be called a fissure, the share of the found fissures' area
    within twice that of a known line.
    """
    points = _along(crown.fissure_lines)
    fissure = zones == Zone.FISSURE
    found = cKDTree(mesh.vertices[fissure]).query(points)[0] <= BORDER_MM
    area = mesh.vertex_areas[fissure]
    near = cKDTree(points).query(mesh.vertices[fissure])[0] <= 2 * BORDER_MM
    return float(found.mean()), float(area[near].sum() / area.sum())


def _along(segments: FloatArray) -> FloatArray:
    """Return points at even steps along segments."""
    length = np.linalg.norm(segments[:, 1] - segments[:, 0], axis=1)
    total = np.concatenate([[0.0], np.cumsum(length)])
    at = np.arange(0.5 * _LINE_STEP_MM, total[-1], _LINE_STEP_MM)
    k = np.clip(np.searchsorted(total, at, side="right") - 1, 0, len(segments) - 1)
    share = ((at - total[k]) / np.maximum(length[k], 1e-12))[:, None]
    return np.asarray(segments[k, 0] * (1 - share) + segments[k, 1] * share)


def wall_errors_mm(crown: MadeCrown, mesh: TriMesh, outer: BoolArray, rim: BoolArray) -> FloatArray:
    """Return the errors of the wall at outer vertices, against libigl on the known cavity.

    The cavity is what the maker made as one, on the mesh it made; the wall is measured on the mesh
    that was read, with the sides as they were read. The lowest half millimetre is left out, as by
    the maker: there the wall runs out into the rim on purpose.
    """
    made = crown.mesh
    thickness, _ = wall_thickness(mesh, outer, ~outer & ~rim)
    cavity = made.faces[(~crown.outer)[made.faces].all(axis=1)]
    ring = made.vertices[_on_border(made, crown.outer) & crown.outer]
    above = cKDTree(ring).query(mesh.vertices)[0] > ABOVE_MARGIN_MM
    asked = np.flatnonzero(outer & above & np.isfinite(thickness))
    squared = igl.point_mesh_squared_distance(
        mesh.vertices[asked], made.vertices, cavity.astype(np.int64)
    )[0]
    return np.asarray(thickness[asked] - np.sqrt(squared))


def _on_border(mesh: TriMesh, mask: BoolArray) -> BoolArray:
    crossing = mask[mesh.edges[:, 0]] != mask[mesh.edges[:, 1]]
    border = np.zeros(mesh.vertex_count, dtype=np.bool_)
    border[mesh.edges[crossing]] = True
    return border


def inner_area_error(crown: MadeCrown, mesh: TriMesh, outer: BoolArray) -> float:
    """Return how much the area of the inner surface with its rim is off, as a share of it.

    On the crown's own mesh vertices are counted on both sides. On a finer one the known area is
    that of the faces beyond the margin, and the found border runs between vertices, through the
    middle of edges; their vertex areas end there.
    """
    made, inner = crown.mesh, ~crown.outer
    if mesh is made:
        known = float(made.vertex_areas[inner].sum())
    else:
        known = float(made.face_areas[inner[made.faces].any(axis=1)].sum())
    return float(mesh.vertex_areas[~outer].sum()) / known - 1.0
