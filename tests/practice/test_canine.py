"""The canine: an edge that falls from a tip, and zones and accents that follow it."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from stainmap.model.zone import OUTER_ZONES, Accent, Zone
from stainmap.practice.crown_maker import MadeCrown
from stainmap.surface.mesh import connected_pieces

Maker = Callable[..., MadeCrown]


def edge_height(crown: MadeCrown, x: float) -> float:
    """Return the height of the crown's outline, seen from labial, at a distance from its tip."""
    toward = crown.mesh.vertices @ np.array(crown.mesial) - crown.tips[0] @ np.array(crown.mesial)
    return float(crown.mesh.vertices[np.abs(toward - x) < 0.15, 2].max())


@pytest.mark.parametrize(("seed", "variation"), [(0, 0.0), (1, 1.0), (2, 1.0)])
def test_edge_falls_from_one_tip_and_further_to_distal(
    crown_of: Maker, seed: int, variation: float
) -> None:
    """The tip lies mesial of the middle, its distal slope is longer (common dental anatomy)."""
    crown = crown_of(13, seed, variation)
    assert crown.tip_names == ("cusp",)
    assert crown.tips[0, 2] == crown.mesh.vertices[:, 2].max()
    for toward in (1.0, -1.0):
        heights = [edge_height(crown, toward * x) for x in (0.0, 0.8, 1.6, 2.4)]
        assert heights == sorted(heights, reverse=True)
        assert 0.7 < heights[0] - heights[-1] < 2.0
    x = crown.mesh.vertices @ np.array(crown.mesial)
    assert crown.tips[0] @ np.array(crown.mesial) > (x.min() + x.max()) / 2


def test_zones_are_all_there_and_hang_together(crown_of: Maker) -> None:
    crown = crown_of(13)
    assert set(np.unique(crown.zones)) == {int(zone) for zone in Zone} - {int(Zone.FISSURE)}
    for zone, count in ((Zone.CERVICAL, 1), (Zone.INTERPROXIMAL, 2), (Zone.CUSP, 1)):
        assert connected_pieces(crown.mesh, np.asarray(crown.zones == zone))[0] == count
    np.testing.assert_array_equal(crown.zones == Zone.INNER, ~crown.outer)
    height = {z: np.median(crown.mesh.vertices[crown.zones == z, 2]) for z in OUTER_ZONES[:2]}
    assert height[Zone.CERVICAL] < height[Zone.BODY]
    assert crown.zones[crown.mesh.vertices[:, 2].argmax()] == Zone.CUSP


def test_accents_are_soft_masks_on_the_outer_surface(crown_of: Maker) -> None:
    crown = crown_of(13)
    accents = dict(crown.accents)
    assert set(accents) == {Accent.MARGIN_BAND, Accent.MARGINAL_RIDGE, Accent.LINE_ANGLE}
    for accent, mask in accents.items():
        assert mask.min() == 0.0, accent
        assert 0.9 < mask.max() <= 1.0, accent
        assert (mask[~crown.outer] == 0.0).all()
    ridges = accents[Accent.MARGINAL_RIDGE] > 0.5
    assert (crown.mesh.vertex_normals[ridges, 1] < 0.35).all()


def test_palatal_face_has_two_hollows_beside_a_ridge(crown_of: Maker) -> None:
    """Common dental anatomy: between the marginal ridges runs a ridge from the tip."""
    crown = crown_of(13)
    points = crown.mesh.vertices[crown.outer & (crown.mesh.vertex_normals[:, 1] < -0.2)]
    at_height = points[np.abs(points[:, 2] - 6.0) < 0.3]
    across = at_height[:, 0] - crown.tips[0, 0]

    def depth(x: float) -> float:
        return float(np.median(at_height[np.abs(across - x) < 0.2, 1]))

    middle, mesial, distal = depth(0.0), depth(1.2), depth(-1.2)
    assert middle < mesial - 0.05
    assert middle < distal - 0.05
