"""Mesial and buccal: which way a crown stands in its row."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stainmap.model.tooth import Tooth, ToothClass
from stainmap.surface.mesh import BoolArray, FloatArray, TriMesh


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SideGuess:
    """A direction read from the shape, and how far it can be trusted (0 to 1)."""

    direction: FloatArray
    confidence: float


def across(vector: FloatArray, axis: FloatArray) -> FloatArray | None:
    """Return the unit vector of the part of a vector across an axis; None if nothing is left."""
    flat = vector - (vector @ axis) * axis
    length = float(np.linalg.norm(flat))
    if length < 0.05 * max(float(np.linalg.norm(vector)), 1e-12):
        return None
    return np.asarray(flat / length)


def buccal_from_mesial(mesial: FloatArray, axis: FloatArray, tooth: Tooth) -> FloatArray:
    """Return the buccal direction: axis x mesial in quadrants 1 and 3, mesial x axis in 2 and 4.

    Mesial must be across the axis.
    """
    turned = np.cross(axis, mesial)
    return np.asarray(turned if tooth.quadrant in (1, 3) else -turned)


def mesial_from_buccal(buccal: FloatArray, axis: FloatArray, tooth: Tooth) -> FloatArray:
    """Return the mesial direction, the inverse of `buccal_from_mesial`."""
    turned = np.cross(buccal, axis)
    return np.asarray(turned if tooth.quadrant in (1, 3) else -turned)


def patients_left(buccal: FloatArray, axis: FloatArray, *, upper: bool) -> FloatArray:
    """Return the patient's left along the row: buccal x axis in the upper jaw, minus that below."""
    turned = np.cross(buccal, axis)
    return np.asarray(turned if upper else -turned)


def guess_buccal(
    mesh: TriMesh,
    outer: BoolArray,
    table: BoolArray,
    crest: BoolArray,
    margin_mm: FloatArray,
    axis: FloatArray,
    tooth: Tooth,
) -> SideGuess | None:
    """Return where buccal seems to be on a single unit, or None where the form does not tell.

    Front teeth: away from the palatal fossa. Premolars: along the longer diameter of the
    outline, on the side of the taller wall. Lower molars: across the longer diameter of the
    table, away from the side to which the crest leans. Upper molars: nothing was found that
    tells.

    Parameters
    ----------
    mesh
        The unit, V vertices.
    outer, table, crest
        (V,) its outer surface, its table and the border of that.
    margin_mm
        (V,) distance from the margin along the outer surface.
    axis
        (3,) occlusal axis.
    tooth
        Which tooth it is.
    """
    if not table.any() or not crest.any():
        return None
    if tooth.is_front:
        return _away_from_fossa(mesh, table, axis)
    if tooth.tooth_class is ToothClass.PREMOLAR:
        long_axis, elongation = _long_diameter(mesh, outer, axis)
        return _taller_wall(mesh, crest, margin_mm, long_axis, elongation)
    if tooth.is_upper:
        return None
    long_axis, elongation = _long_diameter(mesh, table, axis)
    return _away_from_lean(mesh, outer, crest, np.cross(axis, long_axis), elongation)


def _away_from_fossa(mesh: TriMesh, table: BoolArray, axis: FloatArray) -> SideGuess | None:
    weight = mesh.vertex_areas[table]
    mean = weight @ mesh.vertex_normals[table] / float(weight.sum())
    flat = across(-mean, axis)
    if flat is None:
        return None
    # A palatal fossa faces well to the side; a table that faces up tells little.
    lean = float(np.linalg.norm(mean - (mean @ axis) * axis))
    return SideGuess(direction=flat, confidence=float(np.clip(1.6 * lean, 0.0, 0.9)))


def _taller_wall(
    mesh: TriMesh,
    crest: BoolArray,
    margin_mm: FloatArray,
    long_axis: FloatArray,
    elongation: float,
) -> SideGuess:
    points, wall_mm = mesh.vertices[crest], margin_mm[crest]
    side = (points - points.mean(axis=0)) @ long_axis
    first, last = np.percentile(side, [25.0, 75.0])
    taller = float(np.median(wall_mm[side >= last]) - np.median(wall_mm[side <= first]))
    sure = np.clip((elongation - 1.02) / 0.15, 0.0, 1.0) * np.clip(abs(taller) / 0.8, 0.0, 1.0)
    direction = long_axis * (1.0 if taller >= 0 else -1.0)
    return SideGuess(direction=direction, confidence=float(0.85 * sure))


def _away_from_lean(
    mesh: TriMesh, outer: BoolArray, crest: BoolArray, short_axis: FloatArray, elongation: float
) -> SideGuess:
    weight = mesh.vertex_areas[outer]
    middle = weight @ mesh.vertices[outer] / float(weight.sum())
    lean = float((mesh.vertices[crest].mean(axis=0) - middle) @ short_axis)
    sure = np.clip((elongation - 1.05) / 0.2, 0.0, 1.0) * np.clip(abs(lean) / 0.4, 0.0, 1.0)
    direction = short_axis * (-1.0 if lean >= 0 else 1.0)
    return SideGuess(direction=direction, confidence=float(0.7 * sure))


def _long_diameter(mesh: TriMesh, mask: BoolArray, axis: FloatArray) -> tuple[FloatArray, float]:
    """Return the longer principal direction across the axis and the ratio of both spreads."""
    weight = mesh.vertex_areas[mask] / float(mesh.vertex_areas[mask].sum())
    points = mesh.vertices[mask]
    arm = points - weight @ points
    arm = arm - (arm @ axis)[:, None] * axis
    spread, direction = np.linalg.eigh(np.einsum("v,vi,vj->ij", weight, arm, arm))
    return direction[:, 2], float(np.sqrt(spread[2] / max(float(spread[1]), 1e-12)))
