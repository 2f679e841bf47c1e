"""A second, plainer adding-doubling calculation whose matrices lie open to a test.

A multi-stream method [VanDeHulst1980] for isotropic scattering with exact Fresnel reflection at
both surfaces, for ceramic on a stump in cement. `stainmap.optics.adding_doubling` is what the
program uses; it starts its layers otherwise, and `test_adding_doubling` holds the two together.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

import numpy as np

CERAMIC, CEMENT = 2.15, 1.52


def fresnel(n1: float, n2: float, mu: np.ndarray) -> np.ndarray:
    """Return the reflectance at cosines `mu` going from index `n1` to `n2`, unpolarised."""
    sine2 = (n1 / n2) ** 2 * (1.0 - mu**2)
    through = np.sqrt(np.maximum(1.0 - sine2, 0.0))
    s = (n1 * mu - n2 * through) / (n1 * mu + n2 * through)
    p = (n2 * mu - n1 * through) / (n2 * mu + n1 * through)
    return np.where(sine2 >= 1.0, 1.0, 0.5 * (s * s + p * p))


class Slabs:
    """Streams at fixed cosines; Gauss points between the critical angles, so none straddles one."""

    def __init__(self, per_interval: int = 10) -> None:
        limits = [0.0, np.sqrt(1 - (CEMENT / CERAMIC) ** 2), np.sqrt(1 - 1 / CERAMIC**2), 1.0]
        x, w = np.polynomial.legendre.leggauss(per_interval)
        x, w = 0.5 * (x + 1.0), 0.5 * w
        pairs = list(pairwise(limits))
        # Squared, so that the root with which reflectance falls from 1 is integrated well.
        self.mu = np.concatenate([low + x**2 * (high - low) for low, high in pairs])
        self.w = np.concatenate([2.0 * x * w * (high - low) for low, high in pairs])
        self.flux = 2.0 * self.mu * self.w
        self.one = np.eye(len(self.mu))
        self.front = fresnel(CERAMIC, 1.0, self.mu)
        self.back = fresnel(CERAMIC, CEMENT, self.mu)

    def layer(self, mua: float, mus: float, d: float) -> tuple[np.ndarray, np.ndarray]:
        """Return reflection and transmission matrices (out, in) of radiance for one layer."""
        halvings = max(0, int(np.ceil(np.log2((mua + mus) * d / (0.02 * self.mu.min())))))
        tau = (mua + mus) * d / 2**halvings
        albedo = mus / (mua + mus)
        scatter = 0.5 * albedo * self.w / self.mu[:, None]
        # Diamond initialisation of a thin layer.
        loss = 0.5 * tau * (np.diag(1.0 / self.mu) - scatter)
        gain = 0.5 * tau * scatter
        A = np.linalg.inv(self.one + loss)
        G = np.linalg.inv(self.one + loss - gain @ A @ gain)
        T, R = 2.0 * G - self.one, 2.0 * G @ gain @ A
        for _ in range(halvings):
            X = T @ np.linalg.inv(self.one - R @ R)
            R, T = R + X @ R @ T, X @ T
        return R, T

    def diffuse_reflectance(
        self, layers: Sequence[tuple[float, float, float]], stump: float
    ) -> float:
        """Return the reflected share of Lambertian light, without what never entered.

        Parameters
        ----------
        layers
            (mu_a, mu_s', thickness) from the outside in.
        stump
            Reflectance of the Lambertian stump, within cement.
        """
        below = self._stump(stump)
        for mua, mus, d in reversed(layers):
            R, T = self.layer(mua, mus, d)
            below = R + T @ below @ np.linalg.solve(self.one - R @ below, T)
        # Radiance grows by the square of the index on the way in.
        entered = CERAMIC**2 * (1.0 - self.front)
        down = np.linalg.solve(self.one - np.diag(self.front) @ below, entered)
        return float(self.flux @ ((1.0 - self.front) * (below @ down)))

    def _stump(self, reflectance: float) -> np.ndarray:
        """Return the reflection matrix of the back surface, cement and a Lambertian stump."""
        growth = (CERAMIC / CEMENT) ** 2
        through = 1.0 - self.back
        turned_back = 1.0 - growth * float(self.flux @ through)
        rounds = reflectance / (1.0 - reflectance * turned_back)
        return np.diag(self.back) + growth * rounds * np.outer(through, self.flux * through)
