"""Liquid that wicks sideways through the porous surface before it dries: a spread of the load."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import sparse

from stainmap.predict.iterations import System
from stainmap.predict.levels import Floats, Level, Matrix, Patch, SurfaceLevels

# Bound of the error of the load by the maximum principle; what is left is thirty times less.
_TOLERANCE = 2e-3
_MOST_STEPS = 80
_PATCH_STEPS = 14


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WickingPatch:
    """The wicking equation cut down to a patch."""

    system: System
    loss: Floats


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
    """

    def __init__(self, levels: SurfaceLevels, outer: NDArray[np.bool_], length_mm: float) -> None:
        self._levels = levels
        self.length_mm = length_mm
        if length_mm > 0:
            fine = levels.hierarchy.fine
            stiffness = _conducting(fine.stiffness, outer)
            diagonal: Floats = stiffness.diagonal()[:, None]
            self._loss: Floats = fine.mass * np.float32(1.0 / length_mm**2)
            level = Level(stiffness=stiffness, diagonal=diagonal, mass=fine.mass)
            self._system = System(level, self._loss)

    def spread(self, raw: Floats, start: Floats | None = None) -> Floats:
        """Return the load (V, L) after wicking, of raw loads (V, L).

        `start` is a load already close to the answer.
        """
        if self.length_mm == 0 or not raw.shape[1]:
            return raw.copy()
        load = (raw if start is None else start).copy()
        residual: Floats = self._loss * raw
        self._system.subtract_image(residual, load)
        diagonal = self._system.level.diagonal
        enough: Floats = np.float32(_TOLERANCE) * (self._loss + np.float32(1e-3) * diagonal)
        self._system.conjugate_gradients(residual, load, _MOST_STEPS, enough)
        return np.maximum(load, 0, out=load)

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
        loss = self._loss[inside]
        return WickingPatch(system=System(level, loss), loss=loss)

    def change(self, patch: WickingPatch | None, raw_change: Floats) -> Floats:
        """Return the change of the load (n, L) on a patch, of a change of the raw load there."""
        if patch is None:
            return raw_change
        step = np.zeros_like(raw_change)
        patch.system.conjugate_gradients(patch.loss * raw_change, step, _PATCH_STEPS)
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
