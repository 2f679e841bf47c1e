"""The sheets of a tray: its cases predicted and drawn, several at once, and one mixing list."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.app.job import Progress
from stainmap.app.prediction import Prediction, for_sheets
from stainmap.app.sheets import (
    Sheet,
    SheetKind,
    case_sheets,
    painter_of,
    revised,
    sheet_data,
    sheet_data_from_file,
    sheet_name,
)
from stainmap.app.side_processes import each_of, processes_for
from stainmap.app.tray import LaidCase, LaidTray
from stainmap.errors import CancelledError, PlanError, StainmapError
from stainmap.model.case import Case
from stainmap.paper.page_size import PageSize
from stainmap.paper.shading import ShadingFields
from stainmap.paper.sheet_data import SheetData
from stainmap.paper.tray_sheet import tray_list_bytes
from stainmap.planning.area_figures import KeptFigures
from stainmap.planning.outcome import Outcome
from stainmap.planning.plan_hash import plan_hash
from stainmap.planning.progress import Steps
from stainmap.units import TemperatureUnit
from stainmap.words import translate

_PREDICTED_SHARE = 0.6  # of the time of one case
_TRAY = "tray"
# Processes take a second to start: below so many vertices in all they are not worth it.
_WORTHWHILE_FROM: Final = 100_000
_THREADS_ALONE: Final = 2


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class TraySheets:
    """Finished sheets of a tray.

    Parameters
    ----------
    sheets
        Coat map and agreement page of every case, and one mixing list if there is anything to mix.
    printed
        The cases that they are of, as they lie on the tray.
    left_out
        A sentence for every case that there are no sheets of, and one for a missing mixing list.
    """

    sheets: tuple[Sheet, ...]
    printed: tuple[LaidCase, ...]
    left_out: tuple[str, ...]

    @property
    def cases(self) -> tuple[Case, ...]:
        """The cases that they are of, as they are in their files."""
        return tuple(one.case for one in self.printed)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Asked:
    """One case to predict and draw; travels to another process."""

    case: Case
    figures: KeptFigures | None
    page: PageSize
    day: date
    mixed_at: datetime | None
    degrees: TemperatureUnit
    threads: int


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Drawn:
    """What comes back: the sheets of one case, and what the mixing list says of it."""

    sheets: tuple[Sheet, ...]
    coats: NDArray[np.float32]
    outcome: Outcome
    draft: str


def tray_sheets(  # noqa: PLR0913 - all by name, and all but the paper may be left out
    laid: LaidTray,
    *,
    page: PageSize,
    day: date | None = None,
    mixed_at: datetime | None = None,
    degrees: TemperatureUnit = TemperatureUnit.BOTH,
    open_prediction: Prediction | None = None,
    shading: ShadingFields | None = None,
    processes: int | None = None,
    progress: Progress | None = None,
) -> TraySheets:
    """Return the sheets of a tray; cases that could not be read or predicted are left out.

    Parameters
    ----------
    open_prediction, shading
        The prediction of the open case, if it lies on the tray, and its shading: they are not
        computed again.
    processes
        How many cases are worked on at once; as many as are worth it if None.

    Raises
    ------
    StainmapError
        If no case is left to print.
    """
    today = day or date.today()  # noqa: DTZ011 - the date on the wall of the laboratory
    steps = Steps(progress)
    open_case = None if open_prediction is None else open_prediction.case
    if processes is None:
        sizes = [
            one.case.surface.mesh.vertex_count for one in laid.cases if one.case is not open_case
        ]
        processes = processes_for(len(sizes)) if sum(sizes) > _WORTHWHILE_FROM else 1
    asked = [
        _Asked(
            case=one.labelled,
            figures=one.figures,
            page=page,
            day=today,
            mixed_at=mixed_at,
            degrees=degrees,
            threads=_THREADS_ALONE if processes == 1 else 1,
        )
        for one in laid.cases
    ]
    made: dict[int, _Drawn | StainmapError] = {}
    for number, one in enumerate(laid.cases):
        if open_prediction is not None and one.case is open_case:
            steps = Steps(progress, 1.0 / len(asked))
            own = Steps(progress, 0.0, 1.0 / len(asked))
            made[number] = _drawn_open(asked[number], open_prediction, shading, own)
    others = [number for number in range(len(asked)) if number not in made]
    # The largest first: what is left for one process at the end, while the others rest, is small.
    others.sort(key=lambda number: -asked[number].case.surface.mesh.vertex_count)
    rest = [asked[number] for number in others]
    found = each_of(_drawn, rest, processes=processes, progress=steps.say)
    made |= dict(zip(others, found, strict=True))
    left_out = list(laid.not_laid)
    printed: list[LaidCase] = []
    sheets: list[Sheet] = []
    listed: list[SheetData] = []
    for number, one in enumerate(laid.cases):
        drawn = made[number]
        if isinstance(drawn, StainmapError):
            left_out.append(
                translate("tray sheets", "{code}: {drawn} There are no sheets of it.").format(
                    code=one.labelled.code, drawn=drawn
                )
            )
            continue
        printed.append(one)
        sheets += drawn.sheets
        listed.append(_listed(asked[number], drawn))
    if not printed:
        raise PlanError(
            " ".join(left_out) or translate("tray sheets", "Nothing lies on the tray."),
            advice=translate("tray sheets", "Lay a planned case on it."),
        )
    try:
        pdf = tray_list_bytes(listed)
    except StainmapError as error:
        # The sheets of the cases took their time, and are good without it.
        left_out.append(
            translate("tray sheets", "There is no mixing list: {error}").format(error=error)
        )
    else:
        name = sheet_name(_TRAY, SheetKind.MIXING_LIST)
        sheets.append(Sheet(kind=SheetKind.MIXING_LIST, name=name, pdf=pdf))
    return TraySheets(sheets=tuple(sheets), printed=tuple(printed), left_out=tuple(left_out))


def _drawn(asked: _Asked, say: Progress) -> _Drawn:
    """Return the sheets of one case."""
    _require_steps(asked.case)
    steps = Steps(lambda share, phrase: say(share, f"{asked.case.code}, {phrase}"))
    steps.say(0.0, translate("tray sheets", "prediction"))
    data = sheet_data_from_file(
        asked.case,
        asked.figures,
        page=asked.page,
        day=asked.day,
        mixed_at=asked.mixed_at,
        degrees=asked.degrees,
        threads=asked.threads,
        progress=steps.part(0.0, _PREDICTED_SHARE).say,
    )
    return _sheets(data, steps.part(_PREDICTED_SHARE, 1.0))


def _drawn_open(
    asked: _Asked, prediction: Prediction, shading: ShadingFields | None, steps: Steps
) -> _Drawn | StainmapError:
    """Return the sheets of the open case, or why there are none."""
    try:
        _require_steps(asked.case)
        recorded = for_sheets(prediction, steps.part(0.0, _PREDICTED_SHARE).say)
        data = sheet_data(
            replace(recorded, case=asked.case),
            page=asked.page,
            day=asked.day,
            mixed_at=asked.mixed_at,
            shading=shading,
            degrees=asked.degrees,
        )
        return _sheets(data, steps.part(_PREDICTED_SHARE, 1.0))
    except CancelledError:
        raise
    except StainmapError as error:
        return error


def _sheets(data: SheetData, steps: Steps) -> _Drawn:
    return _Drawn(
        sheets=case_sheets(data, progress=steps.say),
        coats=data.coats,
        outcome=data.outcome,
        draft=data.draft,
    )


def _listed(asked: _Asked, drawn: _Drawn) -> SheetData:
    """Return what the mixing list is made of."""
    return SheetData(
        case=revised(asked.case),
        coats=drawn.coats,
        outcome=drawn.outcome,
        plan_hash=plan_hash(asked.case),
        day=asked.day,
        page=asked.page,
        mixed_at=asked.mixed_at,
        degrees=asked.degrees,
        technician=painter_of(asked.case),
        draft=drawn.draft,
    )


def _require_steps(case: Case) -> None:
    """Refuse a plan that paints nothing before the long work."""
    if not case.plan.steps:
        raise PlanError(
            translate("tray sheets", "The plan has no step to paint."),
            advice=translate("tray sheets", "Add a step first."),
        )
