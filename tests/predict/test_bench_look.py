"""Chalky ceramic and indicator dyes: what is seen before sintering."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest

from stainmap.errors import PlanError
from stainmap.files.catalogue import starter_catalogue
from stainmap.model.plan import Jar, StainPlan, Step
from stainmap.model.process import UptakeRule
from stainmap.optics.colorimetry import srgb_matrix, white_point, xyz_to_lab
from stainmap.optics.difference import delta_e_00
from stainmap.predict.bench_look import (
    CHALK_LAB,
    bench_linear_srgb,
    chalk_linear_srgb,
    dye_absorption_rgb,
    jar_linear_srgb,
)
from tests.predict.scenes import plate_lab

# Jars of the sample plan: they were designed to be told apart on chalky ceramic.
SAMPLE_TRAY = ("barley", "slate", "ash", "heather", "umber")


def dyes():
    return starter_catalogue().dyes


def lab_of(linear: np.ndarray) -> np.ndarray:
    white = white_point()
    return xyz_to_lab(np.linalg.solve(srgb_matrix(white), linear), white)


def swatch(liquid: str) -> np.ndarray:
    drops = starter_catalogue().liquid(liquid).dye_drops
    return lab_of(jar_linear_srgb(Jar(number=1, liquid=liquid, dye_drops=drops), dyes()))


def test_untouched_ceramic_is_chalk() -> None:
    np.testing.assert_allclose(lab_of(chalk_linear_srgb()), CHALK_LAB, atol=0.01)
    plan = StainPlan(block="x")
    np.testing.assert_allclose(
        bench_linear_srgb(plan, np.zeros((0, 3)), dyes()), np.tile(chalk_linear_srgb(), (3, 1))
    )


def test_absorption_counts_drops_on_25() -> None:
    jar = Jar(number=1, liquid="x", liquid_drops=50, dye_drops=(2, 0, 1))
    expected = np.array([1.55, 0.42, 0.10]) + 0.5 * np.array([0.02, 0.14, 1.30])
    np.testing.assert_allclose(dye_absorption_rgb(jar, dyes()), expected)
    assert dye_absorption_rgb(Jar(number=1, liquid="x"), dyes()).tolist() == [0.0, 0.0, 0.0]


def test_a_dye_that_is_not_there_is_refused() -> None:
    jar = Jar(number=3, liquid="x", dye_drops=(1, 0, 2))
    with pytest.raises(PlanError, match="Jar 3 holds a dye"):
        dye_absorption_rgb(jar, dyes()[:2])
    assert dye_absorption_rgb(Jar(number=3, liquid="x", dye_drops=(1, 0, 0)), dyes()[:1])[0] > 0


def test_more_coats_tint_more_and_never_lighten() -> None:
    jar = Jar(number=1, liquid="x", dye_drops=(1, 1, 1))
    looks = np.array([jar_linear_srgb(jar, dyes(), coats=n) for n in range(7)])
    assert (np.diff(looks, axis=0) < 0.0).all()
    np.testing.assert_array_equal(looks[0], chalk_linear_srgb())


def test_jar_and_painted_area_agree() -> None:
    jar = Jar(number=1, liquid="barley", dye_drops=(2, 0, 0))
    plan = StainPlan(block="x", jars=(jar,), steps=(Step(jar=1), Step(jar=1)))
    coats = np.array([[0.0, 2.0, 1.0], [0.0, 0.0, 1.0]])
    looks = bench_linear_srgb(plan, coats, dyes())
    np.testing.assert_allclose(looks[0], chalk_linear_srgb())
    np.testing.assert_allclose(looks[1], jar_linear_srgb(jar, dyes()))
    np.testing.assert_allclose(looks[2], looks[1])


def test_dyes_of_several_jars_add_up() -> None:
    """Absorptions add; the second jar finds, and tints, only the room that the first has left."""
    jars = (
        Jar(number=1, liquid="a", dye_drops=(2, 0, 0)),
        Jar(number=2, liquid="b", dye_drops=(0, 0, 3)),
    )
    plan = StainPlan(block="x", jars=jars, steps=(Step(jar=1), Step(jar=2)))
    one, other, both = bench_linear_srgb(plan, [[2.0, 0.0, 2.0], [0.0, 1.0, 1.0]], dyes())
    first, second, together = (-np.log(look / chalk_linear_srgb()) for look in (one, other, both))
    room = np.exp(-2.0 * 25.0 / 27.0 / 4.0)
    np.testing.assert_allclose(together, first + room * second)
    assert (both < one).all()


def test_starter_jars_are_told_apart() -> None:
    """The sample tray by 12 dE00 or more, all ten by 8; jars also have a number and a hatch."""
    for names, least in (
        (SAMPLE_TRAY, 12.0),
        ([liquid.name for liquid in starter_catalogue().liquids], 8.0),
    ):
        distances = [delta_e_00(swatch(a), swatch(b)) for a, b in combinations(names, 2)]
        assert min(distances) > least


@pytest.mark.parametrize("liquid", [one.name for one in starter_catalogue().liquids])
def test_no_dye_looks_like_what_its_liquid_does(liquid: str) -> None:
    """A tint must never pass for a result: it leaves chalk in another hue than the stain takes.

    At least 75 degrees apart between the shift of the chalk by the dye and that of the sintered
    block by two coats; for the neutral liquid, any dye that has a hue.
    """
    tint = (swatch(liquid) - np.array(CHALK_LAB))[1:]
    stain = (plate_lab([(liquid, 2)]) - plate_lab())[1:]
    if np.hypot(*stain) < 0.5:
        assert np.hypot(*tint) > 10.0
        return
    cosine = tint @ stain / np.hypot(*tint) / np.hypot(*stain)
    assert np.degrees(np.arccos(cosine)) >= 75.0


def test_recipes_are_about_one_drop_in_ten() -> None:
    """25 drops with 2 to 3 drops of dye: common practice, no published source."""
    assert all(sum(one.dye_drops) in (2, 3) for one in starter_catalogue().liquids)


def test_every_vertex_has_the_look_of_its_own_coats_and_hand() -> None:
    """One by one as all together; a heavy hand tints as so many more coats would."""
    rng = np.random.default_rng(3)
    jars = tuple(
        Jar(number=n, liquid=name, dye_drops=starter_catalogue().liquid(name).dye_drops)
        for n, name in enumerate(SAMPLE_TRAY, start=1)
    )
    plan = StainPlan(block="x", jars=jars, steps=tuple(Step(jar=n) for n in (1, 3, 2, 1, 5, 4)))
    coats = rng.uniform(0.0, 3.0, (6, 9))
    whole = bench_linear_srgb(plan, coats, dyes())
    for vertex in range(9):
        alone = bench_linear_srgb(plan, coats[:, [vertex]], dyes())
        np.testing.assert_allclose(whole[vertex], alone[0], rtol=1e-12)
    heavy = bench_linear_srgb(plan, coats, dyes(), rule=UptakeRule(hand_factor=1.5))
    np.testing.assert_allclose(heavy, bench_linear_srgb(plan, 1.5 * coats, dyes()), rtol=1e-12)
