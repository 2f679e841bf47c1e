"""The crown's surface in a case, and what was read from its shape."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from stainmap.model.tooth import Role
from stainmap.surface.mesh import TriMesh
from stainmap.units import LengthUnit, SizeState

READINGS = (
    "occlusal_axis",
    "margin",
    "inner_surface",
    "units",
    "roles",
    "connectors",
    "mesial",
    "buccal",
)
"""What is read from a shape, each with its own confidence."""


class BodyKind(StrEnum):
    """What a mesh turned out to be."""

    CROWN = "crown"
    BRIDGE = "bridge"
    SOLID_CROWN = "solid crown"
    OPEN_SHEET = "open sheet"
    ROOTED_TOOTH = "rooted tooth"
    JAW = "jaw"
    SEVERAL_BODIES = "several bodies"
    NOT_A_CROWN = "not a crown"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MeshSource:
    """The file that came in, kept untouched, and how its numbers were understood."""

    name: str
    content: bytes
    sha256: str
    unit: LengthUnit
    size_state: SizeState
    enlargement_factor: float

    @property
    def sintered_mm_per_unit(self) -> float:
        """Factor from the file's coordinates to sintered millimetres."""
        factor = self.unit.millimetres
        return factor / self.enlargement_factor if self.size_state is SizeState.MILLED else factor


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class MeasuredShape:
    """What was measured of a surface once and takes long to measure again. Arrays are V long.

    Parameters
    ----------
    key
        What it was measured of, and by what (see `predict.measured_shape`); of anything else it
        does not hold.
    wall_mm, partner, curvature_per_mm
        float32, int32, float32; as in `predict.shape.CrownShape`.
    """

    key: str
    wall_mm: NDArray[np.float32]
    partner: NDArray[np.int32]
    curvature_per_mm: NDArray[np.float32]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CrownSurface:
    """The refined surface in sintered millimetres, with the way back to the file.

    Parameters
    ----------
    mesh
        Refined surface, V vertices.
    parents
        (V, 2) int32. The two vertices whose midpoint a refined vertex is; (i, i) for the first
        `base_vertex_count` vertices, which are the welded vertices of the file.
    base_vertex_count
        Number of welded vertices before refining.
    file_vertex
        (N,) int32. For each vertex (or facet corner, for STL) of the file in order, the index of
        its welded vertex.
    measured
        What was measured of it when it was last saved, if it came from a file that says so.
    """

    mesh: TriMesh
    parents: NDArray[np.int32]
    base_vertex_count: int
    file_vertex: NDArray[np.int32]
    measured: MeasuredShape | None = None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CrownReading:
    """What was read from the shape, or set by the user. Arrays are per vertex, V long.

    Parameters
    ----------
    kind
        What the body is.
    occlusal_axis, mesial
        Unit vectors in the mesh's coordinates; `mesial` is None until somebody says it.
    outer
        (V,) bool. The outer surface down to the margin; the rest is inner surface and rim.
    rim
        (V,) bool. The part of the inner surface that is the rim at the margin.
    unit_index
        (V,) uint8. Which unit of the case the vertex belongs to.
    height
        (V,) float32. 0 at the margin, 1 at the crest, above 1 within the table; NaN inside.
    depth_below_crest_mm
        (V,) float32. How far below the local tips and ridges, along the axis; 0 on them.
    connectors_mm2
        Smallest section between neighbouring units.
    confidence
        Reading -> 0 to 1, for each of `READINGS`; 1 where a person has said it, 0 where there is
        nothing to tell.
    set_by_user
        Names of the readings a person has set, and "cut" where part of the file was cut away.
    assumed_wall_mm
        Wall to assume where there is no inner surface; None for hollow crowns.
    roles
        Role of each unit of a bridge as the shape shows it; empty where it shows none. What holds
        is the role of the case's units.
    """

    kind: BodyKind
    occlusal_axis: tuple[float, float, float]
    mesial: tuple[float, float, float] | None
    outer: NDArray[np.bool_]
    rim: NDArray[np.bool_]
    unit_index: NDArray[np.uint8]
    height: NDArray[np.float32]
    depth_below_crest_mm: NDArray[np.float32]
    connectors_mm2: tuple[float, ...] = ()
    confidence: tuple[tuple[str, float], ...] = ()
    set_by_user: frozenset[str] = frozenset()
    assumed_wall_mm: float | None = None
    warnings: tuple[str, ...] = ()
    roles: tuple[Role, ...] = ()

    def sure(self, name: str) -> float:
        """Return the confidence of one of `READINGS`, 0 to 1; 1 where a person has set it."""
        if name in self.set_by_user:
            return 1.0
        return dict(self.confidence).get(name, 0.0)

    def __post_init__(self) -> None:
        """Make the arrays read-only."""
        for array in (
            self.outer,
            self.rim,
            self.unit_index,
            self.height,
            self.depth_below_crest_mm,
        ):
            array.flags.writeable = False
