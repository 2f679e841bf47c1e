"""The Laplacian against libigl, and smoothing against the closed form of screened diffusion."""

from __future__ import annotations

from pathlib import Path

import igl
import numpy as np
import pytest
from scipy import sparse
from scipy.sparse import linalg
from scipy.special import k0

from stainmap.surface.diffusion import SurfaceOperator, half_cotangents
from stainmap.surface.dissection import nested_dissection
from stainmap.surface.loading import load_mesh
from stainmap.surface.mesh import TriMesh
from stainmap.surface.refining import refine
from tests.surface import shapes


def negative_pivots(matrix: sparse.csc_array) -> int:
    """Return the number of negative eigenvalues, by Sylvester's law of inertia.

    With symmetric permutations and no pivoting, L U = L D L^T and the signs of D are those of the
    eigenvalues.
    """
    factor = linalg.splu(
        matrix.tocsc(),
        permc_spec="MMD_AT_PLUS_A",
        diag_pivot_thresh=0.0,
        options={"SymmetricMode": True},
    )
    assert np.array_equal(factor.perm_r, factor.perm_c)
    return int((factor.U.diagonal() < 0).sum())


@pytest.mark.parametrize("make", [shapes.sphere, shapes.torus])
def test_stiffness_is_the_cotangent_matrix_of_libigl(make: object) -> None:
    mesh = make()
    operator = SurfaceOperator(mesh)
    assert operator.mollified_by_mm == 0.0
    reference = -igl.cotmatrix(mesh.vertices, mesh.faces.astype(np.int64))
    assert abs(operator.stiffness - reference).max() < 1e-10
    barycentric = igl.massmatrix(
        mesh.vertices, mesh.faces.astype(np.int64), igl.MASSMATRIX_TYPE_BARYCENTRIC
    )
    assert np.allclose(operator.mass, barycentric.diagonal())


def test_half_cotangents_of_known_triangles() -> None:
    root = np.sqrt(2.0)
    found = half_cotangents(np.array([[1.0, 1.0, root], [1.0, 1.0, 1.0], [3.0, 4.0, 5.0]]))
    third = 0.5 / np.sqrt(3.0)
    expected = [[0.5, 0.5, 0.0], [third] * 3, [0.5 * 4 / 3, 0.5 * 3 / 4, 0.0]]
    assert np.allclose(found, expected, atol=1e-12)


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
def test_real_meshes_have_no_negative_eigenvalue(shared_meshes: Path, name: str) -> None:
    mesh = refine(load_mesh(shared_meshes / name).mesh, 0.25).mesh
    operator = SurfaceOperator(mesh)
    assert operator.mollified_by_mm < 2e-4
    assert abs(operator.stiffness @ np.ones(mesh.vertex_count)).max() < 1e-8
    for length in (0.05, 0.34, 3.0):
        system = sparse.diags_array(operator.mass) + length**2 * operator.stiffness
        assert negative_pivots(system) == 0


def test_indefinite_matrix_is_noticed() -> None:
    """The check above can fail: with the Laplacian turned round there are negative pivots."""
    operator = SurfaceOperator(shapes.sphere(subdivisions=2))
    system = sparse.diags_array(operator.mass) - 5.0 * operator.stiffness
    assert negative_pivots(system) > 0


def test_facet_without_area_is_survived() -> None:
    """Three corners in a line, and a needle, next to good facets."""
    vertices = [[0, 0, 0], [2, 0, 0], [1, 0, 0], [1, 2, 0], [1, 1e-13, 0], [1, -2, 0]]
    mesh = TriMesh(vertices, [[0, 2, 1], [0, 1, 3], [0, 2, 4], [2, 1, 5]])
    operator = SurfaceOperator(mesh)
    assert operator.mollified_by_mm > 0
    assert np.isfinite(operator.stiffness.data).all()
    smooth = operator.smooth([1.0, 0, 0, 0, 0, 0], 0.5)
    assert np.isfinite(smooth).all()
    assert np.linalg.eigvalsh(operator.stiffness.toarray()).min() > -1e-9


def test_point_spreads_as_the_screened_kernel() -> None:
    """Point source in a plane: K0(r/s) / (2 pi s^2), whose second moment is 4 s^2."""
    mesh = shapes.plane(8.0, 160)
    operator = SurfaceOperator(mesh)
    length = 0.34
    middle = int(np.argmin(np.linalg.norm(mesh.vertices, axis=1)))
    source = np.zeros(mesh.vertex_count)
    source[middle] = 1.0 / operator.mass[middle]
    spread = operator.smooth(source, length)
    radius = np.linalg.norm(mesh.vertices - mesh.vertices[middle], axis=1)
    assert operator.mass @ spread == pytest.approx(1.0, abs=1e-10)
    assert operator.mass @ (radius**2 * spread) == pytest.approx(4.0 * length**2, rel=2e-3)
    ring = (radius > 0.2) & (radius < 1.2)
    expected = k0(radius[ring] / length) / (2.0 * np.pi * length**2)
    error = np.abs(spread[ring] / expected - 1.0)
    assert np.percentile(error, 95) < 0.01
    assert error.max() < 0.03


def test_second_moment_on_a_sphere_of_a_real_crown_size() -> None:
    """On a sphere the first eigenfunction z decays by 1 / (1 + 2 s^2 / r^2) exactly."""
    mesh = shapes.sphere(radius=5.0, subdivisions=5)
    height = mesh.vertices[:, 2]
    smooth = SurfaceOperator(mesh).smooth(height, 1.5)
    factor = 1.0 / (1.0 + 2.0 * 1.5**2 / 25.0)
    assert np.abs(smooth - factor * height).max() < 1e-3 * 5.0


def test_smoothing_is_the_solve_with_libigls_matrices() -> None:
    """Another library's Laplacian and masses, another library's solver."""
    mesh = shapes.torus()
    faces = mesh.faces.astype(np.int64)
    mass = igl.massmatrix(mesh.vertices, faces, igl.MASSMATRIX_TYPE_BARYCENTRIC)
    values = np.random.default_rng(2).normal(size=mesh.vertex_count)
    for length in (0.1, 0.5, 3.0):
        matrix = (mass - length**2 * igl.cotmatrix(mesh.vertices, faces)).tocsc()
        found = SurfaceOperator(mesh).smooth(values, length)
        # Its solver wants one value to be given.
        reference = igl.min_quad_with_fixed(
            sparse.csc_matrix(matrix),
            -(mass @ values)[:, None],
            np.array([0]),
            found[:1, None],
            sparse.csc_matrix((0, mesh.vertex_count)),
            np.empty((0, 1)),
            True,
        )
        assert np.abs(found - np.asarray(reference).ravel()).max() < 1e-9


def test_integral_and_constants_are_kept() -> None:
    mesh = shapes.torus()
    operator = SurfaceOperator(mesh)
    values = np.random.default_rng(0).random((mesh.vertex_count, 3))
    smooth = operator.smooth(values, 0.7)
    assert np.allclose(operator.mass @ smooth, operator.mass @ values, rtol=1e-12)
    assert np.abs(operator.smooth(np.full(mesh.vertex_count, 3.0), 0.7) - 3.0).max() < 1e-10


def test_columns_are_smoothed_one_by_one() -> None:
    mesh = shapes.sphere()
    operator = SurfaceOperator(mesh)
    values = np.random.default_rng(1).random((mesh.vertex_count, 2))
    both = operator.smooth(values, 0.5)
    assert np.allclose(both[:, 1], operator.smooth(values[:, 1], 0.5), atol=1e-13)
    assert both.dtype == np.float64


def test_both_orders_of_elimination_give_the_same() -> None:
    mesh = shapes.torus()
    values = np.random.default_rng(2).random(mesh.vertex_count)
    usual = SurfaceOperator(mesh).smooth(values, 0.4)
    dissected = SurfaceOperator(mesh, dissection_from=1).smooth(values, 0.4)
    assert np.abs(usual - dissected).max() < 1e-12


def test_dissection_is_an_order_that_keeps_the_factor_sparse() -> None:
    mesh = shapes.sphere(subdivisions=5)
    operator = SurfaceOperator(mesh)
    system = (sparse.diags_array(operator.mass) + 0.1 * operator.stiffness).tocsr()
    order = nested_dissection(mesh.vertices, system)
    assert np.array_equal(np.sort(order), np.arange(mesh.vertex_count))

    def fill(matrix: sparse.csr_array, how: str) -> int:
        return linalg.splu(
            matrix.tocsc(),
            permc_spec=how,
            diag_pivot_thresh=0.0,
            options={"SymmetricMode": True},
        ).nnz

    assert fill(system[order][:, order], "NATURAL") < 1.1 * fill(system, "MMD_AT_PLUS_A")


@pytest.mark.parametrize("points", [np.zeros((300, 3)), np.arange(900.0).reshape(300, 3)])
def test_dissection_copes_with_points_in_one_place_or_in_a_line(points: np.ndarray) -> None:
    chain = sparse.diags_array([np.ones(299), np.ones(299)], offsets=[-1, 1]).tocsr()
    assert np.array_equal(np.sort(nested_dissection(points, chain)), np.arange(300))


def test_nothing_leaves_or_enters_a_restricted_operator() -> None:
    mesh = shapes.sphere()
    upper = mesh.vertices[:, 2] > 0.4
    operator = SurfaceOperator(mesh).restricted(upper)
    values = np.random.default_rng(3).random(mesh.vertex_count)
    smooth = operator.smooth(values, 1.0)
    assert np.array_equal(smooth[~upper], values[~upper])
    assert operator.mass @ smooth == pytest.approx(operator.mass @ values, rel=1e-12)
    other = values.copy()
    other[~upper] = 1e6
    assert np.array_equal(operator.smooth(other, 1.0)[upper], smooth[upper])
    assert (operator.mass[~upper] == 0).all()
    assert len(operator.active) == upper.sum()


def test_restriction_to_nothing_changes_nothing() -> None:
    mesh = shapes.box()
    operator = SurfaceOperator(mesh).restricted(np.zeros(mesh.vertex_count, bool))
    values = np.arange(mesh.vertex_count, dtype=float)
    assert np.array_equal(operator.smooth(values, 1.0), values)


def test_vertices_without_faces_keep_their_values() -> None:
    box = shapes.box()
    mesh = TriMesh(np.r_[box.vertices, [[9, 9, 9]]], box.faces)
    values = np.zeros(9)
    values[-1] = 7.0
    assert SurfaceOperator(mesh).smooth(values, 2.0)[-1] == 7.0


def test_length_zero_returns_a_copy() -> None:
    mesh = shapes.box()
    values = np.arange(8.0)
    same = SurfaceOperator(mesh).smooth(values, 0.0)
    assert np.array_equal(same, values)
    same[0] = 5.0
    assert values[0] == 0.0


def test_factors_are_kept_and_can_be_dropped(monkeypatch: pytest.MonkeyPatch) -> None:
    calls = []
    real = linalg.splu
    monkeypatch.setattr(linalg, "splu", lambda *a, **k: calls.append(1) or real(*a, **k))
    operator = SurfaceOperator(shapes.sphere())
    operator.prepare(0.3)
    for length in (0.3, 0.3, 0.4, 0.3):
        operator.smooth(np.zeros(operator.mesh.vertex_count), length)
    assert len(calls) == 2
    operator.forget()
    operator.smooth(np.zeros(operator.mesh.vertex_count), 0.3)
    assert len(calls) == 3


@pytest.mark.parametrize("bad", [np.nan, np.inf, -np.inf])
def test_what_is_not_a_number_is_refused(bad: float) -> None:
    operator = SurfaceOperator(shapes.box())
    values = np.zeros(8)
    values[3] = bad
    with pytest.raises(ValueError, match="finite"):
        operator.smooth(values, 1.0)
    with pytest.raises(ValueError, match="length_mm"):
        operator.smooth(np.zeros(8), bad)


def test_wrong_shapes_are_refused() -> None:
    operator = SurfaceOperator(shapes.box())
    for values in (np.zeros(7), np.zeros((8, 2, 2)), 3.0):
        with pytest.raises(ValueError, match="shape"):
            operator.smooth(values, 1.0)
    with pytest.raises(ValueError, match="length_mm"):
        operator.smooth(np.zeros(8), -1.0)
    with pytest.raises(ValueError, match="booleans"):
        operator.restricted(np.ones(8, int))


def test_large_surfaces_are_solved_by_iteration_to_the_same_result() -> None:
    mesh = shapes.sphere(1.0, 5)
    rng = np.random.default_rng(11)
    values = rng.normal(size=(mesh.vertex_count, 3))
    direct = SurfaceOperator(mesh).smooth(values, 0.4)
    iterated = SurfaceOperator(mesh, iteration_from=1)
    assert np.abs(iterated.smooth(values, 0.4) - direct).max() < 1e-5
    assert np.abs(iterated.smooth(values[:, 0], 0.4) - direct[:, 0]).max() < 1e-5
    upper = mesh.vertices[:, 2] > 0.0
    part, other = iterated.restricted(upper), SurfaceOperator(mesh, within=upper)
    assert np.abs(part.smooth(values, 0.4) - other.smooth(values, 0.4)).max() < 1e-5
    assert np.array_equal(iterated.smooth(np.zeros(mesh.vertex_count), 0.4), values[:, 0] * 0.0)
