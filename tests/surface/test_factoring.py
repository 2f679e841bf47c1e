"""Factorisations: right, and gone when dropped, whichever thread drops them."""

from __future__ import annotations

import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import numpy as np
import pytest
from scipy import sparse

from stainmap.surface.factoring import Factor

LINUX = Path("/proc/self/status").exists()

# Made in a job's thread, dropped in this one: what the program does with every factorisation.
DROPPED = """
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
import numpy as np
from scipy import sparse
from stainmap.surface.factoring import Factor

def resident_mb():
    lines = Path("/proc/self/status").read_text().splitlines()
    return int(next(line for line in lines if line.startswith("VmRSS")).split()[1]) / 1024

line = sparse.diags_array([-1.0, 2.5, -1.0], offsets=[-1, 0, 1], shape=(150, 150))
one = sparse.eye_array(150)
plate = (sparse.kron(line, one) + sparse.kron(one, line)).tocsc()
with ThreadPoolExecutor(1) as job:
    held = job.submit(Factor, plate).result()
    size_mb = held.entries * 12 / 2**20
    before = resident_mb()
    for _ in range(12):
        held = job.submit(Factor, plate).result()
    grown = resident_mb() - before
print(size_mb, grown)
"""


def grid_matrix(side: int) -> sparse.csc_array[np.float64]:
    line = sparse.diags_array([-1.0, 2.5, -1.0], offsets=[-1, 0, 1], shape=(side, side))
    one = sparse.eye_array(side)
    return (sparse.kron(line, one) + sparse.kron(one, line)).tocsc()


@pytest.mark.parametrize("ordered", [False, True])
def test_solves_like_a_dense_library(ordered: bool) -> None:
    """Against numpy's dense LU (LAPACK), for one right-hand side and for three."""
    matrix = grid_matrix(12)
    factor = Factor(matrix, ordered=ordered)
    for shape in ((144,), (144, 3)):
        right = np.random.default_rng(4).normal(size=shape)
        np.testing.assert_allclose(
            factor.solve(right), np.linalg.solve(matrix.toarray(), right), atol=1e-12
        )


def test_serves_several_threads_at_once() -> None:
    matrix = grid_matrix(20)
    factor = Factor(matrix)
    rights = np.random.default_rng(5).normal(size=(16, 400))
    with ThreadPoolExecutor(4) as pool:
        solved = list(pool.map(factor.solve, rights))
    np.testing.assert_allclose(matrix @ np.array(solved).T, rights.T, atol=1e-10)


def test_a_singular_matrix_is_refused() -> None:
    with pytest.raises(RuntimeError, match="singular"):
        Factor(sparse.csc_array(np.zeros((3, 3))))


@pytest.mark.skipif(not LINUX, reason="only Linux tells a process its own size")
def test_what_another_thread_drops_is_freed() -> None:
    """Twelve made and dropped leave no more behind than two: without care all would stay."""
    done = subprocess.run(
        [sys.executable, "-c", DROPPED],
        cwd=Path(__file__).parents[2],
        check=True,
        capture_output=True,
        text=True,
        timeout=120,
    )
    size_mb, grown_mb = (float(word) for word in done.stdout.split())
    assert size_mb > 5
    assert grown_mb < 3 * size_mb


# Garbage is collected wherever memory is asked for: here inside a submit that holds a lock which
# every other submit wants as well.
COLLECTED = """
import gc
from concurrent.futures import ThreadPoolExecutor, thread
import numpy as np
from scipy import sparse
from stainmap.surface.factoring import Factor

class Ring:
    pass

held = Ring()
held.itself, held.factor = held, Factor(sparse.eye_array(4).tocsc())
gc.disable()
del held
with thread._global_shutdown_lock:
    gc.collect()
print(Factor(sparse.eye_array(3).tocsc()).solve(np.ones(3)).sum())
"""


def test_may_be_dropped_in_the_middle_of_anything() -> None:
    """The collector once dropped a factor inside a pool's submit, and both waited for ever."""
    done = subprocess.run(
        [sys.executable, "-c", COLLECTED],
        cwd=Path(__file__).parents[2],
        check=True,
        capture_output=True,
        text=True,
        timeout=60,
    )
    assert float(done.stdout) == 3.0


def test_what_lives_until_the_end_ends_quietly() -> None:
    """Left to the interpreter's own end, it leaves an exception behind and exits with 120."""
    script = (
        "from scipy import sparse\n"
        "from stainmap.surface.factoring import Factor\n"
        "kept = Factor(sparse.eye_array(4).tocsc())\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", script],
        cwd=Path(__file__).parents[2],
        check=False,
        capture_output=True,
        text=True,
        timeout=60,
    )
    assert (done.returncode, done.stderr) == (0, "")
