"""Points near a place, held against scipy's k-d tree."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.spatial import cKDTree

from stainmap.surface.point_blocks import BLOCK, PointBlocks, members, space_filling_order


@pytest.mark.parametrize("count", [1, BLOCK - 1, BLOCK, 5 * BLOCK + 7])
def test_points_in_a_ball_are_those_of_a_tree(count: int) -> None:
    rng = np.random.default_rng(count)
    points = rng.normal(size=(count, 3)) * [6.0, 3.0, 1.0] + [100.0, 0.0, -40.0]
    blocks, tree = PointBlocks(points), cKDTree(points)
    for centre in [*points[:20], points.mean(axis=0), np.array([500.0, 0.0, 0.0])]:
        for radius in (0.0, 0.8, 4.0, 30.0):
            # A point is exactly within no distance of itself; rounding decides on no other.
            expected = sorted(tree.query_ball_point(centre, radius))
            assert blocks.within(centre, radius).tolist() == expected


def test_the_order_holds_every_point_once_and_follows_a_morton_curve() -> None:
    """Of eight corners of a cube: x changes first, then y, then z."""
    corners = np.array([[x, y, z] for z in (0, 1) for y in (0, 1) for x in (0, 1)], dtype=float)
    mixed = np.random.default_rng(0).permutation(8)
    assert np.array_equal(corners[mixed][space_filling_order(corners[mixed])], corners)
    assert space_filling_order(np.empty((0, 3))).shape == (0,)


def test_neighbours_in_the_order_are_near() -> None:
    points = np.random.default_rng(1).random((4000, 3))
    ordered = points[space_filling_order(points)]
    step = np.linalg.norm(np.diff(ordered, axis=0), axis=1)
    # Of points strewn over a cube two taken by chance are 0.66 apart (Robbins' constant).
    assert step.mean() < 0.15


def test_members_of_the_last_block_end_with_the_points() -> None:
    found = members(np.array([0, 2]), 2 * BLOCK + 3)
    assert found.tolist() == [*range(BLOCK), 2 * BLOCK, 2 * BLOCK + 1, 2 * BLOCK + 2]
