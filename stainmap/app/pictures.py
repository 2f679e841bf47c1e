"""Pictures of a prediction, drawn without a window."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.app.prediction import Prediction
from stainmap.model.case import Case
from stainmap.paper.pictures import crown_picture, png_bytes
from stainmap.paper.raster import Camera, rasterise
from stainmap.paper.shading import ShadingFields, shading_fields
from stainmap.paper.views import CrownDirections
from stainmap.surface.mesh import TriMesh

# How far the crown is looked at from for a picture of its own: speaking distance is further, but
# at 120 mm the near cusps come forward as they do in a hand.
DISTANCE_MM = 120.0
_BORDER = 1.12


def picture_camera(case: Case, width: int, height: int) -> Camera:
    """Return a camera that sees the crown obliquely from above and buccally, wholly in frame."""
    directions = CrownDirections.of(case.reading, case.units[0].tooth)
    eye = 0.9 * directions.occlusal + 1.0 * directions.buccal + 0.28 * directions.mesial
    low, high = case.surface.mesh.bounds
    centre = 0.5 * (low + high)
    camera = Camera(
        eye=_triple(eye),
        up=_triple(directions.occlusal),
        centre=_triple(centre),
        height_mm=1.0,
        distance_mm=DISTANCE_MM,
    )
    spread = np.abs((case.surface.mesh.vertices - centre) @ camera.axes.T).max(axis=0)
    tall = 2.0 * _BORDER * max(float(spread[1]), float(spread[0]) * height / width)
    return Camera(
        eye=camera.eye, up=camera.up, centre=camera.centre, height_mm=tall, distance_mm=DISTANCE_MM
    )


def crown_png(
    prediction: Prediction,
    *,
    width: int = 1200,
    height: int = 1000,
    shading: ShadingFields | None = None,
) -> bytes:
    """Return the sintered look as PNG.

    Parameters
    ----------
    shading
        Of the case's surface; computed here if None, which takes seconds.
    """
    if shading is None:
        shading = shading_fields(prediction.shape.operator)
    mesh = prediction.case.surface.mesh
    frame = rasterise(
        mesh.vertices, mesh.faces, picture_camera(prediction.case, width, height), width, height
    )
    picture = crown_picture(
        frame,
        prediction.appearance.srgb,
        shading=shading,
        occlusal=prediction.case.reading.occlusal_axis,
    )
    return png_bytes(picture)


def preview_png(prediction: Prediction) -> bytes:
    """Return a small picture for the case file, without the slow occlusion."""
    plain = plain_light(prediction.case.surface.mesh)
    return crown_png(prediction, width=320, height=260, shading=plain)


def plain_light(mesh: TriMesh) -> ShadingFields:
    """Return what light needs to know of a surface, as long as its grooves are not looked into."""
    normals = mesh.vertex_normals.astype(np.float32)
    return ShadingFields(
        normals=normals,
        normals_red=normals,
        normals_green=normals,
        normals_blue=normals,
        openness=np.ones(len(normals), np.float32),
    )


def _triple(vector: NDArray[np.float64]) -> tuple[float, float, float]:
    return (float(vector[0]), float(vector[1]), float(vector[2]))
