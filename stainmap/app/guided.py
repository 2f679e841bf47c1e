"""A first plan in six steps, each done by the user: which one is on, and what counts as done."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Final

import numpy as np

from stainmap.model.case import Case
from stainmap.words import marked


class Did(StrEnum):
    """What somebody has done in the window, beyond changing the case."""

    OPENED = "opened"
    KEPT = "kept"
    SAID_TOOTH = "said the tooth"
    SAW_OUTCOME = "saw the outcome"
    SAW_SHEETS = "saw the sheets"


class GuidedStep(StrEnum):
    """The steps, in their order."""

    OPEN = "open"
    TOOTH = "tooth"
    ZONE = "zone"
    COAT = "coat"
    OUTCOME = "outcome"
    SHEETS = "sheets"


@dataclass(frozen=True, slots=True, kw_only=True)
class StepWords:
    """What a step asks for, in a few words and in a sentence."""

    title: str
    sentence: str


WORDS: Final[dict[GuidedStep, StepWords]] = {
    GuidedStep.OPEN: StepWords(
        title=marked("guided", "Open a crown"),
        sentence=marked(
            "guided",
            "Open a mesh of your own and answer what the card asks, or keep the crown that"
            " is open.",
        ),
    ),
    GuidedStep.TOOTH: StepWords(
        title=marked("guided", "Say the tooth"),
        sentence=marked(
            "guided",
            "Open Tooth and roles in the menu Crown, look whether the number is right, and"
            " close it.",
        ),
    ),
    GuidedStep.ZONE: StepWords(
        title=marked("guided", "Correct a zone"),
        sentence=marked(
            "guided",
            "Choose the name of a zone in the table and paint with the left button where it"
            " should reach, or let the zones be proposed again (menu Crown).",
        ),
    ),
    GuidedStep.COAT: StepWords(
        title=marked("guided", "Choose the block, and put a coat on"),
        sentence=marked(
            "guided",
            "The block stands at the top. In the table choose a cell and type a number;"
            " a step with its jar is added by the button above it.",
        ),
    ),
    GuidedStep.OUTCOME: StepWords(
        title=marked("guided", "Look at the outcome"),
        sentence=marked(
            "guided",
            "Predicted stands beside wanted. Click an area to turn the crown to it, and"
            " point at the crown to read a place.",
        ),
    ),
    GuidedStep.SHEETS: StepWords(
        title=marked("guided", "Look at the sheets"),
        sentence=marked(
            "guided",
            "Open the preview: coat map, mixing list and the page for the dentist. Print"
            " them, or close it again.",
        ),
    ),
}
STEPS: Final = tuple(WORDS)
DONE: Final = StepWords(
    title=marked("guided", "That was a whole plan"),
    sentence=marked(
        "guided",
        "Save the case to keep it. The manual (F1) has a page for each part of the window.",
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Guide:
    """Where a first plan stands; `at` is the step that is on, from 0, or the number of all."""

    at: int = 0

    @property
    def step(self) -> GuidedStep | None:
        """The step that is on; None once all are done."""
        return STEPS[self.at] if 0 <= self.at < len(STEPS) else None

    @property
    def words(self) -> StepWords:
        """What is asked for now."""
        return DONE if self.step is None else WORDS[self.step]

    def next(self) -> Guide:
        """Return the guide one step on, whether this one was done or skipped."""
        return replace(self, at=min(self.at + 1, len(STEPS)))

    def back(self) -> Guide:
        """Return the guide one step back."""
        return replace(self, at=max(self.at - 1, 0))

    def after(self, did: Did) -> Guide:
        """Return the guide after something was done in the window."""
        wanted = {
            GuidedStep.OPEN: (Did.OPENED, Did.KEPT),
            GuidedStep.TOOTH: (Did.SAID_TOOTH,),
            GuidedStep.OUTCOME: (Did.SAW_OUTCOME,),
            GuidedStep.SHEETS: (Did.SAW_SHEETS,),
        }
        step = self.step
        return self.next() if step is not None and did in wanted.get(step, ()) else self

    def after_edit(self, before: Case, after: Case) -> Guide:
        """Return the guide after the case was changed by one step of its history."""
        done = {
            GuidedStep.TOOTH: lambda: before.units != after.units,
            GuidedStep.ZONE: lambda: _areas_differ(before, after),
            GuidedStep.COAT: lambda: _paints_otherwise(before, after),
        }
        step = self.step
        found = None if step is None else done.get(step)
        return self.next() if found is not None and found() else self


def guide_at(at: int) -> Guide:
    """Return the guide at a step that was remembered; from the start if that is none of them."""
    return Guide(at=at if 0 <= at < len(STEPS) else 0)


def _areas_differ(before: Case, after: Case) -> bool:
    if before.zones.shape != after.zones.shape:
        return False
    if not np.array_equal(before.zones, after.zones):
        return True
    shares = [{int(mask.accent): mask.share for mask in one.accents} for one in (before, after)]
    return shares[0].keys() != shares[1].keys() or any(
        not np.array_equal(share, shares[1][number]) for number, share in shares[0].items()
    )


def _paints_otherwise(before: Case, after: Case) -> bool:
    """Return True if the coats of a plan that paints something have changed."""
    paints = any(step.areas or step.streaks or step.brushed for step in after.plan.steps)
    return paints and before.plan.steps != after.plan.steps
