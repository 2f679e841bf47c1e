"""Which way a crown bites: the occlusal axis from its cavity or from its fossae."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stainmap.planning.relief import Relief
from stainmap.surface.frame import PrincipalFrame
from stainmap.surface.mesh import FloatArray, TriMesh
from stainmap.surface.openness import Openness

# Points that see less than this share of what lies before them are in a cavity. Crowns with one
# have 0.32 of their area there, solid crowns at most 0.05 (in fissures).
_CAVITY_SHARE = 0.45
_HOLLOW_AREA = 0.15
# Valleys deeper than this at the wide scale count as fossae, mm.
_FOSSA_DEPTH_MM = 0.03


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


def guess_axis(mesh: TriMesh, sky: Openness, frame: PrincipalFrame, wide: Relief) -> AxisGuess:
    """Return the axis away from the cavity of a hollow body, else along the normals of fossae.

    In a cavity the open directions, summed over its points, point out of it: minus that sum is
    the axis, within 4 to 11 degrees of the jaw's. A solid crown has its valleys on the biting
    side; the sum of their normals, weighted by depth, was within 12 degrees on a molar, 3 on a
    premolar and 8 on a bridge, and 36 off on an incisor, where it leans to the palatal fossa.

    Parameters
    ----------
    mesh, frame
        The body and its frame.
    sky
        What its vertices see of all directions.
    wide
        Its wide relief.
    """
    area = mesh.vertex_areas
    low = sky.share < _CAVITY_SHARE
    if area[low].sum() > _HOLLOW_AREA * mesh.area:
        total = -(area[low] @ sky.bent[low])
        weight = float(area[low] @ np.linalg.norm(sky.bent[low], axis=1))
        return _guess(total, weight, hollow=True)
    depth = np.maximum(wide.valley_depth_mm - _FOSSA_DEPTH_MM, 0.0) * area
    total = depth @ wide.normals
    if float(np.linalg.norm(total)) < 1e-9:
        return AxisGuess(axis=frame.axes[:, 2], hollow=False, confidence=0.0)
    return _guess(total, float(depth.sum()), hollow=False)


def _guess(total: FloatArray, weight: float, *, hollow: bool) -> AxisGuess:
    length = float(np.linalg.norm(total))
    agreement = length / max(weight, 1e-30)
    # Normals spread evenly over a hemisphere agree to one half: that is no reason for doubt.
    confidence = float(np.clip((agreement - 0.2) / 0.5, 0.0, 1.0))
    return AxisGuess(axis=total / max(length, 1e-30), hollow=hollow, confidence=confidence)
