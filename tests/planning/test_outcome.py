"""Outcome per area against sums done by hand."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import colour
import numpy as np
import pytest

from stainmap.model.case import Case
from stainmap.model.colour import SPHERE_WITH_GLOSS, Colour, Conversion, Measurement
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Accent, Zone
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import (
    Outcome,
    area_weights,
    coat_entries,
    inherited_text,
    judge,
    lights_by_area,
    plus_minus_text,
)
from stainmap.predict.appearance import AppearanceEngine
from stainmap.predict.colour_conversion import convert
from stainmap.predict.lights import OBSERVERS, SHOWN_LIGHTS
from stainmap.predict.parameter_spread import CrownState, Knowledge, ParameterPrior, lab_sd
from stainmap.predict.scene import Bands, scene_from_case
from stainmap.predict.shape import CrownShape, crown_shape
from tests.builders import dome_case


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case(40, 96)


@pytest.fixture(scope="module")
def layout(case: Case) -> CoatLayout:
    return CoatLayout(case.surface.mesh, case.reading.outer)


def painted(case: Case) -> np.ndarray:
    """Return one flat colour per zone, so that means are known."""
    lab = np.zeros((len(case.zones), 3), np.float32)
    lab[:] = (74.0, 1.0, 18.0)
    lab[case.zones == int(Zone.CUSP)] = (71.0, 0.5, 14.0)
    lab[case.zones == int(Zone.CERVICAL)] = (70.0, 2.0, 22.0)
    return lab


def test_areas_are_those_of_the_sphere(case: Case, layout: CoatLayout) -> None:
    # Archimedes: a zone of height h on a sphere of radius r has the area 2 pi r h.
    wall = np.ones(len(case.zones), np.float32)
    outcome = judge(case, layout, wall, painted(case))
    cusp, body = outcome.area(Zone.CUSP), outcome.area(Zone.BODY)
    assert cusp is not None
    assert body is not None
    # Labels are per vertex, so a border lies within half a ring (0.1 mm) of where it should.
    assert cusp.area_mm2 == pytest.approx(2 * np.pi * 5.0 * 1.0, rel=0.06)
    assert body.area_mm2 == pytest.approx(2 * np.pi * 5.0 * 2.5, rel=0.06)
    assert cusp.wall_mm == pytest.approx(1.0)


def test_offsets_and_differences_agree_with_the_colour_library(
    case: Case, layout: CoatLayout
) -> None:
    wall = np.ones(len(case.zones), np.float32)
    lab = painted(case)
    outcome = judge(case, layout, wall, lab)
    cusp = outcome.area(Zone.CUSP)
    assert cusp is not None
    assert case.target is not None
    wanted = case.target.wanted(Zone.CUSP)
    assert wanted is not None
    expected = colour.delta_E(np.array(cusp.predicted.lab), np.array(wanted.lab), method="CIE 2000")
    assert cusp.delta_e_00 == pytest.approx(float(expected), abs=1e-6)
    assert cusp.offset_from_body is not None
    assert cusp.offset_from_body[0] == pytest.approx(71.0 - 74.0, abs=0.2)
    assert cusp.offset_from_body[1] == pytest.approx(
        np.hypot(0.5, 14.0) - np.hypot(1.0, 18.0), abs=0.3
    )
    assert cusp.wanted_offset == pytest.approx((-3.0, -2.0))


def test_accents_are_left_out_of_the_zone_below(case: Case, layout: CoatLayout) -> None:
    lab = painted(case)
    share = case.accent(Accent.MARGIN_BAND)
    assert share is not None
    lab[share > 0.5] = (40.0, 0.0, 0.0)
    weights = area_weights(case, layout)
    mean = weights[Zone.CERVICAL] @ lab[:, 0] / weights[Zone.CERVICAL].sum()
    assert mean == pytest.approx(70.0, abs=0.1)


def test_a_zone_wholly_under_an_accent_still_counts(case: Case, layout: CoatLayout) -> None:
    covered = case.with_accent(
        Accent.MARGIN_BAND, (case.zones == int(Zone.CERVICAL)).astype(np.float32)
    )
    assert area_weights(covered, layout)[Zone.CERVICAL].sum() > 0.0


def test_an_accent_inherits_from_the_zones_below(case: Case) -> None:
    entries = coat_entries(case, Accent.MARGIN_BAND)
    assert [(e.step, e.inherited, e.coats) for e in entries] == [
        (1, True, (CoatSpan.exactly(3),)),
        (2, False, (CoatSpan(low=1, high=2),)),
    ]
    height = case.surface.mesh.vertices[:, 2]
    straddling = case.with_accent(
        Accent.LINE_ANGLE,
        (case.reading.outer & (height > 0.8) & (height < 2.6)).astype(np.float32),
    )
    assert inherited_text(straddling, Accent.LINE_ANGLE, 1) == "1/3"


def test_nothing_wanted_means_nothing_judged(case: Case, layout: CoatLayout) -> None:
    wall = np.ones(len(case.zones), np.float32)
    outcome = judge(replace(case, target=None), layout, wall, painted(case))
    assert all(one.delta_e_00 is None and one.wanted is None for one in outcome.areas)
    assert not outcome.calibrated


# ---- unlike colours


def wanting(case: Case, *conversions: Conversion, **how: Any) -> Case:
    """Return the case with the wanted body read in another way."""
    assert case.target is not None
    body = replace(case.target.body, measurement=replace(case.target.body.measurement, **how))
    return replace(case, target=replace(case.target, body=body, conversions=conversions))


@pytest.mark.parametrize(
    ("how", "said"),
    [
        ({"geometry": SPHERE_WITH_GLOSS}, "differ in geometry: d/8 SCI against 45/0"),
        ({"illuminant": "C"}, "differ in illuminant: C against D65"),
        ({"observer_degrees": 10}, "differ in observer: 10 degrees against 2 degrees"),
        ({"backing": "black"}, "differ in backing: 'black' against 'stump'"),
    ],
)
def test_an_unlike_wanted_colour_gives_a_sentence_and_no_number(
    case: Case, layout: CoatLayout, how: dict[str, Any], said: str
) -> None:
    wall = np.ones(len(case.zones), np.float32)
    outcome = judge(wanting(case, **how), layout, wall, painted(case))
    assert said in outcome.refused
    for area in (Zone.BODY, Zone.CUSP, Zone.CERVICAL):
        one = outcome.area(area)
        assert one is not None
        assert one.delta_e_00 is None
        assert one.wanted is not None
        assert one.wanted.measurement != one.predicted.measurement
        assert one.conversions == ()


def test_a_chosen_conversion_gives_a_number_with_its_name(case: Case, layout: CoatLayout) -> None:
    """The body is converted, offsets follow from it; the difference is the library's."""
    wall = np.ones(len(case.zones), np.float32)
    read = wanting(case, *Conversion, illuminant="C")
    outcome = judge(read, layout, wall, painted(case))
    cusp = outcome.area(Zone.CUSP)
    assert cusp is not None
    assert cusp.wanted is not None
    assert read.target is not None
    body = convert(read.target.body, Measurement(backing="stump"), tuple(Conversion)).colour
    assert cusp.wanted.lab == pytest.approx(body.shifted(-3.0, -2.0).lab)
    expected = colour.delta_E(
        np.array(cusp.predicted.lab), np.array(cusp.wanted.lab), method="CIE 2000"
    )
    assert cusp.delta_e_00 == pytest.approx(float(expected), abs=1e-6)
    assert [one.conversion for one in outcome.conversions] == [Conversion.ADAPTED_WHITE]
    assert "C to D65" in str(cusp.conversions[0])
    assert cusp.difference_sd == (0.1, 0.4, 0.3)
    assert outcome.refused == ""


# ---- how sure, and under which light


@pytest.fixture(scope="module")
def shape(case: Case) -> CrownShape:
    return crown_shape(case)


def state_of(case: Case, layout: CoatLayout, shape: CrownShape) -> CrownState:
    return CrownState(
        scene=scene_from_case(case),
        coats=layout.coats(case, "high"),
        wall_mm=shape.wall_mm,
        partner=shape.partner,
        inside=shape.inner,
    )


def test_every_area_has_its_own_uncertainty(
    case: Case, layout: CoatLayout, shape: CrownShape
) -> None:
    """Against the mean derivative of all of an area's vertices, not of a few of them."""
    state = state_of(case, layout, shape)
    doubt = np.full(len(case.zones), 0.7, np.float32)
    outcome = judge(case, layout, shape.wall_mm, painted(case), state=state, lightness_doubt=doubt)
    prior = ParameterPrior()
    for area, weight in area_weights(case, layout).items():
        one = outcome.area(area)
        assert one is not None
        assert one.parameters_sd is not None
        inside = np.flatnonzero(weight)
        J = np.average(state.jacobian(inside), axis=0, weights=weight[inside])
        np.testing.assert_allclose(one.parameters_sd, lab_sd(J, prior.covariance), atol=0.1)
        own = np.maximum(one.parameters_sd, (2.5, 1.3, 2.5))
        assert one.plus_minus == pytest.approx((np.hypot(own[0], 0.7), own[1], own[2]), abs=1e-6)
        assert one.lightness_doubt == pytest.approx(0.7)
    assert outcome.largest_plus_minus[0] == max(one.plus_minus[0] for one in outcome.areas)
    assert "20 to 35 %" in outcome.provenance


def test_calibration_narrows_but_never_below_its_floor(
    case: Case, layout: CoatLayout, shape: CrownShape
) -> None:
    known = Knowledge(
        covariance=np.zeros((6, 6)), discrepancy_sd=(0.1, 0.4, 0.1), provenance="coupons"
    )
    outcome = judge(
        case,
        layout,
        shape.wall_mm,
        painted(case),
        state=state_of(case, layout, shape),
        knowledge=known,
    )
    assert all(one.plus_minus == pytest.approx((0.3, 0.4, 0.3)) for one in outcome.areas)
    assert outcome.provenance == "coupons"


def test_the_prediction_says_for_which_light_it_is(
    case: Case, layout: CoatLayout, shape: CrownShape
) -> None:
    state = state_of(case, layout, shape)
    scene = scene_from_case(case, light="A", observer=10)
    outcome = judge(case, layout, shape.wall_mm, painted(case), state=replace(state, scene=scene))
    how = outcome.areas[0].predicted.measurement
    assert (how.illuminant, how.observer_degrees, how.backing) == ("A", 10, "stump")
    assert "differ in illuminant: D65 against A" in outcome.refused


@pytest.mark.parametrize("bands", ["screen", "full"])
def test_areas_under_every_light_are_those_predicted_for_it(
    case: Case, layout: CoatLayout, shape: CrownShape, bands: Bands
) -> None:
    """Against predicting the whole crown anew under that light, and averaging colours.

    A colour of a mean spectrum is not a mean of colours; on areas of one plan it is, to 0.1.
    """
    coats = layout.coats(case, "high")
    engine = AppearanceEngine(shape, scene_from_case(case, bands=bands))
    engine.whole(coats)
    found = lights_by_area(case, layout, engine)
    weights = area_weights(case, layout)
    assert set(found) == set(weights)
    for light, observer in (("D65", 2), ("A", 10), ("FL11", 2)):
        assert light in SHOWN_LIGHTS
        assert observer in OBSERVERS
        other = AppearanceEngine(shape, scene_from_case(case, light=light, observer=observer))
        lab = other.whole(coats).lab
        for area, weight in weights.items():
            mean = np.average(lab, axis=0, weights=weight)
            seen: Colour = found[area].colour(light, observer)
            np.testing.assert_allclose(seen.lab, mean, atol=0.1)


def test_without_areas_there_is_no_plus_minus_and_nothing_breaks() -> None:
    nothing = Outcome(areas=(), calibrated=False)
    assert plus_minus_text(nothing.areas) == ""
    assert nothing.largest_plus_minus == (0.0, 0.0, 0.0)


def test_plus_minus_goes_from_the_surest_area_to_the_least_sure(
    case: Case, layout: CoatLayout
) -> None:
    lab = np.tile(np.float32([70.0, 1.0, 18.0]), (case.surface.mesh.vertex_count, 1))
    wall = np.full(case.surface.mesh.vertex_count, 1.0, np.float32)
    first = judge(case, layout, wall, lab).areas[0]
    areas = [replace(first, plus_minus=(sd, 1.0, 2.0)) for sd in (3.2, 2.5, 2.0)]
    assert plus_minus_text(areas) == "±2.0 to 3.2 L*, ±1.0 a*, ±2.0 b*"
    assert plus_minus_text(areas[:1], "  ") == "±3.2 L*  ±1.0 a*  ±2.0 b*"
