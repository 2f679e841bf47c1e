"""Solving on two levels of mesh: smoothing on the fine one, correction from the coarse one."""

from __future__ import annotations

import numpy as np

from stainmap.predict.iterations import ALONE, Rows, System, Team, product
from stainmap.predict.levels import Floats, Hierarchy, Indices, Matrix


class TwoLevels:
    """The matrices of a hierarchy, shared out among a team of threads, and cycles on them.

    Parameters
    ----------
    hierarchy
        Both levels and the ways between them.
    team
        Threads that share every product out.
    smoothing_steps, correction_steps
        Chebyshev steps before and after each correction, and steps of conjugate gradients on
        the coarse level within one.
    smoother_begin
        Lower end of what is smoothed of the spectrum of the Jacobi-scaled system.
    """

    def __init__(
        self,
        hierarchy: Hierarchy,
        team: Team = ALONE,
        *,
        smoothing_steps: int,
        correction_steps: int,
        smoother_begin: float,
    ) -> None:
        self.hierarchy = hierarchy
        self.team = team
        self._fine = Rows(hierarchy.fine.stiffness, team)
        self._coarse = Rows(hierarchy.coarse.level.stiffness, team)
        self._down = Rows(hierarchy.coarse.prolongation, team)
        self._up = Rows(hierarchy.coarse.restriction, team)
        self._mixed, self._squares = _rows_of_both_signs(hierarchy.coarse.restriction)
        self._smoothing_steps = smoothing_steps
        self._correction_steps = correction_steps
        self._spectrum = (smoother_begin, hierarchy.smoother_end)

    def fine_system(self, loss: Floats) -> System:
        """Return the system of the fine level with a loss (n, k)."""
        return System(self.hierarchy.fine, loss, self.team, self._fine)

    def coarse_system(self, loss: Floats) -> System:
        """Return that of the coarse level, the loss averaged onto it and not sampled.

        Obtuse facets give the way between the levels a few weights below zero, and a loss could
        come out below zero with them: no step of conjugate gradients would hold then. Such a
        coarse vertex has at least the loss of its own shape alone, weights squared.
        """
        level = self.hierarchy.coarse.level
        averaged = self.team.product(self._up, loss)
        if len(self._mixed):
            alone = product(self._squares, loss)
            averaged[self._mixed] = np.maximum(averaged[self._mixed], alone)
        return System(level, averaged, self.team, self._coarse)

    def down(self, field: Floats) -> Floats:
        """Return a field of the coarse level on the fine one."""
        return self.team.product(self._down, field)

    def up(self, field: Floats) -> Floats:
        """Return the sums of a field of the fine level over the coarse one."""
        return self.team.product(self._up, field)

    def correction(self, coarse: System, residual: Floats) -> Floats:
        """Return the part of the error that the coarse level can see, on the fine level."""
        rest = self.up(residual)
        step = np.zeros_like(rest)
        coarse.conjugate_gradients(rest, step, self._correction_steps)
        return self.down(step)

    def smooth(self, fine: System, residual: Floats, solution: Floats) -> None:
        """Take the rough part of the error off; residual and solution are kept up to date."""
        fine.smooth(residual, solution, self._spectrum, self._smoothing_steps)

    def refine(
        self, fine: System, coarse: System, residual: Floats, solution: Floats, cycles: int
    ) -> None:
        """Improve a solution in place by cycles of smoothing, correction and smoothing."""
        for _ in range(cycles):
            self.smooth(fine, residual, solution)
            step = self.correction(coarse, residual)
            solution += step
            fine.subtract_image(residual, step)
            self.smooth(fine, residual, solution)


def _rows_of_both_signs(matrix: Matrix) -> tuple[Indices, Matrix]:
    """Return the rows that have an entry below zero, and these rows with all entries squared."""
    below = np.flatnonzero(matrix.data < 0)
    rows = np.unique(np.searchsorted(matrix.indptr, below, side="right") - 1).astype(np.int32)
    squares = matrix[rows]
    squares.data = np.square(squares.data)
    return rows, squares
