"""How well areas were found: overlap with the truth, half a millimetre of doubt at every border.

The overlap is Dice's coefficient of areas on the surface, 2 |A and T| / (|A| + |T|) [Dice1945]. A
place whose label is wrong is forgiven if the given label is true within the tolerance of it, and
the true label is given within the tolerance of it: a border that lies a little aside costs nothing,
a zone that is missing, thin as it may be, is missed in full.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.zone import Accent, Area, Zone
from stainmap.surface.geodesic import Graph, distance_graph
from stainmap.surface.mesh import TriMesh
from stainmap.surface.region import grown

Labels = NDArray[np.uint8]
Mask = NDArray[np.bool_]

TOLERANCE_MM: Final = 0.5
"""Sintered; about what two people who know what they do differ by; assumed."""
_HALF = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class AreaOverlap:
    """One area as it was found.

    Parameters
    ----------
    overlap
        0 to 1, forgiven places counted as right.
    missed_mm2, extra_mm2
        What is missing of it, and what was added to it, beyond the tolerance; sintered.
    """

    area: Area
    overlap: float
    missed_mm2: float
    extra_mm2: float


def forgiven(
    mesh: TriMesh,
    truth: Labels,
    answer: Labels,
    within: Mask,
    *,
    tolerance_mm: float = TOLERANCE_MM,
    graph: Graph | None = None,
) -> Labels:
    """Return the answer (V,) with the true label where its border is off by the tolerance at most.

    Parameters
    ----------
    truth, answer
        (V,) labels of any numbers.
    within
        (V,) where labels count; ways along the surface keep to it.
    """
    network = distance_graph(mesh) if graph is None else graph
    wrong = within & (answer != truth)
    given_is_near, true_is_near = np.zeros_like(wrong), np.zeros_like(wrong)
    for label in np.unique(answer[wrong]):
        near = grown(mesh, within & (truth == label), tolerance_mm, within=within, graph=network)
        given_is_near |= wrong & (answer == label) & near
    for label in np.unique(truth[wrong]):
        near = grown(mesh, within & (answer == label), tolerance_mm, within=within, graph=network)
        true_is_near |= wrong & (truth == label) & near
    return np.where(given_is_near & true_is_near, truth, answer)


def dice(one: Mask, other: Mask, sizes: NDArray[np.float64]) -> float:
    """Return the overlap of two regions (V,) by their sizes (V,); 1 where both are empty."""
    total = float(sizes[one].sum() + sizes[other].sum())
    return 1.0 if total <= 0.0 else 2.0 * float(sizes[one & other].sum()) / total


def zone_overlaps(
    truth: Case, answer: Case, zones: tuple[Zone, ...], graph: Graph | None = None
) -> tuple[AreaOverlap, ...]:
    """Return how well each of the zones was found, on the outer surface.

    Parameters
    ----------
    truth, answer
        Cases on one surface.
    """
    mesh, outer = truth.surface.mesh, truth.reading.outer
    told = forgiven(mesh, truth.zones, answer.zones, outer, graph=graph)
    sizes = np.where(outer, mesh.vertex_areas, 0.0)
    return tuple(
        _overlap(zone, truth.zones == int(zone), told == int(zone), sizes) for zone in zones
    )


def accent_overlaps(
    truth: Case, answer: Case, accents: tuple[Accent, ...], graph: Graph | None = None
) -> tuple[AreaOverlap, ...]:
    """Return how well each of the accents was found; an accent is where its mask is above half."""
    mesh, outer = truth.surface.mesh, truth.reading.outer
    sizes = np.where(outer, mesh.vertex_areas, 0.0)
    found = []
    for accent in accents:
        true, given = (_mask(case, accent) & outer for case in (truth, answer))
        told = forgiven(
            mesh, true.astype(np.uint8), given.astype(np.uint8), outer, graph=graph
        ).astype(bool)
        found.append(_overlap(accent, true, told, sizes))
    return tuple(found)


def _mask(case: Case, accent: Accent) -> Mask:
    share = case.accent(accent)
    return np.zeros(len(case.zones), bool) if share is None else np.asarray(share > _HALF)


def _overlap(area: Area, true: Mask, told: Mask, sizes: NDArray[np.float64]) -> AreaOverlap:
    return AreaOverlap(
        area=area,
        overlap=dice(true, told, sizes),
        missed_mm2=float(sizes[true & ~told].sum()),
        extra_mm2=float(sizes[told & ~true].sum()),
    )
