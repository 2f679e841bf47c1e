"""The crown's surface as the two levels of mesh on which fields are solved, in a compact order."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray
from scipy import sparse
from scipy.sparse import csgraph
from scipy.sparse.linalg import LinearOperator, eigsh

from stainmap.surface.coarsening import smoothed_prolongation
from stainmap.surface.diffusion import half_cotangents, mollified_lengths, stiffness_matrix
from stainmap.surface.mesh import TriMesh
from stainmap.surface.point_blocks import space_filling_order

Floats = NDArray[np.float32]
Indices = NDArray[np.int32]
Matrix = sparse.csr_array[np.float32]
Rows = sparse.csr_array[np.float64]

# Vertices that are looked for together: along the compact order they are neighbours.
_BLOCK = 64
_EIGENVALUE_WITHIN = 0.01
_LANCZOS_VECTORS = 12
_LEAST_SLACK = 0.1


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Level:
    """One level of mesh: stiffness (n, n), its diagonal (n, 1) and lumped mass (n, 1), mm2."""

    stiffness: Matrix
    diagonal: Floats
    mass: Floats


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Coarse:
    """The coarser level, the way from it, (n, nc), and the way to it, (nc, n)."""

    level: Level
    prolongation: Matrix
    restriction: Matrix


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Hierarchy:
    """A level of mesh with its coarser one.

    `smoother_end` is the upper end of the spectrum of the Jacobi-scaled stiffness.
    """

    fine: Level
    coarse: Coarse
    smoother_end: float


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Patch:
    """A piece of the surface on which a change is solved; nothing changes outside it.

    `vertices` ascend, in the compact order; `rows` (n, V) are their rows of the whole stiffness;
    `rim_distance_mm` (n,) is how far each of them lies inside the ball the patch was cut with.
    """

    vertices: Indices
    rows: Matrix
    rim_distance_mm: Floats
    hierarchy: Hierarchy


class SurfaceLevels:
    """Stiffness and mass of a surface and of its coarser level, single precision.

    The coarse operator is the Galerkin one, ``P^T L P``, so it depends on the shape alone and a
    brush stroke changes no matrix. All arrays here are in a compact order of their own, in which
    sparse products read memory nearly in sequence; `order` leads there
    (``compact = array[order]``) and `rank` back.

    Parameters
    ----------
    vertices
        (V, 3) mm.
    stiffness
        (V, V) positive semidefinite cotangent matrix; see `even_stiffness`.
    mass
        (V,) lumped mass, mm2.
    """

    def __init__(self, vertices: NDArray[np.float64], stiffness: Rows, mass: ArrayLike) -> None:
        count = len(vertices)
        self.order = space_filling_order(vertices)
        self.rank = np.empty(count, dtype=np.int32)
        self.rank[self.order] = np.arange(count, dtype=np.int32)
        ordered = vertices[self.order]
        self.positions = np.ascontiguousarray(ordered.T, dtype=np.float32)
        wide = sparse.csr_array(stiffness[self.order][:, self.order])
        weight = np.maximum(np.asarray(mass, dtype=np.float64)[self.order], 1e-12)
        fine = _level(wide, weight)
        coarse = _coarse(ordered, wide, weight)
        # The smoother must know where the spectrum ends: obtuse facets can take it beyond 2.
        end = max(2.1, 1.05 * largest_eigenvalue(fine))
        self.hierarchy = Hierarchy(fine=fine, coarse=coarse, smoother_end=end)
        first = np.arange(0, count, _BLOCK)
        self._low = np.minimum.reduceat(self.positions, first, axis=1)
        self._high = np.maximum.reduceat(self.positions, first, axis=1)
        self._place = np.full(count, -1, dtype=np.int32)
        self._coarse_place = np.full(len(coarse.level.mass), -1, dtype=np.int32)

    @property
    def count(self) -> int:
        """Number of vertices, V."""
        return len(self.order)

    def distance_mm(self, vertices: Indices, centre: Floats) -> Floats:
        """Return how far vertices (n,) are from a point (3,), as the crow flies."""
        x, y, z = self.positions[:, vertices] - centre[:, None]
        distance: Floats = np.sqrt(x * x + y * y + z * z)
        return distance

    def near(self, centre: Floats, radius_mm: float) -> Indices:
        """Return the vertices within a ball, ascending."""
        at = centre[:, None]
        beside = np.maximum(np.maximum(self._low - at, at - self._high), 0)
        blocks = np.flatnonzero((beside * beside).sum(axis=0) < radius_mm**2).astype(np.int32)
        within = np.arange(_BLOCK, dtype=np.int32)
        some: Indices = np.add.outer(blocks * np.int32(_BLOCK), within).ravel()
        some = some[: int(np.searchsorted(some, self.count))]
        inside: Indices = some[self.distance_mm(some, centre) < radius_mm]
        return inside

    def patch(self, centre: Floats, radius_mm: float, seeds: Indices) -> Patch:
        """Cut out whatever hangs together with the seeds (within the ball) inside a ball.

        Growing by connection and not by a mask keeps the patch whole across the margin, and
        leaves out the far side of a wall unless a seed lies on it.
        """
        whole = self.hierarchy
        inside = self.near(centre, radius_mm)
        rows = whole.fine.stiffness[inside]
        hanging = _hanging(self._within(rows, inside), np.searchsorted(inside, seeds))
        if not hanging.all():
            inside = inside[hanging]
            rows = whole.fine.stiffness[inside]
        fine = Level(
            stiffness=self._within(rows, inside),
            diagonal=whole.fine.diagonal[inside],
            mass=whole.fine.mass[inside],
        )
        coarse = self._coarse_within(inside, whole.coarse)
        return Patch(
            vertices=inside,
            rows=rows,
            rim_distance_mm=np.float32(radius_mm) - self.distance_mm(inside, centre),
            hierarchy=Hierarchy(fine=fine, coarse=coarse, smoother_end=whole.smoother_end),
        )

    def cut(self, matrix: Matrix, chosen: Indices) -> Matrix:
        """Return the rows and columns of some vertices of a (V, V) matrix."""
        return self._within(matrix[chosen], chosen)

    def _within(self, rows: Matrix, chosen: Indices) -> Matrix:
        """Return of some rows (n, V) the columns of some vertices (n,)."""
        self._place[chosen] = np.arange(len(chosen), dtype=np.int32)
        part = _columns(rows, self._place, len(chosen))
        self._place[chosen] = -1
        return part

    def _coarse_within(self, inside: Indices, coarse: Coarse) -> Coarse:
        """Return the coarse vertices that reach nowhere else: the patch's rim stays put."""
        self._place[inside] = 0
        ways = coarse.prolongation[inside]
        reached = np.zeros(len(self._coarse_place), dtype=np.bool_)
        reached[ways.indices] = True
        touched = np.flatnonzero(reached).astype(np.int32)
        columns, starts = _entries(coarse.restriction, touched)
        reaches_out = np.add.reduceat(self._place[columns] < 0, starts[:-1])
        self._place[inside] = -1
        chosen = touched[reaches_out == 0]
        count = len(chosen)
        self._coarse_place[chosen] = np.arange(count, dtype=np.int32)
        level = Level(
            stiffness=_columns(coarse.level.stiffness[chosen], self._coarse_place, count),
            diagonal=coarse.level.diagonal[chosen],
            mass=coarse.level.mass[chosen],
        )
        down = _columns(ways, self._coarse_place, count)
        self._coarse_place[chosen] = -1
        return Coarse(level=level, prolongation=down, restriction=down.T.tocsr())


def even_stiffness(mesh: TriMesh) -> Rows:
    """Return the cotangent matrix (V, V) with every sliver made a little less of one.

    Each facet by itself is mollified as `mollified_lengths` does the whole mesh, until its
    triangle inequality has a slack of a tenth of its own mean edge. Slivers couple their
    vertices hundreds of times more strongly than other facets do, which no smoother gets on top
    of. On scanned crowns under sharp streaks 99.9 % of all vertices change by less than
    0.1 dE00, the worst one by 0.2; on even meshes nothing changes.
    """
    lengths = mollified_lengths(mesh)[0]
    spare = lengths.sum(axis=1) - 2.0 * lengths.max(axis=1)
    lengthened = np.maximum(_LEAST_SLACK * lengths.mean(axis=1) - spare, 0.0)
    weights = half_cotangents(lengths + lengthened[:, None])
    return sparse.csr_array(stiffness_matrix(mesh.faces, weights, mesh.vertex_count))


def _single(matrix: Rows) -> Matrix:
    """Return a matrix in single precision with 32-bit, sorted indices."""
    data: Any = matrix.data.astype(np.float32)
    indices, starts = matrix.indices.astype(np.int32), matrix.indptr.astype(np.int32)
    narrow: Matrix = sparse.csr_array((data, indices, starts), shape=matrix.shape)
    narrow.sort_indices()
    return narrow


def _level(stiffness: Rows, mass: NDArray[np.float64]) -> Level:
    return Level(
        stiffness=_single(stiffness),
        diagonal=stiffness.diagonal().astype(np.float32)[:, None],
        mass=mass.astype(np.float32)[:, None],
    )


def _coarse(
    vertices: NDArray[np.float64],
    stiffness: Rows,
    mass: NDArray[np.float64],
) -> Coarse:
    scattered = smoothed_prolongation(stiffness)
    weight: NDArray[np.float64] = np.asarray(scattered.sum(axis=0), dtype=np.float64).ravel()
    centres = np.asarray(scattered.T @ vertices) / np.maximum(weight, 1e-12)[:, None]
    down = sparse.csr_array(scattered[:, space_filling_order(centres)])
    up = sparse.csr_array(down.T)
    return Coarse(
        level=_level(sparse.csr_array(up @ stiffness @ down), np.asarray(up @ mass)),
        prolongation=_single(down),
        restriction=_single(up),
    )


def largest_eigenvalue(level: Level, loss: Floats | None = None) -> float:
    """Return the largest eigenvalue of the Jacobi-scaled system, to a hundredth, by Lanczos steps.

    Without a loss, that of the stiffness alone, which is an upper bound for any loss. It may
    belong to a few obtuse facets alone, which the power method would not notice in time.
    """
    added = np.float32(0) if loss is None else loss
    scale = 1.0 / np.sqrt(np.maximum(level.diagonal + added, 1e-12))

    def image(vector: Floats) -> Floats:
        scaled = scale * vector.reshape(-1, 1)
        whole: Floats = scale * (level.stiffness @ scaled + added * scaled)
        return whole.ravel()

    count = len(level.mass)
    system = LinearOperator((count, count), matvec=image, dtype=np.float32)
    start = np.random.default_rng(0).standard_normal(count).astype(np.float32)
    found = eigsh(
        system,
        k=1,
        which="LA",
        tol=_EIGENVALUE_WITHIN,
        ncv=min(_LANCZOS_VECTORS, count),
        v0=start,
        return_eigenvectors=False,
    )
    return float(found[0])


def _entries(matrix: Matrix, rows: Indices) -> tuple[Indices, Indices]:
    """Return the column of every entry in some rows, and where each row begins, (n + 1,)."""
    begin = matrix.indptr[rows]
    length = matrix.indptr[rows + 1] - begin
    starts = np.zeros(len(rows) + 1, dtype=np.int32)
    np.cumsum(length, out=starts[1:])
    at = np.arange(starts[-1], dtype=np.int32) + np.repeat(begin - starts[:-1], length)
    return matrix.indices[at], starts


def _columns(rows: Matrix, place: Indices, count: int) -> Matrix:
    """Return of some rows the columns, `count` of them, that have a `place` from 0 up."""
    where = place[rows.indices]
    kept = where >= 0
    before = np.zeros(len(kept) + 1, dtype=np.int32)
    np.cumsum(kept, out=before[1:])
    entries = (rows.data[kept], where[kept], before[rows.indptr])
    return sparse.csr_array(entries, shape=(rows.shape[0], count))


def _hanging(stiffness: Matrix, seeds: NDArray[np.intp]) -> NDArray[np.bool_]:
    """Return which vertices hang together with any seed."""
    found = np.zeros(stiffness.shape[0], dtype=np.bool_)
    for seed in seeds:
        if not found[seed]:
            # Symmetric, so no need to have every edge looked at from both ends.
            reached = csgraph.breadth_first_order(
                stiffness, seed, directed=True, return_predecessors=False
            )
            found[reached] = True
    return found
