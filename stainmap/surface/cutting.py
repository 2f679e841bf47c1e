"""Cutting a surface in two: along a plane, where a field changes sign, or along a loop of edges."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy import sparse
from scipy.sparse import csgraph

from stainmap.errors import MeshFileError
from stainmap.surface.capping import cap_of
from stainmap.surface.mesh import (
    BoolArray,
    FloatArray,
    IndexArray,
    TriMesh,
    boundary_loops,
    connected_pieces,
    frozen,
    submesh,
)

# A vertex this near to the cut, as a share of the mesh's size, lies on it: no sliver is made of it.
_ON_THE_CUT = 1e-7


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cut:
    """What a cut left, and where each of its vertices comes from.

    Parameters
    ----------
    mesh
        What was kept, V vertices and F faces.
    ends
        (V, 2) int32. A vertex lies on the edge between these two vertices of the mesh that was
        cut; both are the same for a vertex that was there before, both -1 inside a cap.
    share
        (V,) how far along from the first end to the second, 0 to 1.
    cap
        (F,) the faces that close the cut; none where it was left open.
    """

    mesh: TriMesh
    ends: IndexArray
    share: FloatArray
    cap: BoolArray

    @property
    def original(self) -> IndexArray:
        """(V,) int32. The vertex of the mesh that was cut, -1 where there was none."""
        same = self.ends[:, 0] == self.ends[:, 1]
        return np.asarray(np.where(same, self.ends[:, 0], -1), dtype=np.int32)

    def carried(self, values: NDArray[np.float64], elsewhere: float) -> FloatArray:
        """Return a field (N, ...) of the mesh that was cut, at the vertices of what was kept."""
        first, second = self.ends.T
        share = self.share.reshape(-1, *(1,) * (values.ndim - 1))
        field = (1.0 - share) * values[first] + share * values[second]
        field[first < 0] = elsewhere
        return np.asarray(field)


def cut_by_plane(
    mesh: TriMesh,
    normal: ArrayLike,
    offset: float,
    *,
    close: bool,
    near: ArrayLike | None = None,
) -> Cut:
    """Cut along the plane ``x . normal = offset`` and keep what lies on the normal's side.

    The surface itself does not move: the cut is exact for the mesh.

    Parameters
    ----------
    mesh
        The surface, open or closed.
    normal
        (3,) direction of any length but zero, toward what is kept.
    offset
        Place of the plane along the unit normal.
    close
        Whether to close the cut with a flat cap. A border that was open before stays open.
    near
        (3,) a place: only the piece nearest to it is kept. None to keep all pieces.

    Raises
    ------
    MeshFileError
        If nothing lies on that side, or the cut cannot be closed.
    ValueError
        If the normal is no direction.
    """
    direction = np.asarray(normal, dtype=np.float64)
    length = float(np.linalg.norm(direction))
    if direction.shape != (3,) or not np.isfinite(length) or length == 0.0:
        raise ValueError(f"normal must be a direction, not {normal!r}")
    field = mesh.vertices @ (direction / length) - offset
    return cut_by_field(mesh, field, close=close, near=near)


def cut_by_field(
    mesh: TriMesh, field: FloatArray, *, close: bool, near: ArrayLike | None = None
) -> Cut:
    """Cut where a field (V,), linear within faces, changes sign; keep where it is positive.

    Lengths of the field only matter near the cut, where they should be about those of the mesh.
    For the other parameters and errors see `cut_by_plane`.
    """
    height = np.array(field, dtype=np.float64)
    if height.shape != (mesh.vertex_count,) or not np.isfinite(height).all():
        raise ValueError("the field must have one finite value per vertex")
    size = float(np.linalg.norm(mesh.extent))
    height[np.abs(height) < _ON_THE_CUT * size] = 0.0
    if not (height > 0.0).any():
        raise MeshFileError("Nothing lies on this side of the cut.", advice="Move the plane.")
    points, ends, share, faces = _above(mesh, height)
    return _finished(points, ends, share, faces, height, close=close, near=near)


def _above(
    mesh: TriMesh, height: FloatArray
) -> tuple[FloatArray, IndexArray, FloatArray, IndexArray]:
    """Return points, ends, shares and faces of what lies above, not yet cleared of the rest."""
    sign = np.sign(height).astype(np.int8)
    first, second = mesh.edges.T
    crossed = np.flatnonzero(sign[first] * sign[second] < 0)
    i, j = first[crossed], second[crossed]
    along = height[i] / (height[i] - height[j])
    new = mesh.vertices[i] + along[:, None] * (mesh.vertices[j] - mesh.vertices[i])
    on_edge = np.full(len(mesh.edges), -1, dtype=np.int32)
    on_edge[crossed] = mesh.vertex_count + np.arange(len(crossed), dtype=np.int32)
    own = np.repeat(np.arange(mesh.vertex_count, dtype=np.int32), 2).reshape(-1, 2)
    ends = np.concatenate([own, mesh.edges[crossed].astype(np.int32)])
    share = np.concatenate([np.zeros(mesh.vertex_count), along])
    corner = sign[mesh.faces]
    whole = (corner >= 0).all(axis=1) & (corner > 0).any(axis=1)
    faces = [mesh.faces[whole]]
    split = np.flatnonzero((corner > 0).any(axis=1) & (corner < 0).any(axis=1))
    # The edge of a face at place k joins its corners k and k + 1.
    middle = on_edge[mesh.face_edges[split]]
    for turn in range(3):
        # Corners in order from `turn` on; m[k] is the new vertex between corner k and the next.
        order = [(turn + k) % 3 for k in range(3)]
        a, b, c = mesh.faces[split][:, order].T
        s, t, u = corner[split][:, order].T
        ab, _, ca = middle[:, order].T
        lone = (s > 0) & (t < 0) & (u < 0)
        faces.append(np.c_[a, ab, ca][lone])
        pair = (s < 0) & (t > 0) & (u > 0)
        faces += [np.c_[ab, b, c][pair], np.c_[ab, c, ca][pair]]
        faces.append(np.c_[a, ab, c][(s > 0) & (t < 0) & (u == 0)])
        faces.append(np.c_[a, b, ca][(s > 0) & (t == 0) & (u < 0)])
    points = np.concatenate([mesh.vertices, new])
    return points, ends, share, np.concatenate(faces).astype(np.int32)


def cut_along_loop(mesh: TriMesh, loop: ArrayLike, inside_face: int, *, close: bool) -> Cut:
    """Cut along a closed loop of edges and keep the side that holds a face.

    Parameters
    ----------
    mesh
        The surface.
    loop
        (K,) vertices in order; each is joined to the next and the last to the first by an edge.
    inside_face
        A face of what is kept.
    close
        Whether to close the cut with a cap, flat where the loop is.

    Raises
    ------
    ValueError
        If two vertices of the loop that follow each other are not joined by an edge.
    MeshFileError
        If the loop does not part the surface, or the cut cannot be closed.
    """
    ring = np.asarray(loop, dtype=np.int64)
    pairs = np.sort(np.c_[ring, np.roll(ring, -1)], axis=1) @ [mesh.vertex_count, 1]
    key = np.sort(mesh.edges.astype(np.int64), axis=1) @ [mesh.vertex_count, 1]
    if len(ring) < 3 or not np.isin(pairs, key).all():
        raise ValueError("the loop must run along edges of the mesh")
    open_edge = ~np.isin(key, pairs)
    face_a, face_b = mesh.edge_faces[open_edge & (mesh.edge_face_count == 2)].T
    graph = sparse.coo_array(
        (np.ones(len(face_a), dtype=np.int8), (face_a, face_b)), shape=(mesh.face_count,) * 2
    )
    _, label = csgraph.connected_components(graph, directed=False)
    kept = label == label[inside_face]
    if kept.all():
        raise MeshFileError(
            "The loop does not part the surface.", advice="Draw it all the way round."
        )
    own = np.repeat(np.arange(mesh.vertex_count, dtype=np.int32), 2).reshape(-1, 2)
    height = np.ones(mesh.vertex_count)
    height[ring] = 0.0
    faces = mesh.faces[kept]
    return _finished(mesh.vertices, own, np.zeros(len(own)), faces, height, close=close, near=None)


def _finished(
    points: FloatArray,
    ends: IndexArray,
    share: FloatArray,
    faces: IndexArray,
    height: FloatArray,
    *,
    close: bool,
    near: ArrayLike | None,
) -> Cut:
    """Drop what is not kept, and close the cut."""
    # New vertices and those that lie on the cut.
    on_cut = np.concatenate([height == 0.0, np.ones(len(points) - len(height), dtype=np.bool_)])
    mesh = TriMesh(points, faces)
    mask = np.ones(mesh.face_count, dtype=np.bool_)
    if near is not None:
        used = np.zeros(mesh.vertex_count, dtype=np.bool_)
        used[faces] = True
        _, label = connected_pieces(mesh, used)
        away = np.linalg.norm(points - np.asarray(near, dtype=np.float64), axis=1)
        nearest = int(np.where(used, away, np.inf).argmin())
        mask = np.asarray(label[faces[:, 0]] == label[nearest])
    kept, number = submesh(mesh, mask)
    ends, share, on_cut = ends[number], share[number], on_cut[number]
    count, result, extra = kept.vertex_count, kept, 0
    loops = [loop for loop in boundary_loops(kept) if on_cut[loop].all()] if close else []
    if loops:
        cap = cap_of(kept, loops)
        extra = len(cap.extra)
        numbers = np.concatenate([cap.border, count + np.arange(extra, dtype=np.int32)])
        result = TriMesh(
            np.concatenate([kept.vertices, cap.extra]),
            np.concatenate([kept.faces, numbers[cap.faces]]),
        )
    return Cut(
        mesh=result,
        ends=frozen(np.concatenate([ends, np.full((extra, 2), -1, dtype=np.int32)])),
        share=frozen(np.concatenate([share, np.zeros(extra)])),
        cap=frozen(np.arange(result.face_count) >= kept.face_count),
    )
