"""Light that spreads sideways inside the ceramic: the membrane with local loss, per band."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.predict.iterations import ALONE, Team, scale_columns
from stainmap.predict.levels import Floats, Hierarchy, Patch, SurfaceLevels
from stainmap.predict.two_levels import TwoLevels

# Fitted to Monte Carlo profiles of narrow stains at reduced scattering 4.2 to 18 per mm and walls
# of 0.6 to 1.5 mm, the middle of fissures weighing more; 27 per mm and steps of the wall were not
# fitted to. One exponent for all, 1.282, was as good up to 8.6 per mm but left fissures up to
# 2.5 L* too pale at 18.
REFERENCE_REFLECTANCE = 0.4
_SPREAD_MM, _SPREAD_POWER, _SPREAD_SCATTERING = 0.503, 0.745, 8.6
_DIRECT_SHARE = 0.586
_EXPONENT_RISE = 0.0706

# Steps of the two-level solve, chosen by the error that is left against a converged solve.
_CYCLES = 2
_COARSE_STEPS = 20
_CORRECTION_STEPS = 8
_SMOOTHING_STEPS = 4
_PATCH_SMOOTHING_STEPS = 3
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


def loss_exponent(reduced_scattering_per_mm: ArrayLike) -> NDArray[np.float64]:
    """Return p, how sharply loss rises as reflectance falls, for reduced scattering in 1/mm."""
    return np.asarray(1.0 + _EXPONENT_RISE * np.asarray(reduced_scattering_per_mm))


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Solution:
    """Solved phi (V, bands), and by what share the coarse level alone would have missed it."""

    phi: Floats
    coarse_gap: Floats


class LightPatch:
    """The membrane cut down to a patch: matrices, and the loss as it was last, kept over dabs."""

    def __init__(self, patch: Patch) -> None:
        self.patch = patch
        self.levels = _two_levels(patch.hierarchy, ALONE, _PATCH_SMOOTHING_STEPS)
        self.R1: Floats | None = None
        self.loss: Floats = np.empty((0, 0), dtype=np.float32)


def _two_levels(
    hierarchy: Hierarchy, team: Team, smoothing_steps: int = _SMOOTHING_STEPS
) -> TwoLevels:
    return TwoLevels(
        hierarchy,
        team,
        smoothing_steps=smoothing_steps,
        correction_steps=_CORRECTION_STEPS,
        smoother_begin=_SMOOTHER_BEGIN,
    )


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
    loss_exponent
        (bands,) p, above 0.
    threads
        Number of threads; vertices are shared out among them.
    reuse
        A membrane on the same levels, whose threads and matrices are shared.
    """

    levels: TwoLevels

    def __init__(
        self,
        levels: SurfaceLevels,
        spread_mm: ArrayLike,
        direct_share: ArrayLike,
        loss_exponent: ArrayLike,
        *,
        threads: int = 2,
        reuse: Membrane | None = None,
    ) -> None:
        spread = np.asarray(spread_mm, dtype=np.float64)
        known = None if reuse is None else reuse.levels
        if known is None or known.hierarchy is not levels.hierarchy:
            known = _two_levels(levels.hierarchy, Team(threads))
        self.levels = known
        self._team = self.levels.team
        self._per_spread = (1.0 / spread**2).astype(np.float32)
        self._direct = np.asarray(direct_share, dtype=np.float32)
        self._exponent: Floats = np.asarray(loss_exponent, dtype=np.float32)
        groups = -(-len(spread) // _BANDS_AT_ONCE)
        shared = np.array_split(np.arange(len(spread)), groups)
        self._groups = [slice(int(group[0]), int(group[-1]) + 1) for group in shared]
        self.reach_mm = float(spread.max())

    def reflectance(self, phi: Floats, R1: Floats) -> Floats:
        """Return the reflectance that comes out, from phi and R1 of the same vertices."""
        out = np.empty(phi.shape, dtype=np.float32)
        parts = self._team.parts(len(phi))
        diffuse = (1 - self._direct) * np.float32(REFERENCE_REFLECTANCE)
        root = np.reciprocal(self._exponent)

        def work(part: int) -> None:
            here = out[parts[part]]
            np.log(phi[parts[part]], out=here)
            scale_columns(here, root, out=here)
            np.exp(here, out=here)
            scale_columns(here, diffuse, out=here)
            here += scale_columns(R1[parts[part]], self._direct)

        self._team.run(work, len(parts))
        return out

    def reflectance_slope(self, R: Floats, R1: Floats) -> Floats:
        """Return by how much the reflectance changes per relative change of phi."""
        slope = R - scale_columns(R1, self._direct)
        slope /= self._exponent
        return slope

    def solve(self, R1: Floats, *, cycles: int = _CYCLES) -> Solution:
        """Solve the whole surface from R1 (V, bands), above 0, by two-level cycles.

        The coarse level comes first, from the one-dimensional value. The loss is averaged onto
        it, not sampled, and phi itself is carried over: it is smooth, its difference from the
        one-dimensional value jumps at every stain's border.
        """
        phi, gap = np.empty_like(R1), np.empty_like(R1)
        levels = self.levels
        for bands in self._groups:
            loss, supply = self._equation(R1, bands)
            fine, coarse = levels.fine_system(loss), levels.coarse_system(loss)
            rest = levels.up(supply)
            begun: Floats = rest / coarse.loss
            coarse.subtract_image(rest, begun)
            coarse.conjugate_gradients(rest, begun, _COARSE_STEPS)
            found = levels.down(begun)
            first = found.copy()
            fine.subtract_image(supply, found)
            levels.refine(fine, coarse, supply, found, cycles)
            gap[:, bands] = first / found - 1
            np.maximum(found, _LEAST_PHI, out=phi[:, bands])
        return Solution(phi=phi, coarse_gap=gap)

    def resolve(self, R1: Floats, start: Floats, *, cycles: int = _CYCLES) -> Floats:
        """Return phi of the whole surface, (V, bands), from a phi already close to it."""
        phi = np.empty_like(R1)
        levels = self.levels
        for bands in self._groups:
            loss, supply = self._equation(R1, bands)
            fine, coarse = levels.fine_system(loss), levels.coarse_system(loss)
            found = np.array(start[:, bands], order="C")
            fine.subtract_image(supply, found)
            levels.refine(fine, coarse, supply, found, cycles)
            np.maximum(found, _LEAST_PHI, out=phi[:, bands])
        return phi

    def patch(self, patch: Patch) -> LightPatch:
        """Return what dabs on a patch share."""
        return LightPatch(patch)

    def change(self, light: LightPatch, R1: Floats, phi: Floats) -> Floats:
        """Return the new phi (n, bands) on a patch after R1 (V, bands) has changed within it.

        The residual is the true one, so what an earlier patch cut off is made up for here. phi
        (V, bands) itself is left alone, and so is everything outside the patch.
        """
        patch, levels = light.patch, light.levels
        inside = patch.vertices
        mass = patch.hierarchy.fine.mass
        loss = self._loss_of(light, R1[inside])
        old = phi[inside]
        residual: Floats = mass * self._per_spread
        residual -= loss * old
        residual -= patch.rows @ phi
        fine, coarse = levels.fine_system(loss), levels.coarse_system(loss)
        step = levels.correction(coarse, residual)
        fine.subtract_image(residual, step)
        levels.smooth(fine, residual, step)
        step += old
        return np.maximum(step, _LEAST_PHI, out=step)

    def _loss_of(self, light: LightPatch, R1: Floats) -> Floats:
        """Return the loss (n, bands) on a patch, worked out anew where R1 (n, bands) is."""
        mass = light.patch.hierarchy.fine.mass
        if light.R1 is None:
            light.loss = self._loss(R1, mass, slice(None))
        else:
            there = np.flatnonzero((R1 != light.R1).any(axis=1))
            light.loss[there] = self._loss(R1[there], mass[there], slice(None))
        light.R1 = R1
        return light.loss

    def _equation(self, R1: Floats, bands: slice) -> tuple[Floats, Floats]:
        """Return loss and supply of some bands, (V, bands)."""
        mass = self.levels.hierarchy.fine.mass
        supply = np.empty((len(R1), len(self._per_spread[bands])), dtype=np.float32)
        loss = np.empty_like(supply)
        parts = self._team.parts(len(R1))

        def work(part: int) -> None:
            here = parts[part]
            np.multiply(mass[here], self._per_spread[bands], out=supply[here])
            loss[here] = self._loss(R1[here, bands], mass[here], bands)

        self._team.run(work, len(parts))
        return loss, supply

    def _loss(self, R1: Floats, mass: Floats, bands: slice) -> Floats:
        """Return the lumped loss ``M (0.4 / R1)^p / s^2``."""
        loss = np.log(R1, order="C")
        loss -= np.float32(np.log(REFERENCE_REFLECTANCE))
        scale_columns(loss, -self._exponent[bands], out=loss)
        np.exp(loss, out=loss)
        loss *= mass
        return scale_columns(loss, self._per_spread[bands], out=loss)
