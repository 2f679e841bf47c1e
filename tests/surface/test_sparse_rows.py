"""Rows and square pieces of sparse matrices, and what is found by them, against scipy's slices."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import sparse

from stainmap.surface.clustering import clustered_faces
from stainmap.surface.sparse_rows import entries_of, square
from tests.builders import dome


@pytest.fixture(scope="module")
def matrix() -> sparse.csr_array:
    rng = np.random.default_rng(3)
    matrix = sparse.random_array((200, 200), density=0.03, rng=rng, format="csr")
    assert (np.diff(matrix.indptr) == 0).any(), "some rows are empty"
    return matrix


@pytest.mark.parametrize("count", [0, 1, 40, 200])
def test_rows_are_those_of_a_slice(matrix: sparse.csr_array, count: int) -> None:
    rows = np.random.default_rng(count).permutation(200)[:count]
    entries, begins = entries_of(matrix.indptr, rows)
    expected = matrix[rows]
    assert np.array_equal(matrix.indices[entries], expected.indices)
    assert np.array_equal(matrix.data[entries], expected.data)
    assert np.array_equal(begins, expected.indptr)


@pytest.mark.parametrize("count", [1, 40, 200])
def test_a_square_piece_is_that_of_two_slices(matrix: sparse.csr_array, count: int) -> None:
    chosen = np.sort(np.random.default_rng(count).permutation(200)[:count])
    piece = square(matrix, chosen)
    assert np.array_equal(piece.toarray(), matrix[chosen][:, chosen].toarray())


def test_faces_at_vertices_are_those_that_use_them() -> None:
    mesh, _ = dome(8, 20)
    for vertices in ([], [0], [5, 6, 130], list(range(mesh.vertex_count))):
        chosen = np.array(vertices, dtype=np.int32)
        expected = np.flatnonzero(np.isin(mesh.faces, chosen).any(axis=1))
        assert np.array_equal(mesh.faces_at(chosen), expected)


def test_what_is_made_ready_to_draw_is_kept() -> None:
    mesh, _ = dome(8, 20)
    mesh.make_ready_to_draw()
    assert np.array_equal(mesh.light_faces, clustered_faces(mesh))
    assert mesh.light_faces is mesh.light_faces
    mesh.forget_derived(keep=("light_faces",))
    assert set(vars(mesh)) == {"_vertices", "_faces", "light_faces"}
