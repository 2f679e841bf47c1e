"""The slight unevenness that keeps a made surface from looking turned on a lathe."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from stainmap.surface.mesh import unit_rows

FloatArray = NDArray[np.float64]


class Waviness:
    """A sum of plane waves of random direction with a given root mean square, in mm."""

    def __init__(
        self,
        amplitude_mm: float,
        generator: np.random.Generator,
        *,
        count: int = 14,
        wavelengths_mm: tuple[float, float] = (2.2, 5.0),
    ) -> None:
        direction = unit_rows(generator.normal(size=(count, 3)))
        self._number = direction * (2 * np.pi / generator.uniform(*wavelengths_mm, count))[:, None]
        self._phase = generator.uniform(0.0, 2 * np.pi, count)
        self._amplitude = amplitude_mm * np.sqrt(2.0 / count)

    def __call__(self, points: FloatArray) -> FloatArray:
        """Return the height of the waves at (N, 3) points."""
        waves = np.sin(points @ self._number.T + self._phase)
        return np.asarray(self._amplitude * waves.sum(axis=1))
