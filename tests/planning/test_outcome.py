"""Outcome per area against sums done by hand."""

from __future__ import annotations

from dataclasses import replace

import colour
import numpy as np
import pytest

from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.zone import Accent, Zone
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import area_weights, coat_entries, inherited_text, judge
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
