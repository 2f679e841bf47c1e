"""Overlap of areas, against closed forms on a sheet whose distances are known."""

from __future__ import annotations

import numpy as np
import pytest

from stainmap.practice.scoring_areas import TOLERANCE_MM, dice, forgiven
from stainmap.surface.mesh import TriMesh

STEP_MM = 0.1
COLUMNS, ROWS = 81, 21


@pytest.fixture(scope="module")
def sheet() -> TriMesh:
    """Return a flat sheet of 8 by 2 mm; vertex (row, column) lies at (column, row) / 10 mm."""
    x, y = np.meshgrid(np.arange(COLUMNS) * STEP_MM, np.arange(ROWS) * STEP_MM)
    points = np.stack([x.ravel(), y.ravel(), np.zeros(x.size)], axis=1)
    at = np.arange(x.size).reshape(ROWS, COLUMNS)
    a, b, c, d = at[:-1, :-1].ravel(), at[:-1, 1:].ravel(), at[1:, 1:].ravel(), at[1:, :-1].ravel()
    return TriMesh(points, np.concatenate([np.stack([a, b, c], 1), np.stack([a, c, d], 1)]))


def split_at(sheet: TriMesh, x_mm: float) -> np.ndarray:
    return np.where(sheet.vertices[:, 0] < x_mm - 1e-9, 1, 2).astype(np.uint8)


@pytest.mark.parametrize("off_mm", [0.1, 0.3, 0.4, -0.4])
def test_a_border_within_the_tolerance_is_right(sheet: TriMesh, off_mm: float) -> None:
    truth, answer = split_at(sheet, 4.0), split_at(sheet, 4.0 + off_mm)
    every = np.ones(len(truth), bool)
    assert np.array_equal(forgiven(sheet, truth, answer, every), truth)


def test_a_border_far_beyond_it_costs_all_of_the_way(sheet: TriMesh) -> None:
    truth, answer = split_at(sheet, 4.0), split_at(sheet, 6.0)
    told = forgiven(sheet, truth, answer, np.ones(len(truth), bool))
    wrong = sheet.vertices[told != truth, 0]
    assert wrong.min() == pytest.approx(4.0)
    assert wrong.max() == pytest.approx(5.9)
    # A little beyond it both ends of the way count: no label there is near its like.
    told = forgiven(sheet, truth, split_at(sheet, 4.7), np.ones(len(truth), bool))
    wrong = np.unique(sheet.vertices[told != truth, 0].round(1))
    beyond = 0.7 - TOLERANCE_MM
    assert (np.minimum(wrong - 4.0, 4.6 - wrong) < beyond).all()
    assert 0 < len(wrong) < 7


def test_a_thin_zone_that_is_missing_is_missed_in_full(sheet: TriMesh) -> None:
    truth = np.ones(len(sheet.vertices), np.uint8)
    middle = np.abs(sheet.vertices[:, 0] - 4.0) < 0.26
    truth[middle] = 5
    answer = np.ones_like(truth)
    told = forgiven(sheet, truth, answer, np.ones(len(truth), bool))
    assert not (told[middle] == 5).any()
    # The same zone a tolerance aside is right.
    moved = np.ones_like(truth)
    moved[np.abs(sheet.vertices[:, 0] - 4.3) < 0.26] = 5
    told = forgiven(sheet, truth, moved, np.ones(len(truth), bool))
    assert np.array_equal(told, truth)


def test_dice_is_that_of_two_intervals() -> None:
    # [0, 4) and [2, 6) of ten: 2 x 2 / (4 + 4).
    at = np.arange(10)
    assert dice(at < 4, (at >= 2) & (at < 6), np.ones(10)) == pytest.approx(0.5)
    assert dice(at < 4, at >= 4, np.ones(10)) == 0.0
    assert dice(at < 0, at < 0, np.ones(10)) == 1.0
