"""The day as a line: mix, coats, dry, sinter, cool, and when the unit is ready."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum
from typing import Final

from stainmap.model.case import Case
from stainmap.model.material import SinteringProgramme
from stainmap.model.plan import Step

# All assumed; the makers' instructions for use decide.
MINUTES_PER_COAT: Final = 2.0
"""A coat on one unit, and its soak."""
SOAK_MINUTES: Final = 1.0
"""How much of that a coat soaks before the next one; while it does, other units are painted."""
DRY_TEMPERATURE_C: Final = (200.0 - 32.0) / 1.8
"""Drying temperature, 200 degrees Fahrenheit."""
_MIX_FIRST, _MIX_PER_JAR = 2.0, 2.0
# Ten minutes for one single unit: common practice, no published source. The rest is assumed.
_DRY_ONE_UNIT, _DRY_EACH_MORE, _DRY_BRIDGE = 10.0, 5.0, 10.0


class RunStage(StrEnum):
    """Stages of the run."""

    MIX = "mix"
    COATS = "coats"
    DRY = "dry"
    SINTER = "sinter"
    COOL = "cool"


@dataclass(frozen=True, slots=True, kw_only=True)
class RunPart:
    """One stage of the run, from `start` to `end`.

    `programme` is the furnace programme of the stage, empty before the furnace.
    """

    stage: RunStage
    minutes: float
    start: datetime
    end: datetime
    programme: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Drying:
    """How the work is dried before it is sintered.

    `in_furnace` says that the programme does it; the temperature is the furnace's business then,
    and `temperature_c` None.
    """

    minutes: float
    temperature_c: float | None
    in_furnace: bool


def run_strip(case: Case, start: datetime) -> tuple[RunPart, ...]:
    """Return the stages one after the other from `start`; the last one's end is when it is ready.

    Raises
    ------
    CatalogueError
        If the sintering programme is not among the materials.
    """
    programme = case.materials.programme(case.programme)
    sinter, cool = sintering_minutes(programme)
    dried = drying(case)
    return laid_end_to_end(
        (
            (RunStage.MIX, mixing_minutes(len(case.plan.jars)), ""),
            (RunStage.COATS, painting_minutes(case), ""),
            (RunStage.DRY, dried.minutes, programme.name if dried.in_furnace else ""),
            (RunStage.SINTER, sinter, programme.name),
            (RunStage.COOL, cool, programme.name),
        ),
        start,
    )


def laid_end_to_end(
    stages: Iterable[tuple[RunStage, float, str]], start: datetime
) -> tuple[RunPart, ...]:
    """Return stages (what, minutes, programme) one after the other."""
    parts = []
    for stage, minutes, programme in stages:
        end = start + timedelta(minutes=minutes)
        parts.append(
            RunPart(stage=stage, minutes=minutes, start=start, end=end, programme=programme)
        )
        start = end
    return tuple(parts)


def painting_minutes(case: Case) -> float:
    """Return how long all coats take; assumed.

    A round over several units takes the brush's minute for each, and the first of them has soaked
    by then; a round over one takes its soak as well.
    """
    from stainmap.planning.mixing import units_painted  # noqa: PLC0415

    return sum(
        rounds * round_minutes(len(units_painted(case, (number,))))
        for number, step in enumerate(case.plan.steps, start=1)
        if (rounds := coats_to_paint(step))
    )


def brush_minutes(case: Case) -> float:
    """Return how long the brush is at work on a case, without waiting for any coat to soak."""
    from stainmap.planning.mixing import units_painted  # noqa: PLC0415

    each = MINUTES_PER_COAT - SOAK_MINUTES
    return sum(
        each * coats_to_paint(step) * max(len(units_painted(case, (number,))), 1)
        for number, step in enumerate(case.plan.steps, start=1)
    )


def round_minutes(units: int) -> float:
    """Return how long a coat on so many units takes, until the first one can get the next."""
    return max((MINUTES_PER_COAT - SOAK_MINUTES) * max(units, 1), MINUTES_PER_COAT)


def drying(case: Case) -> Drying:
    """Return how a case is dried: by its programme, or for so long in an oven.

    Raises
    ------
    CatalogueError
        If the sintering programme is not among the materials.
    """
    own = case.materials.programme(case.programme).own_drying_minutes
    if own is not None:
        return Drying(minutes=own, temperature_c=None, in_furnace=True)
    minutes = drying_minutes(len(case.units), bridge=len(case.units) > 1)
    return Drying(minutes=minutes, temperature_c=DRY_TEMPERATURE_C, in_furnace=False)


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


def drying_minutes(units: int, *, bridge: bool = False) -> float:
    """Return how long so many units dry in an oven of 93 degrees Celsius.

    10 min for one single unit (common practice); 5 more for each further one, and 10 more where a
    bridge with its solid parts is among them (assumed).
    """
    return _DRY_ONE_UNIT + _DRY_EACH_MORE * max(units - 1, 0) + (_DRY_BRIDGE if bridge else 0.0)


def sintering_minutes(programme: SinteringProgramme) -> tuple[float, float]:
    """Return the minutes up to the end of the last hold or rise, and of the cooling after it."""
    before = [programme.start_c, *(segment.target_c for segment in programme.segments)]
    falling = 0
    while falling < len(programme.segments) and before[-1 - falling] < before[-2 - falling]:
        falling += 1
    cool = sum(segment.minutes for segment in programme.segments[-falling:]) if falling else 0.0
    return programme.minutes - cool, cool
