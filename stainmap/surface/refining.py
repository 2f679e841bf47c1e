"""Refining: halve long edges until the mesh is fine enough for a brush."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import sparse

from stainmap.errors import MeshFileError
from stainmap.surface.mesh import FloatArray, IndexArray, TriMesh, edge_table, frozen

MAX_EDGE_MM = 0.14
# A body of 350 mm2 has 55,000 vertices at 0.14 mm, one seven times as large 400,000; far more means
# a wrong unit.
MAX_VERTICES = 2_000_000


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Refinement:
    """A refined mesh and the way back to the one it came from.

    Parameters
    ----------
    mesh
        Refined surface, V vertices; the first `base_vertex_count` are the original ones.
    parents
        (V, 2) int32. The two vertices whose midpoint a vertex is, both of smaller index (and
        perhaps refined themselves); (i, i) for the original ones.
    base_vertex_count
        Number of original vertices.
    face_parent
        (F,) int32. The original face each face lies in.
    """

    mesh: TriMesh
    parents: IndexArray
    base_vertex_count: int
    face_parent: IndexArray


def refine(
    mesh: TriMesh, max_edge_mm: float = MAX_EDGE_MM, *, max_vertices: int = MAX_VERTICES
) -> Refinement:
    """Halve every edge longer than `max_edge_mm`, again and again until none is left.

    A face with one, two or three halved edges becomes two, three or four faces in the same plane;
    with two, the remaining quadrilateral is cut along its shorter diagonal. The surface does not
    move at all, and the mesh stays conforming because an edge is halved for all its faces at once.

    Raises
    ------
    MeshFileError
        If more than `max_vertices` vertices would be needed.
    ValueError
        If `max_edge_mm` is not a positive number.
    """
    if not (np.isfinite(max_edge_mm) and max_edge_mm > 0):
        raise ValueError(f"max_edge_mm must be a positive number, not {max_edge_mm}")
    # A face with no longer edge has at most the area of the equilateral triangle, and there are
    # at least half as many vertices as faces.
    if mesh.area / (0.5 * np.sqrt(3.0) * max_edge_mm**2) > max_vertices:
        raise _too_large(max_edge_mm, max_vertices)
    points, faces = mesh.vertices, mesh.faces
    parents = [np.repeat(np.arange(mesh.vertex_count, dtype=np.int32), 2).reshape(-1, 2)]
    face_parent = np.arange(mesh.face_count, dtype=np.int32)
    while True:
        table = edge_table(faces, len(points))
        edges = table.edges
        first, second = points[edges[:, 0]], points[edges[:, 1]]
        halved = np.linalg.norm(second - first, axis=1) > max_edge_mm
        extra = int(halved.sum())
        if extra == 0:
            break
        if len(points) + extra > max_vertices:
            raise _too_large(max_edge_mm, max_vertices)
        midpoint = np.full(len(edges), -1, dtype=np.int32)
        midpoint[halved] = len(points) + np.arange(extra, dtype=np.int32)
        points = np.concatenate([points, 0.5 * (first[halved] + second[halved])])
        parents.append(edges[halved])
        faces, came_from = _cut_faces(points, faces, midpoint[table.face_edges])
        face_parent = face_parent[came_from]
    return Refinement(
        # A mesh that is fine already stays the same value, with all that is known of it.
        mesh=mesh if points is mesh.vertices else TriMesh(points, faces),
        parents=frozen(np.concatenate(parents)),
        base_vertex_count=mesh.vertex_count,
        face_parent=frozen(face_parent),
    )


def _too_large(max_edge_mm: float, max_vertices: int) -> MeshFileError:
    return MeshFileError(
        f"At {max_edge_mm:g} mm between points this surface would need more than"
        f" {max_vertices:,} points; it is too large.",
        advice="Check the unit of the file.",
    )


def _cut_faces(
    points: FloatArray, faces: IndexArray, midpoints: IndexArray
) -> tuple[IndexArray, IndexArray]:
    """Cut each face by the midpoints of its edges (F, 3), -1 where an edge stays whole.

    Returns the new faces and the face each came from.
    """
    is_cut = midpoints >= 0
    cuts = is_cut.sum(axis=1)
    whole = np.flatnonzero(cuts == 0).astype(np.int32)
    pieces, came_from = [faces[whole]], [whole]

    def add(rows: IndexArray, *corners: IndexArray) -> None:
        pieces.append(np.stack(corners, axis=1))
        came_from.append(rows)

    # One edge: turn the face so that the halved edge is 0-1.
    rows = np.flatnonzero(cuts == 1).astype(np.int32)
    (a, b, c), (ab, _, _) = _turned(faces, midpoints, rows, is_cut[rows].argmax(axis=1))
    add(rows, a, ab, c)
    add(rows, ab, b, c)

    # Two edges: turn it so that the whole edge is 2-0.
    rows = np.flatnonzero(cuts == 2).astype(np.int32)
    (a, b, c), (ab, bc, _) = _turned(
        faces, midpoints, rows, ((~is_cut[rows]).argmax(axis=1) + 1) % 3
    )
    add(rows, ab, b, bc)
    to_c = np.linalg.norm(points[ab] - points[c], axis=1)
    to_a = np.linalg.norm(points[bc] - points[a], axis=1)
    by_c = to_c <= to_a
    add(rows, a, ab, np.where(by_c, c, bc))
    add(rows, np.where(by_c, ab, a), bc, c)

    # Three edges.
    rows = np.flatnonzero(cuts == 3).astype(np.int32)
    (a, b, c), (ab, bc, ca) = faces[rows].T, midpoints[rows].T
    add(rows, a, ab, ca)
    add(rows, ab, b, bc)
    add(rows, ca, bc, c)
    add(rows, ab, bc, ca)
    return np.concatenate(pieces), np.concatenate(came_from)


def _turned(
    faces: IndexArray, midpoints: IndexArray, rows: IndexArray, first: np.ndarray
) -> tuple[IndexArray, IndexArray]:
    """Return corners and midpoints (3, n each) of some faces, starting from corner `first`."""
    turn = (first[:, None] + np.arange(3)) % 3
    return (
        np.take_along_axis(faces[rows], turn, axis=1).T,
        np.take_along_axis(midpoints[rows], turn, axis=1).T,
    )


def prolongation(parents: IndexArray, base_vertex_count: int) -> sparse.csr_array[np.float64]:
    """Return the matrix (V, Vb) that carries values of the original vertices to all vertices.

    Values are interpolated linearly along the halved edges, so the rows sum to one.

    Raises
    ------
    ValueError
        If a vertex comes before its parents.
    """
    total = len(parents)
    newest = parents.max(axis=1) if total else parents.reshape(-1)
    matrix = sparse.eye_array(base_vertex_count, format="csr", dtype=np.float64)
    done = base_vertex_count
    while done < total:
        # A round of halving reaches as far as its parents are known.
        unknown = np.flatnonzero(newest[done:] >= done)
        end = done + int(unknown[0]) if len(unknown) else total
        if end == done:
            raise ValueError(f"vertex {done} comes before its parents")
        first, second = parents[done:end].T
        matrix = sparse.vstack(
            [matrix, (matrix[first] + matrix[second]) * 0.5], format="csr", dtype=np.float64
        )
        done = end
    return matrix
