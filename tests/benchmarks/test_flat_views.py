"""Flat views at a brush's pace: what a dab costs on all six together, and laying a crown flat.

How times are taken: `measuring`. Figures are in the report (``record_property``).
"""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import pytest
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.paper.shading import ShadingFields
from stainmap.planning.flat_views import flat_unit
from stainmap.ui.crown_buffers import plain_shading
from stainmap.ui.crown_picture import Look, SeenValues
from stainmap.ui.flat_colours import coloured
from stainmap.ui.flat_picture import FlatLight, FlatPicture, flat_sheet, side_sheet
from tests.benchmarks.measuring import milliseconds
from tests.builders import dome_case

pytestmark = pytest.mark.benchmark

FRAME_MS = 33.0


@dataclass(frozen=True)
class Views:
    """Flat pictures with the light on each, how that falls, and vertices around the brush."""

    lit: list[tuple[FlatPicture, FlatLight]]
    fields: ShadingFields
    near: NDArray[np.int32]
    lay_flat_s: float


@pytest.fixture(scope="module")
def large() -> Case:
    """Return a dome of 100,000 vertices."""
    case = dome_case(129, 387)
    assert case.surface.mesh.vertex_count > 99_000
    return case


@pytest.fixture(scope="module")
def views(large: Case) -> Views:
    """Return rosette and five sides as in the window, and what lies 2 mm around the brush."""
    mesh = large.surface.mesh
    start = time.perf_counter()
    parts = flat_unit(mesh, large.reading, large.units, 0)
    lay_flat_s = time.perf_counter() - start
    pictures = [FlatPicture(mesh, flat_sheet(parts), 196, 196)]
    for first, second in ((0, 1), (0, 2), (1, 2), (2, 1), (2, 0)):
        axes = np.eye(3)[[first, second]]
        axes = np.vstack([axes, np.cross(*axes)])
        sheet = side_sheet(mesh, np.ones(mesh.face_count, bool), axes)
        pictures.append(FlatPicture(mesh, sheet, 124, 196))
    fields = plain_shading(mesh)
    lights = [one.light(fields, np.array([0.0, 0.0, 1.0]), chalk=False) for one in pictures]
    middle = parts[0].vertices[int(np.linalg.norm(parts[0].points, axis=1).argmin())]
    away = np.linalg.norm(mesh.vertices - mesh.vertices[middle], axis=1)
    near = np.flatnonzero(away < 2.0).astype(np.int32)
    return Views(list(zip(pictures, lights, strict=True)), fields, near, lay_flat_s)


@pytest.mark.parametrize("look", [look for look in Look if look is not Look.ROW])
def test_six_flat_views_follow_a_dab(
    large: Case, views: Views, look: Look, record_property: Callable[[str, object], None]
) -> None:
    """All six, 2 mm around the brush: less than a frame."""
    count = large.surface.mesh.vertex_count
    values = SeenValues(
        look=look,
        shading=True,
        srgb=np.full((count, 3), 170, np.uint8),
        zones=np.eye(7, dtype=np.float32)[large.zones][:, 1:],
        accents=np.zeros((count, 7), np.float32),
        coats=np.ones(count, np.float32),
        fields=views.fields,
        rows=np.eye(3),
    )

    def follow() -> None:
        for picture, light in views.lit:
            box = picture.box_of(views.near)
            if box is not None:
                coloured(picture, light, values, box)

    spent = milliseconds(follow, 0.75 * FRAME_MS)
    record_property("lay_flat_s", round(views.lay_flat_s, 2))
    record_property("six_views_ms", round(spent, 2))
    assert spent < 0.75 * FRAME_MS
