"""Surfaces with known truths, made by an independent library or from closed forms."""

from __future__ import annotations

import numpy as np
import trimesh
from numpy.typing import NDArray

from stainmap.surface.mesh import TriMesh

REAL_MESHES = (
    "solid_46.stl",
    "solid_14.stl",
    "solid_11.stl",
    "hollow_46.stl",
    "bridge_14_15_16.stl",
)


def of(mesh: trimesh.Trimesh) -> TriMesh:
    return TriMesh(mesh.vertices, mesh.faces)


def sphere(radius: float = 5.0, subdivisions: int = 4) -> TriMesh:
    return of(trimesh.creation.icosphere(subdivisions=subdivisions, radius=radius))


def torus(major: float = 5.0, minor: float = 2.0) -> TriMesh:
    return of(trimesh.creation.torus(major, minor, major_sections=160, minor_sections=80))


def box() -> TriMesh:
    return of(trimesh.creation.box(extents=(2.0, 3.0, 4.0)))


def two_spheres(
    outer: float = 5.0, inner: float = 4.2, offset: tuple[float, float, float] = (0.0, 0.0, 0.0)
) -> tuple[TriMesh, NDArray[np.bool_]]:
    """Return a ball with a cavity, and which vertices are its outside."""
    a = trimesh.creation.icosphere(subdivisions=5, radius=outer)
    b = trimesh.creation.icosphere(subdivisions=5, radius=inner)
    vertices = np.concatenate([a.vertices, b.vertices + offset])
    faces = np.concatenate([a.faces, b.faces[:, ::-1] + len(a.vertices)])
    return TriMesh(vertices, faces), np.arange(len(vertices)) < len(a.vertices)


def sheet(
    columns: int, rows: int, *, wide: float = 1.0, high: float = 1.0, closed: bool = False
) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    """Return parameters (u, v) of a grid and its faces, diagonals alternating.

    With `closed` the last column is the first one again.
    """
    u, v = np.meshgrid(
        np.arange(columns if closed else columns + 1) / columns * wide,
        np.arange(rows + 1) / rows * high,
        indexing="ij",
    )
    width = rows + 1
    faces = []
    for i in range(columns):
        after = (i + 1) % columns if closed else i + 1
        for j in range(rows):
            a, b = i * width + j, after * width + j
            c, d = b + 1, a + 1
            if (i + j) % 2:
                faces += [(a, b, c), (a, c, d)]
            else:
                faces += [(a, b, d), (b, c, d)]
    return np.stack([u.ravel(), v.ravel()], axis=1), np.array(faces)


def plane(size: float, count: int) -> TriMesh:
    """Return a square in the plane z = 0, centred."""
    parameters, faces = sheet(count, count, wide=size, high=size)
    return TriMesh(np.c_[parameters - size / 2.0, np.zeros(len(parameters))], faces)


def tube(radius: float, length: float, around: int, along: int) -> tuple[TriMesh, NDArray]:
    """Return an open cylinder about z and the (angle, height) of its vertices."""
    parameters, faces = sheet(around, along, wide=2.0 * np.pi, high=length, closed=True)
    angle, height = parameters.T
    vertices = np.c_[radius * np.cos(angle), radius * np.sin(angle), height]
    return TriMesh(vertices, faces), parameters


def cone(half_angle: float, near: float, far: float, around: int, along: int):
    """Return an open cone about z and the (angle, distance from the tip) of its vertices."""
    parameters, faces = sheet(around, along, wide=2.0 * np.pi, high=far - near, closed=True)
    parameters = parameters + np.array([0.0, near])
    angle, slant = parameters.T
    ring = slant * np.sin(half_angle)
    vertices = np.c_[ring * np.cos(angle), ring * np.sin(angle), slant * np.cos(half_angle)]
    return TriMesh(vertices, faces), parameters


def moebius(around: int = 40) -> TriMesh:
    """Return a strip with a half twist."""
    faces = []
    vertices = []
    for i in range(around):
        angle = 2.0 * np.pi * i / around
        for side in (-1.0, 1.0):
            out = 5.0 + side * np.cos(angle / 2.0)
            vertices.append((out * np.cos(angle), out * np.sin(angle), side * np.sin(angle / 2.0)))
        a, b = 2 * i, 2 * i + 1
        c, d = (2 * i + 2, 2 * i + 3) if i + 1 < around else (1, 0)
        faces += [(a, c, b), (b, c, d)]
    return TriMesh(np.array(vertices), np.array(faces))
