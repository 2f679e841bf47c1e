"""Jars of one case and of a tray, held to sums done by hand and to what must be conserved."""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from stainmap.errors import PlanError
from stainmap.files.case_file import read_case
from stainmap.model.case import Case
from stainmap.model.plan import AreaCoats, CoatSpan, Jar, StainPlan, Step
from stainmap.model.process import JarAmounts, StainProcess, UptakeRule
from stainmap.model.tooth import Tooth, Unit
from stainmap.model.zone import Zone
from stainmap.paths import sample_case
from stainmap.planning.batch_size import (
    all_drops,
    holds_enough,
    jar_needs,
    served_text,
    smallest_for,
    smallest_jar,
    units_served,
)
from stainmap.planning.coats import CoatLayout
from stainmap.planning.tray_mixing import PaintedCase, TrayMixing, tray_mixing
from stainmap.predict.reference import load_of_coats
from stainmap.predict.scene import build_scene
from tests.builders import INNER_RADIUS_MM, OUTER_RADIUS_MM, dome_case

JARS = st.builds(
    lambda liquid, cyan, magenta, yellow: Jar(
        number=1, liquid="first", liquid_drops=liquid, dye_drops=(cyan, magenta, yellow)
    ),
    st.integers(1, 60),
    st.integers(0, 6),
    st.integers(0, 6),
    st.integers(0, 6),
)


def painted(case: Case) -> PaintedCase:
    """Return a case with its coats laid."""
    layout = CoatLayout(case.surface.mesh, case.reading.outer)
    return PaintedCase(case=case, coats=layout.coats(case))


def one_jar(coats: int, jar: Jar, code: str = "T-1", zone: Zone = Zone.INNER) -> PaintedCase:
    """Return the dome with one step on one zone; the inner surface has no border to feather."""
    case = dome_case(12, 24)
    step = Step(jar=jar.number, areas=(AreaCoats(area=zone, coats=CoatSpan.exactly(coats)),))
    plan = StainPlan(block="grey block", jars=(jar,), steps=(step,))
    return painted(replace(case, code=code, plan=plan))


# --- one jar of one case ---------------------------------------------------------------------


def test_two_coats_inside_a_half_sphere_by_hand() -> None:
    # 2 pi r^2 sintered, times 1.25^2, times two coats of 0.06 mm, in drops of 1/20 mL.
    jar = Jar(number=1, liquid="first", dye_drops=(2, 0, 0))
    case = dome_case(48, 96)
    step = Step(jar=1, areas=(AreaCoats(area=Zone.INNER, coats=CoatSpan.exactly(2)),))
    case = replace(case, plan=StainPlan(block="grey block", jars=(jar,), steps=(step,)))
    (need,) = jar_needs(case, painted(case).coats)
    rim_mm2 = 0.5 * math.pi * (OUTER_RADIUS_MM**2 - INNER_RADIUS_MM**2)
    half = 2.0 * math.pi * INNER_RADIUS_MM**2
    by_hand = half * 1.25**2 * 2 * 0.06 / 1000.0 * 20.0
    # Vertices of the inner edge share half of a cell of the flat rim.
    share_of_rim = 2 * 1.25**2 * 0.06 / 1000.0 * 20.0 * rim_mm2
    assert by_hand <= need.drops <= by_hand + share_of_rim
    assert need.drops == pytest.approx(by_hand + share_of_rim, rel=0.02)
    assert need.step_ml == ((1, pytest.approx(need.ml)),)


def test_twice_the_coats_twice_the_liquid() -> None:
    jar = Jar(number=1, liquid="first")
    one, two = (jar_needs(p.case, p.coats)[0].ml for p in (one_jar(1, jar), one_jar(2, jar)))
    assert two == pytest.approx(2.0 * one)


def test_enlargement_film_hand_and_drop_count_for_what_they_are() -> None:
    base = one_jar(1, Jar(number=1, liquid="first"))
    (need,) = jar_needs(base.case, base.coats)
    block = replace(base.case.materials.blocks[0], enlargement_factor=1.0)
    sintered = replace(base.case, materials=replace(base.case.materials, blocks=(block,)))
    assert need.ml == pytest.approx(1.25**2 * jar_needs(sintered, base.coats)[0].ml)
    process = StainProcess(
        uptake=UptakeRule(hand_factor=1.2),
        amounts=JarAmounts(drops_per_ml=25.0, film_per_coat_mm=0.12, left_in_jar_drops=0.0),
    )
    (other,) = jar_needs(replace(base.case, process=process), base.coats)
    assert other.ml == pytest.approx(2.4 * need.ml)
    assert other.drops == pytest.approx(2.4 * 25.0 / 20.0 * need.drops)


def test_every_unit_has_its_own_part_and_none_is_lost() -> None:
    case = dome_case(12, 24)
    left = case.surface.mesh.vertices[:, 0] > 0.01
    case = replace(
        case,
        units=(Unit(tooth=Tooth(number=14)), Unit(tooth=Tooth(number=15))),
        reading=replace(case.reading, unit_index=left.astype(np.uint8)),
    )
    one = painted(case)
    for need in jar_needs(case, one.coats):
        assert len(need.unit_ml) == 2
        assert all(ml > 0.0 for ml in need.unit_ml)
        assert need.ml == pytest.approx(sum(ml for _, ml in need.step_ml))
    whole = replace(case, units=case.units[:1])
    for need, split in zip(jar_needs(whole, one.coats), jar_needs(case, one.coats), strict=True):
        assert need.ml == pytest.approx(split.ml)


@given(JARS)
def test_the_smallest_jar_keeps_ratios_and_cannot_be_smaller(jar: Jar) -> None:
    small = smallest_jar(jar)
    assert small.dilution == pytest.approx(jar.dilution, abs=1e-15)
    for mine, theirs in zip(small.dye_drops, jar.dye_drops, strict=True):
        assert Fraction(mine, small.liquid_drops) == Fraction(theirs, jar.liquid_drops)
    assert math.gcd(small.liquid_drops, *small.dye_drops) == 1


@given(JARS, st.floats(0.0, 500.0), st.floats(0.0, 20.0))
def test_the_smallest_for_a_need_holds_it_and_one_less_would_not(
    jar: Jar, need: float, left: float
) -> None:
    amounts = JarAmounts(left_in_jar_drops=left)
    one, found = smallest_jar(jar), smallest_for(jar, need, amounts)
    assert holds_enough(found, need, amounts)
    count, rest = divmod(found.liquid_drops, one.liquid_drops)
    assert rest == 0
    assert found.dye_drops == tuple(count * drops for drops in one.dye_drops)
    if count > 1:
        fewer = replace(
            one,
            liquid_drops=(count - 1) * one.liquid_drops,
            dye_drops=tuple((count - 1) * drops for drops in one.dye_drops),
        )
        assert not holds_enough(fewer, need, amounts)


def test_what_a_jar_serves() -> None:
    jar = Jar(number=1, liquid="first", dye_drops=(2, 0, 0))
    one = one_jar(2, jar)
    needs = jar_needs(one.case, one.coats)
    # 27 drops, of which 5 stay behind.
    assert units_served(jar, needs) == int(22.0 / needs[0].drops)
    bare = replace(one, coats=np.zeros_like(one.coats))
    assert units_served(jar, jar_needs(bare.case, bare.coats)) is None
    assert served_text(None) == "nothing"
    assert served_text(1) == "1 unit"


@pytest.mark.parametrize(
    ("amounts", "said"),
    [
        ({"drops_per_ml": 0.0}, "drops in a millilitre"),
        ({"film_per_coat_mm": 0.0}, "film of 0 mm"),
        ({"left_in_jar_drops": -1.0}, "left in the jar"),
        ({"drops_per_ml": math.nan}, "drops in a millilitre"),
    ],
)
def test_amounts_nobody_has_are_refused(amounts: dict[str, float], said: str) -> None:
    with pytest.raises(PlanError, match=said):
        JarAmounts(**amounts)


# --- a tray ----------------------------------------------------------------------------------


def test_a_tray_of_the_sample_by_hand() -> None:
    """Three of the sample molar; every figure is worked out here from areas and coats alone."""
    case = read_case(sample_case("lower_molar_36.stainmap"))
    one = painted(case)
    tray = tray_mixing([replace(one, case=replace(case, code=f"T-{k}")) for k in range(3)])
    assert not tray.left_out
    area_mm2 = case.surface.mesh.vertex_areas
    enlargement = case.materials.block(case.plan.block).enlargement_factor
    for jar in tray.jars:
        coat_mm2 = sum(
            float(area_mm2 @ one.coats[index])
            for index, step in enumerate(case.plan.steps)
            if case.plan.liquid_of(step) == jar.jar.liquid
        )
        drops = 3 * coat_mm2 * enlargement**2 * 0.06 / 1000.0 / 0.05
        assert jar.need_drops == pytest.approx(drops, rel=1e-5)
        planned = next(j for j in case.plan.jars if j.liquid == jar.jar.liquid)
        # 25 drops with 2 to 3 of dye hold that and the 5 that stay.
        assert drops + 5.0 < 27.0
        assert (jar.jar.liquid_drops, jar.jar.dye_drops) == (25, planned.dye_drops)
        usable = 25 + sum(planned.dye_drops) - 5.0
        assert jar.serves == min(int(usable / (drops / 3)), 99)
        assert jar.units == 3
    assert [jar.jar.number for jar in tray.jars] == [jar.number for jar in case.plan.jars]


def test_jars_of_one_recipe_are_put_together_and_two_batches_mixed_where_one_runs_dry() -> None:
    jar = Jar(number=1, liquid="first", liquid_drops=25, dye_drops=(2, 0, 0))
    cases = [one_jar(12, jar, f"T-{k}") for k in range(14)]
    need = jar_needs(cases[0].case, cases[0].coats)[0].drops
    tray = tray_mixing(cases)
    (pooled,) = tray.jars
    assert pooled.need_drops == pytest.approx(14 * need)
    batches = math.ceil((14 * need + 5.0) / 27.0)
    assert batches > 1
    assert (pooled.jar.liquid_drops, pooled.jar.dye_drops) == (25 * batches, (2 * batches, 0, 0))
    assert any(f"{batches} batches of 25 drops" in remark for remark in tray.remarks)


def test_other_dye_or_another_liquid_of_the_same_name_is_another_jar() -> None:
    one = one_jar(2, Jar(number=1, liquid="first", dye_drops=(2, 0, 0)), "T-1")
    two = one_jar(2, Jar(number=1, liquid="first", dye_drops=(3, 0, 0)), "T-2")
    same = one_jar(2, Jar(number=4, liquid="first", liquid_drops=50, dye_drops=(4, 0, 0)), "T-3")
    tray = tray_mixing([one, two, same])
    assert [len(jar.servings) for jar in tray.jars] == [2, 1]
    assert len({jar.jar.number for jar in tray.jars}) == 2
    assert any("more than one way" in remark for remark in tray.remarks)
    assert any("is jar 4 in T-3" in remark for remark in tray.remarks)
    first, *others = two.case.materials.liquids
    stronger = replace(first, amplitudes_per_mm=(("X", 0.31),))
    materials = replace(two.case.materials, liquids=(stronger, *others))
    changed = replace(one, case=replace(one.case, materials=materials))
    assert len(tray_mixing([one, changed]).jars) == 2


def test_lots_are_kept_and_two_of_them_are_spoken_of() -> None:
    jar = Jar(number=1, liquid="first", lot="A7")
    assert tray_mixing([one_jar(1, jar), one_jar(1, replace(jar, lot=""))]).jars[0].jar.lot == "A7"
    tray = tray_mixing([one_jar(1, jar), one_jar(1, replace(jar, lot="B2"))])
    assert tray.jars[0].jar.lot == ""
    assert any("the lots A7, B2" in remark for remark in tray.remarks)


def test_too_much_dye_is_said_and_so_is_a_jar_nobody_paints_with() -> None:
    tray = tray_mixing([one_jar(1, Jar(number=1, liquid="first", dye_drops=(4, 0, 0)))])
    assert any("16% of dye, more than 12%" in remark for remark in tray.remarks)
    usual = tray_mixing([one_jar(1, Jar(number=1, liquid="first", dye_drops=(3, 0, 0)))])
    assert not any("12%" in remark for remark in usual.remarks)
    nothing = one_jar(0, Jar(number=1, liquid="first"))
    assert any("nothing is painted with it" in remark for remark in tray_mixing([nothing]).remarks)


def test_a_case_whose_block_nobody_has_is_left_out_and_the_rest_goes_on() -> None:
    good = one_jar(2, Jar(number=1, liquid="first"), "T-1")
    no_block = replace(good.case, code="T-2", materials=replace(good.case.materials, blocks=()))
    no_liquid = replace(good.case, code="T-3", materials=replace(good.case.materials, liquids=()))
    tray = tray_mixing([replace(good, case=bad) for bad in (no_block, no_liquid)] + [good])
    assert len(tray.jars) == 1
    assert tray.jars[0].units == 1
    assert len(tray.left_out) == 2
    assert tray.left_out[0].startswith("T-2: There is no block called 'grey block'")
    assert tray.left_out[1].startswith("T-3: There is no liquid called")


def test_an_area_of_no_size_takes_nothing() -> None:
    tray = tray_mixing([one_jar(3, Jar(number=1, liquid="first"), zone=Zone.FISSURE)])
    assert tray.jars[0].need_drops == 0.0
    assert tray.jars[0].serves is None
    assert tray.jars[0].jar.liquid_drops == 25


def test_an_empty_tray_is_no_accident() -> None:
    assert tray_mixing([]) == TrayMixing(
        jars=(), left_out=(), remarks=(), least_difference=None, least_colour_blind=None
    )


MOULDS = {coats: one_jar(coats, Jar(number=1, liquid="first")) for coats in range(1, 13)}


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.tuples(
            st.integers(1, 12),
            st.integers(1, 6),
            st.sampled_from(["first", "second"]),
            st.integers(1, 3),
            st.integers(0, 2),
        ),
        min_size=1,
        max_size=12,
    )
)
def test_putting_jars_together_conserves_amounts_and_ratios(
    tray: list[tuple[int, int, str, int, int]],
) -> None:
    cases = []
    for k, (coats, number, liquid, times, dye) in enumerate(tray):
        jar = Jar(
            number=number, liquid=liquid, liquid_drops=25 * times, dye_drops=(dye * times, 0, 0)
        )
        mould = MOULDS[coats]
        step = replace(mould.case.plan.steps[0], jar=number)
        plan = replace(mould.case.plan, jars=(jar,), steps=(step,))
        cases.append(replace(mould, case=replace(mould.case, code=f"T-{k}", plan=plan)))
    pooled = tray_mixing(cases)
    alone = [tray_mixing([case]) for case in cases]
    wanted = math.fsum(one.jars[0].need_drops for one in alone)
    assert math.fsum(jar.need_drops for jar in pooled.jars) == pytest.approx(wanted, rel=1e-12)
    assert sum(len(jar.servings) for jar in pooled.jars) == len(cases)
    numbers = [jar.jar.number for jar in pooled.jars]
    assert len(set(numbers)) == len(numbers)
    for jar in pooled.jars:
        # Nothing runs dry, and every case gets the dilution that it was predicted with.
        assert all_drops(jar.jar) >= jar.need_drops + 5.0 - 1e-6
        assert all_drops(jar.smallest) <= all_drops(jar.jar)
        for serving in jar.servings:
            own = serving.need.jar
            assert own.liquid == jar.jar.liquid
            for mixed in (jar.jar, jar.smallest):
                assert Fraction(mixed.dye_drops[0], mixed.liquid_drops) == Fraction(
                    own.dye_drops[0], own.liquid_drops
                )
    # The order of the cases changes no amount.
    backwards = tray_mixing(cases[::-1])
    assert sorted(round(j.need_drops, 9) for j in backwards.jars) == sorted(
        round(j.need_drops, 9) for j in pooled.jars
    )
    # Together they never take more than each alone, in smallest jars.
    assert sum(all_drops(j.smallest) for j in pooled.jars) <= sum(
        all_drops(one.jars[0].smallest) for one in alone
    )


def test_more_dye_makes_every_coat_count_less_in_the_prediction() -> None:
    def load(dye: int, coats: float) -> float:
        one = one_jar(1, Jar(number=1, liquid="first", dye_drops=(dye, 0, 0))).case
        scene = build_scene(one.materials, one.plan, programme="slow", backings=one.backings)
        return float(load_of_coats(scene, np.array([[coats]]))[0, 0])

    # 25 drops among 28 and 28/25 coats of it are one undiluted coat.
    assert load(3, 28.0 / 25.0) == pytest.approx(load(0, 1.0), rel=1e-6)
    assert load(3, 1.0) < load(0, 1.0)
