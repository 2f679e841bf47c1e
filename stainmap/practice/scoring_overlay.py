"""What is drawn over the crown: where something was missed, and where it is too much."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.zone import Zone
from stainmap.optics.difference import delta_e_00
from stainmap.practice.exercise_task import Task
from stainmap.practice.looking import Looked
from stainmap.practice.score import Mark, Overlay
from stainmap.practice.scoring_areas import forgiven
from stainmap.words import translate

SEEN_L: Final = 1.5
"""Steps of L* that are drawn; assumed, about what most people accept in ceramic."""
SEEN_DE00: Final = 1.2
"""Differences that are more of hue than of value; assumed, about as large to the eye."""
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
            Mark.MISSED: translate("scoring overlay", "a zone belongs here"),
            Mark.EXTRA: translate("scoring overlay", "this is body"),
            Mark.OTHER: translate("scoring overlay", "another zone belongs here"),
        },
    )


def colour_overlay(task: Task, looked: Looked) -> Overlay:
    """Return where the crown is visibly lighter, darker or of another hue than the true answer."""
    outer = task.true.reading.outer
    own, true = looked.lab.astype(np.float64), task.true_look.lab.astype(np.float64)
    step = own[:, 0] - true[:, 0]
    # Coats that are missing or too many change value and chroma together; hue is another matter.
    by_value = np.abs(step) >= _hue_step(own, true)
    marks = np.full(len(outer), int(Mark.NOTHING), np.uint8)
    marks[outer & ~by_value & (delta_e_00(own, true) > SEEN_DE00)] = int(Mark.OTHER)
    marks[outer & by_value & (step > SEEN_L)] = int(Mark.MISSED)
    marks[outer & by_value & (step < -SEEN_L)] = int(Mark.EXTRA)
    return _overlay(
        marks,
        {
            Mark.MISSED: translate(
                "scoring overlay", "lighter than the true answer by {step:g} L* and more"
            ).format(step=SEEN_L),
            Mark.EXTRA: translate(
                "scoring overlay", "darker than the true answer by {step:g} L* and more"
            ).format(step=SEEN_L),
            Mark.OTHER: translate(
                "scoring overlay", "another hue, by {step:g} dE00 and more"
            ).format(step=SEEN_DE00),
        },
    )


def _hue_step(own: NDArray[np.float64], true: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the size (V,) of dH*ab of CIELAB [CIE2018]: what is left of da*, db* beside dC*."""
    aside = own[:, 1:] - true[:, 1:]
    chroma = np.hypot(own[:, 1], own[:, 2]) - np.hypot(true[:, 1], true[:, 2])
    return np.asarray(np.sqrt(np.maximum(np.sum(aside * aside, axis=1) - chroma * chroma, 0.0)))


def coats_overlay(task: Task, looked: Looked) -> Overlay:
    """Return where half a coat and more of any liquid is missing or too much."""
    step = looked.painted - task.true_look.painted
    marks = np.full(len(step), int(Mark.NOTHING), np.uint8)
    marks[step < -_HALF_A_COAT] = int(Mark.MISSED)
    marks[step > _HALF_A_COAT] = int(Mark.EXTRA)
    return _overlay(
        marks,
        {
            Mark.MISSED: translate("scoring overlay", "coats are missing"),
            Mark.EXTRA: translate("scoring overlay", "coats too many"),
        },
    )


def _overlay(marks: NDArray[np.uint8], words: Mapping[Mark, str]) -> Overlay:
    there = set(np.unique(marks).tolist())
    return Overlay(
        marks=marks, words=tuple((mark, text) for mark, text in words.items() if int(mark) in there)
    )
