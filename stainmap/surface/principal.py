"""Principal curvatures: how sharply a surface bends along its valleys' and ridges' crossings."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import FloatArray, TriMesh, frozen, unit_rows


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class PrincipalCurvatures:
    """The two principal curvatures of a surface at a scale.

    Parameters
    ----------
    scale_mm
        Length s of both smoothings.
    least, greatest
        (V,) 1/mm, positive where convex. A groove has a strongly negative least one, whether its
        bottom rises or falls along it; mean curvature fades where a groove crosses a saddle.
    shape
        (V, 6) the shape operator in space: xx, yy, zz, xy, xz, yz, 1/mm.
    """

    scale_mm: float
    least: FloatArray
    greatest: FloatArray
    shape: FloatArray

    @property
    def mean(self) -> FloatArray:
        """(V,) mean curvature, 1/mm, positive where convex."""
        return np.asarray(0.5 * (self.least + self.greatest))

    @property
    def gaussian(self) -> FloatArray:
        """(V,) Gaussian curvature, 1/mm2, positive on caps and in bowls, negative on saddles."""
        return np.asarray(self.least * self.greatest)

    def along(self, tangents: FloatArray) -> FloatArray:
        """Return the normal curvature (V,) along unit tangents (V, 3), 1/mm."""
        return np.asarray(np.einsum("vi,vi->v", tangents, _apply(self.shape, tangents)))


def principal_curvatures(operator: SurfaceOperator, scale_mm: float) -> PrincipalCurvatures:
    """Return the principal curvatures of the surface smoothed over s.

    On each face of the smoothed surface the linearly interpolated vertex normals give the shape
    operator (after [Rusinkiewicz2004]); it is averaged at the vertices by area, smoothed once
    more over s, and its eigenvalues in the tangent plane are taken.
    """
    mesh = operator.mesh
    smooth = TriMesh(operator.smooth(mesh.vertices, scale_mm), mesh.faces)
    normals = smooth.vertex_normals
    area = np.maximum(smooth.vertex_areas, 1e-12)
    shape = smooth.sum_at_vertices(_face_shapes(smooth, normals)) / (3.0 * area[:, None])
    shape = operator.smooth(shape, scale_mm)
    least, greatest = _tangent_eigenvalues(shape, normals)
    return PrincipalCurvatures(
        scale_mm=scale_mm, least=frozen(least), greatest=frozen(greatest), shape=frozen(shape)
    )


def _face_shapes(mesh: TriMesh, normals: FloatArray) -> FloatArray:
    """Return each face's area times its shape operator, (F, 6): xx, yy, zz, xy, xz, yz."""
    corners = mesh.vertices[mesh.faces]
    shape = np.zeros((mesh.face_count, 3, 3))
    for k in range(3):
        opposite = corners[:, (k + 2) % 3] - corners[:, (k + 1) % 3]
        gradient = 0.5 * np.cross(mesh.face_normals, opposite)
        shape += normals[mesh.faces[:, k]][:, :, None] * gradient[:, None, :]
    i, j = np.array([0, 1, 2, 0, 0, 1]), np.array([0, 1, 2, 1, 2, 2])
    return np.asarray(0.5 * (shape[:, i, j] + shape[:, j, i]))


def _tangent_eigenvalues(
    shape: NDArray[np.float64], normals: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Return both eigenvalues of symmetric tensors (V, 6) within the planes across normals."""
    helper = np.zeros_like(normals)
    helper[np.arange(len(normals)), np.abs(normals).argmin(axis=1)] = 1.0
    first = unit_rows(np.cross(normals, helper))
    second = np.cross(normals, first)
    turned_first, turned_second = _apply(shape, first), _apply(shape, second)
    one = np.einsum("vi,vi->v", first, turned_first)
    other = np.einsum("vi,vi->v", second, turned_second)
    mixed = np.einsum("vi,vi->v", first, turned_second)
    mean, apart = 0.5 * (one + other), np.hypot(0.5 * (one - other), mixed)
    return mean - apart, mean + apart


def _apply(shape: FloatArray, vectors: FloatArray) -> FloatArray:
    xx, yy, zz, xy, xz, yz = shape.T
    x, y, z = vectors.T
    return np.stack(
        [xx * x + xy * y + xz * z, xy * x + yy * y + yz * z, xz * x + yz * y + zz * z], 1
    )
