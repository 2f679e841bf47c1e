"""Flat views at a brush's pace: what a dab costs on all six together, and laying a crown flat.

How times are taken: `measuring`. Figures are in the report (``record_property``).
"""

from __future__ import annotations

import time
from collections.abc import Callable

import numpy as np
import pytest

from stainmap.model.case import Case
from stainmap.planning.flat_views import flat_unit
from stainmap.ui.crown_buffers import plain_shading
from stainmap.ui.crown_picture import Look, SeenValues
from stainmap.ui.flat_colours import coloured
from stainmap.ui.flat_picture import FlatPicture, flat_sheet, side_sheet
from tests.benchmarks.measuring import milliseconds
from tests.builders import dome_case

pytestmark = pytest.mark.benchmark

FRAME_MS = 33.0


@pytest.fixture(scope="module")
def large() -> Case:
    """Return a dome of 100,000 vertices."""
    case = dome_case(129, 387)
    assert case.surface.mesh.vertex_count > 99_000
    return case


@pytest.mark.parametrize("look", [look for look in Look if look is not Look.ROW])
def test_six_flat_views_follow_a_dab(
    large: Case, look: Look, record_property: Callable[[str, object], None]
) -> None:
    """Rosette and five sides as in the window, 2 mm around the brush: less than a frame."""
    case = large
    mesh = case.surface.mesh
    count = mesh.vertex_count
    start = time.perf_counter()
    parts = flat_unit(mesh, case.reading, case.units, 0)
    record_property("lay_flat_s", round(time.perf_counter() - start, 2))
    pictures = [FlatPicture(mesh, flat_sheet(parts), 196, 196)]
    for first, second in ((0, 1), (0, 2), (1, 2), (2, 1), (2, 0)):
        axes = np.eye(3)[[first, second]]
        axes = np.vstack([axes, np.cross(*axes)])
        sheet = side_sheet(mesh, np.ones(mesh.face_count, bool), axes)
        pictures.append(FlatPicture(mesh, sheet, 124, 196))
    values = SeenValues(
        look=look,
        shading=True,
        srgb=np.full((count, 3), 170, np.uint8),
        zones=np.eye(7, dtype=np.float32)[case.zones][:, 1:],
        accents=np.zeros((count, 7), np.float32),
        coats=np.ones(count, np.float32),
        fields=plain_shading(mesh),
        rows=np.eye(3),
    )
    assert values.fields is not None
    lights = [one.light(values.fields, np.array([0.0, 0.0, 1.0]), chalk=False) for one in pictures]
    middle = parts[0].vertices[int(np.linalg.norm(parts[0].points, axis=1).argmin())]
    away = np.linalg.norm(mesh.vertices - mesh.vertices[middle], axis=1)
    near = np.flatnonzero(away < 2.0).astype(np.int32)

    def follow() -> None:
        for picture, light in zip(pictures, lights, strict=True):
            box = picture.box_of(near)
            if box is not None:
                coloured(picture, light, values, box)

    spent = milliseconds(follow, 0.75 * FRAME_MS)
    record_property("six_views_ms", round(spent, 2))
    assert spent < 0.75 * FRAME_MS
