"""Triangle meshes: an immutable surface and the quantities derived from it."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property
from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

import numpy as np
from numpy.typing import ArrayLike, NDArray

if TYPE_CHECKING:
    from scipy import sparse

    from stainmap.surface.picking import Picker
    from stainmap.surface.point_blocks import PointBlocks

FloatArray = NDArray[np.float64]
IndexArray = NDArray[np.int32]
BoolArray = NDArray[np.bool_]
AnyArray = TypeVar("AnyArray", bound=NDArray[Any])

_TINY = 1e-30


def frozen(array: AnyArray) -> AnyArray:
    """Return the array, made read-only."""
    array.flags.writeable = False
    return array


class TriMesh:
    """A triangle mesh that never changes.

    Everything derived is computed on first use and kept. All arrays are read-only. The mesh may
    be open, may have several pieces and may have non-manifold edges; a face may not use a vertex
    twice.

    Parameters
    ----------
    vertices
        (V, 3) coordinates, mm unless said otherwise. Copied to float64.
    faces
        (F, 3) vertex indices, counter-clockwise seen from outside. Copied to int32.

    Raises
    ------
    ValueError
        If shapes are wrong, a coordinate is not finite, an index is out of range, or a face uses
        a vertex twice.
    """

    __hash__ = object.__hash__

    def __init__(self, vertices: ArrayLike, faces: ArrayLike) -> None:
        points = np.array(vertices, dtype=np.float64, order="C")
        triangles = np.array(faces, dtype=np.int32, order="C")
        if points.ndim != 2 or points.shape[1] != 3:
            raise ValueError(f"vertices must have shape (V, 3), not {points.shape}")
        if triangles.ndim != 2 or triangles.shape[1] != 3:
            raise ValueError(f"faces must have shape (F, 3), not {triangles.shape}")
        if not np.isfinite(points).all():
            raise ValueError("vertices hold a coordinate that is not finite")
        if len(triangles):
            if triangles.min() < 0 or triangles.max() >= len(points):
                raise ValueError("faces refer to a vertex that does not exist")
            a, b, c = triangles.T
            if bool(((a == b) | (b == c) | (c == a)).any()):
                raise ValueError("a face uses a vertex twice")
        self._vertices = frozen(points)
        self._faces = frozen(triangles)

    def __reduce__(self) -> tuple[type[TriMesh], tuple[FloatArray, IndexArray]]:
        """Travel to another process without what was derived."""
        return TriMesh, (self._vertices, self._faces)

    def __repr__(self) -> str:
        """Return the counts."""
        return f"TriMesh({self.vertex_count} vertices, {self.face_count} faces)"

    @property
    def vertices(self) -> FloatArray:
        """(V, 3) coordinates."""
        return self._vertices

    @property
    def faces(self) -> IndexArray:
        """(F, 3) vertex indices."""
        return self._faces

    @property
    def vertex_count(self) -> int:
        """Number of vertices."""
        return len(self._vertices)

    @property
    def face_count(self) -> int:
        """Number of faces."""
        return len(self._faces)

    def forget_derived(self, keep: Iterable[str] = ()) -> None:
        """Drop what was derived of vertices and faces; what is asked for is derived again.

        Some hundred bytes per vertex may have been derived that nothing later asks for.

        Parameters
        ----------
        keep
            Names of properties that stay.
        """
        for name in set(self.__dict__) - {"_vertices", "_faces", *keep}:
            self.__dict__.pop(name, None)

    # ---- faces

    @cached_property
    def _face_cross(self) -> FloatArray:
        """(F, 3) cross products of two edges: twice the area along the normal."""
        return frozen(face_cross(self._vertices, self._faces))

    @cached_property
    def face_areas(self) -> FloatArray:
        """(F,) areas, mm2."""
        return frozen(0.5 * row_lengths(self._face_cross))

    @cached_property
    def face_normals(self) -> FloatArray:
        """(F, 3) unit normals; zero where the area is zero."""
        return frozen(unit_rows(self._face_cross))

    @cached_property
    def face_centres(self) -> FloatArray:
        """(F, 3) centroids of the faces."""
        total = self._vertices[self._faces[:, 0]]
        total += self._vertices[self._faces[:, 1]]
        total += self._vertices[self._faces[:, 2]]
        total /= 3.0
        return frozen(total)

    @cached_property
    def area(self) -> float:
        """Total area, mm2."""
        return float(self.face_areas.sum())

    @cached_property
    def volume(self) -> float:
        """Signed volume, mm3; meaningful for a closed surface, positive with normals outward."""
        centred = self._vertices - self.centre
        return float(np.einsum("ij,ij->", centred[self._faces[:, 0]], self._face_cross) / 6.0)

    # ---- vertices

    @cached_property
    def vertex_normals(self) -> FloatArray:
        """(V, 3) unit normals, weighted by area so that slivers do not count; zero if unused."""
        return frozen(unit_rows(self.sum_at_vertices(self._face_cross)))

    @cached_property
    def vertex_areas(self) -> FloatArray:
        """(V,) a third of the area of the faces around each vertex (barycentric), mm2."""
        return frozen(self.sum_at_vertices(self.face_areas) / 3.0)

    def sum_at_vertices(self, per_face: NDArray[np.float64]) -> FloatArray:
        """Add a value of each face, (F,) or (F, k), to its three vertices."""
        # In the order of the faces, as the incidence would; but that takes sparse matrices, whose
        # library need not be there yet when a mesh is shown for the first time.
        corners = self._faces.ravel()
        values = np.asarray(per_face, dtype=np.float64).reshape(self.face_count, -1)
        sums = np.empty((self.vertex_count, values.shape[1]))
        for column, value in zip(sums.T, values.T, strict=True):
            column[:] = np.bincount(corners, np.repeat(value, 3), self.vertex_count)
        return sums.reshape(self.vertex_count, *np.shape(per_face)[1:])

    @cached_property
    def vertex_faces(self) -> sparse.csr_array[np.float64]:
        """(V, F) sparse incidence, 1 where the face uses the vertex."""
        from scipy import sparse  # noqa: PLC0415

        count = self.face_count
        starts = np.arange(0, 3 * count + 1, 3, dtype=np.int32)
        corners = sparse.csc_array(
            (np.ones(3 * count), self._faces.ravel(), starts), shape=(self.vertex_count, count)
        )
        return corners.tocsr()

    def faces_at(self, vertices: IndexArray) -> IndexArray:
        """Return the faces (n,), ascending, that use any of some vertices (k,).

        For brushes: a tenth of the time of taking rows of `vertex_faces` and sorting.
        """
        incidence = self.vertex_faces
        begin = incidence.indptr[vertices]
        length = incidence.indptr[vertices + 1] - begin
        ends = np.cumsum(length)
        entries = np.arange(int(ends[-1]) if len(ends) else 0)
        entries += np.repeat(begin - (ends - length), length)
        used = np.zeros(self.face_count, dtype=np.bool_)
        used[incidence.indices[entries]] = True
        return np.flatnonzero(used).astype(np.int32)

    # ---- drawing

    @cached_property
    def light_faces(self) -> IndexArray:
        """(G, 3) a coarser surface on the same vertices, see `clustering`; drawn while turned."""
        from stainmap.surface.clustering import clustered_faces  # noqa: PLC0415

        return frozen(clustered_faces(self))

    # ---- pointing

    @cached_property
    def vertex_blocks(self) -> PointBlocks:
        """Finds the vertices near a place."""
        from stainmap.surface.point_blocks import PointBlocks  # noqa: PLC0415

        return PointBlocks(self._vertices)

    @cached_property
    def picker(self) -> Picker:
        """Finds the face under a ray."""
        from stainmap.surface.picking import Picker  # noqa: PLC0415

        return Picker(self)

    def make_ready_to_draw(self) -> None:
        """Derive what a view asks for at once, where nobody waits for it."""
        for name in ("vertex_normals", "vertex_areas", "light_faces"):
            getattr(self, name)

    # ---- edges

    @cached_property
    def _edge_table(self) -> EdgeTable:
        return edge_table(self._faces, self.vertex_count)

    @property
    def edges(self) -> IndexArray:
        """(E, 2) vertex pairs, smaller index first, in ascending order."""
        return self._edge_table.edges

    @property
    def face_edges(self) -> IndexArray:
        """(F, 3) index of the edges between corners 0-1, 1-2 and 2-0."""
        return self._edge_table.face_edges

    @property
    def edge_face_count(self) -> IndexArray:
        """(E,) number of faces at each edge: 1 on a border, 2 inside, more if not a manifold."""
        return self._edge_table.face_count

    @cached_property
    def edge_lengths(self) -> FloatArray:
        """(E,) lengths, mm."""
        span = self._vertices[self.edges[:, 1]] - self._vertices[self.edges[:, 0]]
        return frozen(row_lengths(span))

    @cached_property
    def edge_faces(self) -> IndexArray:
        """(E, 2) the first two faces at each edge; -1 where there is none."""
        return frozen(self._edge_table.first_two_faces())

    @cached_property
    def adjacency(self) -> sparse.csr_array[np.float64]:
        """(V, V) symmetric sparse matrix of edge lengths, mm."""
        from scipy import sparse  # noqa: PLC0415

        i, j = self.edges.T
        # A length of exactly nothing would look like a missing edge to graph routines.
        length = np.maximum(self.edge_lengths, 1e-12)
        graph = sparse.coo_array(
            (np.concatenate([length, length]), (np.concatenate([i, j]), np.concatenate([j, i]))),
            shape=(self.vertex_count, self.vertex_count),
        )
        return graph.tocsr()

    @cached_property
    def boundary_vertices(self) -> BoolArray:
        """(V,) True for vertices on an edge that has one face only."""
        mask = np.zeros(self.vertex_count, dtype=np.bool_)
        mask[self.edges[self.edge_face_count == 1]] = True
        return frozen(mask)

    # ---- the whole

    @cached_property
    def bounds(self) -> FloatArray:
        """(2, 3) smallest and largest coordinates; zeros for an empty mesh."""
        if not self.vertex_count:
            return frozen(np.zeros((2, 3)))
        return frozen(np.stack([self._vertices.min(axis=0), self._vertices.max(axis=0)]))

    @cached_property
    def centre(self) -> FloatArray:
        """(3,) middle of the bounding box."""
        return frozen(self.bounds.mean(axis=0))

    @cached_property
    def extent(self) -> FloatArray:
        """(3,) size of the bounding box, mm."""
        return frozen(self.bounds[1] - self.bounds[0])

    @cached_property
    def is_watertight(self) -> bool:
        """Whether every edge has exactly two faces."""
        return self.face_count > 0 and bool((self.edge_face_count == 2).all())

    def scaled(self, factor: float) -> TriMesh:
        """Return the same mesh with every coordinate multiplied by a positive factor."""
        if not (np.isfinite(factor) and factor > 0):
            raise ValueError(f"factor must be a positive number, not {factor}")
        return TriMesh(self._vertices * factor, self._faces)


def face_cross(vertices: FloatArray, faces: IndexArray) -> FloatArray:
    """Return for each face (F, 3) the cross product of its edges 0-1 and 0-2."""
    first, second, third = (np.ascontiguousarray(faces[:, k]) for k in range(3))
    # Whole columns are several times faster than numpy's cross product of short rows.
    columns = [np.ascontiguousarray(vertices[:, k]) for k in range(3)]
    origin = [column[first] for column in columns]
    ux, uy, uz = (column[second] - o for column, o in zip(columns, origin, strict=True))
    vx, vy, vz = (column[third] - o for column, o in zip(columns, origin, strict=True))
    cross = np.empty((len(faces), 3))
    cross[:, 0] = uy * vz - uz * vy
    cross[:, 1] = uz * vx - ux * vz
    cross[:, 2] = ux * vy - uy * vx
    return cross


def unit_rows(rows: FloatArray) -> FloatArray:
    """Return the rows of an (N, 3) array at unit length; rows of zeros stay zero."""
    return np.asarray(rows / np.maximum(row_lengths(rows), _TINY)[:, None])


def row_lengths(rows: FloatArray) -> FloatArray:
    """Return the lengths (N,) of the rows of an (N, 3) array, to the bit as numpy's norm."""
    # Whole columns are three times as fast as sums over short rows.
    x, y, z = rows[:, 0], rows[:, 1], rows[:, 2]
    squared = x * x
    squared += y * y
    squared += z * z
    return np.asarray(np.sqrt(squared, out=squared))


class EdgeTable(NamedTuple):
    """The edges of a list of faces."""

    edges: IndexArray
    """(E, 2) vertex pairs, smaller index first, in ascending order."""
    face_edges: IndexArray
    """(F, 3) index of the edges between corners 0-1, 1-2 and 2-0."""
    face_count: IndexArray
    """(E,) number of faces at each edge."""
    corners: IndexArray
    """(3F,) corners (three times the face plus k) in the order of their edges."""
    first: IndexArray
    """(E,) where each edge begins in `corners`."""

    def first_two_faces(self) -> IndexArray:
        """Return (E, 2) the first two faces at each edge; -1 where there is none."""
        pairs = np.full((len(self.edges), 2), -1, dtype=np.int32)
        if len(pairs):
            pairs[:, 0] = self.corners[self.first] // 3
            two = self.face_count > 1
            pairs[two, 1] = self.corners[self.first[two] + 1] // 3
            pairs[two] = np.sort(pairs[two], axis=1)
        return pairs


def edge_table(faces: IndexArray, vertex_count: int) -> EdgeTable:
    """Find the edges of some faces (F, 3) among `vertex_count` vertices."""
    from scipy import sparse  # noqa: PLC0415

    start, end = faces.ravel(), faces[:, [1, 2, 0]].ravel()
    low, high = np.minimum(start, end), np.maximum(start, end)
    # Sorting corners by their edge: a sparse matrix sorts by row in linear time, five times faster
    # than argsort. Claiming to be canonical keeps it from adding up the entries of one edge.
    corners = sparse.coo_array(
        (np.arange(len(low), dtype=np.int32), (low, high)), shape=(vertex_count, vertex_count)
    )
    corners.has_canonical_format = True
    table = corners.tocsr()
    table.has_sorted_indices = False
    table.sort_indices()
    low = np.repeat(np.arange(vertex_count, dtype=np.int32), np.diff(table.indptr))
    high = table.indices
    is_first = np.ones(len(low), dtype=np.bool_)
    is_first[1:] = (low[1:] != low[:-1]) | (high[1:] != high[:-1])
    of_corner = np.empty(len(low), dtype=np.int32)
    of_corner[table.data] = np.cumsum(is_first, dtype=np.int32) - 1
    first = np.flatnonzero(is_first).astype(np.int32)
    return EdgeTable(
        edges=frozen(np.stack([low[first], high[first]], axis=1).astype(np.int32)),
        face_edges=frozen(of_corner.reshape(-1, 3)),
        face_count=frozen(np.diff(np.append(first, len(low))).astype(np.int32)),
        corners=frozen(table.data.astype(np.int32)),
        first=frozen(first),
    )


def connected_pieces(mesh: TriMesh, mask: BoolArray | None = None) -> tuple[int, IndexArray]:
    """Count and label the pieces of the mesh that hang together along edges.

    Parameters
    ----------
    mesh
        The surface.
    mask
        (V,) vertices to look at; None for all. An edge counts if both its ends are in the mask.

    Returns
    -------
    count, labels
        Number of pieces and (V,) int32 labels from 0; -1 outside the mask.
    """
    from scipy import sparse  # noqa: PLC0415
    from scipy.sparse import csgraph  # noqa: PLC0415

    inside = np.ones(mesh.vertex_count, dtype=np.bool_) if mask is None else np.asarray(mask)
    chosen = np.flatnonzero(inside)
    place = np.full(mesh.vertex_count, -1, dtype=np.int32)
    place[chosen] = np.arange(len(chosen), dtype=np.int32)
    i, j = place[mesh.edges].T
    both = (i >= 0) & (j >= 0)
    graph = sparse.coo_array(
        (np.ones(int(both.sum()), dtype=np.int8), (i[both], j[both])), shape=(len(chosen),) * 2
    )
    count, piece = csgraph.connected_components(graph, directed=False)
    labels = np.full(mesh.vertex_count, -1, dtype=np.int32)
    labels[chosen] = piece
    return int(count), labels


def largest_piece(mesh: TriMesh, mask: BoolArray) -> BoolArray:
    """Return the piece of the mask (V,) with the largest area; an empty mask stays empty."""
    count, labels = connected_pieces(mesh, mask)
    inside = labels >= 0
    if count == 0:
        return inside
    area = np.bincount(labels[inside], mesh.vertex_areas[inside], minlength=count)
    return np.asarray(labels == int(area.argmax()))


def boundary_loops(mesh: TriMesh) -> tuple[IndexArray, ...]:
    """Return the border of an open mesh as closed chains of vertices, longest (mm) first.

    Chains run along their faces' winding. Where several borders touch in one vertex the chain is
    closed there, so that every border edge belongs to exactly one chain.
    """
    corner = np.flatnonzero(mesh.edge_face_count[mesh.face_edges.ravel()] == 1)
    face, k = np.divmod(corner, 3)
    start = mesh.faces[face, k]
    end = mesh.faces[face, (k + 1) % 3]
    following: dict[int, list[int]] = {}
    for a, b in zip(start.tolist(), end.tolist(), strict=True):
        following.setdefault(a, []).append(b)
    loops: list[IndexArray] = []
    for first in start.tolist():
        while following.get(first):
            loops.extend(_walk(first, following))
    return tuple(sorted(loops, key=lambda loop: -loop_length(mesh, loop)))


def _walk(first: int, following: dict[int, list[int]]) -> list[IndexArray]:
    """Follow border edges from a vertex until stuck; cut off each loop as it closes."""
    chain = [first]
    at = {first: 0}
    loops: list[IndexArray] = []
    while following.get(chain[-1]):
        step = following[chain[-1]].pop()
        if step in at:
            begin = at[step]
            loops.append(np.array(chain[begin:], dtype=np.int32))
            for vertex in chain[begin + 1 :]:
                del at[vertex]
            del chain[begin + 1 :]
        else:
            at[step] = len(chain)
            chain.append(step)
    if len(chain) > 2:  # only with windings that disagree
        loops.append(np.array(chain, dtype=np.int32))
    return loops


def loop_length(mesh: TriMesh, loop: IndexArray) -> float:
    """Return the length of a closed chain of vertices, mm."""
    points = mesh.vertices[loop]
    return float(np.linalg.norm(np.roll(points, -1, axis=0) - points, axis=1).sum())


def submesh(mesh: TriMesh, face_mask: BoolArray) -> tuple[TriMesh, IndexArray]:
    """Return the mesh of some faces and, for each of its vertices, the vertex it was."""
    faces = mesh.faces[face_mask]
    used, renumbered = np.unique(faces, return_inverse=True)
    part = TriMesh(mesh.vertices[used], renumbered.reshape(-1, 3))
    return part, frozen(used.astype(np.int32))
