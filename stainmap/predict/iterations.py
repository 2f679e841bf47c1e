"""Iterative solving for many right-hand sides at once, one column each, in single precision."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor

import numpy as np
from scipy import sparse

from stainmap.predict.levels import Floats, Level, Matrix

_TINY = np.float32(1e-35)
# Rows that are seen as one long row when a factor per column is applied.
_ROWS_TOGETHER = 16
_LOOK_EVERY = 4
# Fewer rows than this are not worth a second thread.
_LEAST_ROWS_EACH = 4096


class Team:
    """Threads that share the rows of a field out among themselves.

    A sparse product costs nearly the same for six columns as for twelve, so it is rows that are
    shared out and not columns. Blocks of rows of a matrix are cut once and kept.
    """

    def __init__(self, threads: int = 1) -> None:
        self._threads = threads
        self._pool = ThreadPoolExecutor(threads) if threads > 1 else None

    def parts(self, count: int) -> list[slice]:
        """Return the rows of each thread; one part if there are few."""
        threads = min(self._threads, max(count // _LEAST_ROWS_EACH, 1))
        each = max(-(-count // threads), 1)
        return [slice(begin, min(begin + each, count)) for begin in range(0, max(count, 1), each)]

    def run(self, work: Callable[[int], None], parts: int) -> None:
        """Do the work of every part, and wait for all of it."""
        if self._pool is None or parts == 1:
            for part in range(parts):
                work(part)
        else:
            list(self._pool.map(work, range(parts)))

    def product(self, rows: Rows, field: Floats) -> Floats:
        """Return the product of a matrix cut into blocks of rows and a field (n, k)."""
        out = np.empty((rows.count, field.shape[1]), dtype=np.float32)

        def work(part: int) -> None:
            out[rows.parts[part]] = rows.blocks[part] @ field

        self.run(work, len(rows.parts))
        return out


def _rows(matrix: Matrix, part: slice) -> Matrix:
    """Return some rows of a matrix, which share its memory."""
    if part.start == 0 and part.stop >= matrix.shape[0]:
        return matrix
    starts = matrix.indptr[part.start : part.stop + 1]
    entries = slice(int(starts[0]), int(starts[-1]))
    return sparse.csr_array(
        (matrix.data[entries], matrix.indices[entries], starts - starts[0]),
        shape=(part.stop - part.start, matrix.shape[1]),
        copy=False,
    )


class Rows:
    """A sparse matrix cut into blocks of rows, one for each thread of a team."""

    def __init__(self, matrix: Matrix, team: Team) -> None:
        self.count = matrix.shape[0]
        self.parts = team.parts(self.count)
        self.blocks = [_rows(matrix, part) for part in self.parts]


ALONE = Team()


class System:
    """The linear system ``(diag(loss) + stiffness) x = b``, with its own loss in every column.

    Nothing is factored. `residual` and `solution` below are kept up to date in place.

    Parameters
    ----------
    level
        Stiffness (n, n) and its diagonal.
    loss
        (n, k), above zero; (n, 1) if it is the same for all columns.
    team, rows
        Threads that share the work out, and the stiffness cut into their blocks of rows.
    """

    def __init__(
        self, level: Level, loss: Floats, team: Team = ALONE, rows: Rows | None = None
    ) -> None:
        self.level = level
        self.loss = loss
        self._team = team
        self._rows = Rows(level.stiffness, team) if rows is None else rows
        self._scale: Floats = np.reciprocal(loss + level.diagonal)

    def _everywhere(self, work: Callable[[slice, Matrix], None]) -> None:
        """Do the work for every block of rows."""
        rows = self._rows
        self._team.run(lambda part: work(rows.parts[part], rows.blocks[part]), len(rows.parts))

    def subtract_image(self, residual: Floats, step: Floats) -> None:
        """Take from the residual what a step of the solution explains."""

        def work(part: slice, block: Matrix) -> None:
            residual[part] -= block @ step
            residual[part] -= self.loss[part] * step[part]

        self._everywhere(work)

    def conjugate_gradients(
        self, residual: Floats, solution: Floats, steps: int, enough: Floats | None = None
    ) -> None:
        """Improve a solution by Jacobi-preconditioned conjugate gradients.

        Every column takes steps of its own length. Stops early once no residual is larger than
        `enough` (n, 1).
        """
        if residual.shape[1] == 1 and len(self._rows.parts) == 1:
            limit = None if enough is None else enough[:, 0]
            self._one_column(residual[:, 0], solution[:, 0], steps, limit)
            return
        scratch = np.empty_like(residual)
        scaled = self._scale * residual
        direction = scaled.copy()
        image = np.empty_like(residual)
        dots = np.empty((len(self._rows.parts), residual.shape[1]), dtype=np.float32)
        place = {part.start: row for row, part in enumerate(self._rows.parts)}
        power = column_dots(residual, scaled, scratch)

        def along(part: slice, block: Matrix) -> None:
            rest = scratch[part]
            image[part] = block @ direction
            np.multiply(self.loss[part], direction[part], out=rest)
            image[part] += rest
            dots[place[part.start]] = column_dots(direction[part], image[part], rest)

        def onward(part: slice, _: Matrix) -> None:
            rest = scratch[part]
            solution[part] += scale_columns(direction[part], length, out=rest)
            residual[part] -= scale_columns(image[part], length, out=rest)
            np.multiply(self._scale[part], residual[part], out=scaled[part])
            dots[place[part.start]] = column_dots(residual[part], scaled[part], rest)

        def turn(part: slice, _: Matrix) -> None:
            scale_columns(direction[part], turned, out=direction[part])
            direction[part] += scaled[part]

        for step in range(steps):
            if enough is not None and step % _LOOK_EVERY == 0 and _within(residual, enough):
                break
            self._everywhere(along)
            length = ratio(power, dots.sum(axis=0))
            self._everywhere(onward)
            before, power = power, dots.sum(axis=0)
            turned = ratio(power, before)
            self._everywhere(turn)

    def _one_column(
        self, residual: Floats, solution: Floats, steps: int, enough: Floats | None
    ) -> None:
        """Take the same steps for one column (n,): under the brush that is one liquid."""
        matrix, loss, scale = self.level.stiffness, self.loss[:, 0], self._scale[:, 0]
        scratch = np.empty_like(residual)
        scaled = scale * residual
        direction = scaled.copy()
        power = residual @ scaled
        for step in range(steps):
            if enough is not None and step % _LOOK_EVERY == 0 and _within(residual, enough):
                break
            image = matrix @ direction
            image += np.multiply(loss, direction, out=scratch)
            length = power / max(direction @ image, _TINY)
            solution += np.multiply(direction, length, out=scratch)
            image *= length
            residual -= image
            np.multiply(scale, residual, out=scaled)
            before, power = power, residual @ scaled
            direction *= power / max(before, _TINY)
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
        # The next step is written elsewhere: other blocks of rows still need this one.
        following = np.empty_like(step)
        scratch = np.empty_like(step)

        def work(part: slice, block: Matrix) -> None:
            rest, now = scratch[part], step[part]
            solution[part] += now
            residual[part] -= block @ step
            np.multiply(self.loss[part], now, out=rest)
            residual[part] -= rest
            if not last:
                np.multiply(self._scale[part], residual[part], out=rest)
                rest *= np.float32(2 * weight / half)
                np.multiply(now, np.float32(weight * rho), out=following[part])
                following[part] += rest

        for k in range(steps):
            last = k == steps - 1
            weight = 1 / (2 * middle / half - rho)
            self._everywhere(work)
            step, following = following, step
            rho = weight


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
    if columns == 1:
        return np.multiply(values, factors, out=out)
    bulk = count - count % _ROWS_TOGETHER
    if bulk and values.flags.c_contiguous and out.flags.c_contiguous:
        wide = (-1, _ROWS_TOGETHER * columns)
        np.multiply(
            values[:bulk].reshape(wide),
            _repeated(factors),
            out=out[:bulk].reshape(wide),
        )
    else:
        bulk = 0
    np.multiply(values[bulk:], factors, out=out[bulk:])
    return out


def _repeated(factors: Floats) -> Floats:
    """Return factors (k,) sixteen times in a row; numpy's own routine takes longer than the use."""
    rows = np.empty((_ROWS_TOGETHER, len(factors)), dtype=np.float32)
    rows[:] = factors
    return rows.ravel()


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
