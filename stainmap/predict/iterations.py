"""Iterative solving for many right-hand sides at once, one column each, in single precision."""

from __future__ import annotations

import numpy as np

from stainmap.predict.levels import Floats, Level, Matrix

_TINY = np.float32(1e-35)
# Rows that are seen as one long row when a factor per column is applied.
_ROWS_TOGETHER = 16
_LOOK_EVERY = 4


class System:
    """The linear system ``(diag(loss) + stiffness) x = b``, with its own loss in every column.

    Nothing is factored. `residual` and `solution` below are kept up to date in place.

    Parameters
    ----------
    level
        Stiffness (n, n) and its diagonal.
    loss
        (n, k), above zero; (n, 1) if it is the same for all columns.
    """

    def __init__(self, level: Level, loss: Floats) -> None:
        self.level = level
        self.loss = loss
        self._scale: Floats = np.reciprocal(loss + level.diagonal)

    def subtract_image(self, residual: Floats, step: Floats) -> None:
        """Take from the residual what a step of the solution explains."""
        residual -= self.level.stiffness @ step
        residual -= self.loss * step

    def conjugate_gradients(
        self, residual: Floats, solution: Floats, steps: int, enough: Floats | None = None
    ) -> None:
        """Improve a solution by Jacobi-preconditioned conjugate gradients.

        Every column takes steps of its own length. Stops early once no residual is larger than
        `enough` (n, 1).
        """
        scratch = np.empty_like(residual)
        scaled = self._scale * residual
        direction = scaled.copy()
        power = column_dots(residual, scaled, scratch)
        for step in range(steps):
            if enough is not None and step % _LOOK_EVERY == 0 and _within(residual, enough):
                break
            image = product(self.level.stiffness, direction)
            np.multiply(self.loss, direction, out=scratch)
            image += scratch
            length = ratio(power, column_dots(direction, image, scratch))
            solution += scale_columns(direction, length, out=scratch)
            residual -= scale_columns(image, length, out=scratch)
            np.multiply(self._scale, residual, out=scaled)
            before, power = power, column_dots(residual, scaled, scratch)
            scale_columns(direction, ratio(power, before), out=direction)
            direction += scaled

    def smooth(
        self, residual: Floats, solution: Floats, spectrum: tuple[float, float], steps: int
    ) -> None:
        """Take the rough part of the error off by Chebyshev steps [Adams2003].

        Damps what lies between the two ends of the spectrum of the Jacobi-scaled system.
        """
        begin, end = spectrum
        middle, half = (end + begin) / 2, (end - begin) / 2
        rho = half / middle
        step = self._scale * residual
        step *= np.float32(1 / middle)
        scratch = np.empty_like(step)
        for k in range(steps):
            if k:
                following = 1 / (2 * middle / half - rho)
                step *= np.float32(following * rho)
                np.multiply(self._scale, residual, out=scratch)
                scratch *= np.float32(2 * following / half)
                step += scratch
                rho = following
            solution += step
            residual -= self.level.stiffness @ step
            np.multiply(self.loss, step, out=scratch)
            residual -= scratch


def product(matrix: Matrix, field: Floats) -> Floats:
    """Return the product of a sparse matrix and a field (n, k)."""
    return np.asarray(matrix @ field, dtype=np.float32)


def _within(residual: Floats, enough: Floats) -> bool:
    return not bool((np.abs(residual) > enough).any())


def ratio(above: Floats, below: Floats) -> Floats:
    """Return a quotient of numbers that are not negative, 0 where both have vanished."""
    return np.asarray(above / np.maximum(below, _TINY), dtype=np.float32)


def scale_columns(values: Floats, factors: Floats, out: Floats | None = None) -> Floats:
    """Return values (n, k) times a factor (k,) for each column.

    Sixteen rows are seen as one: numpy's inner loop is then long enough to be quick.
    """
    if out is None:
        out = np.empty(values.shape, dtype=np.float32)
    count, columns = values.shape
    bulk = count - count % _ROWS_TOGETHER
    if bulk and values.flags.c_contiguous and out.flags.c_contiguous:
        wide = (-1, _ROWS_TOGETHER * columns)
        np.multiply(
            values[:bulk].reshape(wide),
            np.tile(factors, _ROWS_TOGETHER),
            out=out[:bulk].reshape(wide),
        )
    else:
        bulk = 0
    np.multiply(values[bulk:], factors, out=out[bulk:])
    return out


def column_dots(one: Floats, other: Floats, scratch: Floats) -> Floats:
    """Return the dot product of each pair of columns, (k,); scratch (n, k) is overwritten."""
    np.multiply(one, other, out=scratch)
    count, columns = one.shape
    bulk = count - count % _ROWS_TOGETHER
    total: Floats = scratch[bulk:].sum(axis=0)
    if bulk:
        wide = scratch[:bulk].reshape(-1, _ROWS_TOGETHER * columns).sum(axis=0)
        total += wide.reshape(_ROWS_TOGETHER, columns).sum(axis=0)
    return total
