"""Liquid that wicks sideways through the porous surface before it dries: a spread of the load."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import sparse

from stainmap.predict.iterations import System, Team
from stainmap.predict.levels import (
    Coarse,
    Floats,
    Hierarchy,
    Indices,
    Level,
    Matrix,
    Patch,
    SurfaceLevels,
    largest_eigenvalue,
)
from stainmap.predict.two_levels import TwoLevels

# Bound of the error of the load by the maximum principle. What is left is forty times less:
# 0.0003 at most on a crown of even facets and on one of uneven ones.
_TOLERANCE = np.float32(1e-2)
_MOST_STEPS = 80
# Steps of a cycle on two levels; few cycles are needed, since the length is about two edges.
_MOST_CYCLES = 12
_SMOOTHING_STEPS = 3
_CORRECTION_STEPS = 4
_SMOOTHER_BEGIN = 0.25


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WickingPatch:
    """The wicking equation cut down to where liquid comes within a patch.

    Parameters
    ----------
    vertices
        (n,) ascending, in the compact order.
    system, enough
        The equation there, and the residual (n, 1) that is small enough.
    """

    vertices: Indices
    system: System | None
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
        Number of threads; vertices are shared out among them.
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
        self.length_mm = length_mm
        if length_mm > 0:
            fine = levels.hierarchy.fine
            stiffness = _conducting(fine.stiffness, outer)
            diagonal: Floats = stiffness.diagonal()[:, None]
            loss: Floats = fine.mass * np.float32(1.0 / length_mm**2)
            level = Level(stiffness=stiffness, diagonal=diagonal, mass=fine.mass)
            team = Team(threads)
            self._two = TwoLevels(
                Hierarchy(
                    fine=level,
                    coarse=_coarse(level, levels.hierarchy.coarse.prolongation, outer),
                    smoother_end=max(1.0, 1.05 * largest_eigenvalue(level, loss)),
                ),
                team,
                smoothing_steps=_SMOOTHING_STEPS,
                correction_steps=_CORRECTION_STEPS,
                smoother_begin=_SMOOTHER_BEGIN,
            )
            self._system = self._two.fine_system(loss)
            self._coarse = self._two.coarse_system(loss)
            # Vertices of hardly any area are held by their neighbours, not by their own loss.
            self._enough: Floats = _TOLERANCE * (loss + np.float32(1e-3) * diagonal)

    def spread(self, raw: Floats, start: Floats | None = None) -> Floats:
        """Return the load (V, L) after wicking, of raw loads (V, L).

        `start` is a load already close to the answer.
        """
        if self.length_mm == 0 or not raw.shape[1]:
            return raw.copy()
        found = raw.copy()
        liquids = np.flatnonzero((raw > 0).any(axis=0))
        if not len(liquids):
            return found
        there = np.ascontiguousarray(raw[:, liquids])
        load = there.copy() if start is None else np.ascontiguousarray(start[:, liquids])
        residual: Floats = self._system.loss * there
        self._system.subtract_image(residual, load)
        for cycle in range(_MOST_CYCLES):
            # What a patch cut off at its rim is less than that bound, so one cycle in any case.
            if cycle and not (np.abs(residual) > self._enough).any():
                break
            self._two.refine(self._system, self._coarse, residual, load, 1)
        found[:, liquids] = np.maximum(load, 0)
        return found

    def patch(self, patch: Patch, within_mm: float = 0.0) -> WickingPatch:
        """Cut the equation down to what of a patch is at least so far from its rim."""
        inside = patch.vertices
        if within_mm > 0:
            inside = inside[patch.rim_distance_mm >= within_mm]
        if self.length_mm == 0:
            return WickingPatch(vertices=inside, system=None, enough=np.empty(0, np.float32))
        whole = self._system.level
        level = Level(
            stiffness=self._levels.cut(whole.stiffness, inside),
            diagonal=whole.diagonal[inside],
            mass=whole.mass[inside],
        )
        system = System(level, self._system.loss[inside])
        return WickingPatch(vertices=inside, system=system, enough=self._enough[inside])

    def change(self, patch: WickingPatch, raw_change: Floats) -> Floats:
        """Return the change of the load (n, L) on a patch, of a change of the raw load there."""
        system = patch.system
        if system is None:
            return raw_change
        step = np.zeros_like(raw_change)
        residual: Floats = system.loss * raw_change
        for liquid in range(raw_change.shape[1]):
            # One by one: a few liquids at once take as long, each waiting for the slowest.
            here = slice(liquid, liquid + 1)
            column, found = residual[:, here].copy(), step[:, here].copy()
            system.conjugate_gradients(column, found, _MOST_STEPS, patch.enough)
            step[:, here] = found
        return step


def _coarse(fine: Level, prolongation: Matrix, outer: NDArray[np.bool_]) -> Coarse:
    """Return the coarse level of the wicking equation.

    It is that of the levels, each coarse vertex that reaches both sides of the rim being split
    in two, so that nothing crosses there either.
    """
    sides = []
    for side in (outer, ~outer):
        part = sparse.csr_array(sparse.diags_array(side.astype(np.float32)) @ prolongation)
        reached = np.flatnonzero(np.bincount(part.indices, np.abs(part.data) > 0, part.shape[1]))
        sides.append(sparse.csr_array(part.tocsc()[:, reached]))
    down: Matrix = sparse.csr_array(sparse.hstack(sides, format="csr"))
    down.sort_indices()
    up: Matrix = sparse.csr_array(down.T.tocsr())
    stiffness: Matrix = sparse.csr_array(up @ fine.stiffness @ down)
    level = Level(
        stiffness=stiffness,
        diagonal=stiffness.diagonal()[:, None],
        mass=up @ fine.mass,
    )
    return Coarse(level=level, prolongation=down, restriction=up)


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
