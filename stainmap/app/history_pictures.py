"""Small pictures of a case as it was after every step of its history."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.app.compare import on_surface_of
from stainmap.app.pictures import picture_camera, plain_light
from stainmap.app.prediction import Prediction, predict_case
from stainmap.model.case import Case
from stainmap.optics.colorimetry import decode_srgb
from stainmap.paper.raster import rasterise
from stainmap.paper.shading import Lighting, ShadingFields, develop, light_frame, shade
from stainmap.surface.mesh import TriMesh

Bytes = NDArray[np.uint8]


class SmallPictures:
    """Draws one crown in any colours; where things lie is worked out once for a surface.

    For one thread at a time.

    Parameters
    ----------
    width, height
        Size of the pictures, pixels.
    """

    def __init__(self, width: int, height: int) -> None:
        self._size = (width, height)
        self._lit: tuple[TriMesh, bool, Lighting] | None = None

    def picture(self, case: Case, srgb: Bytes, shading: ShadingFields | None = None) -> Bytes:
        """Return the crown of a case in the colours (V, 3), as (height, width, 3).

        `shading` is that of its surface, if it has been worked out.
        """
        lighting = self._lighting(case, shading)
        linear = decode_srgb(srgb / 255.0)
        return develop(lighting.frame, shade(lighting, linear))

    def _lighting(self, case: Case, shading: ShadingFields | None) -> Lighting:
        mesh = case.surface.mesh
        lit = self._lit
        if lit is not None and lit[0] is mesh and lit[1] == (shading is not None):
            return lit[2]
        width, height = self._size
        frame = rasterise(
            mesh.vertices, mesh.faces, picture_camera(case, width, height), width, height
        )
        fields = plain_light(mesh) if shading is None else shading
        lighting = light_frame(frame, fields, occlusal=case.reading.occlusal_axis)
        self._lit = (mesh, shading is not None, lighting)
        return lighting


def colours_beside(here: Prediction, case: Case) -> Bytes:
    """Return the predicted colours (V, 3) of another state of a case; `here` is left alone."""
    found = predict_case(on_surface_of(case, here.case), previous=here, seen=here.seen, apart=True)
    return found.appearance.srgb
