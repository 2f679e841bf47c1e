"""The day as a line: mix, coats, dry, sinter, cool, and when the unit is ready."""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import Final

from stainmap.model.case import Case
from stainmap.model.material import SinteringProgramme
from stainmap.model.plan import Step

# All assumed; the makers' instructions for use decide.
MINUTES_PER_COAT: Final = 2.0
"""A coat and its soak."""
SOAK_MINUTES: Final = 1.0
"""How much of that a coat soaks before the next one."""
DRY_TEMPERATURE_C: Final = (200.0 - 32.0) / 1.8
"""Drying temperature, 200 degrees Fahrenheit."""
_MIX_FIRST, _MIX_PER_JAR = 2.0, 2.0
_DRY_ONE_UNIT, _DRY_EACH_MORE = 10.0, 5.0


class RunStage(StrEnum):
    """Stages of the run."""

    MIX = "mix"
    COATS = "coats"
    DRY = "dry"
    SINTER = "sinter"
    COOL = "cool"


@dataclass(frozen=True, slots=True, kw_only=True)
class RunPart:
    """One stage of the run, from `start` to `end`."""

    stage: RunStage
    minutes: float
    start: datetime
    end: datetime


def run_strip(case: Case, start: datetime) -> tuple[RunPart, ...]:
    """Return the stages one after the other from `start`; the last one's end is when it is ready.

    Raises
    ------
    CatalogueError
        If the sintering programme is not among the materials.
    """
    programme = case.materials.programme(case.programme)
    sinter, cool = sintering_minutes(programme)
    minutes = {
        RunStage.MIX: mixing_minutes(len(case.plan.jars)),
        RunStage.COATS: MINUTES_PER_COAT * sum(coats_to_paint(step) for step in case.plan.steps),
        RunStage.DRY: drying_minutes(len(case.units)),
        RunStage.SINTER: sinter,
        RunStage.COOL: cool,
    }
    parts = []
    for stage, length in minutes.items():
        end = start + timedelta(minutes=length)
        parts.append(RunPart(stage=stage, minutes=length, start=start, end=end))
        start = end
    return tuple(parts)


def coats_to_paint(step: Step) -> int:
    """Return how many rounds a step takes: as many as the area that gets most, at its upper end.

    All areas of a step get their first coat in the first round, and so on; streaks and brushed
    coats go along with them.
    """
    counts = [entry.coats.high for entry in step.areas]
    counts += [streaks.coats for streaks in step.streaks]
    if step.brushed is not None and len(step.brushed.coats):
        counts.append(math.ceil(float(step.brushed.coats.max()) - 1e-3))
    return max([0, *counts])


def mixing_minutes(jars: int) -> float:
    """Return how long it takes to mix so many jars; assumed."""
    return _MIX_FIRST + _MIX_PER_JAR * jars if jars else 0.0


def drying_minutes(units: int) -> float:
    """Return how long so many units dry; 10 min for one and 5 for each more, assumed."""
    return _DRY_ONE_UNIT + _DRY_EACH_MORE * max(units - 1, 0)


def sintering_minutes(programme: SinteringProgramme) -> tuple[float, float]:
    """Return the minutes up to the end of the last hold or rise, and of the cooling after it."""
    before = [programme.start_c, *(segment.target_c for segment in programme.segments)]
    falling = 0
    while falling < len(programme.segments) and before[-1 - falling] < before[-2 - falling]:
        falling += 1
    cool = sum(segment.minutes for segment in programme.segments[-falling:]) if falling else 0.0
    return programme.minutes - cool, cool
