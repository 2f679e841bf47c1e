"""The verbs of the command line, and the sample's job without a window."""

# ruff: noqa: PLC0415 - verbs import what they need when called, so that --help answers at once

from __future__ import annotations

import sys
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from stainmap import __version__
from stainmap.cli.check_verb import check
from stainmap.cli.mix_verb import mix
from stainmap.cli.options import (
    FilePath,
    SizeOption,
    UnitOption,
    materials_option,
    path_argument,
    read_teeth,
    read_vector,
)
from stainmap.cli.reporting import (
    CANNOT,
    DONE,
    USAGE,
    about,
    check_ending,
    is_watched,
    reports,
    told_progress,
)
from stainmap.cli.sheet_verb import sheet
from stainmap.cli.suggest_verb import suggest
from stainmap.errors import MeshFileError, ReadingError, StainmapError
from stainmap.units import LengthUnit, SizeState

if TYPE_CHECKING:
    from stainmap.app.opening import MeshLook
    from stainmap.app.prediction import Prediction
    from stainmap.model.case import Case


@click.group(
    context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100},
    epilog="Exit codes: 0 done, 1 cannot be done with this input, 2 wrong usage.",
)
@click.version_option(__version__, prog_name="stainmap")
def commands() -> None:
    """Plan the staining of milled zirconia crowns. Without a verb the window opens.

    Predictions are planning aids, a direction and not a match.
    """


@commands.command()
@path_argument("mesh")
@click.option(
    "--tooth",
    callback=read_teeth,
    metavar="NN[,NN]",
    help="Tooth number by ISO 3950, as 46 or 14,15,16.",
)
@click.option(
    "--axis",
    callback=read_vector,
    metavar="X,Y,Z",
    help="Occlusal direction in the file's coordinates.",
)
@click.option("--size", type=SizeOption, help="Size the mesh has: before or after sintering.")
@reports
def inspect(
    mesh: Path,
    tooth: tuple[int, ...] | None,
    axis: tuple[float, float, float] | None,
    size: str | None,
    *,
    as_json: bool,
) -> dict[str, Any]:
    """Say what a mesh file holds, and how it is read."""
    from stainmap.app.inspecting import inspect_mesh

    state = SizeState(size) if size else SizeState.UNKNOWN
    with about(mesh, MeshFileError):
        report = inspect_mesh(
            mesh,
            numbers=tooth,
            axis=axis,
            size_state=state,
            progress=told_progress(shown=is_watched(as_json)),
        )
    if not as_json:
        for line in (*report.sentences(), *_unit_notes(report.look)):
            click.echo(line)
    return report.as_dict()


@commands.command()
@path_argument("mesh")
@click.option(
    "--tooth",
    callback=read_teeth,
    metavar="NN[,NN]",
    required=True,
    help="Tooth number, as 46 or 14,15,16.",
)
@click.option("-o", "--output", type=FilePath, required=True, help="Case file.")
@click.option(
    "--axis",
    callback=read_vector,
    metavar="X,Y,Z",
    help="Occlusal direction in the file's coordinates.",
)
@click.option(
    "--mesial",
    callback=read_vector,
    metavar="X,Y,Z",
    help="Mesial direction in the file's coordinates.",
)
@click.option("--size", type=SizeOption, help="Size the mesh has: before or after sintering.")
@click.option("--unit", type=UnitOption, help="Unit of the file, where its size does not tell.")
@click.option("--block", help="Block the crown is milled from, by its name.")
@materials_option()
@reports
def propose(  # noqa: PLR0913, PLR0917 - one parameter per option
    mesh: Path,
    tooth: tuple[int, ...],
    output: Path,
    axis: tuple[float, float, float] | None,
    mesial: tuple[float, float, float] | None,
    size: str | None,
    unit: str | None,
    block: str | None,
    materials: Path | None,
    *,
    as_json: bool,
) -> dict[str, Any]:
    """Read a crown, propose its zones, and write a case."""
    from stainmap.app.opening import Answers, build_case, look_at_mesh, units_from_numbers
    from stainmap.cli.own_materials import with_own_materials
    from stainmap.files.case_file import write_case
    from stainmap.files.catalogue import starter_catalogue

    check_ending(output, ".stainmap")
    catalogue, left_out = with_own_materials(starter_catalogue(), materials, as_json=as_json)
    progress = told_progress(shown=is_watched(as_json))
    look = look_at_mesh(mesh, progress)
    answers = Answers(
        units=units_from_numbers(tooth),
        size_state=SizeState(size) if size else _size_state(look, unit),
        block=block or DEFAULT_BLOCK,
        unit=LengthUnit(unit) if unit else None,
        occlusal_axis=axis,
        mesial=mesial,
    )
    with about(mesh, MeshFileError, ReadingError):
        try:
            case, _ = build_case(look, answers, catalogue, progress=progress)
        except ReadingError as error:
            option = _OPTION_FOR.get(error.where or "")
            if option is None:
                raise
            raise ReadingError(error.message, advice=f"Give {option}.") from error
    write_case(case, output)
    if not as_json:
        for note in () if unit else _unit_notes(look):
            click.echo(note)
        for warning in case.reading.warnings:
            click.echo(f"note: {warning}")
        done = "No zones proposed" if not case.accents else "Zones proposed"
        click.echo(f"{done} for {_names(case)}; case written to {output}.")
    return {
        "case": str(output),
        "kind": case.reading.kind.value,
        "units": len(case.units),
        "length_unit": case.source.unit.value,
        "zones": _zone_areas(case),
        "mesial": case.reading.mesial,
        "warnings": [*left_out, *case.reading.warnings],
    }


DEFAULT_BLOCK = "medium 3Y"
# Which option answers what the shape could not tell.
_OPTION_FOR = {
    "occlusal axis": "the direction towards the biting side with --axis X,Y,Z",
    "mesial direction": "the direction towards the midline of the arch with --mesial X,Y,Z",
    "units": "the numbers of all teeth with --tooth NN,NN",
}


def _unit_notes(look: MeshLook) -> tuple[str, ...]:
    """Say in which unit a file was read that is not in millimetres and does not say so itself."""
    unit = look.sizes[0].unit if look.sizes else LengthUnit.MILLIMETRE
    if unit in (LengthUnit.MILLIMETRE, look.loaded.declared_unit):
        return ()
    return (f"note: By its size the file is in {_UNIT_NAMES[unit]}, and was read so.",)


_UNIT_NAMES = {
    LengthUnit.MICROMETRE: "micrometres",
    LengthUnit.CENTIMETRE: "centimetres",
    LengthUnit.METRE: "metres",
    LengthUnit.INCH: "inches",
}


def _size_state(look: MeshLook, unit: str | None) -> SizeState:
    """Return the size state where the mesh's size leaves only one; ask otherwise."""
    if not look.sizes and unit is None and look.loaded.declared_unit is None:
        extent = " x ".join(f"{x:.3g}" for x in look.mesh.extent)
        raise MeshFileError(
            f"A body of {extent} is no crown in any unit.",
            where=look.path.name,
            advice="Say its unit with --unit, or export it again.",
        )
    states = {size.state for size in look.sizes}
    if len(states) == 1 and SizeState.UNKNOWN not in states:
        return states.pop()
    raise StainmapError(
        "The mesh could have its size before or after sintering; the shape cannot tell.",
        where=look.path.name,
        advice="Say --size milled or --size sintered.",
    )


def _names(case: Case) -> str:
    return ", ".join(f"{unit.tooth.number} {unit.tooth.name}" for unit in case.units)


def _zone_areas(case: Case) -> dict[str, float]:
    from stainmap.model.zone import Zone

    sizes = case.surface.mesh.vertex_areas
    return {
        zone.label: round(float(sizes[case.zones == int(zone)].sum()), 2)
        for zone in Zone
        if (case.zones == int(zone)).any()
    }


@commands.command()
@path_argument("case")
@click.option("--vertices", type=FilePath, help="Also write a row per vertex.")
@click.option(
    "--light",
    type=click.Choice(["D65", "D50", "A", "C", "LED-B3", "FL2", "FL11"]),
    default="D65",
    show_default=True,
    help="CIE light the colour is predicted for.",
)
@click.option(
    "--observer",
    type=click.Choice(["2", "10"]),
    default="2",
    show_default=True,
    help="CIE observer, degrees.",
)
@click.option("--what-if", metavar="NAME", help="Also predict another sintering programme.")
@materials_option()
@reports
def predict(
    case: Path,
    vertices: Path | None,
    light: str,
    observer: str,
    what_if: str | None,
    materials: Path | None,
    *,
    as_json: bool,
) -> dict[str, Any]:
    """Predict the colour of every area after sintering, and under other lights."""
    from stainmap.cli.outcome_report import prediction_report
    from stainmap.cli.what_if_report import what_if_lines, what_if_report
    from stainmap.files.mesh_export import export_table, vertex_table

    if vertices is not None:
        check_ending(vertices, ".csv")
    loaded, left_out = _loaded(case, as_json, materials)
    prediction = _prediction(loaded, case, as_json, (light, int(observer)))
    compared = None if what_if is None else prediction.what_if(what_if)
    if vertices is not None:
        appearance = prediction.appearance
        sd = prediction.vertex_sd()
        seen = f"{light}, {observer} deg"
        table = vertex_table(prediction.case, appearance.lab, appearance.srgb, sd, seen=seen)
        export_table(table, vertices)
    if as_json:
        report = prediction_report(prediction) | {"materials_left_out": left_out}
        return report | {"what_if": None if compared is None else what_if_report(compared)}
    _print_outcome(prediction)
    for line in () if compared is None else what_if_lines(compared):
        click.echo(line)
    return {}


def _loaded(path: Path, as_json: bool, materials: Path | None) -> tuple[Case, list[str]]:
    """Return a case with a laboratory's own materials, and what of these was left out."""
    from stainmap.cli.own_materials import with_own_materials
    from stainmap.files.case_file import read_case

    with about(path, StainmapError):
        case = read_case(path, told_progress(shown=is_watched(as_json)))
    catalogue, left_out = with_own_materials(case.materials, materials, as_json=as_json)
    return replace(case, materials=catalogue), left_out


def _prediction(
    case: Case, path: Path, as_json: bool, seen: tuple[str, int] = ("D65", 2)
) -> Prediction:
    from stainmap.app.prediction import predict_case
    from stainmap.predict.seen import Seen

    progress = told_progress(shown=is_watched(as_json))
    with about(path, StainmapError):
        how = Seen(bands="full", light=seen[0], observer=seen[1])
        return predict_case(case, seen=how, progress=progress)


def _predicted(path: Path, as_json: bool) -> Prediction:
    return _prediction(_loaded(path, as_json, None)[0], path, as_json)


def _print_outcome(prediction: Prediction) -> None:
    from stainmap.cli.outcome_report import prediction_lines

    case = prediction.case
    click.echo(f"{_names(case)}; block {case.plan.block}; programme {case.programme}")
    for line in prediction_lines(prediction):
        click.echo(line)


@commands.command()
@path_argument("case")
@click.option("-o", "--output", type=FilePath, required=True, help="File.")
@click.option(
    "--table",
    type=click.Choice(["vertices", "areas", "plan"]),
    default="vertices",
    show_default=True,
    help="What a CSV holds: a row per vertex of the original mesh, a row per unit and area, or"
    " the coat table.",
)
@reports
def export(case: Path, output: Path, table: str, *, as_json: bool) -> dict[str, Any]:
    """Write the predicted crown as PLY, GLB, 3MF or PNG, tables as CSV, all as JSON.

    The ending decides.
    """
    from stainmap.app.exporting import check_ending, export_prediction

    check_ending(output)
    export_prediction(_predicted(case, as_json), output, table=table)
    if not as_json:
        click.echo(f"Written: {output}")
    return {"file": str(output)}


def headless_sample(folder: Path | None = None) -> int:
    """Do the sample's job without a window; return the exit code.

    Plans the sample crown, writes coat map, mixing list and picture into `folder` (by default
    "stainmap-sheets" where the command was given) and says where.
    """
    from stainmap.app.exporting import export_prediction
    from stainmap.app.prediction import predict_case
    from stainmap.app.sample import open_sample
    from stainmap.app.sheets import sheet_data, write_sheets
    from stainmap.files.atomic import make_folder
    from stainmap.predict.seen import Seen

    folder = folder or Path.cwd() / "stainmap-sheets"
    click.echo("There is no display, so the sample crown is planned without a window.")
    try:
        prediction = predict_case(
            open_sample(), seen=Seen(bands="full"), progress=told_progress(shown=True)
        )
        make_folder(folder)
        written = write_sheets(sheet_data(prediction), folder, progress=told_progress(shown=True))
        picture = folder / f"{prediction.case.code}-sintered.png"
        export_prediction(prediction, picture)
    except StainmapError as error:
        click.echo(str(error), err=True)
        return CANNOT
    _print_outcome(prediction)
    for path in (*written, picture):
        click.echo(f"Written: {path}")
    return DONE


commands.add_command(check)
commands.add_command(mix)
commands.add_command(sheet)
commands.add_command(suggest)
VERBS = frozenset(commands.commands)


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one verb; return the exit code instead of leaving the program."""
    try:
        commands.main(
            args=list(arguments) if arguments is not None else sys.argv[1:],
            prog_name="stainmap",
            standalone_mode=False,
        )
    except click.exceptions.Exit as ending:
        return int(ending.exit_code)
    except click.ClickException as error:
        error.show()
        return USAGE
    except click.Abort:
        return CANNOT
    except SystemExit as ending:
        return int(ending.code or 0)
    return DONE
