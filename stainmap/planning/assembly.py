"""Puts a reading together: from the units of the copy to every vertex of the surface."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import ReadingError
from stainmap.model.crown import READINGS, BodyKind, CrownReading
from stainmap.model.tooth import Role, Unit
from stainmap.planning.body import Body, centres
from stainmap.planning.certainty import (
    connectors_confidence,
    inner_confidence,
    margin_confidence,
    open_margin_confidence,
    read_roles,
    units_confidence,
)
from stainmap.planning.directions import SideGuess, guess_buccal, mesial_from_buccal
from stainmap.planning.fine_margin import refine_margin
from stainmap.planning.landmarks import height_of_top
from stainmap.planning.margin import CAVITY_RATIO, find_rim
from stainmap.planning.row import (
    mesial_along,
    row_directions,
    row_order,
    vote_by_sides,
    vote_by_size,
)
from stainmap.planning.standing import Sight, Standing, Start
from stainmap.planning.table import border_vertices
from stainmap.planning.units_of_bridge import Neck
from stainmap.surface.geodesic import surface_distance
from stainmap.surface.mesh import BoolArray, FloatArray, boundary_loops, loop_length
from stainmap.words import marked, translate

# A solid crown has no wall to measure; this much is assumed behind its outer surface, mm.
ASSUMED_WALL_MM = 1.0
_WHAT_IT_IS = {
    BodyKind.ROOTED_TOOTH: (
        marked(
            "assembly",
            "This looks like a tooth with its roots: cut off the crown at its neck to plan it.",
        )
    ),
    BodyKind.JAW: (
        marked(
            "assembly",
            "This looks like a jaw, or a piece of one with several teeth:"
            " cut off the crown that is meant to plan it.",
        )
    ),
}
# Below this confidence a reading is worth a look by a person, and a warning says so.
_DOUBTFUL = 0.5
# Mesial may lean as far as 75 degrees from across the axis before it is taken for a mistake.
_STEEPEST_MESIAL = 0.966
# Without a tooth number a solid body may be a front tooth, whose fossa leans far to the side.
_UNNAMED_SOLID = 0.45
# This near the margin heights are measured on the surface itself, not carried from the copy, mm.
_NEAR_MARGIN_MM = 1.0
# The least height of what is not the margin, nor the tissue side of a pontic.
_ABOVE_MARGIN = 1e-4


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Row:
    """Mesial of the first unit, how sure, and which unit of the case each part is."""

    mesial: FloatArray | None
    confidence: float
    place: tuple[int, ...]
    said: bool


def find_row(standing: Standing, units: tuple[Unit, ...], said: FloatArray | None) -> Row:
    """Return mesial and the order of the units.

    Raises
    ------
    ReadingError
        If what was said points along the axis.
    """
    if said is not None and abs(float(said @ standing.axis)) > _STEEPEST_MESIAL:
        raise ReadingError(
            translate("assembly", "Mesial cannot point along the occlusal axis."),
            where="mesial direction",
            advice=translate("assembly", "Give a direction to the side, along the row of teeth."),
        )
    if len(standing.landmarks) > 1 and units:
        return _bridge_row(standing, units, said)
    place = tuple(range(len(standing.landmarks)))
    if said is not None:
        return Row(mesial=said, confidence=1.0, place=place, said=True)
    side = _side(standing, 0, units[0]) if units else None
    if side is None:
        return Row(mesial=None, confidence=0.0, place=place, said=False)
    mesial = mesial_from_buccal(side.direction, standing.axis, units[0].tooth)
    return Row(mesial=mesial, confidence=side.confidence, place=place, said=False)


def _side(standing: Standing, part: int, unit: Unit) -> SideGuess | None:
    one = standing.landmarks[part]
    return guess_buccal(
        one.part.mesh,
        one.outer,
        one.table,
        one.fossa_border,
        one.margin_mm,
        standing.axis,
        unit.tooth,
    )


def _bridge_row(standing: Standing, units: tuple[Unit, ...], said: FloatArray | None) -> Row:
    order = row_order(units)
    ahead = row_directions(centres([one.part for one in standing.landmarks]), standing.axis)
    first = units[0].tooth
    if said is not None:
        span = ahead[order.index(0)]
        left = mesial_along(said, first)
        vote = 1.0 if span is None or float(left @ span) >= 0 else -1.0
    else:
        vote = vote_by_size([one.size_mm**2 for one in standing.landmarks], units)
        place = order if vote >= 0 else order[::-1]
        sides = [_side(standing, part, units[index]) for part, index in enumerate(place)]
        vote += vote_by_sides(sides, ahead, standing.axis, upper=first.is_upper)
    place = order if vote >= 0 else order[::-1]
    span = ahead[place.index(0)]
    mesial = said
    if mesial is None and span is not None:
        mesial = mesial_along(span if vote >= 0 else -span, first)
    return Row(
        mesial=mesial,
        confidence=float(min(abs(vote), 1.0)),
        place=tuple(place),
        said=said is not None,
    )


def no_crown(
    body: Body, reason: str, *, kind: BodyKind = BodyKind.NOT_A_CROWN, axis: FloatArray
) -> CrownReading:
    """Return the reading of a body that cannot be read as a crown: its kind, axis and the reason.

    Parameters
    ----------
    body
        The body.
    reason
        A sentence.
    kind
        What it is.
    axis
        (3,) which way its biting side seems to be.
    """
    count = body.whole.vertex_count
    sentences = [_WHAT_IT_IS[kind]] if kind in _WHAT_IT_IS else []
    if reason:
        sentences.append(reason)
    if body.count > 1:
        sentences.append(_several(body.count))
    return CrownReading(
        kind=kind,
        occlusal_axis=_tuple(axis),
        mesial=None,
        outer=np.ones(count, dtype=np.bool_),
        rim=np.zeros(count, dtype=np.bool_),
        unit_index=np.zeros(count, dtype=np.uint8),
        height=np.full(count, np.nan, dtype=np.float32),
        depth_below_crest_mm=np.full(count, np.nan, dtype=np.float32),
        confidence=tuple((name, 0.0) for name in READINGS),
        warnings=tuple(sentences),
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Fields:
    """Fields of the surface, as the reading has them, on the piece (P,)."""

    outer: BoolArray
    rim: BoolArray
    height: FloatArray
    depth_mm: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Assembly:
    """What a reading is put together from.

    Parameters
    ----------
    body, sight, units, necks, rooted, start, standing
        The body and what was found on it.
    unit_of_piece
        (P,) the part between necks each vertex of the piece belongs to, along the span.
    row
        Mesial, and which unit each part is.
    necks_said, roles_said
        Whether a person has shown where the units part, and said which are pontics.
    """

    body: Body
    sight: Sight
    units: tuple[Unit, ...]
    necks: tuple[Neck, ...]
    rooted: bool
    start: Start
    standing: Standing
    unit_of_piece: NDArray[np.uint8]
    row: Row
    necks_said: bool = False
    roles_said: bool = True

    def reading(self) -> CrownReading:
        """Return the reading."""
        body, row, kind = self.body, self.row, self._kind()
        in_parts = [self.units[index] for index in row.place] if self.units else []
        roles, roles_sure, misfit = read_roles(in_parts, self.standing.ratios, said=self.roles_said)
        fields = self._fields([k for k, role in enumerate(roles) if role is Role.PONTIC])
        unit_index = np.array(row.place, dtype=np.uint8)[self.unit_of_piece]
        hollow = any(ratio > CAVITY_RATIO for ratio in self.standing.ratios)
        solid = kind is BodyKind.OPEN_SHEET or not hollow
        said = {
            "occlusal_axis": self.start.said,
            "mesial": row.said,
            "units": self.necks_said,
            "roles": self.roles_said and len(roles) > 1,
        }
        sure = {
            "occlusal_axis": self._axis_confidence(),
            "margin": self._margin_confidence(),
            "inner_surface": self._inner_confidence(),
            "units": 1.0 if self.necks_said else units_confidence(self.necks),
            "roles": roles_sure,
            "connectors": connectors_confidence(self.necks),
            "mesial": row.confidence,
            # Across mesial and the axis, on the side that the quadrant tells.
            "buccal": row.confidence,
        }
        return CrownReading(
            kind=kind,
            occlusal_axis=_tuple(self.standing.axis),
            mesial=None if row.mesial is None else _tuple(row.mesial),
            outer=body.in_whole(fields.outer, False),
            rim=body.in_whole(fields.rim, False),
            unit_index=body.in_whole(unit_index, False),
            height=body.in_whole(fields.height.astype(np.float32), np.nan),
            depth_below_crest_mm=body.in_whole(fields.depth_mm.astype(np.float32), np.nan),
            connectors_mm2=self._connectors(),
            confidence=tuple(sure.items()),
            set_by_user=frozenset(name for name, value in said.items() if value),
            assumed_wall_mm=ASSUMED_WALL_MM if solid else None,
            warnings=(*self._warnings(solid=solid), *([misfit] if misfit else [])),
            roles=tuple(roles[row.place.index(k)] for k in range(len(roles))),
        )

    # ---- fields

    def _fields(self, pontics: list[int]) -> _Fields:
        """Carry the landmarks of the copy's units over to the piece; `pontics` are parts."""
        body, axis = self.body, self.standing.axis
        count = body.copy.vertex_count
        outer = np.ones(count, dtype=np.bool_)
        rim, rise, crest_mm = np.zeros(count), np.zeros(count), np.zeros(count)
        top = np.zeros(count)
        for one, ratio in zip(self.standing.landmarks, self.standing.ratios, strict=True):
            vertices = one.part.vertices
            outer[vertices] = one.outer
            rise[vertices] = np.nan_to_num(one.rise)
            reached = np.isfinite(one.crest_mm)
            usual = float(np.median(one.crest_mm[reached])) if reached.any() else one.size_mm
            crest_mm[vertices] = np.where(reached, one.crest_mm, usual)
            top[vertices] = height_of_top(one, axis)
            if ratio > CAVITY_RATIO:
                ground = self.sight.outlook.openness(-axis, lowest_cosine=0.0, points=vertices)
                rim[vertices] = find_rim(one.part.mesh, one.outer, ground)
        outer_fine = refine_margin(body, outer, self.sight.reliefs.fine.curvature_per_mm)
        pontic = np.isin(self.unit_of_piece, pontics)
        carried = body.thinned.back(np.stack([rise, crest_mm, top, rim], axis=1)).T
        height = self._height(outer_fine, carried[0], carried[1])
        height[pontic & ~outer_fine] = 0.0
        outer_fine = outer_fine | pontic
        depth = np.maximum(carried[2] - body.piece.vertices @ axis, 0.0)
        return _Fields(
            outer=outer_fine,
            rim=(carried[3] > 0.5) & ~outer_fine,
            height=np.where(outer_fine, height, np.nan),
            depth_mm=np.where(outer_fine, depth, np.nan),
        )

    def _height(self, outer: BoolArray, rise: FloatArray, crest_mm: FloatArray) -> FloatArray:
        """Return (P,) the height, measured near the margin and carried from the copy above."""
        piece = self.body.piece
        if self.body.open_border is None:
            margin = border_vertices(piece, outer) & outer
        else:
            margin = np.zeros(piece.vertex_count, dtype=np.bool_)
            margin[self.body.open_border] = True
        height = np.maximum(rise, _ABOVE_MARGIN)
        if not margin.any():
            return height
        from_margin = surface_distance(
            piece, margin, graph=piece.adjacency, within=outer, limit_mm=_NEAR_MARGIN_MM
        )
        near = np.isfinite(from_margin)
        share = from_margin[near] / (from_margin[near] + np.maximum(crest_mm[near], 1e-6))
        blend = from_margin[near] / _NEAR_MARGIN_MM
        height[near] = blend * height[near] + (1.0 - blend) * share
        height[margin] = 0.0
        return height

    def _kind(self) -> BodyKind:
        if self.body.count > 1:
            return BodyKind.SEVERAL_BODIES
        if self.rooted:
            return BodyKind.ROOTED_TOOTH
        if self.body.open_border is not None:
            return BodyKind.OPEN_SHEET
        if self.necks:
            return BodyKind.BRIDGE
        hollow = self.standing.ratios[0] > CAVITY_RATIO
        return BodyKind.CROWN if hollow else BodyKind.SOLID_CROWN

    def _connectors(self) -> tuple[float, ...]:
        """Return the sections in the order of the units in the row."""
        sections = [neck.section_mm2 for neck in self.necks]
        turned = self.units and self.row.place[0] != row_order(self.units)[0]
        return tuple(sections[::-1] if turned else sections)

    # ---- how sure

    def _axis_confidence(self) -> float:
        if self.start.said:
            return 1.0
        crest = any(one.table.any() and not one.front for one in self.standing.landmarks)
        confidence = self.start.confidence * (0.95 if crest else 0.6)
        unnamed = not self.units and not self.start.hollow and self.body.open_border is None
        return min(confidence, _UNNAMED_SOLID) if unnamed else confidence

    def _margin_confidence(self) -> float:
        """Return how sure the margin is where it is least sure."""
        if self.body.open_border is not None:
            piece = self.body.piece
            return open_margin_confidence([loop_length(piece, b) for b in boundary_loops(piece)])
        sharp = self.sight.reliefs.fine.curvature_per_mm
        return min(
            margin_confidence(one.part.mesh, one.outer, sharp[one.part.vertices])
            for one in self.standing.landmarks
        )

    def _inner_confidence(self) -> float:
        return 0.9 if self.body.open_border is not None else inner_confidence(self.standing.ratios)

    def _warnings(self, *, solid: bool) -> tuple[str, ...]:
        said = []
        if self.body.count > 1:
            said.append(_several(self.body.count))
        if self.rooted:
            said.append(_WHAT_IT_IS[BodyKind.ROOTED_TOOTH])
        if self.start.shape_disagrees:
            said.append(
                translate(
                    "assembly", "The cavity opens toward the side that was set as the biting side."
                )
            )
        elif self._axis_confidence() < _DOUBTFUL:
            said.append(
                translate(
                    "assembly",
                    "The occlusal axis is only guessed; check that the biting side is up.",
                )
            )
        if self.body.open_border is not None:
            said.append(
                translate(
                    "assembly",
                    "The surface is open: it has no inner surface, and a wall is assumed.",
                )
            )
        elif solid:
            said.append(
                translate(
                    "assembly", "The body is solid: it has no inner surface, and a wall is assumed."
                )
            )
        if any(not one.table.any() for one in self.standing.landmarks):
            said.append(
                translate(
                    "assembly", "No fossae were found; cusps and fissures are only roughly placed."
                )
            )
        if self.units and self.row.mesial is None:
            number = self.units[0].tooth.number
            said.append(
                translate(
                    "assembly", "The shape does not tell which side of tooth {number} is mesial."
                ).format(number=number)
            )
        elif self.units and self.row.confidence < _DOUBTFUL:
            said.append(translate("assembly", "Which side is mesial is only guessed; check it."))
        return tuple(said)


def _several(count: int) -> str:
    return translate(
        "assembly", "The file holds {count} separate bodies; only the largest is read."
    ).format(count=count)


def _tuple(vector: FloatArray) -> tuple[float, float, float]:
    x, y, z = (float(value) for value in vector)
    return (x, y, z)
