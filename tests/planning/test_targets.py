"""From shades of thirds to what every area is held to."""

from __future__ import annotations

from dataclasses import replace

import colour
import numpy as np
import pytest

from stainmap.errors import PlanError
from stainmap.files.shades_file import starter_shades
from stainmap.model.case import Case
from stainmap.model.colour import (
    IN_PLACE,
    SPHERE_WITHOUT_GLOSS,
    Colour,
    Conversion,
    Measurement,
)
from stainmap.model.intake import Intake, Neighbour, Shade, ShadeSource, Third, ThirdShade, Triple
from stainmap.model.shade_table import OffsetClass
from stainmap.model.target import DEFAULT_OFFSETS, Target
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.planning.coats import CoatLayout
from stainmap.planning.outcome import judge
from stainmap.planning.shade_tabs import tab_colour, tab_shade
from stainmap.planning.targets import (
    offset_class,
    outside_ceramic,
    shade_in,
    target_from_intake,
    wanted_in,
)
from tests.builders import dome_case

SURE: Triple = (0.3, 0.2, 0.4)


def read(lightness: float, a: float, b: float, doubt: Triple = SURE) -> Shade:
    how = Measurement(backing=IN_PLACE)
    return Shade(
        source=ShadeSource.MEASURED,
        colour=Colour(lightness=lightness, a=a, b=b, measurement=how),
        doubt=doubt,
    )


def tab(name: str) -> Shade:
    return tab_shade(starter_shades().tab(name))


def intake(**thirds: Shade) -> Intake:
    return Intake(
        shades=tuple(ThirdShade(third=Third(name), shade=shade) for name, shade in thirds.items())
    )


def wanted(target: Target | None, area: Zone | Accent) -> Colour:
    assert target is not None
    found = wanted_in(target, area)
    assert found is not None
    return found.colour


# ---- one shade, several thirds


def test_nothing_read_is_nothing_wanted() -> None:
    assert target_from_intake(Intake(wish="natural"), DEFAULT_OFFSETS) is None


def test_a_single_shade_gives_a_gradient_from_neck_to_edge() -> None:
    target = target_from_intake(intake(middle=read(74.0, 1.0, 18.0)), DEFAULT_OFFSETS)
    body, neck, cusp = (wanted(target, z) for z in (Zone.BODY, Zone.CERVICAL, Zone.CUSP))
    assert body.lab == (74.0, 1.0, 18.0)
    assert neck.lightness == pytest.approx(72.0)
    assert neck.chroma == pytest.approx(body.chroma + 4.0)
    assert cusp.lightness == pytest.approx(71.0)
    assert cusp.chroma == pytest.approx(body.chroma - 2.0)
    for one in (neck, cusp):
        assert one.hue_degrees == pytest.approx(body.hue_degrees)
    assert target is not None
    assert target.body_doubt == SURE
    assert wanted_in(target, Accent.MARGIN_BAND) is None


def test_thirds_hold_neck_and_cusps_and_the_rest_follows_the_body() -> None:
    target = target_from_intake(
        intake(middle=tab("A3"), cervical=tab("A4"), incisal=read(76.0, 0.0, 12.0)),
        DEFAULT_OFFSETS,
    )
    shades = starter_shades()
    assert wanted(target, Zone.CERVICAL).lab == tab_colour(shades.tab("A4")).lab
    assert wanted(target, Zone.BODY).lab == tab_colour(shades.tab("A3")).lab
    assert wanted(target, Zone.CUSP).lab == (76.0, 0.0, 12.0)
    body = tab_colour(shades.tab("A3"))
    assert wanted(target, Zone.FISSURE).lab == pytest.approx(body.shifted(-4.0, 5.0).lab)
    assert target is not None
    cusp, fissure = wanted_in(target, Zone.CUSP), wanted_in(target, Zone.FISSURE)
    assert cusp is not None
    assert fissure is not None
    assert cusp.own
    assert not fissure.own
    # A measured third adds no doubt of tabs; the fissure is as doubtful as the body's tab.
    assert cusp.conversions == ()
    assert cusp.sd == pytest.approx(SURE)
    assert [one.conversion for one in fissure.conversions] == [Conversion.TAB_TABLE]
    assert fissure.sd == pytest.approx(np.hypot(shades.tab("A3").doubt, 1.5))
    assert target.name == "A3"


def test_a_neck_alone_gives_the_body_that_it_would_lie_from() -> None:
    neck = read(70.0, 2.0, 22.0)
    target = target_from_intake(intake(cervical=neck), DEFAULT_OFFSETS)
    assert wanted(target, Zone.CERVICAL).lab == (70.0, 2.0, 22.0)
    body = wanted(target, Zone.BODY)
    assert body.lightness == pytest.approx(72.0)
    assert body.chroma == pytest.approx(neck.colour.chroma - 4.0)
    assert body.shifted(-2.0, 4.0).lab == pytest.approx(neck.colour.lab)


def test_neck_and_edge_without_a_middle_put_the_body_between_them() -> None:
    target = target_from_intake(
        intake(cervical=read(70.0, 2.0, 22.0, (1.0, 0.2, 0.5)), incisal=read(76.0, 0.0, 14.0)),
        DEFAULT_OFFSETS,
    )
    assert wanted(target, Zone.BODY).lab == pytest.approx((73.0, 1.0, 18.0))
    assert target is not None
    assert target.body_doubt == (1.0, 0.2, 0.5)


def test_a_shade_that_cannot_be_compared_is_refused_where_it_is_needed() -> None:
    how = Measurement(geometry=SPHERE_WITHOUT_GLOSS, backing=IN_PLACE)
    sphere = replace(read(70.0, 2.0, 22.0), colour=Colour(lightness=70, a=2, b=22, measurement=how))
    target = target_from_intake(intake(middle=sphere), DEFAULT_OFFSETS)
    assert target is not None
    with pytest.raises(PlanError, match="differ in geometry"):
        wanted_in(target, Zone.BODY)
    with pytest.raises(PlanError, match="differ in geometry"):
        target_from_intake(intake(cervical=sphere, incisal=sphere), DEFAULT_OFFSETS)
    allowed = replace(sphere, conversions=(Conversion.FIRST_SURFACE,))
    assert shade_in(allowed).sd[0] == pytest.approx(np.hypot(0.3, 1.0))


# ---- in the outcome


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case()


def test_the_outcome_holds_every_area_to_its_own_shade(case: Case) -> None:
    target = target_from_intake(
        intake(middle=tab("A3"), cervical=read(71.0, 2.0, 21.0)), DEFAULT_OFFSETS
    )
    layout = CoatLayout(case.surface.mesh, case.reading.outer)
    lab = np.tile(np.array([74.0, 1.0, 18.0], np.float32), (len(case.zones), 1))
    outcome = judge(replace(case, target=target), layout, np.ones(len(lab), np.float32), lab)
    neck, body, cusp = (outcome.area(z) for z in (Zone.CERVICAL, Zone.BODY, Zone.CUSP))
    assert neck is not None
    assert body is not None
    assert cusp is not None
    assert outcome.refused == ""
    assert neck.wanted is not None
    assert neck.wanted.lab == (71.0, 2.0, 21.0)
    assert neck.difference_sd == pytest.approx(SURE)
    assert neck.conversions == ()
    expected = colour.delta_E(np.array(neck.predicted.lab), np.array([71.0, 2.0, 21.0]), "CIE 2000")
    assert neck.delta_e_00 == pytest.approx(float(expected), abs=1e-6)
    a3 = tab_colour(starter_shades().tab("A3"))
    assert body.wanted is not None
    assert body.wanted.lab == a3.lab
    assert body.wanted_offset is None
    assert [str(one.conversion) for one in body.conversions] == [str(Conversion.TAB_TABLE)]
    # The neck's own step is from the body as both are seen; the cusp's is what was asked for.
    assert neck.wanted_offset == pytest.approx(
        (71.0 - a3.lightness, float(np.hypot(2.0, 21.0)) - a3.chroma)
    )
    assert cusp.wanted_offset == pytest.approx((-3.0, -2.0))
    assert cusp.difference_sd == pytest.approx(np.hypot(starter_shades().tab("A3").doubt, 1.5))


# ---- classes, neighbours, nonsense


def test_the_class_of_most_units_gives_the_offsets() -> None:
    def units(*numbers: int) -> tuple[Unit, ...]:
        return tuple(Unit(tooth=Tooth(number=n), role=Role.RETAINER) for n in numbers)

    assert offset_class(units(36)) is OffsetClass.MOLAR
    assert offset_class(units(13, 14, 15)) is OffsetClass.PREMOLAR
    assert offset_class(units(13, 14)) is OffsetClass.FRONT
    assert offset_class(units(15, 16)) is OffsetClass.PREMOLAR


@pytest.mark.parametrize(
    ("lab", "says"),
    [
        ((20.0, 1.0, 15.0), "L* 20.0"),
        ((99.0, 0.0, 3.0), "L* 99.0"),
        ((70.0, 40.0, 15.0), "a* 40.0"),
        ((70.0, 1.0, -30.0), "b* -30.0"),
        ((18.0, 75.0, 1.0), "L* 18.0"),
    ],
)
def test_no_ceramic_looks_like_that(lab: Triple, says: str) -> None:
    sentence = outside_ceramic(read(*lab).colour)
    assert sentence.startswith(says)
    assert sentence.endswith(".")


def test_every_tab_is_within_ceramic() -> None:
    assert [one.name for one in starter_shades().tabs if outside_ceramic(tab_colour(one))] == []


def test_an_intake_refuses_what_contradicts_itself() -> None:
    shade = read(70.0, 1.0, 18.0)
    third = ThirdShade(third=Third.MIDDLE, shade=shade)
    with pytest.raises(PlanError, match="two shades"):
        Intake(shades=(third, third))
    neighbours = tuple(Neighbour(tooth=Tooth(number=n), shade=shade) for n in (35, 37, 38))
    with pytest.raises(PlanError, match="3 neighbours"):
        Intake(neighbours=neighbours)
    with pytest.raises(PlanError, match="35 was given twice"):
        Intake(neighbours=(neighbours[0], neighbours[0]))
    with pytest.raises(PlanError, match="designation"):
        replace(shade, source=ShadeSource.TAB)
    with pytest.raises(PlanError, match="doubt"):
        read(70.0, 1.0, 18.0, (float("nan"), 0.0, 0.0))
    kept = Intake().with_shade(Third.INCISAL, shade).with_shade(Third.CERVICAL, shade)
    assert [one.third for one in kept.shades] == [Third.CERVICAL, Third.INCISAL]
    assert kept.with_shade(Third.INCISAL, None).shade(Third.INCISAL) is None
