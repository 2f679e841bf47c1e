"""What the starter materials do, held to the trade and to published directions.

Trade directions are common practice, no published source; the published ones are taken from the
abstracts of the papers named. Materials are invented and so other ones than those of the papers:
what is compared are directions, orders and sizes, not single values.
"""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from itertools import product

import numpy as np
import pytest
from numpy.typing import NDArray

from stainmap.model.case import Backing, Region
from stainmap.model.zone import OUTER_ZONES, Zone
from stainmap.optics.difference import delta_e_00, delta_e_76
from stainmap.planning.coat_limits import excesses
from stainmap.predict.appearance import AppearanceEngine
from stainmap.predict.blocks import layer_share
from stainmap.predict.reference import reference_lab
from stainmap.predict.scene import build_scene, scene_from_case
from stainmap.predict.shape import crown_shape
from tests.predict.crowns import painted_dome
from tests.predict.scenes import (
    BLACK_TILE,
    DENTINE,
    WHITE_TILE,
    Coats,
    materials,
    plan_of,
    plate_lab,
    scene_of,
)
from tests.predict.worst_plans import (
    LIQUIDS,
    Place,
    every_look,
    extremes,
    plans_within_limits,
)

CLASSES = ("3Y", "4Y", "5Y")
SHADES = ("white", "light", "medium", "deep", "greyish")
TOOTH_COLOURED = ("light", "medium", "deep", "greyish")
WARM_BASES = ("flax", "barley", "tan", "clay")
VALUE_LOWERING = ("slate", "ash", "heather")
DENTINES = ("natural dentine, light", "natural dentine, medium", "natural dentine, dark")

PERCEPTIBLE_DE00 = 0.8
"""Half of the observers see it [Paravina2015] (its abstract)."""


def chroma(lab: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.hypot(lab[..., 1], lab[..., 2])


def on(stump: str, cement: str = "clear") -> Backing:
    return Backing(region=Region.STUMP, stump=stump, cement=cement)


def plates(
    outside: Coats,
    walls_mm: Sequence[float],
    *,
    block: str,
    backing: Backing = DENTINE,
    programme: str = "slow",
) -> NDArray[np.float64]:
    """Return L*a*b* of equally painted plates of several thicknesses, (walls, 3)."""
    scene = scene_of([name for name, _ in outside], block, backings=[backing], programme=programme)
    coats = np.array([[n] for _, n in outside]).reshape(len(outside), 1)
    return reference_lab(scene, np.repeat(coats, len(walls_mm), axis=1), walls_mm)


def translucency(
    block: str, walls_mm: Sequence[float], outside: Coats = (), programme: str = "slow"
) -> NDArray[np.float64]:
    """Return the translucency parameters: dEab over white and over black, against air."""
    white, black = (
        plates(outside, walls_mm, block=block, backing=tile, programme=programme)
        for tile in (WHITE_TILE, BLACK_TILE)
    )
    return delta_e_76(white, black)


# ------------------------------------------------------------------------------------------------
# Trade directions: common practice, no published source


NECK_WALLS_MM = (0.6, 0.8, 1.0)


@pytest.mark.parametrize("kind", CLASSES)
@pytest.mark.parametrize("shade", TOOTH_COLOURED)
def test_two_or_three_coats_of_a_base_at_the_neck_raise_chroma(shade: str, kind: str) -> None:
    """Visibly: the chroma term of CIEDE2000 alone is above what half of the observers see.

    On any natural stump, walls as at a neck.
    """
    for liquid, stump in product(WARM_BASES, DENTINES):
        bare, two, three = (
            plates([(liquid, n)], NECK_WALLS_MM, block=f"{shade} {kind}", backing=on(stump))
            for n in (0, 2, 3)
        )
        rise = chroma(two) - chroma(bare)
        # S_C of CIEDE2000 [Sharma2005]; a turn of hue would not count as chroma.
        visible = rise / (1.0 + 0.045 * 0.5 * (chroma(two) + chroma(bare)))
        assert (visible > PERCEPTIBLE_DE00).all(), (liquid, stump)
        assert (chroma(three) > chroma(two)).all()
        assert (delta_e_00(two, bare) > PERCEPTIBLE_DE00).all()
        assert (two[:, 0] < bare[:, 0]).all()


@pytest.mark.parametrize("kind", CLASSES)
@pytest.mark.parametrize("shade", TOOTH_COLOURED)
def test_the_greyish_base_raises_chroma_too_but_less(shade: str, kind: str) -> None:
    """Stone is meant to be greyish: its chroma rises with every coat, less than that of others."""
    block = f"{shade} {kind}"
    by_coats = chroma(
        np.array([plates([("stone", n)], NECK_WALLS_MM, block=block) for n in range(4)])
    )
    assert (np.diff(by_coats, axis=0) > 0.0).all()
    for other in ("barley", "tan", "clay"):
        assert (by_coats[2] < chroma(plates([(other, 2)], NECK_WALLS_MM, block=block))).all()


CUSP_WALLS_MM = (1.0, 1.2, 1.4, 1.8, 2.4)


def change_at_cusp(block: str, liquid: str) -> NDArray[np.float64]:
    """Return L*, a*, b* against the bare block, (walls, coats 1 and 2, 3)."""
    labs = [plates([(liquid, n)], CUSP_WALLS_MM, block=block) for n in (0, 1, 2)]
    return np.stack([labs[1] - labs[0], labs[2] - labs[0]], axis=1)


SOLID_BLOCKS = tuple(f"{shade} {kind}" for kind in CLASSES for shade in SHADES)


@pytest.mark.parametrize("block", SOLID_BLOCKS)
def test_one_or_two_coats_lower_the_value_of_a_cusp(block: str) -> None:
    """By 1 to 5 L* for every liquid meant for it, and by more with every coat."""
    for liquid in VALUE_LOWERING:
        fall = -change_at_cusp(block, liquid)[..., 0]
        assert (fall > 1.0).all()
        assert (fall[:, 1] > fall[:, 0]).all()
        assert (fall < 5.0).all()


@pytest.mark.parametrize("liquid", ["slate", "ash"])
@pytest.mark.parametrize("block", SOLID_BLOCKS)
def test_what_cools_a_cusp_does_not_turn_it_green(block: str, liquid: str) -> None:
    """a* stays within 0.6 of the unstained block, one and two coats."""
    assert np.abs(change_at_cusp(block, liquid)[..., 1]).max() <= 0.6


# ------------------------------------------------------------------------------------------------
# Umber where the crown is to be dark


def test_umber_at_margin_and_fissure_darkens_without_greying_the_body() -> None:
    """A margin band and a fissure line of umber on a hollow crown, wicking and light included.

    Both get darker and more chromatic; the body between them keeps value and chroma.
    """
    case = painted_dome(["barley", "umber"], rings=40)
    shape = crown_shape(case)
    engine = AppearanceEngine(shape, scene_from_case(case, bands="screen"))
    x, y, z = shape.mesh.vertices.T
    outer = shape.outer
    margin = outer & (z < 0.7)
    fissure = outer & (np.abs(x) < 0.25) & (np.abs(y) < 1.5) & (z > 0.0)
    # At least 1.5 mm from either: nearer, light carries some of the stain over, as it should.
    angle_above_rim = 5.0 * np.arcsin(np.clip(z / 5.0, -1.0, 1.0))
    body = outer & (angle_above_rim > 0.7 + 1.5) & (np.hypot(x, y) > 1.5 + 1.5)
    assert body.sum() > 200

    coats = np.zeros((2, shape.mesh.vertex_count), np.float32)
    coats[0, outer] = 1.0
    before = engine.whole(coats).lab.copy()
    coats[1, margin] = 1.0
    coats[1, fissure] = 3.0
    after = engine.whole(coats).lab

    change = after - before
    assert (change[:, 0] < 0.02).all()
    deep_margin = outer & (z < 0.35)
    line = outer & (np.abs(x) < 0.08) & (np.abs(y) < 1.0) & (z > 0.0)
    assert change[deep_margin, 0].max() < -2.0
    assert change[line, 0].max() < -2.5
    gained = chroma(after) - chroma(before)
    assert gained[deep_margin].min() > 1.0
    assert gained[line].min() > 1.0
    # Not greyed: neither darker nor paler than half of the observers would see.
    assert np.abs(gained[body]).max() < 0.3
    assert delta_e_00(after[body], before[body]).max() < 0.5 * PERCEPTIBLE_DE00


@pytest.mark.parametrize("block", [f"{shade} {kind}" for shade in SHADES for kind in CLASSES])
def test_umber_is_dark_and_warm(block: str) -> None:
    """Darker by at least 2 L* at the first coat, redder by the third, more chromatic with each."""
    for wall_mm in (0.6, 0.9, 1.3):
        labs = np.array([plate_lab([("umber", n)], wall_mm=wall_mm, block=block) for n in range(4)])
        assert labs[1, 0] < labs[0, 0] - 2.0
        assert (np.diff(labs[:, 0]) < 0.0).all()
        assert (np.diff(chroma(labs)) > 0.0).all()
        # On the whitest blocks the first coat leaves a* where it was.
        assert (np.diff(labs[:, 1]) > -0.1).all()
        assert labs[3, 1] > labs[0, 1] + 0.5


# ------------------------------------------------------------------------------------------------
# No plan leaves the colours of teeth

A_SPAN, B_SPAN = (-2.0, 6.0), (3.0, 30.0)
PROGRAMMES = tuple(programme.name for programme in materials().programmes)
CEMENTED = ("clear", "tooth-coloured", "opaque")
BLOCKS = tuple(block.name for block in materials().blocks)
EVERYTHING = bool(os.environ.get("STAINMAP_MORE"))
"""Set it for all walls, backings, programmes and coats inside: minutes, and nothing gets past."""

WALLS_MM = (1.0, 1.2, 1.5, 2.0, 2.5, 3.0) if EVERYTHING else (1.0, 1.5, 3.0)
CYCLES = PROGRAMMES if EVERYTHING else (PROGRAMMES[0], PROGRAMMES[-1])
INSIDE = plans_within_limits(Zone.INNER) if EVERYTHING else ({}, {"tan": 2}, {"stone": 2})

TEETH = (*DENTINES, "discoloured", "composite", "plug of a screw channel")
METALS = ("metal", "titanium base")
PONTIC, DARK_MOUTH = "solid ceramic (pontic)", "dark mouth"
EVERY_MASKED = (
    *(on(stump, cement) for stump in TEETH for cement in CEMENTED),
    *(on(stump, "opaque") for stump in METALS),
)
MASKED = (
    EVERY_MASKED
    if EVERYTHING
    else (
        on("natural dentine, light", "opaque"),
        on("natural dentine, dark"),
        on("discoloured"),
        on("plug of a screw channel", "opaque"),
        on("titanium base", "opaque"),
    )
)
"""Teeth and what is built up like teeth under any cement, metal under opaque cement."""

UNMASKED = (
    *(on(stump, cement) for stump in METALS for cement in ("clear", "tooth-coloured")),
    on(DARK_MOUTH),
)
"""Metal under cement that does not hide it, and nothing at all."""


@cache
def farthest(block: str, backings: tuple[Backing, ...]) -> dict[str, tuple[float, Place]]:
    """Return how far plans within the limits get on a block."""
    return extremes(block, backings, walls_mm=WALLS_MM, programmes=CYCLES, inside=INSIDE)


@pytest.mark.parametrize("block", BLOCKS)
def test_no_plan_within_the_limits_leaves_the_colours_of_teeth(block: str) -> None:
    """a* -2 to 6, b* 3 to 30 (from memory), walls of 1.0 to 3.0 mm, over teeth or masked metal.

    The bare block is one of the plans. Limits per area: common practice, no published source.
    """
    ends = farthest(block, MASKED)
    for name, (lowest, highest) in (("a", A_SPAN), ("b", B_SPAN)):
        assert ends[f"least {name}"][0] >= lowest, ends[f"least {name}"]
        assert ends[f"largest {name}"][0] <= highest, ends[f"largest {name}"]


@pytest.mark.parametrize("block", BLOCKS)
def test_what_is_not_masked_greens_a_thin_wall_and_no_more(block: str) -> None:
    """Over bare metal and over a dark mouth a* may fall to -2.8, bare or stained; b* keeps above 3.

    A clear wall of 1.0 mm lets grey and black through; no stain that is within the limits of
    these zones could redden it again. Nothing gets past the other bounds.
    """
    ends = farthest(block, UNMASKED)
    assert ends["least a"][0] >= -2.8, ends["least a"]
    assert ends["largest a"][0] <= A_SPAN[1], ends["largest a"]
    assert ends["least b"][0] >= B_SPAN[0], ends["least b"]
    assert ends["largest b"][0] <= B_SPAN[1], ends["largest b"]


@pytest.mark.parametrize("block", BLOCKS)
def test_pontics_keep_the_colours_of_teeth(block: str) -> None:
    """Solid ceramic is medium 3Y behind any block: a* to 6.6 and b* to 30.5 on the others."""
    ends = farthest(block, (on(PONTIC),))
    (lowest_a, highest_a), (lowest_b, highest_b) = A_SPAN, B_SPAN
    if block != "medium 3Y":
        highest_a, highest_b = 6.6, 30.5
    assert ends["least a"][0] >= lowest_a, ends["least a"]
    assert ends["largest a"][0] <= highest_a, ends["largest a"]
    assert ends["least b"][0] >= lowest_b, ends["least b"]
    assert ends["largest b"][0] <= highest_b, ends["largest b"]


def test_every_plan_that_an_area_may_have_is_tried() -> None:
    """Counted by hand for body, fissure and neck; no plan twice, none beyond the limits."""
    for area in (*OUTER_ZONES, Zone.INNER):
        plans = plans_within_limits(area)
        assert len({tuple(sorted(plan.items())) for plan in plans}) == len(plans)
        assert not any(excesses(area, plan, materials()) for plan in plans)
    # Five bases: none, 5 of one coat, 15 of two.
    assert len(plans_within_limits(Zone.BODY)) == 21
    # By amber 0, 1, 2: 1 + 5 + 15 + 35, 1 + 5 + 15 and 1 + 5 plans; umber 0 or 1, with amber 2 not.
    assert len(plans_within_limits(Zone.CERVICAL)) == 2 * 56 + 2 * 21 + 6
    # Three liquids that lower value, up to four coats: 35, each over the 21 of two bases.
    assert len(plans_within_limits(Zone.CUSP)) == 21 * 35


def test_plans_are_looked_at_as_the_plain_prediction_does() -> None:
    """A few of them against `reference_lab`, pale and dark first, layers of a graded block."""
    rng = np.random.default_rng(2014)
    backings = (on("natural dentine, dark"), on("metal", "opaque"))
    inside = ({}, {"clay": 2})
    for block in ("deep 5Y", "graded medium to light 3Y/4Y"):
        for lab, outside, around in every_look(block, backings, (1.0, 2.5), ("fast",), inside):
            height = around["height_mm"]
            for row in rng.integers(len(lab), size=2):
                _, plan = outside[row % len(outside)]
                turn = -1 if row >= len(outside) else 1
                names = LIQUIDS[::turn]
                scene = build_scene(
                    materials(),
                    plan_of(names, block),
                    programme="fast",
                    backings=[around["backing"]],
                )
                if height is not None:
                    share = layer_share(materials().block(block), [height])
                    scene = replace(scene, layer_share=share)
                for column, within in enumerate(inside):
                    near, far = (
                        np.array([[float(each.get(name, 0))] for name in names])
                        for each in (plan, within)
                    )
                    expected = reference_lab(scene, near, [around["wall_mm"]], far)[0]
                    np.testing.assert_allclose(lab[row, column], expected, atol=2e-4)


# ------------------------------------------------------------------------------------------------
# Published directions


@pytest.mark.parametrize("kind", CLASSES)
@pytest.mark.parametrize("liquid", [*WARM_BASES, "stone"])
def test_value_falls_and_yellow_rises_with_applications(liquid: str, kind: str) -> None:
    """0 to 5 applications, 2.0 mm [Kim2014] (its abstract): L* fell and b* rose along a line.

    With R^2 0.878 for L* and 0.938 for b*. Ours bend as they saturate; a line still says most.
    """
    for backing in (DENTINE, WHITE_TILE, BLACK_TILE):
        labs = np.array(
            [
                plate_lab([(liquid, n)], wall_mm=2.0, block=f"white {kind}", backings=[backing])
                for n in range(6)
            ]
        )
        assert (np.diff(labs[:, 0]) < 0.0).all()
        assert (np.diff(labs[:, 2]) > 0.0).all()
        for axis in (0, 2):
            assert np.corrcoef(np.arange(6), labs[:, axis])[0, 1] ** 2 > 0.8
        # What one more application adds gets less, as pores fill (an assumption, not published).
        assert (np.diff(delta_e_76(labs, labs[0]), n=2) < 0.0).all()


@pytest.mark.parametrize("backing", [DENTINE, WHITE_TILE, BLACK_TILE], ids=lambda one: one.stump)
@pytest.mark.parametrize("liquid", ["barley", "stone", "clay"])
def test_size_of_five_coats_on_a_white_piece(liquid: str, backing: Backing) -> None:
    """Groups of 0 to 5 applications at 2.0 mm were 1.3 to 15.7 dEab apart [Kim2014] (abstract).

    Five coats of a base, white 3Y: 10 to 16. The light base may be below, the deep one is beyond.
    """

    def after(liquid: str, coats: float) -> NDArray[np.float64]:
        return plate_lab([(liquid, coats)], wall_mm=2.0, block="white 3Y", backings=[backing])

    assert 10.0 <= delta_e_76(after(liquid, 5), after(liquid, 0)) <= 16.0
    light, deep = (delta_e_76(after(one, 5), after(one, 0)) for one in ("flax", "tan"))
    assert 8.0 < light < 11.0
    assert 16.0 < deep < 20.0


@pytest.mark.parametrize("programme", PROGRAMMES)
@pytest.mark.parametrize("kind", CLASSES)
def test_translucency_falls_exponentially_with_thickness(kind: str, programme: str) -> None:
    """Zirconia of 0.4 to 1.0 mm: TP 15.1 to 5.5, exponential in thickness [Wang2013] (abstract).

    ln TP on thickness: a line that leaves less than 1 % of the variance, for every shade. Sizes
    differ between instruments; ours must share half of the published span.
    """
    thickness_mm = np.linspace(0.4, 1.0, 7)
    for shade in SHADES:
        found = translucency(f"{shade} {kind}", thickness_mm, programme=programme)
        slope, start = np.polyfit(thickness_mm, np.log(found), 1)
        left = np.log(found) - (start + slope * thickness_mm)
        assert slope < -0.3
        assert (left**2).sum() < 0.01 * ((np.log(found) - np.log(found).mean()) ** 2).sum()
        shared = min(found[0], 15.1) - max(found[-1], 5.5)
        assert shared > 0.25 * (15.1 - 5.5)


@pytest.mark.parametrize("shade", SHADES)
@pytest.mark.parametrize("outside", [(), (("barley", 2),), (("slate", 2), ("umber", 1))])
def test_translucency_rises_with_yttria_at_equal_thickness(shade: str, outside: Coats) -> None:
    """5Y over 4Y over 3Y (published direction, abstracts; [Wang2013] for the thickness)."""
    for programme in PROGRAMMES:
        three, four, five = (
            translucency(f"{shade} {kind}", (0.4, 0.7, 1.0, 1.5, 2.0), outside, programme)
            for kind in CLASSES
        )
        assert (five > four).all()
        assert (four > three).all()
        assert (three > 0.0).all()
