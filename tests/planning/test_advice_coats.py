"""Advice on coats and on what is missing: what triggers it, and what just does not."""

from __future__ import annotations

from dataclasses import replace

import colour
import numpy as np
import pytest

from stainmap.model.advice_limits import AdviceLimits
from stainmap.model.case import Case
from stainmap.model.colour import IN_PLACE, SPHERE_WITH_GLOSS, Colour, Measurement
from stainmap.model.intake import Intake, Neighbour, Shade, ShadeSource
from stainmap.model.material import Ion, IonBand, Liquid, Provenance
from stainmap.model.process import StainProcess, UptakeRule
from stainmap.model.target import Target
from stainmap.model.tooth import Tooth
from stainmap.model.zone import Zone
from stainmap.planning.advice_coats import (
    bare_ring,
    broad_fissure,
    cancelling,
    green_cusp,
    ground_contacts,
    more_than_taken_up,
    more_than_usual,
)
from stainmap.planning.advice_order import (
    missing_lots,
    missing_number,
    value_between_units,
    value_of_neighbours,
)
from stainmap.predict.reference import reference_lab
from tests.planning.advice_grounds import base_case, ground_of, painted, with_units


@pytest.fixture(scope="module")
def case() -> Case:
    return base_case()


# --- uptake ------------------------------------------------------------------------------


def test_the_sixth_coat_of_one_liquid_finds_less_than_a_third_of_the_room(case: Case) -> None:
    # Closed form: before coat n there is exp(-(n - 1) / n0) of the room; 0.3 is passed at n = 5.8.
    (found,) = more_than_taken_up(ground_of(painted(case, ("barley", Zone.BODY, 6))))
    assert found.figure == pytest.approx(np.exp(-5.0 / 4.0), rel=1e-9)
    assert found.area is Zone.BODY
    assert "barley adds 29 %" in found.sentence
    assert not list(more_than_taken_up(ground_of(painted(case, ("barley", Zone.BODY, 5)))))


def test_liquids_that_compete_fill_the_same_room(case: Case) -> None:
    both = painted(case, ("barley", Zone.BODY, 3), ("slate", Zone.BODY, 3))
    (found,) = more_than_taken_up(ground_of(both))
    assert "slate" in found.sentence
    apart = replace(both, process=StainProcess(uptake=UptakeRule(competition=0.0)))
    assert not list(more_than_taken_up(ground_of(apart)))


def test_more_coats_than_usual(case: Case) -> None:
    (found,) = more_than_usual(ground_of(painted(case, ("barley", Zone.BODY, 3))))
    assert found.sentence == "Body: 3 coats; usual: at most 2 coats of base."
    assert not list(more_than_usual(ground_of(painted(case, ("barley", Zone.BODY, 2)))))


# --- cancelling --------------------------------------------------------------------------


def test_a_cool_liquid_on_a_warm_one_cancels(case: Case) -> None:
    opposed = painted(case, ("amber", Zone.BODY, 1), ("slate", Zone.BODY, 3))
    ground = ground_of(opposed)
    (found,) = cancelling(ground)
    assert "amber and slate" in found.sentence
    # By hand: predictions of the plan without either, and the dot product of the two effects.
    amber, slate = ground.samples[Zone.BODY].coats
    coats = np.array([[amber, 0.0, amber], [slate, slate, 0.0]])
    both, cold, golden = reference_lab(ground.plain_scene, coats, [1.5, 1.5, 1.5])[:, 1:]
    warm, cool = both - cold, both - golden
    expected = -warm @ cool / max(warm @ warm, cool @ cool)
    assert found.figure == pytest.approx(expected, rel=1e-3)
    weaker = painted(case, ("amber", Zone.BODY, 2), ("slate", Zone.BODY, 1))
    assert not list(cancelling(ground_of(weaker)))
    assert not list(cancelling(ground_of(painted(case, ("barley", Zone.BODY, 1)))))


def test_nothing_is_said_where_both_are_needed_for_the_value(case: Case) -> None:
    opposed = painted(case, ("amber", Zone.BODY, 1), ("slate", Zone.BODY, 3))
    (said,) = cancelling(ground_of(opposed))
    assert said.figure is not None
    # The ground predicts L* 74 everywhere: exactly what is wanted here.
    way = Measurement(backing=IN_PLACE)
    met = Target(body=Colour(lightness=74.0, a=1.0, b=18.0, measurement=way), name="invented")
    assert not list(cancelling(ground_of(replace(opposed, target=met))))
    lighter = replace(met, body=Colour(lightness=80.0, a=1.0, b=18.0, measurement=way))
    assert list(cancelling(ground_of(replace(opposed, target=lighter))))


# --- bare ring ---------------------------------------------------------------------------


def ring_coats(case: Case, half_height_mm: float) -> np.ndarray:
    """Return one step's coats that fall linearly to 0 at the height 2.3 mm, 0.3 at the edges."""
    z = case.surface.mesh.vertices[:, 2]
    coats = 0.3 * np.abs(z - 2.3) / half_height_mm
    return np.asarray(np.minimum(coats, 2.0)[None, :])


def test_a_strip_without_coats_is_as_wide_as_the_sphere_makes_it(case: Case) -> None:
    plan = painted(case, ("barley", Zone.BODY, 1))
    (found,) = bare_ring(ground_of(plan, coats=ring_coats(case, 0.3)))
    arc = 5.0 * (np.arcsin(2.6 / 5.0) - np.arcsin(2.0 / 5.0))
    assert found.figure == pytest.approx(arc, rel=0.02)
    # Its middle line is 2 pi 5 cos(phi) long; the mean of both borders is that within 1 %.
    middle = 2 * np.pi * 5.0 * np.cos(np.arcsin(2.3 / 5.0))
    assert f"{middle:.0f} mm long" in found.sentence
    assert "in the body" in found.sentence
    assert found.place is not None
    assert abs(found.place.point_mm[2] - 2.3) < 0.35


def test_broad_bare_areas_and_whole_crowns_are_meant(case: Case) -> None:
    plan = painted(case, ("barley", Zone.BODY, 1))
    assert not list(bare_ring(ground_of(plan, coats=ring_coats(case, 0.6))))
    assert not list(bare_ring(ground_of(plan, coats=np.zeros((1, len(case.zones))))))
    assert not list(bare_ring(ground_of(plan, coats=np.ones((1, len(case.zones))))))


# --- fissure -----------------------------------------------------------------------------


def with_fissure(case: Case, half_width_mm: float) -> Case:
    x, y, z = case.surface.mesh.vertices.T
    groove = case.reading.outer & (np.abs(y) < half_width_mm) & (np.abs(x) < 3.0) & (z > 2.0)
    zones = np.where(groove, np.uint8(Zone.FISSURE), case.zones)
    return replace(case, zones=zones)


def test_a_painted_fissure_broader_than_a_stroke(case: Case) -> None:
    broad = painted(with_fissure(case, 1.0), ("umber", Zone.FISSURE, 1))
    (found,) = broad_fissure(ground_of(broad))
    # 5 x 2 asin(0.2); edges of the dome are 0.2 to 0.3 mm, and ways along them are too long.
    assert found.figure == pytest.approx(5.0 * 2.0 * np.arcsin(0.2), rel=0.15)
    assert found.place is not None
    assert abs(found.place.point_mm[1]) < 0.4
    narrow = painted(with_fissure(case, 0.55), ("umber", Zone.FISSURE, 1))
    assert not list(broad_fissure(ground_of(narrow)))
    assert not list(broad_fissure(ground_of(painted(broad, ("umber", Zone.BODY, 1)))))


# --- grinding, green ---------------------------------------------------------------------


def test_grinding_through_dark_coats_on_the_cusps_is_seen(case: Case) -> None:
    ground = ground_of(painted(case, ("umber", Zone.CUSP, 3)))
    (found,) = ground_contacts(ground)
    assert found.figure is not None
    assert found.figure > 1.8
    assert "lighter spots" in found.sentence
    assert found.place is not None
    assert found.place.point_mm[2] > 4.4
    assert not list(ground_contacts(ground_of(painted(case, ("flax", Zone.CUSP, 1)))))
    assert not list(ground_contacts(ground_of(case)))


def greenish(case: Case, amount: float) -> Case:
    """Return the case with a liquid that absorbs blue and red and so leaves green."""
    ion = Ion(
        name="G",
        bands=(
            IonBand(centre_nm=430.0, width_nm=40.0, strength=0.4),
            IonBand(centre_nm=640.0, width_nm=45.0, strength=1.0),
        ),
    )
    leaf = Liquid(
        name="leaf",
        purpose="lowers value",
        amplitudes_per_mm=(("G", amount),),
        provenance=Provenance.INVENTED,
    )
    materials = replace(
        case.materials,
        ions=(*case.materials.ions, ion),
        liquids=(*case.materials.liquids, leaf),
    )
    return painted(replace(case, materials=materials), ("leaf", Zone.CUSP, 2))


def test_a_cusp_that_turns_green(case: Case) -> None:
    ground = ground_of(greenish(case, 0.3))
    (found,) = green_cusp(ground)
    # The shift is that of two predictions of a flat wall with the cusp's mean coats.
    coats = ground.samples[Zone.CUSP].coats
    labs = reference_lab(ground.plain_scene, np.array([[coats[0], 0.0]]), [1.5, 1.5])
    assert found.figure == pytest.approx(labs[1, 1] - labs[0, 1], rel=1e-3)
    assert found.area is Zone.CUSP
    assert not list(green_cusp(ground_of(greenish(case, 0.01))))


def test_the_starter_liquids_that_cool_a_cusp_do_not_turn_it_green(case: Case) -> None:
    for liquid in ("slate", "ash"):
        assert not list(green_cusp(ground_of(painted(case, (liquid, Zone.CUSP, 2)))))


# --- value -------------------------------------------------------------------------------


def beside(case: Case, number: int, lightness: float, geometry: str = "45/0") -> Case:
    way = Measurement(backing=IN_PLACE, geometry=geometry)
    shade = Shade(
        source=ShadeSource.MEASURED,
        colour=Colour(lightness=lightness, a=1.0, b=18.0, measurement=way),
        doubt=(0.5, 0.3, 0.5),
    )
    neighbour = Neighbour(tooth=Tooth(number=number), shade=shade)
    return replace(case, intake=Intake(neighbours=(neighbour,)))


def test_a_step_of_value_to_a_neighbour(case: Case) -> None:
    (found,) = value_of_neighbours(ground_of(beside(case, 37, 78.0)))
    expected = colour.delta_E([74.0, 1.0, 18.0], [78.0, 1.0, 18.0], method="CIE 2000")
    assert found.figure == pytest.approx(float(expected), abs=1e-3)
    assert found.sentence.startswith("The body is 4.0 L* darker than neighbour 37.")
    # 1.8 dE00 of lightness alone is 2.4 L* there.
    assert not list(value_of_neighbours(ground_of(beside(case, 37, 76.3))))
    assert list(value_of_neighbours(ground_of(beside(case, 37, 76.5))))


def test_neighbours_of_the_other_jaw_and_unlike_readings(case: Case) -> None:
    assert not list(value_of_neighbours(ground_of(beside(case, 27, 80.0))))
    (found,) = value_of_neighbours(ground_of(beside(case, 37, 80.0, SPHERE_WITH_GLOSS)))
    assert "cannot be compared" in found.sentence
    assert found.figure is None


def test_a_step_of_value_between_units(case: Case) -> None:
    bridge = with_units(case, 15, 14)
    x = case.surface.mesh.vertices[:, 0]
    (found,) = value_between_units(ground_of(bridge, lightness=np.where(x > 0, 76.0, 73.0)))
    assert found.sentence == "14 comes out 3.0 L* lighter than 15 beside it."
    assert found.unit == 1
    assert not list(value_between_units(ground_of(bridge, lightness=np.where(x > 0, 75.0, 73.0))))


# --- what is missing ---------------------------------------------------------------------


def test_lots(case: Case) -> None:
    planned = painted(case, ("barley", Zone.BODY, 1), ("slate", Zone.CUSP, 1))
    (found,) = missing_lots(ground_of(planned))
    assert found.sentence == "No lot is noted for the block and the jars."
    plan = planned.plan
    blocks = tuple(replace(block, lot="B-1") for block in case.materials.blocks)
    materials = replace(case.materials, blocks=blocks)
    noted = replace(planned, materials=materials)
    one = replace(noted, plan=replace(plan, jars=(replace(plan.jars[0], lot="1"), plan.jars[1])))
    (found,) = missing_lots(ground_of(one))
    assert found.sentence == "No lot is noted for jar 2."
    jars = tuple(replace(jar, lot="1") for jar in plan.jars)
    assert not list(missing_lots(ground_of(replace(noted, plan=replace(plan, jars=jars)))))


def test_tooth_numbers(case: Case) -> None:
    ground = ground_of(with_units(case, 15, 14))
    assert not list(missing_number(ground))
    (found,) = missing_number(ground_of(with_units(case, 15, 15)))
    assert found.sentence == "Two units are called 15."
    (found,) = missing_number(replace(ground, case=replace(case, units=())))
    assert found.sentence == "No tooth number is given."


def test_another_limit_is_held_to(case: Case) -> None:
    ground = ground_of(painted(case, ("barley", Zone.BODY, 5)))
    lenient = ground.limits["last_coat"]
    strict: AdviceLimits = ground.limits.changed(replace(lenient, value=0.4, source="own"))
    (found,) = more_than_taken_up(replace(ground, limits=strict))
    assert found.limit is not None
    assert found.limit.value == 0.4
    assert "own" in found.detail
