"""Reads a crown or bridge from its shape: what it is, which way it stands, where it ends."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.errors import ReadingError
from stainmap.model.crown import BodyKind, CrownReading
from stainmap.model.tooth import Role, Unit
from stainmap.planning.body import Body, centres, find_body
from stainmap.planning.body_kind import has_roots, why_no_crown
from stainmap.planning.directions import SideGuess, guess_buccal, mesial_from_buccal
from stainmap.planning.landmarks import Landmarks, as_pontic, depth_below_crest
from stainmap.planning.margin import CAVITY_RATIO, find_rim
from stainmap.planning.progress import Progress, Steps
from stainmap.planning.row import (
    mesial_along,
    row_directions,
    row_order,
    vote_by_sides,
    vote_by_size,
)
from stainmap.planning.standing import Standing, find_standing, stand
from stainmap.planning.units_of_bridge import (
    LOOSE_NECK_SHARE,
    Neck,
    find_necks,
    label_units,
)
from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import FloatArray, TriMesh

# A solid crown has no wall to measure; this much is assumed behind its outer surface, mm.
ASSUMED_WALL_MM = 1.0
# Below this confidence a reading is worth a look by a person, and a warning says so.
_DOUBTFUL = 0.5
# Mesial may lean as far as 75 degrees from across the axis before it is taken for a mistake.
_STEEPEST_MESIAL = 0.966
# Without a tooth number a solid body may be a front tooth, whose fossa leans far to the side.
_UNNAMED_SOLID = 0.6


def read_crown(
    mesh: TriMesh,
    operator: SurfaceOperator,
    units: tuple[Unit, ...],
    *,
    occlusal_axis: ArrayLike | None = None,
    mesial: ArrayLike | None = None,
    units_as_given: bool = False,
    progress: Progress | None = None,
) -> CrownReading:
    """Read a crown or bridge from its shape.

    Parameters
    ----------
    mesh
        The surface in sintered mm, refined or not.
    operator
        Its operator.
    units
        Teeth and roles. Empty to read the shape alone: then mesial stays open.
    occlusal_axis
        (3,) the direction of the biting side as set by a person, any length; None to read it.
    mesial
        (3,) mesial as set by a person; on a bridge, of the first unit. None to read it.
    units_as_given
        Whether the number of units is taken from `units` even where the shape shows another.
    progress
        Hears a share and a phrase; may raise CancelledError.

    Returns
    -------
    reading
        What could not be read is left open with a sentence in `warnings`.

    Raises
    ------
    ReadingError
        If a person must say something first: the axis of a solid front tooth, or teeth that do
        not fit the number of units found. Or if what was said cannot be.
    """
    steps = Steps(progress)
    said_axis = _direction(occlusal_axis, "occlusal axis")
    said_mesial = _direction(mesial, "mesial direction")
    if not mesh.face_count:
        raise ReadingError("The mesh has no faces.", advice="Choose another file.")
    if operator.mesh is not mesh:
        raise ValueError("the operator belongs to another mesh")
    body = find_body(operator, steps.part(0.0, 0.4))
    necks = _necks(body, units, steps.part(0.4, 0.55), as_given=units_as_given)
    reason = why_no_crown(
        body.mesh,
        body.frame,
        body.reliefs.wide.at(body.vertices),
        bridge=bool(necks) or units_as_given,
    )
    rooted = not necks and has_roots(body.mesh, body.frame)
    if reason is not None and not rooted:
        return _no_crown(body, reason)
    standing = find_standing(body, units, said_axis)
    chain = label_units(mesh, necks)
    try:
        landmarks, axis, ratios = stand(body, chain, units, standing, steps.part(0.55, 0.9))
    except ReadingError as error:
        if said_axis is not None:
            raise
        return _no_crown(body, error.message)
    steps.say(0.9, "finding the directions")
    reader = _Reader(
        body=body,
        units=units,
        necks=necks,
        chain=chain,
        rooted=rooted,
        landmarks=landmarks,
        axis=axis,
        ratios=ratios,
        standing=standing,
        said_mesial=said_mesial,
    )
    return reader.read()


def _direction(said: ArrayLike | None, name: str) -> FloatArray | None:
    """Return what a person said as a unit vector."""
    if said is None:
        return None
    vector = np.asarray(said, dtype=np.float64)
    if vector.shape != (3,) or not np.isfinite(vector).all() or not np.linalg.norm(vector) > 0:
        raise ReadingError(
            f"{np.array2string(vector)} is no direction.",
            where=name,
            advice="Give three numbers that are not all zero.",
        )
    return np.asarray(vector / np.linalg.norm(vector))


def _necks(
    body: Body, units: tuple[Unit, ...], steps: Steps, *, as_given: bool
) -> tuple[Neck, ...]:
    """Return the necks; as many as the units need, if any are given."""
    necks = find_necks(body.mesh, body.frame, steps)
    wanted = len(units) - 1
    if not units or len(necks) == wanted:
        return necks
    if len(necks) < wanted:
        necks = find_necks(body.mesh, body.frame, steps, most_share=LOOSE_NECK_SHARE)
    elif not as_given:
        raise ReadingError(
            f"The shape has {len(necks) + 1} units, and {len(units)} "
            f"{'tooth is' if len(units) == 1 else 'teeth are'} named.",
            where="units",
            advice="Name every tooth of the bridge.",
        )
    if len(necks) < wanted:
        raise ReadingError(
            f"{len(units)} teeth are named, and the shape shows {len(necks) + 1} "
            f"{'unit' if not necks else 'units'}.",
            where="units",
            advice="Name only the teeth that are in this file.",
        )
    strongest = sorted(necks, key=lambda neck: neck.share)[:wanted]
    return tuple(neck for neck in necks if neck in strongest)


def _no_crown(body: Body, reason: str) -> CrownReading:
    """Return the reading of a body that is no crown: nothing but its kind and the reason."""
    count = body.whole.vertex_count
    kind = BodyKind.NOT_A_CROWN
    sentences = [reason]
    if body.count > 1:
        sentences.append(_several(body.count))
    return CrownReading(
        kind=kind,
        occlusal_axis=_tuple(body.frame.axes[:, 2]),
        mesial=None,
        outer=np.ones(count, dtype=np.bool_),
        rim=np.zeros(count, dtype=np.bool_),
        unit_index=np.zeros(count, dtype=np.uint8),
        height=np.full(count, np.nan, dtype=np.float32),
        depth_below_crest_mm=np.full(count, np.nan, dtype=np.float32),
        confidence=(
            ("occlusal_axis", 0.0),
            ("inner_surface", 0.0),
            ("units", 0.0),
            ("mesial", 0.0),
        ),
        warnings=tuple(sentences),
    )


def _several(count: int) -> str:
    return f"The file holds {count} separate bodies; only the largest is read."


def _tuple(vector: FloatArray) -> tuple[float, float, float]:
    x, y, z = (float(value) for value in vector)
    return (x, y, z)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Reader:
    """Puts the reading together once the units have their landmarks."""

    body: Body
    units: tuple[Unit, ...]
    necks: tuple[Neck, ...]
    chain: NDArray[np.uint8]
    rooted: bool
    landmarks: list[Landmarks]
    axis: FloatArray
    ratios: list[float]
    standing: Standing
    said_mesial: FloatArray | None

    def read(self) -> CrownReading:
        """Return the reading."""
        row = self._row()
        kind = self._kind()
        hollow = [ratio > CAVITY_RATIO for ratio in self.ratios]
        count = self.body.whole.vertex_count
        outer = self.body.inside.copy()
        rim = np.zeros(count, dtype=np.bool_)
        unit_index = np.array(row.place, dtype=np.uint8)[self.chain]
        height = np.full(count, np.nan, dtype=np.float32)
        depth = np.full(count, np.nan, dtype=np.float32)
        for found, index, cavity in zip(self.landmarks, row.place, hollow, strict=True):
            one, vertices = found, found.part.vertices
            unit = self.units[index] if self.units else None
            if unit is not None and unit.role is Role.PONTIC:
                one = as_pontic(one)
            elif cavity:
                ground = self.body.outlook.openness(-self.axis, lowest_cosine=0.0, points=vertices)
                rim[vertices] = find_rim(one.part.mesh, one.outer, ground)
            outer[vertices] = one.outer
            height[vertices] = one.rise
            depth[vertices] = depth_below_crest(one)
        solid = kind is BodyKind.OPEN_SHEET or not any(hollow)
        return CrownReading(
            kind=kind,
            occlusal_axis=_tuple(self.axis),
            mesial=None if row.mesial is None else _tuple(row.mesial),
            outer=outer,
            rim=rim,
            unit_index=unit_index,
            height=height,
            depth_below_crest_mm=depth,
            connectors_mm2=self._connectors(row),
            confidence=(
                ("occlusal_axis", self._axis_confidence()),
                ("inner_surface", self._inner_confidence()),
                ("units", _units_confidence(self.necks)),
                ("mesial", row.confidence),
            ),
            set_by_user=self._set_by_user(),
            assumed_wall_mm=ASSUMED_WALL_MM if solid else None,
            warnings=self._warnings(row, solid=solid),
        )

    def _kind(self) -> BodyKind:
        if self.body.count > 1:
            return BodyKind.SEVERAL_BODIES
        if self.rooted:
            return BodyKind.ROOTED_TOOTH
        if self.body.open_border is not None:
            return BodyKind.OPEN_SHEET
        if self.necks:
            return BodyKind.BRIDGE
        return BodyKind.CROWN if self.ratios[0] > CAVITY_RATIO else BodyKind.SOLID_CROWN

    def _set_by_user(self) -> frozenset[str]:
        said = {"occlusal_axis": self.standing.said, "mesial": self.said_mesial is not None}
        return frozenset(name for name, value in said.items() if value)

    # ---- directions

    def _row(self) -> _Row:
        """Return mesial, and which unit of the case each part is."""
        if len(self.landmarks) > 1 and self.units:
            return self._bridge_row()
        place = tuple(range(len(self.landmarks)))
        if self.said_mesial is not None:
            if abs(float(self.said_mesial @ self.axis)) > _STEEPEST_MESIAL:
                raise ReadingError(
                    "Mesial cannot point along the occlusal axis.",
                    where="mesial direction",
                    advice="Give a direction to the side, toward the front tooth's neighbour.",
                )
            return _Row(mesial=self.said_mesial, confidence=1.0, place=place)
        side = self._side(0, 0) if self.units else None
        if side is None:
            return _Row(mesial=None, confidence=0.0, place=place)
        mesial = mesial_from_buccal(side.direction, self.axis, self.units[0].tooth)
        return _Row(mesial=mesial, confidence=side.confidence, place=place)

    def _side(self, part: int, unit: int) -> SideGuess | None:
        one = self.landmarks[part]
        tooth = self.units[unit].tooth
        return guess_buccal(
            one.part.mesh,
            one.outer,
            one.table,
            one.fossa_border,
            one.margin_mm,
            self.axis,
            tooth,
        )

    def _bridge_row(self) -> _Row:
        order = row_order(self.units)
        ahead = row_directions(centres([one.part for one in self.landmarks]), self.axis)
        first = self.units[0].tooth
        if self.said_mesial is not None:
            span = ahead[order.index(0)]
            left = mesial_along(self.said_mesial, first)
            vote = 1.0 if span is None or float(left @ span) >= 0 else -1.0
            # The same unit is at the other end if the span runs the other way.
            if span is not None and vote < 0:
                span = ahead[len(order) - 1 - order.index(0)]
        else:
            vote = vote_by_size([one.size_mm**2 for one in self.landmarks], self.units)
            place = order if vote >= 0 else order[::-1]
            sides = [self._side(part, unit) for part, unit in enumerate(place)]
            vote += vote_by_sides(sides, ahead, self.axis, upper=first.is_upper)
        place = order if vote >= 0 else order[::-1]
        span = ahead[place.index(0)]
        mesial = self.said_mesial
        if mesial is None and span is not None:
            mesial = mesial_along(span if vote >= 0 else -span, first)
        return _Row(mesial=mesial, confidence=float(min(abs(vote), 1.0)), place=tuple(place))

    def _connectors(self, row: _Row) -> tuple[float, ...]:
        """Return the sections in the order of the units in the row."""
        sections = [neck.section_mm2 for neck in self.necks]
        turned = self.units and row.place[0] != row_order(self.units)[0]
        return tuple(sections[::-1] if turned else sections)

    # ---- how sure

    def _axis_confidence(self) -> float:
        if self.standing.said:
            return 1.0
        crest = any(one.table.any() and not one.front for one in self.landmarks)
        confidence = self.standing.confidence * (0.95 if crest else 0.6)
        unnamed = not self.units and not self.standing.hollow and self.body.open_border is None
        return min(confidence, _UNNAMED_SOLID) if unnamed else confidence

    def _inner_confidence(self) -> float:
        if self.body.open_border is not None:
            return 0.9
        # The farther from the bound between a flat base and a cavity, the surer.
        apart = [abs(float(np.log(ratio / CAVITY_RATIO))) for ratio in self.ratios if ratio > 0]
        return float(np.clip(0.4 + 1.2 * min(apart, default=0.0), 0.0, 0.95))

    def _warnings(self, row: _Row, *, solid: bool) -> tuple[str, ...]:
        said = []
        if self.body.count > 1:
            said.append(_several(self.body.count))
        if self.rooted:
            said.append("This looks like a tooth with its roots; cut them off below the margin.")
        if self.standing.shape_disagrees:
            said.append("The cavity opens toward the side that was set as the biting side.")
        elif self._axis_confidence() < _DOUBTFUL:
            said.append("The occlusal axis is only guessed; check that the biting side is up.")
        if self.body.open_border is not None:
            said.append("The surface is open: it has no inner surface, and a wall is assumed.")
        elif solid:
            said.append("The body is solid: it has no inner surface, and a wall is assumed.")
        if any(not one.table.any() for one in self.landmarks):
            said.append("No fossae were found; cusps and fissures are only roughly placed.")
        if self.units and row.mesial is None:
            number = self.units[0].tooth.number
            said.append(f"The shape does not tell which side of tooth {number} is mesial.")
        elif self.units and row.confidence < _DOUBTFUL:
            said.append("Which side is mesial is only guessed; check it.")
        return tuple(said)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Row:
    """Mesial of the first unit, how sure, and the unit of the case each part is."""

    mesial: FloatArray | None
    confidence: float
    place: tuple[int, ...]


def _units_confidence(necks: tuple[Neck, ...]) -> float:
    if not necks:
        return 0.95
    return float(np.clip((1.0 - max(neck.share for neck in necks)) / 0.7, 0.0, 1.0))
