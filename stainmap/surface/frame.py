"""A frame that belongs to the body itself and turns with it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from stainmap.surface.mesh import FloatArray, TriMesh, frozen


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PrincipalFrame:
    """Centre and principal directions of a surface, by area.

    Parameters
    ----------
    centre
        (3,) centroid of the surface, mm.
    axes
        (3, 3) right-handed, columns from the longest to the shortest extent. Each of the first
        two points to the side on which the body reaches farther (positive third moment).
    spreads
        (3,) standard deviations along the columns, mm.
    """

    centre: FloatArray
    axes: FloatArray
    spreads: FloatArray


def principal_frame(mesh: TriMesh) -> PrincipalFrame:
    """Return the frame of a mesh; the same on the body however the body is turned."""
    weight = mesh.face_areas / max(mesh.area, 1e-30)
    centre = weight @ mesh.face_centres
    arm = mesh.face_centres - centre
    variances, axes = np.linalg.eigh(np.einsum("f,fi,fj->ij", weight, arm, arm))
    axes = axes[:, ::-1].copy()
    for column in range(2):
        along = arm @ axes[:, column]
        if weight @ along**3 < 0:
            axes[:, column] *= -1.0
    axes[:, 2] = np.cross(axes[:, 0], axes[:, 1])
    spreads = np.sqrt(np.maximum(variances[::-1], 0.0))
    return PrincipalFrame(centre=frozen(centre), axes=frozen(axes), spreads=frozen(spreads))


def principal_extents(mesh: TriMesh, frame: PrincipalFrame | None = None) -> FloatArray:
    """Return the size (3,) of the body along its principal directions, longest first."""
    if not mesh.vertex_count:
        return np.zeros(3)
    axes = (frame or principal_frame(mesh)).axes
    along = mesh.vertices @ axes
    return np.sort(along.max(axis=0) - along.min(axis=0))[::-1]
