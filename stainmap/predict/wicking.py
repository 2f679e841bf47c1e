"""Liquid that wicks sideways through the porous surface before it dries: a spread of the load."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import sparse

from stainmap.predict.iterations import System
from stainmap.predict.levels import Floats, Level, Matrix, Patch, SurfaceLevels

# Bound of the error of the load by the maximum principle; what is left is thirty times less.
_TOLERANCE = np.float32(2e-3)
_MOST_STEPS = 80


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WickingPatch:
    """The wicking equation cut down to a patch, and the residual (n, 1) that is small enough."""

    system: System
    enough: Floats


class Wicking:
    """Screened diffusion of the load, ``(1 - s^2 Laplacian) load = raw load``.

    The operator never changes while one crown is painted. Only conductances above zero are kept
    (the cotangent matrix of an obtuse mesh has a few below): more liquid in one place can then
    never mean less in another, and no load leaves the range of the raw ones. Liquid does not
    wick across the edge between outer and inner surface: what is painted on one side stays
    there. The mean load of either side is kept.

    All arrays are in the compact order of the levels.

    Parameters
    ----------
    levels
        Stiffness and mass of the surface.
    outer
        (V,) bool, the outer surface, in the compact order.
    length_mm
        s, sintered mm; 0 for none.
    threads
        Number of threads; liquids are shared out among them.
    """

    def __init__(
        self,
        levels: SurfaceLevels,
        outer: NDArray[np.bool_],
        length_mm: float,
        *,
        threads: int = 2,
    ) -> None:
        self._levels = levels
        self._threads = threads
        self._pool = ThreadPoolExecutor(threads) if threads > 1 else None
        self.length_mm = length_mm
        if length_mm > 0:
            fine = levels.hierarchy.fine
            stiffness = _conducting(fine.stiffness, outer)
            diagonal: Floats = stiffness.diagonal()[:, None]
            loss: Floats = fine.mass * np.float32(1.0 / length_mm**2)
            level = Level(stiffness=stiffness, diagonal=diagonal, mass=fine.mass)
            self._system = System(level, loss)
            # Vertices of hardly any area are held by their neighbours, not by their own loss.
            self._enough: Floats = _TOLERANCE * (loss + np.float32(1e-3) * diagonal)

    def spread(self, raw: Floats, start: Floats | None = None) -> Floats:
        """Return the load (V, L) after wicking, of raw loads (V, L).

        `start` is a load already close to the answer.
        """
        if self.length_mm == 0 or not raw.shape[1]:
            return raw.copy()
        load = np.empty_like(raw)

        def work(liquids: NDArray[np.intp]) -> None:
            there = raw[:, liquids]
            found = there.copy() if start is None else start[:, liquids]
            residual: Floats = self._system.loss * there
            self._system.subtract_image(residual, found)
            self._system.conjugate_gradients(residual, found, _MOST_STEPS, self._enough)
            load[:, liquids] = np.maximum(found, 0)

        groups = np.array_split(np.arange(raw.shape[1]), min(self._threads, raw.shape[1]))
        list((self._pool.map if self._pool else map)(work, groups))
        return load

    def patch(self, patch: Patch) -> WickingPatch | None:
        """Cut the equation down to a patch; None where nothing wicks."""
        if self.length_mm == 0:
            return None
        inside = patch.vertices
        whole = self._system.level
        level = Level(
            stiffness=self._levels.cut(whole.stiffness, inside),
            diagonal=whole.diagonal[inside],
            mass=whole.mass[inside],
        )
        system = System(level, self._system.loss[inside])
        return WickingPatch(system=system, enough=self._enough[inside])

    def change(self, patch: WickingPatch | None, raw_change: Floats) -> Floats:
        """Return the change of the load (n, L) on a patch, of a change of the raw load there."""
        if patch is None:
            return raw_change
        step = np.zeros_like(raw_change)
        residual: Floats = patch.system.loss * raw_change
        patch.system.conjugate_gradients(residual, step, _MOST_STEPS, patch.enough)
        return step


def _conducting(stiffness: Matrix, outer: NDArray[np.bool_]) -> Matrix:
    """Return the stiffness of the edges that conduct liquid."""
    row = np.repeat(np.arange(len(outer)), np.diff(stiffness.indptr))
    column = stiffness.indices
    conducts = (stiffness.data < 0) & (row != column) & (outer[row] == outer[column])
    row, column, entry = row[conducts], column[conducts], stiffness.data[conducts]
    total = np.bincount(row, -entry, minlength=len(outer)).astype(np.float32)
    edges = sparse.csr_array((entry, (row, column)), shape=stiffness.shape)
    matrix: Matrix = sparse.csr_array(edges + sparse.diags_array(total))
    return matrix
