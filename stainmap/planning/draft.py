"""Whether a plan is still a draft: a wall that shows what nobody has said lies behind it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import Case
from stainmap.model.tooth import Role
from stainmap.predict.regions import INCISAL_EDGE_MM, mouth_of
from stainmap.surface.geodesic import surface_distance
from stainmap.words import translate

THIN_WALL_MM: Final = 1.0
"""Below it a wall shows what lies behind it; that of the task, no published source."""

MARGIN_LEFT_OUT_MM: Final = 1.0
"""The last strip above the margin, which is thin on every crown; common practice."""

# Less than this is a few points of the mesh, not a place that is seen (assumed).
_LEAST_MM2: Final = 0.5


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ThinWall:
    """Outer surface over a stump where the wall is below 1.0 mm.

    Parameters
    ----------
    where
        (V,) bool.
    area_mm2, thinnest_mm
        Sintered.
    """

    where: NDArray[np.bool_]
    area_mm2: float
    thinnest_mm: float


def wall_over_stump(case: Case) -> NDArray[np.bool_]:
    """Return the outer surface (V,) behind whose wall a stump may show.

    Without the last 1.0 mm above the margin, pontics, the edge of front teeth and the mouths of
    screw channels: something else lies behind those.
    """
    mesh, reading = case.surface.mesh, case.reading
    pontic = np.array([unit.role is Role.PONTIC for unit in case.units])[reading.unit_index]
    front = np.array([unit.tooth.is_front for unit in case.units])[reading.unit_index]
    over = reading.outer & ~pontic
    over &= ~(front & (reading.depth_below_crest_mm < INCISAL_EDGE_MM))
    for channel in case.screw_channels:
        over &= ~mouth_of(case, channel)
    start, end = mesh.edges.T
    margin = np.unique(mesh.edges[reading.outer[start] != reading.outer[end]])
    if len(margin):
        distance = surface_distance(mesh, margin, limit_mm=MARGIN_LEFT_OUT_MM)
        over &= ~(distance <= MARGIN_LEFT_OUT_MM)
    return np.asarray(over)


def thin_wall(
    case: Case, wall_mm: NDArray[np.float32], over_stump: NDArray[np.bool_] | None = None
) -> ThinWall | None:
    """Return where the wall (V,) over a stump is below 1.0 mm, or None where it nowhere is.

    over_stump (V,) is what `wall_over_stump` returns for the case, if that is known.
    """
    over_stump = wall_over_stump(case) if over_stump is None else over_stump
    where = over_stump & (wall_mm < THIN_WALL_MM)
    area = float(case.surface.mesh.vertex_areas[where].sum())
    if area < _LEAST_MM2:
        return None
    return ThinWall(where=where, area_mm2=area, thinnest_mm=float(wall_mm[where].min()))


def draft_reason(case: Case, wall_mm: NDArray[np.float32]) -> str:
    """Return why the plan is a draft, in one sentence, or an empty string where it is none.

    Parameters
    ----------
    wall_mm
        (V,) wall thickness, sintered, as `predict.shape` measures it.
    """
    if case.intake is not None and case.intake.stump_known:
        return ""
    thin = thin_wall(case, wall_mm)
    return "" if thin is None else draft_sentence(thin)


def draft_sentence(thin: ThinWall) -> str:
    """Return what is said of a thin wall over a stump that nobody has named."""
    return translate(
        "draft",
        "Draft: {area_mm2:.1f} mm² of wall are thinner than {thin_wall_mm:.1f} mm "
        "(thinnest {thinnest_mm:.2f} mm), and nobody has said what lies behind them. "
        "Choose the stump.",
    ).format(area_mm2=thin.area_mm2, thin_wall_mm=THIN_WALL_MM, thinnest_mm=thin.thinnest_mm)
