"""Light that spreads sideways inside the ceramic: the membrane with local loss, per band."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.predict.iterations import System, product, scale_columns
from stainmap.predict.levels import Coarse, Floats, Hierarchy, Patch, SurfaceLevels

# Fitted to Monte Carlo profiles of narrow stains at reduced scattering 4.2 to 8.6 per mm and
# walls of 0.6 to 1.5 mm; beyond that they are extrapolated.
EXPONENT = 1.282
REFERENCE_REFLECTANCE = 0.4
_SPREAD_MM, _SPREAD_POWER, _SPREAD_SCATTERING = 0.461, 0.891, 8.6
_DIRECT_SHARE = 0.595

# Steps of the two-level solve, chosen by the error that is left against a converged solve.
_CYCLES = 2
_COARSE_STEPS = 20
_CORRECTION_STEPS = 8
_SMOOTHING_STEPS = 4
_SMOOTHER_BEGIN = 0.25
# More bands at once than this fall out of the processor's cache.
_BANDS_AT_ONCE = 16
# The solution lies far above; only a step cut short on a broken mesh could fall below.
_LEAST_PHI = np.float32(1e-6)


def spread_mm(reduced_scattering_per_mm: ArrayLike) -> NDArray[np.float64]:
    """Return the length over which light spreads sideways, for reduced scattering in 1/mm."""
    scattering = np.asarray(reduced_scattering_per_mm, dtype=np.float64)
    return np.asarray(_SPREAD_MM * (_SPREAD_SCATTERING / scattering) ** _SPREAD_POWER)


def direct_share(reduced_scattering_per_mm: ArrayLike) -> NDArray[np.float64]:
    """Return the share of light that leaves where it entered, for reduced scattering in 1/mm."""
    return np.asarray(_DIRECT_SHARE / np.asarray(reduced_scattering_per_mm, dtype=np.float64))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Solution:
    """Solved phi (V, bands), and by what share the coarse level alone would have missed it."""

    phi: Floats
    coarse_gap: Floats


class Membrane:
    """Sideways light on one surface: ``((0.4 / R1)^p - s^2 Laplacian) phi = 1`` in every band.

    R1 is the one-dimensional reflectance (hemispherical, first surface left out) of the wall at
    each vertex; the light that comes out is ``R = (1 - c) 0.4 phi^(1/p) + c R1``. The equation
    is divided by s^2 here, so that no band factor stands in front of the stiffness.

    The whole surface is one membrane: light does go round a thin rim. All arrays are (n, bands),
    single precision, in the compact order of the levels.

    Parameters
    ----------
    levels
        Stiffness and mass of the surface.
    spread_mm
        (bands,) s, sintered mm.
    direct_share
        (bands,) c, 0 to 1.
    exponent
        p.
    threads
        Number of threads; bands are shared out among them.
    """

    def __init__(
        self,
        levels: SurfaceLevels,
        spread_mm: ArrayLike,
        direct_share: ArrayLike,
        *,
        exponent: float = EXPONENT,
        threads: int = 2,
    ) -> None:
        spread = np.asarray(spread_mm, dtype=np.float64)
        self._hierarchy = levels.hierarchy
        self._per_spread = (1.0 / spread**2).astype(np.float32)
        self._direct = np.asarray(direct_share, dtype=np.float32)
        self._exponent = np.float32(exponent)
        self._pool = ThreadPoolExecutor(threads) if threads > 1 else None
        groups = min(len(spread), max(threads, -(-len(spread) // _BANDS_AT_ONCE)))
        shared = np.array_split(np.arange(len(spread)), groups)
        self._groups = [slice(int(group[0]), int(group[-1]) + 1) for group in shared]
        self.reach_mm = float(spread.max())

    def reflectance(self, phi: Floats, R1: Floats) -> Floats:
        """Return the reflectance that comes out, from phi and R1 of the same vertices."""
        out = np.log(phi)
        out /= self._exponent
        np.exp(out, out=out)
        scale_columns(out, (1 - self._direct) * np.float32(REFERENCE_REFLECTANCE), out=out)
        out += scale_columns(R1, self._direct)
        return out

    def reflectance_slope(self, R: Floats, R1: Floats) -> Floats:
        """Return by how much the reflectance changes per relative change of phi."""
        slope = R - scale_columns(R1, self._direct)
        slope /= self._exponent
        return slope

    def solve(self, R1: Floats, *, cycles: int = _CYCLES) -> Solution:
        """Solve the whole surface from R1 (V, bands), above 0, by two-level cycles."""
        hierarchy = self._hierarchy
        phi, gap = np.empty_like(R1), np.empty_like(R1)

        def work(bands: slice) -> None:
            loss, supply = self._equation(R1, bands)
            first = _coarse_solved(hierarchy.coarse, loss, supply)
            found = first.copy()
            _refine(hierarchy, loss, supply, found, cycles)
            gap[:, bands] = first / found - 1
            np.maximum(found, _LEAST_PHI, out=phi[:, bands])

        self._share_out(work)
        return Solution(phi=phi, coarse_gap=gap)

    def resolve(self, R1: Floats, start: Floats, *, cycles: int = _CYCLES) -> Floats:
        """Return phi of the whole surface, (V, bands), from a phi already close to it."""
        phi = np.empty_like(R1)

        def work(bands: slice) -> None:
            loss, supply = self._equation(R1, bands)
            found = np.array(start[:, bands], order="C")
            _refine(self._hierarchy, loss, supply, found, cycles)
            np.maximum(found, _LEAST_PHI, out=phi[:, bands])

        self._share_out(work)
        return phi

    def change(self, patch: Patch, R1: Floats, phi: Floats) -> Floats:
        """Return the new phi (n, bands) on a patch after R1 (V, bands) has changed within it.

        The residual is the true one, so what an earlier patch cut off is made up for here. phi
        (V, bands) itself is left alone, and so is everything outside the patch.
        """
        hierarchy, inside = patch.hierarchy, patch.vertices
        mass = hierarchy.fine.mass
        loss = self._loss(R1[inside], mass, slice(None))
        old = phi[inside]
        residual: Floats = mass * self._per_spread
        residual -= loss * old
        residual -= patch.rows @ phi
        system = System(hierarchy.fine, loss)
        step = _correction(hierarchy.coarse, loss, residual)
        system.subtract_image(residual, step)
        spectrum = (_SMOOTHER_BEGIN, hierarchy.smoother_end)
        system.smooth(residual, step, spectrum, _SMOOTHING_STEPS)
        step += old
        return np.maximum(step, _LEAST_PHI, out=step)

    def _share_out(self, work: Callable[[slice], None]) -> None:
        """Do the work for all bands, some in each thread."""
        list((self._pool.map if self._pool else map)(work, self._groups))

    def _equation(self, R1: Floats, bands: slice) -> tuple[Floats, Floats]:
        """Return loss and supply of some bands, (V, bands)."""
        mass = self._hierarchy.fine.mass
        supply: Floats = mass * self._per_spread[bands]
        return self._loss(np.ascontiguousarray(R1[:, bands]), mass, bands), supply

    def _loss(self, R1: Floats, mass: Floats, bands: slice) -> Floats:
        """Return the lumped loss ``M (0.4 / R1)^p / s^2``."""
        loss = np.log(R1)
        loss -= np.float32(np.log(REFERENCE_REFLECTANCE))
        loss *= -self._exponent
        np.exp(loss, out=loss)
        loss *= mass
        return scale_columns(loss, self._per_spread[bands], out=loss)


def _correction(coarse: Coarse, loss: Floats, residual: Floats) -> Floats:
    """Return the part of the error that the coarse level can see, on the fine level."""
    system = System(coarse.level, product(coarse.restriction, loss))
    rest = product(coarse.restriction, residual)
    step = np.zeros_like(rest)
    system.conjugate_gradients(rest, step, _CORRECTION_STEPS)
    return product(coarse.prolongation, step)


def _coarse_solved(coarse: Coarse, loss: Floats, supply: Floats) -> Floats:
    """Return phi as the coarse level has it, started from the one-dimensional value.

    The loss is averaged onto it, not sampled, and phi itself is carried over: it is smooth, its
    difference from the one-dimensional value jumps at every stain's border.
    """
    system = System(coarse.level, product(coarse.restriction, loss))
    rest = product(coarse.restriction, supply)
    phi: Floats = rest / system.loss
    system.subtract_image(rest, phi)
    system.conjugate_gradients(rest, phi, _COARSE_STEPS)
    return product(coarse.prolongation, phi)


def _refine(hierarchy: Hierarchy, loss: Floats, supply: Floats, phi: Floats, cycles: int) -> None:
    """Improve phi in place by cycles of smoothing, coarse correction and smoothing."""
    system = System(hierarchy.fine, loss)
    spectrum = (_SMOOTHER_BEGIN, hierarchy.smoother_end)
    residual = supply.copy()
    system.subtract_image(residual, phi)
    for _ in range(cycles):
        system.smooth(residual, phi, spectrum, _SMOOTHING_STEPS)
        step = _correction(hierarchy.coarse, loss, residual)
        phi += step
        system.subtract_image(residual, step)
        system.smooth(residual, phi, spectrum, _SMOOTHING_STEPS)
