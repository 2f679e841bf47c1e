"""How a body stands: its occlusal axis, and with it the margin and landmarks of each unit."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.errors import ReadingError
from stainmap.model.tooth import Unit
from stainmap.planning.axis import guess_axis, root_axis
from stainmap.planning.body import Body, unit_parts
from stainmap.planning.landmarks import (
    Crest,
    Landmarks,
    UnitPart,
    find_crest,
    find_landmarks,
)
from stainmap.planning.margin import Parting, part_at_margin, part_by_facing
from stainmap.planning.progress import Steps
from stainmap.planning.relief import Reliefs
from stainmap.surface.geodesic import surface_distance
from stainmap.surface.mesh import BoolArray, FloatArray, TriMesh
from stainmap.surface.openness import Openness, Outlook, Visibility, directions_around
from stainmap.words import translate

# Directions looked along, spread over the sphere: each stands for a cone of 12 degrees.
_DIRECTIONS = 96
# Directions just below the horizon count too: bulging walls see along them.
_HORIZON = -0.05
# The axis is replaced by the normal of the crest plane until it stays within this, degrees.
_SETTLED_DEG = 1.0
_ROUNDS = 3
# This far from where a unit was cut off its neighbour its surface is the connector's, mm.
_CONNECTOR_MM = 1.2
# This far around it lie the embrasures.
_EMBRASURE_MM = 2.5


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Sight:
    """What is computed once on the copy of a body: reliefs, and which directions it sees."""

    reliefs: Reliefs
    outlook: Outlook


def look_around(body: Body, steps: Steps) -> Outlook:
    """Return which directions of the whole sphere each vertex of the copy sees."""
    copy, axes = body.copy, body.frame.axes
    return Visibility(copy, frame=body.frame).outlook(
        copy.vertices,
        copy.vertex_normals,
        directions_around(axes[:, 0], axes[:, 1], _DIRECTIONS),
        progress=steps.say,
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Start:
    """An occlusal axis to start from.

    Parameters
    ----------
    axis
        (3,) unit vector toward the biting side.
    confidence
        0 to 1.
    said
        Whether a person gave it: then it stays as it is.
    hollow
        Whether the body has a cavity.
    shape_disagrees
        Whether the cavity's axis points more than 60 degrees elsewhere than what was said.
    """

    axis: FloatArray
    confidence: float
    said: bool
    hollow: bool
    shape_disagrees: bool = False


def find_start(
    body: Body,
    sight: Sight,
    chain: NDArray[np.uint8],
    units: tuple[Unit, ...],
    said: FloatArray | None,
    *,
    rooted: bool = False,
) -> Start:
    """Return the axis to start from: as said, from an open margin, a cavity, or the fossae.

    Of a tooth with roots it is the long axis.

    Parameters
    ----------
    body, sight
        The body and what its copy sees.
    chain
        (W,) the parts between necks.
    units
        The units of the case.
    said
        (3,) what a person said, or None.
    rooted
        Whether it is a tooth with its roots.

    Raises
    ------
    ReadingError
        If all teeth are front teeth and the body has neither cavity nor open margin: the palatal
        fossa leans so far that it was 36 degrees off.
    """
    if said is None and body.open_border is not None:
        axis = _from_border(body, body.piece.vertices[body.open_border])
        return Start(axis=axis, confidence=0.6, said=False, hollow=False)
    if said is None and rooted:
        return Start(
            axis=root_axis(body.piece, body.frame), confidence=0.7, said=False, hollow=False
        )
    guess = guess_axis(
        body.copy,
        sight.outlook.openness(),
        body.frame,
        sight.reliefs,
        counted=~_connectors(body.copy, chain, _EMBRASURE_MM),
    )
    if said is not None:
        disagrees = guess.hollow and float(guess.axis @ said) < 0.5
        return Start(
            axis=said, confidence=1.0, said=True, hollow=guess.hollow, shape_disagrees=disagrees
        )
    if not guess.hollow and units and all(unit.tooth.is_front for unit in units):
        raise ReadingError(
            translate(
                "standing", "A front tooth without a cavity does not show which way it bites."
            ),
            where="occlusal axis",
            advice=translate(
                "standing",
                "Turn its biting edge up and set that as the occlusal axis,"
                " or give the direction toward it as three numbers.",
            ),
        )
    return Start(axis=guess.axis, confidence=guess.confidence, said=False, hollow=guess.hollow)


def _from_border(body: Body, points: FloatArray) -> FloatArray:
    """Return the normal of the plane through an open margin, toward the body."""
    arm = points - points.mean(axis=0)
    normal = np.linalg.eigh(arm.T @ arm)[1][:, 0]
    toward = float((body.frame.centre - points.mean(axis=0)) @ normal)
    return np.asarray(normal * (1.0 if toward >= 0 else -1.0))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Standing:
    """How a body stands.

    Parameters
    ----------
    axis
        (3,) the settled occlusal axis.
    landmarks
        Landmarks of each unit of the copy, in order along the span.
    ratios
        How hollow each unit is: inner area over the inner vector area.
    """

    axis: FloatArray
    landmarks: list[Landmarks]
    ratios: list[float]


def find_standing(
    body: Body,
    sight: Sight,
    chain: NDArray[np.uint8],
    units: tuple[Unit, ...],
    start: Start,
    steps: Steps,
) -> Standing:
    """Return how the body stands.

    The axis gives margin and table; the crest around the table gives a better axis. Two rounds
    settle it from a start 15 degrees off.

    Parameters
    ----------
    body, sight
        The body and what its copy sees.
    chain
        (W,) the parts between necks, in order along the span.
    units
        The units of the case, of which it matters here only whether all are front teeth or none.
    start
        The axis to start from.
    steps
        Hears of the progress.

    Raises
    ------
    ReadingError
        If outer and inner surface cannot be told apart on a single unit.
    """
    kinds = {unit.tooth.is_front for unit in units}
    front = kinds.pop() if len(kinds) == 1 else None
    parts = unit_parts(body.copy, chain, ())
    connectors = _connectors(body.copy, chain, _CONNECTOR_MM)
    axis = start.axis
    for number in range(_ROUNDS):
        stage = steps.part(0.8 * number / _ROUNDS, 0.8 * (number + 1) / _ROUNDS)
        partings = _part(body, sight, parts, connectors, axis, stage)
        crests = []
        for k, (part, parting) in enumerate(zip(parts, partings, strict=True)):
            stage.say(0.6 + 0.4 * k / len(parts), translate("standing", "finding the crest"))
            reliefs = sight.reliefs.at(part.vertices)
            crests.append(find_crest(part, parting.outer, axis, reliefs, front=front))
        better = axis if start.said else _mean_up(crests, axis)
        if number == _ROUNDS - 1 or better @ axis > np.cos(np.radians(_SETTLED_DEG)):
            break
        axis = better
    margin = body.open_margin()
    landmarks = []
    for k, (part, parting, crest) in enumerate(zip(parts, partings, crests, strict=True)):
        steps.say(0.8 + 0.2 * k / len(parts), translate("standing", "measuring heights"))
        open_margin = None if margin is None else margin[part.vertices]
        landmarks.append(find_landmarks(part, parting.outer, axis, crest, open_margin=open_margin))
    ratios = [parting.cavity_ratio for parting in partings]
    return Standing(axis=axis, landmarks=landmarks, ratios=ratios)


def _mean_up(crests: list[Crest], axis: FloatArray) -> FloatArray:
    """Return the mean normal of the crest planes; the axis where only front teeth are."""
    total = np.zeros(3)
    for crest in crests:
        if not crest.front:
            total += crest.size_mm**2 * crest.up
    length = float(np.linalg.norm(total))
    return np.asarray(total / length) if length > 0 else axis


def _part(
    body: Body,
    sight: Sight,
    parts: list[UnitPart],
    connectors: BoolArray,
    axis: FloatArray,
    steps: Steps,
) -> list[Parting]:
    if body.open_border is not None:
        everywhere = [np.ones(part.mesh.vertex_count, dtype=np.bool_) for part in parts]
        return [Parting(outer=outer, cavity_ratio=0.0) for outer in everywhere]
    steps.say(0.0, translate("standing", "finding the margin"))
    sky = sight.outlook.openness(axis, lowest_cosine=_HORIZON)
    partings = []
    for k, part in enumerate(parts):
        steps.say(0.2 + 0.4 * k / len(parts), translate("standing", "finding the margin"))
        fine = sight.reliefs.fine.at(part.vertices)
        seen = Openness(
            seen=sky.seen[part.vertices],
            possible=sky.possible[part.vertices],
            bent=sky.bent[part.vertices],
        )
        connector = connectors[part.vertices]
        try:
            partings.append(part_at_margin(part.mesh, fine, seen, axis, connector=connector))
        except ReadingError:
            if len(parts) == 1:
                raise
            partings.append(part_by_facing(part.mesh, fine, axis))
    return partings


def _connectors(mesh: TriMesh, chain: NDArray[np.uint8], reach_mm: float) -> BoolArray:
    """Return (W,) what lies within reach of where units part, along the surface."""
    i, j = mesh.edges.T
    parting = mesh.edges[chain[i] != chain[j]]
    if not len(parting):
        return np.zeros(mesh.vertex_count, dtype=np.bool_)
    distance = surface_distance(mesh, np.unique(parting), graph=mesh.adjacency, limit_mm=reach_mm)
    return np.isfinite(distance)
