"""The verb `check`: how good the fast answer is at one point."""

# ruff: noqa: PLC0415 - imports what it needs when called, so that --help answers at once

from __future__ import annotations

from dataclasses import asdict
from math import isfinite
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from stainmap.cli.options import Vector, path_argument
from stainmap.cli.reporting import about, is_watched, reports, told_progress
from stainmap.errors import StainmapError

if TYPE_CHECKING:
    from stainmap.model.case import Case
    from stainmap.predict.point_check import PointCheck

FURTHEST_MM = 1.0
"""A point further from the surface than this names no place on it."""

ROWS = (
    ("fast", "as on screen"),
    ("plain", "all wavelengths"),
    ("textbook", "textbook surfaces"),
    ("transport", "exact transport"),
    ("transport_with_dispersion", "  with dispersion"),
)


def read_point(ctx: click.Context, param: click.Parameter, value: str | None) -> Vector | None:
    """Read three coordinates with commas between them, as 1.5,-2,6."""
    if value is None:
        return None
    try:
        x, y, z = (float(part) for part in value.split(","))
    except ValueError as error:
        text = f"'{value}' is not a point; give three numbers, as 1.5,-2,6."
        raise click.BadParameter(text, ctx, param) from error
    if not all(map(isfinite, (x, y, z))):
        raise click.BadParameter(f"'{value}' lies nowhere.", ctx, param)
    return (x, y, z)


@click.command()
@path_argument("case")
@click.option(
    "--vertex",
    type=click.IntRange(min=1),
    metavar="N",
    help="Row of the table that `predict --vertices` writes, from 1.",
)
@click.option(
    "--at",
    callback=read_point,
    metavar="X,Y,Z",
    help="Point on the crown in the file's coordinates; the nearest vertex is taken.",
)
@reports
def check(
    case: Path,
    vertex: int | None,
    at: Vector | None,
    *,
    as_json: bool,
) -> dict[str, Any]:
    """Say how good the fast answer is at one point of the crown."""
    if (vertex is None) == (at is None):
        raise click.UsageError("Give either --vertex N or --at X,Y,Z.")
    from stainmap.files.case_file import read_case
    from stainmap.planning.coats import CoatLayout
    from stainmap.predict.grinding import ground_crown, ground_depth_mm
    from stainmap.predict.point_check import check_point
    from stainmap.predict.scene import scene_from_case
    from stainmap.predict.shape import crown_shape

    progress = told_progress(shown=is_watched(as_json))
    with about(case, StainmapError):
        opened = read_case(case, progress)
        index = _row(opened, vertex) if at is None else _nearest(opened, at)
        shape = crown_shape(opened, progress=progress)
        ground = ground_crown(shape, opened.process, ground_depth_mm(opened))
        coats = CoatLayout(opened.surface.mesh, opened.reading.outer).coats(opened, "high")
        coats = ground.coats(scene_from_case(opened), coats)
        found = check_point(opened, ground.shape, coats, index)
    if not as_json:
        _print(found)
    return _report(found)


def _row(case: Case, row: int | None) -> int:
    rows = case.surface.file_vertex
    if row is None or row > len(rows):
        raise StainmapError(f"There is no row {row}.", advice=f"They run from 1 to {len(rows)}.")
    if rows[row - 1] < 0:
        raise StainmapError(
            f"Row {row} is not part of the crown.", advice="Choose one with an area."
        )
    return int(rows[row - 1])


def _nearest(case: Case, point: Vector) -> int:
    import numpy as np

    mesh = case.surface.mesh
    away = mesh.vertices - np.array(point) * case.source.sintered_mm_per_unit
    squared = np.einsum("ij,ij->i", away, away)
    nearest = int(squared.argmin())
    distance = float(np.sqrt(squared[nearest]))
    if distance > FURTHEST_MM:
        raise StainmapError(
            f"The point {point[0]:g},{point[1]:g},{point[2]:g} lies {distance:.1f} mm from the "
            "crown.",
            advice="Give a point on it, in the coordinates of its mesh file.",
        )
    return nearest


def _report(found: PointCheck) -> dict[str, Any]:
    report = asdict(found)
    for key, value in report.items():
        if isinstance(value, float):
            report[key] = round(value, 3)
        elif isinstance(value, tuple):
            report[key] = [round(part, 3) for part in value]
    return report


def _print(found: PointCheck) -> None:
    click.echo(f"Wall {found.wall_mm:.2f} mm, behind it: {found.region}. Light {found.light}.")
    click.echo(f"{'':20}{'L*':>7}{'a*':>7}{'b*':>7}{'dE00':>7}")
    off = {"fast": found.fast_de00, "plain": found.plain_de00, "textbook": found.textbook_de00}
    for name, label in ROWS:
        lightness, a, b = getattr(found, name)
        row = f"{label:20}{lightness:7.1f}{a:7.1f}{b:7.1f}"
        click.echo(row + (f"{off[name]:7.2f}" if name in off else ""))
    click.echo(found.verdict)
    click.echo("All of them leave out light and liquid from the neighbourhood.")
