"""How much of the surroundings each place of a surface can see, from depth pictures."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.surface.frame import PrincipalFrame, principal_frame
from stainmap.surface.mesh import BoolArray, FloatArray, IndexArray, TriMesh, frozen

Progress = Callable[[float, str], None]
Float32Array = NDArray[np.float32]

# A point is looked at from this many cells above the surface: 1.42 is the diagonal of a cell, by
# which a plane of any slope stays clear of its own depth picture.
_LIFT_CELLS = 1.45
# Directions less than about a degree above the surface count as hidden; they weigh next to nothing.
_GRAZING = 0.02


def directions_around(
    axis: FloatArray, reference: FloatArray, count: int, *, lowest_cosine: float = -1.0
) -> FloatArray:
    """Return unit vectors spread evenly over the cap of directions around an axis.

    A spherical Fibonacci lattice [Gonzalez2010]: every direction stands for the same solid angle.

    Parameters
    ----------
    axis
        (3,) unit vector in the middle of the cap.
    reference
        (3,) any vector off the axis; it turns with the body so that the directions do too.
    count
        Number of directions.
    lowest_cosine
        Cosine to the axis at the border of the cap; -1 is the whole sphere.

    Returns
    -------
    directions
        (count, 3), from the axis outward.
    """
    side = reference - (reference @ axis) * axis
    length = float(np.linalg.norm(side))
    if length < 1e-9:
        raise ValueError("the reference lies along the axis")
    side = side / length
    other = np.cross(axis, side)
    step = np.arange(count)
    cosine = 1.0 - (step + 0.5) / count * (1.0 - lowest_cosine)
    sine = np.sqrt(np.maximum(1.0 - cosine**2, 0.0))
    turn = step * np.pi * (3.0 - np.sqrt(5.0))
    return np.asarray(
        cosine[:, None] * axis
        + (sine * np.cos(turn))[:, None] * side
        + (sine * np.sin(turn))[:, None] * other
    )


def surface_samples(mesh: TriMesh, spacing_mm: float) -> FloatArray:
    """Return points on the faces, none of them farther apart than about the spacing.

    A face is cut into n^2 equal ones, n the number of spacings on its longest edge, and their
    centroids are taken; so the points turn and move with the mesh.
    """
    longest = mesh.edge_lengths[mesh.face_edges].max(axis=1)
    cuts = np.maximum(np.ceil(longest / spacing_mm), 1).astype(np.int64)
    points = []
    for count in np.unique(cuts):
        corners = mesh.vertices[mesh.faces[cuts == count]]
        weights = _centroid_weights(int(count))
        points.append(np.einsum("wk,fkx->fwx", weights, corners).reshape(-1, 3))
    return np.concatenate(points) if points else np.zeros((0, 3))


def _centroid_weights(count: int) -> FloatArray:
    """Return barycentric weights (count^2, 3) of the centroids of an evenly cut triangle."""
    upright = [
        ((i + 1 / 3) / count, (j + 1 / 3) / count) for i in range(count) for j in range(count - i)
    ]
    turned = [
        ((i + 2 / 3) / count, (j + 2 / 3) / count)
        for i in range(count - 1)
        for j in range(count - 1 - i)
    ]
    pair = np.array(upright + turned)
    return np.column_stack([1.0 - pair.sum(axis=1), pair])


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Openness:
    """What points of a surface see of a set of directions.

    Parameters
    ----------
    seen
        (P,) mean over the directions of the cosine to the normal, 0 where hidden or behind.
    possible
        (P,) the same if nothing were hidden.
    bent
        (P, 3) mean over the directions of cosine times direction, hidden ones left out.
    """

    seen: FloatArray
    possible: FloatArray
    bent: FloatArray

    @property
    def share(self) -> FloatArray:
        """(P,) seen over possible, 0 to 1; 0 where nothing lies in front of the point."""
        whole = np.maximum(self.possible, 1e-6)
        return np.asarray(np.where(self.possible > 1e-6, self.seen / whole, 0.0))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Outlook:
    """Which of a set of directions each point of a surface sees.

    Parameters
    ----------
    normals
        (P, 3) unit normals of the points.
    directions
        (D, 3) unit vectors.
    free
        (D, P) whether a point is seen from far along a direction. False where the direction lies
        behind the surface or within a degree of its tangent.
    """

    normals: FloatArray
    directions: FloatArray
    free: BoolArray

    def openness(
        self,
        axis: FloatArray | None = None,
        *,
        lowest_cosine: float = -1.0,
        points: IndexArray | None = None,
    ) -> Openness:
        """Return what the points see of the directions around an axis.

        Parameters
        ----------
        axis, lowest_cosine
            Only directions with at least this cosine to the axis count; without an axis, all.
        points
            The points wanted; None for all.
        """
        normals = self.normals if points is None else self.normals[points]
        used = np.arange(len(self.directions))
        if axis is not None:
            used = used[self.directions @ axis >= lowest_cosine]
        seen = np.zeros(len(normals))
        possible = np.zeros(len(normals))
        bent = np.zeros((3, len(normals)))
        for number in used:
            direction = self.directions[number]
            cosine = np.maximum(_dot(normals, direction), 0.0)
            possible += cosine
            free = self.free[number] if points is None else self.free[number, points]
            cosine *= free
            seen += cosine
            for k in range(3):
                bent[k] += direction[k] * cosine
        count = max(len(used), 1)
        return Openness(
            seen=frozen(seen / count),
            possible=frozen(possible / count),
            bent=frozen(bent.T / count),
        )


class Visibility:
    """Tells which points of a surface are hidden by it from a direction.

    For each direction the surface is drawn into an orthographic depth picture, as sampled points
    of which each cell keeps the nearest. A point is seen if it stands above that depth when
    lifted off the surface along its normal by a little more than a cell's diagonal. Needs no
    library for rays. What hides a point from less than two cells away goes unnoticed.

    Parameters
    ----------
    mesh
        The surface.
    cell_mm
        Size of a cell of the depth pictures.
    frame
        The body's own frame: the cells are laid out in it, so that the answers turn with the body.
        Made from the mesh if not given.
    """

    def __init__(
        self, mesh: TriMesh, *, cell_mm: float = 0.15, frame: PrincipalFrame | None = None
    ) -> None:
        self._cell_mm = cell_mm
        self._frame = frame or principal_frame(mesh)
        self._samples = self._placed(surface_samples(mesh, cell_mm))
        squared = (self._samples**2).sum(axis=0)
        reach = float(np.sqrt(squared.max())) if len(squared) else 0.0
        self._half_mm = reach + 3.0 * cell_mm
        self._cells = int(np.ceil(2.0 * self._half_mm / cell_mm)) + 1

    def outlook(
        self,
        points: FloatArray,
        normals: FloatArray,
        directions: FloatArray,
        *,
        progress: Progress | None = None,
    ) -> Outlook:
        """Return which directions (D, 3) points (P, 3) with unit normals (P, 3) see.

        `progress` hears of every eighth direction and may raise to stop. Points may lie a little
        outside the mesh; those farther than three cells outside its ball are taken as seen.
        """
        lifted = self._placed(points + _LIFT_CELLS * self._cell_mm * normals)
        free = np.zeros((len(directions), len(points)), dtype=np.bool_)
        for number, direction in enumerate(directions):
            if progress is not None and number % 8 == 0:
                progress(number / len(directions), "looking where the surface is open")
            front = np.flatnonzero(_dot(normals, direction) > _GRAZING)
            view = self._view(direction)
            cell, depth = self._project(lifted[:, front], view)
            free[number, front] = depth >= self._depth(view)[cell]
        return Outlook(normals=normals, directions=directions, free=frozen(free))

    def _placed(self, points: FloatArray) -> Float32Array:
        """Return points in the body's frame, (3, P)."""
        arm = (points - self._frame.centre).T.astype(np.float32)
        axes = self._frame.axes.astype(np.float32)
        return np.stack([_weighted(arm, axes[:, k]) for k in range(3)])

    def _view(self, direction: FloatArray) -> Float32Array:
        """Return (3, 3), in the body's frame: right, up and the direction itself as rows."""
        toward = self._frame.axes.T @ direction
        helper = np.zeros(3)
        helper[int(np.argmin(np.abs(toward)))] = 1.0
        right = _cross(helper, toward)
        right /= np.linalg.norm(right)
        return np.stack([right, _cross(toward, right), toward]).astype(np.float32)

    def _project(
        self, placed: Float32Array, view: Float32Array
    ) -> tuple[NDArray[np.int32], Float32Array]:
        """Return the cell each point (3, P) falls into and its depth toward the viewer."""
        scale = np.float32(1.0 / self._cell_mm)
        half = np.float32(self._half_mm / self._cell_mm)
        column = (_weighted(placed, view[0] * scale) + half).astype(np.int32)
        row = (_weighted(placed, view[1] * scale) + half).astype(np.int32)
        last = self._cells - 1
        cell = np.clip(column, 0, last) * np.int32(self._cells) + np.clip(row, 0, last)
        return cell, _weighted(placed, view[2])

    def _depth(self, view: Float32Array) -> Float32Array:
        """Return the depth picture, (cells * cells,): the nearest sample along the direction."""
        cell, depth = self._project(self._samples, view)
        picture = np.full(self._cells * self._cells, -np.inf, dtype=np.float32)
        np.maximum.at(picture, cell, depth)
        return picture


def _weighted(rows: Float32Array, weights: Float32Array) -> Float32Array:
    """Return the weighted sum of three rows; for so few, quicker than a matrix product."""
    return np.asarray(rows[0] * weights[0] + rows[1] * weights[1] + rows[2] * weights[2])


def _cross(a: FloatArray, b: FloatArray) -> FloatArray:
    """Return the cross product of two single vectors; numpy's takes fifty times as long."""
    (ax, ay, az), (bx, by, bz) = a.tolist(), b.tolist()
    return np.array([ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx])


def _dot(vectors: FloatArray, direction: FloatArray) -> FloatArray:
    return np.asarray(
        vectors[:, 0] * direction[0] + vectors[:, 1] * direction[1] + vectors[:, 2] * direction[2]
    )
