"""Curvature of the surface, at a chosen scale."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from stainmap.surface.diffusion import SurfaceOperator
from stainmap.surface.mesh import FloatArray, TriMesh, face_cross, frozen, unit_rows


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ScaleCurvature:
    """Curvature of a surface from which detail below a scale is smoothed away.

    Parameters
    ----------
    scale_mm
        Length s of the smoothing.
    mean
        (V,) mean curvature, 1/mm, positive where convex: 1/r on a sphere.
    depth_mm
        (V,) how far a vertex lies below the smoothed surface along its normal: positive in
        valleys, about -2 s^2 times the mean curvature.
    positions, normals
        (V, 3) of the smoothed surface.
    """

    scale_mm: float
    mean: FloatArray
    depth_mm: FloatArray
    positions: FloatArray
    normals: FloatArray


def curvature_at_scale(operator: SurfaceOperator, scale_mm: float) -> ScaleCurvature:
    """Return mean curvature and valley depth at a scale.

    The coordinates are smoothed over s; the cotangent Laplacian of the smoothed surface gives the
    mean curvature normal ([Meyer2003], with barycentric instead of Voronoi areas), here measured
    with the operator of the original surface.

    Parameters
    ----------
    operator
        Of the whole surface.
    scale_mm
        s, from 0 (no smoothing) up. Below a few edge lengths noise dominates, and at 0 values
        scatter with the number of neighbours, since areas are barycentric.

    Raises
    ------
    ValueError
        If the scale is negative or not finite.
    """
    smooth = operator.smooth(operator.mesh.vertices, scale_mm)
    return _curvature_of(operator, smooth, float(scale_mm))


def curvature_at_scales(
    operator: SurfaceOperator,
    length_mm: float,
    repeats: tuple[int, ...],
    *,
    progress: Callable[[float], None] | None = None,
) -> tuple[ScaleCurvature, ...]:
    """Return curvature at several scales, at the price of one factorisation.

    Smoothing n times over s spreads a point as far as smoothing once over s sqrt(n): second
    moments add up. The shape of the spread differs, nearer to a bell the more often.

    Parameters
    ----------
    operator
        Of the whole surface.
    length_mm
        s, positive.
    repeats
        The n wanted, ascending from 1 up; the scales are s sqrt(n).
    progress
        Hears the share done; may raise to stop.

    Raises
    ------
    ValueError
        If the repeats do not ascend from 1 up, or the length is not a positive number.
    """
    if not repeats or repeats[0] < 1 or any(np.diff(repeats) <= 0):
        raise ValueError(f"repeats must ascend from 1 up, not {repeats}")
    if not (np.isfinite(length_mm) and length_mm > 0):
        raise ValueError(f"length_mm must be a positive number, not {length_mm}")
    smooth = operator.mesh.vertices
    found = []
    for repeat in range(1, repeats[-1] + 1):
        if progress is not None:
            progress(repeat / repeats[-1])
        smooth = operator.smooth(smooth, length_mm)
        if repeat in repeats:
            scale_mm = float(length_mm * np.sqrt(repeat))
            found.append(_curvature_of(operator, smooth, scale_mm))
    return tuple(found)


def _curvature_of(operator: SurfaceOperator, smooth: FloatArray, scale_mm: float) -> ScaleCurvature:
    """Return the curvature of a surface whose smoothed positions (V, 3) are known."""
    mesh = operator.mesh
    normals = unit_rows(mesh.sum_at_vertices(face_cross(smooth, mesh.faces)))
    bent = np.asarray(operator.stiffness @ smooth)
    mass = np.where(operator.mass > 0, operator.mass, 1.0)
    mean = 0.5 * np.einsum("ij,ij->i", bent, normals) / mass
    depth = np.einsum("ij,ij->i", smooth - mesh.vertices, normals)
    return ScaleCurvature(
        scale_mm=scale_mm,
        mean=frozen(mean),
        depth_mm=frozen(depth),
        positions=frozen(smooth),
        normals=frozen(normals),
    )


def angle_defects(mesh: TriMesh) -> FloatArray:
    """Return 2 pi less the angles around each vertex, pi less them on a border, (V,).

    Over a closed surface they add up to 2 pi times its Euler characteristic (Gauss and Bonnet).
    """
    corners = mesh.vertices[mesh.faces]
    angles = np.empty((mesh.face_count, 3))
    for k in range(3):
        u = corners[:, (k + 1) % 3] - corners[:, k]
        v = corners[:, (k + 2) % 3] - corners[:, k]
        sine = np.linalg.norm(np.cross(u, v), axis=1)
        angles[:, k] = np.arctan2(sine, np.einsum("ij,ij->i", u, v))
    total = np.bincount(mesh.faces.ravel(), angles.ravel(), minlength=mesh.vertex_count)
    whole = np.where(mesh.boundary_vertices, np.pi, 2.0 * np.pi)
    used = mesh.vertex_areas > 0
    return frozen(np.where(used, whole - total, 0.0))


def gaussian_curvature(mesh: TriMesh) -> FloatArray:
    """Return the Gaussian curvature (V,), 1/mm2: angle defect by area [Meyer2003].

    Zero at vertices without area.
    """
    area = mesh.vertex_areas
    return frozen(np.where(area > 0, angle_defects(mesh) / np.where(area > 0, area, 1.0), 0.0))
