"""A crown cut by a plane: its wall, and how deep the stain goes into it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.app.prediction import Prediction
from stainmap.paper.views import CrownDirections
from stainmap.predict.grinding import ground_depth_mm
from stainmap.surface.cut_lines import cut_lines
from stainmap.surface.mesh import BoolArray, FloatArray
from stainmap.words import translate, value_word

# Less is the feathering of a border, not a coat.
_LEAST_COATS: Final = 0.05
# Walls are told from this share of the height on: below it they end in the margin.
_ABOVE_MARGIN: Final = 0.12


class SectionWay(StrEnum):
    """How the plane stands."""

    ACROSS = "buccal to lingual"
    ALONG = "mesial to distal"
    LEVEL = "level"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Section:
    """What a plane shows of a crown; n pieces of its outlines, flat places in mm.

    Parameters
    ----------
    ends
        (n, 2, 2) both ends of each piece: to the right, and up.
    outlines
        Places (m, 2) of each outline in order.
    outer
        (n,) True where it is the outer surface.
    wall_mm, stained_mm, coats
        (n, 2) at the ends: the wall as it is judged, how deep the stain goes, and all coats.
    inward
        (n, 2, 2) unit vectors into the ceramic.
    lines, normals
        (n, 2, 3) the pieces on the crown, and (n, 3) which way the surface looks there.
    thinnest
        Index of the piece with the thinnest wall above the margin; None without one.
    minimum_mm
        What the block allows.
    words
        What lies to the left and right, and at the top.
    """

    ends: FloatArray
    outlines: tuple[FloatArray, ...]
    outer: BoolArray
    wall_mm: FloatArray
    stained_mm: FloatArray
    coats: FloatArray
    inward: FloatArray
    lines: FloatArray
    normals: FloatArray
    thinnest: int | None
    minimum_mm: float
    words: tuple[str, str, str]

    def nearest(self, place: FloatArray) -> int | None:
        """Return the piece nearest to a flat place (2,), or None without pieces."""
        if not len(self.ends):
            return None
        away = self.ends.mean(axis=1) - place
        return int(np.einsum("ni,ni->n", away, away).argmin())


def section_range(prediction: Prediction, way: SectionWay) -> tuple[float, float]:
    """Return between which offsets, mm, planes of a way meet the crown."""
    normal = _axes(prediction, way)[2]
    along = prediction.case.surface.mesh.vertices @ normal
    return float(along.min()), float(along.max())


def offset_of(prediction: Prediction, way: SectionWay, point: FloatArray) -> float:
    """Return the offset of the plane of a way through a point (3,), mm."""
    return float(point @ _axes(prediction, way)[2])


def section_at(prediction: Prediction, way: SectionWay, offset_mm: float) -> Section:
    """Return what the plane at an offset shows of a predicted crown."""
    case, mesh = prediction.case, prediction.case.surface.mesh
    right, up, normal = axes = _axes(prediction, way)
    cut = cut_lines(mesh, normal, offset_mm)
    flat = cut.ends @ axes[:2].T
    outer = case.reading.outer
    is_outer = outer[mesh.faces[cut.faces]].sum(axis=1) >= 2
    stained = stained_depth_mm(prediction)
    looks = cut.at(mesh.vertex_normals)
    inward = -(looks @ axes[:2].T)
    inward /= np.maximum(np.linalg.norm(inward, axis=2, keepdims=True), 1e-9)
    wall = cut.at(prediction.ground.shape.wall_mm)
    high = cut.at(np.nan_to_num(case.reading.height, nan=0.0)).mean(axis=1)
    judged = is_outer & (high > _ABOVE_MARGIN)
    thin = np.where(judged, wall.mean(axis=1), np.inf)
    outlines = [np.concatenate([flat[one, 0], flat[one[-1:], 1]]) for one in cut.chains()]
    return Section(
        ends=flat,
        outlines=tuple(outlines),
        outer=is_outer,
        wall_mm=wall,
        stained_mm=cut.at(stained),
        coats=cut.at(np.asarray(prediction.coats.sum(axis=0), dtype=np.float64)),
        inward=inward,
        lines=cut.ends,
        normals=looks.mean(axis=1),
        thinnest=int(thin.argmin()) if judged.any() else None,
        minimum_mm=case.materials.block(case.plan.block).minimum_wall_mm,
        words=_words(prediction, right, up),
    )


def stained_depth_mm(prediction: Prediction) -> NDArray[np.float32]:
    """Return how deep the stain goes at every vertex (V,), mm; 0 where there are no coats.

    The depth that predictions work with: that of the process for outside and inside, less where
    the wall is thinner than both together, less what grinding takes away.
    """
    case, shape = prediction.case, prediction.shape
    process = case.process
    both = process.outer_depth_mm + process.inner_depth_mm
    shrink = np.minimum(1.0, shape.wall_mm / both)
    depth = shrink * np.where(case.reading.outer, process.outer_depth_mm, process.inner_depth_mm)
    ground = ground_depth_mm(case)
    if ground is not None:
        depth = np.maximum(depth - ground, 0.0)
    coats = prediction.coats.sum(axis=0)
    return np.asarray(np.where(coats > _LEAST_COATS, depth, 0.0), dtype=np.float32)


def _axes(prediction: Prediction, way: SectionWay) -> FloatArray:
    """Return (3, 3) rows right, up and normal of the planes of a way."""
    case = prediction.case
    directions = CrownDirections.of(case.reading, case.units[0].tooth)
    right, up = {
        SectionWay.ACROSS: (directions.buccal, directions.occlusal),
        SectionWay.ALONG: (directions.mesial, directions.occlusal),
        SectionWay.LEVEL: (directions.mesial, directions.buccal),
    }[way]
    return np.stack([right, up, np.cross(right, up)])


def _words(prediction: Prediction, right: FloatArray, up: FloatArray) -> tuple[str, str, str]:
    case = prediction.case
    tooth = case.units[0].tooth
    directions = CrownDirections.of(case.reading, tooth)
    named = [
        (directions.occlusal, value_word(tooth.occlusal_word)),
        (
            directions.mesial,
            value_word("mesial") if directions.sides_known else translate("section", "side 3"),
        ),
        (
            -directions.mesial,
            value_word("distal") if directions.sides_known else translate("section", "side 4"),
        ),
        (
            directions.buccal,
            value_word(tooth.buccal_word)
            if directions.sides_known
            else translate("section", "side 1"),
        ),
        (
            -directions.buccal,
            value_word(tooth.lingual_word)
            if directions.sides_known
            else translate("section", "side 2"),
        ),
    ]

    def word(direction: FloatArray) -> str:
        return max(named, key=lambda one: float(one[0] @ direction))[1]

    return word(-right), word(right), word(up)
