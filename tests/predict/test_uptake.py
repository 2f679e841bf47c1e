"""Coats to load: closed forms, and what must hold for every plan."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.errors import PlanError
from stainmap.model.process import UptakeRule
from stainmap.predict.uptake import (
    REFERENCE_ENLARGEMENT,
    added_by_step,
    coats_for_share,
    full_load_ratio,
    load_after_steps,
)

steps = st.lists(
    st.tuples(st.integers(0, 3), st.floats(0.0, 6.0), st.floats(0.5, 1.0)), min_size=1, max_size=8
)
rules = st.builds(
    UptakeRule,
    coats_to_saturation=st.floats(1.0, 12.0),
    competition=st.floats(0.0, 1.0),
    hand_factor=st.floats(0.6, 1.6),
)


def load(plan: list[tuple[int, float, float]], rule: UptakeRule) -> np.ndarray:
    liquid, coats, dilution = zip(*plan, strict=True)
    return load_after_steps(np.array(coats)[:, None], liquid, dilution, liquid_count=4, rule=rule)[
        :, 0
    ]


@pytest.mark.parametrize("coats", [0.0, 0.5, 1.0, 2.0, 4.0, 12.0])
def test_one_liquid_saturates_exponentially(coats: float) -> None:
    """Alone, a liquid reaches 1 - exp(-c / n0), in one step or in several, for every eta."""
    expected = 1.0 - np.exp(-coats / 4.0)
    for eta in (0.0, 0.5, 1.0):
        rule = UptakeRule(competition=eta)
        assert load([(0, coats, 1.0)], rule)[0] == pytest.approx(expected, abs=1e-14)
        split = [(0, 0.25 * coats, 1.0), (0, 0.75 * coats, 1.0)]
        assert load(split, rule)[0] == pytest.approx(expected, abs=1e-14)


def test_competing_liquids_share_the_room() -> None:
    """Eta 1: together they fill what one liquid of all the coats would fill."""
    u = load([(0, 2.0, 1.0), (1, 1.0, 1.0), (0, 1.0, 1.0)], UptakeRule())
    assert u.sum() == pytest.approx(1.0 - np.exp(-1.0))
    assert u[1] == pytest.approx(np.exp(-0.5) * (1.0 - np.exp(-0.25)))


def test_without_competition_each_saturates_alone() -> None:
    u = load([(0, 2.0, 1.0), (1, 3.0, 1.0)], UptakeRule(competition=0.0))
    assert u[0] == pytest.approx(1.0 - np.exp(-0.5))
    assert u[1] == pytest.approx(1.0 - np.exp(-0.75))


def test_the_order_matters_only_with_competition() -> None:
    there, back = [(0, 3.0, 1.0), (1, 2.0, 1.0)], [(1, 2.0, 1.0), (0, 3.0, 1.0)]
    alone, sharing = UptakeRule(competition=0.0), UptakeRule()
    np.testing.assert_allclose(load(there, alone), load(back, alone))
    assert abs(load(there, sharing)[0] - load(back, sharing)[0]) > 0.1


def test_dilution_and_hand_multiply_the_coats() -> None:
    plain = load([(0, 1.2, 1.0)], UptakeRule())
    np.testing.assert_allclose(load([(0, 1.5, 0.8)], UptakeRule()), plain)
    np.testing.assert_allclose(load([(0, 1.0, 1.0)], UptakeRule(hand_factor=1.2)), plain)


@given(plan=steps, rule=rules)
def test_no_step_takes_stain_away(plan: list[tuple[int, float, float]], rule: UptakeRule) -> None:
    liquid, coats, dilution = zip(*plan, strict=True)
    added = added_by_step(np.array(coats)[:, None], liquid, dilution, liquid_count=4, rule=rule)
    assert (added >= 0.0).all()
    before = np.zeros(4)
    for count in range(1, len(plan) + 1):
        after = load(plan[:count], rule)
        assert (after >= before).all()
        before = after


@given(plan=steps, rule=rules)
def test_no_liquid_fills_more_than_everything(
    plan: list[tuple[int, float, float]], rule: UptakeRule
) -> None:
    u = load(plan, rule)
    assert (u <= 1.0 + 1e-12).all()
    if rule.competition == 1.0:
        assert u.sum() <= 1.0 + 1e-12


@given(plan=steps, rule=rules, more=st.floats(0.01, 3.0))
def test_another_coat_of_the_last_step_adds(
    plan: list[tuple[int, float, float]], rule: UptakeRule, more: float
) -> None:
    liquid, coats, dilution = plan[-1]
    richer = [*plan[:-1], (liquid, coats + more, dilution)]
    assert (load(richer, rule) >= load(plan, rule)).all()


def test_vertices_are_independent() -> None:
    rng = np.random.default_rng(2)
    coats = rng.uniform(0.0, 4.0, (5, 7))
    liquid, dilution = np.array([0, 1, 0, 2, 1]), np.array([1.0, 0.9, 1.0, 0.8, 0.9])
    whole = load_after_steps(coats, liquid, dilution, liquid_count=3, rule=UptakeRule())
    assert whole.shape == (3, 7)
    for vertex in range(7):
        alone = load_after_steps(
            coats[:, [vertex]], liquid, dilution, liquid_count=3, rule=UptakeRule()
        )
        np.testing.assert_array_equal(whole[:, vertex], alone[:, 0])


def test_no_steps_leave_no_load() -> None:
    empty = load_after_steps(np.zeros((0, 3)), [], [], liquid_count=2, rule=UptakeRule())
    np.testing.assert_array_equal(empty, np.zeros((2, 3)))


@pytest.mark.parametrize(
    ("values", "message"),
    [
        ({"coats_to_saturation": 0.0}, "coats to saturation"),
        ({"coats_to_saturation": float("nan")}, "coats to saturation"),
        ({"competition": 1.2}, "competition"),
        ({"hand_factor": 0.3}, "hand factor"),
    ],
)
def test_impossible_rules_are_refused(values: dict[str, float], message: str) -> None:
    with pytest.raises(PlanError, match=message):
        UptakeRule(**values)


# ------------------------------------------------------------------------------------------------
# Shrinkage


@given(enlargement=st.floats(1.05, 1.5), load=st.floats(0.01, 1.0), depth_mm=st.floats(0.1, 0.5))
def test_ions_are_conserved_through_shrinkage(
    enlargement: float, load: float, depth_mm: float
) -> None:
    """What is in the pores before is in the ceramic after, counted by hand on both sides.

    A patch of 1 mm2 and the stained depth, sintered, were e^2 and e times as large. Its pores,
    1 - e^-3 of the volume by conservation of mass, held liquid of 0.3 ions (arbitrary) per mm3.
    """
    pores = 1.0 - enlargement**-3
    before = 0.3 * load * pores * enlargement**2 * (enlargement * depth_mm)
    at_reference = 0.3 * (1.0 - REFERENCE_ENLARGEMENT**-3) * REFERENCE_ENLARGEMENT**3
    concentration = load * full_load_ratio(enlargement) * at_reference
    assert concentration * depth_mm == pytest.approx(before, rel=1e-12)
    # Concentration rose by the cube of the enlargement.
    assert concentration == pytest.approx(0.3 * load * pores * enlargement**3, rel=1e-12)


def test_dense_ceramic_takes_up_nothing_and_the_reference_all() -> None:
    assert full_load_ratio(1.0) == 0.0
    assert full_load_ratio(REFERENCE_ENLARGEMENT) == pytest.approx(1.0, abs=1e-15)
    ratios = [full_load_ratio(e) for e in (1.0, 1.2, 1.235, 1.24, 1.25, 1.3)]
    assert (np.diff(ratios) > 0.0).all()


@given(plan=steps, rule=rules, share=st.floats(0.0, 1.0))
def test_fewer_coats_leave_a_share_of_every_load(
    plan: list[tuple[int, float, float]], rule: UptakeRule, share: float
) -> None:
    liquid, coats, dilution = zip(*plan, strict=True)
    fewer = coats_for_share(
        np.array(coats)[:, None], [share], liquid, dilution, liquid_count=4, rule=rule
    )
    assert (fewer >= 0.0).all()
    assert (fewer[:, 0] <= np.array(coats) * (1.0 + 1e-9) + 1e-9).all()
    left = load([(i, c, d) for i, c, d in zip(liquid, fewer[:, 0], dilution, strict=True)], rule)
    np.testing.assert_allclose(left, share * load(plan, rule), rtol=1e-7, atol=1e-9)
