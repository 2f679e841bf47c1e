"""The sides a crown is looked at from, and the cameras that measure it from there."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.model.crown import CrownReading
from stainmap.model.tooth import Tooth
from stainmap.paper.raster import Camera
from stainmap.planning.directions import buccal_from_mesial

FloatArray = NDArray[np.float64]


class Side(StrEnum):
    """The six sides of a crown."""

    OCCLUSAL = "occlusal"
    BUCCAL = "buccal"
    LINGUAL = "lingual"
    MESIAL = "mesial"
    DISTAL = "distal"
    INNER = "inner surface"


FLAT_SIDES = (Side.BUCCAL, Side.LINGUAL, Side.MESIAL, Side.DISTAL)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class CrownDirections:
    """Right-angled unit vectors of one unit in the mesh's coordinates.

    `sides_known` is False while nobody has said where mesial is: the four sides are then in an
    arbitrary order and must not be named.
    """

    occlusal: FloatArray
    mesial: FloatArray
    buccal: FloatArray
    sides_known: bool

    @classmethod
    def of(cls, reading: CrownReading, tooth: Tooth) -> CrownDirections:
        """Return the directions of a tooth; some sides in some order where mesial is unknown."""
        occlusal = _unit(np.asarray(reading.occlusal_axis, dtype=np.float64))
        known = reading.mesial is not None
        if reading.mesial is not None:
            guess = np.asarray(reading.mesial, dtype=np.float64)
        else:
            guess = np.eye(3)[np.abs(occlusal).argmin()]
        mesial = _unit(guess - (guess @ occlusal) * occlusal)
        return cls(
            occlusal=occlusal,
            mesial=mesial,
            buccal=buccal_from_mesial(mesial, occlusal, tooth),
            sides_known=known,
        )

    @property
    def rows(self) -> FloatArray:
        """(3, 3) mesial, buccal, occlusal as rows."""
        return np.stack([self.mesial, self.buccal, self.occlusal])

    def towards(self, side: Side) -> FloatArray:
        """Return the unit vector that points out of the crown on a side."""
        return {
            Side.OCCLUSAL: self.occlusal,
            Side.INNER: -self.occlusal,
            Side.BUCCAL: self.buccal,
            Side.LINGUAL: -self.buccal,
            Side.MESIAL: self.mesial,
            Side.DISTAL: -self.mesial,
        }[side]

    def up(self, side: Side) -> FloatArray:
        """Return what stands upright: occlusal from the sides, lingual from above and below."""
        return -self.buccal if side in (Side.OCCLUSAL, Side.INNER) else self.occlusal

    def word(self, side: Side, tooth: Tooth) -> str:
        """Return the trade's word for a side of a tooth, or "side 1" while sides are unknown."""
        if side is Side.INNER:
            return str(side)
        if side is Side.OCCLUSAL:
            return tooth.occlusal_word
        if not self.sides_known:
            return f"side {FLAT_SIDES.index(side) + 1}"
        return {Side.BUCCAL: tooth.buccal_word, Side.LINGUAL: tooth.lingual_word}.get(
            side, str(side)
        )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FlatView:
    """A parallel view that just holds a body: its camera and its size in mm and pixels."""

    camera: Camera
    width: int
    height: int
    width_mm: float
    height_mm: float


def flat_view(
    points: ArrayLike,
    directions: CrownDirections,
    side: Side,
    *,
    pixels_per_mm: float,
    border_mm: float = 0.25,
) -> FlatView:
    """Return the parallel view of points (N, 3) from a side, with a border around them."""
    towards, up = directions.towards(side), directions.up(side)
    axes = np.stack([np.cross(up, towards), up, towards])
    local = np.asarray(points, dtype=np.float64) @ axes.T
    low, high = local.min(axis=0), local.max(axis=0)
    width = max(int(np.ceil((high[0] - low[0] + 2 * border_mm) * pixels_per_mm)), 1)
    height = max(int(np.ceil((high[1] - low[1] + 2 * border_mm) * pixels_per_mm)), 1)
    centre = 0.5 * (low + high) @ axes
    camera = Camera(
        eye=_triple(towards),
        up=_triple(up),
        centre=_triple(centre),
        height_mm=height / pixels_per_mm,
    )
    return FlatView(
        camera=camera,
        width=width,
        height=height,
        width_mm=width / pixels_per_mm,
        height_mm=height / pixels_per_mm,
    )


def _triple(vector: FloatArray) -> tuple[float, float, float]:
    return (float(vector[0]), float(vector[1]), float(vector[2]))


def _unit(vector: FloatArray) -> FloatArray:
    return np.asarray(vector / np.linalg.norm(vector))
