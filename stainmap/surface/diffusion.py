"""The surface's Laplacian and smoothing with it: the one operator behind everything spread out."""

from __future__ import annotations

from collections import OrderedDict
from threading import RLock

import numpy as np
from numpy.typing import ArrayLike
from scipy import sparse

from stainmap.surface.dissection import nested_dissection
from stainmap.surface.factoring import Factor
from stainmap.surface.mesh import BoolArray, FloatArray, IndexArray, TriMesh, frozen
from stainmap.surface.screened import RESIDUAL, ScreenedSolver

# Above this many vertices our own nested dissection beats SuperLU's minimum degree.
DISSECTION_FROM = 60_000
# Slack of the triangle inequality that every facet gets, in mean edge lengths [Sharp2020].
MOLLIFICATION = 1e-3
# Above this many a factor takes hundreds of megabytes, and seconds to make.
ITERATION_FROM = 100_000
# Entries of all kept factors together: 12 bytes each, so about a quarter of a gigabyte.
_ENTRIES_KEPT = 20_000_000


def mollified_lengths(mesh: TriMesh, slack: float = MOLLIFICATION) -> tuple[FloatArray, float]:
    """Return edge lengths lengthened just enough that no facet is degenerate.

    The smallest length eps is added to every edge that gives each facet l_i + l_j - l_k of at
    least `slack` mean edge lengths (intrinsic mollification, [Sharp2020]). Without it a facet of
    nearly no area makes cotangents explode, and clipping them makes the matrix indefinite.

    Returns
    -------
    lengths, eps
        (F, 3) lengths opposite corners 0, 1, 2, and the length added, mm.
    """
    opposite = np.empty((mesh.face_count, 3))
    for corner, (start, end) in enumerate(((1, 2), (2, 0), (0, 1))):
        squared = np.zeros(mesh.face_count)
        for x in mesh.vertices.T:
            squared += (x[mesh.faces[:, end]] - x[mesh.faces[:, start]]) ** 2
        np.sqrt(squared, out=opposite[:, corner])
    if not len(opposite):
        return opposite, 0.0
    total = opposite.sum(axis=1)
    spare = float((total - 2.0 * opposite.max(axis=1)).min())
    eps = max(0.0, slack * float(opposite.mean()) - spare)
    return opposite + eps, eps


def half_cotangents(lengths: FloatArray) -> FloatArray:
    """Return half the cotangents (F, 3) at the corners opposite edges of given lengths (F, 3).

    The area comes from Kahan's arrangement of Heron's formula, which is stable for slivers
    [Kahan2014].
    """
    c, b, a = np.sort(lengths, axis=1).T
    product = (a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c))
    four_areas = np.sqrt(np.maximum(product, 0.0))
    square = lengths**2
    return np.asarray((square.sum(axis=1)[:, None] - 2.0 * square) / (2.0 * four_areas[:, None]))


def stiffness_matrix(
    faces: IndexArray, half_cotangent: FloatArray, vertex_count: int
) -> sparse.csc_array[np.float64]:
    """Assemble the positive semidefinite cotangent matrix [Pinkall1993], (V, V)."""
    i, j = faces[:, [1, 2, 0]].ravel(), faces[:, [2, 0, 1]].ravel()
    weight = -half_cotangent.ravel()
    beside = sparse.coo_array(
        (np.concatenate([weight, weight]), (np.concatenate([i, j]), np.concatenate([j, i]))),
        shape=(vertex_count, vertex_count),
    ).tocsc()
    return (beside - sparse.diags_array(beside.sum(axis=0))).tocsc()


class SurfaceOperator:
    """Laplacian, mass and smoothing of one surface.

    ``smooth(u, s) = (M + s^2 L)^-1 M u`` with the lumped mass M and the cotangent matrix L: the
    screened diffusion of u. A point's value spreads as K0(r/s)/(2 pi s^2), whose second moment is
    4 s^2. The integral of u is kept, and a constant stays what it is.

    The matrix of an obtuse mesh has a few positive off-diagonal entries, so a sharp step may
    overshoot by a per mille or so; callers that need bounds clip.

    Parameters
    ----------
    mesh
        The surface.
    within
        (V,) bool. If given, only faces with all three corners in the mask conduct and weigh;
        vertices without such a face keep their values. See `restricted`.
    dissection_from
        Number of vertices from which the nested-dissection order is used.
    iteration_from
        Number of vertices from which the whole is not factored: see `ScreenedSolver`.
    residual
        Relative residual at which that solver stops.
    """

    def __init__(
        self,
        mesh: TriMesh,
        *,
        within: BoolArray | None = None,
        dissection_from: int = DISSECTION_FROM,
        iteration_from: int = ITERATION_FROM,
        residual: float = RESIDUAL,
    ) -> None:
        self._mesh = mesh
        self._dissection_from = dissection_from
        self._iteration_from = iteration_from
        self._residual = residual
        lengths, self._mollified_by_mm = mollified_lengths(mesh)
        faces, areas = mesh.faces, mesh.face_areas
        if within is None:
            half_cotangent = half_cotangents(lengths)
        else:
            mask = np.asarray(within)
            if mask.shape != (mesh.vertex_count,) or mask.dtype != np.bool_:
                raise ValueError(f"the mask must be {mesh.vertex_count} booleans")
            chosen = mask[faces].all(axis=1)
            faces, areas = faces[chosen], areas[chosen]
            half_cotangent = half_cotangents(lengths[chosen])
        self._stiffness = stiffness_matrix(faces, half_cotangent, mesh.vertex_count)
        third = np.repeat(areas / 3.0, 3)
        mass: FloatArray = np.asarray(
            np.bincount(faces.ravel(), third, minlength=mesh.vertex_count), dtype=np.float64
        )
        used = np.zeros(mesh.vertex_count, dtype=np.bool_)
        used[faces] = True
        # A vertex with degenerate faces only must still weigh something, or the matrix is singular.
        if used.any():
            floor = 1e-9 * max(float(mass[used].mean()), 1e-30)
            mass[used] = np.maximum(mass[used], floor)
        self._mass: FloatArray = frozen(mass)
        self._active = frozen(np.flatnonzero(used).astype(np.int32))
        self._factors: OrderedDict[float, Factor] = OrderedDict()
        self._order: IndexArray | None = None
        self._system: tuple[sparse.csc_array[np.float64], FloatArray] | None = None
        self._solver: ScreenedSolver | None = None
        self._lock = RLock()

    @property
    def mesh(self) -> TriMesh:
        """The surface."""
        return self._mesh

    @property
    def stiffness(self) -> sparse.csc_array[np.float64]:
        """(V, V) positive semidefinite cotangent matrix; rows of inactive vertices are empty."""
        return self._stiffness

    @property
    def mass(self) -> FloatArray:
        """(V,) lumped (barycentric) area of each vertex, mm2; zero where inactive."""
        return self._mass

    @property
    def active(self) -> IndexArray:
        """Vertices that take part: those with a face (of the mask, if there is one)."""
        return self._active

    @property
    def mollified_by_mm(self) -> float:
        """Length that was added to every edge, mm."""
        return self._mollified_by_mm

    def restricted(self, mask: BoolArray) -> SurfaceOperator:
        """Return the operator of the faces wholly inside a vertex mask, on the full length.

        Nothing flows across the border of the mask: values outside it stay exactly as they are
        and do not matter inside. Its `mass` counts the faces inside only, and the integral with
        that mass is kept.
        """
        return SurfaceOperator(
            self._mesh,
            within=mask,
            dissection_from=self._dissection_from,
            iteration_from=self._iteration_from,
            residual=self._residual,
        )

    def smooth(self, values: ArrayLike, length_mm: float) -> FloatArray:
        """Spread values over the surface by screened diffusion.

        Parameters
        ----------
        values
            (V,) or (V, k), finite.
        length_mm
            s, not negative; 0 returns a copy.

        Returns
        -------
        smoothed
            float64, same shape.

        Raises
        ------
        ValueError
            If the shape is wrong, a value is not finite, or the length is negative or not finite.
        """
        field = np.array(values, dtype=np.float64)
        if field.ndim not in (1, 2) or len(field) != self._mesh.vertex_count:
            raise ValueError(
                f"values must have shape ({self._mesh.vertex_count},) or"
                f" ({self._mesh.vertex_count}, k), not {field.shape}"
            )
        if not np.isfinite(field).all():
            raise ValueError("values hold something that is not a finite number")
        if not (np.isfinite(length_mm) and length_mm >= 0):
            raise ValueError(f"length_mm must be a number from 0 up, not {length_mm}")
        if length_mm == 0 or not len(self._active) or not field.size:
            return field
        if len(self._active) >= self._iteration_from:
            field[self._active] = self._iterate(field[self._active], float(length_mm))
            return field
        factor, order = self._factor(float(length_mm))
        moved = field[order] if field.ndim == 1 else np.asfortranarray(field[order])
        mass = self._mass[order]
        weighted = mass * moved if field.ndim == 1 else np.asfortranarray(mass[:, None] * moved)
        field[order] = factor.solve(weighted)
        if not np.isfinite(field).all():
            raise ValueError(f"the surface cannot be smoothed over {length_mm} mm")
        return field

    def prepare(self, length_mm: float) -> None:
        """Factor for a length now, so that the first `smooth` with it is quick."""
        if length_mm > 0 and 0 < len(self._active) < self._iteration_from:
            self._factor(float(length_mm))

    def forget(self) -> None:
        """Drop all that solving has prepared, some hundred megabytes on a large mesh."""
        with self._lock:
            self._factors.clear()
            self._order = self._system = self._solver = None

    def _iterate(self, field: FloatArray, length_mm: float) -> FloatArray:
        """Solve for the active vertices without factoring the whole."""
        with self._lock:
            solver = self._solver
            if solver is None:
                # Symmetric: its transpose is the same matrix by rows, without a copy.
                rows = self._stiffness.T
                if len(self._active) < self._mesh.vertex_count:
                    rows = sparse.csr_array(rows[self._active][:, self._active])
                solver = ScreenedSolver(rows, self._mass[self._active], residual=self._residual)
                self._solver = solver
        return solver.solve(field, length_mm)

    def _factor(self, length_mm: float) -> tuple[Factor, IndexArray]:
        """Return the factorisation for a length and the order of its unknowns."""
        with self._lock:
            if self._order is None or self._system is None:
                self._order, self._system = self._ordered_system()
            kept = self._factors.get(length_mm)
            if kept is not None:
                self._factors.move_to_end(length_mm)
                return kept, self._order
            stiffness, mass = self._system
            matrix = (sparse.diags_array(mass) + length_mm**2 * stiffness).tocsc()
            factor = Factor(matrix, ordered=len(mass) >= self._dissection_from)
            self._factors[length_mm] = factor
            while (
                len(self._factors) > 1
                and sum(one.entries for one in self._factors.values()) > _ENTRIES_KEPT
            ):
                self._factors.popitem(last=False)
            return factor, self._order

    def _ordered_system(self) -> tuple[IndexArray, tuple[sparse.csc_array[np.float64], FloatArray]]:
        """Return the order of the unknowns, and stiffness and mass in that order."""
        order = self._active
        rows = self._stiffness.tocsr()
        if len(order) >= self._dissection_from:
            active = rows[order][:, order]
            order = order[nested_dissection(self._mesh.vertices[order], active)]
        if len(order) == self._mesh.vertex_count and order is self._active:
            return order, (self._stiffness, self._mass)
        return order, (rows[order][:, order].tocsc(), self._mass[order])
