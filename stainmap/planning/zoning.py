"""Proposes the zones and accents of a crown or bridge that has been read."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import csgraph
from scipy.spatial import cKDTree

from stainmap.errors import ReadingError
from stainmap.model.case import AccentMask
from stainmap.model.crown import BodyKind, CrownReading
from stainmap.model.tooth import Role, Unit
from stainmap.model.zone import OUTER_ZONES, Accent, Zone
from stainmap.planning.accents import unit_accents
from stainmap.planning.body import centres, main_piece, unit_parts
from stainmap.planning.directions import across, buccal_from_mesial
from stainmap.planning.fissures import find_fissures
from stainmap.planning.landmarks import (
    Landmarks,
    UnitPart,
    as_pontic,
    crest_again,
    find_landmarks,
)
from stainmap.planning.margin import CAVITY_RATIO, cavity_ratio
from stainmap.planning.progress import Progress, Steps
from stainmap.planning.relief import SMOOTHING_MM, find_middle_relief
from stainmap.planning.row import mesial_along, row_directions, row_order
from stainmap.planning.unit_form import UnitForm, ramp
from stainmap.planning.zone_rules import ZoneSliders, zone_shares
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import BoolArray, FloatArray, TriMesh, unit_rows
from stainmap.surface.principal import principal_curvatures

__all__ = ["ZoneProposal", "ZoneSliders", "propose_zones"]

# Within this distance of where two units part, the surface counts as interproximal, mm.
_EMBRASURE_MM = 0.9
_FAR_MM = 5.0
# Islands smaller than this share of a unit's outer area go to the zone around them.
_ISLAND_SHARE = 0.0022
_RIDGE_ACCENTS = (Accent.MARGINAL_RIDGE, Accent.TRIANGULAR_RIDGE, Accent.LINE_ANGLE)
# Softened masks end here, so that an accent stays a few places and not a haze.
_FAINTEST = 0.02
_DEFAULT_SLIDERS = ZoneSliders()
# A fissure is narrow, and smoothing lowers it more than its neighbours.
_FISSURE_GAIN = 1.15


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ZoneProposal:
    """Zones and accents as proposed, and the reading they were made from.

    Parameters
    ----------
    zones
        (V,) uint8 zone numbers.
    accents
        Soft masks in the order of their numbers, those that are empty left out.
    reading
        The reading.
    """

    zones: NDArray[np.uint8]
    accents: tuple[AccentMask, ...]
    reading: CrownReading

    def __post_init__(self) -> None:
        """Make the zones read-only."""
        self.zones.flags.writeable = False


def propose_zones(
    mesh: TriMesh,
    operator: SurfaceOperator,
    reading: CrownReading,
    units: tuple[Unit, ...],
    *,
    sliders: ZoneSliders = _DEFAULT_SLIDERS,
    progress: Progress | None = None,
) -> ZoneProposal:
    """Propose zones and accents.

    Parameters
    ----------
    mesh, operator
        The surface the reading belongs to, and its operator.
    reading
        What was read from it.
    units
        Teeth and roles.
    sliders
        How far the zones reach.
    progress
        Hears a share and a phrase; may raise CancelledError.

    Raises
    ------
    ReadingError
        If the body is no crown, no tooth is named, or mesial is not known.
    """
    steps = Steps(progress)
    if not units:
        raise ReadingError("No tooth is named.", where="units", advice="Name it, as in 46.")
    if reading.kind is BodyKind.NOT_A_CROWN:
        raise ReadingError(
            reading.warnings[0] if reading.warnings else "The body is no crown.",
            advice="Choose another file, or check its length unit.",
        )
    axis = np.asarray(reading.occlusal_axis)
    normals = find_middle_relief(operator, steps.part(0.0, 0.3)).normals
    bends = steps.during(
        0.3, "reading the relief", lambda: principal_curvatures(operator, SMOOTHING_MM)
    )
    level_bend = bends.along(unit_rows(np.cross(normals, axis)))
    parts = unit_parts(mesh, reading.unit_index, main_piece(mesh)[0], units)
    mesials = _mesials(reading, units, centres(parts), axis)
    embrasure = _embrasure_mm(mesh, reading)
    count = mesh.vertex_count
    shares = np.zeros((count, len(OUTER_ZONES)))
    accents: dict[Accent, FloatArray] = {}
    smallest = np.zeros(count)
    for number, part in enumerate(parts):
        stage = steps.part(0.4 + 0.4 * number / len(parts), 0.4 + 0.4 * (number + 1) / len(parts))
        stage.say(0.0, "measuring heights")
        landmarks = _landmarks_again(part, reading, axis)
        stage.say(0.6, "laying out the zones")
        mesial, vertices = mesials[part.index], part.vertices
        form = UnitForm(
            landmarks=landmarks,
            mesial=mesial,
            buccal=buccal_from_mesial(mesial, axis, units[part.index].tooth),
            normals=normals[vertices],
            valley_per_mm=-bends.least[vertices],
            level_bend_per_mm=level_bend[vertices],
            embrasure_mm=embrasure[vertices],
            rim=reading.rim[vertices],
            hollow=cavity_ratio(part.mesh, landmarks.outer) > CAVITY_RATIO,
        )
        fissure = find_fissures(form, sliders.fissure_width)
        by_zone = zone_shares(form, fissure, sliders)
        for column, zone in enumerate(OUTER_ZONES):
            shares[vertices, column] = by_zone[zone]
        smallest[vertices] = _ISLAND_SHARE * landmarks.size_mm**2
        for accent, mask in unit_accents(form, fissure).items():
            accents.setdefault(accent, np.zeros(count))[vertices] = mask
    steps.say(0.8, "smoothing the borders")
    if len(parts) > 1:
        beside = ramp(_EMBRASURE_MM - embrasure, 0.15) * reading.outer
        shares *= 1.0 - beside[:, None]
        shares[:, OUTER_ZONES.index(Zone.INTERPROXIMAL)] += beside
        accents[Accent.CONNECTOR] = beside
    zones = _label(operator, shares, reading.outer, smallest, steps)
    _soften(operator, accents, reading.outer)
    masks = tuple(
        AccentMask(accent=accent, share=np.clip(mask, 0.0, 1.0).astype(np.float32))
        for accent, mask in sorted(accents.items())
        if mask.any()
    )
    steps.say(1.0, "zones proposed")
    return ZoneProposal(zones=zones, accents=masks, reading=reading)


def _landmarks_again(part: UnitPart, reading: CrownReading, axis: FloatArray) -> Landmarks:
    """Return the landmarks of a unit as the reading has them."""
    outer = reading.outer[part.vertices]
    height = reading.height[part.vertices]
    if part.unit is None or part.unit.role is not Role.PONTIC:
        return find_landmarks(part, outer, axis, crest_again(part, outer, axis, height))
    # The reading gives a pontic's tissue side the height of its margin.
    free = outer & (height > 0.0)
    return as_pontic(find_landmarks(part, free, axis, crest_again(part, free, axis, height)))


def _mesials(
    reading: CrownReading, units: tuple[Unit, ...], middles: FloatArray, axis: FloatArray
) -> list[FloatArray]:
    """Return mesial across the axis for each unit of the case."""
    if len(middles) > 1:
        order = row_order(units)
        lefts = dict(zip(order, row_directions(middles[order], axis), strict=True))
        found = [
            None if (left := lefts[k]) is None else mesial_along(left, unit.tooth)
            for k, unit in enumerate(units)
        ]
    else:
        said = reading.mesial
        found = [None if said is None else across(np.asarray(said), axis)]
    mesials = []
    for unit, mesial in zip(units, found, strict=True):
        if mesial is None:
            raise ReadingError(
                f"Which side of tooth {unit.tooth.number} is mesial is not known.",
                where="mesial direction",
                advice="Click its mesial side, or give the direction as three numbers.",
            )
        mesials.append(mesial)
    return mesials


def _embrasure_mm(mesh: TriMesh, reading: CrownReading) -> FloatArray:
    """Return (V,) the distance from where units part, straight; 5 mm is the most it says."""
    i, j = mesh.edges.T
    parting = reading.unit_index[i] != reading.unit_index[j]
    if not parting.any():
        return np.full(mesh.vertex_count, _FAR_MM)
    points = mesh.vertices[np.unique(mesh.edges[parting])]
    distance, _ = cKDTree(points).query(mesh.vertices, distance_upper_bound=_FAR_MM)
    return np.asarray(np.minimum(distance, _FAR_MM))


def _label(
    operator: SurfaceOperator,
    shares: FloatArray,
    outer: BoolArray,
    smallest_mm2: FloatArray,
    steps: Steps,
) -> NDArray[np.uint8]:
    """Return the zones: the largest share after smoothing, without islands."""
    smooth = steps.during(
        0.85, "smoothing the borders", lambda: operator.smooth(shares, SMOOTHING_MM)
    )
    smooth[:, OUTER_ZONES.index(Zone.FISSURE)] *= _FISSURE_GAIN
    numbers = np.array([int(zone) for zone in OUTER_ZONES], dtype=np.uint8)
    zones = np.where(outer, numbers[smooth.argmax(axis=1)], np.uint8(Zone.INNER))
    for _ in range(2):
        zones = _without_islands(operator.mesh, zones, smallest_mm2)
    return np.asarray(zones, dtype=np.uint8)


def _soften(operator: SurfaceOperator, accents: dict[Accent, FloatArray], outer: BoolArray) -> None:
    """Smooth the accents that follow ridges, in place; the others have their soft edges."""
    found = [accent for accent in _RIDGE_ACCENTS if accent in accents]
    if not found:
        return
    smooth = operator.smooth(np.stack([accents[accent] for accent in found], 1), SMOOTHING_MM)
    for accent, mask in zip(found, smooth.T, strict=True):
        accents[accent] = np.where(mask > _FAINTEST, mask, 0.0) * outer


def _without_islands(
    mesh: TriMesh, zones: NDArray[np.uint8], smallest_mm2: FloatArray
) -> NDArray[np.uint8]:
    """Give pieces of a zone that are too small to the zone they share most border with."""
    i, j = mesh.edges.T
    same = zones[i] == zones[j]
    graph = sparse.coo_array(
        (np.ones(int(same.sum()), dtype=np.int8), (i[same], j[same])),
        shape=(mesh.vertex_count,) * 2,
    )
    count, piece = csgraph.connected_components(graph, directed=False)
    area = np.bincount(piece, mesh.vertex_areas, minlength=count)
    small = (area[piece] < smallest_mm2) & (zones != Zone.INNER)
    if not small.any():
        return zones
    # Border of each piece with each zone, in edges; the inner surface takes no island.
    border = np.zeros((count, int(Zone.INNER) + 1))
    for a, b in ((i, j), (j, i)):
        across_border = ~same & small[a] & (zones[b] != Zone.INNER)
        np.add.at(border, (piece[a[across_border]], zones[b[across_border]]), 1.0)
    has_border = np.asarray(border.any(axis=1))
    taken = border.argmax(axis=1).astype(np.uint8)
    return np.asarray(np.where(small & has_border[piece], taken[piece], zones))
