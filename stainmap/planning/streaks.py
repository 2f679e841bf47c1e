"""Tapered strokes that carry a coat from one zone into the next."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.model.crown import CrownReading
from stainmap.model.plan import Streaks
from stainmap.model.zone import Zone
from stainmap.planning.row import row_directions
from stainmap.surface.mesh import TriMesh

# Width of a stroke where it begins; a fine brush (assumed).
STROKE_WIDTH_MM = 0.6


def streak_shares(
    mesh: TriMesh, zones: NDArray[np.uint8], reading: CrownReading, streaks: Streaks
) -> NDArray[np.float32]:
    """Return how fully the streaks cover each vertex, (V,) float32, 0 to 1.

    The strokes begin at the border of their zone, spread evenly over the facial and over the
    lingual side of each unit (over the whole round where mesial is not known), run along the
    surface towards the margin or away from it, and taper to nothing in width and strength.
    """
    height = mesh.vertices @ np.asarray(reading.occlusal_axis)
    share = np.zeros(len(mesh.vertices), np.float32)
    for start in streak_starts(mesh, zones, reading, streaks):
        share = np.maximum(share, _stroke(mesh, reading, streaks, height, start))
    return share


def streak_starts(
    mesh: TriMesh, zones: NDArray[np.uint8], reading: CrownReading, streaks: Streaks
) -> list[int]:
    """Return the vertices where strokes begin: on the zone's border, facing the way they run.

    Empty where the zone has no border that the strokes could run over.
    """
    height = mesh.vertices @ np.asarray(reading.occlusal_axis)
    one, other = mesh.edges.T
    inside = (zones == int(streaks.area)) & reading.outer
    crossing = (inside[one] != inside[other]) & reading.outer[one] & reading.outer[other]
    one, other = one[crossing], other[crossing]
    first = np.where(inside[one], one, other)
    beyond = np.where(inside[one], other, one)
    running = (height[first] - height[beyond]) * streaks.direction > 0
    if streaks.direction > 0:
        # Down into a fissure is not towards the margin.
        running &= zones[beyond] != int(Zone.FISSURE)
    border = np.unique(first[running])
    starts: list[int] = []
    units = np.unique(reading.unit_index[reading.outer])
    centres = np.array(
        [mesh.vertices[reading.outer & (reading.unit_index == u)].mean(axis=0) for u in units]
    )
    for unit, centre, along in zip(units, centres, _along_row(centres, reading), strict=True):
        own = border[reading.unit_index[border] == unit]
        starts += _spread(mesh.vertices[own] - centre, own, reading, streaks.count, along)
    return starts


def _spread(
    around: NDArray[np.float64],
    border: NDArray[np.intp],
    reading: CrownReading,
    count: int,
    along: NDArray[np.float64] | None,
) -> list[int]:
    """Return the places of one unit's border (k,), at offsets (k, 3), that lie most evenly."""
    if len(border) == 0:
        return []
    axis = np.asarray(reading.occlusal_axis)
    first = _any_across(axis) if along is None else along
    first = first - (first @ axis) * axis
    first /= np.linalg.norm(first)
    angle = np.arctan2(around @ np.cross(axis, first), around @ first)
    if along is None:
        wanted = np.linspace(-np.pi, np.pi, count, endpoint=False)
    else:
        side = np.linspace(np.radians(50), np.radians(130), count)
        wanted = np.concatenate([side, -side])
    turned = np.abs(np.angle(np.exp(1j * (angle[None, :] - wanted[:, None]))))
    return [int(border[index]) for index in np.unique(turned.argmin(axis=1))]


def _along_row(
    centres: NDArray[np.float64], reading: CrownReading
) -> list[NDArray[np.float64] | None]:
    """Return the mesiodistal direction at each unit (N, 3): that of the row in a bridge.

    Which end is mesial does not matter, as strokes are spread alike towards both.
    """
    if len(centres) == 1:
        return [None if reading.mesial is None else np.asarray(reading.mesial, dtype=np.float64)]
    span = np.linalg.svd(centres - centres.mean(axis=0))[2][0]
    order = np.argsort(centres @ span)
    ahead = row_directions(centres[order], np.asarray(reading.occlusal_axis))
    found: list[NDArray[np.float64] | None] = [None] * len(centres)
    for place, direction in zip(order, ahead, strict=True):
        found[int(place)] = direction
    return found


def _any_across(axis: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return some direction across the axis."""
    least = np.eye(3)[np.abs(axis).argmin()]
    return np.cross(axis, least)


def _stroke(
    mesh: TriMesh,
    reading: CrownReading,
    streaks: Streaks,
    height: NDArray[np.float64],
    start: int,
) -> NDArray[np.float32]:
    """Return one tapered stroke from `start`, as a share per vertex."""
    axis = np.asarray(reading.occlusal_axis)
    normal = mesh.vertex_normals[start]
    along = -streaks.direction * axis
    along = along - (along @ normal) * normal
    length = np.linalg.norm(along)
    if length < 1e-6:
        return np.zeros(len(height), np.float32)
    along /= length
    across = np.cross(normal, along)
    offset = mesh.vertices - mesh.vertices[start]
    run = offset @ along / streaks.length_mm
    half_width = 0.5 * STROKE_WIDTH_MM * np.clip(1.0 - run, 0.0, 1.0)
    aside = np.abs(offset @ across) / np.maximum(half_width, 1e-6)
    near = np.abs(offset @ normal) < 0.5 * streaks.length_mm
    facing = mesh.vertex_normals @ normal > 0.2
    inside = (run >= 0.0) & (run < 1.0) & (aside < 1.0) & near & facing & reading.outer
    return np.where(inside, (1.0 - run) * (1.0 - aside**2), 0.0).astype(np.float32)
