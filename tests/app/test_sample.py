"""The sample case: a finished, convincing outcome that says it is invented."""

from __future__ import annotations

import numpy as np
import pytest

from stainmap.app.prediction import Prediction, predict_case
from stainmap.app.sample import make_sample, open_sample, sample_look
from stainmap.model.case import Case
from stainmap.model.material import Provenance
from stainmap.model.zone import OUTER_ZONES
from stainmap.paths import sample_case
from stainmap.planning.coat_limits import excesses


@pytest.fixture(scope="module")
def sample() -> Case:
    return open_sample()


@pytest.fixture(scope="module")
def prediction(sample: Case) -> Prediction:
    return predict_case(sample)


def test_every_zone_is_within_what_is_usually_accepted(prediction: Prediction) -> None:
    # dE00 1.8: 50:50 acceptability threshold of Paravina et al., J Esthet Restor Dent 2015.
    for zone in OUTER_ZONES:
        outcome = prediction.outcome.area(zone)
        assert outcome is not None
        assert outcome.delta_e_00 is not None
        assert outcome.delta_e_00 < 1.8, zone.label


def test_its_plan_keeps_the_limits_of_coats(sample: Case, prediction: Prediction) -> None:
    for outcome in prediction.outcome.areas:
        there: dict[str, float] = {}
        for entry in outcome.coats:
            there[entry.liquid] = there.get(entry.liquid, 0.0) + entry.coats[-1].high
        assert not excesses(outcome.area, there, sample.materials), outcome.label


def test_it_says_that_it_is_invented(sample: Case) -> None:
    assert "Invented" in sample.notes
    assert len(sample.plan.jars) <= 6
    assert sample.materials.block(sample.plan.block).provenance is Provenance.INVENTED
    assert sample.source.content == sample_case("lower_molar_36.stl").read_bytes()


def test_its_zones_are_those_that_are_proposed_today(sample: Case) -> None:
    made = make_sample(sample_case("lower_molar_36.stl"))
    assert made.plan == sample.plan
    assert made.surface.mesh.vertices.shape == sample.surface.mesh.vertices.shape
    sizes = sample.surface.mesh.vertex_areas
    same = sizes[made.zones == sample.zones].sum() / sizes.sum()
    assert same > 0.99


def test_the_colours_it_is_first_seen_in_are_the_predicted_ones(
    sample: Case, prediction: Prediction
) -> None:
    look = sample_look(sample)
    assert look is not None
    apart = np.abs(look.astype(int) - prediction.appearance.srgb.astype(int))
    assert np.percentile(apart, 99) <= 2
