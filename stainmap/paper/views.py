"""The sides a crown is looked at from, and the cameras that measure it from there."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.model.crown import CrownReading
from stainmap.model.tooth import Tooth
from stainmap.paper.raster import Camera

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
        from stainmap.planning.directions import buccal_from_mesial  # noqa: PLC0415

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


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FlatExtent:
    """How far a body reaches as seen from a side.

    Parameters
    ----------
    axes
        (3, 3) rows right, up and towards the viewer.
    low, high
        (3,) smallest and largest coordinates along the axes, mm.
    """

    axes: FloatArray
    low: FloatArray
    high: FloatArray

    @classmethod
    def of(cls, points: ArrayLike, directions: CrownDirections, side: Side) -> FlatExtent:
        """Return the extent of points (N, 3), mm, seen from a side."""
        towards, up = directions.towards(side), directions.up(side)
        axes = np.stack([np.cross(up, towards), up, towards])
        local = np.asarray(points, dtype=np.float64) @ axes.T
        return cls(axes=axes, low=local.min(axis=0), high=local.max(axis=0))

    def view(self, pixels_per_mm: float, *, border_mm: float = 0.25) -> FlatView:
        """Return the parallel view that holds the body with a border around it."""
        across, along, _ = self.high - self.low + 2.0 * border_mm
        width = max(int(np.ceil(across * pixels_per_mm)), 1)
        height = max(int(np.ceil(along * pixels_per_mm)), 1)
        camera = Camera(
            eye=_triple(self.axes[2]),
            up=_triple(self.axes[1]),
            centre=_triple(0.5 * (self.low + self.high) @ self.axes),
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
