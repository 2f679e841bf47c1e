"""The connector between two units of a bridge: one surface from wall to wall, without a seam.

Both walls and an elliptic cylinder between them are united smoothly as fields. The surface of that
union differs from the walls only near the connector, so only that part is meshed anew: each wall
is cut open along a cone around the connector, a tube of rings is laid from one cut to the other
where rays from inside leave the union, and everything near the cuts slides along the union until
its triangles are even.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from stainmap.practice.crown_cutting import Cut
from stainmap.practice.crown_meshing import (
    Field,
    IndexArray,
    meet_surface,
    zipped,
)
from stainmap.practice.crown_outline import smooth_min, smooth_step

FloatArray = NDArray[np.float64]

_FILLET_MM = 0.75
# Walls that only come close run into each other much less than they run into the connector, so
# that embrasures stay open.
_WALLS_BLEND_MM = 0.3
# How steeply the cylinder's field rises, so that the fillet is about as wide as high.
_CYLINDER_RISE = 1.3
_HALF_LENGTH_MM = 1.5
# Where the cones have their tips: this deep behind the contact, on the connector's axis.
_DEPTH_MM = 3.0
# Half the opening of the cones across (buccolingually) and upright, as tangents.
_OPENING = (0.92, 0.80)
_HALF_TURN = np.pi
_REACH_MM = 4.6
_SAMPLES = (56, 96)
_ROW_SPACING = 0.88


@dataclass(frozen=True, slots=True, kw_only=True)
class Connector:
    """An elliptic cylinder along x.

    Parameters
    ----------
    centre
        Its middle, between the walls it joins, mm.
    half_axes
        Half its width along y and half its height along z, mm.
    """

    centre: tuple[float, float, float]
    half_axes: tuple[float, float]

    def field(self, points: FloatArray) -> FloatArray:
        """Return the field of the cylinder at (N, 3) points, negative inside."""
        x, y, z = (points - np.array(self.centre)).T
        beside = _CYLINDER_RISE * (np.hypot(y / self.half_axes[0], z / self.half_axes[1]) - 1.0)
        return np.asarray(np.maximum(beside, np.abs(x) - _HALF_LENGTH_MM))

    def united(self, mesial: Field, distal: Field) -> Field:
        """Return the field of two units and the connector between them."""

        def field(points: FloatArray) -> FloatArray:
            walls = smooth_min(mesial(points), distal(points), _WALLS_BLEND_MM)
            return smooth_min(walls, self.field(points), _FILLET_MM)

        return field

    def cone_angle(self, points: FloatArray, side: int) -> FloatArray:
        """Return how far points lie from the axis of a cone, radians; pi / 4 on the cone itself.

        The cone's tip lies inside the unit on one side (+1 mesial, -1 distal) of the connector;
        it opens towards the other unit.
        """
        ahead, across, up = self._seen_from(points, side)
        return np.asarray(np.arctan2(np.hypot(across, up), ahead))

    def azimuth(self, points: FloatArray) -> FloatArray:
        """Return the direction of points around the connector, 0 to a full turn."""
        _, across, up = self._seen_from(points, 1)
        return np.mod(np.arctan2(up, across), 2 * _HALF_TURN)

    def _seen_from(self, points: FloatArray, side: int) -> tuple[FloatArray, ...]:
        x, y, z = (points - np.array(self.centre)).T
        return _DEPTH_MM - side * x, y / _OPENING[0], z / _OPENING[1]

    def rays(self, share: FloatArray, azimuth: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Return origins and unit directions (N, 3) from one cone (share 0, mesial) to the other.

        The origins walk along the axis, the directions turn over from one cone's to the other's;
        they turn slowly near the cones, so that no two rays cross within the material.
        """
        turned = (share + smooth_step(share, 0.0, 1.0)) / 2
        angle = _HALF_TURN * (0.25 + 0.5 * turned)
        along = -np.cos(angle)
        spread = np.sin(angle)
        directions = np.stack(
            [
                along,
                _OPENING[0] * spread * np.cos(azimuth),
                _OPENING[1] * spread * np.sin(azimuth),
            ],
            axis=1,
        )
        directions /= np.linalg.norm(directions, axis=1)[:, None]
        origins = np.tile(np.array(self.centre), (len(share), 1))
        origins[:, 0] += _DEPTH_MM * (1.0 - 2.0 * share)
        return origins, directions


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Tube:
    """Vertices between two cuts, and faces that join them to the cuts' own vertices.

    `faces` count the mesial cut's loop first, then the distal one's, then `vertices`.
    """

    vertices: FloatArray
    faces: IndexArray


def tube(connector: Connector, field: Field, mesial: Cut, distal: Cut, edge_mm: float) -> Tube:
    """Return the surface between two cuts.

    Parameters
    ----------
    connector
        Gives the rays.
    field
        The union.
    mesial, distal
        The cuts of the two walls along the connector's cones.
    edge_mm
        Wanted length of edges.
    """
    first, last = connector.azimuth(mesial.points), connector.azimuth(distal.points)
    ns, nt = _SAMPLES
    shares = np.linspace(0.0, 1.0, ns)
    azimuths = np.linspace(0.0, 2 * _HALF_TURN, nt, endpoint=False)
    grid_share, grid_azimuth = np.meshgrid(shares, azimuths, indexing="ij")
    rays = connector.rays(grid_share.ravel(), grid_azimuth.ravel())
    points = meet_surface(field, *rays, _REACH_MM).reshape(ns, nt, 3)
    travelled = np.cumsum(np.linalg.norm(np.diff(points, axis=0), axis=2), axis=0)
    travelled = np.vstack([np.zeros(nt), travelled])
    count = max(3, round(float(travelled[-1].mean()) / (_ROW_SPACING * edge_mm)))
    closed = np.append(azimuths, 2 * _HALF_TURN)
    at_row = np.array(
        [
            np.interp(np.arange(1, count) / count * travelled[-1, j], travelled[:, j], shares)
            for j in range(nt)
        ]
    ).T
    # All rings at once: it is the calls that take the time, not the points.
    around_all = connector.rays(at_row.ravel(), np.tile(azimuths, count - 1))
    met = meet_surface(field, *around_all, _REACH_MM).reshape(count - 1, nt, 3)
    rows: list[tuple[FloatArray, FloatArray]] = []
    for i, (at, ring) in enumerate(zip(at_row, met, strict=True), start=1):
        edge = np.linalg.norm(np.roll(ring, -1, axis=0) - ring, axis=1)
        around = np.concatenate([[0.0], np.cumsum(edge)])
        number = max(8, round(float(around[-1]) / edge_mm))
        place = (np.arange(number) + 0.5 * (i % 2)) / number * around[-1]
        azimuth = np.interp(place, around, closed)
        rows.append((np.interp(azimuth, closed, np.append(at, at[0])), azimuth))
    share = np.concatenate([row[0] for row in rows])
    vertices = meet_surface(
        field, *connector.rays(share, np.concatenate([row[1] for row in rows])), _REACH_MM
    )
    rings = [(0, first)]
    start = len(first) + len(last)
    for _, azimuth in rows:
        rings.append((start, azimuth))
        start += len(azimuth)
    rings.append((len(first), last))
    faces = [
        zipped(a, from_azimuth, b, to_azimuth)
        for (a, from_azimuth), (b, to_azimuth) in pairwise(rings)
    ]
    # The rings go towards -x with azimuths that turn the right-handed way about +x.
    turned = np.concatenate(faces)[:, ::-1]
    return Tube(vertices=vertices, faces=np.ascontiguousarray(turned, dtype=np.int32))
