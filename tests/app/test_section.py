"""A dome cut by planes: its wall is that between two spheres, and stain goes as deep as told."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stainmap.app import edits
from stainmap.app.prediction import Prediction, predict_case
from stainmap.app.section import (
    SectionWay,
    offset_of,
    section_at,
    section_range,
    stained_depth_mm,
)
from stainmap.model.zone import Zone
from tests.builders import INNER_RADIUS_MM, OUTER_RADIUS_MM, dome_case

WALL_MM = OUTER_RADIUS_MM - INNER_RADIUS_MM


@pytest.fixture(scope="module")
def predicted() -> Prediction:
    return predict_case(dome_case())


def test_through_the_middle_two_half_circles_are_seen(predicted: Prediction) -> None:
    section = section_at(predicted, SectionWay.ACROSS, 0.0)
    radius = np.linalg.norm(section.ends, axis=2)
    assert radius[section.outer] == pytest.approx(OUTER_RADIUS_MM, abs=0.06)
    inside = ~section.outer & (section.ends[..., 1].min(axis=1) > 0.2)
    assert radius[inside] == pytest.approx(INNER_RADIUS_MM, abs=0.06)
    assert section.words == ("lingual", "buccal", "occlusal")
    # One body: one outline around it.
    assert len(section.outlines) == 1
    outline = section.outlines[0]
    x, y = outline.T
    area = 0.5 * abs(np.sum(x[:-1] * y[1:] - x[1:] * y[:-1]) + x[-1] * y[0] - x[0] * y[-1])
    assert area == pytest.approx(0.5 * np.pi * (OUTER_RADIUS_MM**2 - INNER_RADIUS_MM**2), rel=0.03)


def test_the_wall_is_that_between_the_spheres(predicted: Prediction) -> None:
    section = section_at(predicted, SectionWay.ALONG, 0.3)
    high = section.outer & (section.ends[..., 1].min(axis=1) > 1.5)
    assert section.wall_mm[high] == pytest.approx(WALL_MM, abs=0.05)
    assert section.thinnest is not None
    assert section.wall_mm[section.thinnest].mean() <= WALL_MM + 0.05
    assert section.minimum_mm == 0.5
    assert section.words[0] == "distal"
    assert section.words[1] == "mesial"


def test_inward_points_into_the_ceramic(predicted: Prediction) -> None:
    section = section_at(predicted, SectionWay.ACROSS, 0.0)
    deeper = np.linalg.norm(section.ends + 0.1 * section.inward, axis=2)
    high = section.ends[..., 1].min(axis=1) > 1.0
    radius = np.linalg.norm(section.ends, axis=2)
    assert (deeper < radius)[section.outer & high].all()
    assert (deeper > radius)[~section.outer & high].all()


def test_stain_goes_as_deep_as_the_process_says_where_there_are_coats(
    predicted: Prediction,
) -> None:
    case = predicted.case
    depth = stained_depth_mm(predicted)
    process = case.process
    coats = predicted.coats.sum(axis=0)
    # The wall of 1 mm has room for both depths.
    assert process.outer_depth_mm + process.inner_depth_mm < WALL_MM
    body = (case.zones == int(Zone.BODY)) & (coats > 0.5)
    assert depth[body] == pytest.approx(process.outer_depth_mm, rel=1e-4)
    inner = (case.zones == int(Zone.INNER)) & (case.surface.mesh.vertices[:, 2] > 1.0)
    assert depth[inner] == pytest.approx(process.inner_depth_mm, rel=1e-4)
    # The cusp has no coats of its own; its top is far from any border.
    top = case.reading.outer & (case.surface.mesh.vertices[:, 2] > 4.8)
    assert top.any()
    assert (depth[top] == 0.0).all()


def test_what_is_ground_away_is_no_longer_stained(predicted: Prediction) -> None:
    ground = predict_case(edits.with_ground(predicted.case, None, 0.1), previous=predicted)
    before, after = stained_depth_mm(predicted), stained_depth_mm(ground)
    body = (predicted.case.zones == int(Zone.BODY)) & (before > 0.0)
    assert after[body] == pytest.approx(before[body] - 0.1, abs=1e-4)
    bare = predict_case(
        replace(predicted.case, plan=replace(predicted.case.plan, steps=())), previous=predicted
    )
    assert not stained_depth_mm(bare).any()


def test_planes_reach_from_end_to_end(predicted: Prediction) -> None:
    for way in SectionWay:
        low, high = section_range(predicted, way)
        assert low < high
        assert not len(section_at(predicted, way, high + 1.0).ends)
        nearest = section_at(predicted, way, 0.5 * (low + high)).nearest(np.zeros(2))
        assert nearest is not None
    vertex = int(predicted.case.surface.mesh.vertices[:, 0].argmax())
    point = predicted.case.surface.mesh.vertices[vertex]
    offset = offset_of(predicted, SectionWay.ACROSS, point)
    assert abs(offset) == pytest.approx(OUTER_RADIUS_MM, abs=0.01)
