"""Warnings jar by jar: the same rules as those of the mixing list."""

from __future__ import annotations

from dataclasses import replace

import pytest

from stainmap.app import edits
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Case
from stainmap.model.plan import Jar, StainPlan
from stainmap.planning.jar_warnings import jar_warnings
from stainmap.planning.mixing import mixing_list
from tests.builders import dome_case


@pytest.fixture(scope="module")
def case() -> Case:
    materials = starter_catalogue()
    dome = dome_case(6, 12)
    backing = replace(
        dome.backings[0], stump=materials.stumps[0].name, cement=materials.cements[0].name
    )
    case = replace(
        dome,
        materials=materials,
        plan=StainPlan(block="medium 3Y"),
        backings=(backing,),
        programme="slow",
    )
    for at, liquid in enumerate(("barley", "slate", "umber")):
        case = edits.with_added_liquid(case, at, liquid)
    return case


def with_dyes(case: Case, number: int, drops: tuple[int, int, int]) -> Case:
    return edits.with_jar(case, replace(case.plan.jar(number), dye_drops=drops))


def test_recommended_dyes_raise_no_warning(case: Case) -> None:
    assert jar_warnings(case) == {}


def test_jars_of_one_look_are_named_at_both(case: Case) -> None:
    alike = with_dyes(case, 2, case.plan.jar(1).dye_drops)
    found = jar_warnings(alike)
    assert any("Looks like jar 2 on chalk; go by" in text for text in found[1])
    assert any("Looks like jar 1 on chalk; go by" in text for text in found[2])
    assert 3 not in found


def test_too_much_dye_and_none_are_said_at_their_jar(case: Case) -> None:
    found = jar_warnings(with_dyes(case, 3, (0, 0, 9)))
    assert any(
        text.startswith("9 drops of dye on 25 of liquid; usual are 2 to 3.") for text in found[3]
    )
    assert jar_warnings(with_dyes(case, 1, (0, 0, 0)))[1][0].startswith("0 drops of dye")


def test_a_dye_that_passes_for_the_result_is_said(case: Case) -> None:
    """Barley warms: a yellow dye looks like what it does."""
    found = jar_warnings(with_dyes(case, 1, (0, 0, 3)))
    assert any("looks like what barley does after sintering" in text for text in found[1])


@pytest.mark.parametrize("drops", [(0, 0, 3), (9, 0, 0), (0, 0, 0), (1, 1, 0)])
def test_it_says_of_single_jars_what_the_mixing_list_says(
    case: Case, drops: tuple[int, int, int]
) -> None:
    changed = with_dyes(case, 1, drops)
    told = " ".join(mixing_list(changed).remarks)
    own = " ".join(jar_warnings(changed).get(1, ()))
    assert ("usual are" in told) == ("usual are" in own)
    assert ("after sintering" in told) == ("after sintering" in own)
    assert ("alike" in told) == ("Looks like" in own)


def test_a_plan_without_jars_has_no_warning(case: Case) -> None:
    assert jar_warnings(replace(case, plan=StainPlan(block="medium 3Y"))) == {}
    one = replace(case, plan=StainPlan(block="medium 3Y", jars=(Jar(number=4, liquid="slate"),)))
    assert list(jar_warnings(one)) == [4]
