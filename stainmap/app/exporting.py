"""Exports of a prediction; the kind follows from the file's ending."""

from __future__ import annotations

from pathlib import Path

from stainmap.app.data_out import areas_table, data_json
from stainmap.app.prediction import Prediction
from stainmap.errors import StainmapError
from stainmap.files.atomic import write_bytes
from stainmap.files.mesh_export import (
    MESH_KINDS,
    export_mesh,
    export_table,
    plan_table,
    vertex_table,
)
from stainmap.words import in_english, marked, translate

# What each ending is called where one is chosen.
KINDS = {
    ".ply": marked("exporting", "PLY mesh, sRGB colours and areas"),
    ".glb": marked("exporting", "GLB mesh, linear colours and areas"),
    ".3mf": marked("exporting", "3MF mesh, sRGB colours and areas"),
    ".csv": marked("exporting", "Table of vertices"),
    ".json": marked("exporting", "Plan and prediction, for other programs"),
    ".png": marked("exporting", "Picture"),
}
ENDINGS = tuple(KINDS)


def check_ending(path: Path) -> None:
    """Raise StainmapError unless the file's ending is one of those that are written."""
    if path.suffix.lower() == ".stl":
        raise StainmapError(
            translate("exporting", "STL has no place for colours."),
            where=path.name,
            advice=translate("exporting", "Use one of {endings}.").format(
                endings=", ".join(MESH_KINDS)
            ),
        )
    if path.suffix.lower() not in ENDINGS:
        raise StainmapError(
            translate("exporting", "'{ending}' is no ending that stainmap writes.").format(
                ending=path.suffix or path.name
            ),
            where=path.name,
            advice=translate("exporting", "Use one of {endings}.").format(
                endings=", ".join(ENDINGS)
            ),
        )


def export_prediction(prediction: Prediction, path: Path, *, table: str = "vertices") -> None:
    """Write the predicted crown as PLY, GLB, 3MF, CSV, JSON or PNG.

    Parameters
    ----------
    table
        What a CSV holds: "vertices" (a row per vertex of the original mesh), "areas" (a row per
        unit and area) or "plan" (the coat table).

    Raises
    ------
    StainmapError
        If the ending is none of these, or the file cannot be written.
    """
    check_ending(path)
    # Whoever gets the file need not speak the language of the window.
    with in_english():
        _write(prediction, path, table)


def _write(prediction: Prediction, path: Path, table: str) -> None:
    case, appearance = prediction.case, prediction.appearance
    ending = path.suffix.lower()
    if ending in MESH_KINDS:
        export_mesh(case, appearance.srgb, path)
    elif ending == ".csv":
        export_table(_table(prediction, table), path)
    elif ending == ".json":
        export_table(data_json(prediction), path)
    else:
        # What draws is slow to import, and few exports are pictures.
        from stainmap.app.pictures import crown_png  # noqa: PLC0415

        write_bytes(path, crown_png(prediction))


def seen_text(prediction: Prediction) -> str:
    """Return light and observer as the heads of tables name them: "D65, 2 deg"."""
    return f"{prediction.seen.light}, {prediction.seen.observer} deg"


def _table(prediction: Prediction, table: str) -> str:
    if table == "plan":
        return plan_table(prediction.case)
    if table == "areas":
        return areas_table(prediction)
    appearance = prediction.appearance
    return vertex_table(
        prediction.case, appearance.lab, appearance.srgb, seen=seen_text(prediction)
    )
