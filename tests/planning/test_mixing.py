"""Mixing: drops, looks and what is served."""

from __future__ import annotations

import warnings
from dataclasses import replace

import numpy as np
import pytest

from stainmap.errors import PlanError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.case import Backing, Case, Region
from stainmap.model.plan import AreaCoats, CoatSpan, Jar, StainPlan, Step
from stainmap.model.tooth import Role, Tooth, Unit
from stainmap.model.zone import Accent, Zone
from stainmap.planning.dyes import (
    AIM_COLOUR_BLIND,
    AIM_DIFFERENCE,
    COLOUR_BLIND,
    colour_word,
    dye_drop_limits,
    lab_of_linear,
    least_differences,
    passes_for_result,
    recommended_dyes,
    sintered_effects,
)
from stainmap.planning.mixing import JAR_LIFE_HOURS, mixing_list
from tests.builders import dome_case

MATERIALS = starter_catalogue()


def case_with(*liquids: str, dyes: bool = True) -> Case:
    """Return the dome with one jar and one step per liquid."""
    jars = tuple(
        Jar(
            number=number,
            liquid=name,
            dye_drops=MATERIALS.liquid(name).dye_drops if dyes else (0, 0, 0),
        )
        for number, name in enumerate(liquids, start=1)
    )
    body = AreaCoats(area=Zone.BODY, coats=CoatSpan.exactly(1))
    return replace(
        dome_case(6, 12),
        materials=MATERIALS,
        programme="slow",
        backings=(Backing(region=Region.STUMP, stump="natural dentine, medium", cement="clear"),),
        plan=StainPlan(
            block="medium 3Y",
            jars=jars,
            steps=tuple(Step(jar=jar.number, areas=(body,)) for jar in jars),
        ),
    )


def with_dyes(case: Case, recipes: tuple[tuple[int, int, int], ...]) -> Case:
    jars = tuple(
        replace(jar, dye_drops=recipe) for jar, recipe in zip(case.plan.jars, recipes, strict=True)
    )
    return replace(case, plan=replace(case.plan, jars=jars))


TRAY = ("barley", "slate", "ash", "heather", "umber")


def test_25_drops_of_liquid_take_2_to_3_drops_of_dye() -> None:
    # Common practice, no published source.
    assert dye_drop_limits(25) == (2, 3)
    assert dye_drop_limits(50) == (4, 6)
    assert dye_drop_limits(5)[0] >= 1


@pytest.mark.parametrize("liquid", [one.name for one in MATERIALS.liquids])
def test_starter_recipes_keep_to_that(liquid: str) -> None:
    assert 2 <= sum(MATERIALS.liquid(liquid).dye_drops) <= 3


def test_simulated_colour_blindness_is_that_of_the_reference_library() -> None:
    colour = pytest.importorskip("colour")
    kinds = ("Protanomaly", "Deuteranomaly", "Tritanomaly")
    for kind, matrix in zip(kinds, COLOUR_BLIND, strict=True):
        with warnings.catch_warnings():
            # The library says that tritanomaly is modelled more roughly than the other two.
            warnings.simplefilter("ignore", colour.utilities.ColourUsageWarning)
            published = colour.blindness.matrix_cvd_Machado2009(kind, 1.0)
        np.testing.assert_allclose(matrix, published, atol=1e-6)


def test_grey_stays_grey_to_colour_blind_eyes() -> None:
    for matrix in COLOUR_BLIND:
        np.testing.assert_allclose(np.sum(matrix, axis=1), 1.0, atol=2e-6)


def test_lab_of_linear_is_that_of_the_reference_library() -> None:
    colour = pytest.importorskip("colour")
    linear = np.random.default_rng(2).uniform(0.02, 0.95, (20, 3))
    xyz = colour.RGB_to_XYZ(linear, "sRGB", apply_cctf_decoding=False)
    white = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"]
    np.testing.assert_allclose(lab_of_linear(linear), colour.XYZ_to_Lab(xyz, white), atol=0.1)


def test_effects_are_those_the_starter_set_is_designed_for() -> None:
    # After three coats on the medium block, 1.2 mm, natural dentine, from the design's table.
    wanted = {
        "barley": (-2.6, 1.5, 4.8),
        "slate": (-4.6, -0.3, -3.5),
        "ash": (-4.6, 0.0, -0.4),
        "heather": (-3.5, 1.8, -2.4),
        "umber": (-7.9, 3.0, 5.8),
    }
    effects = sintered_effects(case_with(*TRAY))
    np.testing.assert_allclose(effects, [wanted[name] for name in TRAY], atol=0.12)


@pytest.mark.parametrize(
    ("liquid", "tint", "passes"),
    [
        ("barley", (-5.0, -6.0, 40.0), True),  # yellow for a base
        ("barley", (-14.0, -15.0, -17.0), False),  # blue for a base
        ("slate", (-14.0, -15.0, -17.0), True),  # blue for what cools
        ("slate", (-10.0, -25.0, -2.0), False),  # green for what cools
        ("slate", (-22.0, 3.0, -2.0), True),  # grey for what lowers value
        ("slate", (-4.0, -6.0, 34.0), False),  # yellow for what cools
        ("heather", (-20.0, 10.0, -20.0), True),  # violet for what goes rosy
        ("heather", (-23.0, 34.0, 0.0), True),  # rose for what goes rosy
        ("ash", (-29.0, 26.0, -28.0), True),  # purple for the neutral one
        ("ash", (-22.0, 3.0, -2.0), True),  # grey for the neutral one
        ("umber", (-12.0, -19.0, 9.0), True),  # green for the dark accent
        ("umber", (-16.0, 15.0, 23.0), True),  # brown for the dark accent
        ("umber", (-29.0, 26.0, -28.0), False),  # violet for the dark accent
    ],
)
def test_no_dye_may_look_like_what_its_liquid_does(
    liquid: str, tint: tuple[float, float, float], passes: bool
) -> None:
    (effect,) = sintered_effects(case_with(liquid))
    assert passes_for_result(effect, tint) is passes


@pytest.mark.parametrize(
    "tray",
    [TRAY, ("barley", "amber", "clay", "slate", "ash", "umber"), ("barley", "slate", "umber")],
)
def test_recommended_dyes_keep_the_rules_and_set_jars_apart(tray: tuple[str, ...]) -> None:
    case = case_with(*tray)
    recipes = recommended_dyes(case)
    assert all(2 <= sum(recipe) <= 3 for recipe in recipes)
    mixing = mixing_list(with_dyes(case, recipes))
    assert mixing.remarks == ()
    assert mixing.least_difference is not None
    assert mixing.least_colour_blind is not None
    assert mixing.least_difference >= AIM_DIFFERENCE
    assert mixing.least_colour_blind >= AIM_COLOUR_BLIND
    assert recommended_dyes(case) == recipes


def test_no_other_recipes_set_three_jars_further_apart() -> None:
    case = case_with("barley", "slate", "umber")
    best = mixing_list(with_dyes(case, recommended_dyes(case)))

    def score(recipes):
        one = mixing_list(with_dyes(case, recipes))
        if one.remarks:
            return 0.0
        return min(one.least_difference / AIM_DIFFERENCE, one.least_colour_blind / AIM_COLOUR_BLIND)

    rng = np.random.default_rng(4)
    everything = [
        (cyan, magenta, total - cyan - magenta)
        for total in (2, 3)
        for cyan in range(total + 1)
        for magenta in range(total + 1 - cyan)
    ]
    reached = min(
        best.least_difference / AIM_DIFFERENCE, best.least_colour_blind / AIM_COLOUR_BLIND
    )
    for _ in range(40):
        recipes = tuple(everything[index] for index in rng.integers(0, len(everything), 3))
        assert score(recipes) <= reached + 1e-9


def test_the_usual_tray_differs_by_nine_or_more() -> None:
    mixing = mixing_list(case_with(*TRAY))
    assert mixing.remarks == ()
    assert mixing.least_difference is not None
    assert mixing.least_difference >= 9.0


def test_equal_jars_are_remarked_upon() -> None:
    mixing = mixing_list(with_dyes(case_with("barley", "umber"), ((2, 0, 0), (2, 0, 0))))
    assert mixing.least_difference == pytest.approx(0.0, abs=1e-9)
    assert any("1 and 2" in remark and "look alike" in remark for remark in mixing.remarks)


def test_too_much_dye_and_a_dye_that_passes_for_the_result_are_remarked_upon() -> None:
    mixing = mixing_list(with_dyes(case_with("barley"), ((0, 0, 7),)))
    assert any("7 drops of dye on 25 of liquid" in remark for remark in mixing.remarks)
    assert any("looks like what barley does" in remark for remark in mixing.remarks)


def test_dye_dilutes() -> None:
    (batch,) = mixing_list(with_dyes(case_with("barley"), ((2, 0, 0),))).batches
    assert batch.dilution == pytest.approx(25 / 27)
    assert batch.dyes == (("cyan", 2),)


def test_more_dye_is_darker_and_none_is_chalk() -> None:
    looks = [
        mixing_list(with_dyes(case_with("barley"), (recipe,))).batches[0].look_linear
        for recipe in ((0, 0, 0), (1, 0, 0), (2, 0, 0), (3, 0, 0))
    ]
    assert (np.diff(np.array(looks), axis=0) < 0).all()
    chalk = lab_of_linear(np.array(looks[0]))
    np.testing.assert_allclose(chalk, (90.5, 0.1, 4.2), atol=0.1)


def test_a_batch_says_which_steps_and_units_it_serves() -> None:
    case = dome_case(10, 24)
    left = case.surface.mesh.vertices[:, 0] > 0.01
    bridge = replace(
        case,
        units=(
            Unit(tooth=Tooth(number=14), role=Role.RETAINER),
            Unit(tooth=Tooth(number=15), role=Role.PONTIC),
        ),
        reading=replace(case.reading, unit_index=left.astype(np.uint8)),
        materials=MATERIALS,
        backings=(Backing(region=Region.STUMP, stump="natural dentine, medium", cement="clear"),),
    )
    share = np.where(left & case.reading.outer, 1.0, 0.0).astype(np.float32)
    bridge = bridge.with_accent(Accent.PONTIC_TISSUE, share)
    body = AreaCoats(area=Zone.BODY, coats=CoatSpan.exactly(1))
    tissue = AreaCoats(area=Accent.PONTIC_TISSUE, coats=CoatSpan.exactly(2))
    bridge = replace(
        bridge,
        plan=StainPlan(
            block="medium 3Y",
            jars=(Jar(number=1, liquid="barley"), Jar(number=4, liquid="umber")),
            steps=(
                Step(jar=1, areas=(body,)),
                Step(jar=4, areas=(tissue,)),
                Step(jar=1, areas=(tissue,)),
            ),
        ),
    )
    first, second = mixing_list(bridge).batches
    assert first.steps == (1, 3)
    assert [unit.tooth.number for unit in first.units] == [14, 15]
    assert second.steps == (2,)
    assert [unit.tooth.number for unit in second.units] == [15]


def test_one_jar_has_nothing_to_differ_from() -> None:
    assert least_differences([[0.5, 0.5, 0.5]]) == (None, None)
    mixing = mixing_list(case_with("barley"))
    assert mixing.least_difference is None


def test_a_dye_the_materials_do_not_have_says_so() -> None:
    case = case_with("barley")
    bare = replace(case, materials=replace(MATERIALS, dyes=MATERIALS.dyes[:1]))
    with pytest.raises(PlanError, match="dye that the materials do not have"):
        mixing_list(with_dyes(bare, ((1, 1, 0),)))
    assert recommended_dyes(bare) == (case.plan.jars[0].dye_drops,)


@pytest.mark.parametrize(
    ("linear", "word"),
    [
        ((0.3, 0.3, 0.3), "grey"),
        ((0.7, 0.6, 0.05), "yellow"),
        ((0.1, 0.4, 0.6), "blue"),
        ((0.1, 0.5, 0.1), "green"),
        ((0.6, 0.05, 0.05), "red"),
        ((0.7, 0.2, 0.4), "pink"),
        ((0.4, 0.1, 0.6), "violet"),
        ((0.8, 0.3, 0.02), "orange"),
    ],
)
def test_colours_have_plain_words(linear: tuple[float, float, float], word: str) -> None:
    assert colour_word(linear) == word


def test_a_jar_lasts_a_working_day() -> None:
    assert JAR_LIFE_HOURS == 8.0
