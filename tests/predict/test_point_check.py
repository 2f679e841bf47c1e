"""Check this point: what it compares, what it says, and what it refuses."""

from __future__ import annotations

from dataclasses import FrozenInstanceError, replace
from time import perf_counter

import numpy as np
import pytest

from stainmap.errors import PlanError
from stainmap.model.case import Backing, Case, Region
from stainmap.model.finishing import Finish
from stainmap.optics.difference import delta_e_00
from stainmap.optics.interface import fitted_interface
from stainmap.planning.coats import CoatLayout
from stainmap.predict.point_check import GOOD_DE00, PointCheck, check_point, transport_backing
from stainmap.predict.reference import reference_lab
from stainmap.predict.regions import backing_within
from stainmap.predict.scene import scene_from_case
from stainmap.predict.shape import CrownShape, crown_shape
from stainmap.predict.uncertainty import PERCEPTIBLE_DE00
from tests.builders import dome_case
from tests.predict.scenes import materials

ON_TOP = 0


@pytest.fixture(scope="module")
def planned() -> tuple[Case, CrownShape, np.ndarray]:
    case = dome_case(12, 32)
    coats = CoatLayout(case.surface.mesh, case.reading.outer).coats(case, "high")
    return case, crown_shape(case), coats


def with_wall(shape: CrownShape, wall_mm: float) -> CrownShape:
    return replace(shape, wall_mm=np.full(len(shape.wall_mm), wall_mm, np.float32))


def on_starter(case: Case, block: str, **changes: object) -> Case:
    """Return the case in starter materials of this block."""
    jars = tuple(
        replace(jar, liquid=name)
        for jar, name in zip(case.plan.jars, ("barley", "slate"), strict=True)
    )
    backing = Backing(region=Region.STUMP, stump="natural dentine, medium", cement="clear")
    return replace(
        case,
        materials=materials(),
        plan=replace(case.plan, block=block, jars=jars),
        **{"backings": (backing,), **changes},
    )


def test_fast_and_plain_are_the_predictions_themselves(planned) -> None:
    case, shape, coats = planned
    for vertex in (ON_TOP, 200, int(np.flatnonzero(shape.inner)[7])):
        found = check_point(case, shape, coats, vertex)
        far = coats[:, shape.partner]
        far = np.where(shape.partner >= 0, far, 0.0)
        for bands, lab in (("full", found.plain), ("screen", found.fast)):
            scene = scene_from_case(case, bands=bands)
            expected = reference_lab(scene, coats, shape.wall_mm, far, inside=shape.inner)
            np.testing.assert_allclose(lab, expected[vertex], atol=1e-5)
        assert delta_e_00(found.fast, found.plain) < 0.1


def test_the_fast_answer_is_good_on_usual_walls(planned) -> None:
    case, shape, coats = planned
    for block in ("white 3Y", "deep 3Y", "medium 4Y", "medium 5Y"):
        for wall_mm in (0.6, 1.0, 1.6):
            found = check_point(on_starter(case, block), with_wall(shape, wall_mm), coats, 200)
            assert found.fast_de00 <= PERCEPTIBLE_DE00, (block, wall_mm)
            assert found.fast_de00 < found.textbook_de00 + 0.3
            for name in ("fast", "plain", "textbook"):
                difference = float(delta_e_00(getattr(found, name), found.transport))
                assert getattr(found, f"{name}_de00") == pytest.approx(difference, abs=1e-9)


def test_it_says_so_where_the_fast_answer_is_not_good(planned) -> None:
    """A clear wall of 0.2 mm: two-flux layers know nothing of light that goes straight through."""
    case, shape, coats = planned
    thin = check_point(on_starter(case, "light 5Y"), with_wall(shape, 0.2), 0.0 * coats, ON_TOP)
    usual = check_point(on_starter(case, "medium 3Y"), with_wall(shape, 1.2), coats, ON_TOP)
    assert usual.fast_de00 <= GOOD_DE00 < PERCEPTIBLE_DE00 < thin.fast_de00
    assert usual.verdict.startswith("The fast answer is good here: 0.")
    assert thin.verdict.startswith("Take care here")
    assert f"{thin.fast_de00:.1f} dE00" in thin.verdict


def test_the_inner_surface_has_open_air_behind(planned) -> None:
    case, shape, coats = planned
    inner = int(np.flatnonzero(shape.inner)[3])
    found = check_point(case, shape, coats, inner)
    assert found.region == "open air"
    assert check_point(case, shape, coats, ON_TOP).region == "stump"
    other = replace(case, backings=(replace(case.backings[0], cement_thickness_mm=1.0),))
    assert check_point(other, shape, coats, inner).transport == found.transport


@pytest.mark.parametrize("cement", ["clear", "tooth-coloured", "opaque", "none, air gap"])
def test_cements_enter_as_layers(planned, cement: str) -> None:
    """Behind thin walls transport and two-flux agree on what each cement does, within 0.5 dE00."""
    case, shape, coats = planned
    backing = Backing(
        region=Region.STUMP, stump="discoloured", cement=cement, cement_thickness_mm=0.1
    )
    own = on_starter(case, "medium 3Y", backings=(backing,))
    found = check_point(own, with_wall(shape, 0.6), coats, 200)
    assert found.plain_de00 < 1.0
    layers, reflector = transport_backing(backing, own.materials)
    assert layers[0].refractive_index == reflector.refractive_index
    seen = backing_within(backing, own.materials, fitted_interface(31))
    assert (seen >= 0.0).all()


def test_a_finish_is_the_same_in_all_of_them(planned) -> None:
    case, shape, coats = planned
    for finish in Finish:
        after = replace(case.after_sintering, finish=finish)
        found = check_point(replace(case, after_sintering=after), shape, coats, 200)
        assert found.fast_de00 < PERCEPTIBLE_DE00


def test_other_lights(planned) -> None:
    case, shape, coats = planned
    usual = check_point(case, shape, coats, ON_TOP)
    warm = check_point(case, shape, coats, ON_TOP, light="A", observer=10)
    assert (warm.light, warm.observer_degrees) == ("A", 10)
    assert warm.transport != usual.transport


def test_well_under_a_second(planned) -> None:
    case, shape, coats = planned
    check_point(case, shape, coats, ON_TOP)  # the bands of the screen are chosen once
    start = perf_counter()
    check_point(case, shape, coats, 200)
    assert perf_counter() - start < 1.0


def test_the_result_is_frozen_and_bad_input_refused(planned) -> None:
    case, shape, coats = planned
    found = check_point(case, shape, coats, ON_TOP)
    assert isinstance(found, PointCheck)
    with pytest.raises(FrozenInstanceError):
        found.verdict = ""
    for vertex in (-1, len(shape.wall_mm)):
        with pytest.raises(PlanError, match=f"no vertex {vertex}"):
            check_point(case, shape, coats, vertex)
    with pytest.raises(PlanError, match="do not fit"):
        check_point(case, shape, coats[:, :-1], ON_TOP)
