"""The verb `mix`: what is mixed for one case or a whole tray, and how its day goes."""

# ruff: noqa: PLC0415 - imports what it needs when called, so that --help answers at once

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from stainmap.cli.options import FilePath
from stainmap.cli.reporting import check_ending, is_watched, reports, told_progress

if TYPE_CHECKING:
    from stainmap.planning.tray_mixing import TrayJar, TrayMixing
    from stainmap.planning.tray_run import TrayRun


@click.command()
@click.argument(
    "cases", nargs=-1, required=True, type=click.Path(path_type=Path), metavar="CASE..."
)
@click.option(
    "-o", "--output", type=FilePath, help="Also keep the tray in a file, to open it again."
)
@reports
def mix(cases: tuple[Path, ...], output: Path | None, *, as_json: bool) -> dict[str, Any]:
    """Say what is mixed for cases on one tray, and when they are ready.

    A CASE is a case file, or a tray that was kept. What cannot be read is said, the rest goes on.
    """
    from stainmap.app.tray import lay_out
    from stainmap.errors import StainmapError
    from stainmap.files.tray_file import SUFFIX, write_tray

    if output is not None:
        check_ending(output, SUFFIX)
    laid = lay_out(cases, told_progress(shown=is_watched(as_json)))
    if not laid.cases:
        raise StainmapError("No case could be laid on the tray. " + " ".join(laid.problems))
    mixing = laid.mixing()
    run = laid.run(datetime.now().astimezone().replace(second=0, microsecond=0))
    if output is not None:
        write_tray(laid.tray, output)
    remarks = [*laid.problems, *mixing.left_out, *mixing.remarks, *run.remarks]
    if not as_json:
        for line in _lines(mixing, run):
            click.echo(line)
        for remark in remarks:
            click.echo(f"note: {remark}")
        if output is not None:
            click.echo(f"Written: {output}")
    return {
        "cases": [
            {"file": str(one.entry.path), "code": one.case.code, "plan_hash": one.entry.plan_hash}
            for one in laid.cases
        ],
        "units": laid.units,
        "jars": [_jar(jar) for jar in mixing.jars],
        "run": [
            {"stage": str(part.stage), "minutes": part.minutes, "programme": part.programme}
            for part in run.parts
        ],
        "remarks": remarks,
        "file": None if output is None else str(output),
    }


def _lines(mixing: TrayMixing, run: TrayRun) -> Iterator[str]:
    from stainmap.planning.batch_size import ESTIMATE, served_text
    from stainmap.predict.sintering import duration_text

    for one in mixing.jars:
        dyes = ", ".join(f"{name} {drops}" for name, drops in one.dyes) or "no dye"
        yield (
            f"jar {one.jar.number}  {one.jar.liquid:10} {one.jar.liquid_drops:3} drops, {dyes};"
            f" {one.look_word} on chalk; takes {one.need_drops:.1f} drops,"
            f" enough for {served_text(one.serves)};"
            f" smallest jar {one.smallest.liquid_drops} drops"
        )
    yield ESTIMATE
    yield "; ".join(
        " ".join(filter(None, (str(part.stage), part.programme, duration_text(part.minutes))))
        for part in run.parts
    )
    for firing in run.firings:
        yield (
            f"{firing.programme.name}: {', '.join(firing.codes)}; ready {firing.ready:%H:%M} if"
            " started now"
        )


def _jar(one: TrayJar) -> dict[str, Any]:
    return {
        "number": one.jar.number,
        "liquid": one.jar.liquid,
        "liquid_drops": one.jar.liquid_drops,
        "dyes": dict(one.dyes),
        "lot": one.jar.lot,
        "look": one.look_word,
        "need_drops": round(one.need_drops, 3),
        "serves_units": one.serves,
        "smallest_liquid_drops": one.smallest.liquid_drops,
        "cases": [
            {
                "code": serving.code,
                "jar": serving.need.jar.number,
                "steps": list(serving.steps),
                "units": [unit.tooth.number for unit in serving.units],
                "need_drops": round(serving.need.drops, 3),
            }
            for serving in one.servings
        ],
    }
