"""The predicted crown as a coloured mesh and as tables, for other programs to read."""

from __future__ import annotations

import csv
import io
from collections.abc import Callable
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import StainmapError
from stainmap.files.atomic import write_bytes
from stainmap.files.mesh_3mf import three_mf_bytes
from stainmap.files.mesh_areas import area_names, vertex_accents
from stainmap.files.mesh_glb import glb_bytes
from stainmap.model.case import Case
from stainmap.model.zone import Accent, Area, Zone, area_label
from stainmap.words import translate

_COLOUR_NOTE = "vertex colours are sRGB (IEC 61966-2-1), predicted after sintering, not a match"


def ply_bytes(case: Case, srgb: NDArray[np.uint8]) -> bytes:
    """Return the refined surface with colours as binary PLY, sintered millimetres.

    Parameters
    ----------
    srgb
        (V, 3) predicted sRGB.

    The header states colour space, unit and the numbers of areas, so that nobody has to guess.
    """
    mesh = case.surface.mesh
    vertex = np.zeros(
        len(mesh.vertices),
        dtype=[("position", "<f4", 3), ("colour", "u1", 3), ("zone", "u1"), ("accent", "u1")],
    )
    vertex["position"] = mesh.vertices
    vertex["colour"] = srgb
    vertex["zone"] = case.zones
    vertex["accent"] = vertex_accents(case)
    face = np.zeros(len(mesh.faces), dtype=[("count", "u1"), ("corners", "<i4", 3)])
    face["count"] = 3
    face["corners"] = mesh.faces
    areas = ", ".join(f"{number} {name}" for number, name in area_names(case).items())
    header = "\n".join(
        (
            "ply",
            "format binary_little_endian 1.0",
            f"comment {_COLOUR_NOTE}",
            "comment lengths in millimetres, sintered size",
            f"comment zone and accent: 0 none, {areas}",
            f"element vertex {len(vertex)}",
            "property float x",
            "property float y",
            "property float z",
            "property uchar red",
            "property uchar green",
            "property uchar blue",
            "property uchar zone",
            "property uchar accent",
            f"element face {len(face)}",
            "property list uchar int vertex_indices",
            "end_header",
            "",
        )
    )
    return header.encode("ascii") + vertex.tobytes() + face.tobytes()


# What writes each ending. STL carries no colours: its two spare bytes per facet never had one
# meaning.
MESH_KINDS: dict[str, Callable[[Case, NDArray[np.uint8]], bytes]] = {
    ".ply": ply_bytes,
    ".glb": glb_bytes,
    ".3mf": three_mf_bytes,
}


def vertex_table(
    case: Case,
    lab: NDArray[np.float32],
    srgb: NDArray[np.uint8],
    sd: NDArray[np.float64] | None = None,
    *,
    seen: str = "D65, 2 deg",
) -> str:
    """Return a CSV with one row per vertex of the original file, in its order and coordinates.

    Columns: x, y, z (the file's unit and size), area, L*, a*, b*, red, green, blue (sRGB, 0-255),
    and one standard deviation of L*, a*, b* if `sd` (V, 3) is given. The heads of L*, a*, b* name
    light and observer, `seen`; sRGB is always of D65 and 2 degrees.
    For STL the vertices of the file are the corners of its facets. A vertex that is not part of
    the crown (unused, or of another body) has an empty row with the area "none".
    """
    source = case.surface.file_vertex
    position = case.surface.mesh.vertices[source] / case.source.sintered_mm_per_unit
    names = [area_label(zone, front=case.units[0].tooth.is_front) for zone in Zone]
    names = ["none", *names]
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    lab_heads = [f"{axis} ({seen})" for axis in ("L*", "a*", "b*")]
    heads = ["x", "y", "z", "area", *lab_heads, "red", "green", "blue"]
    doubts = np.empty((len(source), 0)) if sd is None else sd[source]
    if sd is not None:
        heads += [f"sd {head}" for head in lab_heads]
    writer.writerow(heads)
    for vertex, point, zone, colour, shown, doubt in zip(
        source.tolist(),
        position.tolist(),
        case.zones[source].tolist(),
        lab[source].astype(float).tolist(),
        srgb[source].tolist(),
        doubts.tolist(),
        strict=True,
    ):
        if vertex < 0:
            writer.writerow(["none" if head == "area" else "" for head in heads])
            continue
        writer.writerow(
            (
                *(f"{value:.6g}" for value in point),
                names[zone],
                *(f"{value:.3f}" for value in colour),
                *shown,
                *(f"{value:.3f}" for value in doubt),
            )
        )
    return text.getvalue()


def plan_table(case: Case) -> str:
    """Return the coat table as CSV: areas are rows, steps columns in painting order."""
    plan = case.plan
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(("area", *(f"step {i + 1}" for i in range(len(plan.steps)))))
    writer.writerow(("jar", *(str(step.jar) for step in plan.steps)))
    writer.writerow(("liquid", *(plan.liquid_of(step) for step in plan.steps)))
    areas: list[Area] = [*Zone, *Accent]
    for area in areas:
        entries = [step.entry(area) for step in plan.steps]
        if any(entries):
            name = area_label(area, front=case.units[0].tooth.is_front)
            writer.writerow((name, *("" if e is None else str(e.coats) for e in entries)))
    return text.getvalue()


def export_mesh(case: Case, srgb: NDArray[np.uint8], path: Path) -> None:
    """Write the coloured mesh as PLY, GLB or 3MF; the kind follows from the name's ending.

    Raises
    ------
    StainmapError
        If the ending is none of these, or the file cannot be written.
    """
    ending = path.suffix.lower()
    if ending not in MESH_KINDS:
        why = (
            translate("mesh export", "STL has no place for colours.")
            if ending == ".stl"
            else translate("mesh export", "'{ending}' is not written.").format(ending=ending)
        )
        raise StainmapError(
            why,
            where=path.name,
            advice=translate("mesh export", "Use {mesh_kinds}.").format(
                mesh_kinds=", ".join(MESH_KINDS)
            ),
        )
    write_bytes(path, MESH_KINDS[ending](case, srgb))


def export_table(text: str, path: Path) -> None:
    """Write a table as UTF-8; raise StainmapError if it cannot be written."""
    write_bytes(path, text.encode("utf-8"))
