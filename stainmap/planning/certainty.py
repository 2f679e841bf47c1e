"""How sure each reading is, 0 to 1, and which units of a bridge stand on a stump."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from stainmap.model.tooth import Role, Unit
from stainmap.planning.margin import CAVITY_RATIO
from stainmap.surface.mesh import BoolArray, FloatArray, TriMesh, boundary_loops, submesh
from stainmap.surface.neck import Neck
from stainmap.words import translate

# A margin runs along a crease; this sharp, 1/mm, it is taken for one beyond doubt.
_CREASE_PER_MM = 0.6
_OPEN_MARGIN = 0.95
_ROLES_BY_ORDER = 0.6
# A single unit without a neck is hardly ever two.
_ONE_UNIT = 0.95


def margin_confidence(mesh: TriMesh, outer: BoolArray, curvature_per_mm: FloatArray) -> float:
    """Return how sure the margin of one unit is: a single loop, and how much of it is a crease.

    Parameters
    ----------
    mesh, outer
        The unit and its outer surface (V,).
    curvature_per_mm
        (V,) mean curvature at a fine scale.
    """
    i, j = mesh.edges.T
    across = outer[i] != outer[j]
    if not across.any():
        return 0.0
    # The crease lies on one end of the edges that the margin crosses, or within one edge of it.
    sharp = np.maximum(curvature_per_mm[i[across]], curvature_per_mm[j[across]])
    on_crease = float(np.mean(np.clip(sharp / _CREASE_PER_MM, 0.0, 1.0)))
    whole, _ = submesh(mesh, np.asarray(outer[mesh.faces].all(axis=1)))
    before = len(boundary_loops(mesh))
    loops = len(boundary_loops(whole)) - before
    single = 1.0 if loops <= 1 else 0.6
    return float(np.clip(0.15 + 0.8 * on_crease, 0.0, 0.95) * single)


def open_margin_confidence(loop_lengths_mm: Sequence[float]) -> float:
    """Return how sure the margin of an open sheet is: one border, or one far above the others."""
    longest = sorted(loop_lengths_mm, reverse=True)
    if len(longest) < 2:
        return _OPEN_MARGIN
    return float(np.clip(_OPEN_MARGIN - 0.6 * longest[1] / longest[0], 0.3, _OPEN_MARGIN))


def inner_confidence(ratios: Sequence[float]) -> float:
    """Return how sure it is which units have a cavity, by their inner over inner vector area."""
    # The farther from the bound between a flat base and a cavity, the surer.
    apart = [abs(float(np.log(ratio / CAVITY_RATIO))) for ratio in ratios if ratio > 0]
    return float(np.clip(0.4 + 1.2 * min(apart, default=0.0), 0.0, 0.95))


def units_confidence(necks: Sequence[Neck]) -> float:
    """Return how sure the number of units is, by how narrow the necks between them are."""
    if not necks:
        return _ONE_UNIT
    return float(np.clip((1.0 - max(neck.share for neck in necks)) / 0.7, 0.0, 0.98))


def connectors_confidence(necks: Sequence[Neck]) -> float:
    """Return how sure the sections are: a section is measured, its place is as sure as the neck."""
    return min(0.3 + 0.7 * units_confidence(necks), 0.95) if necks else 0.0


def read_roles(
    units: Sequence[Unit], ratios: Sequence[float], *, said: bool
) -> tuple[tuple[Role, ...], float, str]:
    """Return the role of each unit as the shape shows it, how sure, and what does not fit.

    In a bridge with cavities, a unit with one stands on a stump and one without is a pontic. Where
    none has a cavity the order in the row is all there is: ends are retainers (common practice).

    Parameters
    ----------
    units
        The units, in the order of the parts.
    ratios
        How hollow each is.
    said
        Whether a person has given the roles: then what the shape shows is only held against them.
    """
    named = tuple(unit.role for unit in units)
    if len(units) < 2:
        return (), (0.95 if units else 0.0), ""
    if max(ratios) <= CAVITY_RATIO:
        return named, (1.0 if said else _ROLES_BY_ORDER), ""
    shown = tuple(Role.RETAINER if r > CAVITY_RATIO else Role.PONTIC for r in ratios)
    if not said:
        return shown, inner_confidence(ratios), ""
    for unit, role in zip(units, shown, strict=True):
        if role is Role.RETAINER and unit.role is Role.PONTIC:
            return (
                named,
                1.0,
                translate(
                    "certainty", "Tooth {number} is named a pontic, but has a cavity."
                ).format(number=unit.tooth.number),
            )
        if role is Role.PONTIC and unit.role is Role.RETAINER:
            return (
                named,
                1.0,
                translate(
                    "certainty", "Tooth {number} is named a retainer, but has no cavity."
                ).format(number=unit.tooth.number),
            )
    return named, 1.0, ""
