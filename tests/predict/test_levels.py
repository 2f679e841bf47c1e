"""The two levels of mesh on which fields are solved, on surfaces with many obtuse facets."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy import sparse
from scipy.sparse import linalg
from scipy.spatial import Delaunay

from stainmap.predict.levels import SurfaceLevels, largest_eigenvalue
from stainmap.predict.wicking import Wicking
from stainmap.surface.mesh import TriMesh
from tests.predict.crowns import levels_of


def stretched(stretch: float, seed: int = 0) -> TriMesh:
    """Return a plane of points strewn at random, drawn out in one direction."""
    points = np.random.default_rng(seed).random((2000, 2))
    placed = np.c_[6.0 * points * [stretch, 1.0], np.zeros(len(points))]
    return TriMesh(placed, Delaunay(points).simplices.astype(np.int32))


def in_halves(mesh: TriMesh, levels: SurfaceLevels) -> tuple[Wicking, NDArray[np.bool_]]:
    outer = mesh.vertices[:, 0] < mesh.vertices[:, 0].mean()
    return Wicking(levels, outer[levels.order], 0.15), outer


@pytest.mark.parametrize("stretch", [1.0, 3.0, 6.0])
def test_the_largest_eigenvalue_is_that_of_a_dense_solver(stretch: float) -> None:
    level = levels_of(stretched(stretch)).hierarchy.fine
    dense = level.stiffness.toarray().astype(np.float64)
    scale = 1.0 / np.sqrt(np.diag(dense))
    truth = np.linalg.eigvalsh(scale[:, None] * dense * scale)[-1]
    assert largest_eigenvalue(level) == pytest.approx(truth, rel=0.01)


@pytest.mark.parametrize("stretch", [1.0, 3.0, 6.0])
def test_no_vertex_of_the_coarse_level_gains_where_the_fine_one_loses(stretch: float) -> None:
    mesh = stretched(stretch)
    two = in_halves(mesh, levels_of(mesh))[0]._two
    loss = two.hierarchy.fine.mass / np.float32(0.15**2)
    plain = two.hierarchy.coarse.restriction @ loss
    assert plain.min() < 0, "the mesh is too good to show anything"
    kept = two.coarse_system(loss).loss
    assert kept.min() > 0
    # Nothing else is changed by it.
    positive = two.hierarchy.coarse.restriction.min(axis=1).toarray().ravel() >= 0
    assert kept[positive] == pytest.approx(plain[positive])


@pytest.mark.parametrize("stretch", [3.0, 6.0])
def test_wicking_on_obtuse_facets_is_that_of_a_direct_solver(stretch: float) -> None:
    mesh = stretched(stretch)
    levels = levels_of(mesh)
    wicking, _ = in_halves(mesh, levels)
    raw = np.random.default_rng(3).random((mesh.vertex_count, 4)).astype(np.float32)
    found = wicking.spread(raw)
    system = wicking._system
    matrix = system.level.stiffness.astype(np.float64) + sparse.diags_array(
        system.loss[:, 0].astype(np.float64)
    )
    truth = linalg.spsolve(matrix.tocsc(), system.loss.astype(np.float64) * raw)
    assert np.isfinite(found).all()
    assert np.abs(found - truth).max() < 2e-3
