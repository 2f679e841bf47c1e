"""Screened diffusion on large surfaces without a factorisation of the whole.

Conjugate gradients on ``M + s^2 L``, preconditioned by Jacobi steps and, for lengths of many
edges, by a direct solve on a much coarser level. A factorisation of a quarter of a million
unknowns would take half a gigabyte.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy import sparse

from stainmap.surface.coarsening import aggregates, smoothed_prolongation
from stainmap.surface.factoring import Factor

FloatArray = NDArray[np.float64]
Rows = sparse.csr_array[np.float64]

# Coordinates of 10 mm then err by some 1e-5 mm, far below the depth of any groove.
RESIDUAL = 1e-6
_MOST_STEPS = 2_000
_SMALLEST = 1e-300
_DAMPING = 0.6
# Without a coarse level the number of steps grows as the length in edges; with one it does not.
_COARSE_FROM = 200.0
# Coarse unknowns, about: their factor then takes some megabytes and a tenth of a second.
_COARSE_COUNT = 8_000


class ScreenedSolver:
    """Solves ``(M + s^2 L) x = M u`` for any length s on one surface.

    Parameters
    ----------
    stiffness
        (n, n) positive semidefinite cotangent matrix L.
    mass
        (n,) lumped mass M, above zero.
    residual
        Where to stop: residual of every column relative to its right-hand side.
    """

    def __init__(self, stiffness: Rows, mass: FloatArray, *, residual: float = RESIDUAL) -> None:
        self._residual = residual
        self._stiffness = stiffness
        self._mass = mass[:, None]
        self._diagonal = stiffness.diagonal()[:, None]
        self._stiffest = float(np.median(self._diagonal / self._mass))
        self._levels: tuple[Rows, Rows, Any, Any] | None = None

    def solve(self, field: FloatArray, length_mm: float) -> FloatArray:
        """Return the smoothed field; field is (n,) or (n, k).

        The relative residual of every column is below what was asked for.
        """
        square = length_mm**2
        u = field.reshape(len(field), -1).copy()
        diagonal = self._mass + square * self._diagonal
        coarse = self._coarse(square) if square * self._stiffest > _COARSE_FROM else None
        # The field itself is the first guess: then r = M u - (M + s^2 L) u = -s^2 L u.
        residual: FloatArray = np.asarray(self._stiffness @ u) * -square
        wanted = self._residual * np.linalg.norm(self._mass * u, axis=0)
        direction = np.zeros_like(u)
        old = np.ones(u.shape[1])
        for _ in range(_MOST_STEPS):
            if (np.linalg.norm(residual, axis=0) <= wanted).all():
                break
            z = self._precondition(residual, square, diagonal, coarse)
            new = (residual * z).sum(axis=0)
            direction *= new / np.maximum(old, _SMALLEST)
            direction += z
            image = self._apply(direction, square)
            step = new / np.maximum((direction * image).sum(axis=0), _SMALLEST)
            u += step * direction
            residual -= step * image
            old = new
        return u.reshape(field.shape)

    def _apply(self, x: FloatArray, square: float) -> FloatArray:
        image = self._stiffness @ x
        image *= square
        image += self._mass * x
        return np.asarray(image)

    def _precondition(
        self, residual: FloatArray, square: float, diagonal: FloatArray, coarse: Factor | None
    ) -> FloatArray:
        """Return an approximate solution; the same symmetric positive operator in every step."""
        if coarse is None or self._levels is None:
            return residual / diagonal
        prolongation, restriction, _, _ = self._levels
        z = _DAMPING * residual / diagonal
        rest = residual - self._apply(z, square)
        z += np.asarray(prolongation @ coarse.solve(np.ascontiguousarray(restriction @ rest)))
        rest = residual - self._apply(z, square)
        z += _DAMPING * rest / diagonal
        return z

    def _coarse(self, square: float) -> Factor:
        """Return the factorised coarse operator of a few thousand unknowns.

        Smoothed aggregation gives the first level, plain aggregation the further ones: smoothing
        those as well would fill the matrices.
        """
        if self._levels is None:
            prolongation = smoothed_prolongation(self._stiffness)
            while prolongation.shape[1] > _COARSE_COUNT:
                between = sparse.csr_array(prolongation.T @ self._stiffness @ prolongation)
                further = aggregates(between)
                if further.max() + 1 == prolongation.shape[1]:
                    break
                gathered = sparse.csr_array(
                    (np.ones(len(further)), further, np.arange(len(further) + 1))
                )
                prolongation = sparse.csr_array(prolongation @ gathered)
            restriction = sparse.csr_array(prolongation.T)
            stiffness = (restriction @ self._stiffness @ prolongation).tocsc()
            weighted = sparse.diags_array(self._mass[:, 0]) @ prolongation
            mass = (restriction @ weighted).tocsc()
            self._levels = (prolongation, restriction, stiffness, mass)
        _, _, stiffness, mass = self._levels
        return Factor((mass + square * stiffness).tocsc())
