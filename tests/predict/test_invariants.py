"""What must hold for every plan on every wall: the whole chain, by the plain calculation.

The single layer and the stack have their own tests in ``tests/optics``; here are scenes built from
the starter materials, with random blocks, stumps, programmes, steps, hands and rules of uptake.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise, product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from stainmap.model.case import Backing, Region
from stainmap.model.crown import MeshSource
from stainmap.model.material import Provenance, Segment, SinteringProgramme
from stainmap.model.plan import Jar, StainPlan, Step
from stainmap.optics.difference import delta_e_00, delta_e_76
from stainmap.optics.slab import km_infinite_reflectance
from stainmap.predict.reference import (
    lab_of_reflectance,
    load_of_coats,
    reference_lab,
    reflectance_of_load,
)
from stainmap.predict.scene import OpticalScene, StainProcess, build_scene
from stainmap.predict.sintering import class_factor, time_class
from stainmap.predict.uptake import UptakeRule, load_after_steps
from stainmap.units import LengthUnit, SizeState
from tests.predict.scenes import BLACK_TILE, WHITE_TILE, materials, plan_of, scene_of

always = settings(max_examples=40, deadline=None, derandomize=True, database=None)

LIQUIDS = tuple(liquid.name for liquid in materials().liquids)
SOLID_BLOCKS = tuple(block.name for block in materials().blocks if len(block.layers) == 1)
STUMPS = tuple(stump.name for stump in materials().stumps)
CEMENTS = tuple(cement.name for cement in materials().cements)
PROGRAMMES = tuple(programme.name for programme in materials().programmes)

steps = st.lists(
    st.tuples(st.sampled_from(LIQUIDS), st.floats(0.0, 6.0), st.integers(0, 6)),
    min_size=1,
    max_size=7,
)
rules = st.builds(
    UptakeRule,
    coats_to_saturation=st.floats(1.0, 12.0),
    competition=st.one_of(st.sampled_from([0.0, 1.0]), st.floats(0.0, 1.0)),
    hand_factor=st.floats(0.6, 1.6),
)
walls = st.floats(0.2, 3.0)

PlannedStep = tuple[str, float, int]


@dataclass(frozen=True)
class Surroundings:
    """All but the plan: block, what is behind, programme, light."""

    block: str
    stump: str
    cement: str
    cement_mm: float
    programme: str
    light: str

    def scene(self, plan: Sequence[PlannedStep], rule: UptakeRule | None = None) -> OpticalScene:
        """Return the scene of (liquid, coats, drops of dye) steps, every step with its own jar."""
        jars = tuple(
            Jar(number=number, liquid=liquid, dye_drops=(dye, 0, 0))
            for number, (liquid, _, dye) in enumerate(plan, start=1)
        )
        return build_scene(
            materials(),
            StainPlan(
                block=self.block,
                jars=jars,
                steps=tuple(Step(jar=jar.number) for jar in jars),
            ),
            programme=self.programme,
            backings=[
                Backing(
                    region=Region.STUMP,
                    stump=self.stump,
                    cement=self.cement,
                    cement_thickness_mm=self.cement_mm,
                )
            ],
            light=self.light,
            process=StainProcess(uptake=rule or UptakeRule()),
        )


surroundings = st.builds(
    Surroundings,
    block=st.sampled_from(SOLID_BLOCKS),
    stump=st.sampled_from(STUMPS),
    cement=st.sampled_from(CEMENTS),
    cement_mm=st.floats(0.0, 0.2),
    programme=st.sampled_from(PROGRAMMES),
    light=st.sampled_from(["D65", "A"]),
)


def coats_of(plan: Sequence[PlannedStep]) -> NDArray[np.float64]:
    return np.array([[coats] for _, coats, _ in plan]).reshape(len(plan), 1)


def reflectance(
    scene: OpticalScene, coats: NDArray[np.float64], wall_mm: float, **more: object
) -> NDArray[np.float64]:
    """Return the reflectance per band of one wall, (B,)."""
    return reflectance_of_load(scene, load_of_coats(scene, coats), [wall_mm], **more)[0]


def luminance(scene: OpticalScene, R: NDArray[np.float64]) -> NDArray[np.float64]:
    return R @ scene.xyz_weights[:, 1]


# ------------------------------------------------------------------------------------------------
# Another coat: no load falls, no value rises


@always
@given(
    around=surroundings,
    plan=steps,
    rule=rules,
    last=st.tuples(st.sampled_from(LIQUIDS), st.floats(0.0, 6.0), st.integers(0, 6)),
    wall_mm=walls,
    inside=st.booleans(),
)
def test_a_coat_on_top_of_all_lowers_no_load_and_raises_no_value(
    around: Surroundings,
    plan: list[PlannedStep],
    rule: UptakeRule,
    last: PlannedStep,
    wall_mm: float,
    inside: bool,
) -> None:
    """Any liquid, any eta, any jar and hand, outside or inside, on any wall: band by band."""
    scene = around.scene([*plan, last], rule)
    assert not scene.scatter_change.any()
    more = coats_of([*plan, last])
    before = more.copy()
    before[-1] = 0.0
    loads = [load_of_coats(scene, coats) for coats in (before, more)]
    assert (loads[1] >= loads[0]).all()
    none = np.zeros_like(loads[0])
    R = [
        reflectance_of_load(scene, none, [wall_mm], load)[0]
        if inside
        else reflectance_of_load(scene, load, [wall_mm], none)[0]
        for load in loads
    ]
    assert (R[1] <= R[0] + 1e-15).all()
    assert luminance(scene, R[1]) <= luminance(scene, R[0])
    if not inside and (loads[1] - loads[0]).max() > 1e-4:
        assert luminance(scene, R[1]) < luminance(scene, R[0])


@always
@given(
    around=surroundings,
    liquids=st.lists(st.sampled_from(LIQUIDS), min_size=3, max_size=7, unique=True),
    eta=st.floats(0.3, 0.9),
    saturation=st.floats(1.0, 3.0),
)
def test_full_pores_take_nothing_and_lose_nothing(
    around: Surroundings, liquids: list[str], eta: float, saturation: float
) -> None:
    """Between the two ends of eta all loads together pass 1: then late coats find no room.

    Without a floor the room would be negative, and a late coat would take stain away.
    """
    plan = [*((liquid, 6.0, 0) for liquid in liquids), (liquids[0], 6.0, 0)]
    rule = UptakeRule(competition=eta, coats_to_saturation=saturation)
    scene = around.scene(plan, rule)
    before = np.zeros(len(scene.liquids))
    value = np.inf
    for count in range(1, len(plan) + 1):
        coats = coats_of(plan)
        coats[count:] = 0.0
        load = load_of_coats(scene, coats)[:, 0]
        assert (load >= before).all()
        painted = luminance(scene, reflectance(scene, coats, 1.2))
        assert painted <= value
        before, value = load, painted


def test_an_early_pale_coat_may_take_the_pores_of_a_dark_one() -> None:
    """Why the rule above says "on top of all": with eta 1 a coat put in before can raise Y.

    With eta 0 it cannot, see the next test.
    """
    plan = [("flax", 3.0, 0), ("umber", 3.0, 0)]
    around = Surroundings("medium 3Y", "natural dentine, medium", "clear", 0.0, "slow", "D65")
    scene = around.scene(plan)
    without, with_pale = (reflectance(scene, np.array([[n], [3.0]]), 1.2) for n in (0.0, 3.0))
    assert luminance(scene, with_pale) > luminance(scene, without) + 0.01


@always
@given(
    around=surroundings,
    plan=steps,
    at=st.integers(0, 6),
    more=st.floats(0.1, 4.0),
    wall_mm=walls,
    rule=rules,
)
def test_without_competition_a_coat_anywhere_never_raises_value(
    around: Surroundings,
    plan: list[PlannedStep],
    at: int,
    more: float,
    wall_mm: float,
    rule: UptakeRule,
) -> None:
    scene = around.scene(plan, replace(rule, competition=0.0))
    coats = coats_of(plan)
    richer = coats.copy()
    richer[at % len(plan)] += more
    assert (load_of_coats(scene, richer) >= load_of_coats(scene, coats) - 1e-15).all()
    R, less = (reflectance(scene, one, wall_mm) for one in (coats, richer))
    assert (less <= R + 1e-15).all()


# ------------------------------------------------------------------------------------------------
# Order, part coats


@always
@given(plan=steps, rule=rules, seed=st.integers(0, 2**32 - 1), around=surroundings, wall_mm=walls)
def test_order_does_not_matter_without_competition(
    plan: list[PlannedStep], rule: UptakeRule, seed: int, around: Surroundings, wall_mm: float
) -> None:
    """Any shuffle of any number of steps leaves loads and colour where they were."""
    alone = replace(rule, competition=0.0)
    order = np.random.default_rng(seed).permutation(len(plan))
    shuffled = [plan[index] for index in order]
    labs, loads = [], []
    for one in (plan, shuffled):
        scene = around.scene(one, alone)
        load = load_of_coats(scene, coats_of(one))[:, 0]
        loads.append(dict(zip(scene.liquids, load, strict=True)))
        labs.append(reference_lab(scene, coats_of(one), [wall_mm])[0])
    assert loads[0] == pytest.approx(loads[1], abs=1e-12)
    assert delta_e_76(*labs) < 1e-8


@always
@given(
    liquids=st.lists(st.sampled_from(LIQUIDS), min_size=2, max_size=2, unique=True),
    coats=st.tuples(st.floats(0.5, 5.0), st.floats(0.5, 5.0)),
    eta=st.floats(0.02, 1.0),
    around=surroundings,
)
def test_order_matters_with_competition(
    liquids: list[str], coats: tuple[float, float], eta: float, around: Surroundings
) -> None:
    """Two liquids one after the other: the first gets what it would alone, the second less.

    By eta u1 of its room, in closed form; the colour of a reversed order is another one.
    """
    rule = UptakeRule(competition=eta)
    alone = [1.0 - np.exp(-c / 4.0) for c in coats]
    labs = []
    for first, second in ((0, 1), (1, 0)):
        plan = [(liquids[first], coats[first], 0), (liquids[second], coats[second], 0)]
        scene = around.scene(plan, rule)
        load = load_of_coats(scene, coats_of(plan))[:, 0]
        assert load[0] == pytest.approx(alone[first], abs=1e-12)
        assert load[1] == pytest.approx(alone[second] * (1.0 - eta * alone[first]), abs=1e-12)
        labs.append(reference_lab(scene, coats_of(plan), [1.2])[0])
    assert delta_e_76(*labs) > 1e-4 * eta


@always
@given(around=surroundings, plan=steps, rule=rules, at=st.integers(0, 6), wall_mm=walls)
def test_part_coats_are_continuous(
    around: Surroundings, plan: list[PlannedStep], rule: UptakeRule, at: int, wall_mm: float
) -> None:
    """No jump anywhere between 0 and 6 coats, and none at whole numbers.

    A coat changes no colour by more than 40 dEab (the darkest liquid, from nothing, a wet hand
    and little to saturate: about 35), so a ten-millionth of one by no more than 4e-6.
    """
    at %= len(plan)
    scene = around.scene(plan, rule)
    place = np.repeat(np.arange(0.0, 6.01, 0.25), 3).reshape(-1, 3)
    tiny = 1e-7
    many = np.repeat(coats_of(plan), place.size, axis=1)
    many[at] = np.maximum(place + np.array([-tiny, 0.0, tiny]), 0.0).ravel()
    labs = reference_lab(scene, many, np.full(place.size, wall_mm)).reshape(-1, 3, 3)
    assert delta_e_76(labs[:, 0], labs[:, 1]).max() <= 40.0 * tiny
    assert delta_e_76(labs[:, 2], labs[:, 1]).max() <= 40.0 * tiny
    assert delta_e_76(labs[1:, 1], labs[:-1, 1]).max() <= 40.0 * 0.25


@always
@given(
    liquid=st.sampled_from(LIQUIDS),
    coats=st.floats(0.1, 6.0),
    parts=st.lists(st.floats(0.05, 1.0), min_size=2, max_size=6),
    before=steps,
    rule=rules,
)
def test_a_coat_in_parts_is_the_same_coat(
    liquid: str,
    coats: float,
    parts: list[float],
    before: list[PlannedStep],
    rule: UptakeRule,
) -> None:
    """Of one jar, one part right after the other, on whatever is there already."""
    names = [*(name for name, _, _ in before), liquid]
    known = list(dict.fromkeys(names))

    def load(amounts: Sequence[float]) -> NDArray[np.float64]:
        all_coats = [*(c for _, c, _ in before), *amounts]
        which = [known.index(name) for name in [*names, *[liquid] * (len(amounts) - 1)]]
        return load_after_steps(
            np.array(all_coats)[:, None],
            which,
            np.ones(len(which)),
            liquid_count=len(known),
            rule=rule,
        )[:, 0]

    split = [coats * part / sum(parts) for part in parts]
    assert load(split) == pytest.approx(load([coats]), abs=1e-12)


# ------------------------------------------------------------------------------------------------
# A darker block


@always
@given(
    around=surroundings,
    plan=steps,
    rule=rules,
    wall_mm=walls,
    more=st.lists(st.floats(0.0, 0.5), min_size=31, max_size=31),
)
def test_a_block_that_absorbs_more_never_gives_a_lighter_result(
    around: Surroundings,
    plan: list[PlannedStep],
    rule: UptakeRule,
    wall_mm: float,
    more: list[float],
) -> None:
    scene = around.scene(plan, rule)
    darker = replace(
        scene, block_absorption_per_mm=scene.block_absorption_per_mm + np.array(more) * 2.753
    )
    R, less = (reflectance(one, coats_of(plan), wall_mm) for one in (scene, darker))
    assert (less <= R + 1e-15).all()
    if max(more[10:25]) > 1e-3:
        assert luminance(scene, less) < luminance(scene, R)


@always
@given(
    kind=st.sampled_from(["3Y", "4Y", "5Y"]),
    around=surroundings,
    plan=steps,
    rule=rules,
    wall_mm=walls,
)
def test_darker_starter_blocks_stay_darker_under_every_plan(
    kind: str, around: Surroundings, plan: list[PlannedStep], rule: UptakeRule, wall_mm: float
) -> None:
    """Of one class, the same wall, stump and plan: bare and painted in the same order of value.

    From white over light and medium to deep; greyish and deep lie close, and are compared by
    what they are bare.
    """
    shades = ("white", "light", "medium", "deep", "greyish")
    scenes = [replace(around, block=f"{shade} {kind}").scene(plan, rule) for shade in shades]
    bare, painted = (
        np.array([luminance(s, reflectance(s, coats, wall_mm)) for s in scenes])
        for coats in (0.0 * coats_of(plan), coats_of(plan))
    )
    for values in (bare, painted):
        assert (np.diff(values[:4]) < 0.0).all()
    apart = bare[3] - bare[4]
    if abs(apart) > 0.01:
        assert (painted[3] - painted[4]) * np.sign(apart) > 0.0


# ------------------------------------------------------------------------------------------------
# Programmes


def translucency(
    block: str,
    programme: str,
    wall_mm: float,
    coats: Sequence[tuple[str, float]] = (),
    **more: object,
) -> float:
    """Return the translucency parameter: dEab over white and over black, against air."""
    labs = []
    for tile in (WHITE_TILE, BLACK_TILE):
        scene = scene_of([name for name, _ in coats], block, programme=programme, backings=[tile])
        painted = np.array([[n] for _, n in coats]).reshape(len(coats), 1)
        labs.append(reference_lab(scene, painted, [wall_mm])[0])
    return float(delta_e_76(*labs))


@pytest.mark.parametrize("block", SOLID_BLOCKS)
def test_every_slower_starter_programme_is_more_translucent(block: str) -> None:
    """Class by class, any wall, bare or painted (common practice; published direction)."""
    by_time = sorted(materials().programmes, key=lambda one: -one.minutes)
    assert [time_class(one.minutes) for one in by_time] == [
        "slow",
        "standard",
        "fast",
        "very fast",
    ]
    for wall_mm, coats in product((0.4, 1.0, 2.0), ((), (("barley", 2.0), ("umber", 1.0)))):
        found = [translucency(block, one.name, wall_mm, coats) for one in by_time]
        assert all(slower > faster for slower, faster in pairwise(found))


def programme_of(total: float, shares: Sequence[float], peak_c: float) -> SinteringProgramme:
    """Return ramps and a hold of a total time in minutes, with the factor of its class."""
    minutes = total * np.array(shares) / sum(shares)
    targets = [0.6 * peak_c, peak_c, peak_c, 300.0]
    segments = tuple(
        Segment(target_c=target, minutes=float(m))
        for target, m in zip(targets, minutes, strict=True)
    )
    return SinteringProgramme(
        name="own",
        segments=segments,
        scattering_factor=class_factor(sum(one.minutes for one in segments)),
        provenance=Provenance.INVENTED,
    )


shares = st.lists(st.floats(0.1, 1.0), min_size=4, max_size=4)


@always
@given(
    slow=st.tuples(st.floats(421.0, 900.0), shares, st.floats(1450.0, 1600.0)),
    fast=st.tuples(st.floats(15.0, 120.0), shares, st.floats(1450.0, 1600.0)),
    block=st.sampled_from(SOLID_BLOCKS),
    wall_mm=st.floats(0.3, 2.5),
)
def test_every_slow_programme_is_more_translucent_than_every_fast_one(
    slow: tuple[float, list[float], float],
    fast: tuple[float, list[float], float],
    block: str,
    wall_mm: float,
) -> None:
    """Random ramps and holds; the hottest fast one too, which does more work of sintering."""
    found = []
    for total, parts, peak_c in (slow, fast):
        own = programme_of(total, parts, peak_c)
        catalogue = replace(materials(), programmes=(*materials().programmes, own))
        labs = []
        for tile in (WHITE_TILE, BLACK_TILE):
            scene = build_scene(catalogue, plan_of([], block), programme="own", backings=[tile])
            labs.append(reference_lab(scene, np.zeros((0, 1)), [wall_mm])[0])
        found.append((delta_e_76(*labs), delta_e_00(*labs)))
    assert found[0][0] > found[1][0]
    assert found[0][1] > found[1][1]


# ------------------------------------------------------------------------------------------------
# Walls without end, and none


@always
@given(around=surroundings, plan=steps, rule=rules)
def test_nothing_behind_matters_to_an_endless_wall(
    around: Surroundings, plan: list[PlannedStep], rule: UptakeRule
) -> None:
    """Whatever the stump, and whatever the stain put inside: R of stained layer on ceramic."""
    other = replace(around, stump="black tile", cement="none, air gap")
    deep = [reflectance(one.scene(plan, rule), coats_of(plan), 400.0) for one in (around, other)]
    np.testing.assert_allclose(deep[0], deep[1], rtol=1e-6)
    scene = around.scene(plan, rule)
    load = load_of_coats(scene, coats_of(plan))
    inside = reflectance_of_load(scene, load, [400.0], load + 0.5)[0]
    np.testing.assert_allclose(inside, deep[0], rtol=1e-6)
    # Bare: R infinite of the block, behind the front surface.
    bare = reflectance(scene, 0.0 * coats_of(plan), 400.0)
    own = km_infinite_reflectance(
        scene.block_absorption_per_mm[0], scene.block_scattering_per_mm[0]
    )
    np.testing.assert_allclose(bare, _outside(scene, own), rtol=1e-6)
    # And no overflow on the way to a wall of a kilometre.
    assert np.isfinite(reflectance(scene, coats_of(plan), 1e6)).all()


@always
@given(around=surroundings, plan=steps, rule=rules)
def test_no_wall_shows_what_is_behind(
    around: Surroundings, plan: list[PlannedStep], rule: UptakeRule
) -> None:
    """The stained layers shrink with the wall, so that without a wall there is no stain either."""
    scene = around.scene(plan, rule)
    behind = _outside(scene, scene.backing_reflectance[0])
    for wall_mm, tolerance in ((0.0, 1e-14), (1e-9, 1e-6)):
        found = reflectance(scene, coats_of(plan), wall_mm)
        np.testing.assert_allclose(found, behind, atol=tolerance)


@always
@given(around=surroundings, wall_mm=walls)
def test_own_reflectance_behind_hides_the_wall(around: Surroundings, wall_mm: float) -> None:
    """R infinite of the block as backing: a wall of any thickness looks the same."""
    scene = around.scene([("flax", 0.0, 0)])
    own = km_infinite_reflectance(scene.block_absorption_per_mm, scene.block_scattering_per_mm)
    scene = replace(scene, backing_reflectance=own)
    found = reflectance(scene, np.zeros((1, 1)), wall_mm)
    np.testing.assert_allclose(found, _outside(scene, own[0]), rtol=1e-9)


def _outside(scene: OpticalScene, R: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return ``factor R / (1 - ki R)`` [Saunderson1942], written out."""
    return scene.hemispherical_factor * R / (1.0 - scene.front_internal * R)


# ------------------------------------------------------------------------------------------------
# Energy, splitting, scale


@always
@given(around=surroundings, plan=steps, rule=rules, wall_mm=walls, inside=st.booleans())
def test_no_crown_gives_back_more_than_enters(
    around: Surroundings, plan: list[PlannedStep], rule: UptakeRule, wall_mm: float, inside: bool
) -> None:
    """At most what a ceramic without absorption on a perfect mirror gives: all that entered."""
    scene = around.scene(plan, rule)
    R = reflectance(scene, coats_of(plan), wall_mm, inside=[inside])
    entering = scene.hemispherical_factor / (1.0 - scene.front_internal)
    assert (R > 0.0).all()
    assert (entering > R).all()
    assert (entering < 1.0).all()
    perfect = replace(
        scene,
        block_absorption_per_mm=0.0 * scene.block_absorption_per_mm,
        liquid_absorption_per_mm=0.0 * scene.liquid_absorption_per_mm,
        backing_reflectance=np.ones_like(scene.backing_reflectance),
    )
    np.testing.assert_allclose(reflectance(perfect, coats_of(plan), wall_mm), entering, rtol=1e-9)


@always
@given(
    around=surroundings,
    plan=steps,
    wall_mm=walls,
    depths=st.tuples(st.floats(0.05, 1.0), st.floats(0.05, 1.0)),
    blend=st.floats(0.0, 1.0),
)
def test_cutting_unstained_ceramic_into_layers_changes_nothing(
    around: Surroundings,
    plan: list[PlannedStep],
    wall_mm: float,
    depths: tuple[float, float],
    blend: float,
) -> None:
    """Layers that hold no stain, and layers of a block that are the same, cannot be seen."""
    scene = around.scene(plan)
    nothing = 0.0 * coats_of(plan)
    plain = reflectance(scene, nothing, wall_mm)
    cut = replace(
        scene,
        process=replace(scene.process, outer_depth_mm=depths[0], inner_depth_mm=depths[1]),
    )
    np.testing.assert_allclose(reflectance(cut, nothing, wall_mm), plain, atol=1e-12)
    twice = replace(
        scene,
        block_absorption_per_mm=np.repeat(scene.block_absorption_per_mm, 2, axis=0),
        block_scattering_per_mm=np.repeat(scene.block_scattering_per_mm, 2, axis=0),
        layer_share=np.array([[blend], [1.0 - blend]]),
    )
    coats = coats_of(plan)
    np.testing.assert_allclose(
        reflectance(twice, coats, wall_mm), reflectance(scene, coats, wall_mm), atol=1e-12
    )


@always
@given(around=surroundings, plan=steps, rule=rules, wall_mm=walls, c=st.floats(0.25, 20.0))
def test_only_ratios_matter_to_the_whole_wall(
    around: Surroundings, plan: list[PlannedStep], rule: UptakeRule, wall_mm: float, c: float
) -> None:
    """All absorption and scattering times c, all lengths by c: the same reflectance."""
    scene = around.scene(plan, rule)
    process = scene.process
    scaled = replace(
        scene,
        block_absorption_per_mm=c * scene.block_absorption_per_mm,
        block_scattering_per_mm=c * scene.block_scattering_per_mm,
        liquid_absorption_per_mm=c * scene.liquid_absorption_per_mm,
        process=replace(
            process,
            outer_depth_mm=process.outer_depth_mm / c,
            inner_depth_mm=process.inner_depth_mm / c,
        ),
    )
    np.testing.assert_allclose(
        reflectance(scaled, coats_of(plan), wall_mm / c),
        reflectance(scene, coats_of(plan), wall_mm),
        rtol=1e-9,
    )


@always
@given(around=surroundings, plan=steps, rule=rules, wall_mm=walls)
def test_vanishing_absorption_is_continuous_through_the_chain(
    around: Surroundings, plan: list[PlannedStep], rule: UptakeRule, wall_mm: float
) -> None:
    scene = around.scene(plan, rule)

    def faint(share: float) -> NDArray[np.float64]:
        return reflectance(
            replace(
                scene,
                block_absorption_per_mm=share * scene.block_absorption_per_mm,
                liquid_absorption_per_mm=share * scene.liquid_absorption_per_mm,
            ),
            coats_of(plan),
            wall_mm,
        )

    clear = faint(0.0)
    for share in (1e-300, 1e-20, 1e-14, 1e-11, 1e-8):
        found = faint(share)
        assert (found <= clear + 1e-14).all()
        np.testing.assert_allclose(found, clear, atol=1e-13 + 1e4 * share)


@always
@given(
    around=surroundings, liquid=st.sampled_from(LIQUIDS), coats=st.floats(0.3, 6.0), wall_mm=walls
)
def test_stain_shows_more_on_the_side_looked_at(
    around: Surroundings, liquid: str, coats: float, wall_mm: float
) -> None:
    """R is not the same from both sides: of two equal layers the near one takes more value."""
    plan = [(liquid, coats, 0)]
    scene = around.scene(plan)
    scene = replace(scene, process=replace(scene.process, outer_depth_mm=0.35, inner_depth_mm=0.35))
    load = load_of_coats(scene, coats_of(plan))
    near = reflectance_of_load(scene, load, [wall_mm], 0.0 * load)[0]
    far = reflectance_of_load(scene, 0.0 * load, [wall_mm], load)[0]
    assert luminance(scene, near) < luminance(scene, far)


# ------------------------------------------------------------------------------------------------
# Backing and translucency


@always
@given(around=surroundings, plan=steps, rule=rules, wall_mm=walls, other=st.sampled_from(STUMPS))
def test_a_lighter_backing_is_never_darker_in_any_band(
    around: Surroundings, plan: list[PlannedStep], rule: UptakeRule, wall_mm: float, other: str
) -> None:
    scene, beside = (
        replace(around, stump=stump).scene(plan, rule) for stump in (around.stump, other)
    )
    lighter = scene.backing_reflectance[0] > beside.backing_reflectance[0] + 1e-6
    darker = scene.backing_reflectance[0] < beside.backing_reflectance[0] - 1e-6
    R, R_beside = (reflectance(one, coats_of(plan), wall_mm) for one in (scene, beside))
    assert (R[lighter] >= R_beside[lighter]).all()
    assert (R[darker] <= R_beside[darker]).all()
    if wall_mm < 1.0:
        seen = np.abs(R - R_beside)[lighter | darker]
        assert (seen > 0.0).all()


@always
@given(around=surroundings, plan=steps, rule=rules, wall_mm=st.floats(0.2, 2.5))
def test_translucency_is_positive_and_goes_to_nothing(
    around: Surroundings, plan: list[PlannedStep], rule: UptakeRule, wall_mm: float
) -> None:
    """TP falls with the wall, the contrast ratio rises to 1; more absorption does the same."""
    tiles = [
        replace(around, stump=name, cement="none, air gap").scene(plan, rule)
        for name in ("black tile", "white tile")
    ]
    thickness = wall_mm * np.array([1.0, 1.3, 2.0, 4.0, 300.0])

    def seen(scenes: Sequence[OpticalScene]) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        coats = np.repeat(coats_of(plan), len(thickness), axis=1)
        R = [reflectance_of_load(s, load_of_coats(s, coats), thickness) for s in scenes]
        Y = [luminance(s, r) for s, r in zip(scenes, R, strict=True)]
        labs = [lab_of_reflectance(s, r) for s, r in zip(scenes, R, strict=True)]
        return delta_e_76(*labs), Y[0] / Y[1]

    parameter, ratio = seen(tiles)
    assert (parameter[:4] > 0.0).all()
    assert (np.diff(parameter) < 0.0).all()
    assert (np.diff(ratio) > 0.0).all()
    assert parameter[-1] < 1e-3
    assert ratio[-1] == pytest.approx(1.0, abs=1e-4)
    grey = [replace(s, block_absorption_per_mm=s.block_absorption_per_mm + 0.1) for s in tiles]
    less, higher = seen(grey)
    assert (less[:4] < parameter[:4]).all()
    assert (higher[:4] > ratio[:4]).all()


# ------------------------------------------------------------------------------------------------
# Sizes


@always
@given(
    enlargement=st.floats(1.0, 1.5),
    unit=st.sampled_from(LengthUnit),
    length=st.floats(0.1, 50.0),
)
def test_sintered_lengths_times_enlargement_are_milled_ones(
    enlargement: float, unit: LengthUnit, length: float
) -> None:
    """Whichever of the two sizes a file holds."""

    def sintered_mm(state: SizeState) -> float:
        source = MeshSource(
            name="crown.stl",
            content=b"",
            sha256="",
            unit=unit,
            size_state=state,
            enlargement_factor=enlargement,
        )
        return length * source.sintered_mm_per_unit

    as_read = length * unit.millimetres
    assert sintered_mm(SizeState.MILLED) * enlargement == pytest.approx(as_read, rel=1e-12)
    assert sintered_mm(SizeState.SINTERED) == pytest.approx(as_read, rel=1e-12)


@always
@given(
    enlargements=st.tuples(st.floats(1.15, 1.35), st.floats(1.15, 1.35)),
    block=st.sampled_from(SOLID_BLOCKS),
    liquid=st.sampled_from(LIQUIDS),
    wall_mm=walls,
)
def test_ions_are_conserved_and_walls_are_sintered_ones(
    enlargements: tuple[float, float], block: str, liquid: str, wall_mm: float
) -> None:
    """Two blanks that shrink unlike to the same ceramic, soaked full with the same liquid.

    Before sintering a volume holds pores of the share 1 - e^-3 (mass of a body that gets dense is
    conserved); it shrinks to e^-3. Ions per volume of pores are the liquid's own, so what the
    sintered ceramic absorbs, times its volume, by the volume of pores, is the same. The bare
    wall, given in sintered millimetres, looks the same however much larger it was milled.
    """
    ions, bare = [], []
    for e in enlargements:
        own = replace(materials().block(block), name="own", enlargement_factor=e)
        scene = build_scene(
            replace(materials(), blocks=(own,)),
            plan_of([liquid], "own"),
            programme="slow",
            backings=[WHITE_TILE],
        )
        pores, sintered_volume = 1.0 - e**-3, e**-3
        ions.append(scene.liquid_absorption_per_mm * sintered_volume / pores)
        bare.append(reflectance(scene, np.zeros((1, 1)), wall_mm))
    np.testing.assert_allclose(ions[0], ions[1], rtol=1e-9)
    np.testing.assert_array_equal(bare[0], bare[1])
