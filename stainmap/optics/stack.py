"""Layers upon layers, composed by adding [Kubelka1954]."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from stainmap.optics.slab import km_layer_over, km_reflectance_transmittance


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class LayerOptics:
    """Reflectance from either side, and transmittance, of one layer or of several together.

    The transmittance is the same in both directions, the reflectance is not [Kubelka1954].
    """

    reflectance: NDArray[np.float64]
    reverse_reflectance: NDArray[np.float64]
    transmittance: NDArray[np.float64]

    @classmethod
    def homogeneous(cls, K: ArrayLike, S: ArrayLike, X: ArrayLike) -> LayerOptics:
        """Return a uniform layer: `K`, `S` in 1/mm, `X` in mm."""
        R, T = km_reflectance_transmittance(K, S, X)
        return cls(reflectance=R, reverse_reflectance=R, transmittance=T)

    def over(self, lower: LayerOptics) -> LayerOptics:
        """Return this layer lying on `lower`, as one."""
        between = _rounds(
            self.reverse_reflectance, lower.reflectance, self.transmittance, lower.transmittance
        )
        return LayerOptics(
            reflectance=self.reflectance + self.transmittance**2 * lower.reflectance / between,
            reverse_reflectance=lower.reverse_reflectance
            + lower.transmittance**2 * self.reverse_reflectance / between,
            transmittance=self.transmittance * lower.transmittance / between,
        )

    def over_backing(self, backing_reflectance: ArrayLike) -> NDArray[np.float64]:
        """Return the reflectance of this layer on an opaque backing."""
        Rg = np.asarray(backing_reflectance, dtype=np.float64)
        between = _rounds(self.reverse_reflectance, Rg, self.transmittance, 1.0 - Rg)
        return self.reflectance + self.transmittance**2 * Rg / between


def _rounds(
    upper: NDArray[np.float64],
    lower: NDArray[np.float64],
    upper_loss: NDArray[np.float64],
    lower_loss: NDArray[np.float64],
) -> NDArray[np.float64]:
    """Return 1 - upper lower, what light loses on one round between two reflecting sides.

    Nothing reflects more than it does not let through. That bound is free of the cancellation
    that would leave nothing between two thick layers without absorption.
    """
    least = upper_loss + lower_loss * (1.0 - upper_loss)
    return np.maximum(np.maximum(1.0 - upper * lower, least), np.finfo(np.float64).tiny)


def stack_reflectance(
    layers: Sequence[tuple[ArrayLike, ArrayLike, ArrayLike]], backing_reflectance: ArrayLike
) -> NDArray[np.float64]:
    """Return the reflectance of layers on a backing.

    Parameters
    ----------
    layers
        (K, S, X) of every layer from the outside in: 1/mm, 1/mm, mm.
    backing_reflectance
        Reflectance of what lies behind, in optical contact, 0 to 1.

    Returns
    -------
    Internal reflectance 0 to 1, broadcast shape.
    """
    reflectance = np.asarray(backing_reflectance, dtype=np.float64)
    for K, S, X in reversed(layers):
        reflectance = km_layer_over(K, S, X, reflectance)
    return reflectance
