"""The plan hash changes with what is printed, and with nothing else."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from stainmap.model.case import Case
from stainmap.model.zone import Accent, Zone
from stainmap.planning.plan_hash import plan_hash, short_hash
from tests.builders import dome_case, with_coats


def other_zone(case: Case) -> Case:
    zones = case.zones.copy()
    zones[0] = int(Zone.BODY)
    return replace(case, zones=zones)


def other_liquid(case: Case) -> Case:
    first, second = case.materials.liquids
    stronger = replace(first, amplitudes_per_mm=(("X", 0.31),))
    return replace(case, materials=replace(case.materials, liquids=(stronger, second)))


def other_lot(case: Case) -> Case:
    jar = replace(case.plan.jars[0], lot="B7")
    return replace(case, plan=replace(case.plan, jars=(jar, *case.plan.jars[1:])))


@pytest.mark.parametrize(
    "change",
    [
        other_zone,
        other_liquid,
        other_lot,
        lambda case: with_coats(case, 1, Zone.BODY, 2),
        lambda case: case.with_accent(
            Accent.MARGIN_BAND, np.full(len(case.zones), 0.5, np.float32)
        ),
        lambda case: replace(case, backings=(replace(case.backings[0], cement_thickness_mm=0.08),)),
    ],
)
def test_what_is_printed_counts(change: Callable[[Case], Case]) -> None:
    case = dome_case(6, 12)
    assert plan_hash(change(case)) != plan_hash(case)


def test_what_is_not_printed_does_not_count() -> None:
    case = dome_case(6, 12)
    same = replace(case, notes="other", code="other", zones=case.zones.copy())
    assert plan_hash(same) == plan_hash(case)


def test_a_lock_is_not_printed_and_does_not_count() -> None:
    case = dome_case(6, 12)
    step = case.plan.steps[0]
    locked = step.with_locked(step.areas[0].area, locked=True)
    assert locked != step
    held = replace(case, plan=case.plan.with_step(0, locked))
    assert plan_hash(held) == plan_hash(case)


def test_the_short_form_is_the_beginning() -> None:
    full = plan_hash(dome_case(6, 12))
    assert len(full) == 64
    assert short_hash(full).replace("-", "") == full[:8]
