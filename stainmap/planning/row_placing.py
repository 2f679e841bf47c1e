"""Teeth stood beside a crown or bridge as in the arch, in the crown's own coordinates.

What stands beside what follows from the numbers; how a neighbour is turned, from the textbook arch
(`arch`); where it stands, from the shapes: it is pushed up to what it stands beside until they
nearly touch, its edge or tips as high as those of its neighbour.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.model.tooth import Tooth, Unit
from stainmap.planning.arch import arch_stand, edge_below_row_mm, textbook_size
from stainmap.planning.row import row_order, row_place
from stainmap.surface.mesh import FloatArray, TriMesh

CONTACT_GAP_MM: Final = 0.05
"""What is left between neighbours where they nearly touch; assumed, as floss passes."""

_LAST_POSITION: Final = 7  # third molars are left out of the row: they often are missing
_CELL_MM: Final = 0.3
_SIZES: Final = (0.85, 1.2)
# Edge or tips of a tooth on the facial side: the middle of its width, in strips, without the
# lingual cusps.
_STRIPS, _MIDDLE, _LINGUAL = 12, 0.35, -0.25


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """A tooth of the row that is no unit of the case.

    Parameters
    ----------
    tooth
        Which.
    unit
        Index of the unit at whose end of the restoration it stands.
    away
        1 next to that unit, 2 the one after.
    """

    tooth: Tooth
    unit: int
    away: int


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ToothBody:
    """The outer surface of one tooth, in its own coordinates.

    Parameters
    ----------
    tooth
        Which tooth it stands for.
    mesh
        V vertices, mm.
    rows
        (3, 3) unit vectors mesial, buccal, occlusal; right-angled.
    """

    tooth: Tooth
    mesh: TriMesh
    rows: FloatArray


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Placed:
    """How a body stands in the row: ``((points - origin) @ rows.T * scale) @ axes + shift``.

    Parameters
    ----------
    origin
        (3,) a place of the body in its own coordinates.
    rows, axes
        (3, 3) mesial, buccal, occlusal: of the body, and as it stands.
    scale
        (3,) sizes along them.
    shift
        (3,) where `origin` comes to stand, mm.
    """

    origin: FloatArray
    rows: FloatArray
    axes: FloatArray
    scale: FloatArray
    shift: FloatArray

    def points(self, points: NDArray[np.float64]) -> FloatArray:
        """Return points (N, 3) where they stand in the row."""
        local = (points - self.origin) @ self.rows.T * self.scale
        return np.asarray(local @ self.axes + self.shift)

    def normals(self, normals: NDArray[np.floating]) -> NDArray[np.float32]:
        """Return unit normals (N, 3) as they stand in the row."""
        local = np.asarray(normals) @ self.rows.T / self.scale @ self.axes
        length = np.maximum(np.linalg.norm(local, axis=1), 1e-12)
        return np.asarray(local / length[:, None], dtype=np.float32)


def teeth_beside(units: Sequence[Unit]) -> tuple[Beside, ...]:
    """Return the teeth that stand beside the units, from the patient's right to left.

    One on each side, two where there are front teeth among the units; third molars are left out,
    and so is what would stand behind the last tooth.
    """
    order = row_order(units)
    count = 2 if any(unit.tooth.is_front for unit in units) else 1
    found: list[Beside] = []
    for unit, step in ((order[0], -1), (order[-1], 1)):
        upper, place = units[unit].tooth.is_upper, row_place(units[unit].tooth)
        for away in range(1, count + 1):
            place += step
            place += step * (place == 0)
            if abs(place) > _LAST_POSITION:
                break
            found.append(Beside(tooth=_tooth_at(place, upper=upper), unit=unit, away=away))
    return tuple(sorted(found, key=lambda one: row_place(one.tooth)))


def stood_beside(body: ToothBody, beside: ToothBody, *, size: float | None = 1.0) -> Placed:
    """Return how a tooth stands beside another one, in the other one's coordinates.

    Parameters
    ----------
    body
        What is to be placed.
    beside
        The tooth it stands next to; its surface is what it nearly touches.
    size
        The body is made to the textbook size of its tooth times this; None leaves it as large
        as it is.
    """
    here, there = arch_stand(beside.tooth), arch_stand(body.tooth)
    scale = np.ones(3) if size is None else _scale(body, size)
    across, depth = here.mesial, here.facial

    def carried(vector: FloatArray) -> FloatArray:
        return np.asarray((vector @ across) * beside.rows[0] + (vector @ depth) * beside.rows[1])

    axes = np.stack([carried(there.mesial), carried(there.facial), beside.rows[2]])
    origin, level = facial_edge(body.mesh.vertices, body.rows)
    anchor, edge = facial_edge(beside.mesh.vertices, beside.rows)
    way = carried(there.place - here.place)
    rise = edge - anchor @ beside.rows[2]
    rise += edge_below_row_mm(beside.tooth) - edge_below_row_mm(body.tooth)
    rise -= (level - origin @ body.rows[2]) * scale[2]
    placed = Placed(
        origin=origin,
        rows=body.rows,
        axes=axes,
        scale=scale,
        shift=anchor + way + rise * beside.rows[2],
    )
    ahead = way / np.linalg.norm(way)
    moving = TriMesh(placed.points(body.mesh.vertices), body.mesh.faces)
    apart = room_between(beside.mesh, moving, ahead)
    return Placed(
        origin=origin,
        rows=body.rows,
        axes=axes,
        scale=scale,
        shift=placed.shift + (CONTACT_GAP_MM - apart) * ahead,
    )


def moved(body: ToothBody, placed: Placed) -> ToothBody:
    """Return the body as it stands in the row."""
    mesh = TriMesh(placed.points(body.mesh.vertices), body.mesh.faces)
    return ToothBody(tooth=body.tooth, mesh=mesh, rows=placed.axes)


def mouth_size(body: ToothBody) -> float:
    """Return how much wider a crown is than a textbook says, within reason: its neighbours too."""
    along = body.mesh.vertices @ body.rows[0]
    ratio = float(np.ptp(along)) / textbook_size(body.tooth).mesiodistal
    return float(np.clip(ratio, *_SIZES))


def facial_edge(points: FloatArray, rows: FloatArray) -> tuple[FloatArray, float]:
    """Return the middle of the line of facial cusps or of the incisal edge, and how high it tops.

    Parameters
    ----------
    points
        (N, 3) outer surface, mm.
    rows
        (3, 3) mesial, buccal, occlusal.

    Returns
    -------
    middle, height
        (3,) a place, half-way along the tooth; and the highest place of that line, mm along
        occlusal.
    """
    local = points @ rows.T
    low, high = local.min(axis=0), local.max(axis=0)
    middle, half = 0.5 * (low + high), np.maximum(0.5 * (high - low), 1e-9)
    place = (local - middle) / half
    near = (np.abs(place[:, 0]) < 2 * _MIDDLE) & (place[:, 1] > _LINGUAL)
    strip = np.floor((place[:, 0] + 1.0) * 0.5 * _STRIPS).astype(np.intp)
    chosen = np.flatnonzero(near)
    order = chosen[np.lexsort((local[chosen, 2], strip[chosen]))]
    tops = order[np.append(np.diff(strip[order]) > 0, True)] if len(order) else chosen
    if not len(tops):
        return np.asarray(middle @ rows), float(high[2])
    ridge = local[tops]
    at = np.array([middle[0], np.median(ridge[:, 1]), np.median(ridge[:, 2])])
    return np.asarray(at @ rows), float(ridge[:, 2].max())


def room_between(fixed: TriMesh, moving: TriMesh, ahead: FloatArray) -> float:
    """Return how far a body can come back along a direction before it meets another, mm.

    Negative where it must go forward to be clear. Measured in cells of 0.3 mm across the
    direction, over points spread on both surfaces: where these meet at a slant it errs by a cell.
    Bodies that miss each other are measured from end to end.

    Parameters
    ----------
    fixed, moving
        The body that stays, and the one that lies ahead of it.
    ahead
        (3,) unit vector from the first to the second.
    """
    side = np.cross(ahead, np.eye(3)[int(np.argmin(np.abs(ahead)))])
    side /= np.linalg.norm(side)
    axes = np.stack([ahead, side, np.cross(ahead, side)])
    first, second = (_spread(mesh) @ axes.T for mesh in (fixed, moving))
    low = np.minimum(first[:, 1:].min(axis=0), second[:, 1:].min(axis=0))
    cells = [np.floor((one[:, 1:] - low) / _CELL_MM).astype(np.intp) for one in (first, second)]
    width = int(max(one[:, 1].max() for one in cells)) + 1
    keys = [one[:, 0] * width + one[:, 1] for one in cells]
    count = int(max(key.max() for key in keys)) + 1
    front = np.full(count, -np.inf)
    np.maximum.at(front, keys[0], first[:, 0])
    back = np.full(count, np.inf)
    np.minimum.at(back, keys[1], second[:, 0])
    both = np.isfinite(front) & np.isfinite(back)
    if not both.any():
        return float(second[:, 0].min() - first[:, 0].max())
    return float((back - front)[both].min())


def _spread(mesh: TriMesh) -> FloatArray:
    """Return points all over a surface: corners, middles of edges and of faces."""
    corners = mesh.vertices[mesh.faces]
    edges = 0.5 * (corners + np.roll(corners, 1, axis=1))
    return np.concatenate([mesh.vertices, edges.reshape(-1, 3), corners.mean(axis=1)])


def _scale(body: ToothBody, size: float) -> FloatArray:
    """Return the factors that give a body the textbook size of its tooth."""
    extent = np.ptp(body.mesh.vertices @ body.rows.T, axis=0)
    book = textbook_size(body.tooth)
    wanted = np.array([book.mesiodistal, book.buccolingual, book.height]) * size
    return np.asarray(wanted / np.maximum(extent, 1e-9))


def _tooth_at(place: int, *, upper: bool) -> Tooth:
    """Return the tooth at a place in the row: from -8 at the patient's right to 8 at the left."""
    quadrant = (2 if upper else 3) if place > 0 else (1 if upper else 4)
    return Tooth(number=10 * quadrant + abs(place))
