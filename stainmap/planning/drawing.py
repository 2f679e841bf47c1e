"""Draws zones and accents on the full surface, from what was laid out on its coarser copy."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import csgraph
from scipy.spatial import cKDTree

from stainmap.model.crown import CrownReading
from stainmap.model.tooth import Role, Unit
from stainmap.model.zone import OUTER_ZONES, Accent, Zone
from stainmap.planning.body import Body
from stainmap.planning.relief import SMOOTHING_MM
from stainmap.planning.table import border_vertices
from stainmap.planning.unit_form import finite_mm, ramp
from stainmap.surface.geodesic import surface_distance
from stainmap.surface.mesh import AnyArray, BoolArray, FloatArray, TriMesh

# Within this distance of where two units part, the surface counts as interproximal, mm.
EMBRASURE_MM = 0.9
_FAR_MM = 5.0
# Width of the margin band, in shares of c: common practice, no published source.
_MARGIN_BAND = 0.022
_SOFT_MM = 0.15
_RIDGE_ACCENTS = (Accent.MARGINAL_RIDGE, Accent.TRIANGULAR_RIDGE, Accent.LINE_ANGLE)
# Softened masks end here, so that an accent stays a few places and not a haze.
_FAINTEST = 0.02
# A fissure is narrow, and smoothing lowers it more than its neighbours.
_FISSURE_GAIN = 1.2
_ISLAND_ROUNDS = 2


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Drawing:
    """The surface that zones and accents are drawn on.

    Parameters
    ----------
    body
        The body, with its copy.
    reading
        Its reading.
    units
        Teeth and roles.
    """

    body: Body
    reading: CrownReading
    units: tuple[Unit, ...]

    def zones(
        self, shares: FloatArray, beside: FloatArray, smallest_mm2: FloatArray
    ) -> NDArray[np.uint8]:
        """Return (V,) the zone numbers: the largest share after smoothing, without islands.

        Parameters
        ----------
        shares
            (W, 5) how much each vertex of the copy belongs to each outer zone.
        beside
            (P,) how much each vertex of the piece belongs to connectors.
        smallest_mm2
            (N,) the smallest piece a zone may have on each unit.
        """
        body = self.body
        smooth = body.thinned.back(body.operator.smooth(shares, SMOOTHING_MM))
        smooth[:, OUTER_ZONES.index(Zone.FISSURE)] *= _FISSURE_GAIN
        smooth *= 1.0 - beside[:, None]
        smooth[:, OUTER_ZONES.index(Zone.INTERPROXIMAL)] += beside
        numbers = np.array([int(zone) for zone in OUTER_ZONES], dtype=np.uint8)
        inner = np.uint8(Zone.INNER)
        zones = np.where(self._on_piece(self.reading.outer), numbers[smooth.argmax(axis=1)], inner)
        smallest = smallest_mm2[self._on_piece(self.reading.unit_index)]
        for _ in range(_ISLAND_ROUNDS):
            zones = without_islands(body.piece, zones, smallest)
        return body.in_whole(np.asarray(zones, dtype=np.uint8), int(inner))

    def beside_connectors(self) -> FloatArray:
        """Return (P,) how much each vertex belongs to connectors and embrasures."""
        if len(self.units) < 2:
            return np.zeros(self.body.piece.vertex_count)
        distance = embrasure_mm(self.body.piece, self._on_piece(self.reading.unit_index))
        return ramp(EMBRASURE_MM - distance, _SOFT_MM) * self._on_piece(self.reading.outer)

    def on_whole(self, on_copy: dict[Accent, FloatArray]) -> dict[Accent, FloatArray]:
        """Return accents laid out on the copy, (W,) each, softened on the whole surface, (V,)."""
        outer, rim = self._on_piece(self.reading.outer), self._on_piece(self.reading.rim)
        drawn = {}
        for accent, mask in on_copy.items():
            if accent in _RIDGE_ACCENTS:
                soft = self.body.thinned.back(self.body.operator.smooth(mask, SMOOTHING_MM))
                drawn[accent] = np.where(soft > _FAINTEST, soft, 0.0) * outer
            else:
                drawn[accent] = self.body.thinned.back(mask) * (~outer & ~rim)
        return {accent: self.body.in_whole(mask, 0.0) for accent, mask in drawn.items()}

    def borders(self, beside: FloatArray, sizes_mm: FloatArray) -> dict[Accent, FloatArray]:
        """Return the accents that follow margin, connectors and tissue, (V,) each.

        Parameters
        ----------
        beside
            (P,) how much each vertex of the piece belongs to connectors.
        sizes_mm
            (N,) c of each unit.
        """
        tissue = self._tissue()
        free = self._on_piece(self.reading.outer) & ~tissue
        drawn = {
            Accent.MARGIN_BAND: self._margin_band(free, sizes_mm),
            Accent.CONNECTOR: beside,
            Accent.PONTIC_TISSUE: tissue.astype(np.float64),
        }
        return {accent: self.body.in_whole(mask, 0.0) for accent, mask in drawn.items()}

    def free_outer(self) -> BoolArray:
        """Return (P,) the outer surface without the tissue side of pontics."""
        return self._on_piece(self.reading.outer) & ~self._tissue()

    def _on_piece(self, values: AnyArray) -> AnyArray:
        return values[self.body.vertices]  # type: ignore[return-value]

    def _pontic(self) -> BoolArray:
        indices = [k for k, unit in enumerate(self.units) if unit.role is Role.PONTIC]
        return np.isin(self._on_piece(self.reading.unit_index), indices)

    def _tissue(self) -> BoolArray:
        """Return (P,) the tissue side of pontics, to which the reading gives the height 0."""
        height = np.nan_to_num(self._on_piece(self.reading.height), nan=1.0)
        return self._pontic() & (height <= 0.0)

    def _margin_band(self, free: BoolArray, sizes_mm: FloatArray) -> FloatArray:
        """Return (P,) the band along the margin of all units that have one."""
        piece = self.body.piece
        border = np.zeros(piece.vertex_count, dtype=np.bool_)
        if self.body.open_border is not None:
            border[self.body.open_border] = True
        else:
            border = border_vertices(piece, free) & free
        border &= ~self._pontic()
        if not border.any():
            return np.zeros(piece.vertex_count)
        distance = surface_distance(piece, border, graph=piece.adjacency, within=free, limit_mm=1.0)
        reach = _MARGIN_BAND * sizes_mm[self._on_piece(self.reading.unit_index)]
        band = ramp(reach - finite_mm(distance), _SOFT_MM)
        return np.where(free & ~self._pontic(), band, 0.0)


def embrasure_mm(mesh: TriMesh, unit_index: NDArray[np.uint8]) -> FloatArray:
    """Return (V,) the distance from where units part, straight; 5 mm is the most it says."""
    i, j = mesh.edges.T
    parting = unit_index[i] != unit_index[j]
    if not parting.any():
        return np.full(mesh.vertex_count, _FAR_MM)
    points = mesh.vertices[np.unique(mesh.edges[parting])]
    distance, _ = cKDTree(points).query(mesh.vertices, distance_upper_bound=_FAR_MM)
    return np.asarray(np.minimum(distance, _FAR_MM))


def without_islands(
    mesh: TriMesh, zones: NDArray[np.uint8], smallest_mm2: FloatArray
) -> NDArray[np.uint8]:
    """Give pieces of a zone that are too small to the zone they share most border with.

    Parameters
    ----------
    mesh
        The surface, V vertices.
    zones
        (V,) zone numbers; the inner surface neither gives nor takes.
    smallest_mm2
        (V,) the least area of a piece there.
    """
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
    border = np.zeros((count, int(Zone.INNER) + 1))
    for a, b in ((i, j), (j, i)):
        leaving = ~same & small[a] & (zones[b] != Zone.INNER)
        np.add.at(border, (piece[a[leaving]], zones[b[leaving]]), 1.0)
    has_border = np.asarray(border.any(axis=1))
    taken = border.argmax(axis=1).astype(np.uint8)
    return np.asarray(np.where(small & has_border[piece], taken[piece], zones))
