"""What if: the same plan in two programmes."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stainmap.app.edits import with_coupon, with_ground
from stainmap.app.prediction import predict_case
from stainmap.errors import CatalogueError
from stainmap.model.case import Case
from stainmap.model.material import BlankCoupon
from stainmap.model.zone import Zone
from stainmap.optics.difference import delta_e_00
from stainmap.planning.strength_class import strength_class
from stainmap.predict.plate_translucency import plate_translucency, range_text
from stainmap.predict.reference import reference_lab
from stainmap.predict.scene import scene_from_case
from stainmap.predict.seen import Seen
from tests.builders import dome_case
from tests.predict.scenes import DENTINE, materials
from tests.predict.test_directions import translucency

COUPON = BlankCoupon(scattering_factor=1.0, read_by="bench 2", read_on="2026-05-04")


@pytest.fixture(scope="module")
def case() -> Case:
    """Return the dome with its plan of cervical 3, body 1, on starter material."""
    base = dome_case(16, 48)
    jars = tuple(
        replace(jar, liquid=name)
        for jar, name in zip(base.plan.jars, ("barley", "umber"), strict=True)
    )
    plan = replace(base.plan, block="medium 4Y", jars=jars)
    return replace(base, materials=materials(), plan=plan, backings=(DENTINE,))


def test_a_faster_programme_is_lighter_in_every_area_and_says_why(case: Case) -> None:
    found = predict_case(case).what_if("very fast")
    assert (found.here, found.there) == ("slow", "very fast")
    assert found.minutes == (530.0, 42.0)
    assert found.factors == (1.0, 1.5)
    assert found.measured == (False, False)
    assert [one.area for one in found.areas][:2] == [Zone.CERVICAL, Zone.BODY]
    for one in found.areas:
        before, after = np.array(one.here.lab), np.array(one.there.lab)
        np.testing.assert_allclose(one.change, after - before, atol=1e-9)
        assert one.change_de00 == pytest.approx(float(delta_e_00(before, after)))
        outer_zone = isinstance(one.area, Zone) and one.area is not Zone.INNER
        assert (one.wanted_de00 is not None) is outer_zone
        # More scattering over dentine: lighter; common practice and two-flux theory agree.
        assert one.change[0] > 0.3
    assert found.largest_de00 == max(one.change_de00 for one in found.areas)
    assert 0.5 < found.largest_de00 < 6.0


def test_the_change_is_that_of_a_plate_where_the_crown_is_even(case: Case) -> None:
    """The cusp carries no coats: an even wall of 1 mm, its middle far from any border."""
    found = predict_case(case, seen=Seen(bands="full")).what_if("fast")
    cusp = next(one for one in found.areas if one.area is Zone.CUSP)
    plates = []
    for name in ("slow", "fast"):
        scene = scene_from_case(replace(case, programme=name))
        some = scene.at_vertices(np.array([0]))
        plates.append(reference_lab(some, np.zeros((len(case.plan.steps), 1)), [1.0])[0])
    np.testing.assert_allclose(cusp.change, plates[1] - plates[0], atol=0.35)


def test_the_own_programme_changes_nothing(case: Case) -> None:
    found = predict_case(case).what_if("slow")
    assert found.largest_de00 < 1e-3


def test_a_coupon_is_what_counts(case: Case) -> None:
    """Fast, read as x 1.00: the same as slow."""
    read = with_coupon(case, "fast", COUPON)
    found = predict_case(read).what_if("fast")
    assert found.factors == (1.0, 1.0)
    assert found.measured == (False, True)
    assert found.largest_de00 < 0.05
    again = with_coupon(read, "fast", None)
    assert predict_case(again).what_if("fast").largest_de00 > 0.5


def test_what_is_ground_away_is_so_in_both(case: Case) -> None:
    ground = predict_case(with_ground(case, None, 0.3))
    whole = predict_case(case)
    one, other = ground.what_if("fast"), whole.what_if("fast")
    neck, unground = one.areas[0], other.areas[0]
    assert neck.here.chroma < unground.here.chroma - 0.5
    assert neck.there.chroma < unground.there.chroma - 0.5


def test_a_programme_that_is_not_there_is_said(case: Case) -> None:
    with pytest.raises(CatalogueError, match="no programme called 'microwave'"):
        predict_case(case).what_if("microwave")


def test_time_class_translucency_and_strength_stand_side_by_side(case: Case) -> None:
    found = predict_case(case).what_if("very fast")
    assert found.classes == ("slow", "very fast")
    (slow,), (fast,) = found.translucency
    # Slow cycles come out more translucent (published direction [Juntavee, Luz]; size assumed).
    assert slow > fast + 1.0
    assert (found.strength.number, found.strength.mpa) == (4, (560, 650))


@pytest.mark.parametrize("programme", ["slow", "fast"])
def test_the_plate_is_that_of_the_plain_prediction(programme: str) -> None:
    """Over tiles of reflectance 0.85 and 0.02, air between, on every class."""
    block_names = ("medium 3Y", "medium 5Y")
    for name in block_names:
        (found,) = plate_translucency(materials().block(name), materials(), programme)
        assert found == pytest.approx(float(translucency(name, [1.0], (), programme)[0]), abs=2e-3)


def test_a_graded_block_has_a_plate_for_each_layer_and_is_as_strong_as_its_weakest() -> None:
    name = next(one.name for one in materials().blocks if len(one.layers) > 1)
    block = materials().block(name)
    found = plate_translucency(block, materials(), "slow")
    assert len(found) == len(block.layers)
    assert range_text(found) == f"{min(found):.1f} to {max(found):.1f}"
    kinds = {layer.scattering for layer in block.layers}
    strength = strength_class(block)
    assert kinds == {"3Y", "4Y"}
    # 30 % below 560 to 650.
    assert (strength.mpa, strength.number) == ((392, 455), 3)


@pytest.mark.parametrize(("name", "number"), [("medium 3Y", 5), ("medium 4Y", 4), ("medium 5Y", 3)])
def test_classes_by_iso_6872(name: str, number: int) -> None:
    """800, 500, 300 MPa for classes 5, 4 and 3: from memory."""
    found = strength_class(materials().block(name))
    assert found.number == number
    assert found.mpa[0] >= {5: 800, 4: 500, 3: 300}[number]
