"""Looks that stand for a figure, on a dome of known wall and against a constructed target."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stainmap.app import edits
from stainmap.app.looks import ground_look, offsets_of, value_srgb, walls_of
from stainmap.app.prediction import Prediction, predict_case
from stainmap.model.colour import Colour
from stainmap.model.zone import Zone
from stainmap.planning.look_colours import NEUTRAL
from tests.builders import INNER_RADIUS_MM, OUTER_RADIUS_MM, dome_case


@pytest.fixture(scope="module")
def predicted() -> Prediction:
    return predict_case(dome_case())


def test_the_wall_of_a_dome_is_that_between_its_spheres(predicted: Prediction) -> None:
    walls = walls_of(predicted)
    outer = predicted.case.reading.outer & (predicted.case.surface.mesh.vertices[:, 2] > 1.0)
    true_mm = OUTER_RADIUS_MM - INNER_RADIUS_MM
    assert walls.wall_mm[outer] == pytest.approx(true_mm, abs=0.03)
    assert walls.minimum_mm == 0.5
    assert not walls.assumed
    blue = walls.srgb()[outer].astype(int)
    assert (blue[:, 2] > blue[:, 0]).all()


def test_the_wall_is_judged_after_grinding(predicted: Prediction) -> None:
    """1 mm less 0.3 mm is below what a block of 0.8 mm allows: orange."""
    case = edits.with_ground(predicted.case, None, 0.3)
    walls = walls_of(predict_case(case, previous=predicted))
    outer = case.reading.outer & (case.surface.mesh.vertices[:, 2] > 1.0)
    assert walls.wall_mm[outer] == pytest.approx(0.7, abs=0.03)
    thick = replace(walls, minimum_mm=0.8)
    orange = thick.srgb()[outer].astype(int)
    assert (orange[:, 0] > orange[:, 2] + 40).all()


def test_a_target_that_is_the_prediction_is_met(predicted: Prediction) -> None:
    """Wanted is made from the prediction at one vertex: there the offset is nothing."""
    case = predicted.case
    height = case.surface.mesh.vertices[:, 2]
    body = np.flatnonzero(case.reading.outer & (np.abs(height - 2.8) < 0.2))
    vertex = int(body[0])
    target = case.target
    assert target is not None
    light, a, b = (float(v) for v in predicted.appearance.lab[vertex])
    met = Colour(lightness=light, a=a, b=b, measurement=target.body.measurement)
    case = replace(case, target=replace(target, body=met, offsets=()))
    offsets = offsets_of(predict_case(case, previous=predicted))
    assert offsets.de00[vertex] < 0.02
    # The dome is round: all of the belt looks alike.
    assert offsets.de00[body].max() < 0.3
    # Nothing is wanted of cap and inside.
    deep = ~case.reading.outer
    assert np.isnan(offsets.de00[deep]).all()
    assert (offsets.srgb()[deep] == NEUTRAL).all()
    assert np.isnan(offsets.de00[case.reading.outer & (height > 4.8)]).all()
    lab = predicted.appearance.lab[body]
    assert np.array_equal(offsets.srgb_at(body.astype(np.int32), lab), offsets.srgb()[body])


def test_no_target_no_offset(predicted: Prediction) -> None:
    case = replace(predicted.case, target=None)
    offsets = offsets_of(predict_case(case, previous=predicted))
    assert np.isnan(offsets.de00).all()
    assert offsets.refused == ""


def test_value_follows_lightness_alone(predicted: Prediction) -> None:
    lab = predicted.appearance.lab.copy()
    srgb = value_srgb(lab)
    lab[:, 1:] = 0.0
    assert np.array_equal(value_srgb(lab), srgb)


def test_ground_is_what_the_case_would_show_if_it_were_ground(predicted: Prediction) -> None:
    before = predicted.case
    for depth in (0.1, 0.3):
        ground = ground_look(predicted, depth)
        truly = predict_case(edits.with_ground(before, None, depth), previous=predicted)
        assert np.array_equal(ground.srgb, truly.appearance.srgb)
    assert predicted.case is before
    assert not before.after_sintering.ground
    stained = before.zones == int(Zone.CERVICAL)
    # Stain is graded with depth: what grinding bares is paler.
    assert ground.lab[stained, 0].mean() > predicted.appearance.lab[stained, 0].mean() + 0.5


def test_what_is_ground_deeper_already_stays_so(predicted: Prediction) -> None:
    case = edits.with_ground(predicted.case, None, 0.3)
    deep = predict_case(case, previous=predicted)
    assert np.array_equal(ground_look(deep, 0.1).srgb, deep.appearance.srgb)
