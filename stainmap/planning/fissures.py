"""Fissures: the narrow valleys of the table, joined into a net."""

from __future__ import annotations

import numpy as np

from stainmap.planning.landmarks import Landmarks
from stainmap.planning.unit_form import UnitForm
from stainmap.surface.mesh import FloatArray, connected_pieces

# Curvature across a valley times c: what may belong to a fissure, and what one must hold.
_VALLEY = 3.0
_DEEP_VALLEY = 5.0
# Lengths in shares of c, areas of c^2: how far outside the crest a fissure may run, within which
# reach a place is compared with the deepest one, and the least deep area of a fissure.
_BESIDE_TABLE = 0.05
_COMPARED_WITHIN = 0.035
_DEEP_AREA = 0.002
_OFF_CONNECTOR_MM = 1.8
# A valley this deep is a fissure even beside a deeper one.
_DEEP_ENOUGH = 16.0
# Share of the local deepest curvature at slider positions 0 and 1, and half the ramp around it.
_DEEPEST_SHARE = (0.9, 0.4)
_RAMP = 0.15


def find_fissures(form: UnitForm, width: float) -> FloatArray:
    """Return (V,) how much each vertex belongs to a fissure, 0 to 1; nowhere on front teeth.

    Parameters
    ----------
    form
        The unit, V vertices.
    width
        0 to 1, see `ZoneSliders`.
    """
    landmarks = form.landmarks
    mesh, size = landmarks.part.mesh, landmarks.size_mm
    nothing = np.zeros(mesh.vertex_count)
    if landmarks.front or not landmarks.table.any():
        return nothing
    valley = form.valley_per_mm * size
    near = landmarks.table | (landmarks.crest_mm < _BESIDE_TABLE * size)
    candidate = landmarks.outer & near & (valley > _VALLEY)
    # The crease where a connector joins its unit is no fissure.
    candidate &= form.embrasure_mm > _OFF_CONNECTOR_MM
    deep = candidate & landmarks.table & (valley > _DEEP_VALLEY)
    count, label = connected_pieces(mesh, candidate)
    if not count:
        return nothing
    area = np.bincount(label[deep], mesh.vertex_areas[deep], minlength=count)
    kept = candidate.copy()
    kept[candidate] = area[label[candidate]] > _DEEP_AREA * size**2
    share = _DEEPEST_SHARE[0] + (_DEEPEST_SHARE[1] - _DEEPEST_SHARE[0]) * width
    deepest = _greatest_within(landmarks, np.where(kept, valley, 0.0), _COMPARED_WITHIN * size)
    deepest = np.minimum(deepest, _DEEP_ENOUGH)
    relative = valley / np.maximum(deepest, 1e-9) - share
    return np.where(kept, np.clip(0.5 + relative / (2.0 * _RAMP), 0.0, 1.0), 0.0)


def _greatest_within(landmarks: Landmarks, values: FloatArray, reach_mm: float) -> FloatArray:
    """Return (V,) the greatest value within a reach along edges."""
    graph = landmarks.part.mesh.adjacency
    rounds = max(1, round(reach_mm / float(np.median(graph.data))))
    greatest = values.copy()
    start = graph.indptr[:-1]
    for _ in range(rounds):
        greatest = np.maximum(greatest, np.maximum.reduceat(greatest[graph.indices], start))
    return greatest
