"""What a mesh file holds and how it is read, without making a case of it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from stainmap.app.job import Progress
from stainmap.app.opening import MAX_EDGE_MM, MeshLook, Vector, look_at_mesh, units_from_numbers
from stainmap.errors import ReadingError
from stainmap.model.crown import CrownReading
from stainmap.model.tooth import Unit
from stainmap.planning.reading import read_crown
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh, largest_piece
from stainmap.surface.refining import refine
from stainmap.surface.thickness import wall_thickness
from stainmap.units import SizeState

# Walls are judged above this distance from the margin; common practice, no published source.
_MARGIN_BAND_MM = 1.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MeshReport:
    """Everything `inspect` says. `reading` is None where the shape does not tell."""

    look: MeshLook
    size_state: SizeState
    mesh: TriMesh
    reading: CrownReading | None
    wall_mm: tuple[float, float] | None
    margin_length_mm: float | None
    warnings: tuple[str, ...]

    def as_dict(self) -> dict[str, Any]:
        """Return the report with the field names of the command line's contract."""
        reading, mesh, loaded = self.reading, self.mesh, self.look.loaded
        outer = inner = 0.0
        if reading is not None:
            outer = float(mesh.vertex_areas[reading.outer].sum())
            body = largest_piece(mesh, np.ones(mesh.vertex_count, dtype=np.bool_))
            inner = float(mesh.vertex_areas[body & ~reading.outer].sum())
        return {
            "kind": None if reading is None else reading.kind.value,
            "length_unit": self.look.sizes[0].unit.value if self.look.sizes else None,
            "size_state": self.size_state.value,
            "faces": len(loaded.mesh.faces),
            "vertices": len(loaded.mesh.vertices),
            "shells": loaded.shells,
            "watertight": loaded.mesh.is_watertight,
            "extent_mm": [round(float(x), 3) for x in mesh.extent],
            "occlusal_axis": None if reading is None else _unit(reading.occlusal_axis),
            "mesial": None if reading is None or reading.mesial is None else _unit(reading.mesial),
            "units": None if reading is None else int(reading.unit_index.max()) + 1,
            "roles": [],
            "connectors_mm2": []
            if reading is None
            else [round(x, 3) for x in reading.connectors_mm2],
            "outer_area_mm2": round(outer, 3),
            "inner_area_mm2": round(inner, 3),
            "margin_length_mm": None
            if self.margin_length_mm is None
            else round(self.margin_length_mm, 3),
            "wall_mm": None
            if self.wall_mm is None
            else {"min": round(self.wall_mm[0], 3), "median": round(self.wall_mm[1], 3)},
            "confidence": ({} if reading is None else dict(reading.confidence))
            | {"length_unit": self._unit_confidence()},
            "repairs": list(loaded.repairs),
            "warnings": list(self.warnings),
        }

    def _unit_confidence(self) -> float:
        """Return how sure the unit is: stated in the file, the only that fits, or one of some."""
        units = {size.unit for size in self.look.sizes}
        if not units:
            return 0.0
        if self.look.loaded.declared_unit in units:
            return 1.0
        return 0.95 if len(units) == 1 else 1.0 / len(units)

    def sentences(self) -> list[str]:
        """Return the report as lines to read."""
        facts = self.as_dict()
        extent = " x ".join(f"{x:.1f}" for x in facts["extent_mm"])
        lines = [
            (
                f"{self.look.path.name}: {facts['kind'] or 'not read'}, {extent} mm, "
                f"{facts['faces']:,} facets, {'closed' if facts['watertight'] else 'open'}"
            )
        ]
        if facts["occlusal_axis"] is not None:
            axis = ", ".join(f"{x:.2f}" for x in facts["occlusal_axis"])
            lines.append(
                f"occlusal direction {axis}; units {facts['units']}; outer surface "
                f"{facts['outer_area_mm2']:.0f} mm2, inner {facts['inner_area_mm2']:.0f} mm2"
            )
        if facts["wall_mm"] is not None:
            lines.append(
                f"wall {facts['wall_mm']['min']:.2f} mm at the thinnest, "
                f"{facts['wall_mm']['median']:.2f} mm in the middle"
            )
        lines += [f"repaired: {text}" for text in self.look.loaded.repairs]
        lines += [f"note: {text}" for text in self.warnings]
        return lines


def inspect_mesh(
    path: Path,
    *,
    numbers: tuple[int, ...] | None = None,
    axis: Vector | None = None,
    size_state: SizeState = SizeState.UNKNOWN,
    progress: Progress | None = None,
) -> MeshReport:
    """Return what a mesh file holds.

    Lengths are given in the size the file has. Where the shape does not tell the occlusal
    direction, the report says so instead of failing.

    Raises
    ------
    MeshFileError
        If the file holds no usable surface.
    """
    look = look_at_mesh(path, progress)
    factor = look.sizes[0].unit.millimetres if look.sizes else 1.0
    refined = refine(TriMesh(look.mesh.vertices * factor, look.mesh.faces), MAX_EDGE_MM).mesh
    units: tuple[Unit, ...] = () if numbers is None else units_from_numbers(numbers)
    warnings = list(look.loaded.warnings)
    reading = None
    try:
        reading = read_crown(
            refined, SurfaceOperator(refined), units, occlusal_axis=axis, progress=progress
        )
        warnings += reading.warnings
    except ReadingError as error:
        warnings.append(str(error))
    wall = margin = None
    if reading is not None and reading.outer.any() and (~reading.outer).any():
        wall = _wall(refined, reading)
        margin = _margin_length(refined, reading)
    return MeshReport(
        look=look,
        size_state=size_state,
        mesh=refined,
        reading=reading,
        wall_mm=wall,
        margin_length_mm=margin,
        warnings=tuple(dict.fromkeys(warnings)),
    )


def _wall(mesh: TriMesh, reading: CrownReading) -> tuple[float, float] | None:
    """Return the thinnest and the middle wall, or None where no cavity gives it a far side.

    The last millimetre at the margin runs out to an edge by design and is left out.
    """
    from scipy.spatial import cKDTree  # noqa: PLC0415 - slow to import

    body = largest_piece(mesh, np.ones(mesh.vertex_count, dtype=np.bool_))
    inner = body & ~reading.outer & ~reading.rim
    if reading.assumed_wall_mm is not None or not inner.any():
        return None
    thickness, _ = wall_thickness(mesh, reading.outer, inner)
    one, other = mesh.edges.T
    crossing = reading.outer[one] != reading.outer[other]
    margin = mesh.vertices[np.unique(mesh.edges[crossing])]
    from_margin, _ = cKDTree(margin).query(mesh.vertices)
    values = thickness[reading.outer & (from_margin > _MARGIN_BAND_MM)]
    if not len(values):
        return None
    return float(values.min()), float(np.median(values))


def _margin_length(mesh: TriMesh, reading: CrownReading) -> float:
    """Return the length of the border between outer and inner surface, midpoint to midpoint."""
    sides = reading.outer[mesh.faces]
    crossing = sides.any(axis=1) & ~sides.all(axis=1)
    faces, sides = mesh.faces[crossing], sides[crossing]
    # The lone corner of each facet: the border passes the middles of the two edges at it.
    lone = np.where(sides.sum(axis=1) == 1, sides.argmax(axis=1), (~sides).argmax(axis=1))
    rows = np.arange(len(faces))
    a, b, c = (mesh.vertices[faces[rows, (lone + k) % 3]] for k in range(3))
    return float(np.linalg.norm((a + b) / 2 - (a + c) / 2, axis=1).sum())


def _unit(vector: Vector) -> list[float]:
    return [round(float(x), 4) for x in vector]
