"""The units of a bridge joined by their connectors into one closed surface."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from stainmap.model.zone import Accent, Zone
from stainmap.practice.crown_connector import Connector, tube
from stainmap.practice.crown_cutting import Cut, cut_open
from stainmap.practice.crown_meshing import Field, relaxed
from stainmap.practice.crown_outline import smooth_step
from stainmap.practice.crown_solids import ToothSolid
from stainmap.surface.thickness import nearest_vertex_distance

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]
IndexArray = NDArray[np.int32]

# How far around a cut the surface slides, as an angle of the cone it was cut along.
_SLIDING_RAD = 0.30
_SLIDING_ROUNDS = 12
# The surface belongs to the connector where it has left the unit's own wall by this much, mm.
_LEFT_WALL_MM = (0.03, 0.12)
# An embrasure is where two walls are this close to each other, mm.
_EMBRASURE_MM = (0.7, 1.1)
# Connectors are strongly curved: no longer edges there, or their sections would come out too large.
_TUBE_EDGE_MM = 0.18
# No vertex of a connector's tube lies further from its middle along x.
_TUBE_WITHIN_MM = 3.0

ACCENTS = tuple(Accent)
"""The columns of accent masks, in this order."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Standing:
    """A solid in its place."""

    solid: ToothSolid
    turn: FloatArray
    shift: FloatArray

    def placed(self, points: FloatArray) -> FloatArray:
        """Return points of the tooth's frame in the bridge's."""
        return np.asarray(points @ self.turn.T + self.shift)

    def outer(self, points: FloatArray) -> FloatArray:
        """Return the field of the outer surface at points of the bridge's frame."""
        return self.solid.outer((points - self.shift) @ self.turn)

    def moved(self, x: float) -> Standing:
        """Return it moved along x."""
        return replace(self, shift=self.shift + np.array([x, 0.0, 0.0]))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Part:
    """The mesh of one unit in the bridge's frame, with what is known of its vertices."""

    vertices: FloatArray
    faces: IndexArray
    outer: BoolArray
    zones: NDArray[np.uint8]
    masks: NDArray[np.float32]
    loops: tuple[IndexArray, ...] = ()

    def after(self, cut: Cut) -> Part:
        """Return what a cut has left; its line is the last of the loops."""
        first, second = cut.origin.T
        number = np.full(len(self.vertices), -1, dtype=np.int32)
        former = first == second
        number[first[former]] = np.flatnonzero(former)
        return Part(
            vertices=cut.vertices,
            faces=cut.faces,
            outer=self.outer[first],
            zones=self.zones[first],
            masks=(self.masks[first] + self.masks[second]) / 2,
            loops=(*(number[loop] for loop in self.loops), cut.loop),
        )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class JoinedUnits:
    """The joined bridge."""

    vertices: FloatArray
    faces: IndexArray
    outer: BoolArray
    unit_index: NDArray[np.uint8]
    zones: NDArray[np.uint8]
    masks: NDArray[np.float32]


def joined(
    whole: list[Part], stands: list[Standing], connectors: list[Connector], edge_mm: float
) -> JoinedUnits:
    """Return the units joined by their connectors."""
    parts = list(whole)
    cuts: list[tuple[Cut, Cut]] = []
    for k, connector in enumerate(connectors):
        pair = []
        for number, side in ((k, 1), (k + 1, -1)):
            level = connector.cone_angle(parts[number].vertices, side) - np.pi / 4
            level[~parts[number].outer] = 1.0
            cut = cut_open(parts[number].vertices, parts[number].faces, level, connector.azimuth)
            parts[number] = parts[number].after(cut)
            pair.append(cut)
        cuts.append((pair[0], pair[1]))
    fields = [
        connector.united(stands[k].outer, stands[k + 1].outer)
        for k, connector in enumerate(connectors)
    ]
    tubes = [
        tube(connector, field, *pair, min(edge_mm, _TUBE_EDGE_MM))
        for connector, field, pair in zip(connectors, fields, cuts, strict=True)
    ]
    offsets = np.cumsum([0, *(len(part.vertices) for part in parts)])
    vertices = [part.vertices for part in parts]
    faces = [part.faces + offset for part, offset in zip(parts, offsets, strict=False)]
    place = int(offsets[-1])
    for k, laid in enumerate(tubes):
        # The mesial unit's loop of this connector is its last one, the distal unit's its first.
        numbers = np.concatenate(
            [
                parts[k].loops[-1] + offsets[k],
                parts[k + 1].loops[0] + offsets[k + 1],
                place + np.arange(len(laid.vertices)),
            ]
        )
        vertices.append(laid.vertices)
        faces.append(numbers[laid.faces])
        place += len(laid.vertices)
    points = np.concatenate(vertices)
    triangles = np.concatenate(faces).astype(np.int32)
    extra = place - int(offsets[-1])
    outer = np.concatenate([*(part.outer for part in parts), np.ones(extra, dtype=np.bool_)])
    unit_index = np.repeat(
        np.arange(len(parts) + 1, dtype=np.uint8), [*np.diff(offsets).tolist(), extra]
    )
    zones = np.concatenate([*(part.zones for part in parts), np.zeros(extra, dtype=np.uint8)])
    masks = np.concatenate([*(part.masks for part in parts), np.zeros((extra, len(ACCENTS)))])
    surface = JoinedUnits(
        vertices=points,
        faces=triangles,
        outer=outer,
        unit_index=unit_index,
        zones=zones,
        masks=masks.astype(np.float32),
    )
    for k, (connector, field) in enumerate(zip(connectors, fields, strict=True)):
        near = _near(connector, surface, k, len(parts))
        _slide(surface, field, near)
        _label(surface, near, connector, k, whole, stands)
    return surface


def _near(connector: Connector, surface: JoinedUnits, k: int, tubes_from: int) -> BoolArray:
    """Return (V,) what lies around a connector: the tube and the walls beside its cuts."""
    reach = np.pi / 4 + _SLIDING_RAD
    near = np.zeros(len(surface.vertices), dtype=np.bool_)
    for number, side in ((k, 1), (k + 1, -1)):
        mine = surface.unit_index == number
        near |= mine & (connector.cone_angle(surface.vertices, side) < reach)
    in_tube = surface.unit_index == tubes_from
    away = np.abs(surface.vertices[:, 0] - connector.centre[0])
    return np.asarray(surface.outer & (near | (in_tube & (away < _TUBE_WITHIN_MM))))


def _slide(surface: JoinedUnits, field: Field, near: BoolArray) -> None:
    """Even out the triangles around a connector, on its field."""
    touched = near[surface.faces].any(axis=1)
    used = np.unique(surface.faces[touched])
    number = np.full(len(surface.vertices), -1, dtype=np.int32)
    number[used] = np.arange(len(used))
    surface.vertices[used] = relaxed(
        field,
        surface.vertices[used],
        number[surface.faces[touched]],
        ~near[used],
        rounds=_SLIDING_ROUNDS,
    )


def _label(
    surface: JoinedUnits,
    near: BoolArray,
    connector: Connector,
    k: int,
    whole: list[Part],
    stands: list[Standing],
) -> None:
    """Note unit, zones and accents around a connector.

    A vertex takes what the nearest place of its unit's own wall had. Where the surface has left
    that wall, or the neighbour's wall is close, it is connector or embrasure, and interproximal.
    """
    chosen = np.flatnonzero(near)
    points = surface.vertices[chosen]
    to_distal = points[:, 0] < connector.centre[0]
    surface.unit_index[chosen] = k + to_distal
    values = np.stack([stands[k].outer(points), stands[k + 1].outer(points)], axis=1)
    rows = np.arange(len(chosen))
    own, other = values[rows, to_distal.astype(int)], values[rows, 1 - to_distal.astype(int)]
    left_wall = smooth_step(own, *_LEFT_WALL_MM)
    for side in (0, 1):
        mine = to_distal == bool(side)
        part = whole[k + side]
        candidates = np.flatnonzero(part.outer)
        _, nearest = nearest_vertex_distance(points[mine], part.vertices[candidates])
        surface.zones[chosen[mine]] = part.zones[candidates[nearest]]
        surface.masks[chosen[mine]] = part.masks[candidates[nearest]]
    embrasure = 1.0 - smooth_step(other, *_EMBRASURE_MM)
    connecting = np.maximum(left_wall, embrasure)
    surface.zones[chosen[connecting > 0.5]] = Zone.INTERPROXIMAL
    surface.masks[chosen] *= (1.0 - left_wall)[:, None].astype(np.float32)
    surface.masks[chosen, ACCENTS.index(Accent.CONNECTOR)] = connecting
