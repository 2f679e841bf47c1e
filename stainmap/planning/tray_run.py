"""The day of a tray: several cases mixed and painted together, one firing for each programme."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from stainmap.model.case import Case
from stainmap.model.material import SinteringProgramme
from stainmap.planning.mixing import JAR_LIFE_HOURS
from stainmap.planning.schedule import (
    RunPart,
    RunStage,
    brush_minutes,
    drying_minutes,
    laid_end_to_end,
    mixing_minutes,
    painting_minutes,
    sintering_minutes,
)
from stainmap.predict.sintering import duration_text
from stainmap.words import translate

USUAL_TRAY_UNITS: Final = 20
"""Units that one firing tray usually holds at most; assumed, the furnace's maker decides."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Firing:
    """One firing: its programme, the codes of its cases, how many units lie in it, when it ends."""

    programme: SinteringProgramme
    codes: tuple[str, ...]
    units: int
    ready: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class TrayRun:
    """The stages of a tray one after the other, its firings in the same order, and remarks."""

    parts: tuple[RunPart, ...]
    firings: tuple[Firing, ...]
    remarks: tuple[str, ...]


def tray_run(cases: Sequence[Case], jars: int, start: datetime) -> TrayRun:
    """Return the day of a tray.

    Painting takes the brush's minutes of all cases, and no less than the slowest of them alone.
    Cases whose programmes differ in anything are fired one after the other, in one furnace.

    Parameters
    ----------
    cases
        One or more.
    jars
        How many jars are mixed for all of them.

    Raises
    ------
    CatalogueError
        If a programme is not among a case's materials.
    """
    groups: dict[SinteringProgramme, list[Case]] = {}
    for case in cases:
        groups.setdefault(case.materials.programme(case.programme), []).append(case)
    painting = max(
        sum(brush_minutes(case) for case in cases),
        max((painting_minutes(case) for case in cases), default=0.0),
    )
    stages = [(RunStage.MIX, mixing_minutes(jars), ""), (RunStage.COATS, painting, "")]
    outside = [
        case for one, group in groups.items() if one.own_drying_minutes is None for case in group
    ]
    if outside:
        bridge = any(len(case.units) > 1 for case in outside)
        stages.append((RunStage.DRY, drying_minutes(_units(outside), bridge=bridge), ""))
    for programme in groups:
        if programme.own_drying_minutes is not None:
            stages.append((RunStage.DRY, programme.own_drying_minutes, programme.name))
        sinter, cool = sintering_minutes(programme)
        stages.append((RunStage.SINTER, sinter, programme.name))
        stages.append((RunStage.COOL, cool, programme.name))
    parts = laid_end_to_end(stages, start)
    cooled = [part.end for part in parts if part.stage is RunStage.COOL]
    firings = tuple(
        Firing(
            programme=programme,
            codes=tuple(case.code for case in group),
            units=_units(group),
            ready=end,
        )
        for (programme, group), end in zip(groups.items(), cooled, strict=True)
    )
    return TrayRun(parts=parts, firings=firings, remarks=_remarks(firings, painting))


def _units(cases: Sequence[Case]) -> int:
    return sum(max(len(case.units), 1) for case in cases)


def _remarks(firings: Sequence[Firing], painting: float) -> tuple[str, ...]:
    remarks = []
    if len(firings) > 1:
        told = "; ".join(f"{one.programme.name}: {', '.join(one.codes)}" for one in firings)
        remarks.append(
            translate(
                "tray run", "This tray needs {count} firings, one after the other. {firings}."
            ).format(count=len(firings), firings=told)
        )
        names = [one.programme.name for one in firings]
        twice = [name for name in dict.fromkeys(names) if names.count(name) > 1]
        remarks += [
            translate(
                "tray run",
                "Two programmes are called “{name}” and differ; see the cases' materials.",
            ).format(name=name)
            for name in twice
        ]
    remarks += [
        translate(
            "tray run",
            "{units} units in one firing; a tray usually holds {usual} at most "
            "(assumed). Fire them in parts.",
        ).format(units=one.units, usual=USUAL_TRAY_UNITS)
        for one in firings
        if one.units > USUAL_TRAY_UNITS
    ]
    if painting > 60.0 * JAR_LIFE_HOURS:
        remarks.append(
            translate(
                "tray run",
                "Painting takes {painting}, longer than a mixed jar is kept "
                "({hours:g} h): mix in parts.",
            ).format(painting=duration_text(painting), hours=JAR_LIFE_HOURS)
        )
    return tuple(remarks)
