"""The outline of the brush, lying on the surface: where a ball around the pointed place cuts it."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.surface.mesh import TriMesh

FloatArray = NDArray[np.float64]
_PIECES = 48


class BrushRing:
    """Finds the outline quickly on one mesh."""

    def __init__(self, mesh: TriMesh) -> None:
        self._mesh = mesh

    def around(
        self, position: FloatArray, face: int, radius_mm: float, eye: FloatArray
    ) -> FloatArray:
        """Return line pieces (n, 2, 3) at `radius_mm` from a point of `face`, as seen from `eye`.

        Facets that face away are left out, so that the far side of a thin wall draws nothing.
        Where the facets are too coarse to be cut, it is a circle in the plane of `face`.
        """
        # Of every facet that is cut the ball holds a corner.
        near = self._mesh.vertex_blocks.within(position, radius_mm)
        pieces = self._cuts(near, position, radius_mm, eye)
        return pieces if len(pieces) >= 3 else self._circle(position, face, radius_mm)

    def _cuts(
        self, near: NDArray[np.int32], position: FloatArray, radius_mm: float, eye: FloatArray
    ) -> FloatArray:
        mesh = self._mesh
        if not len(near):
            return np.empty((0, 2, 3))
        faces = mesh.faces[mesh.faces_at(near)]
        held = np.zeros(mesh.vertex_count, np.bool_)
        held[near] = True
        # Most facets lie inside altogether; the few that are cut are measured.
        points = mesh.vertices[faces[~held[faces].all(axis=1)]]
        out = np.linalg.norm(points - position, axis=2) - radius_mm
        cut = ((out < 0.0).sum(axis=1) % 3) > 0
        points, out = points[cut], out[cut]
        normals = np.cross(points[:, 1] - points[:, 0], points[:, 2] - points[:, 0])
        facing = np.einsum("ij,ij->i", normals, eye - points.mean(axis=1)) > 0.0
        points, out = points[facing], out[facing]
        inside = out < 0.0
        # The corner that is alone on its side; both edges at it are cut.
        alone = np.where(inside.sum(axis=1) == 1, inside.argmax(axis=1), (~inside).argmax(axis=1))
        row = np.arange(len(points))
        ends = []
        for turn in (1, 2):
            other = (alone + turn) % 3
            share = out[row, alone] / (out[row, alone] - out[row, other])
            ends.append(
                points[row, alone] + share[:, None] * (points[row, other] - points[row, alone])
            )
        return np.stack(ends, axis=1)

    def _circle(self, position: FloatArray, face: int, radius_mm: float) -> FloatArray:
        a, b, c = self._mesh.vertices[self._mesh.faces[face]]
        normal = np.cross(b - a, c - a)
        normal /= max(float(np.linalg.norm(normal)), 1e-12)
        first = np.cross(normal, np.eye(3)[int(np.argmin(np.abs(normal)))])
        first /= max(float(np.linalg.norm(first)), 1e-12)
        second = np.cross(normal, first)
        angle = np.linspace(0.0, 2.0 * np.pi, _PIECES + 1)[:, None]
        ring = position + radius_mm * (np.cos(angle) * first + np.sin(angle) * second)
        return np.stack([ring[:-1], ring[1:]], axis=1)
