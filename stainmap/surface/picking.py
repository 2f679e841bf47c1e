"""Picking: which point of the surface a ray meets first."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.surface.mesh import FloatArray, IndexArray, TriMesh, frozen
from stainmap.surface.point_blocks import BLOCK, members

# A ray exactly through an edge must not slip between its two faces.
_BARYCENTRIC_SLACK = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Hit:
    """Where a ray meets the surface.

    Parameters
    ----------
    face, vertex
        Index of the face, and of its corner nearest to the point.
    position
        (3,) the point, mm.
    barycentric
        (3,) its weights at the corners of the face.
    distance_mm
        Length along the ray from its origin.
    """

    face: int
    vertex: int
    position: FloatArray
    barycentric: FloatArray
    distance_mm: float


class Picker:
    """Finds the first face along a ray, from either side.

    Spheres are tested against the ray in single precision: first those around blocks of
    neighbouring faces, then those around each face in the blocks that are left. The few faces
    left of them are cut exactly in double precision [Moller1997].

    Parameters
    ----------
    mesh
        The surface.
    """

    def __init__(self, mesh: TriMesh) -> None:
        self._mesh = mesh
        # Columns, not rows: sums over three numbers at a time are slow, and a product with two
        # vectors is too small a task for the threads of a matrix library, which on a busy machine
        # wait for each other for 50 ms.
        faces = mesh.faces
        rank = np.empty(mesh.vertex_count, np.int32)
        rank[mesh.vertex_blocks.order] = np.arange(len(rank), dtype=np.int32)
        self._order = np.argsort(rank[faces[:, 0]], kind="stable").astype(np.int32)
        columns = [
            (column - centre).astype(np.float32)
            for column, centre in zip(mesh.vertices.T, mesh.centre, strict=True)
        ]
        corners_of = [corner[self._order] for corner in faces.T]
        middle = np.empty((3, len(faces)), np.float32)
        squared = [np.zeros(len(faces), np.float32) for _ in corners_of]
        for axis, column in enumerate(columns):
            corners = [column[corner] for corner in corners_of]
            middle[axis] = (corners[0] + corners[1] + corners[2]) * np.float32(1 / 3)
            for corner, away in enumerate(corners):
                squared[corner] += (away - middle[axis]) ** 2
        radius_squared = np.maximum(np.maximum(squared[0], squared[1]), squared[2])
        self._middle: NDArray[np.float32] = middle
        # Rounding errs by some 1e-7 of the squared size of the mesh, here and with every ray.
        slack = np.float32(4e-6 * float((mesh.extent**2).sum()))
        radius_squared += slack
        self._beyond_sphere: NDArray[np.float32] = (middle * middle).sum(axis=0) - radius_squared
        if len(faces):
            self._block_middle, radius = _spheres_around(middle, np.sqrt(radius_squared))
            squared_away = (self._block_middle * self._block_middle).sum(axis=0)
            self._beyond_block: NDArray[np.float32] = squared_away - (radius * radius + slack)

    def pick(self, origin: ArrayLike, direction: ArrayLike) -> Hit | None:
        """Return where a ray first meets the surface.

        Parameters
        ----------
        origin
            (3,) mm; what lies behind it is not met.
        direction
            (3,) of any length but zero.

        Raises
        ------
        ValueError
            If the direction is zero, or something is not finite.
        """
        start = np.asarray(origin, dtype=np.float64) - self._mesh.centre
        along = np.asarray(direction, dtype=np.float64)
        length = float(np.linalg.norm(along))
        if not (np.isfinite(length) and length > 0 and np.isfinite(start).all()):
            raise ValueError("a ray needs a finite origin and a direction that is not zero")
        along = along / length
        # The foot of the mesh's centre on the ray keeps numbers small for single precision.
        foot = start - (start @ along) * along
        if not len(self._order) or foot @ foot > float((self._mesh.extent**2).sum()):
            return None  # it passes the mesh by
        blocks = _near_ray(self._block_middle, self._beyond_block, foot, along)
        faces = members(blocks, len(self._order))
        near = faces[_near_ray(self._middle[:, faces], self._beyond_sphere[faces], foot, along)]
        # Of faces that meet in the point the first of the mesh counts.
        return self._first(np.sort(self._order[near]), start, along) if len(near) else None

    def _first(self, near: IndexArray, start: FloatArray, along: FloatArray) -> Hit | None:
        """Return the first of some faces that the ray cuts."""
        corners = self._mesh.vertices[self._mesh.faces[near]] - self._mesh.centre
        a = corners[:, 0]
        ab, ac = corners[:, 1] - a, corners[:, 2] - a
        across = np.cross(along, ac)
        determinant = (ab * across).sum(axis=1)
        usable = determinant != 0
        inverse = 1.0 / np.where(usable, determinant, 1.0)
        offset = start - a
        u = (offset * across).sum(axis=1) * inverse
        turned = np.cross(offset, ab)
        v = (turned @ along) * inverse
        distance = (ac * turned).sum(axis=1) * inverse
        weights = np.stack([1.0 - u - v, u, v], axis=1)
        met = usable & (weights.min(axis=1) >= -_BARYCENTRIC_SLACK) & (distance >= 0)
        if not met.any():
            return None
        best = int(np.where(met, distance, np.inf).argmin())
        weight = np.clip(weights[best], 0.0, 1.0)
        weight /= weight.sum()
        face = int(near[best])
        return Hit(
            face=face,
            vertex=int(self._mesh.faces[face][int(weight.argmax())]),
            position=frozen(weight @ self._mesh.vertices[self._mesh.faces[face]]),
            barycentric=frozen(weight),
            distance_mm=float(distance[best]),
        )


def _spheres_around(
    middle: NDArray[np.float32], radius: NDArray[np.float32]
) -> tuple[NDArray[np.float32], NDArray[np.float32]]:
    """Return middle (3, n) and radius (n,) of a sphere around the spheres of each block."""
    first = np.arange(0, middle.shape[1], BLOCK)
    low, high = (reduce.reduceat(middle, first, axis=1) for reduce in (np.minimum, np.maximum))
    around = (low + high) * np.float32(0.5)
    away = middle - np.repeat(around, BLOCK, axis=1)[:, : middle.shape[1]]
    reach = np.sqrt((away * away).sum(axis=0)) + radius
    return around, np.maximum.reduceat(reach, first)


def _near_ray(
    middle: NDArray[np.float32],
    beyond: NDArray[np.float32],
    foot: FloatArray,
    along: FloatArray,
) -> NDArray[np.intp]:
    """Return which spheres a ray may meet.

    Parameters
    ----------
    middle, beyond
        (3, n) middles from the mesh's centre, and (n,) their squares less squared radii.
    foot, along
        (3,) the ray's point nearest to the mesh's centre, and its direction.
    """
    x, y, z = middle
    a, b, c = along.astype(np.float32)
    on_ray = a * x + b * y + c * z
    a, b, c = (-2.0 * foot).astype(np.float32)
    outside = a * x + b * y + c * z
    outside += beyond
    outside -= on_ray * on_ray
    return np.flatnonzero(outside <= -np.float32(foot @ foot))
