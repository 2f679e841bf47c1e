"""What the verbs take: kinds of options, and how their words become values."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import click

from stainmap.units import LengthUnit, SizeState

Vector = tuple[float, float, float]
Teeth = tuple[int, ...]

# Whether a file can be read is found out, and said, by what reads it.
FilePath = click.Path(path_type=Path, readable=False)
SizeOption = click.Choice([SizeState.MILLED.value, SizeState.SINTERED.value])
UnitOption = click.Choice([unit.value for unit in LengthUnit])


def read_vector(ctx: click.Context, param: click.Parameter, value: str | None) -> Vector | None:
    """Read three numbers with commas between them, as 0,1,0; wrong usage unless they point."""
    if value is None:
        return None
    try:
        x, y, z = (float(part) for part in value.split(","))
    except ValueError as error:
        text = f"'{value}' is not a direction; give three numbers, as 0,1,0."
        raise click.BadParameter(text, ctx, param) from error
    if not 0.0 < x * x + y * y + z * z < float("inf"):
        text = f"'{value}' points nowhere; give three numbers, as 0,1,0."
        raise click.BadParameter(text, ctx, param)
    return (x, y, z)


def read_teeth(ctx: click.Context, param: click.Parameter, value: str | None) -> Teeth | None:
    """Read tooth numbers by ISO 3950 with commas between them, as 14,15,16."""
    if value is None:
        return None
    parts = [part.strip() for part in value.split(",")]
    if not all(part.isdecimal() and part.isascii() for part in parts):
        text = f"'{value}' is not a list of tooth numbers, as 46 or 14,15,16."
        raise click.BadParameter(text, ctx, param)
    return tuple(int(part) for part in parts)


def path_argument(name: str) -> Callable[[Callable[..., Any]], Callable[..., Any]]:
    """Return the argument of a verb that names a file."""
    return click.argument(name, type=FilePath)


def materials_option() -> Callable[[Callable[..., Any]], Callable[..., Any]]:
    """Return the option that names a laboratory's own materials file."""
    return click.option(
        "--materials",
        type=FilePath,
        metavar="FILE",
        help="Own materials (TOML); they take the place of those of the same name.",
    )
