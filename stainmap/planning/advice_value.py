"""One piece of advice: a sentence, its place, the figure and the limit that is held to."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from stainmap.model.advice_limits import AdviceLimit
from stainmap.model.zone import Area
from stainmap.surface.mesh import TriMesh
from stainmap.words import translate

Mask = NDArray[np.bool_]
Triple = tuple[float, float, float]

# What lies farther from the point than this has no say in where it is looked at from.
_NEAR_MM = 2.0


class Severity(StrEnum):
    """How much hangs on it, from most to least."""

    SETTLE = "settle first"
    CHECK = "check"
    NOTE = "note"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Place:
    """Where on the crown.

    Parameters
    ----------
    vertices
        (n,) int32, at least one, rising.
    point_mm
        A point among them, in the mesh's coordinates (sintered).
    toward_eye
        Unit vector: the side it is seen from.
    """

    vertices: NDArray[np.int32]
    point_mm: Triple
    toward_eye: Triple

    def __post_init__(self) -> None:
        """Make the array read-only."""
        self.vertices.flags.writeable = False


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Advice:
    """One piece of advice.

    Parameters
    ----------
    rule
        Which rule it comes from: a name that stays the same.
    sentence
        Short: what is the matter, with the figure.
    remedy
        What can be done about it, or empty.
    figure
        What was found, in the unit of `limit`; None where nothing is counted.
    limit
        What it was held to; None where the plan itself says what is missing.
    basis
        How the figure was come by, in a sentence or two, where the limit's own source does not
        tell.
    area, unit
        Area, and which of the case's units (from 0), where it is about one.
    place
        Where to look, or None if it is nowhere on the crown.
    """

    rule: str
    sentence: str
    severity: Severity
    remedy: str = ""
    figure: float | None = None
    limit: AdviceLimit | None = None
    basis: str = ""
    area: Area | None = None
    unit: int | None = None
    place: Place | None = None

    @property
    def key(self) -> str:
        """What it is about, whatever its figure: the same in every prediction of a case."""
        area = "" if self.area is None else str(int(self.area))
        unit = "" if self.unit is None else str(self.unit)
        return f"{self.rule}/{area}/{unit}"

    @property
    def detail(self) -> str:
        """What can be done, the limit and where that comes from, in running text."""
        parts = [self.remedy, self.basis]
        if self.limit is not None:
            parts.append(
                translate("advice value", "Limit: {said}. {origin}").format(
                    said=self.limit.said, origin=self.limit.origin
                )
            )
        return " ".join(part for part in parts if part)


def place_of(
    mesh: TriMesh, mask: Mask, fallback: NDArray[np.float64] | None = None
) -> Place | None:
    """Return the place that a mask (V,) marks, or None if it marks nothing.

    The point is the marked vertex nearest to the middle of all; the view is along the mean normal
    around it.

    Parameters
    ----------
    fallback
        (3,) where to look from, where normals all around cancel.
    """
    vertices = np.flatnonzero(mask)
    if not len(vertices):
        return None
    weight = mesh.vertex_areas[vertices]
    at = mesh.vertices[vertices]
    middle = weight @ at / weight.sum() if weight.sum() > 0 else at.mean(axis=0)
    nearest = vertices[int(np.argmin(np.einsum("ij,ij->i", at - middle, at - middle)))]
    point = mesh.vertices[nearest]
    away = np.einsum("ij,ij->i", at - point, at - point)
    near = vertices[away <= _NEAR_MM**2]
    toward = mesh.vertex_areas[near] @ mesh.vertex_normals[near]
    if fallback is not None and np.linalg.norm(toward) < 0.2 * mesh.vertex_areas[near].sum():
        toward = fallback
    if np.linalg.norm(toward) < 1e-9:
        toward = mesh.vertex_normals[nearest]
    toward = toward / max(float(np.linalg.norm(toward)), 1e-12)
    return Place(
        vertices=vertices.astype(np.int32), point_mm=_triple(point), toward_eye=_triple(toward)
    )


def _triple(vector: NDArray[np.float64]) -> Triple:
    x, y, z = (float(value) for value in vector)
    return x, y, z
