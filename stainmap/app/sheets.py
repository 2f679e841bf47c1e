"""Coat map and mixing list of a prediction, written as PDF."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path

from stainmap.app.job import Progress
from stainmap.app.prediction import Prediction
from stainmap.model.case import Case
from stainmap.paper.coat_map import write_coat_map
from stainmap.paper.mixing_sheet import write_mixing_list
from stainmap.paper.page_size import PageSize
from stainmap.paper.shading import ShadingFields
from stainmap.paper.sheet_data import SheetData
from stainmap.planning.draft import draft_reason
from stainmap.planning.plan_hash import plan_hash

# What file systems somewhere do not allow in a name.
_FORBIDDEN = '<>:"/\\|?*'


def sheet_data(
    prediction: Prediction,
    *,
    page: str = PageSize.A4,
    day: date | None = None,
    mixed_at: datetime | None = None,
    shading: ShadingFields | None = None,
) -> SheetData:
    """Return what is printed about a prediction; the date is today's unless one is given."""
    return SheetData(
        case=prediction.case,
        coats=prediction.coats,
        outcome=prediction.outcome,
        plan_hash=plan_hash(prediction.case),
        day=day or date.today(),  # noqa: DTZ011 - the date on the wall of the laboratory
        operator=prediction.shape.operator,
        shading=shading,
        page=PageSize(page),
        mixed_at=mixed_at,
        technician=_painter(prediction.case),
        unit_outcomes=prediction.unit_outcomes() if len(prediction.case.units) > 1 else (),
        draft=draft_reason(prediction.case, prediction.shape.wall_mm),
    )


def _painter(case: Case) -> str:
    """Return who paints, with their hand factor where it is not 1."""
    hand = case.process.uptake.hand_factor
    parts = [case.process.painter] if case.process.painter else []
    if hand != 1.0:
        parts.append(f"hand {hand:.2f}")
    return ", ".join(parts)


def sheet_names(code: str) -> tuple[str, str]:
    """Return the file names of coat map and mixing list for a case code."""
    safe = "".join("_" if c in _FORBIDDEN or ord(c) < 32 else c for c in code).strip(" .") or "case"
    return f"{safe}-coat-map.pdf", f"{safe}-mixing-list.pdf"


def write_sheets(
    prediction: Prediction,
    folder: Path,
    *,
    page: str = PageSize.A4,
    day: date | None = None,
    mixed_at: datetime | None = None,
    shading: ShadingFields | None = None,
    progress: Progress | None = None,
) -> tuple[Path, Path]:
    """Write coat map and mixing list into an existing folder; return their paths.

    Raises
    ------
    StainmapError
        If the plan has nothing to print, or a file cannot be written.
    """
    sheet = sheet_data(prediction, page=page, day=day, mixed_at=mixed_at, shading=shading)
    map_name, list_name = sheet_names(prediction.case.code)
    coat_map, mixing = folder / map_name, folder / list_name
    write_coat_map(coat_map, sheet, progress=progress)
    write_mixing_list(mixing, sheet)
    return coat_map, mixing
