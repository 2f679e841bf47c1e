"""Cases never change; history is a list of them."""

from __future__ import annotations

from dataclasses import fields, replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from stainmap.errors import PlanError
from stainmap.model.case import Case, Region, changed_fields
from stainmap.model.history import History
from stainmap.model.zone import Accent
from tests.builders import dome_case


@pytest.fixture(scope="module")
def case() -> Case:
    return dome_case(6, 12)


def test_arrays_of_a_case_are_read_only(case: Case) -> None:
    for array in (case.zones, case.proposal, case.reading.outer, case.accents[0].share):
        with pytest.raises(ValueError, match="read-only"):
            array[0] = 1


def test_arrays_that_do_not_fit_the_surface_are_refused(case: Case) -> None:
    with pytest.raises(PlanError):
        replace(case, zones=np.zeros(3, np.uint8))


def test_an_edit_names_just_what_it_changed(case: Case) -> None:
    edited = replace(case, notes="check the stump")
    assert changed_fields(case, edited) == {"notes"}
    mask = np.zeros(len(case.zones), np.float32)
    assert changed_fields(case, case.with_accent(Accent.LINE_ANGLE, mask)) == {"accents"}
    assert changed_fields(case, replace(case)) == frozenset()


def test_a_region_without_a_backing_of_its_own_has_the_stumps(case: Case) -> None:
    assert case.backing(Region.PONTIC).stump == "stump"
    with pytest.raises(PlanError):
        replace(case, backings=()).backing(Region.STUMP)


@given(st.lists(st.sampled_from(["edit", "undo", "redo"]), max_size=30))
def test_any_mixture_of_edits_undo_and_redo_agrees_with_a_plain_list(moves: list[str]) -> None:
    case = dome_case(3, 6)
    history = History.begun_with(case)
    states, position = [case], 0
    for number, move in enumerate(moves):
        if move == "edit":
            case = replace(history.case, notes=str(number))
            history = history.edited(case, f"edit {number}")
            states = [*states[: position + 1], case]
            position += 1
        elif move == "undo":
            history = history.undone()
            position = max(position - 1, 0)
        else:
            history = history.redone()
            position = min(position + 1, len(states) - 1)
        assert history.case is states[position]
        assert (history.undo_label is None) == (position == 0)
        assert (history.redo_label is None) == (position == len(states) - 1)


def test_undo_gives_back_the_same_case_field_by_field(case: Case) -> None:
    history = History.begun_with(case)
    history = history.edited(replace(case, zones=np.ones_like(case.zones)), "paint").undone()
    for field in fields(case):
        assert getattr(history.case, field.name) is getattr(case, field.name)
