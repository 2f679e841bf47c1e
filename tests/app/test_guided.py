"""A first plan in six steps: what is done counts, what is not asked for does not."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from stainmap.app import edits
from stainmap.app.guided import DONE, STEPS, WORDS, Did, Guide, GuidedStep, guide_at
from stainmap.model.case import Case
from stainmap.model.plan import CoatSpan
from stainmap.model.tooth import Tooth, Unit
from stainmap.model.zone import Zone
from tests.builders import dome_case


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case(8, 24)


def at(step: GuidedStep) -> Guide:
    return Guide(at=STEPS.index(step))


def recoloured(case: Case) -> Case:
    zones = case.zones.copy()
    zones[np.flatnonzero(zones == int(Zone.BODY))[0]] = int(Zone.CERVICAL)
    return replace(case, zones=zones)


def test_it_has_six_steps_with_words_and_an_end() -> None:
    guide, seen = Guide(), []
    while guide.step is not None:
        seen.append(guide.step)
        assert guide.words is WORDS[guide.step]
        guide = guide.next()
    assert tuple(seen) == STEPS == tuple(GuidedStep)
    assert len(seen) == 6
    assert guide.words is DONE
    assert guide.next() == guide
    assert guide.back().step is GuidedStep.SHEETS
    assert Guide().back() == Guide()


@pytest.mark.parametrize(
    ("step", "did"),
    [
        (GuidedStep.OPEN, Did.OPENED),
        (GuidedStep.OPEN, Did.KEPT),
        (GuidedStep.TOOTH, Did.SAID_TOOTH),
        (GuidedStep.OUTCOME, Did.SAW_OUTCOME),
        (GuidedStep.SHEETS, Did.SAW_SHEETS),
    ],
)
def test_a_step_is_done_by_what_it_asks_for_alone(step: GuidedStep, did: Did) -> None:
    assert at(step).after(did) == at(step).next()
    for other in STEPS:
        if (other, did) != (step, did):
            assert at(other).after(did) == at(other)


def test_edits_count_in_their_step_alone(case: Case) -> None:
    other_tooth = replace(case, units=(Unit(tooth=Tooth(number=46)),))
    more = edits.with_coats(case, 0, Zone.BODY, CoatSpan.exactly(5))
    changes = {
        GuidedStep.TOOTH: other_tooth,
        GuidedStep.ZONE: recoloured(case),
        GuidedStep.COAT: more,
    }
    for step in STEPS:
        for wanted, after in changes.items():
            expected = at(step).next() if step is wanted else at(step)
            assert at(step).after_edit(case, after) == expected


def test_accents_are_areas_too_and_a_bare_plan_has_no_coat(case: Case) -> None:
    mask = case.accents[0]
    share = mask.share.copy()
    share[:3] = 1.0 - share[:3]
    painted = case.with_accent(mask.accent, share)
    assert at(GuidedStep.ZONE).after_edit(case, painted) == at(GuidedStep.COAT)
    bare = replace(case, plan=replace(case.plan, steps=(), jars=()))
    assert at(GuidedStep.COAT).after_edit(case, bare) == at(GuidedStep.COAT)


def test_it_goes_on_where_it_was_and_begins_anew_where_that_is_nonsense() -> None:
    assert guide_at(3).step is GuidedStep.COAT
    for nonsense in (-1, 6, 99):
        assert guide_at(nonsense) == Guide()
