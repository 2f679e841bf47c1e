"""Lines in which a plane cuts a surface, on bodies whose sections are known."""

from __future__ import annotations

import numpy as np
import pytest

from stainmap.surface.cut_lines import cut_lines
from stainmap.surface.section import plane_section
from tests.surface.shapes import sphere, torus, tube

UP = np.array([0.0, 0.0, 1.0])


@pytest.mark.parametrize("height", [-3.0, 0.0, 1.7, 4.5])
def test_a_sphere_is_cut_in_a_circle(height: float) -> None:
    # Closed form: radius sqrt(R^2 - h^2), length 2 pi of it.
    mesh = sphere(5.0, 4)
    cut = cut_lines(mesh, UP, height)
    radius = np.sqrt(25.0 - height**2)
    assert np.hypot(cut.ends[..., 0], cut.ends[..., 1]) == pytest.approx(radius, abs=0.03)
    assert cut.ends[..., 2] == pytest.approx(height)
    length = np.linalg.norm(cut.ends[:, 1] - cut.ends[:, 0], axis=1).sum()
    assert length == pytest.approx(2.0 * np.pi * radius, rel=0.01)
    # One outline in order: each piece begins where the one before ends, the last as the first.
    (chain,) = cut.chains()
    assert sorted(chain.tolist()) == list(range(len(cut.faces)))
    ends = cut.ends[chain]
    assert ends[:-1, 1] == pytest.approx(ends[1:, 0])
    assert ends[-1, 1] == pytest.approx(ends[0, 0])
    # The body lies to the left, seen from above: the outline runs counter-clockwise.
    area = 0.5 * np.sum(ends[:, 0, 0] * ends[:, 1, 1] - ends[:, 1, 0] * ends[:, 0, 1])
    assert area == pytest.approx(np.pi * radius**2, rel=0.01)
    assert area == pytest.approx(plane_section(mesh, UP, height)[0].area_mm2, rel=1e-9)


def test_values_are_carried_along() -> None:
    mesh = torus(5.0, 2.0)
    normal = np.array([0.6, 0.0, 0.8])
    cut = cut_lines(mesh, normal, 0.3)
    # A linear field is exact.
    field = mesh.vertices @ np.array([1.0, -2.0, 0.5]) + 3.0
    assert cut.at(field) == pytest.approx(cut.ends @ np.array([1.0, -2.0, 0.5]) + 3.0)
    assert cut.at(mesh.vertices) == pytest.approx(cut.ends)
    assert cut.ends @ normal == pytest.approx(np.full(cut.ends.shape[:2], 0.3))


def test_a_torus_cut_lengthwise_has_two_outlines() -> None:
    cut = cut_lines(torus(5.0, 2.0), np.array([1.0, 0.0, 0.0]), 0.0)
    assert len(cut.chains()) == 2
    # Through the hole, across: two concentric ones, the inner running the other way.
    chains = cut_lines(torus(5.0, 2.0), UP, 0.01)
    areas = []
    for chain in chains.chains():
        ends = chains.ends[chain]
        areas.append(0.5 * np.sum(ends[:, 0, 0] * ends[:, 1, 1] - ends[:, 1, 0] * ends[:, 0, 1]))
    assert sorted(areas) == pytest.approx([-np.pi * 9.0, np.pi * 49.0], rel=0.02)


def test_an_open_sheet_is_cut_in_open_lines() -> None:
    mesh, _ = tube(4.0, 6.0, 40, 12)
    assert not mesh.is_watertight
    cut = cut_lines(mesh, np.array([0.0, 1.0, 0.0]), 0.2)
    chains = cut.chains()
    assert sum(len(one) for one in chains) == len(cut.faces)
    for chain in chains:
        ends = cut.ends[chain]
        assert ends[:-1, 1] == pytest.approx(ends[1:, 0])


def test_a_plane_that_misses_cuts_nothing() -> None:
    cut = cut_lines(sphere(5.0, 2), UP, 6.0)
    assert len(cut.faces) == 0
    assert cut.chains() == []
