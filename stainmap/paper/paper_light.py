"""What the quiet relief of a map on paper needs of a surface, cheaper than the light on screen."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

import numpy as np

from stainmap.paper.occlusion import ambient_occlusion
from stainmap.paper.shading import ShadingFields
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh, frozen
from stainmap.surface.thinning import Thinned

# On paper the relief is a tenth of the tone: fewer directions, smoothed further, are enough.
_DIRECTIONS: Final = 12
_MAP_SIDE: Final = 140
_OCCLUSION_MM: Final = 0.3
_NORMALS_MM: Final = 0.12
# Tones of a print are good to a hundredth, borders to a thousandth of the width of a zone.
_RESIDUAL: Final = 1e-4


def paper_operator(mesh: TriMesh) -> SurfaceOperator:
    """Return an operator that smooths a few fields once, without factoring anything."""
    return SurfaceOperator(mesh, iteration_from=0, residual=_RESIDUAL)


def paper_shading(
    operator: SurfaceOperator,
    coarse: Thinned | None = None,
    *,
    progress: Callable[[float, str], None] | None = None,
) -> ShadingFields:
    """Return normals, smoothed alike for all colours, and a rough occlusion.

    What hides the sky is looked for on a `coarse` copy of the operator's mesh if there is one.
    """
    mesh = operator.mesh
    hiding = mesh if coarse is None else coarse.mesh
    open_share = ambient_occlusion(
        hiding, directions=_DIRECTIONS, map_side=_MAP_SIDE, progress=progress
    )
    if coarse is not None:
        open_share = coarse.back(open_share.astype(np.float64)).astype(np.float32)
    openness = operator.smooth(open_share, _OCCLUSION_MM)
    smooth = operator.smooth(mesh.vertex_normals, _NORMALS_MM)
    length = np.linalg.norm(smooth, axis=1, keepdims=True)
    normals = frozen((smooth / np.maximum(length, 1e-12)).astype(np.float32))
    return ShadingFields(
        normals=normals,
        normals_red=normals,
        normals_green=normals,
        normals_blue=normals,
        openness=frozen(np.clip(openness, 0.0, 1.0).astype(np.float32)),
    )
