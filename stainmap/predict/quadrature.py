"""Twelve bands instead of 31: nodes and weights fitted to what a catalogue can look like.

Reflectances of stained zirconia are alike enough that XYZ follows from a few of their bands, if
the weights of these bands are refitted. On screen that makes a stroke nearly three times faster;
exports and the check of a point keep all 31.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from stainmap.optics.interface import reflectance_outside
from stainmap.optics.stack import stack_reflectance

NODE_COUNT: Final = 12
_SAMPLES: Final = 600
_DEPTH_MM: Final = (0.4, 0.3)
# Holds the white to about 1e-6 without being a constraint of its own.
_DIFFUSER_IMPORTANCE: Final = 1e4
# Far below what any state weighs; keeps the triangle regular if states are too much alike.
_RIDGE: Final = 1e-4


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Quadrature:
    """Some of the bands, (N,) positions, and their weights for XYZ, (N, 3)."""

    indices: NDArray[np.intp]
    xyz_weights: NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Materials:
    """Two-flux constants of everything a crown may consist of, on B bands; see `OpticalScene`."""

    block_absorption_per_mm: NDArray[np.float64]
    block_scattering_per_mm: NDArray[np.float64]
    liquid_absorption_per_mm: NDArray[np.float64]
    scatter_change: NDArray[np.float64]
    backing_reflectance: NDArray[np.float64]
    factor: NDArray[np.float64]
    front_internal: NDArray[np.float64]


def sample_reflectances(
    materials: Materials, count: int = _SAMPLES, *, random_state: int = 12
) -> NDArray[np.float64]:
    """Return `count` random radiance factors, (count, B): blocks, up to four liquids, walls.

    Walls run from 0.3 to 2.5 mm, every liquid may lie outside and inside; the same
    `random_state` gives the same states.
    """
    rng = np.random.default_rng(random_state)
    wall = rng.uniform(0.3, 2.5, (count, 1))
    shrink = np.minimum(1.0, wall / sum(_DEPTH_MM))
    near, far = (depth * shrink for depth in _DEPTH_MM)
    share = rng.dirichlet(np.ones(len(materials.block_absorption_per_mm)), count)
    K = share @ materials.block_absorption_per_mm
    S = share @ materials.block_scattering_per_mm

    def stained() -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        load = _random_load(rng, count, len(materials.liquid_absorption_per_mm))
        factor = 1.0 + load @ materials.scatter_change
        return K + load @ materials.liquid_absorption_per_mm, S * factor[:, None]

    near_K, near_S = stained()
    far_K, far_S = stained()
    backing = materials.backing_reflectance[
        rng.integers(0, len(materials.backing_reflectance), count)
    ]
    internal = stack_reflectance(
        [(near_K, near_S, near), (K, S, wall - near - far), (far_K, far_S, far)], backing
    )
    return reflectance_outside(
        internal, factor=materials.factor, front_internal=materials.front_internal
    )


def _random_load(rng: np.random.Generator, count: int, liquids: int) -> NDArray[np.float64]:
    load = rng.exponential(1.0, (count, liquids))
    rank = np.argsort(rng.random((count, liquids)), axis=1)
    load[rank >= rng.integers(0, 5, (count, 1))] = 0.0
    total = load.sum(1, keepdims=True)
    wanted = rng.uniform(0.0, 1.0, (count, 1))
    return load * wanted / np.where(total > 0.0, total, 1.0)


def fit_quadrature(
    reflectances: NDArray[np.float64],
    xyz_weights: NDArray[np.float64],
    node_count: int = NODE_COUNT,
) -> Quadrature:
    """Return the bands, and weights for them, that give nearly the XYZ of all bands.

    Bands are dropped one by one, each time the one least missed: leaving out band j raises the
    squared misfit by ``w_j^2 / (G^-1)_jj``, with w its weights and G the normal matrix. Weights
    are least squares in units of L*a*b*, and give the perfect diffuser its own white.

    Parameters
    ----------
    reflectances
        (M, B) states to reproduce.
    xyz_weights
        (B, 3) weights of all bands.
    node_count
        How many bands to keep.
    """
    white = xyz_weights.sum(0)
    ratio = np.maximum(reflectances @ xyz_weights / white, 1e-3)
    # d(L*, a*, b*) per relative change of X, Y, Z, by the derivative of the cube root.
    importance = np.array([500.0, 550.0, 200.0]) * ratio ** (-2.0 / 3.0) / (3.0 * white)
    ridge = _RIDGE * np.eye(len(xyz_weights))
    diffuser = np.full((1, len(xyz_weights)), _DIFFUSER_IMPORTANCE)
    systems = []
    for channel in range(3):
        rows = np.vstack([reflectances * importance[:, channel, None], diffuser, ridge])
        triangle: NDArray[np.float64] = np.asarray(np.linalg.qr(rows, mode="r"))
        systems.append((triangle, triangle @ xyz_weights[:, channel]))

    kept = list(range(len(xyz_weights)))
    while len(kept) > node_count:
        rise = sum(_rise_without(triangle[:, kept], target) for triangle, target in systems)
        del kept[int(np.argmin(rise))]
    weights = [_solved(triangle[:, kept], target)[0] for triangle, target in systems]
    return Quadrature(indices=np.array(kept, dtype=np.intp), xyz_weights=np.stack(weights, axis=1))


def _rise_without(columns: NDArray[np.float64], target: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return by how much the squared misfit rises if each column is left out, (N,)."""
    weights, inverse = _solved(columns, target)
    return np.asarray(weights**2 / (inverse**2).sum(1), dtype=np.float64)


def _solved(
    columns: NDArray[np.float64], target: NDArray[np.float64]
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Return the least squares weights (N,), and the inverse of the triangle of `columns`."""
    orthogonal, triangle = np.linalg.qr(columns)
    inverse: NDArray[np.float64] = np.asarray(np.linalg.inv(triangle))
    return inverse @ (orthogonal.T @ target), inverse
