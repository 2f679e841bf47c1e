"""The verb `sheet`: coat maps, agreement pages and a mixing list, of one case or of a tray."""

# ruff: noqa: PLC0415 - what it needs is imported when it is called, so that --help answers at once

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from stainmap.cli.options import FilePath
from stainmap.cli.reporting import about, is_watched, reports, told_progress
from stainmap.errors import StainmapError

if TYPE_CHECKING:
    from stainmap.app.job import Progress


@click.command()
@click.argument("cases", type=FilePath, nargs=-1, required=True)
@click.option("-o", "--output", type=FilePath, required=True, help="Folder.")
@click.option("--page", type=click.Choice(["A4", "Letter"]), default="A4", show_default=True)
@click.option(
    "--as",
    "kind",
    type=click.Choice(["pdf", "png"]),
    default="pdf",
    show_default=True,
    help="PDF, or a picture per page.",
)
@reports
def sheet(
    cases: tuple[Path, ...], output: Path, page: str, kind: str, *, as_json: bool
) -> dict[str, Any]:
    """Write coat map, agreement page and mixing list into a folder.

    Several cases, or a tray that was kept, are taken for one tray: each case has its own coat map
    and agreement page, and one mixing list serves all of them. What cannot be read is said, the
    rest goes on. The case files stay as they are: printing from the window notes revisions in them.
    """
    from stainmap.files.tray_file import SUFFIX

    progress = told_progress(shown=is_watched(as_json))
    if len(cases) > 1 or cases[0].suffix == SUFFIX:
        written, remarks = _of_tray(cases, output, page, kind, progress)
    else:
        written, remarks = _of_case(cases[0], output, page, kind, progress), ()
    if not as_json:
        for remark in remarks:
            click.echo(f"note: {remark}")
        for path in written:
            click.echo(f"Written: {path}")
    return {"files": [str(path) for path in written], "remarks": list(remarks)}


def _of_case(
    path: Path, folder: Path, page: str, kind: str, progress: Progress
) -> tuple[Path, ...]:
    from stainmap.app.sheets import sheet_data_from_file, write_sheets
    from stainmap.files.atomic import make_folder
    from stainmap.files.case_file import read_case, read_figures

    with about(path, StainmapError):
        case = read_case(path, progress)
        data = sheet_data_from_file(case, read_figures(path), page=page, progress=progress)
    make_folder(folder)
    return write_sheets(data, folder, kind=kind, progress=progress)


def _of_tray(
    cases: tuple[Path, ...], folder: Path, page: str, kind: str, progress: Progress
) -> tuple[tuple[Path, ...], tuple[str, ...]]:
    """Write the sheets of a tray; return the files, and what has to be said of it."""
    from stainmap.app.side_processes import make_ready

    if len(cases) > 1:
        make_ready("stainmap.app.tray_sheets")
    from stainmap.app.sheets import write_sheet
    from stainmap.app.tray import lay_out
    from stainmap.app.tray_sheets import tray_sheets
    from stainmap.files.atomic import make_folder
    from stainmap.paper.page_size import PageSize

    laid = lay_out(cases, progress)
    made = tray_sheets(laid, page=PageSize(page), progress=progress)
    make_folder(folder)
    written = tuple(path for one in made.sheets for path in write_sheet(one, folder, kind))
    return written, tuple(dict.fromkeys((*laid.problems, *made.left_out)))
