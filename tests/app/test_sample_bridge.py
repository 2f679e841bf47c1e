"""The sample bridge: three units, each planned; it says it is invented."""

from __future__ import annotations

import numpy as np
import pytest

from stainmap.app.prediction import Prediction, predict_case
from stainmap.app.sample_bridge import SAMPLE_BRIDGE, make_sample_bridge
from stainmap.files.case_file import read_case, read_look
from stainmap.model.case import Case, Region
from stainmap.model.crown import BodyKind
from stainmap.model.material import Provenance
from stainmap.model.tooth import Role
from stainmap.model.zone import OUTER_ZONES, Accent
from stainmap.paths import sample_case
from stainmap.planning.coat_limits import excesses


@pytest.fixture(scope="module")
def bridge() -> Case:
    return read_case(sample_case(f"{SAMPLE_BRIDGE}.stainmap"))


@pytest.fixture(scope="module")
def prediction(bridge: Case) -> Prediction:
    return predict_case(bridge)


def test_it_is_a_bridge_of_two_retainers_and_a_pontic(bridge: Case) -> None:
    assert bridge.reading.kind is BodyKind.BRIDGE
    assert [unit.tooth.number for unit in bridge.units] == [14, 15, 16]
    assert [unit.role for unit in bridge.units] == [Role.RETAINER, Role.PONTIC, Role.RETAINER]
    assert set(np.unique(bridge.reading.unit_index)) == {0, 1, 2}
    assert {backing.region for backing in bridge.backings} >= {Region.STUMP, Region.PONTIC}
    accents = {mask.accent for mask in bridge.accents if (mask.share > 0.5).any()}
    assert accents >= {Accent.CONNECTOR, Accent.PONTIC_TISSUE, Accent.MARGIN_BAND}
    # Sections as made, across the span (sample_cases/README.md); a tilted plane may cut less.
    np.testing.assert_allclose(sorted(bridge.reading.connectors_mm2), (8.9, 9.6), atol=0.6)


def test_every_zone_is_within_what_is_usually_accepted(prediction: Prediction) -> None:
    # dE00 1.8: 50:50 acceptability threshold of Paravina et al., J Esthet Restor Dent 2015.
    for zone in OUTER_ZONES:
        outcome = prediction.outcome.area(zone)
        assert outcome is not None
        assert outcome.delta_e_00 is not None
        assert outcome.delta_e_00 < 1.8, zone.label


def test_its_plan_keeps_the_limits_of_coats(bridge: Case, prediction: Prediction) -> None:
    for outcome in prediction.outcome.areas:
        there: dict[str, float] = {}
        for entry in outcome.coats:
            there[entry.liquid] = there.get(entry.liquid, 0.0) + entry.coats[-1].high
        assert not excesses(outcome.area, there, bridge.materials), outcome.label


def test_it_says_that_it_is_invented(bridge: Case) -> None:
    assert "Invented" in bridge.notes
    assert bridge.materials.block(bridge.plan.block).provenance is Provenance.INVENTED
    assert bridge.source.content == sample_case(f"{SAMPLE_BRIDGE}.stl").read_bytes()


def test_its_zones_are_those_that_are_proposed_today(bridge: Case) -> None:
    made = make_sample_bridge(sample_case(f"{SAMPLE_BRIDGE}.stl"))
    assert made.plan == bridge.plan
    assert made.surface.mesh.vertices.shape == bridge.surface.mesh.vertices.shape
    sizes = bridge.surface.mesh.vertex_areas
    assert sizes[made.zones == bridge.zones].sum() / sizes.sum() > 0.99


def test_the_colours_it_is_first_seen_in_are_the_predicted_ones(
    bridge: Case, prediction: Prediction
) -> None:
    assert sample_case(f"{SAMPLE_BRIDGE}.stainmap").stat().st_size < 8_000_000
    look = read_look(sample_case(f"{SAMPLE_BRIDGE}.stainmap"), bridge)
    assert look is not None
    apart = np.abs(look.astype(int) - prediction.appearance.srgb.astype(int))
    assert np.percentile(apart, 99) <= 2
