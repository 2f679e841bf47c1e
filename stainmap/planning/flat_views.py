"""The rosette of each unit: its outer surface laid flat, biting surface in the middle."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import ReadingError
from stainmap.model.crown import CrownReading
from stainmap.model.tooth import Role, Unit
from stainmap.planning.directions import buccal_from_mesial
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.flattening import (
    FlatMethod,
    area_spread,
    flat_piece,
    flatten_disc,
    smooth_ratios,
)
from stainmap.surface.mesh import BoolArray, FloatArray, IndexArray, TriMesh, frozen, largest_piece
from stainmap.words import translate

# Where a place is drawn more than so many times too large or too small, views say so.
NOTABLE_RATIO = 2.0
# How far normals are smoothed before the halves of a front tooth are told apart.
_HALVES_MM = 0.5
_MARK_POWER = 8
# Room between the halves of a front tooth, in radii.
_BETWEEN = 0.10


class FlatName(StrEnum):
    """What a flat part shows: all around, or one half of a front tooth."""

    ROSETTE = "rosette"
    FACIAL = "facial half"
    LINGUAL = "lingual half"


class Towards(StrEnum):
    """What lies at a place of a rim."""

    MESIAL = "mesial"
    DISTAL = "distal"
    BUCCAL = "buccal"
    LINGUAL = "lingual"
    OCCLUSAL = "occlusal"
    CERVICAL = "cervical"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FlatPart:
    """A part of the outer surface of one unit, laid on the unit disc.

    Parameters
    ----------
    name
        What it shows.
    vertices
        (n,) int32 vertices of the crown, ascending.
    faces
        (m, 3) int32 places in `vertices`.
    points
        (n, 2) on the unit disc, y upwards; nothing is mirrored against the view from outside.
    ratios
        (n,) how many times too large a place is drawn; 1 is true, 0.5 half its size.
    radius_mm
        Radius at which the disc has the area of the part.
    marks
        Angle in radians, counter-clockwise from the right, at which the rim lies towards a side.
    method, flipped, spread
        How it was made, folded faces, 95th over 5th percentile of the areas' ratios.
    """

    name: FlatName
    vertices: IndexArray
    faces: IndexArray
    points: FloatArray
    ratios: FloatArray
    radius_mm: float
    marks: dict[Towards, float]
    method: FlatMethod
    flipped: int
    spread: float

    @property
    def notable(self) -> BoolArray:
        """(n,) places drawn more than twice, or less than half, their size."""
        log = np.abs(np.log(np.maximum(self.ratios, 1e-6)))
        return np.asarray(log > np.log(NOTABLE_RATIO))


def flat_unit(
    mesh: TriMesh, reading: CrownReading, units: tuple[Unit, ...], unit: int
) -> tuple[FlatPart, ...]:
    """Return the rosette of a unit; of a front tooth the facial and the lingual half.

    The rosette lies as the view onto the biting surface: buccal below. The halves of a front
    tooth face each other when the lingual one stands above the facial one: the incisal edge is
    up in the facial one and down in the lingual one, and mesial is on the same side in both.
    The rim is the margin; on a pontic it is where the tissue side begins, which is left out.
    What a neighbouring unit covers at a connector is a hole.

    Parameters
    ----------
    mesh, reading, units
        The crown's surface, what was read from it, its teeth.
    unit
        Which of the units.

    Raises
    ------
    ReadingError
        If the outer surface is not one sheet with a rim, so that it cannot be laid flat.
    """
    outer = reading.outer & (reading.unit_index == unit)
    if units[unit].role is Role.PONTIC:
        outer &= np.nan_to_num(reading.height, nan=1.0) > 0.0
    frame = _Frame.of(reading, units[unit])
    try:
        whole, vertices = flat_piece(mesh, outer[mesh.faces].all(axis=1))
        if not units[unit].tooth.is_front:
            return (_part(FlatName.ROSETTE, whole, vertices, frame.right, -frame.buccal, frame),)
        facial = _facial_half(whole, frame.buccal)
        faces = whole.faces
        front = facial[faces].sum(axis=1) >= 2
        return tuple(
            _part(name, *_within(whole, vertices, half), frame.right, up, frame)
            for name, half, up in (
                (FlatName.FACIAL, front, frame.occlusal),
                (FlatName.LINGUAL, ~front, -frame.occlusal),
            )
        )
    except ValueError as error:
        raise ReadingError(
            translate(
                "flat views", "The outer surface of {number} cannot be laid flat: {error}."
            ).format(number=units[unit].tooth.number, error=error),
            advice=translate(
                "flat views",
                "Look whether the margin runs where it should; the other views still work.",
            ),
        ) from error


def facing_places(
    parts: tuple[FlatPart, ...],
) -> tuple[FloatArray, tuple[tuple[float, float, float], ...]]:
    """Return (n, 2) mm for the vertices of all parts in turn, and middle and radius of each disc.

    A lingual half stands above the facial one, so that they face each other.
    """
    places: list[FloatArray] = []
    discs: list[tuple[float, float, float]] = []
    y = 0.0
    for part in parts:
        if discs:
            y += discs[-1][2] + part.radius_mm * (1.0 + 2.0 * _BETWEEN)
        places.append(part.points * part.radius_mm + [0.0, y])
        discs.append((0.0, y, part.radius_mm))
    return np.concatenate(places), tuple(discs)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Frame:
    """Directions of one unit; `right` is right in the view onto the biting surface."""

    occlusal: FloatArray
    mesial: FloatArray
    buccal: FloatArray
    right: FloatArray

    @classmethod
    def of(cls, reading: CrownReading, unit: Unit) -> _Frame:
        occlusal = np.asarray(reading.occlusal_axis, dtype=np.float64)
        occlusal = occlusal / np.linalg.norm(occlusal)
        guess = np.eye(3)[np.abs(occlusal).argmin()]
        if reading.mesial is not None:
            guess = np.asarray(reading.mesial, dtype=np.float64)
        mesial = guess - (guess @ occlusal) * occlusal
        mesial = mesial / np.linalg.norm(mesial)
        buccal = buccal_from_mesial(mesial, occlusal, unit.tooth)
        return cls(
            occlusal=occlusal, mesial=mesial, buccal=buccal, right=np.cross(occlusal, buccal)
        )

    def towards(self, side: Towards) -> FloatArray:
        """Return the (3,) unit vector to a side."""
        return {
            Towards.MESIAL: self.mesial,
            Towards.DISTAL: -self.mesial,
            Towards.BUCCAL: self.buccal,
            Towards.LINGUAL: -self.buccal,
            Towards.OCCLUSAL: self.occlusal,
            Towards.CERVICAL: -self.occlusal,
        }[side]


_ROSETTE_MARKS = (Towards.MESIAL, Towards.DISTAL, Towards.BUCCAL, Towards.LINGUAL)
_HALF_MARKS = (Towards.MESIAL, Towards.DISTAL, Towards.OCCLUSAL, Towards.CERVICAL)


def _part(
    name: FlatName,
    mesh: TriMesh,
    vertices: NDArray[np.int32],
    right: FloatArray,
    up: FloatArray,
    frame: _Frame,
) -> FlatPart:
    flat = flatten_disc(mesh, right=right, up=up)
    sides = _ROSETTE_MARKS if name is FlatName.ROSETTE else _HALF_MARKS
    rim = mesh.vertices[flat.rim]
    away = rim - rim.mean(axis=0)
    circle = flat.points[flat.rim] @ np.array([1.0, 1.0j])
    marks = {}
    for side in sides:
        # Where the rim lies farthest that way; the power keeps it from hanging on one vertex.
        weight = np.maximum(away @ frame.towards(side), 0.0) ** _MARK_POWER
        marks[side] = float(np.angle(weight @ circle))
    return FlatPart(
        name=name,
        vertices=vertices,
        faces=mesh.faces,
        points=flat.points,
        ratios=frozen(smooth_ratios(mesh, flat.points)),
        radius_mm=float(np.sqrt(mesh.area / np.pi)),
        marks=marks,
        method=flat.method,
        flipped=flat.flipped,
        spread=area_spread(mesh, flat.points),
    )


def _facial_half(mesh: TriMesh, buccal: FloatArray) -> BoolArray:
    """Return (n,) the side of a front tooth that faces outwards, in one piece; so is the rest."""
    facing = SurfaceOperator(mesh).smooth(mesh.vertex_normals @ buccal, _HALVES_MM)
    front = largest_piece(mesh, facing > 0.0)
    return ~largest_piece(mesh, ~front)


def _within(
    mesh: TriMesh, vertices: NDArray[np.int32], faces: BoolArray
) -> tuple[TriMesh, NDArray[np.int32]]:
    part, of_part = flat_piece(mesh, faces)
    return part, frozen(vertices[of_part])
