"""Fill and line: strokes whose place a click chooses, with all that the brush can paint."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.app.brush import Brush, Stroke, Tool
from stainmap.model.case import Case
from stainmap.model.zone import Zone
from stainmap.surface.crease_field import CreaseField, crease_field
from stainmap.surface.crease_fill import crease_patches, patch_at
from stainmap.surface.crease_path import CreasePaths, line_band
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.geodesic import Graph, distance_graph, surface_distance
from stainmap.surface.mesh import BoolArray, IndexArray, TriMesh

# Grooves of crowns are some tenths wide, line angles some; noise of scans is finer.
CREASE_SCALE_MM = 0.2
_RESIDUAL = 1e-5


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ClickedPlace:
    """What a click would paint: vertices (k,) and how strongly, (k,) above 0 up to 1."""

    vertices: IndexArray
    weight: NDArray[np.float32]


class CreaseWork:
    """What fill and line need to know about one surface, worked out once.

    Parameters
    ----------
    mesh
        The whole surface.
    """

    def __init__(self, mesh: TriMesh) -> None:
        self._mesh = mesh
        self.graph: Graph = distance_graph(mesh)
        # Some steps of an iteration reach over so short a length; a factorisation takes longer.
        operator = SurfaceOperator(mesh, iteration_from=0, residual=_RESIDUAL)
        self.creases: CreaseField = crease_field(operator, CREASE_SCALE_MM)
        self._patches: tuple[float, BoolArray, NDArray[np.uint8], IndexArray] | None = None
        self._paths: tuple[int, BoolArray, CreasePaths] | None = None

    @property
    def mesh(self) -> TriMesh:
        """The surface."""
        return self._mesh

    def patches(self, case: Case, sharpest_mm: float) -> IndexArray:
        """Return the number of the patch that every vertex lies in, (V,).

        Patches end at creases that bend more sharply than a circle of the radius, at the margin
        and at the next unit of a bridge.
        """
        outer, units = case.reading.outer, case.reading.unit_index
        kept = self._patches
        if kept is not None and kept[0] == sharpest_mm and kept[1] is outer and kept[2] is units:
            return kept[3]
        label = np.full(self._mesh.vertex_count, -1, np.int32)
        for side in (np.asarray(outer), ~np.asarray(outer)):
            for unit in np.unique(units[side]):
                found = crease_patches(
                    self._mesh,
                    self.creases.bend,
                    1.0 / sharpest_mm,
                    within=side & (units == unit),
                    graph=self.graph,
                )
                inside = found >= 0
                label[inside] = found[inside] + label.max() + 1
        self._patches = (sharpest_mm, outer, units, label)
        return label

    def paths_from(self, case: Case, start: int) -> CreasePaths:
        """Return the ways along creases from a vertex, on its side of the margin."""
        outer = case.reading.outer
        kept = self._paths
        if kept is not None and kept[0] == start and kept[1] is outer:
            return kept[2]
        paths = CreasePaths(
            self._mesh,
            self.creases,
            start,
            within=np.asarray(outer == outer[start]),
            graph=self.graph,
        )
        self._paths = (start, outer, paths)
        return paths

    def place_to_fill(
        self, case: Case, vertex: int, sharpest_mm: float, brush: Brush, soft_edge_mm: float
    ) -> ClickedPlace:
        """Return the patch around a vertex; coats and accents fade towards its edge."""
        label = self.patches(case, sharpest_mm)
        patch = patch_at(label, vertex)
        weight = np.ones(len(patch), np.float32)
        zone = brush.step is None and isinstance(brush.area, Zone)
        if not zone and soft_edge_mm > 0.0 and len(patch):
            around = (label >= 0) & (label != label[vertex])
            if around.any():
                away = surface_distance(self._mesh, around, graph=self.graph, limit_mm=soft_edge_mm)
                weight = np.clip(away[patch] / soft_edge_mm, 0.0, 1.0).astype(np.float32)
        return ClickedPlace(vertices=patch, weight=weight)

    def place_of_line(self, case: Case, way: IndexArray, brush: Brush) -> ClickedPlace:
        """Return what the brush touches along a way; nothing where there is no way."""
        if not len(way):
            return ClickedPlace(vertices=way, weight=np.empty(0, np.float32))
        outer = case.reading.outer
        vertices, weight = line_band(
            self._mesh,
            way,
            brush.radius_mm,
            brush.softness,
            within=np.asarray(outer == outer[way[0]]),
            graph=self.graph,
        )
        return ClickedPlace(vertices=vertices, weight=weight)


def painted(case: Case, place: ClickedPlace, brush: Brush) -> Case:
    """Return the case with the brush pressed on a place once; the same case if nothing changes.

    A zone or accent stays on its side of the margin, as under the brush.

    Raises
    ------
    PlanError
        If the brush belongs to a step that is not in the plan.
    """
    stroke = Stroke.begun(case, replace(brush, moves_margin=False))
    stroke.dab(place.vertices, place.weight)
    result = stroke.result()
    if result.zones is not case.zones and np.array_equal(result.zones, case.zones):
        return case
    return result


def taking_away(brush: Brush) -> Brush:
    """Return the brush turned round: it erases."""
    return replace(brush, tool=Tool.ERASER)
