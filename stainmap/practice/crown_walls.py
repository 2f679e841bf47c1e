"""The thinnest walls of a made crown."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.surface.mesh import TriMesh
from stainmap.surface.thickness import wall_thickness

# Below this height over the margin the wall runs out into the rim on purpose.
ABOVE_MARGIN_MM = 0.5
_ROOF_NORMAL = -0.8
_ROOF_ABOVE_MM = 2.0


def minimum_walls(
    mesh: TriMesh, outer: NDArray[np.bool_], rise_mm: NDArray[np.float64]
) -> tuple[float, float]:
    """Return the thinnest occlusal and the thinnest axial wall, mm, as seen from the cavity.

    Parameters
    ----------
    mesh
        A crown with its cavity, occlusal towards +z.
    outer
        (V,) True on the outer surface.
    rise_mm
        (V,) height above the margin. The lowest half millimetre counts for neither wall.
    """
    cavity = ~outer
    thickness, _ = wall_thickness(mesh, outer, cavity)
    downward = mesh.vertex_normals[:, 2] < _ROOF_NORMAL
    roof = cavity & downward & (rise_mm > _ROOF_ABOVE_MM)
    axial = cavity & ~roof & (rise_mm > ABOVE_MARGIN_MM)
    return float(thickness[roof].min()), float(thickness[axial].min())
