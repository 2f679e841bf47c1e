"""A lighter triangle list on the same vertices: drawn while a body turns, or casting shadows."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.surface.mesh import TriMesh

CELL_MM = 0.3


def clustered_faces(mesh: TriMesh, cell_mm: float = CELL_MM) -> NDArray[np.int32]:
    """Return (G, 3) faces of a coarser surface that uses some of the mesh's own vertices.

    Vertices are gathered in cubes of `cell_mm` [Rossignac1993]; the one nearest the cube's mean
    stands for all of them, so its colour, normal and zone can be drawn as they are. Facets that
    shrink to a line are dropped. Vertices that face away from each other are kept apart, which
    keeps a thin wall from collapsing.
    """
    cells = np.floor((mesh.vertices - mesh.vertices.min(axis=0)) / cell_mm).astype(np.int64)
    side = (mesh.vertex_normals > 0.0).astype(np.int64) @ np.array([1, 2, 4])
    spans = cells.max(axis=0) + 1
    key = ((cells[:, 0] * spans[1] + cells[:, 1]) * spans[2] + cells[:, 2]) * 8 + side
    _, cluster = np.unique(key, return_inverse=True)
    size = np.bincount(cluster)
    mean = np.stack([np.bincount(cluster, mesh.vertices[:, k]) for k in range(3)], axis=1)
    off_centre = np.linalg.norm(mesh.vertices - (mean / size[:, None])[cluster], axis=1)
    # The last one written wins: sort so that the nearest comes last.
    order = np.argsort(-off_centre, kind="stable")
    stand_in = np.empty(len(size), np.int32)
    stand_in[cluster[order]] = order
    faces = stand_in[cluster[mesh.faces]]
    a, b, c = faces.T
    return np.ascontiguousarray(faces[(a != b) & (b != c) & (c != a)], dtype=np.int32)
