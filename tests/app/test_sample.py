"""The sample cases: finished, convincing outcomes that say they are invented."""

from __future__ import annotations

from dataclasses import replace
from itertools import chain

import numpy as np
import pytest

from stainmap.app.kept_figures import figures_to_keep
from stainmap.app.prediction import Prediction, predict_case
from stainmap.app.sample import (
    SAMPLE_BRIDGE,
    SAMPLES,
    Sample,
    make_sample,
    open_sample,
    sample_look,
)
from stainmap.files.case_file import read_figures
from stainmap.model.case import Case, Region
from stainmap.model.crown import BodyKind
from stainmap.model.material import Provenance
from stainmap.model.tooth import Role
from stainmap.model.zone import OUTER_ZONES, Accent
from stainmap.paths import sample_case
from stainmap.planning.coat_limits import excesses
from stainmap.planning.figures_key import fits
from stainmap.predict.measured_shape import known_shape


@pytest.fixture(scope="module", params=SAMPLES, ids=lambda sample: sample.name)
def sample(request: pytest.FixtureRequest) -> Sample:
    return request.param


@pytest.fixture(scope="module")
def case(sample: Sample) -> Case:
    return open_sample(sample)


@pytest.fixture(scope="module")
def prediction(case: Case) -> Prediction:
    """Return what is predicted without anything that the file keeps."""
    return predict_case(replace(case, surface=replace(case.surface, measured=None)))


def test_every_zone_is_within_what_is_usually_accepted(prediction: Prediction) -> None:
    # dE00 1.8: 50:50 acceptability threshold of Paravina et al., J Esthet Restor Dent 2015.
    for zone in OUTER_ZONES:
        outcome = prediction.outcome.area(zone)
        assert outcome is not None
        assert outcome.delta_e_00 is not None
        assert outcome.delta_e_00 < 1.8, zone.label


def test_its_plan_keeps_the_limits_of_coats(case: Case, prediction: Prediction) -> None:
    for outcome in prediction.outcome.areas:
        there: dict[str, float] = {}
        for entry in outcome.coats:
            there[entry.liquid] = there.get(entry.liquid, 0.0) + entry.coats[-1].high
        assert not excesses(outcome.area, there, case.materials), outcome.label


def test_its_plan_leaves_no_place_bare(prediction: Prediction) -> None:
    assert not any("bare" in advice.sentence for advice in prediction.advice)


def test_it_says_that_it_is_invented(sample: Sample, case: Case) -> None:
    assert "Invented" in case.notes
    assert len(case.plan.jars) <= 6
    assert case.materials.block(case.plan.block).provenance is Provenance.INVENTED
    assert case.source.content == sample_case(f"{sample.name}.stl").read_bytes()
    assert sample_case(f"{sample.name}.stainmap").stat().st_size < 8_000_000


def test_its_zones_are_those_that_are_proposed_today(sample: Sample, case: Case) -> None:
    made = make_sample(sample_case(f"{sample.name}.stl"), sample)
    assert made.plan == case.plan
    assert made.surface.mesh.vertices.shape == case.surface.mesh.vertices.shape
    sizes = case.surface.mesh.vertex_areas
    same = sizes[made.zones == case.zones].sum() / sizes.sum()
    assert same > 0.99


def test_the_colours_it_is_first_seen_in_are_the_predicted_ones(
    sample: Sample, case: Case, prediction: Prediction
) -> None:
    look = sample_look(case, sample)
    assert look is not None
    apart = np.abs(look.astype(int) - prediction.appearance.srgb.astype(int))
    assert np.percentile(apart, 99) <= 2


def test_what_its_file_keeps_is_what_is_measured_and_predicted_today(
    sample: Sample, case: Case, prediction: Prediction
) -> None:
    """Nothing that was kept is used after the program has come to measure or predict otherwise.

    Where this fails, raise `_WAY` in `predict.measured_shape` or `planning.figures_key`, and make
    the sample cases anew.
    """
    kept, figures = known_shape(case), read_figures(sample_case(f"{sample.name}.stainmap"))
    assert kept is not None
    assert figures is not None
    assert fits(figures, case)
    shape = prediction.shape
    assert np.allclose(kept.wall_mm, shape.wall_mm, atol=1e-4)
    assert np.mean(kept.partner == shape.partner) > 0.999
    assert np.allclose(kept.curvature_per_mm, shape.curvature_per_mm, atol=1e-3)
    today = figures_to_keep(prediction)
    assert today is not None
    for one, other in zip(
        (*figures.whole, *chain(*figures.units)),
        (*today.whole, *chain(*today.units)),
        strict=True,
    ):
        assert one.area == other.area
        assert one.area_mm2 == pytest.approx(other.area_mm2)
        assert one.lab == pytest.approx(other.lab, abs=0.005)
        assert one.parameters_sd == pytest.approx(other.parameters_sd, abs=0.005)
        assert one.lightness_doubt == pytest.approx(other.lightness_doubt, abs=0.005)
        assert one.wall_mm == pytest.approx(other.wall_mm, abs=1e-3)


def test_the_bridge_has_two_retainers_and_a_pontic() -> None:
    bridge = open_sample(SAMPLE_BRIDGE)
    assert bridge.reading.kind is BodyKind.BRIDGE
    assert [unit.tooth.number for unit in bridge.units] == [14, 15, 16]
    assert [unit.role for unit in bridge.units] == [Role.RETAINER, Role.PONTIC, Role.RETAINER]
    assert set(np.unique(bridge.reading.unit_index)) == {0, 1, 2}
    assert {backing.region for backing in bridge.backings} >= {Region.STUMP, Region.PONTIC}
    accents = {mask.accent for mask in bridge.accents if (mask.share > 0.5).any()}
    assert accents >= {Accent.CONNECTOR, Accent.PONTIC_TISSUE, Accent.MARGIN_BAND}
    # Sections as made, across the span (sample_cases/README.md); a tilted plane may cut less.
    np.testing.assert_allclose(sorted(bridge.reading.connectors_mm2), (8.9, 9.6), atol=0.6)
