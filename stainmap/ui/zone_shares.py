"""Softened zone shares for drawing: borders as iso-lines instead of staircases of triangles.

For drawing only; how coats feather into each other is decided elsewhere.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from stainmap.surface.mesh import TriMesh

if TYPE_CHECKING:
    from scipy import sparse

    Matrix = sparse.csr_array

ZONE_COUNT = 6
ACCENTS = range(7, 14)
_LENGTH_MM = 0.1
# 12 steps of conjugate gradients come within 0.002 of the exact shares on a 0.14 mm mesh.
_STEPS = 12
_RINGS = 8
_FEW = 0.05
_TINY = 1e-30

Field = NDArray[np.float32]


class ZoneShares:
    """Shares of the six zones and seven accents on one mesh, kept up to date while painting.

    The labels go twice through screened diffusion, ``(M + s^2 L) x = M u``, solved by a few
    steps of conjugate gradients, so that no factorisation has to be waited for.
    """

    def __init__(self, mesh: TriMesh) -> None:
        from scipy import sparse  # noqa: PLC0415

        from stainmap.surface.diffusion import SurfaceOperator  # noqa: PLC0415

        operator = SurfaceOperator(mesh)
        mass = np.maximum(operator.mass, 1e-12)
        system = sparse.diags_array(mass) + _LENGTH_MM**2 * operator.stiffness
        self._system: Matrix[np.float32] = system.tocsr().astype(np.float32)
        self._mass = mass.astype(np.float32)[:, None]
        self._numbers = np.zeros(mesh.vertex_count, np.uint8)
        shape = (mesh.vertex_count, ZONE_COUNT)
        self._once: Field = np.zeros(shape, np.float32)
        self.zones: Field = np.zeros(shape, np.float32)
        self._masks: Field = np.zeros((mesh.vertex_count, len(ACCENTS)), np.float32)
        self.accents: Field = self._masks.copy()

    def set_zones(self, zones: NDArray[np.uint8]) -> None:
        """Take zone numbers (V,), 0 where there is none; a few changes are mended in place."""
        changed = np.flatnonzero(zones != self._numbers).astype(np.int32)
        if len(changed) < _FEW * len(zones):
            if len(changed):
                self.change_zones(changed, zones[changed])
            return
        self._numbers = zones.copy()
        once = _indicator(zones)
        _solve(self._system, self._mass * once, once)
        twice = once.copy()
        _solve(self._system, self._mass * once, twice)
        # Nobody sees what is half solved: this may run while they are drawn.
        self._once, self.zones = once, twice

    def is_close(
        self, zones: NDArray[np.uint8], accents: Mapping[int, NDArray[np.float32]]
    ) -> bool:
        """Return True if `set_zones` and `set_accents` would have a few changes to mend only."""
        few = _FEW * len(zones)
        if np.count_nonzero(zones != self._numbers) >= few:
            return False
        masks = hard_accents(len(zones), accents)
        return bool((np.count_nonzero(masks != self._masks, axis=0) < few).all())

    def change_zones(
        self, vertices: NDArray[np.int32], zones: NDArray[np.uint8]
    ) -> NDArray[np.int32]:
        """Take the new zone numbers (k,) of some vertices; return all whose shares changed."""
        self._numbers[vertices] = zones
        rows = self._around(vertices)
        self._mend(rows, _indicator(self._numbers[rows]), self._once)
        self._mend(rows, self._once[rows], self.zones)
        return rows

    def set_accents(self, accents: Mapping[int, NDArray[np.float32]]) -> None:
        """Take the soft masks (V,) of accents by their number, 7 to 13."""
        masks = hard_accents(len(self._masks), accents)
        for column in np.flatnonzero((masks != self._masks).any(axis=0)):
            changed = np.flatnonzero(masks[:, column] != self._masks[:, column]).astype(np.int32)
            if len(changed) < _FEW * len(masks):
                self.change_accent(int(column) + ACCENTS.start, changed, masks[changed, column])
                continue
            self._masks[:, column] = masks[:, column]
            field = masks[:, [column]]
            _solve(self._system, self._mass * masks[:, [column]], field)
            self.accents[:, column] = field[:, 0]

    def change_accent(
        self, number: int, vertices: NDArray[np.int32], share: NDArray[np.float32]
    ) -> NDArray[np.int32]:
        """Take the new mask (k,) of one accent at some vertices; return all that changed."""
        column = number - ACCENTS.start
        self._masks[vertices, column] = share
        rows = self._around(vertices)
        field = self.accents[:, column, None].copy()
        self._mend(rows, self._masks[rows, column, None], field)
        self.accents[rows, column] = field[rows, 0]
        return rows

    def _around(self, vertices: NDArray[np.int32]) -> NDArray[np.int32]:
        """Return vertices and some rings of neighbours about them, ascending."""
        from stainmap.surface.sparse_rows import entries_of  # noqa: PLC0415

        inside = np.zeros(len(self._numbers), dtype=np.bool_)
        inside[vertices] = True
        newest = vertices
        for _ in range(_RINGS):
            beside = self._system.indices[entries_of(self._system.indptr, newest)[0]]
            fresh = np.zeros_like(inside)
            fresh[beside] = True
            fresh &= ~inside
            inside |= fresh
            newest = np.flatnonzero(fresh).astype(np.int32)
        return np.flatnonzero(inside).astype(np.int32)

    def _mend(self, rows: NDArray[np.int32], right: Field, field: Field) -> None:
        """Solve anew at `rows`, where the labels are `right`, with the rest of `field` as it is."""
        from stainmap.surface.sparse_rows import square  # noqa: PLC0415

        residual = self._mass[rows] * right - self._system[rows] @ field
        correction = np.zeros_like(residual)
        _solve(square(self._system, rows), residual, correction)
        field[rows] += correction


def hard_shares(
    zones: NDArray[np.uint8], accents: Mapping[int, NDArray[np.float32]]
) -> tuple[Field, Field]:
    """Return shares of zones (V, 6) and accents (V, 7) before any border has been softened."""
    return _indicator(zones), hard_accents(len(zones), accents)


def hard_accents(count: int, accents: Mapping[int, NDArray[np.float32]]) -> Field:
    """Return the soft masks of accents by number as columns (V, 7), as they are."""
    masks = np.zeros((count, len(ACCENTS)), np.float32)
    for number, share in accents.items():
        masks[:, number - ACCENTS.start] = share
    return masks


def _solve(system: Matrix[np.float32], right: Field, x: Field) -> None:
    """Bring the columns of `x` close to ``system x = right``, in place (Jacobi-preconditioned)."""
    scale = 1.0 / system.diagonal()[:, None]
    residual = right - system @ x
    ready = scale * residual
    direction = ready.copy()
    size = (residual * ready).sum(axis=0)
    for _ in range(_STEPS):
        image = system @ direction
        step = size / np.maximum((direction * image).sum(axis=0), _TINY)
        x += step * direction
        residual -= step * image
        ready = scale * residual
        new_size = (residual * ready).sum(axis=0)
        direction = ready + (new_size / np.maximum(size, _TINY)) * direction
        size = new_size


def _indicator(zones: NDArray[np.uint8]) -> Field:
    shares = np.empty((len(zones), ZONE_COUNT), np.float32)
    for zone, column in enumerate(shares.T, start=1):
        column[:] = zones == zone
    return shares
