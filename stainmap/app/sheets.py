"""The sheets of one case, or of all cases of a tray: what is on them, their names, their files."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date, datetime
from enum import StrEnum
from pathlib import Path

from stainmap.app.job import Progress
from stainmap.app.prediction import Prediction, predict_case
from stainmap.files.atomic import write_bytes
from stainmap.model.case import Case
from stainmap.paper.agreement_sheet import agreement_bytes
from stainmap.paper.coat_map import coat_map_bytes
from stainmap.paper.mixing_sheet import mixing_list_bytes
from stainmap.paper.page_pictures import page_pngs
from stainmap.paper.page_size import PageSize
from stainmap.paper.shading import ShadingFields
from stainmap.paper.sheet_data import SheetData
from stainmap.planning.area_figures import KeptFigures
from stainmap.planning.coats import CoatLayout
from stainmap.planning.draft import draft_reason
from stainmap.planning.figures_key import fits
from stainmap.planning.outcome import outcome_of
from stainmap.planning.plan_hash import plan_hash
from stainmap.predict.measured_shape import known_shape
from stainmap.units import TemperatureUnit
from stainmap.words import in_english

# What file systems somewhere do not allow in a name.
_FORBIDDEN = '<>:"/\\|?*'


def revised(case: Case) -> Case:
    """Return a case as its next sheets number it.

    What has been printed and changed since is the next revision, and says which plan it replaces;
    the same plan printed again keeps its revision.
    """
    now = plan_hash(case)
    if case.printed in {"", now}:
        return replace(case, printed=now)
    return replace(case, revision=case.revision + 1, replaces=case.printed, printed=now)


class SheetKind(StrEnum):
    """Kinds of sheets; the value ends the file's name."""

    COAT_MAP = "coat-map"
    MIXING_LIST = "mixing-list"
    AGREEMENT = "agreement"


class FileKind(StrEnum):
    """How sheets are written."""

    PDF = "pdf"
    PNG = "png"


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A finished sheet: its kind, the name of its file without an ending, and its PDF."""

    kind: SheetKind
    name: str
    pdf: bytes


@in_english()
def sheet_data(
    prediction: Prediction,
    *,
    page: str = PageSize.A4,
    day: date | None = None,
    mixed_at: datetime | None = None,
    shading: ShadingFields | None = None,
    degrees: TemperatureUnit = TemperatureUnit.BOTH,
) -> SheetData:
    """Return what is printed about a prediction; the date is today's unless one is given.

    The case is numbered as `revised` has it.
    """
    case = prediction.case
    return SheetData(
        case=revised(case),
        coats=prediction.coats,
        outcome=prediction.outcome,
        plan_hash=plan_hash(case),
        day=day or date.today(),  # noqa: DTZ011 - the date on the wall of the laboratory
        shading=shading,
        page=PageSize(page),
        mixed_at=mixed_at,
        degrees=degrees,
        technician=painter_of(case),
        unit_outcomes=prediction.unit_outcomes() if len(case.units) > 1 else (),
        draft=draft_reason(case, prediction.shape.wall_mm),
    )


@in_english()
def sheet_data_from_file(
    case: Case,
    kept: KeptFigures | None,
    *,
    page: str = PageSize.A4,
    day: date | None = None,
    mixed_at: datetime | None = None,
    degrees: TemperatureUnit = TemperatureUnit.BOTH,
    threads: int = 2,
    progress: Progress | None = None,
) -> SheetData:
    """Return what is printed about a case that is not open.

    What its file keeps of its prediction is printed as it is; what the file does not keep, or keeps
    of another plan, is predicted.

    Parameters
    ----------
    kept
        What the file says was predicted of the areas (`case_file.read_figures`), if it says any.
    threads
        How many threads share the work; one where several processes work side by side.

    Raises
    ------
    StainmapError
        If plan, materials and surface do not fit together.
    """
    shape = known_shape(case)
    if kept is None or shape is None or not fits(kept, case):
        prediction = predict_case(case, figures_only=True, threads=threads, progress=progress)
        return sheet_data(prediction, page=page, day=day, mixed_at=mixed_at, degrees=degrees)
    return SheetData(
        case=revised(case),
        coats=CoatLayout(case.surface.mesh, case.reading.outer).coats(case),
        outcome=outcome_of(case, kept.whole),
        plan_hash=plan_hash(case),
        day=day or date.today(),  # noqa: DTZ011 - as above
        page=PageSize(page),
        mixed_at=mixed_at,
        degrees=degrees,
        technician=painter_of(case),
        unit_outcomes=tuple(
            outcome_of(case, figures, unit=unit) for unit, figures in enumerate(kept.units)
        ),
        draft=draft_reason(case, shape.wall_mm),
    )


def painter_of(case: Case) -> str:
    """Return who paints, with their hand factor where it is not 1."""
    hand = case.process.uptake.hand_factor
    parts = [case.process.painter] if case.process.painter else []
    if hand != 1.0:
        parts.append(f"hand {hand:.2f}")
    return ", ".join(parts)


def sheet_name(code: str, kind: SheetKind) -> str:
    """Return the name of a sheet's file for a case code, without its ending."""
    safe = "".join("_" if c in _FORBIDDEN or ord(c) < 32 else c for c in code).strip(" .") or "case"
    return f"{safe}-{kind}"


def case_sheets(data: SheetData, *, progress: Progress | None = None) -> tuple[Sheet, ...]:
    """Return the coat map and the agreement page of a case.

    Raises
    ------
    StainmapError
        If the plan has nothing to print.
    """
    code = data.case.code
    return (
        Sheet(
            kind=SheetKind.COAT_MAP,
            name=sheet_name(code, SheetKind.COAT_MAP),
            pdf=coat_map_bytes(data, progress=progress),
        ),
        Sheet(
            kind=SheetKind.AGREEMENT,
            name=sheet_name(code, SheetKind.AGREEMENT),
            pdf=agreement_bytes(data),
        ),
    )


def sheets_of(data: SheetData, *, progress: Progress | None = None) -> tuple[Sheet, ...]:
    """Return all sheets of a case that is mixed for by itself.

    Raises
    ------
    StainmapError
        If the plan has nothing to print.
    """
    # Refuses a tray without jars: found out before the long work.
    mixing = mixing_list_bytes(data)
    name = sheet_name(data.case.code, SheetKind.MIXING_LIST)
    return (
        *case_sheets(data, progress=progress),
        Sheet(kind=SheetKind.MIXING_LIST, name=name, pdf=mixing),
    )


def write_sheet(sheet: Sheet, folder: Path, kind: str = FileKind.PDF) -> tuple[Path, ...]:
    """Write a sheet into an existing folder; as PNG a file per page. Return the paths.

    Raises
    ------
    StainmapError
        If a file cannot be written.
    """
    if kind == FileKind.PDF:
        path = folder / f"{sheet.name}.pdf"
        write_bytes(path, sheet.pdf)
        return (path,)
    pages = page_pngs(sheet.pdf)
    paths = tuple(folder / f"{sheet.name}-{number}.png" for number in range(1, len(pages) + 1))
    for path, png in zip(paths, pages, strict=True):
        write_bytes(path, png)
    return paths


def write_sheets(
    data: SheetData,
    folder: Path,
    *,
    kind: str = FileKind.PDF,
    progress: Progress | None = None,
) -> tuple[Path, ...]:
    """Write all sheets of a case into an existing folder; return their paths.

    Raises
    ------
    StainmapError
        If the plan has nothing to print, or a file cannot be written.
    """
    sheets = sheets_of(data, progress=progress)
    return tuple(path for sheet in sheets for path in write_sheet(sheet, folder, kind))
