"""Advice on walls, connectors, stump and programme: what triggers it, and what just does not."""

from __future__ import annotations

from dataclasses import replace

import colour
import numpy as np
import pytest

from stainmap.model.case import Case
from stainmap.model.finishing import AfterSintering, Grinding
from stainmap.model.intake import Intake
from stainmap.model.zone import Zone
from stainmap.planning.advice import advise
from stainmap.planning.advice_value import Severity
from stainmap.planning.advice_walls import (
    connectors,
    draft,
    fast_programme,
    stump_shines_through,
    thin_walls,
)
from stainmap.predict.reference import reference_lab
from stainmap.predict.scene import build_scene
from tests.planning.advice_grounds import base_case, ground_of, painted, with_units


@pytest.fixture(scope="module")
def case() -> Case:
    return base_case()


def height(case: Case) -> np.ndarray:
    return np.asarray(case.surface.mesh.vertices[:, 2])


# --- walls -------------------------------------------------------------------------------


def test_a_thin_cap_is_as_large_as_archimedes_says(case: Case) -> None:
    # The wall passes 0.5 mm, the block's least, at the height 4.5 mm: a cap 0.5 mm high on r = 5.
    wall = 0.5 + 0.2 * (4.5 - height(case))
    (found,) = thin_walls(ground_of(case, wall_mm=wall))
    assert found.figure == pytest.approx(2 * np.pi * 5.0 * 0.5, rel=0.01)
    assert found.severity is Severity.SETTLE
    assert found.sentence == "15.7 mm² of wall are below 0.50 mm (thinnest 0.40 mm)."
    assert "1 mm above the margin" in found.detail
    assert "from memory" in found.detail
    place = found.place
    assert place is not None
    assert set(place.vertices) == set(
        np.flatnonzero(case.reading.outer & (wall.astype(np.float32) < 0.5))
    )
    # The middle of the cap is the pole, seen from above.
    assert place.point_mm == pytest.approx((0.0, 0.0, 5.0), abs=0.3)
    assert place.toward_eye == pytest.approx((0.0, 0.0, 1.0), abs=0.1)


def test_walls_at_the_minimum_are_not_thin(case: Case) -> None:
    assert not list(thin_walls(ground_of(case, wall_mm=0.5)))


def test_a_speck_is_no_thin_wall(case: Case) -> None:
    wall = np.full(len(case.zones), 0.8)
    wall[0] = 0.49
    assert not list(thin_walls(ground_of(case, wall_mm=wall)))


def test_the_last_millimetre_above_the_margin_is_left_out(case: Case) -> None:
    # One millimetre along the sphere from the rim ends at the height 5 sin(0.2) = 0.993 mm.
    low = np.where(height(case) < 0.9, 0.3, 1.5)
    assert not list(thin_walls(ground_of(case, wall_mm=low)))
    wall = 0.5 + 0.2 * (height(case) - 2.5)
    (found,) = thin_walls(ground_of(case, wall_mm=wall))
    # Rings of the dome are 0.196 mm apart: the sixth is the first one beyond.
    sixth = 5.0 * np.sin(6 * np.pi / 80)
    assert found.figure == pytest.approx(2 * np.pi * 5.0 * (2.5 - sixth), rel=0.005)


def test_what_is_ground_away_is_said(case: Case) -> None:
    ground_off = AfterSintering(ground=(Grinding(depth_mm=0.2),))
    wall = 0.5 + 0.2 * (4.5 - height(case))
    (found,) = thin_walls(ground_of(replace(case, after_sintering=ground_off), wall_mm=wall))
    assert "below 0.50 mm after grinding" in found.sentence


def test_a_guessed_wall_is_not_judged(case: Case) -> None:
    ground = ground_of(case, wall_mm=0.3, assumed_wall=True)
    assert not list(thin_walls(ground))
    assert not list(stump_shines_through(ground))


def test_each_unit_of_a_bridge_is_named(case: Case) -> None:
    bridge = with_units(case, 15, 14)
    wall = np.where(case.surface.mesh.vertices[:, 0] > 0.5, 0.4, 1.5)
    (found,) = thin_walls(ground_of(bridge, wall_mm=wall))
    assert "of 14" in found.sentence
    assert found.unit == 1


# --- connectors --------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("teeth", "pontics", "limit"),
    [
        ((12, 11), (), 7.0),
        ((13, 12), (12,), 7.0),
        ((14, 13), (), 9.0),
        ((16, 15), (), 9.0),
        ((11, 21), (), 7.0),
    ],
)
def test_connectors_by_place(
    case: Case, teeth: tuple[int, ...], pontics: tuple[int, ...], limit: float
) -> None:
    bridge = with_units(case, *teeth, pontics=pontics)
    small = replace(bridge, reading=replace(bridge.reading, connectors_mm2=(limit - 0.1,)))
    (found,) = connectors(ground_of(small))
    assert found.limit is not None
    assert found.limit.value == limit
    assert found.limit.mark == "from memory"
    assert found.place is not None
    # The units part at x = 0.
    assert abs(found.place.point_mm[0]) < 0.5
    enough = replace(bridge, reading=replace(bridge.reading, connectors_mm2=(limit,)))
    assert not list(connectors(ground_of(enough)))


def test_connectors_beside_two_pontics_are_held_to_twelve(case: Case) -> None:
    bridge = with_units(case, 16, 15, 14, 13, pontics=(15, 14))
    sections = (11.9, 12.0, 11.9)
    bridge = replace(bridge, reading=replace(bridge.reading, connectors_mm2=sections))
    first, last = connectors(ground_of(bridge))
    assert first.sentence.startswith("Connector 16\N{EN DASH}15: 11.9 mm²; 12 mm²")
    assert last.sentence.startswith("Connector 14\N{EN DASH}13")


def test_a_single_pontic_is_no_long_span(case: Case) -> None:
    bridge = with_units(case, 16, 15, 14, pontics=(15,))
    bridge = replace(bridge, reading=replace(bridge.reading, connectors_mm2=(9.0, 9.0)))
    assert not list(connectors(ground_of(bridge)))


# --- stump -------------------------------------------------------------------------------


def over(case: Case, stump: str) -> Case:
    return replace(case, backings=(replace(case.backings[0], stump=stump),))


def test_a_metal_stump_shines_through_as_two_predictions_say(case: Case) -> None:
    metal = over(case, "metal")
    (found,) = stump_shines_through(ground_of(metal, wall_mm=0.8))
    labs = [
        reference_lab(
            build_scene(one.materials, one.plan, programme="slow", backings=one.backings),
            np.zeros((0, 1)),
            [0.8],
        )[0]
        for one in (case, metal)
    ]
    expected = float(colour.delta_E(*labs, method="CIE 2000"))
    assert expected > 1.8
    assert found.figure == pytest.approx(expected, abs=0.02)
    assert ("darker" in found.sentence) == (labs[1][0] < labs[0][0])
    assert "metal" in found.sentence
    assert "published" in found.detail


def test_thick_walls_hide_the_stump_and_the_usual_one_is_no_matter(case: Case) -> None:
    assert not list(stump_shines_through(ground_of(over(case, "metal"), wall_mm=3.5)))
    assert not list(stump_shines_through(ground_of(case, wall_mm=0.5)))


def test_a_stump_not_named_under_a_thin_wall_makes_a_draft(case: Case) -> None:
    (found,) = draft(ground_of(case, wall_mm=0.95))
    assert found.severity is Severity.SETTLE
    assert found.sentence.startswith("Draft: ")
    assert found.place is not None
    (found,) = draft(ground_of(case, wall_mm=1.05))
    assert found.severity is Severity.NOTE
    assert found.place is None
    known = replace(case, intake=Intake(stump_known=True))
    assert not list(draft(ground_of(known, wall_mm=0.95)))


# --- programme ---------------------------------------------------------------------------


def test_fast_programmes_take_three_units_and_walls_of_two_and_a_half(case: Case) -> None:
    fast = replace(case, programme="fast")
    four = with_units(fast, 16, 15, 14, 13)
    (found,) = fast_programme(ground_of(four))
    assert (found.figure, found.rule) == (4.0, "fast programme, units")
    assert not list(fast_programme(ground_of(with_units(fast, 16, 15, 14))))
    assert not list(fast_programme(ground_of(replace(four, programme="standard"))))
    (found,) = fast_programme(ground_of(fast, wall_mm=2.6))
    assert found.rule == "fast programme, walls"
    assert found.figure == pytest.approx(2.6)
    assert not list(fast_programme(ground_of(fast, wall_mm=2.5)))


def test_what_is_to_be_settled_comes_first(case: Case) -> None:
    planned = painted(replace(case, programme="fast"), ("barley", Zone.BODY, 1))
    said = advise(ground_of(planned, wall_mm=0.4))
    order = [list(Severity).index(one.severity) for one in said]
    assert order == sorted(order)
    assert order[0] == 0
    assert order[-1] == 2
