"""Welding against numpy's unique rows, brute force, libigl and trimesh."""

from __future__ import annotations

from pathlib import Path

import igl
import numpy as np
import pytest
import trimesh
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra import numpy as npst
from scipy.spatial import cKDTree

from stainmap.surface.welding import _slots, exact_groups, near_pairs, near_tolerance, weld
from tests.surface import shapes

FEW_VALUES = st.sampled_from([0.0, -0.0, 1.0, -1.0, 0.5, 1e-30, 3e7])


def checked(points: np.ndarray) -> None:
    first, group = exact_groups(points)
    assert np.array_equal(points[first][group], points)
    rows, where = np.unique(points + 0.0, axis=0, return_index=True)
    assert len(first) == len(rows)
    assert np.array_equal(first, np.sort(where))


@pytest.mark.parametrize("dtype", [np.float32, np.float64])
@settings(deadline=None, max_examples=60)
@given(data=st.data())
def test_equal_points_are_found(dtype: type, data: st.DataObject) -> None:
    count = data.draw(st.integers(0, 40))
    checked(data.draw(npst.arrays(dtype, (count, 3), elements=FEW_VALUES)))


@pytest.mark.parametrize("dtype", [np.float32, np.float64])
def test_many_equal_points_are_found(dtype: type) -> None:
    rng = np.random.default_rng(0)
    points = rng.normal(size=(9000, 3)).astype(dtype)[rng.integers(9000, size=50_000)]
    checked(points)


def test_crowded_table_is_no_trouble(monkeypatch: pytest.MonkeyPatch) -> None:
    """If all points scramble to the same slot, they are still told apart."""
    monkeypatch.setattr(
        "stainmap.surface.welding._slots",
        lambda columns, *_: np.zeros(len(columns[0]), np.uint32),
    )
    rng = np.random.default_rng(0)
    checked(rng.integers(3, size=(60, 3)).astype(np.float64))


@pytest.mark.parametrize("dtype", [np.float32, np.float64])
@pytest.mark.parametrize("step", [1.0, 2.0**-20, 0.1, 1e-5])
def test_points_on_a_grid_are_scattered_well(dtype: type, step: float) -> None:
    """Round numbers have few bits that differ; still they hit about as many slots as at random."""
    axes = (np.arange(40) - 20) * step
    grid = np.stack(np.meshgrid(axes, axes, axes), axis=-1).reshape(-1, 3).astype(dtype)
    word = np.uint32 if dtype is np.float32 else np.uint64
    slots = _slots([grid[:, k].copy().view(word) for k in range(3)], 16, 0)
    assert slots.max() < 1 << 16
    # 64,000 throws at random would hit 62 % of 65,536 slots.
    assert len(np.unique(slots)) > 0.5 * 65_536


@settings(deadline=None, max_examples=60)
@given(
    points=npst.arrays(
        np.float64, st.tuples(st.integers(2, 60), st.just(3)), elements=st.floats(-1, 1, width=16)
    ),
    tolerance=st.floats(1e-6, 0.3),
)
def test_near_pairs_are_those_of_a_tree(points: np.ndarray, tolerance: float) -> None:
    expected = cKDTree(points).query_pairs(tolerance)
    found = {(min(a, b), max(a, b)) for a, b in near_pairs(points, tolerance).tolist()}
    assert found == expected


def test_near_pairs_across_the_borders_of_cells() -> None:
    """Dense pairs everywhere, so that many lie across a border, an edge or a corner of cells."""
    rng = np.random.default_rng(1)
    points = rng.random((4000, 3)) * 0.2
    points = np.concatenate([points, points + rng.normal(0, 2e-5, points.shape)])
    found = {(min(a, b), max(a, b)) for a, b in near_pairs(points, 1e-4).tolist()}
    assert found == cKDTree(points).query_pairs(1e-4)
    assert len(found) >= 3900


def test_crowds_are_joined_without_all_their_pairs(monkeypatch: pytest.MonkeyPatch) -> None:
    """Three crowds of 1,000 points have 1.5 million pairs; hundred times as many fill a memory."""
    monkeypatch.setattr("stainmap.surface.welding._MOST_PAIRS", 100_000)
    rng = np.random.default_rng(4)
    middles = np.array([[0.0, 0.0, 0.0], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0]])
    crowd = rng.normal(0, 2e-6, (1000, 3, 3)) + middles
    pairs = near_pairs(crowd.reshape(-1, 3), 1e-4)
    assert len(pairs) < 100_000
    welded = weld(crowd.reshape(-1, 3), 1e-4)
    assert len(welded.points) == 3
    assert np.array_equal(welded.index.reshape(-1, 3), np.tile([0, 1, 2], (1000, 1)))


@pytest.mark.parametrize("dtype", [np.float32, np.float64])
def test_corners_that_differ_by_rounding_are_joined(dtype: type) -> None:
    mesh = shapes.sphere()
    corners = mesh.vertices[mesh.faces.ravel()]
    noisy = corners + np.random.default_rng(0).uniform(-2e-5, 2e-5, corners.shape)
    welded = weld(noisy.astype(dtype), 1e-4)
    assert len(welded.points) == mesh.vertex_count
    assert np.abs(welded.points[welded.index] - noisy).max() < 1e-4
    assert welded.joined > 10_000
    _, order = np.unique(mesh.faces.ravel(), return_index=True)
    assert np.array_equal(welded.index[np.sort(order)], np.arange(mesh.vertex_count))


@pytest.mark.parametrize("name", shapes.REAL_MESHES)
def test_real_facets_are_welded_as_by_libigl_and_trimesh(shared_meshes: Path, name: str) -> None:
    """The same corners become one vertex, and the map leads from the file to it."""
    raw = trimesh.load(shared_meshes / name, process=False)
    corners = np.asarray(raw.vertices, dtype=np.float64)
    welded = weld(corners, 0.0)
    assert np.array_equal(welded.points[welded.index], corners)
    distinct, _, place = igl.remove_duplicate_vertices(corners, 0.0)
    assert len(distinct) == len(welded.points)
    pairs = np.unique(np.stack([welded.index, np.asarray(place).ravel()], axis=1), axis=0)
    assert len(pairs) == len(distinct)  # one to one
    raw.merge_vertices(digits_vertex=9)
    assert len(raw.vertices) == len(welded.points)


def test_points_keep_their_order_and_coordinates() -> None:
    mesh = shapes.torus()
    welded = weld(mesh.vertices, 1e-4)
    assert np.array_equal(welded.points, mesh.vertices)
    assert np.array_equal(welded.index, np.arange(mesh.vertex_count))
    assert welded.joined == 0


def test_tolerance_follows_the_unit_and_ignores_a_stray_point() -> None:
    mesh = shapes.sphere(radius=4.5)
    corners = mesh.vertices[mesh.faces.ravel()]
    triangles = np.arange(len(corners)).reshape(-1, 3)
    in_mm = near_tolerance(corners, triangles)
    assert in_mm == pytest.approx(1e-4, rel=0.1)
    assert near_tolerance(corners / 1000.0, triangles) == pytest.approx(in_mm / 1000.0)
    stray = np.concatenate([corners, np.full((3, 3), 1e6)])
    more = np.arange(len(stray)).reshape(-1, 3)
    assert near_tolerance(stray, more) < 0.05 * mesh.edge_lengths.min()
