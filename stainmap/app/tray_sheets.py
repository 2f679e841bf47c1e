"""The sheets of a tray: its cases predicted one after the other, then drawn as one bundle."""

from __future__ import annotations

from dataclasses import dataclass

from stainmap.app.job import Progress
from stainmap.app.prediction import Prediction, for_record, predict_case
from stainmap.app.sheets import Sheet, sheet_data, sheets_of
from stainmap.app.tray import LaidCase, LaidTray
from stainmap.errors import CancelledError, PlanError, StainmapError
from stainmap.model.case import Case
from stainmap.paper.page_size import PageSize
from stainmap.paper.shading import ShadingFields
from stainmap.paper.sheet_data import SheetData
from stainmap.planning.progress import Steps
from stainmap.predict.seen import Seen

_PREDICTED_SHARE = 0.3  # of the whole time, the cases predicted


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class TraySheets:
    """Finished sheets of a tray.

    Parameters
    ----------
    sheets
        Coat map and agreement page of every case, and one mixing list.
    cases
        Those that they are of, as they lie on the tray.
    left_out
        A sentence for every case that there are no sheets of.
    """

    sheets: tuple[Sheet, ...]
    cases: tuple[Case, ...]
    left_out: tuple[str, ...]


def tray_sheets(
    laid: LaidTray,
    *,
    page: PageSize,
    open_prediction: Prediction | None = None,
    shading: ShadingFields | None = None,
    progress: Progress | None = None,
) -> TraySheets:
    """Return the sheets of a tray; cases that could not be read or predicted are left out.

    Parameters
    ----------
    open_prediction, shading
        The prediction of the open case, if it lies on the tray, and its shading: they are not
        computed again.

    Raises
    ------
    StainmapError
        If no case is left to print, or two of them have the same code.
    """
    steps = Steps(progress)
    data: list[SheetData] = []
    cases: list[Case] = []
    left_out = [
        f"{entry.path.name} could not be read; there are no sheets of it."
        for entry in laid.tray.entries
        if entry.path not in {one.entry.path for one in laid.cases}
    ]
    for number, one in enumerate(laid.cases):
        part = steps.part(
            _PREDICTED_SHARE * number / len(laid.cases),
            _PREDICTED_SHARE * (number + 1) / len(laid.cases),
        )
        try:
            data.append(_data(one, page, open_prediction, shading, part))
        except CancelledError:
            raise
        except StainmapError as error:
            left_out.append(f"{one.case.code}: {error} There are no sheets of it.")
        else:
            cases.append(one.case)
    if not data:
        raise PlanError(
            " ".join(left_out) or "Nothing lies on the tray.", advice="Lay a planned case on it."
        )
    drawn = steps.part(_PREDICTED_SHARE, 1.0)
    sheets = tuple(sheets_of(data, progress=drawn.say))
    return TraySheets(sheets=sheets, cases=tuple(cases), left_out=tuple(left_out))


def _data(
    one: LaidCase,
    page: PageSize,
    known: Prediction | None,
    shading: ShadingFields | None,
    steps: Steps,
) -> SheetData:
    case = one.case
    # Found out before the long work, and for this case alone.
    if not case.plan.steps:
        raise PlanError("The plan has no step to paint.", advice="Add a step first.")
    if known is not None and known.case is case:
        return sheet_data(for_record(known, steps.say), page=page, shading=shading)

    def say(share: float, phrase: str) -> None:
        steps.say(share, f"{case.code}, {phrase}")

    say(0.0, "prediction")
    return sheet_data(predict_case(case, seen=Seen(bands="full"), progress=say), page=page)
