"""How near every area comes to what is wanted of it, judged by itself (see `judged_looks`)."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

import numpy as np

from stainmap.model.zone import Accent, Area, Zone
from stainmap.optics.difference import delta_e_00
from stainmap.practice.exercise_task import Task
from stainmap.practice.judged_looks import AreaLook
from stainmap.practice.looking import Lab
from stainmap.predict.uncertainty import PERCEPTIBLE_DE00

VALUE_BAND: Final = 1.0
CHROMA_BAND: Final = 1.5
"""Bands about a wanted offset, dL* and dC*, within which it is reached; assumed."""
ACCENT_BANDS: Final = 0.5
"""Bands of accents are this much of those of zones: they are narrow, and light evens them out."""
BODY_BAND_DE00: Final = 1.0
"""The body is reached within this; assumed, between what half of observers see and accept."""
ASKED_FROM: Final = 1.5
"""Bands off from which there is something to do; assumed."""
LOST_AT: Final = 3.0
"""Bands away from what is wanted at which nothing is reached any more; assumed."""
BARE_COATS: Final = 0.25
DUE_COATS: Final = 0.5
"""Coats below which a place is bare, and from which coats are due there; assumed."""


class Ruled(StrEnum):
    """What it is about an area that is furthest from what is wanted."""

    STEP = "its step from the wanted body"
    OWN = "its own colour"
    BODY = "the body it stands beside"


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaReach:
    """How an area stands to what is wanted of it.

    Of an area other than the body its step from the wanted body counts, its own colour, and how far
    the body is off that the step starts from. The body counts against its step, never for it: else
    a body that goes wrong would bring back the steps of areas that are off the same way.

    Parameters
    ----------
    bands
        How far it is off, in bands: 1 and less is reached.
    alone
        The same without the body.
    before
        As `bands`, of what the exercise starts from.
    off
        dL* and dC* from what is wanted.
    de00
        CIEDE2000 to what is wanted.
    ruled
        What `bands` comes from.
    painted
        Where the exercise starts without coats: the share of the area that has some now. An area
        that was not touched is not reached, even if it happens to look right. None elsewhere.
    """

    area: Area
    bands: float
    alone: float
    before: float
    off: tuple[float, float]
    de00: float
    ruled: Ruled
    painted: float | None

    @property
    def is_asked(self) -> bool:
        """True if there was something to do here; otherwise it is only to stay as it is."""
        return self.painted is not None or self.before > ASKED_FROM

    @property
    def share(self) -> float:
        """How much of it is reached, 0 to 1, beyond what was there to begin with."""
        if self.painted is not None:
            return quality(self.bands) * self.painted
        if not self.is_asked:
            return min(quality(self.bands) / quality(self.before), 1.0)
        begun = quality(self.before)
        return max(quality(self.bands) - begun, 0.0) / (1.0 - begun)


def quality(bands: float) -> float:
    """Return how much of an area is reached at so many bands off: 1 to 1 band, 0 from 3 on."""
    return float(np.clip((LOST_AT - bands) / (LOST_AT - 1.0), 0.0, 1.0))


def area_reaches(
    task: Task,
    answer: dict[Area, AreaLook],
    start: dict[Area, AreaLook],
    true: dict[Area, AreaLook],
) -> tuple[AreaReach, ...]:
    """Return how every area that counts stands to what is wanted.

    Parameters
    ----------
    answer, start, true
        How the areas of each of them look by themselves.
    """
    found = []
    for area, look in answer.items():
        wanted = true[area].lab
        alone, ruled = _alone(area, look.lab, wanted)
        bands = _beside(area, alone, _of_body(answer, true))
        if area is not Zone.BODY and _of_body(answer, true) > max(1.0, alone):
            ruled = Ruled.BODY
        before = _beside(area, _alone(area, start[area].lab, wanted)[0], _of_body(start, true))
        found.append(
            AreaReach(
                area=area,
                bands=bands,
                alone=alone,
                before=before,
                off=_off(look.lab, wanted),
                de00=_de00(look.lab, wanted),
                ruled=ruled,
                painted=_painted_share(task, area, look, start[area], true[area]),
            )
        )
    return tuple(found)


def is_right_bare(task: Task, area: Area) -> bool:
    """Return True if nobody would see what coats are to change in an area."""
    return _de00(task.start_look.areas[area], task.true_look.areas[area]) <= PERCEPTIBLE_DE00


def _painted_share(
    task: Task, area: Area, answer: AreaLook, start: AreaLook, true: AreaLook
) -> float | None:
    """Return the painted share of an area that is bare at the start and has to be painted."""
    weight = task.looker.weights[area]
    if float(weight @ start.own) > 0.0 or is_right_bare(task, area):
        return None
    due = np.where(true.own >= DUE_COATS, weight, 0.0)
    if due.sum() <= 0.0:
        return None
    return float(due @ (answer.own >= BARE_COATS) / due.sum())


def _off(own: Lab, wanted: Lab) -> tuple[float, float]:
    chromas = [float(np.hypot(lab[1], lab[2])) for lab in (own, wanted)]
    return own[0] - wanted[0], chromas[0] - chromas[1]


def _de00(own: Lab, wanted: Lab) -> float:
    return float(delta_e_00(np.array(own), np.array(wanted)))


def _alone(area: Area, own: Lab, wanted: Lab) -> tuple[float, Ruled]:
    """Return how far an area is off by itself, in bands, and by what."""
    colour = _de00(own, wanted) / BODY_BAND_DE00
    if area is Zone.BODY:
        return colour, Ruled.OWN
    step = _step(own, wanted)
    bands, ruled = (step, Ruled.STEP) if step >= colour else (colour, Ruled.OWN)
    return (bands / ACCENT_BANDS if isinstance(area, Accent) else bands), ruled


def _of_body(looks: dict[Area, AreaLook], true: dict[Area, AreaLook]) -> float:
    """Return how far the body is off where steps start from it, in their bands."""
    if Zone.BODY not in looks:
        return 0.0
    own, wanted = looks[Zone.BODY].lab, true[Zone.BODY].lab
    return max(_step(own, wanted), _de00(own, wanted) / BODY_BAND_DE00)


def _beside(area: Area, alone: float, body: float) -> float:
    """Return how far an area is off beside a body that is off, in bands.

    Both add up, less the band within which either is right: it is at least as far as either.
    """
    return alone if area is Zone.BODY else max(alone, body, alone + body - 1.0)


def _step(own: Lab, wanted: Lab) -> float:
    value, chroma = _off(own, wanted)
    return max(abs(value) / VALUE_BAND, abs(chroma) / CHROMA_BAND)
