"""What is drawn over the crown: where something was missed, and where it is too much."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.zone import Zone
from stainmap.practice.exercise_task import Task
from stainmap.practice.looking import Looked
from stainmap.practice.score import Mark, Overlay
from stainmap.practice.scoring_areas import forgiven

SEEN_L: Final = 1.5
"""Steps of L* that are drawn; assumed, about what most people accept in ceramic."""
_HALF_A_COAT = 0.5


def areas_overlay(task: Task, case: Case) -> Overlay:
    """Return where zones are wrong, beyond the tolerance at borders."""
    mesh, outer = task.true.surface.mesh, task.true.reading.outer
    told = forgiven(mesh, task.true.zones, case.zones, outer)
    wrong = outer & (told != task.true.zones)
    body = int(Zone.BODY)
    marks = np.full(len(outer), int(Mark.NOTHING), np.uint8)
    marks[wrong] = int(Mark.OTHER)
    marks[wrong & np.isin(told, (0, body))] = int(Mark.MISSED)
    marks[wrong & (task.true.zones == body)] = int(Mark.EXTRA)
    return _overlay(
        marks,
        {
            Mark.MISSED: "a zone belongs here",
            Mark.EXTRA: "this is body",
            Mark.OTHER: "another zone belongs here",
        },
    )


def colour_overlay(task: Task, looked: Looked) -> Overlay:
    """Return where the crown is visibly lighter or darker than the true answer."""
    outer = task.true.reading.outer
    step = looked.lab[:, 0].astype(np.float64) - task.true_look.lab[:, 0]
    marks = np.full(len(outer), int(Mark.NOTHING), np.uint8)
    marks[outer & (step > SEEN_L)] = int(Mark.MISSED)
    marks[outer & (step < -SEEN_L)] = int(Mark.EXTRA)
    return _overlay(
        marks,
        {
            Mark.MISSED: f"lighter than the true answer by {SEEN_L:g} L* and more",
            Mark.EXTRA: f"darker than the true answer by {SEEN_L:g} L* and more",
        },
    )


def coats_overlay(task: Task, looked: Looked) -> Overlay:
    """Return where half a coat and more of any liquid is missing or too much."""
    step = looked.painted - task.true_look.painted
    marks = np.full(len(step), int(Mark.NOTHING), np.uint8)
    marks[step < -_HALF_A_COAT] = int(Mark.MISSED)
    marks[step > _HALF_A_COAT] = int(Mark.EXTRA)
    return _overlay(marks, {Mark.MISSED: "coats are missing", Mark.EXTRA: "coats too many"})


def _overlay(marks: NDArray[np.uint8], words: Mapping[Mark, str]) -> Overlay:
    there = set(np.unique(marks).tolist())
    return Overlay(
        marks=marks, words=tuple((mark, text) for mark, text in words.items() if int(mark) in there)
    )
