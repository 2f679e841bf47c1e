"""A coarser copy of a surface to compute on, and the way back to all its vertices."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import csgraph

from stainmap.surface.frame import PrincipalFrame, principal_frame
from stainmap.surface.mesh import AnyArray, BoolArray, FloatArray, IndexArray, TriMesh, frozen

# A mesh with fewer vertices, or edges nearly as long as the spacing, is left as it is.
_WORTHWHILE_FROM = 20_000
_COARSE_ALREADY = 0.85
# Width of the bell by which values spread from a coarse vertex, in spacings.
_BELL = 0.5


@dataclass(frozen=True, kw_only=True, eq=False)  # no slots: they leave no room for `transfer`
class Thinned:
    """A coarser copy of a mesh of V vertices; the copy has W.

    Parameters
    ----------
    source, mesh
        The mesh and the copy.
    cluster
        (V,) int32. The vertex of the copy that each vertex went into.
    representative
        (W,) int32. The vertex nearest to the middle of each cluster.
    spacing_mm
        How far apart the vertices of the copy are, about.
    """

    source: TriMesh
    mesh: TriMesh
    cluster: IndexArray
    representative: IndexArray
    spacing_mm: float

    @cached_property
    def transfer(self) -> sparse.csr_array[np.float64]:
        """(V, W) sparse; rows are not negative and add up to 1. Takes values back, smoothly."""
        if self.mesh is self.source:
            return sparse.eye_array(self.mesh.vertex_count, format="csr")
        return _transfer(self.source, self.mesh, self.cluster, self.spacing_mm)

    def back(self, values: NDArray[np.float64]) -> FloatArray:
        """Return values of the copy, (W,) or (W, k), at the vertices of the mesh."""
        return np.asarray(self.transfer @ values)

    def sampled(self, values: AnyArray) -> AnyArray:
        """Return values of the mesh, (V, ...), at the vertices of the copy."""
        return values[self.representative]  # type: ignore[return-value]

    def mean(self, values: NDArray[np.float64]) -> FloatArray:
        """Return values of the mesh, (V,) or (V, k), averaged over each cluster by area."""
        if self.mesh is self.source:
            return values
        area = np.maximum(self.source.vertex_areas, 1e-12)
        count = self.mesh.vertex_count
        total = np.bincount(self.cluster, area, minlength=count)
        columns = values.reshape(len(values), -1).T
        sums = [np.bincount(self.cluster, area * one, minlength=count) for one in columns]
        return np.asarray((np.stack(sums, axis=1) / total[:, None]).reshape(-1, *values.shape[1:]))

    def majority(self, mask: BoolArray) -> BoolArray:
        """Return (W,) which clusters lie by more than half of their area in a mask (V,)."""
        area = np.maximum(self.source.vertex_areas, 1e-12)
        count = self.mesh.vertex_count
        inside = np.bincount(self.cluster, area * mask, minlength=count)
        return np.asarray(2.0 * inside > np.bincount(self.cluster, area, minlength=count))

    def touched(self, mask: BoolArray) -> BoolArray:
        """Return (W,) which clusters hold a vertex of a mask (V,)."""
        hit = np.zeros(self.mesh.vertex_count, dtype=np.bool_)
        hit[self.cluster[mask]] = True
        return hit


def thin(
    mesh: TriMesh,
    spacing_mm: float,
    *,
    frame: PrincipalFrame | None = None,
    worthwhile_from: int = _WORTHWHILE_FROM,
) -> Thinned:
    """Return a copy with vertices about a spacing apart.

    Vertices that share a cell of a grid and an octant of normals, and hang together, become one
    at their middle ([Rossignac1993], kept apart on either side of thin walls). The grid lies in
    the body's own frame, so that the copy turns with it. The copy of a closed surface may have a
    few edges with one or three faces.

    Parameters
    ----------
    mesh
        The surface.
    spacing_mm
        Size of the grid's cells.
    frame
        The body's frame; made from the mesh if not given.
    worthwhile_from
        A mesh of fewer vertices is left as it is.
    """
    if mesh.vertex_count < worthwhile_from or float(np.median(mesh.edge_lengths)) > (
        _COARSE_ALREADY * spacing_mm
    ):
        return _unchanged(mesh, spacing_mm)
    count, cluster = _clusters(mesh, spacing_mm, frame or principal_frame(mesh))
    count, cluster = _without_faceless(mesh, cluster, count)
    weight = np.maximum(mesh.vertex_areas, 1e-12)
    total = np.bincount(cluster, weight, minlength=count)
    middle = np.stack(
        [np.bincount(cluster, weight * x, minlength=count) / total for x in mesh.vertices.T], axis=1
    )
    distance = np.linalg.norm(mesh.vertices - middle[cluster], axis=1)
    # Rounded, so that of equal ones the first is taken however the mesh is turned.
    order = np.lexsort((np.round(distance, 6), cluster))
    first = np.searchsorted(cluster[order], np.arange(count))
    copy = TriMesh(middle, _quotient(mesh, cluster, count))
    return Thinned(
        source=mesh,
        mesh=copy,
        cluster=frozen(cluster.astype(np.int32)),
        representative=frozen(order[first].astype(np.int32)),
        spacing_mm=spacing_mm,
    )


def _unchanged(mesh: TriMesh, spacing_mm: float) -> Thinned:
    every = frozen(np.arange(mesh.vertex_count, dtype=np.int32))
    return Thinned(
        source=mesh,
        mesh=mesh,
        cluster=every,
        representative=every,
        spacing_mm=spacing_mm,
    )


def _clusters(
    mesh: TriMesh, spacing_mm: float, frame: PrincipalFrame
) -> tuple[int, NDArray[np.int32]]:
    cell = np.floor((mesh.vertices - frame.centre) @ frame.axes / spacing_mm).astype(np.int64)
    cell -= cell.min(axis=0)
    octant = (mesh.vertex_normals @ frame.axes > 0).astype(np.int64) @ np.array([1, 2, 4])
    size = cell.max(axis=0) + 1
    key = ((cell[:, 0] * size[1] + cell[:, 1]) * size[2] + cell[:, 2]) * 8 + octant
    i, j = mesh.edges.T
    same = key[i] == key[j]
    graph = sparse.coo_array(
        (np.ones(int(same.sum()), dtype=np.int8), (i[same], j[same])),
        shape=(mesh.vertex_count,) * 2,
    )
    count, label = csgraph.connected_components(graph, directed=False)
    return int(count), np.asarray(label)


def _without_faceless(
    mesh: TriMesh, cluster: NDArray[np.int32], count: int
) -> tuple[int, NDArray[np.int32]]:
    """Join clusters that would have no face to the one next to them by the shortest edge."""
    for _ in range(2):
        with_face = np.zeros(count, dtype=np.bool_)
        with_face[_quotient(mesh, cluster, count)] = True
        if with_face.all():
            break
        i, j = cluster[mesh.edges].T
        joined = np.arange(count)
        for a, b in ((i, j), (j, i)):
            usable = np.flatnonzero(~with_face[a] & with_face[b])
            # The shortest edge comes last and stays.
            length = np.round(mesh.edge_lengths[usable], 6)
            usable = usable[np.argsort(-length, kind="stable")]
            joined[a[usable]] = b[usable]
        number, renumbered = np.unique(joined[cluster], return_inverse=True)
        count, cluster = len(number), np.asarray(renumbered, dtype=np.int32)
    return count, cluster


def _quotient(mesh: TriMesh, cluster: NDArray[np.int32], count: int) -> IndexArray:
    """Return the faces between three clusters; two that lie face to face cancel."""
    faces = cluster[mesh.faces]
    a, b, c = faces.T
    faces = faces[(a != b) & (b != c) & (c != a)]
    ordered = np.sort(faces, axis=1).astype(np.int64)
    key = (ordered[:, 0] * count + ordered[:, 1]) * count + ordered[:, 2]
    _, first, times = np.unique(key, return_index=True, return_counts=True)
    return np.asarray(faces[np.sort(first[times % 2 == 1])], dtype=np.int32)


def _transfer(
    mesh: TriMesh, copy: TriMesh, cluster: NDArray[np.int32], spacing_mm: float
) -> sparse.csr_array[np.float64]:
    """Return weights by a bell over each vertex's own cluster and those next to it."""
    near = (copy.adjacency + sparse.eye_array(copy.vertex_count, format="csr")).tocsr()
    rows = near[cluster]
    fine = np.repeat(np.arange(mesh.vertex_count, dtype=np.int32), np.diff(rows.indptr))
    squared = np.zeros(len(fine))
    for here, there in zip(mesh.vertices.T, copy.vertices.T, strict=True):
        squared += (here[fine] - there[rows.indices]) ** 2
    # The nearest one counts fully, so that no row vanishes.
    least = np.minimum.reduceat(squared, rows.indptr[:-1])
    bell = np.exp(-(squared - least[fine]) / (2.0 * (_BELL * spacing_mm) ** 2))
    total = np.add.reduceat(bell, rows.indptr[:-1])
    weights = bell / total[fine]
    return sparse.csr_array((weights, rows.indices, rows.indptr), shape=rows.shape)
