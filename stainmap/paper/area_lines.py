"""The lines of a zone map on the crown itself: borders, hatches, accents, coat contours.

They are found once on the surface and then seen from any side, so they stay sharp at any size and
keep their place on the crown.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from stainmap.model.case import AccentMask
from stainmap.model.zone import Zone
from stainmap.paper.isolines import SurfaceLines, isolines, split_lines, stacked_isolines
from stainmap.paper.views import CrownDirections
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import TriMesh, frozen, submesh
from stainmap.surface.thinning import Thinned

FloatArray = NDArray[np.float64]

_ZONE_SMOOTHING_MM = 0.10
_ACCENT_SMOOTHING_MM = 0.12
_HALF = 0.5


class Mark(StrEnum):
    """What a line means."""

    OUTLINE = "outline"
    BORDER = "border"
    ACCENT = "accent"
    CONTOUR = "contour"
    HATCH = "hatch"
    STREAK = "streak"


# Planes fixed to the crown: across (mesial, buccal, occlusal), how far apart in sintered mm.
# Level lines, slanted, steep and wide, crossed; body and inner surface stay plain.
HATCHES: dict[Zone, tuple[tuple[tuple[float, float, float], float], ...]] = {
    Zone.CERVICAL: (((0.0, 0.0, 1.0), 0.52),),
    Zone.INTERPROXIMAL: (((0.0, 0.9, 1.0), 0.62),),
    Zone.CUSP: (((0.86, 0.5, 0.0), 0.62),),
    Zone.FISSURE: (((1.0, 1.0, 0.0), 0.46), ((1.0, -1.0, 0.0), 0.46)),
}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class AreaFields:
    """Softened areas of a crown, per vertex.

    Parameters
    ----------
    zones
        (V, 7) float64. Share of each zone; column = zone number, column 0 = no zone.
    accents
        Accent number -> (V,) share.
    coats
        (V,) all coats, or None.
    """

    zones: FloatArray
    accents: dict[int, FloatArray]
    coats: FloatArray | None

    @property
    def margins(self) -> FloatArray:
        """(V, 7) how far each zone's share lies above the largest of the others."""
        ordered = np.sort(self.zones, axis=1)
        largest, second = ordered[:, -1:], ordered[:, -2:-1]
        return np.where(self.zones >= largest, self.zones - second, self.zones - largest)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WorldLines:
    """Lines of one kind on the crown.

    Parameters
    ----------
    mark, area
        What they mean; the number of the area they belong to, 0 where that does not matter.
    points, normals
        (N, 3) mm and unit normals of the surface there.
    line_of_point
        (N,) which line a point belongs to.
    across
        (3,) for hatches: direction across the planes in mesh coordinates, of length 1 / spacing.
    order
        (N,) for hatches: number of the plane, by which crowded ones are thinned out.
    """

    mark: Mark
    area: int
    points: FloatArray
    normals: FloatArray
    line_of_point: NDArray[np.intp]
    across: FloatArray | None = None
    order: NDArray[np.intp] | None = None


def area_fields(
    operator: SurfaceOperator,
    zones: NDArray[np.uint8],
    accents: tuple[AccentMask, ...],
    coats: NDArray[np.float32] | None,
    *,
    thinned: Thinned | None = None,
) -> AreaFields:
    """Return softened shares: borders become smooth lines instead of steps along facets.

    Parameters
    ----------
    operator
        Operator of the mesh, or of its thinned copy.
    zones, accents
        (V,) zone numbers; accent masks.
    coats
        (S, V) coats of all steps, or None.
    thinned
        The copy, if the operator is that of one; the result is then per vertex of the copy.
    """

    def laid(values: FloatArray) -> FloatArray:
        return values if thinned is None else thinned.mean(values)

    hard = (zones[:, None] == np.arange(len(Zone) + 1)).astype(np.float64)
    present = np.flatnonzero(hard.any(axis=0))
    shares_there = laid(hard[:, present])
    soft = np.zeros((len(shares_there), hard.shape[1]))
    once = operator.smooth(shares_there, _ZONE_SMOOTHING_MM)
    soft[:, present] = operator.smooth(once, _ZONE_SMOOTHING_MM)
    shares: dict[int, FloatArray] = {}
    if accents:
        masks = np.stack([mask.share for mask in accents], axis=1).astype(np.float64)
        softened = operator.smooth(laid(masks), _ACCENT_SMOOTHING_MM)
        shares = {
            int(mask.accent): frozen(column.copy())
            for mask, column in zip(accents, softened.T, strict=True)
        }
    total = None
    if coats is not None and len(coats):
        total = frozen(laid(coats.sum(axis=0, dtype=np.float64)))
    return AreaFields(zones=frozen(soft), accents=shares, coats=total)


def area_lines(
    mesh: TriMesh,
    normals: FloatArray,
    fields: AreaFields,
    directions: CrownDirections,
    *,
    measured: FloatArray | None = None,
) -> tuple[WorldLines, ...]:
    """Return all lines of a zone map, hatches first so that the rest lies above them.

    On a surface laid flat, `measured` (V, 3) is where its vertices lie on the crown, to which
    the hatches are fixed.
    """
    lines = _hatches(mesh, normals, fields, directions, measured)
    lines += _contours(mesh, normals, fields)
    lines += _borders(mesh, normals, fields)
    for number, share in fields.accents.items():
        lines.append(_whole(isolines(mesh, share, _HALF), mesh, normals, Mark.ACCENT, number))
    return tuple(line for line in lines if len(line.points))


def _hatches(
    mesh: TriMesh,
    normals: FloatArray,
    fields: AreaFields,
    directions: CrownDirections,
    measured: FloatArray | None,
) -> list[WorldLines]:
    lines = []
    margins = fields.margins
    places = mesh.vertices if measured is None else measured
    middle = mesh.centre if measured is None else measured.mean(axis=0)
    for zone, families in HATCHES.items():
        margin = margins[:, int(zone)]
        chosen = np.asarray((margin[mesh.faces] > 0.0).any(axis=1))
        if not chosen.any():
            continue
        part, vertex = submesh(mesh, chosen)
        for direction, spacing_mm in families:
            across = np.asarray(direction) @ directions.rows / spacing_mm
            height = (places[vertex] - middle) @ across
            line, order = stacked_isolines(part, height)
            lines.append(
                _parts(
                    np.c_[line.take(part.vertices), line.take(normals[vertex])],
                    line.line_of_point,
                    line.take(margin[vertex]),
                    Mark.HATCH,
                    int(zone),
                    # Flat lines are as far apart as on the crown: they need no thinning.
                    across=across if measured is None else None,
                    order=order,
                )
            )
    return lines


def _contours(mesh: TriMesh, normals: FloatArray, fields: AreaFields) -> list[WorldLines]:
    """Return the lines where the whole number of coats changes."""
    if fields.coats is None:
        return []
    top = float(fields.coats.max())
    levels = np.arange(_HALF, top, 1.0)
    return [
        _whole(isolines(mesh, fields.coats, float(level)), mesh, normals, Mark.CONTOUR, 0)
        for level in levels
    ]


def _borders(mesh: TriMesh, normals: FloatArray, fields: AreaFields) -> list[WorldLines]:
    """Return every border once: as that of the zone with the smaller number."""
    lines = []
    margins = fields.margins
    for number in range(fields.zones.shape[1] - 1):
        if not (margins[:, number] > 0.0).any():
            continue
        line = isolines(mesh, margins[:, number])
        shares = line.take(fields.zones)
        later = shares[:, number + 1 :].max(axis=1)
        earlier = shares[:, :number].max(axis=1) if number else np.zeros(len(shares))
        lines.append(
            _parts(
                np.hstack([line.take(mesh.vertices), line.take(normals)]),
                line.line_of_point,
                later - earlier,
                Mark.BORDER,
                number,
            )
        )
    return lines


def _whole(
    line: SurfaceLines, mesh: TriMesh, normals: FloatArray, mark: Mark, area: int
) -> WorldLines:
    return WorldLines(
        mark=mark,
        area=area,
        points=line.take(mesh.vertices),
        normals=line.take(normals),
        line_of_point=line.line_of_point,
    )


def _parts(
    both: FloatArray,
    line_of_point: NDArray[np.intp],
    margin: FloatArray,
    mark: Mark,
    area: int,
    *,
    across: FloatArray | None = None,
    order: NDArray[np.intp] | None = None,
) -> WorldLines:
    """Return the parts of lines where the margin is above zero; `both` is points and normals."""
    if order is None:
        order = np.zeros(len(both), dtype=np.intp)
    parts = split_lines(np.c_[both, order], line_of_point, margin)
    joined = np.concatenate(parts) if parts else np.zeros((0, 7))
    number = np.repeat(np.arange(len(parts)), [len(part) for part in parts])
    return WorldLines(
        mark=mark,
        area=area,
        points=joined[:, :3],
        normals=joined[:, 3:6],
        line_of_point=number,
        across=across,
        order=np.rint(joined[:, 6]).astype(np.intp) if across is not None else None,
    )
