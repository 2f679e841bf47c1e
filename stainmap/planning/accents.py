"""Accents that follow the form of one unit: ridges, line angles, the neck band inside."""

from __future__ import annotations

import numpy as np

from stainmap.model.zone import Accent
from stainmap.planning.landmarks import Landmarks
from stainmap.planning.table import border_vertices
from stainmap.planning.unit_form import UnitForm, finite_mm, ramp
from stainmap.surface.geodesic import surface_distance
from stainmap.surface.mesh import FloatArray, connected_pieces

# Common practice, no published source. Lengths are shares of c, the root of the outer area,
# curvatures multiples of 1/c.
_RIDGE_BESIDE_CREST = 0.055
_RIDGE_ANGLE_DEG = 33.0
_RIDGE_BELOW = 0.85
_TRIANGULAR_SHARPNESS = 3.0
_TRIANGULAR_OFF_CREST = 0.045
_TRIANGULAR_LEAST = 0.0025
_LINE_ANGLE_DEG = 11.0
_LINE_ANGLE_LEAN = 0.6
_LINE_ANGLE_RISE = (0.25, 0.92)
_LINE_ANGLE_LEAST = 0.004
_INNER_NECK_MM = 1.5
_SOFT_MM = 0.15


def firm_accents(form: UnitForm) -> dict[Accent, FloatArray]:
    """Return the accents of one unit that follow its form alone, each (V,) 0 to 1."""
    accents = {Accent.LINE_ANGLE: _line_angles(form)}
    if form.hollow:
        accents[Accent.INNER_NECK_BAND] = _inner_neck(form)
    return accents


def ridge_accents(form: UnitForm, fissure: FloatArray) -> dict[Accent, FloatArray]:
    """Return the ridges of one unit, each (V,) 0 to 1; they end at fissures.

    Parameters
    ----------
    form
        The unit, V vertices.
    fissure
        (V,) how much each vertex belongs to a fissure.
    """
    landmarks = form.landmarks
    if landmarks.front or not landmarks.table.any():
        return {}
    return {
        Accent.MARGINAL_RIDGE: _marginal_ridges(form, fissure),
        Accent.TRIANGULAR_RIDGE: _triangular_ridges(form, fissure),
    }


def _marginal_ridges(form: UnitForm, fissure: FloatArray) -> FloatArray:
    """Return the crest where it runs across the mesial and distal ends, below the cusps."""
    landmarks = form.landmarks
    reach = _RIDGE_BESIDE_CREST * landmarks.size_mm
    near = ramp(reach - finite_mm(landmarks.crest_mm), _SOFT_MM)
    end = ramp(_RIDGE_ANGLE_DEG - form.proximal_angle_deg(), 5.0)
    along = landmarks.part.mesh.vertices @ landmarks.up
    bottom = fissure > 0.5
    low = float(np.percentile(along[bottom if bottom.any() else landmarks.table], 20.0))
    high = float(np.percentile(along[landmarks.crest], 95.0))
    below = ramp(_RIDGE_BELOW - (along - low) / max(high - low, 1e-9), 0.06)
    return np.asarray(np.minimum(np.minimum(near, end), below) * landmarks.outer)


def _triangular_ridges(form: UnitForm, fissure: FloatArray) -> FloatArray:
    """Return the ridges that run from the cusp tips down into the table."""
    landmarks = form.landmarks
    size = landmarks.size_mm
    sharp = ramp(form.level_bend_per_mm * size - _TRIANGULAR_SHARPNESS, 1.0)
    off_crest = ramp(finite_mm(landmarks.crest_mm) - _TRIANGULAR_OFF_CREST * size, 2.0 * _SOFT_MM)
    share = np.minimum(sharp, off_crest) * landmarks.table * (1.0 - fissure)
    return _without_specks(landmarks, share, _TRIANGULAR_LEAST)


def _line_angles(form: UnitForm) -> FloatArray:
    """Return where the buccal and lingual walls turn into the mesial and distal ones.

    There the wall faces half way between both, so the band is narrow where it turns sharply. On
    front teeth only beside the labial face.
    """
    landmarks = form.landmarks
    normals = form.normals
    outward, sideways = normals @ form.buccal, np.abs(normals @ form.mesial)
    turn = np.degrees(np.arctan2(sideways, outward if landmarks.front else np.abs(outward)))
    rise = np.nan_to_num(landmarks.rise)
    low, high = _LINE_ANGLE_RISE
    share = ramp(_LINE_ANGLE_DEG - np.abs(turn - 45.0), 6.0)
    share = np.minimum(share, np.minimum(ramp(rise - low, 0.05), ramp(high - rise, 0.05)))
    upright = ramp(_LINE_ANGLE_LEAN - np.abs(normals @ landmarks.axis), 0.1)
    wall = landmarks.outer if landmarks.front else landmarks.outer & ~landmarks.table
    return _without_specks(landmarks, np.minimum(share, upright) * wall, _LINE_ANGLE_LEAST)


def _without_specks(landmarks: Landmarks, share: FloatArray, least: float) -> FloatArray:
    """Return a mask without its pieces smaller than a share of the outer area."""
    mesh = landmarks.part.mesh
    present = share > 0.3
    count, label = connected_pieces(mesh, present)
    area = np.bincount(label[present], mesh.vertex_areas[present], minlength=count + 1)
    large = area > least * landmarks.size_mm**2
    kept = present.copy()
    kept[present] = large[label[present]]
    # The soft edge around a piece goes with it.
    beside = kept.copy()
    for _ in range(3):
        touched = mesh.edges[beside[mesh.edges].any(axis=1)]
        beside[touched] = True
    return np.asarray(np.where(beside, share, 0.0))


def _inner_neck(form: UnitForm) -> FloatArray:
    """Return the cavity's wall next to its opening; the rim itself is left out."""
    mesh = form.landmarks.part.mesh
    cavity = ~form.landmarks.outer & ~form.rim
    opening = border_vertices(mesh, cavity) & cavity
    if not opening.any():
        return np.zeros(mesh.vertex_count)
    distance = surface_distance(mesh, opening, graph=mesh.adjacency, within=cavity, limit_mm=5.0)
    return np.asarray(ramp(_INNER_NECK_MM - finite_mm(distance), 2.0 * _SOFT_MM) * cavity)
