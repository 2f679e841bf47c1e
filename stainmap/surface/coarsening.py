"""A coarser level for fields on any surface, found from its stiffness matrix alone.

Halving long edges leaves a parent mesh, but where a scan or a boolean operation has left slivers
that parent is of no use: its interpolation runs along them while the coupling runs across.
Vertices are therefore gathered by how strongly they are coupled. That also gives meshes a coarse
level that were fine from the start.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy import sparse

Rows = sparse.csr_array[np.float64]
Labels = NDArray[np.intp]

# Two passes of pairing leave a coarse vertex for every 3.4 fine ones. One pass makes the solve
# twice as long, three leave several times the error.
_PASSES = 2
_PAIRING_ROUNDS = 6
# Jacobi damping of the smoothed aggregation, the usual 4/3 over the largest eigenvalue.
_DAMPING = 2.0 / 3.0


def smoothed_prolongation(stiffness: Rows) -> Rows:
    """Return the prolongation (n, nc) of smoothed aggregation [Vanek1996].

    Parameters
    ----------
    stiffness
        (n, n) positive semidefinite with rows that sum to zero.

    Returns
    -------
    Matrix whose rows sum to one, about four entries each.
    """
    label = aggregates(stiffness)
    count = len(label)
    plain = sparse.csr_array(
        (np.ones(count), label, np.arange(count + 1)), shape=(count, int(label.max()) + 1)
    )
    diagonal = stiffness.diagonal()
    scale = _DAMPING / np.where(diagonal > 0.0, diagonal, 1.0)
    damped = stiffness.multiply(scale[:, None])
    return sparse.csr_array(plain - sparse.csr_array(damped) @ plain)


def aggregates(stiffness: Rows) -> Labels:
    """Return which aggregate each vertex belongs to, (n,), from 0.

    Pairs the vertices that are coupled most strongly, then the pairs [Notay2010].
    """
    strength = sparse.csr_array(-stiffness)
    strength.setdiag(0.0)
    strength.data = np.maximum(strength.data, 0.0)
    strength.eliminate_zeros()
    label: Labels = np.arange(strength.shape[0], dtype=np.intp)
    for _ in range(_PASSES):
        pair = _pairs(strength)
        label = pair[label]
        count = len(pair)
        gather = sparse.csr_array(
            (np.ones(count), pair, np.arange(count + 1)), shape=(count, int(pair.max()) + 1)
        )
        gathered: Any = gather.T @ strength @ gather
        strength = sparse.csr_array(gathered)
        strength.setdiag(0.0)
        strength.eliminate_zeros()
    return label


def _pairs(strength: Rows) -> Labels:
    """Return the pair each vertex belongs to; a vertex left over is a pair by itself.

    Every vertex points at its strongest free neighbour, and those that point at each other are
    paired; this is repeated with the rest.
    """
    count = strength.shape[0]
    total: NDArray[np.float64] = np.asarray(strength.sum(axis=1), dtype=np.float64).ravel()
    row = np.repeat(np.arange(count, dtype=np.int32), np.diff(strength.indptr))
    column = strength.indices.astype(np.int32)
    weight = strength.data / np.sqrt(total[row] * total[column])
    # On a regular mesh all neighbours are equally strong: a fixed shuffle of the edges, the same
    # seen from both ends, keeps them from pointing round in circles.
    shuffle = np.minimum(row, column).astype(np.int64)
    shuffle *= 2654435761
    shuffle += np.maximum(row, column).astype(np.int64) * 40503
    shuffle %= 1000003
    weight *= 1.0 + 1e-6 * shuffle
    del shuffle
    partner = np.full(count, -1, dtype=np.intp)
    for _ in range(_PAIRING_ROUNDS):
        strongest = np.zeros(count)
        np.maximum.at(strongest, row, weight)
        points_at = np.full(count, -1, dtype=np.intp)
        chosen = weight >= strongest[row]
        points_at[row[chosen]] = column[chosen]
        free = np.flatnonzero(points_at >= 0)
        mutual = free[points_at[points_at[free]] == free]
        partner[mutual] = points_at[mutual]
        still = (partner[row] < 0) & (partner[column] < 0)
        row, column, weight = row[still], column[still], weight[still]
        if not len(row):
            break
    own = np.arange(count)
    first = np.where(partner >= 0, np.minimum(own, partner), own)
    return np.asarray(np.unique(first, return_inverse=True)[1], dtype=np.intp)
