"""What is known about a made crown: its zones, accents and landmarks."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
import trimesh

from stainmap.model.zone import OUTER_ZONES, Accent, Zone
from stainmap.practice.crown_maker import MadeCrown
from stainmap.surface.mesh import connected_pieces

Maker = Callable[..., MadeCrown]

BACK = (36, 16, 14)
ALL = (*BACK, 11)
CUSPS = {36: 5, 16: 4, 14: 2, 11: 0}
# The oblique ridge of an upper molar parts its fissures in two: common dental anatomy.
FISSURES = {36: 1, 16: 2, 14: 1}


def pieces(crown: MadeCrown, mask: np.ndarray) -> list[float]:
    """Return the areas of the connected pieces of a mask, mm2, by networkx through trimesh."""
    both = mask[crown.mesh.edges].all(axis=1)
    groups = trimesh.graph.connected_components(
        crown.mesh.edges[both], nodes=np.flatnonzero(mask), min_len=1, engine="networkx"
    )
    return sorted(float(crown.mesh.vertex_areas[group].sum()) for group in groups)


@pytest.mark.parametrize("number", BACK)
@pytest.mark.parametrize(("seed", "variation"), [(0, 0.0), (1, 1.0)])
def test_zones_are_all_there_and_hang_together(
    crown_of: Maker, number: int, seed: int, variation: float
) -> None:
    crown = crown_of(number, seed, variation)
    assert set(np.unique(crown.zones)) == {int(zone) for zone in Zone}
    expected = {
        Zone.CERVICAL: 1,
        Zone.BODY: 2,
        Zone.INTERPROXIMAL: 2,
        Zone.CUSP: 1,
        Zone.FISSURE: FISSURES[number],
        Zone.INNER: 1,
    }
    for zone, count in expected.items():
        areas = pieces(crown, crown.zones == zone)
        assert len(areas) == count, (zone, areas)
        assert areas[0] > 1.0, (zone, areas)


def test_front_tooth_has_no_fissure(crown_of: Maker) -> None:
    crown = crown_of(11)
    assert set(np.unique(crown.zones)) == {int(zone) for zone in Zone} - {int(Zone.FISSURE)}
    for zone, count in ((Zone.CERVICAL, 1), (Zone.INTERPROXIMAL, 2), (Zone.CUSP, 1)):
        assert len(pieces(crown, crown.zones == zone)) == count


@pytest.mark.parametrize("number", ALL)
def test_inner_zone_is_the_cavity(crown_of: Maker, number: int) -> None:
    crown = crown_of(number)
    np.testing.assert_array_equal(crown.zones == Zone.INNER, ~crown.outer)


@pytest.mark.parametrize("number", ALL)
def test_zones_follow_the_height(crown_of: Maker, number: int) -> None:
    """Cervical lies below body, body below cusp; interproximal faces mesial and distal."""
    crown = crown_of(number)
    height = {
        zone: np.median(crown.mesh.vertices[crown.zones == zone, 2])
        for zone in OUTER_ZONES
        if (crown.zones == zone).any()
    }
    assert height[Zone.CERVICAL] < height[Zone.BODY] < height[Zone.CUSP]
    sides = crown.zones == Zone.INTERPROXIMAL
    assert np.abs(crown.mesh.vertex_normals[sides, 0]).mean() > 0.85


@pytest.mark.parametrize("number", BACK)
def test_fissures_are_hollow_and_tips_are_not(crown_of: Maker, number: int) -> None:
    """Mean curvature by trimesh: negative along the fissures' middle, positive on every tip."""
    crown = crown_of(number)
    body = trimesh.Trimesh(crown.mesh.vertices, crown.mesh.faces, process=False)
    fissure = crown.mesh.vertices[crown.zones == Zone.FISSURE][::7]
    measure = trimesh.curvature.discrete_mean_curvature_measure
    assert (measure(body, fissure, 0.35) < 0).mean() > 0.7
    assert (measure(body, crown.tips, 0.5) > 0).all()
    assert (measure(body, crown.pits, 0.35) < 0).all()


@pytest.mark.parametrize("number", ALL)
def test_landmarks_lie_where_they_belong(crown_of: Maker, number: int) -> None:
    crown = crown_of(number)
    assert len(crown.tips) == len(crown.tip_names) == CUSPS[number]
    for tip in crown.tips:
        near = np.linalg.norm(crown.mesh.vertices - tip, axis=1) < 0.6
        assert crown.mesh.vertices[near & crown.outer, 2].max() == pytest.approx(tip[2], abs=0.03)
    for pit in crown.pits:
        at = int(np.linalg.norm(crown.mesh.vertices - pit, axis=1).argmin())
        assert crown.zones[at] == Zone.FISSURE


@pytest.mark.parametrize("number", ALL)
def test_accents_are_soft_masks_on_the_outer_surface(crown_of: Maker, number: int) -> None:
    crown = crown_of(number)
    expected = {Accent.MARGIN_BAND, Accent.MARGINAL_RIDGE, Accent.LINE_ANGLE}
    if number != 11:
        expected.add(Accent.TRIANGULAR_RIDGE)
    assert {accent for accent, _ in crown.accents} == expected
    for accent, mask in crown.accents:
        assert mask.dtype == np.float32
        assert mask.shape == crown.zones.shape
        assert mask.min() == 0.0, accent
        assert 0.9 < mask.max() <= 1.0, accent
        assert (mask[~crown.outer] == 0.0).all()


@pytest.mark.parametrize("number", BACK)
def test_accents_have_as_many_strips_as_the_tooth_has(crown_of: Maker, number: int) -> None:
    crown = crown_of(number)
    strips = {
        accent: connected_pieces(crown.mesh, np.asarray(mask > 0.5))[0]
        for accent, mask in crown.accents
    }
    assert strips == {
        Accent.MARGIN_BAND: 1,
        Accent.MARGINAL_RIDGE: 2,
        Accent.TRIANGULAR_RIDGE: CUSPS[number],
        Accent.LINE_ANGLE: 4,
    }


def test_margin_band_is_half_a_millimetre_high(crown_of: Maker) -> None:
    crown = crown_of(36)
    band = dict(crown.accents)[Accent.MARGIN_BAND]
    area = float((crown.mesh.vertex_areas * band).sum())
    ring = crown.mesh.vertices[crown.outer]
    # The margin of 36 is close to an oval of the cervix's measured axes (Ramanujan's perimeter).
    low = ring[ring[:, 2] < 0.8]
    a, b = np.ptp(low[:, 0]) / 2, np.ptp(low[:, 1]) / 2
    oval = np.pi * (3 * (a + b) - np.sqrt((3 * a + b) * (a + 3 * b)))
    assert area / oval == pytest.approx(0.5, abs=0.12)
