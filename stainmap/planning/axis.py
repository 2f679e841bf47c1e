"""Which way a crown bites: the occlusal axis from its cavity, its fossae, or the crease below."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from stainmap.planning.relief import Relief, Reliefs
from stainmap.surface.frame import PrincipalFrame
from stainmap.surface.mesh import BoolArray, FloatArray, TriMesh
from stainmap.surface.openness import Openness
from stainmap.surface.section import plane_section

# Points that see less than this share of what lies before them are in a cavity. Crowns with one
# have 0.32 of their area there, solid crowns at most 0.05 (in fissures).
_CAVITY_SHARE = 0.45
_HOLLOW_AREA = 0.15
# Valleys deeper than this at the wide scale count as fossae, mm.
_FOSSA_DEPTH_MM = 0.03
# Where the outer surface ends there is the sharpest crease of a milled crown, solid or with a
# cavity too shallow to be told by what it sees. It counts where it is sharp enough in sum, mm, and
# lies far enough on one side of the body, as a share of its size: made crowns had 1.1 mm and more
# and at least 0.3; scanned teeth, whose edges are blunt, at most 0.6 mm, or 0.2.
_SHARP_PER_MM = 0.9
_CREASE_MM = 1.0
_CREASE_OFF = 0.27
_CREASE_CONFIDENCE = 0.75
_DOUBTFUL_CONFIDENCE = 0.4
_AGREEING_COSINE = 0.77
# Roots do not spread as wide as the crown: what lies in the outer thirds of its length.
_END_SHARE = 0.3
_END_SLICES = 6


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class AxisGuess:
    """An occlusal axis read from the shape.

    Parameters
    ----------
    axis
        (3,) unit vector toward the biting side.
    hollow
        Whether it comes from a cavity.
    confidence
        0 to 1: how much the places it was read from agree.
    """

    axis: FloatArray
    hollow: bool
    confidence: float


def guess_axis(
    mesh: TriMesh,
    sky: Openness,
    frame: PrincipalFrame,
    reliefs: Reliefs,
    *,
    counted: BoolArray | None = None,
) -> AxisGuess:
    """Return the axis away from the cavity of a hollow body, else along the normals of fossae.

    In a cavity the open directions, summed over its points, point out of it: minus that sum is
    the axis, within 4 to 11 degrees of the jaw's. A solid crown has its valleys on the biting
    side; the sum of their normals, weighted by depth, was within 12 degrees on a molar, 3 on a
    premolar and 8 on a bridge, and 36 off on an incisor, where it leans to the palatal fossa.
    A shallow cavity is a valley too, on the wrong side: where a sharp crease lies on the side that
    seems to bite, it is believed instead, for it is the margin.

    Parameters
    ----------
    mesh, frame
        The body and its frame.
    sky
        What its vertices see of all directions.
    reliefs
        Its reliefs.
    counted
        (V,) where valleys count: not around connectors, which have them on all sides. None for
        everywhere.
    """
    area = mesh.vertex_areas
    low = sky.share < _CAVITY_SHARE
    if area[low].sum() > _HOLLOW_AREA * mesh.area:
        total = -(area[low] @ sky.bent[low])
        weight = float(area[low] @ np.linalg.norm(sky.bent[low], axis=1))
        return _guess(total, weight, hollow=True)
    depth = np.maximum(reliefs.wide.valley_depth_mm - _FOSSA_DEPTH_MM, 0.0) * area
    if counted is not None:
        depth = np.where(counted, depth, 0.0)
    total = depth @ reliefs.wide.normals
    if float(np.linalg.norm(total)) < 1e-9:
        guess = AxisGuess(axis=frame.axes[:, 2], hollow=False, confidence=0.0)
    else:
        guess = _guess(total, float(depth.sum()), hollow=False)
    away = away_from_crease(mesh, reliefs.fine, frame)
    if away is None:
        return guess
    agreement = float(away @ guess.axis)
    if agreement > _AGREEING_COSINE:
        return replace(guess, confidence=max(guess.confidence, _CREASE_CONFIDENCE))
    if agreement > 0.0:
        # As on a front tooth, whose one fossa leans to the side.
        return replace(guess, confidence=min(guess.confidence, _DOUBTFUL_CONFIDENCE))
    return AxisGuess(axis=away, hollow=False, confidence=_CREASE_CONFIDENCE)


def away_from_crease(mesh: TriMesh, fine: Relief, frame: PrincipalFrame) -> FloatArray | None:
    """Return the direction (3,) from the sharpest creases to the middle; None if none stand out.

    Parameters
    ----------
    mesh, frame
        The body and its frame.
    fine
        Its fine relief.
    """
    sharp = np.maximum(fine.curvature_per_mm - _SHARP_PER_MM, 0.0) * mesh.vertex_areas
    total = float(sharp.sum())
    if total < _CREASE_MM:
        return None
    way = frame.centre - sharp @ mesh.vertices / total
    length = float(np.linalg.norm(way))
    along = mesh.vertices @ (way / max(length, 1e-12))
    if length < _CREASE_OFF * float(np.ptp(along)):
        return None
    return np.asarray(way / length)


def root_axis(mesh: TriMesh, frame: PrincipalFrame) -> FloatArray:
    """Return the long axis (3,) of a tooth with its roots, toward the crown, the fuller end."""
    axis = frame.axes[:, 0]
    along = mesh.vertices @ axis
    low, length = float(along.min()), float(np.ptp(along))
    share = np.linspace(0.05, _END_SHARE, _END_SLICES)
    full = [
        sum(o.area_mm2 for at in ends for o in plane_section(mesh, axis, low + float(at) * length))
        for ends in (share, 1.0 - share)
    ]
    return np.asarray(axis if full[1] >= full[0] else -axis)


def jaw_axis(mesh: TriMesh, frame: PrincipalFrame, wide: Relief) -> FloatArray:
    """Return the direction (3,) across the plane of a jaw, toward its teeth.

    A jaw is lower than it is long and wide; its valleys, fossae and the gaps between teeth, face
    the biting side, and what faces away is a plain base or missing.
    """
    axis = frame.axes[:, 2]
    depth = np.maximum(wide.valley_depth_mm - _FOSSA_DEPTH_MM, 0.0) * mesh.vertex_areas
    up = float(depth @ (wide.normals @ axis))
    return np.asarray(axis if up >= 0.0 else -axis)


def _guess(total: FloatArray, weight: float, *, hollow: bool) -> AxisGuess:
    length = float(np.linalg.norm(total))
    agreement = length / max(weight, 1e-30)
    # Normals spread evenly over a hemisphere agree to one half: that is no reason for doubt.
    confidence = float(np.clip((agreement - 0.2) / 0.5, 0.0, 1.0))
    return AxisGuess(axis=total / max(length, 1e-30), hollow=hollow, confidence=confidence)
